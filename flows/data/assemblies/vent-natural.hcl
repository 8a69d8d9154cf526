# A vent that draws by itself: chimney, draft hood with its spill switch, and a damper whose end switch proves it open.
# The switches lie between the nets ${before} and ${after}; ${hot} is the step in which exhaust would spill.
assembly "vent-natural" {
  machine = "furnace"
  before  = "HS"
  after   = "TH"
  hot     = "heating"
}

part "vent" {
  kind  = "passage"
  name  = "chimney"
  place = "outside"
  look  = "where the metal vent pipe goes up and out"
  stop  = "vent"
  mode "blocked" {
    name   = "chimney blocked, exhaust spills"
    does   = "factor"
    factor = q("0.2 x", 0.02, 0.4, "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "call-chimney"
  }
}

part "vent-joints" {
  kind  = "thing"
  name  = "vent joints"
  place = "room"
  look  = "where lengths of the vent pipe meet"
  mode "apart" {
    name   = "vent pipe apart at a joint"
    does   = "wrong"
    rate   = q("0.5 x", "common practice, no source")
    repair = "call-vent"
  }
}

part "spill-switch" {
  kind   = "contact"
  name   = "spill switch"
  place  = "upper-bay"
  look   = "small disc with a button on the draft hood"
  ports  = { a = "${before}", b = "SPILL" }
  trips  = reached("${hot}") && vent.passes < 0.5
  reset  = "manual"
  safety = true
  stop   = "vent"
  mode "open" {
    name   = "spill switch failed open"
    does   = "stuck-open"
    rate   = q("0.5 x", "common practice, no source")
    repair = "call-spill"
  }
}

part "damper" {
  kind  = "load"
  name  = "motor of the vent damper"
  place = "front"
  look  = "small box on the vent pipe with a cable"
  ports = { a = "${before}", b = "C" }
  ohms  = q("150 ohm", 60, 400, "from memory")
  works = q("16 V", "common practice, no source")
  mode "dead" {
    name   = "motor of the vent damper dead, damper shut"
    does   = "open"
    rate   = q("2 x", "common practice, no source")
    repair = "call-damper"
  }
  mode "jammed" {
    name   = "vent damper jammed shut"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "call-damper"
  }
}

part "damper-switch" {
  kind   = "contact"
  name   = "end switch of the vent damper"
  place  = "front"
  look   = "inside the damper box, not seen"
  ports  = { a = "SPILL", b = "${after}" }
  closes = damper.works > 0.5
  safety = true
  mode "stuck" {
    name   = "end switch of the vent damper never closes"
    does   = "stuck-open"
    rate   = q("2 x", "common practice, no source")
    repair = "call-damper"
  }
}

point "spill-in" {
  net   = "${before}"
  place = "upper-bay"
  name  = "spill switch, first terminal"
  where = "wire from the limit string"
}

point "spill-out" {
  net   = "SPILL"
  place = "upper-bay"
  name  = "spill switch, second terminal"
  where = "wire to the vent damper"
}

point "damper-out" {
  net   = "${after}"
  place = "upper-bay"
  name  = "wire back from the vent damper"
  where = "where the damper cable ends"
}

point "damper-a" {
  net   = "damper.a"
  place = "front"
  name  = "first motor wire of the vent damper"
  where = "plug of the damper cable, plug apart"
}

point "damper-b" {
  net   = "damper.b"
  place = "front"
  name  = "second motor wire of the vent damper"
  where = "plug of the damper cable, plug apart"
}

check "vent-joint-look" {
  stage    = "free"
  name     = "vent joints"
  function = "look"
  part     = "vent-joints"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the vent pipe with a light."
  caution  = "Hot pipe. Look, do not touch."
  ask      = "How are the joints of the vent pipe? Tight or apart?"
  option "tight" {
    when = !mode("vent-joints.apart")
    label = "Tight"
  }
  option "loose" {
    stop = "vent"
    label = "Apart"
  }
}

check "tissue" {
  stage    = "watch"
  name     = "tissue at the draft hood"
  function = "look"
  part     = "vent"
  power    = "on"
  call     = "on"
  at       = "${hot}"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "After five minutes hold a tissue at the draft hood."
  caution  = "Hot metal. Keep your sleeve away."
  ask      = "What does the tissue do at the draft hood? Pulled in, blown out, or no draft?"
  option "draft-in" {
    when = lit > 0.5 && vent.passes > 0.5
    label = "Pulled in"
  }
  option "draft-out" {
    stop = "vent"
    label = "Blown out"
  }
  option "no-air" {
    when = lit < 0.5
    label = "No draft"
  }
}

check "spill-look" {
  stage    = "plan"
  name     = "button of the spill switch"
  function = "look"
  part     = "spill-switch"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Look only. Do not press it."
  ask      = "How is the button of the spill switch? Flush or popped?"
  option "not-popped" {
    when = spill-switch.closed
    label = "Flush"
  }
  option "popped" {
    stop = "vent"
    label = "Popped"
  }
}

check "spill-v" {
  stage    = "plan"
  name     = "across the spill switch"
  function = "volts-ac"
  part     = "spill-switch"
  red      = "spill-in"
  black    = "spill-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "spill-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts, tips held still."
}

check "damper-look" {
  stage    = "watch"
  name     = "vent damper"
  function = "look"
  part     = "damper"
  power    = "on"
  call     = "on"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Watch the pointer on the damper as a call begins."
  ask      = "How does the vent damper stand? Open or closed?"
  option "open" {
    when = damper.works > 0.5
    label = "Open"
  }
  option "closed" { label = "Closed" }
}

check "damper-v" {
  stage    = "plan"
  name     = "across the end switch of the vent damper"
  function = "volts-ac"
  part     = "damper-switch"
  red      = "spill-out"
  black    = "damper-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "damper-look"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Wait half a minute after the call, then read."
}

check "damper-ohms" {
  stage    = "plan"
  name     = "motor of the vent damper"
  function = "ohms"
  part     = "damper"
  red      = "damper-a"
  black    = "damper-b"
  unit     = "ohm"
  limit    = between(50, 500, "from memory")
  power    = "off"
  places   = ["front"]
  lift     = ["damper-a", "damper-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Pull the damper plug, read its two motor pins."
}

repair "call-chimney" {
  name    = "call licensed help: the chimney does not draw"
  part    = "vent"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "tissue"
}

repair "call-vent" {
  name    = "call licensed help for the vent pipe"
  part    = "vent-joints"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "vent-joint-look"
}

repair "call-spill" {
  name    = "call licensed help: the spill switch is open"
  part    = "spill-switch"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "spill-v"
}

repair "call-damper" {
  name    = "call licensed help for the vent damper"
  part    = "damper"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "damper-look"
}
