package scenario

import (
	"strings"

	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/utterance"
)

// Aloud is what a person says for a meaning: a saying of the lexicon, or the value in words. A person who was not understood says it
// in other words: try counts from 0.
func Aloud(lex *utterance.Lexicon, m utterance.Meaning, try int) string {
	find := func(list []utterance.Phrase, id string) string {
		for _, p := range list {
			if p.ID == id && len(p.Say) > 0 {
				return p.Say[try%len(p.Say)]
			}
		}
		return strings.ReplaceAll(id, "-", " ")
	}
	switch m.Kind {
	case utterance.Command:
		return find(lex.Commands, m.ID)
	case utterance.Emergency:
		return find(lex.Emergencies.Classes, m.ID)
	case utterance.Choice:
		return find(lex.Options, m.ID)
	case utterance.Count:
		if d, err := unit.ParseDecimal(m.Text); err == nil {
			return d.Words()
		}
		return m.Text
	case utterance.Reading:
		r := m.Reading
		if r.State != measure.Number {
			if s := lex.States[string(r.State)]; len(s) > 0 {
				return s[0]
			}
			return string(r.State)
		}
		words := r.Value.Dec.Words()
		if s := lex.Units[r.Value.Unit]; len(s) > 0 {
			said := s[0]
			for _, x := range s { // "degrees" alone is asked back: the unit is said in full
				if r.Value.Dim() == unit.TempDiff && len(x) > len(said) {
					said = x
				}
			}
			words += " " + said
		}
		switch r.AC {
		case "ac":
			words += " a c"
		case "dc":
			words += " d c"
		}
		return words
	}
	return m.Text
}

// Agrees tells whether what was taken is what the person said last. A person who hears it read back wrongly objects.
func (p *Person) Agrees(lex *utterance.Lexicon, h *protocol.HeardView) bool {
	if h == nil || h.Taken == "" {
		return true
	}
	back := func(id string) string {
		for _, o := range lex.Options {
			if o.ID == id {
				return strings.TrimRight(o.Back, ".")
			}
		}
		return ""
	}
	switch p.last.Kind {
	case utterance.Reading:
		r := p.last.Reading
		if r.State != measure.Number {
			return h.Taken == utterance.Say(*r, false)
		}
		number, rest, _ := strings.Cut(h.Taken, " ")
		d, err := unit.ParseDecimal(number)
		return err == nil && d.Equal(r.Value.Dec) && strings.HasPrefix(rest, unit.Printed(r.Value.Unit))
	case utterance.Choice:
		if p.labels[p.last.ID] == h.Taken {
			return true
		}
		if b := back(p.last.ID); b != "" {
			return b == h.Taken
		}
	case utterance.Count:
		f := strings.Fields(h.Taken)
		return h.Taken == p.last.Text || h.Taken == back(p.last.Text) || h.Taken == p.labels[p.last.Text] || len(f) > 0 && f[0] == p.last.Text
	}
	return true
}
