appliance "x" {
  title = "broken"
}
caution "mains" {
  level = "danger"
}
