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
check "v" {
  name     = "a check"
  function = "look"
  minutes  = q("1 min", "from memory")
  ask      = "Is it lit?"
  option "yes" { seen = ["flame", "moon"] }
  option "no" { emergency = "gas" }
}
