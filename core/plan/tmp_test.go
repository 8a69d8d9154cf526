package plan_test

import (
	"readback/core/plan"
	"testing"
)

func TestTmp(t *testing.T) {
	for _, b := range allBenches(t) {
		v, w := b.wrongParts(t, 300, 0.05, plan.Quick)
		t.Log("wrong", w, v)
		c, i, vain := b.doubts(t, 200, plan.Quick)
		t.Log("caught", c, i, "vain", vain)
	}
}
