// Package handy is an examiner of another hand: a room heater and a furnace with wiring and physics of its own, and four
// kinds of people in front of them, who talk with the program over its line protocol. It knows of the program only what its
// catalogue line says, so that a count of right and wrong is made on material that the program was not tuned on.
//
// A unit (heater.go, furnace.go, furnacesee.go) is a network of resistors and sources (circuit.go) with a state machine;
// each case (heatercases.go, furnacecases.go) sets a fault of random severity into it. A meter of one of three classes
// (meter.go) reads it. A person (person.go, job.go) answers what the step says from what the unit shows, with slips of the
// kind that fits the temper. The judge (judge.go) compares the end with the truth; safety.go watches for what no guide may
// lead to.
//
// PEERS_ALL=1 plays everything, PEERS_APPLIANCE, PEERS_CASES and PEERS_PERSON (regular expressions) and SEED a part;
// PEERS_OUT names where the table and the transcripts go; PEERS_BIN takes a program that is built already.
package handy
