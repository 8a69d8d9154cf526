# A hot-water boiler with a zone valve, one circulator, a spark-lit pilot and a chimney. The thermostat opens the zone valve, its end switch
# calls the boiler and the circulator; high limit, roll-out switches and low-water cut-off stand in series before the ignition module.
# What it shares with furnaces stands in assemblies.
#
# The unit is nobody's product. Plate, wiring diagram and label of the real unit win over everything here.

appliance "boiler-zone" {
  title = "hot-water boiler with zone valves and a chimney"
  fuel  = "gas"
  mains = true

  # a trial lets out pilot gas only: the main valve waits until the pilot is proved
  starts = q("12 x", "common practice, no source")
  dead   = ["line-in", "neutral-in", "frame"]
}

source "T20" { text = "gas technician training text, unit 20, hot-water boilers" }

use "sources" {}
use "furnace-places" {
  machine = "boiler"
  without = ["place duct", "place filter-slot", "place outdoor-unit"]
  place "upper-bay" {
    name    = "front panel of the boiler"
    where   = "the large sheet at the front"
    hazards = ["mains", "hot", "sharp", "gas"]
  }
  place "lower-bay" {
    name    = "cover of the pump's wire box"
    where   = "small box on the circulator pump"
    hazards = ["mains"]
    trips   = null
  }
}
use "line-120" {
  machine = "boiler"
  board   = "strip"
  without = ["part panel-seat", "part door-switch", "point door-a", "point door-b", "check panel-look", "check door-in-v", "check door-switch-ohms", "repair seat-panel", "repair replace-door-switch"]
  part "line-lead" {
    place = "upper-bay"
    look  = "black wire from the wire nut to the terminal strip"
    ports = { a = "L1", b = "LB" }
  }
  point "door-in" {
    place = "upper-bay"
    name  = "black wires in the boiler"
    where = "wire nut on the black wires"
  }
  point "door-out" {
    net   = "L1"
    place = "upper-bay"
    name  = "first end of the black power wire"
    where = "wire nut on the black wires"
  }
  point "door-n" {
    place = "upper-bay"
    name  = "white wires in the boiler"
    where = "wire nut on the white wires"
  }
  check "line-lead-ohms" {
    name   = "black wire from the wire nut to the terminal strip"
    places = ["upper-bay"]
  }
  check "board-line" {
    instead = "house-power"
  }
  check "board-load" {
    at      = "pilot"
    act     = "Read the volts while the pump runs."
    caution = "House voltage. Use one hand only."
    name    = "volts at the terminal strip while the pump runs"
  }
  repair "refit-line-lead" {
    step {
      act    = "Cut off the burned copper. Crimp a new terminal on. Pull to test it."
      wire   = "board-l"
      places = ["upper-bay"]
    }
  }
  repair "reset-breaker" {
    causes = ["pump-frame", "pump-ohms"]
  }
  load = "pump-feel=silent"
}
use "call-24v" {
  machine = "boiler"
  board   = "strip"
  without = ["part contactor", "part y-wire", "part cool-contact", "part y-terminal", "mode w-tail.wrong-terminal", "point board-y", "point y-out", "check y-c", "check y-short", "check y-cable-look", "check w-look", "repair move-w-wire", "repair isolate-outdoor", "repair repair-y-wire", "stop outdoor"]
  part "board-fuse" {
    name = "fuse of the low voltage"
    look = "glass or flat fuse in the red wire of the transformer"
    mode "blown" {
      name = "fuse of the low voltage blown, and nothing is shorted now"
    }
  }
  part "r-splice" { ports = { a = "R", b = "R-splice" } }
  part "transformer" {
    mode "weak" {
      ohms = q("90 ohm", "common practice, no source")
    }
  }
  check "stat-raise" {
    option "silent" {
      when = setpoint.ok && !reached("pilot")
    }
  }
  check "stat-type" {
    ask = "Is it set for a boiler?"
  }
  # a thermostat that calls joins the cable with the zone valve
  check "cable-short" {
    limit = atleast(20, "common practice, no source")
  }
  repair "replace-fuse" {
    causes = ["cable-short", "valve-ohms", "splice-look"]
  }
  repair "replace-transformer" {
    causes = ["cable-short", "valve-ohms", "rules"]
  }
}
use "safety-string" {
  machine = "boiler"
  part "limit-lead" {
    look  = "wire from the end switch to the high limit"
    ports = { a = "TT", b = "LIM-in" }
  }
  part "high-limit" {
    look    = "box with a dial, with its bulb in the boiler water"
    trips   = reached("steady") && limit-heat > high-limit.set
    numbers = { good = q("180 degF", "T20"), boil = q("235 degF", "common practice, no source"), room = q("70 degF", "common practice, no source") }
    mode "burnt" {
      ohms = q("400 ohm", 250, 900, "own")
    }
  }
  signal "limit-heat" { is = lit < 0.5 ? high-limit.room : (flow > 0.3 ? high-limit.good : high-limit.boil) }
  check "limit-in-c" {
    call = "on"
  }
  check "limit-v" {
    call = "on"
  }
  check "roll-left-v" {
    call = "on"
  }
  check "roll-right-v" {
    call = "on"
  }
  check "string-end-c" {
    call = "on"
    act  = "Hold both tips still. Read the volts."
    name = "volts at the end of the limit switches"
  }
  point "string-end" {
    name  = "end of the limit switches"
    where = "with the wire to the low-water cutoff"
  }
  repair "refit-string-lead" {
    step {
      act    = "Push the wire on its terminal. Pull gently to test it."
      wire   = "string-end"
      places = ["upper-bay"]
    }
  }
  repair "replace-limit" {
    match  = ["setting", "bulb length", "shape", "reset"]
    causes = ["gauge-look", "pump-feel"]
  }
  start = "see-pilot=no-flame"
  board = "zone valve"
  end   = "low-water cutoff"
  part "string-lead" {
    look = "wire from the last roll-out switch to the low-water cutoff"
  }
}
use "vent-natural" {
  machine = "boiler"
  before  = "LW"
}
use "burner-dsi" {
  without = ["signal lit"]
  step    = "pilot"
  burner  = "pilot"
  board   = "ignition module"
}
use "pilot-intermittent" { machine = "boiler" }
use "gas" {
  machine = "boiler"
  without = ["check see-move"]
  check "hear-valve" {
    act = "Listen near the gas valve after the pilot lights."
  }
  check "see-colour" {
    act = "Look at the main flame."
  }
  point "gas-out" {
    name  = "main valve terminal of the ignition module"
    where = "marked M V"
  }
  check "gas-out-v" {
    name = "volts from the ignition module to the main valve"
    act  = "Put the tips on first. Read the volts when the gas valve clicks."
  }
  repair "call-exchanger" {
    confirm = "exchanger-look"
  }
  stop "exchanger" { tell = "Say where you see water or soot, and what the gauge shows." }
  start = "see-pilot=no-flame"
  board = "ignition module"
}
use "flame-proof" {
  part "flame-rod" { look = "thin rod in the pilot flame with white ceramic and one wire" }
  signal "flame-at-rod" { is = pilot }
  check "flame-current" {
    at     = "pilot"
    act    = "Stand back. Read the meter while the pilot burns."
    unless = ["see-pilot=no-flame"]
  }
  check "rod-place" {
    ask = "Is the tip of the rod where the pilot burns?"
  }
  repair "set-flame-rod" {
    step {
      act     = "Loosen its screw. Turn the tip into the pilot flame."
      caution = "The ceramic breaks easily."
      level   = "caution"
      places  = ["burner-box", "upper-bay"]
    }
  }
  machine = "boiler"
  start   = "see-pilot=no-flame"
  board   = "ignition module"
}
use "safety-questions" {
  machine = "boiler"
  check "floor" {
    option "dry" {
      when = tank.ok && relief.ok
    }
  }
}
use "furnace-story" {
  check "story-what" {
    ask = "What is the boiler doing wrong?"
    option "not-enough" {
      when = reached("steady") && !stuck("steady")
    }
    option "stops-early" {
      when = stuck("trial") || stuck("run") || stuck("heating") || stuck("steady")
    }
    option "never-stops" {
      when = 1 < 0
    }
    option "no-start" {
      when = !reached("pilot")
    }
  }
  check "story-pattern" {
    option "every-start" {
      when = !(mode("w-tail.loose") || mode("line-run.loose") || mode("neutral-run.loose") || mode("power-stealing.leaks") || mode("spark-lead.cracked") || mode("electrode.gap") || mode("pilot-burner.lint"))
    }
    option "some-starts" {
      when = mode("w-tail.loose")
    }
  }
  check "story-when" {
    option "suddenly" {
      when = !(mode("flame-rod.dirty") || mode("burners.dirty") || mode("electrode.gap") || mode("pilot-burner.lint") || mode("tank.waterlogged") || mode("water.low"))
    }
  }
  check "story-change" {
    option "nothing-done" {
      when = !mode("stat-setup.heat-pump") && !(mode("flame-rod.bent") || mode("junction.reversed") || mode("gas-cock.closed") || mode("valve-switch.off") || mode("orifice.too-big") || mode("r-terminal.off") || mode("w-terminal.off") || mode("r-wire.pinched") || mode("supply.dead") || mode("breaker.off") || mode("vent.blocked") || mode("isolation.shut") || mode("air-lock.there"))
    }
    option "after-work" {
      when = mode("stat-setup.heat-pump")
    }
  }
  machine = "boiler"
}
use "furnace-words" {
  without = ["check light", "check label", "lamp off", "lamp slow-blink", "lamp steady", "lamp 2", "lamp 3", "lamp 4", "lamp 5", "lamp 6", "lamp 7"]
}

# ---- the zone ----

part "zone-valve" {
  kind  = "load"
  name  = "motor of the zone valve"
  place = "front"
  look  = "small box with a lever on a pipe near the boiler"
  ports = { a = "W", b = "C" }
  ohms  = q("100 ohm", 50, 200, "computed")
  works = q("16 V", "common practice, no source")
  mode "dead" {
    name   = "motor of the zone valve dead"
    does   = "open"
    rate   = q("5 x", "common practice, no source")
    repair = "replace-zone-head"
  }
  mode "stripped" {
    name   = "gear of the zone valve stripped"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-zone-head"
  }
}

part "end-switch" {
  kind   = "contact"
  name   = "end switch of the zone valve"
  place  = "front"
  look   = "two more wires on the zone valve"
  ports  = { a = "R", b = "TT" }
  closes = zone-valve.works > 0.5
  mode "stuck" {
    name   = "end switch of the zone valve never closes"
    does   = "stuck-open"
    rate   = q("6 x", "common practice, no source")
    repair = "replace-zone-head"
  }
}

part "isolation" {
  kind  = "passage"
  name  = "hand valves of the zone"
  place = "room"
  look  = "hand valves on the pipes of the zone"
  mode "shut" {
    name   = "hand valve of the zone closed"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "open-isolation"
  }
}

part "air-lock" {
  kind  = "passage"
  name  = "air in the zone pipes"
  place = "living"
  look  = "vents on radiators and high pipes"
  mode "there" {
    name   = "air blocks the water of the zone"
    does   = "factor"
    factor = q("0.1 x", 0, 0.25, "common practice, no source")
    rate   = q("6 x", "common practice, no source")
    repair = "bleed-zone"
  }
}

part "frost" {
  kind  = "passage"
  name  = "coldest part of the zone"
  place = "living"
  look  = "pipes in outside walls, crawl space, or garage"
  mode "frozen" {
    name   = "zone pipe frozen"
    does   = "off"
    rate   = q("2 x", "common practice, no source")
    repair = "call-frozen"
  }
}

# ---- circulator and water ----

part "pump-relay" {
  kind  = "relay"
  name  = "relay of the circulator pump"
  place = "upper-bay"
  look  = "relay on the terminal strip with two thick wires"
  ports = { coil1 = "TT", coil2 = "C", com = "LB", no = "PUMP" }
  ohms  = q("150 ohm", 60, 400, "from memory")
  pulls = q("16 V", "common practice, no source")
  mode "coil-open" {
    name   = "coil of the pump relay open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-relay"
  }
  mode "burnt" {
    name   = "contacts of the pump relay burned open"
    does   = "stuck-open"
    rate   = q("2 x", "common practice, no source")
    repair = "replace-relay"
  }
}

part "circulator" {
  kind  = "load"
  name  = "circulator pump"
  place = "lower-bay"
  look  = "pump in the pipe beside the boiler"
  ports = { a = "PUMP", b = "NB" }
  ohms  = q("120 ohm", 60, 200, "from memory")
  cold  = q("30 ohm", 10, 60, "from memory")
  works = q("80 V", "common practice, no source")
  motor = "yes"
  mode "seized" {
    name   = "circulator pump stuck"
    does   = "stuck"
    rate   = q("4 x", "common practice, no source")
    repair = "call-circulator"
  }
  mode "open" {
    name   = "winding of the circulator pump open"
    does   = "open"
    rate   = q("2 x", "common practice, no source")
    repair = "call-circulator"
  }
  mode "coupling" {
    name   = "coupling of the pump broken, so it turns and moves no water"
    does   = "weak"
    factor = q("0.15 x", 0, 0.25, "common practice, no source")
    rate   = q("2 x", "common practice, no source")
    repair = "call-circulator"
  }
  mode "grounded" {
    name   = "winding of the circulator pump touches its frame"
    does   = "touch"
    to     = "CHASSIS"
    ohms   = q("1 ohm", "common practice, no source")
    rate   = q("0.5 x", "common practice, no source")
    repair = "call-circulator"
  }
}

part "water" {
  kind  = "thing"
  name  = "water in the boiler"
  place = "front"
  look  = "gauge for pressure and temperature on the boiler"
  mode "low" {
    name   = "too little water, so the pressure is too low"
    does   = "off"
    rate   = q("5 x", "common practice, no source")
    repair = "fill-cold"
  }
}

part "lwco" {
  kind   = "contact"
  name   = "low-water cutoff"
  place  = "front"
  look   = "box with a light, with its probe in the boiler water"
  ports  = { a = "HS", b = "LW" }
  closes = water.value > 0.5
  safety = true
  stop   = "dry"
  mode "fouled" {
    name   = "probe of the low-water cutoff dirty"
    does   = "stuck-open"
    rate   = q("2 x", "common practice, no source")
    repair = "call-lwco"
  }
}

part "tank" {
  kind  = "thing"
  name  = "expansion tank"
  place = "room"
  look  = "steel tank on a pipe near the boiler"
  mode "waterlogged" {
    name   = "expansion tank full of water"
    does   = "wrong"
    rate   = q("4 x", "common practice, no source")
    repair = "call-tank"
  }
}

part "relief" {
  kind  = "thing"
  name  = "relief valve"
  place = "front"
  look  = "brass valve with a lever and a pipe down to the floor"
  stop  = "relief"
  mode "weeping" {
    name   = "relief valve drips"
    does   = "wrong"
    rate   = q("2 x", "common practice, no source")
    repair = "call-relief"
  }
}

part "aquastat" {
  kind  = "thing"
  name  = "setting of the high limit"
  place = "front"
  look  = "number on the dial of the limit box"
  mode "low" {
    name   = "high limit set far too low"
    does   = "wrong"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "call-aquastat"
  }
}

part "sections" {
  kind  = "passage"
  name  = "boiler body"
  place = "upper-bay"
  look  = "cast iron body above the burners"
  stop  = "leak"
  mode "limed" {
    name   = "boiler full of lime, so it bangs like a kettle"
    does   = "factor"
    factor = q("0.2 x", 0.05, 0.28, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-limed"
  }
}

# ---- what is not electrical ----

signal "lit" {
  unit = "x"
  is   = gas-flow > 0.5 && pilot > 0.3 && reached("trial") && burners.passes > 0.2 ? 1 : 0
}

# how much water goes round, 0 to 1
signal "flow" {
  unit = "x"
  is   = circulator.works * zone-valve.works * isolation.passes * air-lock.passes * frost.passes * sections.passes * water.value
}

# ---- where a lead can be put ----

point "zone-w" {
  net   = "W"
  place = "front"
  name  = "motor wire of the zone valve"
  where = "first thin wire of the zone valve"
}

point "zone-a" {
  net   = "zone-valve.a"
  place = "front"
  name  = "first motor wire of the zone valve"
  where = "taken out of its wire nut"
}

point "zone-b" {
  net   = "zone-valve.b"
  place = "front"
  name  = "second motor wire of the zone valve"
  where = "taken out of its wire nut"
}

point "end-in" {
  net   = "R"
  place = "front"
  name  = "first wire of the end switch"
  where = "one of the two other wires of the zone valve"
}

point "end-out" {
  net   = "TT"
  place = "front"
  name  = "second wire of the end switch"
  where = "the wire to the boiler"
}

point "tt" {
  net   = "TT"
  place = "upper-bay"
  name  = "terminal T T of the boiler"
  where = "on the terminal strip, with the wire from the zone valve"
}

point "lw-out" {
  net   = "LW"
  place = "upper-bay"
  name  = "wire after the low-water cutoff"
  where = "the wire to the spill switch"
}

point "pump-out" {
  net   = "PUMP"
  place = "upper-bay"
  name  = "pump terminal of the terminal strip"
  where = "with the thick wire to the pump"
}

point "pump-a" {
  net   = "circulator.a"
  place = "lower-bay"
  name  = "black wire of the circulator pump"
  where = "taken out of its wire nut"
}

point "pump-b" {
  net   = "circulator.b"
  place = "lower-bay"
  name  = "white wire of the circulator pump"
  where = "taken out of its wire nut"
}

point "relay-1" {
  net   = "pump-relay.coil1"
  place = "upper-bay"
  name  = "first coil terminal of the relay"
  where = "with the thin wire off"
}

point "relay-2" {
  net   = "pump-relay.coil2"
  place = "upper-bay"
  name  = "second coil terminal of the relay"
  where = "with the thin wire off"
}

# ---- looks ----

check "hiss" {
  stage    = "safety"
  name     = "sound and smell of the boiler"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Stand back. Listen to the boiler."
  ask      = "Is the boiler quiet or hissing?"
  option "quiet" {
    when  = 1 > 0
    label = "Quiet"
  }
  option "hissing" {
    stop  = "dry"
    label = "Hissing"
  }
}

check "relief-look" {
  stage    = "free"
  name     = "relief valve"
  function = "look"
  part     = "relief"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the end of its pipe. Touch no lever."
  ask      = "Is the pipe dry or dripping?"
  option "dry" {
    when  = relief.ok && tank.ok
    label = "Dry"
  }
  option "drips" {
    stop  = "relief"
    label = "Dripping"
  }
}

check "gauge-look" {
  stage    = "free"
  name     = "pressure gauge of the boiler"
  function = "look"
  part     = "water"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Read the pressure. 12 to 20 is good."
  ask      = "Is the pressure good, low, or above 25?"
  option "good" {
    when  = water.value > 0.5 && tank.ok
    label = "Good"
  }
  option "low" {
    when  = water.value < 0.5
    label = "Low"
  }
  option "above" {
    stop  = "relief"
    label = "Above 25"
  }
}

check "lwco-lamp" {
  stage    = "free"
  name     = "light of the low-water cutoff"
  function = "look"
  part     = "lwco"
  power    = "on"
  call     = "on"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the small light of the low-water cutoff."
  ask      = "Is the light off or on?"
  option "dark" {
    when  = lwco.closed
    label = "Off"
  }
  option "lit" {
    label = "On"
  }
}

check "zone-lever" {
  stage    = "watch"
  name     = "lever of the zone valve"
  function = "look"
  part     = "zone-valve"
  power    = "on"
  call     = "on"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn the thermostat up. After three minutes, move the lever lightly."
  ask      = "Is the lever loose or stiff?"
  option "open" {
    when  = zone-valve.works > 0.5
    label = "Loose"
  }
  option "closed" {
    label = "Stiff"
  }
}

check "pump-feel" {
  stage    = "watch"
  name     = "circulator"
  function = "look"
  part     = "circulator"
  power    = "on"
  call     = "on"
  at       = "pilot"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Hold a screwdriver on the pump. Put your ear to its handle."
  caution  = "Hot pipes. Touch the handle only."
  ask      = "Is the pump running, humming, or silent?"
  option "running" {
    when  = circulator.works > 0.1
    label = "Running"
  }
  option "humming" {
    when  = circulator.hums
    label = "Humming"
  }
  option "silent" {
    label = "Silent"
  }
}

check "pipes-feel" {
  stage    = "watch"
  name     = "pipes of the zone"
  function = "look"
  part     = "air-lock"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  act      = "Wait five minutes. Feel both zone pipes, an arm away from the boiler."
  caution  = "Hot pipes. Touch them briefly."
  ask      = "Are the pipes warm or cold?"
  option "warm" {
    when  = flow > 0.3 && lit > 0.5
    label = "Warm"
  }
  option "cold" {
    label = "Cold"
  }
  unless = ["see-flame=no-flame", "see-hold=no-flame", "pump-feel=silent"]
}

check "gurgle-look" {
  stage    = "watch"
  name     = "sound in the pipes"
  function = "look"
  part     = "air-lock"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Listen at the highest radiator."
  ask      = "Do you hear the pipes gurgle?"
  option "quiet" {
    when  = air-lock.ok
    label = "No"
  }
  option "gurgles" {
    label = "Yes"
  }
}

check "kettle" {
  stage    = "watch"
  name     = "sound of the boiler while it burns"
  function = "look"
  part     = "sections"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("5 min", "common practice, no source")
  skill    = "clear"
  act      = "Listen at the boiler while it burns."
  ask      = "Is the boiler quiet or banging?"
  option "quiet" {
    when  = sections.ok
    label = "Quiet"
  }
  option "bang" {
    stop  = "leak"
    label = "Banging"
  }
}

check "isolation-look" {
  stage    = "free"
  name     = "hand valves of the zone"
  function = "look"
  part     = "isolation"
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow both pipes of the cold zone."
  ask      = "Are its hand valves open or closed?"
  option "open" {
    when  = isolation.ok
    label = "Open"
  }
  option "closed" {
    label = "Closed"
  }
}

check "frost-look" {
  stage    = "free"
  name     = "cold parts of the zone"
  function = "look"
  part     = "frost"
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Feel the pipes in outside walls and crawl spaces."
  ask      = "Are the pipes free or frozen?"
  option "free" {
    when  = frost.ok
    label = "Free"
  }
  option "frozen" {
    stop  = "frozen"
    label = "Frozen"
  }
}

check "aquastat-look" {
  stage    = "free"
  name     = "setting of the high limit"
  function = "look"
  part     = "aquastat"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the number on the limit box. Turn nothing."
  ask      = "Is it above or below 160 degrees?"
  option "above" {
    when  = aquastat.ok
    label = "Above"
  }
  option "below" {
    label = "Below 160 degrees"
  }
}

# ---- measurements ----

check "zone-v" {
  stage    = "plan"
  name     = "volts at the zone valve"
  function = "volts-ac"
  part     = "zone-valve"
  red      = "zone-w"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "zone-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "end-v" {
  stage    = "plan"
  name     = "volts across the end switch"
  function = "volts-ac"
  part     = "end-switch"
  red      = "end-in"
  black    = "end-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  hazard   = "low"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn the thermostat up. Wait three minutes. Then read the volts."
}

check "tt-v" {
  stage    = "plan"
  name     = "heat signal at the boiler"
  function = "volts-ac"
  part     = "end-switch"
  red      = "tt"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "lwco-v" {
  stage    = "plan"
  name     = "volts across the low-water cutoff"
  function = "volts-ac"
  part     = "lwco"
  red      = "string-end"
  black    = "lw-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "lwco-lamp"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "zone-ohms" {
  stage    = "plan"
  name     = "motor of the zone valve"
  function = "ohms"
  part     = "zone-valve"
  red      = "zone-a"
  black    = "zone-b"
  unit     = "ohm"
  limit    = between(20, 250, "from memory")
  power    = "off"
  lift     = ["zone-a", "zone-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "relay-ohms" {
  stage    = "plan"
  name     = "coil of the pump relay"
  function = "ohms"
  part     = "pump-relay"
  red      = "relay-1"
  black    = "relay-2"
  unit     = "ohm"
  limit    = between(20, 600, "from memory")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["relay-1", "relay-2"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "pump-v" {
  stage    = "plan"
  name     = "volts to the circulator pump"
  function = "volts-ac"
  part     = "pump-relay"
  red      = "pump-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "pilot"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "relay-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn the thermostat up. Then read the volts."
  caution  = "House voltage. Use one hand only."
}

check "pump-ohms" {
  stage    = "plan"
  name     = "winding of the circulator pump"
  function = "ohms"
  part     = "circulator"
  red      = "pump-a"
  black    = "pump-b"
  unit     = "ohm"
  limit    = between(3, 120, "from memory")
  power    = "off"
  places   = ["lower-bay"]
  lift     = ["pump-a", "pump-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "pump-frame" {
  stage    = "plan"
  name     = "pump winding to its frame"
  function = "ohms"
  part     = "circulator"
  red      = "pump-a"
  black    = "frame"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  lift     = ["pump-a", "pump-b"]
  hands_in = true
  hazard   = "none"
  must     = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "again-pipes" {
  stage    = "restart"
  name     = "zone pipes after the repair"
  function = "look"
  part     = "air-lock"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  act      = "Feel both zone pipes."
  caution  = "Hot pipes. Touch them briefly."
  ask      = "Are all zone pipes warm or hot?"
  option "yes" {
    when  = flow > 0.3 && lit > 0.5
    label = "Yes"
  }
  option "no" {
    label = "No"
  }
}

# ---- repairs ----

repair "replace-zone-head" {
  name    = "replace the head of the zone valve"
  part    = "zone-valve"
  kind    = "replace"
  price   = q("60..140 money", "from memory")
  minutes = q("20..40 min", "from memory")
  match   = ["make of the body", "volts", "end switch"]
  causes  = ["zone-v"]
  confirm = "end-v"
  note    = "Only the head with the motor comes off. The body stays in the pipe."
  step {
    act  = "Take a photo. Move the first motor wire."
    wire = "zone-a"
  }
  step {
    act  = "Move the second motor wire."
    wire = "zone-b"
  }
  step {
    act  = "Move both wires of the end switch."
    wire = "end-in"
  }
  step {
    act     = "Press its button. Turn the head off. Put the new one on."
    caution = "Never loosen the body. Hot water comes out."
    level   = "danger"
  }
}

repair "open-isolation" {
  name    = "open the hand valve of the zone"
  part    = "isolation"
  kind    = "open"
  minutes = q("2..10 min", "from memory")
  confirm = "isolation-look"
  step {
    act     = "Find out why it was closed. Then open it slowly."
    caution = "Hot pipes. Do not force an old valve."
    level   = "caution"
    power   = "on"
  }
}

repair "bleed-zone" {
  name    = "let the air out of the zone"
  part    = "air-lock"
  kind    = "clean"
  minutes = q("15..60 min", "from memory")
  confirm = "gurgle-look"
  step {
    act     = "Turn the pump off. Open the highest vent until water comes."
    caution = "Hot water. Hold a rag and a cup."
    level   = "warning"
    power   = "off"
  }
  step {
    act     = "Close the vent. Read the gauge again."
    caution = "If it is below 12, fill it only when it is cold."
    level   = "caution"
    power   = "off"
  }
}

repair "fill-cold" {
  name    = "fill the cold boiler to its mark"
  part    = "water"
  kind    = "set"
  minutes = q("60..120 min", "from memory")
  causes  = ["relief-look", "hiss"]
  confirm = "gauge-look"
  note    = "If it is low again in some weeks, it leaks somewhere."
  step {
    act     = "Leave it off until the boiler feels cold."
    caution = "Never fill a hot boiler. It can burst."
    level   = "danger"
    power   = "off"
  }
  step {
    act     = "Open the fill valve a few seconds at a time. Stop at 15."
    caution = "Never above 15 when cold. Watch the gauge all the time."
    level   = "warning"
    power   = "off"
  }
}

repair "replace-relay" {
  name    = "replace the relay of the circulator pump"
  part    = "pump-relay"
  kind    = "replace"
  price   = q("20..90 money", "from memory")
  minutes = q("20..40 min", "from memory")
  match   = ["coil volts", "contact amps", "terminals"]
  causes  = ["pump-ohms", "pump-frame", "rules"]
  confirm = "pump-feel"
  step {
    act    = "Take a photo of every wire."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the coil wires."
    wire   = "relay-1"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the two thick wires, one at a time."
    wire   = "pump-out"
    places = ["upper-bay"]
  }
}

repair "call-circulator" {
  name    = "call licensed help for the circulator pump"
  part    = "circulator"
  kind    = "call"
  stop    = "water-side"
  minutes = q("0..10 min", "from memory")
  confirm = "pump-feel"
}

repair "call-frozen" {
  name    = "call a plumber: a heating pipe is frozen"
  part    = "frost"
  kind    = "call"
  stop    = "frozen"
  minutes = q("0..10 min", "from memory")
  confirm = "frost-look"
}

repair "call-lwco" {
  name    = "call licensed help for the low-water cutoff"
  part    = "lwco"
  kind    = "call"
  stop    = "dry"
  minutes = q("0..10 min", "from memory")
  confirm = "lwco-v"
}

repair "call-tank" {
  name    = "call licensed help for the expansion tank"
  part    = "tank"
  kind    = "call"
  stop    = "relief"
  minutes = q("0..10 min", "from memory")
  confirm = "gauge-look"
}

repair "call-relief" {
  name    = "call licensed help for the relief valve"
  part    = "relief"
  kind    = "call"
  stop    = "relief"
  minutes = q("0..10 min", "from memory")
  confirm = "relief-look"
}

repair "call-aquastat" {
  name    = "call licensed help to set the high limit"
  part    = "aquastat"
  kind    = "call"
  stop    = "water-side"
  minutes = q("0..10 min", "from memory")
  confirm = "aquastat-look"
}

repair "call-limed" {
  name    = "call licensed help: the boiler is full of lime"
  part    = "sections"
  kind    = "call"
  stop    = "leak"
  minutes = q("0..10 min", "from memory")
  confirm = "kettle"
}

# ---- stop lines of water ----

stop "dry" {
  say  = "The boiler may be short of water."
  call = "a licensed boiler technician"
  tell = "Say what the gauge shows and whether it hissed."
  now  = "Leave it off. Close the gas valve by hand. Add no water while it is hot."
}

stop "relief" {
  say  = "The boiler has too much pressure, or its relief valve drips."
  call = "a licensed boiler technician"
  tell = "Say the pressure cold and hot, and how much water comes out."
  now  = "Leave it off. Never plug the pipe. Touch no lever."
}

stop "leak" {
  say  = "The boiler body may be damaged."
  call = "a licensed boiler technician"
  tell = "Say where you see water and what it sounds like."
  now  = "Leave it off. Keep away from steam."
}

stop "frozen" {
  say  = "A heating pipe is frozen and may have split."
  call = "a plumber"
  tell = "Say which rooms stay cold and where the pipe is cold."
  now  = "Leave it off. Know where to shut off the water. No flame on pipes."
}

stop "water-side" {
  say  = "Pumps and settings of a boiler need a licensed person."
  call = "a licensed boiler technician"
  tell = "Say what the pump did and what the gauge shows."
  now  = "Leave it off."
}

accept {
  why = "What people tell, hear or see goes beyond the simulated faults: such an answer is heard, and weighed as an odd one."
  warnings = [
    "no fault makes anybody answer \"short-flame\" to check see-hold",
    "no fault makes anybody answer \"stops-early\" to check story-what",
    "no fault makes anybody answer \"never-stops\" to check story-what",
    "no fault makes anybody answer \"no-air\" to check tissue",
  ]
}

# What its pictures are drawn as.
sketch {
  places = {
    room       = "room", living = "rooms", wall-stat = "wall", stat-base = "wall-base", breakers = "breakers", outside = "outdoors", front = "front",
    switch-box = "switch", splice = "splice", upper-bay = "upper", burner-box = "burners", lower-bay = "lower"
  }
  parts = {
    supply         = "outlet", breaker = "breaker", line-run = "switch", neutral-run = "switch", ground-run = "switch", furnace-switch = "switch",
    junction       = "splice", line-lead = "spade", neutral-lead = "spade", transformer = "transformer", secondary-lead = "spade", common-lead = "spade",
    common-bond    = "metal", board-fuse = "fuse", r-splice = "splice", r-wire = "splice", r-terminal = "terminals", c-wire = "splice",
    batteries      = "battery", stat-mode = "thermostat", setpoint = "thermostat", stat-setup = "thermostat", thermostat = "thermostat",
    power-stealing = "thermostat", w-terminal = "terminals", w-wire = "splice", w-splice = "splice", w-tail = "board", limit-lead = "disc",
    high-limit     = "disc", rollout-left = "disc-reset", rollout-right = "disc-reset", string-lead = "plug", vent = "pipe", vent-joints = "pipe",
    gas-supply     = "gas-cock", gas-cock = "gas-cock", valve-switch = "gas-valve", valve-lead = "gas-valve", valve-common = "gas-valve",
    gas-valve      = "gas-valve", orifice = "nozzle", burners = "burner", crossover = "burner", flame-rod = "rod", flame-lead = "rod",
    burner-ground  = "metal", exchanger = "exchanger", board = "board"
  }
  points = {
    outlet-hot   = "outlet.hot", outlet-neutral = "outlet.neutral", box-in = "switch.a", box-out = "switch.b", box-neutral = "splice.a",
    box-ground   = "metal.a", door-in = "door-switch.a", door-out = "door-switch.b", door-n = "splice.b", line-in = "splice.a", neutral-in = "splice.b",
    board-l      = "board.L", board-n = "board.N", frame = "metal.a", glow-out = "board.I", secondary-a = "transformer.s1", secondary-b = "transformer.s2",
    board-24     = "board.P", board-c = "board.C", board-r = "board.R", board-w = "board.W", splice-r = "splice.a", splice-w = "splice.a",
    splice-w2    = "splice.b", splice-c = "splice.b", wall-r = "wire.a", wall-w = "wire.b", stat-r = "terminals.R", stat-rw = "wire.a",
    stat-w       = "terminals.W", stat-ww = "wire.b", stat-c = "terminals.C", limit-in = "disc.a", limit-out = "disc.b", roll-mid = "disc-reset.b",
    roll-out-end = "disc-reset.b", string-end = "board.P", gas-out = "board.P", valve-1 = "gas-valve.a", valve-2 = "gas-valve.b",
    flame-pin    = "board.F", rod-end = "rod.rod", lead-a = "wire.a", lead-b = "wire.b", burner-metal = "burner.a"
  }
}
