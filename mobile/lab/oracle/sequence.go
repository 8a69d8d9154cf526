package oracle

// moment is what there is to be seen and measured at one step of a start.
type moment struct {
	step  string
	s     now
	volts map[string]float64

	draft, port, sensed float64 // in. w.c.: at the fan, at its port, at the switch
	glow                string  // none, weak, bright
	flame               string  // none, good, some, bang, out
	micro               float64 // uA through the rod
	air                 float64 // share of the air that should flow
	code                string  // of the status light
}

// order of the steps of a start.
var order = []string{"rest", "call", "draft", "warm-up", "trial", "run", "heating", "steady"}

func rank(step string) int {
	for i, s := range order {
		if s == step {
			return i
		}
	}
	return -1
}

// fuseAmps is what the board fuse stands for a moment.
const fuseAmps = 4

// at works out everything at a moment, and blows the fuse when it is overloaded.
func (f *Furnace) at(step string, s now) moment {
	m := moment{step: step, s: s, glow: "none", flame: "none"}
	m.volts = f.volts(s)
	if f.fuse && (m.volts["R-sec"]-m.volts["R"])/0.05 > fuseAmps {
		f.fuse = false
		m.volts = f.volts(s)
	}
	m.draft = f.fanSpeed(m.volts) * f.unit.draft
	for name, x := range map[string]float64{"vent": 0.18, "vent-partly": 0.40, "intake": 0.30, "apart": 0.95, "housing-water": 0.25} {
		if f.bad(name) {
			m.draft *= x
		}
	}
	m.port, m.sensed = m.draft, m.draft
	if f.bad("port") {
		m.port *= 0.05
		m.sensed = m.port
	}
	for name, x := range map[string]float64{"hose-split": 0.25, "hose-off": 0, "hose-wet": 0.2} {
		if f.bad(name) {
			m.sensed *= x
		}
	}
	m.air = f.airflow(m.volts)
	return m
}

// across is the size of a voltage.
func (m *moment) across(a, b string) float64 { return abs(m.volts[a] - m.volts[b]) }

func abs(x float64) float64 {
	if x < 0 {
		return -x
	}
	return x
}

// fanSpeed is 1 for a draft fan that runs as it should.
func (f *Furnace) fanSpeed(v map[string]float64) float64 {
	switch {
	case abs(v["IND-m"]-v["IND-n"]) < 90 || f.bad("fan-winding") || f.bad("fan-seized") || f.bad("fan-hot"):
		return 0
	case f.bad("fan-cap-open"):
		return 0
	case f.bad("fan-wheel"):
		return 0.12
	case f.bad("fan-cap"):
		return 0.45
	case f.bad("fan-drags"):
		return 0.5
	}
	return 1
}

// airflow is 1 for a blower that moves the air it should.
func (f *Furnace) airflow(v map[string]float64) float64 {
	switch {
	case abs(v["BLW-m"]-v["BLW-n"]) < 90 || f.bad("blower-seized") || f.bad("blower-cap-dead") || f.bad("blower-winding") || f.bad("wheel-loose"):
		return 0
	}
	x := 1.0
	for name, k := range map[string]float64{"filter": 0.52, "registers": 0.55, "return": 0.5, "coil": 0.54, "duct": 0.54, "wheel-dirty": 0.56, "blower-cap": 0.55, "blower-drags": 0.52} {
		if f.bad(name) {
			x *= k
		}
	}
	return x
}

// rise is how much warmer the air gets, dF.
func (f *Furnace) rise(m *moment) float64 {
	if m.flame != "good" && m.flame != "some" || m.air == 0 {
		return 0
	}
	r := f.unit.rise / m.air
	if f.bad("over-fired") {
		r *= 1.3
	}
	return r
}

// gas is the pressure at the inlet of the valve while it is open, in. w.c.
func (f *Furnace) gas() float64 {
	switch {
	case f.bad("gas-off") || f.bad("cock"):
		return 0
	case f.bad("gas-low"):
		return 3.4
	}
	return f.unit.inlet
}

// start plays one start and gives its moments. The last one is where it ends up: running, or where it hangs.
func (f *Furnace) start(call bool) []moment {
	for range 3 {
		before := f.fuse
		out := f.play(call)
		if f.fuse == before {
			return out
		}
	}
	return f.play(call)
}

// safe is the string the board sees: what it must, at its pins.
func (f *Furnace) play(call bool) []moment {
	on := func(outs ...string) map[string]bool {
		m := map[string]bool{}
		for _, o := range outs {
			m[o] = true
		}
		return m
	}
	s := now{out: on(), called: call, press: f.bad("press-closed")}
	var out []moment
	put := func(step string, code string) *moment {
		m := f.at(step, s)
		m.code = code
		out = append(out, m)
		return &out[len(out)-1]
	}
	sees := func(m *moment, net, blind string) bool { return m.across(net, "C") > 15 && !f.bad(blind) }
	m := put("rest", "slow-blink")
	alive := func(m *moment) bool { return m.across("R", "C") > 16 && !f.bad("board-dead") }
	if f.bad("board-fan-welded") && m.sensed >= f.unit.set {
		s.press = !f.bad("press-open")
		m = put("rest", "slow-blink")
	}
	switch {
	case !alive(m):
		m.code = "off"
		return out
	case f.bad("board-sees-flame"):
		m.code = "5"
		return out
	case !sees(m, "HS", "board-limit"):
		s.out = on("BLW")
		if f.unit.fanOnLimit {
			s.out = on("BLW", "IND")
		}
		put("limit", "4")
		return out
	case !call || !sees(m, "W", "board-call"):
		return out
	}
	m = put("call", "steady")
	if sees(m, "PS-out", "board-press") {
		m.code = "2"
		return out
	}
	s.out = on("IND")
	m = put("draft", "steady")
	set := f.unit.set
	if f.bad("press-wrong") {
		set = 1.6
	}
	s.press = f.bad("press-closed") || m.sensed >= set && !f.bad("press-open")
	if f.bad("press-wrong") {
		s.press = false
	}
	*m = f.at("draft", s)
	if !alive(m) {
		m.code = "off"
		return out
	}
	if m.code = "steady"; !sees(m, "PS-out", "board-press") {
		m.code = "3"
		return out
	}
	s.out = on("IND", "IGN")
	m = put("warm-up", "steady")
	m.glow = f.glows(m)
	lit := m.glow
	s.hot, s.out = true, on("IND", "IGN", "GV")
	m = put("trial", "steady")
	if !alive(m) {
		m.code = "off"
		return out
	}
	m.glow = f.glows(m)
	m.flame = f.lights(m, lit)
	if m.flame == "none" {
		m.code = "6"
		return out
	}
	m.micro = f.micro()
	if f.bad("crossover") {
		m.micro = 0
	}
	if m.flame == "bang" {
		m.micro = f.unit.flame
	}
	ok := m.micro >= f.unit.least && !f.bad("board-flame") && m.across("LB", "CHASSIS") > 80 && m.across("C", "CHASSIS") < 3
	if !ok {
		m.code = "6"
		return out
	}
	flame, micro := m.flame, m.micro
	s.out = on("IND", "GV")
	for _, step := range order[rank("run"):] {
		if step == "heating" {
			s.out = on("IND", "GV", "BLW")
		}
		m = put(step, "steady")
		m.flame, m.micro = flame, micro
		if flame == "bang" {
			m.flame = "good"
		}
	}
	if hot := f.rise(m); m.air == 0 || hot > 84 || f.bad("limit-early") {
		s.limit, s.out = true, on("BLW")
		if f.unit.fanOnLimit {
			s.out = on("BLW", "IND")
		}
		*m = f.at("steady", s)
		m.flame, m.code = "out", "4"
	}
	return out
}

func (f *Furnace) glows(m *moment) string {
	w := m.across("IGN-m", "IGN-n")
	switch {
	case w < 70 || f.bad("cracked") || f.bad("hot-crack") && m.s.hot:
		return "none"
	case f.bad("aged") || f.bad("wrong-igniter") || w < 96:
		return "weak"
	}
	return "bright"
}

// opens tells whether the gas valve opens.
func (f *Furnace) opens(m *moment) bool {
	return m.across("GV-1", "GV-2") > 17 && !f.bad("valve-stuck") && !f.bad("coil-open") && !f.bad("coil-shorted")
}

func (f *Furnace) lights(m *moment, glow string) string {
	if !f.opens(m) || f.bad("valve-switch") || f.gas() < 4 || glow != "bright" || m.glow != "bright" || f.bad("moved") {
		return "none"
	}
	switch {
	case f.bad("burners-dirty"):
		return "bang"
	case f.bad("crossover"):
		return "some"
	}
	return "good"
}

// micro is the flame current, uA.
func (f *Furnace) micro() float64 {
	x := f.unit.flame
	for name, k := range map[string]float64{"rod-dirty": 0.13, "porcelain": 0.05, "bent": 0.03, "rod-lead": 0, "burner-ground": 0.05, "reversed": 0.02, "ground-open": 0.05, "bond-open": 0.05} {
		if f.bad(name) {
			x *= k
		}
	}
	return x
}

// heats tells whether the house gets heat: two whole cycles.
func (f *Furnace) heats() bool {
	if !f.Live() {
		return false
	}
	for range 2 {
		f.PowerCycle()
		ms := f.start(f.Calling && !f.statBlind())
		m := ms[len(ms)-1]
		if m.step != "steady" || m.flame != "good" || m.s.limit {
			return false
		}
	}
	return true
}

// statBlind: the thermostat does not call though it was turned up.
func (f *Furnace) statBlind() bool { return f.bad("warm") }

// view is the moment that somebody sees who looks at a step of a start ("" the state in which it ends up).
func (f *Furnace) view(step string, call bool) *moment {
	ms := f.start(call && f.Calling && !f.statBlind())
	last := &ms[len(ms)-1]
	if !f.Strict || step == "" || !call {
		return pick(ms, step)
	}
	stuck := last.step != "steady" && last.code != "slow-blink" && last.code != "off"
	if r := rank(step); r <= f.seen {
		f.tries--
		f.seen = r
	} else {
		f.seen = r
	}
	switch {
	case stuck && f.tries <= 0 && rank(last.step) >= rank("draft"): // locked out: everything rests
		rest := f.at("lock-out", now{out: map[string]bool{}, called: true, press: f.bad("press-closed")})
		rest.code = last.code
		return &rest
	case !stuck && f.tries < 3 && rank(step) <= rank("run"): // it has been running for long
		return last
	}
	return pick(ms, step)
}

func pick(ms []moment, step string) *moment {
	for i := range ms {
		if ms[i].step == step && step != "" {
			return &ms[i]
		}
	}
	return &ms[len(ms)-1]
}
