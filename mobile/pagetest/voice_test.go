package pagetest_test

import (
	"encoding/binary"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/chromedp"

	"readback/core/heard"
	"readback/core/sim"
	"readback/flows/phrase"
	"readback/mobile/ui"
	"readback/speech/hear"
	"readback/speech/model"
)

const (
	rate  = 16000
	level = -26.0 // dBFS, as loud as people speak to a telephone (ITU-T P.56 gives the measure)
)

// microphone is the browser's fake one: it plays a file from its beginning whenever the page opens it.
type microphone struct {
	file  string
	voice hear.Voice
	noise []float64
	snr   float64
}

func newMicrophone(t *testing.T, v hear.Voice, snr float64) *microphone {
	t.Helper()
	m := &microphone{file: filepath.Join(t.TempDir(), "mic.wav"), voice: v, noise: hear.Noise("fan", 1, 30*rate), snr: snr}
	m.record(t, "")
	return m
}

func (m *microphone) flags() []chromedp.ExecAllocatorOption {
	return []chromedp.ExecAllocatorOption{chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true),
		chromedp.Flag("use-file-for-fake-audio-capture", m.file+"%noloop")}
}

// record puts one saying in noise into the file.
func (m *microphone) record(t *testing.T, text string) {
	t.Helper()
	pcm := make([]int16, rate/2)
	if text != "" {
		var err error
		if pcm, err = m.voice.Say(text); err != nil {
			t.Fatal(err)
		}
	}
	clip := hear.Clip(pcm, level, m.snr, m.noise, 0.7, 1.6)
	out := []byte("RIFF....WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data....")
	binary.LittleEndian.PutUint32(out[4:], uint32(36+2*len(clip)))
	binary.LittleEndian.PutUint32(out[40:], uint32(2*len(clip)))
	for _, s := range clip {
		out = binary.LittleEndian.AppendUint16(out, uint16(s))
	}
	if err := os.WriteFile(m.file, out, 0o644); err != nil {
		t.Fatal(err)
	}
}

// say speaks into the page: the microphone is closed and opened again, so that the file begins.
func (m *microphone) say(t *testing.T, b *browser, text string) {
	t.Helper()
	m.record(t, text)
	b.run(t, click("ear"), until(`document.getElementById('ear').textContent.includes('Mic off') || document.getElementById('ear').className === 'cue'`), click("ear"))
}

// spoken is what became of a job by voice.
type spoken struct {
	sayings, repeated, tapped int
	ended                     string
}

// leadByVoice plays a job by voice, at most so many answers. What is not understood twice is tapped, as a person would.
func leadByVoice(t *testing.T, b *browser, s *served, mic *microphone, p *sim.Person, answers int) spoken {
	t.Helper()
	lex, err := phrase.Load()
	if err != nil {
		t.Fatal(err)
	}
	var r spoken
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
		for try := range 2 {
			if try > 0 {
				r.repeated++
			}
			r.sayings++
			began := time.Now()
			before := s.said()
			mic.say(t, b, sim.Aloud(lex, m, try))
			for i := 0; i < 1200 && !taken; i++ {
				if s.said() > before {
					now := view(t, b)
					taken = now.Step.ID != v.Step.ID || now.State != v.State || now.Step.Part != v.Step.Part || now.Step.Act != v.Step.Act || len(now.Facts) != len(v.Facts) || now.Site.Power != v.Site.Power || now.Heard != nil && now.Heard.Taken != ""
					if !taken {
						break
					}
				}
				time.Sleep(5 * time.Millisecond)
			}
			t.Logf("%-18s %-40s taken %v after %.1f s", v.Step.ID, sim.Aloud(lex, m, try), taken, time.Since(began).Seconds())
			if taken {
				break
			}
		}
		if !taken {
			r.tapped++
			if has(t, b, "keypad") && m.Kind != heard.Choice && m.Kind != heard.Command {
				b.run(t, tap("keypad"))
			}
			byTouch(t, b, v, m)
			time.Sleep(200 * time.Millisecond)
		}
	}
	if v := view(t, b); v != nil {
		r.ended = v.Ended
	}
	return r
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

func voiceServer(t *testing.T) *served {
	t.Helper()
	if _, err := model.Locate(); err != nil {
		t.Skip(err)
	}
	return serve(t, ui.Config{Version: "test", Speech: ui.Recogniser(model.Locate)})
}

// A job by voice: file → getUserMedia → worklet → socket → real recogniser → session.
var answers = 150

func TestJobByVoice(t *testing.T) {
	heavy(t)
	s := voiceServer(t)
	mic := newMicrophone(t, voices(t)[0], 15)
	b := open(t, mic.flags()...)
	b.run(t, size(412, 915), navigate(s.address()), until(`!document.querySelector('[data-k="voice"]').disabled`), until(`document.getElementById('ear').textContent.includes('Mic off')`), click("voice"), until(`document.getElementById('main').dataset.step`))
	r := leadByVoice(t, b, s, mic, person(t, "breaker.off"), answers)
	t.Logf("%d sayings, %d again, %d tapped, ended %q", r.sayings, r.repeated, r.tapped, r.ended)
	b.run(t, shot(t, "voice-end"))
	if r.ended == "" {
		t.Error("the job did not end")
	}
	if r.tapped > r.sayings/10 {
		t.Errorf("%d of %d answers had to be tapped", r.tapped, r.sayings)
	}
	b.clean(t)
}
