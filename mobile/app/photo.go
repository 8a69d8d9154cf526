package app

import (
	"crypto/sha256"
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
// What a decoder needs stays: APP0 (JFIF) and APP14 (the colour transform). Turning by an orientation mark is lost; the shells
// send pictures that stand upright.
func stripJPEG(data []byte) ([]byte, error) {
	if len(data) > maxPhoto {
		return nil, fmt.Errorf("%d bytes is more than %d", len(data), maxPhoto)
	}
	if len(data) < 4 || data[0] != 0xFF || data[1] != 0xD8 {
		return nil, errors.New("not a JPEG picture")
	}
	out := []byte{0xFF, 0xD8}
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
