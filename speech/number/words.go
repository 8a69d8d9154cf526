package number

import (
	_ "embed"
	"fmt"
	"sort"
	"strconv"
	"strings"
)

//go:embed en/words.txt
var englishWords string

// words are the number words of a language, and what people say around a number.
type words struct {
	digit, homophone map[string]string
	teen, ten, scale map[string]int64
	scaleOrder       []string // the largest first
	around           map[string]sayings
}

var english = mustWords(englishWords)

// The grammar of numbers in form.go is that of English; another language needs words of its own and, where it counts otherwise, a grammar.
var (
	digitWords, homophones = english.digit, english.homophone
	teenWords, tenWords    = english.teen, english.ten
	scaleWords, scaleOrder = english.scale, english.scaleOrder
	leadIn, leadOut        = english.around["lead-in"], english.around["lead-out"]
	marks, unitMarks       = english.around["marks"], english.around["unit-marks"]
	articles               = english.around["articles"]
)

func mustWords(src string) *words {
	w, err := readWords(src)
	if err != nil {
		panic(err) // a test holds that the file is right
	}
	return w
}

// readWords reads the file of a language. Its error says where and what.
func readWords(src string) (*words, error) {
	w := &words{digit: map[string]string{}, homophone: map[string]string{}, teen: map[string]int64{}, ten: map[string]int64{}, scale: map[string]int64{}, around: map[string]sayings{}}
	n := 0
	for line := range strings.Lines(src) {
		n++
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, rest, ok := strings.Cut(line, ":")
		if !ok {
			return nil, fmt.Errorf("number: words.txt:%d: want a name, a colon and entries", n)
		}
		var list []string
		for e := range strings.SplitSeq(rest, ",") {
			if e = strings.TrimSpace(e); e == "" {
				return nil, fmt.Errorf("number: words.txt:%d: %s has an empty entry", n, name)
			}
			list = append(list, e)
		}
		numbers := map[string]map[string]int64{"teen": w.teen, "ten": w.ten, "scale": w.scale}[name]
		digits := map[string]map[string]string{"digit": w.digit, "homophone": w.homophone}[name]
		if numbers == nil && digits == nil {
			w.around[name] = phrases(list...)
			continue
		}
		for _, e := range list {
			word, value, _ := strings.Cut(e, "=")
			v, err := strconv.ParseInt(value, 10, 64)
			if err != nil {
				return nil, fmt.Errorf("number: words.txt:%d: %s %q: want a whole number behind =", n, name, e)
			}
			if digits != nil {
				digits[word] = value
			} else {
				numbers[word] = v
			}
		}
	}
	for s := range w.scale {
		w.scaleOrder = append(w.scaleOrder, s)
	}
	sort.Slice(w.scaleOrder, func(i, j int) bool { return w.scale[w.scaleOrder[i]] > w.scale[w.scaleOrder[j]] })
	return w, nil
}
