package main

import (
	"context"
	"encoding/binary"

	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/speech/cue"
	"readback/speech/model"
	"readback/speech/voice"
)

// styles is how each level is said.
var styles = map[string]voice.Level{"caution": voice.Caution, "warning": voice.Caution, "danger": voice.Danger, "emergency": voice.Danger}

// makeVoice speaks with the synthesiser that is installed. With none, every saying fails with the way to get one, which the
// page shows.
func makeVoice() web.Voice {
	v, err := voice.Find()
	return func(ctx context.Context, text, level string, slow bool) ([]byte, error) {
		if err != nil {
			return nil, err
		}
		pcm, err := v.Say(ctx, text, voice.Style{Level: styles[level], Slow: slow})
		if err != nil {
			return nil, err
		}
		return wavOf(pcm), nil
	}
}

// cueWAV is an earcon, nil when there is none of that name.
func cueWAV(name string) []byte {
	pcm, err := cue.PCM(name)
	if err != nil {
		return nil
	}
	return wavOf(pcm)
}

const rate = 16000 // Hz, of voice and cues

// wavOf wraps mono samples of 16 kHz.
func wavOf(pcm []int16) []byte {
	n := 2 * len(pcm)
	out := make([]byte, 44, 44+n)
	copy(out, "RIFF....WAVEfmt ................data")
	le := binary.LittleEndian
	le.PutUint32(out[4:], uint32(36+n))
	le.PutUint32(out[16:], 16)
	le.PutUint16(out[20:], 1)
	le.PutUint16(out[22:], 1)
	le.PutUint32(out[24:], rate)
	le.PutUint32(out[28:], 2*rate)
	le.PutUint16(out[32:], 2)
	le.PutUint16(out[34:], 16)
	le.PutUint32(out[40:], uint32(n))
	for _, s := range pcm {
		out = le.AppendUint16(out, uint16(s))
	}
	return out
}

func hearing() app.Speech { return app.Recogniser(model.Locate) }
