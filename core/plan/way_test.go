package plan_test

import (
	"testing"

	"pgregory.net/rapid"

	"readback/core/plan"
)

func TestBestWay(t *testing.T) {
	for _, tt := range []struct {
		name  string
		sense plan.Sense
		want  string
	}{
		{"both hands at the leads, nobody listens", plan.Sense{What: "meter", Hands: 2}, "camera"},
		{"both hands at the leads, loud", plan.Sense{What: "meter", Hands: 2, Voice: true, Noise: 6}, "camera"},
		{"both hands at the leads, said in vain", plan.Sense{What: "meter", Hands: 2, Voice: true, Noise: 25, Misses: 2}, "camera"},
		{"a gauge without leads, nobody listens", plan.Sense{What: "meter"}, "touch"},
		{"counting a light", plan.Sense{What: "lamp", Voice: true, Noise: 25}, "camera"},
		{"reading a plate aloud", plan.Sense{What: "plate", Voice: true, Noise: 25}, "camera"},
	} {
		if got, cost := plan.Best(plan.Ways(tt.sense), plan.UsualWeights); got.ID != tt.want || !(cost > 0) {
			t.Errorf("%s: %s at %g, want %s", tt.name, got.ID, cost, tt.want)
		}
	}
}

// Making a way worse never makes it chosen.
func TestWorseIsNotChosen(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		var ways []plan.Way
		for i := range rapid.IntRange(1, 4).Draw(t, "n") {
			ways = append(ways, plan.Way{ID: string(rune('a' + i)), Seconds: rapid.Float64Range(1, 60).Draw(t, "s"), Setup: rapid.Float64Range(0, 60).Draw(t, "u"),
				Wrong: rapid.Float64Range(0, 0.2).Draw(t, "w")})
		}
		k := rapid.IntRange(0, len(ways)-1).Draw(t, "k")
		before, c1 := plan.Best(ways, plan.UsualWeights)
		ways[k].Seconds *= 1.5
		ways[k].Wrong *= 1.5
		after, c2 := plan.Best(ways, plan.UsualWeights)
		if after.ID == ways[k].ID && before.ID != after.ID {
			t.Fatalf("%s became best by getting worse", after.ID)
		}
		if c2 < c1-1e-12 {
			t.Fatalf("the best became cheaper: %g, %g", c1, c2)
		}
	})
}
