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
  act      = "Change nothing. Look at the small light through the little window."
  ask      = "What does the light do? If it blinks, how many times in a row?"
  option "off" {
    when  = lamp("off")
    label = "Off"
  }
  option "slow-blink" {
    when  = lamp("slow-blink")
    shows = ["power"]
    label = "Blinking slowly"
  }
  option "steady" {
    when  = !lamp("off") && !lamp("slow-blink")
    shows = ["power"]
    label = "On without blinking"
  }
  option "1" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "One blink"
  }
  option "2" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Two blinks"
  }
  option "3" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Three blinks"
  }
  option "4" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Four blinks"
  }
  option "5" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Five blinks"
  }
  option "6" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Six blinks"
  }
  option "7" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Seven blinks"
  }
  option "8" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Eight blinks"
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
  act      = "Look at the light again. Then find its code on the label."
  ask      = "What does the label say for this code?"
  option "says-pressure-closed" {
    when  = lamp("2")
    shows = ["power"]
    label = "Pressure switch closed"
  }
  option "says-pressure-open" {
    when  = lamp("3")
    shows = ["power", "call"]
    label = "Pressure switch open"
  }
  option "says-limit" {
    when  = lamp("4")
    shows = ["power"]
    label = "Limit switch open"
  }
  option "says-roll-out" {
    when  = 1 < 0
    stop  = "roll-out"
    label = "Roll-out switch open"
  }
  option "says-false-flame" {
    when  = lamp("5")
    shows = ["power"]
    label = "Flame sensed with gas off"
  }
  option "says-no-flame" {
    when  = lamp("6")
    shows = ["power", "call"]
    label = "No flame sensed"
  }
  option "says-flame-lost" {
    when  = lamp("7")
    shows = ["power", "call"]
    label = "Flame lost"
  }
  option "says-no-power" {
    when  = lamp("off")
    label = "No power"
  }
  option "says-normal" {
    shows = ["power"]
    label = "Normal operation"
  }
}

check "rules" {
  stage    = "cause"
  name     = "local rules"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Do your local rules let you work on house voltage parts?"
  option "allowed" {
    when  = 1 > 0
    label = "Yes"
  }
  option "reserved" {
    stop  = "local-rules"
    label = "No"
  }
}

plate "model" {
  name  = "model number"
  ask   = "What is the model number?"
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
  tell = "Read them the record of this job."
  now  = "Leave it off. Leave the covers on."
}

caution "moving" {
  level = "warning"
  say = [
    "A fan can start by itself. Keep hands and sleeves out.",
    "The fan can start. Keep your hands out.",
    "The fan may start at any time. Stay clear.",
    "The fan starts by itself. Keep your hands clear.",
  ]
}

caution "hot" {
  level = "warning"
  say = [
    "The metal and the igniter are hot. They can burn you for ten minutes.",
    "Hot metal. Wait, or wear gloves.",
    "It is still hot inside. Keep your skin away.",
    "The parts are hot here. Let them cool.",
  ]
}

caution "sharp" {
  level = "caution"
  say = [
    "The sheet metal has sharp edges. Wear gloves. Move slowly.",
    "Sharp edges. Move slowly.",
    "The edges are sharp here. Wear gloves.",
    "Watch the sharp metal.",
  ]
}

caution "capacitor" {
  level = "warning"
  say = [
    "A capacitor can hold a charge with the power off. Empty it first.",
    "The capacitor may be charged. Empty it first.",
    "Charged capacitor. First the resistor, then your hands.",
    "Empty the capacitor before you touch it.",
  ]
}

caution "high" {
  level = "warning"
  say = [
    "This is a high place. Use a firm ladder and dry shoes, or leave it.",
    "It is high up. Use a firm ladder only.",
    "Watch the height. Keep both feet firm.",
    "A high place. If in doubt, leave it.",
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
