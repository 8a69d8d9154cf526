// Trainintent teaches the network of speech/understand/intent, and the ranking of numbers in a sentence, from the hands that may be learnt from
// (testdata/sentences/split.json). With -folds it leaves some of those hands out in turn and writes what the rest would make of them, for
// choosing anything that has to be chosen; the hands that are reported on are never read.
package main

import (
	"flag"
	"fmt"
	"log"
	"os"
	"path/filepath"
	"slices"

	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/speech/grammar"
	"readback/speech/lab/sentences"
	"readback/speech/understand"
	"readback/speech/understand/intent"
)

func main() {
	root := flag.String("root", ".", "of the repository")
	epochs := flag.Int("epochs", 14, "times that every sentence is seen")
	folds := flag.Int("folds", 0, "leave hands out in that many turns and report instead of writing weights")
	apply := flag.Bool("apply", false, "say what the present weights make of the learning hands")
	flag.Parse()
	if err := run(*root, *epochs, *folds, *apply); err != nil {
		log.Fatal(err)
	}
}

func run(root string, epochs, folds int, apply bool) error {
	lex, err := lexicon.Load()
	if err != nil {
		return err
	}
	r, err := understand.NewWith(lex, grammar.New(lex), []*intent.Net{intent.NewNet()})
	if err != nil {
		return err
	}
	dir := filepath.Join(root, "testdata", "sentences")
	split, err := sentences.ReadSplit(dir)
	if err != nil {
		return err
	}
	lines, err := sentences.Read(dir, split.Learn)
	if err != nil {
		return err
	}
	if apply {
		x, err := understand.New(lex, grammar.New(lex))
		if err != nil {
			return err
		}
		heard, all := make([]utterance.Utterance, len(lines)), sentences.Score{}
		for i, l := range lines {
			heard[i] = x.Hear(l.Text, l.Expect())
			all.Add(l.Verdict(&heard[i]))
		}
		fmt.Println(all)
		return write(lines, heard, make([]string, len(lines)))
	}
	ex := make([]example, len(lines))
	for i, l := range lines {
		if ex[i], err = toExample(r, l); err != nil {
			return err
		}
		if ex[i].act < 0 {
			return fmt.Errorf("%s: no category %q", l.Hand, l.Cat)
		}
	}
	own, err := phrases(r, lex)
	if err != nil {
		return err
	}
	if folds > 0 {
		return cross(r, lex, lines, ex, own, epochs, folds)
	}
	all := trainAll(append(slices.Clone(ex), own...), epochs)
	if err := os.WriteFile(filepath.Join(root, "speech/understand/intent/weights.bin"), intent.PackAll(all), 0o644); err != nil {
		return err
	}
	return rankFit(r, lines, filepath.Join(root, "speech/understand/rank.json"))
}
