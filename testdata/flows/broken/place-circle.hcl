appliance "x" {
  title = "broken"
}
place "in" {
  name   = "inner"
  within = "out"
}
place "out" {
  name   = "outer"
  within = "in"
}
