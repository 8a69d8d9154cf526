appliance "x" {
  title = "broken"
}
part "b" {
  kind  = "board"
  name  = "board"
  ports = { r = "A", c = "B" }
  on    = q("16 V", "from memory")
  ohms  = q("200 ohm", "from memory")
  output "FAN" {
    from = "A"
    to   = "B"
  }
}
control "c" {
  part = "b"
  step "one" {
    drive = ["FUN"]
  }
}
