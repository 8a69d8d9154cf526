package lexicon

import (
	"cmp"
	"fmt"
	"io/fs"
	"path"
	"regexp"
	"slices"
	"sort"
	"strings"
)

var tag = regexp.MustCompile(`^[a-z]{2,3}(-[a-z0-9]+)*$`)

// Files returns the HCL files of a language in fsys, by name: a folder each, called as in BCP 47. The words that are said lie so too. Its errors begin with what they are files of, and name the languages there are.
func Files(fsys fs.FS, what, lang string) ([]string, error) {
	if !tag.MatchString(lang) {
		return nil, fmt.Errorf("%s: %q is no language: want letters like en", what, lang)
	}
	names, err := fs.Glob(fsys, lang+"/*.hcl")
	if err != nil {
		return nil, fmt.Errorf("%s: language %q: %w", what, lang, err)
	}
	if len(names) == 0 {
		known, err := fs.Glob(fsys, "*/*.hcl")
		if err != nil {
			return nil, fmt.Errorf("%s: %w", what, err)
		}
		for i := range known {
			known[i] = path.Dir(known[i])
		}
		return nil, fmt.Errorf("%s: no language %q: there is %s", what, lang, cmp.Or(strings.Join(slices.Compact(known), ", "), "none"))
	}
	sort.Strings(names)
	return names, nil
}
