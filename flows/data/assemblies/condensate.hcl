# The water of a condensing appliance: trap, drain, neutralizer, and a pump whose safety switch breaks the 24 volts.
# The switch lies between the nets ${before} and ${after}. Water that cannot leave stands in the collector after some minutes of fire.
assembly "condensate" {
  machine = "furnace"
  bay     = "lower-bay"
  before  = "R-pump"
  after   = "R-fl2"
  hot     = "warm"
}

part "trap" {
  kind  = "passage"
  name  = "condensate trap"
  place = "${bay}"
  look  = "plastic box or bend full of water, with hoses in and one hose out"
  mode "clogged" {
    name   = "condensate trap clogged with slime"
    does   = "factor"
    factor = q("0.1 x", 0, 0.3, "common practice, no source")
    rate   = q("8 x", "common practice, no source")
    repair = "flush-trap"
  }
  mode "dry" {
    name   = "condensate trap dry, air is drawn through it"
    does   = "factor"
    factor = q("0.7 x", "own")
    rate   = q("2 x", "common practice, no source")
    repair = "prime-trap"
  }
}

part "drain-line" {
  kind  = "passage"
  name  = "condensate drain line"
  place = "room"
  look  = "plastic pipe or hose from the trap to the floor drain or the pump"
  mode "frozen" {
    name   = "condensate drain line frozen"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "thaw-drain"
  }
  mode "sagging" {
    name   = "condensate drain line sags and holds air"
    does   = "factor"
    factor = q("0.2 x", 0, 0.4, "common practice, no source")
    wrong  = true
    rate   = q("2 x", "common practice, no source")
    repair = "set-drain"
  }
}

part "neutralizer" {
  kind  = "passage"
  name  = "neutralizer cartridge"
  place = "room"
  look  = "clear or white tube full of stones, in the drain line"
  mode "clogged" {
    name   = "neutralizer cartridge clogged"
    does   = "factor"
    factor = q("0.1 x", 0, 0.4, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "flush-neutralizer"
  }
}

part "pump-cord" {
  kind  = "thing"
  name  = "plug of the condensate pump"
  place = "room"
  look  = "cord of the pump, in a wall outlet"
  mode "out" {
    name   = "condensate pump unplugged"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "plug-pump"
  }
}

part "pump" {
  kind  = "thing"
  name  = "condensate pump"
  place = "room"
  look  = "small box on the floor with a hose in and a thin tube out"
  mode "dead" {
    name   = "condensate pump dead or its float stuck"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-pump"
  }
}

part "pump-switch" {
  kind   = "contact"
  name   = "safety switch of the condensate pump"
  place  = "room"
  look   = "two thin wires that come out of the pump"
  ports  = { a = "${before}", b = "${after}" }
  closes = pump.value * pump-cord.value > 0.5
  safety = true
  mode "stuck" {
    name   = "safety switch of the condensate pump stuck open"
    does   = "stuck-open"
    rate   = q("0.5 x", "common practice, no source")
    repair = "replace-pump"
  }
}

signal "drains" {
  unit = "x"
  is   = trap.passes * drain-line.passes * neutralizer.passes
}

# 1 while the collector is free of water; what is left of the draft when it is not
signal "water-back" {
  unit = "x"
  is   = reached("${hot}") && drains < 0.5 ? 0.3 : 1
}

point "pump-in" {
  net   = "${before}"
  place = "room"
  name  = "first safety wire of the pump"
  where = "at the pump, in its wire nut"
}

point "pump-out" {
  net   = "${after}"
  place = "room"
  name  = "second safety wire of the pump"
  where = "at the pump, in its wire nut"
}

point "pump-a" {
  net   = "pump-switch.a"
  place = "room"
  name  = "first safety wire of the pump, taken off"
  where = "taken out of its wire nut"
}

point "pump-b" {
  net   = "pump-switch.b"
  place = "room"
  name  = "second safety wire of the pump, taken off"
  where = "taken out of its wire nut"
}

check "pump-look" {
  stage    = "free"
  name     = "condensate pump"
  function = "look"
  part     = "pump"
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look into the small pump box on the floor."
  ask      = "How is the water in the pump? Low, full, or there is no pump?"
  option "low" {
    when  = pump.value * pump-cord.value > 0.5
    label = "Low"
  }
  option "full" {
    label = "Full"
  }
  option "missing" {
    as    = "low"
    label = "There is no pump"
  }
}

check "pump-cord-look" {
  stage    = "free"
  name     = "plug of the condensate pump"
  function = "look"
  part     = "pump-cord"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the cord of the pump to the wall."
  ask      = "Is the pump plugged in or unplugged?"
  option "plugged" {
    when  = pump-cord.value > 0.5
    label = "Plugged in"
  }
  option "unplugged" {
    mend  = "plug-pump"
    label = "Unplugged"
  }
}

check "pump-run" {
  stage    = "free"
  name     = "condensate pump with a cup of water"
  function = "look"
  part     = "pump"
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pour one cup of water into the pump."
  caution  = "Keep the water off the cord."
  ask      = "Is the pump running or silent?"
  option "running" {
    when  = pump.value * pump-cord.value > 0.5
    label = "Running"
  }
  option "silent" {
    label = "Silent"
  }
  unless = ["pump-look=missing", "pump-cord-look=unplugged"]
}

check "pump-v" {
  stage    = "plan"
  name     = "volts across the safety switch of the pump"
  function = "volts-ac"
  part     = "pump-switch"
  red      = "pump-in"
  black    = "pump-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  hazard   = "low"
  instead  = "pump-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  unless   = ["pump-look=missing"]
}

check "pump-ohms" {
  stage    = "plan"
  name     = "safety switch of the pump"
  function = "ohms"
  part     = "pump-switch"
  red      = "pump-a"
  black    = "pump-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  lift     = ["pump-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
  unless   = ["pump-look=missing"]
}

check "trap-look" {
  stage    = "plan"
  name     = "condensate trap"
  function = "look"
  part     = "trap"
  places   = ["${bay}"]
  power    = "off"
  hands_in = true
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  act      = "Take the hose off below the trap. Pour one cup of water in."
  caution  = "The water is sour. Keep it off wires and out of your eyes."
  ask      = "How is the trap? Clear, blocked, or dry before?"
  option "clear" {
    when  = trap.passes > 0.9
    label = "Clear"
  }
  option "blocked" {
    when  = trap.passes < 0.5
    label = "Blocked"
  }
  option "dry" {
    label = "Dry before"
  }
}

check "drain-look" {
  stage    = "plan"
  name     = "condensate drain line"
  function = "look"
  part     = "drain-line"
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the drain pipe to its end with a flashlight."
  ask      = "How is the drain pipe? Good, frozen, or sagging?"
  option "good" {
    when  = drain-line.ok
    label = "Good"
  }
  option "frozen" {
    when  = mode("drain-line.frozen")
    label = "Frozen"
  }
  option "sagging" {
    label = "Sagging"
  }
}

check "drain-pour" {
  stage    = "plan"
  name     = "cup of water in the drain line"
  function = "look"
  part     = "drain-line"
  places   = ["${bay}"]
  power    = "off"
  hands_in = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "clear"
  act      = "Pour one cup of water into the drain after the trap."
  ask      = "Does the water run away or stand still?"
  option "clear" {
    when  = drain-line.passes * neutralizer.passes > 0.5
    label = "Run away"
  }
  option "blocked" {
    label = "Stand still"
  }
}

check "neutralizer-look" {
  stage    = "plan"
  name     = "neutralizer cartridge"
  function = "look"
  part     = "neutralizer"
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Unscrew the tube with the stones. Look through it."
  caution  = "The water is sour. Wear gloves."
  ask      = "How is the tube? Clear, blocked, or there is no tube?"
  option "clear" {
    when  = neutralizer.passes > 0.5
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
  option "missing" {
    as    = "clear"
    label = "There is no tube"
  }
}

check "gurgle" {
  stage    = "watch"
  name     = "sound of water"
  function = "look"
  part     = "trap"
  power    = "on"
  call     = "on"
  at       = "${hot}"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Listen near the draft fan while it runs."
  ask      = "Do you hear water gurgle?"
  option "quiet" {
    when  = drains > 0.9
    label = "No"
  }
  option "gurgles" {
    label = "Yes"
  }
}

repair "flush-trap" {
  name    = "flush the condensate trap"
  part    = "trap"
  kind    = "clean"
  minutes = q("15..40 min", "from memory")
  causes  = ["drain-pour"]
  confirm = "trap-look"
  step {
    act     = "Put a bucket under the trap. Pull its hoses off."
    caution = "The water is sour. Keep it off wires and out of your eyes."
    level   = "warning"
    places  = ["${bay}"]
  }
  step {
    act    = "Rinse the trap in a sink until the water runs clear."
    places = ["${bay}"]
  }
  step {
    act    = "Put the trap and its hoses back. Fill it with water."
    places = ["${bay}"]
  }
}

repair "prime-trap" {
  name    = "fill the condensate trap with water"
  part    = "trap"
  kind    = "clean"
  minutes = q("5..10 min", "from memory")
  causes  = ["drain-pour"]
  confirm = "trap-look"
  note    = "A dry trap lets exhaust into the room."
  step {
    act    = "Pour one cup of water into the trap."
    places = ["${bay}"]
  }
}

repair "thaw-drain" {
  name    = "thaw the condensate drain line"
  part    = "drain-line"
  kind    = "clean"
  minutes = q("20..90 min", "from memory")
  confirm = "drain-look"
  note    = "It freezes again if the pipe is not kept warm. Wrap it."
  step {
    act     = "Lay warm wet cloths on the frozen pipe."
    caution = "Use warm water only. No flame and no boiling water."
    level   = "warning"
  }
  step {
    act = "Wrap the cold part of the pipe."
  }
}

repair "set-drain" {
  name    = "give the condensate drain line a slope"
  part    = "drain-line"
  kind    = "refit"
  minutes = q("10..40 min", "from memory")
  confirm = "drain-look"
  step {
    act = "Hang the pipe so that it runs downhill all the way."
  }
  step {
    act = "Pour in one cup of water. Watch it run away."
  }
}

repair "flush-neutralizer" {
  name    = "flush the neutralizer cartridge"
  part    = "neutralizer"
  kind    = "clean"
  price   = q("0..50 money", "from memory")
  minutes = q("15..30 min", "from memory")
  confirm = "neutralizer-look"
  step {
    act     = "Unscrew the tube over a bucket. Rinse the stones."
    caution = "The water is sour. Wear gloves."
    level   = "caution"
  }
  step {
    act = "Fill the tube with new stones. Screw it together."
  }
}

repair "plug-pump" {
  name    = "plug in the condensate pump"
  part    = "pump-cord"
  kind    = "set"
  minutes = q("1..5 min", "from memory")
  confirm = "pump-cord-look"
  step {
    act     = "Push the plug of the pump into the outlet."
    caution = "Your hands must be dry."
    level   = "caution"
    power   = "on"
  }
}

repair "replace-pump" {
  name    = "replace the condensate pump"
  part    = "pump"
  kind    = "replace"
  price   = q("45..120 money", "from memory")
  minutes = q("30..60 min", "from memory")
  match   = ["volts", "lift", "safety switch"]
  causes  = ["pump-cord-look"]
  confirm = "pump-run"
  note    = "Often it is only slime. Wash the box and the float first."
  step {
    act = "Unplug the pump. Pull the hoses off. Empty the box."
  }
  step {
    act     = "Move the first safety wire to the new pump."
    caution = "Never join the two wires without the switch."
    level   = "warning"
    wire    = "pump-in"
  }
  step {
    act  = "Move the second safety wire."
    wire = "pump-out"
  }
  step {
    act = "Put the hoses on. Plug it in. Pour one cup of water in."
  }
}

accept {
  why = "Many have no pump or no cartridge: the answer is heard, and counts as all well there."
  warnings = [
    "no fault makes anybody answer \"missing\" to check pump-look",
    "no fault makes anybody answer \"missing\" to check neutralizer-look",
  ]
}
