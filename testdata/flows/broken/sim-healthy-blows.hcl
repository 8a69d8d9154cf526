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
part "fuse" {
  kind   = "fuse"
  name   = "fuse"
  ports  = { a = "A", b = "B" }
  rating = q("0.1 A", "from memory")
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
check "lit" {
  name     = "a check"
  function = "look"
  minutes  = q("1 min", "from memory")
  ask      = "Is the lamp lit?"
  option "yes" {
    when = lamp.works > 0.5
  }
  option "no" {}
}
