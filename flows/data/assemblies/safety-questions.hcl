# What is asked before anything else, and after a repair.
assembly "safety-questions" { machine = "furnace" }

check "odour" {
  stage    = "safety"
  name     = "gas odour"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Sniff near the floor and near the pipes."
  ask      = "Gas odour here: none, or a gas odour?"
  option "none" { when = !(1 < 0) }
  option "some" { emergency = "gas" }
}

check "alarm" {
  stage    = "safety"
  name     = "alarms in the house"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Alarms in the house: sounding, quiet, chirping, or no alarm there?"
  option "quiet" { when = !(1 < 0) }
  option "sounding" { emergency = "co" }
  option "chirping" {
    as   = "quiet"
    tell = "One chirp now and then is a low battery or an old alarm. Change it today."
  }
  option "no-co-alarm" {
    as   = "quiet"
    tell = "Get a carbon monoxide alarm before the burner runs again. Without one nobody would notice bad air."
  }
}

check "people" {
  stage    = "safety"
  name     = "people in the house"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Is everyone fine, or is somebody feeling ill?"
  option "everyone-fine" { when = !(1 < 0) }
  option "feeling-ill" { emergency = "ill" }
}

check "floor" {
  stage    = "safety"
  name     = "floor at the ${machine}"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Stand back and look at the floor."
  ask      = "Is the floor dry, wet, or were the burners ever under water?"
  option "dry" { when = drain.passes > 0.5 }
  option "wet" {
    no_live = true
    tell    = "On a wet floor nothing live is touched. Find out where the water comes from."
  }
  option "above" {
    when = 1 < 0
    stop = "flooded"
  }
}

check "scorch" {
  stage    = "safety"
  name     = "scorch marks"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the front and the vent pipe."
  ask      = "The ${machine} front: clean, burnt, or sooty?"
  option "clean" { when = !mode("exchanger.plugged") && !(flame-outside > 0.5) }
  option "sooty" {
    when = mode("exchanger.plugged")
    stop = "roll-out"
  }
  option "burnt" { stop = "roll-out" }
}

check "again-alarm" {
  stage    = "restart"
  name     = "alarms after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  ask      = "Alarms in the house: quiet, or sounding?"
  option "quiet" { when = room-co < exchanger.keep_off }
  option "sounding" { emergency = "co" }
}

stop "flooded" {
  say  = "Water has reached the ${machine}."
  call = "a licensed heating technician"
  tell = "Say how high the water stood and which parts were wet."
  now  = "Stay off the wet floor. Breaker off only with dry feet. Nobody lights it again before every wet part is changed."
}
