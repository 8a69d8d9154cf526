package render

// tech is how a display makes its digits.
type tech int

const (
	reflective tech = iota // dark digits on grey or green, by the light of the room
	backlit                // dark digits before a coloured lamp
	negative               // light digits in a dark pane
	led                    // glowing segments behind tinted glass
	vacuum                 // blue-green glowing segments, black behind
	paper                  // dark on white, no gloss
)

// kind is one sort of device with a display: what it shows and how it looks. Numbers are ranges that a drawing takes its own value from.
type kind struct {
	name   string
	tech   []tech
	digits [2]int  // places of the main number
	more   [2]int  // further rows
	equal  bool    // further rows as large as the first
	small  float64 // chance that what follows the point is smaller
	dot    float64 // chance of a point
	minus  float64
	over   float64 // chance of over limit
	clock  float64 // chance that a further row is a time of day
	signs  float64 // chance of each sign inside of the window
	bar    float64 // chance of a bar graph
	body   int     // see body
	print  int     // words printed round the window, at most
}

// Bodies.
const (
	handheld = iota // upright box with a dial and jacks below
	clampon         // upright box under a jaw
	inset           // a frame in a panel
	bench           // wide box with keys beside the window
	wall            // light box with few marks
	bare            // the window fills what is seen
)

// kinds are sorts of devices by what is common to them; none is a real product.
var kinds = []kind{
	{"multimeter, four places", []tech{reflective, backlit}, [2]int{4, 4}, [2]int{0, 0}, false, 0, 0.8, 0.3, 0.12, 0, 0.6, 0.3, handheld, 12},
	{"multimeter with a bar", []tech{reflective, backlit}, [2]int{4, 5}, [2]int{0, 1}, false, 0, 0.8, 0.3, 0.1, 0, 0.7, 1, handheld, 14},
	{"multimeter, dark pane", []tech{negative}, [2]int{4, 5}, [2]int{0, 1}, false, 0, 0.8, 0.25, 0.1, 0, 0.5, 0.4, handheld, 10},
	{"multimeter, old", []tech{reflective}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.7, 0.35, 0.2, 0, 0.1, 0, handheld, 18},
	{"pocket meter", []tech{reflective, backlit}, [2]int{4, 4}, [2]int{0, 0}, false, 0, 0.7, 0.2, 0.1, 0, 0.4, 0, handheld, 6},
	{"graphing meter", []tech{backlit, negative}, [2]int{4, 5}, [2]int{1, 2}, false, 0, 0.8, 0.2, 0.05, 0, 0.8, 0.5, handheld, 8},
	{"clamp meter", []tech{reflective, backlit}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.8, 0.2, 0.1, 0, 0.6, 0.2, clampon, 9},
	{"clamp meter, two rows", []tech{backlit, negative}, [2]int{4, 4}, [2]int{1, 1}, false, 0, 0.8, 0.2, 0.05, 0, 0.6, 0, clampon, 9},
	{"insulation tester", []tech{backlit, reflective}, [2]int{4, 4}, [2]int{0, 1}, false, 0, 0.7, 0, 0.15, 0, 0.5, 0.6, handheld, 12},
	{"earth tester", []tech{reflective}, [2]int{3, 4}, [2]int{0, 1}, false, 0, 0.9, 0, 0.05, 0, 0.5, 0.2, handheld, 10},
	{"panel meter, red", []tech{led}, [2]int{3, 5}, [2]int{0, 0}, false, 0, 0.7, 0.15, 0.02, 0, 0, 0, inset, 4},
	{"panel meter, green", []tech{led}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.8, 0.15, 0, 0, 0, 0, inset, 3},
	{"panel meter, two rows", []tech{led}, [2]int{3, 4}, [2]int{1, 1}, true, 0, 0.7, 0.05, 0, 0, 0.1, 0, inset, 5},
	{"controller, set point below", []tech{led, negative}, [2]int{3, 4}, [2]int{1, 1}, false, 0, 0.5, 0.1, 0, 0, 0.3, 0.1, inset, 8},
	{"three-row power meter", []tech{led, backlit}, [2]int{3, 5}, [2]int{2, 2}, true, 0, 0.8, 0.05, 0, 0, 0.2, 0, inset, 8},
	{"frequency meter", []tech{led, reflective}, [2]int{4, 5}, [2]int{0, 0}, false, 0, 0.9, 0, 0, 0, 0.1, 0, inset, 3},
	{"bench meter, glowing", []tech{vacuum, led}, [2]int{5, 7}, [2]int{0, 0}, false, 0, 0.9, 0.3, 0.04, 0, 0.3, 0, bench, 16},
	{"bench supply", []tech{led}, [2]int{3, 4}, [2]int{1, 1}, true, 0, 0.95, 0, 0, 0, 0.1, 0, bench, 12},
	{"bench supply, one window each", []tech{led, backlit}, [2]int{4, 4}, [2]int{1, 2}, true, 0, 0.95, 0, 0, 0, 0.2, 0, bench, 12},
	{"counter", []tech{led, vacuum}, [2]int{5, 8}, [2]int{0, 0}, false, 0, 0.2, 0, 0, 0, 0, 0, bench, 8},
	{"kitchen scale", []tech{reflective, backlit, negative}, [2]int{1, 5}, [2]int{0, 0}, false, 0, 0.4, 0.1, 0, 0, 0.4, 0, wall, 4},
	{"shop scale", []tech{vacuum, backlit, led}, [2]int{4, 5}, [2]int{1, 2}, true, 0, 0.9, 0, 0, 0, 0.2, 0, bench, 8},
	{"hygrometer", []tech{reflective, paper}, [2]int{2, 3}, [2]int{1, 2}, false, 0.6, 0.6, 0.15, 0, 0.5, 0.5, 0, wall, 5},
	{"hygrometer, equal rows", []tech{reflective}, [2]int{2, 3}, [2]int{1, 1}, true, 0.5, 0.6, 0.1, 0, 0.1, 0.5, 0, wall, 5},
	{"weather station", []tech{reflective, negative}, [2]int{2, 3}, [2]int{2, 3}, false, 0.4, 0.6, 0.2, 0, 0.8, 0.6, 0.1, wall, 6},
	{"thermostat", []tech{backlit, reflective, negative}, [2]int{2, 3}, [2]int{0, 2}, false, 0.5, 0.4, 0.03, 0, 0.6, 0.6, 0, wall, 5},
	{"boiler panel", []tech{led, backlit}, [2]int{2, 3}, [2]int{0, 0}, false, 0, 0.4, 0, 0, 0, 0.3, 0, wall, 8},
	{"stick thermometer", []tech{reflective}, [2]int{3, 4}, [2]int{0, 0}, false, 0.1, 0.8, 0.2, 0.02, 0, 0.4, 0, bare, 5},
	{"two-channel thermometer", []tech{reflective, backlit}, [2]int{3, 4}, [2]int{1, 1}, true, 0, 0.9, 0.15, 0.05, 0, 0.6, 0, handheld, 10},
	{"infrared thermometer", []tech{backlit, reflective}, [2]int{3, 4}, [2]int{0, 1}, false, 0, 0.8, 0.1, 0, 0, 0.6, 0, handheld, 4},
	{"manometer", []tech{reflective, backlit}, [2]int{3, 4}, [2]int{0, 1}, false, 0, 0.9, 0.3, 0.05, 0, 0.5, 0.1, handheld, 8},
	{"combustion analyzer", []tech{backlit, negative}, [2]int{3, 4}, [2]int{2, 3}, true, 0, 0.6, 0.05, 0, 0, 0.5, 0, handheld, 10},
	{"light meter", []tech{reflective}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.5, 0, 0.05, 0, 0.4, 0.1, handheld, 6},
	{"sound meter", []tech{reflective, backlit}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.95, 0, 0, 0, 0.5, 0.6, handheld, 6},
	{"energy meter", []tech{reflective, backlit}, [2]int{5, 8}, [2]int{0, 1}, false, 0.1, 0.5, 0, 0, 0.1, 0.6, 0, wall, 16},
	{"plug-in energy meter", []tech{reflective}, [2]int{3, 5}, [2]int{1, 2}, false, 0, 0.8, 0, 0, 0.7, 0.6, 0, wall, 6},
	{"fuel pump", []tech{reflective, backlit}, [2]int{4, 6}, [2]int{1, 2}, true, 0.1, 0.95, 0, 0, 0, 0.1, 0, bare, 6},
	{"fuel pump, one row", []tech{reflective, backlit}, [2]int{4, 5}, [2]int{0, 0}, false, 0, 0.95, 0, 0, 0, 0.1, 0, bare, 3},
	{"blood pressure meter", []tech{reflective}, [2]int{2, 3}, [2]int{2, 3}, true, 0, 0.05, 0, 0, 0.6, 0.5, 0.2, wall, 8},
	{"glucose meter", []tech{reflective, backlit}, [2]int{2, 3}, [2]int{0, 1}, false, 0, 0.5, 0, 0, 0.8, 0.4, 0, wall, 4},
	{"timer", []tech{led}, [2]int{2, 4}, [2]int{0, 0}, false, 0, 0.3, 0, 0, 0, 0, 0, inset, 4},
	{"oven", []tech{vacuum, led}, [2]int{3, 3}, [2]int{0, 0}, false, 0, 0.1, 0, 0, 0, 0.3, 0, bare, 8},
	{"caliper", []tech{reflective}, [2]int{3, 5}, [2]int{0, 0}, false, 0.2, 0.95, 0.2, 0, 0, 0.4, 0, bare, 5},
	{"battery tester", []tech{reflective, backlit, led}, [2]int{3, 4}, [2]int{0, 0}, false, 0, 0.9, 0.05, 0, 0, 0.4, 0.2, handheld, 6},
	{"ESR tester", []tech{backlit, led}, [2]int{3, 4}, [2]int{0, 1}, false, 0, 0.9, 0, 0.05, 0, 0.4, 0, bare, 6},
}

// Kinds is how many sorts of devices there are.
func Kinds() int { return len(kinds) }
