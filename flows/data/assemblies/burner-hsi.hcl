# A hot-surface igniter on 120 volts.
assembly "burner-hsi" {}

part "igniter-plug" {
  kind  = "wire"
  name  = "igniter plug"
  place = "upper-bay"
  look  = "white two-pin plug in the igniter leads"
  ports = { a = "IGN", b = "IGN-m" }
  mode "open" {
    name   = "igniter plug burnt or loose"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "refit-igniter-plug"
  }
}

part "igniter" {
  kind  = "load"
  name  = "igniter"
  place = "burner-box"
  look  = "grey rough strip or dark smooth rod on a white block"
  ports = { a = "IGN-m", b = "IGN-n" }
  ohms  = q("30 ohm", "own")
  cold  = q("62 ohm", 11, 110, "common practice, no source")
  works = q("107 V", "common practice, no source")
  mode "open" {
    name   = "igniter cracked open"
    does   = "open"
    rate   = q("8 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "hot-crack" {
    name   = "igniter opens when hot"
    does   = "set"
    cold   = q("62 ohm", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "aged" {
    name   = "igniter aged, glows weakly"
    does   = "set"
    ohms   = q("75 ohm", "common practice, no source")
    cold   = q("150 ohm", "common practice, no source")
    works  = q("140 V", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "wrong-part" {
    name   = "igniter of the wrong kind fitted"
    does   = "set"
    ohms   = q("160 ohm", "common practice, no source")
    cold   = q("320 ohm", "common practice, no source")
    works  = q("140 V", "common practice, no source")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "replace-igniter"
  }
}

part "igniter-legs" {
  kind   = "contact"
  name   = "return leg of the igniter"
  place  = "burner-box"
  look   = "metal leg in the white block"
  ports  = { a = "IGN-n", b = "NB" }
  closes = !(mode("igniter.hot-crack") && reached("trial"))
}

part "igniter-bracket" {
  kind  = "thing"
  name  = "igniter bracket"
  place = "burner-box"
  look  = "screw and bracket that hold the igniter"
  mode "moved" {
    name   = "igniter not in the gas stream"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-igniter"
  }
}

signal "lit" {
  unit = "x"
  is   = gas-flow > 0.5 && (at("trial") ? igniter.works > 0.6 && igniter-bracket.value > 0.5 && burners.passes > 0.2 : reached("run")) ? 1 : 0
}

point "glow-out" {
  net   = "IGN"
  place = "upper-bay"
  name  = "igniter terminal of the board"
  where = "marked for the igniter"
}

point "glow-plug" {
  net   = "IGN-m"
  place = "upper-bay"
  name  = "igniter plug, igniter side"
  where = "white two-pin plug"
}

point "glow-plug-n" {
  net   = "IGN-n"
  place = "upper-bay"
  name  = "igniter plug, neutral side"
  where = "second pin of the same plug"
}

point "glow-a" {
  net   = "igniter.a"
  place = "upper-bay"
  name  = "first pin of the igniter"
  where = "plug apart, igniter side"
}

point "glow-b" {
  net   = "igniter.b"
  place = "upper-bay"
  name  = "second pin of the igniter"
  where = "plug apart, igniter side"
}

point "glow-plug-a" {
  net   = "igniter-plug.a"
  place = "upper-bay"
  name  = "board end of the igniter lead"
  where = "wire off at the board"
}

point "glow-plug-b" {
  net   = "igniter-plug.b"
  place = "upper-bay"
  name  = "plug end of the igniter lead"
  where = "pin of the plug"
}

check "see-glow" {
  stage    = "watch"
  name     = "igniter glow"
  function = "look"
  part     = "igniter"
  power    = "on"
  call     = "on"
  at       = "warm-up"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the igniter glows"
  act      = "Watch the sight window after the fan starts."
  ask      = "The igniter: bright, weak, or no glow?"
  option "glowing" {
    when = igniter.works > 0.6
    seen = ["glow"]
  }
  option "weak-glow" {
    when = igniter.amps > 0.5
    seen = ["glow"]
  }
  option "no-glow" {
    seen = ["dark"]
    missed = true
  }
}

check "see-glow-hold" {
  stage    = "watch"
  name     = "glow until the gas"
  function = "look"
  part     = "igniter"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["see-glow=no-glow"]
  act      = "Keep watching the glow until the valve clicks."
  ask      = "Does the glow stay, or go dark before the gas?"
  option "glowing" { when = igniter.amps > 0.5 }
  option "no-glow" {}
}

check "glow-out-v" {
  stage    = "plan"
  name     = "board output to the igniter"
  function = "volts-ac"
  part     = "board"
  red      = "glow-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while the igniter glows."
  caution  = "House voltage. The igniter gets white hot."
}

check "glow-plug-v" {
  stage    = "plan"
  name     = "volts at the igniter plug"
  function = "volts-ac"
  part     = "igniter-plug"
  red      = "glow-plug"
  black    = "glow-plug-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-lead-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while the igniter glows."
  caution  = "House voltage. The igniter gets white hot."
}

check "glow-amps" {
  stage    = "plan"
  name     = "current of the igniter"
  function = "amps-ac"
  part     = "igniter"
  quantity = "amps:igniter"
  unit     = "A"
  limit    = between(2, 5, "own")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Grey rough igniter only: clamp one igniter wire."
  caution  = "Live wire. The fan is running."
}

check "glow-amps-late" {
  stage    = "plan"
  name     = "current of the igniter at the gas"
  function = "amps-ac"
  part     = "igniter"
  quantity = "amps:igniter"
  unit     = "A"
  limit    = between(2, 5, "own")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "see-glow-hold"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Grey rough igniter only: watch until the valve clicks."
  caution  = "Live wire. The fan is running."
}

check "glow-ohms" {
  stage    = "plan"
  name     = "igniter, cold"
  function = "ohms"
  part     = "igniter"
  red      = "glow-a"
  black    = "glow-b"
  unit     = "ohm"
  limit    = between(11, 110, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["glow-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
  caution  = "Do not touch the igniter itself."
}

check "glow-lead-ohms" {
  stage    = "plan"
  name     = "igniter lead"
  function = "ohms"
  part     = "igniter-plug"
  red      = "glow-plug-a"
  black    = "glow-plug-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["glow-plug-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

check "glow-plug-look" {
  stage    = "plan"
  name     = "igniter plug"
  function = "look"
  part     = "igniter-plug"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Pull the plug apart, look at the pins."
  ask      = "The igniter plug pins: good, or burnt?"
  option "good" { when = !mode("igniter-plug.open") }
  option "burnt" {}
}

check "glow-look" {
  stage    = "plan"
  name     = "igniter, by eye"
  function = "look"
  part     = "igniter"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the strip with a light."
  caution  = "It breaks at a touch. Look only."
  ask      = "The igniter: good, or cracked?"
  option "good" { when = !mode("igniter.open") }
  option "cracked" {
    twice = true
  }
}

check "glow-place" {
  stage    = "plan"
  name     = "place of the igniter"
  function = "look"
  part     = "igniter-bracket"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Sight along the igniter to the burner."
  caution  = "It breaks at a touch. Look only."
  ask      = "The igniter tip: at the burner, or the wrong place?"
  option "right-place" { when = !mode("igniter-bracket.moved") }
  option "wrong-place" {}
}

check "glow-kind" {
  stage    = "plan"
  name     = "kind of igniter"
  function = "look"
  part     = "igniter"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the number on the white block."
  caution  = "It breaks at a touch. Look only."
  ask      = "Its number against the parts label: same, or different?"
  option "same" { when = !mode("igniter.wrong-part") }
  option "different" {}
}

repair "refit-igniter-plug" {
  name    = "mend the igniter plug"
  part    = "igniter-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["heat rating", "pins"]
  confirm = "glow-plug-v"
  step {
    act     = "Cut off the burnt plug, one wire at a time."
    caution = "Hold wires only. The igniter breaks at a touch."
    level   = "caution"
    wire    = "glow-plug"
    places  = ["upper-bay"]
  }
  step {
    act    = "Crimp a new plug for high heat, push home."
    places = ["upper-bay"]
  }
}

repair "set-igniter" {
  name    = "set the igniter back in its bracket"
  part    = "igniter-bracket"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  confirm = "glow-place"
  step {
    act     = "Loosen the bracket screw."
    caution = "The igniter breaks at a touch."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Seat the white block, tighten by hand."
    places = ["burner-box", "upper-bay"]
  }
}

repair "replace-igniter" {
  name    = "replace the igniter"
  part    = "igniter"
  kind    = "replace"
  price   = q("25..90 money", "from memory")
  minutes = q("20..40 min", "from memory")
  match   = ["carbide or nitride", "volts", "ohms class", "mount", "plug"]
  causes  = ["rules"]
  confirm = "glow-ohms"
  step {
    act    = "Part the igniter plug."
    wire   = "glow-plug"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out its screw, draw it straight out."
    caution = "Hot after a trial. Let it cool."
    level   = "warning"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act     = "Hold the new one by its block only."
    caution = "Skin grease cracks it."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Fasten it by hand, join the plug."
    wire   = "glow-plug"
    places = ["burner-box", "upper-bay"]
  }
}
