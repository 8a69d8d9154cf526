appliance "x" {
  title = "broken"
}
appliance "y" {
  title = "broken"
}
