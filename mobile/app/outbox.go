package app

import (
	"encoding/json"
	"sync"

	"readback/core/protocol"
)

// Message is one item of the stream to the page. Type is that of an effect (say, hush, cue, show, photo, listen, end) with
// the effect's own fields, or one of the hub's: ear (Ear), eye (Eye), device (Device), jobs (the list changed), trouble (Text).
type Message struct {
	N      int64            `json:"n"` // number in the stream
	Type   string           `json:"type"`
	ID     string           `json:"id,omitempty"`
	Text   string           `json:"text,omitempty"`
	Level  string           `json:"level,omitempty"`
	Slow   bool             `json:"slow,omitempty"`
	View   *protocol.View   `json:"view,omitempty"`
	Ear    *EarView         `json:"ear,omitempty"`
	Device *protocol.Device `json:"device,omitempty"`
	Eye    *EyeView         `json:"eye,omitempty"`
}

func effectMessage(e protocol.Effect) Message {
	return Message{Type: e.Type, ID: e.ID, Text: e.Text, Level: e.Level, Slow: e.Slow}
}

// outbox delivers host calls and stream messages in order from one goroutine, so that nobody outside is ever called
// with the hub's lock held.
type outbox struct {
	host Host
	mu   sync.Mutex
	cond *sync.Cond
	work []func()
	n    int64
	subs map[int]func([]byte)
	next int
	shut bool
	done chan struct{}
}

func newOutbox(host Host) *outbox {
	o := &outbox{host: host, subs: map[int]func([]byte){}, done: make(chan struct{})}
	o.cond = sync.NewCond(&o.mu)
	go o.run()
	return o
}

func (o *outbox) run() {
	defer close(o.done)
	o.mu.Lock()
	defer o.mu.Unlock()
	for {
		for len(o.work) == 0 {
			if o.shut {
				return
			}
			o.cond.Wait()
		}
		w := o.work
		o.work = nil
		o.mu.Unlock()
		for _, f := range w {
			f()
		}
		o.mu.Lock()
	}
}

func (o *outbox) later(f func()) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.shut {
		return
	}
	o.work = append(o.work, f)
	o.cond.Signal()
}

func (o *outbox) do(f func(Host)) { o.later(func() { f(o.host) }) }

// send numbers the message and hands it to all who are subscribed when it is delivered.
func (o *outbox) send(m Message) {
	o.mu.Lock()
	defer o.mu.Unlock()
	if o.shut {
		return
	}
	o.n++
	m.N = o.n
	data, err := json.Marshal(m)
	if err != nil {
		panic("ui: a message cannot be encoded: " + err.Error()) // only NaN could do it, and a view has none
	}
	o.work = append(o.work, func() { o.each(data) })
	o.cond.Signal()
}

// sendView copies the view, so that the machine may change its own.
func (o *outbox) sendView(v *protocol.View) {
	o.mu.Lock()
	c := *v
	c.Stream = o.n + 1
	o.mu.Unlock()
	o.send(Message{Type: protocol.DoShow, View: &c})
}

func (o *outbox) each(data []byte) {
	o.mu.Lock()
	fns := make([]func([]byte), 0, len(o.subs))
	for i := range o.next {
		if f := o.subs[i]; f != nil {
			fns = append(fns, f)
		}
	}
	o.mu.Unlock()
	for _, f := range fns {
		f(data)
	}
}

func (o *outbox) subscribe(fn func([]byte)) func() {
	o.mu.Lock()
	defer o.mu.Unlock()
	id := o.next
	o.next++
	o.subs[id] = fn
	return func() {
		o.mu.Lock()
		defer o.mu.Unlock()
		delete(o.subs, id)
	}
}

func (o *outbox) last() int64 {
	o.mu.Lock()
	defer o.mu.Unlock()
	return o.n
}

// close delivers what is queued and stops.
func (o *outbox) close() {
	o.mu.Lock()
	o.shut = true
	o.cond.Signal()
	o.mu.Unlock()
	<-o.done
}
