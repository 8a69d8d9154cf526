appliance "x" {
  title = "broken"
}
signal "a" {
  is = 1
}
