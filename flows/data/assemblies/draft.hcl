# Vent, intake, draft fan, and the pressure switch that proves it.
assembly "draft" { machine = "furnace" }

part "vent" {
  kind    = "passage"
  name    = "vent pipe"
  place   = "outside"
  look    = "metal pipe that carries the exhaust out"
  mode "blocked" {
    name   = "vent pipe blocked"
    does   = "factor"
    factor = q("0.19 x", 0.02, 0.5, "own")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-vent"
  }
  mode "partly" {
    name   = "vent pipe partly blocked, fails in wind"
    does   = "factor"
    factor = q("0.45 x", 0.3, 0.52, "common practice, no source")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clear-vent"
  }
}

part "vent-joints" {
  kind    = "thing"
  name    = "vent joints"
  place   = "room"
  look    = "where lengths of the vent pipe meet"
  mode "apart" {
    name   = "vent pipe apart at a joint"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-vent"
  }
}

part "air-intake" {
  kind    = "passage"
  name    = "air intake"
  place   = "outside"
  look    = "opening or pipe that brings air to the burners"
  mode "blocked" {
    name   = "air intake blocked"
    does   = "factor"
    factor = q("0.3 x", 0.03, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-intake"
  }
}

part "inducer-drain" {
  kind  = "passage"
  name  = "drain of the draft fan"
  place = "upper-bay"
  look  = "small tube under the draft fan housing"
  mode "blocked" {
    name   = "water stands in the draft fan housing"
    does   = "factor"
    factor = q("0.4 x", 0.05, 0.52, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clear-inducer-drain"
  }
}

part "port" {
  kind  = "passage"
  name  = "pressure port"
  place = "upper-bay"
  look  = "small nipple on the draft fan housing"
  mode "plugged" {
    name   = "pressure port plugged"
    does   = "factor"
    factor = q("0.1 x", 0.01, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-port"
  }
}

part "hose" {
  kind  = "passage"
  name  = "pressure hose"
  place = "upper-bay"
  look  = "rubber hose from the draft fan to the pressure switch"
  mode "split" {
    name   = "pressure hose split"
    does   = "factor"
    factor = q("0.3 x", 0.02, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-hose"
  }
  mode "off" {
    name   = "pressure hose off its nipple"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-hose"
  }
  mode "wet" {
    name   = "water in the pressure hose"
    does   = "factor"
    factor = q("0.4 x", 0.05, 0.52, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "drain-hose"
  }
}

part "pressure-switch" {
  kind   = "contact"
  name   = "pressure switch"
  place  = "upper-bay"
  look   = "round, rubber hose, two wires"
  ports  = { a = "HS", b = "PS-b" }
  set    = q("0.5 inH2O", "T13")
  closes = sensed-draft >= pressure-switch.set
  safety = true
  mode "stuck-open" {
    name   = "pressure switch failed open"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "stuck-closed" {
    name   = "pressure switch stuck closed"
    does   = "stuck-closed"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "wrong-part" {
    name   = "pressure switch with the wrong set point"
    does   = "set"
    set    = q("1.2 inH2O", "own")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "burnt" {
    name   = "contacts of the pressure switch burnt, high resistance"
    does   = "resist"
    ohms   = q("60 ohm", 20, 120, "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
}

part "pressure-lead" {
  kind  = "wire"
  name  = "lead from the pressure switch to the board"
  place = "upper-bay"
  look  = "wire from the pressure switch to the board plug"
  ports = { a = "PS-b", b = "PS-out" }
  mode "off" {
    name   = "lead from the pressure switch off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pressure-lead"
  }
}

part "left-jumper" {
  kind   = "switch"
  name   = "jumper of an earlier repair"
  place  = "upper-bay"
  look   = "short wire across the two pressure switch terminals"
  ports  = { a = "HS", b = "PS-out" }
  closes = 1 < 0
  mode "left-in" {
    name   = "jumper left across the pressure switch"
    does   = "stuck-closed"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "remove-jumper"
  }
}

part "inducer-plug" {
  kind  = "wire"
  name  = "plug of the draft fan"
  place = "upper-bay"
  look  = "two-pin plug in the draft fan leads"
  ports = { a = "IND", b = "IND-m" }
  mode "open" {
    name   = "plug of the draft fan loose or burnt"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-inducer-plug"
  }
}

part "inducer-capacitor" {
  kind  = "capacitor"
  name  = "capacitor of the draft fan"
  place = "upper-bay"
  look  = "small can or box with two leads, by the draft fan"
  ports = { a = "IND-m", b = "IND-n" }
  value = q("5 uF", 4.7, 5.3, "HS")
  mode "weak" {
    name   = "capacitor of the draft fan weak"
    does   = "weak"
    factor = q("0.62 x", 0.2, 0.85, "own")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer-capacitor"
  }
  mode "open" {
    name   = "capacitor of the draft fan open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer-capacitor"
  }
}

part "inducer" {
  kind    = "load"
  name    = "draft fan"
  place   = "upper-bay"
  look    = "motor with a round housing, at the vent pipe"
  ports   = { a = "IND-m", b = "IND-n" }
  ohms    = q("80 ohm", 45, 115, "common practice, no source")
  cold    = q("14 ohm", 5, 30, "own")
  works   = q("80 V", "common practice, no source")
  motor   = "yes"
  needs   = inducer-capacitor.healthy > 0.8 ? 1 : (inducer-capacitor.healthy > 0.3 ? 0.4 : 0)
  numbers = { draft = q("0.95 inH2O", "own") }
  mode "winding-open" {
    name   = "winding of the draft fan open"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "seized" {
    name   = "draft fan seized"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "dragging" {
    name   = "bearings of the draft fan drag"
    does   = "weak"
    factor = q("0.45 x", 0.2, 0.52, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

part "inducer-protector" {
  kind    = "contact"
  name    = "overheat protector of the draft fan"
  place   = "upper-bay"
  look    = "inside the motor, not seen"
  ports   = { a = "IND-n", b = "NB" }
  set     = q("250 degF", "from memory")
  trips   = reached("heating") && fan-heat > inducer-protector.set
  reset   = "auto"
  numbers = { cold = q("70 degF", "common practice, no source"), warm = q("160 degF", "from memory") }
  mode "early" {
    name   = "draft fan stops when hot"
    does   = "set"
    set    = q("100 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

part "inducer-wheel" {
  kind  = "passage"
  name  = "wheel of the draft fan"
  place = "upper-bay"
  look  = "small wheel with blades in the round housing"
  mode "loose" {
    name   = "wheel of the draft fan loose on its shaft"
    does   = "factor"
    factor = q("0.2 x", 0.02, 0.45, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

signal "draft" {
  unit = "inH2O"
  is   = inducer.draft * inducer.works * inducer-wheel.passes * vent.passes * air-intake.passes * inducer-drain.passes
  tol  = q("20 %", "common practice, no source")
}

signal "port-draft" {
  unit = "inH2O"
  is   = draft * port.passes
  tol  = q("20 %", "common practice, no source")
}

signal "sensed-draft" {
  unit = "inH2O"
  is   = draft * port.passes * hose.passes
  tol  = q("20 %", "common practice, no source")
}

signal "fan-heat" {
  unit = "degF"
  is   = reached("heating") ? inducer-protector.warm : inducer-protector.cold
}

point "fan-out" {
  net   = "IND"
  place = "upper-bay"
  name  = "draft fan terminal of the board"
  where = "marked for the draft fan"
}

point "fan-plug" {
  net   = "IND-m"
  place = "upper-bay"
  name  = "draft fan plug, motor side"
  where = "two-pin plug of the draft fan"
}

point "fan-plug-n" {
  net   = "IND-n"
  place = "upper-bay"
  name  = "draft fan plug, neutral side"
  where = "second pin of the same plug"
}

point "fan-a" {
  net   = "inducer.a"
  place = "upper-bay"
  name  = "first lead of the draft fan"
  where = "plug apart, motor side"
}

point "fan-b" {
  net   = "inducer.b"
  place = "upper-bay"
  name  = "second lead of the draft fan"
  where = "plug apart, motor side"
}

point "fan-plug-a" {
  net   = "inducer-plug.a"
  place = "upper-bay"
  name  = "first end of the draft fan lead"
  where = "board end, wire off"
}

point "fan-plug-b" {
  net   = "inducer-plug.b"
  place = "upper-bay"
  name  = "second end of the draft fan lead"
  where = "motor end of the same wire"
}

point "fan-cap-a" {
  net   = "inducer-capacitor.a"
  place = "upper-bay"
  name  = "first terminal of the draft fan capacitor"
  where = "wires off"
}

point "fan-cap-b" {
  net   = "inducer-capacitor.b"
  place = "upper-bay"
  name  = "second terminal of the draft fan capacitor"
  where = "wires off"
}

point "switch-in" {
  net   = "HS"
  place = "upper-bay"
  name  = "pressure switch, first terminal"
  where = "wire from the board plug"
}

point "switch-out" {
  net   = "PS-b"
  place = "upper-bay"
  name  = "pressure switch, second terminal"
  where = "wire back to the board plug"
}

point "press-a" {
  net   = "pressure-switch.a"
  place = "upper-bay"
  name  = "first terminal of the pressure switch"
  where = "wire pulled off"
}

point "press-b" {
  net   = "pressure-switch.b"
  place = "upper-bay"
  name  = "second terminal of the pressure switch"
  where = "other terminal"
}

point "press-pin" {
  net   = "PS-out"
  place = "upper-bay"
  name  = "pressure pin of the board plug"
  where = "multi-pin plug, pressure input"
}

check "vent-look" {
  stage    = "free"
  name     = "vent end outside"
  function = "look"
  part     = "vent"
  places   = ["outside"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look up into the vent end with a light."
  caution  = "Stay off ladders and ice."
  ask      = "The vent end outside: clear, or blocked?"
  option "clear" { when = !(vent.passes < 0.8) }
  option "blocked" {
    mend = "clear-vent"
  }
}

check "intake-look" {
  stage    = "free"
  name     = "air intake outside"
  function = "look"
  part     = "air-intake"
  places   = ["outside"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look for snow, leaves, or a nest."
  ask      = "The air intake: clear, or blocked?"
  option "clear" { when = !(air-intake.passes < 0.8) }
  option "blocked" {
    mend = "clear-intake"
  }
}

check "vent-joint-look" {
  stage    = "free"
  name     = "vent joints"
  function = "look"
  part     = "vent-joints"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the vent pipe with a light."
  caution  = "Hot pipe. Look, do not touch."
  ask      = "The vent pipe joints: tight, or apart?"
  option "tight" { when = !mode("vent-joints.apart") }
  option "loose" { stop = "vent" }
}

check "see-fan" {
  stage    = "watch"
  name     = "draft fan"
  function = "look"
  part     = "inducer"
  power    = "on"
  call     = "on"
  at       = "draft"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the draft fan starts"
  act      = "Stand at the ${machine} and listen."
  ask      = "The draft fan: running, humming, or silent?"
  option "running" { when = !inducer.hums && inducer.works > 0.1 }
  option "humming" { when = inducer.hums }
  option "silent" {
    missed = true
  }
}

check "fan-out-v" {
  stage    = "plan"
  name     = "board output to the draft fan"
  function = "volts-ac"
  part     = "board"
  red      = "fan-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while the draft fan runs."
  caution  = "House voltage. The fan starts by itself."
}

check "fan-plug-v" {
  stage    = "plan"
  name     = "volts at the draft fan plug"
  function = "volts-ac"
  part     = "inducer-plug"
  red      = "fan-plug"
  black    = "fan-plug-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-lead-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while the draft fan runs."
  caution  = "House voltage. The fan starts by itself."
}

check "fan-amps" {
  stage    = "plan"
  name     = "current of the draft fan"
  function = "amps-ac"
  part     = "inducer"
  quantity = "amps:inducer"
  unit     = "A"
  unless   = ["see-fan=silent"]
  limit    = between(1, 2.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Close the clamp round one draft fan wire."
  caution  = "Live wire. The fan starts by itself."
}

check "press-rest-v" {
  stage    = "plan"
  name     = "across the pressure switch at rest"
  function = "volts-ac"
  part     = "pressure-switch"
  red      = "switch-in"
  black    = "switch-out"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "press-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts, tips held still."
}

check "press-run-v" {
  stage    = "plan"
  name     = "across the pressure switch, fan running"
  function = "volts-ac"
  part     = "pressure-switch"
  red      = "switch-in"
  black    = "switch-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while the draft fan runs."
  caution  = "The draft fan starts by itself."
}

check "press-pin-c" {
  stage    = "plan"
  name     = "pressure pin of the board, fan running"
  function = "volts-ac"
  part     = "pressure-lead"
  red      = "press-pin"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Push the tip in first, read with the fan."
  caution  = "The draft fan starts by itself."
}

check "press-ohms" {
  stage    = "plan"
  name     = "pressure switch at rest"
  function = "ohms"
  part     = "pressure-switch"
  red      = "press-a"
  black    = "press-b"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["press-a", "press-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

check "press-lead-ohms" {
  stage    = "plan"
  name     = "lead from the pressure switch"
  function = "ohms"
  part     = "pressure-lead"
  red      = "switch-out"
  black    = "press-pin"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

check "fan-ohms" {
  stage    = "plan"
  name     = "winding of the draft fan"
  function = "ohms"
  part     = "inducer"
  red      = "fan-a"
  black    = "fan-b"
  unit     = "ohm"
  limit    = between(5, 40, "own")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

check "fan-lead-ohms" {
  stage    = "plan"
  name     = "lead of the draft fan"
  function = "ohms"
  part     = "inducer-plug"
  red      = "fan-plug-a"
  black    = "fan-plug-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-plug-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

check "fan-cap" {
  stage    = "plan"
  name     = "capacitor of the draft fan"
  function = "capacitance"
  part     = "inducer-capacitor"
  red      = "fan-cap-a"
  black    = "fan-cap-b"
  unit     = "uF"
  label    = "fan-uf"
  limit    = between(label * 0.94, label * 1.06, "HS")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-cap-a", "fan-cap-b"]
  hands_in = true
  hazard   = "capacitor"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the capacitance, fingers off the tips."
  caution  = "It may hold a charge. Touch no bare terminal."
}

check "port-draft-m" {
  stage    = "plan"
  name     = "draft at the pressure port"
  function = "manometer"
  part     = "port"
  quantity = "port-draft"
  unit     = "inH2O"
  label    = "press-set"
  limit    = atleast(label + 0.1, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["upper-bay"]
  hazard   = "moving"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  fit      = "Pull the hose off the port. Put the tee with the gauge between."
  act      = "Stand back and read the gauge."
}

check "switch-draft-m" {
  stage    = "plan"
  name     = "draft at the pressure switch"
  function = "manometer"
  part     = "hose"
  quantity = "sensed-draft"
  unit     = "inH2O"
  label    = "press-set"
  limit    = atleast(label + 0.1, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["upper-bay"]
  hazard   = "moving"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  fit      = "Pull the hose off the switch. Put the tee with the gauge between."
  act      = "Stand back and read the gauge."
}

check "hose-look" {
  stage    = "plan"
  name     = "pressure hose"
  function = "look"
  part     = "hose"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Bend the whole hose by the light."
  ask      = "The pressure hose: good, split, or off its port?"
  option "good" { when = !mode("hose.off") && !mode("hose.split") }
  option "off-port" { when = mode("hose.off") }
  option "split" {}
}

check "hose-wet" {
  stage    = "plan"
  name     = "inside of the pressure hose"
  function = "look"
  part     = "hose"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the hose off the switch end, shake it."
  ask      = "Inside the pressure hose: dry, or wet?"
  option "dry" { when = !(mode("hose.wet") || mode("inducer-drain.blocked")) }
  option "wet" {}
}

check "port-look" {
  stage    = "plan"
  name     = "pressure port"
  function = "look"
  part     = "port"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look into the nipple with a light."
  ask      = "The pressure port: clear, or blocked?"
  option "clear" { when = !(port.passes < 0.8) }
  option "blocked" {}
}

check "fan-drain-look" {
  stage    = "plan"
  name     = "drain of the draft fan"
  function = "look"
  part     = "inducer-drain"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the tube off, look for standing water."
  ask      = "The drain tube of the draft fan: clear, or blocked?"
  option "clear" { when = !(inducer-drain.passes < 0.8) }
  option "blocked" {}
}

check "press-label" {
  stage    = "plan"
  name     = "label of the pressure switch"
  function = "look"
  part     = "pressure-switch"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the number on the pressure switch."
  ask      = "Its set point against the parts label: same, or different?"
  option "same" { when = !mode("pressure-switch.wrong-part") }
  option "different" {}
}

check "jumper-look" {
  stage    = "plan"
  name     = "jumpers of an earlier repair"
  function = "look"
  part     = "left-jumper"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at every safety switch for a short wire."
  ask      = "Across the safety switches: clear, or bypassed?"
  option "clear" { when = !mode("left-jumper.left-in") }
  option "bypassed" {}
}

check "fan-spin" {
  stage    = "plan"
  name     = "draft fan by hand"
  function = "look"
  part     = "inducer"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the cooling wheel with one finger."
  ask      = "The draft fan by hand: free, grinding, or stuck?"
  option "free" { when = !mode("inducer.seized") && !mode("inducer.dragging") }
  option "not-running" { when = mode("inducer.seized") }
  option "grinding" {}
}

check "fan-wheel-look" {
  stage    = "plan"
  name     = "wheel of the draft fan"
  function = "look"
  part     = "inducer-wheel"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look in with a light, turn the shaft."
  ask      = "The fan wheel on its shaft: tight, or loose?"
  option "tight" { when = !(inducer-wheel.passes < 0.8) }
  option "loose" {}
}

check "fan-cap-look" {
  stage    = "plan"
  name     = "capacitor of the draft fan, by eye"
  function = "look"
  part     = "inducer-capacitor"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the can from all sides."
  ask      = "The small capacitor: good, or swollen?"
  option "good" { when = !mode("inducer-capacitor.open") }
  option "swollen" {}
}

check "fan-plug-look" {
  stage    = "plan"
  name     = "plug of the draft fan"
  function = "look"
  part     = "inducer-plug"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Pull the plug apart, look at the pins."
  ask      = "Its plug pins: good, burnt, or loose?"
  option "good" { when = !mode("inducer-plug.open") }
  option "burnt" {}
}

check "press-wire-look" {
  stage    = "plan"
  name     = "wires of the pressure switch"
  function = "look"
  part     = "pressure-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Tug each wire gently."
  ask      = "The pressure switch wires: tight, or loose?"
  option "tight" { when = !mode("pressure-lead.off") }
  option "loose" {}
}

repair "clear-intake" {
  name    = "clear the air intake"
  part    = "air-intake"
  kind    = "clean"
  minutes = q("5..30 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "intake-look"
  step {
    act     = "Clear snow and leaves a foot around it."
    caution = "Stay off ladders and ice."
    level   = "warning"
    power   = "on"
  }
}

repair "clear-vent" {
  name    = "clear the vent pipe"
  part    = "vent"
  kind    = "clean"
  minutes = q("10..90 min", "from memory")
  causes  = ["vent-joint-look", "switch-draft-m"]
  confirm = "vent-look"
  note    = "Chimney liner in doubt, or a nest out of reach: call. Have an alarm for carbon monoxide in place."
  step {
    act     = "Turn the thermostat down, let the fan stop."
    caution = "Exhaust is hot while it runs."
    level   = "warning"
    power   = "on"
  }
  step {
    act     = "Take out what you can reach from outside."
    caution = "Stay off ladders and ice."
    level   = "warning"
    power   = "on"
  }
  step {
    act   = "Look that the whole pipe slopes back, joints tight."
    power = "on"
  }
}

repair "refit-pressure-lead" {
  name    = "refit the lead from the pressure switch"
  part    = "pressure-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "press-pin-c"
  step {
    act    = "Push the spade on, tug it."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
}

repair "refit-inducer-plug" {
  name    = "mend the plug of the draft fan"
  part    = "inducer-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["amps", "pins"]
  confirm = "fan-plug-v"
  step {
    act    = "Cut off the burnt plug, one wire at a time."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp a new plug, same colours, push home."
    places = ["upper-bay"]
  }
}

repair "remove-jumper" {
  name    = "take out the jumper of an earlier repair"
  part    = "left-jumper"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["switch-draft-m", "press-run-v", "w-look"]
  confirm = "jumper-look"
  note    = "Somebody bridged a fault. Test the pressure switch and the draft now."
  step {
    act    = "Take a photo of the jumper."
    places = ["upper-bay"]
  }
  step {
    act     = "Pull the jumper off both terminals."
    caution = "That switch keeps flame and fumes in."
    level   = "warning"
    wire    = "switch-in"
    places  = ["upper-bay"]
  }
  step {
    act    = "Put both switch wires back on."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
}

repair "clear-port" {
  name    = "clear the pressure port"
  part    = "port"
  kind    = "clean"
  minutes = q("5..10 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "port-look"
  step {
    act    = "Pull the hose off the port."
    places = ["upper-bay"]
  }
  step {
    act     = "Turn a small drill bit by hand in the port."
    caution = "Do not blow into the pressure switch."
    level   = "caution"
    places  = ["upper-bay"]
  }
}

repair "replace-hose" {
  name    = "replace the pressure hose"
  part    = "hose"
  kind    = "replace"
  price   = q("3..15 money", "from memory")
  minutes = q("5..10 min", "from memory")
  match   = ["bore", "heat rating", "length"]
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Pull the old hose off both nipples."
    places = ["upper-bay"]
  }
  step {
    act    = "Cut the new hose to the same length."
    places = ["upper-bay"]
  }
  step {
    act    = "Push it on both nipples, no kink."
    places = ["upper-bay"]
  }
}

repair "refit-hose" {
  name    = "refit the pressure hose"
  part    = "hose"
  kind    = "refit"
  minutes = q("2..5 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Push the hose on its own nipple."
    places = ["upper-bay"]
  }
}

repair "drain-hose" {
  name    = "drain the pressure hose"
  part    = "hose"
  kind    = "clean"
  minutes = q("5..15 min", "from memory")
  causes  = ["fan-drain-look", "vent-look"]
  confirm = "hose-wet"
  note    = "Water comes from somewhere: drain, slope, or vent."
  step {
    act     = "Pull the hose off the switch end."
    caution = "Do not blow into the pressure switch."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Shake the water out, let the hose hang."
    places = ["upper-bay"]
  }
}

repair "clear-inducer-drain" {
  name    = "clear the drain of the draft fan"
  part    = "inducer-drain"
  kind    = "clean"
  minutes = q("10..30 min", "from memory")
  causes  = ["hose-wet", "vent-look"]
  confirm = "fan-drain-look"
  step {
    act     = "Pull the drain tube, let the water out."
    caution = "Keep water off the board."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Flush the tube, refit it with a slope."
    places = ["upper-bay"]
  }
}

repair "replace-pressure-switch" {
  name    = "replace the pressure switch"
  part    = "pressure-switch"
  kind    = "replace"
  price   = q("25..80 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["set point on the label", "number of ports", "terminals"]
  causes  = ["switch-draft-m", "vent-look", "jumper-look"]
  confirm = "press-run-v"
  note    = "Only the same set point. Measure the draft again after the swap."
  step {
    act     = "Take a photo of hose and wires."
    caution = "Never another set point than on the old label."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire."
    wire   = "switch-in"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Push the hose on its own nipple."
    places = ["upper-bay"]
  }
}

repair "replace-inducer-capacitor" {
  name    = "replace the capacitor of the draft fan"
  part    = "inducer-capacitor"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["microfarads", "at least the volts"]
  causes  = ["fan-amps", "switch-draft-m", "rules"]
  confirm = "fan-cap"
  step {
    act     = "Discharge the capacitor through a resistor."
    caution = "It may hold a charge."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act     = "Measure D C volts across its terminals: below five volts."
    caution = "Above five volts: discharge it again before you touch a wire."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire."
    wire   = "fan-cap-a"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "fan-cap-b"
    places = ["upper-bay"]
  }
}

repair "replace-inducer" {
  name    = "replace the draft fan"
  part    = "inducer"
  kind    = "replace"
  price   = q("120..350 money", "from memory")
  minutes = q("45..90 min", "from memory")
  match   = ["volts", "amps", "rotation", "housing", "gasket"]
  causes  = ["fan-drain-look", "vent-look", "rules"]
  confirm = "switch-draft-m"
  step {
    act    = "Take a photo of plug, hose, and wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Part the plug, lift the ground wire."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Take off hose and vent coupling."
    places = ["upper-bay"]
  }
  step {
    act     = "Fit the new fan with a new gasket."
    caution = "Sharp edges."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Refit coupling, hose, plug, and ground."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
}

repair "call-vent" {
  name    = "call licensed help for the vent pipe"
  part    = "vent-joints"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "vent-joint-look"
}

plate "press-set" {
  name     = "set point of the pressure switch"
  unit     = "inH2O"
  usual    = q("0.5 inH2O", "T13 as an example")
  possible = between(0.05, 3, "common practice, no source")
  places   = ["upper-bay"]
  ask      = "What number is printed on the pressure switch, in inches?"
}

plate "fan-uf" {
  name     = "value on the capacitor of the draft fan"
  unit     = "uF"
  usual    = q("5 uF", "HS")
  possible = between(1, 50, "common practice, no source")
  places   = ["upper-bay"]
  ask      = "How many microfarads are printed on the small capacitor?"
}
