appliance "x" {
  title = "broken"
}
control "c" {
  step "one" {
    needs = power
  }
}
