// Package pseudo makes a language by machine from English: every letter gets an accent and every word grows by two
// fifths or more. What still reads as English beside it did not come from the language's data.
package pseudo

import (
	"regexp"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/core/utterance"
	"readback/core/words"
)

// Lang is the tag of the pseudo language.
const Lang = "qps"

var accents = func() map[rune]string {
	const plain, accented = "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ", "áƀćďéƒĝĥíĵķĺḿńóṕɋŕśţúṽŵẋýźÁɃĆĎÉƑĜĤÍĴĶĹḾŃÓṔɊŔŚŢÚṼŴẊÝŹ"
	out := map[rune]string{}
	a := []rune(accented)
	for i, r := range plain {
		out[r] = string(a[i])
	}
	return out
}()

var piece = regexp.MustCompile(`\{[a-z]+\}|[A-Za-z]+`)

// Text is a text in the pseudo language. Digits, signs and slots stay as they are; the same word comes out the same
// everywhere.
func Text(s string) string {
	return piece.ReplaceAllStringFunc(s, func(w string) string {
		if w[0] == '{' {
			return w
		}
		var b strings.Builder
		for _, r := range w {
			b.WriteString(accents[r])
		}
		return b.String() + strings.Repeat("ŧ", (2*len(w)+4)/5)
	})
}

func texts(s []string) []string {
	out := make([]string, len(s))
	for i := range s {
		out[i] = Text(s[i])
	}
	return out
}

// Words are the words of a language in the pseudo language.
func Words(w *words.Words) *words.Words {
	out := &words.Words{Lang: Lang, Lines: map[string]words.Line{}, Terms: map[string]string{}, Units: map[string]words.Unit{}, Numbers: texts(w.Numbers)}
	for id, l := range w.Lines {
		labels := map[string]string{}
		for o, text := range l.Labels {
			labels[o] = Text(text)
		}
		out.Lines[id] = words.Line{ID: id, Full: Text(l.Full), Short: texts(l.Short), Say: Text(l.Say), How: Text(l.How), Ask: l.Ask, Labels: labels, Also: l.Also}
	}
	for id, text := range w.Terms {
		out.Terms[id] = Text(text)
	}
	for id, u := range w.Units {
		u = words.Unit{One: Text(u.One), Many: Text(u.Many), Prefixed: Text(u.Prefixed), Print: u.Print}
		if strings.ContainsAny(u.Print, " ") || id == "x" { // words and no symbol
			u.Print = Text(u.Print)
		}
		out.Units[id] = u
	}
	return out
}

// Lexicon is a lexicon whose answers are said back in the pseudo language. What is understood stays English: the job
// is led by touch.
func Lexicon(l *utterance.Lexicon) *utterance.Lexicon {
	out := *l
	said := func(list []utterance.Phrase) []utterance.Phrase {
		list = slices.Clone(list)
		for i := range list {
			list[i].Back = Text(list[i].Back)
		}
		return list
	}
	out.Commands, out.Options = said(l.Commands), said(l.Options)
	return &out
}

// Model is an appliance with its own words in the pseudo language. Ids, nets, sources of a closed list and expressions
// stay.
func Model(m *appliance.Model) *appliance.Model {
	out := *m
	t := func(list ...*string) {
		for _, s := range list {
			*s = Text(*s)
		}
	}
	t(&out.Title)
	out.Sources = slices.Clone(m.Sources)
	for i := range out.Sources {
		t(&out.Sources[i].Text)
	}
	out.Places = slices.Clone(m.Places)
	for i := range out.Places {
		t(&out.Places[i].Name, &out.Places[i].Where)
	}
	out.Parts = slices.Clone(m.Parts)
	for i := range out.Parts {
		t(&out.Parts[i].Name, &out.Parts[i].Look)
	}
	out.Modes = slices.Clone(m.Modes)
	for i := range out.Modes {
		t(&out.Modes[i].Name)
	}
	out.Points = slices.Clone(m.Points)
	for i := range out.Points {
		t(&out.Points[i].Name, &out.Points[i].Where)
	}
	out.Checks = slices.Clone(m.Checks)
	for i := range out.Checks {
		c := &out.Checks[i]
		t(&c.Name, &c.Ask, &c.Act, &c.Caution, &c.Fit, &c.Event)
		c.Bands = slices.Clone(c.Bands)
		for j := range c.Bands {
			t(&c.Bands[j].Tell)
		}
		c.Options = slices.Clone(c.Options)
		for j := range c.Options {
			t(&c.Options[j].Tell, &c.Options[j].Label)
		}
	}
	out.Repairs = slices.Clone(m.Repairs)
	for i := range out.Repairs {
		r := &out.Repairs[i]
		t(&r.Name, &r.Note)
		r.Match, r.Steps = texts(r.Match), slices.Clone(r.Steps)
		for j := range r.Steps {
			t(&r.Steps[j].Act, &r.Steps[j].Caution)
		}
	}
	out.Plate = slices.Clone(m.Plate)
	for i := range out.Plate {
		t(&out.Plate[i].Name, &out.Plate[i].Ask)
	}
	out.Lamps = slices.Clone(m.Lamps)
	for i := range out.Lamps {
		t(&out.Lamps[i].Means)
	}
	out.Stops = slices.Clone(m.Stops)
	for i := range out.Stops {
		t(&out.Stops[i].Say, &out.Stops[i].Call, &out.Stops[i].Tell, &out.Stops[i].Now)
	}
	out.Cautions = slices.Clone(m.Cautions)
	for i := range out.Cautions {
		out.Cautions[i].Say = texts(out.Cautions[i].Say)
	}
	return &out
}
