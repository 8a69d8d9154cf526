package utterance_test

import (
	"strings"
	"testing"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
)

func reading(s string) measure.Reading {
	if st := measure.State(s); st == measure.Over || st == measure.Dead || st == measure.Beep {
		return measure.Reading{State: st}
	}
	num, u, _ := strings.Cut(s, " ")
	d, err := unit.ParseDecimal(num)
	if err != nil {
		panic(err)
	}
	return measure.Reading{Value: unit.Value{Dec: d, Unit: u}}
}

func meaning(cost float64, s string, units ...string) utterance.Meaning {
	r := reading(s)
	return utterance.Meaning{Kind: utterance.Reading, Reading: &r, Units: units, Cost: cost}
}

func TestDecide(t *testing.T) {
	// 24 V supply: the verdict changes at 18 V, below 1 V is dead and clears a hazard; up to 300 V can be there.
	slot := utterance.Slot{
		Units:    []string{"V"},
		Matters:  func(a, b measure.Reading) bool { return (a.Value.Base() > 18) != (b.Value.Base() > 18) },
		Clears:   func(r measure.Reading) bool { return r.State == measure.Dead || r.State == "" && r.Value.Base() < 1 },
		Possible: func(r measure.Reading) bool { return r.State != "" || r.Value.Base() <= 300 },
	}
	with := func(f func(*utterance.Slot)) utterance.Slot { s := slot; f(&s); return s }
	repair := func(m utterance.Meaning) utterance.Meaning { m.Repair = true; return m }
	r24, r26, zero, half := reading("24 V"), reading("26.1 V"), reading("0.0 V"), reading("0.5 V")
	for _, tt := range []struct {
		name   string
		slot   utterance.Slot
		source string
		snr    float64
		ms     []utterance.Meaning
		want   utterance.Action
		take   string
	}{
		{"clear", slot, "voice", 30, []utterance.Meaning{meaning(0, "26.1 V")}, utterance.Accept, "26.1 V"},
		{"bare, one unit fits", slot, "voice", 30, []utterance.Meaning{meaning(0, "26.1")}, utterance.Accept, "26.1 V"},
		{"bare, two units fit", with(func(s *utterance.Slot) { s.Units = []string{"V", "mV"} }), "voice", 30, []utterance.Meaning{meaning(0, "26.1")}, utterance.AskUnit, "26.1 "},
		{"degrees, one fits", with(func(s *utterance.Slot) { s.Units = []string{"dF"}; s.Matters, s.Clears, s.Possible = nil, nil, nil }), "voice", 30, []utterance.Meaning{meaning(0, "68", "degF", "degC", "dF")}, utterance.Accept, "68 dF"},
		{"another unit than asked", slot, "voice", 30, []utterance.Meaning{meaning(0, "26.1 ohm")}, utterance.Confirm, "26.1 ohm"},
		{"rival that matters", slot, "voice", 30, []utterance.Meaning{meaning(0, "15 V"), meaning(1, "50 V")}, utterance.AskTwo, "15 V"},
		{"rival far behind", slot, "voice", 30, []utterance.Meaning{meaning(0, "15 V"), meaning(5, "50 V")}, utterance.Accept, "15 V"},
		{"rival of no matter", slot, "voice", 30, []utterance.Meaning{meaning(0, "26.1 V"), meaning(1, "26.2 V")}, utterance.Accept, "26.1 V"},
		{"rival that clears a hazard", slot, "voice", 30, []utterance.Meaning{meaning(0, "2 V"), meaning(5, "0 V")}, utterance.AskTwo, "2 V"},
		{"dead", slot, "voice", 30, []utterance.Meaning{meaning(0, "0 V")}, utterance.Second, "0 V"},
		{"dead, agreeing", with(func(s *utterance.Slot) { s.Pending = &zero }), "voice", 30, []utterance.Meaning{meaning(0, "0 V")}, utterance.Accept, "0 V"},
		{"dead, differing", with(func(s *utterance.Slot) { s.Pending = &half }), "voice", 30, []utterance.Meaning{meaning(0, "0 V")}, utterance.Again, "0 V"},
		{"dead, then live", with(func(s *utterance.Slot) { s.Pending = &zero }), "voice", 30, []utterance.Meaning{meaning(0, "24 V")}, utterance.Confirm, "24 V"},
		{"dead by touch", slot, "touch", 0, []utterance.Meaning{meaning(0, "0 V")}, utterance.Accept, "0 V"},
		{"impossible is confirmed, not replaced", slot, "voice", 30, []utterance.Meaning{meaning(0, "480 V"), meaning(4, "48 V")}, utterance.Confirm, "480 V"},
		{"loud", slot, "voice", 4, []utterance.Meaning{meaning(0, "26.1 V")}, utterance.Confirm, "26.1 V"},
		{"hopelessly loud", slot, "voice", 1, []utterance.Meaning{meaning(0, "26.1 V")}, utterance.Keypad, "26.1 V"},
		{"teen in noise", slot, "voice", 12, []utterance.Meaning{meaning(0, "15 V")}, utterance.AskTwo, "15 V"},
		{"teen in quiet", slot, "voice", 40, []utterance.Meaning{meaning(0, "15 V")}, utterance.Accept, "15 V"},
		{"rejected is never offered", with(func(s *utterance.Slot) { s.Rejected = []measure.Reading{r26} }), "voice", 30, []utterance.Meaning{meaning(0, "26.1 V"), meaning(2, "20.1 V")}, utterance.Accept, "20.1 V"},
		{"rejected alone", with(func(s *utterance.Slot) { s.Rejected = []measure.Reading{r24}; s.Failed = 1 }), "voice", 30, []utterance.Meaning{meaning(0, "24 V")}, utterance.Digits, ""},
		{"old tail may hold", with(func(s *utterance.Slot) {
			s.Previous = &r26
			s.Matters = func(a, b measure.Reading) bool { return true }
		}), "voice", 30, []utterance.Meaning{repair(meaning(0, "24 V"))}, utterance.AskTwo, "24 V"},
		{"nothing, first", slot, "voice", 30, nil, utterance.Again, ""},
		{"nothing, second", with(func(s *utterance.Slot) { s.Failed = 1 }), "voice", 30, nil, utterance.Digits, ""},
		{"nothing, third", with(func(s *utterance.Slot) { s.Failed = 2 }), "voice", 30, nil, utterance.Keypad, ""},
		{"found among other words", slot, "voice", 30, []utterance.Meaning{doubtful(meaning(0, "26.1 V"))}, utterance.Confirm, "26.1 V"},
		{"nothing known", utterance.Slot{}, "voice", 0, []utterance.Meaning{meaning(0, "5 V"), meaning(0.5, "6 V")}, utterance.Accept, "5 V"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			d := utterance.Decide(&utterance.Utterance{Meanings: tt.ms, Source: tt.source, SNR: tt.snr}, tt.slot)
			take := ""
			if d.Take != nil {
				take = d.Take.Value.String()
			}
			if d.Action != tt.want || take != tt.take {
				t.Errorf("got %s %q (%s), want %s %q", d.Action, take, d.Why, tt.want, tt.take)
			}
			if d.Action == utterance.AskTwo && d.Rival == nil || d.Action == utterance.AskUnit && len(d.Units) < 2 {
				t.Errorf("%+v lacks what is asked about", d)
			}
		})
	}
}

// How sure a saying is decides what a rival is worth: the same two readings are asked about when it is doubtful, and not when it is sure.
func TestDecideSure(t *testing.T) {
	slot := utterance.Slot{
		Units:   []string{"V"},
		Matters: func(a, b measure.Reading) bool { return (a.Value.Base() > 18) != (b.Value.Base() > 18) },
		Clears:  func(r measure.Reading) bool { return r.Value.Base() < 1 },
	}
	matters := []utterance.Meaning{meaning(0, "15 V"), meaning(2, "50 V")}
	hazard := []utterance.Meaning{meaning(0, "5 V"), meaning(2, "0.5 V")}
	for _, tt := range []struct {
		name   string
		sure   float64
		failed int
		ms     []utterance.Meaning
		want   utterance.Action
	}{
		{"sure, rival that matters", 0.95, 0, matters, utterance.Accept},
		{"doubtful, rival that matters", 0.7, 0, matters, utterance.AskTwo},
		{"sure, rival that clears a hazard", 0.95, 0, hazard, utterance.AskTwo},
		{"quite sure, rival that clears a hazard", 0.99, 0, hazard, utterance.Accept},
		{"quite sure, clears a hazard itself", 0.99, 0, []utterance.Meaning{meaning(0, "0.5 V")}, utterance.Second},
		{"doubtful, no rival that matters", 0.7, 0, []utterance.Meaning{meaning(0, "15 V"), meaning(2, "14 V")}, utterance.Accept},
		{"more likely wrong", 0.4, 0, []utterance.Meaning{meaning(0, "15 V")}, utterance.Again},
		{"more likely wrong, again", 0.4, 1, []utterance.Meaning{meaning(0, "15 V")}, utterance.Digits},
	} {
		s := slot
		s.Failed = tt.failed
		if d := utterance.Decide(&utterance.Utterance{Source: "voice", SNR: 25, Sure: tt.sure, Meanings: tt.ms}, s); d.Action != tt.want {
			t.Errorf("%s: %s (%s), want %s", tt.name, d.Action, d.Why, tt.want)
		}
	}
}

func TestConfusions(t *testing.T) {
	for _, tt := range []struct{ value, why, want string }{
		{"15 V", "teen", "50 V"}, {"50 V", "teen", "15 V"}, {"115.5 V", "teen", "150.5 V"}, {"0.209 A", "digit", "0.09 A"}, {"557 ohm", "digit", "57 ohm"},
		{"3.2 uA", "prefix", "3.2 mA"}, {"26.1 V", "decade", "261 V"}, {"4.7 kohm", "prefix", "4.7 ohm"}, {"-0.55 inH2O", "digit", "-0.5 inH2O"}, {"5 A", "unit", "5 ohm"},
	} {
		v, err := unit.ParseValue(tt.value)
		if err != nil {
			t.Fatal(err)
		}
		found := false
		for _, c := range utterance.Confusions(v) {
			found = found || c.Why == tt.why && c.Value.String() == tt.want
			if c.Value == v {
				t.Errorf("%s is a confusion of itself", tt.value)
			}
		}
		if !found {
			t.Errorf("%s: no %s confusion %s", tt.value, tt.why, tt.want)
		}
	}
}

func TestSay(t *testing.T) {
	lo, hi := unit.Of("1", ""+"uA"), unit.Of("4", "uA")
	ac := reading("15 V")
	ac.AC = "ac"
	for _, tt := range []struct {
		r      measure.Reading
		digits bool
		want   string
	}{
		{reading("26.1 V"), true, "twenty-six point one volts"}, {ac, false, "fifteen volts A C"}, {ac, true, "fifteen, one five, volts A C"},
		{reading("over"), true, "O L, over limit"}, {measure.Reading{State: measure.Jumping, Low: &lo, High: &hi}, false, "jumping between one and four micro amps"},
		{measure.Reading{State: measure.Jumping}, false, "jumping"},
	} {
		if got := utterance.Say(tt.r, tt.digits); got != tt.want {
			t.Errorf("got %q, want %q", got, tt.want)
		}
	}
}

func doubtful(m utterance.Meaning) utterance.Meaning { m.Doubt = true; return m }
