package understand

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
	"readback/speech/grammar"
	"readback/speech/understand/intent"
)

// Thresholds on probabilities, chosen by leaving out learning hands in turn (go run ./speech/lab/trainintent -folds 3).
const (
	actAlone  = 0.96 // of a danger that the network is sure of by itself
	actBoth   = 0.90 // where the span grammar finds one too
	askAlone  = 0.30 // of a danger or the doubt of one
	askSurely = 0.45 // whatever else it may be
	askBoth   = 0.12
	leastKind = 0.25 // of a value, a state or a command, less is not understood
	sureValue = 0.90 // below it a value is confirmed
	sureState = 0.90
	sureWords = 0.80 // of a command that ends a question or takes something back
	sureLight = 0.60 // of one that costs a sentence
)

// Hear understands words as typed or recognised, and what is expected.
func (r *Reader) Hear(text string, e grammar.Expect) utterance.Utterance {
	u := utterance.Utterance{Text: strings.TrimSpace(text)}
	whole := r.grammar.Parse(u.Text, e)
	s, err := r.sense(text)
	if err != nil || len(s.words) == 0 { // the vectors are part of the program: a test holds that they load
		u.Meanings = whole
		return u
	}
	alarm := r.alarm(s, e)
	rest := slices.DeleteFunc(slices.Clone(whole), func(m utterance.Meaning) bool { return m.Kind == utterance.Emergency })
	switch {
	case r.complete(u.Text, rest, e) && !s.parted(rest):
		u.Meanings = rest
	default:
		u.Meanings = r.free(s, rest, e)
	}
	if alarm != nil && alarm.Doubt && r.complete(u.Text, rest, e) && (rest[0].Kind != utterance.Choice || slices.Contains(e.Options, rest[0].ID)) {
		alarm = nil // an answer that fits as a whole
	}
	if alarm != nil && len(rest) == len(whole) && e.Names(u.Text) {
		alarm = nil // the very words of a button, and the lexicon hears no danger in them: "popped out", "all flames are out"
	}
	if listed := r.listed(u.Text, whole, s); listed != nil && (alarm == nil || alarm.Doubt) && !(listed.Doubt && alarm == nil && slices.ContainsFunc(rest, func(m utterance.Meaning) bool { return slices.Contains(e.Options, m.ID) })) {
		alarm = listed
	}
	if alarm != nil {
		u.Meanings = append([]utterance.Meaning{*alarm}, u.Meanings...)
	}
	if len(u.Meanings) == 0 {
		u.Fault = "unknown"
		if s.act[talk] > 0.5 || argmax(s.act) == command && intent.Commands[argmax(s.command)] == "sorry" {
			u.Fault = utterance.Aside
		}
	}
	return u
}

// Places in intent.Acts.
const (
	danger = iota
	maybe
	talk
	value
	state
	command
	story
)

// jumping stands second in intent.States.
const jumping = 1

func argmax(p []float64) int {
	best := 0
	for i, x := range p {
		if x > p[best] {
			best = i
		}
	}
	return best
}

// classOf is the emergency class of each kind of danger.
var classOf = map[string]string{"gas": "gas", "co": "ill", "fire": "fire", "blast": "spark", "shock": "shock", "injury": "injury", "water": "water", "collapse": "faint", "child": "child", "leave": "any"}

// alarm weighs what the network and the span grammar hold for a danger.
func (r *Reader) alarm(s *sense, e grammar.Expect) *utterance.Meaning {
	now, doubt := s.act[danger], s.act[maybe]
	k := argmax(s.hazard)
	found, plain := s.found()
	other := s.act[value] + s.act[state] + s.act[command]
	if e.Text { // elsewhere nobody tells what the heater does
		other += s.act[story]
	}
	m := &utterance.Meaning{Kind: utterance.Emergency, ID: classOf[intent.Hazards[k]], Text: strings.Join(s.words, " ")}
	if m.ID == "ill" && intent.Hazards[k] == "co" && (slices.Contains(s.words, "alarm") || slices.Contains(s.words, "detector") || slices.Contains(s.words, "monoxide")) {
		m.ID = "co"
	}
	if m.ID == "spark" && slices.ContainsFunc(s.words, func(w string) bool {
		return strings.HasPrefix(w, "explo") || w == "blew" || w == "blast" || w == "blown"
	}) {
		m.ID = "blast" // more than a spark: everybody goes out
	}
	switch {
	case now >= actAlone, now >= actBoth && plain:
	case now+doubt >= askSurely, now+doubt >= askAlone && now+doubt >= other, now+doubt >= askBoth && found:
		m.Doubt = true
	default:
		return nil
	}
	return m
}

// listed keeps a danger that the lexicon lists and that is all, or nearly all, of what was said.
func (r *Reader) listed(text string, whole []utterance.Meaning, s *sense) *utterance.Meaning {
	for _, m := range whole {
		if m.Kind != utterance.Emergency {
			continue
		}
		if len(strings.Fields(m.Text)) >= len(strings.Fields(text))-1 {
			return &m
		}
	}
	return nil
}

// complete tells whether whole holds a meaning that all the words are needed for.
func (r *Reader) complete(text string, ms []utterance.Meaning, e grammar.Expect) bool {
	if len(ms) == 0 {
		return false
	}
	switch m := ms[0]; m.Kind {
	case utterance.Command:
		return true
	case utterance.Choice:
		return m.Cost == 0 && m.Text == text && fits(m, e)
	case utterance.Reading, utterance.UnitOnly:
		return true
	case utterance.Count:
		return true
	case utterance.Text:
		return m.Cost == 0 && m.Text != text && (e.Text || len(ms) == 1 && !unitBehind(text)) // a part number, not the words themselves
	}
	return false
}

// unitBehind tells whether words are a number in figures with a unit behind it: "120v" is no part number.
func unitBehind(text string) bool {
	w := intent.Tokens(text)
	return len(w) == 2 && typed(w[0])
}

// parted tells whether the numbers of a reading are several: said again in another way, or with a pause between them.
func (s *sense) parted(ms []utterance.Meaning) bool {
	if len(ms) == 0 || ms[0].Kind != utterance.Reading || ms[0].Reading.State != measure.Number {
		return false
	}
	if len(s.mentions) != 1 {
		return len(s.mentions) > 1
	}
	m := s.mentions[0]
	return m.Times > 1 || len(m.Values) > 1 && slices.ContainsFunc(s.words[m.From:m.To], func(w string) bool { return joiner[w] })
}

// fits tells whether an answer is one that is asked for, or one that can always be given. Where nothing is known to be asked for, any is.
func fits(m utterance.Meaning, e grammar.Expect) bool {
	switch m.ID {
	case "yes", "no", "right-value", "different", "ready":
		return true
	}
	return slices.Contains(e.Options, m.ID) || len(e.Options)+len(e.Units) == 0 && !e.Text
}

// commandOf is what each kind of command is in the lexicon.
var commandOf = map[string]string{"repeat": "repeat", "wait": "hold-on", "resume": "ready", "undo": "scratch-that", "cannot": "cant-reach", "refuse": "skip",
	"dontknow": "dont-know", "done": "done", "why": "why", "where": "where", "how": "how", "louder": "louder", "slower": "slower", "stop": "finish", "cost": "cost"}

// free understands words that are no whole meaning of the lexicon. known are the meanings that the grammar found inside them.
func (r *Reader) free(s *sense, known []utterance.Meaning, e grammar.Expect) []utterance.Meaning {
	var out []utterance.Meaning
	p := slices.Clone(s.act)
	if len(e.Units) == 0 {
		p[value], p[state] = p[value]/4, p[state]/4
	} else {
		due(p, s.mentions)
	}
	swing := len(e.Units) > 0 && p[value]+p[state] > 0.4 && (swings(s.words, s.mentions) || lists()["swing"].in(s.words) && p[state] > p[value]/3 && s.state[jumping] > 0.3)
	plain := len(e.Units) > 0 && len(s.words) <= shortValue && len(s.mentions) == 1 && s.mentions[0].Units != nil && !s.mentions[0].Other
	switch k := argmax(p); {
	case plain:
		s.act = slices.Clone(s.act)
		s.act[value] = 1
		out = r.values(s, e)
	case swing:
		s.state = slices.Clone(s.state)
		for i := range s.state {
			s.state[i] /= 4
		}
		s.state[jumping] = 1
		out = r.states(s, e)
	case k == value && p[k] >= leastKind:
		out = r.values(s, e)
	case k == state && p[k] >= leastKind:
		out = r.states(s, e)
	case k == command && p[k] >= leastKind:
		out = r.commands(s)
	}
	if e.Text {
		out = append(out, r.Symptoms(s)...)
	}
	for _, m := range known {
		if m.Kind == utterance.Choice && fits(m, e) || m.Kind == utterance.Text || m.Kind == utterance.Count && len(e.Units) == 0 {
			out = append(out, m)
		}
	}
	return out
}

// shortValue is how many words with one number and its unit are nothing else.
const shortValue = 4

// due weighs the kinds anew where a value is asked for: a number that counts nothing else makes one likelier, and without a number there is none.
func due(p []float64, ms []Mention) {
	if slices.ContainsFunc(ms, func(m Mention) bool { return !m.Other }) {
		p[value] *= dueMore
	} else {
		p[value] /= dueMore * dueMore
	}
	sum := 0.0
	for _, x := range p {
		sum += x
	}
	for i := range p {
		p[i] /= sum
	}
}

// dueMore is how much likelier a value is where one is due. Chosen by leaving out learning hands.
const dueMore = 4

// values are the readings that a sentence can hold, best first.
func (r *Reader) values(s *sense, e grammar.Expect) []utterance.Meaning {
	ms := s.mentions
	r.lend(s.words, ms, e.Units)
	r.rankFeatures(s.words, ms, e.Units)
	p := r.rank(ms)
	var out []utterance.Meaning
	for k, m := range ms {
		if m.Other && len(ms) > 1 || p[k] < 1e-3 {
			continue
		}
		for i, f := range m.Values {
			d, units := f.dec, narrow(m.Units, e.Units)
			if len(units) == 1 {
				d, units = known(d, units)
			}
			rd := measure.Reading{Value: unit.Value{Dec: d}, AC: m.AC}
			x := utterance.Meaning{Kind: utterance.Reading, Text: strings.Join(s.words, " "), Cost: -math.Log(p[k]) + f.cost}
			switch {
			case len(units) == 1:
				rd.Value.Unit = units[0]
			case units != nil:
				x.Units = units
			default:
				x.Units = e.Units
				if len(e.Units) == 1 {
					rd.Value.Unit, x.Units = e.Units[0], nil
				}
			}
			x.Reading = &rd
			x.Doubt = s.act[value]*p[k] < sureValue || i > 0 || len(m.Values) > 1 && m.Values[1].cost-m.Values[0].cost < nearForm
			out = append(out, x)
		}
	}
	slices.SortStableFunc(out, func(a, b utterance.Meaning) int {
		switch {
		case a.Cost < b.Cost:
			return -1
		case a.Cost > b.Cost:
			return 1
		}
		return 0
	})
	for i := len(out) - 1; i >= 0; i-- {
		out[i].Cost -= out[0].Cost
	}
	return out
}

// nearForm is how near another way to read the same number words must be to be asked about, nats.
const nearForm = 0.8

// known writes units that meters print and the program does not have in those that it has.
func known(d unit.Decimal, ids []string) (unit.Decimal, []string) {
	switch ids[0] {
	case "kV":
		return shift(d, 3), []string{"V"}
	case "mohm":
		return shift(d, -3), []string{"ohm"}
	}
	return d, ids
}

func shift(d unit.Decimal, by int) unit.Decimal {
	d.Exp += by
	for d.Exp > 0 {
		d.Mant, d.Exp = d.Mant*10, d.Exp-1
	}
	return d
}

// lend gives a number without a unit the one that another number of the utterance has, or that stands alone in it: "eighteen ohms, no wait, eighty",
// "in milliamps it says four", "two point two and there's a k".
func (r *Reader) lend(w []string, ms []Mention, asked []string) {
	repair := lists()["repair"]
	for k := range ms {
		m := &ms[k]
		if m.Units != nil || m.Other {
			continue
		}
		for _, o := range ms {
			if o.Units != nil && !o.Other && !o.Borrowed && (o.From < m.From && repair.in(w[o.To:m.From]) || len(o.Values) > 0 && len(m.Values) > 0 && o.Values[0].dec.Equal(m.Values[0].dec)) {
				m.Units, m.AC, m.Borrowed = o.Units, o.AC, true
			}
		}
	}
	// A unit by itself: behind a repair it replaces the one said before, elsewhere it serves the bare numbers.
	for i := 0; i < len(w); {
		ids, n := r.unitAt(w, i)
		if n > 0 && (!measured[ids[0]] || ids[0] == "s" || ids[0] == "min" || n == 1 && len(w[i]) < 3) {
			ids, n = nil, 0
		}
		if p, k := prefixAt(w, i); n == 0 && k > 0 {
			if id := prefixed(asked, p); id != "" {
				ids, n = []string{id}, k
			}
		}
		if n == 0 {
			i++
			continue
		}
		owned := slices.ContainsFunc(ms, func(m Mention) bool { return m.unitFrom > 0 && m.unitFrom <= i && i < m.unitFrom+4 && !m.Borrowed })
		last := len(ms) - 1
		switch denied := i > 0 && (w[i-1] == "not" || w[i-1] == "n't" || w[i-1] == "no"); {
		case owned || last < 0 || denied:
		case i >= ms[last].To && repair.in(w[ms[last].To:i]):
			ms[last].Units, ms[last].Borrowed, ms[last].Other = ids, true, false
		default:
			for k := range ms {
				if ms[k].Units == nil && !ms[k].Other {
					ms[k].Units, ms[k].Borrowed = ids, true
				}
			}
		}
		i += n
	}
}

// prefixes are ways to tell the letter in front of a unit.
var prefixes = map[string]string{"a k": "k", "the k": "k", "big k": "k", "little k": "k", "letter k": "k", "with k": "k", "capital k": "k", "kilo": "k", "kilos": "k", "k": "k", "big m": "M", "capital m": "M", "large m": "M", "mega": "M", "meg": "M", "megs": "M",
	"uppercase m": "M", "tiny m": "m", "little m": "m", "small m": "m", "lowercase m": "m", "lower case m": "m", "milli": "m", "millis": "m", "mili": "m", "micro": "u", "micros": "u", "mikro": "u",
	"little u": "u", "funny u": "u", "u thing": "u", "mu": "u", "nano": "n", "little n": "n", "n f": "n", "a n": "n", "an n": "n", "with n": "n", "letter n": "n", "m v": "m", "p a": "Pa", "m a": "m", "u a": "u", "u f": "u"}

func prefixAt(w []string, i int) (string, int) {
	for n := min(3, len(w)-i); n > 0; n-- {
		if p := prefixes[strings.Join(w[i:i+n], " ")]; p != "" {
			return p, n
		}
	}
	return "", 0
}

// prefixed is the unit of the kind asked for that has this prefix; "" for none.
func prefixed(asked []string, p string) string {
	for _, id := range asked {
		u, ok := unit.Lookup(id)
		if !ok {
			continue
		}
		for _, x := range []string{p + map[unit.Dim]string{unit.Resistance: "ohm", unit.Voltage: "V", unit.Current: "A", unit.Capacitance: "F", unit.Pressure: "Pa"}[u.Dim], p} {
			if x == "mohm" || x == "kV" {
				return x
			}
			if v, ok := unit.Lookup(x); ok && v.Dim == u.Dim {
				return x
			}
		}
	}
	return ""
}

// stateOf is what each state of the display is to the program; the rest is trouble with the meter.
var stateOf = map[string]measure.State{"over": measure.Over, "jumping": measure.Jumping, "blank": measure.Blank, "beep": measure.Beep, "nobeep": measure.Silent}

// states are the states of the display that a sentence can tell.
func (r *Reader) states(s *sense, e grammar.Expect) []utterance.Meaning {
	k := argmax(s.state)
	id := intent.States[k]
	m := utterance.Meaning{Kind: utterance.Reading, Text: strings.Join(s.words, " "), Doubt: s.act[state]*s.state[k] < sureState}
	st, ok := stateOf[id]
	if !ok {
		m.Kind, m.ID = utterance.Trouble, map[string]string{"lowbat": "low-battery", "wrongmode": "wrong-mode"}[id]
		return []utterance.Meaning{m}
	}
	m.Reading = &measure.Reading{State: st}
	if st == measure.Jumping {
		r.span(s, e, &m)
	}
	return []utterance.Meaning{m}
}

// span reads between which numbers a display jumps.
func (r *Reader) span(s *sense, e grammar.Expect, m *utterance.Meaning) {
	var all []Mention
	r.lend(s.words, s.mentions, e.Units)
	for _, x := range s.mentions {
		if !x.Other && len(x.Values) > 0 {
			all = append(all, x)
		}
	}
	if len(all) < 2 {
		return
	}
	low, high := all[0], all[0]
	for _, x := range all[1:] {
		if x.Values[0].dec.Float() < low.Values[0].dec.Float() {
			low = x
		}
		if x.Values[0].dec.Float() > high.Values[0].dec.Float() {
			high = x
		}
	}
	if low.From == high.From {
		return
	}
	lo, hi := unit.Value{Dec: low.Values[0].dec}, unit.Value{Dec: high.Values[0].dec}
	ids := narrow(firstUnits(high.Units, low.Units), e.Units)
	if ids == nil {
		ids = e.Units
	}
	if len(ids) == 1 {
		lo.Unit, hi.Unit = ids[0], ids[0]
	} else {
		m.Units = ids
	}
	m.Reading.Low, m.Reading.High = &lo, &hi
}

func firstUnits(a, b []string) []string {
	if a != nil {
		return a
	}
	return b
}

// commands are the commands that a sentence can be.
func (r *Reader) commands(s *sense) []utterance.Meaning {
	k := argmax(s.command)
	p := s.act[command] * s.command[k]
	m := utterance.Meaning{Kind: utterance.Command, Text: strings.Join(s.words, " "), Doubt: p < sureWords}
	switch id := intent.Commands[k]; id {
	case "sorry":
		return nil
	case "yes", "no":
		m.Kind, m.ID = utterance.Choice, id
		other := m
		other.ID, other.Cost = map[string]string{"yes": "right-value", "no": "different"}[id], costSecond
		return []utterance.Meaning{m, other}
	default:
		m.ID = commandOf[id]
		if c, ok := vocab.CommandOf(m.ID); !ok || !c.Ends {
			m.Doubt = p < sureLight
		}
	}
	return []utterance.Meaning{m}
}

// costSecond keeps a second meaning of the same words behind the first.
const costSecond = 0.01

// Probabilities from which a symptom of a story counts, and from which the likeliest one does. Chosen by leaving out learning hands.
const leastSymptom, leastFirst = 0.4, 0.12

// Symptoms are what a story tells that the heater does, the likeliest first.
func (r *Reader) Symptoms(s *sense) []utterance.Meaning {
	p := make([]float64, len(intent.Symptoms))
	for i := range p {
		p[i] = 1 / (1 + math.Exp(-float64(s.out[intent.AtSymptom+i])))
	}
	var out []utterance.Meaning
	first := argmax(p)
	for i, id := range intent.Symptoms {
		if p[i] >= leastSymptom || i == first && p[i] >= leastFirst {
			out = append(out, utterance.Meaning{Kind: utterance.Symptom, ID: id, Cost: -math.Log(p[i])})
		}
	}
	slices.SortStableFunc(out, func(a, b utterance.Meaning) int { return cmp.Compare(a.Cost, b.Cost) })
	return out
}
