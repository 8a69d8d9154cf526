# Answers that only the furnace file needs: the status light counts its blinks. A count is heard as a number too;
# these sayings are the whole answers people give.

option "2" {
  say  = ["two blinks", "two flashes", "code two", "it blinks two times", "it blinks twice"]
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
