package bench

import (
	"crypto/tls"
	"crypto/x509"
	"fmt"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"drawdown/cmd/internal/bench/gate"
)

// tablet is a device on the network that trusts the page's authority.
type tablet struct {
	*shopfloor
	client *http.Client
	base   string
	cookie *http.Cookie
}

func shared(t *testing.T) *shopfloor {
	t.Helper()
	return served(t, func(o *Options) { o.Share = true })
}

func (s *shopfloor) tablet() *tablet {
	s.t.Helper()
	authority := s.want(http.StatusOK, s.ask("GET", "/drawdown.crt", "", withoutKey))
	cert, err := x509.ParseCertificate(authority.body)
	if err != nil {
		s.t.Fatal(err)
	}
	roots := x509.NewCertPool()
	roots.AddCert(cert)
	return &tablet{s, &http.Client{
		Transport:     &http.Transport{TLSClientConfig: &tls.Config{RootCAs: roots}},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}, fmt.Sprintf("https://127.0.0.1:%d", s.bench.port+1), nil}
}

func (d *tablet) ask(method, path, body string, change ...func(*http.Request)) reply {
	d.t.Helper()
	r, err := http.NewRequest(method, d.base+path, strings.NewReader(body))
	if err != nil {
		d.t.Fatal(err)
	}
	if d.cookie != nil {
		r.AddCookie(d.cookie)
	}
	for _, f := range change {
		f(r)
	}
	before := d.shopfloor.client
	d.shopfloor.client = d.client
	defer func() { d.shopfloor.client = before }()
	return d.do(r)
}

// join tries a code in the same way as the form of the page.
func (d *tablet) join(code string) reply {
	d.t.Helper()
	return d.ask("POST", "/join", url.Values{"code": {code}}.Encode(), head("Content-Type", "application/x-www-form-urlencoded"))
}

// A tablet joins by a code, works, and is signed out; it cannot admit others.
func TestTabletJoins(t *testing.T) {
	t.Parallel()
	s := shared(t)
	id := s.accepted()
	d := s.tablet()
	d.want(http.StatusUnauthorized, d.ask("GET", "/api/patterns", ""))
	d.want(http.StatusOK, d.ask("GET", "/join?code=ABC234", ""))
	var code struct{ Code, Address string }
	s.want(http.StatusCreated, s.ask("POST", "/api/share/codes", "")).into(t, &code)
	if page := s.ask("GET", "/share", ""); !contains(page.body, code.Code) || !contains(page.body, "<svg") && code.Address != "" {
		t.Error("the page of the desktop does not show the code")
	}
	in := d.want(http.StatusSeeOther, d.join(strings.ToLower(code.Code)))
	d.cookie = cookieOf(t, in)
	if !d.cookie.Secure || !d.cookie.HttpOnly || !strings.HasPrefix(d.cookie.Name, "__Host-") {
		t.Errorf("%+v", d.cookie)
	}
	d.want(http.StatusForbidden, s.tablet().join(code.Code)) // the code is used up
	d.want(http.StatusOK, d.ask("GET", "/", ""))
	d.want(http.StatusOK, d.ask("POST", "/api/runs/"+id+"/entries", `{"entry":"d1","act":"done","step":1,"who":"MK"}`))
	d.want(http.StatusForbidden, d.ask("POST", "/api/share/codes", ""))
	d.want(http.StatusForbidden, d.ask("GET", "/share", ""))
	d.want(http.StatusForbidden, d.ask("DELETE", "/api/share/sessions/x", ""))
	var now shareOut
	s.want(http.StatusOK, s.ask("GET", "/api/share", "")).into(t, &now)
	if !now.Shared || len(now.Sessions) != 1 || now.Sessions[0].Sort != gate.Tablet || len(now.Fingerprint) != 95 {
		t.Fatalf("%+v", now)
	}
	s.want(http.StatusNoContent, s.ask("DELETE", "/api/share/sessions/"+now.Sessions[0].ID, ""))
	s.want(http.StatusNotFound, s.ask("DELETE", "/api/share/sessions/"+now.Sessions[0].ID, ""))
	d.want(http.StatusUnauthorized, d.ask("POST", "/api/runs/"+id+"/entries", `{"entry":"d2","act":"done","step":2,"who":"MK"}`))
}

// On the network, too, the page only answers under its own names, and accepts
// nothing from another site.
func TestNetworkIsGuarded(t *testing.T) {
	t.Parallel()
	s := shared(t)
	d := s.tablet()
	d.want(http.StatusMisdirectedRequest, d.ask("GET", "/join", "", asHost("example.test")))
	d.want(http.StatusMisdirectedRequest, d.ask("GET", "/join", "", asHost(fmt.Sprintf("127.0.0.1:%d", s.bench.port))))
	d.want(http.StatusForbidden, d.ask("POST", "/join", "code=A", head("Origin", "https://example.test")))
	if answer, err := http.Get(strings.Replace(d.base, "https:", "http:", 1)); err == nil && answer.StatusCode == http.StatusOK {
		t.Error("the network's port answers without HTTPS")
	}
	// An address whose name points to this machine from elsewhere: the
	// loopback's port is not open to the network.
	for _, name := range gate.Network() {
		if strings.HasSuffix(name, ".local") || strings.Contains(name, ":") {
			continue
		}
		if answer, err := s.client.Get(fmt.Sprintf("http://%s:%d/join", name, s.bench.port)); err == nil {
			t.Errorf("the page of the desktop answers at %s: %s", name, answer.Status)
		}
	}
}

// A device that guesses has to wait: meanwhile even the right code is refused.
func TestGuessingCodes(t *testing.T) {
	t.Parallel()
	s := shared(t)
	d := s.tablet()
	var code struct{ Code string }
	s.want(http.StatusCreated, s.ask("POST", "/api/share/codes", "")).into(t, &code)
	for range 5 {
		got := d.want(http.StatusForbidden, d.join("222222"))
		if contains(got.body, code.Code) {
			t.Fatal("the page shows the code")
		}
	}
	d.want(http.StatusTooManyRequests, d.join(code.Code))
	s.clock.pass(11 * 60 * 1e9)
	d.want(http.StatusSeeOther, d.join(code.Code))
}

func TestWithoutSharing(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.want(http.StatusConflict, s.ask("POST", "/api/share/codes", ""))
	s.want(http.StatusNotFound, s.ask("GET", "/drawdown.crt", ""))
	if page := s.want(http.StatusOK, s.ask("GET", "/share", "")); !contains(page.body, "--share") {
		t.Error("the page does not say how to share")
	}
	var now shareOut
	if s.ask("GET", "/api/share", "").into(t, &now); now.Shared || now.Addresses == nil {
		t.Errorf("%+v", now)
	}
}
