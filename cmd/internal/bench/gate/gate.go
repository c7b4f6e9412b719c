// Package gate decides who may use the bench page: the key of the desktop, the
// codes by which a tablet joins, the sessions, the host names that the page
// answers to, and how many connections it takes. It knows no routes and
// contains no text.
package gate

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"sync"
	"time"
)

// Gate keeps the key, the sessions and the codes. Its methods may be called side
// by side.
type Gate struct {
	key  string
	file string // of the sessions
	now  func() time.Time

	mu       sync.Mutex
	sessions map[string]Session   // by the hash of the token
	codes    map[string]time.Time // until when each can be used
	latest   string
	wrong    map[string]tries // by address
	anywhere tries
}

// Open returns a gate with a new key and the sessions kept in the file.
func Open(file string, now func() time.Time) (*Gate, error) {
	g := &Gate{key: rand.Text(), file: file, now: now, codes: map[string]time.Time{}, wrong: map[string]tries{}}
	return g, g.load()
}

// Key is the key of the desktop: 26 signs, as good as no one guesses.
func (g *Gate) Key() string { return g.key }

// IsKey compares in a time that tells nothing.
func (g *Gate) IsKey(text string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(g.key)) == 1
}

// hashed is what is kept of a token, so that the file lets nobody in.
func hashed(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}
