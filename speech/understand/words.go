package understand

import (
	_ "embed"
	"fmt"
	"strings"
	"sync"
)

//go:embed english.txt
var english string

// list is a set of words and phrases, by their first word.
type list map[string][][]string

var lists = sync.OnceValue(func() map[string]list {
	m, err := readLists(english)
	if err != nil {
		panic(err) // a test holds that the file is right
	}
	return m
})

// readLists reads "name: phrase, phrase" lines.
func readLists(src string) (map[string]list, error) {
	out := map[string]list{}
	n := 0
	for line := range strings.Lines(src) {
		n++
		line = strings.TrimSpace(line)
		if line == "" || strings.HasPrefix(line, "#") {
			continue
		}
		name, rest, ok := strings.Cut(line, ":")
		if !ok || out[name] != nil {
			return nil, fmt.Errorf("understand: english.txt:%d: want a new name, a colon and phrases", n)
		}
		l := list{}
		for p := range strings.SplitSeq(rest, ",") {
			w := strings.Fields(p)
			if len(w) == 0 || w[0] == "*" {
				return nil, fmt.Errorf("understand: english.txt:%d: %q holds an empty phrase or one that begins with *", n, name)
			}
			l[w[0]] = append(l[w[0]], w)
		}
		out[name] = l
	}
	return out, nil
}

// wild is how many words a "*" may stand for.
const wild = 2

// at returns how many words at i are the longest phrase of the list, 0 when none is.
func (l list) at(words []string, i int) int {
	best := 0
	for _, p := range l[words[i]] {
		if end := match(words, i, p); end-i > best {
			best = end - i
		}
	}
	return best
}

func match(words []string, i int, p []string) int {
	for k, w := range p {
		if w == "*" {
			for gap := 0; gap <= wild && i+gap < len(words); gap++ {
				if end := match(words, i+gap, p[k+1:]); end >= 0 {
					return end
				}
			}
			return -1
		}
		if i >= len(words) || words[i] != w {
			return -1
		}
		i++
	}
	return i
}

// in tells whether the words hold a phrase of the list.
func (l list) in(words []string) bool { return l.find(words) >= 0 }

// find returns where the first phrase of the list stands, -1 for nowhere.
func (l list) find(words []string) int {
	for i := range words {
		if l.at(words, i) > 0 {
			return i
		}
	}
	return -1
}

// count is how many phrases of the list stand in the words.
func (l list) count(words []string) int {
	n := 0
	for i := 0; i < len(words); {
		if k := l.at(words, i); k > 0 {
			n++
			i += k
		} else {
			i++
		}
	}
	return n
}
