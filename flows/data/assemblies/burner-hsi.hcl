# A hot-surface igniter on 120 volts.
assembly "burner-hsi" {}

part "igniter-plug" {
  kind  = "wire"
  name  = "igniter plug"
  place = "upper-bay"
  look  = "white two-pin plug in the igniter wires"
  ports = { a = "IGN", b = "IGN-m" }
  mode "open" {
    name   = "igniter plug burned or loose"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "refit-igniter-plug"
  }
}

part "igniter" {
  kind  = "load"
  name  = "igniter"
  place = "burner-box"
  look  = "rough gray strip or smooth dark rod on a white block"
  ports = { a = "IGN-m", b = "IGN-n" }
  ohms  = q("30 ohm", "own")
  cold  = q("62 ohm", 11, 110, "common practice, no source")
  works = q("107 V", "common practice, no source")
  mode "open" {
    name   = "igniter cracked"
    does   = "open"
    rate   = q("8 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "hot-crack" {
    name   = "igniter has a crack that opens when hot"
    does   = "set"
    cold   = q("62 ohm", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "aged" {
    name   = "igniter worn, glows weakly"
    does   = "set"
    ohms   = q("75 ohm", "common practice, no source")
    cold   = q("150 ohm", "common practice, no source")
    works  = q("140 V", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "wrong-part" {
    name   = "wrong kind of igniter"
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
  name   = "second leg of the igniter"
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
    name   = "igniter out of place"
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
  name  = "igniter side of the igniter plug"
  where = "the white two-pin plug"
}

point "glow-plug-n" {
  net   = "IGN-n"
  place = "upper-bay"
  name  = "neutral side of the igniter plug"
  where = "the second pin of the same plug"
}

point "glow-a" {
  net   = "igniter.a"
  place = "upper-bay"
  name  = "first pin of the igniter"
  where = "plug pulled apart, igniter side"
}

point "glow-b" {
  net   = "igniter.b"
  place = "upper-bay"
  name  = "second pin of the igniter"
  where = "plug pulled apart, igniter side"
}

point "glow-plug-a" {
  net   = "igniter-plug.a"
  place = "upper-bay"
  name  = "board end of the igniter wire"
  where = "with the wire off the board"
}

point "glow-plug-b" {
  net   = "igniter-plug.b"
  place = "upper-bay"
  name  = "plug end of the igniter wire"
  where = "the pin of the plug"
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
  act      = "After the fan starts, watch the small window."
  ask      = "How does the igniter glow? Bright, weak, or no glow?"
  option "glowing" {
    when  = igniter.works > 0.6
    seen  = ["glow"]
    label = "Bright"
  }
  option "weak-glow" {
    when  = igniter.amps > 0.5
    seen  = ["glow"]
    label = "Weak"
  }
  option "no-glow" {
    seen   = ["dark"]
    missed = true
    label  = "No glow"
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
  act      = "Keep watching the glow until you hear the gas valve click."
  ask      = "Does the glow stay until then?"
  option "glowing" {
    when  = igniter.amps > 0.5
    label = "Yes"
  }
  option "no-glow" {
    label = "No"
  }
}

check "glow-out-v" {
  stage    = "plan"
  name     = "volts from the board to the igniter"
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
  act      = "Read the volts while the igniter should glow."
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
  act      = "Read the volts while the igniter should glow."
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
  act      = "Do this only with a rough gray igniter. Close the clamp around one igniter wire."
  caution  = "Live wire. The fan is running."
}

check "glow-amps-late" {
  stage    = "plan"
  name     = "current of the igniter at the click"
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
  act      = "Do this only with a rough gray igniter. Read until the gas valve clicks."
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
  caution  = "Do not touch the igniter itself."
}

check "glow-lead-ohms" {
  stage    = "plan"
  name     = "igniter wire"
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
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
  act      = "Pull the two halves of the igniter plug apart. Look at the pins."
  ask      = "Are the pins good or burned?"
  option "good" {
    when  = !mode("igniter-plug.open")
    label = "Good"
  }
  option "burnt" {
    label = "Burned"
  }
}

check "glow-look" {
  stage    = "plan"
  name     = "look of the igniter"
  function = "look"
  part     = "igniter"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the igniter with a light."
  caution  = "It breaks at a touch. Only look."
  ask      = "Is the igniter good or cracked?"
  option "good" {
    when  = !mode("igniter.open")
    label = "Good"
  }
  option "cracked" {
    twice = true
    label = "Cracked"
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
  act      = "Look along the igniter toward the burner."
  caution  = "It breaks at a touch. Only look."
  ask      = "Does the tip point at the burner?"
  option "right-place" {
    when  = !mode("igniter-bracket.moved")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
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
  act      = "Read the number on the white block. Compare it with the parts label."
  caution  = "It breaks at a touch. Only look."
  ask      = "Is the number the same or different?"
  option "same" {
    when  = !mode("igniter.wrong-part")
    label = "The same"
  }
  option "different" {
    label = "Different"
  }
}

repair "refit-igniter-plug" {
  name    = "put a new plug on the igniter wires"
  part    = "igniter-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["heat rating", "pins"]
  confirm = "glow-plug-v"
  step {
    act     = "Cut off the burned plug, one wire at a time."
    caution = "Hold only the wires. The igniter breaks at a touch."
    level   = "caution"
    wire    = "glow-plug"
    places  = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new plug made for high heat. Push it together."
    places = ["upper-bay"]
  }
}

repair "set-igniter" {
  name    = "put the igniter back in place"
  part    = "igniter-bracket"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  confirm = "glow-place"
  step {
    act     = "Loosen the screw of the bracket."
    caution = "The igniter breaks at a touch."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Set the white block in place. Tighten the screw by hand."
    places = ["burner-box", "upper-bay"]
  }
}

repair "replace-igniter" {
  name    = "replace the igniter"
  part    = "igniter"
  kind    = "replace"
  price   = q("25..90 money", "from memory")
  minutes = q("20..40 min", "from memory")
  match   = ["material", "volts", "ohms", "mounting", "plug"]
  causes  = ["rules"]
  confirm = "glow-ohms"
  step {
    act    = "Pull the two halves of the igniter plug apart."
    wire   = "glow-plug"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the igniter's screw. Pull the igniter straight out."
    caution = "It is hot after a start. Let it cool."
    level   = "warning"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act     = "Hold the new one only by its white block."
    caution = "Grease from skin cracks it."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Fasten it by hand. Push the plug together."
    wire   = "glow-plug"
    places = ["burner-box", "upper-bay"]
  }
}
