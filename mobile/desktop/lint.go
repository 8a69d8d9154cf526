package main

import (
	"errors"
	"fmt"
	"os"
	"path/filepath"

	"readback/flows"
	"readback/flows/lexicon"
)

// lint checks equipment files; without a name, those that come with the program.
func lint(e env, args []string) error {
	f := flags(e, "lint")
	if err := parse(e, f, args); err != nil {
		return err
	}
	lex, err := lexicon.Load()
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
