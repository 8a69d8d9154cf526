# A spark lights a pilot, a rod in the pilot proves it, the main valve opens. The module gets its 24 volts through every safety switch,
# from the net ${th}; with the call gone it is dark.
assembly "pilot-intermittent" {
  machine = "furnace"
  th      = "TH"
}

part "board" {
  kind     = "board"
  name     = "ignition module"
  place    = "upper-bay"
  look     = "box beside the gas valve, a thick cable and a row of spades"
  ports    = { r = "${th}", c = "C", fs = "FS", earth = "CHASSIS" }
  on       = q("16 V", "common practice, no source")
  ohms     = q("400 ohm", 150, 1200, "from memory")
  flame_at = q("1 uA", "common practice, no source")
  senses   = volts("LB", "CHASSIS") > board.line_seen && volts("C", "CHASSIS") < board.common_near && ground-run.ok && !mode("burner-ground.poor")
  numbers  = { line_seen = q("80 V", "common practice, no source"), common_near = q("2 V", "common practice, no source") }
  output "IGN" {
    from = "${th}"
    to   = "SPK"
  }
  output "PV" {
    from = "${th}"
    to   = "PV"
  }
  output "GV" {
    from = "${th}"
    to   = "GV"
  }
  mode "dead" {
    name   = "ignition module dead with power present"
    does   = "dead"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "igniter-output" {
    name   = "ignition module makes no spark"
    does   = "output-dead"
    at     = "IGN"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "pilot-output" {
    name   = "ignition module gives the pilot valve nothing"
    does   = "output-dead"
    at     = "PV"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "gas-output" {
    name   = "ignition module gives the main valve nothing"
    does   = "output-dead"
    at     = "GV"
    rate   = q("2 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "flame-input" {
    name   = "ignition module does not sense the flame current"
    does   = "sense-dead"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "flame-always" {
    name   = "ignition module sees a flame that is not there"
    does   = "sense-stuck"
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-board"
  }
}


part "pv-lead" {
  kind  = "wire"
  name  = "pilot valve lead"
  place = "upper-bay"
  look  = "wire from the module to terminal P V"
  ports = { a = "PV", b = "PV-1" }
  mode "off" {
    name   = "pilot valve lead off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pv-lead"
  }
}

part "pilot-valve" {
  kind  = "load"
  name  = "pilot valve"
  place = "upper-bay"
  look  = "first coil of the gas valve, terminal P V"
  ports = { a = "PV-1", b = "GV-2" }
  ohms  = q("90 ohm", 40, 150, "from memory")
  cold  = q("60 ohm", 20, 100, "from memory")
  works = q("18 V", "common practice, no source")
  stop  = "gas-train"
  mode "coil-open" {
    name   = "coil of the pilot valve open"
    does   = "open"
    rate   = q("1.5 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "stuck" {
    name   = "pilot valve does not open though powered"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "call-pilot"
  }
}

part "pilot-burner" {
  kind  = "passage"
  name  = "pilot burner"
  place = "burner-box"
  look  = "small burner with a hood, electrode and thin gas tube"
  mode "lint" {
    name   = "lint at the pilot burner, small yellow flame"
    does   = "factor"
    factor = q("0.35 x", 0.15, 0.48, "common practice, no source")
    rate   = q("5 x", "common practice, no source")
    repair = "brush-pilot"
  }
}

part "pilot-orifice" {
  kind  = "passage"
  name  = "pilot orifice"
  place = "burner-box"
  look  = "inside the pilot burner, not seen"
  stop  = "gas-train"
  mode "blocked" {
    name   = "pilot orifice blocked"
    does   = "factor"
    factor = q("0.05 x", 0, 0.1, "common practice, no source")
    rate   = q("5 x", "common practice, no source")
    repair = "call-pilot"
  }
}

# how much pilot flame there is, 0 to 1
signal "pilot" {
  unit = "x"
  is   = gas-supply.passes * gas-cock.passes * valve-switch.passes * pilot-valve.works > 0.3 && (at("pilot") ? sparks > 0.5 : reached("trial")) && pilot-orifice.passes > 0.2 ? pilot-burner.passes : 0
}

control "heat" {
  part  = "board"
  tries = 1
  step "flame-check" {
    drive   = []
    needs   = board.flame < 0.5
    on_fail = "wait"
  }
  step "pilot" {
    drive   = ["IGN", "PV"]
    needs   = board.flame > 0.5
    within  = q("90 s", "common practice, no source")
    on_fail = "lockout"
  }
  step "trial" {
    drive   = ["PV", "GV"]
    needs   = board.flame > 0.5
    within  = q("10 s", "common practice, no source")
    on_fail = "retry"
  }
  step "run" {
    drive   = ["PV", "GV"]
    needs   = board.flame > 0.5
    within  = q("60 s", "common practice, no source")
    on_fail = "retry"
  }
  step "heating" {
    drive   = ["PV", "GV"]
    needs   = board.flame > 0.5
    within  = q("240 s", "common practice, no source")
    on_fail = "retry"
  }
  step "steady" {
    drive   = ["PV", "GV"]
    needs   = board.flame > 0.5
    within  = q("600 s", "common practice, no source")
    on_fail = "retry"
  }
}

point "module-th" {
  net   = "${th}"
  place = "upper-bay"
  name  = "24 volt spade of the ignition module"
  where = "marked twenty-four V or T H"
}

point "pilot-out" {
  net   = "PV"
  place = "upper-bay"
  name  = "pilot valve spade of the ignition module"
  where = "marked P V"
}

point "pilot-1" {
  net   = "PV-1"
  place = "upper-bay"
  name  = "gas valve, terminal P V"
  where = "wire from the module"
}

point "pilot-a" {
  net   = "pilot-valve.a"
  place = "upper-bay"
  name  = "gas valve terminal P V, wire off"
  where = "first coil"
}

point "pilot-b" {
  net   = "pilot-valve.b"
  place = "upper-bay"
  name  = "gas valve common of the pilot coil, wire off"
  where = "terminal marked P V and M V"
}

check "see-pilot" {
  stage    = "watch"
  name     = "pilot flame"
  function = "look"
  part     = "pilot-burner"
  power    = "on"
  call     = "on"
  at       = "pilot"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Watch the pilot as the ticking starts."
  ask      = "How is the pilot? Blue, no flame, or short and yellow?"
  option "blue-flame" {
    when = pilot > 0.7
    label = "Blue"
  }
  option "no-flame" {
    when = pilot < 0.05
    label = "No flame"
  }
  option "short-flame" { label = "Short and yellow" }
}

check "module-v" {
  stage    = "plan"
  name     = "24 volts at the ignition module"
  function = "volts-ac"
  part     = "board"
  red      = "module-th"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep the leads off the spark cable, then read."
}

check "pilot-out-v" {
  stage    = "plan"
  name     = "module output to the pilot valve"
  function = "volts-ac"
  part     = "board"
  red      = "pilot-out"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "pilot"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "see-pilot"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while it sparks, leads off the cable."
  caution  = "The pilot lights. Keep your face away."
}

check "pilot-1-v" {
  stage    = "plan"
  name     = "volts at the pilot valve"
  function = "volts-ac"
  part     = "pv-lead"
  red      = "pilot-1"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "pilot"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read while it sparks, leads off the cable."
  caution  = "The pilot lights. Keep your face away."
}

check "pilot-ohms" {
  stage    = "plan"
  name     = "coil of the pilot valve"
  function = "ohms"
  part     = "pilot-valve"
  red      = "pilot-a"
  black    = "pilot-b"
  unit     = "ohm"
  limit    = between(15, 300, "from memory")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["pilot-a", "pilot-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
  caution  = "Move wires only. Leave gas fittings alone."
}

check "pilot-look" {
  stage    = "plan"
  name     = "pilot burner, by eye"
  function = "look"
  part     = "pilot-burner"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look for lint and webs round the pilot hood."
  ask      = "Is the pilot burner clean, or dirty?"
  option "clean" { when = pilot-burner.ok }
  option "dirty" {}
}

repair "brush-pilot" {
  name    = "brush the lint off the pilot burner"
  part    = "pilot-burner"
  kind    = "clean"
  minutes = q("10..20 min", "from memory")
  confirm = "see-pilot"
  step {
    act     = "Wait until it is cold. Brush round the hood, softly."
    caution = "Hot metal before. Unscrew nothing on the gas side."
    level   = "warning"
    places  = ["burner-box", "upper-bay"]
  }
}

repair "call-pilot" {
  name    = "call licensed help: no gas comes to the pilot"
  part    = "pilot-orifice"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("0..10 min", "from memory")
  confirm = "see-pilot"
}

repair "refit-pv-lead" {
  name    = "refit the pilot valve lead"
  part    = "pv-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "pilot-1-v"
  step {
    act     = "Push the wire on terminal P V, tug."
    caution = "Move the wire only. Touch no gas fitting."
    level   = "warning"
    wire    = "pilot-1"
    places  = ["upper-bay"]
  }
}

repair "replace-board" {
  name    = "replace the ignition module"
  part    = "board"
  kind    = "replace"
  price   = q("90..250 money", "from memory")
  minutes = q("30..60 min", "from memory")
  match   = ["part number or approved substitute", "gas kind", "trial time", "lock-out or retry"]
  causes  = ["valve-ohms", "spark-lead-look", "rules"]
  confirm = "see-pilot"
  note    = "Only when its inputs are proved present and its output proved missing."
  step {
    act     = "Take a photo of every wire and the cable."
    caution = "Never change a module whose inputs were not proved."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the wires one at a time, mark to mark."
    wire   = "module-th"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the pilot valve wire."
    wire   = "pilot-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the main valve wire."
    wire   = "gas-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Push the spark cable on the new module."
    wire   = "glow-out"
    places = ["upper-bay"]
  }
}
