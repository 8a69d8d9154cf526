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
    at  = "draft"
    act = "Read while the draft fan starts."
  }
}
use "call-24v" {}
use "coil-drain" {}
use "safety-string" {}
use "draft" {}
use "burner-dsi" {}
use "gas" {
  part "burners" {
    mode "dirty" { rate = q("2 x", "common practice, no source") }
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
  check "hear-valve" { act = "Listen as the ticking starts." }
  check "orifice-look" {
    ask = "Are the numbers on the nozzles as on the label? The same, different, or blocked?"
    option "same" {
      when = orifice.ok
      label = "The same"
    }
    option "different" {
      when = mode("orifice.too-big")
      label = "Different"
    }
    option "blocked" {
      stop = "combustion"
      label = "Blocked"
    }
  }
  check "see-colour" { act = "Look at the flame after the ticking ends." }
}
use "flame-proof" {
  part "burner-ground" {
    mode "corroded" { rate = q("4 x", "common practice, no source") }
  }
}
use "board-furnace" {
  without = ["control heat"]
  part "board" {
    output "IGN" {
      from = "R"
      to   = "SPK"
    }
    mode "igniter-output" { name = "board makes no spark" }
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
