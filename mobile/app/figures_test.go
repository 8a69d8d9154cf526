package app_test

import (
	"path/filepath"
	"slices"
	"testing"
	"time"

	"readback/core/lab/metric"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
)

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		// In the home of jobs, not in a folder of memory: a sync must reach the disk that people have.
		j, err := app.CreateJournal(filepath.Join(t.TempDir(), "journal"))
		if err != nil {
			t.Fatal(err)
		}
		defer j.Close()
		const n = 300
		took := make([]time.Duration, n)
		for i := range took {
			u := utterance.Utterance{Source: "voice", Text: "twenty six point four volts a c", SNR: 14.2}
			began := time.Now()
			if err := j.Append(protocol.Event{Seq: int64(i + 1), Type: protocol.EvSaid, At: int64(1000 * i), Said: &u}); err != nil {
				t.Fatal(err)
			}
			took[i] = time.Since(began)
		}
		slices.Sort(took)
		add("journal.sync_ms", took[n/2].Seconds()*1000, "ms", "<= 5", n)
	})
}
