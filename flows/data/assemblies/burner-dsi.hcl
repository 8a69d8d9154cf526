# A spark lights the main burner itself. The control makes ten thousand volts and more: nobody measures them, everybody listens and looks.
# A meter near a sparking cable shows nonsense.
assembly "burner-dsi" {
  step   = "trial"
  burner = "burner"
  board  = "board"
}

part "spark-gen" {
  kind  = "load"
  name  = "spark generator on the ${board}"
  place = "upper-bay"
  look  = "black block on the ${board}, one thick cable"
  ports = { a = "SPK", b = "C" }
  ohms  = q("700 ohm", 300, 1500, "from memory")
  works = q("16 V", "common practice, no source")
}

part "spark-lead" {
  kind  = "thing"
  name  = "spark cable"
  place = "upper-bay"
  look  = "thick cable from the ${board} to the electrode"
  mode "off" {
    name   = "spark cable off at one end"
    does   = "wrong"
    rate   = q("2 x", "common practice, no source")
    repair = "refit-spark-lead"
  }
  mode "cracked" {
    name   = "spark cable cracked, it sparks to metal"
    does   = "wrong"
    rate   = q("2 x", "common practice, no source")
    repair = "replace-spark-lead"
  }
}

part "electrode" {
  kind  = "thing"
  name  = "spark electrode"
  place = "burner-box"
  look  = "steel pin in white ceramic at the ${burner}"
  mode "cracked" {
    name   = "ceramic of the spark electrode cracked"
    does   = "wrong"
    rate   = q("4 x", "common practice, no source")
    repair = "replace-electrode"
  }
  mode "gap" {
    name   = "gap of the spark electrode too wide"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "set-electrode"
  }
}

signal "sparks" {
  unit = "x"
  is   = spark-gen.works * electrode.value * (spark-lead.ok && electrode.ok ? 1 : 0)
}

signal "lit" {
  unit = "x"
  is   = gas-flow > 0.5 && (at("trial") ? sparks > 0.5 && burners.passes > 0.2 : reached("run")) ? 1 : 0
}

point "glow-out" {
  net   = "SPK"
  place = "upper-bay"
  name  = "spark cable at the ${board}"
  where = "thick cable on the black block"
}

check "hear-spark" {
  stage    = "watch"
  name     = "sound of the spark"
  function = "look"
  part     = "spark-gen"
  power    = "on"
  call     = "on"
  at       = "${step}"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Listen at the burners as a call begins."
  caution  = "Over ten thousand volts. Stay away with a pacemaker."
  ask      = "What do you hear? Ticking or silent?"
  option "ticking" {
    when = spark-gen.works > 0.5
    label = "Ticking"
  }
  option "silent" { label = "Silent" }
}

check "see-spark" {
  stage    = "watch"
  name     = "place of the spark"
  function = "look"
  part     = "electrode"
  power    = "on"
  call     = "on"
  at       = "${step}"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Darken the room, look through the sight window."
  caution  = "Over ten thousand volts. Touch nothing."
  ask      = "Where is the spark at the ${burner}? Right place, wrong place, or none?"
  option "right-place" {
    when = sparks > 0.5
    label = "Right place"
  }
  option "wrong-place" {
    when = spark-gen.works > 0.5 && electrode.value > 0.5
    label = "Wrong place"
  }
  option "none" { label = "None" }
}

check "spark-lead-look" {
  stage    = "plan"
  name     = "spark cable"
  function = "look"
  part     = "spark-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the thick cable from end to end."
  ask      = "How is the spark cable? Good, loose, or cracked?"
  option "good" {
    when = spark-lead.ok
    label = "Good"
  }
  option "loose" {
    when = mode("spark-lead.off")
    label = "Loose"
  }
  option "cracked" { label = "Cracked" }
}

check "electrode-look" {
  stage    = "plan"
  name     = "spark electrode, by eye"
  function = "look"
  part     = "electrode"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the white ceramic from all sides."
  caution  = "The white ceramic breaks easily."
  ask      = "Is the white ceramic of the electrode good or cracked?"
  option "good" { when = !mode("electrode.cracked") }
  option "cracked" {}
}

check "electrode-gap" {
  stage    = "plan"
  name     = "gap of the spark electrode"
  function = "look"
  part     = "electrode"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Compare the gap with the drawing: about an eighth inch."
  ask      = "Is the gap as in the drawing? The same or different?"
  option "same" {
    when = !mode("electrode.gap")
    label = "The same"
  }
  option "different" { label = "Different" }
}


repair "refit-spark-lead" {
  name    = "refit the spark cable"
  part    = "spark-lead"
  kind    = "refit"
  minutes = q("5..10 min", "from memory")
  confirm = "spark-lead-look"
  step {
    act    = "Push both ends of the spark cable home, tug."
    wire   = "glow-out"
    places = ["upper-bay"]
  }
}

repair "replace-spark-lead" {
  name    = "replace the spark cable"
  part    = "spark-lead"
  kind    = "replace"
  price   = q("10..30 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["length", "ends", "heat rating"]
  causes  = ["rules"]
  confirm = "spark-lead-look"
  step {
    act    = "Pull the old cable off both ends."
    wire   = "glow-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Push the new one on, clear of metal."
    wire   = "glow-out"
    places = ["upper-bay"]
  }
}

repair "replace-electrode" {
  name    = "replace the spark electrode"
  part    = "electrode"
  kind    = "replace"
  price   = q("15..50 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["length", "bend", "mount"]
  causes  = ["spark-lead-look", "rules"]
  confirm = "electrode-look"
  step {
    act    = "Pull the spark cable off the electrode."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act     = "Take out its screw, draw it out."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Fit the new one, compare the gap with the drawing."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Push the spark cable back on."
    places = ["burner-box", "upper-bay"]
  }
}

repair "set-electrode" {
  name    = "set the gap of the spark electrode"
  part    = "electrode"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  causes  = ["electrode-look"]
  confirm = "electrode-gap"
  step {
    act     = "Loosen its screw, set the tip as in the drawing."
    caution = "Do not bend the white ceramic. It breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Tighten the screw, measure the gap again."
    places = ["burner-box", "upper-bay"]
  }
}
