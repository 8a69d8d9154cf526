# Names of closed lists where text needs them.

lang = "en"

terms "verdict" {
  pass             = "pass"
  conditional-pass = "conditional pass"
  conditional-fail = "conditional fail"
  fail             = "fail"
  invalid          = "invalid"
}
