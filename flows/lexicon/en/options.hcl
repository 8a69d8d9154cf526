# Answers of the trade to looks, acts and safety questions. "back" states the fact and is never just "no".

# ---- plain
option "yes" {
  say  = ["yes", "yeah", "yep", "yup", "yes it is", "yes it does", "it does", "it is", "correct", "that's right", "affirmative", "sure", "right"]
  back = "Yes."
}
option "no" {
  say  = ["no", "nope", "nah", "no it isn't", "no it's not", "no it doesn't", "it doesn't", "it isn't", "negative", "it does not"]
  back = "Noted."
}
option "right-value" {
  say  = ["right", "correct", "that's right", "that's correct", "yes that's right"]
  back = "Right."
}
option "different" {
  say  = ["different", "that's different", "wrong", "that's wrong", "not right", "no that's wrong", "one different", "something different", "something is different"]
  back = "Different."
}
option "none" {
  say  = ["none", "no", "nope", "none at all", "nothing", "no smell", "no odor", "no gas smell", "i don't smell anything", "no gas", "i smell nothing", "not that i can see", "there is none", "none of them", "none of those", "no danger"]
  back = "None."
}
option "some" {
  say  = ["some", "a little", "a bit", "there is some", "a trace"]
  back = "Some."
}
option "ready" {
  say  = ["ready", "i'm ready", "in place", "all set", "i'm there", "the time is up"]
  back = "Ready."
}
option "done" {
  say  = ["done", "it's done", "finished", "all done", "that's done", "did it", "i leave it alone", "it is in the volts jack", "it is pressed in", "noted"]
  back = "Done."
}
option "same" {
  say  = ["same", "the same", "no change", "nothing changed", "unchanged", "as before", "still the same", "all like that", "all the same", "the same as before"]
  back = "The same."
}
option "changed" {
  say  = ["changed", "it changed", "it's changed", "something changed"]
  back = "It changed."
}

# ---- switches, power, covers, leads
option "on" {
  say  = ["on", "it's on", "switched on", "turned on", "still on", "power is on", "they're on", "back on", "yes it's on", "both are on", "it is on", "the clips are on"]
  back = "On."
}
option "off" {
  say  = ["off", "it's off", "switched off", "turned off", "still off", "power is off", "they're off", "both off", "everything off", "off switch too", "no flame is left", "both are off"]
  back = "Off."
}
option "tripped" {
  say  = ["tripped", "it's tripped", "in the middle", "it tripped", "half way", "off or tripped"]
  back = "Tripped."
}
option "trips-again" {
  say  = ["trips again", "it tripped again", "it trips right away", "it won't reset", "won't stay on"]
  back = "It trips again."
}
option "open" {
  say  = ["open", "it's open", "opened", "they're open", "wide open", "all open", "open now"]
  back = "Open."
}
option "closed" {
  say  = ["closed", "it's closed", "shut", "it's shut", "they're closed", "closed tight", "all closed"]
  back = "Closed."
}
option "parallel" {
  say  = ["along the pipe", "in line", "in line with the pipe", "parallel", "with the pipe", "parallel to the pipe"]
  back = "Along the pipe."
}
option "crosswise" {
  say  = ["across the pipe", "crosswise", "across", "sideways", "cross wise", "it is across the pipe"]
  back = "Across the pipe."
}
option "out" {
  say  = ["out", "it's out", "they're out", "jumper out", "jumper's out", "taken out", "pulled out", "all out", "the jumper is out", "it goes out", "the clips are off"]
  back = "Out."
}
option "in" {
  say  = ["in", "it's in", "still in", "jumper in", "the jumper is in", "plugged in", "the meter is in"]
  back = "In."
}
option "unplugged" {
  say  = ["unplugged", "it's unplugged", "pulled apart", "disconnected", "apart", "lifted", "wire off", "wire is off", "it is disconnected"]
  back = "Unplugged."
}
option "plugged" {
  say  = ["plugged in", "connected", "back together", "refitted", "reconnected", "wire on", "wire is on", "back on", "it is connected"]
  back = "Connected."
}
option "panel-on" {
  say  = ["panel on", "panel's on", "cover on", "covers on", "cover's on", "door's on", "door on", "all covers on", "the panel is on", "it is back on"]
  back = "Panel on."
}
option "panel-off" {
  say  = ["panel off", "panel's off", "cover off", "covers off", "cover's off", "door's off", "door off", "the panel is off", "it is off"]
  back = "Panel off."
}
option "held" {
  say  = ["held", "holding it", "it's held", "held in", "pushed in", "i'm holding it", "it is held in"]
  back = "Held."
}
option "free" {
  say  = ["free", "it's free", "released", "let go", "door switch free", "i let go", "the clip is off"]
  back = "Free."
}
option "hands-out" {
  say  = ["hands out", "hands are out", "my hands are out", "i'm clear", "standing clear", "hands clear"]
  back = "Hands out."
}

# ---- lights and displays
option "lit" {
  say  = ["lit", "it's lit", "light is on", "light's on", "it's lit up", "lit up", "light on"]
  back = "Lit."
}
option "dark" {
  say  = ["dark", "it's dark", "not lit", "unlit", "no light", "light is off", "light's off", "light's out", "out", "it's not lit", "no lights"]
  back = "Dark."
}
option "blinking" {
  say  = ["blinking", "it's blinking", "flashing", "it's flashing", "it blinks", "it flashes", "blinks"]
  back = "Blinking."
}
option "steady" {
  say  = ["steady", "it's steady", "solid", "steady on", "solid on", "always lit", "stays on", "constant", "not blinking", "on without blinking"]
  back = "Steady."
}
option "fast-blink" {
  say  = ["fast blink", "blinking fast", "flashing fast", "rapid", "quick flashing", "fast flashing"]
  back = "Blinking fast."
}
option "slow-blink" {
  say  = ["slow blink", "blinking slow", "flashing slowly", "slow flashing", "slowly blinking", "heart beat", "blinking slowly"]
  back = "Blinking slowly."
}
option "red" {
  say  = ["red", "it's red", "red light", "a red light", "red one"]
  back = "Red."
}
option "green" {
  say  = ["green", "it's green", "green light", "a green light"]
  back = "Green."
}
option "amber" {
  say  = ["amber", "it's amber", "orange", "orange light", "it's orange"]
  back = "Amber."
}
option "yellow" {
  say  = ["yellow", "it's yellow", "yellow light"]
  back = "Yellow."
}
option "blue" {
  say  = ["blue", "it's blue", "all blue", "it's all blue"]
  back = "Blue."
}
option "white" {
  say  = ["white", "it's white"]
  back = "White."
}
option "black" {
  say  = ["black", "it's black"]
  back = "Black."
}
option "blank" {
  say  = ["blank", "it's blank", "the screen is blank", "nothing on the screen", "no display", "display is blank", "blank or low on battery"]
  back = "Blank."
}
option "shows" {
  say  = ["it shows something", "there is a display", "screen is on", "screen's on", "display is on", "it has a display"]
  back = "Display on."
}
option "low-battery" {
  say  = ["low battery", "battery low", "battery sign", "it says low battery", "battery is low"]
  back = "Battery low."
}

# ---- sound
option "humming" {
  say  = ["humming", "it hums", "it's humming", "buzzing", "it's buzzing", "it just hums", "hums but won't turn", "hums"]
  back = "Humming, not turning."
}
option "running" {
  say  = ["running", "it's running", "it runs", "turning", "it's turning", "spinning", "it's spinning", "it came on", "it starts", "it started", "fan is running", "it spins", "one still running", "running with warm air", "still running"]
  back = "Running."
}
option "not-running" {
  say  = ["not running", "it's not running", "not turning", "not spinning", "it won't run", "standing still", "it doesn't start", "never starts", "nothing happens", "it doesn't run", "no turn"]
  back = "Not running."
}
option "silent" {
  say  = ["silent", "it's silent", "no sound", "nothing at all", "no noise", "completely quiet", "dead silent", "both fans silent"]
  back = "Silent."
}
option "clicks" {
  say  = ["clicks", "it clicks", "a click", "one click", "clicking", "i hear a click", "it clicked"]
  back = "It clicks."
}
option "no-click" {
  say  = ["no click", "it doesn't click", "no clicking", "i hear no click", "doesn't click"]
  back = "No click heard."
}
option "grinding" {
  say  = ["grinding", "squealing", "screeching", "rattling", "scraping", "it squeals", "noisy", "rough"]
  back = "Rough noise."
}
option "hissing" {
  say  = ["hissing", "it hisses", "a hiss", "i hear hissing"]
  back = "Hissing."
}
option "sounding" {
  say  = ["sounding", "it's sounding", "ringing", "it's ringing", "going off"]
  back = "Sounding."
}
option "quiet" {
  say  = ["quiet", "it's quiet", "they're quiet", "no alarm", "no alarms", "alarms are quiet", "all quiet", "alarm's quiet"]
  back = "Quiet."
}
option "chirping" {
  say  = ["chirping", "it chirps", "one chirp", "a chirp now and then", "it beeps once a minute"]
  back = "Chirping."
}
option "no-co-alarm" {
  say  = ["no alarm there", "no carbon monoxide alarm", "there is no carbon monoxide alarm", "we have none", "i have none", "there is no alarm", "we don't have one", "no alarm at all"]
  back = "There is no carbon monoxide alarm."
}
option "whoosh" {
  say  = ["whoosh", "a soft pop", "it lights softly", "soft light up", "lights smoothly", "late with a whoosh", "softly"]
  back = "Softly."
}
option "bang" {
  say  = ["a thump", "it thumps", "lights with a thump", "late light up", "it pops", "with a thump"]
  back = "With a thump."
}

# ---- temperature and feel
option "hot" {
  say  = ["hot", "it's hot", "too hot to touch", "very hot", "burning hot"]
  back = "Hot."
}
option "warm" {
  say  = ["warm", "it's warm", "a little warm", "luke warm", "warm air", "warm to touch", "slowly getting warm"]
  back = "Warm."
}
option "cold" {
  say  = ["cold", "it's cold", "stone cold", "not warm", "no heat", "still cold"]
  back = "Cold."
}
option "warm-air" {
  say  = ["warm air", "hot air", "air is warm", "warm air comes out", "blowing warm", "it's blowing warm"]
  back = "Warm air."
}
option "cool-air" {
  say  = ["cool air", "cold air", "air is cold", "blowing cold", "only cold air", "it's blowing cold"]
  back = "Cool air."
}
option "no-air" {
  say  = ["no air", "no air at all", "no air flow", "nothing blows", "no draft", "it's not blowing"]
  back = "No air."
}
option "weak-air" {
  say  = ["weak air", "weak flow", "little air", "barely blowing", "very little air"]
  back = "Weak air."
}
option "strong-air" {
  say  = ["strong air", "good air flow", "blowing hard", "plenty of air", "strong flow"]
  back = "Strong air."
}
option "draft-in" {
  say  = ["pulls in", "sucks in", "drawn in", "pulling in", "tissue pulls in"]
  back = "Pulls in."
}
option "draft-out" {
  say  = ["blows out", "spills out", "comes back", "pushed out", "blowing out", "tissue blows out"]
  back = "Blows out."
}

# ---- flame and igniter
option "glowing" {
  say  = ["glowing", "it glows", "it's glowing", "bright orange", "glows bright", "red hot", "glowing orange", "bright"]
  back = "Glowing."
}
option "no-glow" {
  say  = ["no glow", "not glowing", "it doesn't glow", "stays dark", "it stays dark", "igniter's dark"]
  back = "No glow."
}
option "weak-glow" {
  say  = ["weak glow", "dull glow", "glows dull", "a dull red", "barely glowing", "dim", "weak"]
  back = "Weak glow."
}
option "blue-flame" {
  say  = ["blue flame", "blue flames", "burning blue", "it's burning blue", "steady blue", "all blue", "flame is blue", "strong and blue"]
  back = "Blue flame."
}
option "yellow-flame" {
  say  = ["yellow flame", "yellow flames", "burning yellow", "yellow tips", "orange flame", "flame is yellow", "lazy flame"]
  back = "Yellow flame."
}
option "no-flame" {
  say  = ["no flame", "no flames", "it doesn't light", "never lights", "doesn't light", "no ignition", "it didn't light", "won't light", "no burner", "no burners", "there is no flame"]
  back = "No flame."
}
option "short-flame" {
  say  = ["short flame", "lights then goes out", "goes out again", "flame goes out", "it lights and drops out", "lit for a few seconds", "drops out", "flame dropped out", "it goes out", "short and soft", "weak"]
  back = "It goes out."
}
option "lifts" {
  say  = ["lifts", "it lifts", "flame lifts", "lifting off", "flame is lifting", "jumps off the burner"]
  back = "Flame lifts."
}
option "flame-stays" {
  say  = ["flame stays", "it stays lit", "keeps burning", "flame stays on", "stays lit", "still burning", "it stays"]
  back = "Flame stays."
}
option "rolls-out" {
  say  = ["rolls out", "flame rolls out", "rolling out", "comes out the front", "flame comes out"]
  back = "Flame rolls out."
}
option "some-burners" {
  say  = ["some burners", "not all of them", "one is missing", "only some", "one burner is dark", "one won't light", "not all burners", "only some burners"]
  back = "Not all burners."
}
option "all-burners" {
  say  = ["all burners", "all of them", "every burner", "they all light", "all lit"]
  back = "All burners."
}
option "flame-moves" {
  say  = ["flame moves", "it moves", "flame wavers", "it wavers", "flickers when the fan starts"]
  back = "Flame moves with the fan."
}
option "flame-still" {
  say  = ["flame is still", "it stays still", "doesn't move", "no movement"]
  back = "Flame still."
}

# ---- condition of a part
option "good" {
  say  = ["good", "it's good", "looks good", "looks fine", "fine", "it's fine", "okay", "sound", "intact", "nothing wrong", "no damage", "undamaged"]
  back = "Good."
}
option "bad" {
  say  = ["bad", "it's bad", "looks bad", "damaged", "it's damaged", "broken", "it's broken", "crushed"]
  back = "Damaged."
}
option "clear" {
  say  = ["clear", "it's clear", "all clear", "free and clear", "nothing in it", "not blocked", "unblocked"]
  back = "Clear."
}
option "blocked" {
  say  = ["blocked", "it's blocked", "plugged", "plugged up", "clogged", "it's clogged", "stopped up", "full of dirt", "there's a nest", "ice in it", "iced up", "snow in it"]
  back = "Blocked."
}
option "clean" {
  say  = ["clean", "it's clean", "looks clean", "shiny", "spotless"]
  back = "Clean."
}
option "dirty" {
  say  = ["dirty", "it's dirty", "dusty", "filthy", "coated", "white coating", "very dirty", "packed with dust"]
  back = "Dirty."
}
option "wet" {
  say  = ["wet", "it's wet", "damp", "water in it", "there's water", "full of water", "some water"]
  back = "Wet."
}
option "dry" {
  say  = ["dry", "it's dry", "bone dry", "no water", "all dry"]
  back = "Dry."
}
option "cracked" {
  say  = ["cracked", "it's cracked", "a crack", "there's a crack", "hair crack", "hairline crack", "i see a crack"]
  back = "Cracked."
}
option "split" {
  say  = ["split", "it's split", "there's a split", "torn", "a split", "a hole", "there's a hole"]
  back = "Split."
}
option "off-port" {
  say  = ["fell off", "came off", "slipped off", "it's off the port", "hose is off", "off its port"]
  back = "Off its port."
}
option "tight" {
  say  = ["tight", "it's tight", "snug", "it's snug", "solid fit", "firm", "they're tight", "all tight", "both wires tight"]
  back = "Tight."
}
option "loose" {
  say  = ["loose", "it's loose", "wobbly", "it wiggles", "it's wobbly", "one is loose", "loose or burned", "one loose"]
  back = "Loose."
}
option "burnt" {
  say  = ["burnt", "it's burnt", "burned", "scorched", "charred", "black spot", "scorch marks", "burn marks", "melted", "it's melted", "discolored", "burned or loose"]
  back = "Burned."
}
option "rusty" {
  say  = ["rusty", "rust", "it's rusty", "corroded", "green stuff", "rust streaks"]
  back = "Rusty."
}
option "sooty" {
  say  = ["sooty", "soot", "there's soot", "black soot", "covered in soot", "sooty or burned"]
  back = "Soot."
}
option "no-soot" {
  say  = ["no soot", "no scorch", "no marks", "no soot and no scorch"]
  back = "No marks."
}
option "swollen" {
  say  = ["swollen", "bulging", "it's bulging", "leaking oil", "bulged"]
  back = "Swollen."
}
option "blown" {
  say  = ["blown", "it's blown", "fuse is blown", "blown fuse", "wire is broken"]
  back = "Blown."
}
option "popped" {
  say  = ["popped", "it popped out", "button is out", "popped up", "sticking out", "popped out"]
  back = "Popped out."
}
option "not-popped" {
  say  = ["not popped", "button is in", "it's flush", "flush", "it won't click in"]
  back = "Not popped."
}
option "missing" {
  say  = ["missing", "it's missing", "gone", "it's gone", "not there", "there isn't one", "i don't have one"]
  back = "Missing."
}
option "present" {
  say  = ["present", "it's there", "there is one", "it's present", "i have one", "got it"]
  back = "Present."
}
option "sagging" {
  say  = ["sagging", "it sags", "a low spot", "slopes the wrong way", "it hangs down"]
  back = "Sagging."
}
option "sloped" {
  say  = ["slopes back", "sloped right", "slopes to the furnace", "runs downhill", "good slope"]
  back = "Slopes back."
}
option "drips" {
  say  = ["drips", "it drips", "dripping", "water comes out", "it drains"]
  back = "Drips."
}
option "bypassed" {
  say  = ["bypassed", "jumped out", "it's bypassed", "there's a jumper", "there is a jumper", "two wires tied together"]
  back = "Bypassed."
}
option "wrong-place" {
  say  = ["wrong place", "one over", "on the wrong terminal", "it's on the wrong one", "one terminal off", "in the wrong place", "out of place"]
  back = "In the wrong place."
}
option "right-place" {
  say  = ["right place", "as on the label", "matches", "it matches", "same as the picture", "it's on the right one", "all match", "in the right place"]
  back = "In the right place."
}
option "bare" {
  say  = ["bare", "bare wire", "rubbed through", "chafed", "pinched", "it's pinched", "insulation is gone", "bare or pinched"]
  back = "Bare wire."
}
option "old" {
  say  = ["old", "it's old", "over ten years", "very old", "original"]
  back = "Old."
}
option "new" {
  say  = ["new", "it's new", "brand new", "just changed", "replaced"]
  back = "New."
}

# ---- thermostat and house
option "heat" {
  say  = ["heat", "on heat", "set to heat", "it's on heat", "heating"]
  back = "Set to heat."
}
option "cool" {
  say  = ["cool", "on cool", "set to cool", "it's on cool", "cooling", "air conditioning"]
  back = "Set to cool."
}
option "auto" {
  say  = ["auto", "on auto", "automatic", "set to auto"]
  back = "Set to automatic."
}
option "fan-on" {
  say  = ["fan on", "fan's on", "fan set to on", "fan is set to on"]
  back = "Fan on."
}
option "above" {
  say  = ["above", "above room", "higher", "it's higher", "set higher", "above the room", "it's above", "forty seconds or more", "the burners were once under water", "it was under water"]
  back = "Above."
}
option "below" {
  say  = ["below", "below room", "lower", "it's lower", "set lower", "below the room", "it's below", "less than forty seconds"]
  back = "Below."
}
option "schedule" {
  say  = ["schedule", "on a schedule", "following a schedule", "program", "it's on a program", "set back"]
  back = "On a schedule."
}
option "hold" {
  say  = ["permanent hold", "on hold", "manual", "it's on hold", "temporary hold", "pilot"]
  back = "On hold."
}
option "calling" {
  say  = ["calling", "it's calling", "calling for heat", "says heat on", "heat on", "flame sign", "it is turned up", "turned up"]
  back = "It is turned up."
}
option "not-calling" {
  say  = ["not calling", "it's not calling", "no call", "it doesn't call", "it is turned down", "turned down"]
  back = "It is turned down."
}

# ---- the story
option "everyone-fine" {
  say  = ["everyone fine", "everyone is fine", "we're fine", "i'm fine", "i feel fine", "nobody is ill", "we all feel fine", "all fine", "feeling fine", "fine", "feel good"]
  back = "Everyone is fine."
}
option "feeling-ill" {
  say  = ["feeling ill", "i feel ill", "not so good", "headache", "i have a headache", "feel unwell", "unwell", "someone feels ill", "somebody feels ill"]
  back = "Somebody feels ill."
}
option "first-time" {
  say  = ["first time", "the first time", "never before", "it's the first time"]
  back = "First time."
}
option "again" {
  say  = ["it's back again", "happened before", "it happened before", "not the first time", "happens every year", "again and again"]
  back = "It has happened before."
}
option "every-start" {
  say  = ["every start", "every time", "each time", "every single time", "always the same", "at every start"]
  back = "At every start."
}
option "some-starts" {
  say  = ["some starts", "sometimes", "now and then", "only sometimes", "it comes and goes", "off and on", "once in a while", "at times", "only at some starts"]
  back = "At some starts."
}
option "never" {
  say  = ["never", "not once", "it never does", "not ever"]
  back = "Never."
}
option "always" {
  say  = ["always", "all the time", "constantly", "it always does"]
  back = "Always."
}
option "suddenly" {
  say  = ["suddenly", "all at once", "from one day to the next", "over night", "it just stopped", "last night", "today", "this morning"]
  back = "Suddenly."
}
option "gradually" {
  say  = ["gradually", "slowly", "it got worse", "over time", "little by little"]
  back = "Gradually."
}
option "after-work" {
  say  = ["after work", "after a repair", "somebody worked on it", "after the service", "someone fixed it", "after a new part", "we had it serviced", "work on it", "work on the furnace"]
  back = "After work on it."
}
option "after-storm" {
  say  = ["after a storm", "after a power cut", "power failure", "lightning", "after the storm", "after an outage", "power went out", "a storm", "a storm or power outage"]
  back = "After a storm or power cut."
}
option "after-filter" {
  say  = ["after the filter", "i changed the filter", "new filter", "after a new filter", "changed the filter"]
  back = "After a filter change."
}
option "after-thermostat" {
  say  = ["new thermostat", "changed the thermostat", "after a new thermostat", "i put in a thermostat"]
  back = "After a new thermostat."
}
option "nothing-done" {
  say  = ["nothing was done", "nobody touched it", "no work done", "nothing before that", "no one touched it"]
  back = "Untouched."
}
option "no-start" {
  say  = ["does nothing", "it does nothing", "nothing happens at all", "it won't start", "completely dead", "doesn't do anything", "did nothing"]
  back = "It does nothing."
}
option "stops-early" {
  say  = ["it starts then stops", "starts and stops", "it shuts off early", "runs a few minutes", "short cycles", "short cycling", "shuts down", "it quits after a while", "starts then stops early", "stopped early"]
  back = "Starts, then stops early."
}
option "runs-no-heat" {
  say  = ["runs but no heat", "blows cold air", "fan runs but no heat", "fan runs no heat", "inducer runs no flame", "ran with no heat"]
  back = "Runs, no heat."
}
option "never-stops" {
  say  = ["never stops", "it won't stop", "runs all the time", "fan never stops", "won't shut off"]
  back = "Never stops."
}
option "not-enough" {
  say  = ["not enough heat", "not enough", "not warm enough", "can't keep up", "doesn't keep up"]
  back = "Not enough heat."
}

# ---- sides, counts, people
option "left" {
  say  = ["left", "the left one", "left side", "on the left"]
  back = "Left."
}
option "right-side" {
  say  = ["right side", "the right one", "on the right", "right hand side", "right"]
  back = "Right side."
}
option "top" {
  say  = ["top", "upper", "upper one", "the top one", "at the top"]
  back = "Top."
}
option "bottom" {
  say  = ["bottom", "lower one", "the bottom one", "at the bottom"]
  back = "Bottom."
}
option "both" {
  say  = ["both", "both of them", "the two of them", "both work"]
  back = "Both."
}
option "neither" {
  say  = ["neither", "neither one", "neither of them", "none of the two"]
  back = "Neither."
}
option "one-only" {
  say  = ["only one", "just one", "one of them"]
  back = "One only."
}
option "safe-outside" {
  say  = ["we're outside", "i'm outside", "everyone is out", "we're out", "all out"]
  back = "Everyone is out."
}
option "okay-now" {
  say  = ["i'm okay", "i'm alright", "it's nothing", "just a scratch"]
  back = "I'm okay."
}
option "owner" {
  say  = ["i own it", "owner", "it's my house", "home owner", "my own house"]
  back = "Owner."
}
option "tenant" {
  say  = ["tenant", "i rent", "it's a rental", "we rent"]
  back = "Tenant."
}
option "go-live" {
  say  = ["go live", "yes with power on", "with power on"]
  back = "Yes, with power on."
}
option "other-way" {
  say  = ["other way", "the other way", "another way", "no find another way", "find another way", "no"]
  back = "No, find another way."
}
option "summary" {
  say  = ["summary please", "yes the summary", "read it out"]
  back = "Summary."
}

# ---- meter and person
option "rated" {
  say  = ["rated", "both rated", "they are rated", "cat three", "category three", "cat three on both", "cat four", "category four", "yes cat three"]
  back = "Rated for house voltage."
}
option "not-rated" {
  say  = ["not rated", "they are not rated", "no category", "cat two", "category two", "nothing printed", "can't find it", "no cat"]
  back = "Not rated for house voltage."
}
option "true-rms" {
  say  = ["true r m s", "it's true r m s", "r m s", "says true r m s"]
  back = "True R M S."
}
option "plain-meter" {
  say  = ["plain meter", "a cheap one", "a simple one", "basic meter", "cheap meter", "just a basic one", "a plain meter"]
  back = "A plain meter."
}
option "has-microamps" {
  say  = ["has micro amps", "it has micro amps", "micro amp range", "down to micro amps"]
  back = "It has micro amps."
}
option "no-microamps" {
  say  = ["no micro amps", "it has no micro amps", "no micro amp range"]
  back = "No micro amp range."
}
option "no-meter" {
  say  = ["no meter", "i have no meter", "i don't have a meter", "no multimeter"]
  back = "No meter."
}
option "frozen" {
  say  = ["frozen", "it's frozen", "ice in it", "froze up"]
  back = "Frozen."
}
option "gurgles" {
  say  = ["gurgles", "it gurgles", "water gurgles", "gurgling", "bubbling"]
  back = "It gurgles."
}
option "low" {
  say  = ["low", "it's low", "low water", "nearly empty"]
  back = "Low."
}
option "full" {
  say  = ["full", "it's full", "full to the top", "brim full"]
  back = "Full."
}
option "ticking" {
  say  = ["ticking", "it's ticking", "it ticks", "i hear ticking", "snapping"]
  back = "Ticking."
}
option "reason-known" {
  say  = ["reason known", "the reason is known", "i know why", "i closed it", "i know who", "we closed it for", "i shut it off"]
  back = "The reason is known."
}
option "nobody-knows" {
  say  = ["nobody knows", "no idea who", "i don't know why", "i don't know who", "no idea why", "not me"]
  back = "Nobody knows."
}
option "return-apart" {
  say  = ["return apart", "the return duct is apart", "return duct apart", "the return is open", "return is loose", "return duct apart at the furnace"]
  back = "Return duct apart."
}
