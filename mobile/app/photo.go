package app

import (
	"crypto/sha256"
	"encoding/binary"
	"encoding/hex"
	"errors"
	"fmt"
)

func sum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

const maxPhoto = 16 << 20

// stripJPEG returns the picture without its application segments and comments, where position, camera and owner are written.
// What a decoder needs stays: APP0 (JFIF) and APP14 (the colour transform), and a segment with nothing in it but how the picture is turned, where
// it is.
func stripJPEG(data []byte) ([]byte, error) {
	if len(data) > maxPhoto {
		return nil, fmt.Errorf("%d bytes is more than %d", len(data), maxPhoto)
	}
	if len(data) < 4 || data[0] != 0xFF || data[1] != 0xD8 {
		return nil, errors.New("not a JPEG picture")
	}
	out := []byte{0xFF, 0xD8}
	if turn := orientation(data); turn != 1 {
		out = append(out, orientationSegment(turn)...)
	}
	for i := 2; ; {
		if i+4 > len(data) || data[i] != 0xFF {
			return nil, fmt.Errorf("JPEG segment damaged at byte %d", i)
		}
		mark := data[i+1]
		if mark == 0xFF { // fill byte
			i++
			continue
		}
		if mark == 0xDA { // the picture itself: everything to the end
			return append(out, data[i:]...), nil
		}
		n := int(data[i+2])<<8 | int(data[i+3])
		if n < 2 || i+2+n > len(data) {
			return nil, fmt.Errorf("JPEG segment damaged at byte %d", i)
		}
		drop := mark == 0xFE || mark >= 0xE1 && mark <= 0xEF && mark != 0xEE
		if !drop {
			out = append(out, data[i:i+2+n]...)
		}
		i += 2 + n
	}
}

// orientation is how a JPEG picture is to be turned and mirrored, 1 to 8 as Exif 2.3 (tag 0x0112) numbers it; 1, upright, where nothing is said.
func orientation(data []byte) int {
	for i := 2; i+4 <= len(data) && data[i] == 0xFF; {
		mark, n := data[i+1], int(data[i+2])<<8|int(data[i+3])
		if mark == 0xFF {
			i++
			continue
		}
		if mark == 0xDA || n < 2 || i+2+n > len(data) {
			break
		}
		if body := data[i+4 : i+2+n]; mark == 0xE1 && len(body) > 14 && string(body[:6]) == "Exif\x00\x00" {
			if o := tiffOrientation(body[6:]); o > 0 {
				return o
			}
		}
		i += 2 + n
	}
	return 1
}

// tiffOrientation looks through the first directory of a TIFF head; 0 when it does not say or is damaged.
func tiffOrientation(b []byte) int {
	var order binary.ByteOrder = binary.BigEndian
	switch string(b[:min(4, len(b))]) {
	case "II*\x00":
		order = binary.LittleEndian
	case "MM\x00*":
	default:
		return 0
	}
	if len(b) < 8 {
		return 0
	}
	at := int(order.Uint32(b[4:]))
	if at < 8 || at > len(b)-2 {
		return 0
	}
	n := int(order.Uint16(b[at:]))
	for i := range n {
		e := at + 2 + 12*i
		if e+12 > len(b) {
			return 0
		}
		if order.Uint16(b[e:]) == 0x0112 && order.Uint16(b[e+2:]) == 3 {
			if v := int(order.Uint16(b[e+8:])); v >= 1 && v <= 8 {
				return v
			}
			return 0
		}
	}
	return 0
}

// orientationSegment is an Exif segment that says how the picture is turned and nothing else.
func orientationSegment(turn int) []byte {
	return []byte{0xFF, 0xE1, 0, 34, 'E', 'x', 'i', 'f', 0, 0, 'M', 'M', 0, '*', 0, 0, 0, 8, 0, 1, 0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, byte(turn), 0, 0, 0, 0, 0, 0}
}
