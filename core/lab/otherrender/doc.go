// Package otherrender draws photographs and short films for testing what reads displays, boards, status lights and
// flames. It is a test set of another hand: whoever wrote it looked neither at the project's own drawings nor at its
// readers, and shares no code with them. Nothing in it is a photograph or was measured from one; all of it is drawn
// from imagination, so a good result on it is no proof for a real basement, only for drawings that were not tuned for.
//
// Draw makes one photograph. An instrument (multimeter, clamp meter, manometer, thermometer, LED panel, thermostat) or
// a thing without a display (pipes, nameplate, clock or gauge with hands, wires, bricks, shelf, tools, paper with
// digits, roller counter, breaker panel, hands, the lock screen of a phone) is painted on a plane in millimeters:
// seven-segment digits in four forms with their slant, gaps and tails, points round, square or tiny, the sign near or
// far, faint unlit segments and the segments' shadow on the reflector; liquid crystals dark on light and light on
// dark, backlights, diodes; small second rows, clock, date, bar graph, unit and mode signs, print with numbers, dials,
// buttons and jacks. Leads and fingers may lie across. A pinhole camera looks at the plane; light falls unevenly, with
// shadow, torch, lamps in the glass and dark bands of multiplexed diodes; then come defocus, motion, bloom, vignette,
// automatic exposure, noise, white balance, a tone curve, denoising, sharpening and JPEG. Frames is the same from a
// moving hand. More than 30 % of the pictures have no display.
//
// What is legible is measured, not believed: the main number is painted once with every element lit and once with
// none, through the same covers, light and lens. A segment, point or sign that does not differ enough between the two
// cannot be read, and then Legible is false; so it is when empty places before the number are hidden, since a digit or
// sign could stand there (Why is then HiddenBlank). The limits stand beside the code and are judgment, no source.
//
// Board is a pair of photographs of a control board, Light a film of a status light, Fire a film of a burner window,
// each with its truth. The two kinds of film are drawn frame by frame on request, since a whole film is some 90 MB.
//
// Known to be unlike the real thing: every instrument is flat, so no edge turns with the pose; text is a stroke
// alphabet; the film's hand is a smooth shape; video compression is JPEG frame by frame; distances between the marks of real
// makers' instruments were not measured. The numbers in the code that have no source beside them are imagination.
package otherrender
