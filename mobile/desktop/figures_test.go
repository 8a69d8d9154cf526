package main

import (
	"bufio"
	"encoding/json"
	"fmt"
	"io"
	"net/http"
	"net/http/cookiejar"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/coder/websocket"

	"readback/core/lab/metric"
)

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		bin := filepath.Join(t.TempDir(), "readback")
		build := exec.Command("go", "build", "-tags", "sound", "-trimpath", "-ldflags=-s -w", "-o", bin, ".") // as make run does
		build.Env = append(os.Environ(), "CGO_ENABLED=1")
		if out, err := build.CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, out)
		}
		st, err := os.Stat(bin)
		if err != nil {
			t.Fatal(err)
		}
		add("size.binary_mb", float64(st.Size())/1e6, "MB", "<= 25", 1)

		// The first word: process start until a page that waits for it holds the sound of the greeting.
		began := time.Now()
		cmd := exec.Command(bin, "serve", "-addr", "127.0.0.1:0", "-dir", t.TempDir(), "-open=false")
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		defer func() { _ = cmd.Process.Kill(); _ = cmd.Wait() }()
		line, err := bufio.NewReader(out).ReadString('\n')
		if err != nil {
			t.Fatal(err)
		}
		address := strings.TrimSpace(line[strings.Index(line, "http"):])
		jar, err := cookiejar.New(nil)
		if err != nil {
			t.Fatal(err)
		}
		client := &http.Client{Jar: jar}
		r, err := client.Get(address)
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		base := address[:strings.Index(address, "/?")]
		ws, _, err := websocket.Dial(t.Context(), "ws"+strings.TrimPrefix(base, "http")+"/socket", &websocket.DialOptions{HTTPClient: client})
		if err != nil {
			t.Fatal(err)
		}
		defer func() { _ = ws.CloseNow() }()
		heard := false
		for !heard {
			_, data, err := ws.Read(t.Context())
			if err != nil {
				t.Fatal(err)
			}
			var m struct{ Type, URL string }
			if err := json.Unmarshal(data, &m); err != nil {
				t.Fatal(err)
			}
			if m.Type == "sound" && strings.HasPrefix(m.URL, "/voice/") {
				r, err := client.Get(base + m.URL)
				if err != nil {
					t.Fatal(err)
				}
				r.Body.Close()
				heard = r.StatusCode == 200
			}
		}
		add("start.first_word_s", time.Since(began).Seconds(), "s", "<= 1.5", 1)
		for range 300 { // until the model is loaded
			r, err := client.Get(base + "/api/state")
			if err != nil {
				t.Fatal(err)
			}
			data, err := io.ReadAll(r.Body)
			r.Body.Close()
			if err != nil {
				t.Fatal(err)
			}
			if strings.Contains(string(data), `"ear":{"state":"off"`) {
				t.Fatalf("no recogniser: run make speech first: %s", data)
			}
			if strings.Contains(string(data), `"ear":{"state":"ready"`) {
				break
			}
			time.Sleep(100 * time.Millisecond)
		}
		r, err = client.Post(base+"/api/start", "application/json", strings.NewReader(`{"voice":true}`))
		if err != nil {
			t.Fatal(err)
		}
		r.Body.Close()
		time.Sleep(3 * time.Second) // the appliance is thought through by then
		add("mem.with_model_mb", resident(t, cmd.Process.Pid), "MB", "<= 450", 1)

		empty := t.TempDir() // no model here
		bare := exec.Command(bin, "serve", "-addr", "127.0.0.1:0", "-dir", t.TempDir(), "-open=false")
		bare.Env = []string{"HOME=" + empty, "PATH=" + os.Getenv("PATH")}
		if err := bare.Start(); err != nil {
			t.Fatal(err)
		}
		defer func() { _ = bare.Process.Kill(); _ = bare.Wait() }()
		time.Sleep(2 * time.Second)
		add("mem.without_mb", resident(t, bare.Process.Pid), "MB", "<= 60", 1)
	})
}

// resident is the memory of a process in MB, as Linux tells it.
func resident(t *testing.T, pid int) float64 {
	t.Helper()
	data, err := os.ReadFile(fmt.Sprintf("/proc/%d/status", pid))
	if err != nil {
		t.Skip("no /proc on this system: resident memory is not measured")
	}
	for line := range strings.Lines(string(data)) {
		var kb float64
		if n, _ := fmt.Sscanf(line, "VmRSS: %f kB", &kb); n == 1 {
			return kb / 1000
		}
	}
	t.Fatal("no VmRSS")
	return 0
}
