appliance "x" {
  title = "broken"
}
part "w" {
  kind = "wire
}
