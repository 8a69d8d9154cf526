# A brushless blower with constant torque: house voltage lies on it all the time, a 24 volt signal on one of its taps makes it turn.
# Its module is never measured inside: signal there, line there, wheel free and still no turning is the proof.
assembly "air-ecm" {}

part "motor-plug" {
  kind  = "wire"
  name  = "power plug of the blower motor"
  place = "lower-bay"
  look  = "large plug on the blower motor, black, white and green"
  ports = { a = "LB", b = "BLW-L" }
  mode "open" {
    name   = "power plug of the blower motor burnt or loose"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-motor-plug"
  }
}

part "speed-lead" {
  kind  = "wire"
  name  = "tap wire of the blower"
  place = "upper-bay"
  look  = "thin colored wire, heat terminal to the blower motor"
  ports = { a = "TAP", b = "TAP-m" }
  mode "loose" {
    name   = "tap wire of the blower off"
    does   = "open"
    rate   = q("0.5 x", "common practice, no source")
    repair = "refit-speed-lead"
  }
  mode "wrong-terminal" {
    name   = "tap wire of the blower on the spare terminal"
    does   = "open"
    wrong  = true
    rate   = q("0.2 x", "common practice, no source")
    repair = "move-speed-lead"
  }
}

part "motor-common" {
  kind  = "wire"
  name  = "common wire of the blower motor"
  place = "lower-bay"
  look  = "thin wire marked C at the small motor plug"
  ports = { a = "C", b = "BLW-C" }
  mode "off" {
    name   = "common wire of the blower motor off"
    does   = "open"
    rate   = q("0.5 x", "common practice, no source")
    repair = "refit-motor-common"
  }
}

part "tap-input" {
  kind  = "load"
  name  = "signal input of the blower motor"
  place = "lower-bay"
  look  = "inside the motor, not seen and never measured"
  ports = { a = "TAP-m", b = "BLW-C" }
  ohms  = q("5000 ohm", 2000, 20000, "from memory")
  works = q("16 V", "common practice, no source")
}

part "blower" {
  kind    = "load"
  name    = "blower"
  place   = "lower-bay"
  look    = "big drum fan, a motor with a round box at its end"
  ports   = { a = "BLW-L", b = "NB" }
  ohms    = q("400 ohm", 200, 900, "from memory")
  cold    = q("200000 ohm", 80000, 320000, "from memory")
  works   = q("80 V", "common practice, no source")
  needs   = tap-input.works
  numbers = { rise = q("51 dF", "own"), suction = q("0.227 inH2O", "own"), push = q("0.213 inH2O", "own") }
  mode "module-dead" {
    name   = "module of the blower motor dead"
    does   = "stuck"
    rate   = q("4 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "wet" {
    name   = "plug of the blower motor wet"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "seized" {
    name   = "blower seized"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "dragging" {
    name   = "bearings of the blower drag"
    does   = "weak"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("0.7 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "grounded" {
    name   = "blower motor shorted to the frame"
    does   = "touch"
    to     = "CHASSIS"
    ohms   = q("1 ohm", "common practice, no source")
    rate   = q("0.5 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
}

point "blower-out" {
  net   = "TAP"
  place = "upper-bay"
  name  = "heat terminal of the blower on the board"
  where = "marked heat, a thin wire on it"
}

point "tap-a" {
  net   = "speed-lead.a"
  place = "upper-bay"
  name  = "board end of the tap wire"
  where = "pulled off the board"
}

point "tap-b" {
  net   = "speed-lead.b"
  place = "lower-bay"
  name  = "motor end of the tap wire"
  where = "pin of the small motor plug, plug off"
}

point "motor-c" {
  net   = "motor-common.b"
  place = "lower-bay"
  name  = "common pin of the small motor plug"
  where = "marked C, plug off"
}

point "motor-l" {
  net   = "motor-plug.b"
  place = "lower-bay"
  name  = "line pin of the motor power plug"
  where = "black wire, plug off"
}

point "blower-a" {
  net   = "blower.a"
  place = "lower-bay"
  name  = "line pin of the blower motor"
  where = "in the motor, plug off"
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
  act      = "Listen below for the big blower."
  ask      = "Is the blower running, or silent?"
  option "running" { when = blower.works > 0.1 }
  option "silent" {}
}

check "blower-out-v" {
  stage    = "plan"
  name     = "signal from the board to the blower"
  function = "volts-ac"
  part     = "board"
  red      = "blower-out"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "speed-lead-look"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read a minute after the flame lights."
  caution  = "The blower starts by itself."
}

check "tap-ohms" {
  stage    = "plan"
  name     = "tap wire of the blower"
  function = "ohms"
  part     = "speed-lead"
  red      = "tap-a"
  black    = "tap-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  lift     = ["tap-a", "tap-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms from end to end."
  caution  = "Never pull a motor plug with the power on."
}

check "motor-common-ohms" {
  stage    = "plan"
  name     = "common wire of the blower motor"
  function = "ohms"
  part     = "motor-common"
  red      = "motor-c"
  black    = "board-c"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  lift     = ["tap-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms from end to end."
  caution  = "Never pull a motor plug with the power on."
}

check "motor-line-ohms" {
  stage    = "plan"
  name     = "line wire of the blower motor"
  function = "ohms"
  part     = "motor-plug"
  red      = "motor-l"
  black    = "board-l"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  lift     = ["motor-l"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms from end to end."
  caution  = "Wait five minutes after power off: the motor holds a charge."
}

check "blower-frame" {
  stage    = "plan"
  name     = "blower motor to frame"
  function = "ohms"
  part     = "blower"
  red      = "blower-a"
  black    = "frame"
  unit     = "ohm"
  limit    = atleast(10000, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  lift     = ["blower-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  must     = true
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
  caution  = "Wait five minutes after power off: the motor holds a charge."
}

check "motor-plug-look" {
  stage    = "plan"
  name     = "plugs of the blower motor"
  function = "look"
  part     = "motor-plug"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Wait five minutes, then pull both motor plugs."
  caution  = "Never pull a motor plug with the power on."
  ask      = "Are the pins of the motor plugs dry, wet, or burned?"
  option "dry" { when = !mode("motor-plug.open") && !mode("blower.wet") }
  option "wet" { when = mode("blower.wet") }
  option "burnt" { label = "Burned" }
}

check "speed-lead-look" {
  stage    = "plan"
  name     = "tap wire of the blower"
  function = "look"
  part     = "speed-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Compare the thin colored wire with the diagram."
  ask      = "Is the tap wire in the right place? Right place, wrong place, or loose?"
  option "right-place" {
    when = !mode("speed-lead.wrong-terminal") && !mode("speed-lead.loose")
    label = "Right place"
  }
  option "wrong-place" {
    when = mode("speed-lead.wrong-terminal")
    label = "Wrong place"
  }
  option "loose" { label = "Loose" }
}

check "blower-spin" {
  stage    = "plan"
  name     = "blower wheel by hand"
  function = "look"
  part     = "blower"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the wheel with one finger. Soft steps are normal."
  caution  = "Sharp blades. Power stays off."
  ask      = "How does the wheel turn? Free, stuck, or grinding?"
  option "free" {
    when = !mode("blower.seized") && !mode("blower.dragging")
    label = "Free"
  }
  option "not-running" {
    when = mode("blower.seized")
    label = "Stuck"
  }
  option "grinding" { label = "Grinding" }
}

repair "refit-motor-plug" {
  name    = "refit the power plug of the blower motor"
  part    = "motor-plug"
  kind    = "refit"
  price   = q("0..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  causes  = ["rules"]
  confirm = "motor-line-ohms"
  step {
    act     = "Wait five minutes after power off."
    caution = "The motor holds a charge. Never pull its plug live."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Clean the pins, push the plug home until it clicks."
    wire   = "motor-l"
    places = ["lower-bay"]
  }
}

repair "refit-speed-lead" {
  name    = "refit the tap wire of the blower"
  part    = "speed-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "tap-ohms"
  step {
    act    = "Push the tap wire on the heat terminal, tug."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "move-speed-lead" {
  name    = "move the tap wire to the heat terminal"
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
    act    = "Move only the tap wire to the heat terminal."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "refit-motor-common" {
  name    = "refit the common wire of the blower motor"
  part    = "motor-common"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "motor-common-ohms"
  step {
    act     = "Push the small motor plug home until it clicks."
    caution = "Never pull a motor plug with the power on."
    level   = "warning"
    wire    = "motor-c"
    places  = ["lower-bay"]
  }
}

repair "replace-blower-motor" {
  name    = "replace the motor of the blower with its module"
  part    = "blower"
  kind    = "replace"
  price   = q("250..700 money", "from memory")
  minutes = q("90..180 min", "from memory")
  match   = ["part number or approved substitute", "volts", "horsepower", "rotation", "taps"]
  causes  = ["filter-look", "static-m", "motor-plug-look", "rules"]
  confirm = "see-blower"
  note    = "Water on the plug comes from a coil or a drain: mend that first. Leave a drip loop in the cable."
  step {
    act     = "Wait five minutes after power off."
    caution = "The motor holds a charge. Never pull its plug live."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Take a photo, then pull both motor plugs."
    wire   = "motor-l"
    places = ["lower-bay"]
  }
  step {
    act     = "Slide the blower out on its rails."
    caution = "Heavy, with sharp edges."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Change the motor, keep the wheel in the same place."
    places = ["lower-bay"]
  }
  step {
    act    = "Slide it in, push both plugs home."
    wire   = "motor-l"
    places = ["lower-bay"]
  }
}
