appliance "My Heater" {
  title = "broken"
}
