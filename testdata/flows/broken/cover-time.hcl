appliance "x" {
  title = "broken"
}
place "bay" {
  name  = "bay"
  cover = true
}
