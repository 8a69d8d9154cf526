package otherrender

import (
	"fmt"
	"image"
	"math"
	"math/rand/v2"
)

// Grade is how hard a picture is meant to be.
type Grade int

const (
	Easy   Grade = iota // well lit, nearly frontal, sharp
	Medium              // tilted, some glare, shadow, a lead across
	Hard                // anything a basement does to a photograph
)

func (g Grade) String() string { return [...]string{"easy", "medium", "hard"}[g] }

// Kind is the sort of picture.
type Kind string

const (
	Multimeter  Kind = "multimeter"
	Clamp       Kind = "clamp meter"
	Manometer   Kind = "manometer"
	Thermometer Kind = "thermometer"
	Panel       Kind = "led panel"
	Thermostat  Kind = "thermostat"

	Pipes    Kind = "pipes"
	Label    Kind = "label"
	Clock    Kind = "clock with hands"
	Wires    Kind = "wires"
	Brick    Kind = "brick wall"
	Shelf    Kind = "shelf"
	Tools    Kind = "tools"
	Paper    Kind = "paper with digits"
	Phone    Kind = "phone lock screen"
	Hands    Kind = "hands"
	Gauge    Kind = "gauge with needle"
	Counter  Kind = "roller counter"
	Breakers Kind = "breaker panel"
)

var withDisplay = []Kind{Multimeter, Multimeter, Multimeter, Multimeter, Clamp, Clamp, Manometer, Manometer, Thermometer, Thermometer, Panel, Panel, Thermostat}
var without = []Kind{Pipes, Label, Label, Clock, Wires, Brick, Shelf, Tools, Paper, Paper, Phone, Hands, Gauge, Counter, Breakers}

// Scene is one photograph and what is true about it.
type Scene struct {
	Seed  uint64
	Grade Grade
	Kind  Kind
	// Hard marks a picture without a display that was made to look like one: the lock screen of a phone.
	Hard  bool
	Image *image.RGBA // as decoded from JPEG
	JPEG  []byte      // the bytes of that file
	// HasDisplay says that an instrument's glass is in the picture; a lock screen is not one.
	HasDisplay bool
	// Legible says that an honest person could read the whole main number, its sign and its point.
	Legible bool
	// Why says what hides the number when there is a display and it is not legible.
	Why string
	// Shown is the main number as on the glass: "24.5", "-0.55", "OL", ".OL", "0.L"; "" where there is no display,
	// a dark one, or none that is legible. On seven segments the letter O and the digit 0 are the same strokes.
	Shown string
	// Behind is what the glass shows also where it is not legible.
	Behind string
	// Other are the smaller numbers on the same glass, which are not the main number.
	Other []string
	// Display and Number are upright boxes around the glass and around the digits, clipped to the picture.
	Display, Number image.Rectangle
	// Corners are the glass's corners in the picture: top left, top right, bottom right, bottom left.
	Corners [4]image.Point
	// DigitHeight is the height of a main digit in pixels.
	DigitHeight float64
	// Jumping says, in a film, that the last digit changes from frame to frame.
	Jumping bool
}

// plan is all that is decided before anything is painted.
type plan struct {
	seed    uint64
	grade   Grade
	kind    Kind
	has     bool
	off     bool
	w, h    int
	d       *display
	ops     []op // painted on the plane, the display among them
	over    []op // lies over the display: leads, fingers
	main    string
	view    float64 // width of the wanted part of the plane in mm, where there is no display
	bg      func(x, y float64) rgb
	bgDZ    float64
	bgBlur  float64
	pose    pose
	light   light
	glares  []glare
	veil    float64
	bands   bands
	gain    float64 // wanted brightness over the automatic exposure
	motion  pt      // px
	defocus float64 // px
	noise   float64
	denoise float64
	sharpen float64
	wb      rgb
	quality int
	scale   float64
	dark    float64 // room light; own light keeps its strength
}

func rng(seed uint64, stream uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, stream)) }

// Size says how large the picture of a seed is.
func Size(seed uint64) (w, h int) {
	s := [][2]int{{640, 480}, {800, 600}, {960, 720}, {1000, 750}, {640, 480}, {720, 720}, {640, 720}}[rng(seed, 1).IntN(7)]
	return s[0], s[1]
}

// Draw makes the photograph of a seed. The same seed and grade give the same bytes.
func Draw(seed uint64, grade Grade) Scene {
	for try := uint64(0); ; try++ {
		p := newPlan(seed, grade, try)
		s := p.shoot(p.pose, show{main: p.main, off: p.off}, rng(seed, 40+try), p.motion, 0)
		if grade == Easy && s.HasDisplay && !s.Legible && !p.off && try < 5 {
			continue // an easy picture is a legible one, or a dark display
		}
		return s
	}
}

func newPlan(seed uint64, grade Grade, try uint64) *plan {
	r := rng(seed, 2)
	p := &plan{seed: seed, grade: grade}
	p.w, p.h = Size(seed)
	p.has = r.Float64() >= 0.37
	if p.has {
		p.kind = withDisplay[r.IntN(len(withDisplay))]
	} else {
		p.kind = without[r.IntN(len(without))]
	}
	r = rng(seed, 100+try)
	hard := float64(grade) / 2 // 0, 0.5, 1
	chance := func(easy, difficult float64) bool { return r.Float64() < easy+(difficult-easy)*hard }
	var body [4]float64
	if p.has {
		p.d, p.ops, body = instrument(r, p.kind)
		p.main = p.d.value(r, p.kind)
		p.off = r.IntN(30) == 0
	} else {
		p.ops, p.view, body = bare(r, p.kind)
	}
	p.bg = background(r, p.kind)
	skin := hx(skins[r.IntN(len(skins))])

	// where the phone is held
	f := float64(p.w) * (0.75 + 0.5*r.Float64())
	turn := func(max float64) float64 { return clamp(r.NormFloat64()*max*0.55, -max, max) * math.Pi / 180 }
	ps := pose{f: f, cx: float64(p.w) / 2, cy: float64(p.h) / 2}
	tilt, roll := []float64{8, 22, 45}[grade], []float64{5, 18, 45}[grade]
	ps.yaw, ps.pitch, ps.roll = turn(tilt), turn(tilt), turn(roll)
	share := []float64{0.3, 0.22, 0.13}[grade] + []float64{0.28, 0.4, 0.6}[grade]*sq(r.Float64())
	width := p.view
	off := []float64{0.06, 0.12, 0.15}[grade]
	if p.has {
		width = 2 * p.d.hw / share
	}
	ps.z = f * width / float64(p.w)
	ps.tx, ps.ty = r.NormFloat64()*off*width, r.NormFloat64()*off*width*0.7
	if p.has && grade == Hard && r.IntN(7) == 0 { // cut off at an edge
		a := r.Float64() * 2 * math.Pi
		ps.tx, ps.ty = math.Cos(a)*width*0.5, math.Sin(a)*width*0.4
	}
	p.pose = ps
	if p.has && r.IntN(3) == 0 { // held in the hand before the room
		p.bgDZ, p.bgBlur = 150+500*r.Float64(), 2+7*r.Float64()
		if r.IntN(2) == 0 {
			for i := range 3 {
				y := body[3]*0.35 + float64(i)*19
				p.ops = append(p.ops, finger(pt{body[2] - 5 - 4*r.Float64(), y}, 0.12+0.1*r.NormFloat64(), 16, skin, false, r.Uint32()))
			}
			p.ops = append(p.ops, finger(pt{body[0] + 9, body[3]*0.45 + 10*r.Float64()}, math.Pi-0.5, 20, skin, true, r.Uint32()))
		}
	} else if !p.has || r.IntN(2) == 0 {
		p.bgDZ = 8 + 22*r.Float64()
	} else {
		p.bgDZ = 25
	}

	// things across
	if p.has && chance(0.03, 0.4) {
		for range 1 + r.IntN(2) {
			a := pt{-420, r.NormFloat64() * 110}
			b := pt{420, r.NormFloat64() * 110}
			col := hx([]uint32{0xb01414, 0x141416, 0xd0c020, 0x2050a0, 0xe8e8e4}[r.IntN(5)])
			p.over = append(p.over, crossing(a, b, r.NormFloat64()*120, 2.2+2*r.Float64(), col))
		}
	}
	if p.has && chance(-0.1, 0.22) {
		a := r.Float64() * 2 * math.Pi
		tip := pt{math.Cos(a) * p.d.hw * (0.2 + 1.0*r.Float64()), math.Sin(a) * p.d.hh * (0.3 + 1.2*r.Float64())}
		p.over = append(p.over, finger(tip, a+0.4*r.NormFloat64(), 14+6*r.Float64(), skin, r.IntN(3) > 0, r.Uint32()))
	}

	// light
	p.dark = 0.7 + 0.5*r.Float64()
	p.light = light{tint: rgb{1, 1, 1}, dir: r.Float64() * 2 * math.Pi, slope: 0.1 + 0.25*r.Float64()*(1+hard)}
	p.wb = rgb{1, 1, 1}
	if chance(0.1, 0.8) {
		k := float32(r.NormFloat64() * 0.16)
		m := float32(r.NormFloat64() * 0.05)
		p.wb = rgb{1 + k, 1 + m, 1 - k*1.2}
	}
	if chance(0, 0.5) {
		p.dark *= math.Pow(10, -1.1*r.Float64())
	}
	if p.has && (p.d.tech == led || p.d.power > 0) && r.IntN(3) == 0 {
		p.dark *= 0.25
	}
	if chance(0.05, 0.45) {
		p.light.shade, p.light.shadeDir, p.light.shadeAt = 0.35+0.5*r.Float64(), r.Float64()*2*math.Pi, r.NormFloat64()*0.12
		p.light.shadeSoft = 0.004 + 0.1*sq(r.Float64())
	}
	if chance(0, 0.3) { // a torch in the other hand
		p.light.spot, p.light.spotR = 1.5+3*r.Float64(), 0.15+0.35*r.Float64()
		p.light.spotX, p.light.spotY = 0.5+0.2*r.NormFloat64(), 0.5+0.2*r.NormFloat64()
	}
	p.veil = 0.008 + 0.02*r.Float64()
	if chance(0.03, 0.5) {
		for range 1 + r.IntN(2) {
			g := glare{form: r.IntN(3), power: 0.15 + 1.6*sq(r.Float64()), size: 3 + 9*r.Float64(), ang: r.Float64() * math.Pi}
			hw, hh := 30.0, 15.0
			if p.has {
				hw, hh = p.d.hw, p.d.hh
			}
			g.x, g.y = (r.Float64()*2-1)*hw, (r.Float64()*2-1)*hh
			if grade == Easy {
				g.power *= 0.25
			}
			p.glares = append(p.glares, g)
		}
	}
	if chance(0.02, 0.3) {
		p.veil += 0.12 * r.Float64()
	}
	if p.has && p.d.tech == led && r.IntN(2) == 0 {
		p.bands = bands{depth: 0.15 + 0.5*r.Float64()*(0.3+hard), period: 60 + 200*r.Float64(), phase: r.Float64()}
	}

	// the phone
	p.gain = math.Exp(r.NormFloat64() * []float64{0.1, 0.2, 0.35}[grade])
	if chance(-0.1, 0.45) {
		l := []float64{1, 4, 12}[grade] * sq(r.Float64())
		a := r.Float64() * 2 * math.Pi
		p.motion = pt{math.Cos(a) * l, math.Sin(a) * l}
	}
	if chance(0, 0.45) {
		p.defocus = []float64{0, 1.6, 5}[grade] * r.Float64()
	}
	p.noise = 0.004 + 0.012*r.Float64()*(0.3+hard) + 0.012*hard*math.Max(0, -math.Log(p.dark))
	p.denoise, p.sharpen = r.Float64()*0.9, r.Float64()*(0.5+0.8*hard)
	p.quality = []int{82, 60, 24}[grade] + r.IntN([]int{14, 34, 64}[grade])
	p.frameScale()
	return p
}

// Frames is a short film of one scene from a moving hand, at about ten frames in a second. The grade is the seed's own.
// The number stands still, or its last digit jumps where Jumping is true.
func Frames(seed uint64, n int) []Scene {
	r := rng(seed, 7)
	grade := []Grade{Easy, Medium, Medium, Hard}[r.IntN(4)]
	p := newPlan(seed, grade, 0)
	jumping := p.has && !p.off && r.IntN(3) == 0 && p.main != "" && p.main[len(p.main)-1] >= '0' && p.main[len(p.main)-1] <= '9' && p.main != "0"
	var wave [6][3][3]float64 // per axis of motion: amplitude, rate, phase
	for i := range wave {
		for k := range wave[i] {
			wave[i][k] = [3]float64{r.NormFloat64() / float64(k+1), (0.25 + 0.9*float64(k) + 0.5*r.Float64()), r.Float64() * 2 * math.Pi}
		}
	}
	move := func(t float64) pose {
		var v [6]float64
		for i := range v {
			for _, w := range wave[i] {
				v[i] += w[0] * math.Sin(2*math.Pi*w[1]*t+w[2])
			}
		}
		q := p.pose
		width := q.z * float64(p.w) / q.f
		q.tx += v[0] * width * 0.022
		q.ty += v[1] * width * 0.022
		q.z *= 1 + v[2]*0.025
		q.yaw += v[3] * 0.03
		q.pitch += v[4] * 0.03
		q.roll += v[5] * 0.022
		return q
	}
	drift, hunt := r.Float64()*2*math.Pi, r.IntN(max(1, n*2))
	baseGain, baseFocus := p.gain, p.defocus
	exposure := 0.01 + 0.03*r.Float64()*(1+float64(grade))
	var out []Scene
	for i := range n {
		t := float64(i) / 10
		q := move(t)
		x0, y0 := q.project(0, 0, 0)
		x1, y1 := move(t+exposure).project(0, 0, 0)
		p.gain = baseGain * math.Exp(0.12*math.Sin(t*2+drift)+0.03*r.NormFloat64())
		p.defocus = baseFocus
		if i == hunt || i == hunt+1 {
			p.defocus += 2.5
		}
		sh := show{main: p.main, off: p.off}
		if jumping {
			b := []byte(p.main)
			b[len(b)-1] = '0' + (b[len(b)-1]-'0'+byte(r.IntN(3)+9))%10
			sh.main = string(b)
		}
		s := p.shoot(q, sh, rng(seed, 1000+uint64(i)), pt{x1 - x0, y1 - y0}, float64(i)*0.37)
		s.Jumping = jumping
		out = append(out, s)
	}
	return out
}

func (s Scene) String() string {
	return fmt.Sprintf("%d/%v %s %q legible=%v %s", s.Seed, s.Grade, s.Kind, s.Shown, s.Legible, s.Why)
}
