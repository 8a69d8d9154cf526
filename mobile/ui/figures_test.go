package ui_test

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"readback/core/figure"
	"readback/core/heard"
	"readback/core/session"
	"readback/mobile/ui"
)

func TestFigures(t *testing.T) {
	figure.Run(t, func(add figure.Adder) {
		// In the home of jobs, not in a folder of memory: a sync must reach the disk that people have.
		j, err := ui.CreateJournal(filepath.Join(t.TempDir(), "journal"))
		if err != nil {
			t.Fatal(err)
		}
		defer j.Close()
		const n = 300
		took := make([]time.Duration, n)
		for i := range took {
			u := heard.Utterance{Source: "voice", Text: "twenty six point four volts a c", SNR: 14.2}
			began := time.Now()
			if err := j.Append(session.Event{Seq: int64(i + 1), Type: session.EvSaid, At: int64(1000 * i), Said: &u}); err != nil {
				t.Fatal(err)
			}
			took[i] = time.Since(began)
		}
		slices.Sort(took)
		add("journal.sync_ms", took[n/2].Seconds()*1000, "ms", "<= 5", n)
	})
}
