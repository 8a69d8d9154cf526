# From the gas supply through the valve to burners and heat exchanger.
assembly "gas" { machine = "furnace" }

part "gas-supply" {
  kind    = "passage"
  name    = "gas supply"
  place   = "room"
  look    = "the gas meter or the tank outside"
  stop    = "gas-train"
  numbers = { pressure = q("7.1 inH2O", "T15") }
  mode "off" {
    name   = "gas supply to the house off"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "tank-empty" {
    name   = "gas tank empty or its valve closed"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "meter-iced" {
    name   = "gas meter iced, or a safety valve at the meter has shut"
    does   = "off"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "low" {
    name   = "gas supply pressure low"
    does   = "factor"
    factor = q("0.4 x", 0.1, 0.65, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-utility"
  }
}

part "gas-cock" {
  kind  = "passage"
  name  = "gas cock"
  place = "front"
  look  = "small handle on the gas pipe beside the ${machine}"
  mode "closed" {
    name   = "gas cock closed"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "open-gas-cock"
  }
}

part "valve-switch" {
  kind  = "passage"
  name  = "switch on the gas valve"
  place = "upper-bay"
  look  = "small switch or knob on top of the gas valve"
  mode "off" {
    name   = "switch on the gas valve off"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "valve-switch-on"
  }
}

part "valve-lead" {
  kind  = "wire"
  name  = "gas valve wire"
  place = "upper-bay"
  look  = "wire from the board to the gas valve"
  ports = { a = "GV", b = "GV-1" }
  mode "off" {
    name   = "gas valve wire off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-valve-lead"
  }
}

part "valve-common" {
  kind  = "wire"
  name  = "common wire of the gas valve"
  place = "upper-bay"
  look  = "second wire on the gas valve"
  ports = { a = "GV-2", b = "C" }
  mode "off" {
    name   = "common wire of the gas valve off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-valve-common"
  }
}

part "gas-valve" {
  kind  = "load"
  name  = "gas valve"
  place = "upper-bay"
  look  = "block in the gas pipe with two or three wires"
  ports = { a = "GV-1", b = "GV-2" }
  ohms  = q("60 ohm", 35, 85, "common practice, no source")
  cold  = q("40 ohm", 20, 60, "common practice, no source")
  works = q("18 V", "common practice, no source")
  stop  = "gas-train"
  mode "coil-open" {
    name   = "coil of the gas valve burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "coil-shorted" {
    name   = "coil of the gas valve shorted"
    does   = "short"
    ohms   = q("2 ohm", 0.3, 7, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "stuck" {
    name   = "gas valve does not open, though it has power"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "leaking" {
    name   = "gas valve does not close"
    does   = "always"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-gas-valve"
  }
}

part "orifice" {
  kind    = "passage"
  name    = "burner orifices"
  place   = "burner-box"
  look    = "brass nozzles at the burners"
  stop    = "combustion"
  numbers = { cubic_foot = q("45 s", "T11"), never = q("600 s", "common practice, no source"), flue_ppm = q("30 ppm", "common practice, no source"), over_ppm = q("405 ppm", "own"), quick = q("40 s", "own"), flue_limit = q("100 ppm", "common practice, no source") }
  mode "too-big" {
    name   = "too much gas at the burners"
    does   = "factor"
    factor = q("1.25 x", "own")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "call-overfire"
  }
}

part "burners" {
  kind  = "passage"
  name  = "burners"
  place = "burner-box"
  look  = "row of steel tubes with small holes"
  stop  = "gas-train"
  mode "dirty" {
    name   = "burners dirty, they light late"
    does   = "factor"
    factor = q("0.4 x", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "call-burners"
  }
}

part "crossover" {
  kind  = "passage"
  name  = "burner crossover"
  place = "burner-box"
  look  = "slots that carry flame from burner to burner"
  stop  = "gas-train"
  mode "blocked" {
    name   = "burner crossover blocked, the last burner stays dark"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-burners"
  }
}

part "exchanger" {
  kind    = "thing"
  name    = "heat exchanger"
  place   = "burner-box"
  look    = "steel tubes or shells behind the burners"
  stop    = "exchanger"
  numbers = { room_ppm = q("25 ppm", "from memory"), tester = q("9 ppm", "EPA"), keep_off = q("30 ppm", "IRC") }
  mode "cracked" {
    name   = "heat exchanger cracked"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-exchanger"
  }
  mode "plugged" {
    name   = "heat exchanger clogged with soot"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

signal "gas-inlet" {
  unit = "inH2O"
  is   = gas-supply.pressure * gas-supply.passes * gas-cock.passes
  tol  = q("15 %", "common practice, no source")
}

signal "gas-flow" {
  unit = "x"
  is   = gas-supply.passes * gas-cock.passes * valve-switch.passes * gas-valve.works * orifice.passes
}

signal "flame-outside" {
  unit = "x"
  is   = lit > 0.5 && mode("exchanger.plugged") ? 1 : 0
}

signal "dial-seconds" {
  unit = "s"
  is   = lit > 0.5 ? orifice.cubic_foot / gas-flow : orifice.never
}

signal "room-co" {
  unit = "ppm"
  is   = mode("exchanger.cracked") || mode("vent-joints.apart") ? exchanger.room_ppm : 0
}

signal "flue-co" {
  unit = "ppm"
  is   = mode("orifice.too-big") ? orifice.over_ppm : orifice.flue_ppm
}

point "gas-out" {
  net   = "GV"
  place = "upper-bay"
  name  = "gas valve pin of the board plug"
  where = "large plug of the board, gas valve output"
}

point "valve-1" {
  net   = "GV-1"
  place = "upper-bay"
  name  = "first gas valve terminal"
  where = "with the wire from the board"
}

point "valve-2" {
  net   = "GV-2"
  place = "upper-bay"
  name  = "common gas valve terminal"
  where = "with the wire to common"
}

point "valve-a" {
  net   = "gas-valve.a"
  place = "upper-bay"
  name  = "first terminal of the gas valve"
  where = "the first terminal"
}

point "valve-b" {
  net   = "gas-valve.b"
  place = "upper-bay"
  name  = "common terminal of the gas valve"
  where = "the second terminal"
}

check "cock-who" {
  stage    = "cause"
  name     = "who closed the gas"
  function = "look"
  part     = "gas-cock"
  power    = "any"
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

check "cock-look" {
  stage    = "free"
  name     = "gas cock"
  function = "look"
  part     = "gas-cock"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  caution  = "Only look. Do not turn the handle."
  ask      = "Is it along the pipe or across the pipe?"
  option "parallel" {
    when  = !(gas-cock.passes < 0.5)
    label = "Along the pipe"
  }
  option "crosswise" {
    mend  = "open-gas-cock"
    label = "Across the pipe"
  }
  act = "Look at the handle on the gas pipe."
}

check "other-gas" {
  stage    = "free"
  name     = "another gas flame"
  function = "look"
  part     = "gas-supply"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "If you have a gas stove, light one burner."
  ask      = "How is that flame? Good, no flame, or weak?"
  option "good" {
    when  = gas-supply.ok
    label = "Good"
  }
  option "none" {
    when  = gas-supply.passes < 0.05
    label = "No flame"
  }
  option "short-flame" {
    label = "Weak"
  }
}

check "hear-valve" {
  stage    = "watch"
  name     = "click of the gas valve"
  function = "look"
  part     = "gas-valve"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  event    = "the gas valve clicks"
  act      = "Listen near the gas valve when the glow ends."
  ask      = "Do you hear a click or no click?"
  option "clicks" {
    when  = gas-valve.powered
    label = "A click"
  }
  option "no-click" {
    missed = true
    label  = "No click"
  }
}

check "see-flame" {
  stage    = "watch"
  name     = "first flame"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the burners light"
  unless   = ["see-fan=silent", "see-hold=no-flame", "see-burners=no-flame"]
  act      = "Stand to the side and watch the small window."
  caution  = "Flame may come out. Stand to the side."
  ask      = "How does the flame start? Softly, rolling out, with a thump, or no flame?"
  option "whoosh" {
    when  = !(flame-outside > 0.5) && !(lit > 0.5 && burners.passes < 0.5) && (lit > 0.5)
    label = "Softly"
  }
  option "rolls-out" {
    when  = flame-outside > 0.5
    stop  = "roll-out"
    label = "Rolling out"
  }
  option "bang" {
    when  = lit > 0.5 && burners.passes < 0.5
    stop  = "late-light"
    label = "With a thump"
  }
  option "no-flame" {
    missed = true
    label  = "No flame"
  }
}

check "see-burners" {
  stage    = "watch"
  name     = "number of burners that light"
  function = "look"
  part     = "burners"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame"]
  act      = "Count the flames through the small window."
  ask      = "How many burners light? All burners, no burner, or only some burners?"
  option "all-burners" {
    when  = !(lit < 0.5) && !(crossover.passes < 0.5 || burners.passes < 0.5)
    seen  = ["flame", "held"]
    label = "All burners"
  }
  option "no-flame" {
    when  = lit < 0.5
    seen  = ["dark"]
    label = "No burner"
  }
  option "some-burners" {
    seen  = ["flame", "held"]
    label = "Only some burners"
  }
}

check "see-colour" {
  stage    = "watch"
  name     = "color of the flame"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "run"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame"]
  act      = "Look at the flame, not at the glow."
  ask      = "What color is the flame? Blue, no flame, or yellow?"
  option "blue-flame" {
    when  = !(lit < 0.5) && !(mode("orifice.too-big") || mode("burners.dirty"))
    label = "Blue"
  }
  option "no-flame" {
    when  = lit < 0.5
    label = "No flame"
  }
  option "yellow-flame" {
    stop  = "combustion"
    label = "Yellow"
  }
}

check "see-move" {
  stage    = "watch"
  name     = "flame when the blower starts"
  function = "look"
  part     = "exchanger"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame", "see-blower=silent"]
  act      = "Watch the flame as the blower starts."
  ask      = "What does the flame do? It stays still, there is no flame, or it moves?"
  option "flame-still" {
    when  = !(lit < 0.5) && !mode("exchanger.cracked")
    label = "It stays still"
  }
  option "no-flame" {
    when  = lit < 0.5
    label = "There is no flame"
  }
  option "flame-moves" {
    stop  = "exchanger"
    label = "It moves"
  }
}

check "see-end" {
  stage    = "watch"
  name     = "flame after turning it down"
  function = "look"
  part     = "gas-valve"
  power    = "on"
  call     = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the thermostat down. Watch the flame."
  ask      = "Is the flame gone or still burning?"
  option "no-flame" {
    when  = !mode("gas-valve.leaking")
    label = "Gone"
  }
  option "flame-stays" {
    stop  = "gas-train"
    label = "Still burning"
  }
}

check "gas-out-v" {
  stage    = "plan"
  name     = "volts from the board to the gas valve"
  function = "volts-ac"
  part     = "board"
  red      = "gas-out"
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
  act      = "Push the tip into the plug first. Read the volts when the gas valve clicks."
  caution  = "The burner lights. Keep your face away."
}

check "valve-v" {
  stage    = "plan"
  name     = "volts across the gas valve"
  function = "volts-ac"
  part     = "gas-valve"
  red      = "valve-1"
  black    = "valve-2"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "valve-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts when the gas valve clicks."
  caution  = "The burner lights. Keep your face away."
}

check "valve-1-v" {
  stage    = "plan"
  name     = "volts from the gas valve to C"
  function = "volts-ac"
  part     = "valve-lead"
  red      = "valve-1"
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
  caution  = "The burner lights. Keep your face away."
}

check "valve-ohms" {
  stage    = "plan"
  name     = "coil of the gas valve"
  function = "ohms"
  part     = "gas-valve"
  red      = "valve-a"
  black    = "valve-b"
  unit     = "ohm"
  limit    = between(15, 80, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["valve-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
  caution  = "Move only wires. Leave the gas fittings alone."
}

check "valve-lead-ohms" {
  stage    = "plan"
  name     = "gas valve wire"
  function = "ohms"
  part     = "valve-lead"
  red      = "gas-out"
  black    = "valve-1"
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

check "valve-common-ohms" {
  stage    = "plan"
  name     = "common wire of the gas valve"
  function = "ohms"
  part     = "valve-common"
  red      = "valve-2"
  black    = "board-c"
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

check "inlet-m" {
  stage    = "plan"
  name     = "gas pressure at the inlet"
  function = "manometer"
  part     = "gas-supply"
  quantity = "gas-inlet"
  unit     = "inH2O"
  limit    = between(5, 14, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "trial"
  places   = ["upper-bay"]
  hazard   = "gas"
  minutes  = q("20 min", "common practice, no source")
  skill    = "skilled"
  repeat   = true
  who      = "licensed"
  act      = "Do this only with a license. Connect the gauge with the gas off."
  caution  = "Licensed people only. Turn the gas off to connect it."
}

check "dial" {
  stage    = "plan"
  name     = "gas meter dial"
  function = "look"
  part     = "gas-supply"
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Turn off all other gas flames. Watch the small dial of the gas meter."
  ask      = "Is the dial turning or standing still?"
  option "running" {
    when  = gas-flow > 0.2
    label = "Turning"
  }
  option "not-running" {
    label = "Standing still"
  }
}

check "dial-time" {
  stage    = "plan"
  name     = "time for one cubic foot of gas"
  function = "look"
  part     = "orifice"
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-flame=no-flame", "see-hold=no-flame"]
  act      = "Keep all other gas flames off. Time one turn of the one-foot dial."
  ask      = "How long does one turn take? Forty seconds or more, no turn, or less than forty seconds?"
  option "above" {
    when  = !(gas-flow < 0.2) && !(dial-seconds < orifice.quick)
    label = "Forty seconds or more"
  }
  option "not-running" {
    when  = gas-flow < 0.2
    label = "No turn"
  }
  option "below" {
    stop  = "combustion"
    label = "Less than forty seconds"
  }
}

check "room-co-m" {
  stage    = "plan"
  name     = "carbon monoxide in the room"
  function = "co-meter"
  part     = "exchanger"
  quantity = "room-co"
  unit     = "ppm"
  limit    = atmost(9, "EPA")
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("5 min", "common practice, no source")
  skill    = "skilled"
  act      = "If you have a C O meter, hold it at head height."
  caution  = "A gas sniffer does not show it."
  # UL 2034 alarms sound at 70 ppm within four hours
  band "leave" {
    when      = atleast(70, "from memory")
    emergency = "co"
  }
  band "off" {
    when = atleast(35, "T03")
    stop = "vent"
  }
  band "source" {
    when = atleast(9, "EPA")
    tell = "This is more than in outdoor air. Open a window. Look for where it comes from."
  }
}

check "flue-co-m" {
  stage    = "plan"
  name     = "carbon monoxide in the exhaust"
  function = "co-meter"
  part     = "orifice"
  quantity = "flue-co"
  unit     = "ppm"
  limit    = atmost(100, "common practice, no source")
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "heating"
  hazard   = "hot"
  minutes  = q("15 min", "common practice, no source")
  skill    = "skilled"
  who      = "licensed"
  act      = "Licensed people only: put the analyzer into the vent. Read the air-free value."
  band "off" {
    when = atleast(100, "common practice, no source")
    stop = "combustion"
  }
}

check "burner-look" {
  stage    = "plan"
  name     = "look of the burners"
  function = "look"
  part     = "burners"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look along the burners with a light."
  ask      = "Are they clean, sooty, or dirty?"
  option "clean" {
    when  = !mode("exchanger.plugged") && !(mode("burners.dirty") || mode("crossover.blocked"))
    label = "Clean"
  }
  option "sooty" {
    when  = mode("exchanger.plugged")
    stop  = "roll-out"
    label = "Sooty"
  }
  option "dirty" {
    label = "Dirty"
  }
}

check "crossover-look" {
  stage    = "plan"
  name     = "slots between the burners"
  function = "look"
  part     = "crossover"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the slots that run from burner to burner."
  ask      = "Are the slots clear or blocked?"
  option "clear" {
    when  = !(crossover.passes < 0.5)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
}

check "orifice-look" {
  stage    = "plan"
  name     = "burner nozzles, called orifices"
  function = "look"
  part     = "orifice"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Only read the numbers on the nozzles. Unscrew nothing."
  ask      = "Compare them with the label. Are they the same or different?"
  option "same" {
    when  = !mode("orifice.too-big")
    label = "The same"
  }
  option "different" {
    stop  = "combustion"
    label = "Different"
  }
}

check "exchanger-look" {
  stage    = "plan"
  name     = "look of the heat exchanger"
  function = "look"
  part     = "exchanger"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Look into each opening behind the burners with a light."
  ask      = "Is the heat exchanger good, sooty, or cracked?"
  option "good" {
    when  = !mode("exchanger.plugged") && !mode("exchanger.cracked")
    label = "Good"
  }
  option "sooty" {
    when  = mode("exchanger.plugged")
    stop  = "roll-out"
    label = "Sooty"
  }
  option "cracked" {
    stop  = "exchanger"
    label = "Cracked"
  }
}

check "gas-switch-look" {
  stage    = "plan"
  name     = "switch on the gas valve"
  function = "look"
  part     = "valve-switch"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Read the mark beside the small switch on the gas valve."
  ask      = "Is the switch on or off?"
  option "on" {
    when  = !(valve-switch.passes < 0.5)
    label = "On"
  }
  option "off" {
    label = "Off"
  }
}

check "valve-wire-look" {
  stage    = "plan"
  name     = "wires of the gas valve"
  function = "look"
  part     = "valve-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire at the gas valve."
  ask      = "What do you find? Both wires tight, or one loose?"
  option "tight" {
    when  = !(mode("valve-lead.off") || mode("valve-common.off"))
    label = "Both wires tight"
  }
  option "loose" {
    label = "One loose"
  }
}

check "again-flame" {
  stage    = "restart"
  name     = "flame after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look through the small window."
  ask      = "What color is the flame? Blue, yellow, or no flame?"
  option "blue-flame" {
    when  = lit > 0.5 && !mode("orifice.too-big") && !mode("burners.dirty")
    label = "Blue"
  }
  option "yellow-flame" {
    when  = lit > 0.5
    stop  = "combustion"
    label = "Yellow"
  }
  option "no-flame" {
    label = "No flame"
  }
}

repair "open-gas-cock" {
  name    = "open the gas cock"
  part    = "gas-cock"
  kind    = "open"
  minutes = q("1..10 min", "from memory")
  causes  = ["cock-who"]
  confirm = "cock-look"
  note    = "Only when you know the reason. If not, the gas company opens it."
  step {
    act     = "Turn the handle along the pipe, slowly."
    caution = "Never do this without a known reason. If you notice an odor like gas, leave at once."
    level   = "danger"
    power   = "cut"
  }
}

repair "valve-switch-on" {
  name    = "turn the gas valve switch on"
  part    = "valve-switch"
  kind    = "open"
  minutes = q("1..3 min", "from memory")
  confirm = "gas-switch-look"
  step {
    act    = "Find out who turned it off, and why."
    power  = "off"
    places = ["upper-bay"]
  }
  step {
    act     = "Turn only the small switch to on."
    caution = "Touch no gas fitting."
    level   = "danger"
    power   = "off"
    places  = ["upper-bay"]
  }
}

repair "refit-valve-lead" {
  name    = "fasten the gas valve wire"
  part    = "valve-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "valve-1-v"
  step {
    act     = "Push the connector on the first terminal. Pull gently to test it."
    caution = "Move the wire only. Touch no gas fitting."
    level   = "warning"
    wire    = "valve-1"
    places  = ["upper-bay"]
  }
}

repair "refit-valve-common" {
  name    = "fasten the common wire of the gas valve"
  part    = "valve-common"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "valve-v"
  step {
    act     = "Push the connector on the common terminal. Pull gently to test it."
    caution = "Move the wire only. Touch no gas fitting."
    level   = "warning"
    wire    = "valve-2"
    places  = ["upper-bay"]
  }
}

repair "call-rollout" {
  name    = "call licensed help because a roll-out switch opened"
  part    = "exchanger"
  kind    = "call"
  stop    = "roll-out"
  minutes = q("0..10 min", "from memory")
  causes  = ["roll-marks", "exchanger-look"]
  confirm = "roll-marks"
}

repair "call-gas-utility" {
  name    = "call the gas company or the gas supplier"
  part    = "gas-supply"
  kind    = "call"
  stop    = "gas-supply"
  minutes = q("0..10 min", "from memory")
  confirm = "other-gas"
}

repair "call-gas-valve" {
  name    = "call licensed help for the gas valve"
  part    = "gas-valve"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("0..10 min", "from memory")
  confirm = "valve-ohms"
}

repair "call-overfire" {
  name    = "call licensed help because too much gas burns"
  part    = "orifice"
  kind    = "call"
  stop    = "combustion"
  minutes = q("0..10 min", "from memory")
  confirm = "dial-time"
}

repair "call-burners" {
  name    = "call licensed help to clean the burners"
  part    = "burners"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("0..10 min", "from memory")
  confirm = "see-flame"
}

repair "call-exchanger" {
  name    = "call licensed help to check the heat exchanger"
  part    = "exchanger"
  kind    = "call"
  stop    = "exchanger"
  minutes = q("0..10 min", "from memory")
  confirm = "see-move"
}

plate "input" {
  name     = "input rating"
  unit     = "Btu/h"
  possible = between(20000, 250000, "common practice, no source")
  ask      = "What is the input rating, in B T U per hour?"
}

plate "gas-kind" {
  name = "kind of gas"
  ask  = "Does it say natural gas or propane?"
}

stop "gas-train" {
  say  = "Only a licensed person may work on gas parts."
  call = "a licensed gas technician"
  tell = "Tell them what you measured at the gas valve. No gas joint was touched."
  now  = "Close the gas cock. Leave it off."
}

stop "gas-supply" {
  say  = "The gas does not reach the ${machine}."
  call = "the gas company or the gas supplier"
  tell = "Tell them which gas appliances work. The gas cock is open."
  now  = "Leave it off. Do not open any gas fitting."
}

stop "gas-closed" {
  say  = "Somebody closed the gas, and nobody knows why."
  call = "the gas company or the gas supplier"
  tell = "Tell them that the gas handle was closed. Nobody opened it."
  now  = "Leave it closed. Leave the ${machine} off."
}

stop "combustion" {
  say  = "Only a licensed person may adjust the burner."
  call = "a licensed gas technician"
  tell = "Tell them the input on the plate. Tell them the time for one cubic foot and the flame color."
  now  = "Leave it off. Open a window if you ran it."
}

stop "exchanger" {
  say  = "The heat exchanger may leak."
  call = "a licensed heating technician"
  tell = "Tell them what the flame did when the blower started."
  now  = "Leave it off. Hang a note on the switch."
}

stop "roll-out" {
  say  = "Flame has been outside the burners."
  call = "a licensed heating technician"
  tell = "Tell them which roll-out switch opened. Tell them where you see soot or burned paint."
  now  = "Leave it off. Hang a note on it. Reset nothing."
}

stop "late-light" {
  say  = "The burner lights late, with a thump."
  call = "a licensed gas technician"
  tell = "Tell them that gas collects before it lights."
  now  = "Leave it off. Close the gas cock."
}

stop "vent" {
  say  = "Exhaust may come into the house."
  call = "a licensed heating technician"
  tell = "Tell them where the vent pipe is apart or blocked."
  now  = "Leave it off. Open windows. If an alarm sounds or somebody feels ill, everyone goes outside."
}

caution "gas" {
  level = "danger"
  say = [
    "Gas parts. Touch only wires, no fitting and no screw.",
    "Gas parts here. Touch only wires.",
    "Gas fittings stay closed. Touch none of them.",
    "Gas parts close by. Leave every fitting alone.",
  ]
}
