// Command twoarch writes down what this program decides, so that two kinds of processor can be compared line by line. The sound comes from a file that one
// of them made, because a microphone gives both the same samples.
//
//	twoarch clips FILE N     writes N spoken readings in noise, and emergencies, as sound
//	twoarch hear FILE I N [alone]
//	                         hears the I-th of N parts of them, alone: without the second engine; for each saying a line with the decision (what is
//	                         done, with which value, against which rival, on which words), one with the ranking and one with the numbers behind it
//	twoarch job FOLDER FAULT leads a whole job by voice to its end and writes each sentence of both sides
//	twoarch load             opens the recogniser and the second engine and tells how long that took and what memory is used
//	twoarch say WORDS        writes them as sound, 16 kHz, mono, signed 16 bit, with room before and after
//	twoarch files            tells where the recogniser's library and model are
//	twoarch differ A B       compares two outputs of hear
package main

import (
	"bufio"
	"bytes"
	"context"
	"encoding/binary"
	"encoding/gob"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"time"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/utterance"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/mobile/app"
	"readback/mobile/lab/e2e"
	"readback/speech/grammar"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
	"readback/speech/rescore"
	"readback/speech/vosk"
)

func main() {
	if err := run(os.Args[1:], os.Stdout); err != nil {
		fmt.Fprintln(os.Stderr, "twoarch:", err)
		os.Exit(1)
	}
}

func run(args []string, out io.Writer) error {
	switch {
	case len(args) == 3 && args[0] == "clips":
		n, err := strconv.Atoi(args[2])
		if err != nil {
			return fmt.Errorf("how many clips: %w", err)
		}
		return clips(args[1], n)
	case (len(args) == 4 || len(args) == 5 && args[4] == "alone") && args[0] == "hear":
		i, err1 := strconv.Atoi(args[2])
		n, err2 := strconv.Atoi(args[3])
		if err := errors.Join(err1, err2); err != nil || n < 1 || i < 0 || i >= n {
			return fmt.Errorf("which part of how many: %s of %s", args[2], args[3])
		}
		return hear(args[1], i, n, len(args) == 5, out)
	case len(args) == 3 && args[0] == "job":
		return job(args[1], args[2], out)
	case len(args) == 2 && args[0] == "say":
		return say(args[1], out)
	case len(args) == 1 && args[0] == "files":
		f, err := model.Locate()
		if err != nil {
			return err
		}
		_, err = fmt.Fprintf(out, "%s\n%s\n", f.Library, f.Model)
		return err
	case len(args) == 1 && args[0] == "load":
		return load(out)
	case len(args) == 3 && args[0] == "differ":
		return differ(args[1], args[2], out)
	}
	return errors.New("want: clips FILE N, hear FILE I N, job FOLDER FAULT, load, say WORDS, files, or differ A B")
}

// clip is one sound and what was asked for.
type clip struct {
	Say    string
	PCM    []int16
	End    int
	Expect grammar.Expect
	Units  []string
}

// seed of what is said. The bench tunes with others.
const seed = 41

func clips(file string, n int) error {
	voices := hearbench.Voices()
	if len(voices) == 0 {
		return errors.New("no synthesised voice here: install espeak-ng or flite")
	}
	studio := hearbench.NewStudio(voices, seed)
	conditions := []hearbench.Condition{{SNR: math.Inf(1)}, {Noise: "fan", SNR: 20}, {Noise: "pink", SNR: 10}}
	items := hearbench.Readings(n, seed)
	for i := range hearbench.Paraphrases { // every fifth an emergency
		if k := 5 * i; k < len(items) {
			items[k] = hearbench.Paraphrases[i]
		}
	}
	var all []clip
	for i, it := range items {
		pcm, end, err := studio.Clip(voices[i%len(voices)], it.Say, conditions[i%len(conditions)], i)
		if err != nil {
			return err
		}
		x := it.Expect()
		all = append(all, clip{it.Say, pcm, end, x, x.Units})
	}
	f, err := os.Create(file)
	if err != nil {
		return err
	}
	if err := gob.NewEncoder(f).Encode(all); err != nil {
		return errors.Join(err, f.Close())
	}
	return f.Close()
}

func hear(file string, part, parts int, alone bool, out io.Writer) error {
	raw, err := os.ReadFile(file)
	if err != nil {
		return err
	}
	var all []clip
	if err := gob.NewDecoder(bytes.NewReader(raw)).Decode(&all); err != nil {
		return fmt.Errorf("%s: %w", file, err)
	}
	lex, err := lexicon.Load()
	if err != nil {
		return err
	}
	b, err := hearbench.Open(lex)
	if err != nil {
		return err
	}
	defer b.Close()
	if b.Rescorer == nil {
		return errors.New("the second engine did not load")
	}
	if alone {
		b.Rescorer = nil
	}
	w := bufio.NewWriter(out)
	defer w.Flush()
	for i, c := range all {
		if i%parts != part {
			continue
		}
		h, err := b.Hear(c.PCM, c.End, c.Expect)
		if err != nil {
			return fmt.Errorf("clip %d, %q: %w", i, c.Say, err)
		}
		fmt.Fprintf(w, "clip\t%d\t%s\t%d sayings\n", i, c.Say, len(h.Final))
		for _, u := range h.Final {
			d := utterance.Decide(&u, slot(c.Units))
			var what, numbers []string
			for _, m := range u.Meanings {
				what = append(what, name(m))
				numbers = append(numbers, fmt.Sprintf("%.6f", m.Cost))
			}
			taken, rival := "", ""
			if d.Take != nil {
				taken = fmt.Sprint(*d.Take)
			}
			if d.Rival != nil {
				rival = fmt.Sprint(*d.Rival)
			}
			fmt.Fprintf(w, "decision\t%v\t%s\t%s\t%s\t%s\n", d.Action, taken, rival, u.Text, u.Fault)
			fmt.Fprintf(w, "ranking\t%s\n", strings.Join(what, " | "))
			fmt.Fprintf(w, "numbers\t%.6f\t%.6f\t%.6f\t%s\n", u.SNR, u.Margin, h.Delay, strings.Join(numbers, "\t"))
		}
	}
	return w.Flush()
}

func name(m utterance.Meaning) string {
	if m.Reading != nil {
		return fmt.Sprintf("%s %v %v", m.Kind, m.Reading.State, m.Reading.Value)
	}
	return fmt.Sprintf("%s %s", m.Kind, m.ID)
}

// slot is a question where every difference of more than 2 % matters.
func slot(units []string) utterance.Slot {
	return utterance.Slot{
		Units:    units,
		Possible: func(measure.Reading) bool { return true },
		Matters: func(a, b measure.Reading) bool {
			x, y := a.Value.Base(), b.Value.Base()
			return a.State != b.State || math.Abs(x-y) > 0.02*math.Max(math.Abs(x), math.Abs(y))
		},
		Clears: func(r measure.Reading) bool { return r.State == measure.Dead },
	}
}

func job(dir, fault string, out io.Writer) error {
	models, err := flows.Builtin()
	if err != nil {
		return err
	}
	i := slices.IndexFunc(models, func(m *appliance.Model) bool { return m.ID == "furnace-hsi" })
	if i < 0 {
		return errors.New("no equipment file furnace-hsi")
	}
	m := models[i]
	engine, err := appliance.Compile(m)
	if err != nil {
		return err
	}
	k := slices.IndexFunc(m.Modes, func(x appliance.Mode) bool { return x.Full == fault })
	voices := hearbench.Voices()
	v := slices.IndexFunc(voices, func(v hearbench.Voice) bool { return v.Name == "espeak-us" })
	if k < 0 || v < 0 {
		return fmt.Errorf("the job wants a fault of furnace-hsi, not %q, and the voice espeak-us", fault)
	}
	ctx, cancel := context.WithTimeout(context.Background(), 3*time.Hour)
	defer cancel()
	res, err := e2e.Play(ctx, e2e.Job{Dir: dir, Model: m, Engine: engine, Modes: []int{k}, Voice: voices[v], Noise: "fan", SNR: 15, Seed: 1,
		Speech: app.Recogniser(model.Locate), Out: out, Stands: 20 * time.Minute})
	if err != nil {
		return err
	}
	fmt.Fprintf(out, "\nend\t%s\t%s\tmended %v\t%d sayings\t%d again\t%d taken back\t%d tapped\n", res.View.State, res.View.Ended, res.Mended, res.Said, res.Repeated, res.Objected, res.Tapped)
	return nil
}

func say(words string, out io.Writer) error {
	voices := hearbench.Voices()
	v := slices.IndexFunc(voices, func(v hearbench.Voice) bool { return v.Name == "espeak-us" })
	if v < 0 {
		return errors.New("the voice espeak-us is wanted: install espeak-ng")
	}
	pcm, err := voices[v].Say(words)
	if err != nil {
		return err
	}
	room := make([]int16, 4000)
	return binary.Write(out, binary.LittleEndian, slices.Concat(room, pcm, room))
}

func load(out io.Writer) error {
	files, err := model.Locate()
	if err != nil {
		return err
	}
	lex, err := lexicon.Load()
	if err != nil {
		return err
	}
	start := time.Now()
	e, err := vosk.Open(files.Library, files.Model)
	if err != nil {
		return err
	}
	engine := time.Since(start)
	p := grammar.New(lex)
	list, _ := p.Sample(grammar.Readings, 1, e.Known)
	rec, err := e.New(list, grammar.Alternatives)
	if err != nil {
		return err
	}
	ready := time.Since(start)
	start = time.Now()
	judge := rescore.From(files.Rescorer)
	if judge == nil {
		return errors.New("the second engine did not load")
	}
	second := time.Since(start)
	fmt.Fprintf(out, "load\t%s\tengine %.3f s\tfirst word possible %.3f s\tsecond engine %.3f s\tresident %.0f MB\n", runtime.GOARCH, engine.Seconds(), ready.Seconds(), second.Seconds(), resident())
	return errors.Join(rec.Close(), judge.Close(), e.Close())
}

// resident is the memory of this process in MB, 0 where the system does not tell.
func resident() float64 {
	raw, err := os.ReadFile("/proc/self/statm")
	if err != nil {
		return 0
	}
	var size, pages float64
	if _, err := fmt.Sscan(string(raw), &size, &pages); err != nil {
		return 0
	}
	return pages * float64(os.Getpagesize()) / 1e6
}

// differ compares decisions one by one, and the numbers behind those that are the same.
func differ(a, b string, out io.Writer) error {
	x, err := lines(a)
	if err != nil {
		return err
	}
	y, err := lines(b)
	if err != nil {
		return err
	}
	if len(x) == 0 || len(x) != len(y) {
		return fmt.Errorf("%s has %d clips, %s has %d", a, len(x), b, len(y))
	}
	decisions, same, ranked, numbers, exact, most := 0, 0, 0, 0, 0, 0.0
	for i := range x {
		p, q := x[i].decisions, y[i].decisions
		decisions += max(len(p), len(q), 1)
		if len(p) != len(q) {
			fmt.Fprintf(out, "differs: %s: %d sayings and %d\n", x[i].say, len(p), len(q))
			continue
		}
		if len(p) == 0 {
			same++ // both heard nothing
		}
		for k := range p {
			if p[k] != q[k] {
				fmt.Fprintf(out, "differs: %s:\n  %s\n  %s\n", x[i].say, p[k], q[k])
				continue
			}
			same++
			if x[i].rankings[k] != y[i].rankings[k] {
				continue // whose numbers are not those of the same things
			}
			ranked++
			for n, u := range x[i].numbers[k] {
				v := y[i].numbers[k][n]
				numbers++
				if u == v {
					exact++
				}
				most = math.Max(most, math.Abs(u-v))
			}
		}
	}
	fmt.Fprintf(out, "same decisions: %d of %d, %.3f %%; with the same ranking of all alternatives: %d; numbers behind them: %d of %d the same to 6 places, the largest difference %.6f\n", same, decisions, 100*float64(same)/float64(decisions), ranked, exact, numbers, most)
	return nil
}

type heard struct {
	say       string
	decisions []string
	rankings  []string
	numbers   [][]float64
}

func lines(file string) ([]heard, error) {
	raw, err := os.ReadFile(file)
	if err != nil {
		return nil, err
	}
	var out []heard
	for n, l := range strings.Split(strings.TrimRight(string(raw), "\n"), "\n") {
		f := strings.Split(l, "\t")
		if f[0] != "clip" && len(out) == 0 {
			return nil, fmt.Errorf("%s:%d: it does not begin with a clip", file, n+1)
		}
		switch f[0] {
		case "clip":
			out = append(out, heard{say: strings.Join(f[1:], " ")})
		case "decision":
			h := &out[len(out)-1]
			h.decisions = append(h.decisions, l)
		case "ranking":
			h := &out[len(out)-1]
			h.rankings = append(h.rankings, l)
		case "numbers":
			var v []float64
			for _, s := range f[1:] {
				if s == "" {
					continue
				}
				x, err := strconv.ParseFloat(s, 64)
				if err != nil {
					return nil, fmt.Errorf("%s:%d: %w", file, n+1, err)
				}
				v = append(v, x)
			}
			h := &out[len(out)-1]
			h.numbers = append(h.numbers, v)
		default:
			return nil, fmt.Errorf("%s:%d: a line of another kind: %q", file, n+1, f[0])
		}
	}
	for _, h := range out {
		if len(h.rankings) != len(h.decisions) || len(h.numbers) != len(h.decisions) {
			return nil, fmt.Errorf("%s: %s: it was cut off", file, h.say)
		}
	}
	return out, nil
}
