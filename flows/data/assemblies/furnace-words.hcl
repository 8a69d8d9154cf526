# Status light, label, cautions and money, as a furnace needs them.
assembly "furnace-words" {}

# A count of blinks means only what the label of the real unit says: here it tells that there is a code, not which fault.
# What it means is asked by the words of the label.
check "light" {
  stage    = "light"
  name     = "status light"
  function = "look"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Change nothing, look through the small window."
  ask      = "The small light: off, steady, or how many blinks?"
  option "off" { when = lamp("off") }
  option "slow-blink" {
    when = lamp("slow-blink")
    shows = ["power"]
  }
  option "steady" {
    when = !lamp("off") && !lamp("slow-blink")
    shows = ["power"]
  }
  option "1" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "2" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "3" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "4" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "5" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "6" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "7" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
  option "8" {
    when = 1 < 0
    as = "steady"
    shows = ["power"]
  }
}

check "label" {
  stage    = "light"
  name     = "label for the light"
  function = "look"
  power    = "any"
  call     = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["light=off", "light=slow-blink"]
  act      = "Look at the light again, then at the code label."
  ask      = "What does the label say for its code now?"
  option "says-pressure-closed" {
    when = lamp("2")
    shows = ["power"]
  }
  option "says-pressure-open" {
    when = lamp("3")
    shows = ["power", "call"]
  }
  option "says-limit" {
    when = lamp("4")
    shows = ["power"]
  }
  option "says-roll-out" {
    when = 1 < 0
    stop = "roll-out"
  }
  option "says-false-flame" {
    when = lamp("5")
    shows = ["power"]
  }
  option "says-no-flame" {
    when = lamp("6")
    shows = ["power", "call"]
  }
  option "says-flame-lost" {
    when = lamp("7")
    shows = ["power", "call"]
  }
  option "says-no-power" { when = lamp("off") }
  option "says-normal" {
    shows = ["power"]
  }
}

check "rules" {
  stage    = "cause"
  name     = "local rules"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Local rules for work on house voltage: allowed, or reserved?"
  option "allowed" { when = 1 > 0 }
  option "reserved" { stop = "local-rules" }
}

plate "model" {
  name = "model number"
  ask  = "Model number, in groups of three?"
  match = true
}

lamp "off" {
  means  = "no power, or the board is dead"
  source = "invented for this file; the label on the door wins"
}

lamp "slow-blink" {
  means  = "power is there, no call for heat is seen"
  when   = board.alive && board.W < 0.5
  source = "invented for this file; the label on the door wins"
}

lamp "steady" {
  means  = "call for heat seen, no fault found"
  when   = board.alive
  source = "invented for this file; the label on the door wins"
}

lamp "2" {
  means  = "pressure switch closed before the draft fan runs"
  source = "invented for this file; the label on the door wins"
}

lamp "3" {
  means  = "pressure switch open with the draft fan on"
  source = "invented for this file; the label on the door wins"
}

lamp "4" {
  means  = "high limit or roll-out switch open"
  source = "invented for this file; the label on the door wins"
}

lamp "5" {
  means  = "a flame is seen that should not be there"
  source = "invented for this file; the label on the door wins"
}

lamp "6" {
  means  = "no flame sensed during the try"
  source = "invented for this file; the label on the door wins"
}

lamp "7" {
  means  = "flame lost after it was sensed"
  source = "invented for this file; the label on the door wins"
}

stop "local-rules" {
  say  = "Local rules keep this work for licensed people."
  call = "a licensed technician"
  tell = "Read out the record of this job."
  now  = "Leave it off. Leave the covers on."
}

caution "moving" {
  level = "warning"
  say   = [
    "A fan can start by itself. Keep hands and sleeves out.",
    "The fan can start. Hands out.",
    "Fan may start any time. Stay clear.",
    "Hands clear. The fan starts by itself.",
  ]
}

caution "hot" {
  level = "warning"
  say   = [
    "Hot metal and igniter. They burn skin for ten minutes after.",
    "Hot metal. Wait, or wear gloves.",
    "Still hot inside. Keep skin off.",
    "Hot parts here. Let them cool.",
  ]
}

caution "sharp" {
  level = "caution"
  say   = [
    "Sharp sheet metal edges. Wear gloves, move slowly.",
    "Sharp edges. Move slowly.",
    "Edges are sharp here. Gloves on.",
    "Mind the sharp metal.",
  ]
}

caution "capacitor" {
  level = "warning"
  say   = [
    "A capacitor can hold a charge with the power off. Discharge it.",
    "Capacitor may be charged. Discharge it first.",
    "Charged capacitor. Resistor first, then hands.",
    "Discharge the capacitor, then touch.",
  ]
}

caution "high" {
  level = "warning"
  say   = [
    "High place. Firm ladder, dry shoes, or leave it.",
    "High up. Firm ladder only.",
    "Mind the height. Both feet firm.",
    "High place. Leave it when in doubt.",
  ]
}

fact "call-out" { value = q("90..200 money", "from memory") }

accept {
  why = "No check of the file lies between the two: they are named together."
  warnings = [
    "no check separates pressure-switch.burnt, board.gas-output",
  ]
}

accept {
  why = "With that fault nothing of it can be seen or told: the person says so, and the check counts for nothing."
  warnings = [
    "check story-pattern has no answer",
    "check story-when has no answer",
    "check story-change has no answer",
    "check see-fan has no answer",
    "check see-blower has no answer",
    "check feel-air has no answer",
    "check feel-warm has no answer",
    "check hear-rest has no answer",
    "check again-air has no answer",
  ]
}

accept {
  why = "What people tell, hear or see goes beyond the simulated faults: such an answer is heard, and weighed as an odd one."
  warnings = [
    "no fault makes anybody answer \"some-starts\" to check story-pattern",
    "no fault makes anybody answer \"gradually\" to check story-when",
    "no fault makes anybody answer \"after-work\" to check story-change",
    "no fault makes anybody answer \"after-storm\" to check story-change",
    "no fault makes anybody answer \"1\" to check light",
    "no fault makes anybody answer \"2\" to check light",
    "no fault makes anybody answer \"3\" to check light",
    "no fault makes anybody answer \"4\" to check light",
    "no fault makes anybody answer \"5\" to check light",
    "no fault makes anybody answer \"6\" to check light",
    "no fault makes anybody answer \"7\" to check light",
    "no fault makes anybody answer \"8\" to check light",
    "no fault makes anybody answer \"humming\" to check see-fan",
    "no fault makes anybody answer \"humming\" to check see-blower",
    "no fault makes anybody answer \"weak-air\" to check feel-air",
    "no fault makes anybody answer \"cold\" to check feel-warm",
    "no fault makes anybody answer \"cool-air\" to check feel-warm",
    "no fault makes anybody answer \"running\" to check hear-rest",
    "no fault makes anybody answer \"cool-air\" to check again-air",
  ]
}

accept {
  why = "Meters read this no better: the reading is weighed with its uncertainty, the limit is only what is said aloud."
  warnings = [
    "the limit of check fan-cap",
    "the limit of check blower-cap",
  ]
}

accept {
  why = "Asked for safety and manners, not to tell faults apart."
  warnings = [
    "check rules shows the same whatever is wrong",
  ]
}

accept {
  why = "Why somebody closed the gas is no fault of the heater: the answer decides who opens it."
  warnings = [
    "check cock-who shows the same whatever is wrong",
  ]
}
