package hearbench

import (
	"bytes"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"path/filepath"
	"strings"

	"readback/core/unit"
	"readback/speech/audio"
)

// Recorded is where Debian's asterisk-core-sounds-en-g722 puts the words of one speaker (CC BY-SA 3.0), 16 kHz.
const Recorded = "/usr/share/asterisk/sounds/en_US_f_Allison"

// Speaker joins recorded words into numbers.
type Speaker struct{ words map[string][]int16 }

// Person reads the words of a human speaker. Its error says what is missing.
func Person() (*Speaker, error) {
	if _, err := exec.LookPath("ffmpeg"); err != nil {
		return nil, fmt.Errorf("hear: ffmpeg decodes G.722: %w", err)
	}
	files := map[string]string{"hundred": "digits/hundred", "thousand": "digits/thousand", "minus": "digits/minus", "oh": "letters/o", "seconds": "seconds",
		"minutes": "minutes", "point": "letters/exclaimation-point", "o": "letters/o", "l": "letters/l"}
	for i := range int64(20) {
		files[unit.Decimal{Mant: i}.Words()] = fmt.Sprintf("digits/%d", i)
	}
	for i := int64(20); i < 100; i += 10 {
		files[unit.Decimal{Mant: i}.Words()] = fmt.Sprintf("digits/%d", i)
	}
	p := &Speaker{map[string][]int16{}}
	for w, f := range files {
		path := filepath.Join(Recorded, f+".g722")
		if _, err := os.Stat(path); err != nil {
			return nil, fmt.Errorf("hear: Debian package asterisk-core-sounds-en-g722: %w", err)
		}
		cmd := exec.Command("ffmpeg", "-loglevel", "error", "-f", "g722", "-i", path, "-ar", "16000", "-ac", "1", "-f", "wav", "-")
		out, err := cmd.Output()
		if err != nil {
			return nil, fmt.Errorf("hear: %s: %w", path, err)
		}
		pcm, err := audio.ReadWAV(bytes.NewReader(out))
		if err != nil {
			return nil, fmt.Errorf("hear: %s: %w", path, err)
		}
		if w == "point" { // "exclamation point": the second word begins 0.87 s in
			pcm = pcm[min(len(pcm), 87*160):]
		}
		p.words[w] = trimSilence(pcm)
	}
	return p, nil
}

// Say joins words, 30 ms apart. An unknown word is an error.
func (p *Speaker) Say(text string) ([]int16, error) {
	var out []int16
	for _, w := range strings.Fields(strings.ReplaceAll(text, "-", " ")) {
		pcm, ok := p.words[w]
		if !ok {
			return nil, fmt.Errorf("hear: nobody recorded %q", w)
		}
		out = append(append(out, pcm...), make([]int16, 480)...)
	}
	return out, nil
}

// HumanNumbers returns n numbers with the units that were recorded, and "o l".
func HumanNumbers(n int, seed uint64) []Item {
	r := rand.New(rand.NewPCG(seed, 6))
	var out []Item
	for len(out) < n {
		if r.IntN(15) == 0 {
			out = append(out, Item{Say: "o l", State: "over"})
			continue
		}
		d := unit.Decimal{Mant: 1 + r.Int64N([]int64{99, 999, 9999}[r.IntN(3)]), Exp: -r.IntN(3)}
		id, say := "s", "seconds"
		if r.IntN(2) == 0 {
			id, say = "min", "minutes"
		}
		out = append(out, Item{Say: d.Words() + " " + say, Value: unit.Value{Dec: d, Unit: id}})
	}
	return out
}
