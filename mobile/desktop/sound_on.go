//go:build sound

package main

import (
	"context"
	"encoding/binary"

	"readback/mobile/desktop/sound"
	"readback/mobile/desktop/web"
	"readback/speech/audio"
)

// openPlayer opens the loudspeaker; with none, the page speaks and why says so.
func openPlayer() (web.Player, string) {
	p, err := sound.Open()
	if err != nil {
		return nil, "No sound device (" + err.Error() + "); the page speaks."
	}
	return device{p}, ""
}

type device struct{ p *sound.Player }

func (d device) Close() { d.p.Close() }

func (d device) Play(ctx context.Context, wav []byte) error {
	rate, channels, pcm, err := audio.PCM16(wav)
	if err != nil {
		return err
	}
	samples := make([]int16, len(pcm)/2/channels)
	for i := range samples {
		samples[i] = int16(binary.LittleEndian.Uint16(pcm[2*channels*i:]))
	}
	return d.p.Play(ctx, samples, rate)
}
