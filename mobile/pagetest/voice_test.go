package pagetest_test

import (
	"bytes"
	"context"
	"encoding/binary"
	"testing"
	"time"

	"readback/core/heard"
	"readback/core/session"
	"readback/core/sim"
	"readback/flows/phrase"
	"readback/mobile/ui"
	"readback/speech/cue"
	"readback/speech/hear"
	"readback/speech/model"
	"readback/speech/voice"
)

// spoken is what became of a job by voice.
type spoken struct {
	sayings, repeated, objected, tapped int
	ended                               string
	mended                              []string
}

// fixed tells whether the job came to its right end.
func (r spoken) fixed(p *sim.Person) bool { return r.ended == "fixed" && len(p.Modes) == 0 }

// leadByVoice plays a job by voice. What is not understood three times is tapped, as a person would; what is read back wrongly is taken
// back aloud.
func leadByVoice(t *testing.T, b *browser, s *served, mic microphone, p *sim.Person, answers int) spoken {
	t.Helper()
	lex, err := phrase.Load()
	if err != nil {
		t.Fatal(err)
	}
	var r spoken
	tell := func(v *session.View, text string) (*session.View, bool) {
		r.sayings++
		b.run(t, until(`document.getElementById('ear').dataset.busy === 'false'`))
		before := s.said()
		mic.say(t, b, text)
		for began := time.Now(); time.Since(began) < 8*time.Second; time.Sleep(20 * time.Millisecond) {
			if s.said() > before {
				now := view(t, b)
				return now, moved(v, now)
			}
		}
		return v, false
	}
	tried := map[string]int{} // who is misunderstood says it in other words, also when the step comes again
	for range answers {
		v := view(t, b)
		if v == nil || v.State == "ended" {
			break
		}
		u, err := p.Reply(v)
		if err != nil {
			t.Fatal(err)
		}
		if len(u.Meanings) == 0 {
			t.Fatalf("step %s is answered by silence", v.Step.ID)
		}
		m := u.Meanings[0]
		if v.State == "confirm" && v.Step.Kind != "consent" && m.ID == "right" && !p.Agrees(lex, v.Heard) {
			m = heard.Meaning{Kind: heard.Choice, ID: "different"}
		}
		taken := false
		for try := 0; try < 3 && !taken; try++ {
			if try > 0 {
				r.repeated++
			}
			began, text := time.Now(), sim.Aloud(lex, m, tried[v.Step.ID+v.State])
			tried[v.Step.ID+v.State]++
			var now *session.View
			now, taken = tell(v, text)
			t.Logf("%-22s %-44s taken %v after %.1f s", v.Step.ID, text, taken, time.Since(began).Seconds())
			if taken && now.State != "confirm" && now.State != "ended" && now.State != "emergency" && v.Step.Kind != "act" && now.Heard != nil && !now.Heard.Pending && !p.Agrees(lex, now.Heard) {
				r.objected++
				t.Logf("read back as %q", now.Heard.Taken)
				tell(now, "scratch that")
			}
		}
		if !taken {
			r.tapped++
			if len(v.Step.Keypad) > 0 && m.Kind != heard.Choice && m.Kind != heard.Command && has(t, b, "keypad") {
				b.run(t, tap("keypad"))
			}
			byTouch(t, b, v, m)
			time.Sleep(200 * time.Millisecond)
		}
	}
	if v := view(t, b); v != nil {
		r.ended = v.Ended
	}
	r.mended = p.Mended
	return r
}

// moved tells whether an answer changed what is asked.
func moved(a, b *session.View) bool {
	return a.Step.ID != b.Step.ID || a.State != b.State || a.Step.Part != b.Step.Part || a.Step.Act != b.Step.Act ||
		len(a.Facts) != len(b.Facts) || a.Site.Power != b.Site.Power
}

// voices are the synthesised ones of this machine; a test without any is skipped.
func voices(t *testing.T) []hear.Voice {
	t.Helper()
	vs := hear.Voices()
	if len(vs) == 0 {
		t.Skip("no synthesised voice on this machine: apt-get install espeak-ng flite")
	}
	return vs
}

// voiceServer serves the real chain: recogniser, voice and cues. The guide's voice is made in full and the page plays the first
// tenth of a second of it, so that nobody waits for its end.
func voiceServer(t *testing.T) *served {
	t.Helper()
	if _, err := model.Locate(); err != nil {
		t.Skip(err)
	}
	s := newServed(t, ui.Config{Version: "test", Speech: ui.Recogniser(model.Locate)})
	if v, err := voice.Find(); err == nil {
		s.conf.Voice = func(ctx context.Context, text, _ string, slow bool) ([]byte, error) {
			pcm, err := v.Say(ctx, text, voice.Style{Slow: slow})
			return wav(pcm[:min(len(pcm), rate/10)]), err
		}
		s.conf.Cues = func(name string) []byte {
			pcm, err := cue.PCM(name)
			if err != nil {
				return nil
			}
			return wav(pcm)
		}
	}
	s.start()
	t.Cleanup(s.kill)
	return s
}

func wav(pcm []int16) []byte {
	var b bytes.Buffer
	b.WriteString("RIFF....WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data....")
	out := append(b.Bytes(), bytesOf(pcm)...)
	binary.LittleEndian.PutUint32(out[4:], uint32(36+2*len(pcm)))
	binary.LittleEndian.PutUint32(out[40:], uint32(2*len(pcm)))
	return out
}

// shortFault needs about forty answers: a filter that lets no air through, found without opening anything but its slot.
const shortFault = "filter.packed"

// speakJob plays the short job through one browser with one microphone.
func speakJob(t *testing.T, mic microphone) (spoken, *sim.Person, *browser) {
	t.Helper()
	s := voiceServer(t)
	b := open(t, mic.flags()...)
	mic.open(t, b)
	b.run(t, size(412, 915), navigate(s.address()), until(`document.querySelector('[data-k="voice"]:not([disabled])')`),
		until(`document.getElementById('ear').textContent.includes('Mic off')`), click("voice"), until(`document.getElementById('main').dataset.step`))
	p := person(t, shortFault)
	r := leadByVoice(t, b, s, mic, p, 150)
	t.Logf("%d sayings, %d again, %d taken back, %d tapped, mended %v, ended %q", r.sayings, r.repeated, r.objected, r.tapped, r.mended, r.ended)
	b.clean(t)
	return r, p, b
}

// A whole job by voice through the browser's own fake microphone: file, getUserMedia, worklet, socket, real recogniser, session.
func TestJobByVoice(t *testing.T) {
	heavy(t)
	t.Parallel()
	r, p, b := speakJob(t, newFileMic(t, newSpeaker(voices(t)[0], 20)))
	b.run(t, shot(t, "voice-end"))
	if !r.fixed(p) {
		t.Errorf("the job ended with %q, mended %v", r.ended, r.mended)
	}
	if r.tapped > 0 {
		t.Errorf("%d of %d answers had to be tapped", r.tapped, r.sayings)
	}
}

// The same job through a stream made in the page, which is what the figures use: it must do as well as the browser's fake device.
func TestJobByStream(t *testing.T) {
	heavy(t)
	t.Parallel()
	mic := streamMic{newSpeaker(voices(t)[0], 20)}
	r, p, b := speakJob(t, mic)
	if !r.fixed(p) {
		t.Errorf("the job ended with %q, mended %v", r.ended, r.mended)
	}
	sound, word := mic.replies(t, b)
	t.Log(sound, word)
}
