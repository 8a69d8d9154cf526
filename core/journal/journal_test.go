package journal_test

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"readback/core/journal"
	"readback/core/lab/faultdisk"
	"readback/core/lab/metric"
	"readback/core/protocol"
	"readback/core/utterance"
)

// some events of a job, the first n.
func some(n int) []protocol.Event {
	list := []protocol.Event{{Seq: 1, At: 1000, Type: protocol.EvBegin, Begin: &protocol.Begin{Job: "j", Appliance: "furnace-hsi", Lang: "en"}}}
	for i := 2; i <= n; i++ {
		ev := protocol.Event{Seq: int64(i), At: int64(1000 * i), Type: protocol.EvSaid, Step: "smell",
			Said: &utterance.Utterance{Text: fmt.Sprintf("none %d", i), Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: "none"}}}}
		if i%3 == 0 {
			ev = protocol.Event{Seq: int64(i), At: int64(1000 * i), Type: protocol.EvTick}
		}
		list = append(list, ev)
	}
	return list[:n]
}

func lines(t testing.TB, n int) []byte {
	t.Helper()
	data, _, err := journal.Lines(some(n))
	if err != nil {
		t.Fatal(err)
	}
	return data
}

const name = "journal.jsonl"

func write(t testing.TB, d journal.Disk, n int) *journal.Journal {
	t.Helper()
	j, err := journal.Create(d, name)
	if err != nil {
		t.Fatal(err)
	}
	for _, ev := range some(n) {
		if err := j.Append(ev); err != nil {
			t.Fatal(err)
		}
	}
	return j
}

func read(t testing.TB, d journal.Disk) *journal.Reading {
	t.Helper()
	data, err := d.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	return journal.Read(data)
}

func same(t testing.TB, got []protocol.Event, n int) {
	t.Helper()
	a, err := json.Marshal(got)
	if err != nil {
		t.Fatal(err)
	}
	b, err := json.Marshal(append([]protocol.Event(nil), some(n)...))
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(a, b) {
		t.Fatalf("got %s\nwant %s", a, b)
	}
}

// What is written reads back, and goes on after that.
func TestWriteReadContinue(t *testing.T) {
	d := faultdisk.New()
	write(t, d, 7).Close()
	r := read(t, d)
	if r.Damage != nil || r.Format != journal.Format {
		t.Fatalf("format %d, %v", r.Format, r.Damage)
	}
	same(t, r.Events, 7)
	j, err := journal.Continue(d, name, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Append(some(8)[7]); err != nil {
		t.Fatal(err)
	}
	same(t, read(t, d).Events, 8)
	if err := j.Append(some(8)[7]); err == nil {
		t.Error("an event was taken twice")
	}
	if _, err := journal.Create(d, name); err == nil {
		t.Error("a journal was made over another")
	}
	fresh, err := journal.Create(d, "other")
	if err != nil {
		t.Fatal(err)
	}
	if err := fresh.Append(protocol.Event{Type: protocol.EvTick}); err == nil {
		t.Error("a journal begins without its beginning")
	}
	if err := fresh.Append(protocol.Event{Seq: 7, Type: protocol.EvBegin}); err == nil {
		t.Error("a journal begins with event 7")
	}
}

// Cut at any byte, everything whole before the cut is kept and the cut is told, but for one between two lines, which no line can show.
func TestCut(t *testing.T) {
	data := lines(t, 6)
	for cut := range data {
		r := journal.Read(data[:cut])
		whole := bytes.Count(data[:cut], []byte("\n"))
		same(t, r.Events, whole)
		between := cut > 0 && data[cut-1] == '\n'
		if between != (r.Damage == nil) {
			t.Fatalf("cut at %d: %v", cut, r.Damage)
		}
		if r.Damage != nil && (r.Damage.Line != whole+1 || cut > 0 && !r.Damage.Torn) {
			t.Fatalf("cut at %d: %+v", cut, r.Damage)
		}
	}
}

func TestDamage(t *testing.T) {
	for _, tt := range []struct {
		name string
		edit func(l []string)
		want string
	}{
		{"line missing", func(l []string) { l[3] = "" }, "line 4: the checksum does not fit"},
		{"line doubled", func(l []string) { l[3] += l[3] }, "line 5: the checksum does not fit"},
		{"lines changed over", func(l []string) { l[3], l[4] = l[4], l[3] }, "line 4: the checksum does not fit"},
		{"not JSON", func(l []string) { l[2] = "{\"seq\":3,\"at\":oops}\n" }, "line 3: the checksum does not fit"},
		{"a field renamed", func(l []string) { l[1] = strings.Replace(l[1], `"meanings"`, `"meanhngz"`, 1) }, "line 2: the checksum does not fit"},
		{"checksum left out", func(l []string) { l[2] = l[2][:strings.Index(l[2], `,"sum"`)] + "}\n" }, "line 3: the checksum does not fit"},
		{"of another journal", func(l []string) { l[0] = strings.Replace(l[0], `"j"`, `"kk"`, 1) }, "line 1: the checksum does not fit"},
		{"empty line", func(l []string) { l[2] = "\n" + l[2] }, "line 3: the checksum does not fit"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			l := strings.SplitAfter(string(lines(t, 8)), "\n")
			tt.edit(l)
			r := journal.Read([]byte(strings.Join(l, "")))
			if r.Damage == nil || !strings.Contains(r.Damage.Error(), tt.want) {
				t.Errorf("got %v, want %s", r.Damage, tt.want)
			}
		})
	}
	if r := journal.Read(nil); r.Damage == nil || !strings.Contains(r.Damage.Error(), "line 1: the journal is empty") {
		t.Errorf("empty: %v", r.Damage)
	}
}

// Format 1 has no checksum, but fields that are not known, numbers that cannot be and a wrong order are refused there too.
func TestOldFormat(t *testing.T) {
	old := `{"seq":1,"at":1,"type":"begin","begin":{"job":"j","appliance":"","data":"","version":"","lang":"en","voice":true}}` + "\n"
	for _, tt := range []struct{ line, want string }{
		{`{"seq":2,"at":1,"type":"tick"}`, ""},
		{`{"seq":2,"at":1,"typ":"tick"}`, `unknown field "typ"`},
		{`{"seq":3,"at":1,"type":"tick"}`, "event number 3, expected 2"},
		{`{"seq":2,"at":1,"type":"dance"}`, `no such type "dance"`},
		{`{"seq":2,"at":1,"type":"said"}`, "said is missing"},
		{`{"seq":2,"at":1,"type":"tick"}{"seq":2,"at":1,"type":"tick"}`, "more than one value"},
		{`{"seq":2,"at":1,"type":"begin","begin":{"job":"j","appliance":"","data":"","version":"","lang":"en","voice":true}}`, "has begun already"},
		{`{"seq":2,"at":1,"type":"said","said":{"text":"","source":"line","meanings":[{"kind":"reading","cost":0,"reading":{"value":{"d":{"m":1,"e":400},"u":"V"}}}]}}`, "exponent 400"},
		{`{"seq":2,"at":1,"type":"tick","sum":"0123456789abcdef"}`, "a checksum in a journal without them"},
	} {
		r := journal.Read([]byte(old + tt.line + "\n"))
		if tt.want == "" {
			if r.Damage != nil || r.Format != 1 || len(r.Events) != 2 {
				t.Errorf("%s: format %d, %v", tt.line, r.Format, r.Damage)
			}
			continue
		}
		if r.Damage == nil || !strings.Contains(r.Damage.Error(), tt.want) {
			t.Errorf("%s: %v, want %s", tt.line, r.Damage, tt.want)
		}
	}
}

// A repair keeps the damaged journal, tells what is lost, and what it leaves goes on.
func TestRepair(t *testing.T) {
	d := faultdisk.New()
	data := lines(t, 9)
	l := bytes.SplitAfter(data, []byte("\n"))
	l[3] = []byte("###\n")
	broken := bytes.Join(l, nil)
	d.Put(name, broken)
	r := read(t, d)
	lost := r.Lost()
	if lost == nil || lost.First != 4 || lost.Last != 9 || lost.From != 3000 || lost.To != 9000 || len(r.Damage.Later) != 5 {
		t.Fatalf("lost %+v, later %d", lost, len(r.Damage.Later))
	}
	if _, err := journal.Continue(d, name, r); err == nil {
		t.Error("a damaged journal goes on unrepaired")
	}
	kept, err := journal.Repair(d, name, r)
	if err != nil {
		t.Fatal(err)
	}
	if was, err := d.ReadFile(kept); err != nil || !bytes.Equal(was, broken) {
		t.Errorf("the damaged journal is not kept: %v", err)
	}
	j, err := journal.Continue(d, name, r)
	if err != nil {
		t.Fatal(err)
	}
	if err := j.Append(some(4)[3]); err != nil {
		t.Fatal(err)
	}
	same(t, read(t, d).Events, 4)
}

// Every wrong bit is found, and nearly every one put right.
func TestFlips(t *testing.T) {
	silent, mended, told := flips(t, 1500, 1)
	if silent != 0 {
		t.Errorf("%d flips changed the job without a word", silent)
	}
	t.Logf("%d put right, %d told", mended, told)
}

// flips turns one bit after the other in a journal and counts what became of it.
func flips(t testing.TB, n int, seed uint64) (silent, mended, told int) {
	t.Helper()
	rng := rand.New(rand.NewPCG(seed, 2))
	data := lines(t, 24)
	want, err := json.Marshal(some(24))
	if err != nil {
		t.Fatal(err)
	}
	for range n {
		bit := rng.IntN(8 * len(data))
		bad := bytes.Clone(data)
		bad[bit/8] ^= 1 << (bit % 8)
		r := journal.Read(bad)
		got, err := json.Marshal(r.Events)
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case r.Damage != nil:
			told++
			if whole := len(r.Events); whole > 0 {
				same(t, r.Events, whole)
			}
		case len(r.Mended) > 0 && bytes.Equal(got, want):
			mended++
		default:
			silent++
		}
	}
	return silent, mended, told
}

// A full disk is told; when there is room again the journal goes on, and what was acknowledged is whole.
func TestFull(t *testing.T) {
	d := faultdisk.New()
	j := write(t, d, 3)
	d.Fail = func(op, _ string) error {
		if op == "write" || op == "truncate" {
			return faultdisk.ErrFull
		}
		return nil
	}
	if err := j.Append(some(4)[3]); !errors.Is(err, faultdisk.ErrFull) {
		t.Fatalf("full: %v", err)
	}
	d.Fail = nil
	for _, ev := range some(6)[3:] {
		if err := j.Append(ev); err != nil {
			t.Fatal(err)
		}
	}
	same(t, read(t, d).Events, 6)
}

// A sync that fails is not believed the next time; a journal that is deleted or changed under the program is written anew.
func TestDoubtfulFile(t *testing.T) {
	for what, do := range map[string]func(d *faultdisk.Disk){
		"deleted": func(d *faultdisk.Disk) { _ = d.Remove(name) },
		"replaced": func(d *faultdisk.Disk) {
			if err := journal.WriteFile(d, name, []byte("nothing")); err != nil {
				t.Fatal(err)
			}
		},
		"added to": func(d *faultdisk.Disk) {
			f, err := d.Open(name, journal.Add)
			if err != nil {
				t.Fatal(err)
			}
			if _, err := f.Write([]byte("{}\n")); err != nil {
				t.Fatal(err)
			}
		},
	} {
		d := faultdisk.New()
		j := write(t, d, 3)
		do(d)
		if err := j.Append(some(4)[3]); err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		if j.Anew() != 1 {
			t.Errorf("%s: not noticed", what)
		}
		same(t, read(t, d.Crash(1)).Events, 4)
	}
	d := faultdisk.New()
	j := write(t, d, 3)
	d.Fail = func(op, _ string) error {
		if op == "sync" {
			return faultdisk.ErrDevice
		}
		return nil
	}
	if err := j.Append(some(4)[3]); err == nil {
		t.Fatal("a failed sync was believed")
	}
	d.Fail = nil
	if err := j.Append(some(4)[3]); err != nil {
		t.Fatal(err)
	}
	for seed := range uint64(50) {
		same(t, read(t, d.Crash(seed)).Events, 4)
	}
}

// Whatever the power cut leaves of it, every acknowledged event is there.
func TestCrash(t *testing.T) {
	for at := 1; ; at++ {
		d := faultdisk.New()
		d.DieAt(at)
		acked := 0
		if j, err := journal.Create(d, name); err == nil {
			for _, ev := range some(8) {
				if j.Append(ev) != nil {
					break
				}
				acked++
			}
		}
		if acked == 8 {
			return
		}
		for seed := range uint64(40) {
			after := d.Crash(seed)
			data, err := after.ReadFile(name)
			if err != nil && acked > 0 {
				t.Fatalf("after operation %d, seed %d: %d acknowledged and no journal", at, seed, acked)
			}
			r := journal.Read(data)
			if len(r.Events) < acked {
				t.Fatalf("after operation %d, seed %d: %d of %d events: %v", at, seed, len(r.Events), acked, r.Damage)
			}
			same(t, r.Events, len(r.Events))
		}
	}
}

// Every journal of a format that was released is read, converted, and reads the same after that.
func TestReleasedFormats(t *testing.T) {
	names, err := filepath.Glob("../../testdata/journals/format1*/*.jsonl")
	if err != nil || len(names) < 30 {
		t.Fatalf("%d old journals, %v", len(names), err)
	}
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			t.Fatal(err)
		}
		d := faultdisk.New()
		d.Put(name, data)
		r := read(t, d)
		if r.Damage != nil || r.Format != 1 {
			t.Errorf("%s: format %d, %v", n, r.Format, r.Damage)
			continue
		}
		was, err := json.Marshal(r.Events)
		if err != nil {
			t.Fatal(err)
		}
		kept, err := journal.Repair(d, name, r)
		if err != nil || !strings.Contains(kept, "format1") {
			t.Fatalf("%s: %q, %v", n, kept, err)
		}
		again := read(t, d)
		now, err := json.Marshal(again.Events)
		if err != nil {
			t.Fatal(err)
		}
		if again.Damage != nil || again.Format != journal.Format || !bytes.Equal(was, now) {
			t.Errorf("%s: converted it is format %d, %v, same %v", n, again.Format, again.Damage, bytes.Equal(was, now))
		}
	}
}

func TestReplay(t *testing.T) {
	n := 0
	if err := journal.Replay(some(5), func(protocol.Event) error { n++; return nil }); err != nil || n != 5 {
		t.Errorf("%d, %v", n, err)
	}
	if err := journal.Replay(some(5)[1:], func(protocol.Event) error { return nil }); err == nil {
		t.Error("a journal without its beginning replays")
	}
	if err := journal.Replay(some(5), func(ev protocol.Event) error {
		if ev.Seq == 3 {
			return errors.New("no")
		}
		return nil
	}); err == nil || !strings.Contains(err.Error(), "event 3: no") {
		t.Errorf("%v", err)
	}
}

func FuzzRead(f *testing.F) {
	f.Add(lines(f, 4))
	f.Add([]byte(`{"seq":1,"at":1,"type":"begin","begin":{"job":"","appliance":"","data":"","version":"","lang":"","voice":false}}` + "\n"))
	f.Add([]byte("\n\n"))
	f.Fuzz(func(t *testing.T, data []byte) {
		r := journal.Read(data)
		again, _, err := journal.Lines(r.Events)
		if err != nil {
			t.Fatalf("what was read cannot be written: %v", err)
		}
		b := journal.Read(again)
		if len(r.Events) > 0 && (b.Damage != nil || len(b.Events) != len(r.Events)) {
			t.Fatalf("%d events read, %d read again: %v", len(r.Events), len(b.Events), b.Damage)
		}
	})
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		const n = 20000
		silent, mended, told := flips(t, n, 3)
		add("flip.silent_pct", 100*float64(silent)/n, "%", "= 0", n)
		add("flip.mended_pct", 100*float64(mended)/n, "%", "reported", n)
		add("flip.told_pct", 100*float64(told)/n, "%", "reported", n)
	})
}
