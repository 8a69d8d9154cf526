package plan_test

import (
	"os"
	"testing"
	"strconv"

	"readback/core/infer"
	"readback/core/plan"
)

func TestVain(t *testing.T) {
	n, _ := strconv.Atoi(os.Getenv("N"))
	if n == 0 {
		t.Skip()
	}
	for i, b := range allBenches(t) {
		if i == 0 && os.Getenv("ALL") == "" {
			continue
		}
		p, _ := plan.New(b.task, plan.UsualWeights, plan.Quick)
		table := b.engine.Table(b.engine.Singles())
		j := newJob(&b, p)
		for mode := range b.model.Modes {
			j.run(t, []int{mode}, func(check int) infer.Finding { return b.finding(check, table.Prediction(check, mode+1)) })
			m := b.model.Modes[mode]
			line := ""
			for _, d := range j.asked {
				id := b.model.Checks[d.Check].ID
				switch d.Kind {
				case plan.Reask:
					id = "RE(" + b.model.Checks[d.Doubt].ID + ")" + id
				case plan.Prove:
					id = "P:" + id
				}
				line += " " + id
			}
			end := ""
			if j.end.Group >= 0 && j.end.Group < len(b.model.Repairs) {
				end = b.model.Repairs[j.end.Group].ID
			}
			t.Logf("%s rate %.2f%s => %d %s p %.3f sure %v missing %d weak %d", m.Full, m.Rate.Nominal, line, j.end.Kind, end, j.end.P, j.end.Sure, len(j.end.Missing), len(j.end.Weak))
		}
	}
}
