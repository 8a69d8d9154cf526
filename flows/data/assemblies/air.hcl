# Filter, blower wheel, registers, coil, ducts, and what the house asks for.
assembly "air" { machine = "furnace" }

place "coil-box" {
  name     = "cooling coil cover"
  where    = "a sealed cover above the ${machine}, with many screws"
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
  look  = "flat frame with filter cloth"
  mode "packed" {
    name   = "air filter clogged"
    does   = "factor"
    factor = q("0.554 x", 0.3, 0.7, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "replace-filter"
  }
}

part "registers" {
  kind  = "passage"
  name  = "warm air registers"
  place = "living"
  look  = "grilles that the warm air comes out of"
  mode "closed" {
    name   = "most warm air registers closed"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "open-registers"
  }
}

part "return-grille" {
  kind  = "passage"
  name  = "return grille"
  place = "living"
  look  = "large grille where room air goes back"
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
  look  = "coil with fins in the duct above the ${machine}"
  mode "dirty" {
    name   = "cooling coil packed with dust"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "call-coil"
  }
}

part "ducts" {
  kind  = "passage"
  name  = "ducts"
  place = "duct"
  look  = "metal or flexible air ducts"
  mode "collapsed" {
    name   = "air duct crushed or far too small"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "duct-joints" {
  kind  = "thing"
  name  = "duct joints"
  place = "duct"
  look  = "where the pieces of duct meet"
  mode "apart" {
    name   = "air duct fallen apart"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "household" {
  kind  = "thing"
  name  = "heat that the house needs"
  place = "living"
  look  = "how far and how fast the rooms must warm up"
  mode "setback" {
    name   = "${machine} good, the house is still warming up"
    does   = "wrong"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "explain-normal"
  }
  mode "cold-snap" {
    name   = "${machine} good, but it is colder than it can heat"
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
  name     = "room temperature"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Think of the room one hour ago."
  ask      = "Is the room still cold, or slowly getting warm?"
  option "cold" {
    when  = !mode("household.setback")
    label = "Still cold"
  }
  option "warm" {
    label = "Slowly getting warm"
  }
}

check "story-weather" {
  stage    = "free"
  name     = "weather"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Is it colder outside than usual?"
  option "same" {
    when  = !mode("household.cold-snap")
    label = "No"
  }
  option "cold" {
    label = "Yes"
  }
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
  act      = "Slide the air filter out. Hold it up to a light."
  ask      = "Is the filter clean or dirty?"
  option "clean" {
    when  = !(filter.passes < 0.8)
    label = "Clean"
  }
  option "dirty" {
    mend  = "replace-filter"
    label = "Dirty"
  }
}

check "registers-look" {
  stage    = "free"
  name     = "warm air registers"
  function = "look"
  part     = "registers"
  places   = ["living"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the register in each room. Warm air comes out there."
  ask      = "Are most registers open or closed?"
  option "open" {
    when  = !(registers.passes < 0.8)
    label = "Open"
  }
  option "closed" {
    mend  = "open-registers"
    label = "Closed"
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
  act      = "Find the large grille where room air goes back. Hold a tissue to it."
  ask      = "Is the grille clear or blocked?"
  option "clear" {
    when  = !(return-grille.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-return"
    label = "Blocked"
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
  act      = "Follow each air duct with a light."
  ask      = "How are the ducts? Tight, apart, return duct apart at the ${machine}, or crushed?"
  option "tight" {
    when  = !mode("duct-joints.apart") && !mode("ducts.collapsed")
    label = "Tight"
  }
  option "loose" {
    when  = mode("duct-joints.apart")
    label = "Apart"
  }
  option "return-apart" {
    when  = 1 < 0
    stop  = "ducts"
    label = "Return duct apart at the ${machine}"
  }
  option "bad" {
    label = "Crushed"
  }
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
  ask      = "What do you feel? Strong air, no air, or weak air?"
  option "strong-air" {
    when  = airflow >= 0.7
    label = "Strong air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "weak-air" {
    label = "Weak air"
  }
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
  act      = "After five minutes, feel the air at the farthest register."
  ask      = "What do you feel? Warm air, no air, cold air, or cool air?"
  option "warm-air" {
    when  = airflow >= 0.05 && lit >= 0.5 && !mode("duct-joints.apart")
    label = "Warm air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "cold" {
    when  = lit < 0.5
    label = "Cold air"
  }
  option "cool-air" {
    label = "Cool air"
  }
}

check "hear-rest" {
  stage    = "watch"
  name     = "fans after turning it down"
  function = "look"
  power    = "on"
  call     = "off"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the thermostat down. Wait three minutes."
  ask      = "What do you hear? Both fans silent, or one still running?"
  option "silent" {
    when  = !(inducer.works > 0.1 || blower.works > 0.1)
    label = "Both fans silent"
  }
  option "running" {
    label = "One still running"
  }
}

check "static-m" {
  stage    = "plan"
  name     = "air pressure across the ${machine}"
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
  act      = "Put one gauge hose before the filter. Put the other above the ${machine}."
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
  act      = "Put the gauge hose between the filter and the blower."
}

check "supply-m" {
  stage    = "plan"
  name     = "air pressure above the ${machine}"
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
  act      = "Put the gauge hose above the ${machine}, below the cooling coil."
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
  act      = "Measure the air in the supply duct and in the return duct. Subtract the two."
  caution  = "Hot duct. Keep fingers off bare metal."
}

check "blower-wheel-look" {
  stage    = "plan"
  name     = "look of the blower wheel"
  function = "look"
  part     = "blower-wheel"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look between the blades with a light."
  ask      = "Are the blades clean or dirty?"
  option "clean" {
    when  = !mode("blower-wheel.dirty")
    label = "Clean"
  }
  option "dirty" {
    label = "Dirty"
  }
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
  act      = "Hold the shaft. Try to turn the wheel on it."
  caution  = "Sharp blades. The power stays off."
  ask      = "Is the wheel tight or loose?"
  option "tight" {
    when  = !mode("blower-wheel.loose")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "coil-look" {
  stage    = "plan"
  name     = "look of the cooling coil"
  function = "look"
  part     = "coil"
  places   = ["coil-box"]
  power    = "off"
  hands_in = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look up at the fins with a mirror."
  ask      = "Is the underside of the coil clean or dirty?"
  option "clean" {
    when  = !mode("coil.dirty")
    label = "Clean"
  }
  option "dirty" {
    label = "Dirty"
  }
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
  ask      = "What do you feel? Warm air, no air, or cool air?"
  option "warm-air" {
    when  = lit > 0.5 && airflow > 0.05
    label = "Warm air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "cool-air" {
    label = "Cool air"
  }
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
  act      = "Measure the air in the supply duct and in the return duct. Subtract the two."
  caution  = "Hot duct. Keep fingers off bare metal."
}

repair "open-registers" {
  name    = "open the warm air registers"
  part    = "registers"
  kind    = "open"
  minutes = q("3..10 min", "from memory")
  confirm = "registers-look"
  step {
    act   = "Open every register. Move furniture away from them."
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
    act   = "Take away whatever covers the return grille."
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
  note    = "A filter that is too fine lets too little air through an old blower."
  step {
    act    = "Turn the thermostat down. Slide the old filter out."
    power  = "on"
    places = ["filter-slot"]
  }
  step {
    act    = "Slide the new one in. Its arrow points toward the ${machine}."
    power  = "on"
    places = ["filter-slot"]
  }
}

repair "explain-normal" {
  name    = "wait, or lower the night temperature less"
  part    = "household"
  kind    = "set"
  minutes = q("0..5 min", "from memory")
  note    = "The ${machine} is good. On a cold day it takes hours to warm the house."
  step {
    act   = "Leave the set temperature where it is for three hours."
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
    act    = "Brush each blade. Leave the balance clips on."
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
    act    = "Turn the flat side of the shaft to the screw."
    places = ["lower-bay"]
  }
  step {
    act    = "Tighten the screw. Spin the wheel by hand to test it."
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
  name     = "highest air temperature rise"
  unit     = "dF"
  possible = between(30, 110, "common practice, no source")
  ask      = "What is the highest air temperature rise, in degrees?"
}

plate "static" {
  name     = "highest air pressure"
  unit     = "inH2O"
  possible = between(0.1, 2, "common practice, no source")
  ask      = "What is the highest static pressure, in inches of water?"
}

stop "coil" {
  say  = "The cooling coil holds refrigerant."
  call = "a cooling technician"
  tell = "Tell them the pressure above the ${machine}. The filter is clean."
  now  = "Leave it off until air gets through."
}

stop "ducts" {
  say  = "The ducts need an installer."
  call = "a duct installer"
  tell = "Tell them where the duct is apart or too small."
  now  = "A return duct apart near the ${machine} pulls in exhaust. Leave it off."
}
