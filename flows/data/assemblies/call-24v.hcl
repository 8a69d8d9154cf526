# The transformer, its fuse, and the loop of the thermostat. The float switch or whatever stands in R lies between the nets R and R-fl2.
assembly "call-24v" {
  machine = "furnace"
  board   = "board" # where the wires of the house and the thermostat end
}

part "transformer" {
  kind           = "transformer"
  name           = "transformer"
  place          = "upper-bay"
  look           = "square block, two thick wires in, two thin wires out"
  ports          = { p1 = "LB", p2 = "NB", s1 = "SEC-R", s2 = "SEC-C" }
  primary        = q("120 V", "plate")
  secondary      = q("26.5 V", 25.5, 27.5, "T12")
  rating         = q("40 W", "common practice, no source")
  primary_ohms   = q("12 ohm", 2, 40, "common practice, no source")
  secondary_ohms = q("0.6 ohm", 0.2, 1.6, "common practice, no source")
  mode "primary-open" {
    name   = "transformer primary open"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "secondary-open" {
    name   = "transformer secondary open"
    does   = "open-secondary"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "link-open" {
    name   = "hidden link in the transformer open"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "weak" {
    name   = "transformer weak, sags under load"
    does   = "resist"
    ohms   = q("25 ohm", "common practice, no source")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-transformer"
  }
}

part "secondary-lead" {
  kind  = "wire"
  name  = "R lead of the transformer"
  place = "upper-bay"
  look  = "thin red wire, transformer to ${board}"
  ports = { a = "SEC-R", b = "R-sec" }
  mode "loose" {
    name   = "R lead of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-secondary-lead"
  }
}

part "common-lead" {
  kind  = "wire"
  name  = "C lead of the transformer"
  place = "upper-bay"
  look  = "thin blue or black wire, transformer to ${board}"
  ports = { a = "SEC-C", b = "C" }
  mode "loose" {
    name   = "C lead of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-common-lead"
  }
}

part "common-bond" {
  kind  = "wire"
  name  = "ground strap of the common side"
  place = "upper-bay"
  look  = "short wire from the ${board} to bare metal"
  ports = { a = "C", b = "CHASSIS" }
  mode "open" {
    name   = "ground strap of the common side open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "tighten-common-bond"
  }
}

part "board-fuse" {
  kind   = "fuse"
  name   = "${board} fuse"
  place  = "upper-bay"
  look   = "flat plug-in fuse on the ${board}, like in a car"
  ports  = { a = "R-sec", b = "R" }
  rating = q("3 A", "common practice, no source")
  mode "blown" {
    name   = "${board} fuse blown, nothing shorted now"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-fuse"
  }
}

part "contactor" {
  kind  = "load"
  name  = "coil of the outdoor unit"
  place = "outdoor-unit"
  look  = "relay block with a coil, two thin wires"
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
  look   = "inside the thermostat, not seen"
  ports  = { a = "R", b = "Y" }
  closes = call && (mode("contactor.shorted") || mode("y-wire.pinched") || mode("stat-setup.heat-pump"))
}

part "r-splice" {
  kind  = "wire"
  name  = "R splice"
  place = "splice"
  look  = "twist cap on the red wires"
  ports = { a = "R-fl2", b = "R-splice" }
  mode "open" {
    name   = "R splice open"
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
    name   = "thermostat cable pinched, R touches common"
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
  kind    = "thing"
  name    = "thermostat batteries"
  place   = "wall-stat"
  look    = "small cells in the thermostat"
  mode "dead" {
    name   = "thermostat batteries dead"
    does   = "off"
    rate   = q("8 x", "common practice, no source")
    repair = "change-batteries"
  }
}

part "stat-mode" {
  kind    = "thing"
  name    = "thermostat mode"
  place   = "wall-stat"
  look    = "the heat, off, cool setting"
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
  kind    = "thing"
  name    = "setpoint"
  place   = "wall-stat"
  look    = "the temperature asked for"
  mode "low" {
    name   = "setpoint below the room temperature"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-point"
  }
  mode "schedule" {
    name   = "schedule holds the room at the set-back"
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
  kind    = "thing"
  name    = "thermostat set-up"
  place   = "wall-stat"
  look    = "installer menu of the thermostat"
  mode "heat-pump" {
    name   = "set up for a heat pump, calls on the wrong terminal"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-heat-type"
  }
}

part "thermostat" {
  kind    = "contact"
  name    = "thermostat"
  place   = "wall-stat"
  look    = "on the wall, shows the room temperature"
  ports   = { a = "R-stat", b = "W-stat" }
  closes  = call && batteries.value > 0.5 && c-wire.ok && !mode("stat-mode.cool") && !mode("stat-mode.off") && setpoint.value > 0.5 && stat-setup.value > 0.5 && !mode("power-stealing.leaks")
  mode "open" {
    name   = "thermostat contacts never close"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-thermostat"
  }
  mode "burnt" {
    name   = "thermostat contacts burnt, high resistance"
    does   = "resist"
    ohms   = q("3500 ohm", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermostat"
  }
}

part "power-stealing" {
  kind  = "wire"
  name  = "power stealing of the thermostat"
  place = "wall-stat"
  look  = "thermostat with no common wire"
  ports = { a = "R-stat", b = "W-stat" }
  ohms  = q("30000000 ohm", 200000, 100000000, "common practice, no source") # from hardly any to nothing measurable
  mode "leaks" {
    name   = "thermostat steals power and leaks, never closes fully"
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
  name  = "W splice"
  place = "splice"
  look  = "twist cap on the white wires"
  ports = { a = "W-splice", b = "W-tail" }
  mode "open" {
    name   = "W splice open"
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
    name   = "crimp at terminal W loose, comes and goes"
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
  name  = "first thick lead of the transformer"
  where = "lead lifted"
}

point "primary-b" {
  net   = "transformer.p2"
  place = "upper-bay"
  name  = "second thick lead of the transformer"
  where = "lead lifted"
}

point "secondary-a" {
  net   = "SEC-R"
  place = "upper-bay"
  name  = "R terminal of the transformer"
  where = "thin red wire, at the transformer"
}

point "secondary-b" {
  net   = "SEC-C"
  place = "upper-bay"
  name  = "C terminal of the transformer"
  where = "thin blue or black wire, at the transformer"
}

point "winding-a" {
  net   = "transformer.s1"
  place = "upper-bay"
  name  = "R lead end of the transformer"
  where = "thin red lead, lifted"
}

point "winding-b" {
  net   = "transformer.s2"
  place = "upper-bay"
  name  = "C lead end of the transformer"
  where = "thin blue or black lead, lifted"
}

point "board-24" {
  net   = "R-sec"
  place = "upper-bay"
  name  = "24 volt input of the ${board}"
  where = "where the thin red wire lands"
}

point "board-c" {
  net   = "C"
  place = "upper-bay"
  name  = "terminal C of the ${board}"
  where = "low voltage row, marked C"
}

point "fuse-a" {
  net   = "board-fuse.a"
  place = "upper-bay"
  name  = "first blade of the fuse"
  where = "fuse pulled out"
}

point "fuse-b" {
  net   = "board-fuse.b"
  place = "upper-bay"
  name  = "second blade of the fuse"
  where = "fuse pulled out"
}

point "board-r" {
  net   = "R"
  place = "upper-bay"
  name  = "terminal R of the ${board}"
  where = "low voltage row, marked R"
}

point "board-w" {
  net   = "W"
  place = "upper-bay"
  name  = "terminal W of the ${board}"
  where = "low voltage row, marked W"
}

point "board-y" {
  net   = "Y"
  place = "upper-bay"
  name  = "terminal Y of the ${board}"
  where = "low voltage row, marked Y"
}

point "y-out" {
  net   = "y-wire.a"
  place = "upper-bay"
  name  = "terminal Y, cable wire"
  where = "lifted off terminal Y"
}

point "splice-r" {
  net   = "R-splice"
  place = "splice"
  name  = "R splice"
  where = "red wire that goes into the wall"
}

point "splice-w" {
  net   = "W-splice"
  place = "splice"
  name  = "W splice, wall side"
  where = "white wire that comes from the wall"
}

point "splice-w2" {
  net   = "W-tail"
  place = "splice"
  name  = "W splice, ${board} side"
  where = "white wire that goes to the ${board}"
}

point "splice-c" {
  net   = "C"
  place = "splice"
  name  = "C splice"
  where = "blue or black wire"
}

point "wall-r" {
  net   = "r-wire.a"
  place = "splice"
  name  = "R splice, wall wire"
  where = "lifted out of its twist cap"
}

point "wall-w" {
  net   = "w-wire.b"
  place = "splice"
  name  = "W splice, wall wire"
  where = "lifted out of its twist cap"
}

point "stat-r" {
  net   = "R-stat"
  place = "stat-base"
  name  = "terminal R of the thermostat"
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
  name  = "terminal W of the thermostat"
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
  name  = "terminal C of the thermostat"
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
  ask      = "The thermostat screen: lit, low battery, or blank?"
  option "lit" { when = !(batteries.value < 0.5 || !c-wire.ok) }
  option "blank" {
    mend = "change-batteries"
    told = ["blank-stat"]
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
  ask      = "The thermostat: set to heat, cool, or off?"
  option "heat" { when = !mode("stat-mode.cool") && !mode("stat-mode.off") }
  option "cool" {
    when = mode("stat-mode.cool")
    mend = "set-heat"
  }
  option "off" {
    mend = "set-heat"
  }
}

check "stat-setpoint" {
  stage    = "free"
  name     = "setpoint"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  before   = ["call-on"]
  act      = "Read both numbers, change nothing yet."
  ask      = "The setpoint: above or below the room reading?"
  option "above" { when = !(mode("setpoint.low") || mode("setpoint.schedule")) }
  option "below" {
    mend = "set-point"
  }
}

check "stat-schedule" {
  stage    = "free"
  name     = "schedule"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  ask      = "The thermostat: on hold, or on a schedule?"
  option "hold" { when = !mode("setpoint.schedule") }
  option "schedule" {}
}

check "stat-raise" {
  stage    = "free"
  name     = "setpoint raised"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "on"
  call     = "on"
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Raise the setpoint ten degrees and wait."
  ask      = "Setpoint ten degrees up, five minutes: ${machine} running, or silent?"
  option "silent" { when = setpoint.ok && !reached("draft") }
  option "running" {}
}

check "stat-room" {
  stage    = "free"
  name     = "room reading of the thermostat"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["stat-screen=blank"]
  act      = "Hold a second thermometer beside the thermostat."
  ask      = "Its room reading against a second thermometer: same, or different?"
  option "same" { when = !mode("setpoint.reads-warm") }
  option "different" {}
}

check "stat-type" {
  stage    = "free"
  name     = "thermostat set-up"
  function = "look"
  part     = "stat-setup"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Open the installer menu, read the heat type."
  ask      = "The set-up menu: right for a ${machine}, or different?"
  option "right-place" { when = !mode("stat-setup.heat-pump") }
  option "different" {}
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
  act      = "Follow the thin cable outside with your eyes."
  ask      = "The cable to the outdoor unit: good, or bare somewhere?"
  option "good" { when = !mode("y-wire.pinched") }
  option "bare" {}
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
  act      = "Follow the thin cable as far as you see it."
  ask      = "The thermostat cable: good, or bare somewhere?"
  option "good" { when = !mode("r-wire.pinched") }
  option "bare" {}
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
  act      = "Read the volts, tips held still."
}

check "board-24-v" {
  stage    = "plan"
  name     = "24 volt input of the ${board}"
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
  act      = "Read the volts, tips held still."
}

check "transformer-c" {
  stage    = "plan"
  name     = "R terminal of the transformer to C"
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
  act      = "Read the volts, tips held still."
}

check "fuse-v" {
  stage    = "plan"
  name     = "across the ${board} fuse"
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
  act      = "Use the two test spots on the fuse."
}

check "r-c" {
  stage    = "plan"
  name     = "R to C at the ${board}"
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
  act      = "Read the volts, tips held still."
}

check "r-c-load" {
  stage    = "plan"
  name     = "R to C with the gas valve on"
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
  act      = "Read at the click of the gas valve."
}

check "w-c" {
  stage    = "plan"
  name     = "call for heat at the ${board}"
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
  act      = "Read the volts, tips held still."
}

check "w-c-rest" {
  stage    = "plan"
  name     = "W to C with no call"
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
  act      = "Read the volts, tips held still."
}

check "y-c" {
  stage    = "plan"
  name     = "Y to C with a call for heat"
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
  act      = "Read the volts, tips held still."
}

check "splice-r-c" {
  stage    = "plan"
  name     = "R splice to common"
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
  act      = "Read the volts, tips held still."
}

check "stat-r-c" {
  stage    = "plan"
  name     = "R to C at the thermostat"
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
  act      = "Read the volts, tips held still."
}

check "stat-r-w" {
  stage    = "plan"
  name     = "across the thermostat"
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
  act      = "Read the volts, tips held still."
}

check "stat-rw-end" {
  stage    = "plan"
  name     = "R and W wire ends"
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
  act      = "Read with the thermostat pulled off its base."
}

check "splice-w-c" {
  stage    = "plan"
  name     = "W splice to common, wall side"
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
  act      = "Read the volts, tips held still."
}

check "splice-w2-c" {
  stage    = "plan"
  name     = "W splice to common, ${board} side"
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
  act      = "Read the volts, tips held still."
}

check "primary-ohms" {
  stage    = "plan"
  name     = "transformer primary"
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
  act      = "Read the ohms, fingers off the tips."
}

check "secondary-ohms" {
  stage    = "plan"
  name     = "transformer secondary"
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
  act      = "Read the ohms, fingers off the tips."
}

check "fuse-ohms" {
  stage    = "plan"
  name     = "${board} fuse, pulled"
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
  act      = "Read the ohms, fingers off the tips."
}

check "cable-short" {
  stage    = "plan"
  name     = "R wire of the wall to common"
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
  act      = "Read the ohms, fingers off the tips."
}

check "stat-loop" {
  stage    = "plan"
  name     = "thermostat cable with the thermostat calling"
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
  act      = "Let the thermostat call, read the ohms."
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
  act      = "Read the ohms, fingers off the tips."
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
  act      = "Read the ohms, fingers off the tips."
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
  act      = "Read the letter under the thermostat wire."
  ask      = "The W wire: at the right place, or one over?"
  option "right-place" { when = !mode("w-tail.wrong-terminal") }
  option "wrong-place" {}
}

check "w-tug" {
  stage    = "plan"
  name     = "tug at terminal W"
  function = "look"
  part     = "w-tail"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Tug the W wire gently."
  ask      = "The W wire in its terminal: tight, or loose?"
  option "tight" { when = !mode("w-tail.loose") }
  option "loose" {}
}

check "fuse-look" {
  stage    = "plan"
  name     = "${board} fuse, by eye"
  function = "look"
  part     = "board-fuse"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the flat fuse, hold it to the light."
  ask      = "The fuse strip: good, or blown?"
  option "good" { when = !board-fuse.blown }
  option "blown" {}
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
  act      = "Pull the thermostat off, tug each wire."
  ask      = "Wires in the thermostat base: tight, or loose?"
  option "tight" { when = !(mode("r-terminal.off") || mode("w-terminal.off")) }
  option "loose" {}
}

check "splice-tug" {
  stage    = "plan"
  name     = "splices of the thermostat cable"
  function = "look"
  part     = "r-splice"
  places   = ["splice"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Tug each wire under its twist cap."
  ask      = "The twist caps: tight, or loose?"
  option "tight" { when = !(mode("r-splice.open") || mode("w-splice.open")) }
  option "loose" {}
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
    act   = "Wait five minutes for the delay of the thermostat."
    power = "on"
  }
}

repair "set-point" {
  name    = "raise the setpoint"
  part    = "setpoint"
  kind    = "set"
  minutes = q("1..2 min", "from memory")
  confirm = "stat-setpoint"
  step {
    act   = "Raise the setpoint five degrees above the room reading."
    power = "on"
  }
}

repair "set-schedule" {
  name    = "set the schedule or hold"
  part    = "setpoint"
  kind    = "set"
  minutes = q("2..10 min", "from memory")
  confirm = "stat-schedule"
  step {
    act   = "Press hold, or mend the schedule."
    power = "on"
  }
  step {
    act   = "Raise the setpoint above the room reading."
    power = "on"
  }
}

repair "set-heat-type" {
  name    = "set the thermostat up for a ${machine}"
  part    = "stat-setup"
  kind    = "set"
  minutes = q("5..15 min", "from memory")
  confirm = "stat-type"
  step {
    act   = "Write down the menu as it is."
    power = "on"
  }
  step {
    act   = "Set the heat type to gas ${machine}."
    power = "on"
  }
}

repair "move-thermostat" {
  name    = "keep false warmth off the thermostat"
  part    = "setpoint"
  kind    = "set"
  minutes = q("5..60 min", "from memory")
  confirm = "stat-room"
  note    = "Set the room correction in its menu, or move it."
  step {
    act   = "Take lamps and sun away from the thermostat."
    power = "on"
  }
  step {
    act   = "Plug the cable hole behind the thermostat."
    power = "on"
  }
}

repair "change-batteries" {
  name    = "change the thermostat batteries"
  part    = "batteries"
  kind    = "replace"
  price   = q("3..12 money", "from memory")
  minutes = q("2..5 min", "from memory")
  match   = ["cell size", "count"]
  confirm = "stat-screen"
  step {
    act   = "Take out the old cells, note which way round."
    power = "on"
  }
  step {
    act   = "Fit fresh cells of the same size."
    power = "on"
  }
}

repair "refit-secondary-lead" {
  name    = "refit the R lead of the transformer"
  part    = "secondary-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-24-v"
  step {
    act    = "Push the R lead home, tug it."
    wire   = "board-24"
    places = ["upper-bay"]
  }
}

repair "refit-common-lead" {
  name    = "refit the C lead of the transformer"
  part    = "common-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "r-c"
  step {
    act    = "Push the C lead home, tug it."
    wire   = "board-c"
    places = ["upper-bay"]
  }
}

repair "tighten-common-bond" {
  name    = "tighten the ground strap"
  part    = "common-bond"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "bond-ohms"
  step {
    act    = "Clean the metal under the strap, tighten its screw."
    wire   = "frame"
    places = ["upper-bay"]
  }
}

repair "remake-r-splice" {
  name    = "remake the R splice"
  part    = "r-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-r-c"
  step {
    act  = "Cut back to bright copper."
    wire = "splice-r"
  }
  step { act = "Twist the wires together, fit a new cap, tug." }
}

repair "remake-w-splice" {
  name    = "remake the W splice"
  part    = "w-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-w2-c"
  step {
    act  = "Cut back to bright copper."
    wire = "splice-w"
  }
  step { act = "Twist the wires together, fit a new cap, tug." }
}

repair "refit-stat-wire" {
  name    = "refit the wire at the thermostat"
  part    = "r-terminal"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-wire-look"
  step {
    act    = "Strip the wire end bright."
    wire   = "stat-r"
    places = ["stat-base"]
  }
  step {
    act    = "Push it in its own letter, tighten, tug."
    places = ["stat-base"]
  }
}

repair "crimp-w" {
  name    = "make a new crimp at terminal W"
  part    = "w-tail"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["w-c"]
  confirm = "w-tug"
  note    = "Then three starts, tapping the ${board} cover each time."
  step {
    act    = "Pull the W wire off its terminal."
    wire   = "board-w"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp a new spade, push it on, tug."
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
    act    = "Take a photo of the low voltage row."
    places = ["upper-bay"]
  }
  step {
    act    = "Move only the W wire from Y to W."
    wire   = "board-w"
    places = ["upper-bay"]
  }
}

repair "use-spare-common" {
  name    = "use a spare wire for common"
  part    = "c-wire"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-r-c"
  step {
    act    = "Join a spare wire to C at both ends."
    wire   = "board-c"
    places = ["stat-base", "splice", "upper-bay"]
  }
}

repair "add-common-wire" {
  name    = "give the thermostat a common wire"
  part    = "power-stealing"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("15..60 min", "from memory")
  causes  = ["stat-type"]
  confirm = "w-c-rest"
  step {
    act    = "Join a spare wire to C at both ends."
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
  match   = ["number of wires", "wire gauge"]
  causes  = ["cable-short"]
  confirm = "stat-loop"
  note    = "A sound spare wire in the same cable will do."
  step { act = "Take a photo at both ends, label each wire." }
  step {
    act  = "Pull the new cable with the old one."
    wire = "splice-r"
  }
  step {
    act    = "Join one wire at a time, letter by letter."
    wire   = "stat-rw"
    places = ["stat-base"]
  }
  step {
    act     = "Fit a new ${board} fuse when it is blown."
    caution = "Same amps, never more."
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
  match   = ["wire gauge", "outdoor rating"]
  causes  = ["y-cable-look"]
  confirm = "y-short"
  note    = "Heat works with the Y wire left off and taped."
  step {
    act    = "Lift the Y wire off its terminal."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act    = "Cut out the bare spot, splice, insulate."
    wire   = "y-out"
    places = ["upper-bay"]
  }
  step {
    act     = "Fit a new ${board} fuse when it is blown."
    caution = "Same amps, never more."
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
  note    = "Heat works without it. The outdoor unit needs a cooling technician."
  step {
    act    = "Lift the Y wire off its terminal, tape it."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act     = "Fit a new ${board} fuse when it is blown."
    caution = "Same amps, never more."
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
  match   = ["primary volts", "secondary volts", "volt amps"]
  causes  = ["cable-short", "valve-ohms", "y-short", "rules"]
  confirm = "secondary-v"
  note    = "A short kills the new one too: look for it first."
  step {
    act    = "Take a photo of all four leads."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the first thick lead."
    wire   = "board-l"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second thick lead."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the R lead of the transformer."
    wire   = "board-24"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the C lead of the transformer."
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
  note    = "A fuse blows for a reason. Blown again: the short is still there."
  step {
    act    = "Pull the blown fuse."
    wire   = "fuse-a"
    places = ["upper-bay"]
  }
  step {
    act     = "Push in one of the same amps."
    caution = "Never a bigger one."
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
  match   = ["24 volts", "terminals", "with or without common"]
  causes  = ["stat-type"]
  confirm = "w-c"
  step {
    act    = "Take a photo of the letters and colours."
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
  say  = "The outdoor unit has its own supply."
  call = "a cooling technician"
  tell = "Say that its coil pulls down the 24 volts."
  now  = "Leave the Y wire off and taped."
}

caution "low" {
  level = "caution"
  say   = [
    "Twenty-four volts, live. House voltage is close by.",
    "Twenty-four volts live. Mind the mains side.",
    "Twenty-four volts. Do not slip across terminals.",
    "Live twenty-four volts. Keep tips apart.",
  ]
}
