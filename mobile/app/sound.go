package app

import (
	"encoding/binary"
	"fmt"
	"math/bits"
	"slices"

	"readback/core/journal"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/speech"
)

// saying is the one being heard, as far as its sound belongs into the record. The sound is kept where the person chose it and the job
// acted on the words; talk in the room is not.
type saying struct {
	sound []byte // the whole of it, as a file; nil: not over yet, or not to be kept
	event int64  // what it became before it was over: an alarm is acted on at once; 0: nothing yet
}

// soundName is the file of the saying that became this event.
func soundName(seq int64) string { return fmt.Sprintf("sound-%d.wav", seq) }

// sounded takes the sound of a saying that is over; the ear tells its words after it.
func (h *Hub) sounded(pcm []int16) {
	h.mu.Lock()
	defer h.mu.Unlock()
	if h.job == nil || !h.job.voice || !h.prefs.Sound {
		return
	}
	h.saying.sound = muLawFile(pcm)
	if h.saying.event != 0 {
		h.keepSoundLocked(h.saying.event)
	}
}

// recordLocked ties the saying in progress to the last event, when the job did anything about it.
func (h *Hub) recordLocked(u *utterance.Utterance) {
	j := h.job
	switch {
	case j == nil || j.acted != j.seq || u.Best() == nil:
	case !u.Partial:
		h.keepSoundLocked(j.seq)
	case h.saying.event == 0:
		h.saying.event = j.seq
	}
}

// keepSoundLocked writes the sound that waits. A sound that cannot be kept is told once; the job goes on without it.
func (h *Hub) keepSoundLocked(seq int64) {
	data := h.saying.sound
	if data == nil {
		return
	}
	h.saying = saying{}
	if err := h.store.keep(h.job.id, soundName(seq), sealSound(data)); err != nil {
		if !h.job.soundless {
			h.job.soundless = true
			h.out.send(Message{Type: "trouble", Text: h.words.Term("app.no-sound", "why", err.Error())})
		}
	}
}

// soundOf names the sound of an event, when it is among the job's files.
func soundOf(files []journal.Entry, ev protocol.Event) string {
	name := soundName(ev.Seq)
	if ev.Said == nil {
		return ""
	}
	if !slices.ContainsFunc(files, func(f journal.Entry) bool { return f.Name == name }) {
		return ""
	}
	return name
}

// muLawFile is a WAV of µ-law (ITU-T G.711): half the size, good for speech, and every browser plays it.
func muLawFile(pcm []int16) []byte {
	const head, format = 50, 7 // chunk "fmt " is 18 bytes long where the format is not plain PCM
	n := uint32(len(pcm))
	le := binary.LittleEndian
	b := append(make([]byte, 0, head+len(pcm)+1), "RIFF"...)
	b = le.AppendUint32(b, head-8+n+n&1)
	b = append(b, "WAVEfmt "...)
	b = le.AppendUint32(b, 18)
	for _, v := range []uint16{format, 1} { // one channel
		b = le.AppendUint16(b, v)
	}
	for range 2 { // samples and bytes a second
		b = le.AppendUint32(b, speech.Rate)
	}
	for _, v := range []uint16{1, 8, 0} { // bytes and bits of a sample, nothing more to say
		b = le.AppendUint16(b, v)
	}
	b = append(b, "fact\x04\x00\x00\x00"...)
	b = le.AppendUint32(b, n)
	b = append(b, "data"...)
	b = le.AppendUint32(b, n)
	for _, v := range pcm {
		b = append(b, muLaw(v))
	}
	return append(b, make([]byte, n&1)...)
}

func muLaw(v int16) byte {
	x, sign := int(v), 0
	if x < 0 {
		x, sign = -x, 128
	}
	x = min(x, 32635) + 132
	exp := bits.Len(uint(x)) - 8
	return ^byte(sign | exp<<4 | x>>(exp+3)&15)
}
