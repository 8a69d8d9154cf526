appliance "x" {
  title = "broken"
}
signal "draft" {
  unit = "inH2O"
  is   = 1
}
signal "sensed" {
  unit = "inH2O"
  is   = drought
}
