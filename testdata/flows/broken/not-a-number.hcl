appliance "x" {
  title = "broken"
}
part "line" {
  kind  = "supply"
  name  = "supply"
  ports = { l = "A", n = "N" }
  volts = q("24 V", "from memory")
  ohms  = q("one ohm", "from memory")
}
part "w" {
  kind  = "wire"
  name  = "wire"
  ports = { a = "A", b = "N" }
}
