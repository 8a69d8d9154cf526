package job_test

import (
	"testing"
	"os"
	"readback/core/job"
	"readback/flows"
)

func TestZZ(t *testing.T) {
	lex, words := language(t)
	job.Dims()
	if os.Getenv("BIG") != "" {
		models, _ := flows.Builtin()
		job.Prove(models[0], *lex, words)
		return
	}
	job.Prove(smallModel, *lex, words)
}
