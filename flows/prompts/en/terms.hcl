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
  pass             = "pass"
  conditional-pass = "pass, close to the limit"
  conditional-fail = "fail, close to the limit"
  fail             = "fail"
  invalid          = "invalid"
}

# The page that answers the whole job: the verdict before the decision, the account at the end.
terms "summary" {
  found      = "Found: {what}"
  proof      = "Proof"
  costs      = "Cost"
  you        = "You can"
  technician = "Technician"
  visit      = "A visit costs about $${price}"
  part-and-time = "$${price} for the part, {minutes} minutes of work"
  part-only     = "$${price} for the part"
  time-only     = "Nothing but {minutes} minutes of work"
  wrong      = "What was wrong"
  done       = "What was done"
  saved      = "Saved"
  watch      = "Watch for"
  watch-for  = "Look at it once tomorrow. If it stops again, smells, or makes a new noise, switch it off and start with me again."
  keep       = "Keep"
  keep-what  = "Keep the old part and this record until the heat has lasted a week."
  buy        = "Buy"
  match      = "Must match"
  plate      = "From the plate"
  bring      = "Take along"
  old-part   = "Take the old part, or its photo, and the numbers of the plate."
  then       = "When you have it"
  go-on      = "Open this job in the list and press Go on. First we make it safe again."
}
