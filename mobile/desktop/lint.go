package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"readback/core/job"
	"readback/flows"
	"readback/flows/lexicon"
	"readback/flows/prompts"
)

// lint checks equipment files; without a name, those that come with the program.
func lint(e env, args []string) error {
	f := flags(e, "lint")
	phrases := f.String("phrases", "", "read what people say from `DIR`/en/*.hcl instead of the program")
	prove := f.Bool("prove", true, "walk the whole dialogue and prove its safety: seconds a file")
	if err := parse(e, f, args); err != nil {
		return err
	}
	lex, err := lexicon.Load()
	if *phrases != "" {
		lex, err = lexicon.LoadFS(os.DirFS(*phrases), "en")
	}
	if err != nil {
		return err
	}
	words, err := prompts.Load()
	if err != nil {
		return err
	}
	var options []string
	for _, o := range lex.Options {
		options = append(options, o.ID)
	}
	fsys, names := flows.Files()
	bad := 0
	check := func(r *flows.Report, err error) error {
		if err != nil {
			return err
		}
		for _, p := range r.Problems {
			fmt.Fprintln(e.out, p)
			if !p.Warning {
				bad++
			}
		}
		if !*prove || r.Err() != nil {
			return nil
		}
		proved, err := job.Prove(r.Model, *lex, words)
		if err != nil {
			return err
		}
		for _, c := range proved.Broken {
			fmt.Fprintln(e.out, c)
			bad++
		}
		return nil
	}
	if f.NArg() == 0 {
		for _, n := range names {
			if err := check(flows.Lint(fsys, n, options)); err != nil {
				return err
			}
		}
	}
	for _, n := range f.Args() {
		if err := check(flows.Lint(os.DirFS(filepath.Dir(n)), filepath.Base(n), options)); err != nil {
			return err
		}
	}
	if bad > 0 {
		return errors.New("the equipment files have errors")
	}
	return nil
}
