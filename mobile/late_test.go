package mobile

import (
	"os"
	"path/filepath"
	"testing"

	"readback/speech/model"
)

// The second engine is there when its networks were packed beside the model, and missed by nobody when they were not.
func TestLateRescorer(t *testing.T) {
	for _, with := range []bool{false, true} {
		dir, want := t.TempDir(), model.Rescorer{}
		if with {
			want = model.Rescorer{Runtime: "libonnxruntime.so", Model: filepath.Join(dir, "judge")}
			if err := os.Mkdir(want.Model, 0o755); err != nil {
				t.Fatal(err)
			}
		}
		l := newLateModel()
		l.set("libvosk.so", dir, "")
		f, err := l.locate()
		if r := f.Rescorer; err != nil || r.Runtime != want.Runtime || r.Model != want.Model || f.Model != dir {
			t.Errorf("packed %v: %+v, %v", with, f, err)
		}
	}
}
