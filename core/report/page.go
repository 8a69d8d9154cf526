package report

import (
	_ "embed"
	"fmt"
	"html"
	"strings"
)

// markup is a piece of the page, whole and safe. Text becomes markup through escape only, so that nothing that was
// said is taken for a tag. The page is put together here and not by html/template: that package makes the linker keep
// every method there is, a seventh of the program.
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
	damage, open := "", markup("")
	if s.Damage != "" {
		damage = s.w.Term("record.damage", "what", s.Damage)
	}
	if len(s.Open) > 0 {
		open = para("verdict", s.w.Term("record.to-restore")) + list(s.Open)
	}
	var firstLines []markup
	for _, l := range s.First {
		firstLines = append(firstLines, term(l[0], l[1]))
	}
	name := func(id, text string) markup { return term(s.w.Term("record."+id), text) }
	head := func(id string, body ...markup) markup { return part(s.w.Term("record."+id), body...) }
	return "<!doctype html>\n" + el("html", fmt.Sprintf(`lang="%s"`, s.w.Lang),
		"\n", el("head", "", `<meta charset="utf-8"><meta name="viewport" content="width=device-width, initial-scale=1">`,
			el("title", "", escape(s.w.Term("record.title", "title", s.Title))), el("style", "", markup(style))),
		"\n", el("body", "",
			el("h1", "", escape(s.Title)), "\n",
			el("dl", `class="first"`, firstLines...),
			para("verdict", damage),
			para("handover", s.Handover), open,
			head("readings", s.table()),
			head("timeline", s.line()),
			head("doubts", list(s.Doubts), s.remarked(s.clock)),
			head("belief", list(suspects), el("div", `class="wide"`, s.Belief)),
			el("details", "", el("summary", "", escape(s.w.Term("record.exchanges"))), el("table", "", s.exchanges()...)),
			el("details", "", el("summary", "", escape(s.w.Term("record.facts"))), list(s.Facts)),
			el("details", "", el("summary", "", escape(s.w.Term("record.cautions"))), list(s.Cautions)),
			el("dl", `class="last"`, name("begun", s.Begun), name("last", s.Ended), name("job", s.Job), name("program", s.Version),
				name("data", s.Data))), "\n")
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
		out += para("", r.w.Term("record.missing", "name", p.Name))
	}
	out += join(r.Drawn)
	if r.Heard != "" {
		class, by := `class="heard"`, ""
		if r.Undone {
			class = `class="heard undone"`
		}
		if r.Source != "" {
			by = " " + r.w.Term("record.by", "source", r.w.Name("source", r.Source))
		}
		out += el("p", class, escape("“"+r.Heard+"”"), el("span", `class="rivals"`, escape(by)))
	}
	before := func(label, text string) string {
		if text == "" {
			return ""
		}
		return label + text
	}
	return out + para("rivals", before(r.w.Term("record.or")+" ", r.Rivals)) + para("", r.Taken) + para("verdict", r.Verdict) + para("num", r.Limit) +
		para("num", before(r.w.Term("record.uncertainty")+" ", r.Value))
}

// guide is what was said to the person, and why.
func (r *row) guide() (out markup) {
	for _, t := range r.Said {
		level := markup("")
		if t.Level != "info" {
			level = el("span", `class="level"`, escape(r.w.Name("level", t.Level)))
		}
		if level != "" {
			level += " "
		}
		out += el("p", "", level, escape(t.Text))
	}
	if r.Why != "" {
		out += para("why", r.w.Term("record.why", "why", r.Why))
	}
	return out + para("why", r.Suspects)
}
