# The induced-draft gas furnace with a hot-surface igniter and a 24 V control board.
#
# This file says what the parts are, how they are joined, how each fails and how often, what the board does
# in order, and where a lead can be put. It holds no likelihood: the engine simulates every mode.
#
# The unit is nobody's product. Its status-light table, its layout and its numbers are typical ones; the rating
# plate, the wiring diagram and the label on the door of the real unit win over everything here.
# Layout: control board, transformer and burners behind the upper front panel, which trips nothing; blower and
# door switch behind the lower front panel. So the live checks need no held door switch.
# Rates stand for ranks: 8 often, 3 sometimes, 1 seldom, 0.3 rare. Only their ratios matter; a site may overwrite them.
# The igniter is taken for a carbide one (62 ohm cold, 30 ohm hot); its cold ohms are wide enough for a nitride one.
# Volts at a load are held against what may arrive there (106 to 127, ANSI C84.1 utilisation range B, from memory), not against the service.
# In a look, the first option is what a good appliance shows.

appliance "furnace-hsi" {
  title = "gas furnace with a draft fan and a hot igniter"
  fuel  = "gas"
  mains = true

  # its draft fan purges before every trial
  starts = q("16 x", "common practice, no source")
  dead   = ["line-in", "neutral-in", "frame"]
}

# ---- where the numbers come from ----

source "T03" { text = "gas technician training text, unit 3" }
source "T05" { text = "gas technician training text, unit 5" }
source "T11" { text = "gas technician training text, unit 11" }
source "T12" { text = "gas technician training text, unit 12" }
source "T13" { text = "gas technician training text, unit 13" }
source "T15" { text = "gas technician training text, unit 15" }
source "T17" { text = "gas technician training text, unit 17" }
source "T19" { text = "gas technician training text, unit 19" }
source "T22" { text = "gas technician training text, unit 22" }
source "T24" { text = "gas technician training text, unit 24" }
source "IRC" { text = "2018 residential code, appendix D, pages 870 to 874" }
source "EPA" { text = "US outdoor air limits, 9 ppm over 8 hours, not read in the original" }
source "ILL" { text = "Illinois Commerce Commission rule 410.300 (not read in the original)" }
source "MH" { text = "code newsletter on class 2 circuits" }
source "AIRH" { text = "web page on gas control circuits" }
source "HS" { text = "trainer's note on capacitance while running" }
source "STW" { text = "web page on stator winding tests" }
source "own" { text = "own case of this project, no outside source" }

# ---- where things are and what must be opened ----

place "room" {
  name  = "furnace room"
  where = "the room the furnace stands in"
}

place "living" {
  name  = "living space"
  where = "the rooms the furnace heats"
}

place "wall-stat" {
  name   = "thermostat"
  where  = "on a wall in the living space"
  within = "living"
}

place "stat-base" {
  name   = "thermostat cover"
  where  = "behind the thermostat, which pulls off its base"
  within = "wall-stat"
  cover  = true
  open   = q("1 min", "common practice, no source")
  close  = q("1 min", "common practice, no source")
}

place "breakers" {
  name   = "breaker panel"
  where  = "the gray metal door with the rows of breakers"
  within = "living"
}

place "outside" {
  name  = "outside wall"
  where = "where the vent pipe and the air intake end"
}

place "outdoor-unit" {
  name   = "outdoor unit"
  where  = "the cooling unit outside, never opened: it has its own power"
  within = "outside"
}

place "front" {
  name   = "furnace front"
  where  = "the outside of the furnace, with nothing opened"
  within = "room"
}

place "switch-box" {
  name     = "cover of the furnace switch"
  where    = "the box with the furnace switch"
  within   = "room"
  cover    = true
  open     = q("3 min", "common practice, no source")
  close    = q("3 min", "common practice, no source")
  hands_in = true
  hazards  = ["mains"]
}

place "pan" {
  name   = "drain pan"
  where  = "under the cooling coil, on top of the furnace"
  within = "room"
}

place "splice" {
  name   = "cable joint"
  where  = "where the thermostat cable enters the furnace"
  within = "room"
}

place "filter-slot" {
  name   = "filter slot"
  where  = "beside the lower front panel"
  within = "front"
}

place "upper-bay" {
  name     = "upper front panel"
  where    = "the top half of the furnace front"
  within   = "front"
  cover    = true
  open     = q("1 min", "common practice, no source")
  close    = q("1 min", "common practice, no source")
  hands_in = true
  hazards  = ["mains", "capacitor", "hot", "moving", "sharp", "gas"]
}

place "burner-box" {
  name     = "burner box cover"
  where    = "the small cover over the burners, with a few screws"
  within   = "upper-bay"
  cover    = true
  open     = q("2 min", "common practice, no source")
  close    = q("2 min", "common practice, no source")
  hands_in = true
  hazards  = ["hot", "gas", "sharp"]
}

place "lower-bay" {
  name     = "lower front panel"
  where    = "the bottom half of the furnace front"
  within   = "front"
  cover    = true
  open     = q("1 min", "common practice, no source")
  close    = q("1 min", "common practice, no source")
  trips    = ["door-switch"]
  hands_in = true
  hazards  = ["mains", "moving", "sharp", "capacitor"]
}

place "duct" {
  name   = "supply duct"
  where  = "the metal duct above the furnace"
  within = "room"
}

place "coil-box" {
  name     = "cooling coil cover"
  where    = "a sealed cover above the furnace, with many screws"
  within   = "room"
  cover    = true
  open     = q("15 min", "common practice, no source")
  close    = q("15 min", "common practice, no source")
  hands_in = true
  hazards  = ["sharp"]
}

# ---- 120 V: from the breaker to the board ----

part "supply" {
  kind  = "supply"
  name  = "house supply"
  place = "breakers"
  look  = "the lights and outlets of the house"
  ports = { l = "HOT", n = "NEU" }
  volts = q("120 V", 113, 127, "ILL")
  ohms  = q("0.15 ohm", "common practice, no source")
  mode "dead" {
    name   = "no power in the house"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "call-utility-power"
  }
}

part "breaker" {
  kind   = "fuse"
  name   = "furnace breaker"
  place  = "breakers"
  look   = "one lever in the panel, marked furnace"
  ports  = { a = "HOT", b = "B1" }
  rating = q("15 A", "common practice, no source")
  mode "off" {
    name   = "furnace breaker off or tripped"
    does   = "open"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "reset-breaker"
  }
  mode "worn" {
    name   = "furnace breaker worn out inside"
    does   = "open"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "line-run" {
  kind  = "wire"
  name  = "black power wire to the furnace"
  place = "switch-box"
  look  = "the black wire in the house cable"
  ports = { a = "B1", b = "LS-in" }
  mode "open" {
    name   = "black power wire to the furnace broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
  mode "loose" {
    name   = "black power wire loose, fails under load"
    does   = "resist"
    ohms   = q("2.8 ohm", 1, 6, "own")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "neutral-run" {
  kind  = "wire"
  name  = "white neutral wire to the furnace"
  place = "switch-box"
  look  = "the white wire in the house cable"
  ports = { a = "NEU", b = "NJ" }
  mode "open" {
    name   = "white neutral wire to the furnace broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
  mode "loose" {
    name   = "white neutral wire loose, fails under load"
    does   = "resist"
    ohms   = q("2.8 ohm", 1, 6, "own")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "ground-run" {
  kind  = "wire"
  name  = "ground wire to the furnace"
  place = "switch-box"
  look  = "the bare or green wire"
  ports = { a = "NEU", b = "CHASSIS" }
  mode "open" {
    name   = "ground wire to the furnace broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "furnace-switch" {
  kind   = "switch"
  name   = "furnace switch"
  place  = "front"
  look   = "looks like a light switch, on or near the furnace"
  ports  = { a = "LS-in", b = "LS-out" }
  closes = power
  mode "off" {
    name   = "furnace switch off"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "switch-on"
  }
  mode "open" {
    name   = "furnace switch worn out"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-electrician"
  }
}

part "junction" {
  kind  = "pair"
  name  = "wire joint at the furnace"
  place = "upper-bay"
  look  = "wire nuts, black to black and white to white"
  ports = { in1 = "LS-out", in2 = "NJ", out1 = "L1", out2 = "N" }
  mode "reversed" {
    name   = "black and white house wires swapped"
    does   = "swap"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "call-polarity"
  }
}

part "panel-seat" {
  kind  = "thing"
  name  = "fit of the lower front panel"
  place = "front"
  look  = "hooks and edge of the lower front panel"
  mode "ajar" {
    name   = "lower front panel not fully closed"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "seat-panel"
  }
}

part "door-switch" {
  kind   = "switch"
  name   = "door switch"
  place  = "lower-bay"
  look   = "small push button behind the lower front panel"
  ports  = { a = "L1", b = "L-door" }
  closes = panel-seat.value > 0.5
  safety = true
  mode "open" {
    name   = "door switch worn out"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-door-switch"
  }
}

part "line-lead" {
  kind  = "wire"
  name  = "black power wire to the board"
  place = "lower-bay"
  look  = "black wire from the door switch to the board"
  ports = { a = "L-door", b = "LB" }
  mode "loose" {
    name   = "black power wire off or burned at the board"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-line-lead"
  }
}

part "neutral-lead" {
  kind  = "wire"
  name  = "white neutral wire to the board"
  place = "upper-bay"
  look  = "the white wire to the row of white wires on the board"
  ports = { a = "N", b = "NB" }
  mode "loose" {
    name   = "white neutral wire off at the board"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-neutral-lead"
  }
}

# ---- 24 V: transformer, fuse, thermostat loop ----

part "transformer" {
  kind           = "transformer"
  name           = "transformer"
  place          = "upper-bay"
  look           = "square block with two thick wires in and two thin wires out"
  ports          = { p1 = "LB", p2 = "NB", s1 = "SEC-R", s2 = "SEC-C" }
  primary        = q("120 V", "plate")
  secondary      = q("26.5 V", 25.5, 27.5, "T12")
  rating         = q("40 W", "common practice, no source")
  primary_ohms   = q("12 ohm", 2, 40, "common practice, no source")
  secondary_ohms = q("0.6 ohm", 0.2, 1.6, "common practice, no source")
  mode "primary-open" {
    name   = "transformer burned out on the house voltage side"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "secondary-open" {
    name   = "transformer burned out on the low voltage side"
    does   = "open-secondary"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "link-open" {
    name   = "hidden fuse inside the transformer open"
    does   = "open-primary"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-transformer"
  }
  mode "weak" {
    name   = "transformer weak, its volts sag under load"
    does   = "resist"
    ohms   = q("25 ohm", "common practice, no source")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-transformer"
  }
}

part "secondary-lead" {
  kind  = "wire"
  name  = "R wire of the transformer"
  place = "upper-bay"
  look  = "thin red wire from the transformer to the board"
  ports = { a = "SEC-R", b = "R-sec" }
  mode "loose" {
    name   = "R wire of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-secondary-lead"
  }
}

part "common-lead" {
  kind  = "wire"
  name  = "C wire of the transformer"
  place = "upper-bay"
  look  = "thin blue or black wire from the transformer to the board"
  ports = { a = "SEC-C", b = "C" }
  mode "loose" {
    name   = "C wire of the transformer off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-common-lead"
  }
}

part "common-bond" {
  kind  = "wire"
  name  = "ground wire of terminal C"
  place = "upper-bay"
  look  = "short wire from the board to bare metal"
  ports = { a = "C", b = "CHASSIS" }
  mode "open" {
    name   = "ground wire of terminal C off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "tighten-common-bond"
  }
}

part "board-fuse" {
  kind   = "fuse"
  name   = "board fuse"
  place  = "upper-bay"
  look   = "flat plug-in fuse on the board, as in a car"
  ports  = { a = "R-sec", b = "R" }
  rating = q("3 A", "common practice, no source")
  mode "blown" {
    name   = "board fuse blown, and nothing is shorted now"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-fuse"
  }
}

part "contactor" {
  kind  = "load"
  name  = "coil of the outdoor unit"
  place = "outdoor-unit"
  look  = "relay block with a coil and two thin wires"
  ports = { a = "Y-out", b = "C" }
  ohms  = q("60 ohm", 30, 100, "common practice, no source")
  cold  = q("15 ohm", 5, 25, "common practice, no source")
  works = q("18 V", "common practice, no source")
  mode "shorted" {
    name   = "coil of the outdoor unit shorted"
    does   = "short"
    ohms   = q("2 ohm", 0.3, 5, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "isolate-outdoor"
  }
}

part "y-wire" {
  kind  = "wire"
  name  = "Y wire to the outdoor unit"
  place = "splice"
  look  = "yellow wire in the outdoor cable"
  ports = { a = "Y", b = "Y-out" }
  mode "pinched" {
    name   = "Y wire pinched against common"
    does   = "touch"
    to     = "C"
    at     = "b"
    ohms   = q("0.5 ohm", 0.1, 3, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "repair-y-wire"
  }
}

# What blew the fuse may be at rest now: a cooling call is let happen in the past when the outdoor circuit is shorted.
part "cool-contact" {
  kind   = "contact"
  name   = "cooling contact of the thermostat"
  place  = "wall-stat"
  look   = "inside the thermostat, not visible"
  ports  = { a = "R", b = "Y" }
  closes = call && (mode("contactor.shorted") || mode("y-wire.pinched") || mode("stat-setup.heat-pump"))
}

part "drain" {
  kind  = "passage"
  name  = "cooling coil drain"
  place = "pan"
  look  = "plastic pipe out of the drain pan"
  mode "blocked" {
    name   = "cooling coil drain blocked, pan full"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "clear-drain"
  }
}

part "float-switch" {
  kind   = "contact"
  name   = "float switch"
  place  = "pan"
  look   = "small switch with a float in the drain pan"
  ports  = { a = "R", b = "R-float" }
  closes = drain.passes > 0.5
  safety = true
  mode "stuck" {
    name   = "float switch stuck up"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-float-switch"
  }
}

part "float-lead" {
  kind  = "wire"
  name  = "wire of the float switch"
  place = "pan"
  look  = "the wire on the float switch"
  ports = { a = "R-float", b = "R-fl2" }
  mode "off" {
    name   = "wire of the float switch off"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "refit-float-lead"
  }
}

part "r-splice" {
  kind  = "wire"
  name  = "red wire joint"
  place = "splice"
  look  = "wire nut on the red wires"
  ports = { a = "R-fl2", b = "R-splice" }
  mode "open" {
    name   = "red wire joint open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "remake-r-splice"
  }
}

part "r-wire" {
  kind  = "wire"
  name  = "R wire in the wall"
  place = "splice"
  look  = "red wire in the thermostat cable"
  ports = { a = "R-splice", b = "R-wall" }
  mode "broken" {
    name   = "R wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-cable"
  }
  mode "pinched" {
    name   = "thermostat cable pinched, red wire touches common"
    does   = "touch"
    to     = "C"
    at     = "b"
    ohms   = q("0.5 ohm", 0.1, 3, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-cable"
  }
}

part "r-terminal" {
  kind  = "wire"
  name  = "R wire at the thermostat"
  place = "stat-base"
  look  = "red wire at terminal R of the thermostat"
  ports = { a = "R-wall", b = "R-stat" }
  mode "off" {
    name   = "R wire off at the thermostat"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-stat-wire"
  }
}

part "c-wire" {
  kind  = "wire"
  name  = "C wire in the wall"
  place = "splice"
  look  = "blue or black wire in the thermostat cable"
  ports = { a = "C", b = "C-stat" }
  mode "broken" {
    name   = "C wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "use-spare-common"
  }
}

part "batteries" {
  kind  = "thing"
  name  = "thermostat batteries"
  place = "wall-stat"
  look  = "small batteries in the thermostat"
  mode "dead" {
    name   = "thermostat batteries dead"
    does   = "off"
    rate   = q("8 x", "common practice, no source")
    repair = "change-batteries"
  }
}

part "stat-mode" {
  kind  = "thing"
  name  = "thermostat mode"
  place = "wall-stat"
  look  = "the heat, off, cool setting"
  mode "cool" {
    name   = "thermostat set to cool"
    does   = "wrong"
    wrong  = true
    rate   = q("8 x", "common practice, no source")
    repair = "set-heat"
  }
  mode "off" {
    name   = "thermostat set to off"
    does   = "wrong"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-heat"
  }
}

part "setpoint" {
  kind  = "thing"
  name  = "set temperature"
  place = "wall-stat"
  look  = "the temperature you ask for"
  mode "low" {
    name   = "set temperature below the room temperature"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-point"
  }
  mode "schedule" {
    name   = "schedule keeps the room at the lower temperature"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "set-schedule"
  }
  mode "reads-warm" {
    name   = "thermostat reads warmer than the room"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "move-thermostat"
  }
}

part "stat-setup" {
  kind  = "thing"
  name  = "thermostat setup"
  place = "wall-stat"
  look  = "installer menu of the thermostat"
  mode "heat-pump" {
    name   = "thermostat set up for a heat pump"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-heat-type"
  }
}

part "thermostat" {
  kind   = "contact"
  name   = "thermostat"
  place  = "wall-stat"
  look   = "on the wall, shows the room temperature"
  ports  = { a = "R-stat", b = "W-stat" }
  closes = call && batteries.value > 0.5 && c-wire.ok && !mode("stat-mode.cool") && !mode("stat-mode.off") && setpoint.value > 0.5 && stat-setup.value > 0.5 && !mode("power-stealing.leaks")
  mode "open" {
    name   = "thermostat contacts never close"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-thermostat"
  }
  mode "burnt" {
    name   = "thermostat contacts burned"
    does   = "resist"
    ohms   = q("3500 ohm", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-thermostat"
  }
}

part "power-stealing" {
  kind  = "wire"
  name  = "power supply of the thermostat"
  place = "wall-stat"
  look  = "thermostat with no common wire"
  ports = { a = "R-stat", b = "W-stat" }
  ohms  = q("30000000 ohm", 200000, 100000000, "common practice, no source") # from hardly any to nothing measurable
  mode "leaks" {
    name   = "thermostat without a common wire, never switches fully"
    does   = "set"
    ohms   = q("1200 ohm", "from memory")
    rate   = q("1 x", "common practice, no source")
    repair = "add-common-wire"
  }
}

part "w-terminal" {
  kind  = "wire"
  name  = "W wire at the thermostat"
  place = "stat-base"
  look  = "white wire at terminal W of the thermostat"
  ports = { a = "W-stat", b = "W-wall" }
  mode "off" {
    name   = "W wire off at the thermostat"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-stat-wire"
  }
}

part "w-wire" {
  kind  = "wire"
  name  = "W wire in the wall"
  place = "splice"
  look  = "white wire in the thermostat cable"
  ports = { a = "W-wall", b = "W-splice" }
  mode "broken" {
    name   = "W wire in the wall broken"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-cable"
  }
}

part "w-splice" {
  kind  = "wire"
  name  = "white wire joint"
  place = "splice"
  look  = "wire nut on the white wires"
  ports = { a = "W-splice", b = "W-tail" }
  mode "open" {
    name   = "white wire joint open"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "remake-w-splice"
  }
}

part "w-tail" {
  kind  = "wire"
  name  = "W wire at the board"
  place = "upper-bay"
  look  = "white wire at terminal W of the board"
  ports = { a = "W-tail", b = "W" }
  mode "loose" {
    name   = "wire connector at terminal W loose, comes and goes"
    does   = "open"
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "crimp-w"
  }
  mode "wrong-terminal" {
    name   = "W wire on terminal Y instead of W"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "move-w-wire"
  }
}

part "y-terminal" {
  kind   = "contact"
  name   = "terminal Y of the board"
  place  = "upper-bay"
  look   = "beside terminal W in the low voltage row"
  ports  = { a = "W-tail", b = "Y" }
  closes = mode("w-tail.wrong-terminal")
}

# ---- the safety string ----

part "limit-lead" {
  kind  = "wire"
  name  = "wire to the high limit"
  place = "upper-bay"
  look  = "wire from the board plug to the high limit"
  ports = { a = "R", b = "LIM-in" }
  mode "off" {
    name   = "wire to the high limit off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-limit-lead"
  }
}

part "high-limit" {
  kind    = "contact"
  name    = "high limit"
  place   = "upper-bay"
  look    = "small round switch or probe on the heat exchanger wall"
  ports   = { a = "LIM-in", b = "LIM-out" }
  set     = q("200 degF", "T19")
  trips   = reached("steady") && limit-heat > high-limit.set
  reset   = "auto"
  safety  = true
  numbers = { room = q("70 degF", "common practice, no source"), gain = q("1.45 x", "own") }
  mode "open" {
    name   = "high limit switch broken"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "early" {
    name   = "high limit switch opens far too early"
    does   = "set"
    set    = q("140 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-limit"
  }
  mode "burnt" {
    name   = "contacts of the high limit burned"
    does   = "resist"
    ohms   = q("60 ohm", 20, 120, "own")
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-limit"
  }
}

part "rollout-left" {
  kind   = "contact"
  name   = "left roll-out switch"
  place  = "upper-bay"
  look   = "small round switch with a button, left of the burners"
  ports  = { a = "LIM-out", b = "RO-mid" }
  trips  = flame-outside > 0.5
  reset  = "manual"
  safety = true
  stop   = "roll-out"
  mode "tripped" {
    name   = "left roll-out switch open"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

part "rollout-right" {
  kind   = "contact"
  name   = "right roll-out switch"
  place  = "upper-bay"
  look   = "small round switch with a button, right of the burners"
  ports  = { a = "RO-mid", b = "RO-out" }
  reset  = "manual"
  safety = true
  stop   = "roll-out"
  mode "tripped" {
    name   = "right roll-out switch open"
    does   = "stuck-open"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

part "string-lead" {
  kind  = "wire"
  name  = "wire from the roll-out switches to the board"
  place = "upper-bay"
  look  = "wire into the large plug of the board"
  ports = { a = "RO-out", b = "HS" }
  mode "off" {
    name   = "wire from the roll-out switches off, or its pin pushed out"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-string-lead"
  }
}

# ---- draft ----

part "vent" {
  kind  = "passage"
  name  = "vent pipe"
  place = "outside"
  look  = "metal pipe that carries the exhaust out"
  mode "blocked" {
    name   = "vent pipe blocked"
    does   = "factor"
    factor = q("0.19 x", 0.02, 0.5, "own")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-vent"
  }
  mode "partly" {
    name   = "vent pipe partly blocked, fails in wind"
    does   = "factor"
    factor = q("0.45 x", 0.3, 0.52, "common practice, no source")
    hidden = q("50 %", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clear-vent"
  }
}

part "vent-joints" {
  kind  = "thing"
  name  = "vent pipe joints"
  place = "room"
  look  = "where the pieces of the vent pipe meet"
  mode "apart" {
    name   = "vent pipe apart at a joint"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-vent"
  }
}

part "air-intake" {
  kind  = "passage"
  name  = "air intake"
  place = "outside"
  look  = "opening or pipe that brings air to the burners"
  mode "blocked" {
    name   = "air intake blocked"
    does   = "factor"
    factor = q("0.3 x", 0.03, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-intake"
  }
}

part "inducer-drain" {
  kind  = "passage"
  name  = "drain of the draft fan"
  place = "upper-bay"
  look  = "small tube under the draft fan housing"
  mode "blocked" {
    name   = "water stands in the draft fan"
    does   = "factor"
    factor = q("0.4 x", 0.05, 0.52, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "clear-inducer-drain"
  }
}

part "port" {
  kind  = "passage"
  name  = "pressure port"
  place = "upper-bay"
  look  = "small hose port on the draft fan"
  mode "plugged" {
    name   = "pressure port plugged"
    does   = "factor"
    factor = q("0.1 x", 0.01, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clear-port"
  }
}

part "hose" {
  kind  = "passage"
  name  = "pressure hose"
  place = "upper-bay"
  look  = "rubber hose from the draft fan to the pressure switch"
  mode "split" {
    name   = "pressure hose split"
    does   = "factor"
    factor = q("0.3 x", 0.02, 0.5, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-hose"
  }
  mode "off" {
    name   = "pressure hose off its port"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-hose"
  }
  mode "wet" {
    name   = "water in the pressure hose"
    does   = "factor"
    factor = q("0.4 x", 0.05, 0.52, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "drain-hose"
  }
}

part "pressure-switch" {
  kind   = "contact"
  name   = "pressure switch"
  place  = "upper-bay"
  look   = "round, with a rubber hose and two wires"
  ports  = { a = "HS", b = "PS-b" }
  set    = q("0.5 inH2O", "T13")
  closes = sensed-draft >= pressure-switch.set
  safety = true
  mode "stuck-open" {
    name   = "pressure switch never closes"
    does   = "stuck-open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "stuck-closed" {
    name   = "pressure switch stuck closed"
    does   = "stuck-closed"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "wrong-part" {
    name   = "wrong pressure switch, with another setting"
    does   = "set"
    set    = q("1.2 inH2O", "own")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
  mode "burnt" {
    name   = "contacts of the pressure switch burned"
    does   = "resist"
    ohms   = q("60 ohm", 20, 120, "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-pressure-switch"
  }
}

part "pressure-lead" {
  kind  = "wire"
  name  = "wire from the pressure switch to the board"
  place = "upper-bay"
  look  = "wire from the pressure switch to the board plug"
  ports = { a = "PS-b", b = "PS-out" }
  mode "off" {
    name   = "wire from the pressure switch off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-pressure-lead"
  }
}

part "left-jumper" {
  kind   = "switch"
  name   = "jumper wire left by a repair"
  place  = "upper-bay"
  look   = "short wire across the two pressure switch terminals"
  ports  = { a = "HS", b = "PS-out" }
  closes = 1 < 0
  mode "left-in" {
    name   = "jumper wire left across the pressure switch"
    does   = "stuck-closed"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "remove-jumper"
  }
}

part "inducer-plug" {
  kind  = "wire"
  name  = "plug of the draft fan"
  place = "upper-bay"
  look  = "two-pin plug in the draft fan wires"
  ports = { a = "IND", b = "IND-m" }
  mode "open" {
    name   = "plug of the draft fan loose or burned"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-inducer-plug"
  }
}

part "inducer-capacitor" {
  kind  = "capacitor"
  name  = "capacitor of the draft fan"
  place = "upper-bay"
  look  = "small can or box with two wires, by the draft fan"
  ports = { a = "IND-m", b = "IND-n" }
  value = q("5 uF", 4.7, 5.3, "HS")
  mode "weak" {
    name   = "capacitor of the draft fan weak"
    does   = "weak"
    factor = q("0.62 x", 0.2, 0.85, "own")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer-capacitor"
  }
  mode "open" {
    name   = "capacitor of the draft fan dead"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer-capacitor"
  }
}

part "inducer" {
  kind    = "load"
  name    = "draft fan"
  place   = "upper-bay"
  look    = "motor with a round housing, at the vent pipe"
  ports   = { a = "IND-m", b = "IND-n" }
  ohms    = q("80 ohm", 45, 115, "common practice, no source")
  cold    = q("14 ohm", 5, 30, "own")
  works   = q("80 V", "common practice, no source")
  motor   = "yes"
  needs   = inducer-capacitor.healthy > 0.8 ? 1 : (inducer-capacitor.healthy > 0.3 ? 0.4 : 0)
  numbers = { draft = q("0.95 inH2O", "own") }
  mode "winding-open" {
    name   = "motor of the draft fan burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "seized" {
    name   = "draft fan stuck"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
  mode "dragging" {
    name   = "bearings of the draft fan rough"
    does   = "weak"
    factor = q("0.45 x", 0.2, 0.52, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

part "inducer-protector" {
  kind    = "contact"
  name    = "overheat protector of the draft fan"
  place   = "upper-bay"
  look    = "inside the motor, not visible"
  ports   = { a = "IND-n", b = "NB" }
  set     = q("250 degF", "from memory")
  trips   = reached("heating") && fan-heat > inducer-protector.set
  reset   = "auto"
  numbers = { cold = q("70 degF", "common practice, no source"), warm = q("160 degF", "from memory") }
  mode "early" {
    name   = "draft fan stops when hot"
    does   = "set"
    set    = q("100 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

part "inducer-wheel" {
  kind  = "passage"
  name  = "wheel of the draft fan"
  place = "upper-bay"
  look  = "small wheel with blades in the round housing"
  mode "loose" {
    name   = "wheel of the draft fan loose on its shaft"
    does   = "factor"
    factor = q("0.2 x", 0.02, 0.45, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-inducer"
  }
}

# ---- igniter ----

part "igniter-plug" {
  kind  = "wire"
  name  = "igniter plug"
  place = "upper-bay"
  look  = "white two-pin plug in the igniter wires"
  ports = { a = "IGN", b = "IGN-m" }
  mode "open" {
    name   = "igniter plug burned or loose"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "refit-igniter-plug"
  }
}

part "igniter" {
  kind  = "load"
  name  = "igniter"
  place = "burner-box"
  look  = "rough gray strip or smooth dark rod on a white block"
  ports = { a = "IGN-m", b = "IGN-n" }
  ohms  = q("30 ohm", "own")
  cold  = q("62 ohm", 11, 110, "common practice, no source")
  works = q("107 V", "common practice, no source")
  mode "open" {
    name   = "igniter cracked"
    does   = "open"
    rate   = q("8 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "hot-crack" {
    name   = "igniter has a crack that opens when hot"
    does   = "set"
    cold   = q("62 ohm", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "aged" {
    name   = "igniter worn, glows weakly"
    does   = "set"
    ohms   = q("75 ohm", "common practice, no source")
    cold   = q("150 ohm", "common practice, no source")
    works  = q("140 V", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-igniter"
  }
  mode "wrong-part" {
    name   = "wrong kind of igniter"
    does   = "set"
    ohms   = q("160 ohm", "common practice, no source")
    cold   = q("320 ohm", "common practice, no source")
    works  = q("140 V", "common practice, no source")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "replace-igniter"
  }
}

part "igniter-legs" {
  kind   = "contact"
  name   = "second leg of the igniter"
  place  = "burner-box"
  look   = "metal leg in the white block"
  ports  = { a = "IGN-n", b = "NB" }
  closes = !(mode("igniter.hot-crack") && reached("trial"))
}

part "igniter-bracket" {
  kind  = "thing"
  name  = "igniter bracket"
  place = "burner-box"
  look  = "screw and bracket that hold the igniter"
  mode "moved" {
    name   = "igniter out of place"
    does   = "off"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-igniter"
  }
}

# ---- gas and burners ----

part "gas-supply" {
  kind    = "passage"
  name    = "gas supply"
  place   = "room"
  look    = "the gas meter or the tank outside"
  stop    = "gas-train"
  numbers = { pressure = q("7.1 inH2O", "T15") }
  mode "off" {
    name   = "gas supply to the house off"
    does   = "off"
    rate   = q("3 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "tank-empty" {
    name   = "gas tank empty or its valve closed"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "meter-iced" {
    name   = "gas meter iced, or a safety valve at the meter has shut"
    does   = "off"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-gas-utility"
  }
  mode "low" {
    name   = "gas supply pressure low"
    does   = "factor"
    factor = q("0.4 x", 0.1, 0.65, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-utility"
  }
}

part "gas-cock" {
  kind  = "passage"
  name  = "gas cock"
  place = "front"
  look  = "small handle on the gas pipe beside the furnace"
  mode "closed" {
    name   = "gas cock closed"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "open-gas-cock"
  }
}

part "valve-switch" {
  kind  = "passage"
  name  = "switch on the gas valve"
  place = "upper-bay"
  look  = "small switch or knob on top of the gas valve"
  mode "off" {
    name   = "switch on the gas valve off"
    does   = "off"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "valve-switch-on"
  }
}

part "valve-lead" {
  kind  = "wire"
  name  = "gas valve wire"
  place = "upper-bay"
  look  = "wire from the board to the gas valve"
  ports = { a = "GV", b = "GV-1" }
  mode "off" {
    name   = "gas valve wire off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-valve-lead"
  }
}

part "valve-common" {
  kind  = "wire"
  name  = "common wire of the gas valve"
  place = "upper-bay"
  look  = "second wire on the gas valve"
  ports = { a = "GV-2", b = "C" }
  mode "off" {
    name   = "common wire of the gas valve off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-valve-common"
  }
}

part "gas-valve" {
  kind  = "load"
  name  = "gas valve"
  place = "upper-bay"
  look  = "block in the gas pipe with two or three wires"
  ports = { a = "GV-1", b = "GV-2" }
  ohms  = q("60 ohm", 35, 85, "common practice, no source")
  cold  = q("40 ohm", 20, 60, "common practice, no source")
  works = q("18 V", "common practice, no source")
  stop  = "gas-train"
  mode "coil-open" {
    name   = "coil of the gas valve burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "coil-shorted" {
    name   = "coil of the gas valve shorted"
    does   = "short"
    ohms   = q("2 ohm", 0.3, 7, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "stuck" {
    name   = "gas valve does not open, though it has power"
    does   = "stuck"
    rate   = q("1 x", "common practice, no source")
    repair = "call-gas-valve"
  }
  mode "leaking" {
    name   = "gas valve does not close"
    does   = "always"
    rate   = q("0.3 x", "common practice, no source")
    repair = "call-gas-valve"
  }
}

part "orifice" {
  kind    = "passage"
  name    = "burner orifices"
  place   = "burner-box"
  look    = "brass nozzles at the burners"
  stop    = "combustion"
  numbers = { cubic_foot = q("45 s", "T11"), never = q("600 s", "common practice, no source"), flue_ppm = q("30 ppm", "common practice, no source"), over_ppm = q("405 ppm", "own"), quick = q("40 s", "own"), flue_limit = q("100 ppm", "common practice, no source") }
  mode "too-big" {
    name   = "too much gas at the burners"
    does   = "factor"
    factor = q("1.25 x", "own")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "call-overfire"
  }
}

part "burners" {
  kind  = "passage"
  name  = "burners"
  place = "burner-box"
  look  = "row of steel tubes with small holes"
  stop  = "gas-train"
  mode "dirty" {
    name   = "burners dirty, they light late"
    does   = "factor"
    factor = q("0.4 x", "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "call-burners"
  }
}

part "crossover" {
  kind  = "passage"
  name  = "burner crossover"
  place = "burner-box"
  look  = "slots that carry flame from burner to burner"
  stop  = "gas-train"
  mode "blocked" {
    name   = "burner crossover blocked, the last burner stays dark"
    does   = "off"
    rate   = q("1 x", "common practice, no source")
    repair = "call-burners"
  }
}

part "flame-rod" {
  kind      = "rod"
  name      = "flame rod"
  place     = "burner-box"
  look      = "thin steel rod in white ceramic, with one wire"
  ports     = { rod = "ROD", burner = "BURNER" }
  microamps = q("5 uA", 2, 8, "T05")
  flame     = flame-at-rod
  mode "dirty" {
    name   = "flame rod dirty"
    does   = "dirty"
    factor = q("0.12 x", 0.02, 0.2, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "clean-flame-rod"
  }
  mode "cracked" {
    name   = "ceramic of the flame rod cracked"
    does   = "leak"
    ohms   = q("100000 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-flame-rod"
  }
  mode "bent" {
    name   = "flame rod bent out of the flame"
    does   = "dirty"
    factor = q("0.05 x", 0.005, 0.15, "common practice, no source")
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "set-flame-rod"
  }
}

part "flame-lead" {
  kind  = "wire"
  name  = "flame rod wire"
  place = "upper-bay"
  look  = "single wire from the flame rod to the board"
  ports = { a = "FS", b = "ROD" }
  mode "open" {
    name   = "flame rod wire broken or off"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "refit-flame-lead"
  }
}

part "burner-ground" {
  kind  = "wire"
  name  = "burner ground"
  place = "upper-bay"
  look  = "screw or green wire from the burners to the furnace metal"
  ports = { a = "BURNER", b = "CHASSIS" }
  mode "corroded" {
    name   = "burner ground open or rusty"
    does   = "resist"
    ohms   = q("90000000 ohm", "own")
    rate   = q("3 x", "common practice, no source")
    repair = "clean-burner-ground"
  }
  mode "poor" {
    name   = "burner ground poor"
    does   = "resist"
    ohms   = q("2600 ohm", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "clean-burner-ground"
  }
}

part "exchanger" {
  kind    = "thing"
  name    = "heat exchanger"
  place   = "burner-box"
  look    = "steel tubes or shells behind the burners"
  stop    = "exchanger"
  numbers = { room_ppm = q("25 ppm", "from memory"), tester = q("9 ppm", "EPA"), keep_off = q("30 ppm", "IRC") }
  mode "cracked" {
    name   = "heat exchanger cracked"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-exchanger"
  }
  mode "plugged" {
    name   = "heat exchanger clogged with soot"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-rollout"
  }
}

# ---- the board ----

part "board" {
  kind     = "board"
  name     = "control board"
  place    = "upper-bay"
  look     = "circuit board with a small light and rows of terminals"
  ports    = { r = "R", c = "C", fs = "FS", earth = "CHASSIS" }
  on       = q("16 V", "common practice, no source")
  ohms     = q("300 ohm", 120, 900, "common practice, no source")
  flame_at = q("0.8 uA", "common practice, no source")
  senses   = volts("LB", "CHASSIS") > board.line_seen && volts("C", "CHASSIS") < board.common_near && ground-run.ok && !mode("burner-ground.poor")
  numbers  = { line_seen = q("80 V", "common practice, no source"), common_near = q("2 V", "common practice, no source") }
  output "IND" {
    from = "LB"
    to   = "IND"
  }
  output "IGN" {
    from = "LB"
    to   = "IGN"
  }
  output "GV" {
    from = "PS-out"
    to   = "GV"
  }
  output "BLW" {
    from = "LB"
    to   = "BLW"
  }
  input "W" {
    net  = "W"
    to   = "C"
    on   = q("16 V", "common practice, no source")
    ohms = q("1500 ohm", 500, 4000, "own")
  }
  input "HS" {
    net  = "HS"
    to   = "C"
    on   = q("16 V", "common practice, no source")
    ohms = q("1500 ohm", 500, 4000, "own")
  }
  input "PS" {
    net  = "PS-out"
    to   = "C"
    on   = q("16 V", "common practice, no source")
    ohms = q("1500 ohm", 500, 4000, "own")
  }
  mode "dead" {
    name   = "control board dead, though it has power"
    does   = "dead"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "wet" {
    name   = "board wet from a coil, humidifier or drain above it"
    does   = "dead"
    rate   = q("0.7 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "call-input" {
    name   = "control board does not see the thermostat's heat signal"
    does   = "input-blind"
    at     = "W"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "limit-input" {
    name   = "control board does not see the limit switches"
    does   = "input-blind"
    at     = "HS"
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "pressure-input" {
    name   = "control board does not see the pressure switch"
    does   = "input-blind"
    at     = "PS"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "flame-input" {
    name   = "control board does not sense the flame"
    does   = "sense-dead"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "flame-always" {
    name   = "control board sees a flame that is not there"
    does   = "sense-stuck"
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "fan-output" {
    name   = "control board never turns on the draft fan"
    does   = "output-dead"
    at     = "IND"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "fan-welded" {
    name   = "control board never turns off the draft fan"
    does   = "output-welded"
    at     = "IND"
    rate   = q("0.3 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "igniter-output" {
    name   = "control board never turns on the igniter"
    does   = "output-dead"
    at     = "IGN"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "gas-output" {
    name   = "control board never turns on the gas valve"
    does   = "output-dead"
    at     = "GV"
    rate   = q("1 x", "common practice, no source")
    repair = "replace-board"
  }
  mode "blower-output" {
    name   = "control board never turns on the blower"
    does   = "output-dead"
    at     = "BLW"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-board"
  }
}

# ---- blower and air ----

part "speed-lead" {
  kind  = "wire"
  name  = "speed wire of the blower"
  place = "upper-bay"
  look  = "colored blower wire on the heat terminal"
  ports = { a = "BLW", b = "BLW-m" }
  mode "loose" {
    name   = "speed wire of the blower off"
    does   = "open"
    rate   = q("1 x", "common practice, no source")
    repair = "refit-speed-lead"
  }
  mode "wrong-terminal" {
    name   = "speed wire of the blower on the spare terminal"
    does   = "open"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "move-speed-lead"
  }
}

part "blower-capacitor" {
  kind  = "capacitor"
  name  = "capacitor of the blower"
  place = "lower-bay"
  look  = "silver can with two terminals, on the blower"
  ports = { a = "BLW-m", b = "BLW-n" }
  value = q("7.5 uF", 7.05, 7.95, "HS")
  mode "failed" {
    name   = "capacitor of the blower dead"
    does   = "weak"
    factor = q("0.16 x", 0.01, 0.5, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "replace-blower-capacitor"
  }
  mode "low" {
    name   = "capacitor of the blower weak, blower runs slowly"
    does   = "weak"
    factor = q("0.7 x", 0.5, 0.9, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-capacitor"
  }
}

part "blower" {
  kind    = "load"
  name    = "blower"
  place   = "lower-bay"
  look    = "big drum-shaped fan with a motor in it"
  ports   = { a = "BLW-m", b = "BLW-n" }
  ohms    = q("24 ohm", 13, 35, "common practice, no source")
  cold    = q("12 ohm", 4, 20, "STW")
  works   = q("80 V", "common practice, no source")
  motor   = "yes"
  needs   = blower-capacitor.healthy > 0.9 ? 1 : (blower-capacitor.healthy > 0.5 ? 0.55 : 0)
  numbers = { rise = q("51 dF", "own"), suction = q("0.227 inH2O", "own"), push = q("0.213 inH2O", "own") }
  mode "winding-open" {
    name   = "motor of the blower burned out"
    does   = "open"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "seized" {
    name   = "blower stuck"
    does   = "stuck"
    rate   = q("3 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "dragging" {
    name   = "bearings of the blower rough"
    does   = "weak"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
  mode "grounded" {
    name   = "motor of the blower touches its frame inside"
    does   = "touch"
    to     = "CHASSIS"
    ohms   = q("1 ohm", "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
}

part "blower-protector" {
  kind  = "contact"
  name  = "overheat protector of the blower"
  place = "lower-bay"
  look  = "inside the motor, not visible"
  ports = { a = "BLW-n", b = "NB" }
  set   = q("250 degF", "from memory")
  trips = reached("steady") && fan-heat > blower-protector.set
  reset = "auto"
  mode "early" {
    name   = "blower stops when hot"
    does   = "set"
    set    = q("100 degF", "own")
    rate   = q("1 x", "common practice, no source")
    repair = "replace-blower-motor"
  }
}

part "blower-wheel" {
  kind  = "passage"
  name  = "blower wheel"
  place = "lower-bay"
  look  = "drum with many small blades"
  mode "dirty" {
    name   = "blower wheel packed with dust"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "clean-blower-wheel"
  }
  mode "loose" {
    name   = "blower wheel loose on its shaft"
    does   = "factor"
    factor = q("0.02 x", 0, 0.3, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "tighten-blower-wheel"
  }
}

part "filter" {
  kind  = "passage"
  name  = "air filter"
  place = "filter-slot"
  look  = "flat frame with filter cloth"
  mode "packed" {
    name   = "air filter clogged"
    does   = "factor"
    factor = q("0.554 x", 0.3, 0.7, "own")
    rate   = q("8 x", "common practice, no source")
    repair = "replace-filter"
  }
}

part "registers" {
  kind  = "passage"
  name  = "warm air registers"
  place = "living"
  look  = "grilles that the warm air comes out of"
  mode "closed" {
    name   = "most warm air registers closed"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "open-registers"
  }
}

part "return-grille" {
  kind  = "passage"
  name  = "return grille"
  place = "living"
  look  = "large grille where room air goes back"
  mode "covered" {
    name   = "return grille covered"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "clear-return"
  }
}

part "coil" {
  kind  = "passage"
  name  = "cooling coil"
  place = "coil-box"
  look  = "coil with fins in the duct above the furnace"
  mode "dirty" {
    name   = "cooling coil packed with dust"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("3 x", "common practice, no source")
    repair = "call-coil"
  }
}

part "ducts" {
  kind  = "passage"
  name  = "ducts"
  place = "duct"
  look  = "metal or flexible air ducts"
  mode "collapsed" {
    name   = "air duct crushed or far too small"
    does   = "factor"
    factor = q("0.5 x", 0.3, 0.68, "common practice, no source")
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "duct-joints" {
  kind  = "thing"
  name  = "duct joints"
  place = "duct"
  look  = "where the pieces of duct meet"
  mode "apart" {
    name   = "air duct fallen apart"
    does   = "wrong"
    rate   = q("1 x", "common practice, no source")
    repair = "call-duct"
  }
}

part "household" {
  kind  = "thing"
  name  = "heat that the house needs"
  place = "living"
  look  = "how far and how fast the rooms must warm up"
  mode "setback" {
    name   = "furnace good, the house is still warming up"
    does   = "wrong"
    wrong  = true
    rate   = q("3 x", "common practice, no source")
    repair = "explain-normal"
  }
  mode "cold-snap" {
    name   = "furnace good, but it is colder than it can heat"
    does   = "wrong"
    wrong  = true
    rate   = q("1 x", "common practice, no source")
    repair = "explain-normal"
  }
}

# ---- what is not electrical ----

signal "draft" {
  unit = "inH2O"
  is   = inducer.draft * inducer.works * inducer-wheel.passes * vent.passes * air-intake.passes * inducer-drain.passes
  tol  = q("20 %", "common practice, no source")
}

signal "port-draft" {
  unit = "inH2O"
  is   = draft * port.passes
  tol  = q("20 %", "common practice, no source")
}

signal "sensed-draft" {
  unit = "inH2O"
  is   = draft * port.passes * hose.passes
  tol  = q("20 %", "common practice, no source")
}

signal "gas-inlet" {
  unit = "inH2O"
  is   = gas-supply.pressure * gas-supply.passes * gas-cock.passes
  tol  = q("15 %", "common practice, no source")
}

signal "gas-flow" {
  unit = "x"
  is   = gas-supply.passes * gas-cock.passes * valve-switch.passes * gas-valve.works * orifice.passes
}

signal "lit" {
  unit = "x"
  is   = gas-flow > 0.5 && (at("trial") ? igniter.works > 0.6 && igniter-bracket.value > 0.5 && burners.passes > 0.2 : reached("run")) ? 1 : 0
}

signal "flame-at-rod" {
  unit = "x"
  is   = lit * crossover.passes * (burners.passes > 0.5 ? 1 : 0)
}

signal "flame-outside" {
  unit = "x"
  is   = lit > 0.5 && mode("exchanger.plugged") ? 1 : 0
}

signal "return-passes" {
  unit = "x"
  is   = filter.passes * return-grille.passes
}

signal "supply-passes" {
  unit = "x"
  is   = coil.passes * registers.passes * ducts.passes
}

signal "fan-heat" {
  unit = "degF"
  is   = reached("heating") ? inducer-protector.warm : inducer-protector.cold
}

signal "airflow" {
  unit = "x"
  is   = blower.works * blower-wheel.passes * return-passes * supply-passes
}

signal "return-static" {
  unit = "inH2O"
  is   = blower.suction * blower.works / (return-passes * return-passes)
  tol  = q("25 %", "common practice, no source")
}

signal "supply-static" {
  unit = "inH2O"
  is   = blower.push * blower.works / (supply-passes * supply-passes)
  tol  = q("25 %", "common practice, no source")
}

signal "total-static" {
  unit = "inH2O"
  is   = return-static + supply-static
  tol  = q("20 %", "common practice, no source")
}

signal "rise" {
  unit = "dF"
  is   = reached("heating") ? lit * blower.rise * gas-flow / max(airflow, 0.1) : 0
  tol  = q("25 %", "common practice, no source")
}

signal "limit-heat" {
  unit = "degF"
  is   = high-limit.room + high-limit.gain * rise
}

signal "dial-seconds" {
  unit = "s"
  is   = lit > 0.5 ? orifice.cubic_foot / gas-flow : orifice.never
}

signal "room-co" {
  unit = "ppm"
  is   = mode("exchanger.cracked") || mode("vent-joints.apart") ? exchanger.room_ppm : 0
}

signal "flue-co" {
  unit = "ppm"
  is   = mode("orifice.too-big") ? orifice.over_ppm : orifice.flue_ppm
}

# ---- what the board does in order ----

control "heat" {
  part  = "board"
  tries = 3
  # Boards differ in what they run while a safety switch is open or a flame is seen that should not be: nothing, the blower, or both fans.
  step "string" {
    drive   = []
    may     = ["IND", "BLW"]
    needs   = board.HS > 0.5
    on_fail = "wait"
    code    = "4"
  }
  step "standby" {
    drive   = []
    needs   = board.W > 0.5
    on_fail = "wait"
  }
  step "open-check" {
    drive   = []
    needs   = board.PS < 0.5
    on_fail = "wait"
    code    = "2"
  }
  step "flame-check" {
    drive   = []
    may     = ["IND", "BLW"]
    needs   = board.flame < 0.5
    on_fail = "wait"
    code    = "5"
  }
  step "draft" {
    drive   = ["IND"]
    needs   = board.PS > 0.5
    within  = q("60 s", "common practice, no source")
    on_fail = "retry"
    code    = "3"
    purge   = q("60 s", "common practice, no source")
  }
  step "purge" {
    drive  = ["IND"]
    within = q("15 s", "T13")
  }
  step "warm-up" {
    drive  = ["IND", "IGN"]
    within = q("17 s", "T13")
  }
  step "trial" {
    drive   = ["IND", "IGN", "GV"]
    needs   = board.flame > 0.5
    within  = q("7 s", "common practice, no source")
    on_fail = "retry"
    code    = "6"
    purge   = q("60 s", "common practice, no source")
  }
  step "run" {
    drive   = ["IND", "GV"]
    needs   = board.flame > 0.5 && board.PS > 0.5
    within  = q("30 s", "T13")
    on_fail = "retry"
    code    = "7"
    purge   = q("60 s", "common practice, no source")
  }
  step "heating" {
    drive   = ["IND", "GV", "BLW"]
    needs   = board.flame > 0.5 && board.PS > 0.5
    within  = q("240 s", "common practice, no source")
    on_fail = "retry"
    code    = "7"
    purge   = q("60 s", "common practice, no source")
  }
  step "steady" {
    drive   = ["IND", "GV", "BLW"]
    needs   = board.HS > 0.5 && board.flame > 0.5
    within  = q("600 s", "common practice, no source")
    on_fail = "cool-down"
    code    = "4"
  }
  step "cool-down" {
    drive = ["IND", "BLW"]
    side  = true
    code  = "4"
  }
}

# ---- where a lead can be put ----

point "outlet-hot" {
  net   = "HOT"
  place = "living"
  name  = "short slot of the outlet"
  where = "any outlet that works a lamp"
}

point "outlet-neutral" {
  net   = "NEU"
  place = "living"
  name  = "long slot of the outlet"
  where = "beside the short slot"
}

point "box-in" {
  net   = "LS-in"
  place = "switch-box"
  name  = "switch screw with the house wire"
  where = "furnace switch, on the side of the house cable"
}

point "box-out" {
  net   = "LS-out"
  place = "switch-box"
  name  = "switch screw with the furnace wire"
  where = "furnace switch, on the side of the furnace"
}

point "box-neutral" {
  net   = "NJ"
  place = "switch-box"
  name  = "neutral joint in the switch box"
  where = "wire nut on the white wires"
}

point "box-ground" {
  net   = "CHASSIS"
  place = "switch-box"
  name  = "bare metal of the switch box"
  where = "any bright screw of the box"
}

point "door-in" {
  net   = "L1"
  place = "lower-bay"
  name  = "incoming terminal of the door switch"
  where = "the black wire that comes from the wire joint"
}

point "door-out" {
  net   = "L-door"
  place = "lower-bay"
  name  = "outgoing terminal of the door switch"
  where = "the wire that goes to the board"
}

point "door-n" {
  net   = "N"
  place = "lower-bay"
  name  = "neutral joint by the door switch"
  where = "the white wires beside the door switch"
}

point "door-a" {
  net   = "door-switch.a"
  place = "lower-bay"
  name  = "first terminal of the door switch"
  where = "with its wire pulled off"
}

point "door-b" {
  net   = "door-switch.b"
  place = "lower-bay"
  name  = "second terminal of the door switch"
  where = "the other terminal"
}

point "line-in" {
  net   = "L1"
  place = "upper-bay"
  name  = "black power wire at the joint"
  where = "incoming wires, upper left corner"
}

point "neutral-in" {
  net   = "N"
  place = "upper-bay"
  name  = "white neutral wire at the joint"
  where = "incoming wires, upper left corner"
}

point "board-l" {
  net   = "LB"
  place = "upper-bay"
  name  = "power terminal of the board"
  where = "marked L or line, with a black wire"
}

point "board-n" {
  net   = "NB"
  place = "upper-bay"
  name  = "neutral row of the board"
  where = "the row of white wires"
}

point "frame" {
  net   = "CHASSIS"
  place = "upper-bay"
  name  = "bare metal of the furnace"
  where = "a bright screw head beside the board"
}

point "fan-out" {
  net   = "IND"
  place = "upper-bay"
  name  = "draft fan terminal of the board"
  where = "marked for the draft fan"
}

point "fan-plug" {
  net   = "IND-m"
  place = "upper-bay"
  name  = "motor side of the draft fan plug"
  where = "the two-pin plug of the draft fan"
}

point "fan-plug-n" {
  net   = "IND-n"
  place = "upper-bay"
  name  = "neutral side of the draft fan plug"
  where = "the second pin of the same plug"
}

point "fan-a" {
  net   = "inducer.a"
  place = "upper-bay"
  name  = "first wire of the draft fan"
  where = "plug pulled apart, motor side"
}

point "fan-b" {
  net   = "inducer.b"
  place = "upper-bay"
  name  = "second wire of the draft fan"
  where = "plug pulled apart, motor side"
}

point "fan-plug-a" {
  net   = "inducer-plug.a"
  place = "upper-bay"
  name  = "board end of the draft fan wire"
  where = "with the wire off the board"
}

point "fan-plug-b" {
  net   = "inducer-plug.b"
  place = "upper-bay"
  name  = "motor end of the draft fan wire"
  where = "the other end of the same wire"
}

point "fan-cap-a" {
  net   = "inducer-capacitor.a"
  place = "upper-bay"
  name  = "first terminal of the draft fan capacitor"
  where = "with the wires off"
}

point "fan-cap-b" {
  net   = "inducer-capacitor.b"
  place = "upper-bay"
  name  = "second terminal of the draft fan capacitor"
  where = "with the wires off"
}

point "glow-out" {
  net   = "IGN"
  place = "upper-bay"
  name  = "igniter terminal of the board"
  where = "marked for the igniter"
}

point "glow-plug" {
  net   = "IGN-m"
  place = "upper-bay"
  name  = "igniter side of the igniter plug"
  where = "the white two-pin plug"
}

point "glow-plug-n" {
  net   = "IGN-n"
  place = "upper-bay"
  name  = "neutral side of the igniter plug"
  where = "the second pin of the same plug"
}

point "glow-a" {
  net   = "igniter.a"
  place = "upper-bay"
  name  = "first pin of the igniter"
  where = "plug pulled apart, igniter side"
}

point "glow-b" {
  net   = "igniter.b"
  place = "upper-bay"
  name  = "second pin of the igniter"
  where = "plug pulled apart, igniter side"
}

point "glow-plug-a" {
  net   = "igniter-plug.a"
  place = "upper-bay"
  name  = "board end of the igniter wire"
  where = "with the wire off the board"
}

point "glow-plug-b" {
  net   = "igniter-plug.b"
  place = "upper-bay"
  name  = "plug end of the igniter wire"
  where = "the pin of the plug"
}

point "blower-out" {
  net   = "BLW"
  place = "upper-bay"
  name  = "heat terminal of the board"
  where = "marked heat, for the blower"
}

point "blower-tap" {
  net   = "BLW-m"
  place = "upper-bay"
  name  = "end of the blower's speed wire"
  where = "the colored wire of the blower"
}

point "blower-n" {
  net   = "BLW-n"
  place = "upper-bay"
  name  = "end of the blower's neutral wire"
  where = "the white wire of the blower"
}

point "blower-a" {
  net   = "blower.a"
  place = "upper-bay"
  name  = "speed wire of the blower"
  where = "taken off the board"
}

point "blower-b" {
  net   = "blower.b"
  place = "upper-bay"
  name  = "neutral wire of the blower"
  where = "taken off the row of white wires"
}

point "blower-cap-a" {
  net   = "blower-capacitor.a"
  place = "lower-bay"
  name  = "first terminal of the blower capacitor"
  where = "with the wires off"
}

point "blower-cap-b" {
  net   = "blower-capacitor.b"
  place = "lower-bay"
  name  = "second terminal of the blower capacitor"
  where = "with the wires off"
}

point "primary-a" {
  net   = "transformer.p1"
  place = "upper-bay"
  name  = "first thick wire of the transformer"
  where = "with the wire taken off"
}

point "primary-b" {
  net   = "transformer.p2"
  place = "upper-bay"
  name  = "second thick wire of the transformer"
  where = "with the wire taken off"
}

point "secondary-a" {
  net   = "SEC-R"
  place = "upper-bay"
  name  = "R terminal of the transformer"
  where = "the thin red wire, at the transformer"
}

point "secondary-b" {
  net   = "SEC-C"
  place = "upper-bay"
  name  = "C terminal of the transformer"
  where = "the thin blue or black wire, at the transformer"
}

point "winding-a" {
  net   = "transformer.s1"
  place = "upper-bay"
  name  = "end of the transformer's R wire"
  where = "the thin red wire, taken off"
}

point "winding-b" {
  net   = "transformer.s2"
  place = "upper-bay"
  name  = "end of the transformer's C wire"
  where = "the thin blue or black wire, taken off"
}

point "board-24" {
  net   = "R-sec"
  place = "upper-bay"
  name  = "low voltage input of the board"
  where = "where the thin red wire is connected"
}

point "board-c" {
  net   = "C"
  place = "upper-bay"
  name  = "C terminal of the board"
  where = "in the low voltage row, marked C"
}

point "fuse-a" {
  net   = "board-fuse.a"
  place = "upper-bay"
  name  = "first blade of the fuse"
  where = "with the fuse pulled out"
}

point "fuse-b" {
  net   = "board-fuse.b"
  place = "upper-bay"
  name  = "second blade of the fuse"
  where = "with the fuse pulled out"
}

point "board-r" {
  net   = "R"
  place = "upper-bay"
  name  = "R terminal of the board"
  where = "in the low voltage row, marked R"
}

point "board-w" {
  net   = "W"
  place = "upper-bay"
  name  = "W terminal of the board"
  where = "in the low voltage row, marked W"
}

point "board-y" {
  net   = "Y"
  place = "upper-bay"
  name  = "Y terminal of the board"
  where = "in the low voltage row, marked Y"
}

point "y-out" {
  net   = "y-wire.a"
  place = "upper-bay"
  name  = "Y wire of the cable"
  where = "taken off terminal Y"
}

point "float-in" {
  net   = "R"
  place = "pan"
  name  = "float switch wire from the furnace"
  where = "the wire that comes from the furnace"
}

point "float-out" {
  net   = "R-float"
  place = "pan"
  name  = "other wire of the float switch"
  where = "the second wire of the float switch"
}

point "float-a" {
  net   = "float-switch.a"
  place = "pan"
  name  = "first wire of the float switch"
  where = "taken off"
}

point "float-b" {
  net   = "float-switch.b"
  place = "pan"
  name  = "second wire of the float switch"
  where = "the other wire"
}

point "float-far" {
  net   = "R-fl2"
  place = "splice"
  name  = "wire from the float switch"
  where = "before the red wire joint"
}

point "splice-r" {
  net   = "R-splice"
  place = "splice"
  name  = "red wire joint"
  where = "the red wire that goes into the wall"
}

point "splice-w" {
  net   = "W-splice"
  place = "splice"
  name  = "wall side of the white wire joint"
  where = "the white wire that comes from the wall"
}

point "splice-w2" {
  net   = "W-tail"
  place = "splice"
  name  = "board side of the white wire joint"
  where = "the white wire that goes to the board"
}

point "splice-c" {
  net   = "C"
  place = "splice"
  name  = "common wire joint"
  where = "the blue or black wire"
}

point "wall-r" {
  net   = "r-wire.a"
  place = "splice"
  name  = "wall wire of the red joint"
  where = "taken out of its wire nut"
}

point "wall-w" {
  net   = "w-wire.b"
  place = "splice"
  name  = "wall wire of the white joint"
  where = "taken out of its wire nut"
}

point "stat-r" {
  net   = "R-stat"
  place = "stat-base"
  name  = "R terminal of the thermostat"
  where = "on the base plate"
}

point "stat-rw" {
  net   = "R-wall"
  place = "stat-base"
  name  = "bare end of the R wire"
  where = "at the base plate"
}

point "stat-w" {
  net   = "W-stat"
  place = "stat-base"
  name  = "W terminal of the thermostat"
  where = "on the base plate"
}

point "stat-ww" {
  net   = "W-wall"
  place = "stat-base"
  name  = "bare end of the W wire"
  where = "at the base plate"
}

point "stat-c" {
  net   = "C-stat"
  place = "stat-base"
  name  = "C terminal of the thermostat"
  where = "on the base plate"
}

point "limit-in" {
  net   = "LIM-in"
  place = "upper-bay"
  name  = "first high limit terminal"
  where = "with the wire from the board"
}

point "limit-out" {
  net   = "LIM-out"
  place = "upper-bay"
  name  = "second high limit terminal"
  where = "with the wire to the roll-out switches"
}

point "limit-a" {
  net   = "high-limit.a"
  place = "upper-bay"
  name  = "first terminal of the high limit"
  where = "with its wire pulled off"
}

point "limit-b" {
  net   = "high-limit.b"
  place = "upper-bay"
  name  = "second terminal of the high limit"
  where = "the other terminal"
}

point "roll-mid" {
  net   = "RO-mid"
  place = "upper-bay"
  name  = "wire between the roll-out switches"
  where = "from the left one to the right one"
}

point "roll-out-end" {
  net   = "RO-out"
  place = "upper-bay"
  name  = "last terminal of the right roll-out switch"
  where = "with the wire to the board plug"
}

point "roll-left-a" {
  net   = "rollout-left.a"
  place = "upper-bay"
  name  = "first terminal of the left roll-out switch"
  where = "with its wire pulled off"
}

point "roll-left-b" {
  net   = "rollout-left.b"
  place = "upper-bay"
  name  = "second terminal of the left roll-out switch"
  where = "the other terminal"
}

point "roll-right-a" {
  net   = "rollout-right.a"
  place = "upper-bay"
  name  = "first terminal of the right roll-out switch"
  where = "with its wire pulled off"
}

point "roll-right-b" {
  net   = "rollout-right.b"
  place = "upper-bay"
  name  = "second terminal of the right roll-out switch"
  where = "the other terminal"
}

point "string-end" {
  net   = "HS"
  place = "upper-bay"
  name  = "limit pin of the board plug"
  where = "large plug of the board, limit input"
}

point "switch-in" {
  net   = "HS"
  place = "upper-bay"
  name  = "first pressure switch terminal"
  where = "with the wire from the board plug"
}

point "switch-out" {
  net   = "PS-b"
  place = "upper-bay"
  name  = "second pressure switch terminal"
  where = "with the wire back to the board plug"
}

point "press-a" {
  net   = "pressure-switch.a"
  place = "upper-bay"
  name  = "first terminal of the pressure switch"
  where = "with its wire pulled off"
}

point "press-b" {
  net   = "pressure-switch.b"
  place = "upper-bay"
  name  = "second terminal of the pressure switch"
  where = "the other terminal"
}

point "press-pin" {
  net   = "PS-out"
  place = "upper-bay"
  name  = "pressure pin of the board plug"
  where = "large plug of the board, pressure input"
}

point "gas-out" {
  net   = "GV"
  place = "upper-bay"
  name  = "gas valve pin of the board plug"
  where = "large plug of the board, gas valve output"
}

point "valve-1" {
  net   = "GV-1"
  place = "upper-bay"
  name  = "first gas valve terminal"
  where = "with the wire from the board"
}

point "valve-2" {
  net   = "GV-2"
  place = "upper-bay"
  name  = "common gas valve terminal"
  where = "with the wire to common"
}

point "valve-a" {
  net   = "gas-valve.a"
  place = "upper-bay"
  name  = "first terminal of the gas valve"
  where = "the first terminal"
}

point "valve-b" {
  net   = "gas-valve.b"
  place = "upper-bay"
  name  = "common terminal of the gas valve"
  where = "the second terminal"
}

point "flame-pin" {
  net   = "FS"
  place = "upper-bay"
  name  = "flame terminal of the board"
  where = "marked for the flame rod"
}

point "rod-end" {
  net   = "ROD"
  place = "upper-bay"
  name  = "flame rod connector"
  where = "where the single wire plugs on"
}

point "rod-a" {
  net   = "flame-rod.rod"
  place = "upper-bay"
  name  = "connector of the flame rod"
  where = "the metal of the rod"
}

point "lead-a" {
  net   = "flame-lead.a"
  place = "upper-bay"
  name  = "board end of the flame rod wire"
  where = "pulled off the board"
}

point "lead-b" {
  net   = "flame-lead.b"
  place = "upper-bay"
  name  = "rod end of the flame rod wire"
  where = "pulled off the rod"
}

point "burner-metal" {
  net   = "BURNER"
  place = "upper-bay"
  name  = "bare metal of a burner"
  where = "scratch a bright spot"
}

# ---- 1 safety questions ----

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
  name     = "floor at the furnace"
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
  act      = "Look at the front of the furnace and at the vent pipe."
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

# ---- 2 the story ----

check "story-what" {
  stage    = "story"
  name     = "what it does"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "What is the furnace doing wrong?"
  option "not-enough" {
    when  = !(stuck("trial") && !(flame-rod.ok && flame-lead.ok && burner-ground.ok && junction.ok && ground-run.ok && common-bond.ok && crossover.ok && burners.ok && !mode("board.flame-input")) || stuck("run") || stuck("heating") || stuck("steady")) && !mode("board.fan-welded") && reached("steady")
    told  = ["weak-heat"]
    label = "Not enough heat"
  }
  option "stops-early" {
    when  = stuck("trial") && !(flame-rod.ok && flame-lead.ok && burner-ground.ok && junction.ok && ground-run.ok && common-bond.ok && crossover.ok && burners.ok && !mode("board.flame-input")) || stuck("run") || stuck("heating") || stuck("steady")
    told  = ["lights-dies", "short-cycle"]
    label = "Starts, then stops early"
  }
  option "never-stops" {
    when  = mode("board.fan-welded")
    told  = ["blower-on"]
    label = "Never stops"
  }
  option "no-start" {
    when  = !reached("draft")
    told  = ["noheat"]
    label = "Does nothing"
  }
  option "runs-no-heat" {
    told  = ["fan-no-flame"]
    label = "Runs but no heat"
  }
}

check "story-pattern" {
  stage    = "free"
  name     = "how often it fails"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Does it fail at every start, or only at some starts?"
  option "every-start" {
    when  = !(mode("w-tail.loose") || mode("vent.partly") || mode("line-run.loose") || mode("neutral-run.loose") || mode("inducer-protector.early") || mode("blower-protector.early") || mode("igniter.hot-crack") || mode("power-stealing.leaks"))
    label = "At every start"
  }
  option "some-starts" {
    when   = mode("w-tail.loose") || mode("vent.partly") # the others may fail every time, or seem to
    passes = true
    told   = ["sometimes"]
    label  = "Only at some starts"
  }
}

check "story-when" {
  stage    = "free"
  name     = "how it began"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Did it begin all at once or little by little?"
  option "suddenly" {
    when  = !(mode("flame-rod.dirty") || mode("igniter.aged") || mode("filter.packed") || mode("coil.dirty") || mode("blower-wheel.dirty") || mode("burners.dirty") || mode("blower-capacitor.low") || mode("inducer.dragging"))
    label = "All at once"
  }
  option "gradually" {
    when  = 1 < 0 # what grows slowly may stop the furnace from one day to the next
    label = "Little by little"
  }
}

check "story-change" {
  stage    = "free"
  name     = "what happened before"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "What happened just before it failed? Nothing, work on the furnace, or a storm or power outage?"
  # What nobody in the house need have noticed (a bumped valve, a storm in the night) fits no answer better than another.
  option "nothing-done" {
    when  = !(mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("igniter.wrong-part") || mode("stat-setup.heat-pump")) && !(mode("left-jumper.left-in") || mode("igniter-bracket.moved") || mode("flame-rod.bent") || mode("junction.reversed") || mode("gas-cock.closed") || mode("valve-switch.off") || mode("orifice.too-big") || mode("panel-seat.ajar") || mode("float-lead.off") || mode("r-terminal.off") || mode("w-terminal.off") || mode("r-wire.pinched") || mode("y-wire.pinched") || mode("supply.dead") || mode("breaker.off") || mode("air-intake.blocked") || mode("vent.blocked"))
    label = "Nothing"
  }
  option "after-work" {
    when  = mode("w-tail.wrong-terminal") || mode("speed-lead.wrong-terminal") || mode("pressure-switch.wrong-part") || mode("igniter.wrong-part") || mode("stat-setup.heat-pump")
    told  = ["after-work"]
    label = "Work on the furnace"
  }
  option "after-storm" {
    when  = 1 < 0
    label = "A storm or power outage"
  }
}

check "story-room" {
  stage    = "free"
  name     = "room temperature"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Think of the room one hour ago."
  ask      = "Is the room still cold, or slowly getting warm?"
  option "cold" {
    when  = !mode("household.setback")
    label = "Still cold"
  }
  option "warm" {
    label = "Slowly getting warm"
  }
}

check "story-weather" {
  stage    = "free"
  name     = "weather"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Is it colder outside than usual?"
  option "same" {
    when  = !mode("household.cold-snap")
    label = "No"
  }
  option "cold" {
    label = "Yes"
  }
}

# ---- 4 status light, before the power is cycled ----

# A count of blinks means only what the label of the real unit says: here it tells that there is a code, not which fault.
# What it means is asked by the words of the label.
check "light" {
  stage    = "light"
  name     = "status light"
  function = "look"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  act      = "Change nothing. Look at the small light through the little window."
  ask      = "What does the light do? If it blinks, how many times in a row?"
  option "off" {
    when  = lamp("off")
    label = "Off"
  }
  option "slow-blink" {
    when  = lamp("slow-blink")
    shows = ["power"]
    label = "Blinking slowly"
  }
  option "steady" {
    when  = !lamp("off") && !lamp("slow-blink")
    shows = ["power"]
    label = "On without blinking"
  }
  option "1" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "One blink"
  }
  option "2" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Two blinks"
  }
  option "3" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Three blinks"
  }
  option "4" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Four blinks"
  }
  option "5" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Five blinks"
  }
  option "6" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Six blinks"
  }
  option "7" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Seven blinks"
  }
  option "8" {
    when  = 1 < 0
    as    = "steady"
    shows = ["power"]
    label = "Eight blinks"
  }
}

check "label" {
  stage    = "light"
  name     = "label for the light"
  function = "look"
  power    = "any"
  call     = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["light=off", "light=slow-blink"]
  act      = "Look at the light again. Then find its code on the label."
  ask      = "What does the label say for this code?"
  option "says-pressure-closed" {
    when  = lamp("2")
    shows = ["power"]
    label = "Pressure switch closed"
  }
  option "says-pressure-open" {
    when  = lamp("3")
    shows = ["power", "call"]
    label = "Pressure switch open"
  }
  option "says-limit" {
    when  = lamp("4")
    shows = ["power"]
    label = "Limit switch open"
  }
  option "says-roll-out" {
    when  = 1 < 0
    stop  = "roll-out"
    label = "Roll-out switch open"
  }
  option "says-false-flame" {
    when  = lamp("5")
    shows = ["power"]
    label = "Flame sensed with gas off"
  }
  option "says-no-flame" {
    when  = lamp("6")
    shows = ["power", "call"]
    label = "No flame sensed"
  }
  option "says-flame-lost" {
    when  = lamp("7")
    shows = ["power", "call"]
    label = "Flame lost"
  }
  option "says-no-power" {
    when  = lamp("off")
    label = "No power"
  }
  option "says-normal" {
    shows = ["power"]
    label = "Normal operation"
  }
}

# ---- 5 free causes ----

check "stat-screen" {
  stage    = "free"
  name     = "thermostat screen"
  function = "look"
  part     = "batteries"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  before   = ["call-on"]
  ask      = "Is the thermostat screen normal, or blank or low on battery?"
  option "lit" {
    when  = !(batteries.value < 0.5 || !c-wire.ok)
    label = "Normal"
  }
  option "blank" {
    mend  = "change-batteries"
    told  = ["blank-stat"]
    label = "Blank or low on battery"
    also  = ["low-battery"]
  }
}

check "stat-mode-set" {
  stage    = "free"
  name     = "thermostat mode"
  function = "look"
  part     = "stat-mode"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  before   = ["call-on"]
  ask      = "Is the thermostat set to heat, cool, or off?"
  option "heat" {
    when  = !mode("stat-mode.cool") && !mode("stat-mode.off")
    label = "Heat"
  }
  option "cool" {
    when  = mode("stat-mode.cool")
    mend  = "set-heat"
    label = "Cool"
  }
  option "off" {
    mend  = "set-heat"
    label = "Off"
  }
}

check "stat-setpoint" {
  stage    = "free"
  name     = "set temperature"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  before   = ["call-on"]
  act      = "Read the set temperature and the room temperature. Change nothing yet."
  ask      = "Compared with the room, is the set temperature above or below?"
  option "above" {
    when  = !(mode("setpoint.low") || mode("setpoint.schedule"))
    label = "Above"
  }
  option "below" {
    mend  = "set-point"
    label = "Below"
  }
}

check "stat-schedule" {
  stage    = "free"
  name     = "thermostat schedule"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  ask      = "Is the thermostat on hold or on a schedule?"
  option "hold" {
    when  = !mode("setpoint.schedule")
    label = "On hold"
  }
  option "schedule" {
    label = "On a schedule"
  }
}

check "stat-raise" {
  stage    = "free"
  name     = "furnace with the thermostat turned up"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "on"
  call     = "on"
  minutes  = q("6 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Set the thermostat ten degrees higher. Then wait five minutes."
  ask      = "Is the furnace silent or running?"
  option "silent" {
    when  = setpoint.ok && !reached("draft")
    label = "Silent"
  }
  option "running" {
    label = "Running"
  }
}

check "stat-room" {
  stage    = "free"
  name     = "thermostat's room temperature"
  function = "look"
  part     = "setpoint"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["stat-screen=blank"]
  act      = "Hold a second thermometer beside the thermostat."
  ask      = "Do both show nearly the same temperature?"
  option "same" {
    when  = !mode("setpoint.reads-warm")
    label = "Yes"
  }
  option "different" {
    label = "No"
  }
}

check "stat-type" {
  stage    = "free"
  name     = "thermostat setup"
  function = "look"
  part     = "stat-setup"
  places   = ["wall-stat"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["stat-screen=blank"]
  act      = "Open the installer menu on the thermostat. Find the heat type."
  ask      = "Is it set for a furnace?"
  option "right-place" {
    when  = !mode("stat-setup.heat-pump")
    label = "Yes"
  }
  option "different" {
    label = "No"
  }
}

check "house-power" {
  stage    = "free"
  name     = "power in the house"
  function = "look"
  part     = "supply"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  ask      = "Do the lights in the house work?"
  option "on" {
    when  = !mode("supply.dead")
    label = "Yes"
  }
  option "off" {
    label = "No"
    stop = "no-power"
  }
}

check "breaker-look" {
  stage    = "free"
  name     = "furnace breaker"
  function = "look"
  part     = "breaker"
  places   = ["breakers"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  before   = ["power-on"]
  ask      = "Is it on, or off or tripped?"
  option "on" {
    when  = !breaker.blown
    label = "On"
  }
  option "tripped" {
    mend  = "reset-breaker"
    told  = ["trips"]
    label = "Off or tripped"
    also  = ["off"]
  }
  act = "Find the furnace breaker in the panel."
}

check "switch-look" {
  stage    = "free"
  name     = "furnace switch"
  function = "look"
  part     = "furnace-switch"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  before   = ["power-on"]
  ask      = "Is it on or off?"
  option "on" {
    when  = !mode("furnace-switch.off")
    label = "On"
  }
  option "off" {
    mend  = "switch-on"
    label = "Off"
  }
  act = "Find the switch on the furnace or near it. It looks like a light switch."
}

check "panel-look" {
  stage    = "free"
  name     = "lower front panel"
  function = "look"
  part     = "panel-seat"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  act      = "Press along the edge of the lower front panel."
  ask      = "Is the panel tight or loose?"
  option "tight" {
    when  = !(panel-seat.value < 0.5)
    label = "Tight"
  }
  option "loose" {
    mend  = "seat-panel"
    label = "Loose"
  }
}

check "filter-look" {
  stage    = "free"
  name     = "air filter"
  function = "look"
  part     = "filter"
  places   = ["filter-slot"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Slide the air filter out. Hold it up to a light."
  ask      = "Is the filter clean or dirty?"
  option "clean" {
    when  = !(filter.passes < 0.8)
    label = "Clean"
  }
  option "dirty" {
    mend  = "replace-filter"
    label = "Dirty"
  }
}

check "cock-who" {
  stage    = "cause"
  name     = "who closed the gas"
  function = "look"
  part     = "gas-cock"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  must     = true
  ask      = "Do you know who closed the gas, and why?"
  option "reason-known" {
    label = "Yes"
  }
  option "nobody-knows" {
    stop  = "gas-closed"
    label = "No"
  }
}

check "cock-look" {
  stage    = "free"
  name     = "gas cock"
  function = "look"
  part     = "gas-cock"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "clear"
  caution  = "Only look. Do not turn the handle."
  ask      = "Is it along the pipe or across the pipe?"
  option "parallel" {
    when  = !(gas-cock.passes < 0.5)
    label = "Along the pipe"
  }
  option "crosswise" {
    mend  = "open-gas-cock"
    label = "Across the pipe"
  }
  act = "Look at the handle on the gas pipe."
}

check "other-gas" {
  stage    = "free"
  name     = "another gas flame"
  function = "look"
  part     = "gas-supply"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "If you have a gas stove, light one burner."
  ask      = "How is that flame? Good, no flame, or weak?"
  option "good" {
    when  = gas-supply.ok
    label = "Good"
  }
  option "none" {
    when  = gas-supply.passes < 0.05
    label = "No flame"
  }
  option "short-flame" {
    label = "Weak"
  }
}

check "registers-look" {
  stage    = "free"
  name     = "warm air registers"
  function = "look"
  part     = "registers"
  places   = ["living"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the register in each room. Warm air comes out there."
  ask      = "Are most registers open or closed?"
  option "open" {
    when  = !(registers.passes < 0.8)
    label = "Open"
  }
  option "closed" {
    mend  = "open-registers"
    label = "Closed"
  }
}

check "return-look" {
  stage    = "free"
  name     = "return grille"
  function = "look"
  part     = "return-grille"
  places   = ["living"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Find the large grille where room air goes back. Hold a tissue to it."
  ask      = "Is the grille clear or blocked?"
  option "clear" {
    when  = !(return-grille.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-return"
    label = "Blocked"
  }
}

check "pan-look" {
  stage    = "free"
  name     = "drain pan"
  function = "look"
  part     = "drain"
  places   = ["pan"]
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Shine a light into the drain pan on top of the furnace."
  ask      = "Is the pan dry or wet?"
  option "dry" {
    when  = !(drain.passes < 0.5)
    label = "Dry"
  }
  option "wet" {
    label = "Wet"
  }
}

check "vent-look" {
  stage    = "free"
  name     = "end of the vent pipe"
  function = "look"
  part     = "vent"
  places   = ["outside"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "From outside, shine a light into the end of the vent pipe."
  caution  = "Stay off ladders and ice."
  ask      = "Is it clear or blocked?"
  option "clear" {
    when  = !(vent.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-vent"
    label = "Blocked"
  }
}

check "intake-look" {
  stage    = "free"
  name     = "air intake"
  function = "look"
  part     = "air-intake"
  places   = ["outside"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the air intake outside. Look for snow, leaves, or a nest."
  ask      = "Is it clear or blocked?"
  option "clear" {
    when  = !(air-intake.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    mend  = "clear-intake"
    label = "Blocked"
  }
}

check "vent-joint-look" {
  stage    = "free"
  name     = "vent pipe joints"
  function = "look"
  part     = "vent-joints"
  power    = "any"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Follow the vent pipe with a light."
  caution  = "Hot pipe. Look, but do not touch."
  ask      = "Are the vent pipe joints tight or apart?"
  option "tight" {
    when  = !mode("vent-joints.apart")
    label = "Tight"
  }
  option "loose" {
    stop  = "vent"
    label = "Apart"
  }
}

check "duct-look" {
  stage    = "free"
  name     = "duct joints"
  function = "look"
  part     = "ducts"
  places   = ["duct"]
  power    = "any"
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow each air duct with a light."
  ask      = "How are the ducts? Tight, apart, return duct apart at the furnace, or crushed?"
  option "tight" {
    when  = !mode("duct-joints.apart") && !mode("ducts.collapsed")
    label = "Tight"
  }
  option "loose" {
    when  = mode("duct-joints.apart")
    label = "Apart"
  }
  option "return-apart" {
    when  = 1 < 0
    stop  = "ducts"
    label = "Return duct apart at the furnace"
  }
  option "bad" {
    label = "Crushed"
  }
}

check "y-cable-look" {
  stage    = "free"
  name     = "cable to the outdoor unit"
  function = "look"
  part     = "y-wire"
  places   = ["outside"]
  power    = "any"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Follow the thin cable to the outdoor unit with your eyes."
  ask      = "Is the cable good, or bare or pinched?"
  option "good" {
    when  = !mode("y-wire.pinched")
    label = "Good"
  }
  option "bare" {
    label = "Bare or pinched"
  }
}

check "splice-look" {
  stage    = "free"
  name     = "thermostat cable"
  function = "look"
  part     = "r-wire"
  places   = ["splice"]
  power    = "any"
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Follow the thin thermostat cable as far as you can see it."
  ask      = "Is the cable good, or bare or pinched?"
  option "good" {
    when  = !mode("r-wire.pinched")
    label = "Good"
  }
  option "bare" {
    label = "Bare or pinched"
  }
}

# ---- 6 watch one start ----

check "see-fan" {
  stage    = "watch"
  name     = "draft fan"
  function = "look"
  part     = "inducer"
  power    = "on"
  call     = "on"
  at       = "draft"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the draft fan starts"
  act      = "Stand at the furnace and listen for the small draft fan."
  ask      = "Is the draft fan running, humming, or silent?"
  option "running" {
    when  = !inducer.hums && inducer.works > 0.1
    label = "Running"
  }
  option "humming" {
    when  = inducer.hums
    label = "Humming"
  }
  option "silent" {
    missed = true
    label  = "Silent"
  }
}

check "see-glow" {
  stage    = "watch"
  name     = "igniter glow"
  function = "look"
  part     = "igniter"
  power    = "on"
  call     = "on"
  at       = "warm-up"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the igniter glows"
  act      = "After the fan starts, watch the small window."
  ask      = "How does the igniter glow? Bright, weak, or no glow?"
  option "glowing" {
    when  = igniter.works > 0.6
    seen  = ["glow"]
    label = "Bright"
  }
  option "weak-glow" {
    when  = igniter.amps > 0.5
    seen  = ["glow"]
    label = "Weak"
  }
  option "no-glow" {
    seen   = ["dark"]
    missed = true
    label  = "No glow"
  }
}

check "see-glow-hold" {
  stage    = "watch"
  name     = "glow until the gas"
  function = "look"
  part     = "igniter"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["see-glow=no-glow"]
  act      = "Keep watching the glow until you hear the gas valve click."
  ask      = "Does the glow stay until then?"
  option "glowing" {
    when  = igniter.amps > 0.5
    label = "Yes"
  }
  option "no-glow" {
    label = "No"
  }
}

check "hear-valve" {
  stage    = "watch"
  name     = "click of the gas valve"
  function = "look"
  part     = "gas-valve"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  event    = "the gas valve clicks"
  act      = "Listen near the gas valve when the glow ends."
  ask      = "Do you hear a click or no click?"
  option "clicks" {
    when  = gas-valve.powered
    label = "A click"
  }
  option "no-click" {
    missed = true
    label  = "No click"
  }
}

check "see-flame" {
  stage    = "watch"
  name     = "first flame"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the burners light"
  unless   = ["see-fan=silent", "see-hold=no-flame", "see-burners=no-flame"]
  act      = "Stand to the side and watch the small window."
  caution  = "Flame may come out. Stand to the side."
  ask      = "How does the flame start? Softly, rolling out, with a thump, or no flame?"
  option "whoosh" {
    when  = !(flame-outside > 0.5) && !(lit > 0.5 && burners.passes < 0.5) && (lit > 0.5)
    label = "Softly"
  }
  option "rolls-out" {
    when  = flame-outside > 0.5
    stop  = "roll-out"
    label = "Rolling out"
  }
  option "bang" {
    when  = lit > 0.5 && burners.passes < 0.5
    stop  = "late-light"
    label = "With a thump"
  }
  option "no-flame" {
    missed = true
    label  = "No flame"
  }
}

check "see-burners" {
  stage    = "watch"
  name     = "number of burners that light"
  function = "look"
  part     = "burners"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame"]
  act      = "Count the flames through the small window."
  ask      = "How many burners light? All burners, no burner, or only some burners?"
  option "all-burners" {
    when  = !(lit < 0.5) && !(crossover.passes < 0.5 || burners.passes < 0.5)
    seen  = ["flame", "held"]
    label = "All burners"
  }
  option "no-flame" {
    when  = lit < 0.5
    seen  = ["dark"]
    label = "No burner"
  }
  option "some-burners" {
    seen  = ["flame", "held"]
    label = "Only some burners"
  }
}

check "see-hold" {
  stage    = "watch"
  name     = "flame after ten seconds"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the flame stays for ten seconds"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-burners=no-flame"]
  act      = "When you see a flame, count to ten."
  ask      = "What does the flame do? It stays, it goes out, or there is no flame?"
  option "flame-stays" {
    when  = lit > 0.5 && board.flame
    seen  = ["held"]
    label = "It stays"
  }
  option "short-flame" {
    when  = lit > 0.5
    seen  = ["out"]
    label = "It goes out"
  }
  option "no-flame" {
    seen   = ["dark"]
    missed = true
    label  = "There is no flame"
  }
}

check "see-colour" {
  stage    = "watch"
  name     = "color of the flame"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "run"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame"]
  act      = "Look at the flame, not at the glow."
  ask      = "What color is the flame? Blue, no flame, or yellow?"
  option "blue-flame" {
    when  = !(lit < 0.5) && !(mode("orifice.too-big") || mode("burners.dirty"))
    label = "Blue"
  }
  option "no-flame" {
    when  = lit < 0.5
    label = "No flame"
  }
  option "yellow-flame" {
    stop  = "combustion"
    label = "Yellow"
  }
}

check "see-blower" {
  stage    = "watch"
  name     = "blower"
  function = "look"
  part     = "blower"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  event    = "the big blower starts"
  unless   = ["see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame"]
  act      = "Listen for the big blower in the lower part."
  ask      = "Is the blower running, humming, or silent?"
  option "running" {
    when  = !blower.hums && blower.works > 0.1
    label = "Running"
  }
  option "humming" {
    when  = blower.hums
    label = "Humming"
  }
  option "silent" {
    missed = true
    label  = "Silent"
  }
}

check "see-move" {
  stage    = "watch"
  name     = "flame when the blower starts"
  function = "look"
  part     = "exchanger"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame", "see-blower=silent"]
  act      = "Watch the flame as the blower starts."
  ask      = "What does the flame do? It stays still, there is no flame, or it moves?"
  option "flame-still" {
    when  = !(lit < 0.5) && !mode("exchanger.cracked")
    label = "It stays still"
  }
  option "no-flame" {
    when  = lit < 0.5
    label = "There is no flame"
  }
  option "flame-moves" {
    stop  = "exchanger"
    label = "It moves"
  }
}

check "feel-air" {
  stage    = "watch"
  name     = "air from a register"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-blower=silent"]
  act      = "Hold your hand over the nearest register."
  ask      = "What do you feel? Strong air, no air, or weak air?"
  option "strong-air" {
    when  = airflow >= 0.7
    label = "Strong air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "weak-air" {
    label = "Weak air"
  }
}

check "feel-warm" {
  stage    = "watch"
  name     = "warmth of the air"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("5 min", "common practice, no source")
  skill    = "clear"
  unless   = ["see-blower=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame"]
  act      = "After five minutes, feel the air at the farthest register."
  ask      = "What do you feel? Warm air, no air, cold air, or cool air?"
  option "warm-air" {
    when  = airflow >= 0.05 && lit >= 0.5 && !mode("duct-joints.apart")
    label = "Warm air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "cold" {
    when  = lit < 0.5
    label = "Cold air"
  }
  option "cool-air" {
    label = "Cool air"
  }
}

check "see-limit" {
  stage    = "watch"
  name     = "burner after ten minutes"
  function = "look"
  part     = "high-limit"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("10 min", "common practice, no source")
  skill    = "clear"
  repeat   = true
  unless   = ["see-fan=silent", "see-flame=no-flame", "see-hold=no-flame", "see-hold=short-flame", "see-burners=no-flame"]
  act      = "Let it run for ten minutes. Watch the flame."
  ask      = "Is the burner still burning or out?"
  option "flame-stays" {
    when  = lit > 0.5
    label = "Still burning"
  }
  option "short-flame" {
    label = "Out"
  }
}

check "see-end" {
  stage    = "watch"
  name     = "flame after turning it down"
  function = "look"
  part     = "gas-valve"
  power    = "on"
  call     = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the thermostat down. Watch the flame."
  ask      = "Is the flame gone or still burning?"
  option "no-flame" {
    when  = !mode("gas-valve.leaking")
    label = "Gone"
  }
  option "flame-stays" {
    stop  = "gas-train"
    label = "Still burning"
  }
}

check "hear-rest" {
  stage    = "watch"
  name     = "fans after turning it down"
  function = "look"
  power    = "on"
  call     = "off"
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the thermostat down. Wait three minutes."
  ask      = "What do you hear? Both fans silent, or one still running?"
  option "silent" {
    when  = !(inducer.works > 0.1 || blower.works > 0.1)
    label = "Both fans silent"
  }
  option "running" {
    label = "One still running"
  }
}

# ---- 7 the meter and the leads ----

check "outlet" {
  stage    = "plan"
  name     = "meter on a working outlet"
  function = "volts-ac"
  part     = "supply"
  red      = "outlet-hot"
  black    = "outlet-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "any"
  places   = []
  hazard   = "mains"
  instead  = "house-power"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip in each slot of the outlet."
  caution  = "House voltage. Hold only the plastic."
}

# ---- 8 measurements: 120 V, live ----

check "box-in-v" {
  stage    = "plan"
  name     = "volts coming in at the switch box"
  function = "volts-ac"
  part     = "line-run"
  red      = "box-in"
  black    = "box-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "switch-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "box-out-v" {
  stage    = "plan"
  name     = "volts after the furnace switch"
  function = "volts-ac"
  part     = "furnace-switch"
  red      = "box-out"
  black    = "box-neutral"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "switch-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "box-ground-v" {
  stage    = "plan"
  name     = "volts from the incoming wire to ground"
  function = "volts-ac"
  part     = "neutral-run"
  red      = "box-in"
  black    = "box-ground"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["switch-box"]
  hazard   = "mains"
  instead  = "breaker-look"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage inside. Use one hand only."
}

check "door-in-v" {
  stage    = "plan"
  name     = "volts before the door switch"
  function = "volts-ac"
  red      = "door-in"
  black    = "door-n"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["lower-bay"]
  hazard   = "mains"
  instead  = "door-switch-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. The blower may start."
  hold     = "free"
}

check "board-line" {
  stage    = "plan"
  name     = "volts at the control board"
  function = "volts-ac"
  part     = "board"
  red      = "board-l"
  black    = "board-n"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "light"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "board-load" {
  stage    = "plan"
  name     = "volts at the control board while the igniter glows"
  function = "volts-ac"
  part     = "supply"
  red      = "board-l"
  black    = "board-n"
  unit     = "V"
  unless   = ["see-glow=no-glow"]
  limit    = between(108, 127, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "story-pattern"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the igniter glows."
  caution  = "House voltage. The fan is running."
}

check "board-lg" {
  stage    = "plan"
  name     = "volts from the power wire to bare metal"
  function = "volts-ac"
  part     = "junction"
  red      = "board-l"
  black    = "frame"
  unit     = "V"
  limit    = between(113, 127, "ILL")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "ground-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "board-ng" {
  stage    = "plan"
  name     = "volts from neutral to bare metal"
  function = "volts-ac"
  part     = "junction"
  red      = "board-n"
  black    = "frame"
  unit     = "V"
  limit    = atmost(3, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "ground-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
  caution  = "House voltage. Use one hand only."
}

check "fan-out-v" {
  stage    = "plan"
  name     = "volts from the board to the draft fan"
  function = "volts-ac"
  part     = "board"
  red      = "fan-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the draft fan should run."
  caution  = "House voltage. The fan starts by itself."
}

check "fan-plug-v" {
  stage    = "plan"
  name     = "volts at the draft fan plug"
  function = "volts-ac"
  part     = "inducer-plug"
  red      = "fan-plug"
  black    = "fan-plug-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-lead-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the draft fan should run."
  caution  = "House voltage. The fan starts by itself."
}

check "glow-out-v" {
  stage    = "plan"
  name     = "volts from the board to the igniter"
  function = "volts-ac"
  part     = "board"
  red      = "glow-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the igniter should glow."
  caution  = "House voltage. The igniter gets white hot."
}

check "glow-plug-v" {
  stage    = "plan"
  name     = "volts at the igniter plug"
  function = "volts-ac"
  part     = "igniter-plug"
  red      = "glow-plug"
  black    = "glow-plug-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-lead-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the igniter should glow."
  caution  = "House voltage. The igniter gets white hot."
}

check "blower-out-v" {
  stage    = "plan"
  name     = "volts from the board to the blower"
  function = "volts-ac"
  part     = "board"
  red      = "blower-out"
  black    = "board-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "blower-ohms"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the blower should run."
  caution  = "House voltage. The blower starts by itself."
}

check "blower-tap-v" {
  stage    = "plan"
  name     = "volts at the blower's speed wire"
  function = "volts-ac"
  part     = "speed-lead"
  red      = "blower-tap"
  black    = "blower-n"
  unit     = "V"
  limit    = between(106, 127, "from memory")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "speed-lead-look"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the blower should run."
  caution  = "House voltage. The blower starts by itself."
}

check "glow-amps" {
  stage    = "plan"
  name     = "current of the igniter"
  function = "amps-ac"
  part     = "igniter"
  quantity = "amps:igniter"
  unit     = "A"
  limit    = between(2, 5, "own")
  power    = "on"
  call     = "on"
  at       = "warm-up"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "glow-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Do this only with a rough gray igniter. Close the clamp around one igniter wire."
  caution  = "Live wire. The fan is running."
}

check "glow-amps-late" {
  stage    = "plan"
  name     = "current of the igniter at the click"
  function = "amps-ac"
  part     = "igniter"
  quantity = "amps:igniter"
  unit     = "A"
  limit    = between(2, 5, "own")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "see-glow-hold"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Do this only with a rough gray igniter. Read until the gas valve clicks."
  caution  = "Live wire. The fan is running."
}

check "fan-amps" {
  stage    = "plan"
  name     = "current of the draft fan"
  function = "amps-ac"
  part     = "inducer"
  quantity = "amps:inducer"
  unit     = "A"
  unless   = ["see-fan=silent"]
  limit    = between(1, 2.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "fan-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Close the clamp around one draft fan wire."
  caution  = "Live wire. The fan starts by itself."
}

check "blower-amps" {
  stage    = "plan"
  name     = "current of the blower"
  function = "amps-ac"
  part     = "blower"
  quantity = "amps:blower"
  unit     = "A"
  limit    = between(2, 8, "plate")
  power    = "on"
  call     = "on"
  at       = "heating"
  window   = true
  places   = ["upper-bay"]
  hazard   = "mains"
  instead  = "blower-ohms"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Close the clamp around the blower's speed wire."
  caution  = "Live wire. The blower starts by itself."
}

# ---- 8 measurements: 24 V ----

check "secondary-v" {
  stage    = "plan"
  name     = "volts at the transformer"
  function = "volts-ac"
  part     = "transformer"
  red      = "secondary-a"
  black    = "secondary-b"
  unit     = "V"
  limit    = between(22, 29, "T12")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "secondary-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "board-24-v" {
  stage    = "plan"
  name     = "low voltage into the control board"
  function = "volts-ac"
  part     = "secondary-lead"
  red      = "board-24"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "transformer-c" {
  stage    = "plan"
  name     = "volts from the transformer to terminal C"
  function = "volts-ac"
  part     = "common-lead"
  red      = "secondary-a"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "fuse-v" {
  stage    = "plan"
  name     = "volts across the board fuse"
  function = "volts-ac"
  part     = "board-fuse"
  red      = "board-24"
  black    = "board-r"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "fuse-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Touch the two small test spots on the fuse."
}

check "r-c" {
  stage    = "plan"
  name     = "volts from R to C at the board"
  function = "volts-ac"
  part     = "board"
  red      = "board-r"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "r-c-load" {
  stage    = "plan"
  name     = "volts from R to C with the gas valve on"
  function = "volts-ac"
  part     = "transformer"
  red      = "board-r"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts when the gas valve clicks."
}

check "w-c" {
  stage    = "plan"
  name     = "heat signal at the control board"
  function = "volts-ac"
  part     = "thermostat"
  red      = "board-w"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "w-c-rest" {
  stage    = "plan"
  name     = "heat signal with the thermostat down"
  function = "volts-ac"
  part     = "power-stealing"
  red      = "board-w"
  black    = "board-c"
  unit     = "V"
  limit    = atmost(2, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "y-c" {
  stage    = "plan"
  name     = "volts from Y to C with the thermostat up"
  function = "volts-ac"
  part     = "w-tail"
  red      = "board-y"
  black    = "board-c"
  unit     = "V"
  limit    = atmost(2, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "float-v" {
  stage    = "plan"
  name     = "volts across the float switch"
  function = "volts-ac"
  part     = "float-switch"
  red      = "float-in"
  black    = "float-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["pan"]
  hazard   = "low"
  instead  = "float-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "float-c" {
  stage    = "plan"
  name     = "volts after the float switch"
  function = "volts-ac"
  part     = "float-lead"
  red      = "float-far"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "splice-r-c" {
  stage    = "plan"
  name     = "volts at the red wire joint"
  function = "volts-ac"
  part     = "r-splice"
  red      = "splice-r"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-r-c" {
  stage    = "plan"
  name     = "volts from R to C at the thermostat"
  function = "volts-ac"
  part     = "c-wire"
  red      = "stat-r"
  black    = "stat-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["stat-base"]
  hazard   = "low"
  instead  = "stat-wire-look"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-r-w" {
  stage    = "plan"
  name     = "volts across the thermostat"
  function = "volts-ac"
  part     = "thermostat"
  red      = "stat-r"
  black    = "stat-w"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  places   = ["stat-base"]
  hazard   = "low"
  instead  = "stat-loop"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "stat-rw-end" {
  stage    = "plan"
  name     = "volts between the R and W wire ends"
  function = "volts-ac"
  part     = "r-terminal"
  red      = "stat-rw"
  black    = "stat-ww"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["stat-base"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Pull the thermostat off its base. Then read the volts."
}

check "splice-w-c" {
  stage    = "plan"
  name     = "volts at the white joint, wall side"
  function = "volts-ac"
  part     = "w-wire"
  red      = "splice-w"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "splice-w2-c" {
  stage    = "plan"
  name     = "volts at the white joint, board side"
  function = "volts-ac"
  part     = "w-splice"
  red      = "splice-w2"
  black    = "splice-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  places   = ["splice"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "limit-in-c" {
  stage    = "plan"
  name     = "volts going to the high limit"
  function = "volts-ac"
  part     = "limit-lead"
  red      = "limit-in"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "limit-v" {
  stage    = "plan"
  name     = "volts across the high limit"
  function = "volts-ac"
  part     = "high-limit"
  red      = "limit-in"
  black    = "limit-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "limit-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "limit-v-hot" {
  stage    = "plan"
  name     = "volts across the hot high limit"
  function = "volts-ac"
  part     = "high-limit"
  red      = "limit-in"
  black    = "limit-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "steady"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("12 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts right after the burner goes out."
  caution  = "Hot metal close by."
}

check "roll-left-v" {
  stage    = "plan"
  name     = "volts across the left roll-out switch"
  function = "volts-ac"
  part     = "rollout-left"
  red      = "limit-out"
  black    = "roll-mid"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "roll-left-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "roll-right-v" {
  stage    = "plan"
  name     = "volts across the right roll-out switch"
  function = "volts-ac"
  part     = "rollout-right"
  red      = "roll-mid"
  black    = "roll-out-end"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "roll-right-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "string-end-c" {
  stage    = "plan"
  name     = "volts at the limit pin of the board"
  function = "volts-ac"
  part     = "string-lead"
  red      = "string-end"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Push the tip into the back of the plug. Then read the volts."
}

check "press-rest-v" {
  stage    = "plan"
  name     = "volts across the pressure switch at rest"
  function = "volts-ac"
  part     = "pressure-switch"
  red      = "switch-in"
  black    = "switch-out"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "off"
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "press-ohms"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold both tips still. Read the volts."
}

check "press-run-v" {
  stage    = "plan"
  name     = "volts across the pressure switch with the fan running"
  function = "volts-ac"
  part     = "pressure-switch"
  red      = "switch-in"
  black    = "switch-out"
  unit     = "V"
  limit    = atmost(0.5, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts while the draft fan runs."
  caution  = "The draft fan starts by itself."
}

check "press-pin-c" {
  stage    = "plan"
  name     = "volts at the pressure pin with the fan running"
  function = "volts-ac"
  part     = "pressure-lead"
  red      = "press-pin"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "draft"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Push the tip into the plug first. Read the volts while the fan runs."
  caution  = "The draft fan starts by itself."
}

check "gas-out-v" {
  stage    = "plan"
  name     = "volts from the board to the gas valve"
  function = "volts-ac"
  part     = "board"
  red      = "gas-out"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Push the tip into the plug first. Read the volts when the gas valve clicks."
  caution  = "The burner lights. Keep your face away."
}

check "valve-v" {
  stage    = "plan"
  name     = "volts across the gas valve"
  function = "volts-ac"
  part     = "gas-valve"
  red      = "valve-1"
  black    = "valve-2"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  instead  = "valve-ohms"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts when the gas valve clicks."
  caution  = "The burner lights. Keep your face away."
}

check "valve-1-v" {
  stage    = "plan"
  name     = "volts from the gas valve to C"
  function = "volts-ac"
  part     = "valve-lead"
  red      = "valve-1"
  black    = "board-c"
  unit     = "V"
  limit    = between(21, 30, "AIRH")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Read the volts when the gas valve clicks."
  caution  = "The burner lights. Keep your face away."
}

check "flame-current" {
  stage    = "plan"
  name     = "flame current"
  function = "microamps-dc"
  part     = "flame-rod"
  unit     = "uA"
  limit    = atleast(1, "T05")
  power    = "on"
  call     = "on"
  at       = "trial"
  window   = true
  places   = ["upper-bay"]
  hazard   = "low"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  unless   = ["see-flame=no-flame", "see-hold=no-flame"]
  act      = "Stand back. Read the meter while the flame burns."
  caution  = "Power is on. Touch nothing. Move the meter only with the power off."
}

# ---- 8 measurements: power off and proved dead ----

check "door-switch-ohms" {
  stage    = "plan"
  name     = "door switch pressed in"
  function = "ohms"
  part     = "door-switch"
  red      = "door-a"
  black    = "door-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay"]
  lift     = ["door-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Hold the button in. Read the ohms."
  hold     = "held"
}

check "line-lead-ohms" {
  stage    = "plan"
  name     = "black wire from the door switch to the board"
  function = "ohms"
  part     = "line-lead"
  red      = "door-out"
  black    = "board-l"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["lower-bay", "upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one tip on each end of the wire. Read the ohms."
}

check "ground-ohms" {
  stage    = "plan"
  name     = "neutral to bare metal"
  function = "ohms"
  part     = "ground-run"
  red      = "board-n"
  black    = "frame"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "primary-ohms" {
  stage    = "plan"
  name     = "transformer, house voltage side"
  function = "ohms"
  part     = "transformer"
  red      = "primary-a"
  black    = "primary-b"
  unit     = "ohm"
  limit    = between(4, 60, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["primary-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "secondary-ohms" {
  stage    = "plan"
  name     = "transformer, low voltage side"
  function = "ohms"
  part     = "transformer"
  red      = "winding-a"
  black    = "winding-b"
  unit     = "ohm"
  limit    = between(0.1, 5, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["winding-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fuse-ohms" {
  stage    = "plan"
  name     = "board fuse, pulled out"
  function = "ohms"
  part     = "board-fuse"
  red      = "fuse-a"
  black    = "fuse-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fuse-a", "fuse-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "cable-short" {
  stage    = "plan"
  name     = "R wire to common"
  function = "ohms"
  part     = "r-wire"
  red      = "wall-r"
  black    = "splice-c"
  unit     = "ohm"
  limit    = atleast(1000, "common practice, no source")
  must     = true
  power    = "off"
  places   = ["splice"]
  lift     = ["wall-r"]
  hands_in = true
  hazard   = "none"
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "stat-loop" {
  stage    = "plan"
  name     = "thermostat cable with the thermostat up"
  function = "ohms"
  part     = "thermostat"
  red      = "wall-r"
  black    = "wall-w"
  unit     = "ohm"
  limit    = atmost(10, "common practice, no source")
  power    = "off"
  call     = "on"
  places   = ["splice"]
  lift     = ["wall-r", "wall-w"]
  hands_in = true
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Turn the thermostat up first. Then read the ohms."
}

check "y-short" {
  stage    = "plan"
  name     = "Y wire to common"
  function = "ohms"
  part     = "y-wire"
  red      = "y-out"
  black    = "board-c"
  unit     = "ohm"
  limit    = between(8, 200, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["y-out"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "float-ohms" {
  stage    = "plan"
  name     = "float switch"
  function = "ohms"
  part     = "float-switch"
  red      = "float-a"
  black    = "float-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["pan"]
  lift     = ["float-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "limit-ohms" {
  stage    = "plan"
  name     = "high limit, cold"
  function = "ohms"
  part     = "high-limit"
  red      = "limit-a"
  black    = "limit-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["limit-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "roll-left-ohms" {
  stage    = "plan"
  name     = "left roll-out switch"
  function = "ohms"
  part     = "rollout-left"
  red      = "roll-left-a"
  black    = "roll-left-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["roll-left-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "roll-right-ohms" {
  stage    = "plan"
  name     = "right roll-out switch"
  function = "ohms"
  part     = "rollout-right"
  red      = "roll-right-a"
  black    = "roll-right-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["roll-right-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "press-ohms" {
  stage    = "plan"
  name     = "pressure switch at rest"
  function = "ohms"
  part     = "pressure-switch"
  red      = "press-a"
  black    = "press-b"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["press-a", "press-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "press-lead-ohms" {
  stage    = "plan"
  name     = "wire from the pressure switch"
  function = "ohms"
  part     = "pressure-lead"
  red      = "switch-out"
  black    = "press-pin"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fan-ohms" {
  stage    = "plan"
  name     = "draft fan motor"
  function = "ohms"
  part     = "inducer"
  red      = "fan-a"
  black    = "fan-b"
  unit     = "ohm"
  limit    = between(5, 40, "own")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fan-lead-ohms" {
  stage    = "plan"
  name     = "draft fan wire"
  function = "ohms"
  part     = "inducer-plug"
  red      = "fan-plug-a"
  black    = "fan-plug-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-plug-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "glow-ohms" {
  stage    = "plan"
  name     = "igniter, cold"
  function = "ohms"
  part     = "igniter"
  red      = "glow-a"
  black    = "glow-b"
  unit     = "ohm"
  limit    = between(11, 110, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["glow-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
  caution  = "Do not touch the igniter itself."
}

check "glow-lead-ohms" {
  stage    = "plan"
  name     = "igniter wire"
  function = "ohms"
  part     = "igniter-plug"
  red      = "glow-plug-a"
  black    = "glow-plug-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["glow-plug-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "valve-ohms" {
  stage    = "plan"
  name     = "coil of the gas valve"
  function = "ohms"
  part     = "gas-valve"
  red      = "valve-a"
  black    = "valve-b"
  unit     = "ohm"
  limit    = between(15, 80, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["valve-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
  caution  = "Move only wires. Leave the gas fittings alone."
}

check "valve-lead-ohms" {
  stage    = "plan"
  name     = "gas valve wire"
  function = "ohms"
  part     = "valve-lead"
  red      = "gas-out"
  black    = "valve-1"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "valve-common-ohms" {
  stage    = "plan"
  name     = "common wire of the gas valve"
  function = "ohms"
  part     = "valve-common"
  red      = "valve-2"
  black    = "board-c"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "rod-ohms" {
  stage    = "plan"
  name     = "flame rod to burner"
  function = "ohms"
  part     = "flame-rod"
  red      = "rod-a"
  black    = "burner-metal"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["rod-a"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Touch only metal, not the white ceramic. Read the ohms."
}

check "lead-ohms" {
  stage    = "plan"
  name     = "flame rod wire"
  function = "ohms"
  part     = "flame-lead"
  red      = "lead-a"
  black    = "lead-b"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["lead-a", "lead-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Bend the wire gently while you read the ohms."
}

check "burner-ground-ohms" {
  stage    = "plan"
  name     = "burner to furnace metal"
  function = "ohms"
  part     = "burner-ground"
  red      = "burner-metal"
  black    = "frame"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Scratch both spots bright. Then read the ohms."
}

check "bond-ohms" {
  stage    = "plan"
  name     = "terminal C to furnace metal"
  function = "ohms"
  part     = "common-bond"
  red      = "board-c"
  black    = "frame"
  unit     = "ohm"
  limit    = atmost(2, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "blower-ohms" {
  stage    = "plan"
  name     = "blower motor"
  function = "ohms"
  part     = "blower"
  red      = "blower-a"
  black    = "blower-b"
  unit     = "ohm"
  limit    = between(5, 25, "STW")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["blower-a", "blower-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "blower-frame" {
  stage    = "plan"
  name     = "blower motor to its frame"
  function = "ohms"
  part     = "blower"
  red      = "blower-a"
  black    = "frame"
  unit     = "ohm"
  limit    = atleast(1000000, "common practice, no source")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["blower-a", "blower-b"]
  hands_in = true
  hazard   = "none"
  minutes  = q("3 min", "common practice, no source")
  must     = true
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the ohms."
}

check "fan-cap" {
  stage    = "plan"
  name     = "capacitor of the draft fan"
  function = "capacitance"
  part     = "inducer-capacitor"
  red      = "fan-cap-a"
  black    = "fan-cap-b"
  unit     = "uF"
  label    = "fan-uf"
  limit    = between(label * 0.94, label * 1.06, "HS")
  power    = "off"
  places   = ["upper-bay"]
  lift     = ["fan-cap-a", "fan-cap-b"]
  hands_in = true
  hazard   = "capacitor"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the micro farads."
  caution  = "It may hold a charge. Touch no bare terminal."
}

check "blower-cap" {
  stage    = "plan"
  name     = "capacitor of the blower"
  function = "capacitance"
  part     = "blower-capacitor"
  red      = "blower-cap-a"
  black    = "blower-cap-b"
  unit     = "uF"
  label    = "blower-uf"
  limit    = between(label * 0.94, label * 1.06, "HS")
  power    = "off"
  places   = ["lower-bay"]
  lift     = ["blower-cap-a", "blower-cap-b"]
  hands_in = true
  hazard   = "capacitor"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Keep your fingers off the metal tips. Read the micro farads."
  caution  = "It may hold a charge. Touch no bare terminal."
}

# ---- 8 measurements: draft, air, gas ----

check "port-draft-m" {
  stage    = "plan"
  name     = "draft at the pressure port"
  function = "manometer"
  part     = "port"
  quantity = "port-draft"
  unit     = "inH2O"
  label    = "press-set"
  limit    = atleast(label + 0.1, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["upper-bay"]
  hazard   = "moving"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  fit      = "Pull the hose off the port. Connect the gauge between hose and port with a three-way fitting."
  act      = "Stand back and read the gauge."
}

check "switch-draft-m" {
  stage    = "plan"
  name     = "draft at the pressure switch"
  function = "manometer"
  part     = "hose"
  quantity = "sensed-draft"
  unit     = "inH2O"
  label    = "press-set"
  limit    = atleast(label + 0.1, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "draft"
  places   = ["upper-bay"]
  hazard   = "moving"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  fit      = "Pull the hose off the switch. Connect the gauge between hose and switch with a three-way fitting."
  act      = "Stand back and read the gauge."
}

check "static-m" {
  stage    = "plan"
  name     = "air pressure across the furnace"
  function = "manometer"
  part     = "blower"
  quantity = "total-static"
  unit     = "inH2O"
  limit    = atmost(0.5, "T24")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("10 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put one gauge hose before the filter. Put the other above the furnace."
}

check "return-m" {
  stage    = "plan"
  name     = "suction before the blower"
  function = "manometer"
  part     = "filter"
  quantity = "return-static"
  unit     = "inH2O"
  limit    = atmost(0.35, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put the gauge hose between the filter and the blower."
}

check "supply-m" {
  stage    = "plan"
  name     = "air pressure above the furnace"
  function = "manometer"
  part     = "coil"
  quantity = "supply-static"
  unit     = "inH2O"
  limit    = atmost(0.35, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Put the gauge hose above the furnace, below the cooling coil."
}

check "rise-m" {
  stage    = "plan"
  name     = "air temperature rise"
  function = "thermometer"
  part     = "blower"
  quantity = "rise"
  unit     = "dF"
  limit    = between(35, 65, "plate")
  power    = "on"
  call     = "on"
  at       = "heating"
  places   = ["duct"]
  hazard   = "none"
  minutes  = q("12 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Measure the air in the supply duct and in the return duct. Subtract the two."
  caution  = "Hot duct. Keep fingers off bare metal."
}

check "inlet-m" {
  stage    = "plan"
  name     = "gas pressure at the inlet"
  function = "manometer"
  part     = "gas-supply"
  quantity = "gas-inlet"
  unit     = "inH2O"
  limit    = between(5, 14, "common practice, no source")
  power    = "on"
  call     = "on"
  at       = "trial"
  places   = ["upper-bay"]
  hazard   = "gas"
  minutes  = q("20 min", "common practice, no source")
  skill    = "skilled"
  repeat   = true
  who      = "licensed"
  act      = "Do this only with a license. Connect the gauge with the gas off."
  caution  = "Licensed people only. Turn the gas off to connect it."
}

check "dial" {
  stage    = "plan"
  name     = "gas meter dial"
  function = "look"
  part     = "gas-supply"
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "trial"
  minutes  = q("6 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Turn off all other gas flames. Watch the small dial of the gas meter."
  ask      = "Is the dial turning or standing still?"
  option "running" {
    when  = gas-flow > 0.2
    label = "Turning"
  }
  option "not-running" {
    label = "Standing still"
  }
}

check "dial-time" {
  stage    = "plan"
  name     = "time for one cubic foot of gas"
  function = "look"
  part     = "orifice"
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  unless   = ["see-flame=no-flame", "see-hold=no-flame"]
  act      = "Keep all other gas flames off. Time one turn of the one-foot dial."
  ask      = "How long does one turn take? Forty seconds or more, no turn, or less than forty seconds?"
  option "above" {
    when  = !(gas-flow < 0.2) && !(dial-seconds < orifice.quick)
    label = "Forty seconds or more"
  }
  option "not-running" {
    when  = gas-flow < 0.2
    label = "No turn"
  }
  option "below" {
    stop  = "combustion"
    label = "Less than forty seconds"
  }
}

check "room-co-m" {
  stage    = "plan"
  name     = "carbon monoxide in the room"
  function = "co-meter"
  part     = "exchanger"
  quantity = "room-co"
  unit     = "ppm"
  limit    = atmost(9, "EPA")
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("5 min", "common practice, no source")
  skill    = "skilled"
  act      = "If you have a C O meter, hold it at head height."
  caution  = "A gas sniffer does not show it."
  # UL 2034 alarms sound at 70 ppm within four hours
  band "leave" {
    when      = atleast(70, "from memory")
    emergency = "co"
  }
  band "off" {
    when = atleast(35, "T03")
    stop = "vent"
  }
  band "source" {
    when = atleast(9, "EPA")
    tell = "This is more than in outdoor air. Open a window. Look for where it comes from."
  }
}

check "flue-co-m" {
  stage    = "plan"
  name     = "carbon monoxide in the exhaust"
  function = "co-meter"
  part     = "orifice"
  quantity = "flue-co"
  unit     = "ppm"
  limit    = atmost(100, "common practice, no source")
  places   = ["outside"]
  power    = "on"
  call     = "on"
  at       = "heating"
  hazard   = "hot"
  minutes  = q("15 min", "common practice, no source")
  skill    = "skilled"
  who      = "licensed"
  act      = "Licensed people only: put the analyzer into the vent. Read the air-free value."
  band "off" {
    when = atleast(100, "common practice, no source")
    stop = "combustion"
  }
}

# ---- 8 looks that no meter replaces, power off ----

check "hose-look" {
  stage    = "plan"
  name     = "pressure hose"
  function = "look"
  part     = "hose"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Bend the whole rubber hose gently under a light."
  ask      = "Is the hose good, off its port, or split?"
  option "good" {
    when  = !mode("hose.off") && !mode("hose.split")
    label = "Good"
  }
  option "off-port" {
    when  = mode("hose.off")
    label = "Off its port"
  }
  option "split" {
    label = "Split"
  }
}

check "hose-wet" {
  stage    = "plan"
  name     = "inside of the pressure hose"
  function = "look"
  part     = "hose"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the hose off the switch end. Shake it."
  ask      = "Is the inside of the hose dry or wet?"
  option "dry" {
    when  = !(mode("hose.wet") || mode("inducer-drain.blocked"))
    label = "Dry"
  }
  option "wet" {
    label = "Wet"
  }
}

check "port-look" {
  stage    = "plan"
  name     = "pressure port"
  function = "look"
  part     = "port"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Shine a light into the small port where the hose was."
  ask      = "Is the port clear or blocked?"
  option "clear" {
    when  = !(port.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
}

check "fan-drain-look" {
  stage    = "plan"
  name     = "drain of the draft fan"
  function = "look"
  part     = "inducer-drain"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the drain tube off the draft fan. Look for standing water."
  ask      = "Is the drain tube clear or blocked?"
  option "clear" {
    when  = !(inducer-drain.passes < 0.8)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
}

check "press-label" {
  stage    = "plan"
  name     = "label of the pressure switch"
  function = "look"
  part     = "pressure-switch"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the number on the pressure switch. Compare it with the parts label."
  ask      = "Is the number the same or different?"
  option "same" {
    when  = !mode("pressure-switch.wrong-part")
    label = "The same"
  }
  option "different" {
    label = "Different"
  }
}

check "jumper-look" {
  stage    = "plan"
  name     = "jumper wires left by a repair"
  function = "look"
  part     = "left-jumper"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at every safety switch for a short wire across it."
  ask      = "Are the switches clear or bypassed?"
  option "clear" {
    when  = !mode("left-jumper.left-in")
    label = "Clear"
  }
  option "bypassed" {
    label = "Bypassed"
  }
}

check "w-look" {
  stage    = "plan"
  name     = "wire at terminal W"
  function = "look"
  part     = "w-tail"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Read the letter under the white thermostat wire at the board."
  ask      = "Is the wire on terminal W?"
  option "right-place" {
    when  = !mode("w-tail.wrong-terminal")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
}

check "w-tug" {
  stage    = "plan"
  name     = "pull test at terminal W"
  function = "look"
  part     = "w-tail"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on the W wire at the board."
  ask      = "Is the wire tight or loose?"
  option "tight" {
    when  = !mode("w-tail.loose")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "speed-lead-look" {
  stage    = "plan"
  name     = "speed wire of the blower"
  function = "look"
  part     = "speed-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Compare the colored blower wire with the wiring diagram."
  ask      = "How is the wire? In the right place, in the wrong place, or loose?"
  option "right-place" {
    when  = !mode("speed-lead.wrong-terminal") && !mode("speed-lead.loose")
    label = "In the right place"
  }
  option "wrong-place" {
    when  = mode("speed-lead.wrong-terminal")
    label = "In the wrong place"
  }
  option "loose" {
    label = "Loose"
  }
}

check "fan-spin" {
  stage    = "plan"
  name     = "draft fan turned by hand"
  function = "look"
  part     = "inducer"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the small cooling wheel of the fan with one finger."
  ask      = "How does the wheel turn? Free, blocked, or rough?"
  option "free" {
    when  = !mode("inducer.seized") && !mode("inducer.dragging")
    label = "Free"
  }
  option "not-running" {
    when  = mode("inducer.seized")
    label = "Blocked"
  }
  option "grinding" {
    label = "Rough"
  }
}

check "fan-wheel-look" {
  stage    = "plan"
  name     = "wheel of the draft fan"
  function = "look"
  part     = "inducer-wheel"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Shine a light in. Turn the shaft by hand."
  ask      = "On its shaft, is the fan wheel tight or loose?"
  option "tight" {
    when  = !(inducer-wheel.passes < 0.8)
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "fan-cap-look" {
  stage    = "plan"
  name     = "look of the draft fan's capacitor"
  function = "look"
  part     = "inducer-capacitor"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the small capacitor from all sides."
  ask      = "Is it good or swollen?"
  option "good" {
    when  = !mode("inducer-capacitor.open")
    label = "Good"
  }
  option "swollen" {
    label = "Swollen"
  }
}

check "fan-plug-look" {
  stage    = "plan"
  name     = "plug of the draft fan"
  function = "look"
  part     = "inducer-plug"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Pull the two halves of the draft fan plug apart. Look at the pins."
  ask      = "Are the pins good, or burned or loose?"
  option "good" {
    when  = !mode("inducer-plug.open")
    label = "Good"
  }
  option "burnt" {
    label = "Burned or loose"
    also  = ["loose"]
  }
}

check "glow-plug-look" {
  stage    = "plan"
  name     = "igniter plug"
  function = "look"
  part     = "igniter-plug"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Pull the two halves of the igniter plug apart. Look at the pins."
  ask      = "Are the pins good or burned?"
  option "good" {
    when  = !mode("igniter-plug.open")
    label = "Good"
  }
  option "burnt" {
    label = "Burned"
  }
}

check "glow-look" {
  stage    = "plan"
  name     = "look of the igniter"
  function = "look"
  part     = "igniter"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the igniter with a light."
  caution  = "It breaks at a touch. Only look."
  ask      = "Is the igniter good or cracked?"
  option "good" {
    when  = !mode("igniter.open")
    label = "Good"
  }
  option "cracked" {
    twice = true
    label = "Cracked"
  }
}

check "glow-place" {
  stage    = "plan"
  name     = "place of the igniter"
  function = "look"
  part     = "igniter-bracket"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look along the igniter toward the burner."
  caution  = "It breaks at a touch. Only look."
  ask      = "Does the tip point at the burner?"
  option "right-place" {
    when  = !mode("igniter-bracket.moved")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
}

check "glow-kind" {
  stage    = "plan"
  name     = "kind of igniter"
  function = "look"
  part     = "igniter"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Read the number on the white block. Compare it with the parts label."
  caution  = "It breaks at a touch. Only look."
  ask      = "Is the number the same or different?"
  option "same" {
    when  = !mode("igniter.wrong-part")
    label = "The same"
  }
  option "different" {
    label = "Different"
  }
}

check "rod-look" {
  stage    = "plan"
  name     = "look of the flame rod"
  function = "look"
  part     = "flame-rod"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look at the metal rod and its white ceramic."
  ask      = "How is the rod? Clean, dirty, cracked, or out of place?"
  option "clean" {
    when  = !mode("flame-rod.dirty") && !mode("flame-rod.cracked") && !mode("flame-rod.bent")
    label = "Clean"
  }
  option "dirty" {
    when  = mode("flame-rod.dirty")
    mend  = "clean-flame-rod"
    label = "Dirty"
  }
  option "cracked" {
    when  = mode("flame-rod.cracked")
    twice = true
    label = "Cracked"
  }
  option "wrong-place" {
    label = "Out of place"
  }
}

check "rod-place" {
  stage    = "plan"
  name     = "place of the flame rod"
  function = "look"
  part     = "flame-rod"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look along the rod toward the burner."
  ask      = "Is the tip of the rod over a burner?"
  option "right-place" {
    when  = !mode("flame-rod.bent")
    label = "Yes"
  }
  option "wrong-place" {
    label = "No"
  }
}

check "burner-look" {
  stage    = "plan"
  name     = "look of the burners"
  function = "look"
  part     = "burners"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look along the burners with a light."
  ask      = "Are they clean, sooty, or dirty?"
  option "clean" {
    when  = !mode("exchanger.plugged") && !(mode("burners.dirty") || mode("crossover.blocked"))
    label = "Clean"
  }
  option "sooty" {
    when  = mode("exchanger.plugged")
    stop  = "roll-out"
    label = "Sooty"
  }
  option "dirty" {
    label = "Dirty"
  }
}

check "crossover-look" {
  stage    = "plan"
  name     = "slots between the burners"
  function = "look"
  part     = "crossover"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("3 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the slots that run from burner to burner."
  ask      = "Are the slots clear or blocked?"
  option "clear" {
    when  = !(crossover.passes < 0.5)
    label = "Clear"
  }
  option "blocked" {
    label = "Blocked"
  }
}

check "orifice-look" {
  stage    = "plan"
  name     = "burner nozzles, called orifices"
  function = "look"
  part     = "orifice"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Only read the numbers on the nozzles. Unscrew nothing."
  ask      = "Compare them with the label. Are they the same or different?"
  option "same" {
    when  = !mode("orifice.too-big")
    label = "The same"
  }
  option "different" {
    stop  = "combustion"
    label = "Different"
  }
}

check "exchanger-look" {
  stage    = "plan"
  name     = "look of the heat exchanger"
  function = "look"
  part     = "exchanger"
  places   = ["burner-box", "upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("4 min", "common practice, no source")
  skill    = "skilled"
  act      = "Look into each opening behind the burners with a light."
  ask      = "Is the heat exchanger good, sooty, or cracked?"
  option "good" {
    when  = !mode("exchanger.plugged") && !mode("exchanger.cracked")
    label = "Good"
  }
  option "sooty" {
    when  = mode("exchanger.plugged")
    stop  = "roll-out"
    label = "Sooty"
  }
  option "cracked" {
    stop  = "exchanger"
    label = "Cracked"
  }
}

check "roll-look" {
  stage    = "plan"
  name     = "buttons of the roll-out switches"
  function = "look"
  part     = "rollout-left"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Only look at the two roll-out switches. Do not press them."
  ask      = "Are their buttons flush or popped out?"
  option "not-popped" {
    when  = !(!rollout-left.closed || !rollout-right.closed)
    label = "Flush"
  }
  option "popped" {
    stop  = "roll-out"
    label = "Popped out"
  }
}

check "roll-marks" {
  stage    = "plan"
  name     = "marks at the roll-out switches"
  function = "look"
  part     = "rollout-left"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Look for soot and burned paint around the roll-out switches."
  ask      = "Is the metal clean, or sooty or burned?"
  option "clean" {
    when  = !mode("exchanger.plugged")
    label = "Clean"
  }
  option "sooty" {
    stop  = "roll-out"
    label = "Sooty or burned"
    also  = ["burnt"]
  }
}

check "gas-switch-look" {
  stage    = "plan"
  name     = "switch on the gas valve"
  function = "look"
  part     = "valve-switch"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Read the mark beside the small switch on the gas valve."
  ask      = "Is the switch on or off?"
  option "on" {
    when  = !(valve-switch.passes < 0.5)
    label = "On"
  }
  option "off" {
    label = "Off"
  }
}

check "valve-wire-look" {
  stage    = "plan"
  name     = "wires of the gas valve"
  function = "look"
  part     = "valve-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire at the gas valve."
  ask      = "What do you find? Both wires tight, or one loose?"
  option "tight" {
    when  = !(mode("valve-lead.off") || mode("valve-common.off"))
    label = "Both wires tight"
  }
  option "loose" {
    label = "One loose"
  }
}

check "string-look" {
  stage    = "plan"
  name     = "wires of the limit and roll-out switches"
  function = "look"
  part     = "limit-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire from the switches to the plug."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !(mode("limit-lead.off") || mode("string-lead.off"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "press-wire-look" {
  stage    = "plan"
  name     = "wires of the pressure switch"
  function = "look"
  part     = "pressure-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire at the pressure switch."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !mode("pressure-lead.off")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "supply-wire-look" {
  stage    = "plan"
  name     = "supply wires of the board"
  function = "look"
  part     = "neutral-lead"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on the black, white, and transformer wires at the board."
  ask      = "Are the wires tight, or loose or burned?"
  option "tight" {
    when  = !(mode("line-lead.loose") || mode("neutral-lead.loose") || mode("secondary-lead.loose") || mode("common-lead.loose"))
    label = "Tight"
  }
  option "loose" {
    also  = ["burnt"]
    label = "Loose or burned"
  }
}

check "fuse-look" {
  stage    = "plan"
  name     = "look of the board fuse"
  function = "look"
  part     = "board-fuse"
  places   = ["upper-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the flat fuse out. Hold it up to a light."
  ask      = "Is the strip inside good or blown?"
  option "good" {
    when  = !board-fuse.blown
    label = "Good"
  }
  option "blown" {
    label = "Blown"
  }
}

check "stat-wire-look" {
  stage    = "plan"
  name     = "wires at the thermostat"
  function = "look"
  part     = "r-terminal"
  places   = ["stat-base"]
  power    = "any"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull the thermostat off its base. Pull gently on each wire."
  ask      = "Are the wires tight or loose?"
  option "tight" {
    when  = !(mode("r-terminal.off") || mode("w-terminal.off"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "splice-tug" {
  stage    = "plan"
  name     = "joints of the thermostat cable"
  function = "look"
  part     = "r-splice"
  places   = ["splice"]
  power    = "off"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Pull gently on each wire under its wire nut."
  ask      = "Are the joints tight or loose?"
  option "tight" {
    when  = !(mode("r-splice.open") || mode("w-splice.open"))
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "blower-spin" {
  stage    = "plan"
  name     = "blower wheel turned by hand"
  function = "look"
  part     = "blower"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Turn the wheel with one finger."
  caution  = "Sharp blades. The power stays off."
  ask      = "How does the wheel turn? Free, blocked, or rough?"
  option "free" {
    when  = !mode("blower.seized") && !mode("blower.dragging")
    label = "Free"
  }
  option "not-running" {
    when  = mode("blower.seized")
    label = "Blocked"
  }
  option "grinding" {
    label = "Rough"
  }
}

check "blower-wheel-look" {
  stage    = "plan"
  name     = "look of the blower wheel"
  function = "look"
  part     = "blower-wheel"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look between the blades with a light."
  ask      = "Are the blades clean or dirty?"
  option "clean" {
    when  = !mode("blower-wheel.dirty")
    label = "Clean"
  }
  option "dirty" {
    label = "Dirty"
  }
}

check "blower-hub" {
  stage    = "plan"
  name     = "blower wheel on its shaft"
  function = "look"
  part     = "blower-wheel"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold the shaft. Try to turn the wheel on it."
  caution  = "Sharp blades. The power stays off."
  ask      = "Is the wheel tight or loose?"
  option "tight" {
    when  = !mode("blower-wheel.loose")
    label = "Tight"
  }
  option "loose" {
    label = "Loose"
  }
}

check "blower-cap-look" {
  stage    = "plan"
  name     = "look of the blower's capacitor"
  function = "look"
  part     = "blower-capacitor"
  places   = ["lower-bay"]
  power    = "off"
  hands_in = true
  minutes  = q("1 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look at the capacitor from all sides."
  ask      = "Is it good or swollen?"
  option "good" {
    when  = !mode("blower-capacitor.failed")
    label = "Good"
  }
  option "swollen" {
    label = "Swollen"
  }
}

check "coil-look" {
  stage    = "plan"
  name     = "look of the cooling coil"
  function = "look"
  part     = "coil"
  places   = ["coil-box"]
  power    = "off"
  hands_in = true
  minutes  = q("5 min", "common practice, no source")
  skill    = "ambiguous"
  act      = "Look up at the fins with a mirror."
  ask      = "Is the underside of the coil clean or dirty?"
  option "clean" {
    when  = !mode("coil.dirty")
    label = "Clean"
  }
  option "dirty" {
    label = "Dirty"
  }
}

# ---- 10 before a part is swapped ----

check "rules" {
  stage    = "cause"
  name     = "local rules"
  function = "look"
  power    = "any"
  minutes  = q("0.5 min", "common practice, no source")
  skill    = "ambiguous"
  ask      = "Do your local rules let you work on house voltage parts?"
  option "allowed" {
    when  = 1 > 0
    label = "Yes"
  }
  option "reserved" {
    stop  = "local-rules"
    label = "No"
  }
}

# ---- 14 restart: asked after every repair ----

check "again-flame" {
  stage    = "restart"
  name     = "flame after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("2 min", "common practice, no source")
  skill    = "clear"
  act      = "Look through the small window."
  ask      = "What color is the flame? Blue, yellow, or no flame?"
  option "blue-flame" {
    when  = lit > 0.5 && !mode("orifice.too-big") && !mode("burners.dirty")
    label = "Blue"
  }
  option "yellow-flame" {
    when  = lit > 0.5
    stop  = "combustion"
    label = "Yellow"
  }
  option "no-flame" {
    label = "No flame"
  }
}

check "again-air" {
  stage    = "restart"
  name     = "air after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "heating"
  minutes  = q("3 min", "common practice, no source")
  skill    = "clear"
  act      = "Hold your hand over the nearest register."
  ask      = "What do you feel? Warm air, no air, or cool air?"
  option "warm-air" {
    when  = lit > 0.5 && airflow > 0.05
    label = "Warm air"
  }
  option "no-air" {
    when  = airflow < 0.05
    label = "No air"
  }
  option "cool-air" {
    label = "Cool air"
  }
}

check "again-rise" {
  stage    = "restart"
  name     = "temperature rise after the repair"
  function = "thermometer"
  part     = "blower"
  quantity = "rise"
  unit     = "dF"
  limit    = between(35, 65, "plate")
  power    = "on"
  call     = "on"
  at       = "steady"
  places   = []
  hazard   = "none"
  minutes  = q("8 min", "common practice, no source")
  skill    = "ambiguous"
  repeat   = true
  act      = "Measure the air in the supply duct and in the return duct. Subtract the two."
  caution  = "Hot duct. Keep fingers off bare metal."
}

check "again-limit" {
  stage    = "restart"
  name     = "burner ten minutes after the repair"
  function = "look"
  power    = "on"
  call     = "on"
  at       = "steady"
  minutes  = q("10 min", "common practice, no source")
  skill    = "clear"
  act      = "Let it run for ten minutes. Stay near it."
  ask      = "Is the burner still burning or out?"
  option "flame-stays" {
    when  = lit > 0.5
    label = "Still burning"
  }
  option "short-flame" {
    label = "Out"
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

# ---- repairs: settings and things anybody may do ----

repair "set-heat" {
  name    = "set the thermostat to heat"
  part    = "stat-mode"
  kind    = "set"
  minutes = q("1..2 min", "from memory")
  confirm = "stat-mode-set"
  step {
    act   = "Set the thermostat to heat."
    power = "on"
  }
  step {
    act   = "Wait five minutes. The thermostat has a delay."
    power = "on"
  }
}

repair "set-point" {
  name    = "raise the set temperature"
  part    = "setpoint"
  kind    = "set"
  minutes = q("1..2 min", "from memory")
  confirm = "stat-setpoint"
  step {
    act   = "Set the temperature five degrees above the room temperature."
    power = "on"
  }
}

repair "set-schedule" {
  name    = "set the schedule, or press hold"
  part    = "setpoint"
  kind    = "set"
  minutes = q("2..10 min", "from memory")
  confirm = "stat-schedule"
  step {
    act   = "Press hold on the thermostat, or correct its schedule."
    power = "on"
  }
  step {
    act   = "Set the temperature above the room temperature."
    power = "on"
  }
}

repair "set-heat-type" {
  name    = "set up the thermostat for a furnace"
  part    = "stat-setup"
  kind    = "set"
  minutes = q("5..15 min", "from memory")
  confirm = "stat-type"
  step {
    act   = "Write down how the menu is set now."
    power = "on"
  }
  step {
    act   = "Set the heat type to gas furnace."
    power = "on"
  }
}

repair "move-thermostat" {
  name    = "keep false warmth away from the thermostat"
  part    = "setpoint"
  kind    = "set"
  minutes = q("5..60 min", "from memory")
  confirm = "stat-room"
  note    = "Correct the room temperature in its menu, or move it."
  step {
    act   = "Keep lamps and sun away from the thermostat."
    power = "on"
  }
  step {
    act   = "Close the cable hole behind the thermostat."
    power = "on"
  }
}

repair "change-batteries" {
  name    = "change the thermostat batteries"
  part    = "batteries"
  kind    = "replace"
  price   = q("3..12 money", "from memory")
  minutes = q("2..5 min", "from memory")
  match   = ["battery size", "number of batteries"]
  confirm = "stat-screen"
  step {
    act   = "Take out the old batteries. Notice which way they point."
    power = "on"
  }
  step {
    act   = "Put in fresh batteries of the same size."
    power = "on"
  }
}

repair "switch-on" {
  name    = "switch the furnace on"
  part    = "furnace-switch"
  kind    = "set"
  minutes = q("1..1 min", "from memory")
  confirm = "switch-look"
  step {
    act   = "Turn the furnace switch on."
    power = "on"
  }
  step {
    act   = "Mark the switch, so that nobody turns it off."
    power = "on"
  }
}

repair "reset-breaker" {
  name    = "reset the furnace breaker once"
  part    = "breaker"
  kind    = "set"
  minutes = q("2..5 min", "from memory")
  causes  = ["blower-frame", "blower-ohms"]
  confirm = "breaker-look"
  note    = "If it trips again, leave it off and call an electrician."
  step {
    act     = "Push the lever all the way off, then on. Do it once only."
    caution = "Dry hands. Stand to the side."
    level   = "warning"
    power   = "on"
  }
}

repair "seat-panel" {
  name    = "close the lower front panel fully"
  part    = "panel-seat"
  kind    = "refit"
  minutes = q("1..3 min", "from memory")
  confirm = "panel-look"
  note    = "The door switch stays free. Put no tape on it."
  step {
    act   = "Hang the panel on its hooks. Press it in until it is tight."
    power = "on"
  }
}

repair "open-gas-cock" {
  name    = "open the gas cock"
  part    = "gas-cock"
  kind    = "open"
  minutes = q("1..10 min", "from memory")
  causes  = ["cock-who"]
  confirm = "cock-look"
  note    = "Only when you know the reason. If not, the gas company opens it."
  step {
    act     = "Turn the handle along the pipe, slowly."
    caution = "Never do this without a known reason. If you notice an odor like gas, leave at once."
    level   = "danger"
    power   = "cut"
  }
}

repair "valve-switch-on" {
  name    = "turn the gas valve switch on"
  part    = "valve-switch"
  kind    = "open"
  minutes = q("1..3 min", "from memory")
  confirm = "gas-switch-look"
  step {
    act    = "Find out who turned it off, and why."
    power  = "off"
    places = ["upper-bay"]
  }
  step {
    act     = "Turn only the small switch to on."
    caution = "Touch no gas fitting."
    level   = "danger"
    power   = "off"
    places  = ["upper-bay"]
  }
}

repair "open-registers" {
  name    = "open the warm air registers"
  part    = "registers"
  kind    = "open"
  minutes = q("3..10 min", "from memory")
  confirm = "registers-look"
  step {
    act   = "Open every register. Move furniture away from them."
    power = "on"
  }
}

repair "clear-return" {
  name    = "clear the return grille"
  part    = "return-grille"
  kind    = "clean"
  minutes = q("3..15 min", "from memory")
  confirm = "return-look"
  step {
    act   = "Take away whatever covers the return grille."
    power = "on"
  }
}

repair "replace-filter" {
  name    = "replace the air filter"
  part    = "filter"
  kind    = "replace"
  price   = q("8..40 money", "from memory")
  minutes = q("3..10 min", "from memory")
  match   = ["length", "width", "thickness", "airflow class"]
  confirm = "filter-look"
  note    = "A filter that is too fine lets too little air through an old blower."
  step {
    act    = "Turn the thermostat down. Slide the old filter out."
    power  = "on"
    places = ["filter-slot"]
  }
  step {
    act    = "Slide the new one in. Its arrow points toward the furnace."
    power  = "on"
    places = ["filter-slot"]
  }
}

repair "explain-normal" {
  name    = "wait, or lower the night temperature less"
  part    = "household"
  kind    = "set"
  minutes = q("0..5 min", "from memory")
  note    = "The furnace is good. On a cold day it takes hours to warm the house."
  step {
    act   = "Leave the set temperature where it is for three hours."
    power = "on"
  }
}

repair "clear-drain" {
  name    = "clear the cooling coil drain"
  part    = "drain"
  kind    = "clean"
  minutes = q("15..60 min", "from memory")
  confirm = "pan-look"
  step {
    act   = "Soak up the water in the pan with a cloth."
    power = "off"
  }
  step {
    act     = "Clear the pipe with a brush or with suction."
    caution = "A wet floor and power do not mix."
    level   = "warning"
    power   = "off"
  }
  step {
    act   = "Pour in a cup of water. Watch it run out."
    power = "off"
  }
}

repair "clear-intake" {
  name    = "clear the air intake"
  part    = "air-intake"
  kind    = "clean"
  minutes = q("5..30 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "intake-look"
  step {
    act     = "Clear snow and leaves away, one foot around it."
    caution = "Stay off ladders and ice."
    level   = "warning"
    power   = "on"
  }
}

repair "clear-vent" {
  name    = "clear the vent pipe"
  part    = "vent"
  kind    = "clean"
  minutes = q("10..90 min", "from memory")
  causes  = ["vent-joint-look", "switch-draft-m"]
  confirm = "vent-look"
  note    = "If the chimney is in doubt, or a nest is out of reach, call for help. Have a carbon monoxide alarm in place."
  step {
    act     = "Turn the thermostat down. Wait until the fan stops."
    caution = "The exhaust is hot while it runs."
    level   = "warning"
    power   = "on"
  }
  step {
    act     = "Take out what you can reach from outside."
    caution = "Stay off ladders and ice."
    level   = "warning"
    power   = "on"
  }
  step {
    act   = "Check that the whole pipe slopes back and its joints are tight."
    power = "on"
  }
}

# ---- repairs: wires and connections ----

repair "refit-line-lead" {
  name    = "fasten the black power wire at the board"
  part    = "line-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-line"
  step {
    act    = "Take a photo. Pull the black power wire off."
    wire   = "door-out"
    places = ["lower-bay", "upper-bay"]
  }
  step {
    act    = "Cut back the burned copper. Crimp on a new connector."
    places = ["lower-bay"]
  }
  step {
    act    = "Push it all the way on. Pull gently to test it."
    wire   = "board-l"
    places = ["upper-bay"]
  }
}

repair "refit-neutral-lead" {
  name    = "fasten the white neutral wire at the board"
  part    = "neutral-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-line"
  step {
    act    = "Take a photo of the row of white wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Push the neutral wire all the way on. Pull gently to test it."
    wire   = "board-n"
    places = ["upper-bay"]
  }
}

repair "refit-secondary-lead" {
  name    = "fasten the R wire of the transformer"
  part    = "secondary-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "board-24-v"
  step {
    act    = "Push the R wire all the way on. Pull gently to test it."
    wire   = "board-24"
    places = ["upper-bay"]
  }
}

repair "refit-common-lead" {
  name    = "fasten the C wire of the transformer"
  part    = "common-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "r-c"
  step {
    act    = "Push the C wire all the way on. Pull gently to test it."
    wire   = "board-c"
    places = ["upper-bay"]
  }
}

repair "tighten-common-bond" {
  name    = "tighten the ground wire of terminal C"
  part    = "common-bond"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "bond-ohms"
  step {
    act    = "Clean the metal under the ground wire. Tighten its screw."
    wire   = "frame"
    places = ["upper-bay"]
  }
}

repair "refit-float-lead" {
  name    = "fasten the wire of the float switch"
  part    = "float-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "float-c"
  step {
    act  = "Join the loose wire with a wire nut."
    wire = "float-out"
  }
}

repair "remake-r-splice" {
  name    = "make the red wire joint new"
  part    = "r-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-r-c"
  step {
    act  = "Cut the wires back to bright copper."
    wire = "splice-r"
  }
  step {
    act = "Twist the wires together. Put on a new wire nut. Pull gently to test it."
  }
}

repair "remake-w-splice" {
  name    = "make the white wire joint new"
  part    = "w-splice"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "splice-w2-c"
  step {
    act  = "Cut the wires back to bright copper."
    wire = "splice-w"
  }
  step {
    act = "Twist the wires together. Put on a new wire nut. Pull gently to test it."
  }
}

repair "refit-stat-wire" {
  name    = "fasten the wire at the thermostat"
  part    = "r-terminal"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-wire-look"
  step {
    act    = "Strip the end of the wire until it is bright."
    wire   = "stat-r"
    places = ["stat-base"]
  }
  step {
    act    = "Push it in at its own letter. Tighten it. Pull gently to test it."
    places = ["stat-base"]
  }
}

repair "crimp-w" {
  name    = "put a new connector on the W wire"
  part    = "w-tail"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["w-c"]
  confirm = "w-tug"
  note    = "After that, watch three starts. Tap the board cover each time."
  step {
    act    = "Pull the W wire off its terminal."
    wire   = "board-w"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new connector. Push it on. Pull gently to test it."
    places = ["upper-bay"]
  }
}

repair "move-w-wire" {
  name    = "move the W wire to terminal W"
  part    = "w-tail"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["jumper-look", "speed-lead-look"]
  confirm = "w-look"
  step {
    act    = "Take a photo of the row of low voltage wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Move only the W wire, from Y to W."
    wire   = "board-w"
    places = ["upper-bay"]
  }
}

repair "refit-limit-lead" {
  name    = "fasten the wire to the high limit"
  part    = "limit-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "limit-in-c"
  step {
    act    = "Push the connector on the first limit terminal. Pull gently to test it."
    wire   = "limit-in"
    places = ["upper-bay"]
  }
}

repair "refit-string-lead" {
  name    = "fasten the wire from the roll-out switches"
  part    = "string-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "string-end-c"
  step {
    act    = "Push the pin into the plug until it clicks."
    wire   = "string-end"
    places = ["upper-bay"]
  }
}

repair "refit-pressure-lead" {
  name    = "fasten the wire from the pressure switch"
  part    = "pressure-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "press-pin-c"
  step {
    act    = "Push the connector on. Pull gently to test it."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
}

repair "refit-inducer-plug" {
  name    = "put a new plug on the draft fan wires"
  part    = "inducer-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["amps", "pins"]
  confirm = "fan-plug-v"
  step {
    act    = "Cut off the burned plug, one wire at a time."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new plug, with the same colors. Push it together."
    places = ["upper-bay"]
  }
}

repair "refit-igniter-plug" {
  name    = "put a new plug on the igniter wires"
  part    = "igniter-plug"
  kind    = "refit"
  price   = q("5..25 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["heat rating", "pins"]
  confirm = "glow-plug-v"
  step {
    act     = "Cut off the burned plug, one wire at a time."
    caution = "Hold only the wires. The igniter breaks at a touch."
    level   = "caution"
    wire    = "glow-plug"
    places  = ["upper-bay"]
  }
  step {
    act    = "Crimp on a new plug made for high heat. Push it together."
    places = ["upper-bay"]
  }
}

repair "refit-valve-lead" {
  name    = "fasten the gas valve wire"
  part    = "valve-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "valve-1-v"
  step {
    act     = "Push the connector on the first terminal. Pull gently to test it."
    caution = "Move the wire only. Touch no gas fitting."
    level   = "warning"
    wire    = "valve-1"
    places  = ["upper-bay"]
  }
}

repair "refit-valve-common" {
  name    = "fasten the common wire of the gas valve"
  part    = "valve-common"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "valve-v"
  step {
    act     = "Push the connector on the common terminal. Pull gently to test it."
    caution = "Move the wire only. Touch no gas fitting."
    level   = "warning"
    wire    = "valve-2"
    places  = ["upper-bay"]
  }
}

repair "refit-flame-lead" {
  name    = "put in a new flame rod wire"
  part    = "flame-lead"
  kind    = "refit"
  price   = q("3..15 money", "from memory")
  minutes = q("5..15 min", "from memory")
  match   = ["heat rating", "connector size"]
  confirm = "lead-ohms"
  step {
    act    = "Pull the wire off the rod and off the board."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act    = "Put on a wire made for high heat. Push both ends all the way on."
    wire   = "flame-pin"
    places = ["upper-bay"]
  }
}

repair "refit-speed-lead" {
  name    = "fasten the speed wire of the blower"
  part    = "speed-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "blower-tap-v"
  step {
    act    = "Push the colored wire on the heat terminal. Pull gently to test it."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "move-speed-lead" {
  name    = "move the speed wire to the heat terminal"
  part    = "speed-lead"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["jumper-look", "w-look"]
  confirm = "speed-lead-look"
  step {
    act    = "Read the colors on the wiring diagram."
    places = ["upper-bay"]
  }
  step {
    act    = "Move only the colored wire to the heat terminal."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

repair "remove-jumper" {
  name    = "take out the jumper wire left by a repair"
  part    = "left-jumper"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  causes  = ["switch-draft-m", "press-run-v", "w-look"]
  confirm = "jumper-look"
  note    = "Somebody bypassed a fault. Test the pressure switch and the draft now."
  step {
    act    = "Take a photo of the jumper wire."
    places = ["upper-bay"]
  }
  step {
    act     = "Pull the jumper wire off both terminals."
    caution = "That switch keeps flame and fumes in."
    level   = "warning"
    wire    = "switch-in"
    places  = ["upper-bay"]
  }
  step {
    act    = "Put both switch wires back on."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
}

repair "use-spare-common" {
  name    = "use a spare wire as the C wire"
  part    = "c-wire"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("5..15 min", "from memory")
  confirm = "stat-r-c"
  step {
    act    = "Connect a spare wire to C at both ends."
    wire   = "board-c"
    places = ["stat-base", "splice", "upper-bay"]
  }
}

repair "add-common-wire" {
  name    = "give the thermostat a C wire"
  part    = "power-stealing"
  kind    = "refit"
  price   = q("0..10 money", "from memory")
  minutes = q("15..60 min", "from memory")
  causes  = ["stat-type"]
  confirm = "w-c-rest"
  step {
    act    = "Connect a spare wire to C at both ends."
    wire   = "board-c"
    places = ["stat-base", "splice", "upper-bay"]
  }
}

repair "replace-cable" {
  name    = "replace the thermostat cable"
  part    = "r-wire"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("60..180 min", "from memory")
  match   = ["number of wires", "wire size"]
  causes  = ["cable-short"]
  confirm = "stat-loop"
  note    = "A good spare wire in the same cable will do, too."
  step {
    act = "Take a photo at both ends. Label each wire."
  }
  step {
    act  = "Pull the new cable in with the old one."
    wire = "splice-r"
  }
  step {
    act    = "Connect one wire at a time, letter to letter."
    wire   = "stat-rw"
    places = ["stat-base"]
  }
  step {
    act     = "If the board fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

repair "repair-y-wire" {
  name    = "insulate or replace the Y wire"
  part    = "y-wire"
  kind    = "replace"
  price   = q("5..30 money", "from memory")
  minutes = q("20..120 min", "from memory")
  match   = ["wire size", "made for outdoors"]
  causes  = ["y-cable-look"]
  confirm = "y-short"
  note    = "The heat works with the Y wire off and taped."
  step {
    act    = "Take the Y wire off its terminal."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act    = "Cut out the bare spot. Join the ends. Insulate the joint."
    wire   = "y-out"
    places = ["upper-bay"]
  }
  step {
    act     = "If the board fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

repair "isolate-outdoor" {
  name    = "leave the outdoor unit disconnected for now"
  part    = "contactor"
  kind    = "call"
  stop    = "outdoor"
  minutes = q("10..20 min", "from memory")
  confirm = "y-short"
  note    = "The heat works without it. The outdoor unit needs a cooling technician."
  step {
    act    = "Take the Y wire off its terminal. Tape its end."
    wire   = "board-y"
    places = ["upper-bay"]
  }
  step {
    act     = "If the board fuse is blown, put in a new one."
    caution = "Use the same amps, never more."
    level   = "warning"
    wire    = "fuse-a"
    places  = ["upper-bay"]
  }
}

# ---- repairs: cleaning and small mending ----

repair "clear-port" {
  name    = "clear the pressure port"
  part    = "port"
  kind    = "clean"
  minutes = q("5..10 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "port-look"
  step {
    act    = "Pull the hose off the port."
    places = ["upper-bay"]
  }
  step {
    act     = "Turn a small drill bit in the port, by hand."
    caution = "Do not blow into the pressure switch."
    level   = "caution"
    places  = ["upper-bay"]
  }
}

repair "replace-hose" {
  name    = "replace the pressure hose"
  part    = "hose"
  kind    = "replace"
  price   = q("3..15 money", "from memory")
  minutes = q("5..10 min", "from memory")
  match   = ["inner width", "heat rating", "length"]
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Pull the old hose off both ports."
    places = ["upper-bay"]
  }
  step {
    act    = "Cut the new hose to the same length."
    places = ["upper-bay"]
  }
  step {
    act    = "Push it on both ports. Make sure it has no kink."
    places = ["upper-bay"]
  }
}

repair "refit-hose" {
  name    = "put the pressure hose back on"
  part    = "hose"
  kind    = "refit"
  minutes = q("2..5 min", "from memory")
  causes  = ["switch-draft-m"]
  confirm = "hose-look"
  step {
    act    = "Push the hose back on its own port."
    places = ["upper-bay"]
  }
}

repair "drain-hose" {
  name    = "get the water out of the pressure hose"
  part    = "hose"
  kind    = "clean"
  minutes = q("5..15 min", "from memory")
  causes  = ["fan-drain-look", "vent-look"]
  confirm = "hose-wet"
  note    = "The water comes from somewhere. Check the drain, the slope, and the vent pipe."
  step {
    act     = "Pull the hose off the switch end."
    caution = "Do not blow into the pressure switch."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Shake the water out. Put the hose back so that it hangs free."
    places = ["upper-bay"]
  }
}

repair "clear-inducer-drain" {
  name    = "clear the drain of the draft fan"
  part    = "inducer-drain"
  kind    = "clean"
  minutes = q("10..30 min", "from memory")
  causes  = ["hose-wet", "vent-look"]
  confirm = "fan-drain-look"
  step {
    act     = "Pull the drain tube off. Let the water run out."
    caution = "Keep water away from the board."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Flush the tube. Put it back so that it slopes down."
    places = ["upper-bay"]
  }
}

repair "clean-flame-rod" {
  name    = "clean the flame rod"
  part    = "flame-rod"
  kind    = "clean"
  price   = q("0..5 money", "from memory")
  minutes = q("10..20 min", "from memory")
  causes  = ["rod-look", "burner-look"]
  confirm = "flame-current"
  note    = "If it is low again within a season, replace the rod. Then look for the cause."
  step {
    act    = "Pull the wire off the flame rod."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the rod's one screw. Pull the rod out."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Rub the metal bright with fine steel wool."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Put the rod and its wire back. Do not touch the ceramic."
    wire   = "rod-end"
    places = ["burner-box", "upper-bay"]
  }
}

repair "set-flame-rod" {
  name    = "put the flame rod back into the flame"
  part    = "flame-rod"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  confirm = "rod-place"
  step {
    act     = "Loosen the rod's screw. Turn the rod over the burner."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Tighten the screw. Compare with the diagram."
    places = ["burner-box", "upper-bay"]
  }
}

repair "clean-burner-ground" {
  name    = "clean and tighten the burner ground"
  part    = "burner-ground"
  kind    = "tighten"
  minutes = q("10..20 min", "from memory")
  causes  = ["flame-current"]
  confirm = "burner-ground-ohms"
  step {
    act    = "Take out the ground screw."
    wire   = "burner-metal"
    places = ["upper-bay"]
  }
  step {
    act    = "Rub both metals bright. Tighten the screw."
    places = ["upper-bay"]
  }
}

repair "set-igniter" {
  name    = "put the igniter back in place"
  part    = "igniter-bracket"
  kind    = "refit"
  minutes = q("10..20 min", "from memory")
  confirm = "glow-place"
  step {
    act     = "Loosen the screw of the bracket."
    caution = "The igniter breaks at a touch."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Set the white block in place. Tighten the screw by hand."
    places = ["burner-box", "upper-bay"]
  }
}

repair "clean-blower-wheel" {
  name    = "clean the blower wheel"
  part    = "blower-wheel"
  kind    = "clean"
  minutes = q("60..120 min", "from memory")
  causes  = ["filter-look", "coil-look"]
  confirm = "blower-wheel-look"
  step {
    act    = "Take a photo of every blower wire."
    places = ["lower-bay"]
  }
  step {
    act     = "Slide the blower out on its rails."
    caution = "Heavy, with sharp edges."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Brush each blade. Leave the balance clips on."
    places = ["lower-bay"]
  }
}

repair "tighten-blower-wheel" {
  name    = "tighten the blower wheel"
  part    = "blower-wheel"
  kind    = "tighten"
  minutes = q("15..30 min", "from memory")
  confirm = "blower-hub"
  step {
    act    = "Turn the flat side of the shaft to the screw."
    places = ["lower-bay"]
  }
  step {
    act    = "Tighten the screw. Spin the wheel by hand to test it."
    places = ["lower-bay"]
  }
}

# ---- repairs: parts ----

repair "replace-door-switch" {
  name    = "replace the door switch"
  part    = "door-switch"
  kind    = "replace"
  price   = q("8..30 money", "from memory")
  minutes = q("15..25 min", "from memory")
  match   = ["volts", "amps", "travel", "open when free"]
  causes  = ["rules"]
  confirm = "door-switch-ohms"
  note    = "Never tape it or bypass it."
  step {
    act     = "Take a photo. Pull off one wire at a time."
    caution = "Never tape it. Never bypass it."
    level   = "warning"
    wire    = "door-in"
    places  = ["lower-bay"]
  }
  step {
    act    = "Snap in the new switch. Move the second wire over."
    wire   = "door-out"
    places = ["lower-bay"]
  }
}

repair "replace-transformer" {
  name    = "replace the transformer"
  part    = "transformer"
  kind    = "replace"
  price   = q("20..60 money", "from memory")
  minutes = q("25..45 min", "from memory")
  match   = ["input volts", "output volts", "volt amps"]
  causes  = ["cable-short", "valve-ohms", "y-short", "rules"]
  confirm = "secondary-v"
  note    = "A short kills the new one, too. Look for the short first."
  step {
    act    = "Take a photo of all four wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the first thick wire to the new transformer."
    wire   = "board-l"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second thick wire."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the R wire of the transformer."
    wire   = "board-24"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the C wire of the transformer."
    wire   = "board-c"
    places = ["upper-bay"]
  }
}

repair "replace-fuse" {
  name    = "replace the board fuse"
  part    = "board-fuse"
  kind    = "replace"
  price   = q("1..5 money", "from memory")
  minutes = q("2..5 min", "from memory")
  match   = ["amps", "shape"]
  causes  = ["cable-short", "y-short", "valve-ohms", "splice-look"]
  confirm = "fuse-v"
  note    = "A fuse blows for a reason. If it blows again, the short is still there."
  step {
    act    = "Pull out the blown fuse."
    wire   = "fuse-a"
    places = ["upper-bay"]
  }
  step {
    act     = "Push in a new fuse with the same amps."
    caution = "Never use a bigger one."
    level   = "warning"
    places  = ["upper-bay"]
  }
}

repair "replace-float-switch" {
  name    = "replace the float switch"
  part    = "float-switch"
  kind    = "replace"
  price   = q("12..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["low voltage", "opens when wet", "mounting"]
  causes  = ["pan-look"]
  confirm = "float-ohms"
  step {
    act  = "Take off one wire at a time."
    wire = "float-in"
  }
  step {
    act  = "Set the new switch in level. Connect both wires."
    wire = "float-out"
  }
}

repair "replace-thermostat" {
  name    = "replace the thermostat"
  part    = "thermostat"
  kind    = "replace"
  price   = q("25..150 money", "from memory")
  minutes = q("20..60 min", "from memory")
  match   = ["24 volts", "terminals", "with or without a C wire"]
  causes  = ["stat-type"]
  confirm = "w-c"
  step {
    act    = "Take a photo of the letters and colors."
    places = ["stat-base"]
  }
  step {
    act    = "Move one wire at a time, letter to letter."
    wire   = "stat-r"
    places = ["stat-base"]
  }
  step {
    act    = "Move the W wire to its letter."
    wire   = "stat-w"
    places = ["stat-base"]
  }
  step {
    act    = "Set the heat type to gas furnace."
    places = ["stat-base"]
  }
}

repair "replace-limit" {
  name    = "replace the high limit"
  part    = "high-limit"
  kind    = "replace"
  price   = q("10..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["opening temperature", "length", "shape", "reset"]
  causes  = ["rise-m", "filter-look", "static-m", "blower-cap"]
  confirm = "limit-ohms"
  note    = "Never bypass it. It opened for a reason, so check the airflow."
  step {
    act     = "Pull off one wire. Put it on the new limit switch."
    caution = "Never bypass a limit switch."
    level   = "warning"
    wire    = "limit-in"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "limit-out"
    places = ["upper-bay"]
  }
  step {
    act     = "Fasten the new switch in the same hole."
    caution = "Hot metal and sharp edges."
    level   = "caution"
    places  = ["upper-bay"]
  }
}

repair "replace-pressure-switch" {
  name    = "replace the pressure switch"
  part    = "pressure-switch"
  kind    = "replace"
  price   = q("25..80 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["setting on the label", "number of ports", "terminals"]
  causes  = ["switch-draft-m", "vent-look", "jumper-look"]
  confirm = "press-run-v"
  note    = "Use only the same setting. Measure the draft again after the swap."
  step {
    act     = "Take a photo of the hose and the wires."
    caution = "Never use another setting than the one on the old label."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire to the new switch."
    wire   = "switch-in"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "switch-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Push the hose on its own port."
    places = ["upper-bay"]
  }
}

repair "replace-inducer-capacitor" {
  name    = "replace the capacitor of the draft fan"
  part    = "inducer-capacitor"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["microfarads", "at least the same volts"]
  causes  = ["fan-amps", "switch-draft-m", "rules"]
  confirm = "fan-cap"
  step {
    act     = "Discharge the capacitor through a resistor."
    caution = "It may hold a charge."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act     = "Measure D C volts across its terminals. It must be below five volts."
    caution = "If it is above five volts, discharge it again before you touch a wire."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Move the first wire to the new capacitor."
    wire   = "fan-cap-a"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "fan-cap-b"
    places = ["upper-bay"]
  }
}

repair "replace-inducer" {
  name    = "replace the draft fan"
  part    = "inducer"
  kind    = "replace"
  price   = q("120..350 money", "from memory")
  minutes = q("45..90 min", "from memory")
  match   = ["volts", "amps", "direction of turn", "housing", "gasket"]
  causes  = ["fan-drain-look", "vent-look", "rules"]
  confirm = "switch-draft-m"
  step {
    act    = "Take a photo of the plug, the hose, and the wires."
    places = ["upper-bay"]
  }
  step {
    act    = "Pull the two halves of the plug apart. Take off the ground wire."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
  step {
    act    = "Take off the hose and the vent coupling."
    places = ["upper-bay"]
  }
  step {
    act     = "Put in the new fan with a new gasket."
    caution = "Sharp edges."
    level   = "caution"
    places  = ["upper-bay"]
  }
  step {
    act    = "Put the coupling, the hose, the plug, and the ground wire back."
    wire   = "fan-plug"
    places = ["upper-bay"]
  }
}

repair "replace-igniter" {
  name    = "replace the igniter"
  part    = "igniter"
  kind    = "replace"
  price   = q("25..90 money", "from memory")
  minutes = q("20..40 min", "from memory")
  match   = ["material", "volts", "ohms", "mounting", "plug"]
  causes  = ["rules"]
  confirm = "glow-ohms"
  step {
    act    = "Pull the two halves of the igniter plug apart."
    wire   = "glow-plug"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the igniter's screw. Pull the igniter straight out."
    caution = "It is hot after a start. Let it cool."
    level   = "warning"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act     = "Hold the new one only by its white block."
    caution = "Grease from skin cracks it."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Fasten it by hand. Push the plug together."
    wire   = "glow-plug"
    places = ["burner-box", "upper-bay"]
  }
}

repair "replace-flame-rod" {
  name    = "replace the flame rod"
  part    = "flame-rod"
  kind    = "replace"
  price   = q("10..40 money", "from memory")
  minutes = q("15..30 min", "from memory")
  match   = ["length", "bend", "mounting"]
  causes  = ["burner-ground-ohms"]
  confirm = "flame-current"
  step {
    act    = "Pull the wire off the flame rod."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
  step {
    act     = "Take out the rod's screw. Pull the rod out."
    caution = "The white ceramic breaks easily."
    level   = "caution"
    places  = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Put the new rod in the same place."
    places = ["burner-box", "upper-bay"]
  }
  step {
    act    = "Push the wire back on."
    wire   = "rod-end"
    places = ["upper-bay"]
  }
}

repair "replace-board" {
  name    = "replace the control board"
  part    = "board"
  kind    = "replace"
  price   = q("120..400 money", "from memory")
  minutes = q("45..90 min", "from memory")
  match   = ["part number, or its approved substitute", "settings of the small switches"]
  causes  = ["fuse-look", "board-lg", "valve-ohms", "rules"]
  confirm = "r-c"
  note    = "Only when all that goes in is proved good, and what comes out is proved missing."
  step {
    act     = "Take a photo of every wire and every small switch."
    caution = "Never change a board if its inputs were not proved."
    level   = "warning"
    places  = ["upper-bay"]
  }
  step {
    act    = "Touch bare metal first. That takes static off you."
    places = ["upper-bay"]
  }
  step {
    act    = "Set the small switches of the new board the same way."
    places = ["upper-bay"]
  }
  step {
    act    = "Move the black power wire."
    wire   = "board-l"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the white neutral wires."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the draft fan wire."
    wire   = "fan-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the igniter wire."
    wire   = "glow-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the blower wire."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the R wire of the transformer."
    wire   = "board-24"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the thermostat wires, letter to letter."
    wire   = "board-w"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the large plug."
    wire   = "string-end"
    places = ["upper-bay"]
  }
  step {
    act    = "Move the flame rod wire."
    wire   = "flame-pin"
    places = ["upper-bay"]
  }
}

repair "replace-blower-capacitor" {
  name    = "replace the capacitor of the blower"
  part    = "blower-capacitor"
  kind    = "replace"
  price   = q("8..25 money", "from memory")
  minutes = q("10..20 min", "from memory")
  match   = ["microfarads", "at least the same volts"]
  causes  = ["blower-amps", "blower-wheel-look", "rules"]
  confirm = "blower-cap"
  step {
    act     = "Discharge the capacitor through a resistor."
    caution = "It may hold a charge."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act     = "Measure D C volts across its terminals. It must be below five volts."
    caution = "If it is above five volts, discharge it again before you touch a wire."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Move the first wire to the new capacitor."
    wire   = "blower-cap-a"
    places = ["lower-bay"]
  }
  step {
    act    = "Move the second wire."
    wire   = "blower-cap-b"
    places = ["lower-bay"]
  }
}

repair "replace-blower-motor" {
  name    = "replace the motor of the blower"
  part    = "blower"
  kind    = "replace"
  price   = q("150..500 money", "from memory")
  minutes = q("90..180 min", "from memory")
  match   = ["volts", "amps", "horsepower", "speeds", "direction of turn", "capacitor"]
  causes  = ["blower-cap", "filter-look", "static-m", "rules"]
  confirm = "blower-amps"
  step {
    act    = "Take a photo of every blower wire."
    places = ["lower-bay", "upper-bay"]
  }
  step {
    act    = "Take the colored speed wire off the board."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
  step {
    act    = "Take the neutral wire of the blower off."
    wire   = "board-n"
    places = ["upper-bay"]
  }
  step {
    act     = "Slide the blower out on its rails."
    caution = "Heavy, with sharp edges."
    level   = "warning"
    places  = ["lower-bay"]
  }
  step {
    act    = "Change the motor. Put the wheel in the same place."
    places = ["lower-bay"]
  }
  step {
    act    = "Connect the wires again, color by color."
    wire   = "blower-out"
    places = ["upper-bay"]
  }
}

# ---- repairs: for somebody with a licence ----

repair "call-utility-power" {
  name    = "call the power company"
  part    = "supply"
  kind    = "call"
  stop    = "no-power"
  minutes = q("0..10 min", "from memory")
  confirm = "house-power"
}

repair "call-electrician" {
  name    = "call an electrician for the house wiring"
  part    = "line-run"
  kind    = "call"
  stop    = "line-wiring"
  minutes = q("0..10 min", "from memory")
  confirm = "board-load"
}

repair "call-polarity" {
  name    = "call an electrician for the swapped house wires"
  part    = "junction"
  kind    = "call"
  stop    = "line-wiring"
  minutes = q("0..10 min", "from memory")
  confirm = "board-lg"
}

repair "call-rollout" {
  name    = "call licensed help because a roll-out switch opened"
  part    = "exchanger"
  kind    = "call"
  stop    = "roll-out"
  minutes = q("0..10 min", "from memory")
  causes  = ["roll-marks", "exchanger-look"]
  confirm = "roll-marks"
}

repair "call-vent" {
  name    = "call licensed help for the vent pipe"
  part    = "vent-joints"
  kind    = "call"
  stop    = "vent"
  minutes = q("0..10 min", "from memory")
  confirm = "vent-joint-look"
}

repair "call-gas-utility" {
  name    = "call the gas company or the gas supplier"
  part    = "gas-supply"
  kind    = "call"
  stop    = "gas-supply"
  minutes = q("0..10 min", "from memory")
  confirm = "other-gas"
}

repair "call-gas-valve" {
  name    = "call licensed help for the gas valve"
  part    = "gas-valve"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("0..10 min", "from memory")
  confirm = "valve-ohms"
}

repair "call-overfire" {
  name    = "call licensed help because too much gas burns"
  part    = "orifice"
  kind    = "call"
  stop    = "combustion"
  minutes = q("0..10 min", "from memory")
  confirm = "dial-time"
}

repair "call-burners" {
  name    = "call licensed help to clean the burners"
  part    = "burners"
  kind    = "call"
  stop    = "gas-train"
  minutes = q("0..10 min", "from memory")
  confirm = "see-flame"
}

repair "call-exchanger" {
  name    = "call licensed help to check the heat exchanger"
  part    = "exchanger"
  kind    = "call"
  stop    = "exchanger"
  minutes = q("0..10 min", "from memory")
  confirm = "see-move"
}

repair "call-coil" {
  name    = "call licensed help to clean the cooling coil"
  part    = "coil"
  kind    = "call"
  stop    = "coil"
  minutes = q("0..10 min", "from memory")
  confirm = "supply-m"
}

repair "call-duct" {
  name    = "call a duct installer"
  part    = "ducts"
  kind    = "call"
  stop    = "ducts"
  minutes = q("0..10 min", "from memory")
  confirm = "duct-look"
}

# ---- what the rating plate says ----

plate "model" {
  name  = "model number"
  ask   = "What is the model number?"
  match = true
}

plate "input" {
  name     = "input rating"
  unit     = "Btu/h"
  possible = between(20000, 250000, "common practice, no source")
  ask      = "What is the input rating, in B T U per hour?"
}

plate "gas-kind" {
  name = "kind of gas"
  ask  = "Does it say natural gas or propane?"
}

plate "rise" {
  name     = "highest air temperature rise"
  unit     = "dF"
  possible = between(30, 110, "common practice, no source")
  ask      = "What is the highest air temperature rise, in degrees?"
}

plate "static" {
  name     = "highest air pressure"
  unit     = "inH2O"
  possible = between(0.1, 2, "common practice, no source")
  ask      = "What is the highest static pressure, in inches of water?"
}

# ---- labels of single parts, asked at the check that needs them ----

plate "press-set" {
  name     = "set point of the pressure switch"
  unit     = "inH2O"
  usual    = q("0.5 inH2O", "T13 as an example")
  possible = between(0.05, 3, "common practice, no source")
  places   = ["upper-bay"]
  ask      = "What number is printed on the pressure switch, in inches?"
}

plate "fan-uf" {
  name     = "value on the capacitor of the draft fan"
  unit     = "uF"
  usual    = q("5 uF", "HS")
  possible = between(1, 50, "common practice, no source")
  places   = ["upper-bay"]
  ask      = "How many microfarads are printed on the small capacitor?"
}

plate "blower-uf" {
  name     = "value on the capacitor of the blower"
  unit     = "uF"
  usual    = q("7.5 uF", "HS")
  possible = between(1, 80, "common practice, no source")
  places   = ["lower-bay"]
  ask      = "How many microfarads are printed on the blower's capacitor?"
}

# ---- the status light of this unit ----

lamp "off" {
  means  = "no power, or the board is dead"
  source = "invented for this file; the label on the door wins"
}

lamp "slow-blink" {
  means  = "power is there, no call for heat is seen"
  when   = board.alive && board.W < 0.5
  source = "invented for this file; the label on the door wins"
}

lamp "steady" {
  means  = "call for heat seen, no fault found"
  when   = board.alive
  source = "invented for this file; the label on the door wins"
}

lamp "2" {
  means  = "pressure switch closed before the draft fan runs"
  source = "invented for this file; the label on the door wins"
}

lamp "3" {
  means  = "pressure switch open with the draft fan on"
  source = "invented for this file; the label on the door wins"
}

lamp "4" {
  means  = "high limit or roll-out switch open"
  source = "invented for this file; the label on the door wins"
}

lamp "5" {
  means  = "a flame is seen that should not be there"
  source = "invented for this file; the label on the door wins"
}

lamp "6" {
  means  = "no flame sensed during the try"
  source = "invented for this file; the label on the door wins"
}

lamp "7" {
  means  = "flame lost after it was sensed"
  source = "invented for this file; the label on the door wins"
}

# ---- stop lines ----

stop "gas-train" {
  say  = "Only a licensed person may work on gas parts."
  call = "a licensed gas technician"
  tell = "Tell them what you measured at the gas valve. No gas joint was touched."
  now  = "Close the gas cock. Leave it off."
}

stop "gas-supply" {
  say  = "The gas does not reach the furnace."
  call = "the gas company or the gas supplier"
  tell = "Tell them which gas appliances work. The gas cock is open."
  now  = "Leave it off. Do not open any gas fitting."
}

stop "gas-closed" {
  say  = "Somebody closed the gas, and nobody knows why."
  call = "the gas company or the gas supplier"
  tell = "Tell them that the gas handle was closed. Nobody opened it."
  now  = "Leave it closed. Leave the furnace off."
}

stop "combustion" {
  say  = "Only a licensed person may adjust the burner."
  call = "a licensed gas technician"
  tell = "Tell them the input on the plate. Tell them the time for one cubic foot and the flame color."
  now  = "Leave it off. Open a window if you ran it."
}

stop "exchanger" {
  say  = "The heat exchanger may leak."
  call = "a licensed heating technician"
  tell = "Tell them what the flame did when the blower started."
  now  = "Leave it off. Hang a note on the switch."
}

stop "roll-out" {
  say  = "Flame has been outside the burners."
  call = "a licensed heating technician"
  tell = "Tell them which roll-out switch opened. Tell them where you see soot or burned paint."
  now  = "Leave it off. Hang a note on it. Reset nothing."
}

stop "late-light" {
  say  = "The burner lights late, with a thump."
  call = "a licensed gas technician"
  tell = "Tell them that gas collects before it lights."
  now  = "Leave it off. Close the gas cock."
}

stop "vent" {
  say  = "Exhaust may come into the house."
  call = "a licensed heating technician"
  tell = "Tell them where the vent pipe is apart or blocked."
  now  = "Leave it off. Open windows. If an alarm sounds or somebody feels ill, everyone goes outside."
}

stop "line-wiring" {
  say  = "House wiring needs an electrician."
  call = "a licensed electrician"
  tell = "Tell them the volts at the board, at rest, while it runs, and to ground."
  now  = "Leave the furnace breaker off."
}

stop "no-power" {
  say  = "The house has no power."
  call = "the power company"
  tell = "Tell them that the whole house is dark, and since when."
  now  = "Turn the furnace switch off until the power is back."
}

stop "flooded" {
  say  = "Water has reached the furnace."
  call = "a licensed heating technician"
  tell = "Tell them how high the water stood, and which parts got wet."
  now  = "Stay off the wet floor. Turn the breaker off only with dry feet. Nobody lights it again until every wet part is changed."
}

stop "outdoor" {
  say  = "The outdoor unit has its own power."
  call = "a cooling technician"
  tell = "Tell them that its coil shorts the twenty-four volts."
  now  = "Leave the Y wire off and taped."
}

stop "coil" {
  say  = "The cooling coil holds refrigerant."
  call = "a cooling technician"
  tell = "Tell them the pressure above the furnace. The filter is clean."
  now  = "Leave it off until air gets through."
}

stop "ducts" {
  say  = "The ducts need an installer."
  call = "a duct installer"
  tell = "Tell them where the duct is apart or too small."
  now  = "A return duct apart near the furnace pulls in exhaust. Leave it off."
}

stop "local-rules" {
  say  = "Local rules keep this work for licensed people."
  call = "a licensed technician"
  tell = "Read them the record of this job."
  now  = "Leave it off. Leave the covers on."
}

# ---- cautions: full form first, then short ones with the same hazard word ----

caution "mains" {
  level = "danger"
  say = [
    "House voltage is live here. It can kill. Use one hand. Stand on a dry floor. Wear no rings.",
    "House voltage. Use one hand only.",
    "House voltage is live. Touch only plastic.",
    "House voltage here. Dry floor, one hand.",
  ]
}

caution "low" {
  level = "caution"
  say = [
    "Twenty-four volts are live here. House voltage is close by.",
    "Twenty-four volts are live. Stay away from the house voltage side.",
    "Twenty-four volts. Do not slip from one terminal to the next.",
    "Twenty-four volts are live. Keep the tips apart.",
  ]
}

caution "moving" {
  level = "warning"
  say = [
    "A fan can start by itself. Keep hands and sleeves out.",
    "The fan can start. Keep your hands out.",
    "The fan may start at any time. Stay clear.",
    "The fan starts by itself. Keep your hands clear.",
  ]
}

caution "hot" {
  level = "warning"
  say = [
    "The metal and the igniter are hot. They can burn you for ten minutes.",
    "Hot metal. Wait, or wear gloves.",
    "It is still hot inside. Keep your skin away.",
    "The parts are hot here. Let them cool.",
  ]
}

caution "sharp" {
  level = "caution"
  say = [
    "The sheet metal has sharp edges. Wear gloves. Move slowly.",
    "Sharp edges. Move slowly.",
    "The edges are sharp here. Wear gloves.",
    "Watch the sharp metal.",
  ]
}

caution "gas" {
  level = "danger"
  say = [
    "Gas parts. Touch only wires, no fitting and no screw.",
    "Gas parts here. Touch only wires.",
    "Gas fittings stay closed. Touch none of them.",
    "Gas parts close by. Leave every fitting alone.",
  ]
}

caution "capacitor" {
  level = "warning"
  say = [
    "A capacitor can hold a charge with the power off. Empty it first.",
    "The capacitor may be charged. Empty it first.",
    "Charged capacitor. First the resistor, then your hands.",
    "Empty the capacitor before you touch it.",
  ]
}

caution "high" {
  level = "warning"
  say = [
    "This is a high place. Use a firm ladder and dry shoes, or leave it.",
    "It is high up. Use a firm ladder only.",
    "Watch the height. Keep both feet firm.",
    "A high place. If in doubt, leave it.",
  ]
}

# ---- money and time ----

fact "call-out" { value = q("90..200 money", "from memory") }

accept {
  why = "No check of the file lies between the two: they are named together."
  warnings = [
    "no check separates pressure-switch.burnt, board.gas-output",
  ]
}

accept {
  why = "With that fault nothing of it can be seen or told: the person says so, and the check counts for nothing."
  warnings = [
    "check story-pattern has no answer",
    "check story-when has no answer",
    "check story-change has no answer",
    "check see-fan has no answer",
    "check see-blower has no answer",
    "check feel-air has no answer",
    "check feel-warm has no answer",
    "check hear-rest has no answer",
    "check again-air has no answer",
  ]
}

accept {
  why = "What people tell, hear or see goes beyond the simulated faults: such an answer is heard, and weighed as an odd one."
  warnings = [
    "no fault makes anybody answer \"some-starts\" to check story-pattern",
    "no fault makes anybody answer \"gradually\" to check story-when",
    "no fault makes anybody answer \"after-work\" to check story-change",
    "no fault makes anybody answer \"after-storm\" to check story-change",
    "no fault makes anybody answer \"1\" to check light",
    "no fault makes anybody answer \"2\" to check light",
    "no fault makes anybody answer \"3\" to check light",
    "no fault makes anybody answer \"4\" to check light",
    "no fault makes anybody answer \"5\" to check light",
    "no fault makes anybody answer \"6\" to check light",
    "no fault makes anybody answer \"7\" to check light",
    "no fault makes anybody answer \"8\" to check light",
    "no fault makes anybody answer \"humming\" to check see-fan",
    "no fault makes anybody answer \"humming\" to check see-blower",
    "no fault makes anybody answer \"weak-air\" to check feel-air",
    "no fault makes anybody answer \"cold\" to check feel-warm",
    "no fault makes anybody answer \"cool-air\" to check feel-warm",
    "no fault makes anybody answer \"running\" to check hear-rest",
    "no fault makes anybody answer \"cool-air\" to check again-air",
  ]
}

accept {
  why = "Meters read this no better: the reading is weighed with its uncertainty, the limit is only what is said aloud."
  warnings = [
    "the limit of check fan-cap",
    "the limit of check blower-cap",
  ]
}

accept {
  why = "Asked for safety and manners, not to tell faults apart."
  warnings = [
    "check rules shows the same whatever is wrong",
  ]
}

accept {
  why = "Why somebody closed the gas is no fault of the heater: the answer decides who opens it."
  warnings = [
    "check cock-who shows the same whatever is wrong",
  ]
}
