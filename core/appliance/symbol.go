package appliance

// Symbol is how one element is drawn on a wire from (0,0) to (132,0), as North American ladder diagrams do.
type Symbol struct {
	SVG      string // {at} and {initials} stand for those of the part's name
	Resists  bool   // volts fall over it: it lies between what feeds it and the return
	Source   bool   // feeds what hangs on it
	Gap      bool   // no direct current passes it
	Isolates bool   // what hangs on its other end belongs to another supply
}

const (
	drawnEnds      = `<path d="M0 0h44m44 0h44"/>`
	drawnTerminals = `<circle cx="47" cy="0" r="3"/><circle cx="85" cy="0" r="3"/>`
)

// Symbols that several kinds are drawn with.
var (
	// two halves of a connector
	symWire    = &Symbol{SVG: `<path d="M0 0h132"/><path d="M60 -5l-4 5l4 5m12 -10l4 5l-4 5"/>`}
	symContact = &Symbol{SVG: drawnEnds + drawnTerminals + `<path d="M50 -1L84 -5"/><path d="M66 -3v14l-5 4l10 4"/>`}
	symCoil    = &Symbol{Resists: true, Isolates: true,
		SVG: `<path d="M0 0h42m48 0h42"/><path d="M42 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0c0 -14 12 -14 12 0"/>`}
	symSource = &Symbol{Source: true, Isolates: true,
		SVG: `<path d="M0 0h48m36 0h48"/><circle cx="66" cy="0" r="18"/><path d="M55 0c4 -9 7 -9 11 0s7 9 11 0"/>`}
	symSense = &Symbol{Resists: true, Isolates: true,
		SVG: `<path d="M0 0h50m32 0h50"/><path d="M50 -9h32v18h-32z"/><path d="M60 5l6 -10l6 10"/>`}
	symBox = &Symbol{Resists: true, SVG: `<path d="M0 0h46m40 0h46"/><path d="M46 -14h40v28h-40z"/>`}
)

// What a control switches and what it senses.
var (
	OutputSymbol = &Symbol{SVG: drawnEnds + `<path d="M44 0h10v-12m0 24v-12m24 -12v24m0 -12h10"/>`}
	InputSymbol  = symSense
)
