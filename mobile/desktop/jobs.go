package main

import (
	"fmt"
	"os"
	"path/filepath"
	"time"

	"readback/mobile/app"
)

// jobs lists what is in the folder.
func jobs(e env, args []string) error {
	f := flags(e, "jobs")
	dir := f.String("dir", dataDir(), "folder of the jobs")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if err := none(e, f); err != nil {
		return err
	}
	if st, err := os.Stat(*dir); *dir != dataDir() && (err != nil || !st.IsDir()) { // the usual folder is made with the first job
		return fmt.Errorf("there is no folder %s", *dir)
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
		if j.Damage != "" {
			state += "; " + j.Damage
		}
		fmt.Fprintf(e.out, "%s  %s  %s  %s\n", j.ID, time.UnixMilli(j.At).Format("2006-01-02 15:04"), j.Title, state)
	}
	return nil
}

// transcript writes a journal's record. Pictures are looked for beside the journal.
func transcript(e env, args []string) error {
	f := flags(e, "transcript")
	out := f.String("o", "", "file to write; empty: the standard output")
	if err := parse(e, f, args); err != nil {
		return err
	}
	if f.NArg() != 1 {
		fmt.Fprintln(e.err, "readback transcript: give one journal, the file journal.jsonl in a job's folder")
		f.Usage()
		return errUsage
	}
	name := f.Arg(0)
	if st, err := os.Stat(name); err == nil && st.IsDir() {
		name = filepath.Join(name, "journal.jsonl")
	}
	data, err := app.Record(os.DirFS(filepath.Dir(name)), filepath.Base(name))
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
	lang := f.String("lang", "en", "`language` of the labels")
	if err := parse(e, f, args); err != nil {
		return err
	}
	svg, err := app.DrawAll(*lang, f.Arg(0))
	if err != nil {
		return err
	}
	return write(e, *out, []byte(svg))
}
