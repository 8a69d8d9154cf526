package report

import (
	"bytes"
	"fmt"
	"image"
	_ "image/jpeg" // sizes of the pictures
	_ "image/png"
	"strings"

	"readback/core/protocol"
	"readback/core/words"
)

// fillSeen tells what the camera made of a step: what it saw and how surely, or why it could not tell.
func fillSeen(r *row, s *protocol.Seen, photos map[string][]byte) {
	switch {
	case s == nil:
		return
	case s.Reason != "":
		r.Event = r.w.Term("record.unseen", "why", s.Reason)
	case s.Kind == protocol.EyeAfter:
		n := 0
		var words []string
		for i := range s.Wires {
			if w := &s.Wires[i]; w.Change != "same" {
				n++
				words = append(words, strings.TrimSpace(fmt.Sprintf("%s: %s %s", w.Name, r.w.Name("change", w.Change), fromTo(r.w, w))))
			}
		}
		r.Event = r.w.Term("record.compared", "n", fmt.Sprint(len(s.Wires)), "look", fmt.Sprint(n))
		if n > 0 {
			r.Event += ": " + strings.Join(words, "; ")
		}
	default:
		what := s.Text
		if what == "" {
			what = r.w.Name("sight", s.ID)
		}
		r.Event = r.w.Term("record.saw", "what", what, "p", fmt.Sprintf("%.3g", 100*s.P), "n", fmt.Sprint(s.Frames))
		if s.From > 0 {
			r.Event += r.w.Term("record.came", "from", fmt.Sprintf("%.1f", float64(s.From)/1000), "to", fmt.Sprintf("%.1f", float64(s.To)/1000))
		}
		r.Rivals = strings.Join(s.Rivals, " / ")
	}
	if s.Photo != "" && s.Kind != protocol.EyeAfter {
		r.Picture = &picture{Name: s.Photo}
		if data, ok := photos[s.Photo]; ok {
			r.Picture.URL = dataURL(data)
		}
	}
}

func fromTo(words *words.Words, w *protocol.SeenWire) string {
	switch {
	case w.Before != "" && w.After != "":
		return words.Term("record.before-after", "before", w.Before, "after", w.After)
	case w.Before != "":
		return words.Term("record.before", "before", w.Before)
	case w.After != "":
		return words.Term("record.after", "after", w.After)
	}
	return ""
}

// drawn is a picture with the terminals on it: a ring for what is as before, a square for what is to be looked at, each with its
// name. A picture that is missing or cannot be measured gives nothing.
func drawn(text *words.Words, data []byte, wires []protocol.SeenWire, after bool) markup {
	c, _, err := image.DecodeConfig(bytes.NewReader(data))
	if err != nil || c.Width < 1 || c.Height < 1 {
		return ""
	}
	w, h := float64(c.Width), float64(c.Height)
	size := max(w, h) / 40
	label := text.Term("record.before-work")
	if after {
		label = text.Term("record.after-work")
	}
	var b strings.Builder
	fmt.Fprintf(&b, `<figure><figcaption>%s</figcaption><svg class="drawn" viewBox="0 0 %g %g" role="img" aria-label="%s"><image href="%s" width="%g" height="%g"/>`,
		escape(label), w, h, escape(text.Term("record.terminals", "picture", label)), dataURL(data), w, h)
	for i := range wires {
		x, y := wires[i].X*w, wires[i].Y*h
		if after {
			x, y = wires[i].AX*w, wires[i].AY*h
		}
		if !(x >= 0 && y >= 0 && x <= w && y <= h) {
			continue // outside this picture
		}
		for _, pen := range [2]string{"out", "in"} {
			if wires[i].Change == "same" {
				fmt.Fprintf(&b, `<circle class="%s" cx="%.1f" cy="%.1f" r="%.1f" stroke-width="%.1f"/>`, pen, x, y, size, size/4)
				continue
			}
			fmt.Fprintf(&b, `<rect class="%s" x="%.1f" y="%.1f" width="%.1f" height="%.1f" stroke-width="%.1f"/>`, pen, x-1.3*size, y-1.3*size, 2.6*size, 2.6*size, size/4)
		}
		fmt.Fprintf(&b, `<text x="%.1f" y="%.1f" font-size="%.1f">%s</text>`, min(x+1.6*size, w*0.8), y+size/2, 1.4*size, escape(wires[i].Name))
	}
	b.WriteString(`</svg></figure>`)
	return markup(b.String())
}
