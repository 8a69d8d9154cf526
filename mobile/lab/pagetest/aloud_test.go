package pagetest_test

import (
	"bytes"
	"context"
	"encoding/binary"
	"fmt"
	"slices"
	"sync"
	"testing"
	"time"

	"readback/core/lab/metric"
	"readback/core/lab/scenario"
	"readback/core/utterance"
	"readback/flows/lexicon"
	"readback/mobile/app"
	"readback/speech/cue"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
	"readback/speech/voice"
)

// spoken is what became of a job by voice.
type spoken struct {
	sayings int
	talk    scenario.Talk
	ended   string
}

// fixed tells whether the job came to its right end.
func (r *spoken) fixed() bool { return r.ended == "fixed" && len(r.talk.Person.Modes) == 0 }

// leadByVoice plays a job by voice, to its end or so many sayings.
func leadByVoice(t *testing.T, b *browser, s *served, mic microphone, p *scenario.Person, most int) *spoken {
	t.Helper()
	lex, err := lexicon.Load()
	if err != nil {
		t.Fatal(err)
	}
	r := &spoken{talk: scenario.Talk{Person: p, Lex: lex}}
	for r.sayings < most {
		v := listened(t, b)
		if v == nil || v.State == "ended" {
			break
		}
		say, err := r.talk.Next(v)
		if err != nil {
			t.Fatal(err)
		}
		if say.Tap {
			if m := say.Meaning; len(v.Step.Keypad) > 0 && m.Kind != utterance.Choice && m.Kind != utterance.Command && has(t, b, "keypad") {
				b.run(t, tap("keypad"))
			}
			byTouch(t, b, v, say.Meaning)
			time.Sleep(200 * time.Millisecond)
			continue
		}
		if say.Text == "" {
			t.Fatalf("step %s is answered by silence", v.Step.ID)
		}
		r.sayings++
		began, before := time.Now(), s.said()
		again := mic.say(t, b, say.Text) + patience
		for began := time.Now(); s.said() == before && time.Since(began) < again; {
			time.Sleep(20 * time.Millisecond)
		}
		t.Logf("%-22s %-44s %.1f s", v.Step.ID, say.Text, time.Since(began).Seconds())
	}
	if v := view(t, b); v != nil {
		r.ended = v.Ended
	}
	return r
}

// patience is how long a person who got no answer waits before saying it again.
const patience = 3500 * time.Millisecond

// voices are the synthesised ones of this machine; a test without any is skipped.
func voices(t *testing.T) []hearbench.Voice {
	t.Helper()
	vs := hearbench.Voices()
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
	s := newServed(t, app.Config{Version: "test", Speech: app.Recogniser(model.Locate)})
	s.prefer(`{"voice":true,"done":true,"sound":true}`)
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
func speakJob(t *testing.T, mic microphone) (*spoken, *browser) {
	t.Helper()
	s := voiceServer(t)
	b := open(t, mic.flags()...)
	mic.open(t, b)
	b.run(t, size(412, 915), navigate(s.address()), until(`document.querySelector('[data-k="voice"]:not([disabled])')`),
		until(`document.getElementById('ear').textContent.includes('Mic off')`), click("voice"), until(`document.getElementById('main').dataset.step`))
	r := leadByVoice(t, b, s, mic, person(t, shortFault), 150)
	t.Logf("%d sayings, %d again, %d taken back, %d tapped, mended %v, ended %q", r.sayings, r.talk.Repeated, r.talk.Objected, r.talk.Tapped, r.talk.Person.Mended, r.ended)
	b.clean(t)
	return r, b
}

// A whole job by voice through the browser's own fake microphone: file, getUserMedia, worklet, socket, real recogniser, session.
// It takes longest, so it stands in the file that comes first: tests beside each other begin in that order.
func TestJobByVoice(t *testing.T) {
	heavy(t)
	r, b := speakJob(t, newFileMic(t, newSpeaker(voices(t)[0], 20)))
	b.run(t, shot(t, "voice-end"))
	if !r.fixed() {
		t.Errorf("the job ended with %q, mended %v", r.ended, r.talk.Person.Mended)
	}
	if r.talk.Tapped > r.sayings/15 {
		t.Errorf("%d answers had to be tapped after %d sayings", r.talk.Tapped, r.sayings)
	}
	if n := value[int](t, b, fmt.Sprintf(heardAgain, view(t, b).Job)); n < r.sayings/2 {
		t.Errorf("of %d sayings the record holds the sound of %d", r.sayings, n)
	}
}

// heardAgain counts the sounds of a job that the browser can decode.
const heardAgain = `(async () => {
  const at = '/api/jobs/%s/', steps = await (await fetch(at + 'steps')).json(), ctx = new AudioContext();
  let n = 0;
  for (const s of steps) if (s.sound && (await ctx.decodeAudioData(await (await fetch(at + 'sound/' + s.sound)).arrayBuffer())).duration > .3) n++;
  return n;
})()`

// figureVoices are six, of two synthesisers.
var figureVoices = []string{"flite-slt", "flite-rms", "flite-awb", "espeak-us", "espeak-gb", "espeak-scotland"}

// voiceFigures measures spoken jobs through the browser, and how soon the reply sounds. Two run at a time, as they do in real time.
func voiceFigures(t *testing.T, add metric.Adder) {
	var mu sync.Mutex
	jobs, right, tapped, sayings := 0, 0, 0, 0
	var first, word []float64
	t.Run("voices", func(t *testing.T) {
		for _, v := range voices(t) {
			if !slices.Contains(figureVoices, v.Name) {
				continue
			}
			t.Run(v.Name, func(t *testing.T) {
				t.Parallel()
				mic := streamMic{newSpeaker(v, 20)}
				r, b := speakJob(t, mic)
				a, w := mic.replies(t, b)
				mu.Lock()
				defer mu.Unlock()
				jobs++
				if r.fixed() {
					right++
				}
				tapped += r.talk.Tapped
				sayings += r.sayings
				first, word = append(first, a...), append(word, w...)
			})
		}
	})
	if jobs == 0 || len(first) == 0 {
		return
	}
	add("page.spoken_right_pct", 100*float64(right)/float64(jobs), "%", "= 100", jobs)
	add("page.spoken_tapped_pct", 100*float64(tapped)/float64(sayings), "%, answers given up speaking", "reported", sayings)
	quantile := func(x []float64, q float64) float64 { slices.Sort(x); return x[min(len(x)-1, int(q*float64(len(x))))] }
	add("reply.median_s", quantile(first, .5), "s, end of speech to first sound of the reply", "<= 0.6", len(first))
	add("reply.p95_s", quantile(first, .95), "s, end of speech to first sound of the reply", "<= 0.9", len(first))
	add("reply.word_median_s", quantile(word, .5), "s, end of speech to first word of the reply", "reported", len(word))
}
