package main

import (
	"strings"

	"readback/core/utterance"
	"readback/speech/lab/sentences"
	"readback/speech/understand"
)

// commandOf names the kind of a command of the lexicon as the hands do.
var commandOf = map[string]string{"repeat": "repeat", "hold-on": "wait", "ready": "resume", "scratch-that": "undo", "cant-reach": "cannot", "skip": "refuse",
	"dont-know": "dontknow", "done": "done", "why": "why", "where": "where", "how": "how", "slower": "slower", "finish": "stop", "cost": "cost"}

// hazardOf names a class of the lexicon as the hands do.
var hazardOf = map[string]string{"gas": "gas", "co": "co", "fire": "fire", "ill": "co", "shock": "shock", "spark": "blast", "blast": "blast", "faint": "collapse", "water": "water", "injury": "injury", "child": "child", "any": "leave"}

// phrases makes examples of what the lexicon lists: every danger, what must not be one, and the commands.
func phrases(r *understand.Reader, lex *utterance.Lexicon) ([]example, error) {
	var out []example
	add := func(l sentences.Line) error {
		e, err := toExample(r, l)
		out = append(out, e)
		return err
	}
	for _, c := range lex.Emergencies.Classes {
		cat := "danger"
		kind := hazardOf[c.ID]
		if c.ID == "ask" {
			cat = "maybe"
		}
		for _, s := range c.Say {
			if strings.Contains(s, "*") {
				continue
			}
			l := sentences.Line{Cat: cat, Text: s}
			if kind != "" {
				l.Kinds = []string{kind}
			}
			if err := add(l); err != nil {
				return nil, err
			}
		}
	}
	for _, s := range lex.Emergencies.Near {
		if err := add(sentences.Line{Cat: "talk", Text: s}); err != nil {
			return nil, err
		}
	}
	for _, c := range lex.Commands {
		for _, s := range c.Say {
			if k := commandOf[c.ID]; k != "" {
				if err := add(sentences.Line{Cat: "command", Kinds: []string{k}, Text: s}); err != nil {
					return nil, err
				}
			}
		}
	}
	return out, nil
}
