# A small heater to try the engine on: mains, a transformer, a thermostat, a draft fan proved by a pressure switch,
# a valve, a flame. Every number is invented for this file.
appliance "tiny" {
  title = "small heater for trying the engine"
  fuel  = "gas"
  mains = true
  earth = "earth"
}
source "T12" { text = "gas technician training text, unit 12" }

place "hall" {
  name  = "hall"
  where = "on the wall of the hall"
}
place "panel" {
  name     = "front panel"
  where    = "bottom of the front"
  cover    = true
  open     = q("1 min", "common practice, no source")
  trips    = ["door-switch"]
  hands_in = true
  hazards  = ["mains", "moving"]
}

part "line" {
  kind    = "supply"
  name    = "house supply"
  ports   = { l = "L-line", n = "N" }
  volts   = q("120 V", 114, 126, "common practice, no source")
  ohms    = q("0.3 ohm", 0.1, 0.5, "common practice, no source")
  mode "off" {
    name   = "breaker off"
    does   = "off"
    rate   = q("2 x", "from memory")
    repair = "breaker-on"
    wrong  = true
  }
  mode "weak" {
    name   = "loose line conductor"
    does   = "resist"
    ohms   = q("12 ohm", "from memory")
    rate   = q("1 x", "from memory")
    repair = "call-electrician"
  }
}
part "bond" {
  kind  = "wire"
  name  = "neutral bond"
  ports = { a = "N", b = "earth" }
}
part "service-switch" {
  kind   = "switch"
  name   = "service switch"
  ports  = { a = "L-line", b = "L-switch" }
  closes = power
  mode "stuck-open" {
    name   = "service switch burnt open"
    does   = "stuck-open"
    rate   = q("1 x", "from memory")
    repair = "call-electrician"
  }
  mode "stuck-closed" {
    name   = "service switch welded"
    does   = "stuck-closed"
    rate   = q("0.05 x", "from memory")
    repair = "call-electrician"
  }
}
part "door-switch" {
  kind  = "switch"
  name  = "door switch"
  place = "panel"
  ports = { a = "L-switch", b = "L-door" }
  mode "stuck-open" {
    name   = "door switch does not close"
    does   = "stuck-open"
    rate   = q("1 x", "from memory")
    repair = "new-door-switch"
  }
}
part "transformer" {
  kind           = "transformer"
  name           = "transformer"
  place          = "panel"
  ports          = { p1 = "L-door", p2 = "N", s1 = "R-sec", s2 = "C" }
  primary        = q("120 V", "plate")
  secondary      = q("26.5 V", 26, 27, "T12")
  loaded         = q("24 V", "T12")
  rating         = q("40 W", "plate")
  primary_ohms   = q("14 ohm", "from memory")
  secondary_ohms = q("0.7 ohm", "from memory")
  mode "secondary-open" {
    name   = "transformer secondary open"
    does   = "open-secondary"
    rate   = q("2 x", "from memory")
    repair = "new-transformer"
  }
  mode "primary-open" {
    name   = "transformer primary open"
    does   = "open-primary"
    rate   = q("1 x", "from memory")
    repair = "new-transformer"
  }
}
part "c-bond" {
  kind  = "wire"
  name  = "earth of the low-voltage side"
  ports = { a = "C", b = "earth" }
}
part "fuse" {
  kind   = "fuse"
  name   = "board fuse"
  place  = "panel"
  ports  = { a = "R-sec", b = "R" }
  rating = q("3 A", "plate")
  mode "blown" {
    name   = "board fuse blown"
    does   = "open"
    rate   = q("3 x", "from memory")
    repair = "new-fuse"
  }
}
part "stat-mode" {
  kind    = "thing"
  name    = "thermostat mode"
  place   = "hall"
  mode "cool" {
    name   = "thermostat set to cool"
    does   = "off"
    rate   = q("3 x", "from memory")
    repair = "set-heat"
    wrong  = true
  }
}
part "stat" {
  kind   = "contact"
  name   = "thermostat"
  place  = "hall"
  ports  = { a = "R", b = "W-stat" }
  closes = call && stat-mode.value > 0.5
  mode "stuck-open" {
    name   = "thermostat contact open"
    does   = "stuck-open"
    rate   = q("1 x", "from memory")
    repair = "new-stat"
  }
}
part "w-wire" {
  kind  = "wire"
  name  = "white wire"
  ports = { a = "W-stat", b = "W" }
  mode "open" {
    name   = "white wire broken"
    does   = "open"
    rate   = q("1 x", "from memory")
    repair = "mend-wire"
  }
  mode "pinched" {
    name   = "white wire pinched to the cabinet"
    does   = "touch"
    to     = "earth"
    rate   = q("0.5 x", "from memory")
    repair = "mend-wire"
  }
}
part "board" {
  kind       = "board"
  name       = "control board"
  place      = "panel"
  ports      = { r = "R", c = "C", fs = "FS", earth = "earth" }
  on         = q("17 V", "from memory")
  ohms       = q("200 ohm", "from memory")
  sense_ohms = q("350 kohm", "from memory")
  flame_at   = q("0.8 uA", "from memory")
  output "IND" {
    from = "L-door"
    to   = "IND"
  }
  output "GV" {
    from = "PS-out"
    to   = "GV"
  }
  input "W" {
    net  = "W"
    to   = "C"
    on   = q("12 V", "from memory")
    ohms = q("1400 ohm", "from memory")
  }
  input "PS" {
    net  = "PS-out"
    to   = "C"
    on   = q("12 V", "from memory")
    ohms = q("5 kohm", "from memory")
  }
  mode "dead" {
    name   = "control board dead"
    does   = "dead"
    rate   = q("1 x", "from memory")
    repair = "new-board"
  }
  mode "inducer-output" {
    name   = "board does not feed the draft fan"
    does   = "output-dead"
    at     = "IND"
    rate   = q("1 x", "from memory")
    repair = "new-board"
  }
  mode "blind" {
    name   = "board does not see the pressure switch"
    does   = "input-blind"
    at     = "PS"
    rate   = q("0.5 x", "from memory")
    repair = "new-board"
  }
}
part "pressure-switch" {
  kind   = "contact"
  name   = "pressure switch"
  place  = "panel"
  safety = true
  ports  = { a = "R", b = "PS-out" }
  set    = q("0.50 inH2O", 0.45, 0.55, "plate")
  closes = draft >= pressure-switch.set
  mode "stuck-open" {
    name   = "pressure switch does not close"
    does   = "stuck-open"
    rate   = q("2 x", "from memory")
    repair = "new-pressure-switch"
  }
  mode "stuck-closed" {
    name   = "pressure switch welded"
    does   = "stuck-closed"
    rate   = q("0.5 x", "from memory")
    repair = "new-pressure-switch"
  }
}
part "vent" {
  kind = "passage"
  name = "vent"
  mode "blocked" {
    name   = "vent blocked"
    does   = "factor"
    factor = q("0.3 x", "from memory")
    rate   = q("2 x", "from memory")
    repair = "clear-vent"
  }
}
part "inducer" {
  kind  = "load"
  name  = "draft fan"
  place = "panel"
  ports = { a = "IND", b = "N" }
  ohms  = q("100 ohm", 90, 110, "from memory")
  cold  = q("14 ohm", 12, 16, "from memory")
  works = q("90 V", "from memory")
  motor = "yes"
  mode "seized" {
    name   = "draft fan seized"
    does   = "stuck"
    rate   = q("2 x", "from memory")
    repair = "new-inducer"
  }
  mode "open" {
    name   = "draft fan winding open"
    does   = "open"
    rate   = q("1 x", "from memory")
    repair = "new-inducer"
  }
}
part "valve" {
  kind  = "load"
  name  = "gas valve"
  place = "panel"
  stop  = "gas-train"
  ports = { a = "GV", b = "C" }
  ohms  = q("60 ohm", 55, 65, "T12")
  works = q("18 V", "from memory")
  mode "open" {
    name   = "gas valve coil open"
    does   = "open"
    rate   = q("1 x", "from memory")
    repair = "call-gas"
  }
  mode "short" {
    name   = "gas valve coil shorted"
    does   = "short"
    rate   = q("0.3 x", "from memory")
    repair = "call-gas"
  }
}
part "rod" {
  kind      = "rod"
  name      = "flame rod"
  place     = "panel"
  ports     = { rod = "FS", burner = "earth" }
  microamps = q("4 uA", 2, 6, "from memory")
  flame     = flame
  mode "dirty" {
    name   = "flame rod dirty"
    does   = "dirty"
    factor = q("0.15 x", "from memory")
    rate   = q("3 x", "from memory")
    repair = "clean-rod"
  }
}

signal "draft" {
  unit = "inH2O"
  is   = 0.95 * inducer.works * vent.passes
  tol  = q("10 %", "from memory")
}
signal "flame" {
  unit = "x"
  is   = valve.works
}

control "board" {
  part  = "board"
  tries = 3
  step "standby" {
    needs   = board.W
    on_fail = "wait"
  }
  step "draft" {
    drive   = ["IND"]
    needs   = board.PS
    within  = q("60 s", "from memory")
    on_fail = "retry"
    code    = "3"
  }
  step "trial" {
    drive   = ["IND", "GV"]
    needs   = board.flame
    within  = q("7 s", "from memory")
    takes   = q("3 s", "from memory")
    on_fail = "retry"
    code    = "6"
  }
  step "run" {
    drive   = ["IND", "GV"]
    needs   = board.flame
    on_fail = "retry"
    code    = "6"
  }
}

point "r-board" {
  net   = "R"
  place = "panel"
  name  = "terminal R on the board"
}
point "w-board" {
  net   = "W"
  place = "panel"
  name  = "terminal W on the board"
}
point "c-board" {
  net   = "C"
  place = "panel"
  name  = "terminal C on the board"
}
point "ps-out" {
  net   = "PS-out"
  place = "panel"
  name  = "outgoing terminal of the pressure switch"
}
point "ind-hot" {
  net   = "inducer.a"
  place = "panel"
  name  = "black wire of the draft fan"
}
point "ind-neutral" {
  net   = "inducer.b"
  place = "panel"
  name  = "white wire of the draft fan"
}
point "sec-hot" {
  net   = "transformer.s1"
  place = "panel"
  name  = "red wire of the transformer"
}
point "sec-common" {
  net   = "C"
  place = "panel"
  name  = "blue wire of the transformer"
}
point "valve-hot" {
  net   = "GV"
  place = "panel"
  name  = "terminal of the gas valve"
}

check "stat-mode" {
  stage    = "free"
  name     = "thermostat mode"
  function = "look"
  ask      = "Is the thermostat set to heat or to something else?"
  minutes  = q("1 min", "common practice, no source")
  option "heat" { when = stat-mode.value > 0.5 }
  option "other" {}
}
check "r-c" {
  stage    = "plan"
  name     = "low voltage at the board"
  function = "volts-ac"
  red      = "r-board"
  black    = "c-board"
  power    = "on"
  places   = ["panel"]
  hazard   = "low"
  unit     = "V"
  limit    = between(21, 30, "T12")
  minutes  = q("2 min", "common practice, no source")
}
check "w-c" {
  stage    = "plan"
  name     = "call for heat at the board"
  function = "volts-ac"
  red      = "w-board"
  black    = "c-board"
  power    = "on"
  call     = "on"
  places   = ["panel"]
  hazard   = "low"
  unit     = "V"
  limit    = between(21, 30, "T12")
  minutes  = q("2 min", "common practice, no source")
}
check "across-ps" {
  stage    = "plan"
  name     = "across the pressure switch"
  function = "volts-ac"
  red      = "r-board"
  black    = "ps-out"
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["panel"]
  hazard   = "low"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  minutes  = q("2 min", "common practice, no source")
}
check "ind-volts" {
  stage    = "plan"
  name     = "voltage at the draft fan"
  function = "volts-ac"
  red      = "ind-hot"
  black    = "ind-neutral"
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["panel"]
  hazard   = "mains"
  unit     = "V"
  limit    = between(108, 132, "common practice, no source")
  instead  = "ind-ohms"
  minutes  = q("3 min", "common practice, no source")
}
check "ind-ohms" {
  stage    = "plan"
  name     = "winding of the draft fan"
  function = "ohms"
  red      = "ind-hot"
  black    = "ind-neutral"
  lift     = ["ind-hot"]
  power    = "off"
  places   = ["panel"]
  hands_in = true
  unit     = "ohm"
  limit    = between(10, 20, "from memory")
  minutes  = q("4 min", "common practice, no source")
}
check "sec-ohms" {
  stage    = "plan"
  name     = "secondary winding"
  function = "ohms"
  red      = "sec-hot"
  black    = "sec-common"
  lift     = ["sec-hot"]
  power    = "off"
  places   = ["panel"]
  hands_in = true
  unit     = "ohm"
  limit    = between(0.2, 3, "from memory")
  minutes  = q("4 min", "common practice, no source")
}
check "valve-volts" {
  stage    = "plan"
  name     = "voltage at the gas valve in the trial"
  function = "volts-ac"
  red      = "valve-hot"
  black    = "c-board"
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["panel"]
  hazard   = "low"
  unit     = "V"
  limit    = between(21, 30, "T12")
  minutes  = q("3 min", "common practice, no source")
}
check "flame-current" {
  stage    = "plan"
  name     = "flame current"
  function = "microamps-dc"
  part     = "rod"
  power    = "on"
  call     = "on"
  at       = "trial"
  places   = ["panel"]
  hazard   = "low"
  unit     = "uA"
  limit    = atleast(1, "T12")
  minutes  = q("5 min", "common practice, no source")
}
check "draft" {
  stage    = "plan"
  name     = "draft at the pressure switch"
  function = "manometer"
  quantity = "draft"
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["panel"]
  unit     = "inH2O"
  minutes  = q("5 min", "common practice, no source")
}
check "see-fan" {
  stage    = "watch"
  name     = "draft fan"
  function = "look"
  ask      = "Does the draft fan run, hum, or stay silent?"
  power    = "on"
  call     = "on"
  at       = "draft"
  minutes  = q("1 min", "common practice, no source")
  option "running" { when = inducer.works > 0.5 }
  option "humming" { when = inducer.hums }
  option "silent" {}
}
check "light" {
  stage    = "light"
  name     = "status light"
  function = "look"
  ask      = "How does the light blink: three, six, steady, or off?"
  power    = "on"
  call     = "on"
  minutes  = q("1 min", "common practice, no source")
  option "three" { when = lamp("3") }
  option "six" { when = lamp("6") }
  option "steady" { when = lamp("steady") }
  option "off" { when = lamp("off") }
}
check "vent-look" {
  stage    = "free"
  name     = "vent terminal"
  function = "look"
  ask      = "Is the vent outside clear or blocked?"
  minutes  = q("3 min", "common practice, no source")
  option "blocked" { when = vent.passes < 0.5 }
  option "clear" {}
}

lamp "3" {
  means  = "no draft"
  source = "invented for this unit"
}
lamp "6" {
  means  = "no flame"
  source = "invented for this unit"
}
lamp "steady" {
  means  = "power"
  when   = board.alive
  source = "invented for this unit"
}
lamp "off" {
  means  = "no power"
  source = "invented for this unit"
}

repair "breaker-on" {
  name    = "switch the breaker on"
  part    = "line"
  kind    = "set"
  minutes = q("2 min", "from memory")
  step { act = "Switch the breaker on." }
}
repair "call-electrician" {
  name    = "call an electrician"
  kind    = "call"
  stop    = "line-wiring"
  minutes = q("60 min", "from memory")
}
repair "new-door-switch" {
  name    = "replace the door switch"
  part    = "door-switch"
  kind    = "replace"
  price   = q("10..25 money", "from memory")
  minutes = q("20 min", "from memory")
  step { act = "Replace the door switch." }
}
repair "new-transformer" {
  name    = "replace the transformer"
  part    = "transformer"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("40 min", "from memory")
  confirm = "r-c"
  step { act = "Replace the transformer." }
}
repair "new-fuse" {
  name    = "replace the board fuse"
  part    = "fuse"
  kind    = "replace"
  price   = q("1..4 money", "from memory")
  minutes = q("5 min", "from memory")
  confirm = "r-c"
  step { act = "Replace the board fuse." }
}
repair "set-heat" {
  name    = "set the thermostat to heat"
  part    = "stat-mode"
  kind    = "set"
  minutes = q("1 min", "from memory")
  step { act = "Set the thermostat to heat." }
}
repair "new-stat" {
  name    = "replace the thermostat"
  part    = "stat"
  kind    = "replace"
  price   = q("25..120 money", "from memory")
  minutes = q("30 min", "from memory")
  confirm = "w-c"
  step { act = "Replace the thermostat." }
}
repair "mend-wire" {
  name    = "mend the white wire"
  part    = "w-wire"
  kind    = "tighten"
  minutes = q("20 min", "from memory")
  confirm = "w-c"
  step { act = "Mend the white wire." }
}
repair "new-board" {
  name    = "replace the control board"
  part    = "board"
  kind    = "replace"
  price   = q("80..250 money", "from memory")
  minutes = q("60 min", "from memory")
  step { act = "Replace the control board." }
}
repair "new-pressure-switch" {
  name    = "replace the pressure switch"
  part    = "pressure-switch"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("20 min", "from memory")
  confirm = "across-ps"
  step { act = "Replace the pressure switch." }
}
repair "clear-vent" {
  name    = "clear the vent"
  part    = "vent"
  kind    = "open"
  minutes = q("20 min", "from memory")
  confirm = "draft"
  step { act = "Clear the vent." }
}
repair "new-inducer" {
  name    = "replace the draft fan"
  part    = "inducer"
  kind    = "replace"
  price   = q("120..300 money", "from memory")
  minutes = q("60 min", "from memory")
  confirm = "see-fan"
  step { act = "Replace the draft fan." }
}
repair "clean-rod" {
  name    = "clean the flame rod"
  part    = "rod"
  kind    = "clean"
  minutes = q("15 min", "from memory")
  confirm = "flame-current"
  step {
    act     = "Take out the rod."
    caution = "The burner may be hot."
    level   = "caution"
    places  = ["panel"]
  }
}
repair "call-gas" {
  name    = "call a licensed gas technician"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("60 min", "from memory")
}

stop "gas-train" {
  say  = "The gas valve is licensed work."
  call = "a licensed gas technician"
  tell = "the valve has voltage and does not open"
  now  = "leave it off"
}
stop "line-wiring" {
  say  = "The supply is an electrician's work."
  call = "an electrician"
  tell = "the voltage drops under load"
  now  = "leave it off"
}
caution "mains" {
  level   = "danger"
  say     = ["Mains voltage can kill. Touch nothing but the probes.", "Mains voltage."]
}
fact "call-out" { value = q("90..200 money", "from memory") }
