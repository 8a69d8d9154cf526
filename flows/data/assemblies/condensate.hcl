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
  look  = "plastic box or bend full of water, hoses in, one hose out"
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
  look  = "plastic pipe or hose from the trap to the drain"
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
  look  = "small box on the floor, a hose in, a thin tube out"
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
  look   = "two thin wires out of the pump"
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
  where = "at the pump, wire nut"
}

point "pump-out" {
  net   = "${after}"
  place = "room"
  name  = "second safety wire of the pump"
  where = "at the pump, wire nut"
}

point "pump-a" {
  net   = "pump-switch.a"
  place = "room"
  name  = "first safety wire of the pump, lifted"
  where = "wire nut off"
}

point "pump-b" {
  net   = "pump-switch.b"
  place = "room"
  name  = "second safety wire of the pump, lifted"
  where = "wire nut off"
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
  ask      = "How much water is in the pump? Low, full, or missing?"
  option "low" {
    when = pump.value * pump-cord.value > 0.5
    label = "Low"
  }
  option "full" { label = "Full" }
  option "missing" {
    as = "low"
    label = "Missing"
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
  ask      = "How is the pump? Plugged in or unplugged?"
  option "plugged" {
    when = pump-cord.value > 0.5
    label = "Plugged in"
  }
  option "unplugged" { label = "Unplugged" }
}

check "pump-run" {
  stage    = "free"
  name     = "condensate pump with a cup of water"
  function = "look"
  part     = "pump"
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pour a cup of water into the pump."
  caution  = "Keep water off the cord."
  ask      = "Is the pump running, or silent?"
  option "running" { when = pump.value * pump-cord.value > 0.5 }
  option "silent" {}
}

check "pump-v" {
  stage    = "plan"
  name     = "across the safety switch of the pump"
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
  act      = "Read the volts, tips held still."
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
  act      = "Read the ohms, fingers off the tips."
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
  act      = "Hose off below the trap. Pour a cup in."
  caution  = "The water is sour. Keep it off wires and eyes."
  ask      = "How is the trap? Clear, blocked, or dry?"
  option "clear" {
    when = trap.passes > 0.9
    label = "Clear"
  }
  option "blocked" {
    when = trap.passes < 0.5
    label = "Blocked"
  }
  option "dry" { label = "Dry" }
}

check "drain-look" {
  stage    = "plan"
  name     = "condensate drain line"
  function = "look"
  part     = "drain-line"
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the drain pipe with a light to its end."
  ask      = "Is the drain pipe good, frozen, or sagging?"
  option "good" { when = drain-line.ok }
  option "frozen" { when = mode("drain-line.frozen") }
  option "sagging" {}
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
  act      = "Pour a cup into the drain behind the trap."
  ask      = "Does the water run off? Clear or blocked?"
  option "clear" {
    when = drain-line.passes * neutralizer.passes > 0.5
    label = "Clear"
  }
  option "blocked" { label = "Blocked" }
}

check "neutralizer-look" {
  stage    = "plan"
  name     = "neutralizer cartridge"
  function = "look"
  part     = "neutralizer"
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Unscrew the tube with the stones. Look through."
  caution  = "The water is sour. Wear gloves."
  ask      = "How is the tube with the stones? Clear, blocked, or missing?"
  option "clear" {
    when = neutralizer.passes > 0.5
    label = "Clear"
  }
  option "blocked" { label = "Blocked" }
  option "missing" {
    as = "clear"
    label = "Missing"
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
  act      = "Listen at the draft fan while it runs."
  ask      = "What do you hear? Quiet or gurgling?"
  option "quiet" {
    when = drains > 0.9
    label = "Quiet"
  }
  option "gurgles" { label = "Gurgling" }
}

repair "flush-trap" {
  name    = "flush the condensate trap"
  part    = "trap"
  kind    = "clean"
  minutes = q("15..40 min", "from memory")
  causes  = ["drain-pour"]
  confirm = "trap-look"
  step {
    act     = "Put a bucket below, pull the hoses off the trap."
    caution = "The water is sour. Keep it off wires and eyes."
    level   = "warning"
    places  = ["${bay}"]
  }
  step {
    act    = "Rinse the trap at a sink until it runs clear."
    places = ["${bay}"]
  }
  step {
    act    = "Put it back, hoses on, and fill it with water."
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
    act    = "Pour a cup of water into the trap."
    places = ["${bay}"]
  }
}

repair "thaw-drain" {
  name    = "thaw the condensate drain line"
  part    = "drain-line"
  kind    = "clean"
  minutes = q("20..90 min", "from memory")
  confirm = "drain-look"
  note    = "It freezes again unless the pipe is kept warm: wrap it."
  step {
    act     = "Lay warm wet cloths on the frozen pipe."
    caution = "Warm water only. No flame, no boiling water."
    level   = "warning"
  }
  step { act = "Wrap the cold stretch of the pipe." }
}

repair "set-drain" {
  name    = "give the condensate drain line a slope"
  part    = "drain-line"
  kind    = "refit"
  minutes = q("10..40 min", "from memory")
  confirm = "drain-look"
  step { act = "Hang the line up so that it falls all the way." }
  step { act = "Pour in a cup of water and watch it run." }
}

repair "flush-neutralizer" {
  name    = "flush the neutralizer cartridge"
  part    = "neutralizer"
  kind    = "clean"
  price   = q("0..50 money", "from memory")
  minutes = q("15..30 min", "from memory")
  confirm = "neutralizer-look"
  step {
    act     = "Unscrew the tube over a bucket, rinse the stones."
    caution = "The water is sour. Wear gloves."
    level   = "caution"
  }
  step { act = "Fill up with new stones, screw it together." }
}

repair "plug-pump" {
  name    = "plug the condensate pump in"
  part    = "pump-cord"
  kind    = "set"
  minutes = q("1..5 min", "from memory")
  confirm = "pump-cord-look"
  step {
    act     = "Push its plug into the outlet."
    caution = "Hands dry."
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
  note    = "Often it is only slime: wash the box and the float first."
  step { act = "Unplug it, pull the hoses off, empty the box." }
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
  step { act = "Hoses on, plug it in, pour a cup in." }
}

accept {
  why = "Many have no pump or no cartridge: the answer is heard, and counts as all well there."
  warnings = [
    "no fault makes anybody answer \"missing\" to check pump-look",
    "no fault makes anybody answer \"missing\" to check neutralizer-look",
  ]
}
