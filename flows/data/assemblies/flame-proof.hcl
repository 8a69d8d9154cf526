# The flame is proved by the current that it rectifies.
assembly "flame-proof" {}

part "flame-rod" {
  kind      = "rod"
  name      = "flame rod"
  place     = "burner-box"
  look      = "thin steel rod in white ceramic, with one wire"
  ports     = { rod = "ROD", burner = "BURNER" }
  microamps = q("5 uA", 2, 8, "T05")
  flame     = flame-at-rod
  mode "dirty" {
    name   = "flame rod dirty"
    does   = "dirty"
    factor = q("0.12 x", 0.02, 0.2, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "clean-flame-rod"
  }
  mode "cracked" {
    name   = "ceramic of the flame rod cracked"
    does   = "leak"
    ohms   = q("100000 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-flame-rod"
  }
  mode "bent" {
    name   = "flame rod bent out of the flame"
    does   = "dirty"
    factor = q("0.05 x", 0.005, 0.15, "common practice, no source")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-flame-rod"
  }
}

part "flame-lead" {
  kind  = "wire"
  name  = "flame rod wire"
  place = "upper-bay"
  look  = "single wire from the flame rod to the board"
  ports = { a = "FS", b = "ROD" }
  mode "open" {
    name   = "flame rod wire broken or off"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "refit-flame-lead"
  }
}

part "burner-ground" {
  kind  = "wire"
  name  = "burner ground"
  place = "upper-bay"
  look  = "screw or green wire from the burners to the furnace metal"
  ports = { a = "BURNER", b = "CHASSIS" }
  mode "corroded" {
    name   = "burner ground open or rusty"
    does   = "resist"
    ohms   = q("90000000 ohm", "own")
    rate   = q("3 x", "common practice, no source")
    repair = "clean-burner-ground"
  }
  mode "poor" {
    name   = "burner ground poor"
    does   = "resist"
    ohms   = q("2600 ohm", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "clean-burner-ground"
  }
}

signal "flame-at-rod" {
  unit = "x"
  is   = lit * crossover.passes * (burners.passes > 0.5 ? 1 : 0)
}

point "flame-pin" {
  net   = "FS"
  place = "upper-bay"
  name  = "flame terminal of the board"
  where = "marked for the flame rod"
}

point "rod-end" {
  net   = "ROD"
  place = "upper-bay"
  name  = "flame rod connector"
  where = "where the single wire plugs on"
}

point "rod-a" {
  net   = "flame-rod.rod"
  place = "upper-bay"
  name  = "connector of the flame rod"
  where = "the metal of the rod"
}

point "lead-a" {
  net   = "flame-lead.a"
  place = "upper-bay"
  name  = "board end of the flame rod wire"
  where = "pulled off the board"
}

point "lead-b" {
  net   = "flame-lead.b"
  place = "upper-bay"
  name  = "rod end of the flame rod wire"
  where = "pulled off the rod"
}

point "burner-metal" {
  net   = "BURNER"
  place = "upper-bay"
  name  = "bare metal of a burner"
  where = "scratch a bright spot"
}

check "see-hold" {
  stage    = "watch"
  name     = "flame after ten seconds"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the flame stays for ten seconds"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-burners=no-flame"]
  act      = "When you see a flame, count to ten."
  ask      = "What does the flame do? It stays, it goes out, or there is no flame?"
  option "flame-stays" {
    when  = lit > 0.5 && board.flame
    seen  = ["held"]
    label = "It stays"
  }
  option "short-flame" {
    when  = lit > 0.5
    seen  = ["out"]
    label = "It goes out"
  }
  option "no-flame" {
    seen   = ["dark"]
    missed = true
    label  = "There is no flame"
  }
}

check "flame-current" {
  stage    = "plan"
  name     = "flame current"
  function = "microamps-dc"
  part     = "flame-rod"
  unit     = "uA"
  limit    = atleast(1, "T05")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["see-flame=no-flame", "see-hold=no-flame"]
  act      = "Stand back. Read the meter while the flame burns."
  caution  = "Power is on. Touch nothing. Move the meter only with the power off."
}

check "rod-ohms" {
  stage    = "plan"
  name     = "flame rod to burner"
  function = "ohms"
  part     = "flame-rod"
  red      = "rod-a"
  black    = "burner-metal"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["rod-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Touch only metal, not the white ceramic. Read the ohms."
}

check "lead-ohms" {
  stage    = "plan"
  name     = "flame rod wire"
  function = "ohms"
  part     = "flame-lead"
  red      = "lead-a"
  black    = "lead-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["lead-a", "lead-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Bend the wire gently while you read the ohms."
}

check "burner-ground-ohms" {
  stage    = "plan"
  name     = "burner to furnace metal"
  function = "ohms"
  part     = "burner-ground"
  red      = "burner-metal"
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
  act      = "Scratch both spots bright. Then read the ohms."
}

check "rod-look" {
  stage    = "plan"
  name     = "look of the flame rod"
  function = "look"
  part     = "flame-rod"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the metal rod and its white ceramic."
  ask      = "How is the rod? Clean, dirty, cracked, or out of place?"
  option "clean" {
    when  = !mode("flame-rod.dirty") && !mode("flame-rod.cracked") && !mode("flame-rod.bent")
    label = "Clean"
  }
  option "dirty" {
    when  = mode("flame-rod.dirty")
    mend  = "clean-flame-rod"
    label = "Dirty"
  }
  option "cracked" {
    when  = mode("flame-rod.cracked")
    twice = true
    label = "Cracked"
  }
  option "wrong-place" {
    label = "Out of place"
  }
}

check "rod-place" {
  stage    = "plan"
  name     = "place of the flame rod"
  function = "look"
  part     = "flame-rod"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look along the rod toward the burner."
  ask      = "Is the tip of the rod over a burner?"
  option "right-place" {
    when  = !mode("flame-rod.bent")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
}

repair "refit-flame-lead" {
  name    = "put in a new flame rod wire"
  part    = "flame-lead"
  kind    = "refit"
  price   = q("3..15 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["heat rating", "connector size"]
  confirm = "lead-ohms"
  step {
    act    = "Pull the wire off the rod and off the board."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act    = "Put on a wire made for high heat. Push both ends all the way on."
    wire   = "flame-pin"
    places = ["upper-bay"]
  }
}

repair "clean-flame-rod" {
  name    = "clean the flame rod"
  part    = "flame-rod"
  kind    = "clean"
  price   = q("0..5 money", "from memory")
  minutes = q("10..20 min", "from memory")
  causes  = ["rod-look", "burner-look"]
  confirm = "flame-current"
  note    = "If it is low again within a season, replace the rod. Then look for the cause."
  step {
    act    = "Pull the wire off the flame rod."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the rod's one screw. Pull the rod out."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Rub the metal bright with fine steel wool."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Put the rod and its wire back. Do not touch the ceramic."
    wire   = "rod-end"
    places = ["burner-box", "upper-bay"]
  }
}

repair "set-flame-rod" {
  name    = "put the flame rod back into the flame"
  part    = "flame-rod"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  confirm = "rod-place"
  step {
    act     = "Loosen the rod's screw. Turn the rod over the burner."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Tighten the screw. Compare with the diagram."
    places = ["burner-box", "upper-bay"]
  }
}

repair "clean-burner-ground" {
  name    = "clean and tighten the burner ground"
  part    = "burner-ground"
  kind    = "tighten"
  minutes = q("10..20 min", "from memory")
  causes  = ["flame-current"]
  confirm = "burner-ground-ohms"
  step {
    act    = "Take out the ground screw."
    wire   = "burner-metal"
    places = ["upper-bay"]
  }
  step {
    act    = "Rub both metals bright. Tighten the screw."
    places = ["upper-bay"]
  }
}

repair "replace-flame-rod" {
  name    = "replace the flame rod"
  part    = "flame-rod"
  kind    = "replace"
  price   = q("10..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["length", "bend", "mounting"]
  causes  = ["burner-ground-ohms"]
  confirm = "flame-current"
  step {
    act    = "Pull the wire off the flame rod."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the rod's screw. Pull the rod out."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Put the new rod in the same place."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Push the wire back on."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
}
