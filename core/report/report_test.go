package report_test

import (
	"bytes"
	"strings"
	"testing"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/report"
	"readback/core/utterance"
	"readback/core/words"
	"readback/flows/prompts"
)

func sampleJob() report.Job {
	low, high := 21.0, 30.0
	stages := []string{"Safe to stay", "Checks"}
	return report.Job{Words: english, Entries: []report.Entry{
		{
			Event:   protocol.Event{Seq: 1, At: 1000, Type: protocol.EvBegin, Begin: &protocol.Begin{Job: "j1", Version: "v1", Data: "abc"}},
			Effects: []protocol.Effect{{Type: protocol.DoSay, Text: "Gas odour, or none?", Level: "info"}},
			View:    protocol.View{Job: "j1", Title: "test heater", StageNo: 1, Stages: stages},
		},
		{
			Event:   protocol.Event{Seq: 2, At: 2000, Type: protocol.EvSaid, Said: &utterance.Utterance{Text: "twenty six <b>", Rivals: []string{"twenty sixty"}, Source: "voice"}},
			Effects: []protocol.Effect{{Type: protocol.DoSay, Text: "House voltage, live.", Level: "danger"}},
			View: protocol.View{Job: "j1", Title: "test heater", StageNo: 2, Stages: stages,
				Heard:    &protocol.HeardView{Text: "twenty six", Taken: "26.1 V AC", Verdict: measure.Pass, Limit: "21 to 30 volts", U: 0.6, Unit: "V", Low: &low, High: &high},
				Suspects: []protocol.Suspect{{Part: "a", Name: "igniter", P: 0.2, Words: "less likely"}, {Part: "b", Name: "valve", P: 0.7}}},
		},
		{
			Event: protocol.Event{Seq: 3, At: 3000, Type: protocol.EvUndo, Target: 2},
			View: protocol.View{Job: "j1", Title: "test heater", StageNo: 2, Stages: stages, Ended: "stopped",
				Suspects: []protocol.Suspect{{Part: "a", Name: "igniter", P: 0.5}}, Open: []string{"lower panel off"},
				Site: protocol.SiteView{Power: "proved", Gas: "on", Covers: []string{"lower panel"}}},
		},
		{Event: protocol.Event{Seq: 4, At: 4000, Type: protocol.EvPhoto, Photo: &protocol.Photo{ID: "before", Name: "gone.jpg"}}, View: protocol.View{Title: "test heater", StageNo: 2, Stages: stages}},
	}}
}

func TestHTMLTellsEverything(t *testing.T) {
	var one, two bytes.Buffer
	if err := report.HTML(&one, sampleJob()); err != nil {
		t.Fatal(err)
	}
	if err := report.HTML(&two, sampleJob()); err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(one.Bytes(), two.Bytes()) {
		t.Error("two writings of one job differ")
	}
	for _, want := range []string{
		"twenty six &lt;b&gt;", "twenty sixty", "26.1 V AC", "pass", "21 to 30 volts", "0.6 V", "danger", "House voltage, live.",
		"was taken back", "gone.jpg is missing", `class="line l1"`, "test heater", "abc",
	} {
		if !strings.Contains(one.String(), want) {
			t.Errorf("the page lacks %q", want)
		}
	}
	for _, never := range []string{"<b>", "http://", "https://", "<script"} {
		if strings.Contains(one.String(), never) {
			t.Errorf("the page holds %q", never)
		}
	}
}

func TestText(t *testing.T) {
	var b bytes.Buffer
	if err := report.Text(&b, sampleJob()); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"[Checks]", "person: twenty six <b> (taken back)", "taken:  26.1 V AC; pass; 21 to 30 volts", "guide:  House voltage, live."} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("the text lacks %q in\n%s", want, b.String())
		}
	}
}

func TestEmptyJournal(t *testing.T) {
	if err := report.HTML(&bytes.Buffer{}, report.Job{}); err == nil || !strings.Contains(err.Error(), "no event") {
		t.Errorf("empty journal: %v", err)
	}
}

// TestDoubtsAreFew: many askings of one step are one line, with the nearest rivals only.
func TestDoubtsAreFew(t *testing.T) {
	j := report.Job{Words: english}
	for i := range 5 {
		j.Entries = append(j.Entries, report.Entry{
			Event: protocol.Event{Seq: int64(i + 1), At: 1000, Type: protocol.EvSaid, Said: &utterance.Utterance{Text: "ninety volts", Source: "voice"}},
			View: protocol.View{Title: "t", Step: protocol.StepView{ID: []string{"a", "a", "a", "b", "b"}[i]},
				Heard: &protocol.HeardView{Text: "ninety volts", Pending: true, Rivals: []string{"one", "two", "three", "four"}}},
		})
	}
	var b bytes.Buffer
	if err := report.HTML(&b, j); err != nil {
		t.Fatal(err)
	}
	page := b.String()
	for want, n := range map[string]int{"was asked again": 2, "; 3 times in all": 1, "; 2 times in all": 1, "one, two, three": 2, "four": 0} {
		if got := strings.Count(page, want); got != n {
			t.Errorf("%q stands %d times in the page, want %d", want, got, n)
		}
	}
}

var english = func() *words.Words {
	w, err := prompts.Load()
	if err != nil {
		panic(err)
	}
	return w
}()
