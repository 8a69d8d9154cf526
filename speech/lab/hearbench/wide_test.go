package hearbench_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"readback/core/lab/metric"
	"readback/core/utterance"
	"readback/speech/grammar"
	"readback/speech/lab/hearbench"
	"readback/speech/lab/sentences"
)

// wide measures readings of many speakers in many noises, and the dangers and the talk of the hands that are reported on by sound. Only speakers that nothing
// was fitted on are heard. WIDE_N is how many clips each condition has at most.
func wide(t *testing.T, add metric.Adder, b *hearbench.Bench) {
	var speakers []hearbench.WideSpeaker
	for _, s := range hearbench.WideSpeakers(90, 17) {
		if _, err := s.Voice.Say("one"); err == nil && s.Held() {
			speakers = append(speakers, s)
		}
	}
	if len(speakers) == 0 {
		t.Log("no synthesiser speaks here: the wide figures are not measured")
		return
	}
	n := number("WIDE_N", 100)
	if number("WIDE_ALARMS", 0) == 0 { // else the alarms alone
		wideReadings(t, add, b, speakers, n)
	}
	wideAlarms(t, add, b, speakers, n)
}

var wideNoises = []string{"pink", "fan", "tap", "dishes", "compressor", "vacuum"}

// place puts a speaker's words into noise.
func place(t *testing.T, s *hearbench.WideSpeaker, say string, snr float64, draw int) (pcm []int16, end int) {
	t.Helper()
	words, err := s.Say(say)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(uint64(draw), 23))
	noise := hearbench.Noise(wideNoises[r.IntN(len(wideNoises))], uint64(draw), len(words)+5*16000)
	level := -20 - 14*r.Float64() // near and far
	return hearbench.Clip(words, level, snr, noise, 1.2, 1.6), len(words) + int(1.2*16000)
}

func wideReadings(t *testing.T, add metric.Adder, b *hearbench.Bench, speakers []hearbench.WideSpeaker, n int) {
	items := hearbench.Readings(n, 909)
	wrong, all := 0, 0
	var delay []float64
	for _, c := range []struct {
		name, target string
		snr          float64
	}{{"clean", ">= 99", math.Inf(1)}, {"20db", ">= 98", 20}, {"10db", ">= 95", 10}, {"5db", ">= 88", 5}} {
		right, asked, done := 0, 0, 0
		done = parallel(t, b, len(items), share(0.1), func(b *hearbench.Bench, i int) error {
			s := &speakers[(i*7)%len(speakers)]
			pcm, end := place(t, s, items[i].Say, c.snr, i)
			h, err := b.Hear(pcm, end, items[i].Expect())
			if err != nil {
				return err
			}
			d, ok := hearbench.Decided(&h, items[i])
			tally.Lock()
			defer tally.Unlock()
			right += b2i(ok)
			asked += b2i(ok && d != utterance.Accept)
			wrong += b2i(!ok && d == utterance.Accept)
			if math.IsInf(c.snr, 1) && len(h.Final) == 1 {
				delay = append(delay, h.Delay+h.Work)
			}
			if !ok {
				t.Logf("%s %s: %q is %v", c.name, s.Voice.Name, items[i].Say, texts(h))
			}
			return nil
		})
		all += done
		add("hear.right_"+c.name+"_pct", pct(right, done), "%", c.target, done)
		if c.name == "5db" {
			add("hear.asked_5db_pct", pct(asked, right), "% of right values", "<= 30", right)
		}
	}
	add("hear.wrong_accepted_pct", pct(wrong, all), "% before read-back, all conditions", "<= 0.3", all)
	add("reply.median_s", quantile(delay, 0.5), "s, without the voice's own time", "<= 0.5", len(delay))
	add("reply.p95_s", quantile(delay, 0.95), "s, without the voice's own time", "<= 0.9", len(delay))
}

func wideAlarms(t *testing.T, add metric.Adder, b *hearbench.Bench, speakers []hearbench.WideSpeaker, n int) {
	dir := sentences.Dir(3)
	split, err := sentences.ReadSplit(dir)
	if err != nil {
		t.Fatal(err)
	}
	lines, err := sentences.Read(dir, split.Report)
	if err != nil {
		t.Fatal(err)
	}
	r := rand.New(rand.NewPCG(5, 5))
	r.Shuffle(len(lines), func(i, j int) { lines[i], lines[j] = lines[j], lines[i] })
	var dangers, talk []sentences.Line
	for _, l := range lines {
		switch l.Cat {
		case "danger":
			dangers = append(dangers, l)
		case "talk":
			talk = append(talk, l)
		}
	}
	dangers, talk = dangers[:min(n, len(dangers))], talk[:min(n, len(talk))]
	for _, c := range []struct {
		name, target string
		snr          float64
	}{{"clean", "<= 4", math.Inf(1)}, {"10db", "<= 6", 10}, {"5db", "<= 12", 5}} {
		missed := 0
		done := parallel(t, b, len(dangers), share(0.1), func(b *hearbench.Bench, i int) error {
			s := &speakers[(i*5)%len(speakers)]
			pcm, end := place(t, s, dangers[i].Text, c.snr, i)
			h, err := b.Hear(pcm, end, grammar.Expect{Units: []string{"V", "mV"}})
			if err != nil {
				return err
			}
			caught, _ := urgent(h)
			tally.Lock()
			defer tally.Unlock()
			missed += b2i(!caught)
			return nil
		})
		add("alarm.sound_missed_"+c.name+"_pct", pct(missed, done), "%", c.target, done)
	}
	acted, asked, samples := 0, 0, 0
	done := parallel(t, b, len(talk), share(0.1), func(b *hearbench.Bench, i int) error {
		s := &speakers[(i*3)%len(speakers)]
		pcm, end := place(t, s, talk[i].Text, []float64{math.Inf(1), 20, 10}[i%3], i)
		h, err := b.Hear(pcm, end, grammar.Expect{Units: []string{"V", "mV"}})
		if err != nil {
			return err
		}
		caught, now := urgent(h)
		tally.Lock()
		defer tally.Unlock()
		acted, asked, samples = acted+b2i(now), asked+b2i(caught && !now), samples+len(pcm)
		return nil
	})
	hours := float64(samples) / 16000 / 3600
	add("alarm.talk_acted_pct", pct(acted, done), "% of hazard-heavy sentences by sound", "reported", done)
	add("alarm.talk_asked_pct", pct(asked, done), "% of hazard-heavy sentences by sound", "reported", done)
	add("alarm.talk_acted_per_10h", float64(acted)/hours*10, "in hazard-heavy talk without a pause", "<= 1", done)
	add("alarm.talk_asked_per_h", float64(asked)/hours, "in hazard-heavy talk without a pause", "<= 4", done)
}

func b2i(b bool) int {
	if b {
		return 1
	}
	return 0
}
