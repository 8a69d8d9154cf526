package web

import (
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"sync"
	"time"

	"readback/mobile/app"
	"readback/speech/audio"
)

// Player plays a WAV on the computer's own loudspeaker and returns when it ended or ctx is done.
type Player interface {
	Play(ctx context.Context, wav []byte) error
	Close()
}

// Voice speaks text into a WAV. Level is the saying's: info, caution, warning, danger, emergency.
type Voice func(ctx context.Context, text, level string, slow bool) ([]byte, error)

// mouth speaks one saying after the other: through the computer's sound device when there is one, else in the page. It is the
// Host of the hub.
type mouth struct {
	voice  Voice
	player Player                   // nil: the page plays
	cues   func(name string) []byte // WAV of an earcon, nil when there is none
	page   func(msg []byte) bool    // to the page that sounds

	mu    sync.Mutex
	hub   *app.Hub
	queue []saying
	now   *saying
	quit  context.CancelFunc
	wake  chan struct{}
	pages int
	wavs  map[string][]byte
	order []string
	told  bool              // that the voice fails
	ready map[string][]byte // WAVs of texts that must be heard whatever fails
	ended chan spokenEnd
}

type saying struct {
	id, text, level string
	slow            bool
}

type spokenEnd struct {
	id  string
	cut bool
}

func newMouth(voice Voice, p Player, cues func(string) []byte) *mouth {
	return &mouth{voice: voice, player: p, cues: cues, wake: make(chan struct{}, 1), wavs: map[string][]byte{}}
}

// run speaks until ctx ends.
func (m *mouth) run(ctx context.Context) {
	for {
		s, sctx, ok := m.next(ctx)
		if !ok {
			select {
			case <-ctx.Done():
				return
			case <-m.wake:
				continue
			}
		}
		cut := m.speak(sctx, s)
		m.mu.Lock()
		m.now = nil
		m.quit()
		m.mu.Unlock()
		m.spoke(s.id, cut)
	}
}

// next takes the next saying when it can be heard: at once with a player, else when a page is there.
func (m *mouth) next(ctx context.Context) (saying, context.Context, bool) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if len(m.queue) == 0 || m.player == nil && m.pages == 0 {
		return saying{}, nil, false
	}
	s := m.queue[0]
	m.queue = m.queue[1:]
	sctx, quit := context.WithCancel(ctx)
	m.now, m.quit = &s, quit
	m.ended = make(chan spokenEnd, 4)
	return s, sctx, true
}

// voiceTime is how long a voice may take for a saying; an emergency waits less. Judgment, no source: espeak-ng takes some ten milliseconds
// a sentence.
const (
	voiceTime = 8 * time.Second
	alarmTime = 1500 * time.Millisecond
)

// prepare has the last words spoken before they are needed, so that they can be heard where the voice hangs or is gone.
func (m *mouth) prepare(ctx context.Context, texts []string) {
	for _, t := range texts {
		vctx, cancel := context.WithTimeout(ctx, voiceTime)
		wav, err := m.voice(vctx, t, "emergency", false)
		cancel()
		if err != nil {
			return // told by the first saying that fails
		}
		m.mu.Lock()
		if m.ready == nil {
			m.ready = map[string][]byte{}
		}
		m.ready[t] = wav
		m.mu.Unlock()
	}
}

// spoken is the sound of a saying. Where the voice fails at an emergency it is what was spoken in advance, or the cue of danger.
func (m *mouth) spoken(ctx context.Context, s saying) []byte {
	limit := voiceTime
	if s.level == "emergency" || s.level == "danger" {
		limit = alarmTime
	}
	vctx, cancel := context.WithTimeout(ctx, limit)
	defer cancel()
	wav, err := m.voice(vctx, s.text, s.level, s.slow)
	if err == nil {
		m.mu.Lock()
		again := m.told
		m.told = false
		m.mu.Unlock()
		if again {
			m.note("The voice speaks again.")
		}
		return wav
	}
	if ctx.Err() != nil {
		return nil
	}
	if vctx.Err() != nil {
		err = fmt.Errorf("it did not answer in %v", limit)
	}
	m.fail(ctx, "The voice cannot speak: "+err.Error()+". All words stand on the page.")
	if s.level != "emergency" && s.level != "danger" {
		return nil
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	if ready := m.ready[s.text]; ready != nil {
		return ready
	}
	if ready := m.ready["Get out. Take everyone along."]; ready != nil && s.level == "emergency" {
		return ready
	}
	return m.cues("danger")
}

// speak returns whether the saying was cut off.
func (m *mouth) speak(ctx context.Context, s saying) bool {
	wav := m.spoken(ctx, s)
	if wav == nil {
		return true
	}
	if m.player != nil {
		if err := m.player.Play(ctx, wav); err == nil {
			return false
		} else if ctx.Err() == nil {
			m.fail(ctx, "No sound comes out of this computer: "+err.Error()+". The page speaks instead.")
			m.mu.Lock()
			m.player = nil
			m.mu.Unlock()
		} else {
			return true
		}
	}
	path := "/voice/" + s.id + ".wav"
	m.keep(path, wav)
	m.page(soundMessage(path, s.id))
	limit := time.NewTimer(wavLength(wav) + 5*time.Second)
	defer limit.Stop()
	for {
		select {
		case <-ctx.Done():
			return true
		case <-limit.C:
			return true
		case e := <-m.ended:
			if e.id == s.id {
				return e.cut
			}
		}
	}
}

func (m *mouth) fail(ctx context.Context, reason string) {
	m.mu.Lock()
	first := !m.told
	m.told = true
	m.mu.Unlock()
	if first && ctx.Err() == nil {
		m.failed(reason)
	}
}

// note shows news on the page.
func (m *mouth) note(text string) {
	if m.page != nil {
		m.page(note("trouble", text))
	}
}

func soundMessage(url, id string) []byte {
	data, err := json.Marshal(map[string]string{"type": "sound", "url": url, "id": id})
	if err != nil {
		panic("readback: a sound message cannot be encoded")
	}
	return data
}

// keep holds the last sixteen sounds for the page to fetch.
func (m *mouth) keep(path string, wav []byte) {
	m.mu.Lock()
	defer m.mu.Unlock()
	if _, there := m.wavs[path]; !there {
		m.order = append(m.order, path)
	}
	m.wavs[path] = wav
	if len(m.order) > 16 {
		delete(m.wavs, m.order[0])
		m.order = m.order[1:]
	}
}

func (m *mouth) wav(path string) []byte {
	if name, ok := strings.CutPrefix(path, "/cue/"); ok {
		return m.cues(strings.TrimSuffix(name, ".wav"))
	}
	m.mu.Lock()
	defer m.mu.Unlock()
	return m.wavs[path]
}

// call takes the page's news that a sound ended; false: the message is not that.
func (m *mouth) call(msg []byte) bool {
	id, cut, ok := spokeCall(msg)
	if ok {
		m.mu.Lock()
		if m.now != nil && m.ended != nil {
			select {
			case m.ended <- spokenEnd{id, cut}:
			default: // a page that says so five times has said it
			}
		}
		m.mu.Unlock()
	}
	return ok
}

func (m *mouth) signal() {
	select {
	case m.wake <- struct{}{}:
	default:
	}
}

func (m *mouth) pageCame() {
	m.mu.Lock()
	m.pages++
	m.mu.Unlock()
	m.signal()
}

func (m *mouth) pageWent() {
	m.mu.Lock()
	m.pages = 0
	if m.player == nil && m.now != nil {
		m.quit()
	}
	m.mu.Unlock()
}

// Say queues a saying. While nobody can hear, only the newest is kept, and what warns of danger.
func (m *mouth) Say(id, text, level string, slow bool) {
	m.mu.Lock()
	var dropped []saying
	if m.player == nil && m.pages == 0 {
		kept := m.queue[:0]
		for _, s := range m.queue {
			if s.level == "danger" || s.level == "emergency" {
				kept = append(kept, s)
			} else {
				dropped = append(dropped, s)
			}
		}
		m.queue = kept
	}
	m.queue = append(m.queue, saying{id, text, level, slow})
	m.mu.Unlock()
	m.signal()
	m.cutOff(dropped)
}

// cutOff tells the hub from a goroutine of its own: a host never calls back from inside.
func (m *mouth) cutOff(list []saying) {
	if len(list) == 0 {
		return
	}
	go func() {
		for _, s := range list {
			m.spoke(s.id, true)
		}
	}()
}

// Hush stops at once and forgets what was to come.
func (m *mouth) Hush() {
	m.mu.Lock()
	dropped := m.queue
	m.queue = nil
	if m.now != nil {
		m.quit()
	}
	m.mu.Unlock()
	m.cutOff(dropped)
}

// Cue sounds an earcon.
func (m *mouth) Cue(name string) {
	m.mu.Lock()
	p := m.player
	m.mu.Unlock()
	if p == nil {
		m.page(soundMessage("/cue/"+name+".wav", ""))
		return
	}
	wav := m.cues(name)
	if wav == nil {
		return
	}
	go func() {
		ctx, cancel := context.WithTimeout(context.Background(), 3*time.Second)
		defer cancel()
		_ = p.Play(ctx, wav) // a cue is also a shape on the page; a device that is gone is told by the next saying
	}()
}

// TakePhoto, KeepAwake, Vibrate and Share: the page shows the camera button and the cue's shape; a computer does not sleep under
// the hand and does not buzz, and the page downloads files itself.
func (m *mouth) TakePhoto(string) {}
func (m *mouth) KeepAwake(bool)   {}
func (m *mouth) Vibrate(string)   {}
func (m *mouth) Share(string)     {}

func wavLength(wav []byte) time.Duration {
	rate, channels, pcm, err := audio.PCM16(wav)
	if err != nil {
		return 0
	}
	return time.Duration(len(pcm)/2/channels) * time.Second / time.Duration(rate)
}
