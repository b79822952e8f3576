package rehearsal

import (
	"crypto/rand"
	"crypto/subtle"
	"net/http"
	"strings"
)

// guard lets in only requests of the page itself. Another page in the same browser can send requests to any address, by
// name too, and other users of the machine can reach the loopback: so the host must be ours to the letter, the origin
// ours, and the path begin with a secret.
type guard struct {
	host   string // 127.0.0.1:PORT
	token  string // 128 bits and more, in letters and digits
	inside http.Handler
	cross  *http.CrossOriginProtection
}

// newGuard is a guard with a secret of its own.
func newGuard(host string, inside http.Handler) *guard {
	return &guard{host: host, token: rand.Text(), inside: inside, cross: http.NewCrossOriginProtection()}
}

// url is the page's address.
func (g *guard) url() string { return "http://" + g.host + "/" + g.token + "/" }

// policy is what the page may do: load what is served here, show pictures that it made itself, and nothing else.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' blob:; connect-src 'self'; " +
	"base-uri 'none'; form-action 'none'; frame-ancestors 'none'"

func (g *guard) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	h := w.Header()
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Cache-Control", "no-store")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	// RFC 9110, 15.5.20: a name that leads here by another's doing (DNS rebinding) is not ours.
	if r.Host != g.host {
		refuse(w, http.StatusMisdirectedRequest)
		return
	}
	if origins := r.Header["Origin"]; len(origins) > 1 || len(origins) == 1 && origins[0] != "http://"+g.host {
		refuse(w, http.StatusForbidden)
		return
	}
	if g.cross.Check(r) != nil {
		refuse(w, http.StatusForbidden)
		return
	}
	first, rest, _ := strings.Cut(strings.TrimPrefix(r.URL.Path, "/"), "/")
	if subtle.ConstantTimeCompare([]byte(first), []byte(g.token)) != 1 {
		refuse(w, http.StatusNotFound)
		return
	}
	if strings.Contains(rest, "..") || strings.Contains(rest, "//") { // nothing here has such a name
		refuse(w, http.StatusNotFound)
		return
	}
	inner := r.Clone(r.Context())
	inner.URL.Path, inner.URL.RawPath = "/"+rest, ""
	g.inside.ServeHTTP(w, inner)
}

// refuse answers with a status and its words alone.
func refuse(w http.ResponseWriter, status int) { http.Error(w, http.StatusText(status), status) }
