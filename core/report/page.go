package report

import (
	_ "embed"
	"fmt"
	"html"
	"strings"
)

// markup is a piece of the page, whole and safe. Text becomes markup through escape only, so that nothing that was said is taken for a tag.
// The page is put together here and not by html/template: that package makes the linker keep every method there is, a seventh of the program.
type markup string

func escape(s string) markup { return markup(html.EscapeString(s)) }

// el is an element with its attributes as they are written. Without children it is nothing.
func el(tag, attrs string, children ...markup) markup {
	inner := join(children)
	if inner == "" {
		return ""
	}
	if attrs != "" {
		attrs = " " + attrs
	}
	return markup(fmt.Sprintf("<%s%s>%s</%s>", tag, attrs, inner, tag))
}

func join(parts []markup) markup {
	var b strings.Builder
	for _, p := range parts {
		b.WriteString(string(p))
	}
	return markup(b.String())
}

// para is a paragraph, or nothing where there is no text.
func para(class, text string) markup {
	if class != "" {
		class = `class="` + class + `"`
	}
	return el("p", class, escape(text))
}

// part is a heading with what stands under it, or nothing where nothing does.
func part(title string, body ...markup) markup {
	under := join(body)
	if under == "" {
		return ""
	}
	return "\n" + el("h2", "", escape(title)) + "\n" + under
}

func list(items []string) markup {
	var out []markup
	for _, s := range items {
		out = append(out, el("li", "", escape(s)))
	}
	return el("ul", "", out...)
}

func term(name, text string) markup {
	if text == "" {
		return ""
	}
	return el("dt", "", escape(name)) + el("dd", "", escape(text)) + "\n"
}

//go:embed report.css
var style string

// page is the whole record.
func (s *sheet) page() markup {
	var suspects []string
	for _, x := range s.Suspects {
		suspects = append(suspects, x.Name+": "+x.Words)
	}
	outcome, damage, open := s.Outcome, "", markup("")
	if outcome == "" {
		outcome = "The job is not finished."
	}
	if s.Damage != "" {
		damage = "The journal's end is damaged: " + s.Damage + ". All that is complete before it stands below."
	}
	if len(s.Open) > 0 {
		open = para("verdict", "Still to be restored:") + list(s.Open)
	}
	return "<!doctype html>\n" + el("html", `lang="en"`,
		"\n", el("head", "", `<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`,
			el("title", "", escape(s.Title+": record of a job")), el("style", "", markup(style))),
		"\n", el("body", "",
			el("h1", "", escape(s.Title)), "\n",
			el("dl", "", term("Begun", s.Begun), term("Last entry", s.Ended), term("Job", s.Job), term("Program", s.Version), term("Equipment data", s.Data)),
			para("verdict", damage),
			part("State now", list(s.Site), open),
			part("Outcome", para("", outcome), para("", s.Handover), list(suspects)),
			part("Established, in order", list(s.Facts)),
			part("How suspicion moved (in tenths)", el("div", `class="wide"`, s.Belief)),
			part("Doubts and corrections", list(s.Doubts)),
			part("Every exchange", el("table", "", s.exchanges()...)),
			part("Cautions given", list(s.Cautions))), "\n")
}

// exchanges are the rows of the table, a heading row before each stage.
func (s *sheet) exchanges() (rows []markup) {
	stage := ""
	for i := range s.Rows {
		r := &s.Rows[i]
		if r.Stage != stage {
			stage = r.Stage
			rows = append(rows, "\n", el("tr", `class="stage"`, el("td", `colspan="3"`, escape(stage))))
		}
		rows = append(rows, "\n", el("tr", fmt.Sprintf(`id="e%d"`, r.Seq),
			el("td", `class="n"`, markup(fmt.Sprint(r.Seq)), "<br>", escape(r.At)),
			"<td>"+r.answer()+"</td>", "<td class=\"said\">"+r.guide()+"</td>"))
	}
	return rows
}

// answer is what the person did and what was made of it.
func (r *row) answer() markup {
	out := para("", r.Event)
	if p := r.Picture; p != nil && p.URL != "" {
		out += markup(fmt.Sprintf(`<img src="%s" alt="%s">`, p.URL, escape(p.Name)))
	} else if p != nil {
		out += para("", "The file "+p.Name+" is missing.")
	}
	out += join(r.Drawn)
	if r.Heard != "" {
		class, by := `class="heard"`, ""
		if r.Undone {
			class = `class="heard undone"`
		}
		if r.Source != "" {
			by = " by " + r.Source
		}
		out += el("p", class, escape("“"+r.Heard+"”"), el("span", `class="rivals"`, escape(by)))
	}
	before := func(label, text string) string {
		if text == "" {
			return ""
		}
		return label + text
	}
	return out + para("rivals", before("or: ", r.Rivals)) + para("", r.Taken) + para("verdict", r.Verdict) + para("num", r.Limit) +
		para("num", before("uncertainty (k = 2) ", r.Value))
}

// guide is what was said to the person, and why.
func (r *row) guide() (out markup) {
	for _, t := range r.Said {
		level := markup("")
		if t.Level != "info" {
			level = el("span", `class="level"`, escape(t.Level))
		}
		if level != "" {
			level += " "
		}
		out += el("p", "", level, escape(t.Text))
	}
	if r.Why != "" {
		out += para("why", "Why: "+r.Why)
	}
	return out + para("why", r.Suspects)
}
