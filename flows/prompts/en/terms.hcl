# Names of closed lists where text needs them.

lang = "en"

# What a verdict stands on.
terms "evidence" {
  self   = "the {part} shows the fault itself"
  supply = "the {part} had power"
  input  = "input {port} of the {part} was there"
  output = "output {port} of the {part} was missing at the board"
  load   = "the {part} was good"
}
# Where a number comes from that no document gives.
terms "origin" {
  common-practice           = "common practice"
  common-practice-no-source = "common practice, no source"
  from-memory               = "from memory"
  plate                     = "plate"
}
# Commands as the guide names them on its buttons and shows that it heard them. Each is one of the sayings of the lexicon.
terms "option" {
  repeat       = "Say again"
  longer       = "More detail"
  shorter      = "Short version"
  slower       = "Slower"
  quiet        = "Be quiet"
  where        = "Where is it"
  why          = "Why"
  how          = "How do I do that"
  what-if      = "What does that mean"
  should-it-be = "What should it be"
  where-am-i   = "Where are we"
  how-long     = "How long"
  suspected    = "What do you suspect"
  how-sure     = "How sure"
  cost         = "What will it cost"
  shortcut     = "Can I bypass it"
  help         = "What can I say"
  ready        = "Ready"
  done         = "Done"
  cant-reach   = "Can't reach"
  dont-know    = "Don't know"
  not-sure     = "Not sure"
  jumping      = "It's jumping"
  missed-it    = "Missed it"
  scratch-that = "Scratch that"
  skip         = "Skip"
  other-meter  = "Keypad"
  go-live      = "Go live"
  other-way    = "Other way"
  false-alarm  = "False alarm"
  back         = "Go back"
  hold-on      = "Hold on"
  it-changed   = "It changed"
  person       = "Call someone"
  finish       = "Finish"
}
terms "verdict" {
  pass             = "normal"
  conditional-pass = "just inside the limit"
  conditional-fail = "just outside the limit"
  fail             = "not normal"
  invalid          = "proves nothing"
}
