package app_test

import (
	"archive/zip"
	"bytes"
	"encoding/json"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"readback/core/utterance"
	"readback/mobile/app"
	"readback/speech/audio"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
)

// recorded opens a hub whose ear says what the test wants; by voice, with sound kept or not.
func recorded(t *testing.T, keep bool) (*bench, *app.Listener, string) {
	t.Helper()
	ear := &fakeEar{}
	b := open(t, app.Config{Speech: app.Speech{Open: func(l app.Listener) (app.Ear, error) { ear.l = l; return ear, nil }}})
	b.eventually("the ear is ready", func() bool { return b.state().Ear.State == "ready" })
	b.ok("POST", "/api/prefs", fmt.Sprintf(`{"voice":true,"done":true,"sound":%v}`, keep))
	b.ok("POST", "/api/start", `{"voice":true}`)
	return b, &ear.l, b.state().View.Job
}

// tone is a second of sound, another for every n.
func tone(n int) []int16 {
	out := make([]int16, 16000+n)
	for i := range out {
		out[i] = int16(12000 * math.Sin(float64(i*(n+1))/20))
	}
	return out
}

func none(partial bool) utterance.Utterance {
	return utterance.Utterance{Text: "none", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Choice, ID: "none"}}, Partial: partial}
}

var gas = utterance.Utterance{Text: "i smell gas", Source: "voice", Meanings: []utterance.Meaning{{Kind: utterance.Emergency, ID: "gas"}}}

// sounds are the files of a job's sound, by name.
func (b *bench) sounds(id string) map[string][]byte {
	b.Helper()
	names, err := filepath.Glob(filepath.Join(b.dir, "jobs", id, "sound-*"))
	if err != nil {
		b.Fatal(err)
	}
	out := map[string][]byte{}
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			b.Fatal(err)
		}
		out[filepath.Base(n)] = data
	}
	return out
}

func (b *bench) steps(id string) (steps []app.ReplayStep) {
	b.Helper()
	if err := json.Unmarshal([]byte(b.ok("GET", "/api/jobs/"+id+"/steps", "")), &steps); err != nil {
		b.Fatal(err)
	}
	return steps
}

func TestSoundIsNotKeptUnasked(t *testing.T) {
	b, ear, id := recorded(t, false)
	ear.Sound(tone(1))
	ear.Utterance(none(false))
	if s := b.sounds(id); len(s) != 0 {
		t.Errorf("kept without being asked: %d files", len(s))
	}
}

// The sound of an answer is a file of its own, tied to its event, heard in the replay, packed, deleted and brought back with the job.
func TestSoundIsKept(t *testing.T) {
	b, ear, id := recorded(t, true)
	ear.Sound(tone(0))
	ear.Utterance(utterance.Utterance{Text: "mumble", Source: "voice", Fault: "unknown"}) // talk in the room
	ear.Sound(tone(1))
	ear.Utterance(none(false))
	b.ok("POST", "/api/event", said("w-c", "command", "go-live")) // touch has no sound
	files := b.sounds(id)
	if len(files) != 1 {
		t.Fatalf("%d files of sound, want that of the one answer spoken", len(files))
	}
	name := ""
	for _, s := range b.steps(id) {
		if (s.Sound != "") != (s.Event.Said != nil && s.Event.Said.Text == "none") {
			t.Errorf("event %d has the sound %q", s.Event.Seq, s.Sound)
		}
		if s.Sound != "" {
			name = s.Sound
			if want := fmt.Sprintf("sound-%d.wav", s.Event.Seq); name != want {
				t.Errorf("the file is %s, want %s", name, want)
			}
		}
	}
	status, kind, data := b.hub.Request("GET", "/api/jobs/"+id+"/sound/"+name, nil)
	if status != 200 || kind != "audio/wav" || !bytes.Equal(data, files[name]) {
		t.Fatalf("asked for the sound: %d %s, %d bytes", status, kind, len(data))
	}
	pcm, err := audio.ReadWAV(bytes.NewReader(data))
	if err != nil {
		t.Fatal(err)
	}
	if want := tone(1); len(pcm) != len(want) || math.Abs(float64(pcm[500])-float64(want[500])) > 700 {
		t.Errorf("%d samples came back, want %d", len(pcm), len(want))
	}

	pack := b.ok("GET", "/api/jobs/"+id+"/export.zip", "")
	z, err := zip.NewReader(strings.NewReader(pack), int64(len(pack)))
	if err != nil {
		t.Fatal(err)
	}
	if f, err := z.Open(name); err != nil {
		t.Error(err)
	} else {
		f.Close()
	}

	b.ok("POST", "/api/jobs/"+id+"/delete", `{}`)
	if status, _ := b.call("GET", "/api/jobs/"+id+"/sound/"+name, ""); status != 404 {
		t.Errorf("the sound of a deleted job: %d", status)
	}
	b.ok("POST", "/api/jobs/"+id+"/restore", `{}`)
	b.ok("GET", "/api/jobs/"+id+"/sound/"+name, "")
	if status, _ := b.call("GET", "/api/jobs/"+id+"/sound/journal.jsonl", ""); status != 404 {
		t.Errorf("a journal asked for as sound: %d", status)
	}
}

// An alarm is acted on before it is over; its sound belongs to the event it became then, and nothing of it to the next saying.
func TestSoundOfAnAlarm(t *testing.T) {
	b, ear, id := recorded(t, true)
	half := gas
	half.Partial = true
	ear.Partial("i smell gas")
	ear.Utterance(half)
	ear.Sound(tone(1))
	ear.Utterance(gas)
	ear.Partial("")
	for _, s := range b.steps(id) {
		if (s.Sound != "") != (s.Event.Said != nil && s.Event.Said.Partial) {
			t.Errorf("event %d has the sound %q", s.Event.Seq, s.Sound)
		}
	}
	if n := len(b.sounds(id)); n != 1 {
		t.Errorf("%d files of sound", n)
	}
	// An alarm whose saying came to nothing leaves its place to nobody.
	ear.Utterance(half)
	ear.Partial("")
	ear.Sound(tone(2))
	if n := len(b.sounds(id)); n != 1 {
		t.Errorf("the next saying was kept in the place of the last: %d files", n)
	}
}

// A sound that cannot be written loses nothing else and is told once.
func TestSoundCannotBeWritten(t *testing.T) {
	b, ear, id := recorded(t, true)
	var mu sync.Mutex
	told := 0
	b.hub.Subscribe(func(msg []byte) {
		mu.Lock()
		defer mu.Unlock()
		if strings.Contains(string(msg), "cannot be kept as sound") {
			told++
		}
	})
	seq := len(b.journal())
	for n := range 2 {
		if err := os.MkdirAll(filepath.Join(b.dir, "jobs", id, fmt.Sprintf("sound-%d.wav", seq+1+n), "in the way"), 0o700); err != nil {
			t.Fatal(err)
		}
	}
	for range 3 {
		ear.Sound(tone(1))
		ear.Utterance(none(false))
	}
	events := b.journal()
	if len(events) < seq+3 || events[seq].Said == nil || events[seq+2].Said == nil {
		t.Fatalf("the journal holds %d events after %d", len(events), seq)
	}
	if status, _ := b.call("GET", fmt.Sprintf("/api/jobs/%s/sound/sound-%d.wav", id, seq+3), ""); status != 200 {
		t.Errorf("with room again the sound is not kept: %d", status)
	}
	b.hub.Close() // delivers what is queued
	mu.Lock()
	defer mu.Unlock()
	if told != 1 {
		t.Errorf("told %d times", told)
	}
}

// Events that a damaged journal lost leave their numbers to others, but not their sound.
func TestSoundOfLostEvents(t *testing.T) {
	b, ear, id := recorded(t, true)
	ear.Sound(tone(1))
	ear.Utterance(none(false))
	b.hub.Close()
	name := filepath.Join(b.dir, "jobs", id, "journal.jsonl")
	data, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	first := bytes.IndexByte(data, '\n') + 1
	if err := os.WriteFile(name, append(data[:first:first], "###\n"...), 0o600); err != nil {
		t.Fatal(err)
	}
	c := open(t, app.Config{Dir: b.dir})
	for range 4 {
		c.ok("POST", "/api/event", said("", "command", "repeat"))
	}
	for _, s := range c.steps(id) {
		if s.Sound != "" {
			t.Errorf("event %d has the sound of one that is lost", s.Event.Seq)
		}
	}
	if n := len(c.sounds(id)); n != 1 {
		t.Errorf("%d files are left of the one", n)
	}
}

// Every sample comes back within the step of the law: a 32nd part of it, 8 at least.
func TestMuLaw(t *testing.T) {
	var in []int16
	for v := math.MinInt16; v <= math.MaxInt16; v++ {
		in = append(in, int16(v))
	}
	for _, pcm := range [][]int16{in, in[:1001], nil} {
		out, err := audio.ReadWAV(bytes.NewReader(app.MuLawFile(pcm)))
		if err != nil || len(out) != len(pcm) {
			t.Fatalf("%d samples became %d: %v", len(pcm), len(out), err)
		}
		for i := range pcm {
			v := math.Abs(float64(pcm[i]))
			if d := math.Abs(float64(pcm[i]) - float64(out[i])); d > max(8, (v+132)/32) {
				t.Fatalf("%d came back as %d", pcm[i], out[i])
			}
		}
	}
}

// With the real recogniser: what was said is in the file from its beginning to its end.
func TestSoundOfASaying(t *testing.T) {
	if _, err := model.Locate(); err != nil {
		t.Skip(err)
	}
	voices := hearbench.Voices()
	if len(voices) == 0 {
		t.Skip("no synthesised voice on this machine: apt-get install espeak-ng flite")
	}
	speech, err := voices[0].Say("no gas odour")
	if err != nil {
		t.Fatal(err)
	}
	b := open(t, app.Config{Speech: app.Recogniser(model.Locate)})
	b.eventually("the ear is ready", func() bool { return b.state().Ear.State == "ready" })
	b.ok("POST", "/api/prefs", `{"voice":true,"done":true,"sound":true}`)
	b.ok("POST", "/api/start", `{"voice":true}`)
	id := b.state().View.Job
	b.eventually("the guide has spoken", func() bool {
		b.hub.Spoke("say-1", false)
		return !b.state().Ear.Busy
	})
	pcm := hearbench.Clip(speech, -26, math.Inf(1), nil, 1, 2)
	block := make([]byte, 0, 3200)
	for i := 0; i+1600 <= len(pcm); i += 1600 {
		block = block[:0]
		for _, v := range pcm[i : i+1600] {
			block = append(block, byte(v), byte(v>>8))
		}
		b.eventually("the ear keeps up", func() bool { return b.hub.Feed(block) == nil })
	}
	b.eventually("the sound is there", func() bool { return len(b.sounds(id)) == 1 })
	for name, data := range b.sounds(id) {
		got, err := audio.ReadWAV(bytes.NewReader(data))
		if err != nil {
			t.Fatal(name, err)
		}
		if len(got) < len(speech)*3/4 || energy(got) < energy(pcm)*9/10 {
			t.Errorf("%s holds %d samples with %.0f %% of the energy said", name, len(got), 100*energy(got)/energy(pcm))
		}
	}
}

func energy(pcm []int16) (e float64) {
	for _, v := range pcm {
		e += float64(v) * float64(v)
	}
	return e
}
