package camera

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
)

// Pattern is the kind of signal a status light gives.
type Pattern string

const (
	Flashes   Pattern = "flashes"    // N flashes and a pause
	TwoDigit  Pattern = "two digits" // two groups of flashes and a pause
	LongShort Pattern = "long short" // long flashes are tens, short ones units
	Steady    Pattern = "steady"
	Dark      Pattern = "off"
	Heartbeat Pattern = "heartbeat" // about one a second, on as long as off
	Flutter   Pattern = "flutter"   // 2 to 10 a second without a pause
)

// Reasons of the light.
const (
	TooShort     Reason = "too short"     // not watched for two whole cycles
	noPause      Reason = "no pause"      // no clear pause between the counts
	Disagree     Reason = "disagree"      // two cycles gave different counts
	Chopped      Reason = "chopped"       // mains or dimmed light cut up by a short exposure
	weakLight    Reason = "weak light"    // too little contrast for the noise
	noLight      Reason = "no light"      // nothing blinks and nothing can be said about steady
	ShortExposed Reason = "short exposed" // dark, but the exposure is too short to call it off
)

// Code is what the light says.
type Code struct {
	Pattern Pattern
	Count   int      // Flashes: how many; TwoDigit and LongShort: tens and units as one number
	Tens    int      // TwoDigit: first digit; LongShort: long flashes
	Units   int      // second digit; short flashes
	Colours []string // of each flash of a cycle when the light shows more than one colour
	Cycles  int      // whole cycles that agree
	Reason  Reason   // empty when the code may be used
	On, Off float64  // seconds, median length of a flash and of the dark between flashes
	Pause   float64  // seconds, shortest pause between counts
	SNR     float64  // contrast over noise of one frame
}

// OK tells whether the code may be used as a witness.
func (c *Code) OK() bool { return c.Reason == "" && c.Pattern != "" }

// Runs lists a code in two colours as counts of flashes of one colour after another, nil when it has one colour.
func (c *Code) Runs() (colours []string, counts []int) {
	for i, x := range c.Colours {
		if i == 0 || x != c.Colours[i-1] {
			colours, counts = append(colours, x), append(counts, 0)
		}
		counts[len(counts)-1]++
	}
	return colours, counts
}

// ID is the code as equipment files write it: "3", "32" as "3-2", "steady", "off", "heartbeat", "flutter"; flashes in two colours as
// "red-2-green-1".
func (c *Code) ID() string {
	switch c.Pattern {
	case Flashes:
		if colours, counts := c.Runs(); colours != nil {
			var b []string
			for i, x := range colours {
				b = append(b, fmt.Sprintf("%s-%d", x, counts[i]))
			}
			return strings.Join(b, "-")
		}
		return strconv.Itoa(c.Count)
	case TwoDigit, LongShort:
		return fmt.Sprintf("%d-%d", c.Tens, c.Units)
	}
	return string(c.Pattern)
}

// Fits tells whether this is the code that an equipment file writes so. Of two colours a camera knows which is the redder one, hardly what
// they are called: the file does.
func (c *Code) Fits(id string) bool {
	seen, counts := c.Runs()
	if seen == nil {
		return c.ID() == id
	}
	colours, want := tinted(id)
	if !slices.Equal(counts, want) {
		return false
	}
	for i := 1; i < len(seen); i++ {
		if (slices.Index(redness, seen[i]) < slices.Index(redness, seen[i-1])) != (slices.Index(redness, colours[i]) < slices.Index(redness, colours[i-1])) {
			return false
		}
	}
	return true
}

// MayBe tells whether a code in one colour may be this one in two, whose colours the camera does not tell apart.
func (c *Code) MayBe(id string) bool {
	_, counts := tinted(id)
	sum := 0
	for _, n := range counts {
		sum += n
	}
	return c.Pattern == Flashes && c.Colours == nil && sum == c.Count
}

// redness lists the colours of lights from the greenest to the reddest.
var redness = []string{"green", "amber", "red"}

// tinted takes apart the code of a light in two colours, "red-2-green-1"; nil when it is none.
func tinted(id string) (colours []string, counts []int) {
	f := strings.Split(id, "-")
	for i := 0; i+1 < len(f); i += 2 {
		n, err := strconv.Atoi(f[i+1])
		if err != nil || !slices.Contains(redness, f[i]) {
			return nil, nil
		}
		colours, counts = append(colours, f[i]), append(counts, n)
	}
	if len(f)%2 != 0 {
		return nil, nil
	}
	return colours, counts
}

// Sample is the light in one frame.
type Sample struct {
	T        int64   // ns
	Spot     float64 // mean brightness of the light
	Ring     float64 // mean brightness of the ring around it
	Exposure float64 // seconds, 0 when not known
	Hue      float64 // red minus green over their sum, NaN when not known
}

const maxSamples = 4096 // two minutes at 30 frames a second

// Counter collects samples and decodes them. It holds at most maxSamples and forgets the oldest.
type Counter struct {
	samples []Sample
	level   []float64 // what the light adds to its surroundings, 0 when dark
	state   []bool
	v       [2][]float64
	s       [2][]float64
	back    [2][]int32
}

// Add takes the next sample. Times must rise; a bad sample is refused and changes nothing.
func (c *Counter) Add(s Sample) error {
	if s.T < 0 || len(c.samples) > 0 && s.T <= c.samples[len(c.samples)-1].T {
		return fmt.Errorf("%w: sample at %d ns does not follow the one before", ErrTime, s.T)
	}
	for _, v := range [2]float64{s.Spot, s.Ring} {
		if !(v >= -1e3 && v <= 1e6) { // also when not a number; a little noise below zero is fine
			return fmt.Errorf("camera: light level %v is not a brightness", v)
		}
	}
	if math.IsNaN(s.Exposure) || s.Exposure < 0 || s.Exposure > 60 {
		return fmt.Errorf("%w: %v s, want 0 to 60", ErrExposure, s.Exposure)
	}
	if len(c.samples) == maxSamples {
		c.samples = c.samples[:copy(c.samples, c.samples[maxSamples/4:])]
	}
	c.samples = append(c.samples, s)
	return nil
}

// Reset forgets all samples.
func (c *Counter) Reset() { c.samples = c.samples[:0] }

// Span is the time watched, in seconds.
func (c *Counter) Span() float64 {
	if len(c.samples) < 2 {
		return 0
	}
	return float64(c.samples[len(c.samples)-1].T-c.samples[0].T) / 1e9
}

// burst is one run of lit or dark frames.
type burst struct {
	on         bool
	start, end float64 // seconds; a frame's state holds from half way to its neighbours
	i, j       int     // samples i..j-1
	level      float64 // mean over the inner samples
	hue        float64
}

func (b burst) length() float64 { return b.end - b.start }

// Code decodes what has been seen so far.
func (c *Counter) Code() Code {
	n := len(c.samples)
	if n < 10 || c.Span() < 1 {
		return Code{Reason: TooShort}
	}
	c.levelsOf()
	frame := c.frame()
	low, high, sigma0 := c.start()
	var runs, trial, again []burst
	var mu0, mu1, sigma float64
	best := math.Inf(-1)
	for _, first := range high { // a split by eye can lie on either side of the truth: start from several
		least := 0.055 // the shortest state that is believed in grows once flashes are known
		a, b, s, ok := low, first, sigma0, true
		score := math.Inf(-1)
		for range 4 {
			score = c.path(a, b, s, least, changeCost)
			trial = c.bursts(trial)
			var x, y, z float64
			if x, y, z, ok = c.levels(trial); !ok {
				break
			}
			a, b, s = x, y, z
			if l := 0.42 * typical(trial); l > least {
				least = l
			}
		}
		if !ok {
			continue
		}
		for range 2 {
			on, off := usual(trial)
			if on == 0 {
				break
			}
			better := c.regular(a, b, s, [2]float64{off, on})
			again = c.bursts(again)
			x, y, z, ok := c.levels(again)
			if !ok { // the runs before stay, and their score
				break
			}
			a, b, s, score = x, y, z, better
			again, trial = trial, again
		}
		if score -= float64(n) * math.Log(s); score > best {
			best, mu0, mu1, sigma = score, a, b, s
			runs, trial = trial, runs
		}
	}
	if len(runs) == 0 {
		return c.still(Code{})
	}
	for _, b := range runs {
		for i := b.i; i < b.j; i++ {
			c.state[i] = b.on
		}
	}
	contrast := mu1 - mu0
	out := Code{SNR: contrast / sigma}
	if len(runs) < 3 || contrast < 1.4*sigma || contrast < 0.01 {
		return c.still(out)
	}
	if c.chopped(mu0, mu1, frame) || uneven(runs, contrast, sigma) {
		out.Reason = Chopped
		return out
	}
	if out.SNR < 1.5 {
		out.Reason = weakLight
		return out
	}
	parse(runs, frame, &out)
	return out
}

// levelsOf fills level. The ring takes away what both see, such as mains ripple; its slow mean takes away the gain.
func (c *Counter) levelsOf() {
	c.level = c.level[:0]
	slow, m := 0.0, min(8, len(c.samples))
	for _, s := range c.samples[:m] {
		slow += s.Ring / float64(m)
	}
	for _, s := range c.samples {
		slow += 0.15 * (s.Ring - slow)
		c.level = append(c.level, (s.Spot-s.Ring)/math.Max(slow, 4))
	}
}

// frame is the median time between samples, seconds.
func (c *Counter) frame() float64 {
	d := make([]float64, 0, len(c.samples))
	for i := 1; i < len(c.samples); i++ {
		d = append(d, float64(c.samples[i].T-c.samples[i-1].T)/1e9)
	}
	return median(d)
}

func median(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	slices.Sort(x)
	return x[len(x)/2]
}

// start guesses the two levels from samples averaged over about 0.1 s and the noise from second differences.
func (c *Counter) start() (low float64, high [3]float64, sigma float64) {
	n := len(c.level)
	d := make([]float64, 0, n)
	for i := 1; i+1 < n; i++ {
		d = append(d, math.Abs(2*c.level[i]-c.level[i-1]-c.level[i+1]))
	}
	slices.Sort(d)
	sigma = d[len(d)/4] / (0.3186 * math.Sqrt(6)) // the lower quartile: in a fast blink most differences span an edge
	soft := d[:0]
	for i := 1; i+1 < n; i++ {
		soft = append(soft, (c.level[i-1]+c.level[i]+c.level[i+1])/3)
	}
	slices.Sort(soft)
	// Otsu's split of the averaged levels
	total := 0.0
	for _, v := range soft {
		total += v
	}
	left, best := 0.0, -1.0
	m := float64(len(soft))
	mu0, mu1 := soft[0], soft[len(soft)-1]
	for i, v := range soft[:len(soft)-1] {
		left += v
		k := float64(i + 1)
		a, b := left/k, (total-left)/(m-k)
		if e := k * (m - k) * (b - a) * (b - a); e > best {
			best, mu0, mu1 = e, a, b
		}
	}
	high = [3]float64{mu1, soft[len(soft)*95/100], soft[len(soft)-1]}
	return mu0, high, math.Max(sigma, 1e-6+0.02*(mu1-mu0))
}

const changeCost = 4.5 // nats that a change of state must earn

// path finds the likeliest states when every change costs penalty nats and no state is shorter than least seconds.
// It returns their score.
func (c *Counter) path(mu0, mu1, sigma, least, penalty float64) float64 {
	n := c.evidence(mu0, mu1, sigma)
	at := c.boundary
	// v[k][i]: best score of samples 0..i-1 with the last of them in a run of state k that may end here
	var best [2]float64
	var arg [2]int32
	next := 0
	for k := range 2 {
		best[k] = math.Inf(-1)
		c.v[k][0] = math.Inf(-1)
	}
	for i := 1; i <= n; i++ {
		for next < i && (next == 0 || i == n || at(i)-at(next) >= least) {
			for k := range 2 {
				from := c.v[1-k][next] - penalty
				if next == 0 {
					from = 0
				}
				if b := from - c.s[k][next]; b > best[k] {
					best[k], arg[k] = b, int32(next)
				}
			}
			next++
		}
		for k := range 2 {
			c.v[k][i] = best[k] + c.s[k][i]
			c.back[k][i] = arg[k]
		}
	}
	return c.trace(n)
}

// evidence sums the log likelihoods of both states up to each sample and returns the number of samples.
func (c *Counter) evidence(mu0, mu1, sigma float64) int {
	n := len(c.level)
	for k := range 2 {
		c.v[k] = grow(c.v[k], n+1)
		c.s[k] = grow(c.s[k], n+1)
		c.back[k] = grow(c.back[k], n+1)
	}
	for i, y := range c.level {
		for k, mu := range [2]float64{mu0, mu1} {
			z := (y - mu) / sigma
			c.s[k][i+1] = c.s[k][i] - math.Min(z*z/2, 12)
		}
	}
	return n
}

// boundary is the time before sample i at which its run may begin, in seconds.
func (c *Counter) boundary(i int) float64 {
	n := len(c.samples)
	switch {
	case i <= 0:
		return float64(c.samples[0].T) / 1e9
	case i >= n:
		return float64(c.samples[n-1].T) / 1e9
	}
	return float64(c.samples[i-1].T+c.samples[i].T) / 2e9
}

// trace follows the best path back, marks the states and returns its score.
func (c *Counter) trace(n int) float64 {
	c.state = grow(c.state, n)
	k := 0
	if c.v[1][n] > c.v[0][n] {
		k = 1
	}
	for i := n; i > 0; k = 1 - k {
		j := int(c.back[k][i])
		for t := j; t < i; t++ {
			c.state[t] = k == 1
		}
		i = j
	}
	return math.Max(c.v[0][n], c.v[1][n])
}

// regular finds the likeliest states when flashes and the dark between them have usual lengths (dark, lit): other
// lengths cost, but much longer dark runs, the pauses, cost little, and much longer flashes more. It returns their score.
func (c *Counter) regular(mu0, mu1, sigma float64, usual [2]float64) float64 {
	n := c.evidence(mu0, mu1, sigma)
	longer := [2]float64{1.6, 1.7}
	longCost := [2]float64{2.5, 8}
	var best [2]float64
	var arg [2]int32
	var next, near [2]int
	for k := range 2 {
		best[k] = math.Inf(-1)
		c.v[k][0] = math.Inf(-1)
	}
	for i := 1; i <= n; i++ {
		t := c.boundary(i)
		for k := range 2 {
			u := usual[k]
			for next[k] < i && t-c.boundary(next[k]) > longer[k]*u {
				j := next[k]
				if from := c.v[1-k][j] - c.s[k][j] - longCost[k]; j > 0 && from > best[k] {
					best[k], arg[k] = from, int32(j)
				}
				next[k]++
			}
			v, a := best[k], arg[k]
			for near[k] < i && t-c.boundary(near[k]) > 2.2*u {
				near[k]++
			}
			for j := max(near[k], 1); j < i; j++ {
				d := t - c.boundary(j)
				z := (d - u) / (0.12*u + 0.014)
				cost := math.Min(z*z/2, 14)
				if i == n && d < u { // cut off by the end
					cost = 0
				}
				if from := c.v[1-k][j] - c.s[k][j] - cost - 1; from > v {
					v, a = from, int32(j)
				}
			}
			if from := -c.s[k][0]; from > v { // the first run may have any length
				v, a = from, 0
			}
			c.v[k][i], c.back[k][i] = v+c.s[k][i], a
		}
	}
	return c.trace(n)
}

// usual is the median flash and the usual dark between flashes, 0 when too few are known.
func usual(runs []burst) (on, off float64) {
	var a, b []float64
	for i, r := range runs {
		if i == 0 || i == len(runs)-1 {
			continue
		}
		if r.on {
			a = append(a, r.length())
		} else {
			b = append(b, r.length())
		}
	}
	if len(a) < 2 || len(b) < 2 {
		return 0, 0
	}
	slices.Sort(a)
	slices.Sort(b)
	return a[len(a)/2], b[len(b)/3]
}

func grow[T any](s []T, n int) []T {
	if cap(s) < n {
		return make([]T, n)
	}
	return s[:n]
}

// bursts lists the runs of the path.
func (c *Counter) bursts(out []burst) []burst {
	out = out[:0]
	n := len(c.state)
	for i := 0; i < n; {
		j := i
		for j < n && c.state[j] == c.state[i] {
			j++
		}
		b := burst{on: c.state[i], i: i, j: j, start: float64(c.samples[i].T) / 1e9, end: float64(c.samples[j-1].T) / 1e9}
		if i > 0 {
			b.start = float64(c.samples[i-1].T+c.samples[i].T) / 2e9
		}
		if j < n {
			b.end = float64(c.samples[j-1].T+c.samples[j].T) / 2e9
		}
		from, to := i, j
		if j-i > 2 {
			from, to = i+1, j-1
		}
		hues := 0.0
		for t := from; t < to; t++ {
			b.level += c.level[t] / float64(to-from)
			if h := c.samples[t].Hue; !math.IsNaN(h) {
				b.hue += h
				hues++
			}
		}
		if hues > 0 {
			b.hue /= hues
		} else {
			b.hue = math.NaN()
		}
		out = append(out, b)
		i = j
	}
	return out
}

// levels estimates both levels and the noise from the inner samples of the runs.
func (c *Counter) levels(runs []burst) (mu0, mu1, sigma float64, ok bool) {
	var sum, count [2]float64
	inner := func(b burst) (int, int) {
		if b.j-b.i > 2 {
			return b.i + 1, b.j - 1
		}
		return b.i, b.j
	}
	for _, b := range runs {
		k := int(boolTo(b.on))
		i, j := inner(b)
		for _, y := range c.level[i:j] {
			sum[k] += y
			count[k]++
		}
	}
	if count[0] < 2 || count[1] < 2 {
		return 0, 0, 0, false
	}
	mu0, mu1 = sum[0]/count[0], sum[1]/count[1]
	ss := 0.0
	for _, b := range runs {
		mu := mu0
		if b.on {
			mu = mu1
		}
		i, j := inner(b)
		for _, y := range c.level[i:j] {
			ss += (y - mu) * (y - mu)
		}
	}
	sigma = math.Sqrt(ss / (count[0] + count[1]))
	return mu0, mu1, math.Max(sigma, 1e-6+0.02*math.Abs(mu1-mu0)), mu1 > mu0
}

// typical is the length of an ordinary flash or of the dark between two, whichever is shorter, from runs cut by neither end.
func typical(runs []burst) float64 {
	var on, off []float64
	for i, b := range runs {
		if i == 0 || i == len(runs)-1 {
			continue
		}
		if b.on {
			on = append(on, b.length())
		} else {
			off = append(off, b.length())
		}
	}
	if len(on) < 3 || len(off) < 2 {
		return 0
	}
	slices.Sort(on)
	slices.Sort(off)
	// the lower quartile of the dark runs is dark between flashes, not a pause, unless a count is one
	return math.Min(on[len(on)/2], off[len(off)/4])
}

// still says what a light that does not change is.
func (c *Counter) still(out Code) Code {
	exposed := 1.0
	for _, s := range c.samples {
		if s.Exposure > 0 {
			exposed = math.Min(exposed, s.Exposure)
		}
	}
	sorted := slices.Clone(c.level)
	level := median(sorted)
	switch n := len(sorted); {
	case sorted[n*98/100]-sorted[n*2/100] > 0.4: // something goes on here, whatever it is
		out.Reason = weakLight
	case level > 0.25:
		out.Pattern = Steady
	case exposed < 0.0166:
		out.Reason = ShortExposed
	case c.Span() < 6:
		out.Reason = TooShort
	default:
		out.Pattern = Dark
	}
	return out
}

// chopped tells whether lit stretches are cut up from frame to frame: their inner spread is far above that of dark ones.
func (c *Counter) chopped(mu0, mu1, frame float64) bool {
	n := len(c.level)
	mid := (mu0 + mu1) / 2
	var in, out, nin, nout float64
	// lit stretches with dark gaps of up to two frames closed
	for i := 0; i < n; {
		if c.level[i] < mid {
			i++
			continue
		}
		j, last := i, i
		for j < n && c.samples[j].T-c.samples[last].T < int64(2.6*frame*1e9) {
			if c.level[j] >= mid {
				last = j
			}
			j++
		}
		if last-i >= 4 {
			mean := 0.0
			for _, y := range c.level[i+1 : last] {
				mean += y / float64(last-i-1)
			}
			for _, y := range c.level[i+1 : last] {
				in += (y - mean) * (y - mean)
				nin++
			}
		}
		i = last + 1
	}
	for i := 2; i+2 < n; i++ {
		if !c.state[i-2] && !c.state[i-1] && !c.state[i] && !c.state[i+1] && !c.state[i+2] {
			out += (c.level[i] - mu0) * (c.level[i] - mu0)
			nout++
		}
	}
	if nin < 6 {
		return false
	}
	in = math.Sqrt(in / nin)
	if nout >= 6 {
		out = math.Sqrt(out / nout)
	} else {
		out = 0.1 * (mu1 - mu0)
	}
	return in > 1.8*out && in > 0.3*(mu1-mu0)
}

// uneven tells whether whole flashes differ in brightness far beyond the noise, as under a slow beat with the mains.
func uneven(runs []burst, contrast, sigma float64) bool {
	n, bad := 0, 0
	var l []float64
	for _, b := range runs {
		if b.on && b.j-b.i >= 4 {
			l = append(l, b.level)
		}
	}
	mid := median(slices.Clone(l))
	for _, b := range runs {
		if b.on && b.j-b.i >= 4 {
			n++
			if math.Abs(b.level-mid) > 0.3*contrast+3.5*sigma/math.Sqrt(float64(b.j-b.i-2)) {
				bad++
			}
		}
	}
	return n >= 3 && bad*5 > n
}
