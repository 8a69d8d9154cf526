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
# Where a number comes from that no document gives.
terms "origin" {
  common-practice           = "common practice"
  common-practice-no-source = "common practice, no source"
  from-memory               = "from memory"
  plate                     = "plate"
}
# Commands as the guide names them on its buttons.
terms "option" {
  repeat       = "repeat"
  longer       = "longer"
  shorter      = "shorter"
  slower       = "slower"
  quiet        = "quiet"
  where        = "where"
  why          = "why"
  how          = "how"
  what-if      = "what if"
  should-it-be = "should it be"
  where-am-i   = "where am i"
  how-long     = "how long"
  suspected    = "suspected"
  how-sure     = "how sure"
  cost         = "cost"
  shortcut     = "shortcut"
  help         = "help"
  ready        = "ready"
  done         = "done"
  cant-reach   = "cant reach"
  dont-know    = "dont know"
  not-sure     = "not sure"
  jumping      = "jumping"
  missed-it    = "missed it"
  scratch-that = "scratch that"
  skip         = "skip"
  other-meter  = "other meter"
  go-live      = "go live"
  other-way    = "other way"
  false-alarm  = "false alarm"
  back         = "back"
  hold-on      = "hold on"
  it-changed   = "it changed"
  person       = "person"
  finish       = "finish"
}
terms "verdict" {
  pass             = "pass"
  conditional-pass = "conditional pass"
  conditional-fail = "conditional fail"
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
