package drawing

import (
	"encoding/xml"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"readback/core/appliance"
	"readback/core/measure"
	"readback/core/vocab"
)

// Every name of core/vocab has its drawing, every drawing its name, and every kind of part a drawing to fall back on.
func TestSketchesAreWhole(t *testing.T) {
	for _, id := range vocab.PartSketches {
		if sketches[id].svg == "" {
			t.Errorf("no drawing of the part %q", id)
		}
	}
	for id, s := range sketches {
		if !slices.Contains(vocab.PartSketches, id) {
			t.Errorf("core/vocab does not know the drawing %q", id)
		}
		for name, at := range s.at {
			if at.x < 0 || at.x > panelW || at.y < 0 || at.y > panelH || at.side == 0 {
				t.Errorf("%s: terminal %s lies at %+v", id, name, at)
			}
		}
	}
	for _, id := range vocab.PlaceSketches {
		if r, ok := regions[id]; !ok || scenes[r.scene] == "" {
			t.Errorf("no drawing of the place %q", id)
		}
	}
	for _, k := range appliance.Kinds() {
		if sketches[ofKind[k.Name]].svg == "" {
			t.Errorf("no drawing of the kind %q", k.Name)
		}
	}
	for _, f := range measure.Functions {
		if f.ID != measure.Look && meterPicture(f.ID, false) == "" {
			t.Errorf("no drawing of the meter on %s", f.ID)
		}
	}
}

var fontSize = regexp.MustCompile(`font-size="(\d+)"`)

// Drawings are well-formed and their letters large enough also in a strip of three panels.
func TestSketchesAreWellFormed(t *testing.T) {
	all := map[string]string{}
	for id, s := range sketches {
		all["part "+id] = s.svg + leadAt(terminalAt(id, "a", false), true, false) + leadAt(terminalAt(id, "b", true), false, true)
	}
	for id := range regions {
		for _, way := range []string{"", "open", "close"} {
			all["place "+id+" "+way] = placePicture(id, way)
		}
	}
	for _, f := range measure.Functions {
		all["meter "+string(f.ID)] = meterPicture(f.ID, true)
	}
	const smallest = 14 / ((stripW - 12) / 3 / panelW)
	for name, svg := range all {
		svg = shorthand.Replace(svg)
		d := xml.NewDecoder(strings.NewReader("<g>" + svg + "</g>"))
		for {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Errorf("%s: %v", name, err)
				break
			}
		}
		if strings.Contains(svg, "{") {
			t.Errorf("%s: a short word is left", name)
		}
		for _, m := range fontSize.FindAllStringSubmatch(svg, -1) {
			var px float64
			fmt.Sscan(m[1], &px)
			if px < smallest-.6 {
				t.Errorf("%s: letters of %g are below %.1f", name, px, smallest)
			}
		}
	}
	if dir := os.Getenv("GALLERY"); dir != "" { // all of them on one page, to look at
		var names []string
		for n := range all {
			names = append(names, n)
		}
		slices.Sort(names)
		var b strings.Builder
		b.WriteString(`<body style="font:11px sans-serif;--sheet:#fff">`)
		for _, n := range names {
			fmt.Fprintf(&b, `<div style="display:inline-block;border:1px solid #ccc;margin:1px"><svg viewBox="0 0 130 150" width="130" height="150" stroke="currentColor" fill="none" stroke-width="2" font-family="sans-serif">%s</svg><br>%s</div>`, shorthand.Replace(all[n]), n)
		}
		if err := os.WriteFile(filepath.Join(dir, "gallery.html"), []byte(b.String()), 0o644); err != nil {
			t.Fatal(err)
		}
	}
}
