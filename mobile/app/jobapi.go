package app

import (
	"archive/zip"
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"path"
	"slices"
	"sort"
	"strconv"
	"strings"
	"time"

	"readback/core/journal"
	"readback/core/protocol"
	"readback/core/report"
)

// ReplayStep is one event of a journal with the page as it was after it.
type ReplayStep struct {
	Event protocol.Event `json:"event"`
	Said  []string       `json:"said,omitempty"`
	Sound string         `json:"sound,omitempty"` // file of what the person said
	View  *protocol.View `json:"view"`
}

func (h *Hub) jobAPI(method, id string, rest []string, body []byte) (any, error) {
	if !validID(id) {
		return nil, errNotFound
	}
	if method == "POST" && len(rest) == 1 && (rest[0] == "details" || rest[0] == "doubt" || rest[0] == "remarks") {
		if _, err := h.store.file(id, journalName); err != nil {
			return nil, errNotFound
		}
		if rest[0] == "details" {
			return h.writeDetails(id, body)
		}
		var d Doubt
		if err := decodeStrict(body, &d); err != nil {
			return nil, bad(err)
		}
		if rest[0] == "doubt" {
			return h.doubt(id, d)
		}
		return h.remark(id, d)
	}
	if method == "POST" && len(rest) == 1 {
		h.mu.Lock()
		defer h.mu.Unlock()
		var err error
		switch rest[0] {
		case "resume":
			err = h.openLocked(id, true)
		case "delete":
			if h.job != nil && h.job.id == id {
				h.leaveLocked()
				h.store.setOpen("")
			}
			err = h.store.remove(id)
		case "restore":
			err = h.store.restore(id)
		default:
			return nil, errNotFound
		}
		if err != nil {
			return nil, err
		}
		h.out.send(Message{Type: "jobs"})
		return h.stateLocked()
	}
	if method == "POST" && len(rest) == 2 && rest[0] == "say" {
		return h.sayAgain(id, rest[1])
	}
	if method != "GET" {
		return nil, errNotFound
	}
	switch {
	case len(rest) == 1 && rest[0] == "steps":
		return h.steps(id)
	case len(rest) == 1 && rest[0] == "details":
		return h.store.details(id), nil
	case len(rest) == 1 && rest[0] == "remarks":
		return h.store.remarks(id), nil
	case len(rest) == 2 && rest[0] == "drawing":
		return h.drawingAt(id, rest[1])
	case len(rest) == 1 && rest[0] == "handover":
		text, err := h.handover(id)
		return struct {
			Text string `json:"text"`
		}{text}, err
	case len(rest) == 1 && rest[0] == "journal":
		data, err := h.store.file(id, journalName)
		return blob{"application/jsonl; charset=utf-8", data}, err
	case len(rest) == 1 && rest[0] == "transcript":
		data, err := h.Transcript(id)
		return blob{kinds[".html"], data}, err
	case len(rest) == 1 && rest[0] == "export.zip":
		data, err := h.export(id)
		return blob{"application/zip", data}, err
	case len(rest) == 2 && media[rest[0]].ext != "" && path.Ext(rest[1]) == media[rest[0]].ext:
		data, err := h.media(id, rest[1])
		return blob{media[rest[0]].kind, data}, err
	}
	return nil, errNotFound
}

// media reads a picture or a sound, and holds it to the checksum it was kept with.
func (h *Hub) media(id, name string) ([]byte, error) {
	data, err := h.store.file(id, name)
	if err != nil || path.Ext(name) != media["photo"].ext {
		return data, err
	}
	read, err := h.store.load(id)
	if err != nil {
		return nil, err
	}
	for _, ev := range read.Events {
		if p := ev.Photo; p != nil && p.Name == name && p.SHA256 != "" && p.SHA256 != sum(data) {
			return nil, fmt.Errorf("%s was changed after it was taken: its checksum does not fit", name)
		}
	}
	return data, nil
}

// media are the files of a job beside its journal.
var media = map[string]struct{ ext, kind string }{"photo": {".jpg", "image/jpeg"}, "sound": {".wav", "audio/wav"}}

func (h *Hub) steps(id string) ([]ReplayStep, error) {
	read, err := h.store.load(id)
	if err != nil {
		return nil, err
	}
	files, err := h.store.disk.List(folder(id))
	if err != nil {
		return nil, err
	}
	steps := []ReplayStep{}
	_, _, err = replay(h.cfg.New, read.Events, func(ev protocol.Event, effects []protocol.Effect, m Machine) {
		s := ReplayStep{Event: ev, Sound: soundOf(files, ev)}
		for _, e := range effects {
			if e.Type == protocol.DoSay {
				s.Said = append(s.Said, e.Text)
			}
		}
		if v := m.View(); v != nil {
			c := *v
			c.Log = nil // the replay shows one step; the whole journal in each would be of square size
			s.View = &c
		}
		steps = append(steps, s)
	})
	return steps, err
}

// Transcript is the job's record as one self-contained HTML page.
func (h *Hub) Transcript(id string) ([]byte, error) {
	if !validID(id) {
		return nil, errNotFound
	}
	read, err := h.store.load(id)
	if err != nil {
		return nil, err
	}
	return recordWith(read, func(name string) ([]byte, error) { return h.store.file(id, name) }, h.cfg.New, h.store.details(id), h.store.remarks(id))
}

// Record is the record of a journal in fsys, its pictures beside it, as one self-contained HTML page.
func Record(fsys fs.FS, name string) ([]byte, error) {
	data, err := fs.ReadFile(fsys, name)
	if err != nil {
		return nil, err
	}
	html, err := record(journal.Read(data), func(name string) ([]byte, error) { return fs.ReadFile(fsys, name) }, NewMachine)
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	return html, nil
}

func record(read *journal.Reading, file func(name string) ([]byte, error), newMachine func(protocol.Begin) (Machine, error)) ([]byte, error) {
	return recordWith(read, file, newMachine, report.Details{}, nil)
}

func recordWith(read *journal.Reading, file func(name string) ([]byte, error), newMachine func(protocol.Begin) (Machine, error), details report.Details, remarks []report.Remark) ([]byte, error) {
	lang := ""
	if len(read.Events) > 0 && read.Events[0].Begin != nil {
		lang = read.Events[0].Begin.Lang
	}
	w := wordsOf(lang)
	j := report.Job{Words: w, Photos: map[string][]byte{}, Clock: clock, Details: details, Remarks: remarks}
	var wrong []string
	for _, ev := range read.Events {
		if ev.Lost != nil {
			wrong = append(wrong, lostWords(w, ev.Lost, clock))
		}
	}
	if lost := read.Lost(); lost != nil {
		wrong = append(wrong, lostWords(w, lost, clock))
	}
	if len(read.Mended) > 0 {
		wrong = append(wrong, w.Term("app.bits", "lines", strings.Trim(fmt.Sprint(read.Mended), "[]")))
	}
	_, others, err := replay(newMachine, read.Events, func(ev protocol.Event, effects []protocol.Effect, m Machine) {
		e := report.Entry{Event: ev, Effects: effects}
		if v := m.View(); v != nil {
			e.View = *v
		}
		j.Entries = append(j.Entries, e)
		for _, name := range pictures(ev) {
			data, err := file(name)
			if err != nil {
				continue // the record names it as missing
			}
			if ev.Photo != nil && ev.Photo.Name == name && ev.Photo.SHA256 != "" && ev.Photo.SHA256 != sum(data) {
				wrong = append(wrong, w.Term("app.picture-changed", "name", name))
				continue
			}
			j.Photos[name] = data
		}
	})
	if err != nil {
		return nil, err
	}
	if others > 0 {
		wrong = append(wrong, w.Term("app.others-shown", "n", fmt.Sprint(others)))
	}
	slices.Sort(wrong)
	j.Damage = strings.Join(slices.Compact(wrong), " ")
	var b bytes.Buffer
	err = report.HTML(&b, j)
	return b.Bytes(), err
}

// pictures names the files that an event speaks of.
func pictures(ev protocol.Event) (names []string) {
	if ev.Photo != nil {
		names = append(names, ev.Photo.Name)
	}
	if ev.Seen != nil && ev.Seen.Photo != "" {
		names = append(names, ev.Seen.Photo)
	}
	return slices.DeleteFunc(names, func(n string) bool { return !fs.ValidPath(n) || path.Base(n) != n })
}

// export packs the record, the journal, the pictures and the sound. Names are sorted and times fixed: the same job gives the same bytes.
func (h *Hub) export(id string) ([]byte, error) {
	html, err := h.Transcript(id)
	if err != nil {
		return nil, err
	}
	entries, err := h.store.disk.List(folder(id))
	if err != nil {
		return nil, err
	}
	files := map[string][]byte{"record.html": html}
	names := []string{"record.html"}
	for _, e := range entries {
		if n := e.Name; n == journalName || path.Ext(n) == media["photo"].ext || path.Ext(n) == media["sound"].ext {
			if files[n], err = h.store.file(id, n); err != nil {
				return nil, err
			}
			names = append(names, n)
		}
	}
	sort.Strings(names)
	var b bytes.Buffer
	z := zip.NewWriter(&b)
	for _, n := range names {
		w, err := z.CreateHeader(&zip.FileHeader{Name: n, Method: zip.Deflate, Modified: time.Date(1980, 1, 1, 0, 0, 0, 0, time.UTC)})
		if err != nil {
			return nil, err
		}
		if _, err := w.Write(files[n]); err != nil {
			return nil, err
		}
	}
	if err := z.Close(); err != nil {
		return nil, fmt.Errorf("packing job %s: %w", id, err)
	}
	return b.Bytes(), nil
}

var errNoDrawing = httpError{404, errors.New("drawing: no appliance is known yet")}

// handover is the summary of a finished job for the person who takes over.
func (h *Hub) handover(id string) (string, error) {
	steps, err := h.steps(id)
	if err != nil {
		return "", err
	}
	if v := steps[len(steps)-1].View; v != nil && v.Handover != "" {
		return v.Handover, nil
	} else if v != nil && v.Ended != "" {
		return v.Said, nil // nobody has to take over: how it ended
	}
	return "", httpError{404, errors.New("handover: the job is not finished")}
}

// sayAgain speaks once more what was said after one event of a journal, or the summary, for the replay.
func (h *Hub) sayAgain(id, seq string) (any, error) {
	steps, err := h.steps(id)
	if err != nil {
		return nil, err
	}
	text := ""
	if seq == "handover" {
		if text, err = h.handover(id); err != nil {
			return nil, err
		}
	} else if n, err := strconv.Atoi(seq); err == nil && n >= 1 && n <= len(steps) {
		text = strings.Join(steps[n-1].Said, " ")
	} else {
		return nil, errNotFound
	}
	if text != "" {
		h.out.do(func(host Host) { host.Hush(); host.Say("replay-"+seq, text, "info", false) })
	}
	return struct{}{}, nil
}
