package main

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"

	"readback/core/heard"
	"readback/mobile/desktop/web"
	"readback/mobile/ui"
	"readback/speech/model"
)

// Heard is one line of the command hear.
type Heard struct {
	File     string          `json:"file"`
	At       float64         `json:"at"`  // s from the start of the file
	End      float64         `json:"end"` // s
	Text     string          `json:"text"`
	Rivals   []string        `json:"rivals,omitempty"`
	Meanings []heard.Meaning `json:"meanings,omitempty"`
	Decision string          `json:"decision"` // accept, ask, refuse, emergency
	Fault    string          `json:"fault,omitempty"`
	SNR      float64         `json:"snr,omitempty"`
	Margin   float64         `json:"margin,omitempty"`
}

// hear prints one JSON line per utterance of each file. Files are 16 bit PCM WAV of 16 kHz; another rate is an error that says so.
func hear(e env, args []string) error {
	f := flags(e, "hear")
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	if f.NArg() == 0 {
		return errors.New("hear: give WAV files")
	}
	enc := json.NewEncoder(e.out)
	name := ""
	var werr error
	out := func(u heard.Utterance) {
		if u.Partial {
			return
		}
		h := Heard{File: name, At: float64(u.Start) / 1000, End: float64(u.End) / 1000, Text: u.Text, Rivals: u.Rivals, Meanings: u.Meanings, Decision: decision(&u), Fault: u.Fault, SNR: u.SNR, Margin: u.Margin}
		werr = errors.Join(werr, enc.Encode(h))
	}
	ear, err := ui.Recogniser(model.Locate).Open(ui.Listener{Utterance: out, Partial: func(string) {}, Level: func(float64, float64) {}})
	if err != nil {
		return err
	}
	defer ear.Close()
	var errs []error
	for _, name = range f.Args() {
		if err := hearFile(ear, name); err != nil {
			errs = append(errs, fmt.Errorf("%s: %w", name, err))
		}
	}
	return errors.Join(append(errs, werr)...)
}

// hearFile feeds a file as a microphone would, and a second and a half of silence after it.
func hearFile(ear ui.Ear, name string) error {
	data, err := os.ReadFile(name)
	if err != nil {
		return err
	}
	rate, channels, pcm, err := web.WAVInfo(data)
	if err != nil {
		return err
	}
	if rate != 16000 || channels != 1 {
		return fmt.Errorf("%d Hz with %d channels, want 16000 Hz with 1", rate, channels)
	}
	const block = 3200
	pcm = append(append([]byte(nil), pcm...), make([]byte, 16000*2*5/2)...)
	for i := 0; i < len(pcm); i += block {
		end := min(i+block, len(pcm))
		if err := ear.Feed(pcm[i:end], int64(end/2)*1000/16000); err != nil {
			return err
		}
	}
	return nil
}

// decision is what would be done about an utterance when any answer fits: the session also weighs what the appliance
// can show.
func decision(u *heard.Utterance) string {
	best := u.Best()
	switch {
	case best == nil:
		return "refuse"
	case best.Kind == heard.Emergency && !best.Doubt:
		return "emergency"
	case best.Doubt, len(best.Units) > 1, best.Kind == heard.Reading && len(u.Meanings) > 1 && u.Margin < 3:
		return "ask"
	}
	return "accept"
}
