# A gas room heater with a standing pilot. A thermocouple holds the pilot valve, a thermopile feeds the main valve through
# the limit and the wall thermostat. There is no mains in it: everything electrical is millivolts, and it is the size of each
# of them that tells what is wrong. "Power" is the knob of the gas control turned on; "off" is the knob off and the pilot cold.
#
# The unit is nobody's product. Plate, wiring diagram and label of the real unit win over everything here.

appliance "heater-millivolt" {
  title = "gas room heater with a standing pilot and a millivolt thermostat"
  fuel  = "gas"
  mains = false

  # lighting labels of standing pilots (ANSI Z21 series): knob off, wait five minutes, smell near the floor, then light
  relight = q("5 min", "from memory")
  starts  = q("12 x", "common practice, no source")
  earth   = "frame"
}

source "T12" { text = "gas technician training text, unit 12" }
source "T13" { text = "gas technician training text, unit 13" }
source "T15" { text = "gas technician training text, unit 15" }
source "T19" { text = "gas technician training text, unit 19" }
source "T05" { text = "gas technician training text, unit 5" }
source "IRC" { text = "2018 residential code, appendix D (fuel gas inspection)" }
source "T03" { text = "gas technician training text, unit 3" }

place "room" {
  name  = "room"
  where = "in front of the heater"
}

place "bay" {
  name     = "lower door of the heater"
  where    = "below the flames, it swings down"
  cover    = true
  open     = q("0.5 min", "common practice, no source")
  hands_in = true
  hazards  = ["hot", "gas"]
}

place "rear" {
  name     = "back of the control"
  where    = "behind the gas control, reach past it"
  within   = "bay"
  hands_in = true
  hazards  = ["hot", "gas"]
}

place "stat-cover" {
  name  = "thermostat cover"
  where = "on the wall, it pulls off"
  cover = true
  open  = q("0.5 min", "common practice, no source")
}

place "outside" {
  name    = "end of the vent"
  where   = "outdoors, where the vent pipe ends"
  hazards = ["hot"]
}

part "gas-supply" {
  kind  = "thing"
  name  = "gas supply"
  value = q("7 inH2O", 5, 9, "T15")
  numbers = {
    pilot_needs = q("1.5 inH2O", "common practice, no source")
    main_needs  = q("3 inH2O", "common practice, no source")
  }
  stop = "gas-supply"
  mode "off" {
    name   = "gas supply shut off outside"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-supplier"
  }
  mode "low" {
    name   = "gas supply pressure low"
    does   = "set"
    value  = q("2.5 inH2O", "common practice, no source")
    rate   = q("0.5 x", "common practice, no source")
    repair = "call-supplier"
  }
}

part "gas-cock" {
  kind  = "thing"
  name  = "gas cock of the heater"
  place = "bay"
  look  = "small lever on the pipe, along it when open"
  mode "closed" {
    name   = "gas cock closed"
    does   = "off"
    rate   = q("2 x", "common practice, no source")
    repair = "open-cock"
    wrong  = true
  }
}

part "knob" {
  kind  = "thing"
  name  = "knob of the gas control"
  place = "bay"
  look  = "round knob marked off, pilot and on"
  mode "at-off" {
    name   = "gas knob left at off"
    does   = "off"
    rate   = q("2 x", "common practice, no source")
    repair = "turn-knob"
    wrong  = true
  }
  mode "at-pilot" {
    name   = "gas knob left at pilot"
    does   = "wrong"
    rate   = q("3 x", "common practice, no source")
    repair = "turn-knob"
    wrong  = true
  }
}

part "sparker" {
  kind  = "thing"
  name  = "spark button"
  place = "bay"
  mode "dead" {
    name   = "spark button gives no spark"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-sparker"
  }
}

part "spark-lead" {
  kind  = "thing"
  name  = "spark wire"
  place = "bay"
  mode "off" {
    name   = "spark wire off"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-spark-lead"
  }
}

part "pilot-orifice" {
  kind  = "passage"
  name  = "pilot orifice"
  place = "bay"
  stop  = "gas-train"
  mode "dirty" {
    name   = "pilot orifice dirty, small soft flame"
    does   = "factor"
    factor = q("0.5 x", "common practice, no source")
    rate   = q("4 x", "common practice, no source")
    repair = "clean-pilot"
  }
  mode "blocked" {
    name   = "pilot orifice blocked"
    does   = "factor"
    factor = q("0.05 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clean-pilot"
  }
}

part "wind" {
  kind = "thing"
  name = "wind at the pilot"
  mode "gusts" {
    name   = "wind down the vent blows the pilot out"
    does   = "off"
    hidden = q("70 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "shield-vent"
  }
}

part "pilot-flame" {
  kind = "thing"
  name = "pilot flame"
  is   = knob.value > 0.5 && power && gas > gas-supply.pilot_needs && pilot-gas > 0.5 && (drives("spark") ? sparker.value * spark-lead.value > 0.5 : pilot-flame.value > 0.02) && wind.value > 0.5 && pilot-orifice.passes > 0.1 ? pilot-orifice.passes : 0
}

part "tc-place" {
  kind  = "thing"
  name  = "place of the thermocouple in the flame"
  place = "bay"
  mode "bent" {
    name   = "thermocouple bent out of the pilot flame"
    does   = "factor"
    factor = q("0.3 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "set-thermocouple"
  }
}

part "thermocouple" {
  kind       = "emf"
  name       = "thermocouple"
  place      = "bay"
  look       = "copper tube from the pilot to a nut on the gas control"
  ports      = { a = "TC", b = "frame" }
  millivolts = q("28 mV", 25, 30, "T12")
  ohms       = q("0.029 ohm", 0.026, 0.032, "computed")
  heat       = pilot-flame.value * tc-place.value
  mode "weak" {
    name   = "thermocouple worn out"
    does   = "weak"
    factor = q("0.25 x", "common practice, no source")
    rate   = q("4 x", "common practice, no source")
    repair = "replace-thermocouple"
  }
  mode "resistive" {
    name   = "thermocouple joint cracking"
    does   = "resist"
    ohms   = q("0.12 ohm", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "replace-thermocouple"
  }
  mode "open" {
    name   = "thermocouple broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermocouple"
  }
}

part "tc-nut" {
  kind  = "wire"
  name  = "nut of the thermocouple"
  place = "rear"
  ports = { a = "TC", b = "TCS" }
  ohms  = q("0.001 ohm", "common practice, no source")
  mode "dirty" {
    name   = "thermocouple nut dirty"
    does   = "resist"
    ohms   = q("0.15 ohm", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "clean-nut"
  }
  mode "loose" {
    name   = "thermocouple nut loose"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "clean-nut"
  }
}

part "spill-switch" {
  kind   = "contact"
  name   = "spill switch"
  place  = "rear"
  safety = true
  stop   = "vent"
  look   = "small disc with two wires and a button, where the vent begins"
  ports  = { a = "TCS", b = "HC" }
  ohms   = q("0.001 ohm", "common practice, no source")
  trips  = reached("steady") && spill > 0.5
  reset  = "manual"
  mode "open" {
    name   = "spill switch broken"
    does   = "stuck-open"
    rate   = q("0.5 x", "common practice, no source")
    repair = "replace-spill-switch"
  }
}

part "hold-coil" {
  kind    = "load"
  name    = "pilot valve coil"
  place   = "rear"
  stop    = "gas-train"
  current = "dc"
  ports   = { a = "HC", b = "frame" }
  ohms    = q("0.028 ohm", 0.025, 0.031, "computed")
  works   = q("4.5 mV", 2, 7, "T12")
  mode "open" {
    name   = "pilot valve coil burned out"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-control"
  }
  mode "weak" {
    name   = "pilot valve coil weak"
    does   = "set"
    works  = q("16 mV", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-control"
  }
}

part "flue" {
  kind  = "passage"
  name  = "vent pipe"
  place = "outside"
  stop  = "vent"
  mode "blocked" {
    name   = "vent pipe blocked"
    does   = "factor"
    factor = q("0.2 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-vent"
  }
}

part "pile-place" {
  kind  = "thing"
  name  = "place of the thermopile in the flame"
  place = "bay"
  mode "bent" {
    name   = "thermopile bent out of the pilot flame"
    does   = "factor"
    factor = q("0.45 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "set-thermopile"
  }
}

part "thermopile" {
  kind       = "emf"
  name       = "thermopile"
  place      = "bay"
  look       = "thick probe in the pilot flame, with two wires"
  ports      = { a = "TPTH", b = "PILE" }
  millivolts = q("500 mV", 450, 550, "T12")
  ohms       = q("4.94 ohm", 4.4, 5.5, "computed")
  heat       = pilot-flame.value * pile-place.value
  mode "weak" {
    name   = "thermopile worn out"
    does   = "weak"
    factor = q("0.55 x", "common practice, no source")
    rate   = q("4 x", "common practice, no source")
    repair = "replace-thermopile"
  }
  mode "resistive" {
    name   = "thermopile worn out inside"
    does   = "resist"
    ohms   = q("6 ohm", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "replace-thermopile"
  }
  mode "open" {
    name   = "thermopile broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermopile"
  }
}

part "pile-lead" {
  kind  = "wire"
  name  = "wire of the thermopile"
  place = "bay"
  ports = { a = "PILE", b = "TP" }
  ohms  = q("0.02 ohm", "common practice, no source")
  mode "loose" {
    name   = "thermopile wire off its screw"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pile-lead"
  }
  mode "dirty" {
    name   = "thermopile wire rusty at its screw"
    does   = "resist"
    ohms   = q("5 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pile-lead"
  }
}

part "limit" {
  kind   = "contact"
  name   = "high limit"
  place  = "rear"
  safety = true
  look   = "small disc with two wires on the firebox"
  ports  = { a = "TPTH", b = "LIM" }
  ohms   = q("0.06 ohm", 0.04, 0.08, "computed")
  set    = q("200 degF", 190, 210, "T19")
  trips  = reached("steady") && box > limit.set
  mode "open" {
    name   = "high limit switch broken"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "resistive" {
    name   = "contacts of the high limit burned"
    does   = "resist"
    ohms   = q("3.5 ohm", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "early" {
    name   = "high limit opens too early"
    does   = "set"
    set    = q("120 degF", "common practice, no source")
    rate   = q("0.5 x", "common practice, no source")
    repair = "replace-limit"
  }
}

part "air-ways" {
  kind = "passage"
  name = "air openings of the heater"
  numbers = {
    room = q("70 degF", "common practice, no source")
    rise = q("110 dF", "common practice, no source")
  }
  mode "blocked" {
    name   = "air openings of the heater blocked with dust"
    does   = "factor"
    factor = q("0.4 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clear-air"
    wrong  = true
  }
}

part "splice" {
  kind  = "wire"
  name  = "joint in the thermostat wire"
  place = "rear"
  ports = { a = "LIM", b = "S1" }
  ohms  = q("0.25 ohm", "common practice, no source")
  mode "bad" {
    name   = "joint in the thermostat wire bad"
    does   = "resist"
    ohms   = q("4 ohm", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "remake-splice"
  }
  mode "open" {
    name   = "joint in the thermostat wire apart"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "remake-splice"
  }
}

part "thermostat" {
  kind   = "contact"
  name   = "thermostat"
  place  = "stat-cover"
  look   = "on the wall, with two wires and no battery"
  ports  = { a = "S1", b = "S2" }
  ohms   = q("1.5 ohm", 1.2, 1.7, "computed")
  closes = call && setpoint.value > 0.5
  mode "open" {
    name   = "thermostat contacts do not close"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermostat"
  }
  mode "dirty" {
    name   = "thermostat contacts dirty"
    does   = "resist"
    ohms   = q("5 ohm", "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "replace-thermostat"
  }
  mode "wrong-type" {
    name   = "thermostat for twenty-four volts, the wrong kind"
    does   = "set"
    ohms   = q("22 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermostat"
    wrong  = true
  }
}

part "setpoint" {
  kind  = "thing"
  name  = "setting of the thermostat"
  place = "room"
  mode "low" {
    name   = "thermostat set below the room"
    does   = "off"
    rate   = q("4 x", "common practice, no source")
    repair = "raise-setpoint"
    wrong  = true
  }
}

part "stat-wire" {
  kind  = "wire"
  name  = "thermostat wire"
  place = "rear"
  ports = { a = "S2", b = "TH" }
  ohms  = q("0.3 ohm", "common practice, no source")
  mode "open" {
    name   = "thermostat wire broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-wire"
  }
  mode "thin" {
    name   = "thermostat wire too long and thin"
    does   = "resist"
    ohms   = q("4.5 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-wire"
    wrong  = true
  }
}

part "main-valve" {
  kind    = "load"
  name    = "main gas valve"
  place   = "rear"
  stop    = "gas-train"
  current = "dc"
  ports   = { a = "TH", b = "TP" }
  ohms    = q("2.8 ohm", 2.6, 3, "computed")
  works   = q("105 mV", 95, 115, "plate")
  needs   = !mode("knob.at-pilot")
  mode "coil-open" {
    name   = "coil of the main valve burned out"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-control"
  }
  mode "coil-shorted" {
    name   = "coil of the main valve shorted"
    does   = "short"
    ohms   = q("0.1 ohm", "common practice, no source")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-control"
  }
  mode "stuck" {
    name   = "main valve stuck closed"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-control"
  }
  mode "heavy" {
    name   = "main valve needs more millivolts than it should"
    does   = "set"
    works  = q("165 mV", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-control"
  }
}

part "burner" {
  kind  = "passage"
  name  = "burner ports"
  place = "bay"
  stop  = "combustion"
  mode "dirty" {
    name   = "burner ports blocked with lint"
    does   = "factor"
    factor = q("0.3 x", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-burner"
  }
}

part "crossover" {
  kind  = "passage"
  name  = "crossover of the burner"
  place = "bay"
  stop  = "combustion"
  mode "dirty" {
    name   = "crossover of the burner dirty, lights late"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-burner"
  }
}

part "expectation" {
  kind = "thing"
  name = "what the house asks of the heater"
  mode "setback" {
    name   = "heater too small for a cold night: it runs and the room lags"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "explain"
    wrong  = true
  }
}

signal "gas" {
  unit = "inH2O"
  is   = gas-supply.value * gas-cock.value
}

signal "pilot-gas" {
  unit = "x"
  is   = drives("knob") ? 1 : hold-coil.works
}

signal "pilot" {
  unit = "x"
  is   = pilot-flame.value
}

signal "main" {
  unit = "x"
  is   = main-valve.works > 0.5 && pilot-flame.value > 0.1 && gas > gas-supply.main_needs && crossover.passes > 0.5 ? burner.passes : 0
}

signal "box" {
  unit = "degF"
  is   = air-ways.room + air-ways.rise * main / max(0.1, air-ways.passes)
  tol  = q("10 %", "common practice, no source")
}

signal "spill" {
  unit = "x"
  is   = main > 0.2 && flue.passes < 0.5
}

control "gas-control" {
  step "light" {
    drive   = ["knob", "spark"]
    needs   = pilot > 0.02
    within  = q("60 s", "T12")
    on_fail = "wait"
  }
  step "warm" {
    drive  = ["knob"]
    within = q("60 s", "T12")
  }
  step "released" {
    needs   = pilot > 0.02
    within  = q("90 s", "T12")
    on_fail = "pilot-out"
  }
  step "calling" {
    needs   = thermostat.closed
    on_fail = "wait"
  }
  step "opens" {
    needs   = main-valve.works > 0.5
    on_fail = "wait"
  }
  step "burns" {
    needs   = main > 0.5
    within  = q("4 s", "common practice, no source")
    on_fail = "wait"
  }
  step "steady" {
    needs   = main > 0.5
    on_fail = "stopped"
  }
  step "pilot-out" {
    side = true
  }
  step "stopped" {
    side = true
  }
}

point "tpth" {
  net   = "TPTH"
  place = "bay"
  name  = "middle screw of the gas control"
  where = "middle screw of the gas control"
}

point "th" {
  net   = "TH"
  place = "bay"
  name  = "T H screw"
  where = "the screw of the thermostat wire"
}

point "tp" {
  net   = "TP"
  place = "bay"
  name  = "T P screw"
  where = "the screw of the thermopile wire"
}

point "pile-a" {
  net   = "thermopile.a"
  place = "bay"
  name  = "loose thermopile wire"
  where = "wire taken off the middle screw"
}

point "pile-b" {
  net   = "PILE"
  place = "bay"
  name  = "other end of the thermopile"
  where = "its second wire, before the screw"
}

point "splice-far" {
  net   = "S1"
  place = "rear"
  name  = "far side of the wire joint"
  where = "the thermostat wire behind the wire nut"
}

point "lim" {
  net   = "LIM"
  place = "rear"
  name  = "far side of the high limit"
  where = "the second wire of the limit"
}

point "s1" {
  net   = "S1"
  place = "stat-cover"
  name  = "left screw of the thermostat"
  where = "under the cover"
}

point "s2" {
  net   = "S2"
  place = "stat-cover"
  name  = "right screw of the thermostat"
  where = "under the cover"
}

point "tc-tip" {
  net   = "thermocouple.a"
  place = "rear"
  name  = "tip of the thermocouple lead"
  where = "with the nut taken off the gas control"
}

point "tc-tube" {
  net   = "frame"
  place = "rear"
  name  = "copper tube of the thermocouple"
  where = "anywhere on bare copper"
}

point "hc" {
  net   = "HC"
  place = "rear"
  name  = "adapter screw"
  where = "side screw of the adapter"
}

point "tcs" {
  net   = "TCS"
  place = "rear"
  name  = "near side of the spill switch"
  where = "wire from the thermocouple"
}

point "lim-a" {
  net   = "limit.a"
  place = "rear"
  name  = "loose wire of the high limit"
  where = "wire taken off the limit"
}

point "stat-a" {
  net   = "thermostat.a"
  place = "stat-cover"
  name  = "loose wire of the thermostat"
  where = "wire taken off the left screw"
}

point "valve-a" {
  net   = "main-valve.a"
  place = "bay"
  name  = "loose wire of the T H screw"
  where = "the wire taken off the screw"
}

check "odour" {
  stage    = "safety"
  name     = "odor in the room"
  function = "look"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Sniff near the floor and near the pipes."
  ask      = "Do you notice an odor like gas?"
  option "none" {
    when  = true
    label = "No"
  }
  option "some" {
    emergency = "gas"
    label     = "Yes"
  }
}

check "alarm" {
  stage    = "safety"
  name     = "alarms in the house"
  function = "look"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "How are the alarms in the house? Quiet, sounding, chirping, or no alarm at all?"
  option "quiet" {
    when  = true
    label = "Quiet"
  }
  option "sounding" {
    emergency = "co"
    label     = "Sounding"
  }
  option "chirping" {
    as    = "quiet"
    tell  = "One chirp now and then means a low battery or an old alarm. Change it today."
    label = "Chirping"
  }
  option "no-co-alarm" {
    as    = "quiet"
    tell  = "Get a carbon monoxide alarm before the burner runs again. Without one, nobody would notice bad air."
    label = "No alarm at all"
  }
}

check "people" {
  stage    = "safety"
  name     = "people in the house"
  function = "look"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "How is everyone in the house? Everyone is fine, or somebody feels ill?"
  option "everyone-fine" {
    when  = true
    label = "Everyone is fine"
  }
  option "feeling-ill" {
    emergency = "ill"
    label     = "Somebody feels ill"
  }
}

check "flood" {
  stage    = "safety"
  name     = "water at the heater"
  function = "look"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Was the heater ever under water?"
  option "dry" {
    when  = true
    label = "No"
  }
  option "above" {
    stop  = "flooded"
    label = "Yes"
  }
}

check "soot" {
  stage    = "safety"
  name     = "soot on the heater"
  function = "look"
  power    = "on"
  call     = "on"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  ask      = "How are the front and the glass of the heater? Clean, sooty, or scorched?"
  option "clean" {
    when  = !(spill > 0.5)
    label = "Clean"
  }
  option "sooty" {
    when  = spill > 0.5
    stop  = "vent"
    label = "Sooty"
  }
  option "burnt" {
    stop  = "vent"
    label = "Scorched"
  }
}

check "since" {
  stage    = "free"
  name     = "what happened before"
  function = "look"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "What happened just before it failed? Work on it, a storm, or nothing?"
  option "after-work" {
    when  = mode("thermostat.wrong-type") || mode("stat-wire.thin") || mode("gas-cock.closed") || mode("knob.at-off") || mode("knob.at-pilot")
    label = "Work on it"
    told = ["after-work"]
  }
  option "after-storm" {
    when  = mode("wind.gusts") || mode("flue.blocked")
    label = "A storm"
  }
  option "nothing-done" {
    label = "Nothing"
  }
}

check "how-often" {
  stage    = "free"
  name     = "how often it fails"
  function = "look"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Does it fail only at some starts or at every start?"
  option "some-starts" {
    when   = mode("splice.bad") || mode("wind.gusts")
    passes = true
    label  = "Only at some starts"
    told = ["sometimes"]
  }
  option "every-start" {
    label = "At every start"
  }
}

check "pilot-lit" {
  stage    = "light"
  name     = "pilot flame"
  function = "look"
  power    = "any"
  call     = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Look through the glass for the small pilot flame."
  ask      = "Is the pilot flame lit or out?"
  option "lit" {
    when  = pilot > 0.02
    label = "Lit"
    shows = ["power"]
  }
  option "out" {
    label = "Out"
  }
}

check "knob-position" {
  stage    = "free"
  name     = "knob of the gas control"
  function = "look"
  part     = "knob"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Read the mark at the knob."
  ask      = "Where does the knob point? On, off, or pilot?"
  option "on" {
    when  = !(mode("knob.at-off") || mode("knob.at-pilot"))
    label = "On"
  }
  option "off" {
    when  = mode("knob.at-off")
    label = "Off"
    mend = "turn-knob"
  }
  option "hold" {
    when  = mode("knob.at-pilot")
    label = "Pilot"
    mend = "turn-knob"
  }
}

check "cock" {
  stage    = "free"
  name     = "gas cock of the heater"
  function = "look"
  part     = "gas-cock"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Look at the small lever on the gas pipe."
  ask      = "How does the lever stand? Along the pipe, or across the pipe?"
  option "open" {
    when  = !(mode("gas-cock.closed"))
    also  = ["parallel"]
    label = "Along the pipe"
  }
  option "closed" {
    when  = mode("gas-cock.closed")
    also  = ["crosswise"]
    label = "Across the pipe"
    mend = "open-cock"
  }
}

check "other-gas" {
  stage    = "free"
  name     = "other gas appliances"
  function = "look"
  part     = "gas-supply"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Try the gas stove or the gas water heater."
  ask      = "How do they burn? Good, no flame, or weak?"
  option "good" {
    when  = !((gas-supply.value < 0.5) || (gas-supply.value < 4))
    label = "Good"
  }
  option "no-flame" {
    when  = gas-supply.value < 0.5
    label = "No flame"
  }
  option "short-flame" {
    when  = gas-supply.value < 4
    label = "Weak"
  }
}

check "setting" {
  stage    = "free"
  name     = "setting of the thermostat"
  function = "look"
  part     = "setpoint"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  before   = ["call-on"]
  act      = "Look at it before you change it."
  ask      = "Compared with the room, is the setting above or below?"
  option "above" {
    when  = !((setpoint.value < 0.5))
    label = "Above"
  }
  option "below" {
    when  = setpoint.value < 0.5
    label = "Below"
    mend = "raise-setpoint"
  }
}

check "air-openings" {
  stage    = "free"
  name     = "air openings of the heater"
  function = "look"
  part     = "air-ways"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Look along the top and the bottom of the heater."
  ask      = "Are the air openings clear or blocked?"
  option "clear" {
    when  = !((air-ways.passes < 0.7))
    label = "Clear"
  }
  option "blocked" {
    when  = air-ways.passes < 0.7
    label = "Blocked"
    mend = "clear-air"
  }
}

check "terminal" {
  stage    = "free"
  name     = "end of the vent outside"
  function = "look"
  part     = "flue"
  places   = ["outside"]
  hazard   = "hot"
  minutes  = q("4 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  caution  = "Hot pipe. Do not touch it."
  ask      = "Is the end of the vent outside clear or blocked?"
  option "clear" {
    when  = !((flue.passes < 0.5))
    label = "Clear"
  }
  option "blocked" {
    when  = flue.passes < 0.5
    stop  = "vent"
    label = "Blocked"
  }
}

check "spark-seen" {
  stage    = "watch"
  name     = "spark at the pilot"
  function = "look"
  part     = "sparker"
  power    = "on"
  call     = "on"
  at       = "light"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Press the spark button. Watch the pilot."
  ask      = "Do you see a spark at the pilot?"
  option "good" {
    when  = !((sparker.value * spark-lead.value < 0.5))
    label = "Yes"
  }
  option "none" {
    when  = sparker.value * spark-lead.value < 0.5
    label = "No"
  }
}

check "spark-lead-seen" {
  stage    = "watch"
  name     = "spark wire"
  function = "look"
  part     = "spark-lead"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Follow the wire from the spark button to the pilot."
  ask      = "Is the wire in place or off?"
  option "in" {
    when  = !((spark-lead.value < 0.5))
    label = "In place"
  }
  option "off" {
    when  = spark-lead.value < 0.5
    label = "Off"
    mend = "refit-spark-lead"
  }
}

check "pilot-lights" {
  stage    = "watch"
  name     = "pilot while you hold the knob"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "warm"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["pilot-lit=lit"]
  event    = "the pilot lights"
  act      = "Hold the knob in. Press the spark button."
  ask      = "Does the pilot flame light?"
  option "lit" {
    when  = pilot > 0.02
    seen  = ["flame", "held"]
    label = "Yes"
  }
  option "no-flame" {
    seen  = ["dark"]
    label = "No"
    missed = true
  }
}

check "pilot-shape" {
  stage    = "watch"
  name     = "shape of the pilot flame"
  function = "look"
  part     = "pilot-orifice"
  power    = "on"
  call     = "on"
  at       = "warm"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["pilot-lights=no-flame", "pilot-lit=out"]
  act      = "Look where the pilot flame touches the two probes."
  ask      = "How is the flame? Strong and blue, no flame, or short and soft?"
  option "blue-flame" {
    when  = !((pilot < 0.02) || (pilot < 0.7))
    label = "Strong and blue"
  }
  option "no-flame" {
    when  = pilot < 0.02
    label = "No flame"
  }
  option "short-flame" {
    when  = pilot < 0.7
    label = "Short and soft"
  }
}

check "pilot-stays" {
  stage    = "watch"
  name     = "pilot after you let go of the knob"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "released"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["pilot-lit=lit", "pilot-lights=no-flame"]
  event    = "the pilot stays lit"
  act      = "Hold the knob in for one minute. Then let go slowly."
  ask      = "What does the pilot flame do? It stays lit, or it goes out?"
  option "lit" {
    when  = pilot > 0.02
    label = "It stays lit"
  }
  option "out" {
    seen  = ["out"]
    label = "It goes out"
    missed = true
  }
}

check "probes-seen" {
  stage    = "watch"
  name     = "probes in the pilot flame"
  function = "look"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Look at the tips of the two probes."
  ask      = "How many tips are in the flame? Both, neither, or only one?"
  option "both" {
    when  = !((mode("tc-place.bent") && mode("pile-place.bent")) || (mode("tc-place.bent") || mode("pile-place.bent")))
    label = "Both"
  }
  option "neither" {
    when  = mode("tc-place.bent") && mode("pile-place.bent")
    label = "Neither"
  }
  option "one-only" {
    when  = mode("tc-place.bent") || mode("pile-place.bent")
    label = "Only one"
  }
}

check "thermocouple-seat" {
  stage    = "cause"
  name     = "place of the thin probe"
  function = "look"
  part     = "tc-place"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Find the tip of the thin copper probe. Then look at the flame."
  ask      = "Is the tip in the flame?"
  option "right-place" {
    when  = !(mode("tc-place.bent"))
    label = "Yes"
  }
  option "wrong-place" {
    when  = mode("tc-place.bent")
    label = "No"
  }
}

check "burner-lights" {
  stage    = "watch"
  name     = "main burner"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "burns"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["pilot-lights=no-flame", "pilot-stays=out"]
  event    = "the burners light"
  act      = "Turn the thermostat up. Watch the main burner."
  ask      = "How does it light? All burners, no flame, only some burners, or late with a whoosh?"
  option "all-burners" {
    when  = !((main < 0.1 && !(mode("crossover.dirty") && main-valve.works > 0.5)) || (main < 0.5 && !mode("crossover.dirty")) || mode("crossover.dirty"))
    label = "All burners"
  }
  option "no-flame" {
    when  = main < 0.1 && !(mode("crossover.dirty") && main-valve.works > 0.5)
    label = "No flame"
    missed = true
  }
  option "some-burners" {
    when  = main < 0.5 && !mode("crossover.dirty")
    stop  = "combustion"
    label = "Only some burners"
  }
  option "whoosh" {
    when  = mode("crossover.dirty")
    stop  = "late-light"
    label = "Late with a whoosh"
  }
}

check "valve-click" {
  stage    = "watch"
  name     = "click of the main valve"
  function = "look"
  part     = "main-valve"
  power    = "on"
  call     = "on"
  at       = "opens"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["pilot-lights=no-flame", "pilot-stays=out"]
  event    = "the valve clicks"
  act      = "Put your ear near the gas control. Turn the thermostat up and down."
  ask      = "Do you hear a click or no click?"
  option "clicks" {
    when  = main-valve.works > 0.5
    label = "A click"
  }
  option "no-click" {
    label = "No click"
    missed = true
  }
}

check "keeps-burning" {
  stage    = "watch"
  name     = "burner after ten minutes"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("10 min", "common practice, no source")
  skill    = "clear"
  unless   = ["pilot-lights=no-flame", "pilot-stays=out", "burner-lights=no-flame"]
  ask      = "After ten minutes, is it still running or off?"
  option "running" {
    when  = main > 0.5
    label = "Still running"
  }
  option "stops-early" {
    label = "Off"
  }
}

check "spill-button" {
  stage    = "cause"
  name     = "button of the spill switch"
  function = "look"
  part     = "spill-switch"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Only look at it. Do not press it."
  ask      = "Is the button of the spill switch flush or popped out?"
  option "not-popped" {
    when  = !(spill-switch.tripped)
    label = "Flush"
  }
  option "popped" {
    when  = spill-switch.tripped
    stop  = "vent"
    label = "Popped out"
  }
}

check "splice-seen" {
  stage    = "cause"
  name     = "joint in the thermostat wire"
  function = "look"
  part     = "splice"
  places   = ["bay"]
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Pull gently at the wire nut."
  ask      = "Is the joint tight, loose, or apart?"
  option "tight" {
    when  = !(mode("splice.bad") || mode("splice.open"))
    label = "Tight"
  }
  option "loose" {
    when  = mode("splice.bad")
    label = "Loose"
  }
  option "missing" {
    when  = mode("splice.open")
    label = "Apart"
  }
}

check "stat-label" {
  stage    = "cause"
  name     = "label of the thermostat"
  function = "look"
  part     = "thermostat"
  places   = ["stat-cover"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the small print inside the thermostat."
  ask      = "Is it made for millivolts?"
  option "right-value" {
    when  = !(mode("thermostat.wrong-type"))
    label = "Yes"
  }
  option "different" {
    when  = mode("thermostat.wrong-type")
    label = "No"
  }
}

check "wire-seen" {
  stage    = "cause"
  name     = "thermostat wire"
  function = "look"
  part     = "stat-wire"
  places   = ["bay"]
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Compare the wire with the heater's other wires."
  ask      = "Is the wire just as thick?"
  option "same" {
    when  = !(mode("stat-wire.thin"))
    label = "Yes"
  }
  option "different" {
    when  = mode("stat-wire.thin")
    label = "No"
  }
}

check "screws-seen" {
  stage    = "cause"
  name     = "wire screws of the gas control"
  function = "look"
  part     = "pile-lead"
  places   = ["bay"]
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Pull gently at each wire."
  ask      = "Are the wires tight, loose, or rusty?"
  option "tight" {
    when  = !(mode("pile-lead.loose") || mode("pile-lead.dirty"))
    label = "Tight"
  }
  option "loose" {
    when  = mode("pile-lead.loose")
    label = "Loose"
  }
  option "rusty" {
    when  = mode("pile-lead.dirty")
    label = "Rusty"
  }
}

check "nut-seen" {
  stage    = "cause"
  name     = "nut of the thermocouple"
  function = "look"
  part     = "tc-nut"
  power    = "off"
  places   = ["bay"]
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Turn it gently by hand."
  ask      = "Is the nut tight, loose, or dirty?"
  option "tight" {
    when  = !(mode("tc-nut.loose") || mode("tc-nut.dirty"))
    label = "Tight"
  }
  option "loose" {
    when  = mode("tc-nut.loose")
    label = "Loose"
  }
  option "dirty" {
    when  = mode("tc-nut.dirty")
    label = "Dirty"
  }
}

check "pile-open" {
  stage    = "plan"
  name     = "thermopile with its wire off"
  function = "millivolts-dc"
  part     = "thermopile"
  red      = "pile-a"
  black    = "pile-b"
  unit     = "mV"
  unless   = ["pilot-lights=no-flame"]
  limit    = atleast(400, "T12")
  power    = "on"
  call     = "on"
  at       = "warm"
  places   = ["bay"]
  lift     = ["pile-a"]
  hazard   = "hot"
  minutes  = q("5 min", "common practice, no source")
  skill    = "skilled"
  repeat   = true
  act      = "Take the thermopile wire off. Wait one minute. Read the millivolts."
  caution  = "Hot parts. Touch them only with the tips."
}

check "pile-closed" {
  stage    = "plan"
  name     = "thermopile with the thermostat up"
  function = "millivolts-dc"
  part     = "thermopile"
  red      = "tpth"
  black    = "tp"
  unit     = "mV"
  limit    = atleast(200, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put red on the middle screw. Put black on T P."
  caution  = "Hot parts. Touch them only with the tips."
}

check "valve-mv" {
  stage    = "plan"
  name     = "coil of the main valve"
  function = "millivolts-dc"
  part     = "main-valve"
  red      = "th"
  black    = "tp"
  unit     = "mV"
  limit    = atleast(135, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put red on T H. Put black on T P."
  caution  = "Hot parts. Touch them only with the tips."
}

check "stat-and-wire" {
  stage    = "plan"
  name     = "thermostat with its wire"
  function = "millivolts-dc"
  part     = "thermostat"
  red      = "lim"
  black    = "th"
  unit     = "mV"
  limit    = atmost(110, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put red behind the limit. Put black on T H."
  caution  = "Hot parts. Touch them only with the tips."
}

check "cock-who" {
  stage    = "cause"
  name     = "who closed the gas"
  function = "look"
  part     = "gas-cock"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  must     = true
  ask      = "Do you know who closed the gas, and why?"
  option "reason-known" {
    label = "Yes"
  }
  option "nobody-knows" {
    stop  = "gas-closed"
    label = "No"
  }
}

check "stat-alone" {
  stage    = "plan"
  name     = "thermostat alone"
  function = "millivolts-dc"
  part     = "thermostat"
  red      = "s1"
  black    = "s2"
  unit     = "mV"
  limit    = atmost(100, "computed")
  power    = "on"
  call     = "on"
  places   = ["stat-cover"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip on each screw of the thermostat."
  caution  = "Hot parts are near. The screws are small. Keep the tips apart."
}

check "splice-mv" {
  stage    = "plan"
  name     = "joint of the thermostat wire"
  function = "millivolts-dc"
  part     = "splice"
  red      = "lim"
  black    = "splice-far"
  unit     = "mV"
  limit    = atmost(60, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip on each side of the joint."
  caution  = "Hot parts. Touch them only with the tips."
}

check "limit-mv" {
  stage    = "plan"
  name     = "high limit"
  function = "millivolts-dc"
  part     = "limit"
  red      = "tpth"
  black    = "lim"
  unit     = "mV"
  limit    = atmost(20, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip on each side of the limit."
  caution  = "Hot parts. Touch them only with the tips."
}

check "valve-bridged" {
  stage    = "plan"
  name     = "main valve with the thermostat wires joined"
  function = "millivolts-dc"
  part     = "main-valve"
  red      = "th"
  black    = "tp"
  unit     = "mV"
  power    = "on"
  call     = "on"
  places   = ["bay"]
  jump     = ["th", "lim"]
  hazard   = "hot"
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  repeat   = true
  act      = "Connect T H to the far limit wire, only for this reading."
  caution  = "Hot parts. Touch them only with the tips."
}

check "couple-open" {
  stage    = "plan"
  name     = "thermocouple with its nut off"
  function = "millivolts-dc"
  part     = "thermocouple"
  red      = "tc-tip"
  black    = "tc-tube"
  unit     = "mV"
  unless   = ["pilot-lights=no-flame"]
  limit    = atleast(20, "T12")
  power    = "on"
  call     = "on"
  at       = "warm"
  places   = ["bay"]
  lift     = ["tc-tip"]
  hazard   = "hot"
  minutes  = q("6 min", "common practice, no source")
  skill    = "skilled"
  repeat   = true
  act      = "Hold the knob in. Touch the probe's tip and the copper tube."
  caution  = "Hot parts. Touch them only with the tips."
}

check "couple-closed" {
  stage    = "plan"
  name     = "thermocouple on the adapter"
  function = "millivolts-dc"
  part     = "hold-coil"
  red      = "hc"
  black    = "tc-tube"
  unit     = "mV"
  unless   = ["pilot-lights=no-flame"]
  limit    = atleast(8, "T12")
  power    = "on"
  call     = "on"
  at       = "warm"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold the knob in. Touch the adapter and the copper tube."
  caution  = "Hot parts. Touch them only with the tips."
}

check "spill-mv" {
  stage    = "plan"
  name     = "spill switch"
  function = "millivolts-dc"
  part     = "spill-switch"
  red      = "tcs"
  black    = "hc"
  unit     = "mV"
  limit    = atmost(2, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "warm"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold the knob in. Touch both sides of the spill switch."
  caution  = "Hot parts. Touch them only with the tips."
}

check "valve-ohms" {
  stage    = "plan"
  name     = "ohms of the main valve"
  function = "ohms"
  part     = "main-valve"
  red      = "valve-a"
  black    = "tp"
  unit     = "ohm"
  limit    = between(1.5, 5, "common practice, no source")
  power    = "off"
  places   = ["bay"]
  lift     = ["valve-a"]
  hands_in = true
  hazard   = "hot"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Take the T H wire off first. Then read the ohms."
  caution  = "Hot metal inside. Let it cool."
}

check "limit-ohms" {
  stage    = "plan"
  name     = "ohms of the high limit"
  function = "ohms"
  part     = "limit"
  red      = "lim-a"
  black    = "lim"
  unit     = "ohm"
  limit    = atmost(1, "common practice, no source")
  power    = "off"
  places   = ["bay"]
  lift     = ["lim-a"]
  hands_in = true
  hazard   = "hot"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Take one wire off the limit first. Then read the ohms."
  caution  = "Hot metal inside. Let it cool."
}

check "stat-ohms" {
  stage    = "plan"
  name     = "ohms of the thermostat"
  function = "ohms"
  part     = "thermostat"
  red      = "stat-a"
  black    = "s2"
  unit     = "ohm"
  limit    = atmost(3, "common practice, no source")
  power    = "off"
  places   = ["stat-cover"]
  lift     = ["stat-a"]
  hands_in = true
  hazard   = "hot"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn it up. Take one wire off first. Then read the ohms."
  caution  = "Hot metal inside. Let it cool."
}

check "again-alarm" {
  stage    = "restart"
  name     = "alarms after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  ask      = "Are the alarms in the house quiet or sounding?"
  option "quiet" {
    when  = true
    label = "Quiet"
  }
  option "sounding" {
    emergency = "co"
    label     = "Sounding"
  }
}

check "again-pilot" {
  stage    = "restart"
  name     = "pilot after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "released"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Light it as the lighting label says. Hold the knob for one minute, then let go."
  ask      = "Is the pilot flame lit or out?"
  option "lit" {
    when  = pilot > 0.02
    label = "Lit"
  }
  option "out" {
    label = "Out"
  }
}

check "again-burner" {
  stage    = "restart"
  name     = "main burner after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "burns"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Turn the thermostat up. Watch the main burner."
  ask      = "How does it light? All burners, only some burners, or no flame?"
  option "all-burners" {
    when  = main > 0.5
    label = "All burners"
  }
  option "some-burners" {
    when  = main > 0.1
    stop  = "combustion"
    label = "Only some burners"
  }
  option "no-flame" {
    label = "No flame"
  }
}

check "again-valve" {
  stage    = "restart"
  name     = "coil of the main valve after the repair"
  function = "millivolts-dc"
  part     = "main-valve"
  red      = "th"
  black    = "tp"
  unit     = "mV"
  limit    = atleast(135, "T12")
  power    = "on"
  call     = "on"
  places   = ["bay"]
  hazard   = "hot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put red on T H. Put black on T P."
  caution  = "Hot parts. Touch them only with the tips."
}

repair "call-supplier" {
  name    = "call the gas company or the gas supplier"
  kind    = "call"
  stop    = "gas-supply"
  minutes = q("60 min", "common practice, no source")
}

repair "open-cock" {
  name    = "open the gas cock"
  part    = "gas-cock"
  kind    = "set"
  minutes = q("2 min", "common practice, no source")
  causes  = ["cock-who"]
  confirm = "cock"
  note    = "Only when you know why it was closed."
  step {
    act     = "Turn the lever along the pipe, slowly."
    caution = "Never do this without a known reason. If you notice an odor like gas, leave at once."
    level   = "danger"
    power   = "off"
    places  = ["bay"]
  }
}

repair "turn-knob" {
  name    = "turn the gas knob to on"
  part    = "knob"
  kind    = "set"
  minutes = q("3 min", "common practice, no source")
  confirm = "knob-position"
  step {
    act    = "Light the pilot if it is out. Then turn the knob to on."
    places = ["bay"]
  }
}

repair "replace-sparker" {
  name    = "replace the spark button"
  part    = "sparker"
  kind    = "replace"
  price   = q("10..30 money", "from memory")
  minutes = q("15 min", "common practice, no source")
  match   = ["thread", "lead"]
  confirm = "spark-seen"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Undo the nut behind the button. Change the button."
    places = ["bay"]
  }
}

repair "refit-spark-lead" {
  name    = "put the spark wire back on"
  part    = "spark-lead"
  kind    = "refit"
  minutes = q("5 min", "common practice, no source")
  confirm = "spark-seen"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Push the wire all the way on at the pilot."
    places = ["bay"]
  }
}

repair "clean-pilot" {
  name    = "have the pilot orifice cleaned"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("60 min", "common practice, no source")
}

repair "shield-vent" {
  name    = "have the vent terminal shielded"
  kind    = "call"
  stop    = "vent"
  minutes = q("60 min", "common practice, no source")
}

repair "set-thermocouple" {
  name    = "put the thermocouple into the flame"
  part    = "tc-place"
  kind    = "refit"
  minutes = q("10 min", "common practice, no source")
  confirm = "pilot-stays"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Bend the thin tip gently to where the pilot flame burns."
    places = ["bay"]
  }
}

repair "replace-thermocouple" {
  name    = "replace the thermocouple"
  part    = "thermocouple"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("30 min", "common practice, no source")
  match   = ["length", "thread"]
  confirm = "pilot-stays"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act     = "Unscrew the nut at the gas control."
    caution = "Quarter turns. Use no force on the control."
    level   = "caution"
    wire    = "tc-tip"
    places  = ["bay"]
  }
  step {
    act    = "Put in the new one. Turn it finger tight, then a quarter turn."
    wire   = "tc-tip"
    places = ["bay"]
  }
}

repair "clean-nut" {
  name    = "clean and tighten the thermocouple nut"
  part    = "tc-nut"
  kind    = "tighten"
  minutes = q("10 min", "common practice, no source")
  confirm = "pilot-stays"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Wipe the tip clean. Put it back. Turn it finger tight, then a quarter turn."
    wire   = "tc-tip"
    places = ["bay"]
  }
}

repair "replace-spill-switch" {
  name    = "have the spill switch replaced"
  kind    = "call"
  stop    = "vent"
  minutes = q("60 min", "common practice, no source")
}

repair "replace-control" {
  name    = "have the gas control replaced"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("90 min", "common practice, no source")
}

repair "call-vent" {
  name    = "have the vent cleared and tested"
  kind    = "call"
  stop    = "vent"
  minutes = q("60 min", "common practice, no source")
}

repair "set-thermopile" {
  name    = "put the thermopile into the flame"
  part    = "pile-place"
  kind    = "refit"
  minutes = q("10 min", "common practice, no source")
  confirm = "valve-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Bend the thick tip gently to where the pilot flame burns."
    places = ["bay"]
  }
}

repair "replace-thermopile" {
  name    = "replace the thermopile"
  part    = "thermopile"
  kind    = "replace"
  price   = q("25..70 money", "from memory")
  minutes = q("40 min", "common practice, no source")
  match   = ["millivolts", "length"]
  confirm = "valve-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Take the thermopile wire off the middle screw."
    wire   = "pile-a"
    places = ["bay"]
  }
  step {
    act    = "Change the probe. Put the wire back."
    wire   = "pile-a"
    places = ["bay"]
  }
}

repair "refit-pile-lead" {
  name    = "clean and tighten the thermopile wires"
  part    = "pile-lead"
  kind    = "tighten"
  minutes = q("10 min", "common practice, no source")
  confirm = "valve-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Strip the wire end bright. Tighten the screw."
    places = ["bay"]
  }
}

repair "replace-limit" {
  name    = "replace the high limit with the same kind"
  part    = "limit"
  kind    = "replace"
  price   = q("15..45 money", "from memory")
  minutes = q("30 min", "common practice, no source")
  match   = ["opening temperature", "terminals"]
  causes  = ["air-openings"]
  confirm = "limit-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Move one wire at a time to the new limit switch."
    wire   = "lim-a"
    places = ["bay"]
  }
}

repair "clear-air" {
  name    = "clear the air openings"
  part    = "air-ways"
  kind    = "clean"
  minutes = q("20 min", "common practice, no source")
  confirm = "air-openings"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Take the dust out with a brush and a vacuum."
    places = ["bay"]
  }
}

repair "remake-splice" {
  name    = "make the wire joint new"
  part    = "splice"
  kind    = "tighten"
  minutes = q("15 min", "common practice, no source")
  confirm = "valve-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Cut the wires back to bright copper. Put on a new wire nut."
    places = ["bay"]
  }
}

repair "replace-thermostat" {
  name    = "replace the thermostat with one made for millivolts"
  part    = "thermostat"
  kind    = "replace"
  price   = q("20..80 money", "from memory")
  minutes = q("30 min", "common practice, no source")
  match   = ["millivolts"]
  confirm = "stat-alone"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Move one wire at a time to the new thermostat."
    wire   = "stat-a"
    places = ["stat-cover"]
  }
}

repair "raise-setpoint" {
  name    = "set the thermostat above the room temperature"
  part    = "setpoint"
  kind    = "set"
  minutes = q("1 min", "common practice, no source")
  confirm = "setting"
  step {
    act   = "Set it well above the room temperature."
    power = "on"
  }
}

repair "replace-wire" {
  name    = "replace the thermostat wire with a thicker one"
  part    = "stat-wire"
  kind    = "replace"
  price   = q("5..25 money", "from memory")
  minutes = q("45 min", "common practice, no source")
  match   = ["thickness"]
  confirm = "valve-mv"
  step {
    act     = "Turn the knob to off. Let the heater cool."
    caution = "Hot metal for ten minutes."
    level   = "warning"
    places  = ["bay"]
  }
  step {
    act    = "Change one end at a time. Use the same screws."
    places = ["bay"]
  }
}

repair "call-burner" {
  name    = "have the burner cleaned"
  kind    = "call"
  stop    = "combustion"
  minutes = q("60 min", "common practice, no source")
}

repair "explain" {
  name    = "learn what the heater can do"
  part    = "expectation"
  kind    = "set"
  minutes = q("5 min", "common practice, no source")
  note    = "It runs as it should. Lower it less at night, and the room stays warmer."
  step {
    act   = "Leave it on. Write down the room temperature each hour."
    power = "on"
  }
}

plate "input" {
  name     = "input rating"
  unit     = "Btu/h"
  possible = between(2000, 250000, "common practice, no source")
  ask      = "What is the input rating, in B T U per hour?"
}

plate "valve-opens" {
  name     = "millivolts that open the valve"
  unit     = "mV"
  possible = between(50, 400, "common practice, no source")
  ask      = "How many millivolts open the valve?"
  sets     = "main-valve.works"
}

plate "pile-class" {
  name     = "class of the thermopile"
  unit     = "mV"
  possible = between(200, 900, "common practice, no source")
  ask      = "Which thermopile is it: two fifty, five hundred, or seven fifty?"
  sets     = "thermopile.millivolts"
}

plate "gas-kind" {
  name = "kind of gas"
  ask  = "Does it say natural gas or propane?"
}

stop "gas-train" {
  say  = "Only a licensed person may work on gas parts."
  call = "a licensed gas technician"
  tell = "Tell them what you measured at the gas control. No gas joint was touched."
  now  = "Turn the knob to off. Close the gas cock."
}

stop "gas-supply" {
  say  = "The gas does not reach the heater."
  call = "the gas company or the gas supplier"
  tell = "Tell them which gas appliances work. The gas cock is open."
  now  = "Leave it off. Do not open any gas fitting."
}

stop "combustion" {
  say  = "Only a licensed person may adjust the burner."
  call = "a licensed gas technician"
  tell = "Tell them which burners light and what the flame looks like."
  now  = "Leave it off."
}

stop "gas-closed" {
  say  = "Somebody closed the gas, and nobody knows why."
  call = "the gas company or the gas supplier"
  tell = "Tell them that the gas lever was closed. Nobody opened it."
  now  = "Leave it closed. Leave the heater off."
}

stop "flooded" {
  say  = "Water has reached the heater."
  call = "a licensed gas technician"
  tell = "Tell them how high the water stood."
  now  = "Leave it off. Nobody lights it again until every wet part is changed."
}

stop "late-light" {
  say  = "The burner lights late, with a thump."
  call = "a licensed gas technician"
  tell = "Tell them that gas collects before it lights."
  now  = "Turn the knob to off. Close the gas cock."
}

stop "vent" {
  say  = "Exhaust may come into the room."
  call = "a licensed heating technician"
  tell = "Tell them where the soot is, and if the spill switch opened."
  now  = "Leave it off. Open windows. If an alarm sounds or somebody feels ill, everyone goes outside."
}

caution "hot" {
  level = "warning"
  say = [
    "Hot metal and glass. They can burn you for ten minutes.",
    "Hot metal. Wait, or wear gloves.",
    "It is still hot inside. Keep your skin away.",
  ]
}

caution "gas" {
  level = "danger"
  say = [
    "Gas parts. Touch only wires, no fitting and no screw.",
    "Gas parts here. Touch only wires.",
    "Gas fittings stay closed. Touch none of them.",
  ]
}

fact "call-out" {
  value = q("90..200 money", "from memory")
}

accept {
  why = "No fault: the appliance runs as it should, the story tells it."
  warnings = [
    "no check shows expectation.setback",
  ]
}

accept {
  why = "The least gas pressure for a whole flame stands in two options by hand: from memory, no source."
  warnings = [
    "4 stands in an expression without a source",
  ]
}

accept {
  why = "What people tell, hear or see goes beyond the simulated faults: such an answer is heard, and weighed as an odd one."
  warnings = [
    "no fault makes anybody answer \"neither\" to check probes-seen",
  ]
}

accept {
  why = "Meters read this no better: the reading is weighed with its uncertainty, the limit is only what is said aloud."
  warnings = [
    "the limit of check valve-ohms",
  ]
}

accept {
  why = "Why somebody closed the gas is no fault of the heater: the answer decides who opens it."
  warnings = [
    "check cock-who shows the same whatever is wrong",
  ]
}
