package journal

import (
	"bytes"
	"errors"
	"fmt"
	"path"
	"strings"

	"readback/core/protocol"
)

// Reading is what a journal holds.
type Reading struct {
	Events []protocol.Event // all before the first damage
	Format int
	Mended []int   // lines in which one wrong bit was found by the checksum and put right
	Damage *Damage // nil: the journal is whole
	good   []byte  // the lines of Events as they should stand
	sum    string
}

// Damage tells where a journal stops being readable and what is lost with it.
type Damage struct {
	Line  int              // the first line that cannot be read, 1 for the first
	Lines int              // lines from there to the end
	Torn  bool             // only the last line, cut short: it may never have been acknowledged
	Later []protocol.Event // events behind the damage that are whole in themselves; they count for nothing
	Cause error
}

func (e *Damage) Error() string {
	return fmt.Sprintf("journal line %d: %v; the %d lines before it are whole", e.Line, e.Cause, e.Line-1)
}

func (e *Damage) Unwrap() error { return e.Cause }

var (
	errSum   = errors.New("the checksum does not fit")
	errShort = errors.New("cut short")
	errEmpty = errors.New("the journal is empty")
)

// Read reads a journal. It never fails: what is wrong stands in Damage.
func Read(data []byte) *Reading {
	r := &Reading{sum: seed}
	for line := 1; len(data) > 0 || line == 1; line++ {
		raw, rest, whole := bytes.Cut(data, []byte("\n"))
		ev, as, err := r.line(line, raw, whole)
		if err != nil {
			r.damaged(line, data, err)
			break
		}
		if as != nil {
			raw = as
			r.Mended = append(r.Mended, line)
		}
		r.Events = append(r.Events, ev)
		r.good = append(append(r.good, raw...), '\n')
		data = rest
	}
	if r.Format == 0 {
		r.Format = Format
	}
	return r
}

// line reads one line; as is what it should be where a single wrong bit was found.
func (r *Reading) line(n int, raw []byte, whole bool) (ev protocol.Event, as []byte, err error) {
	switch {
	case len(raw) == 0 && !whole:
		return ev, nil, errEmpty
	case len(raw) > maxLine:
		return ev, nil, fmt.Errorf("%d bytes are more than %d", len(raw), maxLine)
	case !whole:
		return ev, nil, errShort
	}
	body, sum, sealed := unseal(raw)
	if n == 1 {
		r.Format = 1
		if sealed {
			r.Format = Format
		}
	}
	if r.Format == Format {
		if !sealed || link(r.sum, body) != sum {
			if as = oneBit(r.sum, raw); as == nil {
				return ev, nil, errSum
			}
			body, sum, _ = unseal(as)
		}
		r.sum = sum
	} else {
		if sealed {
			return ev, nil, errors.New("a checksum in a journal without them")
		}
		body = raw
	}
	ev, err = event(n, body)
	if err != nil && n == 1 && r.Format == 1 {
		if as = oneBit(seed, raw); as != nil { // the wrong bit hid that there are checksums
			r.Format = Format
			body, r.sum, _ = unseal(as)
			ev, err = event(n, body)
		}
	}
	return ev, as, err
}

// event reads the JSON of one line.
func event(n int, body []byte) (protocol.Event, error) {
	ev, err := protocol.Decode(body)
	switch {
	case err != nil:
		return ev, fmt.Errorf("not an event: %w", err)
	case ev.Seq != int64(n):
		return ev, fmt.Errorf("event number %d, expected %d", ev.Seq, n)
	case n == 1 && ev.Type != protocol.EvBegin:
		return ev, errors.New("the job has not begun")
	case n > 1 && ev.Type == protocol.EvBegin:
		return ev, errors.New("the job has begun already")
	}
	return ev, nil
}

// unseal takes the checksum off a line.
func unseal(raw []byte) (body []byte, sum string, ok bool) {
	at := len(raw) - len(mark) - digits - len(tail)
	if at < 1 || string(raw[at:at+len(mark)]) != mark || string(raw[len(raw)-len(tail):]) != tail {
		return nil, "", false
	}
	sum = string(raw[at+len(mark) : len(raw)-len(tail)])
	if strings.Trim(sum, "0123456789abcdef") != "" {
		return nil, "", false
	}
	return append(raw[:at:at], '}'), sum, true
}

// maxMend bounds the lines in which a wrong bit is looked for, bytes: longer ones take too long.
const maxMend = 4096

// oneBit finds the one bit that is wrong in a line, nil when it is not one. With 64 bits of checksum and up to 2^15 trials a wrong find
// has odds of 1 in 2^49.
func oneBit(before string, raw []byte) []byte {
	if len(raw) > maxMend {
		return nil
	}
	from := 0
	if _, _, ok := unseal(raw); !ok { // only what looks like a checksum's end can be the wrong bit
		from = max(0, len(raw)-len(mark)-digits-len(tail))
	}
	try := bytes.Clone(raw)
	for i := from; i < len(try); i++ {
		for bit := range 8 {
			try[i] ^= 1 << bit
			if try[i] != '\n' {
				if body, sum, ok := unseal(try); ok && link(before, body) == sum {
					return try
				}
			}
			try[i] ^= 1 << bit
		}
	}
	return nil
}

// damaged notes where reading ends and what behind it is whole in itself.
func (r *Reading) damaged(line int, data []byte, cause error) {
	d := &Damage{Line: line, Cause: cause}
	before := ""
	for n := line; len(data) > 0; n++ {
		raw, rest, whole := bytes.Cut(data, []byte("\n"))
		d.Lines++
		body, sum, sealed := unseal(raw)
		if whole && sealed && (before == "" && n > line || link(before, body) == sum) {
			if ev, err := protocol.Decode(body); err == nil && ev.Seq >= int64(line) {
				d.Later = append(d.Later, ev)
			}
		}
		if before = ""; sealed {
			before = sum
		}
		data = rest
	}
	d.Torn = d.Lines <= 1 && errors.Is(cause, errShort)
	r.Damage = d
}

// Lost is what the damage means for the job.
func (r *Reading) Lost() *protocol.Lost {
	d := r.Damage
	if d == nil {
		return nil
	}
	l := &protocol.Lost{First: int64(d.Line), Last: int64(d.Line + max(d.Lines, 1) - 1), Why: d.Cause.Error()}
	if n := len(r.Events); n > 0 {
		l.From = r.Events[n-1].At
	}
	if n := len(d.Later); n > 0 {
		l.To, l.Last = d.Later[n-1].At, max(l.Last, d.Later[n-1].Seq)
	}
	return l
}

// Repair makes a journal that can be continued: it keeps what was there under another name, in the same folder, and puts the good part in
// its place in the present format. kept is that name, empty when nothing had to be done. A crash at any moment leaves the
// old journal or the new one.
func Repair(d Disk, name string, r *Reading) (kept string, err error) {
	if r.Damage == nil && r.Format == Format && len(r.Mended) == 0 {
		return "", nil
	}
	data, err := d.ReadFile(name)
	if err != nil {
		return "", fmt.Errorf("journal: repairing %s: %w", name, err)
	}
	what := "damaged"
	if r.Damage == nil && r.Format != Format {
		what = fmt.Sprintf("format%d", r.Format)
	}
	kept = fmt.Sprintf("%s-%s-%d%s", strings.TrimSuffix(path.Base(name), path.Ext(name)), what, len(data), path.Ext(name))
	if err := WriteFile(d, path.Join(path.Dir(name), kept), data); err != nil {
		return "", fmt.Errorf("journal: keeping the old %s: %w", name, err)
	}
	good, sum, err := Lines(r.Events)
	if err != nil {
		return "", err
	}
	if err := WriteFile(d, name, good); err != nil {
		return "", fmt.Errorf("journal: repairing %s: %w", name, err)
	}
	r.good, r.sum, r.Format, r.Damage, r.Mended = good, sum, Format, nil, nil
	return kept, nil
}

// Lines are the lines of a journal with these events, and the last checksum.
func Lines(events []protocol.Event) (data []byte, sum string, err error) {
	sum = seed
	for i := range events {
		var line []byte
		if line, sum, err = seal(sum, &events[i]); err != nil {
			return nil, "", err
		}
		data = append(data, line...)
	}
	return data, sum, nil
}

// Replay hands events to step one after the other. An error says at which it ended.
func Replay(events []protocol.Event, step func(protocol.Event) error) error {
	if len(events) == 0 || events[0].Begin == nil {
		return errors.New("journal: there is no beginning")
	}
	for _, ev := range events {
		if err := step(ev); err != nil {
			return fmt.Errorf("journal: replaying event %d: %w", ev.Seq, err)
		}
	}
	return nil
}
