package app_test

import (
	"slices"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
	"readback/flows"
	"readback/flows/plain"
	"readback/flows/prompts"
	"readback/mobile/app"
)

// question is a step with its buttons, as the page has it, and the words that ask.
type question struct {
	name, asks string
	view       *protocol.View
}

// questions are all that a job may ask with buttons: every look of every file, put by the machine itself, and the guide's own lines.
func questions(t *testing.T) []question {
	t.Helper()
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	var out []question
	fsys, names := flows.Files()
	for _, name := range names {
		model, err := flows.Load(fsys, name)
		if err != nil {
			t.Fatal(err)
		}
		for i := range model.Checks {
			if c := &model.Checks[i]; c.Function == measure.Look {
				v := stepOf(t, model, c.ID)
				out = append(out, question{model.ID + " " + c.ID, v.Step.Say, v})
			}
		}
	}
	ids := make([]string, 0, len(w.Lines))
	for id := range w.Lines {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	for _, id := range ids {
		if l := w.Lines[id]; len(l.Ask) > 0 {
			out = append(out, question{"line " + id, l.Full + " " + l.Say, lineView(&l)})
		}
	}
	return out
}

func stepOf(t *testing.T, model *appliance.Model, check string) *protocol.View {
	t.Helper()
	m, err := app.NewMachine(protocol.Begin{Appliance: model.ID})
	if err != nil {
		t.Fatal(err)
	}
	if _, err := m.Step(protocol.Event{Type: protocol.EvBegin, Seq: 1, Begin: &protocol.Begin{Appliance: model.ID}}); err != nil {
		t.Fatal(err)
	}
	x, ok := m.(interface {
		Rehearse(step string) (string, utterance.Slot, error)
	})
	if !ok {
		t.Fatal("this machine cannot be put at a step")
	}
	if _, _, err := x.Rehearse(check); err != nil {
		t.Fatal(err)
	}
	return m.View()
}

func lineView(l *words.Line) *protocol.View {
	v := &protocol.View{}
	for _, id := range l.Ask {
		v.Step.Answers = append(v.Step.Answers, protocol.Answer{ID: id, Kind: utterance.Choice, Text: l.Labels[id]})
	}
	for _, id := range l.Ask {
		v.Step.Also = append(v.Step.Also, l.Also[id]...)
	}
	return v
}

// unmatched tells what of a question's answers has no button with its very words, or is not understood when these are said.
func unmatched(q *question) (answers int, bad []string) {
	var labels []string
	for _, a := range q.view.Step.Answers {
		if a.Kind != utterance.Choice {
			continue
		}
		answers++
		labels = append(labels, a.Text)
		u := app.Parse("en", a.Text, q.view)
		if b := u.Best(); b == nil || b.ID != a.ID && b.Text != a.ID || u.Fault != "" {
			bad = append(bad, a.Text+": is not understood as "+a.ID)
		}
	}
	if err := plain.Answers(q.asks, labels); err != nil {
		bad = append(bad, err.Error())
	}
	return answers, bad
}

// TestAnswersAreTheWordsOfTheQuestion holds that each alternative of every question has one button with exactly its words, and that these words,
// said, are taken for it.
func TestAnswersAreTheWordsOfTheQuestion(t *testing.T) {
	list := questions(t)
	for i := range list {
		q := &list[i]
		if n, bad := unmatched(q); n == 0 || len(bad) > 0 {
			t.Errorf("%s, %q, %d answers: %q", q.name, q.asks, n, bad)
		}
	}
	if len(list) < 130 {
		t.Errorf("%d questions", len(list))
	}
}

// answerMatch is the share of all answers that match, %.
func answerMatch(t *testing.T) (share float64, n int) {
	good := 0
	list := questions(t)
	for i := range list {
		k, bad := unmatched(&list[i])
		n += k
		good += k - min(k, len(bad))
	}
	return 100 * float64(good) / float64(n), n
}
