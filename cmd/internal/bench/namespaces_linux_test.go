package bench

import (
	"bufio"
	"context"
	"crypto/tls"
	"crypto/x509"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"os/signal"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"

	"drawdown/geometry/testkit"
	"drawdown/render/words"
)

// In a separate process and a separate network, this test program serves the
// page.
func TestMain(m *testing.M) {
	if folder := os.Getenv("BENCH_SERVES"); folder != "" {
		servePage(folder)
		return
	}
	os.Exit(m.Run())
}

// servePage serves until it is told to end. At SIGUSR1 its clock advances by a
// minute, so that the test need not wait until it looks for new addresses.
func servePage(folder string) {
	minutes := make(chan os.Signal, 1)
	signal.Notify(minutes, syscall.SIGUSR1)
	c := clock{t: time.Now()}
	go func() {
		for range minutes {
			c.pass(time.Minute)
		}
	}()
	made, err := Open(Options{Folder: folder + "/shop", Data: folder + "/data", Share: true, Words: words.English(), Limits: Usual, Now: c.now})
	if err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGTERM)
	defer stop()
	err = made.Serve(ctx, func(address string) { fmt.Println(address) })
	if err = errors.Join(err, made.Close()); err != nil {
		fmt.Println(err)
		os.Exit(1)
	}
}

// network is a network with two machines, each in its own namespace.
type network struct{ desktop, tablet string }

func ip(t *testing.T, args string) {
	t.Helper()
	if out, err := exec.Command("ip", strings.Fields(args)...).CombinedOutput(); err != nil {
		t.Fatalf("ip %s: %v %s", args, err, out)
	}
}

func newNetwork(t *testing.T) network {
	t.Helper()
	testkit.Program(t, "ip")
	if os.Getuid() != 0 {
		t.Skip("only root makes network namespaces")
	}
	n := network{fmt.Sprintf("dd-desktop-%d", os.Getpid()), fmt.Sprintf("dd-tablet-%d", os.Getpid())}
	for _, name := range []string{n.desktop, n.tablet} {
		if out, err := exec.Command("ip", "netns", "add", name).CombinedOutput(); err != nil {
			t.Skipf("this machine makes no network namespaces: %s", out)
		}
		t.Cleanup(func() { exec.Command("ip", "netns", "delete", name).Run() })
		ip(t, "-n "+name+" link set lo up")
	}
	ip(t, "-n "+n.desktop+" link add wire type veth peer name wire netns "+n.tablet)
	for name, address := range map[string]string{n.desktop: "10.77.0.1", n.tablet: "10.77.0.2"} {
		ip(t, "-n "+name+" address add "+address+"/24 dev wire")
		ip(t, "-n "+name+" link set wire up")
	}
	return n
}

// dialFrom connects from within a namespace.
func dialFrom(namespace string) func(ctx context.Context, network, address string) (net.Conn, error) {
	return func(ctx context.Context, network, address string) (c net.Conn, err error) {
		ended := make(chan struct{})
		go func() {
			defer close(ended)
			runtime.LockOSThread() // never unlocked: the thread ends in that namespace
			var there *os.File
			if there, err = os.Open("/var/run/netns/" + namespace); err != nil {
				return
			}
			defer there.Close()
			const setns, newNet = 308, 0x40000000 // setns(2) and CLONE_NEWNET
			call := uintptr(setns)
			if runtime.GOARCH == "arm64" {
				call = 268
			}
			if _, _, wrong := syscall.RawSyscall(call, there.Fd(), newNet, 0); wrong != 0 {
				err = wrong
				return
			}
			c, err = (&net.Dialer{}).DialContext(ctx, network, address)
		}()
		<-ended
		return c, err
	}
}

// asker sends requests from within a namespace.
type asker struct {
	t      *testing.T
	client *http.Client
	roots  *x509.CertPool
	cookie *http.Cookie
	key    string
}

func newAsker(t *testing.T, namespace string) *asker {
	roots := x509.NewCertPool()
	return &asker{t: t, roots: roots, client: &http.Client{
		Transport:     &http.Transport{DialContext: dialFrom(namespace), TLSClientConfig: &tls.Config{RootCAs: roots}, DisableKeepAlives: true},
		CheckRedirect: func(*http.Request, []*http.Request) error { return http.ErrUseLastResponse },
	}}
}

func (a *asker) ask(method, address, body string) (int, []byte, error) {
	a.t.Helper()
	r, err := http.NewRequest(method, address, strings.NewReader(body))
	if err != nil {
		a.t.Fatal(err)
	}
	if a.cookie != nil {
		r.AddCookie(a.cookie)
	}
	if a.key != "" {
		r.Header.Set("Authorization", "Bearer "+a.key)
	}
	if strings.HasSuffix(address, joinPath) {
		r.Header.Set("Content-Type", "application/x-www-form-urlencoded")
	}
	answer, err := a.client.Do(r)
	if err != nil {
		return 0, nil, err
	}
	defer answer.Body.Close()
	text, err := io.ReadAll(answer.Body)
	if answer.StatusCode == http.StatusSeeOther {
		a.cookie = answer.Cookies()[0]
	}
	return answer.StatusCode, text, err
}

func (a *asker) want(status int, method, address, body string) []byte {
	a.t.Helper()
	got, text, err := a.ask(method, address, body)
	if err != nil || got != status {
		a.t.Fatalf("%s %s: %d %s %v, want %d", method, address, got, text, err, status)
	}
	return text
}

// Over a network between two machines: the desktop's page is unreachable, that
// of the network admits those with a code, and its certificate follows the
// addresses.
func TestSharingOverANetwork(t *testing.T) {
	n := newNetwork(t)
	page := exec.Command("ip", "netns", "exec", n.desktop, os.Args[0])
	page.Env = append(os.Environ(), "BENCH_SERVES="+t.TempDir())
	out, err := page.StdoutPipe()
	if err == nil {
		err = page.Start()
	}
	if err != nil {
		t.Fatal(err)
	}
	defer func() {
		page.Process.Signal(syscall.SIGTERM)
		if err := page.Wait(); err != nil {
			t.Errorf("the page ends with %v", err)
		}
	}()
	line, err := bufio.NewReader(out).ReadString('\n')
	base, key, found := strings.Cut(strings.TrimSpace(line), "/?key=")
	if err != nil || !found {
		t.Fatal(line, err)
	}
	go io.Copy(io.Discard, out)
	var port int
	fmt.Sscanf(base, "http://127.0.0.1:%d", &port)
	desktop, tablet := newAsker(t, n.desktop), newAsker(t, n.tablet)
	desktop.key = key
	there := func(host string) string { return fmt.Sprintf("https://%s:%d", host, port+1) }

	if status, _, err := tablet.ask("GET", fmt.Sprintf("http://10.77.0.1:%d/join", port), ""); err == nil {
		t.Errorf("the desktop's own page answers on the network: %d", status)
	}
	if _, _, err := tablet.ask("GET", there("10.77.0.1")+joinPath, ""); !isUntrusted(err) {
		t.Errorf("before the authority is trusted: %v", err)
	}
	authority, err := x509.ParseCertificate(desktop.want(http.StatusOK, "GET", base+authorityPath, ""))
	if err != nil {
		t.Fatal(err)
	}
	tablet.roots.AddCert(authority)
	tablet.want(http.StatusUnauthorized, "GET", there("10.77.0.1")+"/api/patterns", "")
	tablet.want(http.StatusForbidden, "POST", there("10.77.0.1")+joinPath, "code=222222")
	var code struct{ Code, Address string }
	if err := json.Unmarshal(desktop.want(http.StatusCreated, "POST", base+"/api/share/codes", ""), &code); err != nil {
		t.Fatal(err)
	}
	if code.Address != there("10.77.0.1")+"/join?code="+code.Code {
		t.Errorf("the QR code leads to %s", code.Address)
	}
	tablet.want(http.StatusSeeOther, "POST", there("10.77.0.1")+joinPath, url.Values{"code": {code.Code}}.Encode())
	tablet.want(http.StatusOK, "GET", there("10.77.0.1")+"/api/patterns", "")

	ip(t, "-n "+n.desktop+" address add 10.77.0.9/24 dev wire")
	page.Process.Signal(syscall.SIGUSR1)
	for { // until the page has the signal
		if _, _, err := tablet.ask("GET", there("10.77.0.9")+joinPath, ""); err == nil {
			break
		}
	}
	tablet.want(http.StatusOK, "GET", there("10.77.0.9")+"/api/patterns", "")
}

func isUntrusted(err error) bool {
	var unknown x509.UnknownAuthorityError
	return errors.As(err, &unknown)
}
