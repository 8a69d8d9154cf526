appliance "x" {
  title = "broken"
}
source "T12" {
  text = "a book"
}
part "line" {
  kind  = "supply"
  name  = "supply"
  ports = { l = "A", n = "N" }
  volts = q("24 V", "T21")
  ohms  = q("1 ohm", "from memory")
}
part "w" {
  kind  = "wire"
  name  = "wire"
  ports = { a = "A", b = "N" }
}
