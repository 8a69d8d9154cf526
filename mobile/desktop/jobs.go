package main

import (
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"time"

	"readback/mobile/app"
)

// jobs lists what is in the folder.
func jobs(e env, args []string) error {
	f := flags(e, "jobs")
	dir := f.String("dir", dataDir(), "folder of the jobs")
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	list, err := app.Jobs(*dir)
	if err != nil {
		return err
	}
	for _, j := range list {
		state := j.Outcome
		if state == "" {
			state = "open: " + j.Stage
		}
		fmt.Fprintf(e.out, "%s  %s  %s  %s\n", j.ID, time.UnixMilli(j.At).Format("2006-01-02 15:04"), j.Title, state)
	}
	return nil
}

// transcript writes a journal's record. Pictures are looked for beside the journal.
func transcript(e env, args []string) error {
	f := flags(e, "transcript")
	out := f.String("o", "", "file to write; empty: the standard output")
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	if f.NArg() != 1 {
		return errors.New("transcript: give one journal")
	}
	data, err := app.Record(os.DirFS(filepath.Dir(f.Arg(0))), filepath.Base(f.Arg(0)))
	if err != nil {
		return err
	}
	return write(e, *out, data)
}

// write puts data into a file, or on the standard output when it has no name.
func write(e env, name string, data []byte) error {
	if name == "" {
		_, err := e.out.Write(data)
		return err
	}
	return os.WriteFile(name, data, 0o644)
}

// draw writes the drawing of an appliance's circuit.
func draw(e env, args []string) error {
	f := flags(e, "draw")
	out := f.String("o", "", "file to write; empty: the standard output")
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	svg, err := app.DrawAll(f.Arg(0))
	if err != nil {
		return err
	}
	return write(e, *out, []byte(svg))
}

// check tells what is there and what to do about what is not.
func check(e env, args []string) error {
	row := func(what, state string) { fmt.Fprintf(e.out, "%-12s %s\n", what, state) }
	if path, err := exec.LookPath("espeak-ng"); err == nil {
		row("voice", path)
	} else if path, err := exec.LookPath("flite"); err == nil {
		row("voice", path)
	} else {
		row("voice", "none: install espeak-ng; all words stand on the page meanwhile")
	}
	p, why := openPlayer()
	switch {
	case p != nil:
		row("loudspeaker", "there")
		p.Close()
	case why != "":
		row("loudspeaker", why)
	default:
		row("loudspeaker", "the page speaks (built without the tag sound)")
	}
	if s := hearing(); s.Open != nil {
		row("recogniser", "there")
	} else {
		row("recogniser", "off: "+s.Reason)
	}
	for _, b := range []string{"chromium", "google-chrome", "firefox"} {
		if path, err := exec.LookPath(b); err == nil {
			row("browser", path)
			return nil
		}
	}
	row("browser", "none found on the path; any browser on this computer will do")
	return nil
}
