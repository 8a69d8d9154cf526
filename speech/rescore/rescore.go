//go:build unix

// Package rescore says how likely words are, given the sound: the small English Moonshine network (27 million weights in 8 bits) run by
// ONNX Runtime, both under the MIT licence, loaded at run time.
//
// As a recogniser of its own it is poor at readings in noise. As a rescorer of what another recogniser found it is not: it hears the whole
// saying at once and errs in other places.
package rescore

import (
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"

	"readback/speech"
	"readback/speech/model"
	"readback/speech/onnx"
)

// Shape of the network.
const (
	layers = 6
	heads  = 8
	width  = 36 // of one head
	inner  = heads * width
)

// Rescorer is the loaded network. It implements speech.Rescorer and may be shared by goroutines.
type Rescorer struct {
	mu      sync.RWMutex // held for reading while the networks are used
	encoder *onnx.Session
	decoder *onnx.Session
	tokens  *tokens
	rest    *atomic.Bool // nil: it never rests
}

// errModel: the model folder does not hold the networks.
var errModel = errors.New("rescore: unusable model")

// Open loads the runtime and the model folder (encoder_model.ort, decoder_model_merged.ort, tokenizer.bin).
func Open(library, folder string) (*Rescorer, error) {
	raw, err := os.ReadFile(filepath.Join(folder, "tokenizer.bin"))
	if err != nil {
		return nil, fmt.Errorf("%w: %w", errModel, err)
	}
	j := &Rescorer{}
	if j.tokens, err = readTokens(raw); err != nil {
		return nil, fmt.Errorf("%w: %w", errModel, err)
	}
	o, err := onnx.Load(library)
	if err != nil {
		return nil, err
	}
	if j.encoder, err = o.Open(filepath.Join(folder, "encoder_model.ort"), []string{"input_values", "attention_mask"}, []string{"last_hidden_state"}); err != nil {
		return nil, fmt.Errorf("%w: %w", errModel, err)
	}
	in := []string{"encoder_attention_mask", "input_ids", "encoder_hidden_states", "use_cache_branch"}
	out := []string{"logits"}
	for l := range layers {
		for _, part := range []string{"decoder.key", "decoder.value", "encoder.key", "encoder.value"} {
			in = append(in, fmt.Sprintf("past_key_values.%d.%s", l, part))
			out = append(out, fmt.Sprintf("present.%d.%s", l, part))
		}
	}
	if j.decoder, err = o.Open(filepath.Join(folder, "decoder_model_merged.ort"), in, out); err != nil {
		j.encoder.Close()
		return nil, fmt.Errorf("%w: %w", errModel, err)
	}
	return j, nil
}

// From opens the rescorer where its files were found. It is nil where they were not, or where they do not load: hearing goes on without.
func From(files model.Rescorer) speech.Rescorer {
	if files == (model.Rescorer{}) {
		return nil
	}
	j, err := Open(files.Runtime, files.Model)
	if err != nil {
		return nil
	}
	j.rest = files.Rest
	return j
}

// Resting tells whether readings are to be heard without an opinion now. Alarms are looked for all the same.
func (j *Rescorer) Resting() bool { return j.rest != nil && j.rest.Load() }

// Close frees the networks; a second Close does nothing. The runtime itself stays loaded.
func (j *Rescorer) Close() error {
	j.mu.Lock()
	defer j.mu.Unlock()
	if j.encoder != nil {
		j.encoder.Close()
		j.decoder.Close()
		j.encoder = nil
	}
	return nil
}

// together is how many texts are looked at in one go.
const together = 2

// Samples of the shortest sound that is judged (the network's first steps take so much) and of the longest.
const (
	least = speech.Rate / 4
	most  = 9 * speech.Rate
)

// Score returns for each text the logarithm of its probability, given 16 kHz sound. A text with a character that the network does not know
// is -Inf. Sound shorter than a quarter of a second or longer than 9 s (the decoder's mask reaches no further) is an error.
func (j *Rescorer) Score(pcm []int16, texts []string) ([]float64, error) {
	j.mu.RLock()
	defer j.mu.RUnlock()
	if err := j.fit(pcm); err != nil {
		return nil, err
	}
	out := make([]float64, len(texts))
	var rows [][]int64
	var from []int // row to text
	for i, t := range texts {
		ids := j.tokens.spell(t)
		if ids == nil {
			out[i] = math.Inf(-1)
			continue
		}
		rows, from = append(rows, append(ids, end)), append(from, i)
	}
	if len(rows) == 0 {
		return out, nil
	}
	var room scratch
	heard, first, err := j.start(pcm, &room)
	if err != nil {
		return nil, err
	}
	defer j.encoder.Free(heard)
	defer j.decoder.Free(first)
	frames := int(heard[0].Shape[1])
	start := first[0].Data
	startLog := logSum(start)

	words := len(start)
	for len(rows) > 0 { // a few at a time: what is copied for each row takes a third of a megabyte for each second of sound
		part := rows[:min(together, len(rows))]
		rows = rows[len(part):]
		n := 0 // the last token is only foretold
		for _, row := range part {
			n = max(n, len(row)-1)
		}
		ids := make([]int64, len(part)*n)
		for r, row := range part {
			for k := range n {
				ids[r*n+k] = end
				if k < len(row) {
					ids[r*n+k] = row[k]
				}
			}
		}
		rest, err := j.decode(len(part), frames, heard[0].Data, ids, first[1:], &room)
		if err != nil {
			return nil, err
		}
		for r, row := range part {
			sum := float64(start[row[0]]) - startLog
			for k, id := range row[1:] {
				l := rest[0].Data[(r*n+k)*words : (r*n+k+1)*words]
				sum += float64(l[id]) - logSum(l)
			}
			out[from[r]] = sum
		}
		from = from[len(part):]
		j.decoder.Free(rest)
	}
	return out, nil
}

// Words returns what the network itself hears, the likeliest token after the ones before it until it ends, or until there are more than anybody
// says in the time (six and a half a second, as its makers advise against loops: from memory). The same sound is refused as by Score.
func (j *Rescorer) Words(pcm []int16) (string, error) {
	j.mu.RLock()
	defer j.mu.RUnlock()
	if err := j.fit(pcm); err != nil {
		return "", err
	}
	var room scratch
	heard, first, err := j.start(pcm, &room)
	if err != nil {
		return "", err
	}
	defer j.encoder.Free(heard)
	defer j.decoder.Free(first)
	words := len(first[0].Data)
	ids := []int64{likeliest(first[0].Data)}
	for limit := 13 * len(pcm) / (2 * speech.Rate); ids[len(ids)-1] != end && len(ids) <= limit; {
		next, err := j.decode(1, int(heard[0].Shape[1]), heard[0].Data, ids, first[1:], &room)
		if err != nil {
			return "", err
		}
		ids = append(ids, likeliest(next[0].Data[(len(ids)-1)*words:]))
		j.decoder.Free(next)
	}
	if ids[len(ids)-1] == end {
		ids = ids[:len(ids)-1]
	}
	return j.tokens.write(ids), nil
}

func likeliest(logits []float32) int64 {
	best := 0
	for i, v := range logits {
		if v > logits[best] {
			best = i
		}
	}
	return int64(best)
}

// fit tells whether the sound can be judged.
func (j *Rescorer) fit(pcm []int16) error {
	switch {
	case j.encoder == nil:
		return speech.ErrClosed
	case len(pcm) < least || len(pcm) > most:
		return fmt.Errorf("rescore: %d samples, want %d to %d", len(pcm), least, most)
	}
	return nil
}

// start runs the encoder, and the decoder as far as the mark of the beginning. That is the same for all texts: the networks' look at the sound
// is worked out once here, and copied for each.
func (j *Rescorer) start(pcm []int16, room *scratch) (heard, first []onnx.Result, err error) {
	if heard, err = j.hear(pcm); err != nil {
		return nil, nil, err
	}
	if first, err = j.decode(1, int(heard[0].Shape[1]), heard[0].Data, []int64{begin}, nil, room); err != nil {
		j.encoder.Free(heard)
		return nil, nil, err
	}
	return heard, first, nil
}

// hear runs the encoder.
func (j *Rescorer) hear(pcm []int16) ([]onnx.Result, error) {
	x, mask := make([]float32, len(pcm)), make([]int64, len(pcm))
	for i, v := range pcm {
		x[i], mask[i] = float32(v)/32768, 1
	}
	shape := []int64{1, int64(len(pcm))}
	return j.encoder.Run(1, onnx.Tensor{Shape: shape, Floats: x}, onnx.Tensor{Shape: shape, Ints: mask})
}

// decode runs the decoder for a number of rows of tokens. From the beginning (past is nil) it gives what is past then too, afterwards only
// what comes next.
func (j *Rescorer) decode(rows, frames int, heard []float32, ids []int64, past []onnx.Result, s *scratch) ([]onnx.Result, error) {
	mask := make([]int64, rows*frames)
	for i := range mask {
		mask[i] = 1
	}
	in := []onnx.Tensor{
		{Shape: []int64{int64(rows), int64(frames)}, Ints: mask},
		{Shape: []int64{int64(rows), int64(len(ids) / rows)}, Ints: ids},
		{Shape: []int64{int64(rows), int64(frames), inner}, Floats: s.repeat(0, heard, rows)},
		{Shape: []int64{1}, Bools: []bool{past != nil}},
	}
	for i := range 4 * layers {
		if past == nil {
			in = append(in, onnx.Tensor{Shape: []int64{int64(rows), heads, 0, width}})
			continue
		}
		shape := append([]int64(nil), past[i].Shape...)
		shape[0] = int64(rows)
		in = append(in, onnx.Tensor{Shape: shape, Floats: s.repeat(1+i, past[i].Data, rows)})
	}
	n := 1
	if past == nil {
		n = j.decoder.Outputs()
	}
	return j.decoder.Run(n, in...)
}

// scratch is room for what is copied for each row, used again for the next rows.
type scratch [1 + 4*layers][]float32

func (s *scratch) repeat(i int, x []float32, n int) []float32 {
	s[i] = s[i][:0]
	for range n {
		s[i] = append(s[i], x...)
	}
	return s[i]
}

// logSum is the logarithm of the sum of the exponentials, to 0.01: they are taken from the bits of a float32 with a straight line between
// powers of two, which is at most 6 % off and 4 % too much on average, taken out below.
func logSum(x []float32) float64 {
	top := x[0]
	for _, v := range x {
		top = max(top, v)
	}
	const perUnit = 1 << 23 / math.Ln2
	sum := float32(0)
	for _, v := range x {
		if d := v - top; d > -20 {
			sum += math.Float32frombits(uint32(int32(d*perUnit) + 127<<23))
		}
	}
	return float64(top) + math.Log(float64(sum)) - 0.04
}
