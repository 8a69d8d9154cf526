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
	heard := make([]utterance.Utterance, len(lines))
	for k := range min(folds, len(hands)) {
		wg.Go(func() {
			out := func(h string) bool { return slices.Index(hands, h)%folds == k }
			var learn []example
			for i, l := range lines {
				if !out(l.Hand) {
					learn = append(learn, ex[i])
				}
			}
			net := train(append(learn, own...), epochs, 1)
			x, err := understand.NewWith(lex, g, net)
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
	return write(lines, heard)
}
