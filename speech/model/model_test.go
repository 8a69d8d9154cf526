package model_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"readback/speech/model"
)

const jar = "com/alphacephei/vosk/0.3.45/vosk-0.3.45.jar"

func TestMissing(t *testing.T) {
	_, err := model.LocateIn(t.TempDir(), t.TempDir())
	var e *model.Error
	if !errors.As(err, &e) || !errors.Is(err, model.ErrMissing) {
		t.Fatalf("%v", err)
	}
	for _, want := range []string{"speech is off", "missing", "make speech", "Touch and keyboard"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("%q lacks %q", err, want)
		}
	}
}

func TestDamaged(t *testing.T) {
	repository := t.TempDir()
	path := filepath.Join(repository, filepath.FromSlash(jar))
	if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(path, []byte("half a down"), 0o644); err != nil {
		t.Fatal(err)
	}
	_, err := model.LocateIn(repository, t.TempDir())
	if !errors.Is(err, model.ErrDamaged) || !strings.Contains(err.Error(), "Delete "+path) {
		t.Errorf("%v", err)
	}
}

// The real files are unpacked once; a file that was deleted, cut off or changed is put right again.
func TestUnpack(t *testing.T) {
	if testing.Short() {
		t.Skip("unpacks 100 MB")
	}
	home, err := os.UserHomeDir()
	if err != nil {
		t.Skip(err)
	}
	repository, cache := filepath.Join(home, ".m2", "repository"), t.TempDir()
	f, err := model.LocateIn(repository, cache)
	var e *model.Error
	if errors.As(err, &e) {
		t.Skip(err)
	}
	if err != nil {
		t.Fatal(err)
	}
	conf := filepath.Join(f.Model, "conf", "model.conf")
	b, err := os.ReadFile(conf)
	if err != nil || !bytes.Contains(b, []byte("--lattice-beam=8.0")) {
		t.Errorf("settings: %v, %s", err, b)
	}
	uuid, dubm := filepath.Join(f.Model, "uuid"), filepath.Join(f.Model, "ivector", "final.dubm")
	was, err := os.ReadFile(dubm)
	if err != nil {
		t.Fatal(err)
	}
	changed := bytes.Clone(was)
	changed[1000] ^= 1
	for _, step := range []struct {
		name string
		do   error
	}{
		{"deleted", os.Remove(uuid)},
		{"cut off", os.Truncate(f.Library, 100)},
		{"one bit changed", os.WriteFile(dubm, changed, 0o644)},
		{"settings changed", os.WriteFile(conf, []byte("--beam=1"), 0o644)},
	} {
		if step.do != nil {
			t.Fatalf("%s: %v", step.name, step.do)
		}
	}
	// With the archives gone, what is damaged is told; with them, it is mended.
	if _, err := model.LocateIn(t.TempDir(), cache); !errors.Is(err, model.ErrMissing) {
		t.Errorf("damaged without archives: %v", err)
	}
	again, err := model.LocateIn(repository, cache)
	if err != nil || again != f {
		t.Fatalf("%v, %v", again, err)
	}
	if now, err := os.ReadFile(dubm); err != nil || !bytes.Equal(now, was) {
		t.Errorf("changed file was not mended: %v", err)
	}
	if st, err := os.Stat(f.Library); err != nil || st.Size() < 1e6 {
		t.Errorf("library: %v", err)
	}
	if _, err := model.LocateIn(t.TempDir(), cache); err != nil {
		t.Errorf("unpacked files need no archives: %v", err)
	}
}
