# How numbers, units and readings are spoken and printed.

lang = "en"

numbers = [
  "zero", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine",
  "ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen", "nineteen",
  "twenty", "twenty-one", "twenty-two", "twenty-three", "twenty-four", "twenty-five", "twenty-six", "twenty-seven", "twenty-eight", "twenty-nine",
  "thirty", "thirty-one", "thirty-two", "thirty-three", "thirty-four", "thirty-five", "thirty-six", "thirty-seven", "thirty-eight", "thirty-nine",
  "forty", "forty-one", "forty-two", "forty-three", "forty-four", "forty-five", "forty-six", "forty-seven", "forty-eight", "forty-nine",
  "fifty", "fifty-one", "fifty-two", "fifty-three", "fifty-four", "fifty-five", "fifty-six", "fifty-seven", "fifty-eight", "fifty-nine",
  "sixty", "sixty-one", "sixty-two", "sixty-three", "sixty-four", "sixty-five", "sixty-six", "sixty-seven", "sixty-eight", "sixty-nine",
  "seventy", "seventy-one", "seventy-two", "seventy-three", "seventy-four", "seventy-five", "seventy-six", "seventy-seven", "seventy-eight", "seventy-nine",
  "eighty", "eighty-one", "eighty-two", "eighty-three", "eighty-four", "eighty-five", "eighty-six", "eighty-seven", "eighty-eight", "eighty-nine",
  "ninety", "ninety-one", "ninety-two", "ninety-three", "ninety-four", "ninety-five", "ninety-six", "ninety-seven", "ninety-eight", "ninety-nine",
]

terms "number" {
  minus    = "minus"
  point    = "point"
  in       = "in"
  hundred  = "{n} hundred"
  thousand = "{n} thousand"
  million  = "{n} million"
  billion  = "{n} billion"
  trillion = "{n} trillion"
}
terms "list" {
  and   = "{first} and {last}"
  range = "{low} to {high}"
  then  = "{first}. Then {next}"
}
terms "reading" {
  ac      = "A C"
  dc      = "D C"
  over    = "O L, over limit"
  beep    = "it beeps"
  silent  = "no beep"
  blank   = "the display is blank"
  dead    = "dead, without a number"
  jumping = "jumping"
  between = "jumping between {low} and {high}"
}
# A probability is told as word and number together.
terms "chance" {
  certain       = "almost certain, over nineteen in twenty"
  very-likely   = "very likely, nine in ten"
  likely        = "likely, seven in ten"
  even          = "even, five in ten"
  less-likely   = "less likely, three in ten"
  unlikely      = "unlikely, one in ten"
  very-unlikely = "very unlikely, under one in twenty"
}

# "prefixed" sets the prefix apart where units that differ by it alone are offered; "print" stands beside digits.
unit "V" {
  one  = "volt"
  many = "volts"
}
unit "mV" {
  one      = "milli volt"
  many     = "milli volts"
  prefixed = "MILLI volts"
}
unit "A" {
  one  = "amp"
  many = "amps"
}
unit "mA" {
  one      = "milli amp"
  many     = "milli amps"
  prefixed = "MILLI amps"
}
unit "uA" {
  one      = "micro amp"
  many     = "micro amps"
  prefixed = "MICRO amps"
  print    = "µA"
}
unit "ohm" {
  one   = "ohm"
  many  = "ohms"
  print = "Ω"
}
unit "kohm" {
  one      = "kilo ohm"
  many     = "kilo ohms"
  prefixed = "KILO ohms"
  print    = "kΩ"
}
unit "Mohm" {
  one      = "mega ohm"
  many     = "mega ohms"
  prefixed = "MEGA ohms"
  print    = "MΩ"
}
unit "uF" {
  one      = "micro farad"
  many     = "micro farads"
  prefixed = "MICRO farads"
  print    = "µF"
}
unit "nF" {
  one      = "nano farad"
  many     = "nano farads"
  prefixed = "NANO farads"
}
unit "Hz" {
  one  = "hertz"
  many = "hertz"
}
unit "degC" {
  one   = "degree Celsius"
  many  = "degrees Celsius"
  print = "°C"
}
unit "degF" {
  one   = "degree Fahrenheit"
  many  = "degrees Fahrenheit"
  print = "°F"
}
unit "dF" {
  one   = "degree"
  many  = "degrees"
  print = "°F"
}
unit "dC" {
  one   = "degree Celsius"
  many  = "degrees Celsius"
  print = "°C"
}
unit "inH2O" {
  one   = "inch of water"
  many  = "inches of water"
  print = "in. of water"
}
unit "Pa" {
  one  = "pascal"
  many = "pascals"
}
unit "kPa" {
  one      = "kilo pascal"
  many     = "kilo pascals"
  prefixed = "KILO pascals"
}
unit "psi" {
  one  = "P S I"
  many = "P S I"
}
unit "inHg" {
  one   = "inch of mercury"
  many  = "inches of mercury"
  print = "in. of mercury"
}
unit "%" {
  one  = "percent"
  many = "percent"
}
unit "ppm" {
  one  = "part per million"
  many = "parts per million"
}
unit "s" {
  one  = "second"
  many = "seconds"
}
unit "min" {
  one  = "minute"
  many = "minutes"
}
unit "h" {
  one  = "hour"
  many = "hours"
}
unit "yr" {
  one  = "year"
  many = "years"
}
unit "W" {
  one  = "watt"
  many = "watts"
}
unit "Btu/h" {
  one  = "B T U per hour"
  many = "B T U per hour"
}
unit "in" {
  one  = "inch"
  many = "inches"
}
unit "x" {
  one   = "time"
  many  = "times"
  print = "times"
}
unit "money" {
  one  = ""
  many = ""
}
