appliance "x" {
  title = "broken"
}
repair "mend" {
  name    = "mend it"
  minutes = q("5 min", "from memory")
  step { act = "Mend it." }
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
part "back" {
  kind  = "wire"
  name  = "wire"
  ports = { a = "B", b = "A" }
}
point "pa" {
  net  = "A"
  name = "end a"
}
point "pb" {
  net  = "B"
  name = "end b"
}
check "v" {
  name     = "a check"
  function = "volts-ac"
  red      = "pa"
  black    = "pb"
  minutes  = q("1 min", "from memory")
}
