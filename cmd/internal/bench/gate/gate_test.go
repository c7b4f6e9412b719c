package gate

import (
	"errors"
	"fmt"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// clock is a clock that the test sets.
type clock struct{ t time.Time }

func (c *clock) now() time.Time { return c.t }

func opened(t *testing.T) (*Gate, *clock, string) {
	t.Helper()
	c := &clock{time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)}
	file := filepath.Join(t.TempDir(), "sessions.json")
	g, err := Open(file, c.now)
	if err != nil {
		t.Fatal(err)
	}
	return g, c, file
}

// First principles: only the key is accepted, and each start has another.
func TestKey(t *testing.T) {
	g, _, _ := opened(t)
	other, _, _ := opened(t)
	if !g.IsKey(g.Key()) || g.IsKey(other.Key()) || g.IsKey("") || g.IsKey(g.Key()+"x") || len(g.Key()) < 26 {
		t.Errorf("keys %q and %q", g.Key(), other.Key())
	}
}

func TestSessionsLastAWorkingDay(t *testing.T) {
	g, c, file := opened(t)
	token, err := g.Begin(Tablet, "tablet at bench 3", "10.0.0.7")
	if err != nil {
		t.Fatal(err)
	}
	s, in := g.Find(token)
	if !in || s.Device != "tablet at bench 3" || s.Sort != Tablet {
		t.Fatalf("%v %+v", in, s)
	}
	if _, in := g.Find(token + "x"); in {
		t.Error("another token gets in")
	}
	c.t = c.t.Add(WorkingDay - time.Second)
	again, err := Open(file, c.now)
	if err != nil {
		t.Fatal(err)
	}
	if _, in := again.Find(token); !in {
		t.Error("a restart ends the session")
	}
	c.t = c.t.Add(2 * time.Second)
	if _, in := again.Find(token); in || len(again.Sessions()) != 0 {
		t.Error("the session lasts longer than a working day")
	}
	c.t = c.t.Add(-40 * time.Hour) // the clock is set back
	if _, in := again.Find(token); in {
		t.Error("a clock set back makes the session longer")
	}
}

func TestEndedSessionStaysOut(t *testing.T) {
	g, c, file := opened(t)
	token, _ := g.Begin(Tablet, "", "10.0.0.7")
	other, _ := g.Begin(Tablet, "", "10.0.0.8")
	s, _ := g.Find(token)
	if found, err := g.End(s.ID); !found || err != nil {
		t.Fatal(found, err)
	}
	if found, _ := g.End(s.ID); found {
		t.Error("ended twice")
	}
	again, _ := Open(file, c.now)
	if _, in := again.Find(token); in {
		t.Error("an ended session gets in after a restart")
	}
	if _, in := again.Find(other); !in {
		t.Error("the other session was ended too")
	}
}

// The file admits nobody: it contains no token, and nobody else may read it.
func TestFileOfSessions(t *testing.T) {
	g, _, file := opened(t)
	token, _ := g.Begin(Desktop, "", "127.0.0.1")
	text, err := os.ReadFile(file)
	if err != nil || strings.Contains(string(text), token) {
		t.Errorf("%v: %s has the token", err, text)
	}
	about, _ := os.Stat(file)
	if runtime.GOOS != "windows" && about.Mode().Perm() != 0o600 {
		t.Errorf("permissions %v", about.Mode())
	}
	os.WriteFile(file, []byte("{broken"), 0o600)
	again, err := Open(file, g.now)
	if _, in := again.Find(token); err != nil || in {
		t.Errorf("a broken file: %v, in %v", err, in)
	}
}

func TestCodeIsGoodOnce(t *testing.T) {
	g, c, _ := opened(t)
	code, until, err := g.NewCode()
	if err != nil || len(code) != 6 || !until.After(c.t) {
		t.Fatal(code, until, err)
	}
	token, err := g.Join(" "+strings.ToLower(code[:3])+"-"+code[3:], "tablet", "10.0.0.7")
	if err != nil {
		t.Fatal(err)
	}
	if s, in := g.Find(token); !in || s.Sort != Tablet {
		t.Errorf("%v %+v", in, s)
	}
	if _, err := g.Join(code, "another", "10.0.0.8"); !errors.Is(err, WrongCode) {
		t.Errorf("the code is good twice: %v", err)
	}
	late, _, _ := g.NewCode()
	c.t = c.t.Add(codeLasts)
	if _, err := g.Join(late, "", "10.0.0.9"); !errors.Is(err, WrongCode) {
		t.Errorf("an old code: %v", err)
	}
}

// A device that guesses has to wait, and so do all devices of the same IPv6
// network; another address does not.
func TestGuessing(t *testing.T) {
	for name, addresses := range map[string]func(int) string{
		"one address":              func(int) string { return "10.0.0.7" },
		"one network of 64 bits":   func(k int) string { return fmt.Sprintf("2001:db8:1:2::%x", k+1) },
		"an old address in a new":  func(k int) string { return []string{"10.0.0.7", "::ffff:10.0.0.7"}[k%2] },
		"a zone behind an address": func(k int) string { return fmt.Sprintf("fe80::1%%eth%d", k) },
	} {
		g, c, _ := opened(t)
		code, _, _ := g.NewCode()
		for k := range mostWrong {
			if _, err := g.Join("000000", "", addresses(k)); !errors.Is(err, WrongCode) {
				t.Fatalf("%s, try %d: %v", name, k, err)
			}
		}
		if _, err := g.Join(code, "", addresses(mostWrong)); !errors.Is(err, WaitForCode) {
			t.Errorf("%s: the right code after %d wrong ones: %v", name, mostWrong, err)
		}
		if _, err := g.Join(code, "", "192.168.1.1"); err != nil {
			t.Errorf("%s: another address: %v", name, err)
		}
		code, _, _ = g.NewCode()
		c.t = c.t.Add(wrongWithin)
		if _, err := g.Join(code, "", addresses(0)); err != nil {
			t.Errorf("%s: after the wait: %v", name, err)
		}
	}
}

func TestGuessingFromEverywhere(t *testing.T) {
	g, c, _ := opened(t)
	code, _, _ := g.NewCode()
	for k := range mostWrongAnywhere {
		g.Join("000000", "", fmt.Sprintf("10.0.%d.%d", k/200, k%200))
	}
	if _, err := g.Join(code, "", "192.168.1.1"); !errors.Is(err, WaitForCode) {
		t.Errorf("after %d wrong codes: %v", mostWrongAnywhere, err)
	}
	c.t = c.t.Add(-time.Hour) // set back: nobody must wait for ever
	if _, err := g.Join(code, "", "192.168.1.1"); err != nil {
		t.Errorf("after a clock set back: %v", err)
	}
}

func TestCodesAreBounded(t *testing.T) {
	g, c, _ := opened(t)
	seen := map[string]bool{}
	for range mostCodes {
		code, _, err := g.NewCode()
		if err != nil || seen[code] {
			t.Fatal(code, err)
		}
		seen[code] = true
	}
	if _, _, err := g.NewCode(); !errors.Is(err, ManyCodes) {
		t.Errorf("%v", err)
	}
	c.t = c.t.Add(codeLasts)
	if _, _, err := g.NewCode(); err != nil {
		t.Errorf("old codes keep their place: %v", err)
	}
}

func TestHosts(t *testing.T) {
	for host, want := range map[string]bool{
		"127.0.0.1:8470": true, "localhost:8470": true, "LOCALHOST.:8470": true, "[::1]:8470": true,
		"127.0.0.1": false, "127.0.0.1:80": false, "example.test:8470": false, "127.0.0.1.example.test:8470": false, "": false, ":8470": false,
	} {
		if got := IsHost(host, Loopback, 8470); got != want {
			t.Errorf("%q: %v", host, got)
		}
	}
}

// First principles: connections beyond the limit are closed, and a closed one
// makes room for another.
func TestConnectionsAreLimited(t *testing.T) {
	l, err := net.Listen("tcp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	limited := Limited(l, 2, 2)
	accepted := make(chan net.Conn, 8)
	go func() {
		for {
			c, err := limited.Accept()
			if err != nil {
				return
			}
			accepted <- c
		}
	}()
	dial := func() net.Conn {
		c, err := net.Dial("tcp", l.Addr().String())
		if err != nil {
			t.Fatal(err)
		}
		t.Cleanup(func() { c.Close() })
		return c
	}
	dial()
	dial()
	first, _ := <-accepted, <-accepted
	third := dial()
	if _, err := third.Read(make([]byte, 1)); err == nil {
		t.Error("a third connection is taken")
	}
	first.Close()
	first.Close() // releases its place once
	dial()
	<-accepted
	fifth := dial()
	if _, err := fifth.Read(make([]byte, 1)); err == nil {
		t.Error("a closed connection gave two places back")
	}
}
