package grammar

import (
	"slices"
	"strings"

	"readback/core/utterance"
)

// Alarm finds a word of alarm in words that are no emergency as they stand: "hand stuck" for "my hand's stuck". It must be asked about.
// Nil when there is none.
func (p *Parser) Alarm(text string) *utterance.Meaning {
	for w := range strings.FieldsSeq(text) {
		if slices.Contains(p.lex.Emergencies.Alarms, w) {
			return &utterance.Meaning{Kind: utterance.Emergency, ID: "any", Text: w, Doubt: true}
		}
	}
	return nil
}
