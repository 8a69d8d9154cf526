package appliance

// Situation is what people have done to the appliance while the control does what it does.
type Situation struct {
	Power bool // the service switch is on
	Call  bool // the thermostat calls
	Free  bool // covers are off and no door switch is held
	Lift  []int
	Jump  int // check whose jumper is in, -1
}

// enter puts the situation into the state's slots.
func (s *state) enter(at *Situation) {
	e := s.e
	s.val[e.powerSlot], s.val[e.callSlot] = truth(at.Power), truth(at.Call)
	for _, slot := range e.pressedSlots {
		s.val[slot] = truth(!at.Free)
	}
	for _, p := range at.Lift {
		if slot, ok := e.lifts[e.m.Points[p].Net]; ok {
			s.val[slot] = 1
		}
	}
	if at.Jump >= 0 && e.jumps[at.Jump] >= 0 {
		s.val[e.jumps[at.Jump]] = 1
	}
}

// drive sets the outputs a step asks for.
func (s *state) drive(step int) {
	e := s.e
	for i := range int32(len(e.driveIndex)) {
		s.val[e.driveSlot+i] = 0
	}
	s.step = step
	if step < 0 {
		return
	}
	for _, d := range e.steps[step].drive {
		s.val[d] = 1
	}
}

// run walks the control from rest. Visit is called in the settled state of every step it enters, side steps too; last
// tells the state in which it stays: running, waiting, locked out or dead. Where boards differ in what they drive while they wait, the
// last state is visited twice, the second time with s.other set.
func (s *state) run(at *Situation, visit func(step int, last bool)) {
	e := s.e
	s.enter(at)
	s.drive(-1)
	s.settle()
	if len(e.steps) == 0 || !at.Power || e.alive >= 0 && s.val[e.alive] < 0.5 {
		visit(-1, true)
		return
	}
	final := -1
	for i := range e.steps {
		if !e.steps[i].side {
			final = i
		}
	}
	for i := range e.steps {
		st := &e.steps[i]
		if st.side {
			continue
		}
		s.reached[i] = true
		s.drive(i)
		s.settle()
		if e.alive >= 0 && s.val[e.alive] < 0.5 { // its own supply is gone: blown in this step
			s.drive(-1)
			visit(i, false)
			s.settle()
			visit(-1, true)
			return
		}
		if st.needs == nil || st.needs(s) > 0.5 {
			visit(i, i == final)
			if i == final {
				return
			}
			continue
		}
		if st.fail == failWait {
			s.stuck = i
			s.settle()
			visit(i, true)
			if len(st.may) > 0 && !s.plain {
				for _, d := range st.may {
					s.val[d] = 1
				}
				s.settle()
				s.other = true
				visit(i, true)
				s.other = false
			}
			return
		}
		visit(i, false)
		s.stuck = i
		to := st.fail
		if to < 0 {
			to = e.lockStep
		}
		s.drive(to)
		s.settle()
		if to >= 0 {
			s.reached[to] = true
		}
		visit(to, true)
		return
	}
}
