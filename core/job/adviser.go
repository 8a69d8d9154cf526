package job

import (
	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/protocol"
	"readback/core/unit"
	"readback/core/worksite"
)

// Finding is one established answer.
type Finding struct {
	Check   int              `json:"check"`  // index into the model's checks
	Option  int              `json:"option"` // index into the check's options, -1 for a reading
	Reading *measure.Reading `json:"reading,omitempty"`
	Unknown bool             `json:"unknown,omitempty"` // not known, not reached, not answered
	Unsure  bool             `json:"unsure,omitempty"`  // said with doubt
	Typed   bool             `json:"typed,omitempty"`   // tapped, keyed, or the camera agreed: nothing was heard wrong
}

// Mended is a repair that was carried out after the first After findings.
type Mended struct {
	Repair int `json:"repair"`
	After  int `json:"after"`
}

// Doubt is an answer that was asked again after the first After findings.
type Doubt struct {
	Check int `json:"check"`
	After int `json:"after"`
}

// Query is all that advice may depend on.
type Query struct {
	Findings []Finding
	Mended   []Mended
	Cycled   []int    // after how many findings each a new power cycle began
	Anew     []int    // after how many findings each another start is watched from its beginning, because the fault comes and goes
	Doubted  []Doubt  // answers that were doubted, so that each is once only
	Blocked  []int    // checks that cannot or may not be asked, rising
	Stages   []string // stages whose checks may be asked
	Site     worksite.State
	NoLive   bool                  // the person refuses live work
	Proven   bool                  // the meter was made ready
	Plate    map[string]unit.Value `json:",omitempty"` // what the rating plate says, by field
	Meter    *measure.Meter        `json:",omitempty"` // what is measured with; nil: not named
}

// Advice is what to do next and why.
type Advice struct {
	Check    int                // check worth asking next, -1 for none
	Proof    bool               // it is asked as independent evidence for the leading suspect
	Doubt    int                // the check whose answer does not fit the rest, so that Check is asked, plus one; 0 for none
	Firm     bool               // Check was answered and carries the verdict alone: it is asked once more in other words
	Again    bool               // Check is asked because an answer does not fit the rest
	Verdict  bool               // the case is closed: Repair names what ends it
	Repair   int                // -1: nothing is wrong, when Verdict
	P        float64            // probability of the verdict
	Proofs   []string           // what the verdict stands on, in words
	Suspects []protocol.Suspect // best first
	Why      protocol.WhyView   // reasons in words, when the adviser has better ones than the session makes of Splits
	Sure     string             // what would change the verdict, in words
	Splits   []string           // names of two suspects that Check tells apart
	Minutes  float64            // what Check takes
	Foreseen []int              // looks at a start whose answers are all but known
}

// Adviser chooses checks and closes cases. It must be a pure function of the query: the machine remembers its answers.
type Adviser interface {
	Advise(Query) Advice
}

// InOrder is the plainest adviser: every check in the order of the file, and the repair of the part whose check failed.
// It needs no engine and serves tests of the machine itself.
type InOrder struct {
	Model *appliance.Model
	Meter *measure.Meter
}

// Advise takes the first check of the allowed stages that has no answer yet.
func (o InOrder) Advise(q Query) Advice {
	a := Advice{Check: -1, Repair: -1}
	seen := map[int]bool{}
	from := 0
	if n := len(q.Mended); n > 0 {
		from = q.Mended[n-1].After
	}
	fails := 0
	for i, f := range q.Findings {
		seen[f.Check] = true
		if i < from || f.Unknown {
			continue
		}
		c := &o.Model.Checks[f.Check]
		bad := f.Option > 0
		if f.Reading != nil && c.Limit != nil {
			v := measure.Judge(o.Meter, c.Function, *f.Reading, *c.Limit).Verdict
			bad = v == measure.Fail || v == measure.ConditionalFail
		}
		if !bad || c.Part < 0 {
			continue
		}
		for j := range o.Model.Repairs {
			if o.Model.Repairs[j].Part == c.Part && (a.Repair < 0 || a.Repair == j) {
				a.Repair = j
				fails++
				a.Proofs = append(a.Proofs, c.Name)
				break
			}
		}
	}
	for _, b := range q.Blocked {
		seen[b] = true
	}
	if a.Repair >= 0 {
		p := &o.Model.Parts[o.Model.Repairs[a.Repair].Part]
		a.P = 1 - 0.5/float64(uint(1)<<min(fails, 6))
		a.Suspects = []protocol.Suspect{{Part: p.ID, Name: p.Name, P: a.P}}
	}
	if fails >= 2 {
		a.Verdict = true
		return a
	}
	for _, st := range q.Stages {
		for i := range o.Model.Checks {
			c := &o.Model.Checks[i]
			if c.Stage != st || seen[i] || a.Repair >= 0 && c.Part >= 0 && c.Part != o.Model.Repairs[a.Repair].Part {
				continue
			}
			a.Check, a.Proof = i, a.Repair >= 0
			return a
		}
	}
	a.Verdict = a.Repair >= 0
	return a
}
