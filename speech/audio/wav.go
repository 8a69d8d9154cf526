package audio

import (
	"encoding/binary"
	"errors"
	"fmt"
	"io"
	"math"
)

// ErrWAV is wrapped by every error of ReadWAV about the file's content.
var ErrWAV = errors.New("not a usable WAV file")

const (
	mostBytes   = 512 << 20 // of one file; an hour of stereo at 48 kHz is 691 MB and is no saying
	formatPCM   = 1
	formatFloat = 3
	formatALaw  = 6
	formatMuLaw = 7
	formatExt   = 0xfffe
)

type wavFormat struct {
	tag, channels int
	rate          int
	bits          int
}

// ReadWAV reads a WAV file of any usual kind (8 to 32 bit, float, A-law and µ-law, any number of channels, 4 to 192 kHz) as
// 16 kHz mono. A file that ends early, lies about its size or holds no number gives an error that says where.
func ReadWAV(r io.Reader) ([]int16, error) {
	b, err := io.ReadAll(io.LimitReader(r, mostBytes+1))
	if err != nil {
		return nil, fmt.Errorf("audio: reading sound: %w", err)
	}
	if len(b) > mostBytes {
		return nil, bad("longer than %d bytes", mostBytes)
	}
	f, data, err := find(b, false)
	if err != nil {
		return nil, err
	}
	x, err := f.decode(data)
	if err != nil {
		return nil, bad("%v", err)
	}
	return ToInt16(Resample(x, f.rate, 16000)), nil
}

// PCM16 finds rate, channels and samples of a WAV of 16 bit samples, one or two channels, without copying them. A length of 0 or beyond the end, as from
// a pipe, means all that follows.
func PCM16(wav []byte) (rate, channels int, pcm []byte, err error) {
	f, data, err := find(wav, true)
	if err != nil {
		return 0, 0, nil, err
	}
	if f.tag != formatPCM || f.bits != 16 || f.channels > 2 {
		return 0, 0, nil, bad("it is not of 16 bit samples in one or two channels")
	}
	return f.rate, f.channels, data[:len(data)/2*2], nil
}

func bad(format string, args ...any) error {
	return fmt.Errorf("audio: %w: %s", ErrWAV, fmt.Sprintf(format, args...))
}

// find gives format and sound of a file. Piped tells that the length of the sound may be missing or wrong.
func find(b []byte, piped bool) (f *wavFormat, data []byte, err error) {
	if len(b) < 12 || string(b[:4]) != "RIFF" || string(b[8:12]) != "WAVE" {
		return nil, nil, bad("it does not begin with RIFF and WAVE")
	}
	for at := 12; ; {
		if len(b)-at < 8 {
			return nil, nil, bad("it ends at byte %d, before any sound", len(b))
		}
		id, size := string(b[at:at+4]), int(binary.LittleEndian.Uint32(b[at+4:]))
		body := at + 8
		// A program that writes to a pipe does not know the size and puts a huge one, or 0.
		streamed := id == "data" && (size >= 0x7ff00000 || piped && (size == 0 || size > len(b)-body))
		if streamed {
			size = len(b) - body
		}
		if size > len(b)-body {
			return nil, nil, bad("chunk %q at byte %d wants %d bytes, %d are left: the file is cut off", id, at, size, len(b)-body)
		}
		switch id {
		case "fmt ":
			if f, err = readFormat(b[body : body+size]); err != nil {
				return nil, nil, bad("format at byte %d: %v", body, err)
			}
		case "data":
			if f == nil {
				return nil, nil, bad("sound at byte %d comes before its format", at)
			}
			width := f.channels * f.bits / 8
			if streamed {
				size -= size % width
			}
			if size%width != 0 {
				return nil, nil, bad("%d bytes of sound are not whole samples of %d bytes", size, width)
			}
			return f, b[body : body+size], nil
		}
		at = body + size + size%2
	}
}

func readFormat(b []byte) (*wavFormat, error) {
	if len(b) < 16 {
		return nil, fmt.Errorf("%d bytes, want 16", len(b))
	}
	f := &wavFormat{tag: int(binary.LittleEndian.Uint16(b)), channels: int(binary.LittleEndian.Uint16(b[2:])),
		rate: int(binary.LittleEndian.Uint32(b[4:])), bits: int(binary.LittleEndian.Uint16(b[14:]))}
	if f.tag == formatExt && len(b) >= 26 {
		f.tag = int(binary.LittleEndian.Uint16(b[24:]))
	}
	ok := false
	switch f.tag {
	case formatPCM:
		ok = f.bits == 8 || f.bits == 16 || f.bits == 24 || f.bits == 32
	case formatFloat:
		ok = f.bits == 32 || f.bits == 64
	case formatALaw, formatMuLaw:
		ok = f.bits == 8
	}
	switch {
	case !ok:
		return nil, fmt.Errorf("coding %d with %d bits is not supported", f.tag, f.bits)
	case f.channels < 1 || f.channels > 32:
		return nil, fmt.Errorf("%d channels", f.channels)
	case f.rate < 4000 || f.rate > 192000:
		return nil, fmt.Errorf("sampling rate %d Hz, want 4000 to 192000", f.rate)
	}
	return f, nil
}

// decode returns the mean of the channels at full scale 1.
func (f *wavFormat) decode(b []byte) ([]float64, error) {
	one := f.sample()
	step := f.bits / 8
	out := make([]float64, len(b)/(step*f.channels))
	for i := range out {
		sum := 0.0
		for c := range f.channels {
			v := one(b[(i*f.channels+c)*step:])
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return nil, fmt.Errorf("sample %d is not a number", i)
			}
			sum += v
		}
		out[i] = sum / float64(f.channels)
	}
	return out, nil
}

func (f *wavFormat) sample() func([]byte) float64 {
	switch {
	case f.tag == formatFloat && f.bits == 32:
		return func(b []byte) float64 { return float64(math.Float32frombits(binary.LittleEndian.Uint32(b))) }
	case f.tag == formatFloat:
		return func(b []byte) float64 { return math.Float64frombits(binary.LittleEndian.Uint64(b)) }
	case f.tag == formatMuLaw:
		return func(b []byte) float64 { return muLaw(b[0]) }
	case f.tag == formatALaw:
		return func(b []byte) float64 { return aLaw(b[0]) }
	case f.bits == 8:
		return func(b []byte) float64 { return (float64(b[0]) - 128) / 128 }
	case f.bits == 16:
		return func(b []byte) float64 { return float64(int16(binary.LittleEndian.Uint16(b))) / 32768 }
	case f.bits == 24:
		return func(b []byte) float64 {
			return float64(int32(uint32(b[0])<<8|uint32(b[1])<<16|uint32(b[2])<<24)) / (1 << 31)
		}
	}
	return func(b []byte) float64 { return float64(int32(binary.LittleEndian.Uint32(b))) / (1 << 31) }
}

// muLaw and aLaw expand a byte as ITU-T G.711 does.
func muLaw(b byte) float64 {
	b = ^b
	v := float64((int(b&15)<<3+132)<<(b>>4&7) - 132)
	if b&128 != 0 {
		v = -v
	}
	return v / 32768
}

func aLaw(b byte) float64 {
	b ^= 0x55
	seg, v := int(b>>4&7), int(b&15)<<4+8
	if seg > 0 {
		v = (v + 256) << (seg - 1)
	}
	if b&128 == 0 {
		v = -v
	}
	return float64(v) / 32768
}

// Resample changes the sampling rate with a windowed sinc of 24 zero crossings a side.
func Resample(x []float64, from, to int) []float64 {
	if from == to || len(x) == 0 {
		return x
	}
	const crossings = 24
	cut := math.Min(1, float64(to)/float64(from)) * 0.96
	half := crossings / cut
	out := make([]float64, int(int64(len(x))*int64(to)/int64(from)))
	for i := range out {
		center := float64(i) * float64(from) / float64(to)
		lo, hi := max(0, int(math.Ceil(center-half))), min(len(x)-1, int(center+half))
		sum := 0.0
		for k := lo; k <= hi; k++ {
			d := float64(k) - center
			w := math.Cos(math.Pi / 2 * d / half)
			sum += x[k] * cut * sinc(cut*d) * w * w
		}
		out[i] = sum
	}
	return out
}

func sinc(x float64) float64 {
	if x == 0 {
		return 1
	}
	return math.Sin(math.Pi*x) / (math.Pi * x)
}

func ToInt16(x []float64) []int16 {
	out := make([]int16, len(x))
	for i, v := range x {
		out[i] = int16(math.Max(-32768, math.Min(32767, math.Round(v*32768))))
	}
	return out
}
