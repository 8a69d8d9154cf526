# The board of an induced-draft furnace and its sequence.
assembly "board-furnace" {}

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
