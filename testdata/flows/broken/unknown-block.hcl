appliance "x" {
  title = "broken"
}
prat "w" {
}
