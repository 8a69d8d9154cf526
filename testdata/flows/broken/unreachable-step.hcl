appliance "x" {
  title = "broken"
}
control "c" {
  step "one" {
  }
  step "two" {
    side = true
  }
}
