package plain_test

import (
	"bufio"
	"math"
	"os"
	"slices"
	"strings"
	"testing"

	"readback/core/lab/metric"
	"readback/flows"
	"readback/flows/plain"
	"readback/flows/prompts"
)

// TestGrade holds the formula to worked examples: reading ease and grade use the same counts.
func TestGrade(t *testing.T) {
	for _, tt := range []struct {
		text      string
		words     int
		syllables int
		grade     float64
	}{
		{"The cat sat on the mat.", 6, 6, -1.45}, // an example that is often given: reading ease 116
		// Reading ease 37.5 and grade 11.3 are given for it: 13 words of 24 syllables.
		{"The Australian platypus is seemingly a hybrid of a mammal and reptilian creature.", 13, 24, 11.3},
	} {
		var c plain.Count
		c.Add(tt.text)
		if c.Words != tt.words || c.Syllables != tt.syllables || math.Abs(c.Grade()-tt.grade) > 0.05 {
			t.Errorf("%q: %d words, %d syllables, grade %.2f", tt.text, c.Words, c.Syllables, c.Grade())
		}
	}
}

// published are the syllables of words by the CMU Pronouncing Dictionary.
func published(t testing.TB) map[string][]int {
	f, err := os.Open("testdata/syllables.txt")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	out := map[string][]int{}
	for s := bufio.NewScanner(f); s.Scan(); {
		word, list, ok := strings.Cut(s.Text(), " ")
		if !ok || word == "#" {
			continue
		}
		for n := range strings.SplitSeq(list, ",") {
			out[word] = append(out[word], int(n[0]-'0'))
		}
	}
	return out
}

// TestSyllables holds the counter to the published dictionary, word by word.
func TestSyllables(t *testing.T) {
	list := published(t)
	wrong := 0
	for word, n := range list {
		if got := plain.Syllables(word); !slices.Contains(n, got) {
			wrong++
			if os.Getenv("WRONG") != "" {
				t.Logf("%s: %d, published %v", word, got, n)
			}
		}
	}
	if share := 100 * float64(wrong) / float64(len(list)); len(list) < 3000 || share > 5 {
		t.Errorf("%.1f %% of %d words have other syllables than published", share, len(list))
	}
	// What matters is the sum over our own texts.
	ours, theirs := 0, 0
	for _, s := range spoken(t) {
		for _, w := range plain.Words(s.text) {
			if n := list[strings.ToLower(w)]; n != nil {
				ours, theirs = ours+plain.Syllables(w), theirs+n[0]
			}
		}
	}
	if math.Abs(float64(ours-theirs)) > 0.01*float64(theirs) {
		t.Errorf("%d syllables in our texts, %d by the dictionary", ours, theirs)
	}
}

type said struct{ by, text string }

// spoken is every text that a person hears or reads in a job: the lines of the guide and of the equipment files.
func spoken(t testing.TB) []said {
	w, err := prompts.Load()
	if err != nil {
		t.Fatal(err)
	}
	var out []said
	add := func(by string, texts ...string) {
		for _, s := range texts {
			if s != "" {
				out = append(out, said{by, s})
			}
		}
	}
	for id, l := range w.Lines {
		add("line "+id, append([]string{l.Full, l.Say, l.How}, l.Short...)...)
	}
	fsys, names := flows.Files()
	for _, name := range names {
		m, err := flows.Load(fsys, name)
		if err != nil {
			t.Fatal(err)
		}
		for _, c := range m.Checks {
			add(m.ID+" check "+c.ID, c.Ask, c.Act, c.Caution, c.Fit)
			for _, o := range c.Options {
				add(m.ID+" check "+c.ID, o.Tell)
			}
			for _, b := range c.Bands {
				add(m.ID+" check "+c.ID, b.Tell)
			}
		}
		for _, r := range m.Repairs {
			add(m.ID+" repair "+r.ID, r.Note)
			for _, s := range r.Steps {
				add(m.ID+" repair "+r.ID, s.Act, s.Caution)
			}
		}
		for _, s := range m.Stops {
			add(m.ID+" stop "+s.ID, s.Say, s.Tell, s.Now)
		}
		for _, c := range m.Cautions {
			add(m.ID+" caution "+c.Hazard, c.Say...)
		}
		for _, p := range m.Plate {
			add(m.ID+" plate "+p.ID, p.Ask)
		}
	}
	slices.SortStableFunc(out, func(a, b said) int { return strings.Compare(a.by, b.by) })
	return out
}

// whole tells whether a text is a sentence and no piece of one: pieces would make the texts look easier than they are.
func whole(text string) bool { return strings.ContainsAny(text[len(text)-1:], ".?!") }

func measured(t testing.TB) (grade float64, longest int, n int) {
	var c plain.Count
	for _, s := range spoken(t) {
		if k, sentence := plain.LongestOf(s.text); k > longest {
			longest = k
			if k > plain.Longest {
				t.Errorf("%s: %d words: %q", s.by, k, sentence)
			}
		}
		if whole(s.text) {
			c.Add(s.text)
			n++
		}
	}
	return c.Grade(), longest, n
}

// TestReadable holds all that is said to a sixth-grade level, to short sentences, and to American spelling (issue 18 I1).
func TestReadable(t *testing.T) {
	grade, longest, n := measured(t)
	if grade > 6 || n < 500 {
		t.Errorf("%d texts of grade %.1f, longest sentence %d words", n, grade, longest)
	}
	t.Logf("%d texts, grade %.2f, longest sentence %d words", n, grade, longest)
	for _, s := range spoken(t) {
		if w, a := plain.British(s.text); w != "" {
			t.Errorf("%s: %q is %q in America: %q", s.by, w, a, s.text)
		}
		for _, x := range guessed {
			if strings.Contains(" "+strings.ToLower(strings.Join(plain.Words(s.text), " "))+" ", " "+x+" ") {
				t.Errorf("%s: %q must be guessed: %q", s.by, x, s.text)
			}
		}
	}
}

// guessed are words that a homeowner must guess (issue 18 I1): they stand in no text.
var guessed = []string{"tee", "net", "spade", "reserved", "part the", "say calling", "go live", "setpoint", "set point", "lock-out", "porcelain", "splice", "crimp on a spade"}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		grade, longest, n := measured(t)
		add("words.grade", grade, "grade", "<= 6", n)
		add("words.max", float64(longest), "words", "<= 16", n)
	})
}

// TestAnswers is the rule of questions and answers, row by row.
func TestAnswers(t *testing.T) {
	for _, tt := range []struct {
		ask    string
		labels []string
		bad    string
	}{
		{"Is the floor dry or wet?", []string{"Dry", "Wet"}, ""},
		{"Is the floor dry, wet, or flooded?", []string{"Dry", "Wet", "Flooded"}, ""},
		{"Look there. Dry, wet, or flooded?", []string{"Dry", "Wet", "Flooded"}, ""},
		{"Is the floor dry, wet, or flooded?", []string{"Dry", "Wet"}, "does not end in its answers"},
		{"Is the floor damp, dry or wet?", []string{"Dry", "Wet"}, "no button"},
		{"Is the floor dry or wet?", []string{"Wet", "Dry"}, "does not end in its answers"},
		{"Do you smell anything near the floor or the pipes?", []string{"No", "Yes"}, ""},
		{"The floor: wet?", []string{"No", "Yes"}, "begins with"},
		{"Is it wet, or dry?", []string{"No", "Yes"}, "names nothing else"},
		{"Is it wet?", []string{"No", "Yes", "Both"}, "only answers"},
		{"When both are off, say: both are off.", []string{"Both are off"}, ""},
		{"When it is over, say clear, or noted.", []string{"Clear", "Noted"}, ""},
		{"When it is over, say done.", []string{"Clear"}, "does not end"},
		{"What does the label say?", []string{"A", "B", "C", "D", "E"}, ""},
		{"What does the label say?", []string{"A", "B", "C"}, "does not end"},
		{"Is it wet or wet?", []string{"Wet", "wet"}, "called"},
	} {
		err := plain.Answers(tt.ask, tt.labels)
		if (err == nil) != (tt.bad == "") || err != nil && !strings.Contains(err.Error(), tt.bad) {
			t.Errorf("%q %q: %v, want %q", tt.ask, tt.labels, err, tt.bad)
		}
	}
}
