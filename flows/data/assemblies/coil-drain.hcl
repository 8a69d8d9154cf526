# The drain pan of a cooling coil, whose float switch breaks R.
assembly "coil-drain" { machine = "furnace" }

place "pan" {
  name   = "coil drain pan"
  where  = "under the cooling coil, on top of the ${machine}"
  within = "room"
}

part "drain" {
  kind    = "passage"
  name    = "coil drain"
  place   = "pan"
  look    = "plastic pipe out of the coil drain pan"
  mode "blocked" {
    name   = "coil drain blocked, pan full"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "clear-drain"
  }
}

part "float-switch" {
  kind    = "contact"
  name    = "float switch"
  place   = "pan"
  look    = "small switch with a float, in the drain pan"
  ports   = { a = "R", b = "R-float" }
  closes  = drain.passes > 0.5
  safety  = true
  mode "stuck" {
    name   = "float switch stuck up"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-float-switch"
  }
}

part "float-lead" {
  kind  = "wire"
  name  = "lead of the float switch"
  place = "pan"
  look  = "wire on the float switch"
  ports = { a = "R-float", b = "R-fl2" }
  mode "off" {
    name   = "lead of the float switch off"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "refit-float-lead"
  }
}

point "float-in" {
  net   = "R"
  place = "pan"
  name  = "float switch, side of the ${machine}"
  where = "lead that comes from the ${machine}"
}

point "float-out" {
  net   = "R-float"
  place = "pan"
  name  = "float switch, other side"
  where = "second lead of the float switch"
}

point "float-a" {
  net   = "float-switch.a"
  place = "pan"
  name  = "first lead of the float switch"
  where = "lifted"
}

point "float-b" {
  net   = "float-switch.b"
  place = "pan"
  name  = "second lead of the float switch"
  where = "other lead"
}

point "float-far" {
  net   = "R-fl2"
  place = "splice"
  name  = "wire from the float switch"
  where = "before the R splice"
}

check "pan-look" {
  stage    = "free"
  name     = "coil drain pan"
  function = "look"
  part     = "drain"
  places   = ["pan"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Shine a light into the drain pan."
  ask      = "The coil drain pan: dry, or wet?"
  option "dry" { when = !(drain.passes < 0.5) }
  option "wet" {
  }
}

check "float-v" {
  stage    = "plan"
  name     = "across the float switch"
  function = "volts-ac"
  part     = "float-switch"
  red      = "float-in"
  black    = "float-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["pan"]
  hazard   = "low"
  instead  = "float-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts, tips held still."
}

check "float-c" {
  stage    = "plan"
  name     = "after the float switch"
  function = "volts-ac"
  part     = "float-lead"
  red      = "float-far"
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

check "float-ohms" {
  stage    = "plan"
  name     = "float switch"
  function = "ohms"
  part     = "float-switch"
  red      = "float-a"
  black    = "float-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["pan"]
  lift     = ["float-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the ohms, fingers off the tips."
}

repair "clear-drain" {
  name    = "clear the coil drain"
  part    = "drain"
  kind    = "clean"
  minutes = q("15..60 min", "from memory")
  confirm = "pan-look"
  step {
    act   = "Take up the water in the pan with a cloth."
    power = "off"
  }
  step {
    act     = "Clear the pipe with a brush or suction."
    caution = "Wet floor and power do not mix."
    level   = "warning"
    power   = "off"
  }
  step {
    act   = "Pour in a cup of water and watch it run."
    power = "off"
  }
}

repair "refit-float-lead" {
  name    = "refit the lead of the float switch"
  part    = "float-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "float-c"
  step {
    act  = "Join the loose lead with a twist cap."
    wire = "float-out"
  }
}

repair "replace-float-switch" {
  name    = "replace the float switch"
  part    = "float-switch"
  kind    = "replace"
  price   = q("12..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["low voltage", "opens when wet", "mount"]
  causes  = ["pan-look"]
  confirm = "float-ohms"
  step {
    act  = "Lift one lead at a time."
    wire = "float-in"
  }
  step {
    act  = "Fit the new switch level, join both leads."
    wire = "float-out"
  }
}
