package app

import (
	"encoding/json"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"runtime/debug"
	"strings"

	"readback/core/journal"
	"readback/core/protocol"
	"readback/core/utterance"
	"readback/core/words"
)

// Recorded is a job: a machine with its journal; the two never part. An event goes through the machine, then to the disk, and only then is
// anything it causes said or shown; one that the machine fails at, or that cannot be kept, is taken out of the machine again. An
// emergency goes the other way round: it is acted on first. It is not safe for concurrent use.
type Recorded struct {
	make     func(protocol.Begin) (Machine, error)
	disk     journal.Disk
	name     string // of the journal; empty: none is kept
	journal  *journal.Journal
	machine  Machine
	events   []protocol.Event // all that the machine took
	unsaved  int              // of these, the last that are not on the disk
	anew     int              // how often the journal was found gone or changed
	full     bool             // nothing more could be written: ordinary answers are refused
	told     bool             // that something acted on is not in the record
	leaving  bool             // while it is full: the person asked to stop, and what follows leaves the work place safe
	tried    bool             // its journal's name was taken by a try that got no further
	reserved bool             // room was asked for
	spare    bool             // room for the end of the job is kept
	others   int              // answers that belong to another question now
	broken   error            // the machine could not be made again
	begin    protocol.Begin
	urgent   bool         // the job begins with an emergency: its beginning is taken even where it cannot be kept
	tell     func(string) // what the person has to know beside the answer to the event
}

// The errors of Step. Their texts are for the person.
var (
	errUnwritten = errors.New("the record cannot be written, so the last answer was not taken")
	errFull      = errors.New("nothing more can be written on this device, so new answers cannot be kept. Say stop, and I lead you through leaving " +
		"everything safe; or free some space and answer again")
	errMistake = errors.New("a mistake in the program showed itself at the last answer. It was set aside for the report, and the job is as it was before")
	errParked  = errors.New("the job is parked: open it again from the list")
)

// reserveSize is kept free for the end of the job: some 500 answers.
const (
	reserveName = "reserve"
	reserveSize = 128 << 10
)

// asideName holds the events that the machine failed at, for the report of the mistake.
const asideName = "set-aside.jsonl"

// Folder is a folder of this machine as a disk.
func Folder(dir string) journal.Disk { return disk{dir} }

// NewRecorded begins a job. name is its journal's, empty for none; a journal that cannot be made is no error when the first event is
// urgent, so it is made by the first event that is kept.
func NewRecorded(newMachine func(protocol.Begin) (Machine, error), d journal.Disk, name string, begin protocol.Begin, tell func(string)) (*Recorded, error) {
	r := &Recorded{make: newMachine, disk: d, name: name, begin: begin, tell: tell}
	m, err := r.made(begin)
	if err != nil {
		return nil, err
	}
	r.machine = m
	return r, nil
}

// openRecorded goes on with a job that was read and repaired.
func openRecorded(newMachine func(protocol.Begin) (Machine, error), d journal.Disk, name string, read *journal.Reading, tell func(string)) (*Recorded, error) {
	r := &Recorded{make: newMachine, disk: d, name: name, events: read.Events, tell: tell}
	if err := r.again(); err != nil {
		return nil, err
	}
	j, err := journal.Continue(d, name, read)
	if err != nil {
		return nil, err
	}
	r.journal = j
	return r, nil
}

// made is newMachine whose panic is an error.
func (r *Recorded) made(b protocol.Begin) (m Machine, err error) {
	defer caught(&err)
	return r.make(b)
}

// words are those of the language in which the job began.
func (r *Recorded) words() *words.Words {
	b := &r.begin
	if len(r.events) > 0 && r.events[0].Begin != nil {
		b = r.events[0].Begin
	}
	return wordsOf(b.Lang)
}

// wordsOf are the words of a language, the English ones where it does not come with the program.
func wordsOf(lang string) *words.Words {
	l, err := load(lang)
	if err != nil {
		if l, err = load("en"); err != nil {
			panic(err) // a test holds that it can be read
		}
	}
	return l.words
}

// caught turns a panic into an ErrMistake with the place of it.
func caught(err *error) {
	if x := recover(); x != nil {
		*err = fmt.Errorf("%w (%v)\n%s", errMistake, x, debug.Stack())
	}
}

// step is the machine's, whose panic is an error.
func step(m Machine, ev protocol.Event) (effects []protocol.Effect, err error) {
	defer caught(&err)
	return m.Step(ev)
}

// View is the machine's; nil where it has none or fails at it.
func (r *Recorded) View() (v *protocol.View) {
	if r.machine == nil || r.broken != nil {
		return nil
	}
	defer func() {
		if recover() != nil {
			v = nil
		}
	}()
	return r.machine.View()
}

// Seq is the number of the last event taken.
func (r *Recorded) Seq() int64 { return int64(len(r.events)) }

// Saved is the number of the last event that is on the disk.
func (r *Recorded) Saved() int64 { return int64(len(r.events) - r.unsaved) }

// Others is how many answers the last replay left out, because the program asks otherwise now.
func (r *Recorded) Others() int { return r.others }

// again makes the machine anew from what it took.
func (r *Recorded) again() error {
	if len(r.events) == 0 {
		m, err := r.made(r.begin)
		r.machine, r.broken = m, err
		return err
	}
	m, others, err := replay(r.made, r.events, nil)
	r.machine, r.others, r.broken = m, others, err
	return err
}

// Step takes one event. act carries out what follows from it: after the event is on the disk, but for an emergency before that, and
// there a second time where the machine failed at it first. An error means that nothing was taken; for an emergency it may come after act.
func (r *Recorded) Step(ev protocol.Event, act func([]protocol.Effect)) error {
	if err := ev.Check(); err != nil {
		return bad(err)
	}
	class := ev.Alarm()
	if r.broken != nil {
		if class == "" {
			return errParked
		}
		act(lastEffects(r.words(), "", class))
		return nil
	}
	ev.Seq = r.Seq() + 1
	var view *protocol.View
	if view = r.View(); view != nil {
		ev.Step = view.Step.ID
	}
	if class == "" && r.full && !r.ends(&ev, view) && !r.room() {
		return errFull
	}
	effects, err := step(r.machine, ev)
	if errors.Is(err, errMistake) {
		return r.mistake(ev, class, err, act)
	}
	if err != nil {
		return bad(fmt.Errorf("event %d: %w", ev.Seq, err))
	}
	if class != "" {
		act(effects)
	}
	r.events = append(r.events, ev)
	r.unsaved++
	if err := r.write(); err != nil {
		r.full = true
		if class == "" && !r.ends(&ev, view) {
			r.events, r.unsaved = r.events[:len(r.events)-1], r.unsaved-1
			err = fmt.Errorf("%w: %w", errUnwritten, err)
			if r.again() != nil {
				return fmt.Errorf("%w. %w", err, errParked)
			}
			return err
		}
		if r.spare && r.disk.Remove(r.reserve()) == nil {
			r.spare = false
			err = r.write()
		}
		if err != nil && !r.told {
			r.told = true
			r.tell(r.words().Term("app.unrecorded", "why", err.Error()))
		}
	}
	if class == "" {
		act(effects)
	}
	return nil
}

// ends tells whether an event is taken even where it cannot be kept: what leaves the work place safe, and what is no answer.
func (r *Recorded) ends(ev *protocol.Event, v *protocol.View) bool {
	if ev.Type != protocol.EvSaid {
		return ev.Type == protocol.EvBegin && r.urgent || ev.Type == protocol.EvSpoke || ev.Type == protocol.EvTick || ev.Type == protocol.EvDevice || ev.Type == protocol.EvResume
	}
	if !r.full {
		return false
	}
	best := ev.Said.Best()
	if best != nil && best.Kind == utterance.Command {
		if best.ID == "stop" || best.ID == "give-up" || best.ID == "enough" {
			r.leaving = true
		}
		return true
	}
	return r.leaving || v != nil && (v.State == "emergency" || v.Step.Kind == "act" || v.StageNo > 12)
}

func (r *Recorded) reserve() string { return path.Join(path.Dir(r.name), reserveName) }

// write puts on the disk what is not there yet.
func (r *Recorded) write() error {
	if r.name == "" {
		r.unsaved = 0
		return nil
	}
	if r.journal == nil {
		j, err := journal.Create(r.disk, r.name)
		if errors.Is(err, fs.ErrExist) && r.tried {
			if err = r.disk.Remove(r.name); err == nil {
				j, err = journal.Create(r.disk, r.name)
			}
		}
		if err != nil {
			r.tried = r.tried || !errors.Is(err, fs.ErrExist)
			return err
		}
		r.journal = j
	}
	for r.unsaved > 0 {
		if err := r.journal.Append(r.events[len(r.events)-r.unsaved]); err != nil {
			return err
		}
		r.unsaved--
	}
	if n := r.journal.Anew(); n > r.anew {
		r.anew = n
		r.tell(r.words().Term("app.rewritten"))
	}
	return nil
}

// Reserve keeps room for the end of the job.
func (r *Recorded) Reserve() error {
	if r.name == "" {
		return nil
	}
	r.reserved = true
	room := []byte(strings.Repeat("Room for the end of this job. ", reserveSize/30+1))
	if err := journal.WriteFile(r.disk, r.reserve(), room[:reserveSize]); err != nil {
		return err
	}
	r.spare = true
	return nil
}

// room finds out whether the disk takes something again.
func (r *Recorded) room() bool {
	if r.reserved && r.Reserve() != nil {
		return false
	}
	if r.write() != nil {
		return false
	}
	r.full, r.leaving, r.told = false, false, false
	r.tell(r.words().Term("app.room-again"))
	return true
}

// mistake sets an event aside that the machine failed at, and makes the machine anew without it.
func (r *Recorded) mistake(ev protocol.Event, class string, cause error, act func([]protocol.Effect)) error {
	if class != "" {
		job := ""
		if len(r.events) > 0 && r.events[0].Begin != nil {
			job = r.events[0].Begin.Job
		}
		act(lastEffects(r.words(), job, class))
	}
	if r.name != "" {
		r.setAside(ev, cause)
	}
	if err := r.again(); err != nil {
		return fmt.Errorf("%w. %w", errMistake, errParked)
	}
	if class == "" {
		return errMistake
	}
	// Without all that came with it the emergency may be taken, so that the job knows of it.
	plain := protocol.Event{Seq: r.Seq() + 1, At: ev.At, Step: ev.Step, Type: protocol.EvSaid,
		Said: &utterance.Utterance{Source: ev.Said.Source, Meanings: []utterance.Meaning{{Kind: utterance.Emergency, ID: class}}}}
	effects, err := step(r.machine, plain)
	if err != nil {
		if r.again() != nil {
			return fmt.Errorf("%w. %w", errMistake, errParked)
		}
		return errMistake
	}
	act(effects)
	r.events = append(r.events, plain)
	r.unsaved++
	r.tell(errMistake.Error())
	if err := r.write(); err != nil {
		r.full = true
	}
	return nil
}

// setAside writes an event beside the journal. A disk that cannot take it costs the report, and the person is told of the mistake anyhow.
func (r *Recorded) setAside(ev protocol.Event, cause error) {
	line, err := json.Marshal(struct {
		Event protocol.Event `json:"event"`
		Cause string         `json:"cause"`
	}{ev, cause.Error()})
	if err != nil {
		return
	}
	name := path.Join(path.Dir(r.name), asideName)
	before, err := r.disk.ReadFile(name)
	if err != nil && !errors.Is(err, fs.ErrNotExist) || len(before) > 1<<20 {
		return
	}
	_ = journal.WriteFile(r.disk, name, append(append(before, line...), '\n'))
}

// Close lets go of the journal.
func (r *Recorded) Close() {
	if r.journal == nil {
		return
	}
	if r.unsaved > 0 {
		_ = r.write() // the last chance; what fails here was told before
	}
	r.journal.Close()
	if r.spare {
		_ = r.disk.Remove(r.reserve()) // room for nobody; made again when the job goes on
	}
}

// replay runs events through a fresh machine; each is called after every event when it is not nil. An answer to a step that the
// program now asks otherwise is not given to another question: time passes instead of it. others counts these.
func replay(newMachine func(protocol.Begin) (Machine, error), events []protocol.Event, each func(protocol.Event, []protocol.Effect, Machine)) (m Machine, others int, err error) {
	var before *protocol.View
	defer caught(&err)
	err = journal.Replay(events, func(ev protocol.Event) error {
		if m == nil {
			var err error
			if m, err = newMachine(*events[0].Begin); err != nil {
				return err
			}
		}
		fed := ev
		if before != nil && !fits(&ev, before) {
			others++
			fed = protocol.Event{Seq: ev.Seq, At: ev.At, Type: protocol.EvTick}
		}
		effects, err := m.Step(fed)
		if err != nil {
			return err
		}
		before = m.View()
		if each != nil {
			each(ev, effects, m)
		}
		return nil
	})
	if err != nil {
		return nil, 0, err
	}
	return m, others, nil
}

// fits tells whether an event belongs to the step that is open. What counts in every state always does, and so does what an older
// program noted without its step.
func fits(ev *protocol.Event, v *protocol.View) bool {
	if ev.Step == "" || ev.Step == v.Step.ID || ev.Alarm() != "" {
		return true
	}
	switch ev.Type {
	case protocol.EvSaid:
		return ev.Said != nil && (ev.Said.Best() == nil || ev.Said.Best().Kind == utterance.Command)
	case protocol.EvUndo:
		return false
	}
	return true
}
