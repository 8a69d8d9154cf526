package report_test

import (
	"bytes"
	"image"
	"image/jpeg"
	"strings"
	"testing"

	"readback/core/protocol"
	"readback/core/report"
)

func pictureOf(t *testing.T, w, h int) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := jpeg.Encode(&b, image.NewGray(image.Rect(0, 0, w, h)), nil); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// What the camera saw is in the record, with its picture only when one was kept, and findings in the wiring are drawn on both
// pictures at their places.
func TestSeen(t *testing.T) {
	ev := func(seq int64, e protocol.Event) report.Entry {
		e.Seq = seq
		return report.Entry{Event: e, View: protocol.View{Title: "heater"}}
	}
	j := report.Job{Words: english, Photos: map[string][]byte{"b.jpg": pictureOf(t, 200, 100), "a.jpg": pictureOf(t, 400, 200), "m.jpg": pictureOf(t, 10, 10)}, Entries: []report.Entry{
		ev(1, protocol.Event{Type: protocol.EvSeen, Seen: &protocol.Seen{Kind: protocol.EyeMeter, Text: "24.5", P: 0.98, Frames: 6, Rivals: []string{"24.6"}, Photo: "m.jpg"}}),
		ev(2, protocol.Event{Type: protocol.EvSeen, Seen: &protocol.Seen{Kind: protocol.EyeMeter, Reason: "There is glare."}}),
		ev(3, protocol.Event{Type: protocol.EvPhoto, Photo: &protocol.Photo{ID: "before", Name: "b.jpg"}}),
		ev(4, protocol.Event{Type: protocol.EvPhoto, Photo: &protocol.Photo{ID: "before", Name: "b.jpg", Marks: []protocol.Mark{{X: 0.5, Y: 0.5, Name: "plug"}}}}),
		ev(5, protocol.Event{Type: protocol.EvSeen, Seen: &protocol.Seen{Kind: protocol.EyeAfter, Photo: "a.jpg", Wires: []protocol.SeenWire{
			{Mark: protocol.Mark{X: 0.5, Y: 0.5, Name: "plug <left>"}, AX: 0.25, AY: 0.5, Change: "another", Before: "red", After: "blue"},
			{Mark: protocol.Mark{X: 0.1, Y: 0.1, Name: "W"}, AX: 2, AY: 0.1, Change: "same"}}}}),
	}}
	var b bytes.Buffer
	if err := report.HTML(&b, j); err != nil {
		t.Fatal(err)
	}
	s := b.String()
	for _, want := range []string{"the camera saw 24.5 (98 %, 6 pictures)", "or: 24.6", "could not tell: There is glare.", "1 terminals marked in picture before",
		"compared 2 terminals, 1 to look at: plug &lt;left&gt;: another (red before, blue after)", `x="93.5"`, `x="87.0"`, ">plug &lt;left&gt;</text>", "Before the work", "After the work"} {
		if !strings.Contains(s, want) {
			t.Errorf("the record lacks %q", want)
		}
	}
	if n := strings.Count(s, "data:image/jpeg"); n != 4 { // kept, before, and both drawn on
		t.Errorf("%d pictures, want 4", n)
	}
	if n := strings.Count(s, ">W</text>"); n != 1 {
		t.Errorf("a terminal outside the second picture is drawn %d times, want once in the first", n)
	}
	j.Photos = nil
	b.Reset()
	if err := report.HTML(&b, j); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(b.String(), "data:image") {
		t.Error("a picture that was not kept is in the record")
	}
}
