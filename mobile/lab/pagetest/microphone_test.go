package pagetest_test

import (
	"encoding/base64"
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/chromedp/cdproto/page"
	"github.com/chromedp/chromedp"

	"readback/speech/lab/hearbench"
)

const (
	rate  = 16000
	level = -26.0 // dBFS, as loud as people speak to a telephone (ITU-T P.56 gives the measure)
)

// microphone is what the page's getUserMedia opens in a test.
type microphone interface {
	flags() []chromedp.ExecAllocatorOption
	open(t *testing.T, b *browser)                           // before the page is loaded
	say(t *testing.T, b *browser, text string) time.Duration // speaks it into the page; for so long from now
}

// speaker makes clips: one voice in the noise of a fan.
type speaker struct {
	voice hearbench.Voice
	noise []float64
	snr   float64 // dB
}

func newSpeaker(v hearbench.Voice, snr float64) speaker {
	return speaker{v, hearbench.Noise("fan", 1, 30*rate), snr}
}

// clip is a saying in noise, with so many seconds of noise around it; end is where the voice is over, in samples.
func (s speaker) clip(t *testing.T, text string, snr, before, after float64) (pcm []int16, end int) {
	t.Helper()
	speech, err := s.voice.Say(text)
	if err != nil {
		t.Fatal(err)
	}
	peak := 0
	for _, v := range speech {
		peak = max(peak, abs(v))
	}
	for i, v := range speech {
		if abs(v) > peak/50 { // 34 dB under the loudest: what a synthesiser adds at the end is no speech
			end = i
		}
	}
	return hearbench.Clip(speech, level, snr, s.noise, before, after), int(before*rate) + end
}

func lasts(samples int) time.Duration { return time.Duration(samples) * time.Second / rate }

func abs(v int16) int {
	if v < 0 {
		return -int(v)
	}
	return int(v)
}

func bytesOf(pcm []int16) []byte {
	out := make([]byte, 0, 2*len(pcm))
	for _, s := range pcm {
		out = binary.LittleEndian.AppendUint16(out, uint16(s))
	}
	return out
}

// fileMic is the browser's own fake microphone: it plays a file from its beginning whenever the page opens it. So the page's
// microphone is closed and opened again before every saying.
type fileMic struct {
	speaker
	file string
}

func newFileMic(t *testing.T, s speaker) *fileMic {
	m := &fileMic{s, filepath.Join(t.TempDir(), "mic.wav")}
	m.write(t, make([]int16, rate/2))
	return m
}

func (m *fileMic) flags() []chromedp.ExecAllocatorOption {
	return []chromedp.ExecAllocatorOption{chromedp.Flag("use-fake-ui-for-media-stream", true), chromedp.Flag("use-fake-device-for-media-stream", true),
		chromedp.Flag("use-file-for-fake-audio-capture", m.file+"%noloop")}
}

func (m *fileMic) open(*testing.T, *browser) {}

func (m *fileMic) write(t *testing.T, pcm []int16) {
	t.Helper()
	out := []byte("RIFF....WAVEfmt \x10\x00\x00\x00\x01\x00\x01\x00\x80\x3e\x00\x00\x00\x7d\x00\x00\x02\x00\x10\x00data....")
	binary.LittleEndian.PutUint32(out[4:], uint32(36+2*len(pcm)))
	binary.LittleEndian.PutUint32(out[40:], uint32(2*len(pcm)))
	if err := os.WriteFile(m.file, append(out, bytesOf(pcm)...), 0o644); err != nil {
		t.Fatal(err)
	}
}

func (m *fileMic) say(t *testing.T, b *browser, text string) time.Duration {
	t.Helper()
	pcm, end := m.clip(t, text, m.snr, 1.0, 10) // the fan goes on after it: out of digital silence it would begin like somebody who speaks
	m.write(t, pcm)
	b.run(t, js(`document.getElementById('ear').click()`), until(`document.getElementById('ear').dataset.mic === 'off'`),
		js(`document.getElementById('ear').click()`), until(`document.getElementById('ear').dataset.mic === 'on'`))
	return lasts(end)
}

// streamMic replaces getUserMedia by a stream made in the page, so that a saying begins when it is asked for, and the page's own
// clock tells when it ended and when the first sound of the answer came. From the stream on, all is the page's: worklet, socket, recogniser.
type streamMic struct{ speaker }

func (m streamMic) flags() []chromedp.ExecAllocatorOption { return nil }

func (m streamMic) open(t *testing.T, b *browser) {
	noise := make([]int16, 10*rate)
	for i := range noise {
		noise[i] = int16(m.noise[i] * 32768 * math.Pow(10, (level-m.snr)/20))
	}
	b.run(t, call(page.AddScriptToEvaluateOnNewDocument, page.AddScriptToEvaluateOnNewDocumentParams{
		Source: fmt.Sprintf(streamScript, base64.StdEncoding.EncodeToString(bytesOf(noise)))}))
}

func (m streamMic) say(t *testing.T, b *browser, text string) time.Duration {
	t.Helper()
	pcm, end := m.clip(t, text, math.Inf(1), 0.45, 0)
	b.run(t, js(fmt.Sprintf("testMic.say(%q, %d)", base64.StdEncoding.EncodeToString(bytesOf(pcm)), end)))
	return lasts(end)
}

// replies are the delays of this job, in seconds: from the end of each saying that was answered to the first sound, and to the first word.
func (m streamMic) replies(t *testing.T, b *browser) (sound, word []float64) {
	t.Helper()
	for _, r := range value[[][2]float64](t, b, `testMic.replies()`) {
		if r[0] > 0 {
			sound = append(sound, r[0]/1000)
		}
		if r[1] > 0 {
			word = append(word, r[1]/1000)
		}
	}
	return sound, word
}

const streamScript = `window.testMic = (() => {
  let ctx, out, now = null;
  const ends = [], sounds = [];
  const samples = b64 => {
    const pcm = new Int16Array(Uint8Array.from(atob(b64), c => c.charCodeAt(0)).buffer);
    const buffer = ctx.createBuffer(1, pcm.length, 16000), f = buffer.getChannelData(0);
    for (let i = 0; i < pcm.length; i++) f[i] = pcm[i] / 32768;
    return buffer;
  };
  if (!navigator.mediaDevices) return {};
  navigator.mediaDevices.getUserMedia = async () => {
    ctx = ctx || new AudioContext({sampleRate: 16000});
    await ctx.resume();
    out = ctx.createMediaStreamDestination();
    const noise = ctx.createBufferSource();
    noise.buffer = samples('%s');
    noise.loop = true;
    noise.connect(out);
    noise.start();
    return out.stream;
  };
  const play = HTMLMediaElement.prototype.play;
  HTMLMediaElement.prototype.play = function () {
    this.addEventListener('playing', () => sounds.push([performance.now(), new URL(this.src).pathname]), {once: true});
    return play.call(this);
  };
  return {
    say(b64, end) {
      if (now) { try { now.stop(); } catch { /* over already */ } }
      now = ctx.createBufferSource();
      now.buffer = samples(b64);
      now.connect(out);
      const at = ctx.currentTime + .02;
      now.start(at);
      ends.push(performance.now() + 20 + end / 16);
    },
    replies() {
      return ends.map((e, i) => {
        const next = ends[i + 1] ?? Infinity, after = sounds.filter(s => s[0] > e && s[0] < next);
        const word = after.find(s => s[1].startsWith('/voice/'));
        return word ? [after[0][0] - e, word[0] - e] : [0, 0];
      });
    },
  };
})();`
