package hearbench_test

import (
	"context"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"runtime/debug"
	"sort"
	"strconv"
	"strings"
	"sync"
	"syscall"
	"testing"
	"time"

	"readback/core/lab/metric"
	"readback/core/utterance"
	data "readback/flows/lexicon"
	"readback/speech/audio"
	"readback/speech/grammar"
	"readback/speech/lab/hearbench"
	"readback/speech/voice"
)

// The whole run is bounded by time, not by count: each part stops when its share is used up, and says how many trials it had. HEAR_SECONDS sets
// the sum; 420 s give some 100 readings a condition on one idle core and ten minutes of noise alone, 2520 s an hour of it.
func share(part float64) time.Duration {
	return time.Duration(part * float64(number("HEAR_SECONDS", 420)) * float64(time.Second))
}

// parallel calls f with 0, 1, 2… on two benches until n calls are done or the time is up. It returns how many were done.
func parallel(t *testing.T, b *hearbench.Bench, n int, limit time.Duration, f func(b *hearbench.Bench, i int) error) int {
	t.Helper()
	w, err := b.Worker()
	if err != nil {
		t.Fatal(err)
	}
	defer w.CloseRecognizer()
	var mu sync.Mutex
	next, done := 0, 0
	end := time.Now().Add(limit)
	var wg sync.WaitGroup
	for _, x := range []*hearbench.Bench{b, w} {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for {
				mu.Lock()
				i := next
				next++
				mu.Unlock()
				if i >= n || time.Now().After(end) {
					return
				}
				if err := f(x, i); err != nil {
					t.Error(err)
					return
				}
				mu.Lock()
				done++
				mu.Unlock()
			}
		}()
	}
	wg.Wait()
	return done
}

func pct(a, n int) float64 { return 100 * float64(a) / math.Max(1, float64(n)) }

func quantile(x []float64, q float64) float64 {
	if len(x) == 0 {
		return math.NaN()
	}
	sort.Float64s(x)
	return x[min(len(x)-1, int(q*float64(len(x))))]
}

// resident is the memory of this process in MB, 0 where it is not told.
func resident() float64 {
	b, err := os.ReadFile("/proc/self/status")
	if err != nil {
		return 0
	}
	for line := range strings.Lines(string(b)) {
		if rest, ok := strings.CutPrefix(line, "VmRSS:"); ok {
			kb, _ := strconv.ParseFloat(strings.Fields(rest)[0], 64)
			return kb / 1024
		}
	}
	return 0
}

func cpu() float64 {
	var r syscall.Rusage
	if syscall.Getrusage(syscall.RUSAGE_SELF, &r) != nil {
		return 0
	}
	return float64(r.Utime.Nano()+r.Stime.Nano()) / 1e9
}

// tally guards what parallel trials count.
var tally sync.Mutex

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		lex, err := data.Load()
		if err != nil {
			t.Fatal(err)
		}
		start := time.Now()
		b, err := hearbench.Open(lex)
		if err != nil {
			t.Skip(err)
		}
		defer b.Close()
		add("hear.load_s", time.Since(start).Seconds(), "s", "<= 0.8", 1)
		if number("WIDE_ONLY", 0) == 1 {
			wide(t, add, b)
			return
		}
		s := hearbench.NewStudio(hearbench.Voices(), 20261)
		t.Logf("%d voices", len(s.Voices))
		atWork(t, add, b, s)
		speed(t, add, b, s)
		table := map[string]*cell{}
		readings(t, add, b, s, table)
		emergencies(t, add, b, s, lex)
		notForUs(t, add, b, s)
		memory(t, add, b, s)
		human(t, add, b)
		humanNumbers(t, add, b, s)
		write(t, table)
		wide(t, add, b)
	})
}

// atWork measures the memory of one ear in a job: the model, the wide recogniser, that of one question, that of the alarmGrammar, that of the common words and the
// judge, all used. It comes first: the bench keeps the recogniser of every question it ever asked, a job keeps one.
func atWork(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio) {
	clips := 0
	for i, it := range hearbench.Readings(60, 41) {
		if it.Value.Unit != "V" {
			continue
		}
		clips++
		if _, err := b.Listen(s, s.Voices[i%len(s.Voices)], it, hearbench.Conditions[3], i); err != nil {
			t.Fatal(err)
		}
	}
	for i, say := range []string{"i smell gas", "there is smoke"} {
		pcm, end, err := s.Clip(s.Voices[i], say, hearbench.Conditions[3], i)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := b.Hear(pcm, end, hearbench.Item{}.Expect()); err != nil {
			t.Fatal(err)
		}
	}
	add("hear.mem_mb", resident(), "MB", "<= 320", clips)
	const others = 3
	for i := range others { // words outside of the grammar make the largest lattices
		pcm, end, err := s.Clip(s.Voices[i], "i was thinking we could paint the kitchen this weekend", hearbench.Conditions[3], i)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := b.Hear(pcm, end, hearbench.Item{}.Expect()); err != nil {
			t.Fatal(err)
		}
	}
	add("hear.mem_talk_mb", resident(), "MB after talk", "reported", others)
}

// speed measures what the engine costs on sayings of a quiet room.
func speed(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio) {
	var words, chime, reply, barge []float64
	items := hearbench.Readings(40, 31)
	voiceWork := 0.0
	if v, err := voice.Find(); err == nil {
		var took []float64
		for range 5 {
			at := time.Now()
			if _, err := v.Say(context.Background(), "Twenty-six point one volts A C. Normal.", voice.Style{}); err != nil {
				t.Error(err)
			}
			took = append(took, time.Since(at).Seconds())
		}
		voiceWork = quantile(took, 0.5)
	}
	for i, it := range items { // the voices are made first: their time is not the recogniser's
		if _, err := s.Voices[i%len(s.Voices)].Say(it.Say); err != nil {
			t.Fatal(err)
		}
	}
	busy := cpu()
	for i, it := range items {
		pcm, end, err := s.Clip(s.Voices[i%len(s.Voices)], it.Say, hearbench.Conditions[0], i)
		if err != nil {
			t.Fatal(err)
		}
		h, err := b.Hear(pcm, end, it.Expect())
		if err != nil {
			t.Fatal(err)
		}
		words = append(words, float64(end)/16000-0.8)
		if len(h.Final) == 1 {
			chime = append(chime, math.Max(0, h.Chime))
			reply = append(reply, h.Delay+h.Work+voiceWork)
		}
	}
	busy = cpu() - busy
	sum := 0.0
	for _, w := range words {
		sum += w
	}
	add("hear.rtf", busy/sum, "CPU s per s of words", "<= 0.08", len(items))
	n := len(reply)
	add("hear.reply_median_s", quantile(reply, 0.5), "s", "<= 0.6", n)
	add("hear.reply_p95_s", quantile(reply, 0.95), "s", "<= 0.9", n)
	add("hear.earcon_p95_s", quantile(chime, 0.95), "s", "<= 0.35", n)
	b.Saying = "Red on first pin of the igniter, black on second pin."
	defer func() { b.Saying = "" }()
	for i, v := range s.Voices {
		pcm, end, err := s.Clip(v, "stop", hearbench.Conditions[0], i)
		if err != nil {
			t.Fatal(err)
		}
		h, err := b.Hear(pcm, end, grammar.Expect{})
		if err != nil {
			t.Fatal(err)
		}
		switch {
		case len(h.Partial) > 0:
			barge = append(barge, math.Max(0, h.Early))
		case len(h.Final) > 0 && h.Final[0].Best() != nil && h.Final[0].Best().ID == "quiet":
			barge = append(barge, h.Delay)
		}
	}
	add("hear.bargein_s", quantile(barge, 0.5), "s", "<= 0.2", len(barge))
	add("hear.bargein_heard_pct", pct(len(barge), len(s.Voices)), "%", "reported", len(s.Voices))
}

// cell counts one voice under one condition.
type cell struct{ n, right, wrong, raw int }

func readings(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio, table map[string]*cell) {
	type sum struct {
		n, right, raw, asked, touch int
		wrong, hazard               float64
	}
	var items []hearbench.Item
	for _, it := range hearbench.Readings(number("HEAR_N", 300), 2026) {
		if it.Held() {
			items = append(items, it)
		}
	}
	got := map[string]*sum{}
	hazard, total := 0.0, 0
	for _, c := range hearbench.Conditions {
		u := &sum{}
		got[c.String()] = u
		var mu sync.Mutex
		u.n = parallel(t, b, len(items), share(0.6/float64(len(hearbench.Conditions))), func(b *hearbench.Bench, i int) error {
			v := s.Voices[i%len(s.Voices)]
			row, err := b.Listen(s, v, items[i], c, i)
			if err != nil {
				return err
			}
			o, err := b.Play(s, v, row, i)
			if err != nil {
				return err
			}
			mu.Lock()
			defer mu.Unlock()
			k := c.String() + "\t" + v.Name
			if table[k] == nil {
				table[k] = &cell{}
			}
			table[k].n++
			if row.Right {
				u.right++
				table[k].right++
			} else {
				t.Log(row)
			}
			if row.Wrong {
				table[k].wrong++
			}
			if row.Raw {
				u.raw++
				table[k].raw++
			}
			u.asked += o.Asked
			if o.Touch {
				u.touch++
			}
			u.wrong += o.Wrong
			u.hazard += o.Hazard
			return nil
		})
		hazard += u.hazard
		total += u.n
	}
	// The worse of pink and fan counts.
	worst := func(level string, f func(*sum) float64, high bool) (float64, int) {
		out, n := math.NaN(), 0
		for _, c := range hearbench.Conditions {
			if !strings.HasSuffix(c.String(), level) {
				continue
			}
			u := got[c.String()]
			n += u.n
			if x := f(u); math.IsNaN(out) || high == (x > out) {
				out = x
			}
		}
		return out, n
	}
	for _, x := range []struct{ level, id, right, wrong, asked string }{
		{"clean", "clean", ">= 99.5", "<= 0.05", "<= 5"}, {" 20 dB", "20db", ">= 98.5", "reported", "reported"}, {" 10 dB", "10db", ">= 95", "<= 0.2", "<= 15"}, {" 5 dB", "5db", ">= 85", "<= 0.4", "reported"},
	} {
		v, n := worst(x.level, func(u *sum) float64 { return pct(u.right, u.n) }, false)
		add("hear.right_"+x.id+"_pct", v, "%", x.right, n)
		v, n = worst(x.level, func(u *sum) float64 { return pct(u.raw, u.n) }, false)
		add("hear.right_once_"+x.id+"_pct", v, "%", "reported", n)
		v, n = worst(x.level, func(u *sum) float64 { return 100 * u.wrong / math.Max(1, float64(u.n)) }, true)
		add("hear.acted_wrong_"+x.id+"_pct", v, "%", x.wrong, n)
		v, n = worst(x.level, func(u *sum) float64 { return pct(u.asked, u.n) }, true)
		add("hear.asked_"+x.id+"_pct", v, "% questions per value", x.asked, n)
		v, n = worst(x.level, func(u *sum) float64 { return pct(u.touch, u.n) }, true)
		add("hear.touch_"+x.id+"_pct", v, "%", "reported", n)
	}
	add("hear.acted_wrong_hazard_pct", 100*hazard/math.Max(1, float64(total)), "%", "<= 0.02", total)
	add("hear.readback_missed_assumed_pct", 100*hearbench.Missed, "%", "reported", 0)
}

// urgent tells whether an emergency was heard, and whether it was acted on without a check.
func urgent(h hearbench.Heard) (caught, acted bool) {
	for _, list := range [][]utterance.Utterance{h.Partial, h.Final} {
		for _, u := range list {
			for _, m := range u.Meanings {
				if m.Kind == utterance.Emergency {
					caught = true
					acted = acted || !m.Doubt
				}
			}
		}
	}
	return caught, acted
}

func emergencies(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio, lex *utterance.Lexicon) {
	var items []hearbench.Item
	missed, n := 0, 0
	for _, c := range lex.Emergencies.Classes {
		for k, say := range c.Say {
			say = strings.Join(strings.Fields(strings.ReplaceAll(say, "*", "some")), " ")
			n++
			if m := b.Parser.Urgent(say); m == nil || c.ID != "ask" && m.Doubt {
				missed++
				t.Logf("text: %s %q", c.ID, say)
			}
			if c.ID != "ask" && k%3 == 0 {
				items = append(items, hearbench.Item{Say: say, Class: c.ID})
			}
		}
	}
	for _, p := range hearbench.Paraphrases {
		n++
		if m := b.Parser.Urgent(p.Say); m == nil || m.Doubt {
			missed++
			t.Logf("text: %s %q", p.Class, p.Say)
		}
	}
	for _, say := range lex.Emergencies.Near {
		n++
		if m := b.Parser.Urgent(say); m != nil && m.Kind == utterance.Emergency {
			missed++
			t.Logf("text: near miss %q is %s", say, m.ID)
		}
	}
	add("hear.emergency_text_missed", float64(missed), "phrases", "= 0", n)
	mixed := make([]hearbench.Item, 0, len(items)+len(hearbench.Paraphrases))
	for i := range max(len(items), len(hearbench.Paraphrases)) { // both kinds from the start, in case the time is short
		if i < len(items) {
			mixed = append(mixed, items[(i*7)%len(items)])
		}
		if i < len(hearbench.Paraphrases) {
			mixed = append(mixed, hearbench.Paraphrases[i])
		}
	}
	const voices = 3 // each saying is said in so many
	for _, x := range []struct {
		id, target string
		c          hearbench.Condition
	}{{"clean", "<= 0.5", hearbench.Conditions[0]}, {"10db", "<= 1", hearbench.Conditions[3]}, {"5db", "<= 5", hearbench.Conditions[5]}} {
		var mu sync.Mutex
		missed := 0
		var early []float64
		n := parallel(t, b, voices*len(mixed), share(0.2), func(b *hearbench.Bench, i int) error {
			row, err := b.Listen(s, s.Voices[(i+i/len(mixed))%len(s.Voices)], mixed[i%len(mixed)], x.c, i)
			if err != nil {
				return err
			}
			mu.Lock()
			defer mu.Unlock()
			if caught, _ := urgent(row.Heard); !caught {
				missed++
				t.Log(row)
			}
			if len(row.Heard.Partial) > 0 {
				early = append(early, math.Max(0, row.Heard.Early))
			}
			return nil
		})
		add("hear.emergency_missed_"+x.id+"_pct", pct(missed, n), "%", x.target, n)
		if x.id == "clean" {
			add("hear.emergency_partial_p95_s", quantile(early, 0.95), "s", "<= 0.3", len(early))
		}
	}
}

// notForUs feeds what is not for us: talk in a room, noise alone, and readings that hold no emergency.
func notForUs(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio) {
	var mu sync.Mutex
	heardPct, other, acted := 0, 0, 0
	seconds := 0.0
	conds := []hearbench.Condition{hearbench.Conditions[0], hearbench.Conditions[3]}
	talk := len(hearbench.Talk) * len(s.Voices)
	n := parallel(t, b, talk, share(0.1), func(b *hearbench.Bench, i int) error {
		it := hearbench.Item{Say: hearbench.Talk[i%len(hearbench.Talk)]}
		row, err := b.Listen(s, s.Voices[(i+i/len(hearbench.Talk))%len(s.Voices)], it, conds[i%2], i)
		if err != nil {
			return err
		}
		mu.Lock()
		defer mu.Unlock()
		seconds += float64(len(it.Say)) / 15 // talkers say about 15 letters a second
		_, act := urgent(row.Heard)
		if act {
			acted++
			t.Log("emergency from talk: ", row)
		}
		reading, any := false, false
		for _, u := range row.Heard.Final {
			if m := u.Best(); m != nil {
				any = true
				reading = reading || m.Kind == utterance.Reading && (m.Reading.Value.Unit != "" || m.Units != nil || m.Reading.State != "")
			}
		}
		if reading {
			heardPct++
			t.Log("reading from talk: ", row)
		}
		if any {
			other++
		}
		return nil
	})
	add("hear.talk_heard_pct", pct(heardPct, n), "%", "<= 2", n)
	add("hear.talk_any_meaning_pct", pct(other, n), "%", "reported", n)
	rows := 0
	items := hearbench.Readings(200, 77)
	rows = parallel(t, b, len(items), share(0.03), func(b *hearbench.Bench, i int) error {
		row, err := b.Listen(s, s.Voices[i%len(s.Voices)], items[i], conds[1], i)
		if err != nil {
			return err
		}
		mu.Lock()
		defer mu.Unlock()
		seconds += float64(len(items[i].Say)) / 15
		if _, act := urgent(row.Heard); act {
			acted++
			t.Log("emergency from a reading: ", row)
		}
		return nil
	})
	add("hear.emergency_false_per_10h", float64(acted)/math.Max(1, seconds)*36000, "per 10 h of talk", "<= 1", n+rows)
	// Noise alone, at two levels, fed to one ear without a break.
	count, length := 0, 0
	end := time.Now().Add(share(0.07))
	for i, kind := range []string{"pink", "fan", "pink", "fan", "white", "fan"} {
		if time.Now().After(end) {
			break
		}
		ear, err := b.Ear(func(u utterance.Utterance) {
			if m := u.Best(); m != nil && !u.Partial && m.Kind == utterance.Reading || m != nil && m.Kind == utterance.Emergency {
				count++
				t.Logf("from %s noise: %q", kind, u.Text)
			}
		}, nil, nil)
		if err != nil {
			t.Fatal(err)
		}
		noise := hearbench.Noise(kind, uint64(100+i), 16000*max(10, number("HEAR_SECONDS", 420)/4))
		pcm := make([]int16, len(noise))
		gain := 32768 * math.Pow(10, []float64{-30, -45}[i%2]/20)
		for k, v := range noise {
			// Gusts: the level goes up and down by 6 dB every few seconds, or a steady floor would never be listened to.
			pcm[k] = int16(math.Max(-32768, math.Min(32767, v*gain*math.Pow(10, 0.3*math.Sin(float64(k)/16000)))))
		}
		for k := 0; k < len(pcm) && time.Now().Before(end); k += 800 {
			if err := ear.FeedSamples(pcm[k:k+800], int64(k/16)); err != nil {
				t.Fatal(err)
			}
			length += 800
		}
		ear.Close()
	}
	hours := float64(length) / 16000 / 3600
	add("hear.noise_per_hour", float64(count)/math.Max(1e-9, hours), "per hour", "<= 0.5", length/16000)
}

// memory feeds one ear with readings in noise without a break, and tells how much larger the process is at the end than after the first
// third, when everything has been used once.
func memory(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio) {
	ear, err := b.Ear(nil, nil, nil)
	if err != nil {
		t.Fatal(err)
	}
	defer ear.Close()
	items := hearbench.Readings(20, 5)
	ear.Expect(items[0].Expect())
	var clips [][]int16
	for i, it := range items {
		pcm, _, err := s.Clip(s.Voices[i%len(s.Voices)], it.Say, hearbench.Conditions[3], i)
		if err != nil {
			t.Fatal(err)
		}
		clips = append(clips, pcm)
	}
	at, used := 0, 0.0
	start, limit := time.Now(), share(0.05)
	for i := 0; time.Since(start) < limit; i++ {
		if used == 0 && time.Since(start) > limit/3 {
			debug.FreeOSMemory()
			used = resident()
		}
		for pcm := clips[i%len(clips)]; len(pcm) > 0; {
			n := min(800, len(pcm))
			at += n
			if err := ear.FeedSamples(pcm[:n], int64(at/16)); err != nil {
				t.Fatal(err)
			}
			pcm = pcm[n:]
		}
	}
	debug.FreeOSMemory()
	add("hear.mem_growth_mb", resident()-used, "MB over two thirds of the sound", "<= 5", at/16000)
}

// human plays single digits said by people, when they are beside the project.
func human(t *testing.T, add metric.Adder, b *hearbench.Bench) {
	files, _ := filepath.Glob("../../../../shared/data/audio/digits/*.wav")
	if len(files) == 0 {
		t.Log("no human digits beside the project: not measured")
		return
	}
	var mu sync.Mutex
	right := 0
	n := parallel(t, b, len(files), share(0.05), func(b *hearbench.Bench, i int) error {
		i = (i * 7) % len(files)
		f, err := os.Open(files[i])
		if err != nil {
			return err
		}
		defer f.Close()
		pcm, err := audio.ReadWAV(f)
		if err != nil {
			return fmt.Errorf("%s: %w", files[i], err)
		}
		clip := hearbench.Clip(pcm, -26, math.Inf(1), nil, 0.8, 2.2)
		h, err := b.Hear(clip, len(clip)-35200, grammar.Expect{})
		if err != nil {
			return err
		}
		want := filepath.Base(files[i])[:1]
		ok := false
		for _, u := range h.Final {
			for _, m := range b.Parser.Parse(u.Text, grammar.Expect{}) {
				ok = ok || m.Kind == utterance.Count && m.Text == want
			}
		}
		mu.Lock()
		defer mu.Unlock()
		if ok {
			right++
		}
		return nil
	})
	add("hear.human_digit_pct", pct(right, n), "%", "reported", n)
}

// humanNumbers plays numbers joined from the recorded words of a person, with the units that were recorded.
func humanNumbers(t *testing.T, add metric.Adder, b *hearbench.Bench, s *hearbench.Studio) {
	p, err := hearbench.Person()
	if err != nil {
		t.Log("no human numbers: ", err)
		return
	}
	items := hearbench.HumanNumbers(60, 8)
	for _, x := range []struct {
		id string
		c  hearbench.Condition
	}{{"", hearbench.Conditions[0]}, {"_10db", hearbench.Conditions[3]}, {"_5db", hearbench.Conditions[5]}} {
		var mu sync.Mutex
		right := 0
		n := parallel(t, b, len(items), share(0.03), func(b *hearbench.Bench, i int) error {
			words, err := p.Say(items[i].Say)
			if err != nil {
				return err
			}
			pcm, end := s.Place(words, x.c, i)
			h, err := b.Hear(pcm, end, grammar.Expect{Units: []string{"s", "min"}})
			if err != nil {
				return err
			}
			ok := len(h.Final) == 1 && items[i].Right(h.Final[0].Best())
			mu.Lock()
			defer mu.Unlock()
			if ok {
				right++
			} else {
				t.Logf("human%s %q: %+v", x.id, items[i].Say, texts(h))
			}
			return nil
		})
		add("hear.human_number"+x.id+"_pct", pct(right, n), "%", "reported", n)
	}
}

func texts(h hearbench.Heard) (out []string) {
	for _, u := range h.Final {
		out = append(out, u.Text)
	}
	return out
}

// write puts the table per voice and level into build/hear.tsv.
func write(t *testing.T, table map[string]*cell) {
	var keys []string
	for k := range table {
		keys = append(keys, k)
	}
	sort.Strings(keys)
	var out strings.Builder
	out.WriteString("condition\tvoice\tn\tright_pct\twrong_pct\tright_heard_once_pct\n")
	for _, k := range keys {
		c := table[k]
		fmt.Fprintf(&out, "%s\t%d\t%.1f\t%.1f\t%.1f\n", k, c.n, pct(c.right, c.n), pct(c.wrong, c.n), pct(c.raw, c.n))
	}
	path := filepath.Join("..", "..", "..", "build", "hear.tsv")
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte(out.String()), 0o644); err != nil {
		t.Fatal(err)
	}
}
