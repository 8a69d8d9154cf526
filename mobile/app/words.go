package app

import (
	"encoding/json"
	"fmt"
	"html"
	"regexp"
	"strings"

	"readback/core/unit"
	"readback/core/vocab"
	"readback/core/words"
)

// pageAlarms are the classes of emergency in the order of the page's sheet; "silent" is none that a person calls.
var pageAlarms = []string{"gas", "co", "fire", "ill", "faint", "blast", "shock", "spark", "water", "injury", "child", "any"}

// pageSlot is a place of a term in index.html.
var pageSlot = regexp.MustCompile(`\{page\.[a-z-]+\}`)

// inPage fills the terms and the language into index.html.
func inPage(w *words.Words, index string) string {
	index = strings.ReplaceAll(index, "{lang}", html.EscapeString(w.Lang))
	return pageSlot.ReplaceAllStringFunc(index, func(slot string) string { return html.EscapeString(w.Term(strings.Trim(slot, "{}"))) })
}

// wordsModule is /words.js: all that the page says by itself, and the closed lists of commands and alarms with their
// keys.
func wordsModule(w *words.Words) []byte {
	group := func(name string) map[string]string {
		out := map[string]string{}
		for id, text := range w.Terms {
			if tail, ok := strings.CutPrefix(id, name+"."); ok {
				out[tail] = text
			}
		}
		return out
	}
	units := group("page-unit")
	for _, u := range unit.All() {
		if p := w.Units[u.ID].Print; p != "" && units[u.ID] == "" {
			units[u.ID] = p
		}
	}
	var groups [][2]any
	for _, c := range vocab.Commands {
		title := w.Term("commands." + c.Group)
		if n := len(groups); n == 0 || groups[n-1][0] != title {
			groups = append(groups, [2]any{title, [][3]string(nil)})
		}
		last := &groups[len(groups)-1]
		last[1] = append(last[1].([][3]string), [3]string{c.ID, w.Term("command." + c.ID), c.Key})
	}
	var alarms []string
	for _, id := range pageAlarms {
		alarms = append(alarms, encoded(id)+": "+encoded(w.Term("alarm."+id)))
	}
	return fmt.Appendf(nil, `// The words of the page in its language, made from flows/prompts.
export const lang = %s;
const terms = %s;
export const T = (id, slots) => Object.entries(slots || {}).reduce((s, [k, v]) => s.replaceAll('{' + k + '}', v), terms[id] ?? id);
export const commandGroups = %s;
export const classes = {%s};
export const units = %s;
export const outcomes = %s;
export const numbers = %s;
`, encoded(w.Lang), encoded(group("page")), encoded(groups), strings.Join(alarms, ", "), encoded(units), encoded(group("outcome")), encoded(w.Numbers))
}

func encoded(v any) string {
	data, err := json.Marshal(v)
	if err != nil {
		panic("app: words cannot be encoded: " + err.Error()) // strings can
	}
	return string(data)
}
