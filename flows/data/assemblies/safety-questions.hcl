# What is asked before anything else, and after a repair.
assembly "safety-questions" { machine = "furnace" }

check "odour" {
  stage    = "safety"
  name     = "odor in the room"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Sniff near the floor and near the pipes."
  ask      = "Do you notice an odor like gas?"
  option "none" {
    when  = !(1 < 0)
    label = "No"
  }
  option "some" {
    emergency = "gas"
    label     = "Yes"
  }
}

check "alarm" {
  stage    = "safety"
  name     = "alarms in the house"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "How are the alarms in the house? Quiet, sounding, chirping, or no alarm at all?"
  option "quiet" {
    when  = !(1 < 0)
    label = "Quiet"
  }
  option "sounding" {
    emergency = "co"
    label     = "Sounding"
  }
  option "chirping" {
    as    = "quiet"
    tell  = "One chirp now and then means a low battery or an old alarm. Change it today."
    label = "Chirping"
  }
  option "no-co-alarm" {
    as    = "quiet"
    tell  = "Get a carbon monoxide alarm before the burner runs again. Without one, nobody would notice bad air."
    label = "No alarm at all"
  }
}

check "people" {
  stage    = "safety"
  name     = "people in the house"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "How is everyone in the house? Everyone is fine, or somebody feels ill?"
  option "everyone-fine" {
    when  = !(1 < 0)
    label = "Everyone is fine"
  }
  option "feeling-ill" {
    emergency = "ill"
    label     = "Somebody feels ill"
  }
}

check "floor" {
  stage    = "safety"
  name     = "floor at the ${machine}"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Stand back and look at the floor."
  ask      = "How is the floor? Dry, wet, or the burners were once under water?"
  option "dry" {
    when  = drain.passes > 0.5
    label = "Dry"
  }
  option "wet" {
    no_live = true
    tell    = "On a wet floor, touch nothing that has power. Find out where the water comes from."
    label   = "Wet"
  }
  option "above" {
    when  = 1 < 0
    stop  = "flooded"
    label = "The burners were once under water"
  }
}

check "scorch" {
  stage    = "safety"
  name     = "scorch marks"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the front of the ${machine} and at the vent pipe."
  ask      = "Are they clean, sooty, or scorched?"
  option "clean" {
    when  = !mode("exchanger.plugged") && !(flame-outside > 0.5)
    label = "Clean"
  }
  option "sooty" {
    when  = mode("exchanger.plugged")
    stop  = "roll-out"
    label = "Sooty"
  }
  option "burnt" {
    stop  = "roll-out"
    label = "Scorched"
  }
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
  ask      = "Are the alarms in the house quiet or sounding?"
  option "quiet" {
    when  = room-co < exchanger.keep_off
    label = "Quiet"
  }
  option "sounding" {
    emergency = "co"
    label     = "Sounding"
  }
}

stop "flooded" {
  say  = "Water has reached the ${machine}."
  call = "a licensed heating technician"
  tell = "Tell them how high the water stood, and which parts got wet."
  now  = "Stay off the wet floor. Turn the breaker off only with dry feet. Nobody lights it again until every wet part is changed."
}
