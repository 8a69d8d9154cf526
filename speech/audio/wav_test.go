package audio_test

import (
	"bytes"
	"encoding/binary"
	"errors"
	"math"
	"strings"
	"testing"

	"readback/speech/audio"
)

// wav writes a file of one second of a 440 Hz tone at -6 dBFS.
func wav(tag, channels, rate, bits int) []byte {
	var data bytes.Buffer
	for i := range rate {
		v := 0.5 * math.Sin(2*math.Pi*440*float64(i)/float64(rate))
		for range channels {
			switch {
			case tag == 3 && bits == 32:
				binary.Write(&data, binary.LittleEndian, float32(v))
			case tag == 3:
				binary.Write(&data, binary.LittleEndian, v)
			case tag == 7:
				data.WriteByte(toMuLaw(v))
			case bits == 8:
				data.WriteByte(byte(math.Round(v*127) + 128))
			default:
				n := int32(math.Round(v * (1<<31 - 1)))
				for b := 4 - bits/8; b < 4; b++ {
					data.WriteByte(byte(uint32(n) >> (8 * b)))
				}
			}
		}
	}
	return riff(tag, channels, rate, bits, data.Bytes())
}

func riff(tag, channels, rate, bits int, data []byte) []byte {
	var b bytes.Buffer
	b.WriteString("RIFF")
	le := func(v any) { binary.Write(&b, binary.LittleEndian, v) }
	le(uint32(36 + len(data)))
	b.WriteString("WAVEfmt ")
	le(uint32(16))
	le(uint16(tag))
	le(uint16(channels))
	le(uint32(rate))
	le(uint32(rate * channels * bits / 8))
	le(uint16(channels * bits / 8))
	le(uint16(bits))
	b.WriteString("data")
	le(uint32(len(data)))
	b.Write(data)
	return b.Bytes()
}

// toMuLaw compresses by search, slow and obvious.
func toMuLaw(v float64) byte {
	best, at := math.Inf(1), byte(0)
	for b := range 256 {
		n := ^byte(b)
		x := float64((int(n&15)<<3+132)<<(n>>4&7)-132) / 32768
		if n&128 != 0 {
			x = -x
		}
		if d := math.Abs(x - v); d < best {
			best, at = d, byte(b)
		}
	}
	return at
}

func TestReadWAV(t *testing.T) {
	for _, tt := range []struct {
		name                      string
		tag, channels, rate, bits int
	}{
		{"as it is", 1, 1, 16000, 16}, {"8 kHz", 1, 1, 8000, 16}, {"telephone", 7, 1, 8000, 8}, {"22.05 kHz", 1, 1, 22050, 16}, {"disc", 1, 2, 44100, 16},
		{"48 kHz, 24 bit", 1, 2, 48000, 24}, {"32 bit", 1, 1, 16000, 32}, {"8 bit", 1, 1, 11025, 8}, {"float", 3, 1, 48000, 32}, {"double", 3, 1, 96000, 64},
	} {
		t.Run(tt.name, func(t *testing.T) {
			pcm, err := audio.ReadWAV(bytes.NewReader(wav(tt.tag, tt.channels, tt.rate, tt.bits)))
			if err != nil {
				t.Fatal(err)
			}
			if d := len(pcm) - 16000; d < -1 || d > 1 {
				t.Fatalf("%d samples for one second", len(pcm))
			}
			var re, im, all float64
			for i, s := range pcm[1000:15000] {
				a := 2 * math.Pi * 440 * float64(i) / 16000
				re += float64(s) * math.Cos(a)
				im += float64(s) * math.Sin(a)
				all += float64(s) * float64(s)
			}
			tone := 2 * (re*re + im*im) / 14000
			if tone/all < 0.99 {
				t.Errorf("%.1f %% of the power is the tone", 100*tone/all)
			}
			if rms := math.Sqrt(all/14000) / 32768; math.Abs(rms-0.5/math.Sqrt2) > 0.01 {
				t.Errorf("effective value %.3f", rms)
			}
		})
	}
}

func TestReadWAVErrors(t *testing.T) {
	good := wav(1, 1, 16000, 16)
	patch := func(at int, b ...byte) []byte {
		return append(append(bytes.Clone(good[:at]), b...), good[at+len(b):]...)
	}
	nan := make([]byte, 8)
	binary.LittleEndian.PutUint32(nan[4:], math.Float32bits(float32(math.NaN())))
	for _, tt := range []struct {
		name string
		b    []byte
		want string
	}{
		{"empty", nil, "RIFF"}, {"text", []byte("this is no sound at all, really"), "RIFF"}, {"header only", good[:36], "before any sound"},
		{"cut off", good[:1000], "cut off"}, {"cut in the header", good[:30], "cut off"}, {"odd bytes", riff(1, 1, 16000, 16, []byte{1, 2, 3}), "whole samples"},
		{"no channels", patch(22, 0, 0), "0 channels"}, {"rate 0", patch(24, 0, 0, 0, 0), "sampling rate 0"}, {"rate huge", patch(24, 0xff, 0xff, 0xff, 0x7f), "sampling rate"},
		{"coding", patch(20, 85, 0), "coding 85"}, {"bits", patch(34, 12, 0), "12 bits"}, {"not a number", riff(3, 1, 16000, 32, nan), "sample 1 is not a number"},
		{"sound before format", append(append(bytes.Clone(good[:12]), good[36:]...), good[12:36]...), "before its format"},
	} {
		t.Run(tt.name, func(t *testing.T) {
			pcm, err := audio.ReadWAV(bytes.NewReader(tt.b))
			if !errors.Is(err, audio.ErrWAV) || pcm != nil || !strings.Contains(err.Error(), tt.want) {
				t.Errorf("%v, want %s", err, tt.want)
			}
		})
	}
	if pcm, err := audio.ReadWAV(bytes.NewReader(riff(1, 1, 16000, 16, nil))); err != nil || len(pcm) != 0 {
		t.Errorf("no samples: %d, %v", len(pcm), err)
	}
}

func FuzzReadWAV(f *testing.F) {
	f.Add(wav(1, 1, 8000, 16)[:2044])
	f.Add(riff(3, 1, 16000, 32, []byte{0, 0, 0xc0, 0x7f}))
	f.Add(riff(7, 2, 8000, 8, make([]byte, 64)))
	f.Fuzz(func(t *testing.T, b []byte) {
		if pcm, err := audio.ReadWAV(bytes.NewReader(b)); err != nil && pcm != nil {
			t.Error("sound together with an error")
		}
	})
}

func TestPCM16(t *testing.T) {
	good := string(riff(1, 1, 16000, 16, make([]byte, 20)))
	for _, tt := range []struct {
		name, data string
		ok         bool
	}{
		{"good", good, true},
		{"length as from a pipe", strings.Replace(good, "data\x14\x00", "data\xff\xff", 1), true},
		{"empty", "", false},
		{"cut in the header", good[:20], false},
		{"cut before the sound", good[:36], false},
		{"no format", "RIFFxxxxWAVEdata\x02\x00\x00\x00ab", false},
		{"eight bits", strings.Replace(good, "\x02\x00\x10\x00", "\x01\x00\x08\x00", 1), false},
		{"rate 0", strings.Replace(good, "\x80\x3e\x00\x00", "\x00\x00\x00\x00", 1), false},
	} {
		if _, _, _, err := audio.PCM16([]byte(tt.data)); (err == nil) != tt.ok {
			t.Errorf("%s: %v", tt.name, err)
		}
	}
}

func FuzzPCM16(f *testing.F) {
	f.Add(riff(1, 1, 16000, 16, make([]byte, 20)))
	f.Fuzz(func(t *testing.T, data []byte) {
		rate, channels, pcm, err := audio.PCM16(data)
		if err == nil && (rate < 4000 || channels < 1 || len(pcm) > len(data)) {
			t.Errorf("%d Hz, %d channels, %d of %d bytes", rate, channels, len(pcm), len(data))
		}
	})
}
