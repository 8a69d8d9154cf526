# What the guide says, in plain American English: whole sentences of at most 16 words, one thought each, as a frightened homeowner would understand them.
# They hold no symbol that a voice cannot speak; numbers are words here and digits on the screen. {name} is a slot. "full" is the long form and comes
# first; "short" forms follow in turn; "say" tells what to answer; "how" is for the question how; "ask" lists the option ids that answer, the
# hoped-for one first; "labels" are these answers in the words of the question, and what stands on their buttons; "also" are other answers that are understood.

lang = "en"

# ---------------------------------------------------------------- beginning, questions of every job

say "hello" { full = "I will guide you, one small step at a time. Say hold on or emergency at any time." }
say "story" {
  full  = "Tell me what the furnace does. When did it start?"
  short = ["What does it do, and since when?"]
  say   = "One sentence is enough."
  how   = "Tell me what runs, what stops, and what changed before it."
}
say "watch" { full = "Now watch one start from the beginning. Tell me what you see, as it happens." }
say "watch.again" { full = "Turn the thermostat down. Wait one minute. Then turn it up again. Tell me what you see, as it happens." }
say "watch.how" { full = "Say each thing when it comes. When nothing more happens, say that's all." }
say "watch.done" { full = "That's all" }
say "offer" {
  full  = "We are missing some answers. We can keep going with what you see and hear. Or we stop here, with a summary for a technician."
  short = ["Keep going, or stop here?"]
  say   = "Keep going, or stop here?"
  how   = "If you stop here, everything goes back in place. Then I read out what we found."
  ask   = ["keep-going", "stop-here"]
  labels = ["Keep going", "Stop here"]
}
say "offer.looks" {
  full  = "Then no hand goes inside. We can keep going with what you see and hear. Or we stop here, with a summary for a technician."
  short = ["Keep going, or stop here?"]
  say   = "Keep going, or stop here?"
  how   = "Without a meter we can find what shows from outside. A technician can do the rest."
  ask   = ["keep-going", "stop-here"]
  labels = ["Keep going", "Stop here"]
}
say "look.again" { full = "You said: {what}. That decides a lot, so please look once more." }
say "look.which" { full = "Which is it: {options}?" }
say "mend.now" { full = "We can fix that now: {repair}." }
say "story.thanks" { full = "Thank you. I have noted that." }
say "story.fact" { full = "Story: {story}" }
say "plate.without" { full = "Then we go on without the label." }
say "plate" {
  full  = "Look at the rating plate. {ask}"
  short = ["{ask}"]
  say   = "If you cannot find it, say: don't know."
  how   = "The rating plate is a metal or paper label inside the panel."
}
say "meter.kind" {
  full   = "Look at the front of your meter."
  short  = ["Which meter do you have?"]
  how    = "The words true R M S are printed on the front of some meters."
  ask    = ["true-rms", "plain-meter", "no-meter"]
  say    = "Is it true R M S, a plain meter, or no meter?"
  labels = ["True R M S", "A plain meter", "No meter"]
}
say "meter.category" {
  full   = "Look at the print beside the meter's jacks, and on the leads. Find category three or four, with three hundred volts or more."
  short  = ["Find category three or four on the meter and the leads."]
  say    = "Is it on the meter and on both leads?"
  how    = "It says CAT with three or four strokes, and volts. It must be on the meter and on each lead."
  ask    = ["rated", "not-rated"]
  labels = ["Yes", "No"]
}
say "meter.not-rated" { full = "Then this meter stays away from house voltage, and your hands stay out. We look and listen." }
say "license" {
  full   = "I ask this because some work is only for licensed people."
  short  = ["Some work is only for licensed people."]
  say    = "Are you licensed for gas or heating work where you live?"
  how    = "A license comes from your state, city or county. If you are not sure, say no."
  ask    = ["no", "yes"]
  labels = ["No", "Yes"]
}
say "license.fact" { full = "Licensed for gas or heating work: {answer}" }
say "meter.modest" { full = "I will treat it as a simple meter." }
say "meter.none" { full = "Nobody reaches inside without a meter to prove the power is off. Leave it closed." }
say "meter.leads" {
  full   = "Look along both meter leads and their tips."
  short  = ["Look at both meter leads."]
  say    = "Are the leads good or damaged?"
  how    = "Bend each lead gently. No bare metal may show along it."
  ask    = ["good", "bad"]
  also   = { bad = ["cracked", "split", "bare"] }
  labels = ["Good", "Damaged"]
}
say "meter.short" {
  full  = "Hold the two metal tips together, away from the furnace."
  short = ["Hold the two tips together."]
  say   = "What does the meter show?"
  how   = "Put the red lead in the jack for volts and ohms. Turn the dial to ohms."
}
say "leads.good" { full = "The meter leads are good." }
say "leads.open" { full = "{value} is too much for leads alone. Push the plugs all the way in. Then try again." }
say "leads.bad" { full = "These leads are not safe to trust. Get good ones before you measure." }
say "leads.unproved" { full = "The meter and its leads were not tested." }

# ---------------------------------------------------------------- acts; .done is how they stand in the record

say "act.power-off" {
  full   = "Turn off the furnace switch. Then turn off its breaker."
  short  = ["Turn off the switch and the breaker."]
  say    = "When both are off, say: both are off."
  how    = "The switch is on the furnace or near it. The breaker is in the electrical panel."
  ask    = ["off"]
  labels = ["Both are off"]
}
say "act.power-off.done" { full = "The power was switched off." }
say "act.power-on" {
  full   = "Stand clear. Turn on the breaker. Then turn on the furnace switch."
  short  = ["Stand clear. Turn on the breaker and the switch."]
  say    = "When both are on, say: both are on."
  how    = "Take your hands and tools out first. Turn on the breaker, then the furnace switch."
  ask    = ["on"]
  labels = ["Both are on"]
}
say "act.power-on.done" { full = "The power was switched on." }
say "act.prove-live" {
  full  = "Find a wall outlet that works. Put one meter tip in each slot."
  short = ["Put one tip in each slot of the outlet."]
  say   = "What number and unit does the meter show?"
  how   = "Plug in a lamp first. It shows you that the outlet works."
}
say "act.prove-live.done" { full = "The working outlet was measured." }
say "act.prove-line-neutral" {
  full  = "Treat it as if the power were on. {name}"
  short = ["{name}"]
  say   = "What number and unit does the meter show?"
  how   = "Use one hand. Hold one tip on the black power wire. Hold the other on the white neutral wire."
}
say "act.prove-line-neutral.done" { full = "No voltage from the power wire to neutral." }
say "act.prove-line-ground" {
  full  = "Now test to bare metal. {name}"
  short = ["{name}"]
  say   = "What number and unit does the meter show?"
  how   = "Hold one tip on the black power wire. Hold the other on bare metal."
}
say "act.prove-line-ground.done" { full = "No voltage from the power wire to bare metal." }
say "act.prove-neutral-ground" {
  full  = "Now test the neutral wire. {name}"
  short = ["{name}"]
  say   = "What number and unit does the meter show?"
  how   = "Hold one tip on the white neutral wire. Hold the other on bare metal."
}
say "act.prove-neutral-ground.done" { full = "No voltage from neutral to bare metal." }
say "act.prove-again" {
  full  = "Go back to the working outlet. Put one tip in each slot again."
  short = ["Test the same outlet again."]
  say   = "What number and unit does the meter show?"
  how   = "Use the same outlet as before. This shows that the meter still works."
}
say "act.prove-again.done" { full = "The working outlet was measured again." }
say "dead.prove-line-neutral" { full = "Measure at the furnace's own supply wires, black to white." }
say "dead.prove-line-ground" { full = "Measure at the furnace's own supply wires, black to bare metal." }
say "dead.prove-neutral-ground" { full = "Measure at the furnace's own supply wires, white to bare metal." }
say "act.call-on" {
  full   = "Set the thermostat to heat. Turn it well above the room temperature."
  short  = ["Turn the thermostat up."]
  say    = "Then say: it is turned up."
  how    = "Choose heat. Set it five degrees above the room temperature."
  ask    = ["calling"]
  labels = ["It is turned up"]
  also   = { calling = ["heat", "on"] }
}
say "act.call-on.done" { full = "The thermostat was turned up." }
say "act.call-off" {
  full   = "Turn the thermostat down, well below the room temperature."
  short  = ["Turn the thermostat down."]
  say    = "Then say: it is turned down."
  how    = "Set it five degrees below the room temperature."
  ask    = ["not-calling"]
  labels = ["It is turned down"]
  also   = { not-calling = ["off"] }
}
say "act.call-off.done" { full = "The thermostat was turned down." }
say "act.open-cover" {
  full   = "Take off the {name}."
  short  = ["Take off the {name}."]
  say    = "Then say: it is off."
  how    = "Look for screws first. Then lift the cover and pull the bottom out."
  ask    = ["panel-off"]
  labels = ["It is off"]
  also   = { panel-off = ["open", "off", "out"] }
}
say "act.open-cover.done" { full = "Opened: {name}." }
say "act.close-cover" {
  full   = "Put the {name} back on. Make sure it sits flat all around."
  short  = ["Put the {name} back on."]
  say    = "Then say: it is back on."
  how    = "Hook the top in. Push the bottom in. Put the screws back."
  ask    = ["panel-on"]
  labels = ["It is back on"]
  also   = { panel-on = ["closed", "on"] }
}
say "act.close-cover.done" { full = "Closed: {name}." }
say "act.hold-door" {
  full   = "Press the door switch in with the test clip."
  short  = ["Press the door switch in with the clip."]
  say    = "Then say: it is held in. It comes out right after."
  how    = "It is the small button that the panel presses. Use the clip. No tape."
  ask    = ["held"]
  labels = ["It is held in"]
  also   = { held = ["in"] }
}
say "act.hold-door.done" { full = "The door switch was held in." }
say "act.free-door" {
  full   = "Take the clip off the door switch."
  short  = ["Take the clip off the door switch."]
  say    = "Then say: the clip is off."
  how    = "Pull the clip off. The button must spring out."
  ask    = ["free"]
  labels = ["The clip is off"]
  also   = { free = ["out"] }
}
say "act.free-door.done" { full = "The door switch is free." }
say "act.lift-wire" {
  full   = "Disconnect the wire at the {name}."
  short  = ["Disconnect the wire at the {name}."]
  say    = "Then say: it is disconnected."
  how    = "Hold the metal connector, not the wire. Wiggle it and pull. If a plug is there, pull its two halves apart."
  ask    = ["unplugged"]
  labels = ["It is disconnected"]
  also   = { unplugged = ["off", "out"] }
}
say "act.lift-wire.done" { full = "Wire disconnected: {name}." }
say "act.refit-wire" {
  full   = "Connect the wire at the {name} again."
  short  = ["Connect the wire at the {name} again."]
  say    = "Pull it gently. If it holds, say: it is connected."
  how    = "Put the same wire back in the same place. Push it all the way on. Then pull gently."
  ask    = ["plugged"]
  labels = ["It is connected"]
  also   = { plugged = ["tight", "on", "in"] }
}
say "act.refit-wire.done" { full = "Wire connected again: {name}." }
say "act.jumper-in" {
  full   = "Clip the test jumper wire {name}."
  short  = ["Clip the test jumper {name}."]
  say    = "Stay beside it. Then say: the jumper is in."
  how    = "Put the clips on the metal. Touch nothing else."
  ask    = ["in"]
  labels = ["The jumper is in"]
}
say "act.jumper-in.done" { full = "Test jumper in: {name}." }
say "act.jumper-out" {
  full   = "Take the test jumper wire out now."
  short  = ["Take the jumper out now."]
  say    = "Then say: the jumper is out."
  how    = "Take both clips off. Put the jumper in your pocket."
  ask    = ["out"]
  labels = ["The jumper is out"]
}
say "act.jumper-out.done" { full = "The test jumper is out." }
say "act.meter-in" {
  full   = "Connect the meter between the wire and its connector. {name}"
  short  = ["Connect the meter between the wire and its connector. {name}"]
  say    = "When both clips hold, say: the meter is in."
  how    = "Put one clip on the loose wire. Put the other on the connector it came off."
  ask    = ["in"]
  labels = ["The meter is in"]
  also   = { in = ["ready"] }
}
say "act.meter-in.done" { full = "The meter was connected in the wire." }
say "act.meter-out" {
  full   = "Take both meter clips off."
  short  = ["Take both clips off."]
  say    = "Then say: the clips are off."
  how    = "Touch only the plastic. Take off one clip at a time."
  ask    = ["out"]
  labels = ["The clips are off"]
  also   = { out = ["off"] }
}
say "act.meter-out.done" { full = "The meter is out of the wire." }
say "act.jack-out" {
  full   = "Move the red meter lead back to the volts jack."
  short  = ["Red lead back to the volts jack."]
  say    = "Then say: it is in the volts jack."
  how    = "Pull it out of the jack marked for current. Push it into the jack marked for volts."
  ask    = ["done"]
  labels = ["It is in the volts jack"]
  also   = { done = ["out", "in"] }
}
say "act.jack-out.done" { full = "The red lead is back in the volts jack." }
say "act.place-leads" {
  full   = "Clip the meter leads on now. {name}"
  short  = ["Clip the leads on. {name}"]
  say    = "The reading lasts only seconds. When they hold, say: the clips are on."
  how    = "Use clips, so that you do not need your hands later."
  ask    = ["on"]
  labels = ["The clips are on"]
  also   = { on = ["ready", "in"] }
}
say "act.place-leads.done" { full = "The meter leads were clipped on." }
say "act.discharge" {
  full   = "Empty the charge at the {name}. Hold a resistor by its plastic across both terminals for five seconds."
  short  = ["Hold the resistor across the {name} for five seconds."]
  say    = "Then say: done."
  how    = "Use ten to twenty thousand ohms, two to five watts, with insulated clips. Use no screwdriver and no bare wire."
  ask    = ["done"]
  labels = ["Done"]
  also   = { done = ["ready"] }
}
say "act.discharge.done" { full = "Capacitor emptied at {name}." }
say "act.prove-empty" {
  full  = "Now measure the volts across the capacitor. Put one tip on each terminal."
  short = ["Measure the volts across the capacitor."]
  say   = "What number and unit does the meter show?"
  how   = "Use D C volts. It must show less than five volts."
}
say "act.prove-empty.done" { full = "The capacitor is empty." }
say "empty.good" { full = "The capacitor is empty." }
say "empty.charged" { full = "{value}. The capacitor still holds a charge. Keep your hands off. Empty it again." }
say "starts.enough" { full = "It has tried to light often enough. We stop, so that no gas can collect. Leave it off." }
say "relight" {
  full   = "Keep the gas off. Wait {time}, so that gas can clear. Then smell near the floor."
  short  = ["Keep the gas off. Wait {time} more."]
  say    = "When the time is up, say: the time is up."
  how    = "Gas that did not burn stays low. Five minutes let it clear."
  ask    = ["ready"]
  labels = ["The time is up"]
}
say "relight.early" { full = "Please wait. The time is not up yet." }
say "act.note-reset" {
  full   = "Press the button of the {name} once, until it clicks."
  short  = ["Press the button of the {name} once."]
  say    = "Then say: it is pressed in."
  how    = "Press the small button until you feel a click. Press it only once."
  ask    = ["done"]
  labels = ["It is pressed in"]
  also   = { done = ["in"] }
}
say "act.note-reset.done" { full = "Reset by hand: {name}." }
say "act.gas-shut" {
  full   = "Turn the handle of the gas cock across the pipe. That closes the gas."
  short  = ["Turn the gas handle across the pipe."]
  say    = "Then say: it is across the pipe."
  how    = "Turn it a quarter turn, by hand."
  ask    = ["crosswise"]
  labels = ["It is across the pipe"]
  also   = { crosswise = ["closed"] }
}
say "act.gas-shut.done" { full = "The gas cock was closed." }
say "act.gas-open" {
  full   = "Leave the gas cock to the licensed person."
  short  = ["Leave the gas cock alone."]
  say    = "Then say: I leave it alone."
  how    = "The person who works on the gas opens it again."
  ask    = ["done"]
  labels = ["I leave it alone"]
}
say "act.gas-open.done" { full = "The gas cock is open." }
say "pause" {
  full   = "Everything is out and off. Take your time."
  short  = ["Take your time."]
  say    = "To go on, say: ready."
  how    = "Nothing is in place that needs watching."
  ask    = ["ready"]
  labels = ["Ready"]
}
say "must" { full = "This has to come back before anything else. Please try once more." }
say "leads" { full = "Put the red tip on the {red}. Put the black tip on the {black}." }
say "lead" { full = "Put the red tip on the {red}." }
say "from.to" { full = "from the {from} to the {to}" }

# ---------------------------------------------------------------- consent

say "consent" {
  full   = "Next: {what}. You will measure inside with the power on, or where it may be on. Keep one hand away. Stand on a dry floor. Nobody else touches the switch."
  short  = ["Next, with the power on: {what}. Keep one hand away."]
  say    = "Yes, with power on, or no, find another way?"
  how    = "You may always say no. Then I look for a way with the power off."
  ask    = ["go-live", "other-way"]
  labels = ["Yes, with power on", "No, find another way"]
}
say "consent.need" { full = "Please say: yes, with power on. Or say: no, find another way." }

# ---------------------------------------------------------------- power, signal words, hazards

say "power.unknown" {
  full  = "We do not know if the power is on."
  short = ["Power not known."]
}
say "power.on" {
  full  = "The power is on."
  short = ["Power is still on."]
}
say "power.off" {
  full  = "The power is switched off, but not tested yet."
  short = ["Off, but not tested."]
}
say "power.proved" {
  full  = "The power is off, and we proved it."
  short = ["Power is still off."]
}
# Where no supply from the house is inside, the appliance's own control stands for it.
say "plain.power.unknown" { full = "We do not know if the gas control is on." }
say "plain.power.on" {
  full  = "The gas control is on."
  short = ["The control is on."]
}
say "plain.power.off" {
  full  = "The gas control is off."
  short = ["The control is off."]
}
say "plain.power.proved" {
  full  = "The gas control is off."
  short = ["The control is off."]
}
say "plain.item.power.on" { full = "the gas control is on" }
say "plain.item.power.off" { full = "the gas control is off" }
say "plain.item.power.proved" { full = "the gas control is off" }
say "plain.item.power.unknown" { full = "it is not known if the gas control is on" }
say "plain.act.power-off" {
  full   = "Turn the control knob to off. The flames go out."
  short  = ["Turn the control knob to off."]
  say    = "When you see no flame, say: no flame is left."
  how    = "Push the knob in a little. Then turn it to off."
  ask    = ["off"]
  labels = ["No flame is left"]
}
say "plain.act.power-off.done" { full = "The gas control was turned off." }
say "plain.act.power-on" {
  full   = "Light the pilot as the lighting label says. Then turn the control to on."
  short  = ["Light it as the label says. Then turn it to on."]
  say    = "Then say: it is on."
  how    = "Follow the lighting label, step by step. Let the gas clear for five minutes first."
  ask    = ["on"]
  also   = { on = ["lit"] }
  labels = ["It is on"]
}
say "plain.act.power-on.done" { full = "The gas control was turned on." }
say "signal.danger" { full = "Danger:" }
say "signal.warning" { full = "Warning:" }
say "signal.caution" { full = "Caution:" }
say "hazard.mains" {
  full  = "house voltage is live here. It can kill. Touch only the plastic."
  short = ["house voltage. Hold only the plastic.", "house voltage. Use one hand.", "house voltage. Watch the tips.", "house voltage. Touch no bare metal."]
}
say "hazard.gas" {
  full  = "there is gas inside. No flame and no spark."
  short = ["gas. No flame.", "gas. Sniff first.", "gas. Leave the pipe joints alone.", "gas. No spark."]
}
say "hazard.capacitor" {
  full  = "this capacitor can hold a charge with the power off."
  short = ["capacitor. Treat it as charged.", "capacitor. Empty it first.", "capacitor. Keep hands off the terminals.", "capacitor. Measure before you touch it."]
}
say "hazard.moving" {
  full  = "the fan can start without a sign. Keep clear."
  short = ["the fan. Keep fingers clear.", "the fan. Keep sleeves back.", "the fan may start.", "the fan. Stand aside."]
}
say "hazard.hot" {
  full  = "hot metal. Let it cool before you touch it."
  short = ["hot metal. Wait.", "hot. Touch nothing inside.", "hot metal. Wear gloves.", "hot. Keep back."]
}
say "hazard.low" {
  full  = "low voltage is live here. The fan can start."
  short = ["live. The fan can start.", "live. Touch only with the tips.", "live. Do not slip.", "live. Keep a steady hand."]
}
say "hazard.sharp" {
  full  = "the sheet metal has sharp edges."
  short = ["sharp edges.", "the edges cut.", "watch the edges.", "sharp metal."]
}
# What is behind a cover that comes off.
say "cover.mains" {
  full  = "house voltage is behind this cover. Touch nothing inside yet."
  short = ["house voltage inside. Touch nothing yet.", "house voltage behind it. Keep your fingers out."]
}
say "cover.gas" {
  full  = "gas parts are behind this cover. Touch no gas fitting."
  short = ["gas parts inside. Touch no fitting.", "gas parts behind it. Leave the fittings alone."]
}
say "cover.capacitor" {
  full  = "a capacitor behind this cover may hold a charge. Touch nothing inside yet."
  short = ["a charged capacitor may be inside. Touch nothing yet.", "capacitor inside. Keep your fingers out."]
}
say "cover.moving" {
  full  = "a fan is behind this cover. It can start by itself. Keep your fingers out."
  short = ["a fan is inside. Keep your fingers out.", "the fan can start. Keep your fingers out."]
}
say "cover.hot" {
  full  = "hot metal is behind this cover. Let it cool."
  short = ["hot metal inside. Let it cool.", "hot metal behind it. Do not touch it."]
}
say "cover.low" {
  full  = "low voltage is live behind this cover. Touch nothing inside yet."
  short = ["low voltage inside. Touch nothing yet.", "low voltage behind it. Keep your fingers out."]
}
say "cover.sharp" {
  full  = "this cover has sharp edges. Wear gloves."
  short = ["sharp edges. Wear gloves.", "the edges are sharp. Move slowly."]
}
say "hazard.door" {
  full  = "the door switch protects you. Hold it in only while we look."
  short = ["door switch. Only while we look.", "door switch. Stay beside it.", "door switch. Never leave it held.", "door switch. Free it right after."]
}
say "hazard.jumper" {
  full  = "the jumper makes the furnace run. Never leave it in."
  short = ["jumper. Stay beside it.", "jumper. Seconds only.", "jumper. Watch it.", "jumper. Take it out right after."]
}
say "hazard.restart" {
  full  = "restart. Stand aside. Tools out, hands clear."
  short = ["restart. Stand aside.", "restart. Keep hands clear.", "restart. Take tools out.", "restart. Step back."]
}
say "hazard.hands" {
  full  = "hands inside and sharp edges. The power stays off."
  short = ["hands inside. The edges are sharp.", "hands inside. The power stays off.", "hands inside. Take your time.", "hands inside. Watch the metal."]
}

# ---------------------------------------------------------------- the proof that it is dead

say "proof.prove-live" { full = "The meter works." }
say "proof.prove-line-neutral" { full = "No voltage here." }
say "proof.prove-line-ground" { full = "No voltage here either." }
say "proof.prove-neutral-ground" { full = "No voltage. Now test the outlet again." }
say "proof.prove-again" { full = "The meter still works. The power is proved off." }
say "proof.live" { full = "{value}. The power is not off. Take your hands out." }
say "proof.nolive" { full = "{value}. That outlet has no power. Try another outlet." }
say "proof.live.fact" { full = "Voltage with the power switched off: {where}, {value}." }
say "proof.stop" { full = "It is still live with the power off. Touch nothing in it. Step away, and call an electrician." }
say "proof.aged" { full = "We proved the power off a while ago. We prove it once more." }
say "proof.broken" { full = "That took a while. We start the power test over." }
say "gate.restart" { full = "That is not as it must be. It is not fixed. We switch it off and stop here." }
say "gate.cause" { full = "That is the reason. The power stays off until it is put right." }
say "gate.fact" { full = "Not as it must be: {check}. Not fixed, power off." }
say "minutes.one" { full = "one minute" }
say "minutes.many" { full = "{n} minutes" }
say "likely" { full = "This is the best guess, but it is not proved. {part}: {words}. A technician can prove it." }
say "all.right" { full = "Are you all right? Say I'm okay." }
say "consent.proof" { full = "prove that the meter works, and then prove that the power is off" }
say "jacks.volts" { full = "Black lead in the common jack. Red lead in the volts jack." }
say "jacks.current" { full = "Black lead in the common jack. Red lead in the jack for small current, micro amps or milli amps." }
say "jacks.none" { full = "Leave the two meter leads out." }
say "proof.nometer" { full = "The meter finds no power at any outlet. So it proves nothing." }

# ---------------------------------------------------------------- the meter's dial

say "meter.volts-ac" { full = "Meter on A C volts." }
say "meter.volts-dc" { full = "Meter on D C volts." }
say "meter.ohms" { full = "Meter on ohms." }
say "meter.continuity" { full = "Meter on the beep test." }
say "meter.capacitance" { full = "Meter on capacitance." }
say "meter.amps-ac" { full = "Clamp meter on A C amps, closed around one wire." }
say "meter.microamps-dc" { full = "Meter on D C MICRO amps." }
say "meter.millivolts-dc" { full = "Meter on D C MILLI volts." }
say "meter.manometer" { full = "Pressure gauge, in inches of water." }
say "meter.co-meter" { full = "The C O meter." }
say "meter.thermometer" { full = "Thermometer." }
say "number" { full = "What number and unit do you read?" }
say "say.ready" { full = "When you are ready, say ready." }
say "how.check" { full = "Set the dial first. Then place the tips. Then hold still and read." }
say "how.none" { full = "Take it slowly. Ask where it is if that is not clear." }

# ---------------------------------------------------------------- reading back

say "verdict.pass" { full = "That is normal." }
say "verdict.likely-pass" { full = "That is just inside the limit." }
say "verdict.likely-fail" { full = "That is just outside the limit." }
say "verdict.fail" { full = "That is not normal." }
say "verdict.invalid" { full = "That reading proves nothing here." }
say "right.or.different" {
  full   = "{value}. Is that right or wrong?"
  ask    = ["right-value", "different"]
  labels = ["Right", "Wrong"]
}
say "this.or.that" {
  full   = "{this}, or {that}? If it is something else, say: neither."
  ask    = ["different"]
  labels = ["Neither"]
}
say "which.unit" {
  full   = "{number}. Which unit is it: {units}? If the number is wrong, say: wrong."
  labels = ["Wrong"]
  ask    = ["different"]
}
say "once.more" { full = "{value}. Please say it once more, to be sure." }
say "agreed" { full = "Both times the same. Good." }
say "differs" { full = "{value} this time. The two differ. Please measure again." }
say "what.then" { full = "What should it be?" }
say "dead.number" { full = "Please say the number that shows, and the unit." }
say "blank.why" { full = "A blank display shows nothing. Wake the meter up and read again." }
say "wrong.money" { full = "I need an amount of money here." }
say "wrong.unit" { full = "I need {units} here. Look at the dial." }
say "wrong.kind" { full = "Look at the dial. Is it on A C or D C?" }
say "too.odd.plate" { full = "{value} is not what such a plate says. Please read it once more." }
say "too.much" { full = "{value} is not possible here." }
say "jumping.ask" { full = "What are the lowest and the highest number?" }
say "limit.between" { full = "{low} to {high} {unit}" }
say "limit.low" { full = "at least {low} {unit}" }
say "limit.high" { full = "at most {high} {unit}" }
say "not.listed" { full = "{what} is not on my list. I have noted it." }

# ---------------------------------------------------------------- not understood, impossible, given up

say "miss.number.one" { full = "I did not catch the number." }
say "miss.number.two" { full = "Please say one digit at a time, then the unit." }
say "miss.number.three" { full = "You can tap it, show it to the camera, or say skip." }
say "miss.choice.one" { full = "I did not catch that. Is it {options}?" }
say "miss.choice.two" { full = "Please say one of these: {options}." }
say "miss.choice.three" { full = "You can tap it on the screen, or say skip." }
say "odd.one" { full = "{why} Please say it again." }
say "odd.two" { full = "{why} Is there a small m or k before the unit?" }
say "odd.three" { full = "{why} You can tap it, or check the dial." }
say "lost.miss" { full = "Never mind. We try another way." }
say "lost.odd" { full = "I do not count that reading. We go on." }
say "lost.skip" { full = "Skipped. That is one answer less to go on." }
say "lost.cant-reach" { full = "Then we try another way." }
say "lost.dont-know" { full = "That is fine. We go on without it." }
say "unknown" { full = "not known" }
say "unknown.fact" { full = "{check}: not known" }
say "unsure.hazard" { full = "We must be sure here. Please look once more." }
say "done.number" { full = "Good. What does the meter show?" }
say "say.state" { full = "Please say: {state}." }
say "or" { full = "or" }
say "safety.must" { full = "I cannot go on without this answer. Can somebody else look?" }
say "safety.stop" { full = "Without that answer I stop here." }
say "other.meter" { full = "Tap the number, or hold the display to the camera." }

# ---------------------------------------------------------------- what the camera sees

say "eye.agrees" { full = "The camera agrees." }
say "eye.sees" { full = "The camera sees: {value}. Is that right or wrong?" }
say "eye.unit" { full = "The camera sees {number}. Which unit is it: {units}?" }
say "eye.odd" { full = "The camera sees {value}. {why}" }
say "eye.zero" { full = "The camera sees {value}. Please say the number too." }
say "eye.differs" { full = "You said: {this}. The camera sees: {that}. Which one is right?" }
say "eye.none" { full = "There is no camera. Say or tap what you see." }
say "eye.meter" { full = "Or place the camera so that it sees the meter." }
say "eye.fire" { full = "Or place the camera so that it sees the window." }
say "fire.glow" { full = "a glow" }
say "fire.flame" { full = "a flame" }
say "fire.held" { full = "a flame that stays" }
say "fire.out" { full = "a flame that went out" }
say "eye.lamp" { full = "Or point the camera at the light." }
say "eye.photo" { full = "Show the camera the same view." }
say "eye.plate" { full = "Or show the camera the code on the plate." }
say "eye.wires.same" { full = "The camera finds no difference. Please look yourself, too." }
say "eye.wires.differ" { full = "The camera finds {count} to look at." }
say "wire.another" {
  full   = "At {name} there was a {before} wire. Now there is a {after} one."
  short  = ["{name}: {before} before, {after} now."]
  say    = "Is it put back now, the same as before, or changed on purpose?"
  how    = "Look at the first picture. Then look at the wire."
  ask    = ["put-back", "same", "on-purpose"]
  labels = ["Put back now", "The same as before", "Changed on purpose"]
}
say "wire.gone" {
  full   = "At {name} there was a {before} wire. Now there is none."
  short  = ["{name}: no wire now."]
  say    = "Is it put back now, the same as before, or changed on purpose?"
  how    = "Look at the first picture. Then look at the terminal."
  ask    = ["put-back", "same", "on-purpose"]
  labels = ["Put back now", "The same as before", "Changed on purpose"]
}
say "wire.added" {
  full   = "At {name} there was no wire. Now there is a {after} one."
  short  = ["{name}: {after} is new."]
  say    = "Is it put back now, the same as before, or changed on purpose?"
  how    = "Look at the first picture. Then look at the terminal."
  ask    = ["put-back", "same", "on-purpose"]
  labels = ["Put back now", "The same as before", "Changed on purpose"]
}
say "wire.differs" {
  full   = "{name} looks different now."
  short  = ["{name} looks different."]
  say    = "Is it put back now, the same as before, or changed on purpose?"
  how    = "Look at the first picture. Then look at the terminal."
  ask    = ["put-back", "same", "on-purpose"]
  labels = ["Put back now", "The same as before", "Changed on purpose"]
}
say "wire.hidden" {
  full   = "The camera cannot see {name} now. Please look yourself."
  short  = ["The camera cannot see {name}. Look yourself."]
  say    = "Is it put back now, the same as before, or changed on purpose?"
  how    = "Look at the first picture. Then look at the terminal."
  ask    = ["put-back", "same", "on-purpose"]
  labels = ["Put back now", "The same as before", "Changed on purpose"]
}
say "wire.put-back" { full = "{name}: put back" }
say "wire.same" { full = "{name}: as before, the camera was wrong" }
say "wire.on-purpose" { full = "{name}: changed on purpose" }
say "wires.compared" { full = "Wires compared after the work: as before" }
say "open.unlike" { full = "{name} not as before" }

# ---------------------------------------------------------------- waiting

say "still.here" {
  full  = "I am still here. Take your time."
  short = ["There is no hurry. I am listening.", "I am here when you are ready."]
}
say "silent.number" { full = "Say the number. If you cannot get to it, say: can't reach." }
say "silent.choice" { full = "Say {options}. If you are not sure, say: don't know." }
say "wait.quietly" { full = "I will wait quietly. To go on, say ready." }
say "holding" { full = "I am waiting. To go on, say ready." }
say "hold.refused" { full = "This must come out first: {what}. Then we take a break." }
say "hold.live" { full = "The power is on. Turn it off first. Then we take a break." }
say "resumed" { full = "We go on." }
say "timed.still" { full = "This is still in place: {what}." }
say "timed.over" { full = "The time is up. Take it out now: {what}." }
say "resume.unknown" { full = "Welcome back. Until we test it again, treat the power as on." }
say "resume.soon" { full = "Welcome back. {power}" }
say "new.day" { full = "It is a new day. Older readings may have changed." }
say "loud" { full = "It is loud here. Come closer, or wait until the blower stops." }
say "battery.one" { full = "The phone battery is at twenty percent." }
say "battery.two" { full = "The phone battery is at ten percent. Plug it in, or we close up." }
say "battery.three" { full = "The phone battery is almost empty. We close up now." }
say "notice.speech-off" { full = "Speech is off. You can do everything by touch and keys." }
say "notice.sound-off" { full = "There is no sound. Please read the screen." }
say "notice.mic-off" { full = "The microphone is off. You can do everything by touch and keys." }
say "notice.silenced" { full = "The phone is silenced. Please read the screen." }

# ---------------------------------------------------------------- commands

say "slower" { full = "I will speak more slowly." }
say "shorter" { full = "I will keep it short. The warnings stay." }
say "where.none" { full = "I have no picture of that place. Ask how, and I explain it." }
say "expected.later" { full = "I tell you right after. Then it cannot change what you read." }
say "shortcut" { full = "No. That part keeps the fire in. I can test it another way." }
say "help" { full = "To hear it again, say repeat. To take a break, say hold on. To stop, say finish." }
say "changed" { full = "take your hands out. We do not know now if the power is on." }
say "changed.fact" { full = "Something happened that nobody asked for." }
say "missed" { full = "Watch the next try. {left} left." }
say "undo.none" { full = "There is nothing to take back." }
say "undo.done" { full = "Taken back: {what}." }
say "finish" { full = "We leave it safe first." }
say "finish.already" { full = "We are closing up already." }
say "person" { full = "Read this to the person you call. {words}" }
say "howlong" { full = "This is part {stage} of {all}." }
say "howlong.cycle" { full = "One full run takes about ten minutes." }
say "last.fact" { full = "The last answer: {fact}" }
say "what.if" { full = "Either answer helps. I tell you what it means right after." }
say "suspect.none" { full = "It is too early. Nothing stands out yet." }
say "not.proved" { full = "That is not proved yet." }
say "proved.by" { full = "What proves it: {proofs}." }
say "cost.early" { full = "It is too early for a price." }
say "why.proof" { full = "A broken meter would show zero, too. So we test the meter first." }
say "why.act" { full = "We need this for the next test: {check}." }
say "why.leave" { full = "This leaves everything as it was." }
say "why.check" { full = "It helps to find what is wrong: {check}." }
say "why.tells" { full = "Two things are possible: {one}, or {other}. This test shows which one." }
say "why.second" { full = "I do not blame a part on one reading alone. This is a second look at the {part}." }
say "why.doubt" { full = "One answer does not fit the others: {check}." }
say "why.minutes" { full = "About {minutes} min" }
say "what.leads" { full = "One answer points to this: {one}. The other points to this: {other}." }
say "doubt.other" { full = "One answer does not fit the others: {check}. I test it another way." }
say "doubt" { full = "One answer does not fit the others: {check}. Let us check it once more." }
say "why.stage.safety" { full = "First I must know that it is safe to stay here." }
say "why.stage.story" { full = "What you saw often points to the part." }
say "why.stage.plate" { full = "The label on your furnace counts more than any general number." }
say "why.stage.light" { full = "The light may lose its code when the power goes off." }
say "why.stage.free" { full = "This costs nothing, and it is often the reason." }
say "why.stage.watch" { full = "The last good step of a start shows where to look." }
say "why.stage.meter" { full = "I must know that the meter works before I trust it." }
say "why.stage.plan" { full = "It helps to find what is wrong." }
say "why.stage.proof" { full = "Before I blame a part, I want a second proof." }
say "why.stage.cause" { full = "The same cause could break the new part, too." }
say "why.stage.cost" { full = "It is your money and your house." }
say "why.stage.part" { full = "A wrong part can be dangerous." }
say "why.stage.swap" { full = "If you move one wire at a time, nothing gets mixed up." }
say "why.stage.restart" { full = "Only a full run shows that it is fixed." }
say "why.stage.refit" { full = "Everything must be left as it should be." }
say "why.stage.record" { full = "The record lets others check the work." }

# ---------------------------------------------------------------- stages

say "stage.safety" { full = "Is it safe to stay" }
say "stage.story" { full = "What happened" }
say "stage.plate" { full = "The rating plate" }
say "stage.light" { full = "The status light" }
say "stage.free" { full = "Free fixes" }
say "stage.watch" { full = "Watch one start" }
say "stage.meter" { full = "Test the meter" }
say "stage.plan" { full = "Find the fault" }
say "stage.proof" { full = "A second proof" }
say "stage.cause" { full = "Why it failed" }
say "stage.cost" { full = "What it costs" }
say "stage.part" { full = "The right part" }
say "stage.swap" { full = "The repair" }
say "stage.restart" { full = "Safe restart" }
say "stage.refit" { full = "Put everything back" }
say "stage.record" { full = "The record" }

# ---------------------------------------------------------------- verdict, cost, repair

say "verdict" { full = "{part}: {words}." }
say "verdict.passes" { full = "It works now, but it fails at some starts. I blame no part. When it fails, touch nothing. Then start with me again." }
say "rest" { full = "The fault comes and goes. It works now, so we watch one more start." }
say "verdict.nothing" { full = "Nothing is wrong with it. It works as it should." }
say "unresolved" { full = "I have no proof against any part. So I blame none." }
say "stop" { full = "I stop here. {why}" }
say "cost.nothing" { full = "This costs only minutes." }
say "cost.part" { full = "The part costs {range} dollars." }
say "cost.unknown" { full = "I have no price for the part." }
say "cost.minutes" { full = "The work takes {range} minutes." }
say "cost.callout" { full = "A visit costs {price} dollars." }
say "cost.old" { full = "It is {age} years old. Ask what a new one costs." }
say "call.again" { full = "The thermostat's signal does not reach the board. Let us check the thermostat once more." }
say "callout" {
  full  = "What does a technician's visit cost where you live?"
  short = ["What does a visit cost?"]
  say   = "If you are not sure, say: don't know."
  how   = "A rough amount in dollars is enough."
}
say "age" {
  full  = "How many years old is it?"
  short = ["How old is it, in years?"]
  say   = "If you are not sure, say: don't know."
  how   = "The rating plate often shows the year it was made."
}
say "age.back" { full = "{years} years." }
say "decide" {
  full   = "{cost}"
  short  = ["What would you like to do?"]
  say    = "Will you fix it now, call someone, or stop here?"
  how    = "Fix it now means that you do the work with me. All three are good answers."
  ask    = ["fix-it", "call-someone", "stop-here"]
  labels = ["Fix it now", "Call someone", "Stop here"]
}
say "match" {
  full   = "The new {part} must match the old one in this: {list}."
  short  = ["Compare the new part: {list}."]
  say    = "Is it the same, different, or not here yet?"
  how    = "Read both labels. It is not enough that they look alike."
  ask    = ["same", "different", "not-yet"]
  labels = ["The same", "Different", "Not here yet"]
}
say "match.good" { full = "The part fits." }
say "match.later" { full = "Then we close up until the part is here." }
say "match.wrong" { full = "Do not use that part. We close up until you have the right one." }
say "photo.before" {
  full   = "Take a photo of the wires now, before you move anything."
  short  = ["Take a photo of the wires."]
  say    = "No camera? Read the terminals aloud. Then say photo taken, or list is done."
  how    = "Show all wires and their terminals in one picture, from the front."
  ask    = ["photo-taken", "listed"]
  labels = ["Photo taken", "List is done"]
}
say "photo.after" {
  full   = "Compare every wire with the first photo or your list."
  short  = ["Compare the wires with the first photo."]
  say    = "What do you find? All the same, or one different?"
  how    = "Go from terminal to terminal. Compare the colors."
  ask    = ["same", "different"]
  labels = ["All the same", "One different"]
}
say "photo.differs" { full = "Then check each wire once more." }
say "photo.note" { full = "Photo: {id}" }
say "swap" {
  full   = "{act}"
  short  = ["{act}"]
  say    = "Then say: done."
  how    = "Do only this one step. Then say done."
  ask    = ["done"]
  labels = ["Done"]
}
say "step.done" { full = "Good." }
say "mended" { full = "Done: {repair}." }
say "unconfirmed" { full = "The test that showed the fault was not repeated." }
say "notfixed" { full = "That was not all of it. We look further." }
say "cycle.first" {
  full   = "Watch it start. First the fan, then a flame, then warm air."
  short  = ["Watch it start."]
  say    = "What does it do? Running with warm air, stopped early, did nothing, or ran with no heat?"
  how    = "Wait for the warm air. Then say running with warm air."
  ask    = ["running", "stops-early", "no-start", "runs-no-heat"]
  labels = ["Running with warm air", "Stopped early", "Did nothing", "Ran with no heat"]
}
say "cycle.second" {
  full   = "Turn the thermostat down. Wait until flame and fan stop. Then turn it up for a second full run."
  short  = ["Turn it down, then up for a second run."]
  say    = "What did it do? A full run, stopped early, did nothing, or ran with no heat?"
  how    = "It must work twice before we call it fixed."
  ask    = ["full-cycle", "stops-early", "no-start", "runs-no-heat"]
  labels = ["A full run", "Stopped early", "Did nothing", "Ran with no heat"]
}
say "cycle.one" { full = "It runs." }
say "cycle.two" { full = "Those were two full runs. Your heat is back." }

# ---------------------------------------------------------------- leaving the place

say "items" {
  full   = "This is how it should be now: {list}."
  short  = ["Check this: {list}."]
  say    = "What do you find? All like that, or something different?"
  how    = "Look at each one. If one differs, say something different."
  ask    = ["same", "different"]
  labels = ["All like that", "Something different"]
}
say "items.good" { full = "Everything is back in place." }
say "items.again" { full = "Then we check each one again." }
say "items.doubt" { full = "The wires could not be checked again." }
say "item.wire" { full = "wire at the {name} connected" }
say "item.jumper" { full = "test jumper out" }
say "item.cover" { full = "{name} on" }
say "item.door" { full = "door switch free" }
say "item.jack" { full = "red meter lead in the volts jack" }
say "item.reset" { full = "{name} reset" }
say "item.power.on" { full = "power on" }
say "item.power.off" { full = "power off" }
say "item.power.proved" { full = "power off" }
say "item.power.unknown" { full = "not known if the power is on" }
say "open.jumper" { full = "test jumper in" }
say "open.door" { full = "door switch held in" }
say "open.meter" { full = "meter connected in a wire" }
say "open.jack" { full = "red meter lead in the current jack" }
say "open.wire" { full = "wire disconnected at the {name}" }
say "open.cover" { full = "{name} open" }
say "open.reset" { full = "{name} reset by hand" }
say "open.power" { full = "not known if the power is off" }
say "left.open" { full = "This was left as it is: {what}. Keep everybody away and call for help." }
say "handover" {
  full   = "{words}"
  short  = ["Read it to the person you call."]
  say    = "When you have noted it, say: noted."
  how    = "It stays on the screen. Read it to the person you call."
  ask    = ["done"]
  labels = ["Noted"]
  also   = { done = ["right-value"] }
}
say "handover.story" { full = "The story: {story}" }
say "handover.open" { full = "Not put back: {what}" }
say "handover.closed" { full = "The covers are on. No safety part is bypassed." }
say "handover.emergency" { full = "Emergency: {what}, about {time} ago." }
say "handover.out" { full = "Everybody is said to be outside." }
say "handover.in-doubt" { full = "It is not known if everybody is outside." }
say "handover.gas-open" { full = "The gas was not shut off." }
say "handover.stay-out" { full = "Nobody goes back in until the house is found safe." }
say "handover.call.emergency" { full = "Call nine one one, and the gas company, from outside." }
say "handover.call.electrician" { full = "Call a licensed electrician. Keep everybody away from it." }
say "handover.call" { full = "Call a licensed heating technician." }
say "end.fixed" { full = "Your heat is back, and everything is in place. The record is saved." }
say "end.nothing-wrong" { full = "It works as it should. The record is saved." }
say "end.stopped" { full = "It is left safe. Please call for help now. The record is saved." }
say "end.unresolved" { full = "It is left safe. The cause was not found. The record is saved." }
say "end.handed-over" { full = "It is left safe for somebody else. The record is saved." }
say "end.stopped-by-person" { full = "It is left safe, as you wished. The record is saved." }
say "end.stopped-after-emergency" { full = "We stop here. Have it checked before anybody uses it. The record is saved." }
say "end.part-awaited" { full = "It is left safe until the part is here. The record is saved." }
say "end.given-up" { full = "It is left safe. The record is saved." }
say "end.battery" { full = "It is left safe. The record is saved." }
say "end.left-open" { full = "We end here, but some things are still open. The record says which." }
say "end.still-live" { full = "We stop. It is still live. Touch nothing, and call an electrician." }
say "end.emergency" { full = "Stay outside. The record is saved." }

# ---------------------------------------------------------------- emergencies: first the act, then the reason

# The number to call, as spoken and as written. It is the place's own; another country has another file.
say "emergency.number" { full = "nine one one" }
say "emergency.digits" { full = "911" }
say "alarm.gas" { full = "Leave now. Touch no switch." }
say "alarm.gas.then" { full = "A spark can light the gas. Take everyone with you. Call the gas company or nine one one from far outside." }
say "alarm.co" { full = "Everyone outside, now." }
say "alarm.co.then" { full = "It may be carbon monoxide. Count heads. Call nine one one. Nobody goes back in." }
say "alarm.ill" { full = "Everyone outside, now." }
say "alarm.ill.then" { full = "The air may be bad. Count heads. Call nine one one. Nobody goes back in." }
say "alarm.fire" { full = "Get out. Take everyone with you." }
say "alarm.fire.then" { full = "Close doors behind you. Call nine one one from outside." }
say "alarm.blast" { full = "Get out. Take everyone with you." }
say "alarm.blast.then" { full = "There may be gas. Touch no switch. Call nine one one from far outside." }
say "alarm.faint" { full = "Call nine one one. Everyone outside." }
say "alarm.faint.then" { full = "Do not touch anyone who is stuck to a wire. Turn the breaker off first. Carry them out only if you feel well. Stay on the line with nine one one." }
say "alarm.any" { full = "Get out. Take everyone with you." }
say "alarm.any.then" { full = "Call nine one one from outside. Tell them what happened." }
say "alarm.shock" { full = "Step back. Touch nothing." }
say "alarm.shock.then" { full = "Don't grab anyone who is stuck. Turn the breaker off. Call nine one one, even if you feel fine." }
say "alarm.spark" { full = "Step back. Don't restart it." }
say "alarm.spark.then" { full = "Turn it off only if the switch is on your way out." }
say "alarm.water" { full = "Stop. Stay off the wet floor." }
say "alarm.water.then" { full = "Turn the breaker off, but only with dry feet." }
say "alarm.injury" { full = "Hands out. Help yourself first." }
say "alarm.injury.then" { full = "Call nine one one if it is bad. If you are fine, say I'm okay." }
say "alarm.child" { full = "Hands out. Keep them away." }
say "alarm.child.then" { full = "When they are out of the room, say clear." }
say "alarm.silent" { full = "Answer me. Are you all right?" }
say "alarm.silent.then" { full = "If you hear this, do not touch anyone who is stuck. Turn the breaker off first. Then call nine one one. If all is well, say I'm okay." }
say "alarm.stays" { full = "Turn the breaker off if you can reach it safely. Leave everything else as it is. Touch nothing, and call an electrician." }
say "alarm.after" { full = "When it is over, say I'm okay, or say clear." }
say "alarm.over" { full = "Good. Now we leave it safe." }
say "alarm.out" { full = "Good. Stay out until somebody says it is safe." }
say "alarm.false" { full = "I take it as a false alarm." }
say "alarm.fact" { full = "Emergency: {class}" }
say "hazard.of.gas" { full = "An odor like gas" }
say "hazard.of.co" { full = "An alarm" }
say "hazard.of.ill" { full = "Somebody ill" }
say "hazard.of.fire" { full = "Fire or smoke" }
say "hazard.of.blast" { full = "An explosion" }
say "hazard.of.faint" { full = "Somebody who does not wake up" }
say "hazard.of.any" { full = "A danger" }
say "hazard.of.shock" { full = "A shock" }
say "hazard.of.spark" { full = "A spark or a flash" }
say "hazard.of.water" { full = "Water" }
say "hazard.of.injury" { full = "Somebody hurt" }
say "hazard.of.silent" { full = "Nobody answers" }
say "hazard.of.child" { full = "A child or an animal near it" }
say "right.now" {
  full   = "{what}, right now? If yes, say leave now. If not, say no danger."
  ask    = ["leave-now", "none"]
  labels = ["Leave now", "No danger"]
}
say "none.back" { full = "No danger right now. Good." }

# ---------------------------------------------------------------- what the planner says of its choice

say "suspect.nothing" { full = "nothing is wrong" }
say "suspect.unknown" { full = "something I do not know about" }
say "why.again" { full = "One answer does not fit the others." }
say "why.missing" { full = "This is still to be shown: {proof}." }
say "sure.missing" { full = "This is still to be shown: {proof}." }
say "sure.check" { full = "Another answer to this would change it: {check}." }

say "label.without" { full = "Without that number, the reading is only written down." }
