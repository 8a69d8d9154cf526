# The older gas furnace with an intermittent pilot: a spark lights the pilot, the pilot lights the burners, a chimney with a damper draws
# the exhaust, and a fan control in the plenum starts a belt-driven blower. No board, no status light.
# What it shares with other furnaces stands in assemblies.
#
# The unit is nobody's product. Plate, wiring diagram and label of the real unit win over everything here.

appliance "furnace-pilot" {
  title = "gas furnace with a spark-lit pilot and a chimney"
  fuel  = "gas"
  mains = true

  # no fan purges it, but a trial lets out pilot gas only: the main valve waits until the pilot is proved
  starts = q("12 x", "common practice, no source")
  dead   = ["line-in", "neutral-in", "frame"]
}

use "sources" {}
use "furnace-places" {
  place "upper-bay" { hazards = ["mains", "hot", "moving", "sharp", "gas"] }
}
use "line-120" {
  board = "strip"
  check "board-line" {
    instead = "house-power"
  }
  check "board-load" {
    at      = "heating"
    act     = "Read the volts while the blower runs."
    caution = "House voltage. The blower starts by itself."
    name    = "volts at the terminal strip while the blower runs"
  }
  load = "see-blower=silent"
}
use "call-24v" {
  board = "strip"
  part "board-fuse" {
    name = "fuse of the low voltage"
    look = "glass or flat fuse in the red wire of the transformer"
    mode "blown" {
      name = "fuse of the low voltage blown, and nothing is shorted now"
    }
  }
  check "stat-raise" {
    option "silent" {
      when = setpoint.ok && !reached("pilot")
    }
  }
  # a thermostat that calls joins the cable with the damper and the module
  check "cable-short" {
    limit = atleast(20, "common practice, no source")
  }
  repair "move-w-wire" {
    causes = ["w-tug"]
  }
}
use "coil-drain" {}
use "safety-string" {
  part "high-limit" {
    mode "burnt" {
      ohms = q("400 ohm", 250, 900, "own")
    }
  }
  part "limit-lead" {
    look  = "wire from terminal W to the high limit"
    ports = { a = "W", b = "LIM-in" }
  }
  check "limit-in-c" {
    call = "on"
  }
  check "limit-v" {
    call = "on"
  }
  check "roll-left-v" {
    call = "on"
  }
  check "roll-right-v" {
    call = "on"
  }
  check "string-end-c" {
    call = "on"
    act  = "Hold both tips still. Read the volts."
    name = "volts at the end of the limit switches"
  }
  point "string-end" {
    name  = "end of the limit switches"
    where = "with the wire to the spill switch"
  }
  repair "refit-string-lead" {
    step {
      act    = "Push the wire on its terminal. Pull gently to test it."
      wire   = "string-end"
      places = ["upper-bay"]
    }
  }
  start = "see-pilot=no-flame"
  board = "strip"
  end   = "spill switch"
  part "string-lead" {
    look = "wire from the last roll-out switch to the spill switch"
  }
}
use "vent-natural" {}
use "burner-dsi" {
  without = ["signal lit"]
  step    = "pilot"
  burner  = "pilot"
  board   = "ignition module"
}
use "pilot-intermittent" {}
use "gas" {
  check "hear-valve" {
    act = "Listen near the gas valve after the pilot lights."
  }
  check "see-colour" {
    act = "Look at the main flame."
  }
  point "gas-out" {
    name  = "main valve terminal of the ignition module"
    where = "marked M V"
  }
  check "gas-out-v" {
    name = "volts from the ignition module to the main valve"
    act  = "Put the tips on first. Read the volts when the gas valve clicks."
  }
  start = "see-pilot=no-flame"
  board = "ignition module"
}
use "flame-proof" {
  part "flame-rod" { look = "thin rod in the pilot flame with white ceramic and one wire" }
  signal "flame-at-rod" { is = pilot }
  check "flame-current" {
    at     = "pilot"
    act    = "Stand back. Read the meter while the pilot burns."
    unless = ["see-pilot=no-flame"]
  }
  check "rod-place" {
    ask = "Is the tip of the rod where the pilot burns?"
  }
  repair "set-flame-rod" {
    step {
      act     = "Loosen its screw. Turn the tip into the pilot flame."
      caution = "The ceramic breaks easily."
      level   = "caution"
      places  = ["burner-box", "upper-bay"]
    }
  }
  start = "see-pilot=no-flame"
  board = "ignition module"
}
use "air-psc" {
  without = ["mode speed-lead.wrong-terminal", "repair move-speed-lead", "option speed-lead-look.wrong-place"]
  point "blower-out" {
    name  = "blower terminal of the fan control"
    where = "on the fan side of the control"
  }
  check "blower-out-v" {
    name = "volts from the fan control to the blower"
    part = "fan-control"
  }
  check "speed-lead-look" {
    act = "Pull gently on the blower wire at the fan control."
    ask = "Is the blower wire in the right place or loose?"
    option "right-place" {
      when = !mode("speed-lead.loose")
    }
  }
}
use "air" {
  check "hear-rest" {
    name = "blower after turning it down"
    ask  = "Is the blower silent or still running?"
    option "silent" {
      when  = blower.works < 0.1
      label = "Silent"
    }
    option "running" {
      label = "Still running"
    }
  }
  signal "airflow" { is = blower.works * belt.passes * blower-wheel.passes * return-passes * supply-passes }
  signal "return-static" { is = blower.suction * blower.works * belt.passes / (return-passes * return-passes) }
  signal "supply-static" { is = blower.push * blower.works * belt.passes / (supply-passes * supply-passes) }
}
use "safety-questions" {}
use "furnace-story" {
  check "story-what" {
    option "not-enough" {
      when = reached("steady") && !stuck("steady") && !mode("fan-control.welded")
    }
    option "stops-early" {
      when = stuck("trial") || stuck("run") || stuck("heating") || stuck("steady")
    }
    option "never-stops" {
      when = mode("fan-control.welded")
    }
    option "no-start" {
      when = !reached("pilot")
    }
  }
  check "story-pattern" {
    option "every-start" {
      when = !(mode("w-tail.loose") || mode("line-run.loose") || mode("neutral-run.loose") || mode("blower-protector.early") || mode("power-stealing.leaks") || mode("spark-lead.cracked") || mode("electrode.gap") || mode("pilot-burner.lint"))
    }
    option "some-starts" {
      when = mode("w-tail.loose")
    }
  }
  check "story-when" {
    option "suddenly" {
      when = !(mode("flame-rod.dirty") || mode("filter.packed") || mode("coil.dirty") || mode("blower-wheel.dirty") || mode("burners.dirty") || mode("blower-capacitor.low") || mode("electrode.gap") || mode("pilot-burner.lint") || mode("belt.slack"))
    }
  }
  check "story-change" {
    option "nothing-done" {
      when = !(mode("w-tail.wrong-terminal") || mode("stat-setup.heat-pump")) && !(mode("flame-rod.bent") || mode("junction.reversed") || mode("gas-cock.closed") || mode("valve-switch.off") || mode("orifice.too-big") || mode("panel-seat.ajar") || mode("float-lead.off") || mode("r-terminal.off") || mode("w-terminal.off") || mode("r-wire.pinched") || mode("y-wire.pinched") || mode("supply.dead") || mode("breaker.off") || mode("vent.blocked"))
    }
    option "after-work" {
      when = mode("w-tail.wrong-terminal") || mode("stat-setup.heat-pump")
    }
  }
}
use "furnace-words" {
  without = ["check light", "check label", "lamp off", "lamp slow-blink", "lamp steady", "lamp 2", "lamp 3", "lamp 4", "lamp 5", "lamp 6", "lamp 7"]
}

# ---- what only this furnace has ----

part "fan-control" {
  kind    = "contact"
  name    = "fan control"
  place   = "upper-bay"
  look    = "box with a dial or two pointers and a probe in the warm air duct"
  ports   = { a = "LB", b = "BLW" }
  set     = q("120 degF", 110, 135, "common practice, no source")
  closes  = plenum > fan-control.set
  numbers = { cold = q("70 degF", "common practice, no source"), warm = q("160 degF", "common practice, no source") }
  mode "burnt" {
    name   = "fan contacts of the fan control burned open"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-fan-control"
  }
  mode "welded" {
    name   = "fan contacts of the fan control stuck closed"
    does   = "stuck-closed"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-fan-control"
  }
  mode "set-high" {
    name   = "fan pointer set far too high"
    does   = "set"
    set    = q("190 degF", "own")
    wrong  = true
    rate   = q("0.5 x", "common practice, no source")
    repair = "set-fan-control"
  }
}

part "belt" {
  kind  = "passage"
  name  = "belt of the blower"
  place = "lower-bay"
  look  = "black belt from the motor to the drum-shaped fan"
  mode "broken" {
    name   = "belt of the blower broken or off"
    does   = "factor"
    factor = q("0 x", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-belt"
  }
  mode "slack" {
    name   = "belt of the blower slips"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "tighten-belt"
  }
}

signal "lit" {
  unit = "x"
  is   = gas-flow > 0.5 && pilot > 0.3 && reached("trial") && burners.passes > 0.2 ? 1 : 0
}

signal "plenum" {
  unit = "degF"
  is   = reached("heating") && lit > 0.5 ? fan-control.warm : fan-control.cold
}

signal "fan-heat" {
  unit = "degF"
  is   = reached("heating") ? fan-control.warm : fan-control.cold
}

check "belt-look" {
  stage    = "plan"
  name     = "belt of the blower"
  function = "look"
  part     = "belt"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Press the belt with your thumb. It should give about one inch."
  caution  = "Keep your fingers out of the pulleys."
  ask      = "Is the belt good, loose, or missing?"
  option "good" {
    when  = belt.ok
    label = "Good"
  }
  option "loose" {
    when  = mode("belt.slack")
    label = "Loose"
  }
  option "missing" {
    label = "Missing"
  }
}

check "fan-pointer" {
  stage    = "plan"
  name     = "fan pointer of the fan control"
  function = "look"
  part     = "fan-control"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the pointer marked fan on. Leave the limit pointer alone."
  caution  = "Do not force the dial. That bends the probe."
  ask      = "Is the pointer below or above 150 degrees?"
  option "below" {
    when  = !mode("fan-control.set-high")
    label = "Below"
  }
  option "above" {
    label = "Above 150 degrees"
  }
}

repair "replace-belt" {
  name    = "replace the belt of the blower"
  part    = "belt"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("15..40 min", "from memory")
  match   = ["length", "width"]
  causes  = ["blower-spin"]
  confirm = "belt-look"
  step {
    act     = "Loosen the motor bolt. Roll the old belt off."
    caution = "Keep your fingers out of the pulleys."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Roll the new belt on. It should give about one inch."
    places = ["lower-bay"]
  }
}

repair "tighten-belt" {
  name    = "tighten the belt of the blower"
  part    = "belt"
  kind    = "tighten"
  minutes = q("10..20 min", "from memory")
  confirm = "belt-look"
  step {
    act     = "Move the motor back until the belt gives one inch."
    caution = "Keep your fingers out of the pulleys."
    level   = "warning"
    places  = ["lower-bay"]
  }
}

repair "set-fan-control" {
  name    = "set the fan pointer back"
  part    = "fan-control"
  kind    = "set"
  minutes = q("3..5 min", "from memory")
  confirm = "fan-pointer"
  step {
    act     = "Hold the dial still. Move only the pointer marked fan on."
    caution = "Never move the limit pointer."
    level   = "warning"
    places  = ["upper-bay"]
  }
}

repair "replace-fan-control" {
  name    = "replace the fan control"
  part    = "fan-control"
  kind    = "replace"
  price   = q("40..110 money", "from memory")
  minutes = q("30..60 min", "from memory")
  match   = ["probe length", "limit setting", "volts"]
  causes  = ["blower-frame", "rules"]
  confirm = "see-blower"
  step {
    act    = "Take a photo of its wires and its pointers."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the black power wire."
    wire   = "board-l"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the blower wire."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
  step {
    act     = "Set both pointers as they were."
    caution = "Never set the limit higher than the old one."
    level   = "warning"
    places  = ["upper-bay"]
  }
}

accept {
  why = "What people tell, hear or see goes beyond the simulated faults: such an answer is heard, and weighed as an odd one."
  warnings = [
    "no fault makes anybody answer \"short-flame\" to check see-hold",
    "no fault makes anybody answer \"stops-early\" to check story-what",
    "no fault makes anybody answer \"no-air\" to check tissue",
  ]
}

# What its pictures are drawn as.
sketch {
  places = {
    room         = "room", living = "rooms", wall-stat = "wall", stat-base = "wall-base", breakers = "breakers", outside = "outdoors",
    outdoor-unit = "outdoor-unit", front = "front", switch-box = "switch", pan = "pan", splice = "splice", filter-slot = "slot", upper-bay = "upper",
    burner-box   = "burners", lower-bay = "lower", duct = "duct", coil-box = "coil"
  }
  parts = {
    supply         = "outlet", breaker = "breaker", line-run = "switch", neutral-run = "switch", ground-run = "switch", furnace-switch = "switch",
    junction       = "splice", panel-seat = "panel", door-switch = "door-switch", line-lead = "spade", neutral-lead = "spade", transformer = "transformer",
    secondary-lead = "spade", common-lead = "spade", common-bond = "metal", board-fuse = "fuse", contactor = "contactor", y-wire = "splice",
    drain          = "drain", float-switch = "float", float-lead = "float", r-splice = "splice", r-wire = "splice", r-terminal = "terminals",
    c-wire         = "splice", cool-contact = "thermostat", batteries = "battery", stat-mode = "thermostat", setpoint = "thermostat",
    stat-setup     = "thermostat", thermostat = "thermostat", power-stealing = "thermostat", w-terminal = "terminals", w-wire = "splice",
    w-splice       = "splice", w-tail = "board", y-terminal = "board", limit-lead = "disc", high-limit = "disc", rollout-left = "disc-reset",
    rollout-right  = "disc-reset", string-lead = "plug", vent = "pipe", vent-joints = "pipe", gas-supply = "gas-cock", gas-cock = "gas-cock",
    valve-switch   = "gas-valve", valve-lead = "gas-valve", valve-common = "gas-valve", gas-valve = "gas-valve", orifice = "nozzle", burners = "burner",
    crossover      = "burner", flame-rod = "rod", flame-lead = "rod", burner-ground = "metal", exchanger = "exchanger", board = "board",
    speed-lead     = "spade", blower-capacitor = "capacitor", blower = "blower", blower-protector = "blower", blower-wheel = "wheel", filter = "filter",
    registers      = "grille", return-grille = "grille", coil = "coil", ducts = "duct", duct-joints = "duct"
  }
  points = {
    outlet-hot = "outlet.hot", outlet-neutral = "outlet.neutral", box-in = "switch.a", box-out = "switch.b", box-neutral = "splice.a",
    box-ground = "metal.a", door-in = "door-switch.a", door-out = "door-switch.b", door-n = "splice.b", line-in = "splice.a", neutral-in = "splice.b",
    board-l    = "board.L", board-n = "board.N", frame = "metal.a", glow-out = "board.I", blower-out = "board.H", blower-tap = "spade.a",
    blower-n   = "spade.b", blower-a = "spade.a", blower-b = "spade.b", secondary-a = "transformer.s1", secondary-b = "transformer.s2",
    board-24   = "board.P", board-c = "board.C", board-r = "board.R", board-w = "board.W", board-y = "board.Y", y-out = "wire.a", float-in = "float.a",
    float-out  = "float.b", float-far = "splice.a", splice-r = "splice.a", splice-w = "splice.a", splice-w2 = "splice.b", splice-c = "splice.b",
    wall-r     = "wire.a", wall-w = "wire.b", stat-r = "terminals.R", stat-rw = "wire.a", stat-w = "terminals.W", stat-ww = "wire.b",
    stat-c     = "terminals.C", limit-in = "disc.a", limit-out = "disc.b", roll-mid = "disc-reset.b", roll-out-end = "disc-reset.b",
    string-end = "board.P", gas-out = "board.P", valve-1 = "gas-valve.a", valve-2 = "gas-valve.b", flame-pin = "board.F", rod-end = "rod.rod",
    lead-a     = "wire.a", lead-b = "wire.b", burner-metal = "burner.a"
  }
}
