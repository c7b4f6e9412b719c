package bench

import (
	"context"
	"crypto/tls"
	"errors"
	"io"
	"log"
	"net"
	"net/http"
	"os/exec"
	"runtime"
	"strconv"
	"sync"
	"syscall"

	"drawdown/cmd/internal/bench/gate"
	"drawdown/geometry/finding"
)

// Serve listens until the context ends. It calls started with the address once
// the page answers.
func (b *Bench) Serve(ctx context.Context, started func(address string)) error {
	page, network, err := b.listen()
	if err != nil {
		return err
	}
	servers := []*http.Server{b.server(b.Handler())}
	listeners := []net.Listener{page}
	if network != nil {
		servers = append(servers, b.server(b.sharedHandler()))
		listeners = append(listeners, tls.NewListener(network, b.share.config()))
	}
	failed := make(chan error, len(servers))
	for i, s := range servers {
		go func() { failed <- s.Serve(listeners[i]) }()
	}
	if err := b.store.Announce(b.Address()); err != nil {
		log.Printf("%v", err) // a second start will not find the page
	}
	started(b.Address())
	go b.shop.all() // so that the first page need not wait for it
	select {
	case err = <-failed:
	case <-ctx.Done():
	}
	b.end(servers)
	return err
}

// end gives requests in progress a moment to finish.
func (b *Bench) end(servers []*http.Server) {
	b.stop.Do(func() { close(b.stopping) })
	moment, cancel := context.WithTimeout(context.Background(), stopWithin)
	defer cancel()
	var all sync.WaitGroup
	for _, s := range servers {
		all.Go(func() {
			if s.Shutdown(moment) != nil {
				s.Close()
			}
		})
	}
	all.Wait()
}

func (b *Bench) server(h http.Handler) *http.Server {
	return &http.Server{
		Handler: h, ReadHeaderTimeout: b.Limits.HeaderTime, IdleTimeout: b.Limits.Idle, MaxHeaderBytes: b.Limits.Header,
		ErrorLog: log.New(io.Discard, "", 0), // errors caused by strangers are no news
	}
}

// sharedHandler serves the page to the workshop's network.
func (b *Bench) sharedHandler() http.Handler {
	return b.guarded(b.routes(), networkNames, func() int { return b.share.port })
}

// listen takes the port of the page, and the next one if it is shared.
func (b *Bench) listen() (page, network net.Listener, err error) {
	const tries = 20 // for two free adjacent ports
	for range tries {
		if page, err = b.listenOn("127.0.0.1", b.Port); err != nil {
			return nil, nil, err
		}
		b.port = page.Addr().(*net.TCPAddr).Port
		if !b.Share {
			return page, nil, nil
		}
		if network, err = b.listenOn("", b.port+1); err == nil {
			return page, network, b.shareOn(b.port + 1)
		}
		page.Close()
		if b.Port != 0 {
			break
		}
	}
	return nil, nil, err
}

func (b *Bench) listenOn(host string, port int) (net.Listener, error) {
	l, err := net.Listen("tcp", net.JoinHostPort(host, strconv.Itoa(port)))
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, finding.Failed(PortTaken, finding.Values{"port": port})
	case err != nil:
		return nil, finding.Failed(NotListening, finding.Values{"why": err})
	}
	return gate.Limited(l, b.Limits.Connections, b.Limits.OfOne), nil
}

// Browse opens an address in the browser of the user of this machine.
func Browse(address string) error {
	name, args := "xdg-open", []string{address}
	switch runtime.GOOS {
	case "windows":
		name, args = "rundll32", []string{"url.dll,FileProtocolHandler", address}
	case "darwin":
		name = "open"
	}
	opening := exec.Command(name, args...)
	if err := opening.Start(); err != nil {
		return err
	}
	go opening.Wait() // it may last as long as the browser
	return nil
}
