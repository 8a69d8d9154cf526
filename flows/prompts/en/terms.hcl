# Names of closed lists where text needs them.

lang = "en"

# What a verdict stands on.
terms "evidence" {
  self   = "{part} shows the fault itself"
  supply = "{part} had its supply"
  input  = "input {port} of the {part} was present"
  output = "output {port} of the {part} was missing at the board"
  load   = "{part} was good"
}
terms "verdict" {
  pass             = "pass"
  conditional-pass = "conditional pass"
  conditional-fail = "conditional fail"
  fail             = "fail"
  invalid          = "invalid"
}
