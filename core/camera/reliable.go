package camera

// Share is what became of whole readings of drawn displays, one picture each.
type Share struct {
	Grade   string  // how bad the pictures are: easy, medium, hard
	Right   float64 // read, and right to the last digit, point and sign
	Wrong   float64 // read and wrong: what the planner must fear
	Abstain float64 // not read, with a reason
	N       int     // pictures
}

// Reliability is how far a single picture can be trusted, measured on seeds that nothing was tuned on, by
//
//	FIGURES=/tmp/r.tsv go test -run TestReliabilityFigures -count=1 -v ./core/camera
//
// which prints these rows. Medium is a hand-held picture in a workshop and the one to plan with; hard has every fault at its worst.
// The pictures are drawn, not photographed: a real display may do worse, so a Wrong of none in N is to be planned as one in N.
var Reliability = [3]Share{
	{"easy", 0.87, 0, 0.13, 100},
	{"medium", 0.8, 0, 0.2, 100},
	{"hard", 0.33, 0, 0.67, 100},
}
