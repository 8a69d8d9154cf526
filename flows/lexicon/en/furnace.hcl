# Answers that only the furnace file needs: the status light counts its blinks, what its label says, local rules.
# A count is heard as a number too; these sayings are the whole answers people give.

option "1" {
  say  = ["one blink", "one flash", "code one", "it blinks once"]
  back = "One blink."
}
option "2" {
  say  = ["two blinks", "two flashes", "code two", "it blinks two times"]
  back = "Two blinks."
}
option "3" {
  say  = ["three blinks", "three flashes", "code three", "it blinks three times"]
  back = "Three blinks."
}
option "4" {
  say  = ["four blinks", "four flashes", "code four", "it blinks four times"]
  back = "Four blinks."
}
option "5" {
  say  = ["five blinks", "five flashes", "code five", "it blinks five times"]
  back = "Five blinks."
}
option "6" {
  say  = ["six blinks", "six flashes", "code six", "it blinks six times"]
  back = "Six blinks."
}
option "7" {
  say  = ["seven blinks", "seven flashes", "code seven", "it blinks seven times"]
  back = "Seven blinks."
}
option "8" {
  say  = ["eight blinks", "eight flashes", "code eight", "it blinks eight times"]
  back = "Eight blinks."
}
option "says-pressure-open" {
  say  = ["pressure switch open", "pressure switch is open", "pressure switch did not close", "pressure switch stuck open", "no draft proved"]
  back = "The label says: pressure switch open."
}
option "says-pressure-closed" {
  say  = ["pressure switch closed", "pressure switch is closed", "pressure switch stuck closed"]
  back = "The label says: pressure switch closed."
}
option "says-limit" {
  say  = ["limit open", "high limit", "high limit open", "limit switch open", "limit circuit open", "over temperature"]
  back = "The label says: limit open."
}
option "says-roll-out" {
  say  = ["roll out", "roll out open", "roll out switch open", "roll out switch", "flame roll out"]
  back = "The label says: roll-out switch open."
}
option "says-no-flame" {
  say  = ["ignition failure", "failed ignition", "flame not sensed", "no flame sensed", "flame sense failure"]
  back = "The label says: no flame sensed."
}
option "says-flame-lost" {
  say  = ["flame lost", "lost flame", "loss of flame", "flame failure", "weak flame signal"]
  back = "The label says: flame lost."
}
option "says-false-flame" {
  say  = ["false flame", "flame with no call", "flame sensed with gas off", "flame when there should be none"]
  back = "The label says: flame sensed with gas off."
}
option "says-no-power" {
  say  = ["no power", "no power to the board", "power is off says the label"]
  back = "The label says: no power."
}
option "says-normal" {
  say  = ["normal operation", "no fault", "no error", "normal", "standby", "all normal"]
  back = "The label says: normal."
}
option "allowed" {
  say  = ["allowed", "it's allowed", "owners may", "open to owners", "i may do it", "no rule against it"]
  back = "Allowed."
}
option "reserved" {
  say  = ["reserved", "it's reserved", "not allowed", "licensed only", "only licensed people", "needs a license", "needs a permit"]
  back = "Not allowed."
}
