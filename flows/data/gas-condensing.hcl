# The one-stage condensing gas furnace: plastic vent, a second heat exchanger that makes water, a trap and a drain, a brushless blower
# with constant torque, and a nitride igniter on 120 volts. What it shares with other furnaces stands in assemblies.
#
# The unit is nobody's product. Plate, wiring diagram and label of the real unit win over everything here.

appliance "furnace-condensing" {
  title = "condensing gas furnace with plastic vent pipes"
  fuel  = "gas"
  mains = true

  # its draft fan purges before every trial
  starts = q("16 x", "common practice, no source")
  dead   = ["line-in", "neutral-in", "frame"]
}

use "sources" {}
use "furnace-places" {
  # its motor holds a charge for five minutes, and says so at its own checks; there is no capacitor to discharge
  place "lower-bay" { hazards = ["mains", "moving", "sharp"] }
}
use "line-120" {
  repair "reset-breaker" {
    causes = ["blower-frame", "fan-ohms"]
  }
}
use "call-24v" {}
use "coil-drain" {
  part "drain" {
    mode "blocked" {
      rate = q("1 x", "common practice, no source")
    }
  }
  part "float-lead" { ports = { a = "R-float", b = "R-pump" } }
  point "float-far" {
    net = "R-pump"
  }
}
use "condensate" {}
use "safety-string" {
  repair "replace-limit" {
    causes = ["rise-m", "filter-look", "static-m"]
  }
}
use "draft" {
  part "vent" {
    look = "end of the white or gray plastic pipe that blows warm mist"
    mode "blocked" {
      rate = q("4 x", "common practice, no source")
    }
  }
  part "air-intake" {
    look = "end of the second plastic pipe, which draws air in"
    mode "blocked" {
      rate = q("4 x", "common practice, no source")
    }
  }
  part "hose" {
    mode "wet" {
      rate = q("5 x", "common practice, no source")
    }
    mode "swapped" {
      name   = "pressure hoses swapped at their ports"
      does   = "off"
      wrong  = true
      rate   = q("0.3 x", "common practice, no source")
      repair = "refit-hose"
    }
  }
  check "hose-look" {
    ask = "How is the hose? Good, off its port, split, or on the wrong port?"
    option "good" {
      when = !mode("hose.off") && !mode("hose.split") && !mode("hose.swapped")
    }
    option "off-port" {
      when = mode("hose.off")
    }
    option "split" {
      when = mode("hose.split")
    }
    option "wrong-place" {
      label = "On the wrong port"
    }
  }
  check "hose-wet" {
    option "dry" {
      when = !mode("hose.wet") && !mode("inducer-drain.blocked") && water-back > 0.5
    }
  }
  check "vent-joint-look" {
    act = "Follow both plastic pipes with a flashlight."
    ask = "Are the pipe joints tight, apart, or burned brown?"
    option "burnt" {
      stop  = "vent"
      label = "Burned brown"
    }
  }
  signal "draft" {
    is = inducer.draft * inducer.works * inducer-wheel.passes * vent.passes * air-intake.passes * inducer-drain.passes * vent-slope.passes * second-gas.passes * collector.passes * (trap.passes > 0.5 && trap.passes < 0.9 ? 0.5 : 1)
  }
  signal "port-draft" { is = draft * port.passes * water-back }
  signal "sensed-draft" { is = draft * port.passes * hose.passes * water-back }
  repair "drain-hose" {
    causes = ["fan-drain-look", "trap-look", "drain-pour"]
  }
  repair "clear-vent" {
    causes = ["vent-joint-look", "vent-slope-look", "switch-draft-m"]
  }
}
use "burner-hsi" {
  part "igniter" {
    look = "dark smooth rod on a white block"
    ohms = q("40 ohm", 20, 60, "from memory")
    cold = q("22 ohm", 10, 60, "from memory")
    mode "open" {
      rate = q("6 x", "common practice, no source")
    }
    mode "hot-crack" {
      cold = q("22 ohm", "from memory")
    }
    mode "aged" {
      ohms = q("95 ohm", "common practice, no source")
      cold = q("90 ohm", "common practice, no source")
    }
  }
  check "glow-ohms" {
    limit = between(8, 70, "from memory")
  }
  # Boards feed a nitride igniter in pieces: an averaging meter shows 40 to 110 volts, and that is right.
  check "glow-out-v" {
    limit = between(40, 127, "common practice, no source")
  }
  check "glow-plug-v" {
    limit = between(40, 127, "common practice, no source")
  }
  check "glow-amps" {
    limit = between(1.5, 6, "computed")
    act   = "Close the clamp around one igniter wire."
  }
  check "glow-amps-late" {
    limit = between(1.5, 6, "computed")
    act   = "Keep the clamp on until the gas valve clicks."
  }
}
use "gas" {}
use "flame-proof" {}
use "board-furnace" {
  without = ["control heat"]
  part "board" {
    output "BLW" {
      from = "R"
      to   = "TAP"
    }
  }
}
use "air-ecm" {}
use "air" {
  signal "supply-passes" { is = coil.passes * registers.passes * ducts.passes * second-air.passes }
}
use "safety-questions" {}
use "furnace-story" {
  check "story-pattern" {
    option "every-start" {
      when = !(mode("w-tail.loose") || mode("vent.partly") || mode("line-run.loose") || mode("neutral-run.loose") || mode("inducer-protector.early") || mode("igniter.hot-crack") || mode("power-stealing.leaks") || mode("trap.dry") || mode("vent-slope.sagging"))
    }
    option "some-starts" {
      when = mode("w-tail.loose") || mode("vent.partly") || mode("vent-slope.sagging")
    }
  }
  check "story-when" {
    option "suddenly" {
      when = !(mode("flame-rod.dirty") || mode("igniter.aged") || mode("filter.packed") || mode("coil.dirty") || mode("blower-wheel.dirty") || mode("burners.dirty") || mode("inducer.dragging") || mode("trap.clogged") || mode("neutralizer.clogged") || mode("second-air.matted") || mode("second-gas.plugged"))
    }
  }
}
use "furnace-words" {}

# ---- what only this furnace has ----

part "vent-slope" {
  kind  = "passage"
  name  = "slope of the vent pipe"
  place = "room"
  look  = "the plastic pipes must run downhill to the furnace"
  stop  = "vent"
  mode "sagging" {
    name   = "vent pipe sags and holds water"
    does   = "factor"
    factor = q("0.4 x", 0.1, 0.52, "common practice, no source")
    hidden = q("40 %", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "call-vent-slope"
  }
}

part "second-air" {
  kind  = "passage"
  name  = "air side of the second heat exchanger"
  place = "lower-bay"
  look  = "block with fins above the blower"
  mode "matted" {
    name   = "second heat exchanger matted with lint"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "call-second-air"
  }
}

part "second-gas" {
  kind  = "passage"
  name  = "exhaust side of the second heat exchanger"
  place = "upper-bay"
  look  = "inside the block with fins, not seen"
  stop  = "exchanger"
  mode "plugged" {
    name   = "second heat exchanger plugged inside"
    does   = "factor"
    factor = q("0.4 x", 0.1, 0.52, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-second-gas"
  }
}

part "collector" {
  kind  = "passage"
  name  = "collector box"
  place = "upper-bay"
  look  = "plastic box at the front with hoses and the draft fan on it"
  stop  = "vent"
  mode "leaking" {
    name   = "collector box or its gasket leaks"
    does   = "factor"
    factor = q("0.45 x", 0.2, 0.52, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-collector"
  }
}

control "heat" {
  part  = "board"
  tries = 3
  step "string" {
    drive   = []
    may     = ["IND", "BLW"]
    needs   = board.HS > 0.5
    on_fail = "wait"
    code    = "4"
  }
  step "standby" {
    drive   = []
    needs   = board.W > 0.5
    on_fail = "wait"
  }
  step "open-check" {
    drive   = []
    needs   = board.PS < 0.5
    on_fail = "wait"
    code    = "2"
  }
  step "flame-check" {
    drive   = []
    may     = ["IND", "BLW"]
    needs   = board.flame < 0.5
    on_fail = "wait"
    code    = "5"
  }
  step "draft" {
    drive   = ["IND"]
    needs   = board.PS > 0.5
    within  = q("60 s", "common practice, no source")
    on_fail = "retry"
    code    = "3"
    purge   = q("60 s", "common practice, no source")
  }
  step "purge" {
    drive  = ["IND"]
    within = q("15 s", "T13")
  }
  step "warm-up" {
    drive  = ["IND", "IGN"]
    within = q("20 s", "common practice, no source")
  }
  step "trial" {
    drive   = ["IND", "IGN", "GV"]
    needs   = board.flame > 0.5
    within  = q("7 s", "common practice, no source")
    on_fail = "retry"
    code    = "6"
    purge   = q("60 s", "common practice, no source")
  }
  step "run" {
    drive   = ["IND", "GV"]
    needs   = board.flame > 0.5 && board.PS > 0.5
    within  = q("30 s", "T13")
    on_fail = "retry"
    code    = "7"
    purge   = q("60 s", "common practice, no source")
  }
  step "heating" {
    drive   = ["IND", "GV", "BLW"]
    needs   = board.flame > 0.5 && board.PS > 0.5
    within  = q("240 s", "common practice, no source")
    on_fail = "retry"
    code    = "7"
    purge   = q("60 s", "common practice, no source")
  }
  # water that cannot leave fills the collector in some minutes of fire, and the pressure switch opens
  step "warm" {
    drive   = ["IND", "GV", "BLW"]
    needs   = board.PS > 0.5
    within  = q("600 s", "common practice, no source")
    on_fail = "retry"
    code    = "3"
    purge   = q("60 s", "common practice, no source")
  }
  step "steady" {
    drive   = ["IND", "GV", "BLW"]
    needs   = board.HS > 0.5 && board.flame > 0.5
    within  = q("600 s", "common practice, no source")
    on_fail = "cool-down"
    code    = "4"
  }
  step "cool-down" {
    drive = ["IND", "BLW"]
    side  = true
    code  = "4"
  }
}

check "see-drop" {
  stage    = "watch"
  name     = "flame after five minutes"
  function = "look"
  part     = "trap"
  power    = "on"
  call     = "on"
  at       = "warm"
  minutes  = q("8 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Let it run for five minutes. Watch the flame."
  ask      = "Is the burner still burning or out?"
  option "flame-stays" {
    when  = lit > 0.5
    label = "Still burning"
  }
  option "no-flame" {
    label = "Out"
  }
  unless = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame"]
}

check "water-comes" {
  stage    = "watch"
  name     = "water at the drain"
  function = "look"
  part     = "trap"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("15 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the end of the drain while it burns."
  ask      = "Is the drain dripping or dry?"
  option "drips" {
    when  = lit > 0.5 && drains > 0.5
    label = "Dripping"
  }
  option "dry" {
    label = "Dry"
  }
  unless = ["see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-drop=no-flame"]
}

check "pipe-heat" {
  stage    = "watch"
  name     = "warmth of the plastic vent"
  function = "look"
  part     = "vent-joints"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold your hand near the plastic vent pipe."
  caution  = "It may be hot. Do not grip it."
  ask      = "How is the pipe? Warm, cold, or too hot to touch?"
  option "warm" {
    when  = lit > 0.5
    label = "Warm"
  }
  option "cold" {
    label = "Cold"
  }
  option "hot" {
    stop  = "vent"
    label = "Too hot to touch"
  }
}

check "hot-draft-m" {
  stage    = "plan"
  name     = "draft at the pressure switch when warmed up"
  function = "manometer"
  part     = "trap"
  quantity = "sensed-draft"
  unit     = "inH2O"
  label    = "press-set"
  limit    = atleast(label + 0.1, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "warm"
  places   = ["upper-bay"]
  hazard   = "moving"
  minutes  = q("12 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  fit      = "Pull the hose off the switch. Put the T-piece with the gauge in between."
  act      = "Stand back. Read the gauge after five minutes."
}

check "vent-slope-look" {
  stage    = "free"
  name     = "slope of the vent pipe"
  function = "look"
  part     = "vent-slope"
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow the plastic pipes. Look for a low spot."
  ask      = "Do the pipes run downhill to the furnace or sag somewhere?"
  option "sloped" {
    when  = vent-slope.ok
    label = "Run downhill to the furnace"
  }
  option "sagging" {
    label = "Sag somewhere"
  }
}

check "second-air-look" {
  stage    = "plan"
  name     = "second heat exchanger, from below"
  function = "look"
  part     = "second-air"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "skilled"
  act      = "Look up past the blower with a mirror and a flashlight."
  caution  = "Sharp edges. The power stays off."
  ask      = "Are the fins above the blower clean or dirty?"
  option "clean" {
    when  = second-air.ok
    label = "Clean"
  }
  option "dirty" {
    label = "Dirty"
  }
}

check "collector-look" {
  stage    = "plan"
  name     = "look of the collector box"
  function = "look"
  part     = "collector"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look around the plastic box for rust and drips."
  ask      = "Is the box good, rusty, or cracked?"
  option "good" {
    when  = collector.ok
    label = "Good"
  }
  option "rusty" {
    stop  = "vent"
    label = "Rusty"
  }
  option "cracked" {
    stop  = "vent"
    label = "Cracked"
  }
}

repair "call-vent-slope" {
  name    = "call licensed help: the vent pipe sags"
  part    = "vent-slope"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "vent-slope-look"
}

repair "call-second-air" {
  name    = "call licensed help to clean the second heat exchanger"
  part    = "second-air"
  kind    = "call"
  stop    = "exchanger"
  minutes = q("0..10 min", "from memory")
  confirm = "second-air-look"
}

repair "call-second-gas" {
  name    = "call licensed help: the second heat exchanger is plugged"
  part    = "second-gas"
  kind    = "call"
  stop    = "exchanger"
  minutes = q("0..10 min", "from memory")
  confirm = "switch-draft-m"
}

repair "call-collector" {
  name    = "call licensed help: the collector box leaks"
  part    = "collector"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "collector-look"
}

# What its pictures are drawn as.
sketch {
  places = {
    room         = "room", living = "rooms", wall-stat = "wall", stat-base = "wall-base", breakers = "breakers", outside = "outdoors",
    outdoor-unit = "outdoor-unit", front = "front", switch-box = "switch", pan = "pan", splice = "splice", filter-slot = "slot", upper-bay = "upper",
    burner-box   = "burners", lower-bay = "lower", duct = "duct", coil-box = "coil"
  }
  parts = {
    supply            = "outlet", breaker = "breaker", line-run = "switch", neutral-run = "switch", ground-run = "switch", furnace-switch = "switch",
    junction          = "splice", panel-seat = "panel", door-switch = "door-switch", line-lead = "spade", neutral-lead = "spade", transformer = "transformer",
    secondary-lead    = "spade", common-lead = "spade", common-bond = "metal", board-fuse = "fuse", contactor = "contactor", y-wire = "splice",
    drain             = "drain", float-switch = "float", float-lead = "float", r-splice = "splice", r-wire = "splice", r-terminal = "terminals",
    c-wire            = "splice", cool-contact = "thermostat", batteries = "battery", stat-mode = "thermostat", setpoint = "thermostat",
    stat-setup        = "thermostat", thermostat = "thermostat", power-stealing = "thermostat", w-terminal = "terminals", w-wire = "splice",
    w-splice          = "splice", w-tail = "board", y-terminal = "board", limit-lead = "disc", high-limit = "disc", rollout-left = "disc-reset",
    rollout-right     = "disc-reset", string-lead = "plug", vent = "pipe", vent-joints = "pipe", air-intake = "pipe", inducer-drain = "drain",
    port              = "port", hose = "hose", pressure-switch = "port", pressure-lead = "port", left-jumper = "jumper", inducer-plug = "plug",
    inducer-capacitor = "capacitor", inducer = "fan", inducer-protector = "fan", inducer-wheel = "wheel", igniter-plug = "plug", igniter = "igniter",
    igniter-legs      = "igniter", igniter-bracket = "igniter", gas-supply = "gas-cock", gas-cock = "gas-cock", valve-switch = "gas-valve",
    valve-lead        = "gas-valve", valve-common = "gas-valve", gas-valve = "gas-valve", orifice = "nozzle", burners = "burner", crossover = "burner",
    flame-rod         = "rod", flame-lead = "rod", burner-ground = "metal", exchanger = "exchanger", board = "board", speed-lead = "spade", blower = "blower",
    blower-wheel      = "wheel", filter = "filter", registers = "grille", return-grille = "grille", coil = "coil", ducts = "duct", duct-joints = "duct"
  }
  points = {
    outlet-hot   = "outlet.hot", outlet-neutral = "outlet.neutral", box-in = "switch.a", box-out = "switch.b", box-neutral = "splice.a",
    box-ground   = "metal.a", door-in = "door-switch.a", door-out = "door-switch.b", door-n = "splice.b", line-in = "splice.a", neutral-in = "splice.b",
    board-l      = "board.L", board-n = "board.N", frame = "metal.a", fan-out = "board.F", fan-plug = "plug.a", fan-plug-n = "plug.b",
    glow-out     = "board.I", glow-plug = "plug.a", glow-plug-n = "plug.b", blower-out = "board.H", blower-a = "spade.a", secondary-a = "transformer.s1",
    secondary-b  = "transformer.s2", board-24 = "board.P", board-c = "board.C", board-r = "board.R", board-w = "board.W", board-y = "board.Y",
    y-out        = "wire.a", float-in = "float.a", float-out = "float.b", float-far = "splice.a", splice-r = "splice.a", splice-w = "splice.a",
    splice-w2    = "splice.b", splice-c = "splice.b", wall-r = "wire.a", wall-w = "wire.b", stat-r = "terminals.R", stat-rw = "wire.a",
    stat-w       = "terminals.W", stat-ww = "wire.b", stat-c = "terminals.C", limit-in = "disc.a", limit-out = "disc.b", roll-mid = "disc-reset.b",
    roll-out-end = "disc-reset.b", string-end = "board.P", switch-in = "port.a", switch-out = "port.b", press-pin = "board.P", gas-out = "board.P",
    valve-1      = "gas-valve.a", valve-2 = "gas-valve.b", flame-pin = "board.F", rod-end = "rod.rod", lead-a = "wire.a", lead-b = "wire.b",
    burner-metal = "burner.a", glow-plug-a = "wire.a", glow-plug-b = "plug.a", fan-plug-a = "wire.a", fan-plug-b = "plug.a"
  }
}
