# Filter, blower wheel, registers, coil, ducts, and what the house asks for.
assembly "air" { machine = "furnace" }

place "coil-box" {
  name     = "coil cover"
  where    = "sealed cover above the ${machine}, many screws"
  within   = "room"
  cover    = true
  open     = q("15 min", "common practice, no source")
  close    = q("15 min", "common practice, no source")
  hands_in = true
  hazards  = ["sharp"]
}

part "blower-wheel" {
  kind  = "passage"
  name  = "blower wheel"
  place = "lower-bay"
  look  = "drum with many small blades"
  mode "dirty" {
    name   = "blower wheel packed with dust"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clean-blower-wheel"
  }
  mode "loose" {
    name   = "blower wheel loose on its shaft"
    does   = "factor"
    factor = q("0.02 x", 0, 0.3, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "tighten-blower-wheel"
  }
}

part "filter" {
  kind  = "passage"
  name  = "air filter"
  place = "filter-slot"
  look  = "flat frame with fleece"
  mode "packed" {
    name   = "air filter packed"
    does   = "factor"
    factor = q("0.554 x", 0.3, 0.7, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "replace-filter"
  }
}

part "registers" {
  kind    = "passage"
  name    = "supply registers"
  place   = "living"
  look    = "grilles the warm air comes out of"
  mode "closed" {
    name   = "most supply registers closed"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "open-registers"
  }
}

part "return-grille" {
  kind    = "passage"
  name    = "return grille"
  place   = "living"
  look    = "large grille that takes room air back"
  mode "covered" {
    name   = "return grille covered"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "clear-return"
  }
}

part "coil" {
  kind  = "passage"
  name  = "cooling coil"
  place = "coil-box"
  look  = "finned coil in the duct above the ${machine}"
  mode "dirty" {
    name   = "cooling coil packed with dust"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "call-coil"
  }
}

part "ducts" {
  kind    = "passage"
  name    = "ducts"
  place   = "duct"
  look    = "metal or flexible air ducts"
  mode "collapsed" {
    name   = "duct collapsed or far too small"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "duct-joints" {
  kind    = "thing"
  name    = "duct joints"
  place   = "duct"
  look    = "where lengths of duct meet"
  mode "apart" {
    name   = "duct fallen apart, heat lost"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "household" {
  kind    = "thing"
  name    = "heat demand of the house"
  place   = "living"
  look    = "how far and how fast the room must warm"
  mode "setback" {
    name   = "${machine} good, a deep set-back is still being made up"
    does   = "wrong"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "explain-normal"
  }
  mode "cold-snap" {
    name   = "${machine} good, the house loses more than it gives"
    does   = "wrong"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "explain-normal"
  }
}

signal "return-passes" {
  unit = "x"
  is   = filter.passes * return-grille.passes
}

signal "supply-passes" {
  unit = "x"
  is   = coil.passes * registers.passes * ducts.passes
}

signal "airflow" {
  unit = "x"
  is   = blower.works * blower-wheel.passes * return-passes * supply-passes
}

signal "return-static" {
  unit = "inH2O"
  is   = blower.suction * blower.works / (return-passes * return-passes)
  tol  = q("25 %", "common practice, no source")
}

signal "supply-static" {
  unit = "inH2O"
  is   = blower.push * blower.works / (supply-passes * supply-passes)
  tol  = q("25 %", "common practice, no source")
}

signal "total-static" {
  unit = "inH2O"
  is   = return-static + supply-static
  tol  = q("20 %", "common practice, no source")
}

signal "rise" {
  unit = "dF"
  is   = reached("heating") ? lit * blower.rise * gas-flow / max(airflow, 0.1) : 0
  tol  = q("25 %", "common practice, no source")
}

check "story-room" {
  stage    = "free"
  name     = "the room"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Compare the room with one hour ago."
  ask      = "Is the room still cold, or slowly getting warm?"
  option "cold" { when = !mode("household.setback") }
  option "warm" {}
}

check "story-weather" {
  stage    = "free"
  name     = "weather"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Outside: colder than usual, or the same as usual?"
  option "same" { when = !mode("household.cold-snap") }
  option "cold" {}
}

check "filter-look" {
  stage    = "free"
  name     = "air filter"
  function = "look"
  part     = "filter"
  places   = ["filter-slot"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Slide the filter out, hold it to the light."
  ask      = "The air filter: clean, dirty, or missing?"
  option "clean" { when = !(filter.passes < 0.8) }
  option "dirty" {
    mend = "replace-filter"
  }
}

check "registers-look" {
  stage    = "free"
  name     = "supply registers"
  function = "look"
  part     = "registers"
  places   = ["living"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at each register in the rooms."
  ask      = "The supply registers: open, or closed?"
  option "open" { when = !(registers.passes < 0.8) }
  option "closed" {
    mend = "open-registers"
  }
}

check "return-look" {
  stage    = "free"
  name     = "return grille"
  function = "look"
  part     = "return-grille"
  places   = ["living"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold a tissue to the return grille."
  ask      = "The return grille: clear, or blocked?"
  option "clear" { when = !(return-grille.passes < 0.8) }
  option "blocked" {
    mend = "clear-return"
  }
}

check "duct-look" {
  stage    = "free"
  name     = "duct joints"
  function = "look"
  part     = "ducts"
  places   = ["duct"]
  power    = "any"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow each duct with a light."
  ask      = "The ducts you can see: tight, apart, or the return duct apart at the ${machine}?"
  option "tight" { when = !mode("duct-joints.apart") && !mode("ducts.collapsed") }
  option "loose" { when = mode("duct-joints.apart") }
  option "return-apart" {
    when = 1 < 0
    stop = "ducts"
  }
  option "bad" {}
}

check "feel-air" {
  stage    = "watch"
  name     = "air from a register"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-blower=silent"]
  act      = "Hold your hand over the nearest register."
  ask      = "At the nearest register: strong, weak, or no air?"
  option "strong-air" { when = airflow >= 0.7 }
  option "no-air" { when = airflow < 0.05 }
  option "weak-air" {}
}

check "feel-warm" {
  stage    = "watch"
  name     = "warmth of the air"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("5 min", "common practice, no source")
  skill    = "clear"
  unless   = ["see-blower=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame"]
  act      = "Feel the air at the far register."
  ask      = "The air after five minutes: warm, cool, or none?"
  option "warm-air" { when = airflow >= 0.05 && lit >= 0.5 && !mode("duct-joints.apart") }
  option "no-air" { when = airflow < 0.05 }
  option "cold" { when = lit < 0.5 }
  option "cool-air" {}
}

check "hear-rest" {
  stage    = "watch"
  name     = "fans with no call"
  function = "look"
  power    = "on"
  call     = "off"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Wait three minutes after the call ends."
  ask      = "With no call: both fans silent, or one running?"
  option "silent" { when = !(inducer.works > 0.1 || blower.works > 0.1) }
  option "running" {}
}

check "static-m" {
  stage    = "plan"
  name     = "static pressure across the ${machine}"
  function = "manometer"
  part     = "blower"
  quantity = "total-static"
  unit     = "inH2O"
  limit    = atmost(0.5, "T24")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("10 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one hose before the filter, one above."
}

check "return-m" {
  stage    = "plan"
  name     = "suction before the blower"
  function = "manometer"
  part     = "filter"
  quantity = "return-static"
  unit     = "inH2O"
  limit    = atmost(0.35, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put the hose between filter and blower."
}

check "supply-m" {
  stage    = "plan"
  name     = "pressure above the ${machine}"
  function = "manometer"
  part     = "coil"
  quantity = "supply-static"
  unit     = "inH2O"
  limit    = atmost(0.35, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put the hose above the ${machine}, below the coil."
}

check "rise-m" {
  stage    = "plan"
  name     = "air temperature rise"
  function = "thermometer"
  part     = "blower"
  quantity = "rise"
  unit     = "dF"
  limit    = between(35, 65, "plate")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("12 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the supply duct, then the return."
  caution  = "Hot duct. Keep fingers off bare metal."
}

check "blower-wheel-look" {
  stage    = "plan"
  name     = "blower wheel, by eye"
  function = "look"
  part     = "blower-wheel"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look between the blades with a light."
  ask      = "The blower blades: clean, or dirty?"
  option "clean" { when = !mode("blower-wheel.dirty") }
  option "dirty" {}
}

check "blower-hub" {
  stage    = "plan"
  name     = "blower wheel on its shaft"
  function = "look"
  part     = "blower-wheel"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold the shaft, try to turn the wheel."
  caution  = "Sharp blades. Power stays off."
  ask      = "The wheel on its shaft: tight, or loose?"
  option "tight" { when = !mode("blower-wheel.loose") }
  option "loose" {}
}

check "coil-look" {
  stage    = "plan"
  name     = "cooling coil, by eye"
  function = "look"
  part     = "coil"
  places   = ["coil-box"]
  power    = "off"
  hands_in = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look up at the fins with a mirror."
  ask      = "Under the cooling coil: clean, or dirty?"
  option "clean" { when = !mode("coil.dirty") }
  option "dirty" {}
}

check "again-air" {
  stage    = "restart"
  name     = "air after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold your hand over the nearest register."
  ask      = "At the nearest register: warm air, cool air, or none?"
  option "warm-air" { when = lit > 0.5 && airflow > 0.05 }
  option "no-air" { when = airflow < 0.05 }
  option "cool-air" {}
}

check "again-rise" {
  stage    = "restart"
  name     = "temperature rise after the repair"
  function = "thermometer"
  part     = "blower"
  quantity = "rise"
  unit     = "dF"
  limit    = between(35, 65, "plate")
  power    = "on"
  call     = "on"
  at       = "steady"
  places   = []
  hazard   = "none"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read supply and return, subtract."
  caution  = "Hot duct. Keep fingers off bare metal."
}

repair "open-registers" {
  name    = "open the supply registers"
  part    = "registers"
  kind    = "open"
  minutes = q("3..10 min", "from memory")
  confirm = "registers-look"
  step {
    act   = "Open every register, move furniture off."
    power = "on"
  }
}

repair "clear-return" {
  name    = "clear the return grille"
  part    = "return-grille"
  kind    = "clean"
  minutes = q("3..15 min", "from memory")
  confirm = "return-look"
  step {
    act   = "Take away what covers the return grille."
    power = "on"
  }
}

repair "replace-filter" {
  name    = "replace the air filter"
  part    = "filter"
  kind    = "replace"
  price   = q("8..40 money", "from memory")
  minutes = q("3..10 min", "from memory")
  match   = ["length", "width", "thickness", "airflow class"]
  confirm = "filter-look"
  note    = "A filter that is too fine starves an old blower."
  step {
    act    = "Turn the thermostat down, slide the old filter out."
    power  = "on"
    places = ["filter-slot"]
  }
  step {
    act    = "Fit the new one, arrow toward the ${machine}."
    power  = "on"
    places = ["filter-slot"]
  }
}

repair "explain-normal" {
  name    = "nothing to mend: wait, or use less set-back"
  part    = "household"
  kind    = "set"
  minutes = q("0..5 min", "from memory")
  note    = "The ${machine} is good. Deep set-backs take hours on a cold day."
  step {
    act   = "Leave the setpoint where it is for three hours."
    power = "on"
  }
}

repair "clean-blower-wheel" {
  name    = "clean the blower wheel"
  part    = "blower-wheel"
  kind    = "clean"
  minutes = q("60..120 min", "from memory")
  causes  = ["filter-look", "coil-look"]
  confirm = "blower-wheel-look"
  step {
    act    = "Take a photo of every blower wire."
    places = ["lower-bay"]
  }
  step {
    act     = "Slide the blower out on its rails."
    caution = "Heavy, with sharp edges."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Brush each blade, keep the balance clips."
    places = ["lower-bay"]
  }
}

repair "tighten-blower-wheel" {
  name    = "tighten the blower wheel"
  part    = "blower-wheel"
  kind    = "tighten"
  minutes = q("15..30 min", "from memory")
  confirm = "blower-hub"
  step {
    act    = "Turn the flat of the shaft to the screw."
    places = ["lower-bay"]
  }
  step {
    act    = "Tighten the hub screw, spin it by hand."
    places = ["lower-bay"]
  }
}

repair "call-coil" {
  name    = "call licensed help to clean the cooling coil"
  part    = "coil"
  kind    = "call"
  stop    = "coil"
  minutes = q("0..10 min", "from memory")
  confirm = "supply-m"
}

repair "call-duct" {
  name    = "call a duct installer"
  part    = "ducts"
  kind    = "call"
  stop    = "ducts"
  minutes = q("0..10 min", "from memory")
  confirm = "duct-look"
}

plate "rise" {
  name     = "highest temperature rise"
  unit     = "dF"
  possible = between(30, 110, "common practice, no source")
  ask  = "Highest temperature rise on the plate, degrees?"
}

plate "static" {
  name     = "highest static pressure"
  unit     = "inH2O"
  possible = between(0.1, 2, "common practice, no source")
  ask  = "Highest static pressure on the plate, inches of water?"
}

stop "coil" {
  say  = "The cooling coil holds refrigerant."
  call = "a cooling technician"
  tell = "Say the pressure above the ${machine}, and that the filter is clean."
  now  = "Leave it off until the air gets through."
}

stop "ducts" {
  say  = "Ducts need an installer."
  call = "a duct installer"
  tell = "Say where the duct is apart or too small."
  now  = "A return duct apart near the ${machine} pulls in flue gas. Leave it off."
}
