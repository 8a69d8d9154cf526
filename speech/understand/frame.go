package understand

import (
	"slices"

	"readback/core/utterance"
	"readback/speech/understand/intent"
)

// frame is what the span grammar finds in an utterance.
type frame struct {
	words                                                                           []string
	mentions                                                                        []Mention
	strong                                                                          []bool // by class of intent.Hazards
	weak                                                                            []bool
	negated                                                                         bool // the first hazard stands behind a "no" or "not"
	past, others, self, hypothesis, question, hedge, figure, cry, order, now, scene bool
	flags                                                                           [intent.Flags]float32
}

// Places of the flags of the network.
const (
	flagStrong = 0
	flagWeak   = 10
	flagRest   = 20
)

// reach is how many words before a hazard a "no" or "not" may stand to deny it: as in speech/grammar.
const reach = 3

func (r *Reader) frame(text string) *frame {
	l := lists()
	words, breaks := intent.Spans(text)
	f := &frame{words: words}
	w := f.words
	f.mentions = r.mentions(w, breaks)
	f.strong, f.weak = make([]bool, len(intent.Hazards)), make([]bool, len(intent.Hazards))
	first := -1
	for k, id := range intent.Hazards {
		at := l["hazard."+id].find(w)
		f.strong[k], f.weak[k] = at >= 0, l["weak."+id].in(w)
		if at >= 0 && (first < 0 || at < first) {
			first = at
		}
	}
	if first > 0 {
		f.negated = l["negation"].in(w[max(0, first-reach):first])
	}
	f.past, f.others, f.self, f.hypothesis = l["past"].in(w), l["others"].in(w), l["self"].in(w), l["hypothesis"].in(w)
	f.question, f.hedge, f.figure, f.cry = len(w) > 0 && l["question"].at(w, 0) > 0, l["hedge"].in(w), l["figure"].in(w), l["cry"].in(w)
	f.order, f.now, f.scene = l["order"].in(w), l["now"].in(w), l["scene"].in(w)

	flag := func(i int, on bool) {
		if on {
			f.flags[i] = 1
		}
	}
	for k := range intent.Hazards {
		flag(flagStrong+k, f.strong[k])
		flag(flagWeak+k, f.weak[k])
	}
	bare, other := false, false
	for _, m := range f.mentions {
		bare = bare || m.Units == nil && !m.Other
		other = other || m.Other
	}
	legacy := r.grammar.Urgent(text)
	for i, on := range []bool{f.negated, f.past, l["pastverb"].in(w), f.others, f.self, f.hypothesis, f.question, f.hedge, f.figure, f.cry, f.order, f.now, f.scene,
		bare, slices.ContainsFunc(f.mentions, func(m Mention) bool { return m.Units != nil }), other, l["repair"].in(w), l["display"].in(w),
		len(w) < 4, len(w) > 20, l["over"].in(w), l["swing"].in(w), l["beep"].in(w), l["silent"].in(w),
		legacy != nil && legacy.Kind == utterance.Emergency && !legacy.Doubt, legacy != nil && legacy.Kind == utterance.Emergency && legacy.Doubt,
		len(f.mentions) > 1, l["shows"].in(w)} {
		flag(flagRest+i, on)
	}
	return f
}

// class is what stands for a word in the pairs of the network: every number word is one, and so is every unit.
func class(w string) string {
	switch {
	case digitWord[w] || numberWord[w]:
		return "#"
	case lists()["measure"][w] != nil:
		return "@"
	}
	return w
}

// roles are what the words tell of who, when, whether and what, in order.
func roles(w []string) []string {
	l := lists()
	var out []string
	for i := 0; i < len(w); {
		n, name := 0, ""
		for _, id := range roleLists {
			if k := l[id].at(w, i); k > n {
				n, name = k, id
			}
		}
		if n == 0 {
			i++
			continue
		}
		if len(out) == 0 || out[len(out)-1] != name {
			out = append(out, name)
		}
		i += n
	}
	return out
}

// roleLists are the lists of english.txt that give a word a role; of two that fit the same words the first counts.
var roleLists = []string{"role.if", "negation", "past", "role.figure", "role.kin", "role.self", "role.child", "cry", "order", "role.body", "hedge", "role.past", "role.live",
	"hazard.gas", "hazard.co", "hazard.fire", "hazard.blast", "hazard.shock", "hazard.injury", "hazard.water", "hazard.collapse", "hazard.leave",
	"weak.gas", "weak.co", "weak.fire", "weak.blast", "weak.shock", "weak.injury", "weak.water", "weak.collapse", "role.device", "measure", "role.place", "role.question"}
