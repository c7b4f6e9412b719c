package certificate

import (
	"bytes"
	"crypto/tls"
	"crypto/x509"
	"net"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// shop is a machine whose addresses and clock the test sets.
type shop struct {
	folder string
	names  []string
	t      time.Time
}

func (s *shop) open(t *testing.T) *Keeper {
	t.Helper()
	k, err := Open(s.folder, func() []string { return s.names }, func() time.Time { return s.t })
	if err != nil {
		t.Fatal(err)
	}
	return k
}

func newShop(t *testing.T) *shop {
	return &shop{t.TempDir(), []string{"192.168.1.5", "bench.local", "127.0.0.1", "localhost"}, time.Date(2026, 3, 2, 8, 0, 0, 0, time.UTC)}
}

// trusted checks the page's certificate as a tablet does that trusts the authority.
func (s *shop) trusted(k *Keeper, name string) error {
	c, err := k.Get(nil)
	if err != nil {
		return err
	}
	authority, err := x509.ParseCertificate(k.Authority())
	if err != nil {
		return err
	}
	roots := x509.NewCertPool()
	roots.AddCert(authority)
	_, err = c.Leaf.Verify(x509.VerifyOptions{DNSName: name, Roots: roots, CurrentTime: s.t, KeyUsages: []x509.ExtKeyUsage{x509.ExtKeyUsageServerAuth}})
	return err
}

func TestPageIsTrusted(t *testing.T) {
	s := newShop(t)
	k := s.open(t)
	for _, name := range s.names {
		if err := s.trusted(k, name); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if s.trusted(k, "192.168.1.6") == nil {
		t.Error("another address is trusted")
	}
}

// A stolen key of the authority makes no site of the internet: the tablet refuses
// names that the authority may not vouch for (RFC 5280, 4.2.1.10).
func TestAuthorityIsOfThisWorkshopAlone(t *testing.T) {
	s := newShop(t)
	s.names = []string{"bank.example.com"}
	if err := s.trusted(s.open(t), "bank.example.com"); err == nil {
		t.Error("the authority vouches for a site of the internet")
	}
}

func TestKeptAndRenewed(t *testing.T) {
	s := newShop(t)
	first := s.open(t)
	before, _ := first.Get(nil)
	again := s.open(t)
	after, _ := again.Get(nil)
	if !bytes.Equal(first.Authority(), again.Authority()) || !bytes.Equal(before.Certificate[0], after.Certificate[0]) {
		t.Error("a restart makes new certificates")
	}
	s.names = append([]string{"10.0.0.9"}, s.names...)
	s.t = s.t.Add(lookEvery + time.Second)
	if err := s.trusted(again, "10.0.0.9"); err != nil {
		t.Errorf("a new address: %v", err)
	}
	if !bytes.Equal(first.Authority(), again.Authority()) {
		t.Error("a new address makes a new authority")
	}
	renewed, _ := again.Get(nil)
	s.t = s.t.Add(leafLasts - renewBefore + time.Second)
	late, _ := again.Get(nil)
	if bytes.Equal(renewed.Certificate[0], late.Certificate[0]) {
		t.Error("the page's certificate is not renewed before it ends")
	}
	if err := s.trusted(again, "10.0.0.9"); err != nil {
		t.Errorf("a year later: %v", err)
	}
	s.t = s.t.Add(authorityLasts)
	if err := s.trusted(s.open(t), "10.0.0.9"); err != nil {
		t.Errorf("ten years later: %v", err)
	}
}

func TestBrokenFilesAreMadeAnew(t *testing.T) {
	s := newShop(t)
	s.open(t)
	for _, name := range []string{"authority.pem", "page.pem"} {
		path := filepath.Join(s.folder, name)
		if about, err := os.Stat(path); err != nil || runtime.GOOS != "windows" && about.Mode().Perm() != 0o600 {
			t.Errorf("%s: %v %v", name, about, err)
		}
		os.WriteFile(path, []byte("no certificate"), 0o600)
		if err := s.trusted(s.open(t), "bench.local"); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A tablet that trusts the authority connects.
func TestHandshake(t *testing.T) {
	s := newShop(t)
	s.t = time.Now()
	k := s.open(t)
	l, err := tls.Listen("tcp", "127.0.0.1:0", &tls.Config{GetCertificate: k.Get})
	if err != nil {
		t.Fatal(err)
	}
	defer l.Close()
	go func() {
		if c, err := l.Accept(); err == nil {
			c.Write([]byte("in"))
			c.Close()
		}
	}()
	authority, _ := x509.ParseCertificate(k.Authority())
	roots := x509.NewCertPool()
	roots.AddCert(authority)
	_, port, _ := net.SplitHostPort(l.Addr().String())
	c, err := tls.Dial("tcp", "localhost:"+port, &tls.Config{RootCAs: roots})
	if err != nil {
		t.Fatal(err)
	}
	defer c.Close()
	if parts := strings.Split(k.Fingerprint(), ":"); len(parts) != 32 {
		t.Errorf("fingerprint %s", k.Fingerprint())
	}
}
