package protocol

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"readback/core/measure"
	"readback/core/unit"
	"readback/core/utterance"
	"readback/core/vocab"
)

// Limits of what comes in by any door: page, line protocol, phone, recogniser, journal. Judgment, no source: each is several times what an
// honest door sends.
const (
	MaxEvent  = 256 << 10 // bytes of an event's JSON
	maxText   = 2000      // bytes of one text
	maxID     = 120       // bytes of an id or a name
	maxList   = 64        // meanings, rivals, wires
	maxMarks  = 24        // marks of a picture
	maxDigits = 999_999_999_999_999
	minExp    = -18
	maxExp    = 12
	maxSize   = 1e15            // of any number, in its own unit
	maxTime   = 253_402_300_799 // s: the end of the year 9999
)

// Decode reads one event. Fields that are not known, a second value and whatever Check refuses are errors.
func Decode(data []byte) (Event, error) {
	var ev Event
	if err := Strict(data, &ev); err != nil {
		return Event{}, err
	}
	return ev, ev.Check()
}

// Strict decodes exactly one JSON value and refuses fields it does not know.
func Strict(data []byte, v any) error {
	if len(data) > MaxEvent {
		return fmt.Errorf("%d bytes are more than %d", len(data), MaxEvent)
	}
	d := json.NewDecoder(bytes.NewReader(data))
	d.DisallowUnknownFields()
	if err := d.Decode(v); err != nil {
		switch {
		case errors.Is(err, io.EOF):
			return errors.New("nothing in it")
		case errors.Is(err, io.ErrUnexpectedEOF):
			return errors.New("unexpected end of JSON input")
		}
		return err
	}
	if _, err := d.Token(); !errors.Is(err, io.EOF) {
		return errors.New("more than one value")
	}
	return nil
}

// Check holds an event to what can be true: what its type needs is there, numbers have a size and a unit that exist, lists and texts
// are not endless, and no number is NaN or infinite. Characters that control a terminal or turn the direction of writing are taken out of
// every text. An error says which field and what is wrong with it.
func (ev *Event) Check() error {
	c := &checker{}
	c.time("at", ev.At)
	if ev.Seq < 0 {
		c.bad("seq", "%d is below nought", ev.Seq)
	}
	if ev.Target < 0 {
		c.bad("target", "%d is below nought", ev.Target)
	}
	c.id("spoke", &ev.Spoke)
	c.id("step", &ev.Step)
	need := func(there bool, what string) {
		if !there {
			c.bad(what, "is missing")
		}
	}
	switch ev.Type {
	case EvBegin:
		need(ev.Begin != nil, "begin")
	case EvSaid:
		need(ev.Said != nil, "said")
	case EvSeen:
		need(ev.Seen != nil, "seen")
	case EvPhoto:
		need(ev.Photo != nil, "photo")
	case EvDevice:
		need(ev.Device != nil, "device")
	case EvResume, EvSpoke, EvTick, EvUndo:
	default:
		return fmt.Errorf("no such type %q", Plain(ev.Type, maxID))
	}
	if ev.Begin != nil {
		b := *ev.Begin
		c.ids("begin", &b.Job, &b.Appliance, &b.Data, &b.Version, &b.Lang)
		if b.Meter != nil {
			m := *b.Meter
			c.value("begin.meter", &m.LowestDC)
			c.id("begin.meter.category", &m.Category)
			b.Meter = &m
		}
		ev.Begin = &b
	}
	if ev.Said != nil {
		u := *ev.Said
		c.said(&u)
		ev.Said = &u
	}
	if ev.Seen != nil {
		s := *ev.Seen
		c.seen(&s)
		ev.Seen = &s
	}
	if ev.Photo != nil {
		p := *ev.Photo
		c.ids("photo", &p.ID, &p.SHA256)
		c.file("photo.name", &p.Name)
		c.count("photo.marks", len(p.Marks), maxMarks)
		p.Marks = slices.Clone(p.Marks)
		for i := range p.Marks {
			c.mark("photo.marks", &p.Marks[i])
		}
		ev.Photo = &p
	}
	if ev.Device != nil {
		d := *ev.Device
		c.id("device.kind", &d.Kind)
		c.number("device.level", d.Level)
		c.text("device.text", &d.Text)
		ev.Device = &d
	}
	if ev.Lost != nil {
		l := *ev.Lost
		c.text("lost.why", &l.Why)
		c.file("lost.file", &l.File)
		c.time("lost.from", l.From)
		c.time("lost.to", l.To)
		ev.Lost = &l
	}
	return c.err
}

// Plain is a text as it may be shown and kept: no control characters, nothing that turns the direction of writing, at most so many bytes.
func Plain(s string, most int) string {
	clean := func(r rune) rune {
		switch {
		case r == '\n' || r == '\t' || r == '\r' || r == '\u2028' || r == '\u2029':
			return ' '
		case r == utf8.RuneError || unicode.IsControl(r) || unicode.Is(unicode.Cf, r) || unicode.Is(unicode.Co, r):
			return -1
		}
		return r
	}
	if strings.ContainsFunc(s, func(r rune) bool { return clean(r) != r }) {
		s = strings.Map(clean, s)
	}
	if len(s) > most {
		s = s[:most]
		for len(s) > 0 && !utf8.ValidString(s) {
			s = s[:len(s)-1]
		}
	}
	return s
}

// Alarm is the class of emergency that an event raises or asks about, empty when it is none.
func (ev *Event) Alarm() string {
	if ev.Type != EvSaid || ev.Said == nil {
		return ""
	}
	for i := range ev.Said.Meanings {
		if m := &ev.Said.Meanings[i]; m.Kind == utterance.Emergency {
			return m.ID
		}
	}
	return ""
}

// checker keeps the first thing that is wrong.
type checker struct{ err error }

func (c *checker) bad(field, format string, a ...any) {
	if c.err == nil {
		c.err = fmt.Errorf("%s "+format, append([]any{field}, a...)...)
	}
}

func (c *checker) text(field string, s *string) {
	if len(*s) > 8*maxText {
		c.bad(field, "has %d bytes, more than %d", len(*s), maxText)
	}
	*s = Plain(*s, maxText)
}

func (c *checker) id(field string, s *string) {
	if len(*s) > maxID {
		c.bad(field, "has %d bytes, more than %d", len(*s), maxID)
	}
	*s = Plain(*s, maxID)
}

func (c *checker) ids(field string, list ...*string) {
	for _, s := range list {
		c.id(field, s)
	}
}

// file is a name inside the job's folder.
func (c *checker) file(field string, s *string) {
	c.id(field, s)
	if strings.ContainsAny(*s, `/\:`) || strings.HasPrefix(*s, ".") {
		c.bad(field, "%q is no name of a file in the job's folder", *s)
	}
}

func (c *checker) count(field string, n, most int) {
	if n > most {
		c.bad(field, "has %d, more than %d", n, most)
	}
}

func (c *checker) texts(field string, list []string) []string {
	c.count(field, len(list), maxList)
	list = slices.Clone(list[:min(len(list), maxList)])
	for i := range list {
		c.text(field, &list[i])
	}
	return list
}

func (c *checker) number(field string, x float64) {
	if !(math.Abs(x) <= maxSize) { // NaN too
		c.bad(field, "is %g: no such number", x)
	}
}

func (c *checker) time(field string, ms int64) {
	if ms < 0 || ms > 1000*maxTime {
		c.bad(field, "is %d: want ms since 1970, before the year 10000", ms)
	}
}

func (c *checker) decimal(field string, d unit.Decimal) {
	switch {
	case d.Mant > maxDigits || d.Mant < -maxDigits:
		c.bad(field, "has more than 15 digits")
	case d.Exp < minExp || d.Exp > maxExp:
		c.bad(field, "has the exponent %d: want %d to %d", d.Exp, minExp, maxExp)
	default:
		c.number(field, d.Float())
	}
}

func (c *checker) unit(field, id string) {
	if _, ok := unit.Lookup(id); !ok && id != "" {
		c.bad(field, "has no unit %q", Plain(id, maxID))
	}
}

func (c *checker) value(field string, v *unit.Value) {
	c.decimal(field, v.Dec)
	c.unit(field, v.Unit)
}

var states = []measure.State{measure.Number, measure.Over, measure.Beep, measure.Silent, measure.Blank, measure.Jumping, measure.Dead}

func (c *checker) reading(field string, r *measure.Reading) {
	c.value(field, &r.Value)
	if r.Low != nil {
		c.value(field+".low", r.Low)
	}
	if r.High != nil {
		c.value(field+".high", r.High)
	}
	if !slices.Contains(states, r.State) {
		c.bad(field, "has no display state %q", Plain(string(r.State), maxID))
	}
	if r.AC != "" && r.AC != "ac" && r.AC != "dc" {
		c.bad(field, "is neither ac nor dc but %q", Plain(r.AC, maxID))
	}
}

func (c *checker) said(u *utterance.Utterance) {
	c.text("said.text", &u.Text)
	c.id("said.fault", &u.Fault)
	switch u.Source {
	case "", "voice", "touch", "key", "line":
	case "camera":
		c.bad("said.source", "is the camera: what a camera sees is no saying")
	default:
		c.bad("said.source", "is %q: want voice, touch, key or line", Plain(u.Source, maxID))
	}
	u.Rivals = c.texts("said.rivals", u.Rivals)
	c.number("said.snr", u.SNR)
	c.number("said.level", u.Level)
	c.number("said.margin", u.Margin)
	c.number("said.agree", u.Agree)
	c.number("said.sure", u.Sure)
	c.time("said.start", u.Start)
	c.time("said.end", u.End)
	c.count("said.meanings", len(u.Meanings), maxList)
	u.Meanings = slices.Clone(u.Meanings)
	for i := range u.Meanings {
		m := &u.Meanings[i]
		field := fmt.Sprintf("said.meanings[%d]", i)
		c.id(field+".id", &m.ID)
		c.text(field+".text", &m.Text)
		c.number(field+".cost", m.Cost)
		c.count(field+".units", len(m.Units), maxList)
		for _, id := range m.Units {
			c.unit(field, id)
		}
		switch m.Kind {
		case utterance.Reading:
			if m.Reading == nil {
				c.bad(field, "is a reading without one")
			}
		case utterance.Count:
			if len(m.Text) > 9 {
				c.bad(field, "is a count of %d digits", len(m.Text))
			}
		case utterance.Emergency:
			if _, ok := vocab.AlarmOf(m.ID); !ok && m.ID != "ask" {
				m.ID = "any" // a door that knows another word for it is in earnest all the same
			}
		case utterance.Choice, utterance.Command, utterance.Text, utterance.UnitOnly, utterance.Symptom:
		default:
			c.bad(field, "has no kind %q", Plain(string(m.Kind), maxID))
		}
		if m.Reading != nil {
			r := *m.Reading
			c.reading(field+".reading", &r)
			m.Reading = &r
		}
	}
}

func (c *checker) mark(field string, m *Mark) {
	c.id(field, &m.Name)
	for _, x := range []float64{m.X, m.Y} {
		if !(x >= 0 && x <= 1) {
			c.bad(field, "%q stands at %g, %g: want shares of the picture", m.Name, m.X, m.Y)
		}
	}
}

func (c *checker) seen(s *Seen) {
	c.ids("seen", &s.Step, &s.Kind, &s.ID)
	c.text("seen.text", &s.Text)
	c.text("seen.reason", &s.Reason)
	c.file("seen.photo", &s.Photo)
	s.Rivals = c.texts("seen.rivals", s.Rivals)
	if s.Reading != nil {
		r := *s.Reading
		c.reading("seen.reading", &r)
		s.Reading = &r
	}
	if !(s.P >= 0 && s.P <= 1) {
		c.bad("seen.p", "is %g: want a probability", s.P)
	}
	if s.Frames < 0 || s.From < -1000*maxTime || s.From > 1000*maxTime || s.To < -1000*maxTime || s.To > 1000*maxTime {
		c.bad("seen", "counts %d pictures, %d to %d ms ago", s.Frames, s.From, s.To)
	}
	c.count("seen.wires", len(s.Wires), maxMarks)
	s.Wires = slices.Clone(s.Wires)
	for i := range s.Wires {
		w := &s.Wires[i]
		c.mark("seen.wires", &w.Mark)
		c.ids("seen.wires", &w.Change, &w.Before, &w.After)
		c.number("seen.wires", w.AX)
		c.number("seen.wires", w.AY)
	}
}
