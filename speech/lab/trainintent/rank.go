package main

import (
	"encoding/json"
	"fmt"
	"os"
	"strings"

	"readback/core/utterance"
	"readback/speech/lab/sentences"
	"readback/speech/understand"
)

// rankFit fits the weights that tell the number read off the meter from the others in a sentence: a softmax over the numbers of each sentence that holds
// more than one.
func rankFit(r *understand.Reader, lines []sentences.Line, path string) error {
	w := understand.FitRank(r, lines2(lines))
	b, err := json.Marshal(w)
	if err != nil {
		return err
	}
	return os.WriteFile(path, append([]byte(strings.ReplaceAll(string(b), ",", ", ")), '\n'), 0o644)
}

func lines2(lines []sentences.Line) (out []understand.Labeled) {
	for _, l := range lines {
		if l.Cat == "value" {
			out = append(out, understand.Labeled{Text: l.Text, Ask: []string{l.Ask}, Right: func(v, u string) bool { return sentences.Same(v, u, l.Value, l.Unit) }})
		}
	}
	return out
}

// write tells what became of each sentence, for reading: only learning hands are here.
func write(lines []sentences.Line, heard []utterance.Utterance, acts []string) error {
	f, err := os.Create("build/cross.tsv")
	if err != nil {
		return err
	}
	for i, l := range lines {
		what := ""
		for _, m := range heard[i].Meanings[:min(2, len(heard[i].Meanings))] {
			what += fmt.Sprintf(" %s:%s", m.Kind, m.ID)
			if m.Reading != nil {
				what += fmt.Sprintf("%s %s %v", m.Reading.Value, m.Reading.State, m.Units)
			}
			if m.Doubt {
				what += "?"
			}
		}
		v, mark := l.Verdict(&heard[i]), ""
		if v.Missed+v.TalkActed+v.TalkAsked+v.MaybeActed+v.MaybeMissed+v.Value-v.ValueRight+v.ValueWrong+v.State-v.StateRight+v.StateWrong+v.Command-v.CommandRight+v.CommandWrong+v.Story-v.StoryUsed > 0 {
			mark = "*"
		}
		fmt.Fprintf(f, "%s\t%s\t%s\t%v%s %s %s\t%s%s\t%s\t%s\n", mark, l.Hand, l.Cat, l.Kinds, l.Value, l.Unit, l.State, strings.TrimSpace(what), heard[i].Fault, acts[i], l.Text)
	}
	return f.Close()
}
