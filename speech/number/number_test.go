package number_test

import (
	"fmt"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"readback/core/lab/metric"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/speech/number"
)

func parser(t testing.TB) *number.Parser {
	t.Helper()
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	return number.New(lex)
}

// show writes meanings in short: "26.1 V ac", "26.1 ?", "26.1 ?V|mV", "over", "jumping 1-4 uA", "unit mV", "R" for a repair.
func show(ms []utterance.Meaning) string {
	var out []string
	for _, m := range ms {
		s := ""
		switch m.Kind {
		case utterance.Count:
			continue
		case utterance.UnitOnly:
			s = "unit " + m.ID
		case utterance.Reading:
			r := m.Reading
			un := func(v unit.Value) string {
				switch {
				case v.Unit != "":
					return " " + v.Unit
				case m.Units != nil:
					return " ?" + strings.Join(m.Units, "|")
				}
				return " ?"
			}
			switch {
			case r.Low != nil:
				s = "jumping " + r.Low.Dec.String() + "-" + r.High.Dec.String() + un(*r.High)
			case r.State != "":
				s = string(r.State)
			default:
				s = r.Value.Dec.String() + un(r.Value)
			}
			if r.AC != "" {
				s += " " + r.AC
			}
		}
		if m.Repair && m.Kind != utterance.UnitOnly {
			s += " R"
		}
		out = append(out, s)
	}
	return strings.Join(out, ", ")
}

func TestParse(t *testing.T) {
	p := parser(t)
	for _, tt := range []struct{ say, want string }{
		// plain values
		{"twenty six point one volts", "26.1 V"},
		{"twenty-six point one volts", "26.1 V"},
		{"it's twenty six point four volts a c", "26.4 V ac"},
		{"a c volts", "unit V"},
		{"one hundred and nineteen volts", "119 V"},
		{"one hundred nineteen volts", "119 V"},
		{"zero volts", "0 V"},
		{"zero point zero volts", "0.0 V"},
		{"oh point two volts", "0.2 V"},
		{"point five five inches of water", "0.55 inH2O"},
		{"minus zero point five five inches of water", "-0.55 inH2O"},
		{"negative point five inches of water column", "-0.5 inH2O"},
		{"three point two micro amps d c", "3.2 uA dc"},
		{"three point two microamps", "3.2 uA"},
		{"seven point one micro farads", "7.1 uF"},
		{"forty seven ohms", "47 ohm"},
		{"four point seven k ohms", "4.7 kohm"},
		{"four k", "4 kohm"},
		{"two point two meg", "2.2 Mohm"},
		{"two and a half volts", "2.5 V"},
		{"half an inch", "0.5 ?inH2O|in"},
		{"three quarters of an inch", "0.75 ?inH2O|in"},
		{"double five volts", "55 V, 5.5 V"},
		{"two six four volts", "264 V"},
		{"two oh eight volts", "208 V, 2.08 V"},
		{"one thousand two hundred ohms", "1200 ohm"},
		{"twelve hundred ohms", "1200 ohm"},
		{"forty thousand b t u per hour", "40000 Btu/h"},
		{"a hundred and forty degrees fahrenheit", "140 ?degF|dF"},
		{"sixty eight degrees", "68 ?degC|degF|dF|dC"},
		{"two point oh volts", "2.0 V"},
		{"four point two five volts", "4.25 V"},
		{"point fifteen volts", "0.15 V"},
		{"twenty six point one", "26.1 ?"},
		{"nine parts per million", "9 ppm"},
		{"fifty percent", "50 %"},
		// typed
		{"26.4 V", "26.4 V"},
		{"26.4V", "26.4 V"},
		{"3.2 µA", "3.2 uA"},
		{"-0.55 inH2O", "-0.55 inH2O"},
		{"4.7 kΩ", "4.7 kohm"},
		{"120", "120 ?"},
		{"120 volts ac", "120 V ac"},
		{"2 A", "2 A"},
		// ambiguous: both readings
		{"four seven volts", "47 V, 4.7 V"},
		{"one twenty", "120 ?, 1.20 ?"},
		{"one nineteen volts", "119 V, 1.19 V"},
		{"twenty four oh volts", "24.0 V, 240 V"},
		{"twenty six four volts", "26.4 V, 264 V"},
		{"two hundred and five volts", "205 V, 200.5 V"},
		{"oh ohms", "0 ohm, over"},
		{"oh", "0 ?, over"},
		// homophones only with a unit
		{"for volts", "4 V"},
		{"for", ""},
		{"to", ""},
		{"night", ""},
		{"night volts", "9 V"},
		{"twenty for volts", "24 V"},
		// states
		{"o l", "over"},
		{"oh l", "over"},
		{"O.L.", "over"},
		{"it's o l", "over"},
		{"over limit", "over"},
		{"o l mega ohms", "over"},
		{"open line", "over"},
		{"it's beeping", "beep"},
		{"no continuity", "silent"},
		{"no beep", "silent"},
		{"nothing on the display", "blank"},
		{"yeah it's dead", "dead"},
		{"it's bouncing", "jumping"},
		{"jumping", "jumping"},
		{"jumping between one and four", "jumping 1-4 ?"},
		{"jumping between one and four micro amps", "jumping 1-4 uA"},
		{"between twenty and twenty four volts", "jumping 20-24 V"},
		{"from one hundred and five to one hundred and ten volts", "jumping 105-110 V, jumping 100.5-110 V"},
		{"between four and one volts", ""},
		// repairs
		{"twenty, no, twenty six point one volts", "26.1 V R"},
		{"twenty no twenty six point four volts a c", "26.4 V ac R"},
		{"twenty four volts sorry twenty six volts", "26 V R"},
		{"twenty four volts no wait twenty six", "26 V R"},
		{"twenty volts i mean milli volts", "20 mV R"},
		{"twenty volts make that a c", "20 V ac R"},
		{"no twenty four", "24 ? R"},
		{"no twenty four volts", "24 V R"},
		{"twenty six point four no five volts", "5 V R, 26.5 V R"},
		{"two no three no four volts", "4 V R"},
		{"i said milli volts", "unit mV"},
		{"i said millivolts", "unit mV"},
		{"make that ohms", "unit ohm"},
		{"no micro amps", "unit uA"},
		// refused
		{"sixty fifteen", ""},
		{"sixty fifteen volts", ""},
		{"fifty zero three", ""},
		{"five volts seven", ""},
		{"fifty volts seven", ""},
		{"fifteen two point three volts", ""},
		{"one point two point three volts", ""},
		{"twenty point", ""},
		{"point", ""},
		{"point volts", ""},
		{"minus", ""},
		{"minus minus five volts", ""},
		{"twenty ten volts", ""},
		{"hundred hundred volts", ""},
		{"ten hundred volts", ""},
		{"zero five volts", ""},
		{"[unk]", ""},
		{"twenty [unk] volts", ""},
		{"twenty volts [unk]", ""},
		{"twenty six banana", ""},
		{"volts twenty", ""},
		{"double", ""},
		{"no it's fine", ""},
		{"no", ""},
		{"", ""},
	} {
		t.Run(tt.say, func(t *testing.T) {
			if got := show(p.Parse(tt.say, nil)); got != tt.want {
				t.Errorf("got %q, want %q", got, tt.want)
			}
		})
	}
}

func TestExpectedUnits(t *testing.T) {
	p := parser(t)
	for _, tt := range []struct {
		say, units, want string
	}{
		{"twenty six", "V mV", "26 ?V|mV"},
		{"twenty six", "V", "26 ?V"}, // a unit that was not said stays a question
		{"twenty six volts", "ohm", "26 V"},
		{"sixty eight degrees", "dF dC", "68 ?dF|dC"},
		{"sixty eight degrees", "dF", "68 dF"},
		{"half an inch", "in", "0.5 in"},
	} {
		if got := show(p.Parse(tt.say, strings.Fields(tt.units))); got != tt.want {
			t.Errorf("%s (%s): got %q, want %q", tt.say, tt.units, got, tt.want)
		}
	}
}

func TestCount(t *testing.T) {
	p := parser(t)
	ms := p.Parse("three", nil)
	if len(ms) != 2 || ms[1].Kind != utterance.Count || ms[1].Text != "3" {
		t.Errorf("three: %+v", ms)
	}
	for _, say := range []string{"three volts", "three point one", "minus three"} {
		for _, m := range p.Parse(say, nil) {
			if m.Kind == utterance.Count {
				t.Errorf("%s is a count", say)
			}
		}
	}
}

// roundTrip tells whether the words of v mean v again, with every digit it has.
func roundTrip(p *number.Parser, v unit.Value) error {
	words := v.Words()
	ms := p.Parse(words, nil)
	if len(ms) == 0 {
		return fmt.Errorf("%s: %q is refused", v, words)
	}
	m := ms[0]
	if m.Reading.Value.Dec != v.Dec {
		return fmt.Errorf("%s: %q gives %s", v, words, m.Reading.Value)
	}
	if m.Reading.Value.Unit == v.Unit || v.Unit == "money" && m.Reading.Value.Unit == "" {
		return nil
	}
	for _, u := range m.Units {
		if u == v.Unit {
			return nil
		}
	}
	return fmt.Errorf("%s: %q gives %s or %v", v, words, m.Reading.Value, m.Units)
}

// The full run is the figure hear.roundtrip_pct.
func TestRoundTrip(t *testing.T) {
	p := parser(t)
	for _, u := range unit.All() {
		for exp := 0; exp >= -3; exp-- {
			for m := int64(-1200); m <= 12000; m += 41 {
				if err := roundTrip(p, unit.Value{Dec: unit.Decimal{Mant: m, Exp: exp}, Unit: u.ID}); err != nil {
					t.Fatal(err)
				}
			}
			zero := unit.Decimal{Exp: exp, Neg0: true}
			if err := roundTrip(p, unit.Value{Dec: zero, Unit: u.ID}); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func TestRoundTripAnyDecimal(t *testing.T) {
	p := parser(t)
	all := unit.All()
	rapid.Check(t, func(t *rapid.T) {
		d := unit.Decimal{
			Mant: rapid.Int64Range(-999_999_999_999_999, 999_999_999_999_999).Draw(t, "mantissa"),
			Exp:  -rapid.IntRange(0, 14).Draw(t, "decimals"),
		}
		u := rapid.SampledFrom(all).Draw(t, "unit")
		if len(strings.Trim(d.String(), "-0."))+strings.Count(d.String(), "0") > 15 {
			t.Skip("more than 15 digits")
		}
		if err := roundTrip(p, unit.Value{Dec: d, Unit: u.ID}); err != nil {
			t.Fatal(err)
		}
	})
}

func FuzzParse(f *testing.F) {
	for _, s := range []string{"twenty, no, twenty six point one volts", "jumping between one and four", "26.4V", "o l", "double", "and a half", "one hundred and", "-"} {
		f.Add(s)
	}
	p := parser(f)
	f.Fuzz(func(t *testing.T, s string) {
		for i, m := range p.Parse(s, nil) {
			if m.Cost < 0 || i == 0 && m.Cost != 0 {
				t.Errorf("%q: meaning %d costs %v", s, i, m.Cost)
			}
			if (m.Kind == utterance.Reading) != (m.Reading != nil) {
				t.Errorf("%q: kind %s with reading %v", s, m.Kind, m.Reading)
			}
			if strings.Contains(s, "[unk]") {
				t.Errorf("%q has a meaning", s)
			}
		}
	})
}

func BenchmarkParse(b *testing.B) {
	p := parser(b)
	for b.Loop() {
		p.Parse("twenty no twenty six point four volts a c", nil)
	}
}

// TestFigures: every decimal from -12.00 to 9999 in four resolutions, spread over all units; each unit gets its share of each.
func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		p := parser(t)
		all := unit.All()
		good, n := 0, 0
		for exp := 0; exp >= -3; exp-- {
			for m := int64(-1200); m < 10000; m++ {
				for i := range all {
					v := unit.Value{Dec: unit.Decimal{Mant: m, Exp: exp}, Unit: all[i].ID}
					if err := roundTrip(p, v); err == nil {
						good++
					} else {
						t.Log(err)
					}
					n++
				}
			}
		}
		add("hear.roundtrip_pct", 100*float64(good)/float64(n), "%", "= 100", n)
	})
}

func BenchmarkPlain(b *testing.B) {
	p := parser(b)
	for b.Loop() {
		p.Parse("one hundred nineteen point four volts", nil)
	}
}
