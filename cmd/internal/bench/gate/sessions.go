package gate

import (
	"cmp"
	"crypto/rand"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"slices"
	"time"

	"drawdown/cmd/internal/files"
	"drawdown/geometry/finding"
)

// Sort is how a device signed in.
type Sort string

const (
	Desktop Sort = "desktop" // by the key: it may admit others
	Tablet  Sort = "tablet"  // by a code
)

// WorkingDay is how long a session lasts.
const WorkingDay = 12 * time.Hour

// mostSessions limits the file; the oldest session is dropped first.
const mostSessions = 500

// Session is an admitted device.
type Session struct {
	ID      string    `json:"id"` // used to end it; it admits nobody
	Sort    Sort      `json:"sort"`
	Device  string    `json:"device"` // its own name for itself
	Address string    `json:"address"`
	Begun   time.Time `json:"begun"`
	Ends    time.Time `json:"ends"`
}

// Begin admits a device. The token goes to the device; the gate keeps its hash.
func (g *Gate) Begin(sort Sort, device, address string) (token string, err error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	return g.begin(sort, device, address)
}

func (g *Gate) begin(sort Sort, device, address string) (string, error) {
	token, now := rand.Text(), g.now()
	g.sessions[hashed(token)] = Session{rand.Text()[:8], sort, device, address, now, now.Add(WorkingDay)}
	return token, g.keep()
}

// Find returns the valid session of a token.
func (g *Gate) Find(token string) (Session, bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	s, found := g.sessions[hashed(token)]
	return s, found && g.lasts(s)
}

// lasts reports whether a session is still valid. If the clock was set back to
// before its start its age is unknown.
func (g *Gate) lasts(s Session) bool {
	now := g.now()
	return now.Before(s.Ends) && s.Ends.Sub(now) <= WorkingDay
}

// Sessions lists the valid sessions, the newest first.
func (g *Gate) Sessions() []Session {
	g.mu.Lock()
	defer g.mu.Unlock()
	list := []Session{}
	for _, s := range g.sessions {
		if g.lasts(s) {
			list = append(list, s)
		}
	}
	slices.SortFunc(list, func(a, b Session) int { return cmp.Or(b.Begun.Compare(a.Begun), cmp.Compare(a.ID, b.ID)) })
	return list
}

// End ends a session by its id; found is false if there is none.
func (g *Gate) End(id string) (found bool, err error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	for hash, s := range g.sessions {
		if s.ID == id {
			delete(g.sessions, hash)
			return true, g.keep()
		}
	}
	return false, nil
}

// load reads the sessions of an earlier start, so that tablets need not join
// again after a restart. A file that cannot be parsed admits nobody.
func (g *Gate) load() error {
	g.sessions = map[string]Session{}
	data, err := os.ReadFile(g.file)
	if errors.Is(err, fs.ErrNotExist) {
		return nil
	}
	if err != nil {
		return finding.Failed(files.NotRead, finding.Values{"file": g.file, "why": files.Reason(err)})
	}
	if json.Unmarshal(data, &g.sessions) != nil {
		g.sessions = map[string]Session{}
	}
	return nil
}

// keep writes the valid sessions.
func (g *Gate) keep() error {
	for hash, s := range g.sessions {
		if !g.lasts(s) {
			delete(g.sessions, hash)
		}
	}
	for len(g.sessions) > mostSessions {
		delete(g.sessions, g.oldest())
	}
	data, err := json.MarshalIndent(g.sessions, "", "  ")
	if err != nil {
		return err
	}
	return files.WriteSecret(g.file, data)
}

func (g *Gate) oldest() (hash string) {
	for other, s := range g.sessions {
		if hash == "" || s.Begun.Before(g.sessions[hash].Begun) {
			hash = other
		}
	}
	return hash
}
