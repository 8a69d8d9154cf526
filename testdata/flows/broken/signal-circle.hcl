appliance "x" {
  title = "broken"
}
signal "a" {
  unit = "x"
  is   = b
}
signal "b" {
  unit = "x"
  is   = a
}
