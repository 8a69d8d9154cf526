package unit_test

import (
	"testing"

	"readback/core/unit"
)

func TestWords(t *testing.T) {
	for _, tt := range []struct{ name, value, words, spoken string }{
		{"plain", "26.1 V", "twenty-six point one volts", "twenty-six point one volts"},
		{"one", "1 V", "one volt", "one volt"},
		{"one with a digit", "1.0 V", "one point zero volts", "one point zero volts"},
		{"zero", "0.0 V", "zero point zero volts", "zero point zero volts"},
		{"minus zero", "-0.0 V", "minus zero point zero volts", "minus zero point zero volts"},
		{"teen", "15 V", "fifteen volts", "fifteen, one five, volts"},
		{"ty", "50 V", "fifty volts", "fifty, five zero, volts"},
		{"hundred", "119 V", "one hundred nineteen volts", "one hundred nineteen, one one nine, volts"},
		{"zero inside", "205 ohm", "two hundred five ohms", "two hundred five, two zero five, ohms"},
		{"zero after the point", "0.09 A", "zero point zero nine amps", "zero point zero nine, zero point zero nine, amps"},
		{"minus", "-0.55 inH2O", "minus zero point five five inches of water", "minus zero point five five inches of water"},
		{"prefix", "3.2 uA", "three point two micro amps", "three point two micro amps"},
		{"thousand", "40000 Btu/h", "forty thousand B T U per hour", "forty thousand B T U per hour"},
		{"no spoken unit", "15 money", "fifteen", "fifteen, one five"},
		{"large", "123456789012345 ohm", "one hundred twenty-three trillion four hundred fifty-six billion seven hundred eighty-nine million twelve thousand three hundred forty-five ohms", ""},
	} {
		t.Run(tt.name, func(t *testing.T) {
			v, err := unit.ParseValue(tt.value)
			if err != nil {
				t.Fatal(err)
			}
			if got := v.Words(); got != tt.words {
				t.Errorf("Words %q, want %q", got, tt.words)
			}
			if got := v.Spoken(); tt.spoken != "" && got != tt.spoken {
				t.Errorf("Spoken %q, want %q", got, tt.spoken)
			}
		})
	}
}
