# What the people of the house tell.
assembly "furnace-story" {}

check "story-what" {
  stage    = "story"
  name     = "what it does"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "What is the furnace doing wrong?"
  option "not-enough" {
    when  = !(stuck("trial") && !(flame-rod.ok && flame-lead.ok && burner-ground.ok && junction.ok && ground-run.ok && common-bond.ok && crossover.ok && burners.ok && !mode("board.flame-input")) || stuck("run") || stuck("heating") || stuck("steady")) && !mode("board.fan-welded") && reached("steady")
    told  = ["weak-heat"]
    label = "Not enough heat"
  }
  option "stops-early" {
    when  = stuck("trial") && !(flame-rod.ok && flame-lead.ok && burner-ground.ok && junction.ok && ground-run.ok && common-bond.ok && crossover.ok && burners.ok && !mode("board.flame-input")) || stuck("run") || stuck("heating") || stuck("steady")
    told  = ["lights-dies", "short-cycle"]
    label = "Starts, then stops early"
  }
  option "never-stops" {
    when  = mode("board.fan-welded")
    told  = ["blower-on"]
    label = "Never stops"
  }
  option "no-start" {
    when  = !reached("draft")
    told  = ["noheat"]
    label = "Does nothing"
  }
  option "runs-no-heat" {
    told  = ["fan-no-flame"]
    label = "Runs but no heat"
  }
}

check "story-pattern" {
  stage    = "free"
  name     = "how often it fails"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Does it fail at every start, or only at some starts?"
  option "every-start" {
    when  = !(mode("w-tail.loose") || mode("vent.partly") || mode("line-run.loose") || mode("neutral-run.loose") || mode("inducer-protector.early") || mode("blower-protector.early") || mode("igniter.hot-crack") || mode("power-stealing.leaks"))
    label = "At every start"
  }
  option "some-starts" {
    when   = mode("w-tail.loose") || mode("vent.partly") # the others may fail every time, or seem to
    passes = true
    told   = ["sometimes"]
    label  = "Only at some starts"
  }
}

check "story-when" {
  stage    = "free"
  name     = "how it began"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Did it begin all at once or little by little?"
  option "suddenly" {
    when  = !(mode("flame-rod.dirty") || mode("igniter.aged") || mode("filter.packed") || mode("coil.dirty") || mode("blower-wheel.dirty") || mode("burners.dirty") || mode("blower-capacitor.low") || mode("inducer.dragging"))
    label = "All at once"
  }
  option "gradually" {
    when  = 1 < 0 # what grows slowly may stop the furnace from one day to the next
    label = "Little by little"
  }
}

check "story-change" {
  stage    = "free"
  name     = "what happened before"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "What happened just before it failed? Nothing, work on the furnace, or a storm or power outage?"
  # What nobody in the house need have noticed (a bumped valve, a storm in the night) fits no answer better than another.
  option "nothing-done" {
    when  = !(mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("igniter.wrong-part") || mode("stat-setup.heat-pump")) && !(mode("left-jumper.left-in") || mode("igniter-bracket.moved") || mode("flame-rod.bent") || mode("junction.reversed") || mode("gas-cock.closed") || mode("valve-switch.off") || mode("orifice.too-big") || mode("panel-seat.ajar") || mode("float-lead.off") || mode("r-terminal.off") || mode("w-terminal.off") || mode("r-wire.pinched") || mode("y-wire.pinched") || mode("supply.dead") || mode("breaker.off") || mode("air-intake.blocked") || mode("vent.blocked"))
    label = "Nothing"
  }
  option "after-work" {
    when  = mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("igniter.wrong-part") || mode("stat-setup.heat-pump")
    told  = ["after-work"]
    label = "Work on the furnace"
  }
  option "after-storm" {
    when  = 1 < 0
    label = "A storm or power outage"
  }
}
