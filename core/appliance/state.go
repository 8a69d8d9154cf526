package appliance

import "math"

// state is one hypothesis in one situation: every slot, and the volts of every net.
type state struct {
	e   *Engine
	c   *config
	val []float64

	g, gd     []float64 // conductance of each branch now, S
	x, xd     []float64 // volts in the order of elimination, a.c. and d.c.
	y         []float64 // work space
	fac, facd *factor
	joined    bool // g and gd hold this hypothesis
	hash      key  // of g, gd and what else the a.c. solution follows from
	memo      *memo
	solved    *solved // of the a.c. network as it is, nil when unknown
	acOK      bool    // fac belongs to g
	dcOK      bool    // facd belongs to gd
	live      bool    // some d.c. e.m.f. is not zero

	step    int // of the control; -1 none
	stuck   int // step that failed, -1
	reached []bool
	lamp    int // index of the pattern shown, -1 none
	unsure  bool
	plain   bool // boards drive nothing but what the file says for sure
	other   bool // the state that is visited is the other one of two: see run
}

func (e *Engine) newState() *state {
	n, nb := len(e.nodeNames), len(e.branches)
	return &state{e: e, c: e.newConfig(), val: make([]float64, len(e.init)), g: make([]float64, nb), gd: make([]float64, nb),
		x: make([]float64, n), xd: make([]float64, n), y: make([]float64, n),
		reached: make([]bool, len(e.steps)), step: -1, stuck: -1, lamp: -1}
}

func (s *state) any(slots []int32) bool {
	for _, i := range slots {
		if s.val[i] > 0.5 {
			return true
		}
	}
	return false
}

func (s *state) volt(node int32) float64 {
	if node < 0 {
		return 0
	}
	return s.x[s.e.pat.perm[node]]
}

func (s *state) voltDC(node int32) float64 {
	if node < 0 {
		return 0
	}
	return s.xd[s.e.pat.perm[node]]
}

// across is the size of the voltage along a branch, whichever way it points: a coil pulls either way.
func (s *state) across(branch int, dc bool) float64 {
	x := s.x
	if dc {
		x = s.xd
	}
	return math.Abs(s.e.pat.drop(x, branch, &s.c.coef[branch]))
}

// current through a branch, A.
func (s *state) current(branch int) float64 {
	u := s.e.pat.drop(s.x, branch, &s.c.coef[branch])
	if emf := s.e.branches[branch].acEmf; emf >= 0 {
		u -= s.val[emf]
	}
	return s.g[branch] * u
}

func (s *state) currentDC(branch int) float64 {
	if !s.live {
		return 0
	}
	u := s.e.pat.drop(s.xd, branch, &s.c.coef[branch])
	if emf := s.e.branches[branch].dcEmf; emf >= 0 {
		u -= s.val[emf]
	}
	return s.gd[branch] * u
}

// start puts the appliance at rest as the hypothesis leaves it: cold, nothing tripped.
func (s *state) start() {
	copy(s.val, s.c.val)
	clear(s.x)
	clear(s.xd)
	s.joined, s.acOK, s.dcOK, s.live = false, false, false, false
	s.step, s.stuck, s.lamp, s.unsure = -1, -1, -1, false
	clear(s.reached)
}

// conduct works out the conductance of every branch and reports whether any changed.
func (s *state) conduct() bool {
	e, c := s.e, s.c
	changed := !s.joined
	if changed {
		s.joined = true
		s.hash = c.hash
		copy(s.g, c.ac)
		copy(s.gd, c.dc)
		for i, f := range c.force {
			if f < 0 {
				ac, dc := s.cut(i)
				s.set(i, ac, dc)
			}
		}
	}
	for _, i := range e.gated {
		if c.force[i] != 0 {
			continue
		}
		br := &e.branches[i]
		ac, dc := c.ac[i], c.dc[i]
		if (s.val[br.gate] > 0.5) == br.invert {
			ac, dc = s.cut(int(i))
		}
		if s.g[i] != ac || s.gd[i] != dc {
			s.set(int(i), ac, dc)
			changed = true
		}
	}
	if changed {
		s.acOK, s.dcOK, s.solved = false, false, nil
	}
	return changed
}

// set changes the conductance of one branch, and the hash with it.
func (s *state) set(i int, ac, dc float64) {
	if s.memo != nil {
		s.hash.mix(i, s.g[i], s.gd[i])
		s.hash.mix(i, ac, dc)
	}
	s.g[i], s.gd[i] = ac, dc
}

// cut is what an open branch still conducts.
func (s *state) cut(i int) (ac, dc float64) {
	if s.c.ac[i] > 0 {
		ac = s.e.branches[i].off
	}
	if s.c.dc[i] > 0 {
		dc = s.e.branches[i].off
	}
	return ac, dc
}

// volts solves both currents for the conductances as they stand.
func (s *state) volts() {
	e := s.e
	if s.memo != nil {
		if known, ok := s.memo.ac[s.hash]; ok {
			copy(s.x, known.x)
			s.solved = known
			return
		}
	}
	fac := s.factor()
	clear(s.x)
	for _, i := range e.acEmfs {
		e.pat.inject(s.x, int(i), &s.c.coef[i], s.g[i]*s.val[e.branches[i].acEmf])
	}
	fac.solve(s.x)
	if s.memo != nil {
		s.solved = s.memo.keep(s.memo.ac, s.hash, s.x)
	}
}

// factor is the a.c. network as it is joined now, ready to be solved.
func (s *state) factor() *factor {
	if s.fac == nil {
		s.fac = newFactor(s.e.pat)
	}
	if !s.acOK {
		s.fac.load(s.g, s.c.coef, 1/leakOhms)
		s.acOK = true
	}
	return s.fac
}

// factorDC is the same for d.c.
func (s *state) factorDC() *factor {
	if s.facd == nil {
		s.facd = newFactor(s.e.pat)
	}
	if !s.dcOK {
		s.facd.load(s.gd, s.c.coef, 1/leakOhms)
		s.dcOK = true
	}
	return s.facd
}

// voltsDC solves the d.c. when there is any.
func (s *state) voltsDC() {
	e := s.e
	live := false
	for _, i := range e.dcEmfs {
		live = live || s.val[e.branches[i].dcEmf] != 0
	}
	if !live {
		if s.live {
			clear(s.xd)
		}
		s.live = false
		return
	}
	s.live = true
	var k key
	if s.memo != nil {
		k = s.hashDC()
		if known, ok := s.memo.dc[k]; ok {
			copy(s.xd, known.x)
			return
		}
	}
	fac := s.factorDC()
	clear(s.xd)
	for _, i := range e.dcEmfs {
		e.pat.inject(s.xd, int(i), &s.c.coef[i], s.gd[i]*s.val[e.branches[i].dcEmf])
	}
	fac.solve(s.xd)
	if s.memo != nil {
		s.memo.keep(s.memo.dc, k, s.xd)
	}
}

// Rounds after which a state that does not come to rest is left as it is: a contact that chatters.
const (
	maxRounds = 60
	chatter   = 20
	maxLatch  = 20
)

// settle lets contacts open and close until nothing changes; then the most overdone fuse or limit goes, and again.
func (s *state) settle() {
	for range maxLatch {
		s.calm()
		if !s.blow(false) {
			return
		}
	}
	s.unsure = true
}

// blow lets the most overdone latch go and reports whether there was one.
func (s *state) blow(fast bool) bool {
	worst, by := int32(-1), 1.0
	for i := range s.e.latches {
		l := &s.e.latches[i]
		if fast && !l.fast || s.val[l.slot] > 0.5 {
			continue
		}
		if x := l.over(s); x > by {
			worst, by = l.slot, x
		}
	}
	if worst < 0 {
		return false
	}
	s.val[worst] = 1
	return true
}

func (s *state) calm() {
	for round := range maxRounds {
		if s.conduct() {
			s.volts()
		}
		s.voltsDC()
		if round > chatter { // a short that drops its own relay: the fuse is quicker than the relay
			s.blow(true)
		}
		s.lampNow()
		moved := false
		for i := range s.e.order {
			c := &s.e.order[i]
			v := c.fn(s)
			if old := s.val[c.slot]; v != old {
				if math.Abs(v-old) > 1e-9*math.Abs(v) {
					moved = true
				}
				s.val[c.slot] = v
			}
		}
		if !moved {
			return
		}
	}
	s.unsure = true
}

// lampNow is what the status light shows: the code of the failure, else the first pattern whose state holds, else off.
func (s *state) lampNow() {
	e := s.e
	alive := e.alive < 0 || s.val[e.alive] > 0.5
	if alive && s.stuck >= 0 && e.steps[s.stuck].lamp >= 0 {
		s.lamp = e.steps[s.stuck].lamp
		return
	}
	for i, when := range e.lampWhen {
		if when != nil && when(s) > 0.5 {
			s.lamp = i
			return
		}
	}
	s.lamp = e.lampOff
}
