package bench

import (
	"bufio"
	"fmt"
	"net"
	"net/http"
	"net/url"
	"strings"
	"testing"
	"time"
)

// asked lists requests for every route that needs the key, for a run R1.
var asked = []string{
	"GET /api/patterns", "GET /api/runs", "POST /api/runs", "GET /api/runs/R1", "GET /api/runs/R1.json", "GET /api/runs/R1.csv", "POST /api/runs/R1/entries",
	"GET /api/runs/R1/events", "GET /api/jobs", "POST /api/jobs", "GET /api/jobs/J1", "POST /api/jobs/J1/entries", "POST /api/photos", "GET /api/photos/0",
	"GET /api/wrenches", "GET /api/people", "GET /api/time", "GET /api/share", "POST /api/share/codes", "DELETE /api/share/sessions/x", "GET /api/none", "PUT /api/runs",
	"GET /", "GET /patterns/lid", "GET /patterns/lid/card.pdf", "GET /runs/R1", "GET /runs/R1/live", "GET /runs/R1/card.pdf", "GET /records", "GET /records/R1", "GET /settings", "GET /share", "GET /none",
}

// First principles: without key or session nobody learns anything, not even
// which paths exist. A program gets the answer in JSON, a person as a page.
func TestWithoutKey(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.run(`{"of":"lid","work":"loosen"}`)
	for _, request := range asked {
		method, path, _ := strings.Cut(request, " ")
		for _, in := range []func(*http.Request){withoutKey, head("Authorization", "Bearer WRONG"), head("Authorization", "Basic "+s.key),
			func(r *http.Request) { withoutKey(r); r.URL.RawQuery = "key=WRONG" },
			func(r *http.Request) {
				withoutKey(r)
				r.AddCookie(&http.Cookie{Name: s.bench.cookieName(r), Value: "WRONG"})
			}} {
			got := s.ask(method, path, "{}", in)
			if got.status != http.StatusUnauthorized || contains(got.body, "Lid") {
				t.Errorf("%s: %s", request, got)
			}
			kind := "text/html"
			if strings.HasPrefix(path, "/api/") {
				kind = "application/json"
				var said said
				got.into(t, &said)
				if said.Reason == "" {
					t.Errorf("%s gives no reason", request)
				}
			}
			if !strings.HasPrefix(got.head.Get("Content-Type"), kind) {
				t.Errorf("%s is answered as %s", request, got.head.Get("Content-Type"))
			}
		}
	}
}

// The key is exchanged for a session and disappears from the address.
func TestKeyBecomesASession(t *testing.T) {
	t.Parallel()
	s := served(t)
	in := s.want(http.StatusSeeOther, s.ask("GET", "/patterns/lid?key="+s.key+"&lang=de", "", withoutKey))
	if to := in.head.Get("Location"); to != "/patterns/lid?lang=de" {
		t.Errorf("sent on to %q", to)
	}
	cookie := cookieOf(t, in)
	if !cookie.HttpOnly || cookie.SameSite != http.SameSiteLaxMode || cookie.Value == s.key {
		t.Errorf("%+v", cookie)
	}
	as := func(r *http.Request) { withoutKey(r); r.AddCookie(cookie) }
	s.want(http.StatusOK, s.ask("GET", "/api/patterns", "", as))
	s.end()
	s.start()
	// The cookie's name contains the port; the restarted page has another one
	// here.
	cookie.Name = fmt.Sprintf("drawdown-%d", s.bench.port)
	s.want(http.StatusOK, s.ask("GET", "/api/patterns", "", as))
	s.clock.pass(13 * time.Hour)
	got := s.want(http.StatusUnauthorized, s.ask("GET", "/", "", as))
	if !contains(got.body, "ended") {
		t.Errorf("a page of an ended session does not say so: %s", got.body)
	}
}

func cookieOf(t *testing.T, r reply) *http.Cookie {
	t.Helper()
	for _, c := range (&http.Response{Header: r.head}).Cookies() {
		if strings.Contains(c.Name, "drawdown-") && c.Name != languageCookie {
			return c
		}
	}
	t.Fatalf("no session in %v", r.head)
	return nil
}

// A foreign page whose name points to this machine cannot send requests (DNS
// rebinding).
func TestOtherHost(t *testing.T) {
	t.Parallel()
	s := served(t)
	for _, host := range []string{"example.test", "example.test:80", "localhost", "127.0.0.1:1", fmt.Sprintf("127.0.0.1.example.test:%d", s.bench.port), fmt.Sprintf("192.168.1.5:%d", s.bench.port)} {
		for _, path := range []string{"/api/patterns", "/", "/join", "/?key=" + s.key} {
			if got := s.ask("GET", path, "", asHost(host)); got.status != http.StatusMisdirectedRequest || contains(got.body, "Lid") {
				t.Errorf("%s at %s: %s", path, host, got)
			}
		}
	}
	for _, host := range []string{"localhost", "127.0.0.1", "[::1]"} {
		s.want(http.StatusOK, s.ask("GET", "/api/patterns", "", asHost(fmt.Sprintf("%s:%d", host, s.bench.port))))
	}
}

// Another site's page cannot post, whatever the browser sends with the request.
func TestCrossSite(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"loosen"}`)
	own := "http://127.0.0.1:" + fmt.Sprint(s.bench.port)
	entry := `{"entry":"a","act":"note","note":"x","who":"RA"}`
	for _, from := range []func(*http.Request){
		head("Origin", "https://example.test"), head("Origin", "null"), head("Origin", "http://127.0.0.1:1"),
		head("Sec-Fetch-Site", "cross-site"), head("Sec-Fetch-Site", "same-site"),
	} {
		s.want(http.StatusForbidden, s.ask("POST", "/api/runs/"+id+"/entries", entry, from))
		s.want(http.StatusForbidden, s.ask("POST", "/join", "code=ABCDEF", from))
	}
	s.want(http.StatusForbidden, s.ask("GET", "/patterns/lid/card.pdf", "", head("Sec-Fetch-Site", "cross-site")))
	if v := s.state(id); v.Version != 0 {
		t.Errorf("%d entries were taken", v.Version)
	}
	s.want(http.StatusOK, s.ask("POST", "/api/runs/"+id+"/entries", entry, head("Origin", own), head("Sec-Fetch-Site", "same-origin")))
}

// Every answer forbids the page to load from or send to other sites.
func TestHeads(t *testing.T) {
	t.Parallel()
	s := served(t)
	for _, path := range []string{"/", "/api/patterns", "/none", "/join"} {
		h := s.ask("GET", path, "").head
		if !strings.Contains(h.Get("Content-Security-Policy"), "default-src 'none'") || strings.Contains(h.Get("Content-Security-Policy"), "unsafe") ||
			h.Get("X-Content-Type-Options") != "nosniff" || h.Get("Referrer-Policy") != "no-referrer" || h.Get("Cache-Control") != "no-store" {
			t.Errorf("%s: %v", path, h)
		}
	}
}

func TestUnknownPathsAndMethods(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.run(`{"of":"lid","work":"loosen"}`)
	for _, path := range []string{"/none", "/api/none", "/api", "/api/runs/R1/none", "/api/runs/R9", "/api/jobs/J9", "/runs/R9", "/patterns/none", "/patterns/lid/none.pdf", "/patterns/lid/card.exe", "/records/R9", "/api/runs/R1.xls", "/api/photos/none", "/assets/none/page.css", "/assets/", "/api/runs/R9.json", "/api/runs/J1"} {
		got := s.want(http.StatusNotFound, s.ask("GET", path, ""))
		if strings.HasPrefix(path, "/api/") {
			var said said
			if got.into(t, &said); said.Reason == "" {
				t.Errorf("%s: %s", path, got)
			}
		}
	}
	for request, allow := range map[string]string{"PUT /api/runs": "GET, HEAD, POST", "DELETE /api/patterns": "GET, HEAD", "GET /api/runs/R1/entries": "POST", "POST /api/runs/R1": "GET, HEAD", "PATCH /": "GET, HEAD"} {
		method, path, _ := strings.Cut(request, " ")
		got := s.want(http.StatusMethodNotAllowed, s.ask(method, path, "{}"))
		if got.head.Get("Allow") != allow {
			t.Errorf("%s: allowed %q, want %q", request, got.head.Get("Allow"), allow)
		}
	}
}

// First principles: a name never becomes a path. The folder above the shop's
// contains a pattern that must stay unknown.
func TestPathTricks(t *testing.T) {
	t.Parallel()
	s := served(t)
	s.write("../"+"secret.yaml", strings.Replace(lid, "Lid", "Secret", 1))
	for _, name := range []string{"../secret", "..%2fsecret", "%2e%2e/secret", "..\\secret", "..%5csecret", "/etc/passwd", "lid%00", "lid/../../secret", ".", "..", "", strings.Repeat("a", 5000), "CON", "lid.yaml", "~/secret", "\x7f", "é́"} {
		for _, path := range []string{"/patterns/" + name, "/patterns/" + name + "/card.pdf", "/api/runs/" + name, "/api/photos/" + name, "/runs/" + name, "/assets/" + name} {
			r, err := http.NewRequest("GET", s.base, nil)
			if err != nil {
				t.Fatal(err)
			}
			r.URL = &url.URL{Scheme: "http", Host: r.URL.Host, Opaque: "//" + r.URL.Host + path}
			if strings.ContainsAny(path, "\x7f\x00\\é") {
				r.URL = &url.URL{Scheme: "http", Host: r.URL.Host, Path: path}
			}
			r.Header.Set("Authorization", "Bearer "+s.key)
			if got := s.do(r); got.status == http.StatusOK && contains(got.body, "Secret") || got.status >= 500 {
				t.Errorf("%q: %s", path, got)
			}
		}
		body := fmt.Sprintf(`{"of":%q,"work":"loosen"}`, name)
		if got := s.ask("POST", "/api/runs", body); got.status != http.StatusNotFound && got.status != http.StatusBadRequest {
			t.Errorf("%s: %s", body, got)
		}
		if got := s.ask("POST", "/api/jobs", fmt.Sprintf(`{"of":%q}`, name)); got.status != http.StatusNotFound && got.status != http.StatusBadRequest {
			t.Errorf("job of %q: %s", name, got)
		}
	}
}

func TestTooLarge(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.run(`{"of":"lid","work":"loosen"}`)
	long := fmt.Sprintf(`{"entry":"a","act":"note","who":"RA","note":%q}`, strings.Repeat("x", int(Usual.Body)))
	got := s.want(http.StatusRequestEntityTooLarge, s.enter(id, long))
	if !contains(got.body, "64 kB") {
		t.Errorf("the limit is not said: %s", got)
	}
	s.want(http.StatusRequestEntityTooLarge, s.ask("POST", "/api/runs", long))
	s.want(http.StatusRequestEntityTooLarge, s.ask("POST", "/api/photos", strings.Repeat("x", int(Usual.Photo)+1)))
	r, _ := http.NewRequest("GET", s.base+"/join", nil)
	r.Header.Set("X-Long", strings.Repeat("x", 2*Usual.Header))
	if answer, err := s.client.Do(r); err == nil && answer.StatusCode != http.StatusRequestHeaderFieldsTooLarge {
		t.Errorf("a head of %d bytes: %s", 2*Usual.Header, answer.Status) // an error: cut off before the answer was read
	}
	s.want(http.StatusOK, s.ask("GET", "/api/patterns", ""))
}

// A slow sender is cut off, and delays nobody.
func TestSlowRequests(t *testing.T) {
	t.Parallel()
	s := served(t, func(o *Options) {
		o.Limits.HeaderTime, o.Limits.BodyTime, o.Limits.Idle = 100*time.Millisecond, 200*time.Millisecond, 100*time.Millisecond
	})
	address := strings.TrimPrefix(s.base, "http://")
	for name, sent := range map[string]string{
		"nothing":     "",
		"half a head": "GET / HTTP/1.1\r\nHost: " + address + "\r\nX: ",
		"half a body": "POST /api/runs HTTP/1.1\r\nHost: " + address + "\r\nAuthorization: Bearer " + s.key + "\r\nContent-Length: 1000\r\n\r\n{",
	} {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		fmt.Fprint(c, sent)
		// A server that waits for ever would block the test until its timeout.
		line, _ := bufio.NewReader(c).ReadString('\n')
		if strings.Contains(line, " 200 ") || strings.Contains(line, " 201 ") {
			t.Errorf("%s: %q", name, line)
		}
	}
	for { // until a busy machine is fast enough itself for these limits
		if answer, err := s.client.Get(s.base + "/join"); err == nil {
			if answer.Body.Close(); answer.StatusCode != http.StatusOK {
				t.Error(answer.Status)
			}
			return
		}
	}
}

func TestConnectionsOfOneAddress(t *testing.T) {
	t.Parallel()
	s := served(t, func(o *Options) { o.Limits.OfOne = 3 })
	address := strings.TrimPrefix(s.base, "http://")
	var open []net.Conn
	for range 3 {
		c, err := net.Dial("tcp", address)
		if err != nil {
			t.Fatal(err)
		}
		defer c.Close()
		fmt.Fprintf(c, "GET /join HTTP/1.1\r\nHost: %s\r\n\r\n", address)
		if line, err := bufio.NewReader(c).ReadString('\n'); err != nil || !strings.Contains(line, "200") {
			t.Fatal(line, err)
		}
		open = append(open, c)
	}
	if _, err := s.client.Get(s.base + "/join"); err == nil {
		t.Error("a fourth connection is answered")
	}
	open[0].Close()
	for { // until the server has noticed
		if _, err := s.client.Get(s.base + "/join"); err == nil {
			break
		}
	}
}
