package speech

// Fake is a recogniser for tests. It does not listen: after every Step samples it has "heard" one word more of Script, and it
// keeps the rules of a real one (no use after Close, a Final empties it).
type Fake struct {
	Script [][]Alternative // one list a saying, in order
	Step   int             // samples a word; 0 means 4800, 0.3 s
	Err    error           // returned by the next Accept, to play an engine that dies

	samples int
	closed  bool
}

// Accept counts the samples.
func (f *Fake) Accept(pcm []int16) (bool, error) {
	if f.closed {
		return false, ErrClosed
	}
	if f.Err != nil {
		return false, f.Err
	}
	f.samples += len(pcm)
	return false, nil
}

// Partial returns the words that fit into the samples so far.
func (f *Fake) Partial() (string, error) {
	if f.closed {
		return "", ErrClosed
	}
	if len(f.Script) == 0 || len(f.Script[0]) == 0 {
		return "", nil
	}
	step := f.Step
	if step == 0 {
		step = 4800
	}
	text, words := f.Script[0][0].Text, f.samples/step
	for i := range text {
		if text[i] == ' ' {
			if words--; words <= 0 {
				return text[:i], nil
			}
		}
	}
	if f.samples/step == 0 {
		return "", nil
	}
	return text, nil
}

// Final returns the next entry of the script, whole.
func (f *Fake) Final() (Result, error) {
	if f.closed {
		return Result{}, ErrClosed
	}
	f.samples = 0
	if len(f.Script) == 0 {
		return Result{}, nil
	}
	r := Result{Alternatives: f.Script[0]}
	f.Script = f.Script[1:]
	return r, nil
}

// Close makes every later call fail.
func (f *Fake) Close() error {
	f.closed = true
	return nil
}
