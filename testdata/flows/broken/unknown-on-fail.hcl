appliance "x" {
  title = "broken"
}
control "c" {
  tries = 2
  step "one" {
    needs   = power
    on_fail = "retyr"
  }
}
