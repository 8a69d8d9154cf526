# What can be said in English besides numbers. Every saying is lower case, as spoken, numbers as words.
# A "*" inside an emergency saying stands for up to three other words.
# Options are answers to looks and acts; an equipment file names them by id. "back" is how the assistant says the answer back.
# More options may be added at the end of this file or in a file of their own, en-*.hcl: all are joined, a doubled id is an error.

lang = "en"

# ---------------------------------------------------------------- commands: a whole saying, in every state

command "repeat" {
  say = ["repeat", "repeat that", "say again", "say that again", "again please", "what was that", "come again", "pardon", "sorry", "i missed that", "one more time", "what did you say"]
}
command "longer" {
  say = ["longer", "from the top", "all of it", "whole step", "say everything", "full version", "more detail", "more details", "spell it out", "simpler please", "tell me more"]
}
command "slower" {
  say = ["slower", "slow down", "too fast", "not so quick", "not so fast", "speak slowly", "bit slower", "a bit slower", "you're rushing", "take it slow", "easy now"]
}
command "shorter" {
  say = ["shorter", "keep it short", "just the basics", "short version", "less talk", "get to it", "quicker", "i know this", "faster please"]
}
command "where" {
  say = ["where", "where is it", "where's that", "which one", "which wire", "where does it go", "i don't see it", "can't find it", "i can't find it", "which terminal", "show me"]
}
command "why" {
  say = ["why", "what for", "why this one", "how come", "what's the point", "do we need it", "what's this for", "the reason", "why now", "why that"]
}
command "how" {
  say = ["how", "how do i do that", "what do i turn", "which setting", "walk me through", "i've never done this", "what button", "teach me", "how so", "how do i"]
}
command "what-if" {
  say = ["what if", "what does that mean", "suppose it reads", "is that bad", "what happens if", "and if not", "what if it's", "what would that tell", "so what then"]
}
command "back" {
  say = ["go back", "previous", "last step", "one back", "the step before", "before that", "back one", "let me redo that", "back up a step"]
}
command "hold-on" {
  say = ["hold on", "hold", "wait", "wait a minute", "hang on", "give me a minute", "give me a second", "one sec", "just a moment", "not yet", "pause", "someone's at the door"]
}
command "ready" {
  say = ["ready", "i'm ready", "go ahead", "all set", "in place", "i'm there", "carry on", "go on", "i'm back", "continue", "resume", "next"]
}
command "done" {
  say = ["done", "i'm done", "did it", "finished", "it's out", "all done", "switched off", "completed", "that's off", "okay that's done", "that's done"]
}
command "skip" {
  say = ["skip", "skip it", "skip this", "next one", "pass", "leave that", "move on", "not this one", "let's not", "do another"]
}
command "cant-reach" {
  say = ["can't reach", "i can't reach it", "can't reach it", "too tight", "can't get there", "it won't come off", "too high", "hand won't fit", "it's behind something", "no room", "can't get at it"]
}
command "dont-know" {
  say = ["don't know", "i don't know", "no idea", "can't tell", "i can't tell", "beats me", "dunno", "couldn't say", "no clue", "who knows", "no way to tell"]
}
command "not-sure" {
  say = ["not sure", "i'm not sure", "i think so", "maybe", "sort of", "kind of", "could be", "probably", "more or less", "i guess"]
}
command "it-changed" {
  say = ["it changed", "something changed", "something happened", "it started", "it just started", "it came on", "it stopped", "light's different", "it clicked", "it shut off", "power's back"]
}
command "jumping" {
  say = ["jumping", "it's jumping", "it's bouncing", "won't settle", "it won't settle", "all over the place", "keeps moving", "unstable", "flickering", "up and down", "can't read it"]
}
command "missed-it" {
  say = ["missed it", "i missed it", "too quick", "it was gone", "didn't catch it", "i blinked", "too late", "lost it", "it went off", "wasn't ready"]
}
command "how-long" {
  say = ["how long", "how much longer", "how many more", "time left", "will this take long", "minutes left", "nearly there", "is it far", "when's it over"]
}
command "where-am-i" {
  say = ["where am i", "where are we", "what step", "recap", "remind me", "summary", "what's done", "i lost track", "what have we got"]
}
command "should-it-be" {
  say = ["should it be", "what should it be", "what's normal", "what's good", "what do you expect", "right number", "normal value", "the target", "supposed to be", "what should i see"]
}
command "suspected" {
  say = ["suspected", "what do you suspect", "what do you think it is", "what's wrong with it", "so it's the switch", "which part", "what's left", "what's it down to", "what's ruled out", "any idea yet"]
}
command "how-sure" {
  say = ["how sure", "how sure are you", "are you sure", "how certain", "what are the odds", "how confident", "is it proved", "could it be wrong", "sure about that", "is that final"]
}
command "cost" {
  say = ["cost", "what will it cost", "how much", "is it expensive", "price", "what's the part cost", "worth fixing", "big job", "what am i in for"]
}
command "shortcut" {
  say = ["shortcut", "can i tape it", "can i bypass it", "just jump it", "leave the jumper in", "hold the switch down", "skip the safety", "i don't have time", "hurry up", "leave the jumper in i'm in a hurry"]
}
command "scratch-that" {
  say = ["scratch that", "undo", "cancel that", "cancel", "wrong number", "forget that", "strike that", "take it back", "i misspoke", "delete that"]
}
command "quiet" {
  say = ["stop", "quiet please", "shh", "stop talking", "be quiet", "shut up", "silence", "okay okay"]
}
command "person" {
  say = ["person", "call someone", "i need a pro", "a technician", "get a human", "an expert", "who can i call", "hand it over", "talk to a person"]
}
command "finish" {
  say = ["finish", "i quit", "quit", "let's stop here", "end it", "i'm done for today", "close up", "pack up", "i give up", "enough for today", "enough", "that's enough", "i've had enough", "i want to stop", "let's stop"]
}
command "help" {
  say = ["help", "what can i say", "options", "commands", "i'm stuck", "i'm lost", "what now", "what do i do", "help me"]
}
command "false-alarm" {
  say = ["false alarm", "it's a false alarm", "that was a false alarm", "no emergency", "there's no emergency", "not an emergency"]
}
command "go-live" {
  say = ["go live"]
}
command "other-way" {
  say = ["other way", "the other way", "another way"]
}
command "other-meter" {
  say = ["keypad", "use the keypad", "i'll tap it", "show the camera", "use the camera"]
}

# ---------------------------------------------------------------- emergencies: anywhere in a saying

emergency "gas" {
  say = ["i smell gas", "smell gas", "smell * gas", "smelling gas", "smelling * gas", "smells * gas", "gas smell", "gas * smell", "gas odor", "odor of gas", "gas leak", "gas is leaking", "gas leaking", "leaking gas", "leak * gas", "leaking * gas", "rotten eggs", "rotten egg", "stinks of gas", "stinks * gas", "reeks of gas", "reeks * gas", "smells like propane", "smell propane", "smell * propane", "propane smell", "propane leak", "gas coming out", "gas escaping", "full of gas", "gas everywhere"]
}
emergency "co" {
  say = ["c o alarm", "carbon monoxide", "monoxide alarm", "monoxide alarm's going", "c o detector's ringing", "c o thing is beeping", "c o detector is beeping", "c o detector is going off", "it says evacuate", "says evacuate", "evacuate", "the alarm's going off", "alarm's going off", "alarm is going off", "alarm going off", "alarm went off", "alarm * went off", "alarm * going off", "alarm won't stop", "alarm is sounding", "alarm's sounding", "alarm sounding", "alarm is ringing", "detector is going off", "detector's going off", "detector went off", "detector is beeping", "detector * ringing", "detector * sounding", "detector * screaming", "alarm * ringing", "alarm * screaming"]
}
emergency "fire" {
  say = ["fire", "on fire", "caught fire", "catching fire", "flames coming out", "flames * out", "flames shooting", "something's burning", "something is burning", "burning up", "there's smoke", "smoke", "smoking", "it's smoking", "room's filling up", "filling with smoke", "flame outside", "flames everywhere", "wires are burning", "wire is burning"]
}
emergency "ill" {
  say = ["i feel sick", "feel sick", "feeling sick", "i'm dizzy", "feel dizzy", "feel * dizzy", "feel * sick", "feel * faint", "feeling dizzy", "getting dizzy", "bad headache", "my head hurts", "head is pounding", "feel faint", "feeling faint", "going to faint", "can't breathe", "cannot breathe", "hard to breathe", "chest hurts", "chest pain", "we all feel sick", "throwing up", "feel nauseous"]
}
emergency "faint" {
  say = ["passed out", "passing out", "collapsed", "he's unconscious", "she's unconscious", "unconscious", "fainted", "she won't wake up", "he won't wake up", "won't wake up", "not breathing", "isn't breathing", "stopped breathing"]
}
emergency "blast" {
  say = ["it exploded", "exploded", "explosion", "it blew up", "blew up", "blew the door off"]
}
emergency "shock" {
  say = ["i got shocked", "got shocked", "got a shock", "got * shock", "been shocked", "it shocked me", "shocked me", "it zapped me", "zapped me", "got zapped", "it bit me", "he's stuck to it", "stuck to it", "electrocuted", "electric shock"]
}
emergency "spark" {
  say = ["big spark", "big sparks", "sparks flying", "sparking", "there was a spark", "it arced", "arcing", "arced", "it went bang", "went bang", "loud boom", "big bang", "loud bang"]
}
emergency "water" {
  say = ["water on the floor", "water on floor", "it's flooding", "flooding", "flooded", "standing in water", "standing * water", "water's pouring", "water is pouring", "water pouring", "water everywhere"]
}
emergency "injury" {
  say = ["i'm bleeding", "bleeding", "cut myself", "i cut my hand", "cut my hand", "cut my finger", "burned my hand", "burned myself", "burned my finger", "hand's stuck", "hand is stuck", "my hand's stuck", "finger's stuck", "finger is stuck", "i'm hurt", "i hurt myself", "got hurt"]
}
emergency "child" {
  say = ["my kid's here", "kid's here", "kid is here", "baby's in here", "baby is in here", "child's touching it", "child is touching it", "a child is here", "kid's touching it", "she's got the wire", "he's got the wire", "dog's in here", "dog is in here", "cat's inside it", "cat is inside it", "get him away", "get her away", "get back you"]
}
emergency "any" {
  say = ["emergency", "mayday", "nine one one", "call an ambulance", "ambulance", "help help", "somebody help", "someone help", "help me please", "call the fire department"]
}
emergency "ask" {
  say = ["burning smell", "smell * burning", "smells * burning", "smells burnt", "smells funny", "funny smell", "strange smell", "weird smell", "hot dust", "soot", "hissing", "alarm's chirping", "alarm is chirping", "is that gas", "is it gas", "smelled gas earlier", "smelled gas", "smelled * gas", "my nose is blocked", "nose is blocked", "can't smell anything", "i can't smell"]
}

matcher {
  # A device noun hides the hazard word inside it, unless a live verb follows within four words.
  masks = ["gas valve", "gas valves", "gas cock", "gas furnace", "gas pressure", "gas line", "gas pipe", "gas meter", "gas company", "gas supply", "gas burner", "gas burners", "gas inlet", "gas bill", "gas man", "water heater", "water line", "water pressure", "smoke detector", "smoke detector's", "smoke alarm", "smoke alarms", "smoke detectors", "smoke pipe", "c o detector", "c o detector's", "c o detectors", "c o alarm", "c o alarms", "carbon monoxide alarm", "carbon monoxide detector", "monoxide alarm", "monoxide detector", "c o thing", "fire department", "fire alarm", "fire extinguisher", "fire station", "fire door", "fire wall", "fire place", "flame sensor", "flame rod", "flame signal", "spark plug", "spark igniter", "shock absorber"]
  live  = ["ringing", "leaking", "leaks", "leak", "stinks", "reeks", "smelling", "smoking", "sounding", "beeping", "going", "screaming", "burning", "hissing", "went", "won't", "smell", "smells", "evacuate"]
  # At most three words before a hazard phrase they cancel it.
  negators = ["no", "not", "don't", "doesn't", "didn't", "isn't", "wasn't", "aren't", "never", "without", "none", "nothing", "can't", "won't", "nobody", "zero"]
  enders   = ["but", "now", "wait", "except", "until", "and"]
  # Said after a hazard phrase they cancel it.
  fine  = ["fine", "quiet", "tested", "okay", "good", "silent", "normal", "clear", "gone", "works", "working", "new battery", "false"]
  past  = ["what if", "if i", "if we", "suppose", "earlier", "yesterday", "last night", "last week", "last year", "last time", "last winter", "last month", "years ago", "ago", "used to", "before", "once", "had", "would", "when do i", "should i"]
  hedges = ["don't think", "not sure", "not certain", "doubt"]
  # Expected at a healthy appliance: these cancel a bare spark, fire or flame.
  expected = ["fired up", "fire up", "fires up", "spark is good", "spark is fine", "good spark", "spark at the", "blue flame", "burning blue", "fire in the burner", "burners fire", "burner fires", "under fire", "on low fire", "on high fire", "low fire", "high fire"]
  # A short saying that means nothing else and holds one of these is asked about.
  alarms = ["stuck", "trapped", "zapped", "shocked", "electrocuted", "dizzy", "nauseous", "faint", "fainted", "collapsed", "bleeding", "flooding", "flooded",
    "evacuate", "monoxide", "smoking", "burning", "spark", "sparks", "sparking", "arcing", "exploded", "explosion", "leaking", "reeks", "stinks", "mayday", "ambulance", "help"]
  # These must not trigger. Tests hold it.
  near = ["gas valve is open", "the gas valve is open", "gas is on at the cock", "gas furnace", "gas pressure seven", "no gas smell", "i don't smell anything", "i don't smell gas", "i don't smell any gas", "i smell no gas", "there is no gas smell", "gas is off", "gas valve", "gas cock is closed", "smoke detector is fine", "the smoke detector is fine", "smoke alarm has a new battery", "c o detector's quiet", "c o alarm is quiet", "c o alarm tested fine", "no smoke", "there's no smoke", "i see no smoke", "it fired up", "it's burning blue", "fire department came last year", "water heater's beside it", "four inches of water", "no water on the floor", "there is no water on the floor", "no shock", "spark is good", "flame sensor", "flame rod is clean", "kid's at school", "dog's upstairs", "blue flame", "minus zero point five five inches of water", "nobody is hurt", "nothing is leaking", "nothing's burning", "no burning smell", "no soot", "no alarm", "alarm is quiet", "no one feels sick", "the fan fires up", "four amps", "water is off", "no sparks"]
}

# ---------------------------------------------------------------- units
# A saying that stands under several units leaves the choice to the question that was asked.

unit "V" { say = ["volts", "volt"] }
unit "mV" { say = ["milli volts", "milli volt", "millivolts", "millivolt", "m v", "milli vaults"] }
unit "A" { say = ["amps", "amp", "amperes", "ampere"] }
unit "mA" { say = ["milli amps", "milli amp", "milliamps", "milliamp", "milli amperes", "m a", "mills"] }
unit "uA" { say = ["micro amps", "micro amp", "microamps", "microamp", "micro amperes", "u a"] }
unit "ohm" { say = ["ohms", "ohm"] }
unit "kohm" { say = ["kilo ohms", "kilo ohm", "kilohms", "kilohm", "k ohms", "k ohm", "kill ohms", "k"] }
unit "Mohm" { say = ["mega ohms", "mega ohm", "megohms", "megohm", "megaohms", "meg ohms", "meg ohm", "meg", "megs"] }
unit "uF" { say = ["micro farads", "micro farad", "microfarads", "microfarad", "micro far ads", "micro far ad", "micro fair ads", "micro fair ad", "mike", "u f", "m f d"] }
unit "nF" { say = ["nano farads", "nano farad", "nanofarads", "nanofarad", "nano far ads", "nano far ad", "nano fair ads"] }
unit "Hz" { say = ["hertz", "cycles"] }
unit "degC" { say = ["degrees celsius", "degree celsius", "degrees c", "celsius", "degrees", "degree"] }
unit "degF" { say = ["degrees fahrenheit", "degree fahrenheit", "degrees f", "fahrenheit", "degrees", "degree"] }
unit "dF" { say = ["degrees", "degree", "degrees fahrenheit", "degree fahrenheit", "degrees f", "fahrenheit"] }
unit "dC" { say = ["degrees celsius", "degree celsius", "degrees c", "celsius", "degrees", "degree"] }
unit "inH2O" { say = ["inches of water", "inch of water", "inches water", "inches water column", "inches of water column", "inch water column", "inches w c", "water column", "inches", "inch"] }
unit "Pa" { say = ["pascals", "pascal", "pass cals"] }
unit "kPa" { say = ["kilo pascals", "kilo pascal", "kilopascals", "kilopascal", "k p a"] }
unit "psi" { say = ["p s i", "psi", "pounds per square inch", "pounds"] }
unit "inHg" { say = ["inches of mercury", "inch of mercury"] }
unit "%" { say = ["percent", "per cent"] }
unit "ppm" { say = ["parts per million", "part per million", "p p m"] }
unit "s" { say = ["seconds", "second", "secs"] }
unit "min" { say = ["minutes", "minute"] }
unit "h" { say = ["hours", "hour"] }
unit "yr" { say = ["years", "year", "years old", "year old"] }
unit "W" { say = ["watts", "watt"] }
unit "Btu/h" { say = ["b t u per hour", "b t u an hour", "b t u", "b t use", "b t u's"] }
unit "in" { say = ["inches", "inch"] }
unit "x" { say = ["times", "time"] }
unit "money" { say = ["dollars", "dollar", "bucks", "euros", "pounds sterling"] }

# ---------------------------------------------------------------- misheard
# What the recogniser writes in noise for words that were said, seen on the tuning half of the bench. They are only looked at where a judge gives
# a second opinion, and only where a reading with its unit comes of it.

misheard "five" { say = ["i", "i've", "fine", "i get", "l"] }
misheard "ten" { say = ["and", "in", "hand"] }
misheard "four" { say = ["oh", "or", "all", "off", "over", "on", "for"] }
misheard "nine" { say = ["nothing", "line"] }
misheard "eight" { say = ["it", "a", "l"] }
misheard "two" { say = ["do", "to"] }
misheard "six" { say = ["sick", "it's"] }
misheard "twenty" { say = ["went"] }
misheard "fifty" { say = ["it's", "f"] }
misheard "sixty" { say = ["two"] }
misheard "seventy" { say = ["hundred"] }
misheard "twelve" { say = ["down", "tell"] }
misheard "thirteen" { say = ["thirty"] }
misheard "thirty" { say = ["thirteen"] }
misheard "fourteen" { say = ["forty"] }
misheard "forty" { say = ["fourteen"] }
misheard "fifteen" { say = ["fifty"] }
misheard "sixteen" { say = ["sixty"] }
misheard "seventeen" { say = ["seventy"] }
misheard "eighteen" { say = ["eighty"] }
misheard "eighty" { say = ["eighteen"] }
misheard "nineteen" { say = ["ninety"] }
misheard "amps" { say = ["them", "then", "m", "hums", "happens", "on", "ohms"] }
misheard "farads" { say = ["far up", "far off", "far out", "far", "around", "rotten", "power", "are out", "off"] }
misheard "degrees" { say = ["that read", "read"] }
misheard "water" { say = ["them"] }

# ---------------------------------------------------------------- states of a display

state "over" {
  say = ["o l", "oh l", "over limit", "overload", "over load", "over range", "out of range", "open line", "over the limit", "off scale", "infinity", "infinite", "it says o l", "just a one on the left"]
}
state "beep" {
  say = ["beep", "beeps", "beeping", "it beeps", "it's beeping", "it beeped", "i hear a beep", "i get a beep", "i have continuity", "it has continuity", "continuity"]
}
state "silent" {
  say = ["no beep", "no continuity", "it doesn't beep", "doesn't beep", "not beeping", "it's not beeping", "no tone", "no sound"]
}
state "blank" {
  say = ["blank", "blank display", "the display is blank", "nothing on the display", "nothing on the screen", "display is dead"]
}
state "jumping" {
  say = ["jumping", "bouncing", "jumping around", "bouncing around", "fluctuating", "it won't settle", "won't settle", "unstable", "going up and down"]
}
state "dead" {
  say = ["dead", "it's dead", "it is dead", "no power", "no voltage", "nothing there", "i get nothing", "it's dead now"]
}
