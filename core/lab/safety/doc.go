// Package safety holds the program to account from outside. Nothing here asks the program what is safe: the table is written
// from the rules (standards, handbook, the house's own invariants), the checker keeps its own book of what hands did, and the
// people are as bad as people get. It reads only what a front end sees: events, effects and views, and the equipment file.
package safety
