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
	"runtime"
	"strings"
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
		{"doctor", "[-dir DIR]", "tests voice, loudspeaker, microphone, recogniser, disk, camera and browser, and says how to get what is missing", doctor},
		{"jobs", "[-dir DIR]", "lists the jobs on this computer", jobs},
		{"transcript", "[-o FILE] JOURNAL", "writes the record of a job as one HTML file", transcript},
		{"talk", "[-journal FILE] [-appliance ID]", "line protocol: JSON events in, JSON effects out", talk},
		{"hear", "[-units V,mV] FILE.wav…", "one JSON line per utterance: text, rivals, meanings, decision", hear},
		{"lint", "[FILE…]", "checks equipment files: words, numbers and sources, every fault simulated, the dialogue proved safe", lint},
		{"draw", "[-o FILE] [ID]", "draws the circuit of an appliance as SVG", draw},
		{"demo", "[-fault PART.MODE] [-voice NAME] [-snr DB] [-out DIR]", "plays a whole job without a person: voice, noise, recogniser, simulated appliance", demo},
		{"version", "", "prints the version", printVersion},
		{"help", "[COMMAND]", "explains a command", nil}, // run itself answers it
	}
}

// What the program ends with: 0 all right, 1 it failed, 2 it was called wrongly.
const (
	exitFailed = 1
	exitUsage  = 2
)

// errUsage has been explained already.
var errUsage = errors.New("usage")

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	e := env{ctx, os.Stdin, os.Stdout, os.Stderr}
	if code := exit(e, run(e, os.Args[1:])); code != 0 {
		os.Exit(code)
	}
}

// exit tells an error to the person and gives the program's exit code.
func exit(e env, err error) int {
	switch {
	case err == nil, errors.Is(err, flag.ErrHelp):
		return 0
	case errors.Is(err, errUsage):
		return exitUsage
	}
	fmt.Fprintln(e.err, "readback:", err)
	return exitFailed
}

func run(e env, args []string) error {
	name := "serve"
	if len(args) > 0 {
		switch first := args[0]; {
		case first == "-h" || first == "-help" || first == "--help":
			name, args = "help", args[1:]
		case first == "-version" || first == "--version":
			name, args = "version", args[1:]
		case first != "" && first[0] != '-':
			name, args = first, args[1:]
		}
	}
	if name == "help" {
		if len(args) == 0 {
			usage(e.out)
			return nil
		}
		name, args = args[0], []string{"-h"}
	}
	for _, c := range commands() {
		if c.name == name && c.run != nil {
			return c.run(e, args)
		}
	}
	fmt.Fprintf(e.err, "readback: no command %q.%s\n\n", name, near(name))
	usage(e.err)
	return errUsage
}

func usage(w io.Writer) {
	fmt.Fprint(w, "Readback talks a person through finding why a heating appliance gives no heat.\n\n  readback [COMMAND] [OPTIONS]\n\n")
	for _, c := range commands() {
		fmt.Fprintf(w, "  %-11s %s\n              %s\n", c.name, c.args, c.about)
	}
	fmt.Fprint(w, "\nreadback COMMAND -h tells the options of a command. Without a command the page is served.\n"+
		"It ends with 0 when all is well, 1 when something failed and 2 when it was called wrongly.\n")
}

// near names the command that was likely meant.
func near(name string) string {
	for _, c := range commands() {
		if len(name) > 1 && (strings.HasPrefix(c.name, name) || strings.HasPrefix(name, c.name)) {
			return fmt.Sprintf(" Did you mean %q?", c.name)
		}
	}
	return ""
}

func printVersion(e env, args []string) error {
	f := flags(e, "version")
	if err := parse(e, f, args); err != nil {
		return err
	}
	_, err := fmt.Fprintf(e.out, "readback %s (%s, %s/%s)\n", version, runtime.Version(), runtime.GOOS, runtime.GOARCH)
	return err
}

// flags are a command's. What is asked for with -h goes to the output, what was wrong to the error output.
func flags(e env, name string) *flag.FlagSet {
	f := flag.NewFlagSet(name, flag.ContinueOnError)
	f.SetOutput(e.err)
	f.Usage = func() {
		w := f.Output()
		for _, c := range commands() {
			if c.name == name {
				fmt.Fprintf(w, "readback %s %s\n  %s\n", c.name, c.args, c.about)
			}
		}
		f.PrintDefaults()
	}
	return f
}

// parse reads a command's options. Help that was asked for goes to the output and is no error of the caller's.
func parse(e env, f *flag.FlagSet, args []string) error {
	for _, a := range args {
		switch a {
		case "-h", "-help", "--help":
			f.SetOutput(e.out)
			f.Usage()
			return flag.ErrHelp
		case "--":
		default:
			continue
		}
		break
	}
	if err := f.Parse(args); err != nil {
		return errUsage
	}
	return nil
}

// none refuses what stands behind the options of a command that takes nothing.
func none(e env, f *flag.FlagSet) error {
	if f.NArg() == 0 {
		return nil
	}
	fmt.Fprintf(e.err, "readback %s takes nothing but options, and there is %q\n", f.Name(), f.Arg(0))
	f.Usage()
	return errUsage
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
