package gate

import (
	"crypto/rand"
	"math/big"
	"net/netip"
	"strings"
	"time"

	"drawdown/geometry/finding"
)

const (
	codeSigns   = "23456789ABCDEFGHJKMNPQRSTUVWXYZ" // without those that are easily confused
	codeLength  = 6
	codeLasts   = 30 * time.Minute
	mostCodes   = 40
	wrongWithin = 10 * time.Minute
	// mostWrong attempts from one address, and from all together, are accepted
	// within that time: guessing one of 40 codes among 31⁶ then takes years.
	mostWrong         = 5
	mostWrongAnywhere = 100
)

// tries counts wrong codes since the first of them.
type tries struct {
	count int
	since time.Time
}

// NewCode returns a code for one device, and the end of its validity.
func (g *Gate) NewCode() (code string, until time.Time, err error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	now := g.now()
	for code, until := range g.codes {
		if !now.Before(until) {
			delete(g.codes, code)
		}
	}
	if len(g.codes) >= mostCodes {
		return "", time.Time{}, finding.Failed(ManyCodes, finding.Values{"most": mostCodes})
	}
	for code == "" || g.codes[code] != (time.Time{}) {
		code = randomCode()
	}
	g.codes[code], g.latest = now.Add(codeLasts), code
	return code, g.codes[code], nil
}

// Latest returns the last code made, while it is valid.
func (g *Gate) Latest() (code string, until time.Time, waits bool) {
	g.mu.Lock()
	defer g.mu.Unlock()
	until, known := g.codes[g.latest]
	return g.latest, until, known && g.now().Before(until)
}

func randomCode() string {
	var b strings.Builder
	for range codeLength {
		k, err := rand.Int(rand.Reader, big.NewInt(int64(len(codeSigns))))
		if err != nil {
			panic(err) // crypto/rand never fails
		}
		b.WriteByte(codeSigns[k.Int64()])
	}
	return b.String()
}

// Join admits a device by a code, once. Case and spaces do not matter. An
// address with too many wrong codes has to wait, and so does everybody if wrong
// codes come from everywhere.
func (g *Gate) Join(code, device, address string) (token string, err error) {
	g.mu.Lock()
	defer g.mu.Unlock()
	now, from := g.now(), network(address)
	g.forget(now)
	if tried := g.wrong[from]; tried.count >= mostWrong {
		return "", mustWait(tried, now)
	}
	if g.anywhere.count >= mostWrongAnywhere {
		return "", mustWait(g.anywhere, now)
	}
	code = strings.ToUpper(strings.Join(strings.FieldsFunc(code, func(r rune) bool { return r == ' ' || r == '-' }), ""))
	until, known := g.codes[code]
	if !known || !now.Before(until) {
		g.wrong[from] = g.wrong[from].more(now)
		g.anywhere = g.anywhere.more(now)
		return "", finding.Failed(WrongCode, finding.Values{"left": mostWrong - g.wrong[from].count})
	}
	delete(g.codes, code)
	delete(g.wrong, from)
	return g.begin(Tablet, device, address)
}

func (t tries) more(now time.Time) tries {
	if t.count == 0 {
		t.since = now
	}
	t.count++
	return t
}

// over reports whether the time of the attempts has passed, or the clock was
// set back: otherwise nobody might ever get in.
func (t tries) over(now time.Time) bool {
	since := now.Sub(t.since)
	return since >= wrongWithin || since < 0
}

func (g *Gate) forget(now time.Time) {
	for address, tried := range g.wrong {
		if tried.over(now) {
			delete(g.wrong, address)
		}
	}
	if g.anywhere.over(now) {
		g.anywhere = tries{}
	}
}

func mustWait(tried tries, now time.Time) error {
	left := tried.since.Add(wrongWithin).Sub(now)
	return finding.Failed(WaitForCode, finding.Values{"minutes": int(left/time.Minute) + 1})
}

// network returns what counts as one address: a device can have any number of
// IPv6 addresses, all in one network of 64 bits.
func network(address string) string {
	ip, err := netip.ParseAddr(address)
	if err != nil {
		return address
	}
	if ip = ip.Unmap().WithZone(""); ip.Is4() {
		return ip.String()
	}
	prefix, err := ip.Prefix(64)
	if err != nil {
		return address
	}
	return prefix.String()
}
