# A blower with a run capacitor and speed taps.
assembly "air-psc" {}

part "speed-lead" {
  kind  = "wire"
  name  = "speed wire of the blower"
  place = "upper-bay"
  look  = "colored blower wire on the heat terminal"
  ports = { a = "BLW", b = "BLW-m" }
  mode "loose" {
    name   = "speed wire of the blower off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-speed-lead"
  }
  mode "wrong-terminal" {
    name   = "speed wire of the blower on the spare terminal"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "move-speed-lead"
  }
}

part "blower-capacitor" {
  kind  = "capacitor"
  name  = "capacitor of the blower"
  place = "lower-bay"
  look  = "silver can with two terminals, on the blower"
  ports = { a = "BLW-m", b = "BLW-n" }
  value = q("7.5 uF", 7.05, 7.95, "HS")
  mode "failed" {
    name   = "capacitor of the blower dead"
    does   = "weak"
    factor = q("0.16 x", 0.01, 0.5, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "replace-blower-capacitor"
  }
  mode "low" {
    name   = "capacitor of the blower weak, blower runs slowly"
    does   = "weak"
    factor = q("0.7 x", 0.5, 0.9, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-capacitor"
  }
}

part "blower" {
  kind    = "load"
  name    = "blower"
  place   = "lower-bay"
  look    = "big drum-shaped fan with a motor in it"
  ports   = { a = "BLW-m", b = "BLW-n" }
  ohms    = q("24 ohm", 13, 35, "common practice, no source")
  cold    = q("12 ohm", 4, 20, "STW")
  works   = q("80 V", "common practice, no source")
  motor   = "yes"
  needs   = blower-capacitor.healthy > 0.9 ? 1 : (blower-capacitor.healthy > 0.5 ? 0.55 : 0)
  numbers = { rise = q("51 dF", "own"), suction = q("0.227 inH2O", "own"), push = q("0.213 inH2O", "own") }
  mode "winding-open" {
    name   = "motor of the blower burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "seized" {
    name   = "blower stuck"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "dragging" {
    name   = "bearings of the blower rough"
    does   = "weak"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "grounded" {
    name   = "motor of the blower touches its frame inside"
    does   = "touch"
    to     = "CHASSIS"
    ohms   = q("1 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
}

part "blower-protector" {
  kind  = "contact"
  name  = "overheat protector of the blower"
  place = "lower-bay"
  look  = "inside the motor, not visible"
  ports = { a = "BLW-n", b = "NB" }
  set   = q("250 degF", "from memory")
  trips = reached("steady") && fan-heat > blower-protector.set
  reset = "auto"
  mode "early" {
    name   = "blower stops when hot"
    does   = "set"
    set    = q("100 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
}

point "blower-out" {
  net   = "BLW"
  place = "upper-bay"
  name  = "heat terminal of the board"
  where = "marked heat, for the blower"
}

point "blower-tap" {
  net   = "BLW-m"
  place = "upper-bay"
  name  = "end of the blower's speed wire"
  where = "the colored wire of the blower"
}

point "blower-n" {
  net   = "BLW-n"
  place = "upper-bay"
  name  = "end of the blower's neutral wire"
  where = "the white wire of the blower"
}

point "blower-a" {
  net   = "blower.a"
  place = "upper-bay"
  name  = "speed wire of the blower"
  where = "taken off the board"
}

point "blower-b" {
  net   = "blower.b"
  place = "upper-bay"
  name  = "neutral wire of the blower"
  where = "taken off the row of white wires"
}

point "blower-cap-a" {
  net   = "blower-capacitor.a"
  place = "lower-bay"
  name  = "first terminal of the blower capacitor"
  where = "with the wires off"
}

point "blower-cap-b" {
  net   = "blower-capacitor.b"
  place = "lower-bay"
  name  = "second terminal of the blower capacitor"
  where = "with the wires off"
}

check "see-blower" {
  stage    = "watch"
  name     = "blower"
  function = "look"
  part     = "blower"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the big blower starts"
  unless   = ["see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame"]
  act      = "Listen for the big blower in the lower part."
  ask      = "Is the blower running, humming, or silent?"
  option "running" {
    when  = !blower.hums && blower.works > 0.1
    label = "Running"
  }
  option "humming" {
    when  = blower.hums
    label = "Humming"
  }
  option "silent" {
    missed = true
    label  = "Silent"
  }
}

check "blower-out-v" {
  stage    = "plan"
  name     = "volts from the board to the blower"
  function = "volts-ac"
  part     = "board"
  red      = "blower-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "blower-ohms"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the blower should run."
  caution  = "House voltage. The blower starts by itself."
}

check "blower-tap-v" {
  stage    = "plan"
  name     = "volts at the blower's speed wire"
  function = "volts-ac"
  part     = "speed-lead"
  red      = "blower-tap"
  black    = "blower-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "speed-lead-look"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the blower should run."
  caution  = "House voltage. The blower starts by itself."
}

check "blower-amps" {
  stage    = "plan"
  name     = "current of the blower"
  function = "amps-ac"
  part     = "blower"
  quantity = "amps:blower"
  unit     = "A"
  limit    = between(2, 8, "plate")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "blower-ohms"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Close the clamp around the blower's speed wire."
  caution  = "Live wire. The blower starts by itself."
}

check "blower-ohms" {
  stage    = "plan"
  name     = "blower motor"
  function = "ohms"
  part     = "blower"
  red      = "blower-a"
  black    = "blower-b"
  unit     = "ohm"
  limit    = between(5, 25, "STW")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["blower-a", "blower-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "blower-frame" {
  stage    = "plan"
  name     = "blower motor to its frame"
  function = "ohms"
  part     = "blower"
  red      = "blower-a"
  black    = "frame"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["blower-a", "blower-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  must     = true
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "blower-cap" {
  stage    = "plan"
  name     = "capacitor of the blower"
  function = "capacitance"
  part     = "blower-capacitor"
  red      = "blower-cap-a"
  black    = "blower-cap-b"
  unit     = "uF"
  label    = "blower-uf"
  limit    = between(label * 0.94, label * 1.06, "HS")
  power    = "off"
  places   = ["lower-bay"]
  lift     = ["blower-cap-a", "blower-cap-b"]
  hands_in = true
  hazard   = "capacitor"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the micro farads."
  caution  = "It may hold a charge. Touch no bare terminal."
}

check "speed-lead-look" {
  stage    = "plan"
  name     = "speed wire of the blower"
  function = "look"
  part     = "speed-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Compare the colored blower wire with the wiring diagram."
  ask      = "How is the wire? In the right place, in the wrong place, or loose?"
  option "right-place" {
    when  = !mode("speed-lead.wrong-terminal") && !mode("speed-lead.loose")
    label = "In the right place"
  }
  option "wrong-place" {
    when  = mode("speed-lead.wrong-terminal")
    label = "In the wrong place"
  }
  option "loose" {
    label = "Loose"
  }
}

check "blower-spin" {
  stage    = "plan"
  name     = "blower wheel turned by hand"
  function = "look"
  part     = "blower"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the wheel with one finger."
  caution  = "Sharp blades. The power stays off."
  ask      = "How does the wheel turn? Free, blocked, or rough?"
  option "free" {
    when  = !mode("blower.seized") && !mode("blower.dragging")
    label = "Free"
  }
  option "not-running" {
    when  = mode("blower.seized")
    label = "Blocked"
  }
  option "grinding" {
    label = "Rough"
  }
}

check "blower-cap-look" {
  stage    = "plan"
  name     = "look of the blower's capacitor"
  function = "look"
  part     = "blower-capacitor"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the capacitor from all sides."
  ask      = "Is it good or swollen?"
  option "good" {
    when  = !mode("blower-capacitor.failed")
    label = "Good"
  }
  option "swollen" {
    label = "Swollen"
  }
}

repair "refit-speed-lead" {
  name    = "fasten the speed wire of the blower"
  part    = "speed-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "blower-tap-v"
  step {
    act    = "Push the colored wire on the heat terminal. Pull gently to test it."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "move-speed-lead" {
  name    = "move the speed wire to the heat terminal"
  part    = "speed-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["jumper-look", "w-look"]
  confirm = "speed-lead-look"
  step {
    act    = "Read the colors on the wiring diagram."
    places = ["upper-bay"]
  }
  step {
    act    = "Move only the colored wire to the heat terminal."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "replace-blower-capacitor" {
  name    = "replace the capacitor of the blower"
  part    = "blower-capacitor"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["microfarads", "at least the same volts"]
  causes  = ["blower-amps", "blower-wheel-look", "rules"]
  confirm = "blower-cap"
  step {
    act     = "Discharge the capacitor through a resistor."
    caution = "It may hold a charge."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act     = "Measure D C volts across its terminals. It must be below five volts."
    caution = "If it is above five volts, discharge it again before you touch a wire."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Move the first wire to the new capacitor."
    wire   = "blower-cap-a"
    places = ["lower-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "blower-cap-b"
    places = ["lower-bay"]
  }
}

repair "replace-blower-motor" {
  name    = "replace the motor of the blower"
  part    = "blower"
  kind    = "replace"
  price   = q("150..500 money", "from memory")
  minutes = q("90..180 min", "from memory")
  match   = ["volts", "amps", "horsepower", "speeds", "direction of turn", "capacitor"]
  causes  = ["blower-cap", "filter-look", "static-m", "rules"]
  confirm = "blower-amps"
  step {
    act    = "Take a photo of every blower wire."
    places = ["lower-bay", "upper-bay"]
  }
  step {
    act    = "Take the colored speed wire off the board."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Take the neutral wire of the blower off."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act     = "Slide the blower out on its rails."
    caution = "Heavy, with sharp edges."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Change the motor. Put the wheel in the same place."
    places = ["lower-bay"]
  }
  step {
    act    = "Connect the wires again, color by color."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

plate "blower-uf" {
  name     = "value on the capacitor of the blower"
  unit     = "uF"
  usual    = q("7.5 uF", "HS")
  possible = between(1, 80, "common practice, no source")
  places   = ["lower-bay"]
  ask      = "How many microfarads are printed on the blower's capacitor?"
}
