// Command readback guides a person through finding and fixing a heating appliance that gives no heat. On a computer it serves one
// page on this machine only; the browser is its screen and its microphone.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"os"
	"os/signal"
	"path/filepath"
	"syscall"
)

// version is set at build time by -ldflags "-X main.version=…".
var version = "dev"

// env is what a command may use of the outside; tests put their own in.
type env struct {
	ctx context.Context
	in  io.Reader
	out io.Writer
	err io.Writer
}

type command struct {
	name, args, about string
	run               func(env, []string) error
}

func commands() []command {
	return []command{
		{"serve", "[-addr 127.0.0.1:7325] [-dir DIR] [-open=false]", "serves the page (the default)", serve},
		{"talk", "[-journal FILE] [-appliance ID]", "line protocol: JSON events in, JSON effects out", talk},
		{"hear", "[-units V,mV] FILE.wav…", "one JSON line per utterance: text, rivals, meanings, decision", hear},
		{"jobs", "[-dir DIR]", "lists the jobs on this computer", jobs},
		{"transcript", "[-o FILE] JOURNAL", "writes the record of a job as one HTML file", transcript},
		{"lint", "FILE…", "checks equipment files", lint},
		{"draw", "[-o FILE] [ID]", "draws the circuit of an appliance as SVG", draw},
		{"demo", "[-fault PART.MODE] [-voice NAME] [-snr DB] [-out DIR]", "plays a whole job without a person: voice, noise, recogniser, simulated appliance", demo},
		{"check", "", "tells what of voice, microphone, recogniser and browser is there", check},
	}
}

// errUsage has been explained already.
var errUsage = errors.New("usage")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	if err := run(env{ctx, os.Stdin, os.Stdout, os.Stderr}, os.Args[1:]); err != nil {
		if !errors.Is(err, errUsage) && !errors.Is(err, flag.ErrHelp) {
			fmt.Fprintln(os.Stderr, "readback:", err)
		}
		os.Exit(1)
	}
}

func run(e env, args []string) error {
	name := "serve"
	if len(args) > 0 && args[0] != "" && args[0][0] != '-' {
		name, args = args[0], args[1:]
	}
	for _, c := range commands() {
		if c.name == name {
			return c.run(e, args)
		}
	}
	fmt.Fprintf(e.err, "readback: no command %q. There are:\n", name)
	for _, c := range commands() {
		fmt.Fprintf(e.err, "  %-11s %s\n              %s\n", c.name, c.args, c.about)
	}
	return errUsage
}

func flags(e env, name string) *flag.FlagSet {
	f := flag.NewFlagSet("readback "+name, flag.ContinueOnError)
	f.SetOutput(e.err)
	return f
}

// dataDir is where jobs are kept unless -dir says otherwise.
func dataDir() string {
	if d := os.Getenv("READBACK_DIR"); d != "" {
		return d
	}
	if d := os.Getenv("XDG_DATA_HOME"); d != "" {
		return filepath.Join(d, "readback")
	}
	home, err := os.UserHomeDir()
	if err != nil {
		return "readback-jobs"
	}
	return filepath.Join(home, ".local", "share", "readback")
}
