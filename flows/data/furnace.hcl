# The induced-draft gas furnace with a hot-surface igniter and a 24 V control board.
#
# This file says what the parts are, how they are joined, how each fails and how often, what the board does
# in order, and where a lead can be put. It holds no likelihood: the engine simulates every mode.
#
# What it shares with other furnaces stands in assemblies; what is said of them there holds for it.
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

use "sources" {}
use "furnace-places" {}
use "line-120" {
  check "board-line" { name = "volts at the control board" }
  check "board-load" { name = "volts at the control board while the igniter glows" }
}
use "call-24v" {
  board = "board"
  check "board-24-v" { name = "low voltage into the control board" }
  check "w-c" { name = "heat signal at the control board" }
}
use "coil-drain" {}
use "safety-string" {
  part "limit-lead" { look = "wire from the board plug to the high limit" }
  point "roll-out-end" { where = "with the wire to the board plug" }
}
use "draft" {}
use "burner-hsi" {}
use "gas" {}
use "flame-proof" {}
use "board-furnace" {}
use "air-psc" {}
use "air" {}
use "safety-questions" {}
use "furnace-story" {}
use "furnace-words" {}

sketch {
  places = {
    room = "room", living = "rooms", wall-stat = "wall", stat-base = "wall-base", breakers = "breakers", outside = "outdoors", outdoor-unit = "outdoor-unit",
    front = "front", switch-box = "switch", pan = "pan", splice = "splice", filter-slot = "slot", upper-bay = "upper", burner-box = "burners",
    lower-bay = "lower", duct = "duct", coil-box = "coil"
  }
  parts = {
    supply = "outlet", breaker = "breaker", line-run = "switch", neutral-run = "switch", ground-run = "switch", furnace-switch = "switch",
    junction = "splice", panel-seat = "panel", door-switch = "door-switch", line-lead = "spade", neutral-lead = "spade", transformer = "transformer",
    secondary-lead = "spade", common-lead = "spade", common-bond = "metal", board-fuse = "fuse", contactor = "contactor", y-wire = "splice",
    drain = "drain", float-switch = "float", float-lead = "float", r-splice = "splice", r-wire = "splice", r-terminal = "terminals", c-wire = "splice",
    cool-contact = "thermostat", batteries = "battery", stat-mode = "thermostat", setpoint = "thermostat", stat-setup = "thermostat", thermostat = "thermostat",
    power-stealing = "thermostat", w-terminal = "terminals", w-wire = "splice", w-splice = "splice", w-tail = "board", y-terminal = "board",
    limit-lead = "disc", high-limit = "disc", rollout-left = "disc-reset", rollout-right = "disc-reset", string-lead = "plug",
    vent = "pipe", vent-joints = "pipe", air-intake = "pipe", inducer-drain = "drain", port = "port", hose = "hose", pressure-switch = "port",
    pressure-lead = "port", left-jumper = "jumper", inducer-plug = "plug", inducer-capacitor = "capacitor", inducer = "fan", inducer-protector = "fan",
    inducer-wheel = "wheel", igniter-plug = "plug", igniter = "igniter", igniter-legs = "igniter", igniter-bracket = "igniter",
    gas-supply = "gas-cock", gas-cock = "gas-cock", valve-switch = "gas-valve", valve-lead = "gas-valve", valve-common = "gas-valve", gas-valve = "gas-valve",
    orifice = "nozzle", burners = "burner", crossover = "burner", flame-rod = "rod", flame-lead = "rod", burner-ground = "metal", exchanger = "exchanger",
    board = "board", speed-lead = "spade", blower-capacitor = "capacitor", blower = "blower", blower-protector = "blower", blower-wheel = "wheel",
    filter = "filter", registers = "grille", return-grille = "grille", coil = "coil", ducts = "duct", duct-joints = "duct"
  }
  points = {
    outlet-hot = "outlet.hot", outlet-neutral = "outlet.neutral", box-in = "switch.a", box-out = "switch.b", box-neutral = "splice.a", box-ground = "metal.a",
    door-in = "door-switch.a", door-out = "door-switch.b", door-n = "splice.b", line-in = "splice.a", neutral-in = "splice.b",
    board-l = "board.L", board-n = "board.N", frame = "metal.a", fan-out = "board.F", fan-plug = "plug.a", fan-plug-n = "plug.b",
    glow-out = "board.I", glow-plug = "plug.a", glow-plug-n = "plug.b", blower-out = "board.H", blower-tap = "spade.a", blower-n = "spade.b",
    blower-a = "spade.a", blower-b = "spade.b", secondary-a = "transformer.s1", secondary-b = "transformer.s2", board-24 = "board.P", board-c = "board.C",
    board-r = "board.R", board-w = "board.W", board-y = "board.Y", y-out = "wire.a", float-in = "float.a", float-out = "float.b", float-far = "splice.a",
    splice-r = "splice.a", splice-w = "splice.a", splice-w2 = "splice.b", splice-c = "splice.b", wall-r = "wire.a", wall-w = "wire.b",
    stat-r = "terminals.R", stat-rw = "wire.a", stat-w = "terminals.W", stat-ww = "wire.b", stat-c = "terminals.C",
    limit-in = "disc.a", limit-out = "disc.b", roll-mid = "disc-reset.b", roll-out-end = "disc-reset.b",
    string-end = "board.P", switch-in = "port.a", switch-out = "port.b", press-pin = "board.P", gas-out = "board.P", valve-1 = "gas-valve.a", valve-2 = "gas-valve.b",
    flame-pin = "board.F", rod-end = "rod.rod", lead-a = "wire.a", lead-b = "wire.b", burner-metal = "burner.a", glow-plug-a = "wire.a", glow-plug-b = "plug.a",
    fan-plug-a = "wire.a", fan-plug-b = "plug.a"
  }
}
