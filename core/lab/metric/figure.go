// Package figure lets a package's tests report measured figures into one table.
// A figure is measured, never typed in; a miss is reported as plainly as a hit.
package metric

import (
	"fmt"
	"os"
	"strconv"
	"strings"
	"sync"
	"testing"
)

// Adder records one figure. Target is "<= 20", ">= 99.5", "= 0" or "reported"; n is how many trials stand behind the value.
type Adder func(name string, value float64, unit, target string, n int)

var mu sync.Mutex

// Run calls f with an adder that appends rows to the file named by the environment variable FIGURES,
// and skips the test when that is not set. A row is: name, value, unit, target, met, n, command.
func Run(t *testing.T, f func(Adder)) {
	t.Helper()
	path := os.Getenv("FIGURES")
	if path == "" {
		t.Skip("FIGURES names no file: figures are measured by make figures")
	}
	command := os.Getenv("FIGURES_COMMAND")
	if command == "" {
		command = "make figures"
	}
	f(func(name string, value float64, unit, target string, n int) {
		met := "yes"
		ok, err := Met(value, target)
		if err != nil {
			t.Fatal(err)
		}
		if !ok {
			met = "no"
		}
		row := fmt.Sprintf("%s\t%s\t%s\t%s\t%s\t%d\t%s\n", name, strconv.FormatFloat(value, 'g', 6, 64), unit, target, met, n, command)
		mu.Lock()
		defer mu.Unlock()
		w, err := os.OpenFile(path, os.O_APPEND|os.O_CREATE|os.O_WRONLY, 0o644)
		if err != nil {
			t.Fatal(err)
		}
		if _, err := w.WriteString(row); err != nil {
			t.Fatal(err)
		}
		if err := w.Close(); err != nil {
			t.Fatal(err)
		}
		t.Log(strings.TrimSpace(row))
	})
}

// Met tells whether a value meets a target such as "<= 20". "reported" is always met.
func Met(value float64, target string) (bool, error) {
	if target == "reported" {
		return true, nil
	}
	op, num, ok := strings.Cut(target, " ")
	limit, err := strconv.ParseFloat(num, 64)
	if !ok || err != nil {
		return false, fmt.Errorf("figure: target %q: want an operator, a space and a number", target)
	}
	switch op {
	case "<=":
		return value <= limit, nil
	case ">=":
		return value >= limit, nil
	case "=":
		return value == limit, nil
	}
	return false, fmt.Errorf("figure: target %q: want <=, >= or =", target)
}
