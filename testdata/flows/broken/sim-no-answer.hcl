appliance "x" {
  title = "broken"
}
repair "mend" {
  name    = "mend it"
  minutes = q("5 min", "from memory")
  step { act = "Mend it." }
}
part "line" {
  kind  = "supply"
  name  = "supply"
  ports = { l = "A", n = "N" }
  volts = q("24 V", "from memory")
  ohms  = q("1 ohm", "from memory")
}
part "w" {
  kind  = "wire"
  name  = "wire"
  ports = { a = "A", b = "B" }
  mode "open" {
    name   = "wire broken"
    does   = "open"
    rate   = q("1 x", "from memory")
    repair = "mend"
  }
}
part "lamp" {
  kind  = "load"
  name  = "lamp"
  ports = { a = "B", b = "N" }
  ohms  = q("100 ohm", "from memory")
  works = q("15 V", "from memory")
  mode "open" {
    name   = "lamp burnt out"
    does   = "open"
    rate   = q("1 x", "from memory")
    repair = "mend"
  }
}
point "pa" {
  net  = "A"
  name = "end a"
}
point "pb" {
  net  = "B"
  name = "end b"
}
point "pn" {
  net  = "N"
  name = "neutral"
}
check "volts" {
  name     = "a check"
  function = "volts-ac"
  red      = "pb"
  black    = "pn"
  unit     = "V"
  minutes  = q("1 min", "from memory")
}
check "lit" {
  name     = "a check"
  function = "look"
  minutes  = q("1 min", "from memory")
  ask      = "Is the lamp lit?"
  option "yes" {
    when = lamp.works > 0.5
  }
  option "no" {
    when = lamp.volts_now > 1 && lamp.works < 0.5
  }
}
