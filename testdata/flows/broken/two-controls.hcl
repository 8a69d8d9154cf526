appliance "x" {
  title = "broken"
}
control "c" {
  step "one" {
  }
}
control "d" {
  step "two" {
  }
}
