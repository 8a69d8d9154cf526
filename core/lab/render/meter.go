package render

import (
	"bytes"
	"image"
	"image/jpeg"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
)

// Grade says how bad the pictures are.
type Grade int

const (
	Easy   Grade = iota // straight on, good light
	Medium              // hand-held: perspective, gradient, blur, noise, shadow, pale unused segments
	Hard                // the ends of every range
)

// Pic is a grey picture with its truth.
type Pic struct {
	Pix  []byte
	W, H int
	Text string // what the display shows, "-12.34", "0L"; empty when blank
	// Cells are the corners of each glyph's upright box in the picture before slant is undone: top left, top right,
	// bottom right, bottom left, with the slant of the digits in it.
	Cells   [][4][2]float64
	Glyphs  []rune // what each cell shows
	Masks   []byte // its lit segments
	Dots    []bool // whether its point is lit
	Light   bool   // light digits on dark
	Height  float64
	Minus   bool       // a minus sign is lit
	MinusAt [2]float64 // its centre
}

// Meter is one display photographed several times.
type Meter struct {
	W, H  int
	grade Grade
	rng   *rand.Rand
	seed  uint64

	Text   string
	glyphs []rune
	dots   []bool
	minus  bool

	f          font
	px         float64 // texture pixels per digit height
	on         *canvas // lit segments
	off        *canvas // all segments
	print      *canvas // words
	ghost      *canvas
	halo       *canvas // light spread by lit segments, hard grade only
	ghostLevel float64
	panel      [4]float64 // x0 y0 x1 y1 of the display window, texture
	cellX      []float64
	top        float64
	light      bool
	bg, fg     float64
	offLevel   float64
	shadow     [3]float64
	bezel      float64
	body       float64
	gradient   [2]float64
	gamma      float64
	blur       float64
	motion     [2]float64
	noise      float64
	quality    int
	glare      [][4]float64
	pose       [9]float64 // texture to picture
	marks      [][4]float64
	height     float64
	minusAt    point  // texture
	scene      *scene // nil for the kinder grades
}

// Options narrow what NewMeter draws; zero values leave it free.
type Options struct {
	Text string  // what to show, as in Pic.Text
	W, H int     // picture size, 1000 by 750 by default
	Tall float64 // digit height in the picture, pixels

	Signs []string // what stands above the number on the left, above it on the right, and behind it; left out: words at random
	Pose  uint64   // how it is photographed, drawn apart from how it looks; 0: with it
}

func (m *Meter) span(lo, hi float64) float64 { return lo + (hi-lo)*m.rng.Float64() }
func (m *Meter) chance(p float64) bool       { return m.rng.Float64() < p }

// amount draws a strength between 0 and full, scaled down for kinder grades.
func (m *Meter) amount(full float64) float64 {
	return full * [...]float64{0.1, 0.6, 1}[m.grade] * m.rng.Float64()
}

// NewMeter draws the display number seed. The ranges of the hard grade are: contrast 15-90 %, unused segments 0-40 %
// of it, shadow 0-3 px at 20-40 %, slant 0-12 degrees, tilt 20 degrees, roll 10 degrees, gradient 40 %, up to two glare
// spots, blur sigma 2.5 and motion 8 px at 60 px height, noise 2-15, gamma 0.6-1.6, ghost 0-35 %, JPEG quality 50-95,
// height 18-120 px, one in five light on dark, and what a scene adds: words, keys, a bar graph, a battery sign, a second
// number, cast shadow, reflection, uneven back light, low light, blooming. Medium takes 60 % of each range, 30-100 px,
// contrast from 30 % and no scene.
func NewMeter(seed uint64, grade Grade, o Options) *Meter {
	m := &Meter{W: o.W, H: o.H, grade: grade, seed: seed, rng: rand.New(rand.NewPCG(seed, 0x6d65746572))}
	if m.W == 0 || m.H == 0 {
		m.W, m.H = 1000, 750
	}
	m.Text = o.Text
	if m.Text == "" {
		m.Text = m.text()
	}
	m.f = font{
		width: m.span(0.46, 0.64), stroke: m.span(0.09, 0.19), gap: m.span(0.005, 0.05), bevel: m.rng.Float64(),
		slant: math.Tan(m.span(0, 12) * math.Pi / 180), tail7: m.chance(0.2), tail69: !m.chance(0.1), dot: m.span(0.1, 0.19), round: m.chance(0.5),
	}
	if m.chance(0.3) {
		m.f.slant = 0
	}
	m.f.pitch = m.f.width + math.Max(m.span(0.14, 0.42), m.f.dot*0.9+0.02)
	m.light = m.chance(0.2)
	tall := [...]float64{m.span(50, 110), m.span(30, 100), m.span(18, 120)}[grade]
	if o.Tall > 0 {
		tall = o.Tall
	}
	m.px = math.Max(30, math.Min(150, tall*1.3))
	contrast := [...]float64{m.span(0.5, 0.9), m.span(0.3, 0.9), m.span(0.15, 0.9)}[grade]
	if m.light {
		m.bg = m.span(10, 60)
		m.fg = m.bg + contrast*(245-m.bg)
	} else {
		m.bg = m.span(90, 230)
		m.fg = m.bg * (1 - contrast)
	}
	m.offLevel = m.amount(0.4)
	if m.chance(0.3) {
		m.offLevel = 0
	}
	if m.chance(0.3) {
		m.ghostLevel = m.amount(0.35)
	}
	if grade == Hard {
		m.scene = newScene(seed, tall)
	}
	m.draw(o.Signs)
	if o.Pose != 0 {
		m.rng = rand.New(rand.NewPCG(o.Pose, 0x706f7365))
	}

	// where the display lies in the picture
	k := tall / m.px
	roll, yaw, pitch := m.amount(10), m.amount(20), m.amount(20)
	if m.chance(0.5) {
		roll = -roll
	}
	if m.chance(0.5) {
		yaw = -yaw
	}
	if m.chance(0.5) {
		pitch = -pitch
	}
	m.place(k, roll*math.Pi/180, yaw*math.Pi/180, pitch*math.Pi/180)
	m.height = tall

	s := tall / 60
	m.blur = math.Min(m.amount(2.5)*s, 4)
	dir := m.rng.Float64() * 2 * math.Pi
	move := math.Min(m.amount(8)*s, 10) * 0.7
	if m.chance(0.5) {
		move = 0
	}
	m.motion = [2]float64{math.Cos(dir) * move, math.Sin(dir) * move}
	m.noise = 2 + m.amount(13)
	g := m.amount(0.4)
	dir = m.rng.Float64() * 2 * math.Pi
	m.gradient = [2]float64{g * math.Cos(dir), g * math.Sin(dir)}
	m.gamma = 1 + m.amount(0.6)
	if m.chance(0.5) {
		m.gamma = 1 - m.amount(0.4)
	}
	m.quality = 95 - int(m.amount(45))
	m.body, m.bezel = m.span(20, 230), m.span(10, 240)
	if o.Pose != 0 { // the same meter
		r := rand.New(rand.NewPCG(seed, 0x626f6479))
		m.body, m.bezel = 20+210*r.Float64(), 10+230*r.Float64()
	}
	if grade != Easy {
		for range m.rng.IntN(3) {
			m.glare = append(m.glare, [4]float64{m.span(0.1, 0.9), m.span(0.1, 0.9), m.span(0.3, 1.2) * tall, m.amount(150)})
		}
	}
	for range m.rng.IntN(12) {
		m.marks = append(m.marks, [4]float64{m.span(0, 1), m.span(0, 1), m.span(0.02, 0.12), m.span(20, 230)})
	}
	return m
}

func (m *Meter) text() string {
	if m.chance(0.1) {
		return [...]string{"0L", "0.L", ".0L"}[m.rng.IntN(3)]
	}
	n := 3 + m.rng.IntN(3)
	if m.chance(0.6) {
		n = 4
	}
	var b strings.Builder
	if m.chance(0.25) {
		b.WriteByte('-')
	}
	dot := m.rng.IntN(n+1) - 1 // after digit dot; -1 none
	if dot == n-1 {
		dot = -1
	}
	for i := range n {
		d := m.rng.IntN(10)
		if i == 0 && n > 1 && m.chance(0.2) {
			d = 1
		}
		b.WriteString(strconv.Itoa(d))
		if i == dot {
			b.WriteByte('.')
		}
	}
	return b.String()
}

// draw makes the display at its own resolution: digit height px, one canvas for each kind of ink.
func (m *Meter) draw(signs []string) {
	for _, r := range m.Text {
		switch r {
		case '-':
			m.minus = true
		case '.':
			if len(m.dots) == 0 {
				m.glyphs, m.dots = append(m.glyphs, ' '), append(m.dots, true)
			} else {
				m.dots[len(m.dots)-1] = true
			}
		default:
			m.glyphs, m.dots = append(m.glyphs, r), append(m.dots, false)
		}
	}
	n := len(m.glyphs)
	lead := 0
	if n < 4 {
		lead = m.rng.IntN(5 - n)
	}
	if m.glyphs[0] == ' ' {
		lead = 0
	}
	for range lead {
		m.glyphs, m.dots = append([]rune{' '}, m.glyphs...), append([]bool{false}, m.dots...)
	}
	n = len(m.glyphs)
	h := m.px
	left := m.span(0.3, 0.7)
	if m.minus {
		left += 0.6
	}
	up, down, right := m.span(0.2, 0.9), m.span(0.2, 0.7), m.span(0.2, 1.2)
	if signs != nil {
		up, right = math.Max(up, 0.7), math.Max(right, 1)
	}
	wide := left + float64(n)*m.f.pitch + right + m.f.slant
	border := 0.6
	m.panel = [4]float64{border * h, border * h, (border + wide) * h, (border + up + 1 + down) * h}
	w, ht := int(m.panel[2]+border*h), int(m.panel[3]+border*h)
	m.on, m.off, m.print, m.ghost = newCanvas(w, ht), newCanvas(w, ht), newCanvas(w, ht), newCanvas(w, ht)
	m.top = (border + up) * h
	for i := range n {
		x := (border + left + float64(i)*m.f.pitch) * h
		m.cellX = append(m.cellX, x)
		m.digit(m.on, x, m.f.mask(m.glyphs[i]), m.dots[i])
		m.digit(m.off, x, 0x7f, i < n-1)
		m.digit(m.ghost, x, m.f.mask(rune('0'+m.rng.IntN(10))), false)
	}
	if m.minus {
		bw, bt := m.span(0.25, 0.45), math.Max(m.f.stroke*m.span(0.7, 1), 0.07)
		x := m.cellX[0] + (m.f.slant*0.5-bw-m.span(0.08, 0.2))*h
		for i, r := range m.glyphs { // a floating sign stands before the first digit shown
			if r != ' ' {
				if i > 0 && m.chance(0.5) {
					x = m.cellX[i] + (m.f.slant*0.5-bw-0.15)*h
				}
				break
			}
		}
		y := m.top + h/2
		m.minusAt = point{x + bw*h/2, y}
		m.on.fill([]point{{x, y - bt*h/2}, {x + bw*h, y - bt*h/2}, {x + bw*h, y + bt*h/2}, {x, y + bt*h/2}}, 1)
	}
	for i, s := range signs {
		at := [3]point{{m.panel[0] + 0.15*h, m.top - 0.55*h}, {m.cellX[n-1] - 0.3*h, m.top - 0.55*h}, {m.cellX[n-1] + (m.f.width+0.25+m.f.slant)*h, m.top + 0.5*h}}[i]
		m.print.word(s, at.x, at.y, 0.27*h, 1)
	}
	// words beside the number: always smaller than the digits and clear of them
	words := []string{"AUTO", "DC", "AC", "HOLD", "mV", "MAX", "V", "k", "TRUE RMS", "H"}
	if signs == nil && up > 0.42 {
		for range m.rng.IntN(3) {
			m.print.word(words[m.rng.IntN(len(words))], m.panel[0]+m.rng.Float64()*wide*h*0.7, m.panel[1]+0.06*h, math.Min(0.3, up-0.2)*h, 1)
		}
	}
	if signs == nil && right > 0.6 && m.chance(0.7) {
		m.print.word([...]string{"V", "mV", "k", "A"}[m.rng.IntN(4)], m.cellX[n-1]+(m.f.width+0.3+m.f.slant)*h, m.top+m.span(0, 0.6)*h, 0.3*h, 1)
	}
	if m.scene != nil {
		m.scene.inside(m, up, down, right)
		m.halo = newCanvas(w, ht)
		copy(m.halo.pix, m.on.pix)
		blur(m.halo.pix, w, ht, 0.12*h)
	}
	m.shadow = [3]float64{m.amount(3) * h / 60, m.amount(3) * h / 60, m.span(0.2, 0.4)}
}

func (m *Meter) digit(c *canvas, x float64, mask byte, dot bool) {
	h := m.px
	at := func(p point) point { return point{x + (p.x+m.f.slant*(1-p.y))*h, m.top + p.y*h} }
	for s := range 7 {
		if mask>>s&1 == 0 {
			continue
		}
		poly := m.f.outline(s)
		for i := range poly {
			poly[i] = at(poly[i])
		}
		c.fill(poly, 1)
	}
	if dot {
		d := m.f.dot
		mid := at(point{m.f.width + (m.f.pitch-m.f.width)/2, 1 - d/2})
		if m.f.round {
			c.disc(mid.x, mid.y, d*h/2, 1)
		} else {
			r := d * h / 2
			c.fill([]point{{mid.x - r, mid.y - r}, {mid.x + r, mid.y - r}, {mid.x + r, mid.y + r}, {mid.x - r, mid.y + r}}, 1)
		}
	}
}

// place sets the pose: the display turned in space, seen from four of its widths away, somewhere in the picture.
func (m *Meter) place(k, roll, yaw, pitch float64) {
	cw, ch := float64(m.on.w), float64(m.on.h)
	far := 4 * cw * k
	project := func(x, y float64) (float64, float64) {
		x, y = (x-cw/2)*k, (y-ch/2)*k
		x, y = x*math.Cos(roll)-y*math.Sin(roll), x*math.Sin(roll)+y*math.Cos(roll)
		z := x*math.Sin(yaw) + y*math.Sin(pitch)
		x, y = x*math.Cos(yaw), y*math.Cos(pitch)
		s := far / (far + z)
		return x * s, y * s
	}
	x0, y0, x1, y1 := 1e9, 1e9, -1e9, -1e9
	for _, c := range [4][2]float64{{m.panel[0], m.panel[1]}, {m.panel[2], m.panel[1]}, {m.panel[2], m.panel[3]}, {m.panel[0], m.panel[3]}} {
		x, y := project(c[0], c[1])
		x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
	}
	free := func(lo, hi, size float64) float64 {
		if room := size - (hi - lo); room > 0 {
			return m.rng.Float64()*room - lo
		}
		return (size-(hi-lo))/2 - lo
	}
	ox, oy := free(x0, x1, float64(m.W)), free(y0, y1, float64(m.H))
	var src, dst [4][2]float64
	for i, c := range [4][2]float64{{0, 0}, {cw, 0}, {cw, ch}, {0, ch}} {
		x, y := project(c[0], c[1])
		src[i], dst[i] = c, [2]float64{x + ox, y + oy}
	}
	m.pose = Homography(src, dst)
}

// Frame takes picture number i of the meter: the hand, the noise and the glare differ from frame to frame.
func (m *Meter) Frame(i int) *Pic {
	r := rand.New(rand.NewPCG(m.seed, 0x6672616d65+uint64(i)))
	shift := [2]float64{r.NormFloat64() * 2, r.NormFloat64() * 2}
	if i == 0 {
		shift = [2]float64{}
	}
	fwd := mul(mat{1, 0, shift[0], 0, 1, shift[1], 0, 0, 1}, m.pose)
	inv := invert(fwd)
	w, h := m.W, m.H
	img := make([]float32, w*h)
	for y := range h {
		for x := range w {
			img[y*w+x] = float32(m.body)
		}
	}
	if m.scene != nil {
		m.scene.around(img, w, h)
	}
	for _, k := range m.marks { // printing and knobs on the body
		cx, cy, rad := k[0]*float64(w), k[1]*float64(h), k[2]*float64(w)
		for y := max(0, int(cy-rad)); y < min(h, int(cy+rad)); y++ {
			for x := max(0, int(cx-rad)); x < min(w, int(cx+rad)); x++ {
				if math.Hypot(float64(x)-cx, float64(y)-cy) < rad {
					img[y*w+x] = float32(k[3])
				}
			}
		}
	}
	m.paint(img, w, h, fwd, inv)
	if m.scene != nil {
		m.scene.shine(img, w, h)
	}
	m.spoil(img, w, h, r)
	p := &Pic{Pix: make([]byte, w*h), W: w, H: h, Text: m.Text, Glyphs: m.glyphs, Dots: m.dots, Light: m.light, Height: m.height, Minus: m.minus}
	p.MinusAt[0], p.MinusAt[1] = fwd.apply(m.minusAt.x, m.minusAt.y)
	for i, v := range img {
		p.Pix[i] = byte(math.Max(0, math.Min(255, float64(v)+0.5)))
	}
	if m.quality < 95 {
		p.Pix = throughJPEG(p.Pix, w, h, m.quality)
	}
	for i, x := range m.cellX {
		p.Masks = append(p.Masks, m.f.mask(m.glyphs[i]))
		var c [4][2]float64
		for j, q := range [4]point{{0, 0}, {m.f.width, 0}, {m.f.width, 1}, {0, 1}} {
			tx, ty := x+(q.x+m.f.slant*(1-q.y))*m.px, m.top+q.y*m.px
			c[j][0], c[j][1] = fwd.apply(tx, ty)
		}
		p.Cells = append(p.Cells, c)
	}
	return p
}

// paint draws the window into the picture.
func (m *Meter) paint(img []float32, w, h int, fwd, inv mat) {
	x0, y0, x1, y1 := float64(w), float64(h), 0.0, 0.0
	for _, c := range [4][2]float64{{0, 0}, {float64(m.on.w), 0}, {float64(m.on.w), float64(m.on.h)}, {0, float64(m.on.h)}} {
		x, y := fwd.apply(c[0], c[1])
		x0, y0, x1, y1 = math.Min(x0, x), math.Min(y0, y), math.Max(x1, x), math.Max(y1, y)
	}
	bg, fg := m.bg, m.fg-m.bg
	for y := max(0, int(y0)); y < min(h, int(y1)+1); y++ {
		for x := max(0, int(x0)); x < min(w, int(x1)+1); x++ {
			u, v := inv.apply(float64(x), float64(y))
			if u < 0 || v < 0 || u >= float64(m.on.w) || v >= float64(m.on.h) {
				continue
			}
			if u < m.panel[0] || v < m.panel[1] || u >= m.panel[2] || v >= m.panel[3] {
				e := 0.3 * m.px
				if u > m.panel[0]-e && v > m.panel[1]-e && u < m.panel[2]+e && v < m.panel[3]+e {
					img[y*w+x] = float32(m.bezel)
				}
				continue
			}
			on := m.on.at(u, v)
			a := math.Max(on, m.print.at(u, v)*0.9)
			if m.offLevel > 0 {
				a = math.Max(a, m.off.at(u, v)*m.offLevel)
			}
			if m.ghostLevel > 0 {
				a = math.Max(a, m.ghost.at(u, v)*m.ghostLevel)
			}
			if m.shadow[0]+m.shadow[1] > 0.1 && !m.light {
				a = math.Max(a, m.on.at(u-m.shadow[0], v-m.shadow[1])*m.shadow[2])
			}
			v2 := bg + fg*a
			if m.scene != nil {
				if m.light && m.scene.bloom > 0 {
					v2 += fg * m.scene.bloom * m.halo.at(u, v) * (1 - a)
				} else if !m.light {
					v2 *= m.scene.light(m, u, v)
				}
			}
			img[y*w+x] = float32(v2)
		}
	}
}

// spoil adds light, lens, hand and sensor.
func (m *Meter) spoil(img []float32, w, h int, r *rand.Rand) {
	var curve [1025]float32 // gamma over 0 to twice full scale
	for i := range curve {
		curve[i] = float32(255 * math.Pow(float64(i)/512, m.gamma))
	}
	for y := range h {
		gy := 1 + m.gradient[1]*(float64(y)/float64(h)*2-1)
		for x := range w {
			g := gy + m.gradient[0]*(float64(x)/float64(w)*2-1)
			v := math.Max(0, math.Min(1.999, float64(img[y*w+x])*g/255)) * 512
			i := int(v)
			img[y*w+x] = curve[i] + (curve[i+1]-curve[i])*float32(v-float64(i))
		}
	}
	for _, g := range m.glare {
		cx, cy := g[0]*float64(w)+r.NormFloat64()*20, g[1]*float64(h)+r.NormFloat64()*20
		for y := max(0, int(cy-3*g[2])); y < min(h, int(cy+3*g[2])); y++ {
			for x := max(0, int(cx-3*g[2])); x < min(w, int(cx+3*g[2])); x++ {
				dx, dy := (float64(x)-cx)/g[2], (float64(y)-cy)/g[2]
				img[y*w+x] += float32(g[3] * math.Exp(-(dx*dx + dy*dy)))
			}
		}
	}
	if m.blur > 0.3 {
		blur(img, w, h, m.blur)
	}
	if n := math.Hypot(m.motion[0], m.motion[1]); n > 1 {
		smear(img, w, h, m.motion)
	}
	for i := range img {
		img[i] += float32(m.noise * normals[r.Uint32()&4095])
	}
}

var normals = func() [4096]float64 {
	r := rand.New(rand.NewPCG(1, 2))
	var t [4096]float64
	for i := range t {
		t[i] = r.NormFloat64()
	}
	return t
}()

func (c *canvas) at(x, y float64) float64 {
	x, y = x-0.5, y-0.5
	if x < 0 || y < 0 || x >= float64(c.w-1) || y >= float64(c.h-1) {
		return 0
	}
	i, j := int(x), int(y)
	fx, fy := float32(x-float64(i)), float32(y-float64(j))
	p := c.pix[j*c.w+i:]
	q := c.pix[(j+1)*c.w+i:]
	return float64((p[0]*(1-fx)+p[1]*fx)*(1-fy) + (q[0]*(1-fx)+q[1]*fx)*fy)
}

func blur(img []float32, w, h int, sigma float64) {
	n := int(math.Ceil(2.5 * sigma))
	k := make([]float32, 2*n+1)
	sum := float32(0)
	for i := range k {
		k[i] = float32(math.Exp(-float64((i-n)*(i-n)) / (2 * sigma * sigma)))
		sum += k[i]
	}
	for i := range k {
		k[i] /= sum
	}
	tmp := make([]float32, w*h)
	for y := range h {
		row := img[y*w : (y+1)*w]
		for x := range w {
			s := float32(0)
			for i, kv := range k {
				s += kv * row[max(0, min(w-1, x+i-n))]
			}
			tmp[y*w+x] = s
		}
	}
	for y := range h {
		out := img[y*w : (y+1)*w]
		clear(out)
		for i, kv := range k {
			row := tmp[max(0, min(h-1, y+i-n))*w:][:w]
			for x, v := range row {
				out[x] += kv * v
			}
		}
	}
}

func smear(img []float32, w, h int, d [2]float64) {
	src := append([]float32(nil), img...)
	n := int(math.Hypot(d[0], d[1])) + 1
	for y := range h {
		for x := range w {
			s := float32(0)
			for i := range n {
				t := float64(i)/float64(n) - 0.5
				xx := max(0, min(w-1, x+int(math.Round(t*d[0]))))
				yy := max(0, min(h-1, y+int(math.Round(t*d[1]))))
				s += src[yy*w+xx]
			}
			img[y*w+x] = s / float32(n)
		}
	}
}

func throughJPEG(pix []byte, w, h, quality int) []byte {
	var b bytes.Buffer
	g := &image.Gray{Pix: pix, Stride: w, Rect: image.Rect(0, 0, w, h)}
	if err := jpeg.Encode(&b, g, &jpeg.Options{Quality: quality}); err != nil {
		panic("synth: encoding a grey picture failed")
	}
	d, err := jpeg.Decode(&b)
	if err != nil {
		panic("synth: decoding an encoded picture failed")
	}
	out := d.(*image.Gray)
	if out.Stride == w {
		return out.Pix
	}
	packed := make([]byte, w*h)
	for y := range h {
		copy(packed[y*w:(y+1)*w], out.Pix[y*out.Stride:])
	}
	return packed
}
