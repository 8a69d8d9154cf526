package main

import (
	"context"
	"encoding/binary"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"time"

	"readback/core/journal"
	"readback/core/utterance"
	"readback/flows"
	"readback/mobile/app"
	"readback/mobile/desktop/web"
	"readback/speech/model"
	"readback/speech/voice"
)

// health is what doctor found of one thing.
type health struct {
	what, state, found string
	fix                string // what to do, empty when all is well
}

const (
	well    = "ok"
	reduced = "less" // the job goes without it
	broken  = "BAD"  // no job without it
)

// doctor tests what a job needs, says in words what is missing and how to get it, and fails when no job can be kept or led.
func doctor(e env, args []string) error {
	f := flags(e, "doctor")
	dir := f.String("dir", dataDir(), "`folder` of the jobs")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if err := none(e, f); err != nil {
		return err
	}
	restore := quiet()
	defer restore()
	bad, less := 0, 0
	for _, look := range []func(env, string) []health{lookAtDisk, lookAtJobs, lookAtData, lookAtVoice, lookAtSpeaker, lookAtMicrophone, lookAtRecogniser, lookAtCamera, lookAtBrowser} {
		for _, h := range look(e, *dir) {
			fmt.Fprintf(e.out, "%-5s %-12s %s\n", h.state, h.what, h.found)
			if h.fix != "" {
				fmt.Fprintf(e.out, "      %-12s -> %s\n", "", h.fix)
			}
			switch h.state {
			case broken:
				bad++
			case reduced:
				less++
			}
		}
	}
	switch {
	case bad > 0:
		return fmt.Errorf("%d things keep a job from being led; see the arrows above", bad)
	case less > 0:
		fmt.Fprintf(e.out, "\nA job can be led. %d things are missing that would help; see the arrows.\n", less)
	default:
		fmt.Fprint(e.out, "\nEverything is there.\n")
	}
	return nil
}

// lookAtDisk writes as a job does.
func lookAtDisk(_ env, dir string) []health {
	h := health{what: "disk", state: broken, fix: "Give a folder that this user can write to, with -dir DIR or READBACK_DIR, or free some space."}
	if err := os.MkdirAll(dir, 0o700); err != nil {
		h.found = err.Error()
		return []health{h}
	}
	d := app.Folder(dir)
	began := time.Now()
	err := journal.WriteFile(d, "doctor", make([]byte, 1<<20))
	took := time.Since(began)
	if err = errors.Join(err, d.Remove("doctor")); err != nil {
		h.found = err.Error()
		return []health{h}
	}
	h.state, h.found, h.fix = well, fmt.Sprintf("%s takes a megabyte in %v", dir, took.Round(time.Millisecond)), ""
	if took > 2*time.Second {
		h.state, h.fix = reduced, "The disk is slow: every answer waits for it. Use a folder on a disk of this computer."
	}
	if address, err := web.Running(dir); err == nil {
		h.found += "; Readback is running on it: " + address
	}
	return []health{h}
}

// lookAtJobs reads every journal.
func lookAtJobs(_ env, dir string) (out []health) {
	list, err := app.Jobs(dir)
	if err != nil {
		return []health{{"jobs", broken, err.Error(), "Look at the rights of the folder."}}
	}
	for _, j := range list {
		data, err := os.ReadFile(filepath.Join(dir, "jobs", j.ID, "journal.jsonl"))
		if err != nil {
			out = append(out, health{"jobs", reduced, j.ID + ": " + err.Error(), "Its record cannot be shown."})
			continue
		}
		if r := journal.Read(data); r.Damage != nil {
			out = append(out, health{"jobs", reduced, fmt.Sprintf("%s: %v", j.ID, r.Damage), "Opening the job keeps the damaged file, puts the rest in order and tells what is lost."})
		}
	}
	return append(out, health{"jobs", well, fmt.Sprintf("%d, of which %d are damaged", len(list), len(out)), ""})
}

func lookAtData(env, string) []health {
	models, err := flows.Builtin()
	if err != nil {
		return []health{{"equipment", broken, err.Error(), "This program was built from damaged files: get it again."}}
	}
	var titles []string
	for _, m := range models {
		titles = append(titles, m.Title)
	}
	return []health{{"equipment", well, strings.Join(titles, "; "), ""}}
}

const getVoice = `Install espeak-ng ("apt-get install espeak-ng"). All words stand on the page meanwhile.`

func lookAtVoice(e env, _ string) []health {
	v, err := voice.Find()
	if err != nil {
		return []health{{"voice", reduced, "none is installed", getVoice}}
	}
	began := time.Now()
	pcm, err := v.Say(e.ctx, "Readback is ready.", voice.Style{})
	if err != nil || len(pcm) < voice.Rate/4 {
		return []health{{"voice", reduced, fmt.Sprintf("%s does not speak: %v", v.Name(), err), getVoice}}
	}
	return []health{{"voice", well, fmt.Sprintf("%s, a sentence in %v", v.Name(), time.Since(began).Round(time.Millisecond)), ""}}
}

func lookAtSpeaker(env, string) []health {
	p, why := openPlayer()
	switch {
	case p != nil:
		p.Close()
		return []health{{"loudspeaker", well, "there", ""}}
	case why != "":
		return []health{{"loudspeaker", reduced, why, "Plug in or switch on a loudspeaker, or let the page speak: its browser needs one."}}
	}
	return []health{{"loudspeaker", well, `the page speaks (this program was built without the tag "sound")`, ""}}
}

// devices lists what the system shows under a pattern.
func devices(pattern string) []string {
	names, err := filepath.Glob(pattern)
	if err != nil {
		return nil
	}
	return names
}

func lookAtMicrophone(env, string) []health {
	if runtime.GOOS != "linux" {
		return []health{{"microphone", well, "the page asks the browser for it", ""}}
	}
	if len(devices("/dev/snd/pcmC*c")) > 0 {
		return []health{{"microphone", well, strings.Join(devices("/dev/snd/pcmC*c"), ", ") + "; the page asks the browser for it", ""}}
	}
	return []health{{"microphone", reduced, "the system shows none", "Plug one in, a headset is best. Touch and keyboard do everything meanwhile."}}
}

// lookAtRecogniser loads it and lets it hear the voice.
func lookAtRecogniser(e env, _ string) []health {
	files, err := model.Locate()
	if err != nil {
		return []health{{"recogniser", reduced, err.Error(), `Run "make speech" once, with a network.`}}
	}
	var out []health
	if files.Rescorer == (model.Rescorer{}) {
		out = append(out, health{"second engine", reduced, "unclear readings get no second opinion", `Run "make speech" once, with a network.`})
	}
	heard := make(chan string, 8)
	failed := make(chan error, 1)
	ctx, cancel := context.WithTimeout(e.ctx, 60*time.Second)
	defer cancel()
	go func() {
		ear, err := app.Recogniser(model.Locate).Open(app.Listener{Partial: func(string) {}, Level: func(float64, float64) {}, Utterance: func(u utterance.Utterance) {
			if b := u.Best(); b != nil && b.Kind == utterance.Emergency {
				heard <- u.Text
			}
		}})
		if err != nil {
			failed <- err
			return
		}
		defer ear.Close()
		v, err := voice.Find()
		if err != nil {
			failed <- errNoVoice
			return
		}
		pcm, err := v.Say(ctx, "I smell gas", voice.Style{})
		if err != nil {
			failed <- errNoVoice
			return
		}
		pcm = append(append(make([]int16, voice.Rate/2), pcm...), make([]int16, 3*voice.Rate)...)
		at := int64(0)
		for i := 0; i < len(pcm); i += 1600 {
			block := pcm[i:min(i+1600, len(pcm))]
			raw := make([]byte, 2*len(block))
			for k, x := range block {
				binary.LittleEndian.PutUint16(raw[2*k:], uint16(x))
			}
			if at += 100; ear.Feed(raw, at) != nil {
				break
			}
		}
		failed <- errors.New("it loads, and did not hear the alarm spoken by this computer's voice")
	}()
	h := health{what: "recogniser", state: reduced, fix: `Run "make speech" once, with a network. Touch and keyboard do everything meanwhile.`}
	select {
	case text := <-heard:
		h.state, h.found, h.fix = well, fmt.Sprintf("hears %q", text), ""
	case err := <-failed:
		h.found = err.Error()
		if errors.Is(err, errNoVoice) {
			h.state, h.fix = well, ""
		}
	case <-ctx.Done():
		h.found = "it does not answer"
	}
	return append(out, h)
}

var errNoVoice = errors.New("it loads; without a voice it was given nothing to hear")

func lookAtCamera(env, string) []health {
	if runtime.GOOS != "linux" {
		return []health{{"camera", well, "the page asks the browser for it", ""}}
	}
	if names := devices("/dev/video*"); len(names) > 0 {
		return []health{{"camera", well, strings.Join(names, ", ") + "; the page asks the browser for it", ""}}
	}
	return []health{{"camera", reduced, "the system shows none", "Nothing needs one: it is a second witness."}}
}

func lookAtBrowser(env, string) []health {
	for _, b := range []string{"chromium", "google-chrome", "firefox", "xdg-open"} {
		if path, err := exec.LookPath(b); err == nil {
			return []health{{"browser", well, path, ""}}
		}
	}
	if runtime.GOOS == "darwin" || runtime.GOOS == "windows" {
		return []health{{"browser", well, "the system's own", ""}}
	}
	return []health{{"browser", reduced, "none is on the path", "Open the printed address in any browser of this computer."}}
}
