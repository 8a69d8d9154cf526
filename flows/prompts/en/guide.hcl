# What the guide says, in English. Sentences have at most 16 words, begin with the verb where something is to be done, and
# hold no symbol that a voice cannot speak. {name} is a slot. "full" is the long form and comes first; "short" forms follow
# in turn; "say" tells what to answer; "how" is for the question how; "ask" lists the option ids that answer, the hoped-for one first.

lang = "en"

# ---------------------------------------------------------------- beginning, questions of every job

say "hello" { full = "I guide, you measure. Say hold on, or emergency, any time." }
say "story" {
  full  = "Tell me what it does, and since when."
  short = ["What does it do, and since when?"]
  say   = "One sentence is enough."
  how   = "Say what runs, what stops, and what changed before."
}
say "watch" { full = "Now watch one start from the beginning. Tell me what you see, as it happens." }
say "watch.again" { full = "Turn the thermostat down, wait one minute, and turn it up again. Tell me what you see, as it happens." }
say "watch.how" { full = "Say each thing when it comes. Say that's all when nothing more happens." }
say "watch.done" { full = "That's all" }
say "offer" {
  full  = "We are missing some answers. We can keep going with what you see and hear. Or stop here, with a summary for a technician."
  short = ["Keep going, or stop here?"]
  say   = "Keep going, or stop here?"
  how   = "Stop here means that everything goes back in place, and I read out what we found."
  ask   = ["keep-going", "stop-here"]
}
say "offer.looks" {
  full  = "Then no hand goes inside. We can keep going with what you see and hear. Or stop here, with a summary for a technician."
  short = ["Keep going, or stop here?"]
  say   = "Keep going, or stop here?"
  how   = "Without measuring we can find what shows from outside. A technician can do the rest."
  ask   = ["keep-going", "stop-here"]
}
say "look.again" { full = "You said: {what}. That decides a lot, so please look once more." }
say "look.which" { full = "Which is it: {options}?" }
say "mend.now" { full = "We can put that right now: {repair}." }
say "story.thanks" { full = "Noted." }
say "story.fact" { full = "Story: {story}" }
say "label.without" { full = "Without that number the reading is written down. It proves nothing." }
say "plate.without" { full = "Then without the plate." }
say "plate" {
  full  = "{ask}"
  short = ["{name}?"]
  say   = "Or say: don't know."
  how   = "Look for a metal or paper label inside the panel."
}
say "meter.kind" {
  full  = "Which meter: true R M S, a plain meter, or no meter?"
  short = ["True R M S, plain meter, or no meter?"]
  how   = "Look at the front. The words true R M S are printed there."
  ask   = ["true-rms", "plain-meter", "no-meter"]
}
say "meter.category" {
  full  = "Look at the print beside the meter's jacks, and on the leads. On both: category three or four, three hundred volts or more?"
  short = ["Category three or better, on meter and leads?"]
  say   = "Rated, or not rated?"
  how   = "It says CAT with three or four strokes, and volts. It must be on the meter and on each lead."
  ask   = ["rated", "not-rated"]
}
say "meter.not-rated" { full = "Then this meter stays off house voltage, and hands stay out. We look and listen." }
say "license" {
  full  = "Are you licensed for gas or heating work where you live?"
  short = ["Licensed for gas or heating work?"]
  say   = "Yes, or no?"
  how   = "A license from your state, city or county. If you are not sure, say no."
  ask   = ["no", "yes"]
}
say "license.fact" { full = "Licensed for gas or heating work: {answer}" }
say "meter.modest" { full = "I reckon with a modest meter." }
say "meter.none" { full = "Hands inside need a meter to prove it dead. Leave it closed." }
say "meter.leads" {
  full  = "Look along both meter leads and tips."
  short = ["Both leads?"]
  say   = "Good, or bad?"
  how   = "Bend each lead gently. No copper may show."
  ask   = ["good", "bad", "cracked", "split", "bare"]
}
say "meter.short" {
  full  = "Touch the two tips together, away from the furnace."
  short = ["Tips together. Number?"]
  say   = "Number and unit?"
  how   = "Red lead in the volts and ohms hole. Dial on ohms."
}
say "leads.good" { full = "The leads are good." }
say "leads.open" { full = "{value}: too much for bare leads. Press the plugs in. Again." }
say "leads.bad" { full = "These leads cannot be trusted. Get others before measuring." }
say "leads.unproved" { full = "Meter and leads were not proved." }

# ---------------------------------------------------------------- acts; .done is how they stand in the record

say "act.power-off" {
  full  = "Furnace switch off, then its breaker."
  short = ["Switch off, breaker off."]
  say   = "Say off when both are off."
  how   = "The switch is on or near the furnace. Then its breaker in the panel."
  ask   = ["off"]
}
say "act.power-off.done" { full = "Switched off." }
say "act.power-on" {
  full  = "Stand clear. Breaker on, then the furnace switch."
  short = ["Stand clear. Power on."]
  say   = "Say on when both are on."
  how   = "Hands and tools out first. Breaker, then the switch at the furnace."
  ask   = ["on"]
}
say "act.power-on.done" { full = "Switched on." }
say "act.prove-live" {
  full  = "Find an outlet that works. One tip in each slot."
  short = ["A live outlet, both slots. Number?"]
  say   = "Number and unit?"
  how   = "Plug in a lamp first to see that the outlet works."
}
say "act.prove-live.done" { full = "Live point measured." }
say "act.prove-line-neutral" {
  full  = "As if live: line and neutral. {name}"
  short = ["Line to neutral. Number?"]
  say   = "Number and unit?"
  how   = "One hand. Tip on the line screw, the other on neutral."
}
say "act.prove-line-neutral.done" { full = "Line to neutral is dead." }
say "act.prove-line-ground" {
  full  = "Line and ground. {name}"
  short = ["Line to ground. Number?"]
  say   = "Number and unit?"
  how   = "One tip on the line screw, the other on bare metal."
}
say "act.prove-line-ground.done" { full = "Line to ground is dead." }
say "act.prove-neutral-ground" {
  full  = "Neutral and ground. {name}"
  short = ["Neutral to ground. Number?"]
  say   = "Number and unit?"
  how   = "One tip on neutral, the other on bare metal."
}
say "act.prove-neutral-ground.done" { full = "Neutral to ground is dead." }
say "act.prove-again" {
  full  = "The live outlet again. One tip in each slot."
  short = ["The outlet again. Number?"]
  say   = "Number and unit?"
  how   = "The same outlet as before. The meter must still show it."
}
say "act.prove-again.done" { full = "Live point measured again." }
say "dead.prove-line-neutral" { full = "At the furnace's own supply wires." }
say "dead.prove-line-ground" { full = "At the furnace's own supply wires." }
say "dead.prove-neutral-ground" { full = "At the furnace's own supply wires." }
say "act.call-on" {
  full  = "Set the thermostat to heat, well above the room."
  short = ["Thermostat up."]
  say   = "Say calling."
  how   = "Mode heat. Raise the setting five degrees over the room."
  ask   = ["calling", "heat", "on"]
}
say "act.call-on.done" { full = "Thermostat calls." }
say "act.call-off" {
  full  = "Turn the thermostat down until it stops calling."
  short = ["Thermostat down."]
  say   = "Say not calling."
  how   = "Lower the setting five degrees under the room."
  ask   = ["not-calling", "off"]
}
say "act.call-off.done" { full = "Thermostat does not call." }
say "act.open-cover" {
  full  = "Take off the {name}."
  short = ["{name} off."]
  say   = "Say panel off."
  how   = "Lift it up, then pull the bottom out. Look for screws."
  ask   = ["panel-off", "open", "off", "out"]
}
say "act.open-cover.done" { full = "Opened: {name}." }
say "act.close-cover" {
  full  = "Put the {name} back, seated all round."
  short = ["{name} on."]
  say   = "Say panel on."
  how   = "Hook the top in, push the bottom home, screws in."
  ask   = ["panel-on", "closed", "on"]
}
say "act.close-cover.done" { full = "Closed: {name}." }
say "act.hold-door" {
  full  = "Press the door switch in with the test clip."
  short = ["Door switch in."]
  say   = "Say held. It comes out right after."
  how   = "The small button that the panel presses. No tape."
  ask   = ["held", "in"]
}
say "act.hold-door.done" { full = "Door switch held in." }
say "act.free-door" {
  full  = "Take the clip off the door switch."
  short = ["Clip off the door switch."]
  say   = "Say free."
  how   = "Pull the clip off. The button must spring out."
  ask   = ["free", "out"]
}
say "act.free-door.done" { full = "Door switch free." }
say "act.lift-wire" {
  full  = "Pull off the wire at {name}."
  short = ["{name} off."]
  say   = "Say unplugged."
  how   = "Hold the metal tab, not the wire. Wiggle, then pull."
  ask   = ["unplugged", "off", "out"]
}
say "act.lift-wire.done" { full = "Wire off: {name}." }
say "act.refit-wire" {
  full  = "Push the wire back on at {name}."
  short = ["{name} back on."]
  say   = "Say connected when a gentle pull holds."
  how   = "Same wire, same place. Push home, then pull gently."
  ask   = ["plugged", "tight", "on", "in"]
}
say "act.refit-wire.done" { full = "Wire back on: {name}." }
say "act.jumper-in" {
  full  = "Clip the test jumper {name}."
  short = ["Jumper in, {name}."]
  say   = "Say jumper in. Stay beside it."
  how   = "Clips on the metal, nothing else touched."
  ask   = ["in"]
}
say "act.jumper-in.done" { full = "Test jumper in: {name}." }
say "act.jumper-out" {
  full  = "Take the test jumper out now."
  short = ["Jumper out."]
  say   = "Say jumper out."
  how   = "Both clips off, the jumper in your pocket."
  ask   = ["out"]
}
say "act.jumper-out.done" { full = "Test jumper out." }
say "act.meter-in" {
  full  = "Red lead in the micro amp hole. Meter in line. {name}"
  short = ["Meter in line. {name}"]
  say   = "Say ready when both clips hold."
  how   = "One clip on the lifted wire, one on its tab."
  ask   = ["ready", "in"]
}
say "act.meter-in.done" { full = "Meter in line." }
say "act.meter-out" {
  full  = "Take both meter clips off."
  short = ["Clips off."]
  say   = "Say out."
  how   = "Plastic only, one clip at a time."
  ask   = ["out", "off"]
}
say "act.meter-out.done" { full = "Meter out of the line." }
say "act.jack-out" {
  full  = "Red lead back in the volts hole."
  short = ["Red lead to volts."]
  say   = "Say done."
  how   = "Out of the hole marked with amps, into the one with volts."
  ask   = ["done", "out", "in"]
}
say "act.jack-out.done" { full = "Red lead back in the volts hole." }
say "act.place-leads" {
  full  = "Clip the leads on now. {name}"
  short = ["Clips on. {name}"]
  say   = "Say ready. The reading lasts only seconds."
  how   = "Clips, so that no hand is needed later."
  ask   = ["ready", "in", "on"]
}
say "act.place-leads.done" { full = "Leads clipped on." }
say "act.discharge" {
  full  = "Discharge the capacitor at {name}. Hold a resistor by its plastic across both terminals, five seconds."
  short = ["Resistor across {name}, five seconds."]
  say   = "Say done."
  how   = "Ten to twenty thousand ohms, two to five watts, with insulated clips. No screwdriver, no bare wire."
  ask   = ["done", "ready"]
}
say "act.discharge.done" { full = "Capacitor discharged at {name}." }
say "act.prove-empty" {
  full  = "Now the volts across the capacitor. One tip on each terminal."
  short = ["Volts across the capacitor. Number?"]
  say   = "Number and unit?"
  how   = "D C volts. It must show less than five."
}
say "act.prove-empty.done" { full = "The capacitor is empty." }
say "empty.good" { full = "It is empty." }
say "empty.charged" { full = "{value}. It still holds a charge. Hands off, discharge it again." }
say "starts.enough" { full = "It was made to light often enough. We stop, so that no gas collects. Leave it off." }
say "relight" {
  full  = "Gas off. Wait {time}, so that gas can clear. Then smell near the floor."
  short = ["Wait {time} more, gas off."]
  say   = "Say ready when the time is up."
  how   = "Gas that did not burn stays low. Five minutes let it go."
  ask   = ["ready"]
}
say "relight.early" { full = "Not yet. The time is not up." }
say "act.note-reset" {
  full  = "The {name} was reset by hand."
  short = ["{name} reset."]
  say   = "Say done when it is pressed in."
  how   = "Press the button until it clicks, once."
  ask   = ["done", "in"]
}
say "act.note-reset.done" { full = "Manual reset noted: {name}." }
say "act.gas-shut" {
  full  = "Turn the gas cock across the pipe."
  short = ["Gas cock across."]
  say   = "Say across."
  how   = "A quarter turn, by hand."
  ask   = ["crosswise", "closed"]
}
say "act.gas-shut.done" { full = "Gas cock shut." }
say "act.gas-open" {
  full  = "Leave the gas cock to the licensed person."
  short = ["Gas cock stays."]
  say   = "Say done."
  how   = "Whoever worked on the gas opens it again."
  ask   = ["done"]
}
say "act.gas-open.done" { full = "Gas cock open." }
say "pause" {
  full  = "All out and off. Take your time."
  short = ["Say ready to go on."]
  say   = "Say ready to go on."
  how   = "Nothing is in place that needs watching."
  ask   = ["ready"]
}
say "must" { full = "This has to come back before anything else. Try once more." }
say "leads" { full = "Red on {red}, black on {black}." }
say "lead" { full = "Red on {red}." }
say "from.to" { full = "from {from} to {to}" }

# ---------------------------------------------------------------- consent

say "consent" {
  full  = "Next you measure with the power on: {what}. Keep one hand away. Stand dry. Nobody touches the switch."
  short = ["With the power on: {what}. Go live, or other way?"]
  say   = "Say go live, or other way."
  how   = "Go live means measuring with power on. Other way avoids it."
  ask   = ["go-live", "other-way"]
}
say "consent.need" { full = "I need: go live, or other way." }

# ---------------------------------------------------------------- power, signal words, hazards

say "power.unknown" {
  full  = "Power is unknown."
  short = ["Power unknown."]
}
say "power.on" {
  full  = "Power is on."
  short = ["Still on."]
}
say "power.off" {
  full  = "Power is off, not proved."
  short = ["Off, not proved."]
}
say "power.proved" {
  full  = "Power is off and proved."
  short = ["Still off."]
}
# Where no supply from the house is inside, the appliance's own control stands for it.
say "plain.power.unknown" { full = "The gas control: not known." }
say "plain.power.on" {
  full  = "The gas control is on."
  short = ["Control on."]
}
say "plain.power.off" {
  full  = "The gas control is off."
  short = ["Control off."]
}
say "plain.power.proved" {
  full  = "The gas control is off."
  short = ["Control off."]
}
say "plain.item.power.on" { full = "gas control on" }
say "plain.item.power.off" { full = "gas control off" }
say "plain.item.power.proved" { full = "gas control off" }
say "plain.item.power.unknown" { full = "gas control not known" }
say "plain.act.power-off" {
  full  = "Turn the control knob to off. The flames go out."
  short = ["Control knob to off."]
  say   = "Say off when all flames are out."
  how   = "Push the knob in a little, turn it to off."
  ask   = ["off"]
}
say "plain.act.power-off.done" { full = "Control switched off." }
say "plain.act.power-on" {
  full  = "Have the control on, as its label says."
  short = ["Control on, by its label."]
  say   = "Say on."
  how   = "Follow the lighting label, step by step, after five minutes of airing."
  ask   = ["on", "lit"]
}
say "plain.act.power-on.done" { full = "Control switched on." }
say "signal.danger" { full = "Danger:" }
say "signal.warning" { full = "Warning:" }
say "signal.caution" { full = "Caution:" }
say "hazard.mains" {
  full  = "house voltage, live. It can kill. Touch insulation only."
  short = ["house voltage, hold the plastic.", "house voltage, one hand.", "house voltage, eyes on the tips.", "house voltage, no bare metal."]
}
say "hazard.gas" {
  full  = "gas inside. No flame, no spark."
  short = ["gas, no flame.", "gas, nose first.", "gas, leave the joints.", "gas, no spark."]
}
say "hazard.capacitor" {
  full  = "capacitor. It can hold a charge with power off."
  short = ["capacitor, treat as charged.", "capacitor, drain it first.", "capacitor, hands off the posts.", "capacitor, measure before touching."]
}
say "hazard.moving" {
  full  = "fan can start without a sign. Keep clear."
  short = ["fan, fingers clear.", "fan, sleeves back.", "fan, it may start.", "fan, stand aside."]
}
say "hazard.hot" {
  full  = "hot metal. Let it cool before you touch."
  short = ["hot metal, wait.", "hot, touch nothing inside.", "hot metal, gloves.", "hot, keep back."]
}
say "hazard.low" {
  full  = "low voltage, live. The fan can start."
  short = ["live, fan can start.", "live, tips only.", "live, no slips.", "live, steady hand."]
}
say "hazard.sharp" {
  full  = "sharp sheet metal edges."
  short = ["sharp edges.", "edges cut.", "mind the edges.", "sharp metal."]
}
say "hazard.door" {
  full  = "door switch. It protects you. Held only while we look."
  short = ["door switch, only while we look.", "door switch, stay beside it.", "door switch, never leave it held.", "door switch, back right after."]
}
say "hazard.jumper" {
  full  = "jumper. It makes the furnace run. Never leave it."
  short = ["jumper, stay beside it.", "jumper, seconds only.", "jumper, eyes on it.", "jumper, out right after."]
}
say "hazard.restart" {
  full  = "restart. Stand aside, tools out, hands clear."
  short = ["restart, stand aside.", "restart, hands clear.", "restart, tools out.", "restart, step back."]
}
say "hazard.hands" {
  full  = "hands inside, sharp edges. Power stays off."
  short = ["hands in, edges sharp.", "hands in, power stays off.", "hands in, no hurry.", "hands in, mind the metal."]
}

# ---------------------------------------------------------------- the proof that it is dead

say "proof.prove-live" { full = "The meter works." }
say "proof.prove-line-neutral" { full = "Dead here." }
say "proof.prove-line-ground" { full = "Dead here too." }
say "proof.prove-neutral-ground" { full = "Dead. Now the live point again." }
say "proof.prove-again" { full = "Live, dead, live." }
say "proof.live" { full = "{value}. It is not dead. Hands out." }
say "proof.nolive" { full = "{value}. No live point there. Try another outlet." }
say "proof.live.fact" { full = "Voltage with the power switched off: {where}, {value}." }
say "proof.stop" { full = "It stays live with the power off. Touch nothing in it. Step away, and call an electrician." }
say "proof.aged" { full = "Dead was proved a while ago. We prove it once more." }
say "proof.broken" { full = "That took a while. The proof starts over." }
say "gate.restart" { full = "That is not as it must be. It is not fixed. We switch it off and stop here." }
say "gate.cause" { full = "That is the reason. The power stays off until it is put right." }
say "gate.fact" { full = "Not as it must be: {check}. Not fixed, power off." }
say "minutes.one" { full = "one minute" }
say "minutes.many" { full = "{n} minutes" }
say "likely" { full = "Most likely, and not proved: {part}, {words}. A technician can prove it." }
say "all.right" { full = "Are you all right? Say I'm okay." }
say "consent.proof" { full = "the house voltage, to prove that the meter works and the power is off" }
say "jacks.volts" { full = "Black lead in the common jack, red lead in the volts jack." }
say "jacks.current" { full = "Black lead in the common jack, red lead in the small current jack." }
say "jacks.none" { full = "The two meter leads stay out." }
say "proof.nometer" { full = "The meter finds no live point, so it proves nothing." }

# ---------------------------------------------------------------- the meter's dial

say "meter.volts-ac" { full = "Meter on A C volts." }
say "meter.volts-dc" { full = "Meter on D C volts." }
say "meter.ohms" { full = "Meter on ohms." }
say "meter.continuity" { full = "Meter on the beep." }
say "meter.capacitance" { full = "Meter on capacitance." }
say "meter.amps-ac" { full = "Clamp on A C amps, around one wire." }
say "meter.microamps-dc" { full = "Meter on D C MICRO amps." }
say "meter.millivolts-dc" { full = "Meter on D C MILLI volts." }
say "meter.manometer" { full = "Pressure gauge, inches of water." }
say "meter.co-meter" { full = "The C O meter." }
say "meter.thermometer" { full = "Thermometer." }
say "number" { full = "Number and unit?" }
say "say.ready" { full = "Say ready." }
say "how.check" { full = "Dial first, then the tips, then hold still and read." }
say "how.none" { full = "Take it slowly. Say where, if it is not clear." }

# ---------------------------------------------------------------- reading back

say "verdict.pass" { full = "Normal." }
say "verdict.likely-pass" { full = "Just inside, close to the limit." }
say "verdict.likely-fail" { full = "Just outside, close to the limit." }
say "verdict.fail" { full = "Not normal." }
say "verdict.invalid" { full = "That proves nothing here." }
say "right.or.different" { full = "{value}. Right, or different?" }
say "this.or.that" { full = "{this}. Or {that}?" }
say "which.unit" { full = "{number}. Which unit: {units}?" }
say "once.more" { full = "{value}. Say it once more." }
say "agreed" { full = "Agreed." }
say "differs" { full = "{value} now. They differ. Measure again." }
say "what.then" { full = "What should it be?" }
say "dead.number" { full = "Say the number that shows, and the unit." }
say "blank.why" { full = "A blank display shows nothing. Wake the meter, read again." }
say "wrong.money" { full = "This place needs an amount of money." }
say "wrong.unit" { full = "This place needs {units}. Look at the dial." }
say "wrong.kind" { full = "Look at the dial: A C or D C?" }
say "too.odd.plate" { full = "{value} is not what such a plate says. Please read it once more." }
say "too.much" { full = "{value} can't be, here." }
say "jumping.ask" { full = "Lowest and highest?" }
say "limit.between" { full = "{low} to {high} {unit}" }
say "limit.low" { full = "at least {low} {unit}" }
say "limit.high" { full = "at most {high} {unit}" }
say "not.listed" { full = "{what} is not on my list. Noted." }

# ---------------------------------------------------------------- not understood, impossible, given up

say "miss.number.one" { full = "I missed the number." }
say "miss.number.two" { full = "One digit at a time, then the unit." }
say "miss.number.three" { full = "Tap it, show the camera, or say skip." }
say "miss.choice.one" { full = "I missed that. {options}?" }
say "miss.choice.two" { full = "Say one of these: {options}." }
say "miss.choice.three" { full = "Tap it on the screen, or say skip." }
say "odd.one" { full = "{why} Again?" }
say "odd.two" { full = "{why} Is there a small m or k before the unit?" }
say "odd.three" { full = "{why} Tap it, or check the dial." }
say "lost.miss" { full = "Leave it. Another way." }
say "lost.odd" { full = "Marked as not valid. On we go." }
say "lost.skip" { full = "Skipped. One answer less to go on." }
say "lost.cant-reach" { full = "Out of reach. Another way." }
say "lost.dont-know" { full = "Not known. That is fine." }
say "unknown" { full = "not known" }
say "unknown.fact" { full = "{check}: not known" }
say "unsure.hazard" { full = "Unsure is not enough here. Look once more." }
say "done.number" { full = "Good. What does it show?" }
say "say.state" { full = "Say the state: {state}." }
say "or" { full = "or" }
say "safety.must" { full = "I cannot go on without this one. Somebody else, perhaps?" }
say "safety.stop" { full = "Without that answer I stop here." }
say "other.meter" { full = "Tap the number, or hold the display to the camera." }

# ---------------------------------------------------------------- what the camera sees

say "eye.agrees" { full = "The camera agrees." }
say "eye.sees" { full = "The camera sees: {value}. Right, or different?" }
say "eye.unit" { full = "The camera sees {number}. Which unit: {units}?" }
say "eye.odd" { full = "The camera sees {value}. {why}" }
say "eye.zero" { full = "The camera sees {value}. Say the number too." }
say "eye.differs" { full = "You: {this}. The camera: {that}. Which?" }
say "eye.none" { full = "No camera. Say or tap what you see." }
say "eye.meter" { full = "Or prop the camera so that it sees the meter." }
say "eye.fire" { full = "Or prop the camera so that it sees the window." }
say "fire.glow" { full = "a glow" }
say "fire.flame" { full = "a flame" }
say "fire.held" { full = "a flame that stays" }
say "fire.out" { full = "a flame that went out" }
say "eye.lamp" { full = "Or point the camera at the light." }
say "eye.photo" { full = "Show the same view to the camera." }
say "eye.plate" { full = "Or show the plate's code to the camera." }
say "eye.wires.same" { full = "The camera finds no difference. Look yourself." }
say "eye.wires.differ" { full = "The camera finds {count} to look at." }
say "wire.another" {
  full  = "{name}: {before} before, {after} now."
  short = ["{name}: {before}, then {after}."]
  say   = "Say put back, same, or on purpose."
  how   = "Look at the first picture. Then at the wire."
  ask   = ["put-back", "same", "on-purpose"]
}
say "wire.gone" {
  full  = "{name}: {before} before, no wire now."
  short = ["{name}: no wire now."]
  say   = "Say put back, same, or on purpose."
  how   = "Look at the first picture. Then at the terminal."
  ask   = ["put-back", "same", "on-purpose"]
}
say "wire.added" {
  full  = "{name}: no wire before, {after} now."
  short = ["{name}: {after} is new."]
  say   = "Say put back, same, or on purpose."
  how   = "Look at the first picture. Then at the terminal."
  ask   = ["put-back", "same", "on-purpose"]
}
say "wire.differs" {
  full  = "{name}: it looks different now."
  short = ["{name}: different."]
  say   = "Say put back, same, or on purpose."
  how   = "Look at the first picture. Then at the terminal."
  ask   = ["put-back", "same", "on-purpose"]
}
say "wire.hidden" {
  full  = "{name}: the camera cannot see it now."
  short = ["{name}: hidden."]
  say   = "Look yourself. Say put back, same, or on purpose."
  how   = "Look at the first picture. Then at the terminal."
  ask   = ["put-back", "same", "on-purpose"]
}
say "wire.put-back" { full = "{name}: put back" }
say "wire.same" { full = "{name}: as before, the camera was wrong" }
say "wire.on-purpose" { full = "{name}: changed on purpose" }
say "wires.compared" { full = "Wires compared after the work: as before" }
say "open.unlike" { full = "{name} not as before" }

# ---------------------------------------------------------------- waiting

say "still.here" {
  full  = "Still here. Take your time."
  short = ["No hurry. I am listening.", "Here when it suits."]
}
say "silent.number" { full = "Say the number, or: can't reach." }
say "silent.choice" { full = "Say {options}, or: don't know." }
say "wait.quietly" { full = "I wait quietly. Say ready." }
say "holding" { full = "Holding. Say ready to go on." }
say "hold.refused" { full = "First out: {what}. Then we pause." }
say "hold.live" { full = "Power is on. First off, then we pause." }
say "resumed" { full = "On we go." }
say "timed.still" { full = "Still in place: {what}." }
say "timed.over" { full = "Time is up. Out now: {what}." }
say "resume.unknown" { full = "Welcome back. I treat power as on." }
say "resume.soon" { full = "Welcome back. {power}" }
say "new.day" { full = "New day. Earlier readings may have changed." }
say "loud" { full = "It is loud. Come closer, or wait for the blower." }
say "battery.one" { full = "Battery at twenty percent." }
say "battery.two" { full = "Battery at ten percent. Plug in, or we close up." }
say "battery.three" { full = "Battery almost empty. We close up now." }
say "notice.speech-off" { full = "Speech is off. Touch and keys do everything." }
say "notice.sound-off" { full = "No sound. Read the screen." }
say "notice.mic-off" { full = "The microphone is off. Touch and keys do everything." }
say "notice.silenced" { full = "The phone is silenced. Read the screen." }

# ---------------------------------------------------------------- commands

say "slower" { full = "Slower from here." }
say "shorter" { full = "Short from here. Cautions stay." }
say "where.none" { full = "It is shown on the screen." }
say "expected.later" { full = "Right after, so it can't sway the reading." }
say "shortcut" { full = "No. That part keeps fire in. I can test it another way." }
say "help" { full = "To hear it again, say repeat. To pause, hold on. To end, finish." }
say "changed" { full = "hands out. Power is unknown now." }
say "changed.fact" { full = "Something happened that was not asked for." }
say "missed" { full = "The next trial. {left} left." }
say "undo.none" { full = "There is nothing to take back." }
say "undo.done" { full = "Taken back: {what}." }
say "finish" { full = "We leave it safe first." }
say "finish.already" { full = "We are closing up already." }
say "person" { full = "Read this to whoever comes. {words}" }
say "howlong" { full = "Stage {stage} of {all}." }
say "howlong.cycle" { full = "A full cycle takes about ten minutes." }
say "last.fact" { full = "Last: {fact}" }
say "what.if" { full = "Either answer helps. I say what it means right after." }
say "suspect.none" { full = "Too early. Nothing stands out yet." }
say "not.proved" { full = "Not proved yet." }
say "proved.by" { full = "Proved: {proofs}." }
say "cost.early" { full = "Too early for a price." }
say "why.proof" { full = "A meter that died would also show zero." }
say "why.act" { full = "It opens the way to: {check}." }
say "why.leave" { full = "It leaves the place as it was." }
say "why.check" { full = "It narrows down what is wrong: {check}." }
say "why.tells" { full = "It tells {one} from {other}." }
say "why.second" { full = "No part is named on one reading. It is evidence about the {part}." }
say "why.doubt" { full = "One answer does not fit the others: {check}." }
say "why.minutes" { full = "About {minutes} minutes" }
say "what.leads" { full = "One answer points to {one}, the other to {other}." }
say "doubt.other" { full = "One answer does not fit: {check}. I test it another way." }
say "doubt" { full = "One answer does not fit: {check}. Once more, to be sure." }
say "why.stage.safety" { full = "It must be safe to stay here." }
say "why.stage.story" { full = "The story often names the part." }
say "why.stage.plate" { full = "The plate beats every general number." }
say "why.stage.light" { full = "Power cycling may wipe the code." }
say "why.stage.free" { full = "It costs nothing and often is the cause." }
say "why.stage.watch" { full = "The last good step shows where to look." }
say "why.stage.meter" { full = "A meter must be proved before it is believed." }
say "why.stage.plan" { full = "It narrows down what is wrong." }
say "why.stage.proof" { full = "A part needs a second, independent proof." }
say "why.stage.cause" { full = "The cause may kill the new part too." }
say "why.stage.cost" { full = "It is your money and your house." }
say "why.stage.part" { full = "A wrong part can be dangerous." }
say "why.stage.swap" { full = "One wire at a time leaves no mistake." }
say "why.stage.restart" { full = "Only a full cycle proves it." }
say "why.stage.refit" { full = "The place is left as it should be." }
say "why.stage.record" { full = "The record lets others check it." }

# ---------------------------------------------------------------- stages

say "stage.safety" { full = "Safe to stay" }
say "stage.story" { full = "The story" }
say "stage.plate" { full = "The plate" }
say "stage.light" { full = "The status light" }
say "stage.free" { full = "Free causes" }
say "stage.watch" { full = "Watch one start" }
say "stage.meter" { full = "Prove the meter" }
say "stage.plan" { full = "Checks" }
say "stage.proof" { full = "Second evidence" }
say "stage.cause" { full = "Why it failed" }
say "stage.cost" { full = "What it costs" }
say "stage.part" { full = "The right part" }
say "stage.swap" { full = "The repair" }
say "stage.restart" { full = "Safe restart" }
say "stage.refit" { full = "Everything back" }
say "stage.record" { full = "The record" }

# ---------------------------------------------------------------- verdict, cost, repair

say "verdict" { full = "{part}: {words}." }
say "verdict.passes" { full = "It works now and fails at some starts. I name no part. When it fails, touch nothing and start with me again." }
say "rest" { full = "It comes and goes. Now it works, so I watch one more start." }
say "verdict.nothing" { full = "Nothing is wrong with it. It works as it should." }
say "unresolved" { full = "I have no proof for any part. I name none." }
say "stop" { full = "I stop here. {why}" }
say "cost.nothing" { full = "It costs only minutes." }
say "cost.part" { full = "The part costs {range}." }
say "cost.unknown" { full = "I have no price for the part." }
say "cost.minutes" { full = "The work takes {range} minutes." }
say "cost.callout" { full = "A visit costs {price}." }
say "cost.old" { full = "At {age} years, ask what a new one costs." }
say "call.again" { full = "No call at the board. The thermostat once more." }
say "callout" {
  full  = "What does a visit of a technician cost there?"
  short = ["Price of a visit?"]
  say   = "Say an amount, or don't know."
  how   = "A rough amount in your own money is enough."
}
say "age" {
  full  = "How many years old is it?"
  short = ["Age in years?"]
  say   = "Say a number, or don't know."
  how   = "The plate often shows the year of making."
}
say "age.back" { full = "{years} years." }
say "decide" {
  full  = "{cost}"
  short = ["Fix it, call someone, or stop here?"]
  say   = "Fix it, call someone, or stop here?"
  how   = "Fix it means now, by you. All three are good answers."
  ask   = ["fix-it", "call-someone", "stop-here"]
}
say "match" {
  full  = "The new {part} must match: {list}."
  short = ["New part: {list}."]
  say   = "Say same, different, or not yet."
  how   = "Read both labels. Looking alike is not enough."
  ask   = ["same", "different", "not-yet"]
}
say "match.good" { full = "It matches." }
say "match.later" { full = "Then we close up until the part is here." }
say "match.wrong" { full = "Do not fit it. We close up until the right part." }
say "photo.before" {
  full  = "Photo of the wires now, before anything moves."
  short = ["Photo before."]
  say   = "Take it, or read the terminals aloud and say listed."
  how   = "All wires and their terminals in one picture, from the front."
  ask   = ["photo-taken", "listed"]
}
say "photo.after" {
  full  = "Compare every wire with the photo or the list."
  short = ["Compare the wires."]
  say   = "Say same, or different."
  how   = "Terminal by terminal, colour by colour."
  ask   = ["same", "different"]
}
say "photo.differs" { full = "Then each wire once more." }
say "photo.note" { full = "Photo: {id}" }
say "swap" {
  full  = "{act}"
  short = ["{act}"]
  say   = "Say done."
  how   = "Only this one, then say done."
  ask   = ["done"]
}
say "step.done" { full = "Good." }
say "mended" { full = "Done: {repair}." }
say "unconfirmed" { full = "The check that showed the fault was not repeated." }
say "notfixed" { full = "That was not all of it. We look on." }
say "cycle.first" {
  full  = "Watch it start: fan, flame, then warm air."
  short = ["Watch it start."]
  say   = "Running, or stopped early?"
  how   = "Say running when the warm air comes. It goes on burning."
  ask   = ["running", "stops-early", "no-start", "runs-no-heat"]
}
say "cycle.second" {
  full  = "Thermostat down until flame and fan stop. Then up, a second whole cycle."
  short = ["Down, then a second cycle."]
  say   = "Full cycle, or stopped early?"
  how   = "The same again. It must repeat to be proved."
  ask   = ["full-cycle", "stops-early", "no-start", "runs-no-heat"]
}
say "cycle.one" { full = "It runs." }
say "cycle.two" { full = "Two full cycles. Heat is back." }

# ---------------------------------------------------------------- leaving the place

say "items" {
  full  = "As it is now: {list}."
  short = ["Now: {list}."]
  say   = "Say same, or different."
  how   = "Look at each one. If one differs, say different."
  ask   = ["same", "different"]
}
say "items.good" { full = "Everything is back." }
say "items.again" { full = "Then each one again." }
say "items.doubt" { full = "The wires could not be checked again." }
say "item.wire" { full = "wire at {name} connected" }
say "item.jumper" { full = "test jumper out" }
say "item.cover" { full = "{name} on" }
say "item.door" { full = "door switch free" }
say "item.jack" { full = "red lead in the volts hole" }
say "item.reset" { full = "{name} reset" }
say "item.power.on" { full = "power on" }
say "item.power.off" { full = "power off" }
say "item.power.proved" { full = "power off" }
say "item.power.unknown" { full = "power not known" }
say "open.jumper" { full = "test jumper in" }
say "open.door" { full = "door switch held" }
say "open.meter" { full = "meter in the line" }
say "open.jack" { full = "red lead in the current hole" }
say "open.wire" { full = "wire off at {name}" }
say "open.cover" { full = "{name} open" }
say "open.reset" { full = "{name} reset by hand" }
say "open.power" { full = "power not known to be off" }
say "left.open" { full = "left as it is: {what}. Keep everybody away and call." }
say "handover" {
  full  = "{words}"
  short = ["Read it to whoever comes."]
  say   = "Say done when it is noted."
  how   = "It stays on the screen. Read it to whoever comes."
  ask   = ["done", "right-value"]
}
say "handover.story" { full = "Told: {story}" }
say "handover.open" { full = "Not put back: {what}" }
say "handover.closed" { full = "Covers on, nothing bypassed." }
say "handover.emergency" { full = "Emergency: {what}, about {time} ago." }
say "handover.out" { full = "Everybody is said to be outside." }
say "handover.in-doubt" { full = "It is not known whether everybody is outside." }
say "handover.gas-open" { full = "The gas was not shut off." }
say "handover.stay-out" { full = "Nobody goes back in until the house is found safe." }
say "handover.call.emergency" { full = "Call nine one one, and the gas company, from outside." }
say "handover.call.electrician" { full = "Call a licensed electrician. Keep everybody away from it." }
say "handover.call" { full = "Call a licensed heating technician." }
say "end.fixed" { full = "Heat is back and everything is in place. The record is saved." }
say "end.nothing-wrong" { full = "It works as it should. The record is saved." }
say "end.stopped" { full = "Left safe. Call as said. The record is saved." }
say "end.unresolved" { full = "Left safe, cause not found. The record is saved." }
say "end.handed-over" { full = "Left safe for somebody else. The record is saved." }
say "end.stopped-by-person" { full = "Left safe as you wished. The record is saved." }
say "end.stopped-after-emergency" { full = "We stop here. Have it looked at before anybody uses it. The record is saved." }
say "end.part-awaited" { full = "Left safe until the part is here. The record is saved." }
say "end.given-up" { full = "Left safe. The record is saved." }
say "end.battery" { full = "Left safe. The record is saved." }
say "end.left-open" { full = "Ended with things left open. The record says which." }
say "end.still-live" { full = "Stopped. It is still live. Touch nothing, and call an electrician." }
say "end.emergency" { full = "Stay outside. The record is saved." }

# ---------------------------------------------------------------- emergencies: first the act, then the reason

# The number to call, as spoken and as written. It is the place's own; another country has another file.
say "emergency.number" { full = "nine one one" }
say "emergency.digits" { full = "911" }
say "alarm.gas" { full = "Leave now. Touch no switch." }
say "alarm.gas.then" { full = "A spark can light it. Take everyone. Call the utility or nine one one from far outside." }
say "alarm.co" { full = "Everyone outside, now." }
say "alarm.co.then" { full = "It may be carbon monoxide. Count heads. Call nine one one. Nobody goes back in." }
say "alarm.ill" { full = "Everyone outside, now." }
say "alarm.ill.then" { full = "The air may be bad. Count heads. Call nine one one. Nobody goes back in." }
say "alarm.fire" { full = "Get out. Take everyone along." }
say "alarm.fire.then" { full = "Close doors behind you. Call nine one one outside." }
say "alarm.blast" { full = "Get out. Take everyone along." }
say "alarm.blast.then" { full = "There may be gas. Touch no switch. Call nine one one from far outside." }
say "alarm.faint" { full = "Call nine one one. Everyone outside." }
say "alarm.faint.then" { full = "Touch nobody who is stuck to a wire. Breaker off first. Carry them out only if you feel well. Stay on with nine one one." }
say "alarm.any" { full = "Get out. Take everyone along." }
say "alarm.any.then" { full = "Call nine one one from outside. Say what happened." }
say "alarm.shock" { full = "Step back. Touch nothing." }
say "alarm.shock.then" { full = "Don't grab anyone who is stuck. Breaker off. Call nine one one, even if you feel fine." }
say "alarm.spark" { full = "Step back. Don't restart it." }
say "alarm.spark.then" { full = "Switch off only if it is on your way." }
say "alarm.water" { full = "Stop. Stay off the wet floor." }
say "alarm.water.then" { full = "Breaker off, with dry feet only." }
say "alarm.injury" { full = "Hands out. Help yourself first." }
say "alarm.injury.then" { full = "Call nine one one, or say I'm okay." }
say "alarm.child" { full = "Hands out. Keep them away." }
say "alarm.child.then" { full = "Say clear when the room is clear." }
say "alarm.silent" { full = "Answer me. Are you all right?" }
say "alarm.silent.then" { full = "Whoever hears this: do not touch anyone who is stuck. Breaker off first. Then call nine one one. Say I'm okay if all is well." }
say "alarm.stays" { full = "Switch the breaker off if you can reach it safely. Leave everything else as it is. Touch nothing, and call an electrician." }
say "alarm.after" { full = "Say I'm okay, or clear, when it is over." }
say "alarm.over" { full = "Good. Now we leave it safe." }
say "alarm.out" { full = "Good. Stay out until somebody says it is safe." }
say "alarm.false" { full = "Taken as a false alarm." }
say "alarm.fact" { full = "Emergency: {class}" }
say "hazard.of.gas" { full = "Gas odour" }
say "hazard.of.co" { full = "The alarm" }
say "hazard.of.ill" { full = "Somebody ill" }
say "hazard.of.fire" { full = "Fire or smoke" }
say "hazard.of.blast" { full = "An explosion" }
say "hazard.of.faint" { full = "Somebody passed out" }
say "hazard.of.any" { full = "A danger" }
say "hazard.of.shock" { full = "A shock" }
say "hazard.of.spark" { full = "A spark or flash" }
say "hazard.of.water" { full = "Water" }
say "hazard.of.injury" { full = "Somebody hurt" }
say "hazard.of.silent" { full = "Nobody answers" }
say "hazard.of.child" { full = "A child or animal near" }
say "right.now" { full = "{what}, right now? Say leave now, or none." }
say "none.back" { full = "None right now." }

# ---------------------------------------------------------------- what the planner says of its choice

say "suspect.nothing" { full = "nothing is wrong" }
say "suspect.unknown" { full = "something I do not know about" }
say "why.again" { full = "One answer does not fit the others." }
say "why.missing" { full = "Still to be shown: {proof}." }
say "sure.missing" { full = "Still to be shown: {proof}." }
say "sure.check" { full = "Another answer to this would change it: {check}." }
