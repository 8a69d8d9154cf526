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
    hidden = q("100 %", "from memory")
    rate   = q("1 x", "from memory")
    repair = "mend"
  }
}
part "back" {
  kind  = "wire"
  name  = "wire"
  ports = { a = "B", b = "A" }
}
