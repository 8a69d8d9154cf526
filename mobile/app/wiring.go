package app

import (
	"bytes"
	"errors"
	"fmt"
	"image"
	"image/jpeg"
	"slices"
	"strings"

	"readback/core/camera"
	"readback/core/protocol"
	"readback/core/words"
	"readback/mobile/codes"
)

// Judgement, no source: at these sizes a terminal and a code's bars are still several pixels wide.
const (
	compareSide = 1300 // longest side at which two pictures are compared, pixels
	plateSide   = 2600 // at which codes are looked for; the reader reduces further by itself
	maxMarks    = 24
)

// errMarks are marks that cannot be used.
var errMarks = errors.New("marks")

// mark notes the terminals that the person touched in the picture before the work.
// photo is its name, empty for the newest.
func (h *Hub) mark(photo string, marks []protocol.Mark) error {
	if len(marks) == 0 || len(marks) > maxMarks {
		return bad(fmt.Errorf("%w: %d, want 1 to %d", errMarks, len(marks), maxMarks))
	}
	seen := map[string]bool{}
	for i := range marks {
		m := &marks[i]
		m.Name = strings.TrimSpace(m.Name)
		if !(m.X >= 0 && m.X <= 1 && m.Y >= 0 && m.Y <= 1) || m.Name == "" || len(m.Name) > 60 || seen[m.Name] {
			return bad(fmt.Errorf("%w: %q at %g, %g: want a name of its own and a place in the picture", errMarks, m.Name, m.X, m.Y))
		}
		seen[m.Name] = true
	}
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil {
		return errNoJob
	}
	p, err := h.store.photoBefore(h.job.id)
	if err != nil {
		return err
	}
	if p == nil {
		return bad(fmt.Errorf("%w: there is no picture from before the work", errMarks))
	}
	if photo != "" && photo != p.Name {
		return httpError{409, fmt.Errorf("%w: there is a newer picture than %q", errMarks, photo)}
	}
	p.Marks = marks
	return h.stepLocked(protocol.Event{Type: protocol.EvPhoto, Photo: p})
}

// photoBefore is a job's newest picture from before the work with its marks, nil when there is none.
func (s *store) photoBefore(id string) (*protocol.Photo, error) {
	read, err := s.load(id)
	if err != nil {
		return nil, fmt.Errorf("reading the journal: %w", err)
	}
	for _, ev := range slices.Backward(read.Events) {
		if ev.Photo != nil && ev.Photo.ID == "before" {
			return ev.Photo, nil
		}
	}
	return nil, nil
}

// before names the newest picture from before the work with its marks; it is empty when there is none yet.
func (h *Hub) before() (any, error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil {
		return nil, errNoJob
	}
	p, err := h.store.photoBefore(h.job.id)
	if err != nil {
		return nil, err
	}
	var out struct {
		Name  string          `json:"name"`
		Marks []protocol.Mark `json:"marks,omitempty"`
	}
	if p != nil {
		out.Name, out.Marks = p.Name, p.Marks
	}
	return out, nil
}

// looked gives the job what a picture of the open step shows. Finding it took a while without the lock: when the job has moved on
// meanwhile it counts for nothing.
func (h *Hub) looked(id string, s *protocol.Seen) error {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil || h.job.id != id {
		return errNoJob
	}
	if v := h.job.machine.View(); v == nil || v.Step.ID != s.Step {
		return nil
	}
	return h.stepLocked(protocol.Event{Type: protocol.EvSeen, Seen: s})
}

// seeking is the finding that the open step wants from a picture, nil when it wants none of that kind.
func (h *Hub) seeking(eye string) (id string, s *protocol.Seen, err error) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil {
		return "", nil, errNoJob
	}
	v := h.job.machine.View()
	if v == nil || v.Step.Eye != eye {
		return h.job.id, nil, nil
	}
	return h.job.id, &protocol.Seen{Step: v.Step.ID, Kind: eye}, nil
}

// compare holds the picture after the work against the one before, and tells the job what it finds.
func (h *Hub) compare(name string, after []byte) error {
	id, s, err := h.seeking(protocol.EyeAfter)
	if err != nil || s == nil {
		return err
	}
	h.mu.Lock() // while a line is being added the journal's end is not whole
	before, err := h.store.photoBefore(id)
	h.mu.Unlock()
	if err != nil {
		return err
	}
	if s.Wires, s.Reason = h.differences(id, before, after); s.Reason == "" {
		s.Photo = name
	}
	return h.looked(id, s)
}

// differences compares the terminals marked before. why says, fit to be spoken, that it cannot be done.
func (h *Hub) differences(id string, p *protocol.Photo, after []byte) (wires []protocol.SeenWire, why string) {
	switch {
	case p == nil:
		return nil, h.words.Term("reason.no-before")
	case len(p.Marks) == 0:
		return nil, h.words.Term("reason.no-marks")
	}
	data, err := h.store.file(id, p.Name)
	if err != nil {
		return nil, h.words.Term("reason.before-gone")
	}
	if p.SHA256 != sum(data) {
		return nil, h.words.Term("reason.before-changed")
	}
	first, errA := planeOf(data, compareSide)
	second, errB := planeOf(after, compareSide)
	if errA != nil || errB != nil {
		return nil, h.words.Term("reason.unreadable")
	}
	var at [][2]float64
	for _, m := range p.Marks {
		at = append(at, [2]float64{m.X * float64(first.W), m.Y * float64(first.H)})
	}
	var c camera.Comparer
	found, _, err := c.Compare(first, second, at)
	if err != nil {
		return nil, h.words.Term("reason.no-match")
	}
	for i, f := range found {
		wires = append(wires, protocol.SeenWire{Mark: p.Marks[i], AX: f.AX / float64(second.W), AY: f.AY / float64(second.H),
			Change: changes[f.Change], Before: colour(h.words, f.Before), After: colour(h.words, f.After)})
	}
	return wires, ""
}

// changes are the session's words for what was found.
var changes = map[camera.Change]string{camera.Same: "same", camera.Recolour: "another", camera.Gone: "gone", camera.Added: "added",
	camera.Differs: "differs", camera.Hidden: "hidden"}

// colour says the likeliest colour, and the next when it is near.
func colour(w *words.Words, list []camera.Insulation) string {
	var out []string
	for i, c := range list[:min(2, len(list))] {
		if i == 0 || c.P > 0.25 {
			out = append(out, w.Name("colour", strings.ToLower(c.Code))) // the letters of IEC 60757
		}
	}
	return strings.Join(out, " "+w.Lines["or"].Full+" ")
}

// planeOf decodes a JPEG picture, averaged so that its longest side is at most so many pixels, and turns it upright.
func planeOf(data []byte, side int) (*camera.Plane, error) {
	c, err := jpeg.DecodeConfig(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	if c.Width*c.Height > 64<<20 {
		return nil, fmt.Errorf("ui: a picture of %d by %d", c.Width, c.Height)
	}
	img, err := jpeg.Decode(bytes.NewReader(data))
	if err != nil {
		return nil, err
	}
	f := 1
	for max(c.Width, c.Height)/f > side {
		f++
	}
	w, h := max(1, c.Width/f), max(1, c.Height/f)
	p := &camera.Plane{W: w, H: h, Stride: w, Y: make([]byte, w*h)}
	var src *image.YCbCr
	switch img := img.(type) {
	case *image.YCbCr:
		src = img
		p.Cb, p.Cr, p.CStride, p.Sub = make([]byte, w*h), make([]byte, w*h), w, 1
	case *image.Gray:
		src = &image.YCbCr{Y: img.Pix, YStride: img.Stride, Rect: img.Rect}
	default:
		return nil, fmt.Errorf("ui: a picture of type %T", img)
	}
	bw, bh := min(f, c.Width), min(f, c.Height)
	n := bw * bh
	for y := range h {
		for x := range w {
			l, cb, cr := n/2, n/2, n/2
			for j := range bh {
				for i := range bw {
					l += int(src.Y[src.YOffset(x*f+i, y*f+j)])
					if p.Sub != 0 {
						o := src.COffset(x*f+i, y*f+j)
						cb += int(src.Cb[o])
						cr += int(src.Cr[o])
					}
				}
			}
			p.Y[y*w+x] = byte(l / n)
			if p.Sub != 0 {
				p.Cb[y*w+x], p.Cr[y*w+x] = byte(cb/n), byte(cr/n)
			}
		}
	}
	return p.Upright(orientation(data)), nil
}

// plate reads the codes in a picture of the rating plate and proposes one for the line of the plate that is asked for. The
// picture itself is not kept.
func (h *Hub) plate(data []byte) error {
	id, s, err := h.seeking(protocol.EyePlate)
	if err != nil || s == nil {
		return err
	}
	p, err := planeOf(data, plateSide)
	if err != nil {
		return bad(fmt.Errorf("plate: %w", err))
	}
	found, err := codes.Read(p)
	if err != nil {
		return bad(fmt.Errorf("plate: %w", err))
	}
	for _, t := range plateTexts(found, s.Step) {
		if s.Text == "" {
			s.Text, s.P, s.Frames = t, 0.99, 1 // such codes carry check sums, or were long enough not to be chance
		} else if len(s.Rivals) < 3 {
			s.Rivals = append(s.Rivals, t)
		}
	}
	if s.Text == "" {
		s.Reason = h.words.Term("reason.no-code")
	}
	return h.looked(id, s)
}

// plateTexts are what the codes may say for a line of the plate, likeliest first. Codes of ISO/IEC 15434 carry several lines, each
// with its data identifier (ANSI MH10.8.2): 1P is the maker's part or model number, S the serial number.
func plateTexts(found []codes.Code, step string) []string {
	var marked, plain []string
	serial := strings.Contains(step, "serial")
	for _, c := range found {
		t := strings.TrimPrefix(c.Text, "[)>\x1e06\x1d")
		parts := strings.FieldsFunc(t, func(r rune) bool { return r == '\x1d' || r == '\x1e' || r == '\x04' })
		for _, x := range parts {
			x = strings.TrimSpace(x)
			switch {
			case len(x) > 40 || strings.ContainsFunc(x, func(r rune) bool { return r < ' ' || r > '~' }):
			case len(parts) > 1 && strings.HasPrefix(x, "1P"):
				if !serial {
					marked = append(marked, x[2:])
				}
			case len(parts) > 1 && strings.HasPrefix(x, "S"):
				if serial {
					marked = append(marked, x[1:])
				}
			case len(parts) == 1 && len(x) >= 4 && !strings.Contains(x, "://"):
				plain = append(plain, x)
			}
		}
	}
	return append(marked, plain...)
}
