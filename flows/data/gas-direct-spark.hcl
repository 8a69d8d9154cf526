# The induced-draft gas furnace whose spark lights the main burner itself: no pilot, no glow. The flame is proved by a rod of its own.
# What it shares with other furnaces stands in assemblies.
#
# The unit is nobody's product. Plate, wiring diagram and label of the real unit win over everything here.

appliance "furnace-direct-spark" {
  title = "gas furnace with a draft fan and a spark at the burner"
  fuel  = "gas"
  mains = true

  # every trial that fails has put gas into the box: fewer than with a glowing igniter, the fan purges before each
  starts = q("12 x", "common practice, no source")
  dead   = ["line-in", "neutral-in", "frame"]
}

use "sources" {}
use "furnace-places" {}
use "line-120" {
  check "board-load" {
    at   = "draft"
    act  = "Read the volts while the draft fan starts."
    name = "volts at the control board while the draft fan starts"
  }
  load = "see-fan=silent"
}
use "call-24v" {}
use "coil-drain" {}
use "safety-string" {}
use "draft" {}
use "burner-dsi" {}
use "gas" {
  part "burners" {
    mode "dirty" {
      rate = q("2 x", "common practice, no source")
    }
  }
  part "orifice" {
    mode "spider" {
      name   = "burner orifice narrowed by a spider web"
      does   = "factor"
      factor = q("0.3 x", 0.05, 0.45, "common practice, no source")
      rate   = q("2 x", "common practice, no source")
      repair = "call-orifice"
    }
  }
  check "hear-valve" {
    act = "Listen near the gas valve when the ticking starts."
  }
  check "orifice-look" {
    ask = "Compare them with the label. Are they the same, different, or blocked?"
    option "same" {
      when = orifice.ok
    }
    option "different" {
      when = mode("orifice.too-big")
    }
    option "blocked" {
      stop  = "combustion"
      label = "Blocked"
    }
  }
  check "see-colour" {
    act = "Look at the flame after the ticking ends."
  }
}
use "flame-proof" {
  part "burner-ground" {
    mode "corroded" {
      rate = q("4 x", "common practice, no source")
    }
  }
}
use "board-furnace" {
  without = ["control heat"]
  part "board" {
    output "IGN" {
      from = "R"
      to   = "SPK"
    }
    mode "igniter-output" {
      name = "board makes no spark"
    }
  }
  repair "replace-board" {
    causes = ["fuse-look", "board-lg", "valve-ohms", "spark-lead-look", "rules"]
  }
}
use "air-psc" {}
use "air" {}
use "safety-questions" {}
use "furnace-story" {
  check "story-pattern" {
    option "every-start" {
      when = !(mode("w-tail.loose") || mode("vent.partly") || mode("line-run.loose") || mode("neutral-run.loose") || mode("inducer-protector.early") || mode("blower-protector.early") || mode("power-stealing.leaks") || mode("spark-lead.cracked") || mode("electrode.gap"))
    }
  }
  check "story-when" {
    option "suddenly" {
      when = !(mode("flame-rod.dirty") || mode("filter.packed") || mode("coil.dirty") || mode("blower-wheel.dirty") || mode("burners.dirty") || mode("blower-capacitor.low") || mode("inducer.dragging") || mode("electrode.gap"))
    }
  }
  check "story-change" {
    option "nothing-done" {
      when = !(mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("stat-setup.heat-pump")) && !(mode("left-jumper.left-in") || mode("flame-rod.bent") || mode("junction.reversed") || mode("gas-cock.closed") || mode("valve-switch.off") || mode("orifice.too-big") || mode("panel-seat.ajar") || mode("float-lead.off") || mode("r-terminal.off") || mode("w-terminal.off") || mode("r-wire.pinched") || mode("y-wire.pinched") || mode("supply.dead") || mode("breaker.off") || mode("air-intake.blocked") || mode("vent.blocked"))
    }
    option "after-work" {
      when = mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("stat-setup.heat-pump")
    }
  }
}
use "furnace-words" {}

# ---- the order in which the control works ----

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
    within = q("30 s", "common practice, no source")
  }
  step "trial" {
    drive   = ["IND", "IGN", "GV"]
    needs   = board.flame > 0.5
    within  = q("8 s", "common practice, no source")
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

repair "call-orifice" {
  name    = "call licensed help: a burner orifice is blocked"
  part    = "orifice"
  kind    = "call"
  stop    = "combustion"
  minutes = q("0..10 min", "from memory")
  confirm = "orifice-look"
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
    inducer-capacitor = "capacitor", inducer = "fan", inducer-protector = "fan", inducer-wheel = "wheel", gas-supply = "gas-cock",
    gas-cock          = "gas-cock", valve-switch = "gas-valve", valve-lead = "gas-valve", valve-common = "gas-valve", gas-valve = "gas-valve",
    orifice           = "nozzle", burners = "burner", crossover = "burner", flame-rod = "rod", flame-lead = "rod", burner-ground = "metal",
    exchanger         = "exchanger", board = "board", speed-lead = "spade", blower-capacitor = "capacitor", blower = "blower", blower-protector = "blower",
    blower-wheel      = "wheel", filter = "filter", registers = "grille", return-grille = "grille", coil = "coil", ducts = "duct", duct-joints = "duct"
  }
  points = {
    outlet-hot  = "outlet.hot", outlet-neutral = "outlet.neutral", box-in = "switch.a", box-out = "switch.b", box-neutral = "splice.a",
    box-ground  = "metal.a", door-in = "door-switch.a", door-out = "door-switch.b", door-n = "splice.b", line-in = "splice.a", neutral-in = "splice.b",
    board-l     = "board.L", board-n = "board.N", frame = "metal.a", fan-out = "board.F", fan-plug = "plug.a", fan-plug-n = "plug.b",
    glow-out    = "board.I", blower-out = "board.H", blower-tap = "spade.a", blower-n = "spade.b", blower-a = "spade.a", blower-b = "spade.b",
    secondary-a = "transformer.s1", secondary-b = "transformer.s2", board-24 = "board.P", board-c = "board.C", board-r = "board.R",
    board-w     = "board.W", board-y = "board.Y", y-out = "wire.a", float-in = "float.a", float-out = "float.b", float-far = "splice.a",
    splice-r    = "splice.a", splice-w = "splice.a", splice-w2 = "splice.b", splice-c = "splice.b", wall-r = "wire.a", wall-w = "wire.b",
    stat-r      = "terminals.R", stat-rw = "wire.a", stat-w = "terminals.W", stat-ww = "wire.b", stat-c = "terminals.C", limit-in = "disc.a",
    limit-out   = "disc.b", roll-mid = "disc-reset.b", roll-out-end = "disc-reset.b", string-end = "board.P", switch-in = "port.a",
    switch-out  = "port.b", press-pin = "board.P", gas-out = "board.P", valve-1 = "gas-valve.a", valve-2 = "gas-valve.b", flame-pin = "board.F",
    rod-end     = "rod.rod", lead-a = "wire.a", lead-b = "wire.b", burner-metal = "burner.a", fan-plug-a = "wire.a", fan-plug-b = "plug.a"
  }
}
