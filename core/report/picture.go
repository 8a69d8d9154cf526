package report

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"sort"
	"strings"

	"readback/core/words"
)

// dataURL inlines a picture; only the two types the shells write are let in.
func dataURL(data []byte) string {
	kind := "image/jpeg"
	if bytes.HasPrefix(data, []byte("\x89PNG")) {
		kind = "image/png"
	}
	return "data:" + kind + ";base64," + base64.StdEncoding.EncodeToString(data)
}

const (
	picW, picH   = 720.0, 220.0
	picLeft      = 34.0
	picRight     = 170.0
	picTop       = 8.0
	picBottom    = 20.0
	picMaxLines  = 6
	picLabelStep = 14.0
)

// beliefPicture draws how suspicion moved: one line a suspect, the heaviest six over the whole job. Lines differ by
// dash as well as by shade, so the picture reads without colour.
func beliefPicture(w *words.Words, entries []Entry) markup {
	type track struct {
		name string
		p    []float64
		peak float64
	}
	var tracks []*track
	byPart := map[string]*track{}
	n := 0
	for _, e := range entries {
		if len(e.View.Suspects) == 0 {
			continue
		}
		for _, s := range e.View.Suspects {
			t := byPart[s.Part]
			if t == nil {
				t = &track{name: s.Name, p: make([]float64, n)}
				byPart[s.Part] = t
				tracks = append(tracks, t)
			}
			for len(t.p) < n {
				t.p = append(t.p, 0)
			}
			t.p = append(t.p, s.P)
			t.peak = max(t.peak, s.P)
		}
		n++
	}
	if n < 2 {
		return ""
	}
	sort.SliceStable(tracks, func(i, k int) bool { return tracks[i].peak > tracks[k].peak })
	tracks = tracks[:min(len(tracks), picMaxLines)]
	x := func(i int) float64 { return picLeft + (picW-picLeft-picRight)*float64(i)/float64(n-1) }
	y := func(p float64) float64 { return picTop + (picH-picTop-picBottom)*(1-p) }
	var b strings.Builder
	fmt.Fprintf(&b, `<svg class="belief" viewBox="0 0 %g %g" role="img" aria-label="%s">`, picW, picH, escape(w.Term("record.belief-picture")))
	for _, p := range []float64{0, 0.5, 1} {
		fmt.Fprintf(&b, `<path class="grid" d="M%g %.1fH%g"/><text x="%g" y="%.1f" text-anchor="end">%g</text>`, picLeft, y(p), picW-picRight, picLeft-4, y(p)+4, p*10)
	}
	type label struct {
		y    float64
		i    int
		name string
	}
	var labels []label
	for i, t := range tracks {
		for len(t.p) < n {
			t.p = append(t.p, 0)
		}
		b.WriteString(`<path class="line l` + fmt.Sprint(i) + `" d="`)
		for k, p := range t.p {
			op := "L"
			if k == 0 {
				op = "M"
			}
			fmt.Fprintf(&b, "%s%.1f %.1f", op, x(k), y(p))
		}
		b.WriteString(`"/>`)
		labels = append(labels, label{y(t.p[n-1]), i, t.name})
	}
	sort.SliceStable(labels, func(i, k int) bool { return labels[i].y < labels[k].y })
	// Labels are pushed apart upward from the bottom so that none lies on another.
	limit := picH - picBottom
	for i := len(labels) - 1; i >= 0; i-- {
		labels[i].y = min(labels[i].y, limit)
		limit = labels[i].y - picLabelStep
	}
	for _, l := range labels {
		fmt.Fprintf(&b, `<text class="l%d" x="%g" y="%.1f">%s</text>`, l.i, picW-picRight+6, l.y+4, escape(l.name))
	}
	b.WriteString(`</svg>`)
	return markup(b.String())
}
