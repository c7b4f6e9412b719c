package gate

import (
	"net"
	"sync"
)

// Limited accepts at most most connections at once, and ofOne of them from one
// address; further ones are closed before a byte is read.
func Limited(l net.Listener, most, ofOne int) net.Listener {
	return &limited{Listener: l, most: most, ofOne: ofOne, from: map[string]int{}}
}

type limited struct {
	net.Listener
	most, ofOne int

	mu   sync.Mutex
	all  int
	from map[string]int // by address
}

func (l *limited) Accept() (net.Conn, error) {
	for {
		c, err := l.Listener.Accept()
		if err != nil {
			return nil, err
		}
		if address := Address(c.RemoteAddr().String()); l.take(address) {
			return &counted{Conn: c, gone: func() { l.give(address) }}, nil
		}
		c.Close()
	}
}

func (l *limited) take(address string) bool {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.all >= l.most || l.from[address] >= l.ofOne {
		return false
	}
	l.all++
	l.from[address]++
	return true
}

func (l *limited) give(address string) {
	l.mu.Lock()
	defer l.mu.Unlock()
	l.all--
	if l.from[address]--; l.from[address] == 0 {
		delete(l.from, address)
	}
}

// counted is a connection that releases its place once.
type counted struct {
	net.Conn
	once sync.Once
	gone func()
}

func (c *counted) Close() error {
	c.once.Do(c.gone)
	return c.Conn.Close()
}

// Address returns the address of a connection without its port.
func Address(remote string) string {
	host, _, err := net.SplitHostPort(remote)
	if err != nil {
		return remote
	}
	return host
}
