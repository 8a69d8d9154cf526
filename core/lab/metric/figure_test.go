package metric_test

import (
	"testing"

	"readback/core/lab/metric"
)

func TestMet(t *testing.T) {
	for _, c := range []struct {
		value  float64
		target string
		want   bool
	}{
		{20, "<= 20", true},
		{20.1, "<= 20", false},
		{99, ">= 99.5", false},
		{0, "= 0", true},
		{7, "reported", true},
	} {
		got, err := metric.Met(c.value, c.target)
		if err != nil || got != c.want {
			t.Errorf("Met(%v, %q) = %v, %v, want %v", c.value, c.target, got, err, c.want)
		}
	}
	for _, bad := range []string{"", "20", "< 20", "<= x"} {
		if _, err := metric.Met(1, bad); err == nil {
			t.Errorf("Met accepts target %q", bad)
		}
	}
}
