# The drain pan of a cooling coil, whose float switch breaks R.
assembly "coil-drain" { machine = "furnace" }

place "pan" {
  name   = "drain pan"
  where  = "under the cooling coil, on top of the ${machine}"
  within = "room"
}

part "drain" {
  kind  = "passage"
  name  = "cooling coil drain"
  place = "pan"
  look  = "plastic pipe out of the drain pan"
  mode "blocked" {
    name   = "cooling coil drain blocked, pan full"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "clear-drain"
  }
}

part "float-switch" {
  kind   = "contact"
  name   = "float switch"
  place  = "pan"
  look   = "small switch with a float in the drain pan"
  ports  = { a = "R", b = "R-float" }
  closes = drain.passes > 0.5
  safety = true
  mode "stuck" {
    name   = "float switch stuck up"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-float-switch"
  }
}

part "float-lead" {
  kind  = "wire"
  name  = "wire of the float switch"
  place = "pan"
  look  = "the wire on the float switch"
  ports = { a = "R-float", b = "R-fl2" }
  mode "off" {
    name   = "wire of the float switch off"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "refit-float-lead"
  }
}

point "float-in" {
  net   = "R"
  place = "pan"
  name  = "float switch wire from the ${machine}"
  where = "the wire that comes from the ${machine}"
}

point "float-out" {
  net   = "R-float"
  place = "pan"
  name  = "other wire of the float switch"
  where = "the second wire of the float switch"
}

point "float-a" {
  net   = "float-switch.a"
  place = "pan"
  name  = "first wire of the float switch"
  where = "taken off"
}

point "float-b" {
  net   = "float-switch.b"
  place = "pan"
  name  = "second wire of the float switch"
  where = "the other wire"
}

point "float-far" {
  net   = "R-fl2"
  place = "splice"
  name  = "wire from the float switch"
  where = "before the red wire joint"
}

check "pan-look" {
  stage    = "free"
  name     = "drain pan"
  function = "look"
  part     = "drain"
  places   = ["pan"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Shine a light into the drain pan on top of the ${machine}."
  ask      = "Is the pan dry or wet?"
  option "dry" {
    when  = !(drain.passes < 0.5)
    label = "Dry"
  }
  option "wet" {
    label = "Wet"
  }
}

check "float-v" {
  stage    = "plan"
  name     = "volts across the float switch"
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
  act      = "Hold both tips still. Read the volts."
}

check "float-c" {
  stage    = "plan"
  name     = "volts after the float switch"
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
  act      = "Hold both tips still. Read the volts."
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
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

repair "clear-drain" {
  name    = "clear the cooling coil drain"
  part    = "drain"
  kind    = "clean"
  minutes = q("15..60 min", "from memory")
  confirm = "pan-look"
  step {
    act   = "Soak up the water in the pan with a cloth."
    power = "off"
  }
  step {
    act     = "Clear the pipe with a brush or with suction."
    caution = "A wet floor and power do not mix."
    level   = "warning"
    power   = "off"
  }
  step {
    act   = "Pour in a cup of water. Watch it run out."
    power = "off"
  }
}

repair "refit-float-lead" {
  name    = "fasten the wire of the float switch"
  part    = "float-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "float-c"
  step {
    act  = "Join the loose wire with a wire nut."
    wire = "float-out"
  }
}

repair "replace-float-switch" {
  name    = "replace the float switch"
  part    = "float-switch"
  kind    = "replace"
  price   = q("12..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["low voltage", "opens when wet", "mounting"]
  causes  = ["pan-look"]
  confirm = "float-ohms"
  step {
    act  = "Take off one wire at a time."
    wire = "float-in"
  }
  step {
    act  = "Set the new switch in level. Connect both wires."
    wire = "float-out"
  }
}
