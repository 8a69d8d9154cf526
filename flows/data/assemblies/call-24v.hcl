# The transformer, its fuse, and the loop of the thermostat. The float switch or whatever stands in R lies between the nets R and R-fl2.
assembly "call-24v" {
  machine = "furnace"
  board   = "board" # where the wires of the house and the thermostat end
}

part "transformer" {
  kind           = "transformer"
  name           = "transformer"
  place          = "upper-bay"
  look           = "square block with two thick wires in and two thin wires out"
  ports          = { p1 = "LB", p2 = "NB", s1 = "SEC-R", s2 = "SEC-C" }
  primary        = q("120 V", "plate")
  secondary      = q("26.5 V", 25.5, 27.5, "T12")
  rating         = q("40 W", "common practice, no source")
  primary_ohms   = q("12 ohm", 2, 40, "common practice, no source")
  secondary_ohms = q("0.6 ohm", 0.2, 1.6, "common practice, no source")
  mode "primary-open" {
    name   = "transformer burned out on the house voltage side"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "secondary-open" {
    name   = "transformer burned out on the low voltage side"
    does   = "open-secondary"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "link-open" {
    name   = "hidden fuse inside the transformer open"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "weak" {
    name   = "transformer weak, its volts sag under load"
    does   = "resist"
    ohms   = q("25 ohm", "common practice, no source")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-transformer"
  }
}

part "secondary-lead" {
  kind  = "wire"
  name  = "R wire of the transformer"
  place = "upper-bay"
  look  = "thin red wire from the transformer to the ${board}"
  ports = { a = "SEC-R", b = "R-sec" }
  mode "loose" {
    name   = "R wire of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-secondary-lead"
  }
}

part "common-lead" {
  kind  = "wire"
  name  = "C wire of the transformer"
  place = "upper-bay"
  look  = "thin blue or black wire from the transformer to the ${board}"
  ports = { a = "SEC-C", b = "C" }
  mode "loose" {
    name   = "C wire of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-common-lead"
  }
}

part "common-bond" {
  kind  = "wire"
  name  = "ground wire of terminal C"
  place = "upper-bay"
  look  = "short wire from the ${board} to bare metal"
  ports = { a = "C", b = "CHASSIS" }
  mode "open" {
    name   = "ground wire of terminal C off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "tighten-common-bond"
  }
}

part "board-fuse" {
  kind   = "fuse"
  name   = "${board} fuse"
  place  = "upper-bay"
  look   = "flat plug-in fuse on the ${board}, as in a car"
  ports  = { a = "R-sec", b = "R" }
  rating = q("3 A", "common practice, no source")
  mode "blown" {
    name   = "${board} fuse blown, and nothing is shorted now"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-fuse"
  }
}

part "contactor" {
  kind  = "load"
  name  = "coil of the outdoor unit"
  place = "outdoor-unit"
  look  = "relay block with a coil and two thin wires"
  ports = { a = "Y-out", b = "C" }
  ohms  = q("60 ohm", 30, 100, "common practice, no source")
  cold  = q("15 ohm", 5, 25, "common practice, no source")
  works = q("18 V", "common practice, no source")
  mode "shorted" {
    name   = "coil of the outdoor unit shorted"
    does   = "short"
    ohms   = q("2 ohm", 0.3, 5, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "isolate-outdoor"
  }
}

part "y-wire" {
  kind  = "wire"
  name  = "Y wire to the outdoor unit"
  place = "splice"
  look  = "yellow wire in the outdoor cable"
  ports = { a = "Y", b = "Y-out" }
  mode "pinched" {
    name   = "Y wire pinched against common"
    does   = "touch"
    to     = "C"
    at     = "b"
    ohms   = q("0.5 ohm", 0.1, 3, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "repair-y-wire"
  }
}

# What blew the fuse may be at rest now: a cooling call is let happen in the past when the outdoor circuit is shorted.
part "cool-contact" {
  kind   = "contact"
  name   = "cooling contact of the thermostat"
  place  = "wall-stat"
  look   = "inside the thermostat, not visible"
  ports  = { a = "R", b = "Y" }
  closes = call && (mode("contactor.shorted") || mode("y-wire.pinched") || mode("stat-setup.heat-pump"))
}

part "r-splice" {
  kind  = "wire"
  name  = "red wire joint"
  place = "splice"
  look  = "wire nut on the red wires"
  ports = { a = "R-fl2", b = "R-splice" }
  mode "open" {
    name   = "red wire joint open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "remake-r-splice"
  }
}

part "r-wire" {
  kind  = "wire"
  name  = "R wire in the wall"
  place = "splice"
  look  = "red wire in the thermostat cable"
  ports = { a = "R-splice", b = "R-wall" }
  mode "broken" {
    name   = "R wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-cable"
  }
  mode "pinched" {
    name   = "thermostat cable pinched, red wire touches common"
    does   = "touch"
    to     = "C"
    at     = "b"
    ohms   = q("0.5 ohm", 0.1, 3, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-cable"
  }
}

part "r-terminal" {
  kind  = "wire"
  name  = "R wire at the thermostat"
  place = "stat-base"
  look  = "red wire at terminal R of the thermostat"
  ports = { a = "R-wall", b = "R-stat" }
  mode "off" {
    name   = "R wire off at the thermostat"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-stat-wire"
  }
}

part "c-wire" {
  kind  = "wire"
  name  = "C wire in the wall"
  place = "splice"
  look  = "blue or black wire in the thermostat cable"
  ports = { a = "C", b = "C-stat" }
  mode "broken" {
    name   = "C wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "use-spare-common"
  }
}

part "batteries" {
  kind  = "thing"
  name  = "thermostat batteries"
  place = "wall-stat"
  look  = "small batteries in the thermostat"
  mode "dead" {
    name   = "thermostat batteries dead"
    does   = "off"
    rate   = q("8 x", "common practice, no source")
    repair = "change-batteries"
  }
}

part "stat-mode" {
  kind  = "thing"
  name  = "thermostat mode"
  place = "wall-stat"
  look  = "the heat, off, cool setting"
  mode "cool" {
    name   = "thermostat set to cool"
    does   = "wrong"
    wrong  = true
    rate   = q("8 x", "common practice, no source")
    repair = "set-heat"
  }
  mode "off" {
    name   = "thermostat set to off"
    does   = "wrong"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-heat"
  }
}

part "setpoint" {
  kind  = "thing"
  name  = "set temperature"
  place = "wall-stat"
  look  = "the temperature you ask for"
  mode "low" {
    name   = "set temperature below the room temperature"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-point"
  }
  mode "schedule" {
    name   = "schedule keeps the room at the lower temperature"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-schedule"
  }
  mode "reads-warm" {
    name   = "thermostat reads warmer than the room"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "move-thermostat"
  }
}

part "stat-setup" {
  kind  = "thing"
  name  = "thermostat setup"
  place = "wall-stat"
  look  = "installer menu of the thermostat"
  mode "heat-pump" {
    name   = "thermostat set up for a heat pump"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-heat-type"
  }
}

part "thermostat" {
  kind   = "contact"
  name   = "thermostat"
  place  = "wall-stat"
  look   = "on the wall, shows the room temperature"
  ports  = { a = "R-stat", b = "W-stat" }
  closes = call && batteries.value > 0.5 && c-wire.ok && !mode("stat-mode.cool") && !mode("stat-mode.off") && setpoint.value > 0.5 && stat-setup.value > 0.5 && !mode("power-stealing.leaks")
  mode "open" {
    name   = "thermostat contacts never close"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-thermostat"
  }
  mode "burnt" {
    name   = "thermostat contacts burned"
    does   = "resist"
    ohms   = q("3500 ohm", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermostat"
  }
}

part "power-stealing" {
  kind  = "wire"
  name  = "power supply of the thermostat"
  place = "wall-stat"
  look  = "thermostat with no common wire"
  ports = { a = "R-stat", b = "W-stat" }
  ohms  = q("30000000 ohm", 200000, 100000000, "common practice, no source") # from hardly any to nothing measurable
  mode "leaks" {
    name   = "thermostat without a common wire, never switches fully"
    does   = "set"
    ohms   = q("1200 ohm", "from memory")
    rate   = q("1 x", "common practice, no source")
    repair = "add-common-wire"
  }
}

part "w-terminal" {
  kind  = "wire"
  name  = "W wire at the thermostat"
  place = "stat-base"
  look  = "white wire at terminal W of the thermostat"
  ports = { a = "W-stat", b = "W-wall" }
  mode "off" {
    name   = "W wire off at the thermostat"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-stat-wire"
  }
}

part "w-wire" {
  kind  = "wire"
  name  = "W wire in the wall"
  place = "splice"
  look  = "white wire in the thermostat cable"
  ports = { a = "W-wall", b = "W-splice" }
  mode "broken" {
    name   = "W wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-cable"
  }
}

part "w-splice" {
  kind  = "wire"
  name  = "white wire joint"
  place = "splice"
  look  = "wire nut on the white wires"
  ports = { a = "W-splice", b = "W-tail" }
  mode "open" {
    name   = "white wire joint open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "remake-w-splice"
  }
}

part "w-tail" {
  kind  = "wire"
  name  = "W wire at the ${board}"
  place = "upper-bay"
  look  = "white wire at terminal W of the ${board}"
  ports = { a = "W-tail", b = "W" }
  mode "loose" {
    name   = "wire connector at terminal W loose, comes and goes"
    does   = "open"
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "crimp-w"
  }
  mode "wrong-terminal" {
    name   = "W wire on terminal Y instead of W"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "move-w-wire"
  }
}

part "y-terminal" {
  kind   = "contact"
  name   = "terminal Y of the ${board}"
  place  = "upper-bay"
  look   = "beside terminal W in the low voltage row"
  ports  = { a = "W-tail", b = "Y" }
  closes = mode("w-tail.wrong-terminal")
}

point "primary-a" {
  net   = "transformer.p1"
  place = "upper-bay"
  name  = "first thick wire of the transformer"
  where = "with the wire taken off"
}

point "primary-b" {
  net   = "transformer.p2"
  place = "upper-bay"
  name  = "second thick wire of the transformer"
  where = "with the wire taken off"
}

point "secondary-a" {
  net   = "SEC-R"
  place = "upper-bay"
  name  = "R terminal of the transformer"
  where = "the thin red wire, at the transformer"
}

point "secondary-b" {
  net   = "SEC-C"
  place = "upper-bay"
  name  = "C terminal of the transformer"
  where = "the thin blue or black wire, at the transformer"
}

point "winding-a" {
  net   = "transformer.s1"
  place = "upper-bay"
  name  = "end of the transformer's R wire"
  where = "the thin red wire, taken off"
}

point "winding-b" {
  net   = "transformer.s2"
  place = "upper-bay"
  name  = "end of the transformer's C wire"
  where = "the thin blue or black wire, taken off"
}

point "board-24" {
  net   = "R-sec"
  place = "upper-bay"
  name  = "low voltage input of the ${board}"
  where = "where the thin red wire is connected"
}

point "board-c" {
  net   = "C"
  place = "upper-bay"
  name  = "C terminal of the ${board}"
  where = "in the low voltage row, marked C"
}

point "fuse-a" {
  net   = "board-fuse.a"
  place = "upper-bay"
  name  = "first blade of the fuse"
  where = "with the fuse pulled out"
}

point "fuse-b" {
  net   = "board-fuse.b"
  place = "upper-bay"
  name  = "second blade of the fuse"
  where = "with the fuse pulled out"
}

point "board-r" {
  net   = "R"
  place = "upper-bay"
  name  = "R terminal of the ${board}"
  where = "in the low voltage row, marked R"
}

point "board-w" {
  net   = "W"
  place = "upper-bay"
  name  = "W terminal of the ${board}"
  where = "in the low voltage row, marked W"
}

point "board-y" {
  net   = "Y"
  place = "upper-bay"
  name  = "Y terminal of the ${board}"
  where = "in the low voltage row, marked Y"
}

point "y-out" {
  net   = "y-wire.a"
  place = "upper-bay"
  name  = "Y wire of the cable"
  where = "taken off terminal Y"
}

point "splice-r" {
  net   = "R-splice"
  place = "splice"
  name  = "red wire joint"
  where = "the red wire that goes into the wall"
}

point "splice-w" {
  net   = "W-splice"
  place = "splice"
  name  = "wall side of the white wire joint"
  where = "the white wire that comes from the wall"
}

point "splice-w2" {
  net   = "W-tail"
  place = "splice"
  name  = "${board} side of the white wire joint"
  where = "the white wire that goes to the ${board}"
}

point "splice-c" {
  net   = "C"
  place = "splice"
  name  = "common wire joint"
  where = "the blue or black wire"
}

point "wall-r" {
  net   = "r-wire.a"
  place = "splice"
  name  = "wall wire of the red joint"
  where = "taken out of its wire nut"
}

point "wall-w" {
  net   = "w-wire.b"
  place = "splice"
  name  = "wall wire of the white joint"
  where = "taken out of its wire nut"
}

point "stat-r" {
  net   = "R-stat"
  place = "stat-base"
  name  = "R terminal of the thermostat"
  where = "on the base plate"
}

point "stat-rw" {
  net   = "R-wall"
  place = "stat-base"
  name  = "bare end of the R wire"
  where = "at the base plate"
}

point "stat-w" {
  net   = "W-stat"
  place = "stat-base"
  name  = "W terminal of the thermostat"
  where = "on the base plate"
}

point "stat-ww" {
  net   = "W-wall"
  place = "stat-base"
  name  = "bare end of the W wire"
  where = "at the base plate"
}

point "stat-c" {
  net   = "C-stat"
  place = "stat-base"
  name  = "C terminal of the thermostat"
  where = "on the base plate"
}

check "stat-screen" {
  stage    = "free"
  name     = "thermostat screen"
  function = "look"
  part     = "batteries"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  before   = ["call-on"]
  ask      = "Is the thermostat screen normal, or blank or low on battery?"
  option "lit" {
    when  = !(batteries.value < 0.5 || !c-wire.ok)
    label = "Normal"
  }
  option "blank" {
    mend  = "change-batteries"
    told  = ["blank-stat"]
    label = "Blank or low on battery"
    also  = ["low-battery"]
  }
}

check "stat-mode-set" {
  stage    = "free"
  name     = "thermostat mode"
  function = "look"
  part     = "stat-mode"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  before   = ["call-on"]
  ask      = "Is the thermostat set to heat, cool, or off?"
  option "heat" {
    when  = !mode("stat-mode.cool") && !mode("stat-mode.off")
    label = "Heat"
  }
  option "cool" {
    when  = mode("stat-mode.cool")
    mend  = "set-heat"
    label = "Cool"
  }
  option "off" {
    mend  = "set-heat"
    label = "Off"
  }
}

check "stat-setpoint" {
  stage    = "free"
  name     = "set temperature"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  before   = ["call-on"]
  act      = "Read the set temperature and the room temperature. Change nothing yet."
  ask      = "Compared with the room, is the set temperature above or below?"
  option "above" {
    when  = !(mode("setpoint.low") || mode("setpoint.schedule"))
    label = "Above"
  }
  option "below" {
    mend  = "set-point"
    label = "Below"
  }
}

check "stat-schedule" {
  stage    = "free"
  name     = "thermostat schedule"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  ask      = "Is the thermostat on hold or on a schedule?"
  option "hold" {
    when  = !mode("setpoint.schedule")
    label = "On hold"
  }
  option "schedule" {
    label = "On a schedule"
  }
}

check "stat-raise" {
  stage    = "free"
  name     = "${machine} with the thermostat turned up"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "on"
  call     = "on"
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Set the thermostat ten degrees higher. Then wait five minutes."
  ask      = "Is the ${machine} silent or running?"
  option "silent" {
    when  = setpoint.ok && !reached("draft")
    label = "Silent"
  }
  option "running" {
    label = "Running"
  }
}

check "stat-room" {
  stage    = "free"
  name     = "thermostat's room temperature"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["stat-screen=blank"]
  act      = "Hold a second thermometer beside the thermostat."
  ask      = "Do both show nearly the same temperature?"
  option "same" {
    when  = !mode("setpoint.reads-warm")
    label = "Yes"
  }
  option "different" {
    label = "No"
  }
}

check "stat-type" {
  stage    = "free"
  name     = "thermostat setup"
  function = "look"
  part     = "stat-setup"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Open the installer menu on the thermostat. Find the heat type."
  ask      = "Is it set for a ${machine}?"
  option "right-place" {
    when  = !mode("stat-setup.heat-pump")
    label = "Yes"
  }
  option "different" {
    label = "No"
  }
}

check "y-cable-look" {
  stage    = "free"
  name     = "cable to the outdoor unit"
  function = "look"
  part     = "y-wire"
  places   = ["outside"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow the thin cable to the outdoor unit with your eyes."
  ask      = "Is the cable good, or bare or pinched?"
  option "good" {
    when  = !mode("y-wire.pinched")
    label = "Good"
  }
  option "bare" {
    label = "Bare or pinched"
  }
}

check "splice-look" {
  stage    = "free"
  name     = "thermostat cable"
  function = "look"
  part     = "r-wire"
  places   = ["splice"]
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Follow the thin thermostat cable as far as you can see it."
  ask      = "Is the cable good, or bare or pinched?"
  option "good" {
    when  = !mode("r-wire.pinched")
    label = "Good"
  }
  option "bare" {
    label = "Bare or pinched"
  }
}

check "secondary-v" {
  stage    = "plan"
  name     = "volts at the transformer"
  function = "volts-ac"
  part     = "transformer"
  red      = "secondary-a"
  black    = "secondary-b"
  unit     = "V"
  limit    = between(22, 29, "T12")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "secondary-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "board-24-v" {
  stage    = "plan"
  name     = "low voltage into the control board"
  function = "volts-ac"
  part     = "secondary-lead"
  red      = "board-24"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "transformer-c" {
  stage    = "plan"
  name     = "volts from the transformer to terminal C"
  function = "volts-ac"
  part     = "common-lead"
  red      = "secondary-a"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "fuse-v" {
  stage    = "plan"
  name     = "volts across the ${board} fuse"
  function = "volts-ac"
  part     = "board-fuse"
  red      = "board-24"
  black    = "board-r"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "fuse-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Touch the two small test spots on the fuse."
}

check "r-c" {
  stage    = "plan"
  name     = "volts from R to C at the ${board}"
  function = "volts-ac"
  part     = "board"
  red      = "board-r"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "r-c-load" {
  stage    = "plan"
  name     = "volts from R to C with the gas valve on"
  function = "volts-ac"
  part     = "transformer"
  red      = "board-r"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts when the gas valve clicks."
}

check "w-c" {
  stage    = "plan"
  name     = "heat signal at the control board"
  function = "volts-ac"
  part     = "thermostat"
  red      = "board-w"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "w-c-rest" {
  stage    = "plan"
  name     = "heat signal with the thermostat down"
  function = "volts-ac"
  part     = "power-stealing"
  red      = "board-w"
  black    = "board-c"
  unit     = "V"
  limit    = atmost(2, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "y-c" {
  stage    = "plan"
  name     = "volts from Y to C with the thermostat up"
  function = "volts-ac"
  part     = "w-tail"
  red      = "board-y"
  black    = "board-c"
  unit     = "V"
  limit    = atmost(2, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "splice-r-c" {
  stage    = "plan"
  name     = "volts at the red wire joint"
  function = "volts-ac"
  part     = "r-splice"
  red      = "splice-r"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-r-c" {
  stage    = "plan"
  name     = "volts from R to C at the thermostat"
  function = "volts-ac"
  part     = "c-wire"
  red      = "stat-r"
  black    = "stat-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["stat-base"]
  hazard   = "low"
  instead  = "stat-wire-look"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-r-w" {
  stage    = "plan"
  name     = "volts across the thermostat"
  function = "volts-ac"
  part     = "thermostat"
  red      = "stat-r"
  black    = "stat-w"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["stat-base"]
  hazard   = "low"
  instead  = "stat-loop"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-rw-end" {
  stage    = "plan"
  name     = "volts between the R and W wire ends"
  function = "volts-ac"
  part     = "r-terminal"
  red      = "stat-rw"
  black    = "stat-ww"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["stat-base"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Pull the thermostat off its base. Then read the volts."
}

check "splice-w-c" {
  stage    = "plan"
  name     = "volts at the white joint, wall side"
  function = "volts-ac"
  part     = "w-wire"
  red      = "splice-w"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "splice-w2-c" {
  stage    = "plan"
  name     = "volts at the white joint, ${board} side"
  function = "volts-ac"
  part     = "w-splice"
  red      = "splice-w2"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "primary-ohms" {
  stage    = "plan"
  name     = "transformer, house voltage side"
  function = "ohms"
  part     = "transformer"
  red      = "primary-a"
  black    = "primary-b"
  unit     = "ohm"
  limit    = between(4, 60, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["primary-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "secondary-ohms" {
  stage    = "plan"
  name     = "transformer, low voltage side"
  function = "ohms"
  part     = "transformer"
  red      = "winding-a"
  black    = "winding-b"
  unit     = "ohm"
  limit    = between(0.1, 5, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["winding-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fuse-ohms" {
  stage    = "plan"
  name     = "${board} fuse, pulled out"
  function = "ohms"
  part     = "board-fuse"
  red      = "fuse-a"
  black    = "fuse-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fuse-a", "fuse-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "cable-short" {
  stage    = "plan"
  name     = "R wire to common"
  function = "ohms"
  part     = "r-wire"
  red      = "wall-r"
  black    = "splice-c"
  unit     = "ohm"
  limit    = atleast(1000, "common practice, no source")
  must     = true
  power    = "off"
  places   = ["splice"]
  lift     = ["wall-r"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "stat-loop" {
  stage    = "plan"
  name     = "thermostat cable with the thermostat up"
  function = "ohms"
  part     = "thermostat"
  red      = "wall-r"
  black    = "wall-w"
  unit     = "ohm"
  limit    = atmost(10, "common practice, no source")
  power    = "off"
  call     = "on"
  places   = ["splice"]
  lift     = ["wall-r", "wall-w"]
  hands_in = true
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn the thermostat up first. Then read the ohms."
}

check "y-short" {
  stage    = "plan"
  name     = "Y wire to common"
  function = "ohms"
  part     = "y-wire"
  red      = "y-out"
  black    = "board-c"
  unit     = "ohm"
  limit    = between(8, 200, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["y-out"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "bond-ohms" {
  stage    = "plan"
  name     = "terminal C to ${machine} metal"
  function = "ohms"
  part     = "common-bond"
  red      = "board-c"
  black    = "frame"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "w-look" {
  stage    = "plan"
  name     = "wire at terminal W"
  function = "look"
  part     = "w-tail"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Read the letter under the white thermostat wire at the ${board}."
  ask      = "Is the wire on terminal W?"
  option "right-place" {
    when  = !mode("w-tail.wrong-terminal")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
}

check "w-tug" {
  stage    = "plan"
  name     = "pull test at terminal W"
  function = "look"
  part     = "w-tail"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on the W wire at the ${board}."
  ask      = "Is the wire tight or loose?"
  option "tight" {
    when  = !mode("w-tail.loose")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "fuse-look" {
  stage    = "plan"
  name     = "look of the ${board} fuse"
  function = "look"
  part     = "board-fuse"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the flat fuse out. Hold it up to a light."
  ask      = "Is the strip inside good or blown?"
  option "good" {
    when  = !board-fuse.blown
    label = "Good"
  }
  option "blown" {
    label = "Blown"
  }
}

check "stat-wire-look" {
  stage    = "plan"
  name     = "wires at the thermostat"
  function = "look"
  part     = "r-terminal"
  places   = ["stat-base"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the thermostat off its base. Pull gently on each wire."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !(mode("r-terminal.off") || mode("w-terminal.off"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "splice-tug" {
  stage    = "plan"
  name     = "joints of the thermostat cable"
  function = "look"
  part     = "r-splice"
  places   = ["splice"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire under its wire nut."
  ask      = "Are the joints tight or loose?"
  option "tight" {
    when  = !(mode("r-splice.open") || mode("w-splice.open"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

repair "set-heat" {
  name    = "set the thermostat to heat"
  part    = "stat-mode"
  kind    = "set"
  minutes = q("1..2 min", "from memory")
  confirm = "stat-mode-set"
  step {
    act   = "Set the thermostat to heat."
    power = "on"
  }
  step {
    act   = "Wait five minutes. The thermostat has a delay."
    power = "on"
  }
}

repair "set-point" {
  name    = "raise the set temperature"
  part    = "setpoint"
  kind    = "set"
  minutes = q("1..2 min", "from memory")
  confirm = "stat-setpoint"
  step {
    act   = "Set the temperature five degrees above the room temperature."
    power = "on"
  }
}

repair "set-schedule" {
  name    = "set the schedule, or press hold"
  part    = "setpoint"
  kind    = "set"
  minutes = q("2..10 min", "from memory")
  confirm = "stat-schedule"
  step {
    act   = "Press hold on the thermostat, or correct its schedule."
    power = "on"
  }
  step {
    act   = "Set the temperature above the room temperature."
    power = "on"
  }
}

repair "set-heat-type" {
  name    = "set up the thermostat for a ${machine}"
  part    = "stat-setup"
  kind    = "set"
  minutes = q("5..15 min", "from memory")
  confirm = "stat-type"
  step {
    act   = "Write down how the menu is set now."
    power = "on"
  }
  step {
    act   = "Set the heat type to gas ${machine}."
    power = "on"
  }
}

repair "move-thermostat" {
  name    = "keep false warmth away from the thermostat"
  part    = "setpoint"
  kind    = "set"
  minutes = q("5..60 min", "from memory")
  confirm = "stat-room"
  note    = "Correct the room temperature in its menu, or move it."
  step {
    act   = "Keep lamps and sun away from the thermostat."
    power = "on"
  }
  step {
    act   = "Close the cable hole behind the thermostat."
    power = "on"
  }
}

repair "change-batteries" {
  name    = "change the thermostat batteries"
  part    = "batteries"
  kind    = "replace"
  price   = q("3..12 money", "from memory")
  minutes = q("2..5 min", "from memory")
  match   = ["battery size", "number of batteries"]
  confirm = "stat-screen"
  step {
    act   = "Take out the old batteries. Notice which way they point."
    power = "on"
  }
  step {
    act   = "Put in fresh batteries of the same size."
    power = "on"
  }
}

repair "refit-secondary-lead" {
  name    = "fasten the R wire of the transformer"
  part    = "secondary-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-24-v"
  step {
    act    = "Push the R wire all the way on. Pull gently to test it."
    wire   = "board-24"
    places = ["upper-bay"]
  }
}

repair "refit-common-lead" {
  name    = "fasten the C wire of the transformer"
  part    = "common-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "r-c"
  step {
    act    = "Push the C wire all the way on. Pull gently to test it."
    wire   = "board-c"
    places = ["upper-bay"]
  }
}

repair "tighten-common-bond" {
  name    = "tighten the ground wire of terminal C"
  part    = "common-bond"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "bond-ohms"
  step {
    act    = "Clean the metal under the ground wire. Tighten its screw."
    wire   = "frame"
    places = ["upper-bay"]
  }
}

repair "remake-r-splice" {
  name    = "make the red wire joint new"
  part    = "r-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-r-c"
  step {
    act  = "Cut the wires back to bright copper."
    wire = "splice-r"
  }
  step {
    act = "Twist the wires together. Put on a new wire nut. Pull gently to test it."
  }
}

repair "remake-w-splice" {
  name    = "make the white wire joint new"
  part    = "w-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-w2-c"
  step {
    act  = "Cut the wires back to bright copper."
    wire = "splice-w"
  }
  step {
    act = "Twist the wires together. Put on a new wire nut. Pull gently to test it."
  }
}

repair "refit-stat-wire" {
  name    = "fasten the wire at the thermostat"
  part    = "r-terminal"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-wire-look"
  step {
    act    = "Strip the end of the wire until it is bright."
    wire   = "stat-r"
    places = ["stat-base"]
  }
  step {
    act    = "Push it in at its own letter. Tighten it. Pull gently to test it."
    places = ["stat-base"]
  }
}

repair "crimp-w" {
  name    = "put a new connector on the W wire"
  part    = "w-tail"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["w-c"]
  confirm = "w-tug"
  note    = "After that, watch three starts. Tap the ${board} cover each time."
  step {
    act    = "Pull the W wire off its terminal."
    wire   = "board-w"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new connector. Push it on. Pull gently to test it."
    places = ["upper-bay"]
  }
}

repair "move-w-wire" {
  name    = "move the W wire to terminal W"
  part    = "w-tail"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["jumper-look", "speed-lead-look"]
  confirm = "w-look"
  step {
    act    = "Take a photo of the row of low voltage wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Move only the W wire, from Y to W."
    wire   = "board-w"
    places = ["upper-bay"]
  }
}

repair "use-spare-common" {
  name    = "use a spare wire as the C wire"
  part    = "c-wire"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-r-c"
  step {
    act    = "Connect a spare wire to C at both ends."
    wire   = "board-c"
    places = ["stat-base", "splice", "upper-bay"]
  }
}

repair "add-common-wire" {
  name    = "give the thermostat a C wire"
  part    = "power-stealing"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("15..60 min", "from memory")
  causes  = ["stat-type"]
  confirm = "w-c-rest"
  step {
    act    = "Connect a spare wire to C at both ends."
    wire   = "board-c"
    places = ["stat-base", "splice", "upper-bay"]
  }
}

repair "replace-cable" {
  name    = "replace the thermostat cable"
  part    = "r-wire"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("60..180 min", "from memory")
  match   = ["number of wires", "wire size"]
  causes  = ["cable-short"]
  confirm = "stat-loop"
  note    = "A good spare wire in the same cable will do, too."
  step {
    act = "Take a photo at both ends. Label each wire."
  }
  step {
    act  = "Pull the new cable in with the old one."
    wire = "splice-r"
  }
  step {
    act    = "Connect one wire at a time, letter to letter."
    wire   = "stat-rw"
    places = ["stat-base"]
  }
  step {
    act     = "If the ${board} fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

repair "repair-y-wire" {
  name    = "insulate or replace the Y wire"
  part    = "y-wire"
  kind    = "replace"
  price   = q("5..30 money", "from memory")
  minutes = q("20..120 min", "from memory")
  match   = ["wire size", "made for outdoors"]
  causes  = ["y-cable-look"]
  confirm = "y-short"
  note    = "The heat works with the Y wire off and taped."
  step {
    act    = "Take the Y wire off its terminal."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act    = "Cut out the bare spot. Join the ends. Insulate the joint."
    wire   = "y-out"
    places = ["upper-bay"]
  }
  step {
    act     = "If the ${board} fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

repair "isolate-outdoor" {
  name    = "leave the outdoor unit disconnected for now"
  part    = "contactor"
  kind    = "call"
  stop    = "outdoor"
  minutes = q("10..20 min", "from memory")
  confirm = "y-short"
  note    = "The heat works without it. The outdoor unit needs a cooling technician."
  step {
    act    = "Take the Y wire off its terminal. Tape its end."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act     = "If the ${board} fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

repair "replace-transformer" {
  name    = "replace the transformer"
  part    = "transformer"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("25..45 min", "from memory")
  match   = ["input volts", "output volts", "volt amps"]
  causes  = ["cable-short", "valve-ohms", "y-short", "rules"]
  confirm = "secondary-v"
  note    = "A short kills the new one, too. Look for the short first."
  step {
    act    = "Take a photo of all four wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the first thick wire to the new transformer."
    wire   = "board-l"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second thick wire."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the R wire of the transformer."
    wire   = "board-24"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the C wire of the transformer."
    wire   = "board-c"
    places = ["upper-bay"]
  }
}

repair "replace-fuse" {
  name    = "replace the ${board} fuse"
  part    = "board-fuse"
  kind    = "replace"
  price   = q("1..5 money", "from memory")
  minutes = q("2..5 min", "from memory")
  match   = ["amps", "shape"]
  causes  = ["cable-short", "y-short", "valve-ohms", "splice-look"]
  confirm = "fuse-v"
  note    = "A fuse blows for a reason. If it blows again, the short is still there."
  step {
    act    = "Pull out the blown fuse."
    wire   = "fuse-a"
    places = ["upper-bay"]
  }
  step {
    act     = "Push in a new fuse with the same amps."
    caution = "Never use a bigger one."
    level   = "warning"
    places  = ["upper-bay"]
  }
}

repair "replace-thermostat" {
  name    = "replace the thermostat"
  part    = "thermostat"
  kind    = "replace"
  price   = q("25..150 money", "from memory")
  minutes = q("20..60 min", "from memory")
  match   = ["24 volts", "terminals", "with or without a C wire"]
  causes  = ["stat-type"]
  confirm = "w-c"
  step {
    act    = "Take a photo of the letters and colors."
    places = ["stat-base"]
  }
  step {
    act    = "Move one wire at a time, letter to letter."
    wire   = "stat-r"
    places = ["stat-base"]
  }
  step {
    act    = "Move the W wire to its letter."
    wire   = "stat-w"
    places = ["stat-base"]
  }
  step {
    act    = "Set the heat type to gas ${machine}."
    places = ["stat-base"]
  }
}

stop "outdoor" {
  say  = "The outdoor unit has its own power."
  call = "a cooling technician"
  tell = "Tell them that its coil shorts the twenty-four volts."
  now  = "Leave the Y wire off and taped."
}

caution "low" {
  level = "caution"
  say = [
    "Twenty-four volts are live here. House voltage is close by.",
    "Twenty-four volts are live. Stay away from the house voltage side.",
    "Twenty-four volts. Do not slip from one terminal to the next.",
    "Twenty-four volts are live. Keep the tips apart.",
  ]
}
