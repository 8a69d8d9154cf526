package vosk_test

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"strings"
	"sync"
	"testing"

	data "readback/flows/lexicon"
	"readback/speech"
	"readback/speech/grammar"
	"readback/speech/model"
	"readback/speech/vosk"
)

var engine = sync.OnceValues(func() (*vosk.Engine, error) {
	f, err := model.Locate()
	if err != nil {
		return nil, err
	}
	return vosk.Open(f.Library, f.Model)
})

func open(t testing.TB) *vosk.Engine {
	t.Helper()
	e, err := engine()
	var missing *model.Error
	if errors.As(err, &missing) {
		t.Skip(err)
	}
	if err != nil {
		t.Fatal(err)
	}
	return e
}

// say returns 16 kHz samples of espeak-ng's voice with silence around it.
func say(t testing.TB, text string) []int16 {
	t.Helper()
	if _, err := exec.LookPath("espeak-ng"); err != nil {
		t.Skip("espeak-ng is not installed")
	}
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		t.Skip("ffmpeg is not installed")
	}
	var out bytes.Buffer
	cmd := exec.Command("sh", "-c", "espeak-ng -s 150 --stdin --stdout | ffmpeg -loglevel error -i - -ar 16000 -ac 1 -f s16le -")
	cmd.Stdin, cmd.Stdout, cmd.Stderr = strings.NewReader(text), &out, os.Stderr
	if err := cmd.Run(); err != nil {
		t.Fatal(err)
	}
	b := out.Bytes()
	pcm := make([]int16, 8000, 16000+len(b)/2)
	for i := 0; i+1 < len(b); i += 2 {
		pcm = append(pcm, int16(b[i])|int16(b[i+1])<<8)
	}
	return append(pcm, make([]int16, 8000)...)
}

func TestRecognise(t *testing.T) {
	e := open(t)
	lex, err := data.Load()
	if err != nil {
		t.Fatal(err)
	}
	p := grammar.New(lex)
	list, left := p.Sample(3000, 1, e.Known)
	t.Logf("%d phrases, %d left out: %q", len(list), len(left), left)
	r, err := e.New(list, 20)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	for _, tt := range []struct{ say, want string }{
		{"twenty six point one volts", "26.1 V"},
		{"three point two micro amps", "3.2 uA"},
		{"forty seven ohms", "47 ohm"},
		{"one hundred nineteen volts a c", "119 V"},
	} {
		if _, err := r.Accept(say(t, tt.say)); err != nil {
			t.Fatal(err)
		}
		part, err := r.Partial()
		if err != nil {
			t.Fatal(err)
		}
		res, err := r.Final()
		if err != nil {
			t.Fatal(err)
		}
		u := p.Hear(res.Alternatives, grammar.Expect{})
		t.Logf("%q: partial %q, words %v, margin %.2f, rivals %q", tt.say, part, res.Words, u.Margin, u.Rivals)
		if m := u.Best(); m == nil || m.Reading == nil || m.Reading.Value.String() != tt.want {
			t.Errorf("%q heard as %q, %+v", tt.say, u.Text, m)
		}
	}
	if res, err := r.Final(); err != nil || len(res.Alternatives) != 0 {
		t.Errorf("nothing said: %+v, %v", res, err)
	}
}

func TestGuards(t *testing.T) {
	e := open(t)
	for _, tt := range []struct {
		name    string
		phrases []string
		n       int
	}{
		{"none", nil, 10}, {"empty", []string{""}, 10}, {"spaces", []string{"one  two"}, 10}, {"unknown word", []string{"one", "xyzzyx"}, 10},
		{"zero byte", []string{"one\x00two"}, 10}, {"no alternatives", []string{"one"}, 0},
	} {
		if r, err := e.New(tt.phrases, tt.n); !errors.Is(err, vosk.ErrGrammar) || r != nil {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
	r, err := e.New([]string{"one two", grammar.Unknown}, 3)
	if err != nil {
		t.Fatal(err)
	}
	if _, err := r.Accept(nil); err != nil {
		t.Errorf("no samples: %v", err)
	}
	for range 2 {
		if err := r.Close(); err != nil {
			t.Errorf("close: %v", err)
		}
	}
	if _, err := r.Accept([]int16{0}); !errors.Is(err, speech.ErrClosed) {
		t.Errorf("after close: %v", err)
	}
	if _, err := r.Partial(); !errors.Is(err, speech.ErrClosed) {
		t.Errorf("after close: %v", err)
	}
	if _, err := r.Final(); !errors.Is(err, speech.ErrClosed) {
		t.Errorf("after close: %v", err)
	}
	if e.Known("xyzzyx") || !e.Known("volts") || e.Known("") || e.Known("volts\x00") {
		t.Error("vocabulary")
	}
}

// What the library dies of must come back as an error. It runs in a process of its own, which must end by itself: a crash in C cannot be
// caught. A telephone's 8 kHz cannot be asked for at all, and its samples are taken for 16 kHz: heard wrong, but no crash.
func TestGuardsInChild(t *testing.T) {
	if os.Getenv("VOSK_CHILD") == "" {
		open(t)
		exe, err := os.Executable()
		if err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command(exe, "-test.run=^TestGuardsInChild$", "-test.v")
		cmd.Env = append(os.Environ(), "VOSK_CHILD=1")
		out, err := cmd.CombinedOutput()
		if err != nil || !bytes.Contains(out, []byte("child came to its end")) {
			t.Errorf("%v\n%s", err, out)
		}
		return
	}
	e := open(t)
	for _, tt := range []struct {
		name    string
		phrases []string
	}{
		{"empty list", []string{}}, {"quote", []string{`one", "two`}}, {"bracket", []string{"]"}}, {"backslash", []string{`one\`}},
		{"line break", []string{"one\ntwo"}}, {"broken UTF-8", []string{"one\xff"}}, {"a million letters", []string{strings.Repeat("a", 1e6)}},
	} {
		if r, err := e.New(tt.phrases, 10); !errors.Is(err, vosk.ErrGrammar) || r != nil {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
	// New phrases while a saying runs: another recogniser, and the old one goes on.
	first, err := e.New([]string{"one two", grammar.Unknown}, 3)
	if err != nil {
		t.Fatal(err)
	}
	noise := make([]int16, 8000)
	for i := range noise {
		noise[i] = int16(i * 7919)
	}
	if _, err := first.Accept(noise); err != nil {
		t.Error(err)
	}
	second, err := e.New([]string{"three four", grammar.Unknown}, 3)
	if err != nil {
		t.Fatal(err)
	}
	for _, r := range []*vosk.Recognizer{first, second} {
		if _, err := r.Accept(noise); err != nil {
			t.Error(err)
		}
		if _, err := r.Final(); err != nil {
			t.Error(err)
		}
		if err := r.Close(); err != nil {
			t.Error(err)
		}
	}
	if err := e.Close(); err != nil {
		t.Error(err)
	}
	if r, err := e.New([]string{"one"}, 3); err == nil || r != nil {
		t.Error("a recogniser from a closed engine")
	}
	t.Log("child came to its end")
}

// Two goroutines on one recogniser: one of them is refused, nothing crashes.
func TestBusy(t *testing.T) {
	e := open(t)
	r, err := e.New([]string{"one two", grammar.Unknown}, 3)
	if err != nil {
		t.Fatal(err)
	}
	defer r.Close()
	var wg sync.WaitGroup
	for range 4 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for range 50 {
				if _, err := r.Accept(make([]int16, 1600)); err != nil && !errors.Is(err, speech.ErrBusy) {
					t.Error(err)
				}
				if _, err := r.Final(); err != nil && !errors.Is(err, speech.ErrBusy) {
					t.Error(err)
				}
			}
		}()
	}
	wg.Wait()
}

func TestOpenErrors(t *testing.T) {
	f, err := model.Locate()
	if err != nil {
		t.Skip(err)
	}
	if _, err := vosk.Open("/nonexistent/libvosk.so", f.Model); err == nil {
		t.Error("no library: no error")
	}
	if _, err := vosk.Open(f.Library, t.TempDir()); !errors.Is(err, vosk.ErrModel) {
		t.Errorf("empty model folder: %v", err)
	}
}
