# Answers that the session itself asks for: consent, costs, the swap, the watched cycle, leaving the place, emergencies.

option "photo-taken" {
  say  = ["photo taken", "picture taken", "i took it", "got the picture", "photo done"]
  back = "Photo taken."
}
option "listed" {
  say  = ["listed", "all listed", "i read them", "that's all of them", "list is done"]
  back = "Listed."
}
option "put-back" {
  say  = ["put back", "i put it back", "it's put back", "moved it back", "swapped it back", "put back now"]
  back = "Put back."
}
option "on-purpose" {
  say  = ["on purpose", "it's on purpose", "that's on purpose", "meant to be", "it is meant to be", "changed on purpose"]
  back = "On purpose."
}
option "fix-it" {
  say  = ["fix it", "let's fix it", "i'll fix it", "repair it", "fix it now"]
  back = "Fix it now."
}
option "call-someone" {
  say  = ["call someone", "call somebody", "get someone", "i'll call someone", "call a technician"]
  back = "Call someone."
}
option "keep-going" {
  say  = ["keep going", "let's keep going", "keep looking", "let's go on"]
  back = "On we go."
}
option "stop-here" {
  say  = ["stop here", "leave it there", "i'll think about it"]
  back = "Stop here."
}
option "not-yet" {
  say  = ["not yet", "i don't have it", "i don't have it yet", "no part yet", "later", "not here yet"]
  back = "Not here yet."
}
option "full-cycle" {
  say  = ["full cycle", "whole cycle", "it ran through", "all the way through", "it ran all the way", "a full run", "full run"]
  back = "Full cycle."
}
option "leave-now" {
  say  = ["leave", "leave now", "we leave", "right now", "yes right now"]
  back = "Leave now."
}
