# High limit and roll-out switches in series, watched by the board.
assembly "safety-string" { machine = "furnace" }

part "limit-lead" {
  kind  = "wire"
  name  = "wire to the high limit"
  place = "upper-bay"
  look  = "wire from the board plug to the high limit"
  ports = { a = "R", b = "LIM-in" }
  mode "off" {
    name   = "wire to the high limit off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-limit-lead"
  }
}

part "high-limit" {
  kind    = "contact"
  name    = "high limit"
  place   = "upper-bay"
  look    = "small round switch or probe on the heat exchanger wall"
  ports   = { a = "LIM-in", b = "LIM-out" }
  set     = q("200 degF", "T19")
  trips   = reached("steady") && limit-heat > high-limit.set
  reset   = "auto"
  safety  = true
  numbers = { room = q("70 degF", "common practice, no source"), gain = q("1.45 x", "own") }
  mode "open" {
    name   = "high limit switch broken"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "early" {
    name   = "high limit switch opens far too early"
    does   = "set"
    set    = q("140 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "burnt" {
    name   = "contacts of the high limit burned"
    does   = "resist"
    ohms   = q("60 ohm", 20, 120, "own")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-limit"
  }
}

part "rollout-left" {
  kind   = "contact"
  name   = "left roll-out switch"
  place  = "upper-bay"
  look   = "small round switch with a button, left of the burners"
  ports  = { a = "LIM-out", b = "RO-mid" }
  trips  = flame-outside > 0.5
  reset  = "manual"
  safety = true
  stop   = "roll-out"
  mode "tripped" {
    name   = "left roll-out switch open"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

part "rollout-right" {
  kind   = "contact"
  name   = "right roll-out switch"
  place  = "upper-bay"
  look   = "small round switch with a button, right of the burners"
  ports  = { a = "RO-mid", b = "RO-out" }
  reset  = "manual"
  safety = true
  stop   = "roll-out"
  mode "tripped" {
    name   = "right roll-out switch open"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

part "string-lead" {
  kind  = "wire"
  name  = "wire from the roll-out switches to the board"
  place = "upper-bay"
  look  = "wire into the large plug of the board"
  ports = { a = "RO-out", b = "HS" }
  mode "off" {
    name   = "wire from the roll-out switches off, or its pin pushed out"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-string-lead"
  }
}

signal "limit-heat" {
  unit = "degF"
  is   = high-limit.room + high-limit.gain * rise
}

point "limit-in" {
  net   = "LIM-in"
  place = "upper-bay"
  name  = "first high limit terminal"
  where = "with the wire from the board"
}

point "limit-out" {
  net   = "LIM-out"
  place = "upper-bay"
  name  = "second high limit terminal"
  where = "with the wire to the roll-out switches"
}

point "limit-a" {
  net   = "high-limit.a"
  place = "upper-bay"
  name  = "first terminal of the high limit"
  where = "with its wire pulled off"
}

point "limit-b" {
  net   = "high-limit.b"
  place = "upper-bay"
  name  = "second terminal of the high limit"
  where = "the other terminal"
}

point "roll-mid" {
  net   = "RO-mid"
  place = "upper-bay"
  name  = "wire between the roll-out switches"
  where = "from the left one to the right one"
}

point "roll-out-end" {
  net   = "RO-out"
  place = "upper-bay"
  name  = "last terminal of the right roll-out switch"
  where = "with the wire to the board plug"
}

point "roll-left-a" {
  net   = "rollout-left.a"
  place = "upper-bay"
  name  = "first terminal of the left roll-out switch"
  where = "with its wire pulled off"
}

point "roll-left-b" {
  net   = "rollout-left.b"
  place = "upper-bay"
  name  = "second terminal of the left roll-out switch"
  where = "the other terminal"
}

point "roll-right-a" {
  net   = "rollout-right.a"
  place = "upper-bay"
  name  = "first terminal of the right roll-out switch"
  where = "with its wire pulled off"
}

point "roll-right-b" {
  net   = "rollout-right.b"
  place = "upper-bay"
  name  = "second terminal of the right roll-out switch"
  where = "the other terminal"
}

point "string-end" {
  net   = "HS"
  place = "upper-bay"
  name  = "limit pin of the board plug"
  where = "large plug of the board, limit input"
}

check "see-limit" {
  stage    = "watch"
  name     = "burner after ten minutes"
  function = "look"
  part     = "high-limit"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("10 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame"]
  act      = "Let it run for ten minutes. Watch the flame."
  ask      = "Is the burner still burning or out?"
  option "flame-stays" {
    when  = lit > 0.5
    label = "Still burning"
  }
  option "short-flame" {
    label = "Out"
  }
}

check "limit-in-c" {
  stage    = "plan"
  name     = "volts going to the high limit"
  function = "volts-ac"
  part     = "limit-lead"
  red      = "limit-in"
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

check "limit-v" {
  stage    = "plan"
  name     = "volts across the high limit"
  function = "volts-ac"
  part     = "high-limit"
  red      = "limit-in"
  black    = "limit-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "limit-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "limit-v-hot" {
  stage    = "plan"
  name     = "volts across the hot high limit"
  function = "volts-ac"
  part     = "high-limit"
  red      = "limit-in"
  black    = "limit-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "steady"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("12 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts right after the burner goes out."
  caution  = "Hot metal close by."
}

check "roll-left-v" {
  stage    = "plan"
  name     = "volts across the left roll-out switch"
  function = "volts-ac"
  part     = "rollout-left"
  red      = "limit-out"
  black    = "roll-mid"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "roll-left-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "roll-right-v" {
  stage    = "plan"
  name     = "volts across the right roll-out switch"
  function = "volts-ac"
  part     = "rollout-right"
  red      = "roll-mid"
  black    = "roll-out-end"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "roll-right-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "string-end-c" {
  stage    = "plan"
  name     = "volts at the limit pin of the board"
  function = "volts-ac"
  part     = "string-lead"
  red      = "string-end"
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
  act      = "Push the tip into the back of the plug. Then read the volts."
}

check "limit-ohms" {
  stage    = "plan"
  name     = "high limit, cold"
  function = "ohms"
  part     = "high-limit"
  red      = "limit-a"
  black    = "limit-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["limit-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "roll-left-ohms" {
  stage    = "plan"
  name     = "left roll-out switch"
  function = "ohms"
  part     = "rollout-left"
  red      = "roll-left-a"
  black    = "roll-left-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["roll-left-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "roll-right-ohms" {
  stage    = "plan"
  name     = "right roll-out switch"
  function = "ohms"
  part     = "rollout-right"
  red      = "roll-right-a"
  black    = "roll-right-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["roll-right-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "roll-look" {
  stage    = "plan"
  name     = "buttons of the roll-out switches"
  function = "look"
  part     = "rollout-left"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Only look at the two roll-out switches. Do not press them."
  ask      = "Are their buttons flush or popped out?"
  option "not-popped" {
    when  = !(!rollout-left.closed || !rollout-right.closed)
    label = "Flush"
  }
  option "popped" {
    stop  = "roll-out"
    label = "Popped out"
  }
}

check "roll-marks" {
  stage    = "plan"
  name     = "marks at the roll-out switches"
  function = "look"
  part     = "rollout-left"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Look for soot and burned paint around the roll-out switches."
  ask      = "Is the metal clean, or sooty or burned?"
  option "clean" {
    when  = !mode("exchanger.plugged")
    label = "Clean"
  }
  option "sooty" {
    stop  = "roll-out"
    label = "Sooty or burned"
    also  = ["burnt"]
  }
}

check "string-look" {
  stage    = "plan"
  name     = "wires of the limit and roll-out switches"
  function = "look"
  part     = "limit-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire from the switches to the plug."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !(mode("limit-lead.off") || mode("string-lead.off"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "again-limit" {
  stage    = "restart"
  name     = "burner ten minutes after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("10 min", "common practice, no source")
  skill    = "clear"
  act      = "Let it run for ten minutes. Stay near it."
  ask      = "Is the burner still burning or out?"
  option "flame-stays" {
    when  = lit > 0.5
    label = "Still burning"
  }
  option "short-flame" {
    label = "Out"
  }
}

repair "refit-limit-lead" {
  name    = "fasten the wire to the high limit"
  part    = "limit-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "limit-in-c"
  step {
    act    = "Push the connector on the first limit terminal. Pull gently to test it."
    wire   = "limit-in"
    places = ["upper-bay"]
  }
}

repair "refit-string-lead" {
  name    = "fasten the wire from the roll-out switches"
  part    = "string-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "string-end-c"
  step {
    act    = "Push the pin into the plug until it clicks."
    wire   = "string-end"
    places = ["upper-bay"]
  }
}

repair "replace-limit" {
  name    = "replace the high limit"
  part    = "high-limit"
  kind    = "replace"
  price   = q("10..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["opening temperature", "length", "shape", "reset"]
  causes  = ["rise-m", "filter-look", "static-m", "blower-cap"]
  confirm = "limit-ohms"
  note    = "Never bypass it. It opened for a reason, so check the airflow."
  step {
    act     = "Pull off one wire. Put it on the new limit switch."
    caution = "Never bypass a limit switch."
    level   = "warning"
    wire    = "limit-in"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "limit-out"
    places = ["upper-bay"]
  }
  step {
    act     = "Fasten the new switch in the same hole."
    caution = "Hot metal and sharp edges."
    level   = "caution"
    places  = ["upper-bay"]
  }
}
