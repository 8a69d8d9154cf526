//go:build sound

package sound

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"sync"
	"time"

	"github.com/hajimehoshi/oto/v2"
)

// Rate of the device's stream, Hz. Everything is brought to it, because a process may open one context only.
const Rate = 48000

const openWait = 2 * time.Second

// Player is the open device.
type Player struct {
	ctx *oto.Context
	mu  sync.Mutex // one sound after the other
}

// Open opens the default device. oto returns no error on a machine without one and then hangs whoever waits; the reason is
// only in its Err, so that is asked, and no wait is without end.
func Open() (*Player, error) {
	ctx, ready, err := oto.NewContext(Rate, 1, oto.FormatSignedInt16LE)
	if err != nil {
		return nil, fmt.Errorf("sound: opening the device: %w", err)
	}
	select {
	case <-ready:
	case <-time.After(openWait):
		return nil, errors.New("sound: the device did not open in time")
	}
	// The driver finds out a moment after it says it is ready.
	for range 5 {
		if err := ctx.Err(); err != nil {
			return nil, fmt.Errorf("sound: opening the device: %w", err)
		}
		time.Sleep(20 * time.Millisecond)
	}
	return &Player{ctx: ctx}, nil
}

// bufferBytes is 200 ms: with less, slow sinks leave gaps.
const bufferBytes = Rate * 2 / 5

// Play plays mono 16 bit samples of the rate given and returns when they were heard, when ctx is done, or with an error when
// the device stalls: a sound that takes two seconds longer than it is long is taken for lost.
func (p *Player) Play(ctx context.Context, pcm []int16, rate int) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if err := ctx.Err(); err != nil {
		return err
	}
	data := encode(resample(pcm, rate, Rate))
	if len(data) == 0 {
		return nil
	}
	player := p.ctx.NewPlayer(bytes.NewReader(data))
	defer func() { _ = player.Close() }() // nothing is lost by a failure to close
	if s, ok := player.(oto.BufferSizeSetter); ok {
		s.SetBufferSize(bufferBytes)
	}
	player.Play()
	length := time.Duration(len(data)/2) * time.Second / Rate
	late := time.NewTimer(length + 2*time.Second)
	defer late.Stop()
	tick := time.NewTicker(10 * time.Millisecond)
	defer tick.Stop()
	for {
		select {
		case <-ctx.Done():
			player.Pause()
			return ctx.Err()
		case <-late.C:
			return errors.New("sound: the device stalled")
		case <-tick.C:
			if err := errors.Join(p.ctx.Err(), player.Err()); err != nil {
				return fmt.Errorf("sound: playing: %w", err)
			}
			if !player.IsPlaying() {
				return nil
			}
		}
	}
}

// Close stops the device.
func (p *Player) Close() { _ = p.ctx.Suspend() } // the process ends next; there is nothing to do about an error
