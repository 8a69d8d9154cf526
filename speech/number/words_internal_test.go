package number

import (
	"strings"
	"testing"
)

func TestReadWords(t *testing.T) {
	for _, tt := range []struct{ src, want string }{
		{"digit: one=1, two", "words.txt:1: digit \"two\""},
		{"# words\n\nteen ten=10", "words.txt:3: want a name"},
		{"marks: no, , sorry", "words.txt:1: marks has an empty entry"},
	} {
		if _, err := readWords(tt.src); err == nil || !strings.Contains(err.Error(), tt.want) {
			t.Errorf("%q: %v, want %s", tt.src, err, tt.want)
		}
	}
	w, err := readWords(englishWords)
	if err != nil || strings.Join(w.scaleOrder, " ") != "trillion billion million thousand" || len(w.around) != 5 {
		t.Errorf("%v, %v", w, err)
	}
}
