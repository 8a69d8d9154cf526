package app

import (
	"slices"
	"strings"

	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
)

// lastEffects are the effects of an emergency without a machine: when it, its data or the disk do not answer in time. Their words are in
// memory from the start.
func lastEffects(w *words.Words, job, class string) []protocol.Effect {
	if _, ok := w.Terms["last."+class+"-act"]; !ok {
		class = "any"
	}
	act, then := w.Term("last."+class+"-act"), w.Term("last."+class+"-then")
	view := &protocol.View{Job: job, Stage: "emergency", State: "emergency", Said: act + " " + then,
		Site: protocol.SiteView{Power: "unknown", Gas: "unknown"},
		Step: protocol.StepView{ID: "emergency", Kind: "act", Level: "danger", Act: act, Say: then, Caution: then,
			Answers: []protocol.Answer{{ID: "false-alarm", Kind: utterance.Command, Text: w.Term("app.false-alarm")}}}}
	return []protocol.Effect{
		{Type: protocol.DoHush},
		{Type: protocol.DoCue, ID: "danger"},
		{Type: protocol.DoSay, ID: ownSaying + "alarm-1", Text: act, Level: "emergency"},
		{Type: protocol.DoSay, ID: ownSaying + "alarm-2", Text: then, Level: "emergency"},
		{Type: protocol.DoShow, View: view},
	}
}

// LastEffects are what an emergency of a class comes to without a machine, in a language that was checked.
func LastEffects(lang, class string) []protocol.Effect {
	l, err := load(lang)
	if err != nil {
		panic(err)
	}
	return lastEffects(l.words, "", class)
}

// LastWords are the texts of every class, for a host that wants their sound ready before anything goes wrong.
func LastWords(lang string) (texts []string, err error) {
	l, err := load(lang)
	if err != nil {
		return nil, err
	}
	for id, text := range l.words.Terms {
		if strings.HasPrefix(id, "last.") && !slices.Contains(texts, text) {
			texts = append(texts, text)
		}
	}
	slices.Sort(texts)
	return texts, nil
}
