# Where the things of a forced-air furnace are, and what must be opened to reach them.
assembly "furnace-places" { machine = "furnace" }

place "room" {
  name  = "${machine} room"
  where = "the room the ${machine} stands in"
}

place "living" {
  name  = "living space"
  where = "the rooms the ${machine} heats"
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
  name   = "${machine} front"
  where  = "the outside of the ${machine}, with nothing opened"
  within = "room"
}

place "switch-box" {
  name     = "cover of the ${machine} switch"
  where    = "the box with the ${machine} switch"
  within   = "room"
  cover    = true
  open     = q("3 min", "common practice, no source")
  close    = q("3 min", "common practice, no source")
  hands_in = true
  hazards  = ["mains"]
}

place "splice" {
  name   = "cable joint"
  where  = "where the thermostat cable enters the ${machine}"
  within = "room"
}

place "filter-slot" {
  name   = "filter slot"
  where  = "beside the lower front panel"
  within = "front"
}

place "upper-bay" {
  name     = "upper front panel"
  where    = "the top half of the ${machine} front"
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
  where    = "the bottom half of the ${machine} front"
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
  where  = "the metal duct above the ${machine}"
  within = "room"
}
