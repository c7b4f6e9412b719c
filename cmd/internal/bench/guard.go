package bench

import (
	"context"
	"fmt"
	"log"
	"net/http"
	"net/url"
	"runtime/debug"
	"strings"
	"time"

	"drawdown/cmd/internal/bench/gate"
	"drawdown/geometry/finding"
)

// policy limits what a browser may load on a page to what this program serves.
const policy = "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; " +
	"connect-src 'self'; manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none'; frame-ancestors 'none'"

// guarded passes only permitted requests to the routes: under one of the names,
// from our own pages, with the key or a session, in limited time.
func (b *Bench) guarded(routes http.Handler, names func() []string, port func() int) http.Handler {
	crossSite := http.NewCrossOriginProtection()
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		defer b.recovered(w, r)
		b.limitTime(w, r)
		heads(w.Header())
		if !gate.IsHost(r.Host, names(), port()) {
			b.fail(w, r, wrong(http.StatusMisdirectedRequest, OtherHost, finding.Values{"host": cut(r.Host)}))
			return
		}
		if crossSite.Check(r) != nil {
			b.fail(w, r, wrong(http.StatusForbidden, OtherSite, nil))
			return
		}
		if key := r.URL.Query().Get("key"); key != "" && r.Method == http.MethodGet && b.gate.IsKey(key) && !isAPI(r) {
			b.enter(w, r)
			return
		}
		who, in := b.who(r)
		if !in && !isOpen(r) {
			b.fail(w, r, wrong(http.StatusUnauthorized, NoKey, nil))
			return
		}
		routes.ServeHTTP(w, r.WithContext(context.WithValue(r.Context(), comer{}, who)))
	})
}

// heads sets the headers of every answer.
func heads(h http.Header) {
	h.Set("Content-Security-Policy", policy)
	h.Set("X-Content-Type-Options", "nosniff")
	h.Set("Referrer-Policy", "no-referrer")
	h.Set("Cross-Origin-Opener-Policy", "same-origin")
	h.Set("Cross-Origin-Resource-Policy", "same-origin")
	h.Set("Permissions-Policy", "geolocation=(), microphone=(), camera=(self), screen-wake-lock=(self)")
	h.Set("Cache-Control", "no-store")
}

// recovered answers a request whose handler panicked, so that one fault ends no
// other work.
func (b *Bench) recovered(w http.ResponseWriter, r *http.Request) {
	switch fault := recover(); fault {
	case nil:
	case http.ErrAbortHandler:
		panic(fault)
	default:
		log.Printf("%s %s: %v\n%s", r.Method, r.URL.Path, fault, debug.Stack())
		b.fail(w, r, wrong(http.StatusInternalServerError, Broke, nil))
	}
}

// limitTime limits the time to send a request and to receive its answer.
func (b *Bench) limitTime(w http.ResponseWriter, r *http.Request) {
	to := http.NewResponseController(w)
	sent := b.Limits.BodyTime
	if r.URL.Path == photosPath {
		sent = b.Limits.PhotoTime
	}
	// A writer without deadlines, as in a test, has no network behind it.
	to.SetReadDeadline(time.Now().Add(sent))
	to.SetWriteDeadline(time.Now().Add(sent + b.Limits.AnswerTime))
}

// isOpen reports whether everybody may have a path: those that the sign-in page
// needs.
func isOpen(r *http.Request) bool {
	return strings.HasPrefix(r.URL.Path, assetsPath) || r.URL.Path == joinPath || r.URL.Path == authorityPath
}

// comer is the key of a request's session in its context.
type comer struct{}

// who returns the sender of a request: a program with the key, or a browser
// with a session.
func (b *Bench) who(r *http.Request) (gate.Session, bool) {
	if key, sent := strings.CutPrefix(r.Header.Get("Authorization"), "Bearer "); sent {
		return gate.Session{Sort: gate.Desktop}, b.gate.IsKey(key)
	}
	if kept, err := r.Cookie(b.cookieName(r)); err == nil {
		return b.gate.Find(kept.Value)
	}
	return gate.Session{}, false
}

// sessionOf returns the session of an admitted request.
func sessionOf(r *http.Request) gate.Session {
	who, _ := r.Context().Value(comer{}).(gate.Session)
	return who
}

// desktopOnly refuses those who signed in with a code: they may not admit
// others.
func desktopOnly(do route) route {
	return func(w http.ResponseWriter, r *http.Request) error {
		if sessionOf(r).Sort != gate.Desktop {
			return wrong(http.StatusForbidden, DesktopOnly, nil)
		}
		return do(w, r)
	}
}

// enter exchanges the key for a session and redirects the browser to the page
// without it, so that the key does not stay in the address.
func (b *Bench) enter(w http.ResponseWriter, r *http.Request) {
	if err := b.begin(w, r, gate.Desktop); err != nil {
		b.fail(w, r, err)
		return
	}
	rest := r.URL.Query()
	rest.Del("key")
	to := url.URL{Path: "/" + strings.TrimLeft(r.URL.Path, `/\`), RawQuery: rest.Encode()}
	http.Redirect(w, r, to.String(), http.StatusSeeOther)
}

func (b *Bench) begin(w http.ResponseWriter, r *http.Request, sort gate.Sort) error {
	token, err := b.gate.Begin(sort, device(r), gate.Address(r.RemoteAddr))
	if err == nil {
		b.handOut(w, r, token)
	}
	return err
}

// handOut sends a browser the token of its session.
func (b *Bench) handOut(w http.ResponseWriter, r *http.Request, token string) {
	http.SetCookie(w, b.cookie(r, b.cookieName(r), token, int(gate.WorkingDay/time.Second)))
}

// cookieName contains the port: browsers share cookies between all ports.
func (b *Bench) cookieName(r *http.Request) string {
	if r.TLS != nil {
		return fmt.Sprintf("__Host-drawdown-%d", b.port)
	}
	return fmt.Sprintf("drawdown-%d", b.port)
}

func (b *Bench) cookie(r *http.Request, name, value string, seconds int) *http.Cookie {
	return &http.Cookie{Name: name, Value: value, Path: "/", MaxAge: seconds, HttpOnly: true, Secure: r.TLS != nil, SameSite: http.SameSiteLaxMode}
}

// device returns the browser's name for its device.
func device(r *http.Request) string {
	_, rest, _ := strings.Cut(r.UserAgent(), "(")
	name, _, _ := strings.Cut(rest, ")")
	const longest = 60
	return firstRunes(name, longest)
}

// cut shortens a text from a stranger.
func cut(text string) string { return firstRunes(text, longestName) }

func firstRunes(text string, most int) string {
	if runes := []rune(text); len(runes) > most {
		return string(runes[:most]) + "…"
	}
	return text
}
