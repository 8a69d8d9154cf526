package words_test

import (
	"testing"

	"readback/core/words"
	"readback/flows/prompts"
)

func TestWritten(t *testing.T) {
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	write := words.NewWriter(w).Write
	for _, tt := range []struct{ said, want string }{
		{"Twenty-six point one volts A C. That is normal.", "26.1 V AC. That is normal."},
		{"One hundred eighteen point zero, one one eight point zero, volts A C.", "118.0 V AC."},
		{"Minus zero point zero five inches of water.", "-0.05 in. of water."},
		{"Fifteen, one five, volts, or twenty-five volts?", "15 V, or 25 V?"},
		{"Set the thermostat ten degrees higher. Then wait five minutes.", "Set the thermostat 10 °F higher. Then wait 5 minutes."},
		{"Use ten to twenty thousand ohms, two to five watts.", "Use 10 to 20000 Ω, 2 to 5 W."},
		{"O L, over limit.", "OL, over limit."},
		{"Very likely, nine in ten.", "Very likely, 9 in 10."},
		{"Almost certain, over nineteen in twenty.", "Almost certain, over 19 in 20."},
		{"Call nine one one from outside.", "Call 911 from outside."},
		{"Meter on D C MICRO amps.", "Meter on DC microamps."},
		{"Use one hand only. Put one tip in each slot.", "Use one hand only. Put one tip in each slot."},
		{"One answer does not fit.", "One answer does not fit."},
		{"Three blinks", "Three blinks"},
		{"Twenty-four volts are live.", "24 V are live."},
		{"Two thousand five hundred ohms", "2500 Ω"},
		{"", ""},
	} {
		if got := write(tt.said); got != tt.want {
			t.Errorf("%q: %q, want %q", tt.said, got, tt.want)
		}
	}
}

func BenchmarkWrite(b *testing.B) {
	w, err := prompts.Load()
	if err != nil {
		b.Fatal(err)
	}
	r := words.NewWriter(w)
	for b.Loop() {
		r.Write("Put the red tip on the short slot of the outlet. Put the black tip on the long slot. Twenty-six point one volts A C. That is normal.")
	}
}
