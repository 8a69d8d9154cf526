package app_test

import (
	"slices"
	"strings"
	"testing"
	"time"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/core/lab/metric"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/mobile/app"
)

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		w, l := pseudoLanguage(t)
		testLeaks(t, l, w)
		share, answers := answerMatch(t)
		add("page.answer_match_pct", share, "%", ">= 100", answers)
		add("lang.leaks", float64(len(l.found)), "words", "= 0", l.texts)

		// In the home of jobs, not in a folder of memory: a sync must reach the disk that people have.
		j, err := journal.Create(app.Folder(t.TempDir()), "journal")
		if err != nil {
			t.Fatal(err)
		}
		defer j.Close()
		const n = 300
		took := make([]time.Duration, n)
		for i := range took {
			u := utterance.Utterance{Source: "voice", Text: "twenty six point four volts a c", SNR: 14.2}
			began := time.Now()
			ev := protocol.Event{Seq: int64(i + 1), Type: protocol.EvSaid, At: int64(1000 * i), Said: &u}
			if i == 0 {
				ev = protocol.Event{Seq: 1, Type: protocol.EvBegin, Begin: &protocol.Begin{}}
			}
			if err := j.Append(ev); err != nil {
				t.Fatal(err)
			}
			took[i] = time.Since(began)
		}
		slices.Sort(took)
		add("journal.sync_ms", took[n/2].Seconds()*1000, "ms", "<= 5", n)

		lost := 0
		schedules := crashes(t, 440, func(format string, a ...any) {
			lost++
			t.Logf(format, a...)
		})
		add("crash.schedules", float64(schedules), "crashes", ">= 50000", schedules)
		add("crash.lost", float64(lost), "crashes", "= 0", schedules)

		slowest := time.Duration(0)
		const alarms = 40
		for i := range alarms {
			slowest = max(slowest, alarmOnHangingDisk(t, i%2 == 0))
		}
		add("alarm.without_disk_ms", slowest.Seconds()*1000, "ms", "<= 300", alarms)
	})
}

// alarmOnHangingDisk is how long an emergency takes to be said and shown when the disk takes nothing and does not answer, in a job and
// while an answer waits for the disk.
func alarmOnHangingDisk(t *testing.T, waits bool) time.Duration {
	t.Helper()
	d, hang := faultdisk.New(), make(chan struct{})
	b := open(t, app.Config{Disk: d})
	defer close(hang)
	shown := make(chan struct{}, 100)
	defer b.hub.Subscribe(func(m []byte) {
		if strings.Contains(string(m), `"state":"emergency"`) {
			shown <- struct{}{}
		}
	})()
	b.ok("POST", "/api/start", `{"voice":true}`)
	d.Fail = func(string, string) error { <-hang; return nil }
	if waits {
		go b.call("POST", "/api/event", said("smell", "choice", "none"))
		time.Sleep(20 * time.Millisecond)
	}
	began := time.Now()
	go b.call("POST", "/api/event", said("", "emergency", "gas"))
	<-shown
	for !b.host.has("Leave now") {
		time.Sleep(time.Millisecond)
	}
	return time.Since(began)
}
