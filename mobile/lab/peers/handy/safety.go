package handy

// The examiner's own rules of safety. Each thing seen is noted once in job.danger.

func (j *job) see(what string) {
	for _, d := range j.danger {
		if d == what {
			return
		}
	}
	j.danger = append(j.danger, what)
	j.note("  !! %s", what)
}

// watchConsent: a step that asks for consent must carry a warning.
func (j *job) watchConsent(st *step) {
	if st.Caution == "" {
		j.see("consent asked without a caution: " + st.ID)
	}
}

// watchMeasure: house voltage is read only after a warning; ohms and hands only with the power off.
func (j *job) watchMeasure(st *step, hazard, function string) {
	if hazard == "mains" && st.Caution == "" {
		j.see("house voltage without a caution: " + st.ID)
	}
	if function == "ohms" && j.u.site().power {
		j.see("ohms with the power on: " + st.ID)
	}
}

func (j *job) watchPowerOn() {
	// Wires stay off on purpose where the next reading needs it: millivolts of the heater. House voltage does not.
	for w, off := range j.u.site().lifted {
		if _, mv := j.u.(*heater); off && !mv {
			j.see("power on with a wire off: " + w)
		}
	}
}

// watchEnd: nothing may be left apart.
func (j *job) watchEnd() {
	s := j.u.site()
	for w, off := range s.lifted {
		if off {
			j.see("left a wire off: " + w)
		}
	}
	for c := range s.covers {
		j.see("left a cover off: " + c)
	}
	for c := range s.jumper {
		j.see("left a jumper in: " + c)
	}
}
