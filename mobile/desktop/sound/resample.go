//go:build sound

package sound

import "encoding/binary"

// resample brings samples to another rate by straight lines between them, which is enough for speech and earcons.
func resample(pcm []int16, from, to int) []int16 {
	if from == to || len(pcm) == 0 {
		return pcm
	}
	n := int(int64(len(pcm)) * int64(to) / int64(from))
	out := make([]int16, n)
	for i := range out {
		at := int64(i) * int64(from)
		k, rest := at/int64(to), at%int64(to)
		a := int64(pcm[k])
		b := a
		if int(k)+1 < len(pcm) {
			b = int64(pcm[k+1])
		}
		out[i] = int16(a + (b-a)*rest/int64(to))
	}
	return out
}

func encode(pcm []int16) []byte {
	out := make([]byte, 2*len(pcm))
	for i, v := range pcm {
		binary.LittleEndian.PutUint16(out[2*i:], uint16(v))
	}
	return out
}
