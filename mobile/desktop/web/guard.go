package web

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"errors"
	"fmt"
	"io/fs"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"sync"

	"readback/mobile/app"
)

// guard lets in the browser that was given the address and nobody else: the server listens on the loopback only, answers to its own
// names only (a foreign name that resolves to 127.0.0.1 is refused), and wants a cookie that is handed out once for each
// printed address.
type guard struct {
	port   string
	secret string // value of the cookie; kept on disk so that a page survives a restart of the program

	mu    sync.Mutex
	token string
	used  func(next string) // tells that the address was used and what the next one is
}

const cookieName = "readback"

func random() string {
	b := make([]byte, 16)
	if _, err := rand.Read(b); err != nil {
		panic("readback: no randomness")
	}
	return hex.EncodeToString(b)
}

// newGuard reads the cookie's secret from dir, or makes it.
func newGuard(dir, port string) (*guard, error) {
	name := filepath.Join(dir, "key")
	data, err := os.ReadFile(name)
	switch {
	case err == nil && len(data) == 32:
	case err == nil || errors.Is(err, fs.ErrNotExist):
		data = []byte(random())
		if err := os.WriteFile(name, data, 0o600); err != nil {
			return nil, fmt.Errorf("keeping the page's key: %w", err)
		}
	default:
		return nil, fmt.Errorf("reading the page's key: %w", err)
	}
	return &guard{port: port, secret: string(data), token: random()}, nil
}

func (g *guard) address() string {
	g.mu.Lock()
	defer g.mu.Unlock()
	return "http://127.0.0.1:" + g.port + "/?t=" + g.token
}

// redeem uses the token up.
func (g *guard) redeem(token string) bool {
	g.mu.Lock()
	ok := subtle.ConstantTimeCompare([]byte(token), []byte(g.token)) == 1
	if ok {
		g.token = random()
	}
	g.mu.Unlock()
	if ok && g.used != nil {
		g.used(g.address())
	}
	return ok
}

func (g *guard) knownHost(host string) bool {
	name, port, err := net.SplitHostPort(host)
	return err == nil && port == g.port && (name == "127.0.0.1" || name == "localhost")
}

// recordPolicy is for a job's record: it brings its own style and pictures and may do nothing else.
const recordPolicy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'; frame-ancestors 'none'; sandbox allow-modals"

func (g *guard) wrap(next http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		h := w.Header()
		h.Set("Content-Security-Policy", app.Policy)
		h.Set("X-Content-Type-Options", "nosniff")
		h.Set("Referrer-Policy", "no-referrer")
		h.Set("Cross-Origin-Opener-Policy", "same-origin")
		h.Set("Cross-Origin-Resource-Policy", "same-origin")
		h.Set("Permissions-Policy", "microphone=(self), camera=(self), geolocation=(), payment=(), usb=()")
		h.Set("Cache-Control", "no-store")
		if !g.knownHost(r.Host) {
			http.Error(w, "This address is not Readback's.", http.StatusMisdirectedRequest)
			return
		}
		if origin := r.Header.Get("Origin"); origin != "" && origin != "http://"+r.Host {
			http.Error(w, "Another page asked for this.", http.StatusForbidden)
			return
		}
		if t := r.URL.Query().Get("t"); t != "" && r.URL.Path == "/" {
			if g.redeem(t) {
				http.SetCookie(w, &http.Cookie{Name: cookieName, Value: g.secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode, MaxAge: 30 * 86400})
			}
			// An address that was used before still leads to the page when this browser has the cookie.
			http.Redirect(w, r, "/", http.StatusSeeOther)
			return
		}
		c, err := r.Cookie(cookieName)
		if err != nil || subtle.ConstantTimeCompare([]byte(c.Value), []byte(g.secret)) != 1 {
			http.Error(w, "Open the address that Readback printed. Each works once, in one browser.", http.StatusForbidden)
			return
		}
		next.ServeHTTP(w, r)
	})
}
