package main

import (
	"bufio"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"time"

	"readback/core/protocol"
	"readback/mobile/app"
)

// talk is the line protocol: one JSON event a line on the input, JSON effects on the output, one a line, and after the effects of each
// event the line {"type":"taken","id":"SEQ"}, or {"type":"refused","text":"why"} when it was not taken. The first line out
// is the catalogue: every check with its quantity, places and hazard. An event without "at" gets the clock's time; with it the
// whole talk is repeatable. A "said" without meanings has its text parsed as if it had been heard.
func talk(e env, args []string) error {
	f := flags(e, "talk")
	journal := f.String("journal", "", "file to keep the events in; empty: none")
	appliance := f.String("appliance", "", "equipment file id; empty: the first")
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	keep := func(protocol.Event) error { return nil }
	if *journal != "" {
		j, err := app.CreateJournal(*journal)
		if err != nil {
			return err
		}
		defer j.Close()
		keep = j.Append
	}
	enc := json.NewEncoder(e.out)
	catalogue, err := app.Catalogue(*appliance)
	if err != nil {
		return err
	}
	if err := enc.Encode(catalogue); err != nil {
		return err
	}
	t := &talker{out: e.out, enc: enc, keep: keep, begin: protocol.Begin{Job: "talk", Appliance: *appliance, Version: version, Lang: "en", Voice: true}}
	sc := bufio.NewScanner(e.in)
	sc.Buffer(nil, 1<<20)
	for n := 1; sc.Scan(); n++ {
		if len(sc.Bytes()) == 0 {
			continue
		}
		if err := t.line(sc.Bytes()); err != nil {
			var w writeError
			if errors.As(err, &w) {
				return err
			}
			if err := enc.Encode(protocol.Effect{Type: "refused", Text: fmt.Sprintf("line %d: %v", n, err)}); err != nil {
				return err
			}
		}
	}
	return sc.Err()
}

type talker struct {
	out     io.Writer
	enc     *json.Encoder
	keep    func(protocol.Event) error
	begin   protocol.Begin
	machine app.Machine
	seq     int64
}

// writeError ends the talk: nobody reads any more, or the journal cannot be kept.
type writeError struct{ error }

func (t *talker) line(data []byte) error {
	var ev protocol.Event
	if err := json.Unmarshal(data, &ev); err != nil {
		return err
	}
	if t.machine == nil && ev.Type != protocol.EvBegin {
		if err := t.event(protocol.Event{Type: protocol.EvBegin, At: ev.At, Begin: &t.begin}); err != nil {
			return err
		}
	}
	return t.event(ev)
}

func (t *talker) event(ev protocol.Event) error {
	if ev.At == 0 {
		ev.At = time.Now().UnixMilli()
	}
	if t.machine == nil {
		if ev.Begin == nil {
			ev.Begin = &t.begin
		}
		m, err := app.NewMachine(*ev.Begin)
		if err != nil {
			return err
		}
		t.machine = m
	}
	if ev.Said != nil && len(ev.Said.Meanings) == 0 && ev.Said.Text != "" {
		u := app.Parse(ev.Said.Text)
		u.Source = ev.Said.Source
		ev.Said = &u
	}
	ev.Seq = t.seq + 1
	effects, err := t.machine.Step(ev)
	if err != nil {
		return err
	}
	if err := t.keep(ev); err != nil {
		return writeError{err}
	}
	t.seq = ev.Seq
	for _, x := range append(effects, protocol.Effect{Type: "taken", ID: fmt.Sprint(ev.Seq)}) {
		if err := t.enc.Encode(x); err != nil {
			return writeError{err}
		}
	}
	return nil
}
