package camera_test

import (
	"fmt"
	"image"
	"image/png"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"readback/core/camera"
	"readback/core/lab/render"
)

// TestPeers reads the same pictures with general tools, side by side, in the run that make peers starts.
func TestPeers(t *testing.T) {
	if os.Getenv("PEERS") == "" {
		t.Skip("PEERS is not set: make peers compares with other tools")
	}
	for _, g := range []struct {
		name  string
		grade render.Grade
	}{{"easy", render.Easy}, {"medium", render.Medium}, {"hard", render.Hard}} {
		p := newPeers(t)
		readMeters(t, g.grade, heldOut+30000, 40, p.read)
		t.Logf("%s grade\n%s", g.name, p.table())
	}
}

// peers runs general tools on pictures this package reads, each in a few settings. They get the display cut out and turned dark
// on light for them; this package gets the whole picture.
type peers struct {
	dir   string
	rows  []string
	tools map[string]bool
	right map[string]int
	wrong map[string]int
	n     int
}

const ownRow = "this package, whole picture"

func newPeers(t testing.TB) *peers {
	p := &peers{dir: t.TempDir(), tools: map[string]bool{}, right: map[string]int{}, wrong: map[string]int{}, rows: []string{ownRow}}
	for _, tool := range []string{"ssocr", "tesseract"} {
		if _, err := exec.LookPath(tool); err != nil {
			t.Logf("%s is not installed: it is left out", tool)
			continue
		}
		p.tools[tool] = true
		if tool == "ssocr" {
			p.rows = append(p.rows, "ssocr, Otsu", "ssocr, Otsu, shear")
		} else {
			p.rows = append(p.rows, "tesseract eng")
		}
	}
	return p
}

func (p *peers) score(row, got, want string, answered bool) {
	switch {
	case !answered:
	case got == want:
		p.right[row]++
	default:
		p.wrong[row]++
	}
}

// read scores this package's reading and runs the tools on the same picture.
func (p *peers) read(pic *render.Pic, rd *camera.Reading) {
	p.n++
	own := rd.Text
	if same(rd, pic.Text) {
		own = pic.Text
	}
	p.score(ownRow, own, pic.Text, rd.OK())
	x0, y0, x1, y1 := pic.W, pic.H, 0, 0
	for _, c := range pic.Cells {
		for _, q := range c {
			x0, y0, x1, y1 = min(x0, int(q[0])), min(y0, int(q[1])), max(x1, int(q[0])), max(y1, int(q[1]))
		}
	}
	m := int(pic.Height * 0.15)
	left := m
	if strings.HasPrefix(pic.Text, "-") {
		left = int(pic.Height * 0.55)
	}
	r := image.Rect(x0-left, y0-m, x1+m, y1+m).Intersect(image.Rect(0, 0, pic.W, pic.H))
	crop := image.NewGray(image.Rect(0, 0, r.Dx(), r.Dy()))
	for y := range r.Dy() {
		for x := range r.Dx() {
			v := pic.Pix[(y+r.Min.Y)*pic.W+x+r.Min.X]
			if pic.Light {
				v = 255 - v
			}
			crop.Pix[y*crop.Stride+x] = v
		}
	}
	path := filepath.Join(p.dir, "crop.png")
	f, err := os.Create(path)
	if err != nil {
		return
	}
	err = png.Encode(f, crop)
	f.Close()
	if err != nil {
		return
	}
	run := func(row string, args ...string) {
		out, err := exec.Command(args[0], args[1:]...).Output() // a tool that fails has not answered
		got := strings.NewReplacer(" ", "", "\n", "", "\f", "", "O", "0", "o", "0", "_", "").Replace(string(out))
		p.score(row, got, pic.Text, err == nil && got != "" || got == pic.Text)
	}
	if p.tools["ssocr"] {
		run("ssocr, Otsu", "ssocr", "-d", "-1", "-T", path)
		run("ssocr, Otsu, shear", "ssocr", "-d", "-1", "-T", "shear", fmt.Sprint(crop.Rect.Dy()/12), path)
	}
	if p.tools["tesseract"] {
		run("tesseract eng", "tesseract", path, "-", "--psm", "7", "-c", "tessedit_char_whitelist=0123456789.-L")
	}
}

// best is the share the best tool read right; ok is false when none is installed.
func (p *peers) best() (percent float64, ok bool) {
	best := 0
	for _, row := range p.rows[1:] {
		best = max(best, p.right[row])
	}
	return pct(best, p.n), len(p.rows) > 1
}

func (p *peers) table() string {
	var b strings.Builder
	fmt.Fprintf(&b, "%-28s %8s %8s %10s  of %d\n", "", "right %", "wrong %", "no answer", p.n)
	for _, row := range p.rows {
		r, w := p.right[row], p.wrong[row]
		fmt.Fprintf(&b, "%-28s %8.1f %8.1f %10.1f\n", row, pct(r, p.n), pct(w, p.n), pct(p.n-r-w, p.n))
	}
	return b.String()
}
