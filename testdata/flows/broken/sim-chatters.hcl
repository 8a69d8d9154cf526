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
part "buzzer" {
  kind  = "relay"
  name  = "buzzer"
  ports = { coil1 = "B", coil2 = "N", com = "A", nc = "B" }
  ohms  = q("100 ohm", "from memory")
  pulls = q("15 V", "from memory")
}
part "lamp" {
  kind  = "load"
  name  = "lamp"
  ports = { a = "A", b = "N" }
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
