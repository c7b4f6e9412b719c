// Package gate decides who may use the bench page: by the key of the desktop,
// the codes with which tablets join, the sessions, the host names of the page,
// and the number of connections. It knows no routes and contains no text.
package gate

import (
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"encoding/hex"
	"sync"
	"time"
)

// Gate keeps the key, the sessions and the codes. Its methods are safe for
// concurrent use.
type Gate struct {
	key  string
	file string // of the sessions
	now  func() time.Time

	mu       sync.Mutex
	sessions map[string]Session   // by the hash of the token
	codes    map[string]time.Time // the end of the validity of each
	latest   string
	wrong    map[string]tries // by address
	anywhere tries
}

// Open returns a gate with a new key and the sessions kept in the file.
func Open(file string, now func() time.Time) (*Gate, error) {
	g := &Gate{key: rand.Text(), file: file, now: now, codes: map[string]time.Time{}, wrong: map[string]tries{}}
	return g, g.load()
}

// Key returns the key of the desktop: 26 characters, too many to guess.
func (g *Gate) Key() string { return g.key }

// IsKey compares in constant time.
func (g *Gate) IsKey(text string) bool {
	return subtle.ConstantTimeCompare([]byte(text), []byte(g.key)) == 1
}

// hashed returns the stored form of a token, so that the file admits nobody.
func hashed(token string) string {
	sum := sha256.Sum256([]byte(token))
	return hex.EncodeToString(sum[:])
}
