# Vent, intake, draft fan, and the pressure switch that proves it.
assembly "draft" { machine = "furnace" }

part "vent" {
  kind  = "passage"
  name  = "vent pipe"
  place = "outside"
  look  = "metal pipe that carries the exhaust out"
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
  kind  = "thing"
  name  = "vent pipe joints"
  place = "room"
  look  = "where the pieces of the vent pipe meet"
  mode "apart" {
    name   = "vent pipe apart at a joint"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-vent"
  }
}

part "air-intake" {
  kind  = "passage"
  name  = "air intake"
  place = "outside"
  look  = "opening or pipe that brings air to the burners"
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
    name   = "water stands in the draft fan"
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
  look  = "small hose port on the draft fan"
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
    name   = "pressure hose off its port"
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
  look   = "round, with a rubber hose and two wires"
  ports  = { a = "HS", b = "PS-b" }
  set    = q("0.5 inH2O", "T13")
  closes = sensed-draft >= pressure-switch.set
  safety = true
  mode "stuck-open" {
    name   = "pressure switch never closes"
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
    name   = "wrong pressure switch, with another setting"
    does   = "set"
    set    = q("1.2 inH2O", "own")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "burnt" {
    name   = "contacts of the pressure switch burned"
    does   = "resist"
    ohms   = q("60 ohm", 20, 120, "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
}

part "pressure-lead" {
  kind  = "wire"
  name  = "wire from the pressure switch to the board"
  place = "upper-bay"
  look  = "wire from the pressure switch to the board plug"
  ports = { a = "PS-b", b = "PS-out" }
  mode "off" {
    name   = "wire from the pressure switch off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pressure-lead"
  }
}

part "left-jumper" {
  kind   = "switch"
  name   = "jumper wire left by a repair"
  place  = "upper-bay"
  look   = "short wire across the two pressure switch terminals"
  ports  = { a = "HS", b = "PS-out" }
  closes = 1 < 0
  mode "left-in" {
    name   = "jumper wire left across the pressure switch"
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
  look  = "two-pin plug in the draft fan wires"
  ports = { a = "IND", b = "IND-m" }
  mode "open" {
    name   = "plug of the draft fan loose or burned"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-inducer-plug"
  }
}

part "inducer-capacitor" {
  kind  = "capacitor"
  name  = "capacitor of the draft fan"
  place = "upper-bay"
  look  = "small can or box with two wires, by the draft fan"
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
    name   = "capacitor of the draft fan dead"
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
    name   = "motor of the draft fan burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "seized" {
    name   = "draft fan stuck"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "dragging" {
    name   = "bearings of the draft fan rough"
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
  look    = "inside the motor, not visible"
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
  name  = "motor side of the draft fan plug"
  where = "the two-pin plug of the draft fan"
}

point "fan-plug-n" {
  net   = "IND-n"
  place = "upper-bay"
  name  = "neutral side of the draft fan plug"
  where = "the second pin of the same plug"
}

point "fan-a" {
  net   = "inducer.a"
  place = "upper-bay"
  name  = "first wire of the draft fan"
  where = "plug pulled apart, motor side"
}

point "fan-b" {
  net   = "inducer.b"
  place = "upper-bay"
  name  = "second wire of the draft fan"
  where = "plug pulled apart, motor side"
}

point "fan-plug-a" {
  net   = "inducer-plug.a"
  place = "upper-bay"
  name  = "board end of the draft fan wire"
  where = "with the wire off the board"
}

point "fan-plug-b" {
  net   = "inducer-plug.b"
  place = "upper-bay"
  name  = "motor end of the draft fan wire"
  where = "the other end of the same wire"
}

point "fan-cap-a" {
  net   = "inducer-capacitor.a"
  place = "upper-bay"
  name  = "first terminal of the draft fan capacitor"
  where = "with the wires off"
}

point "fan-cap-b" {
  net   = "inducer-capacitor.b"
  place = "upper-bay"
  name  = "second terminal of the draft fan capacitor"
  where = "with the wires off"
}

point "switch-in" {
  net   = "HS"
  place = "upper-bay"
  name  = "first pressure switch terminal"
  where = "with the wire from the board plug"
}

point "switch-out" {
  net   = "PS-b"
  place = "upper-bay"
  name  = "second pressure switch terminal"
  where = "with the wire back to the board plug"
}

point "press-a" {
  net   = "pressure-switch.a"
  place = "upper-bay"
  name  = "first terminal of the pressure switch"
  where = "with its wire pulled off"
}

point "press-b" {
  net   = "pressure-switch.b"
  place = "upper-bay"
  name  = "second terminal of the pressure switch"
  where = "the other terminal"
}

point "press-pin" {
  net   = "PS-out"
  place = "upper-bay"
  name  = "pressure pin of the board plug"
  where = "large plug of the board, pressure input"
}

check "vent-look" {
  stage    = "free"
  name     = "end of the vent pipe"
  function = "look"
  part     = "vent"
  places   = ["outside"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "From outside, shine a light into the end of the vent pipe."
  caution  = "Stay off ladders and ice."
  ask      = "Is it clear or blocked?"
  option "clear" {
    when  = !(vent.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-vent"
    label = "Blocked"
  }
}

check "intake-look" {
  stage    = "free"
  name     = "air intake"
  function = "look"
  part     = "air-intake"
  places   = ["outside"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the air intake outside. Look for snow, leaves, or a nest."
  ask      = "Is it clear or blocked?"
  option "clear" {
    when  = !(air-intake.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-intake"
    label = "Blocked"
  }
}

check "vent-joint-look" {
  stage    = "free"
  name     = "vent pipe joints"
  function = "look"
  part     = "vent-joints"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the vent pipe with a light."
  caution  = "Hot pipe. Look, but do not touch."
  ask      = "Are the vent pipe joints tight or apart?"
  option "tight" {
    when  = !mode("vent-joints.apart")
    label = "Tight"
  }
  option "loose" {
    stop  = "vent"
    label = "Apart"
  }
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
  act      = "Stand at the ${machine} and listen for the small draft fan."
  ask      = "Is the draft fan running, humming, or silent?"
  option "running" {
    when  = !inducer.hums && inducer.works > 0.1
    label = "Running"
  }
  option "humming" {
    when  = inducer.hums
    label = "Humming"
  }
  option "silent" {
    missed = true
    label  = "Silent"
  }
}

check "fan-out-v" {
  stage    = "plan"
  name     = "volts from the board to the draft fan"
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
  act      = "Read the volts while the draft fan should run."
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
  act      = "Read the volts while the draft fan should run."
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
  act      = "Close the clamp around one draft fan wire."
  caution  = "Live wire. The fan starts by itself."
}

check "press-rest-v" {
  stage    = "plan"
  name     = "volts across the pressure switch at rest"
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
  act      = "Hold both tips still. Read the volts."
}

check "press-run-v" {
  stage    = "plan"
  name     = "volts across the pressure switch with the fan running"
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
  act      = "Read the volts while the draft fan runs."
  caution  = "The draft fan starts by itself."
}

check "press-pin-c" {
  stage    = "plan"
  name     = "volts at the pressure pin with the fan running"
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
  act      = "Push the tip into the plug first. Read the volts while the fan runs."
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "press-lead-ohms" {
  stage    = "plan"
  name     = "wire from the pressure switch"
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fan-ohms" {
  stage    = "plan"
  name     = "draft fan motor"
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fan-lead-ohms" {
  stage    = "plan"
  name     = "draft fan wire"
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
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
  act      = "Keep your fingers off the metal tips. Read the micro farads."
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
  fit      = "Pull the hose off the port. Connect the gauge between hose and port with a three-way fitting."
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
  fit      = "Pull the hose off the switch. Connect the gauge between hose and switch with a three-way fitting."
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
  act      = "Bend the whole rubber hose gently under a light."
  ask      = "Is the hose good, off its port, or split?"
  option "good" {
    when  = !mode("hose.off") && !mode("hose.split")
    label = "Good"
  }
  option "off-port" {
    when  = mode("hose.off")
    label = "Off its port"
  }
  option "split" {
    label = "Split"
  }
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
  act      = "Pull the hose off the switch end. Shake it."
  ask      = "Is the inside of the hose dry or wet?"
  option "dry" {
    when  = !(mode("hose.wet") || mode("inducer-drain.blocked"))
    label = "Dry"
  }
  option "wet" {
    label = "Wet"
  }
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
  act      = "Shine a light into the small port where the hose was."
  ask      = "Is the port clear or blocked?"
  option "clear" {
    when  = !(port.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
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
  act      = "Pull the drain tube off the draft fan. Look for standing water."
  ask      = "Is the drain tube clear or blocked?"
  option "clear" {
    when  = !(inducer-drain.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
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
  act      = "Read the number on the pressure switch. Compare it with the parts label."
  ask      = "Is the number the same or different?"
  option "same" {
    when  = !mode("pressure-switch.wrong-part")
    label = "The same"
  }
  option "different" {
    label = "Different"
  }
}

check "jumper-look" {
  stage    = "plan"
  name     = "jumper wires left by a repair"
  function = "look"
  part     = "left-jumper"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at every safety switch for a short wire across it."
  ask      = "Are the switches clear or bypassed?"
  option "clear" {
    when  = !mode("left-jumper.left-in")
    label = "Clear"
  }
  option "bypassed" {
    label = "Bypassed"
  }
}

check "fan-spin" {
  stage    = "plan"
  name     = "draft fan turned by hand"
  function = "look"
  part     = "inducer"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the small cooling wheel of the fan with one finger."
  ask      = "How does the wheel turn? Free, blocked, or rough?"
  option "free" {
    when  = !mode("inducer.seized") && !mode("inducer.dragging")
    label = "Free"
  }
  option "not-running" {
    when  = mode("inducer.seized")
    label = "Blocked"
  }
  option "grinding" {
    label = "Rough"
  }
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
  act      = "Shine a light in. Turn the shaft by hand."
  ask      = "On its shaft, is the fan wheel tight or loose?"
  option "tight" {
    when  = !(inducer-wheel.passes < 0.8)
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "fan-cap-look" {
  stage    = "plan"
  name     = "look of the draft fan's capacitor"
  function = "look"
  part     = "inducer-capacitor"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the small capacitor from all sides."
  ask      = "Is it good or swollen?"
  option "good" {
    when  = !mode("inducer-capacitor.open")
    label = "Good"
  }
  option "swollen" {
    label = "Swollen"
  }
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
  act      = "Pull the two halves of the draft fan plug apart. Look at the pins."
  ask      = "Are the pins good, or burned or loose?"
  option "good" {
    when  = !mode("inducer-plug.open")
    label = "Good"
  }
  option "burnt" {
    label = "Burned or loose"
    also  = ["loose"]
  }
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
  act      = "Pull gently on each wire at the pressure switch."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !mode("pressure-lead.off")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

repair "clear-intake" {
  name    = "clear the air intake"
  part    = "air-intake"
  kind    = "clean"
  minutes = q("5..30 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "intake-look"
  step {
    act     = "Clear snow and leaves away, one foot around it."
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
  note    = "If the chimney is in doubt, or a nest is out of reach, call for help. Have a carbon monoxide alarm in place."
  step {
    act     = "Turn the thermostat down. Wait until the fan stops."
    caution = "The exhaust is hot while it runs."
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
    act   = "Check that the whole pipe slopes back and its joints are tight."
    power = "on"
  }
}

repair "refit-pressure-lead" {
  name    = "fasten the wire from the pressure switch"
  part    = "pressure-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "press-pin-c"
  step {
    act    = "Push the connector on. Pull gently to test it."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
}

repair "refit-inducer-plug" {
  name    = "put a new plug on the draft fan wires"
  part    = "inducer-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["amps", "pins"]
  confirm = "fan-plug-v"
  step {
    act    = "Cut off the burned plug, one wire at a time."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new plug, with the same colors. Push it together."
    places = ["upper-bay"]
  }
}

repair "remove-jumper" {
  name    = "take out the jumper wire left by a repair"
  part    = "left-jumper"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["switch-draft-m", "press-run-v", "w-look"]
  confirm = "jumper-look"
  note    = "Somebody bypassed a fault. Test the pressure switch and the draft now."
  step {
    act    = "Take a photo of the jumper wire."
    places = ["upper-bay"]
  }
  step {
    act     = "Pull the jumper wire off both terminals."
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
    act     = "Turn a small drill bit in the port, by hand."
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
  match   = ["inner width", "heat rating", "length"]
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Pull the old hose off both ports."
    places = ["upper-bay"]
  }
  step {
    act    = "Cut the new hose to the same length."
    places = ["upper-bay"]
  }
  step {
    act    = "Push it on both ports. Make sure it has no kink."
    places = ["upper-bay"]
  }
}

repair "refit-hose" {
  name    = "put the pressure hose back on"
  part    = "hose"
  kind    = "refit"
  minutes = q("2..5 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Push the hose back on its own port."
    places = ["upper-bay"]
  }
}

repair "drain-hose" {
  name    = "get the water out of the pressure hose"
  part    = "hose"
  kind    = "clean"
  minutes = q("5..15 min", "from memory")
  causes  = ["fan-drain-look", "vent-look"]
  confirm = "hose-wet"
  note    = "The water comes from somewhere. Check the drain, the slope, and the vent pipe."
  step {
    act     = "Pull the hose off the switch end."
    caution = "Do not blow into the pressure switch."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Shake the water out. Put the hose back so that it hangs free."
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
    act     = "Pull the drain tube off. Let the water run out."
    caution = "Keep water away from the board."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Flush the tube. Put it back so that it slopes down."
    places = ["upper-bay"]
  }
}

repair "replace-pressure-switch" {
  name    = "replace the pressure switch"
  part    = "pressure-switch"
  kind    = "replace"
  price   = q("25..80 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["setting on the label", "number of ports", "terminals"]
  causes  = ["switch-draft-m", "vent-look", "jumper-look"]
  confirm = "press-run-v"
  note    = "Use only the same setting. Measure the draft again after the swap."
  step {
    act     = "Take a photo of the hose and the wires."
    caution = "Never use another setting than the one on the old label."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire to the new switch."
    wire   = "switch-in"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Push the hose on its own port."
    places = ["upper-bay"]
  }
}

repair "replace-inducer-capacitor" {
  name    = "replace the capacitor of the draft fan"
  part    = "inducer-capacitor"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["microfarads", "at least the same volts"]
  causes  = ["fan-amps", "switch-draft-m", "rules"]
  confirm = "fan-cap"
  step {
    act     = "Discharge the capacitor through a resistor."
    caution = "It may hold a charge."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act     = "Measure D C volts across its terminals. It must be below five volts."
    caution = "If it is above five volts, discharge it again before you touch a wire."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire to the new capacitor."
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
  match   = ["volts", "amps", "direction of turn", "housing", "gasket"]
  causes  = ["fan-drain-look", "vent-look", "rules"]
  confirm = "switch-draft-m"
  step {
    act    = "Take a photo of the plug, the hose, and the wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Pull the two halves of the plug apart. Take off the ground wire."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Take off the hose and the vent coupling."
    places = ["upper-bay"]
  }
  step {
    act     = "Put in the new fan with a new gasket."
    caution = "Sharp edges."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Put the coupling, the hose, the plug, and the ground wire back."
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
