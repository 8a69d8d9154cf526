package main

import (
	"fmt"
	"slices"
	"sync"

	"readback/core/utterance"
	"readback/speech/grammar"
	"readback/speech/lab/sentences"
	"readback/speech/understand"
)

// cross leaves learning hands out in turn, and says what becomes of their sentences.
func cross(r *understand.Reader, lex *utterance.Lexicon, lines []sentences.Line, ex, own []example, epochs, folds int) error {
	var hands []string
	for _, l := range lines {
		if !slices.Contains(hands, l.Hand) {
			hands = append(hands, l.Hand)
		}
	}
	var all sentences.Score
	g := grammar.New(lex)
	var mu sync.Mutex
	var wg sync.WaitGroup
	danger := make([]float64, len(lines))
	acts := make([]string, len(lines))
	heard := make([]utterance.Utterance, len(lines))
	for k := range min(folds, len(hands), *turns) {
		wg.Go(func() {
			out := func(h string) bool { return h[0] == 'h' && slices.Index(hands, h)%folds == k } // the developer's own are learnt from always
			var learn []example
			for i, l := range lines {
				if !out(l.Hand) {
					learn = append(learn, ex[i])
				}
			}
			nets := trainAll(append(learn, own...), epochs)
			x, err := understand.NewWith(lex, g, nets)
			if err != nil {
				panic(err)
			}
			for _, h := range hands {
				if !out(h) {
					continue
				}
				var s sentences.Score
				for i, l := range lines {
					if l.Hand == h {
						heard[i] = x.Hear(l.Text, l.Expect())
						p, found, plain := x.Acts(l.Text)
						danger[i] = p[0] + p[1]
						acts[i] = fmt.Sprintf("%.3f %v %v", p, found, plain)
						s.Add(l.Verdict(&heard[i]))
					}
				}
				mu.Lock()
				fmt.Printf("%s %s\n", h, s)
				all.Add(s)
				mu.Unlock()
			}
		})
	}
	wg.Wait()
	fmt.Printf("all %s\n", all)
	curve(lines, danger)
	return write(lines, heard, acts)
}

// curve writes how many dangers are missed where so many percent of the talk are asked about.
func curve(lines []sentences.Line, danger []float64) {
	var talk, real []float64
	for i, l := range lines {
		switch {
		case l.Hand[0] != 'h':
		case l.Cat == "talk":
			talk = append(talk, danger[i])
		case l.Cat == "danger":
			real = append(real, danger[i])
		}
	}
	slices.Sort(talk)
	for _, pct := range []float64{0.5, 1, 3, 6, 10, 15, 20} {
		limit := talk[min(len(talk)-1, int(float64(len(talk))*(1-pct/100)))]
		missed := 0
		for _, p := range real {
			if p <= limit {
				missed++
			}
		}
		fmt.Printf("talk %g%% above %.3f: missed %.1f%%; ", pct, limit, 100*float64(missed)/float64(len(real)))
	}
	fmt.Println()
}
