package job_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"strings"
	"testing"

	"readback/core/job"
	"readback/core/protocol"
)

// disk is a place to write that counts what was synced and may become full.
type disk struct {
	bytes.Buffer
	synced int
	room   int // bytes left; 0: endless
}

func (d *disk) Write(b []byte) (int, error) {
	if d.room > 0 && d.Len()+len(b) > d.room {
		n := d.room - d.Len()
		d.Buffer.Write(b[:n])
		return n, errors.New("no space left on device")
	}
	return d.Buffer.Write(b)
}

func (d *disk) Sync() error { d.synced = d.Len(); return nil }

// written is the journal of a whole job.
func written(t testing.TB) ([]byte, *driver) {
	t.Helper()
	d := drive(t, newMachine(t))
	for i := 0; !d.m.Ended() && i < 300; i++ {
		v := d.m.View()
		d.say(helpful(v, v.StageNo >= 14))
	}
	var out disk
	j := job.NewJournal(&out, 0)
	for i := range d.events {
		ev := d.events[i]
		if err := j.Append(&ev); err != nil {
			t.Fatal(err)
		}
		if out.synced != out.Len() {
			t.Fatal("not synced")
		}
	}
	return out.Bytes(), d
}

func maker(t testing.TB) func(protocol.Begin) (*job.Machine, error) {
	return func(protocol.Begin) (*job.Machine, error) { return newMachine(t), nil }
}

func TestJournalReplay(t *testing.T) {
	b, d := written(t)
	n := 0
	m, err := job.Replay(bytes.NewReader(b), maker(t), func(protocol.Event, []protocol.Effect) { n++ })
	if err != nil || n != len(d.events) || m.Digest() != d.m.Digest() {
		t.Errorf("%d of %d events, error %v, same bytes %v", n, len(d.events), err, m.Digest() == d.m.Digest())
	}
}

// Cut at any byte, everything complete before the cut is kept, and the error says which line and what.
func TestJournalCut(t *testing.T) {
	b, _ := written(t)
	lines := bytes.SplitAfter(b, []byte("\n"))
	head := len(lines[0]) + len(lines[1]) + len(lines[2])
	for cut := range head + 40 {
		events, err := job.ReadJournal(bytes.NewReader(b[:cut]))
		whole := bytes.Count(b[:cut], []byte("\n"))
		if len(events) != whole {
			t.Fatalf("cut at %d: %d events, want %d", cut, len(events), whole)
		}
		var de *job.DamageError
		clean := cut > 0 && b[cut-1] == '\n'
		if clean != (err == nil) || !clean && (!errors.As(err, &de) || de.Line != whole+1) {
			t.Fatalf("cut at %d: %v", cut, err)
		}
		if de != nil && len(bytes.Join(lines[:whole], nil)) != int(de.Size) {
			t.Fatalf("cut at %d: whole size %d", cut, de.Size)
		}
	}
}

func TestJournalDamage(t *testing.T) {
	b, _ := written(t)
	lines := strings.SplitAfter(string(b), "\n")
	for _, tt := range []struct {
		name string
		edit func(l []string)
		want string
	}{
		{"line missing", func(l []string) { l[3] = "" }, "line 4: event number 5, expected 4"},
		{"line doubled", func(l []string) { l[3] += l[3] }, "line 5: event number 4, expected 5"},
		{"not JSON", func(l []string) { l[2] = "{\"seq\":3,\"at\":oops}\n" }, "line 3: not an event"},
		{"unknown field", func(l []string) { l[2] = strings.Replace(l[2], `"at"`, `"ta"`, 1) }, `line 3: not an event: json: unknown field "ta"`},
		{"wrong type", func(l []string) { l[2] = `{"seq":3,"at":1,"type":"dance"}` + "\n" }, `line 3: no such type "dance"`},
		{"nothing said", func(l []string) { l[2] = `{"seq":3,"at":1,"type":"said"}` + "\n" }, "line 3: said is missing"},
		{"begins twice", func(l []string) { l[2] = strings.Replace(l[0], `"seq":1`, `"seq":3`, 1) }, "line 3: the job has begun already"},
		{"two on a line", func(l []string) { l[2] = strings.TrimSpace(l[2]) + l[2] }, "line 3: more than one value"},
		{"no beginning", func(l []string) { l[0] = `{"seq":1,"at":1,"type":"tick"}` + "\n" }, "line 1: the job has not begun"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l := append([]string(nil), lines...)
			tt.edit(l)
			_, err := job.ReadJournal(strings.NewReader(strings.Join(l, "")))
			if err == nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("got %v, want %s", err, tt.want)
			}
		})
	}
	if _, err := job.ReadJournal(strings.NewReader("")); err == nil || !strings.Contains(err.Error(), "line 1: the journal is empty") {
		t.Errorf("empty: %v", err)
	}
}

// A full disk is told, nothing is written after it, and what was whole stays whole.
func TestJournalFull(t *testing.T) {
	b, d := written(t)
	out := disk{room: len(b) / 2}
	j := job.NewJournal(&out, 0)
	taken := 0
	for i := range d.events {
		ev := d.events[i]
		if err := j.Append(&ev); err != nil {
			if !strings.Contains(err.Error(), "no space left") {
				t.Fatal(err)
			}
			continue
		}
		taken++
	}
	events, err := job.ReadJournal(bytes.NewReader(out.Bytes()))
	if len(events) != taken || err == nil {
		t.Errorf("%d events of %d taken, error %v", len(events), taken, err)
	}
}

func TestJournalOrder(t *testing.T) {
	var out disk
	j := job.NewJournal(&out, 0)
	if err := j.Append(&protocol.Event{Type: protocol.EvTick}); err == nil {
		t.Error("a journal begins without its beginning")
	}
	if err := j.Append(&protocol.Event{Seq: 7, Type: protocol.EvBegin, Begin: &protocol.Begin{}}); err == nil {
		t.Error("a journal begins with event 7")
	}
	m := newMachine(t)
	for _, ev := range []protocol.Event{{Type: protocol.EvTick}, {Type: "dance"}, {Type: protocol.EvBegin}, {Seq: 9, Type: protocol.EvBegin, Begin: &protocol.Begin{}}} {
		if _, err := m.Step(ev); err == nil {
			t.Errorf("%+v was taken", ev)
		}
	}
	if m.Seq() != 0 {
		t.Error("a refused event has a number")
	}
}

func FuzzJournal(f *testing.F) {
	b, _ := written(f)
	f.Add(b[:600])
	f.Add([]byte("{}\n"))
	f.Add([]byte(`{"seq":1,"at":1,"type":"begin","begin":{"job":"j"}}` + "\n" + `{"seq":2,"at":0,"type":"said","said":{"source":"voice","meanings":[{"kind":"reading"}]}}` + "\n"))
	f.Fuzz(func(t *testing.T, b []byte) {
		m, err := job.Replay(bytes.NewReader(b), maker(t), nil)
		if err == nil && m == nil {
			t.Fatal("no machine and no error")
		}
		if m == nil {
			return
		}
		if v := m.View(); v.State == "" {
			t.Fatal("no state")
		}
		if _, err := json.Marshal(m.View()); err != nil {
			t.Fatal(err)
		}
	})
}
