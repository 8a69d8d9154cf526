// Command soak tries the program for hours: every parser is fuzzed, the power is cut, the program is killed, faults are injected, and jobs
// are led by voice back to back. It is bounded, and what is done is not done again when it is started anew on the same state folder.
//
//	go run ./mobile/lab/soak [-state build/soak] [-fuzz 10m] [-run 125m] [-only fuzz,figures,run]
package main

import (
	"bytes"
	"context"
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"regexp"
	"runtime"
	"slices"
	"strconv"
	"strings"
	"syscall"
	"time"

	"readback/core/appliance"
	"readback/core/lab/metric"
	"readback/flows"
	"readback/mobile/app"
	"readback/mobile/lab/e2e"
	"readback/speech/lab/hearbench"
	"readback/speech/model"
)

type soak struct {
	ctx   context.Context
	state string
}

func main() {
	state := flag.String("state", "build/soak", "`folder` that remembers what is done")
	fuzz := flag.Duration("fuzz", 10*time.Minute, "for each parser")
	run := flag.Duration("run", 125*time.Minute, "of jobs by voice, back to back")
	only := flag.String("only", "fuzz,figures,run", "parts to do")
	flag.Parse()
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	s := &soak{ctx, *state}
	if err := s.all(strings.Split(*only, ","), *fuzz, *run); err != nil {
		fmt.Fprintln(os.Stderr, "soak:", err)
		os.Exit(1)
	}
}

func (s *soak) all(parts []string, fuzz, run time.Duration) error {
	if err := os.MkdirAll(s.state, 0o755); err != nil {
		return err
	}
	var errs []error
	if slices.Contains(parts, "fuzz") {
		errs = append(errs, s.fuzz(fuzz))
	}
	if slices.Contains(parts, "figures") {
		for _, p := range []string{"./core/journal", "./mobile/app", "./mobile/lab/faults", "./mobile/lab/kill"} {
			errs = append(errs, s.once("figures "+p, func() (string, error) {
				cmd := exec.CommandContext(s.ctx, "go", "test", "-count=1", "-timeout", "120m", "-run", "^TestFigures$", p)
				full, err := filepath.Abs(filepath.Join(s.state, "figures.raw"))
				if err != nil {
					return "", err
				}
				cmd.Env = append(os.Environ(), "FIGURES="+full, "FIGURES_COMMAND=make soak")
				out, err := cmd.CombinedOutput()
				if err != nil {
					return "", fmt.Errorf("%w: %s", err, out)
				}
				return "done", nil
			}))
		}
	}
	if slices.Contains(parts, "run") {
		errs = append(errs, s.once(fmt.Sprintf("run %v", run), func() (string, error) { return s.run(run) }))
	}
	return errors.Join(append(errs, s.tell())...)
}

// once does a part whose result is not there yet.
func (s *soak) once(name string, do func() (string, error)) error {
	file := filepath.Join(s.state, strings.NewReplacer("/", "_", " ", "_", ".", "").Replace(name)+".done")
	if _, err := os.Stat(file); err == nil {
		fmt.Println("done before:", name)
		return nil
	}
	if s.ctx.Err() != nil {
		return context.Cause(s.ctx)
	}
	fmt.Printf("%s %s\n", time.Now().Format("15:04:05"), name)
	result, err := do()
	if err != nil {
		return fmt.Errorf("%s: %w", name, err)
	}
	return os.WriteFile(file, []byte(result+"\n"), 0o644)
}

var executions = regexp.MustCompile(`execs: (\d+)`)

// fuzz gives every fuzz target its time.
func (s *soak) fuzz(each time.Duration) error {
	list, err := exec.CommandContext(s.ctx, "go", "test", "-list", "^Fuzz", "./...").Output()
	if err != nil {
		return fmt.Errorf("listing the fuzz targets: %w", err)
	}
	var targets []string
	var errs []error
	for line := range strings.Lines(string(list)) {
		f := strings.Fields(line)
		switch {
		case len(f) == 1 && strings.HasPrefix(f[0], "Fuzz"):
			targets = append(targets, f[0])
		case len(f) >= 2 && f[0] == "ok":
			for _, t := range targets {
				errs = append(errs, s.once("fuzz "+f[1]+" "+t, func() (string, error) {
					out, err := exec.CommandContext(s.ctx, "go", "test", "-run", "^$", "-fuzz", "^"+t+"$", "-fuzztime", each.String(), f[1]).CombinedOutput()
					n := "0"
					if all := executions.FindAllSubmatch(out, -1); len(all) > 0 {
						n = string(all[len(all)-1][1])
					}
					if s.ctx.Err() != nil {
						return "", context.Cause(s.ctx)
					}
					if err != nil {
						return n + " 1\n" + string(out[max(0, len(out)-4000):]), nil // what it found is in the package's testdata
					}
					return n + " 0", nil
				}))
			}
			targets = nil
		}
	}
	return errors.Join(errs...)
}

// sample is what the process holds after a job.
type sample struct {
	at                    time.Duration
	rss                   float64 // MB
	goroutines, fds, temp int
}

func look(began time.Time) (s sample, err error) {
	s.at, s.goroutines = time.Since(began), runtime.NumGoroutine()
	status, err := os.ReadFile("/proc/self/status")
	if err != nil {
		return s, err
	}
	for line := range strings.Lines(string(status)) {
		var kb float64
		if n, _ := fmt.Sscanf(line, "VmRSS: %f kB", &kb); n == 1 {
			s.rss = kb / 1000
		}
	}
	fds, err := os.ReadDir("/proc/self/fd")
	if err != nil {
		return s, err
	}
	temp, err := os.ReadDir(os.TempDir())
	if err != nil {
		return s, err
	}
	s.fds = len(fds)
	for _, t := range temp {
		if strings.HasPrefix(t.Name(), "say-") {
			s.temp++
		}
	}
	return s, nil
}

// run leads jobs by voice, back to back, with every fault of every appliance, several voices and noises in turn, and looks after each at
// what the process holds. What is kept of the jobs is deleted as it goes.
func (s *soak) run(length time.Duration) (string, error) {
	models, err := flows.Builtin()
	if err != nil {
		return "", err
	}
	voices := hearbench.Voices()
	if len(voices) == 0 {
		return "", errors.New("no synthesised voice on this machine: install espeak-ng or flite")
	}
	var engines []*appliance.Engine
	for _, m := range models {
		e, err := appliance.Compile(m)
		if err != nil {
			return "", err
		}
		engines = append(engines, e)
	}
	began := time.Now()
	ctx, cancel := context.WithTimeout(s.ctx, length)
	defer cancel()
	log, err := os.Create(filepath.Join(s.state, "run.tsv"))
	if err != nil {
		return "", err
	}
	defer log.Close()
	fmt.Fprintln(log, "minutes\tRSS MB\tgoroutines\tdescriptors\ttemporary files\toutcome")
	var samples []sample
	said, ended := 0, 0
	for i := 0; ctx.Err() == nil; i++ {
		k := i % len(models)
		m := models[k]
		dir, err := os.MkdirTemp("", "soak-")
		if err != nil {
			return "", err
		}
		res, err := e2e.Play(ctx, e2e.Job{Dir: dir, Model: m, Engine: engines[k], Modes: []int{(7 * i) % len(m.Modes)}, Voice: voices[i%len(voices)],
			Noise: []string{"fan", "pink"}[i%2], SNR: []float64{20, 15, 10, math.Inf(1)}[i%4], Seed: uint64(i), Speech: app.Recogniser(model.Locate)})
		outcome := "cut off"
		if res != nil {
			said += res.Said
			outcome = res.View.Ended
		}
		if err = errors.Join(err, os.RemoveAll(dir)); err != nil && ctx.Err() == nil {
			return "", fmt.Errorf("job %d: %w", i, err)
		}
		if outcome != "" && outcome != "cut off" {
			ended++
		}
		runtime.GC()
		x, err := look(began)
		if err != nil {
			return "", err
		}
		samples = append(samples, x)
		fmt.Fprintf(log, "%.1f\t%.0f\t%d\t%d\t%d\t%s\n", x.at.Minutes(), x.rss, x.goroutines, x.fds, x.temp, outcome)
	}
	if s.ctx.Err() != nil {
		return "", context.Cause(s.ctx)
	}
	first, second := halves(samples, length)
	return fmt.Sprintf("minutes %.0f\njobs %d\nended %d\nsaid %d\nrss_growth_mb %.1f\ngoroutines_growth %.1f\nfds_growth %.1f\ntemp_growth %.1f",
		length.Minutes(), len(samples), ended, said, second.rss-first.rss, second.goroutines-first.goroutines, second.fds-first.fds, second.temp-first.temp), nil
}

type mean struct{ rss, goroutines, fds, temp float64 }

// halves are the means of the second and the last quarter of the run: the first quarter warms up what is kept for good.
func halves(list []sample, length time.Duration) (first, second mean) {
	of := func(from, to time.Duration) (m mean) {
		n := 0.0
		for _, x := range list {
			if x.at >= from && x.at < to {
				n++
				m.rss += x.rss
				m.goroutines += float64(x.goroutines)
				m.fds += float64(x.fds)
				m.temp += float64(x.temp)
			}
		}
		return mean{m.rss / n, m.goroutines / n, m.fds / n, m.temp / n}
	}
	return of(length/10, length/2), of(length/2, 2*length)
}

// tell writes the figures of what is done.
func (s *soak) tell() error {
	names, err := filepath.Glob(filepath.Join(s.state, "*.done"))
	if err != nil {
		return err
	}
	execs, crashes, targets := 0, 0, 0
	var rows []string
	row := func(name string, value float64, unit, target string, n int) {
		met, err := metric.Met(value, target)
		rows = append(rows, fmt.Sprintf("%s\t%g\t%s\t%s\t%v\t%d\tmake soak", name, value, unit, target, map[bool]string{true: "yes", false: "no"}[met && err == nil], n))
	}
	for _, n := range names {
		data, err := os.ReadFile(n)
		if err != nil {
			return err
		}
		base := filepath.Base(n)
		switch {
		case strings.HasPrefix(base, "fuzz_"):
			f := strings.Fields(string(data))
			if len(f) < 2 {
				return fmt.Errorf("%s: want a count of executions and of crashes", n)
			}
			a, err1 := strconv.Atoi(f[0])
			b, err2 := strconv.Atoi(f[1])
			if err := errors.Join(err1, err2); err != nil {
				return fmt.Errorf("%s: %w", n, err)
			}
			execs, crashes, targets = execs+a, crashes+b, targets+1
			if b > 0 {
				fmt.Printf("%s:\n%s", base, data)
			}
		case strings.HasPrefix(base, "run_"):
			v := map[string]float64{}
			for line := range bytes.Lines(data) {
				var name string
				var x float64
				if _, err := fmt.Sscan(string(line), &name, &x); err == nil {
					v[name] = x
				}
			}
			jobs := int(v["jobs"])
			row("soak.minutes", v["minutes"], "min", ">= 120", jobs)
			row("soak.jobs", v["jobs"], "jobs", "reported", jobs)
			row("soak.rss_growth_mb", v["rss_growth_mb"], "MB", "<= 5", jobs)
			row("soak.goroutines_growth", v["goroutines_growth"], "", "<= 1", jobs)
			row("soak.fds_growth", v["fds_growth"], "", "<= 1", jobs)
			row("soak.temp_growth", v["temp_growth"], "files", "<= 0", jobs)
		}
	}
	if targets > 0 {
		row("fuzz.executions", float64(execs), "executions", ">= 2e7", targets)
		row("fuzz.crashes", float64(crashes), "crashes", "= 0", targets)
	}
	for _, r := range rows {
		fmt.Println(r)
	}
	return os.WriteFile(filepath.Join(s.state, "figures.tsv"), []byte(strings.Join(rows, "\n")+"\n"), 0o644)
}
