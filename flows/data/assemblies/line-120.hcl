# One leg of 120 volts: from the breaker through the service switch and the door switch to the board.
assembly "line-120" {
  machine = "furnace"
  board   = "board" # where the wires of the house and the thermostat end
  load    = "see-glow=no-glow" # the answer with which nothing loads the board
}

part "supply" {
  kind  = "supply"
  name  = "house supply"
  place = "breakers"
  look  = "the lights and outlets of the house"
  ports = { l = "HOT", n = "NEU" }
  volts = q("120 V", 113, 127, "ILL")
  ohms  = q("0.15 ohm", "common practice, no source")
  mode "dead" {
    name   = "no power in the house"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "call-utility-power"
  }
}

part "breaker" {
  kind   = "fuse"
  name   = "${machine} breaker"
  place  = "breakers"
  look   = "one lever in the panel, marked ${machine}"
  ports  = { a = "HOT", b = "B1" }
  rating = q("15 A", "common practice, no source")
  mode "off" {
    name   = "${machine} breaker off or tripped"
    does   = "open"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "reset-breaker"
  }
  mode "worn" {
    name   = "${machine} breaker worn out inside"
    does   = "open"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "line-run" {
  kind  = "wire"
  name  = "black power wire to the ${machine}"
  place = "switch-box"
  look  = "the black wire in the house cable"
  ports = { a = "B1", b = "LS-in" }
  mode "open" {
    name   = "black power wire to the ${machine} broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
  mode "loose" {
    name   = "black power wire loose, fails under load"
    does   = "resist"
    ohms   = q("2.8 ohm", 1, 6, "own")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "neutral-run" {
  kind  = "wire"
  name  = "white neutral wire to the ${machine}"
  place = "switch-box"
  look  = "the white wire in the house cable"
  ports = { a = "NEU", b = "NJ" }
  mode "open" {
    name   = "white neutral wire to the ${machine} broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
  mode "loose" {
    name   = "white neutral wire loose, fails under load"
    does   = "resist"
    ohms   = q("2.8 ohm", 1, 6, "own")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "ground-run" {
  kind  = "wire"
  name  = "ground wire to the ${machine}"
  place = "switch-box"
  look  = "the bare or green wire"
  ports = { a = "NEU", b = "CHASSIS" }
  mode "open" {
    name   = "ground wire to the ${machine} broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "furnace-switch" {
  kind   = "switch"
  name   = "${machine} switch"
  place  = "front"
  look   = "looks like a light switch, on or near the ${machine}"
  ports  = { a = "LS-in", b = "LS-out" }
  closes = power
  mode "off" {
    name   = "${machine} switch off"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "switch-on"
  }
  mode "open" {
    name   = "${machine} switch worn out"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "junction" {
  kind  = "pair"
  name  = "wire joint at the ${machine}"
  place = "upper-bay"
  look  = "wire nuts, black to black and white to white"
  ports = { in1 = "LS-out", in2 = "NJ", out1 = "L1", out2 = "N" }
  mode "reversed" {
    name   = "black and white house wires swapped"
    does   = "swap"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "call-polarity"
  }
}

part "panel-seat" {
  kind  = "thing"
  name  = "fit of the lower front panel"
  place = "front"
  look  = "hooks and edge of the lower front panel"
  mode "ajar" {
    name   = "lower front panel not fully closed"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "seat-panel"
  }
}

part "door-switch" {
  kind   = "switch"
  name   = "door switch"
  place  = "lower-bay"
  look   = "small push button behind the lower front panel"
  ports  = { a = "L1", b = "L-door" }
  closes = panel-seat.value > 0.5
  safety = true
  mode "open" {
    name   = "door switch worn out"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-door-switch"
  }
}

part "line-lead" {
  kind  = "wire"
  name  = "black power wire to the ${board}"
  place = "lower-bay"
  look  = "black wire from the door switch to the ${board}"
  ports = { a = "L-door", b = "LB" }
  mode "loose" {
    name   = "black power wire off or burned at the ${board}"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-line-lead"
  }
}

part "neutral-lead" {
  kind  = "wire"
  name  = "white neutral wire to the ${board}"
  place = "upper-bay"
  look  = "the white wire to the row of white wires on the ${board}"
  ports = { a = "N", b = "NB" }
  mode "loose" {
    name   = "white neutral wire off at the ${board}"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-neutral-lead"
  }
}

point "outlet-hot" {
  net   = "HOT"
  place = "living"
  name  = "short slot of the outlet"
  where = "any outlet that works a lamp"
}

point "outlet-neutral" {
  net   = "NEU"
  place = "living"
  name  = "long slot of the outlet"
  where = "beside the short slot"
}

point "box-in" {
  net   = "LS-in"
  place = "switch-box"
  name  = "switch screw with the house wire"
  where = "${machine} switch, on the side of the house cable"
}

point "box-out" {
  net   = "LS-out"
  place = "switch-box"
  name  = "switch screw with the ${machine} wire"
  where = "${machine} switch, on the side of the ${machine}"
}

point "box-neutral" {
  net   = "NJ"
  place = "switch-box"
  name  = "neutral joint in the switch box"
  where = "wire nut on the white wires"
}

point "box-ground" {
  net   = "CHASSIS"
  place = "switch-box"
  name  = "bare metal of the switch box"
  where = "any bright screw of the box"
}

point "door-in" {
  net   = "L1"
  place = "lower-bay"
  name  = "incoming terminal of the door switch"
  where = "the black wire that comes from the wire joint"
}

point "door-out" {
  net   = "L-door"
  place = "lower-bay"
  name  = "outgoing terminal of the door switch"
  where = "the wire that goes to the ${board}"
}

point "door-n" {
  net   = "N"
  place = "lower-bay"
  name  = "neutral joint by the door switch"
  where = "the white wires beside the door switch"
}

point "door-a" {
  net   = "door-switch.a"
  place = "lower-bay"
  name  = "first terminal of the door switch"
  where = "with its wire pulled off"
}

point "door-b" {
  net   = "door-switch.b"
  place = "lower-bay"
  name  = "second terminal of the door switch"
  where = "the other terminal"
}

point "line-in" {
  net   = "L1"
  place = "upper-bay"
  name  = "black power wire at the joint"
  where = "incoming wires, upper left corner"
}

point "neutral-in" {
  net   = "N"
  place = "upper-bay"
  name  = "white neutral wire at the joint"
  where = "incoming wires, upper left corner"
}

point "board-l" {
  net   = "LB"
  place = "upper-bay"
  name  = "power terminal of the ${board}"
  where = "marked L or line, with a black wire"
}

point "board-n" {
  net   = "NB"
  place = "upper-bay"
  name  = "neutral row of the ${board}"
  where = "the row of white wires"
}

point "frame" {
  net   = "CHASSIS"
  place = "upper-bay"
  name  = "bare metal of the ${machine}"
  where = "a bright screw head beside the ${board}"
}

check "house-power" {
  stage    = "free"
  name     = "power in the house"
  function = "look"
  part     = "supply"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Do the lights in the house work?"
  option "on" {
    when  = !mode("supply.dead")
    label = "Yes"
  }
  option "off" {
    label = "No"
    stop  = "no-power"
  }
}

check "breaker-look" {
  stage    = "free"
  name     = "${machine} breaker"
  function = "look"
  part     = "breaker"
  places   = ["breakers"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  ask      = "Is it on, or off or tripped?"
  option "on" {
    when  = !breaker.blown
    label = "On"
  }
  option "tripped" {
    also  = ["off"]
    label = "Off or tripped"
    mend  = "reset-breaker"
    told  = ["trips"]
  }
  act    = "Find the ${machine} breaker in the panel."
  before = ["power-on"]
}

check "switch-look" {
  stage    = "free"
  name     = "${machine} switch"
  function = "look"
  part     = "furnace-switch"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Is it on or off?"
  option "on" {
    when  = !mode("furnace-switch.off")
    label = "On"
  }
  option "off" {
    label = "Off"
    mend  = "switch-on"
  }
  act    = "Find the switch on the ${machine} or near it. It looks like a light switch."
  before = ["power-on"]
}

check "panel-look" {
  stage    = "free"
  name     = "lower front panel"
  function = "look"
  part     = "panel-seat"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Press along the edge of the lower front panel."
  ask      = "Is the panel tight or loose?"
  option "tight" {
    when  = !(panel-seat.value < 0.5)
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
    mend  = "seat-panel"
  }
}

check "outlet" {
  stage    = "plan"
  name     = "meter on a working outlet"
  function = "volts-ac"
  part     = "supply"
  red      = "outlet-hot"
  black    = "outlet-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "any"
  places   = []
  hazard   = "mains"
  instead  = "house-power"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip in each slot of the outlet."
  caution  = "House voltage. Hold only the plastic."
}

check "box-in-v" {
  stage    = "plan"
  name     = "volts coming in at the switch box"
  function = "volts-ac"
  part     = "line-run"
  red      = "box-in"
  black    = "box-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "switch-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "box-out-v" {
  stage    = "plan"
  name     = "volts after the ${machine} switch"
  function = "volts-ac"
  part     = "furnace-switch"
  red      = "box-out"
  black    = "box-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "switch-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "box-ground-v" {
  stage    = "plan"
  name     = "volts from the incoming wire to ground"
  function = "volts-ac"
  part     = "neutral-run"
  red      = "box-in"
  black    = "box-ground"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "breaker-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "door-in-v" {
  stage    = "plan"
  name     = "volts before the door switch"
  function = "volts-ac"
  red      = "door-in"
  black    = "door-n"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["lower-bay"]
  hazard   = "mains"
  instead  = "door-switch-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. The blower may start."
  hold     = "free"
}

check "board-line" {
  stage    = "plan"
  name     = "volts at the ${board}"
  function = "volts-ac"
  part     = "board"
  red      = "board-l"
  black    = "board-n"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "light"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "board-load" {
  stage    = "plan"
  name     = "volts at the ${board} while the igniter glows"
  function = "volts-ac"
  part     = "supply"
  red      = "board-l"
  black    = "board-n"
  unit     = "V"
  limit    = between(108, 127, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "story-pattern"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the igniter glows."
  caution  = "House voltage. The fan is running."
  unless   = ["${load}"]
}

check "board-lg" {
  stage    = "plan"
  name     = "volts from the power wire to bare metal"
  function = "volts-ac"
  part     = "junction"
  red      = "board-l"
  black    = "frame"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "ground-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "board-ng" {
  stage    = "plan"
  name     = "volts from neutral to bare metal"
  function = "volts-ac"
  part     = "junction"
  red      = "board-n"
  black    = "frame"
  unit     = "V"
  limit    = atmost(3, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "ground-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "door-switch-ohms" {
  stage    = "plan"
  name     = "door switch pressed in"
  function = "ohms"
  part     = "door-switch"
  red      = "door-a"
  black    = "door-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay"]
  lift     = ["door-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold the button in. Read the ohms."
  hold     = "held"
}

check "line-lead-ohms" {
  stage    = "plan"
  name     = "black wire from the door switch to the ${board}"
  function = "ohms"
  part     = "line-lead"
  red      = "door-out"
  black    = "board-l"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip on each end of the wire. Read the ohms."
}

check "ground-ohms" {
  stage    = "plan"
  name     = "neutral to bare metal"
  function = "ohms"
  part     = "ground-run"
  red      = "board-n"
  black    = "frame"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "supply-wire-look" {
  stage    = "plan"
  name     = "supply wires of the ${board}"
  function = "look"
  part     = "neutral-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on the black, white, and transformer wires at the ${board}."
  ask      = "Are the wires tight, or loose or burned?"
  option "tight" {
    when  = !(mode("line-lead.loose") || mode("neutral-lead.loose") || mode("secondary-lead.loose") || mode("common-lead.loose"))
    label = "Tight"
  }
  option "loose" {
    also  = ["burnt"]
    label = "Loose or burned"
  }
}

repair "switch-on" {
  name    = "switch the ${machine} on"
  part    = "furnace-switch"
  kind    = "set"
  minutes = q("1..1 min", "from memory")
  confirm = "switch-look"
  step {
    act   = "Turn the ${machine} switch on."
    power = "on"
  }
  step {
    act   = "Mark the switch, so that nobody turns it off."
    power = "on"
  }
}

repair "reset-breaker" {
  name    = "reset the ${machine} breaker once"
  part    = "breaker"
  kind    = "set"
  minutes = q("2..5 min", "from memory")
  causes  = ["blower-frame", "blower-ohms"]
  confirm = "breaker-look"
  note    = "If it trips again, leave it off and call an electrician."
  step {
    act     = "Push the lever all the way off, then on. Do it once only."
    caution = "Dry hands. Stand to the side."
    level   = "warning"
    power   = "on"
  }
}

repair "seat-panel" {
  name    = "close the lower front panel fully"
  part    = "panel-seat"
  kind    = "refit"
  minutes = q("1..3 min", "from memory")
  confirm = "panel-look"
  note    = "The door switch stays free. Put no tape on it."
  step {
    act   = "Hang the panel on its hooks. Press it in until it is tight."
    power = "on"
  }
}

repair "refit-line-lead" {
  name    = "fasten the black power wire at the ${board}"
  part    = "line-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-line"
  step {
    act    = "Take a photo. Pull the black power wire off."
    wire   = "door-out"
    places = ["lower-bay", "upper-bay"]
  }
  step {
    act    = "Cut back the burned copper. Crimp on a new connector."
    places = ["lower-bay"]
  }
  step {
    act    = "Push it all the way on. Pull gently to test it."
    wire   = "board-l"
    places = ["upper-bay"]
  }
}

repair "refit-neutral-lead" {
  name    = "fasten the white neutral wire at the ${board}"
  part    = "neutral-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-line"
  step {
    act    = "Take a photo of the row of white wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Push the neutral wire all the way on. Pull gently to test it."
    wire   = "board-n"
    places = ["upper-bay"]
  }
}

repair "replace-door-switch" {
  name    = "replace the door switch"
  part    = "door-switch"
  kind    = "replace"
  price   = q("8..30 money", "from memory")
  minutes = q("15..25 min", "from memory")
  match   = ["volts", "amps", "travel", "open when free"]
  causes  = ["rules"]
  confirm = "door-switch-ohms"
  note    = "Never tape it or bypass it."
  step {
    act     = "Take a photo. Pull off one wire at a time."
    caution = "Never tape it. Never bypass it."
    level   = "warning"
    wire    = "door-in"
    places  = ["lower-bay"]
  }
  step {
    act    = "Snap in the new switch. Move the second wire over."
    wire   = "door-out"
    places = ["lower-bay"]
  }
}

repair "call-utility-power" {
  name    = "call the power company"
  part    = "supply"
  kind    = "call"
  stop    = "no-power"
  minutes = q("0..10 min", "from memory")
  confirm = "house-power"
}

repair "call-electrician" {
  name    = "call an electrician for the house wiring"
  part    = "line-run"
  kind    = "call"
  stop    = "line-wiring"
  minutes = q("0..10 min", "from memory")
  confirm = "board-load"
}

repair "call-polarity" {
  name    = "call an electrician for the swapped house wires"
  part    = "junction"
  kind    = "call"
  stop    = "line-wiring"
  minutes = q("0..10 min", "from memory")
  confirm = "board-lg"
}

stop "line-wiring" {
  say  = "House wiring needs an electrician."
  call = "a licensed electrician"
  tell = "Tell them the volts at the ${board}, at rest, while it runs, and to ground."
  now  = "Leave the ${machine} breaker off."
}

stop "no-power" {
  say  = "The house has no power."
  call = "the power company"
  tell = "Tell them that the whole house is dark, and since when."
  now  = "Turn the ${machine} switch off until the power is back."
}

caution "mains" {
  level = "danger"
  say = [
    "House voltage is live here. It can kill. Use one hand. Stand on a dry floor. Wear no rings.",
    "House voltage. Use one hand only.",
    "House voltage is live. Touch only plastic.",
    "House voltage here. Dry floor, one hand.",
  ]
}
