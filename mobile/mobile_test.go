package mobile_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"
	"time"

	"readback/mobile"
)

// phone is a host that remembers; it may be made to fail or to panic.
type phone struct {
	mu    sync.Mutex
	calls []string
	err   error
}

func (p *phone) note(format string, args ...any) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	p.calls = append(p.calls, fmt.Sprintf(format, args...))
	return p.err
}

func (p *phone) saw(call string) bool {
	p.mu.Lock()
	defer p.mu.Unlock()
	for _, c := range p.calls {
		if strings.HasPrefix(c, call) {
			return true
		}
	}
	return false
}

func (p *phone) Say(id, text, level string, slow bool) error { return p.note("say %s", text) }
func (p *phone) Hush() error                                 { return p.note("hush") }
func (p *phone) Cue(name string) error                       { return p.note("cue %s", name) }
func (p *phone) TakePhoto(id string) error                   { return p.note("photo %s", id) }
func (p *phone) KeepAwake(on bool) error                     { return p.note("awake %v", on) }
func (p *phone) Vibrate(pattern string) error                { return p.note("vibrate %s", pattern) }
func (p *phone) Share(name string) error                     { return p.note("share %s", name) }

type listener func([]byte) error

func (l listener) Message(b []byte) error { return l(b) }

func open(t *testing.T, p *phone) *mobile.Core {
	t.Helper()
	c, err := mobile.Open(t.TempDir(), "test", "en", p)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { _ = c.Close() })
	return c
}

func eventually(t *testing.T, what string, holds func() bool) {
	t.Helper()
	for end := time.Now().Add(20 * time.Second); !holds(); time.Sleep(2 * time.Millisecond) {
		if time.Now().After(end) {
			t.Fatal("still not so: " + what)
		}
	}
}

func code(err error) string {
	if err == nil {
		return "none"
	}
	return mobile.Code(err.Error())
}

func TestCodes(t *testing.T) {
	c := open(t, &phone{})
	closed := open(t, &phone{})
	if err := closed.Close(); err != nil {
		t.Fatal(err)
	}
	if err := closed.Close(); err != nil {
		t.Fatal("closing twice:", err)
	}
	file := filepath.Join(t.TempDir(), "file")
	if err := os.WriteFile(file, nil, 0o600); err != nil {
		t.Fatal(err)
	}
	for _, x := range []struct {
		name, want string
		do         func() error
	}{
		{"no folder", "bad", func() error { _, err := mobile.Open("", "v", "en", &phone{}); return err }},
		{"no host", "bad", func() error { _, err := mobile.Open(t.TempDir(), "v", "en", nil); return err }},
		{"a file for a folder", "failed", func() error { _, err := mobile.Open(file, "v", "en", &phone{}); return err }},
		{"half a sample", "bad", func() error { return c.Feed(make([]byte, 3)) }},
		{"nobody listens", "deaf", func() error { return c.Feed(make([]byte, 4)) }},
		{"a frame of the wrong size", "bad", func() error { return c.Frame("meter", make([]byte, 5), 3, 2, 1, 0) }},
		{"a frame of a size that overflows", "bad", func() error { return c.Frame("meter", nil, 1<<40, 1<<40, 1, 0) }},
		{"a frame with half of its colour", "bad", func() error { return c.Frame("lamp", make([]byte, 8), 3, 2, 1, 0) }},
		{"a burner without colour", "bad", func() error { return c.Frame("fire", make([]byte, 6), 3, 2, 1, 0) }},
		{"a burner in colour that nobody waits for", "none", func() error { return c.Frame("fire", make([]byte, 10), 3, 2, 1, 0) }},
		{"a frame of nothing known", "bad", func() error { return c.Frame("moon", make([]byte, 6), 3, 2, 1, 0) }},
		{"closed: frame", "closed", func() error { return closed.Frame("meter", make([]byte, 6), 3, 2, 1, 0) }},
		{"no news", "bad", func() error { return c.Device(nil) }},
		{"no listener", "bad", func() error { _, err := c.Subscribe(nil); return err }},
		{"a picture nobody asked for", "failed", func() error { return c.Photo("x", []byte("no picture")) }},
		{"a subscription that never began", "panic", func() error { return new(mobile.Subscription).Stop() }},
		{"a core that was never opened", "closed", func() error { return new(mobile.Core).Spoke("x", true) }},
		{"closed: request", "closed", func() error { _, err := closed.Request("GET", "/", nil); return err }},
		{"closed: message", "closed", func() error { _, err := closed.Message(nil); return err }},
		{"closed: subscribe", "closed", func() error {
			_, err := closed.Subscribe(listener(func([]byte) error { return nil }))
			return err
		}},
		{"closed: feed", "closed", func() error { return closed.Feed(nil) }},
		{"closed: model", "closed", func() error { return closed.Model("", "", "") }},
		{"closed: photo", "closed", func() error { return closed.Photo("x", nil) }},
		{"closed: device", "closed", func() error { return closed.Device(nil) }},
	} {
		t.Run(x.name, func(t *testing.T) {
			if err := x.do(); code(err) != x.want {
				t.Errorf("code %q of %v, want %q", code(err), err, x.want)
			}
		})
	}
}

func TestLentBytesAreCopied(t *testing.T) {
	c := open(t, &phone{})
	var mu sync.Mutex
	var got []string
	_, err := c.Subscribe(listener(func(b []byte) error {
		mu.Lock()
		defer mu.Unlock()
		got = append(got, string(b))
		return nil
	}))
	if err != nil {
		t.Fatal(err)
	}
	lent := []byte(`{"kind":"noise","level":3,"text":"kept"}`)
	if err := c.Device(lent); err != nil {
		t.Fatal(err)
	}
	for i := range lent {
		lent[i] = 'x'
	}
	eventually(t, "the news arrives whole", func() bool {
		mu.Lock()
		defer mu.Unlock()
		return len(got) == 1 && strings.Contains(got[0], "kept")
	})
}

func TestAHostThatFailsHarmsNobody(t *testing.T) {
	p := &phone{err: errors.New("an exception of the shell")}
	c := open(t, p)
	if err := c.Model("", "", "no model in this test"); err != nil {
		t.Fatal(err)
	}
	r, err := c.Request("POST", "/api/start", []byte(`{"appliance":"furnace-hsi","voice":true}`))
	if err != nil || r.Status() != 200 {
		t.Fatalf("%v %s", err, r.Body())
	}
	eventually(t, "awake and speaking", func() bool { return p.saw("awake true") && p.saw("say ") })
	var state struct {
		View struct {
			Step struct{ ID string }
		}
		Ear struct{ State, Why string }
	}
	if r, err = c.Request("GET", "/api/state", nil); err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(r.Body(), &state); err != nil {
		t.Fatal(err)
	}
	if state.View.Step.ID == "" || state.Ear.State != "off" || state.Ear.Why != "no model in this test" {
		t.Errorf("%+v", state)
	}
}

func TestCloseWhileEverybodyCalls(t *testing.T) {
	c := open(t, &phone{})
	var wg sync.WaitGroup
	for i := range 16 {
		wg.Add(1)
		go func() {
			defer wg.Done()
			for range 50 {
				s, err := c.Subscribe(listener(func([]byte) error { return nil }))
				if err != nil {
					if code(err) != "closed" {
						t.Error(err)
					}
					return
				}
				if _, err := c.Request("GET", "/api/state", nil); err != nil && code(err) != "closed" {
					t.Error(err)
				}
				if i%2 == 0 {
					if err := s.Stop(); err != nil {
						t.Error(err)
					}
				}
			}
		}()
	}
	time.Sleep(5 * time.Millisecond)
	if err := c.Close(); err != nil {
		t.Error(err)
	}
	wg.Wait()
}

// TestShapes holds the two rules of the border that the compiler does not: every exported name is in mobile.go, and every
// exported signature is made of shapes the binding generator carries over. The generator itself is run by make jvm.
func TestShapes(t *testing.T) {
	fset := token.NewFileSet()
	names, err := filepath.Glob("*.go")
	if err != nil {
		t.Fatal(err)
	}
	methods := 0
	for _, name := range names {
		if strings.HasSuffix(name, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(fset, name, nil, 0)
		if err != nil {
			t.Fatal(err)
		}
		for _, d := range f.Decls {
			switch d := d.(type) {
			case *ast.FuncDecl:
				if !d.Name.IsExported() || d.Recv != nil && !ast.IsExported(receiver(d)) {
					continue
				}
				if name != "mobile.go" {
					t.Errorf("%s: %s is exported outside mobile.go", name, d.Name)
				}
				methods++
				signature(t, fset, d.Name.Name, d.Type)
			case *ast.GenDecl:
				for _, s := range d.Specs {
					switch s := s.(type) {
					case *ast.TypeSpec:
						if s.Name.IsExported() && name != "mobile.go" {
							t.Errorf("%s: type %s is exported outside mobile.go", name, s.Name)
						}
						if i, ok := s.Type.(*ast.InterfaceType); ok && s.Name.IsExported() {
							for _, m := range i.Methods.List {
								ft := m.Type.(*ast.FuncType)
								signature(t, fset, s.Name.Name+"."+m.Names[0].Name, ft)
								if n := ft.Results.NumFields(); n != 1 || shape(ft.Results.List[0].Type) != "error" {
									t.Errorf("%s.%s must return one error, or an exception of the shell stays pending", s.Name, m.Names[0])
								}
							}
						}
					case *ast.ValueSpec:
						for _, n := range s.Names {
							if n.IsExported() && d.Tok == token.VAR {
								t.Errorf("%s: an exported variable can be set from the other side", n)
							}
						}
					}
				}
			}
		}
	}
	if methods < 15 {
		t.Errorf("only %d exported functions were seen", methods)
	}
}

func receiver(d *ast.FuncDecl) string { return strings.TrimPrefix(shape(d.Recv.List[0].Type), "*") }

func shape(e ast.Expr) string {
	switch e := e.(type) {
	case *ast.Ident:
		return e.Name
	case *ast.StarExpr:
		return "*" + shape(e.X)
	case *ast.ArrayType:
		if e.Len == nil {
			return "[]" + shape(e.Elt)
		}
	}
	return "?"
}

// reserved are methods every Java object has; a bound method of that name does not compile.
var reserved = map[string]bool{"Wait": true, "Notify": true, "NotifyAll": true, "GetClass": true, "HashCode": true, "ToString": true, "Clone": true, "Finalize": true}

func signature(t *testing.T, fset *token.FileSet, name string, f *ast.FuncType) {
	t.Helper()
	if reserved[name[strings.LastIndex(name, ".")+1:]] {
		t.Errorf("%s is a method of every Java object", name)
	}
	ok := map[string]bool{"string": true, "bool": true, "int": true, "int64": true, "[]byte": true, "Host": true, "Listener": true,
		"*Core": true, "*Reply": true, "*Subscription": true}
	for _, p := range f.Params.List {
		if !ok[shape(p.Type)] {
			t.Errorf("%s: %s does not cross", fset.Position(p.Pos()), name)
		}
	}
	if f.Results == nil {
		return
	}
	n := f.Results.NumFields()
	for i, r := range f.Results.List {
		s := shape(r.Type)
		last := i == len(f.Results.List)-1
		if !(ok[s] && (n == 1 || i == 0) || s == "error" && last) || n > 2 || n == 2 && last && s != "error" {
			t.Errorf("%s: the results of %s do not cross", fset.Position(r.Pos()), name)
		}
	}
}
