package main

import (
	"bytes"
	"fmt"
	"path/filepath"
	"slices"
	"strings"

	"readback/core/appliance"
	"readback/flows"
	"readback/mobile/app"
	"readback/mobile/lab/e2e"
	bench "readback/speech/lab/hearbench"
	"readback/speech/model"
)

// demo plays a whole job without a person and leaves its record.
func demo(e env, args []string) error {
	f := flags(e, "demo")
	out := f.String("out", "demo", "`folder` for the record")
	id := f.String("appliance", "furnace-hsi", "equipment file")
	faults := f.String("fault", "igniter.open", "what is wrong, part.mode, several with commas")
	voice := f.String("voice", "", "synthesised voice of the person; the first of this machine when empty")
	noise := f.String("noise", "fan", "fan or pink")
	snr := f.Float64("snr", 15, "speech over noise, dB")
	seed := f.Uint64("seed", 1, "of the noise")
	if err := parse(e, f, args); err != nil {
		return err
	}
	models, err := flows.Builtin()
	if err != nil {
		return err
	}
	i := slices.IndexFunc(models, func(m *appliance.Model) bool { return m.ID == *id })
	if i < 0 {
		return fmt.Errorf("no equipment file %q", *id)
	}
	m := models[i]
	engine, err := appliance.Compile(m)
	if err != nil {
		return err
	}
	var modes []int
	for _, name := range strings.Split(*faults, ",") {
		k := slices.IndexFunc(m.Modes, func(x appliance.Mode) bool { return x.Full == name })
		if k < 0 {
			return fmt.Errorf("%s has no fault %q", m.ID, name)
		}
		modes = append(modes, k)
	}
	v, err := pick(*voice)
	if err != nil {
		return err
	}
	fmt.Fprintf(e.out, "A job without a person: %s, fault %s; voice %s in %s noise, %g dB. What the person says is indented.\n\n", m.Title, *faults, v.Name, *noise, *snr)
	res, err := e2e.Play(e.ctx, e2e.Job{Dir: *out, Model: m, Engine: engine, Modes: modes, Voice: v, Noise: *noise, SNR: *snr, Seed: *seed,
		Speech: app.Recogniser(model.Locate), Out: e.out})
	if err != nil {
		return err
	}
	fmt.Fprintf(e.out, "\nOutcome: %s. %d sayings, %d said again, %d taken wrongly and taken back, %d tapped.\n", res.View.Ended, res.Said, res.Repeated, res.Objected, res.Tapped)
	for _, o := range res.View.Open {
		fmt.Fprintf(e.out, "Still open: %s\n", o)
	}
	journal, err := filepath.Glob(filepath.Join(*out, "*", res.JobID, "journal*"))
	if err == nil && len(journal) == 0 {
		journal, err = filepath.Glob(filepath.Join(*out, res.JobID, "journal*"))
	}
	if err != nil || len(journal) == 0 {
		return fmt.Errorf("no journal in %s", *out)
	}
	page := filepath.Join(*out, res.JobID+".html")
	if err := transcript(env{e.ctx, nil, &bytes.Buffer{}, e.err}, []string{"-o", page, journal[0]}); err != nil {
		return err
	}
	fmt.Fprintf(e.out, "Journal: %s\nRecord:  %s\n", journal[0], page)
	return nil
}

func pick(name string) (bench.Voice, error) {
	all := bench.Voices()
	for _, v := range all {
		if v.Name == name || name == "" {
			return v, nil
		}
	}
	var names []string
	for _, v := range all {
		names = append(names, v.Name)
	}
	if len(names) == 0 {
		return bench.Voice{}, fmt.Errorf("no synthesised voice on this machine: install espeak-ng or flite")
	}
	return bench.Voice{}, fmt.Errorf("no voice %q; there are %s", name, strings.Join(names, ", "))
}
