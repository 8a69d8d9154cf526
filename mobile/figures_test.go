package mobile_test

import (
	"bytes"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"readback/core/lab/metric"
)

// TestFigures runs the phone's builds and measures what they make. How long they take is measured by make figures, warm and alone.
func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		if _, err := exec.LookPath("javac"); err != nil {
			t.Skip("the phone's builds need a JDK (Debian package openjdk-17-jdk-headless)")
		}
		run := func(name string, env []string, args ...string) string {
			t.Helper()
			cmd := exec.Command(name, args...)
			cmd.Env = append(os.Environ(), env...)
			var out bytes.Buffer
			cmd.Stdout, cmd.Stderr = &out, &out
			if err := cmd.Run(); err != nil {
				t.Errorf("%s %s: %v\n%s", name, strings.Join(args, " "), err, out.String())
			}
			return out.String()
		}

		run("./binding.sh", nil)
		jvm := run("./jvm/test.sh", nil)
		t.Log(jvm)
		read(t, add)

		shell := run("./android/test.sh", nil)
		m := regexp.MustCompile(`shelltest: (\d+) run, (\d+) failed, (\d+) skipped`).FindStringSubmatch(shell)
		passed, ran := 0, 0
		if m != nil {
			ran = atoi(m[1])
			if atoi(m[2]) == 0 {
				passed = ran - atoi(m[3])
			}
		}
		add("shell.tests_passed", float64(passed), "tests, none failing; else 0", ">= 220", ran)

		one, two := t.TempDir(), t.TempDir()
		packed := run("./android/pack.sh", []string{"OUT=" + one}, "trial", "arm64-v8a")
		run("./android/pack.sh", []string{"OUT=" + two}, "trial", "arm64-v8a")
		a, apk := only(t, one)
		b, _ := only(t, two)
		complete := true
		for _, part := range []string{"core", "recogniser", "second engine", "model", "networks of the second engine", "shell", "whole"} {
			m := regexp.MustCompile(`(?m)^size: ` + part + ` +([0-9.]+) MB$`).FindStringSubmatch(packed)
			if m == nil {
				complete = false
				continue
			}
			name := "apk." + strings.ReplaceAll(part, " ", "_") + "_mb"
			if part == "whole" {
				name = "apk.mb"
			}
			mb, err := strconv.ParseFloat(m[1], 64)
			if err != nil {
				t.Errorf("size of %s: %v", part, err)
			}
			add(name, mb, "MB in the trial APK for arm64", "reported", 1)
		}
		add("apk.complete", truth(complete), "1: core, recogniser, second engine and model", "= 1", 1)
		add("apk.reproducible", truth(len(a) > 0 && bytes.Equal(a, b)), "1: two builds are the same bytes", "= 1", 2)
		add("apk.permissions_ok", truth(exec.Command("./android/permissions.sh", apk).Run() == nil), "1: the exact list", "= 1", 1)
		if m := regexp.MustCompile(`native: \d+ libraries, (\d+) imports \(\d+ weak\), (\d+) unresolved at API \d+, (\d+) faults`).FindStringSubmatch(packed); m != nil {
			add("apk.unresolved", float64(atoi(m[2])), "imports that bionic at the lowest API level does not have", "= 0", atoi(m[1]))
			add("apk.native_faults", float64(atoi(m[3])), "pages, text relocations, thread variables, versions, names", "= 0", atoi(m[1]))
		} else {
			t.Error("the packing did not tell what it found in the libraries")
		}

		emulated := run("./arm64.sh", nil)
		t.Log(emulated)
		if m := regexp.MustCompile(`same decisions: (\d+) of (\d+), ([0-9.]+) %.*largest difference ([0-9.]+)`).FindStringSubmatch(emulated); m != nil {
			same, _ := strconv.ParseFloat(m[3], 64) // as the expression has it
			most, _ := strconv.ParseFloat(m[4], 64)
			add("arm64.same_decisions_pct", same, "%, emulated arm64 against amd64", ">= 99.5", atoi(m[2]))
			add("arm64.most_different", most, "largest difference of a number behind a decision, nats or dB", "reported", atoi(m[2]))
		}
		add("arm64.spoken_right_pct", 100*truth(regexp.MustCompile(`(?m)^job there: end\tended\tfixed\t`).MatchString(emulated)), "%, spoken jobs to their right end", "= 100", 1)
	})
}

// read adds what the binding's tests wrote down: "name value n" a line.
func read(t *testing.T, add metric.Adder) {
	t.Helper()
	data, err := os.ReadFile("../build/jvm/figures.txt")
	if err != nil {
		t.Error(err)
		return
	}
	about := map[string][2]string{"spoken_right_pct": {"%, jobs to their right end", "= 100"},
		"spoken_tapped_pct": {"%, answers given up speaking", "reported"}, "feed_us": {"µs for 100 ms of sound, median", "<= 100"}}
	for _, line := range strings.Split(strings.TrimSpace(string(data)), "\n") {
		var name string
		var value float64
		var n int
		if _, err := fmt.Sscan(line, &name, &value, &n); err != nil {
			t.Errorf("figures.txt: %q: %v", line, err)
			continue
		}
		add("jvm."+name, value, about[name][0], about[name][1], n)
	}
}

// only returns the one APK of a folder and its path.
func only(t *testing.T, dir string) ([]byte, string) {
	t.Helper()
	names, err := filepath.Glob(filepath.Join(dir, "*.apk"))
	if err != nil || len(names) != 1 {
		t.Errorf("%s holds %d APKs: %v", dir, len(names), err)
		return nil, ""
	}
	data, err := os.ReadFile(names[0])
	if err != nil {
		t.Error(err)
	}
	return data, names[0]
}

func atoi(s string) int {
	n, err := strconv.Atoi(s)
	if err != nil {
		return 0
	}
	return n
}

func truth(b bool) float64 {
	if b {
		return 1
	}
	return 0
}
