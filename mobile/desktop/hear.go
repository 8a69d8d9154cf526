package main

import (
	"encoding/binary"
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"strings"

	"readback/core/unit"
	"readback/core/utterance"
	"readback/mobile/app"
	"readback/speech/audio"
	"readback/speech/grammar"
	"readback/speech/model"
)

// Heard is one line of the command hear.
type Heard struct {
	File     string              `json:"file"`
	At       float64             `json:"at"`  // s from the start of the file
	End      float64             `json:"end"` // s
	Text     string              `json:"text"`
	Rivals   []string            `json:"rivals,omitempty"`
	Meanings []utterance.Meaning `json:"meanings,omitempty"`
	Decision string              `json:"decision"`       // an action of heard.Decide for a reading; accept, confirm, emergency or again for the rest
	Take     string              `json:"take,omitempty"` // the reading in words, as it would be read back
	Why      string              `json:"why,omitempty"`
	Fault    string              `json:"fault,omitempty"`
	SNR      float64             `json:"snr,omitempty"`
	Margin   float64             `json:"margin,omitempty"`
	Sure     float64             `json:"sure,omitempty"`
}

// hear prints one JSON line per utterance of each file: any usual WAV. A file that cannot be read is an error that says where; the
// other files are heard all the same.
func hear(e env, args []string) error {
	f := flags(e, "hear")
	units := f.String("units", "", "units that the check asks for, the likely one first, with commas: V,mV; empty: any")
	step := f.String("ask", "", "step of a job that is asked, with all that it can be answered with: a check's id of the equipment file, story, age, callout, plate.FIELD")
	appliance := f.String("appliance", "", "equipment file of the step; empty: the first")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if f.NArg() == 0 {
		fmt.Fprintln(e.err, "readback hear: give WAV files")
		f.Usage()
		return errUsage
	}
	var slot utterance.Slot
	var asked app.Asked
	if *step != "" {
		var err error
		if asked, err = app.Ask(*appliance, *step); err != nil {
			return fmt.Errorf("hear: %w", err)
		}
		slot = asked.Slot
	}
	for id := range strings.FieldsFuncSeq(*units, func(r rune) bool { return r == ',' }) {
		if _, ok := unit.Lookup(id); !ok {
			return fmt.Errorf("hear: no unit %q", id)
		}
		slot.Units = append(slot.Units, id)
	}
	enc := json.NewEncoder(e.out)
	name, base := "", int64(0) // the file being heard, and where it began in the ear's time, ms
	var werr error
	out := func(u utterance.Utterance) {
		if u.Partial {
			return
		}
		h := Heard{File: name, At: float64(max(u.Start-base, 0)) / 1000, End: float64(u.End-base) / 1000, Text: u.Text, Rivals: u.Rivals, Meanings: u.Meanings, Fault: u.Fault, SNR: u.SNR, Margin: u.Margin, Sure: u.Sure}
		h.decide(&u, slot)
		werr = errors.Join(werr, enc.Encode(h))
	}
	ear, err := app.Recogniser(model.Locate).Open(app.Listener{Utterance: out, Partial: func(string) {}, Level: func(float64, float64) {}})
	if err != nil {
		return err
	}
	defer ear.Close()
	if *step != "" {
		ear.Class(asked.Class)
		ear.Expect(asked.Expect)
	} else if slot.Units != nil {
		ear.Expect(grammar.Expect{Units: slot.Units})
	}
	var errs []error
	for _, name = range f.Args() {
		end, err := hearFile(ear, name, base)
		if err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", name, err))
		}
		base = end
	}
	return errors.Join(append(errs, werr)...)
}

// hearFile feeds a file as a microphone would, and two and a half seconds of silence after it, so that the last saying ends. It tells
// where the next file begins, ms.
func hearFile(ear app.Ear, name string, base int64) (end int64, err error) {
	file, err := os.Open(name)
	if err != nil {
		return base, err
	}
	defer file.Close()
	samples, err := audio.ReadWAV(file)
	if err != nil {
		return base, err
	}
	const block = 1600 // 100 ms
	samples = append(samples, make([]int16, 16000*5/2)...)
	pcm := make([]byte, 2*block)
	for i := 0; i < len(samples); i += block {
		n := min(block, len(samples)-i)
		for k, x := range samples[i : i+n] {
			binary.LittleEndian.PutUint16(pcm[2*k:], uint16(x))
		}
		base += int64(n) * 1000 / 16000
		if err := ear.Feed(pcm[:2*n], base); err != nil {
			return base, err
		}
	}
	return base, nil
}

// decide fills in what would be done about the saying when any answer fits; the session also weighs what the appliance can show.
func (h *Heard) decide(u *utterance.Utterance, slot utterance.Slot) {
	best := u.Best()
	switch {
	case best == nil:
		h.Decision = string(utterance.Again)
	case best.Kind == utterance.Reading:
		d := utterance.Decide(u, slot)
		h.Decision, h.Why = string(d.Action), d.Why
		if d.Take != nil {
			h.Take = utterance.Say(*d.Take, d.Digits)
		}
	case best.Doubt:
		h.Decision = string(utterance.Confirm)
	case best.Kind == utterance.Emergency:
		h.Decision = "emergency"
	default:
		h.Decision = string(utterance.Accept)
	}
}
