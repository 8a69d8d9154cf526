package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"sync"
	"time"

	"readback/core/protocol"
	"readback/mobile/app"
)

// talk is the line protocol: one JSON event a line on the input, JSON effects on the output, one a line, and after the effects of each
// event the line {"type":"taken","id":"SEQ"}, or {"type":"refused","text":"why"} when it was not taken; {"type":"trouble","text":"…"} tells
// what else went wrong. The first line out is the catalogue: every check with its quantity, places and hazard. An event without "at" gets
// the clock's time; with it the whole talk is repeatable. A "said" without meanings has its text parsed as if it had been heard.
func talk(e env, args []string) error {
	f := flags(e, "talk")
	name := f.String("journal", "", "`file` to keep the events in, which must not exist yet; empty: none")
	appliance := f.String("appliance", "", "equipment file `id`; empty: the first")
	lang := f.String("lang", "en", "`language` of what is said and shown")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if err := none(e, f); err != nil {
		return err
	}
	if *name != "" {
		if _, err := os.Stat(*name); err == nil {
			return fmt.Errorf("%s is there already: a journal is never written over. Give another name", *name)
		}
		if st, err := os.Stat(filepath.Dir(*name)); err != nil || !st.IsDir() {
			return fmt.Errorf("there is no folder %s for the journal: make it first", filepath.Dir(*name))
		}
	}
	catalogue, err := app.Catalogue(*lang, *appliance)
	if err != nil {
		return err
	}
	t := &talker{enc: json.NewEncoder(e.out), name: *name, begin: protocol.Begin{Job: "talk", Appliance: *appliance, Version: version, Lang: *lang, Voice: true}}
	if t.begin.Data, err = app.DataHash(); err != nil {
		return err
	}
	t.write(catalogue)
	defer func() {
		if t.job != nil {
			t.job.Close()
		}
	}()
	in := bufio.NewReaderSize(e.in, 64<<10)
	for n := 1; t.err == nil; n++ {
		line, err := readLine(in)
		if len(line) == 0 && err == nil {
			continue
		}
		if len(line) > 0 {
			if why := t.line(line); why != nil {
				t.refuse(n, why)
			}
		}
		if errors.Is(err, io.EOF) {
			break
		}
		if errors.Is(err, errLong) {
			t.refuse(n, err)
		} else if err != nil {
			return err
		}
	}
	return t.err
}

// maxLine bounds a line of the protocol, bytes.
const maxLine = 1 << 20

var errLong = fmt.Errorf("a line of more than %d bytes", maxLine)

// readLine reads a line without its end. One that is too long is skipped, whole.
func readLine(r *bufio.Reader) ([]byte, error) {
	var out []byte
	long := false
	for {
		part, err := r.ReadSlice('\n')
		if long = long || len(out)+len(part) > maxLine; long {
			out = nil
		} else {
			out = append(out, part...)
		}
		if errors.Is(err, bufio.ErrBufferFull) {
			continue
		}
		if n := len(out); n > 0 && out[n-1] == '\n' {
			out = out[:n-1]
		}
		if err == nil && long {
			err = errLong
		}
		return out, err
	}
}

type talker struct {
	name  string
	begin protocol.Begin
	job   *app.Recorded

	mu  sync.Mutex
	enc *json.Encoder
	err error // nobody reads any more
}

func (t *talker) write(v any) {
	t.mu.Lock()
	defer t.mu.Unlock()
	if err := t.enc.Encode(v); err != nil && t.err == nil {
		t.err = err
	}
}

func (t *talker) refuse(n int, why error) {
	t.write(protocol.Effect{Type: "refused", Text: fmt.Sprintf("line %d: %v", n, why)})
}

func (t *talker) line(data []byte) error {
	var ev protocol.Event
	if err := protocol.Strict(data, &ev); err != nil {
		return err
	}
	if t.job == nil && ev.Type != protocol.EvBegin {
		if err := t.event(protocol.Event{Type: protocol.EvBegin, At: ev.At, Begin: &t.begin}); err != nil {
			return err
		}
	}
	return t.event(ev)
}

// patience is how long an emergency waits for the machine before the last words are sent.
const patience = 150 * time.Millisecond

func (t *talker) event(ev protocol.Event) error {
	if ev.At == 0 {
		ev.At = time.Now().UnixMilli()
	}
	if t.job == nil {
		if ev.Begin == nil {
			ev.Begin = &t.begin
		}
		var err error
		dir, base := ".", ""
		if t.name != "" {
			dir, base = filepath.Split(t.name)
		}
		if t.job, err = app.NewRecorded(app.NewMachine, app.Folder(dir), base, *ev.Begin, func(text string) { t.write(protocol.Effect{Type: "trouble", Text: text}) }); err != nil {
			return err
		}
	}
	if ev.Said != nil && len(ev.Said.Meanings) == 0 && ev.Said.Text != "" {
		u := app.Parse(t.begin.Lang, ev.Said.Text, t.job.View())
		u.Source = ev.Said.Source
		ev.Said = &u
	}
	send := func(effects []protocol.Effect) {
		for _, x := range effects {
			t.write(x)
		}
	}
	if class := ev.Alarm(); class != "" {
		late := time.AfterFunc(patience, func() { send(app.LastEffects(t.begin.Lang, class)) })
		defer late.Stop()
	}
	if err := t.job.Step(ev, send); err != nil {
		return err
	}
	t.write(protocol.Effect{Type: "taken", ID: fmt.Sprint(t.job.Seq())})
	return nil
}
