// Package kill ends the real program with kill -9 in the middle of its work and looks for every answer that it had acknowledged.
package kill

import (
	"bufio"
	"context"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"net/http"
	"net/http/cookiejar"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/coder/websocket"

	"readback/core/journal"
	"readback/core/lab/metric"
	"readback/mobile/app"
)

// program builds the program once.
var program = sync.OnceValues(func() (string, error) {
	dir, err := os.MkdirTemp("", "kill-")
	if err != nil {
		return "", err
	}
	name := filepath.Join(dir, "readback")
	cmd := exec.Command("go", "build", "-o", name, "readback/mobile/desktop")
	if out, err := cmd.CombinedOutput(); err != nil {
		return "", fmt.Errorf("%w: %s", err, out)
	}
	return name, nil
})

func TestMain(m *testing.M) {
	code := m.Run()
	if name, err := program(); err == nil && filepath.IsAbs(name) {
		_ = os.RemoveAll(filepath.Dir(name)) // only to leave nothing behind
	}
	os.Exit(code)
}

func command(name, home string, args ...string) *exec.Cmd {
	cmd := exec.Command(name, args...)
	cmd.Env = []string{"HOME=" + home, "PATH=/nowhere"} // no voice, no recogniser: starting is quick
	return cmd
}

// answers that a job may be given, whatever it asks.
var answers = []string{
	`{"kind":"choice","id":"none"}`, `{"kind":"choice","id":"no"}`, `{"kind":"choice","id":"yes"}`, `{"kind":"command","id":"dont-know"}`,
	`{"kind":"command","id":"repeat"}`, `{"kind":"reading","reading":{"value":{"d":{"m":261,"e":-1},"u":"V"},"ac":"ac"}}`, `{"kind":"count","text":"3"}`,
	`{"kind":"command","id":"scratch-that"}`, `{"kind":"command","id":"why"}`,
}

// onLine kills the line protocol while it takes answers, and tells what is wrong with its journal.
func onLine(name, dir string, rng *rand.Rand) (acked int, err error) {
	file := filepath.Join(dir, fmt.Sprintf("line-%d.jsonl", rng.Int64()))
	cmd := command(name, dir, "talk", "-journal", file)
	in, err := cmd.StdinPipe()
	if err != nil {
		return 0, err
	}
	out, err := cmd.StdoutPipe()
	if err != nil {
		return 0, err
	}
	if err := cmd.Start(); err != nil {
		return 0, err
	}
	stop := 1 + rng.IntN(40)
	go func() { // as fast as it takes them
		for i := 0; ; i++ {
			line := fmt.Sprintf(`{"type":"said","at":%d,"said":{"text":"a%d","source":"line","meanings":[%s]}}`+"\n", 1000*(i+1), i, answers[rng.IntN(len(answers))])
			if i == 0 {
				line = `{"type":"tick","at":1000}` + "\n"
			}
			if _, err := io.WriteString(in, line); err != nil {
				return
			}
		}
	}()
	sc := bufio.NewScanner(out)
	sc.Buffer(nil, 8<<20)
	for sc.Scan() {
		var e struct{ Type, ID string }
		if json.Unmarshal(sc.Bytes(), &e) == nil && e.Type == "taken" {
			if _, err := fmt.Sscan(e.ID, &acked); err != nil {
				return acked, err
			}
			if acked == stop {
				go func() { // at any moment of the next answers
					time.Sleep(time.Duration(time.Now().UnixNano()%3000) * time.Microsecond)
					_ = cmd.Process.Kill()
				}()
			}
		}
	}
	_ = cmd.Wait() // it was killed
	data, err := os.ReadFile(file)
	if err != nil {
		return acked, err
	}
	defer os.Remove(file)
	r := journal.Read(data)
	if len(r.Events) < acked {
		return acked, fmt.Errorf("%d of %d acknowledged answers are in the journal: %v", len(r.Events), acked, r.Damage)
	}
	if r.Damage != nil && !r.Damage.Torn {
		return acked, fmt.Errorf("the journal is damaged: %v", r.Damage)
	}
	return acked, nil
}

// page is a running program with its page.
type page struct {
	cmd    *exec.Cmd
	ws     *websocket.Conn
	client *http.Client
	base   string
	next   int64
}

func open(name, dir string) (p *page, err error) {
	p = &page{cmd: command(name, dir, "serve", "-addr", "127.0.0.1:0", "-dir", dir, "-open=false")}
	out, err := p.cmd.StdoutPipe()
	if err != nil {
		return nil, err
	}
	if err := p.cmd.Start(); err != nil {
		return nil, err
	}
	defer func() {
		if err != nil {
			_ = p.cmd.Process.Kill()
			_ = p.cmd.Wait()
		}
	}()
	line, err := bufio.NewReader(out).ReadString('\n')
	if err != nil {
		return nil, err
	}
	if !strings.HasPrefix(line, "Readback is at ") {
		return nil, fmt.Errorf("it said %q", line)
	}
	address := strings.TrimSpace(line[strings.Index(line, "http"):])
	jar, err := cookiejar.New(nil)
	if err != nil {
		return nil, err
	}
	p.client, p.base = &http.Client{Jar: jar, Timeout: 20 * time.Second}, address[:strings.Index(address, "/?")]
	r, err := p.client.Get(address)
	if err != nil {
		return nil, err
	}
	r.Body.Close()
	p.ws, _, err = websocket.Dial(context.Background(), "ws"+strings.TrimPrefix(p.base, "http")+"/socket", &websocket.DialOptions{HTTPClient: p.client})
	if err == nil {
		p.ws.SetReadLimit(8 << 20)
	}
	return p, err
}

// call sends a call over the socket and waits for its reply.
func (p *page) call(method, path, body string) (status int, data []byte, err error) {
	ctx, cancel := context.WithTimeout(context.Background(), 20*time.Second)
	defer cancel()
	p.next++
	if err := p.ws.Write(ctx, websocket.MessageText, []byte(fmt.Sprintf(`{"id":%d,"method":%q,"path":%q,"body":%s}`, p.next, method, path, body))); err != nil {
		return 0, nil, err
	}
	for {
		_, data, err := p.ws.Read(ctx)
		if err != nil {
			return 0, nil, err
		}
		var r app.Reply
		if json.Unmarshal(data, &r) == nil && r.Re == p.next {
			return r.Status, r.Body, nil
		}
	}
}

// promise is what the socket's program acknowledged so far in a folder that is used by one start after the other.
type promise struct {
	job  string
	text []string // of the answers acknowledged
	n    int
}

// onSocket starts the program on the folder, looks for all that was acknowledged before, gives it answers and kills it.
func onSocket(name, dir string, rng *rand.Rand, p *promise) error {
	g, err := open(name, dir)
	if err != nil {
		return err
	}
	defer func() { _ = g.ws.CloseNow(); _ = g.cmd.Process.Kill(); _ = g.cmd.Wait() }()
	_, data, err := g.call("GET", "/api/state", "null")
	if err != nil {
		return err
	}
	var s app.State
	if err := json.Unmarshal(data, &s); err != nil {
		return err
	}
	if p.job != "" && (s.View == nil || s.View.Job != p.job) {
		return fmt.Errorf("job %s did not come back: %s", p.job, s.Trouble)
	}
	if strings.Contains(s.Trouble, "cannot") && !strings.Contains(s.Trouble, "cut short") {
		return errors.New(s.Trouble)
	}
	if err := p.held(dir); err != nil {
		return err
	}
	if p.job == "" || len(p.text) > 60 {
		status, data, err := g.call("POST", "/api/start", `{"appliance":"furnace-hsi","voice":false}`)
		if err != nil || status != 200 {
			return fmt.Errorf("start: %d %s %w", status, data, err)
		}
		if err := json.Unmarshal(data, &s); err != nil {
			return err
		}
		p.job, p.text = s.View.Job, nil
	}
	stop := rng.IntN(12)
	for i := 0; ; i++ {
		if i == stop {
			go func() {
				time.Sleep(time.Duration(time.Now().UnixNano()%3000) * time.Microsecond)
				_ = g.cmd.Process.Kill()
			}()
		}
		p.n++
		text := fmt.Sprintf("answer %d", p.n)
		status, _, err := g.call("POST", "/api/event", fmt.Sprintf(`{"step":"","event":{"at":0,"type":"said","said":{"text":%q,"source":"touch","meanings":[%s]}}}`, text, strings.Replace(answers[rng.IntN(len(answers))], "}", `,"cost":0}`, 1)))
		if err != nil {
			if i < stop {
				return fmt.Errorf("before it was killed: %w", err)
			}
			return nil
		}
		if status == 200 {
			p.text = append(p.text, text)
		}
		if i > stop+5000 {
			return errors.New("it cannot be killed")
		}
	}
}

// held looks for every acknowledged answer in the journal.
func (p *promise) held(dir string) error {
	if p.job == "" {
		return nil
	}
	data, err := os.ReadFile(filepath.Join(dir, "jobs", p.job, "journal.jsonl"))
	if err != nil {
		return err
	}
	r := journal.Read(data)
	if r.Damage != nil && !r.Damage.Torn {
		return r.Damage
	}
	i := 0
	for _, ev := range r.Events {
		if ev.Said != nil && i < len(p.text) && ev.Said.Text == p.text[i] {
			i++
		}
	}
	if i < len(p.text) {
		return fmt.Errorf("%q was acknowledged and is not in the journal (%d of %d)", p.text[i], i, len(p.text))
	}
	return nil
}

// kills ends the program so many times, half of them on the line protocol, and counts what was lost.
func kills(t testing.TB, n int) (done, lost int) {
	name, err := program()
	if err != nil {
		t.Fatal(err)
	}
	var mu sync.Mutex
	note := func(what string, err error) {
		mu.Lock()
		defer mu.Unlock()
		done++
		if err != nil {
			lost++
			t.Logf("%s: %v", what, err)
		}
		if done%100 == 0 {
			t.Logf("%d kills, %d lost", done, lost)
		}
	}
	var wg sync.WaitGroup
	wg.Add(2)
	go func() {
		defer wg.Done()
		dir, rng := t.TempDir(), rand.New(rand.NewPCG(uint64(n), 1))
		for range n / 2 {
			_, err := onLine(name, dir, rng)
			note("line", err)
		}
	}()
	go func() {
		defer wg.Done()
		dir, rng := t.TempDir(), rand.New(rand.NewPCG(uint64(n), 2))
		p := &promise{}
		for range n - n/2 {
			err := onSocket(name, dir, rng, p)
			note("socket", err)
			if err != nil { // a new folder, so that one loss counts once
				dir, p = t.TempDir(), &promise{}
			}
		}
		note("socket, the last time", p.held(dir))
		done--
	}()
	wg.Wait()
	return done, lost
}

// Nothing acknowledged is lost to kill -9.
func TestKill(t *testing.T) {
	if testing.Short() {
		t.Skip("builds and starts the program again and again")
	}
	began := time.Now()
	done, lost := kills(t, 30)
	if lost > 0 {
		t.Errorf("%d of %d kills lost an answer", lost, done)
	}
	t.Logf("%d kills in %v", done, time.Since(began).Round(time.Second))
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		n := 2000
		if s := os.Getenv("KILLS"); s != "" {
			if _, err := fmt.Sscan(s, &n); err != nil {
				t.Fatal(err)
			}
		}
		done, lost := kills(t, n)
		add("kill.count", float64(done), "kills", ">= 2000", done)
		add("kill.lost", float64(lost), "kills", "= 0", done)
	})
}
