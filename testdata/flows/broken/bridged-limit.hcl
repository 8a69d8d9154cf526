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
  kind   = "contact"
  safety = true
  name   = "limit"
  ports = { a = "A", b = "B" }
  mode "open" {
    name   = "limit open"
    does   = "stuck-open"
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
check "lit" {
  name     = "lamp with a bridge"
  function = "look"
  ask      = "Is the lamp lit?"
  jump     = ["pa", "pb"]
  minutes  = q("1 min", "from memory")
  option "yes" { when = lamp.works > 0.5 }
  option "no" {}
}
