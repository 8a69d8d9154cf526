package main

import (
	"os"
	"os/exec"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"

	"readback/speech/model"
)

func TestMain(m *testing.M) { testscript.Main(m, map[string]func(){"readback": main}) }

// TestCommands runs the scripts in testdata/script against the program itself.
func TestCommands(t *testing.T) {
	testscript.Run(t, testscript.Params{
		Dir: "testdata/script",
		Setup: func(e *testscript.Env) error {
			e.Setenv("READBACK_DIR", e.WorkDir+"/jobs")
			e.Setenv("HOME", os.Getenv("HOME")) // the recogniser's files are in its cache
			return nil
		},
		Condition: func(cond string) (bool, error) {
			switch cond {
			case "ear":
				_, err := model.Locate()
				return err == nil, nil
			case "espeak":
				_, err := exec.LookPath("espeak-ng")
				return err == nil, nil
			}
			return false, nil
		},
	})
}
