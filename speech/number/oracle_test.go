package number_test

import (
	"strings"
	"testing"

	"readback/core/utterance"
)

// Sayings with their values as other projects' open test tables state them, as facts. Left out is what nobody reads off a meter: billions,
// lakh, telephone numbers, dates.
const (
	nemo     = "NVIDIA/NeMo-text-processing, tests/nemo_text_processing/en/data_inverse_text_normalization, Apache-2.0: "
	cardinal = nemo + "test_cases_cardinal.txt"
	decimal  = nemo + "test_cases_decimal.txt"
	measures = nemo + "test_cases_measure.txt"
	text2num = "allo-media/text2num, tests/test_text_to_num_en.py, MIT"
)

// TestOracles: what others take a saying for is what we take it for, exactly, or we refuse; a value of our own is an error.
func TestOracles(t *testing.T) {
	p := parser(t)
	for _, tt := range []struct{ say, want, source string }{ // want "": no single value may come of it
		{"two hundred and fifty four volts", "254 V", cardinal},
		{"one hundred forty seven thousand four hundred fifty one volts", "147451 V", cardinal},
		{"minus twenty five thousand thirty seven volts", "-25037 V", cardinal},
		{"minus sixty volts", "-60 V", cardinal},
		{"forty six thousand six hundred sixty four volts", "46664 V", cardinal},
		{"one thousand thirteen volts", "1013 V", cardinal},
		{"one thousand one volts", "1001 V", cardinal},
		{"one thousand one hundred volts", "1100 V", cardinal},
		{"one thousand twenty six volts", "1026 V", cardinal},
		{"one thousand one hundred twenty six volts", "1126 V", cardinal},
		{"eighteen thousand eight hundred eighty volts", "18880 V", cardinal},
		{"eleven hundred volts", "1100 V", cardinal},
		{"twenty one hundred volts", "", cardinal},            // 2100 V there; here it is asked for again
		{"twenty one hundred and eleven volts", "", cardinal}, // 2111 V there; here it is asked for again
		{"eleven hundred twenty one volts", "1121 V", cardinal},
		{"point one two o five volts", "0.1205 V", decimal},
		{"minus sixty point two four zero zero volts", "-60.2400 V", decimal},
		{"zero point two six volts", "0.26 V", decimal},
		{"point zero two volts", "0.02 V", decimal},
		{"sixty point two volts", "60.2 V", decimal},
		{"eighteen point eight five volts", "18.85 V", decimal},
		{"eighteen point five o volts", "18.50 V", decimal},
		{"eighteen point nine volts", "18.9 V", decimal},
		{"eighteen point o five volts", "18.05 V", decimal},
		{"eighteen point o one volts", "18.01 V", decimal},
		{"eighteen point o o o volts", "18.000 V", decimal},
		{"eighteen point three o o volts", "18.300 V", decimal},
		{"eight hundred eighteen point three o three volts", "818.303 V", decimal},
		{"eight hundred eight point eight volts", "808.8 V", decimal},
		{"eight hundred eight point zero volts", "808.0 V", decimal},
		{"eight hundred eighty eight point one volts", "888.1 V", decimal},
		{"eight hundred eighty two point zero volts", "882.0 V", decimal},
		{"eight hundred forty five point nine four volts", "845.94 V", decimal},
		{"one milli volt", "1 mV", measures},
		{"eight hundred volts", "800 V", measures},
		{"three hours", "3 h", measures},
		{"one thousand six hundred hours", "1600 h", measures},
		{"eighteen point one four percent", "18.14 %", measures},
		{"eighteen point zero percent", "18.0 %", measures},
		{"eighteen point six percent", "18.6 %", measures},
		{"eight point five five percent", "8.55 %", measures},
		{"eighty five volts", "85 V", text2num},
		{"fifteen volts", "15 V", text2num},
		{"hundred fifteen volts", "115 V", text2num},
		{"one hundred fifteen volts", "115 V", text2num},
		{"nineteen hundred seventy three volts", "1973 V", text2num},
		{"zero volts", "0 V", text2num},
		{"one hundred twenty point zero five volts", "120.05 V", text2num},
		{"one hundred twenty point o five volts", "120.05 V", text2num},
		{"twelve point ninety nine volts", "12.99 V", text2num},
		{"plus twenty volts", "", text2num}, // 20 V there; here it is asked for again
		{"minus fifteen volts", "-15 V", text2num},
		{"sixty fifteen volts", "", text2num},
		{"sixty hundred volts", "", text2num},
		{"thousand thousand two hundreds volts", "", text2num},
		{"fifty zero three volts", "", text2num},
		{"fifty sixty thirty and eleven volts", "", text2num},
	} {
		var first *utterance.Meaning
		n := 0
		for _, m := range p.Parse(tt.say, nil) {
			if m.Kind == utterance.Reading {
				if n++; first == nil {
					first = &m
				}
			}
		}
		switch {
		case tt.want == "" && first != nil && !first.Repair && n == 1:
			t.Errorf("%q is %s; %s holds no value", tt.say, first.Reading.Value, tt.source)
		case tt.want != "" && first == nil:
			t.Errorf("%q is nothing; %s has %s", tt.say, tt.source, tt.want)
		case tt.want != "":
			v := first.Reading.Value
			number, unit, _ := strings.Cut(tt.want, " ")
			if v.Dec.String() != number || v.Unit != unit {
				t.Errorf("%q is %s %s; %s has %s", tt.say, v.Dec, v.Unit, tt.source, tt.want)
			}
		}
	}
}
