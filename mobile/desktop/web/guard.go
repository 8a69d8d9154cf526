package web

import (
	"crypto/rand"
	"crypto/subtle"
	"encoding/hex"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"sync"

	"readback/mobile/app"
)

// guard lets in the browser that was given the address and nobody else: the server listens on the loopback only, answers to its own
// names only (a foreign name that resolves to 127.0.0.1 is refused), and wants a cookie that is handed out once for each
// printed address. The cookie is this start's and this port's: what another program on this machine or a start before the last was given opens
// nothing. The last start's is changed for a new one where the port is the same, so that an open page comes back by itself.
type guard struct {
	host, port string // as in the address
	secret     string // value of the cookie
	before     string // that of the last start on this port, empty when there was none

	mu    sync.Mutex
	token string
	used  func(next string) // tells that the address was used and what the next one is
}

func random() string {
	b := make([]byte, 16)
	if _, err := rand.Read(b); err != nil {
		panic("readback: no randomness")
	}
	return hex.EncodeToString(b)
}

// keyName is the file with the port and the cookie of the last start. Only this user can read it.
const keyName = "key"

// newGuard guards what listens at this address.
func newGuard(dir string, addr net.Addr) (*guard, error) {
	host, port, err := net.SplitHostPort(addr.String())
	if err != nil {
		return nil, err
	}
	g := &guard{host: host, port: port, secret: random(), token: random()}
	name := filepath.Join(dir, keyName)
	if data, err := os.ReadFile(name); err == nil {
		if secret, ok := strings.CutPrefix(string(data), port+" "); ok && len(secret) == len(g.secret) {
			g.before = secret
		}
	}
	// Where it cannot be written an open page does not come back by itself; the printed address lets it in.
	_ = os.WriteFile(name, []byte(port+" "+g.secret), 0o600)
	return g, nil
}

func (g *guard) setCookie(w http.ResponseWriter) {
	http.SetCookie(w, &http.Cookie{Name: g.cookieName(), Value: g.secret, Path: "/", HttpOnly: true, SameSite: http.SameSiteStrictMode})
}

// knows tells whether a cookie lets in.
func (g *guard) knows(w http.ResponseWriter, value string) bool {
	if subtle.ConstantTimeCompare([]byte(value), []byte(g.secret)) == 1 {
		return true
	}
	if g.before == "" || subtle.ConstantTimeCompare([]byte(value), []byte(g.before)) != 1 {
		return false
	}
	g.setCookie(w)
	return true
}

func (g *guard) cookieName() string { return "readback-" + g.port }

func (g *guard) address() string {
	g.mu.Lock()
	defer g.mu.Unlock()
	return "http://" + net.JoinHostPort(g.host, g.port) + "/?t=" + g.token
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
	return err == nil && port == g.port && (name == g.host || name == "localhost")
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
			if r.Method != http.MethodGet { // what only looks, as a link checker does, uses nothing up
				h.Set("Allow", "GET")
				http.Error(w, "Open this address in a browser.", http.StatusMethodNotAllowed)
				return
			}
			if g.redeem(t) {
				g.setCookie(w)
			}
			// An address that was used before still leads to the page when this browser has the cookie.
			http.Redirect(w, r, "/", http.StatusSeeOther)
			return
		}
		c, err := r.Cookie(g.cookieName())
		if err != nil || !g.knows(w, c.Value) {
			http.Error(w, "Open the address that Readback printed. Each works once, in one browser.", http.StatusForbidden)
			return
		}
		next.ServeHTTP(w, r)
	})
}
