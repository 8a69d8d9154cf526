package app

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"

	"readback/core/camera"
	"readback/core/protocol"
)

// A camera frame is one binary message:
//
//	 0  8 bytes  "RBeye", version 1, CR, LF; sound of the microphone, the other binary message, never begins so
//	 8  1 byte   what it is for: 1 the meter, 2 the status light, 3 the burner, whose frames must have colour
//	 9  1 byte   1: colour planes follow, at half the size in both directions; 0: brightness only
//	10  uint16   width, pixels
//	12  uint16   height
//	14  uint16   0
//	16  int64    when it was taken, ns on any steady clock
//	24  float64  exposure, seconds; 0 when not known
//	32  bytes    brightness, rows from the top without padding, then Cb and Cr as in JPEG
//
// All numbers are little endian.
const (
	frameMagic = "RBeye\x01\r\n"
	frameHead  = 32
)

// What a frame is for, and how many pixels it may have: more would cost time and tell no more.
const (
	meterPixels = 1000 * 750
	lampPixels  = 640 * 480
	firePixels  = 320 * 240
)

// eyes lists what is watched frame by frame, by its number in a frame's head, and how many pixels are enough for it.
var eyes = []struct {
	kind string
	most int
}{1: {protocol.EyeMeter, meterPixels}, 2: {protocol.EyeLamp, lampPixels}, 3: {protocol.EyeFire, firePixels}}

// eyeNumber is the place of a kind in eyes, 0 when it is not watched.
func eyeNumber(kind string) int {
	for n := 1; n < len(eyes); n++ {
		if eyes[n].kind == kind {
			return n
		}
	}
	return 0
}

// ErrFrame is wrapped by every error about a frame.
var ErrFrame = errors.New("ui: camera frame")

// IsFrame tells a frame from sound.
func IsFrame(msg []byte) bool {
	return len(msg) >= len(frameMagic) && string(msg[:len(frameMagic)]) == frameMagic
}

// parseFrame reads a message as a plane that shares its memory.
func parseFrame(msg []byte) (_ string, p camera.Plane, err error) {
	bad := func(format string, a ...any) (string, camera.Plane, error) {
		return "", camera.Plane{}, fmt.Errorf("%w: %s", ErrFrame, fmt.Sprintf(format, a...))
	}
	if !IsFrame(msg) {
		return bad("it does not begin with %q", frameMagic)
	}
	if len(msg) < frameHead {
		return bad("its head has %d bytes, want %d", len(msg), frameHead)
	}
	if msg[8] == 0 || int(msg[8]) >= len(eyes) {
		return bad("nothing is known by number %d at byte 8", msg[8])
	}
	eye, most := eyes[msg[8]].kind, eyes[msg[8]].most
	if msg[9] > 1 || msg[14] != 0 || msg[15] != 0 {
		return bad("bytes 9, 14 and 15 are %d, %d and %d, want 0 or 1, 0, 0", msg[9], msg[14], msg[15])
	}
	le := binary.LittleEndian
	w, h := int(le.Uint16(msg[10:])), int(le.Uint16(msg[12:]))
	if n := w * h; n < 1 || n > most {
		return bad("%d by %d pixels, want 1 to %d for the %s", w, h, most, eye)
	}
	if p, err = camera.Packed(msg[frameHead:], w, h, msg[9] == 1); err == nil {
		p.Time, p.Exposure = int64(le.Uint64(msg[16:])), math.Float64frombits(le.Uint64(msg[24:]))
		err = p.Check()
	}
	if err != nil {
		return "", camera.Plane{}, fmt.Errorf("%w: %w", ErrFrame, err)
	}
	return eye, p, nil
}

// Frame writes a message as parseFrame reads it, for tests and for shells that speak the socket.
func Frame(eye string, p *camera.Plane) ([]byte, error) {
	if err := p.Check(); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrFrame, err)
	}
	if p.W > math.MaxUint16 || p.H > math.MaxUint16 || p.Colour() && p.Sub != 2 {
		return nil, fmt.Errorf("%w: %d by %d, sub-sampling %d cannot be sent", ErrFrame, p.W, p.H, p.Sub)
	}
	msg := make([]byte, frameHead, frameHead+p.W*p.H*3/2+p.W+p.H)
	copy(msg, frameMagic)
	le := binary.LittleEndian
	msg[8] = byte(eyeNumber(eye))
	le.PutUint16(msg[10:], uint16(p.W))
	le.PutUint16(msg[12:], uint16(p.H))
	le.PutUint64(msg[16:], uint64(p.Time))
	le.PutUint64(msg[24:], math.Float64bits(p.Exposure))
	rows := func(pix []byte, w, h, stride int) {
		for y := range h {
			msg = append(msg, pix[y*stride:y*stride+w]...)
		}
	}
	rows(p.Y, p.W, p.H, p.Stride)
	if p.Colour() {
		msg[9] = 1
		rows(p.Cb, (p.W+1)/2, (p.H+1)/2, p.CStride)
		rows(p.Cr, (p.W+1)/2, (p.H+1)/2, p.CStride)
	}
	return msg, nil
}
