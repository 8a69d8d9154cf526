package ui

import (
	"encoding/binary"
	"errors"
	"fmt"
	"math"

	"readback/core/camera"
	"readback/core/session"
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

// ErrFrame is wrapped by every error about a frame.
var ErrFrame = errors.New("ui: camera frame")

// IsFrame tells a frame from sound.
func IsFrame(msg []byte) bool {
	return len(msg) >= len(frameMagic) && string(msg[:len(frameMagic)]) == frameMagic
}

// parseFrame reads a message as a plane that shares its memory.
func parseFrame(msg []byte) (eye string, p camera.Plane, err error) {
	bad := func(format string, a ...any) (string, camera.Plane, error) {
		return "", camera.Plane{}, fmt.Errorf("%w: %s", ErrFrame, fmt.Sprintf(format, a...))
	}
	if !IsFrame(msg) {
		return bad("it does not begin with %q", frameMagic)
	}
	if len(msg) < frameHead {
		return bad("its head has %d bytes, want %d", len(msg), frameHead)
	}
	most := 0
	switch msg[8] {
	case 1:
		eye, most = session.EyeMeter, meterPixels
	case 2:
		eye, most = session.EyeLamp, lampPixels
	case 3:
		eye, most = session.EyeFire, firePixels
	default:
		return bad("nothing is known by number %d at byte 8", msg[8])
	}
	if msg[8] == 3 && msg[9] == 0 {
		return bad("the burner is judged by its colour, and it has none")
	}
	if msg[9] > 1 || msg[14] != 0 || msg[15] != 0 {
		return bad("bytes 9, 14 and 15 are %d, %d and %d, want 0 or 1, 0, 0", msg[9], msg[14], msg[15])
	}
	le := binary.LittleEndian
	p.W, p.H = int(le.Uint16(msg[10:])), int(le.Uint16(msg[12:]))
	p.Stride = p.W
	p.Time, p.Exposure = int64(le.Uint64(msg[16:])), math.Float64frombits(le.Uint64(msg[24:]))
	if n := p.W * p.H; n < 1 || n > most {
		return bad("%d by %d pixels, want 1 to %d for the %s", p.W, p.H, most, eye)
	}
	body := msg[frameHead:]
	cw, ch := (p.W+1)/2, (p.H+1)/2
	want := p.W * p.H
	if msg[9] == 1 {
		want += 2 * cw * ch
	}
	if len(body) != want {
		return bad("%d bytes of picture, want %d", len(body), want)
	}
	p.Y = body[:p.W*p.H]
	if msg[9] == 1 {
		p.Cb, p.Cr, p.CStride, p.Sub = body[p.W*p.H:][:cw*ch], body[p.W*p.H+cw*ch:], cw, 2
	}
	if err := p.Check(); err != nil {
		return "", camera.Plane{}, fmt.Errorf("%w: %w", ErrFrame, err)
	}
	return eye, p, nil
}

// Frame writes a message as parseFrame reads it, for tests and for shells that speak the socket.
func Frame(eye string, p *camera.Plane) ([]byte, error) {
	if err := p.Check(); err != nil {
		return nil, fmt.Errorf("%w: %w", ErrFrame, err)
	}
	kind := byte(1)
	switch eye {
	case session.EyeLamp:
		kind = 2
	case session.EyeFire:
		kind = 3
	}
	if p.W > math.MaxUint16 || p.H > math.MaxUint16 || p.Colour() && p.Sub != 2 {
		return nil, fmt.Errorf("%w: %d by %d, sub-sampling %d cannot be sent", ErrFrame, p.W, p.H, p.Sub)
	}
	msg := make([]byte, frameHead, frameHead+p.W*p.H*3/2+p.W+p.H)
	copy(msg, frameMagic)
	le := binary.LittleEndian
	msg[8] = kind
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
