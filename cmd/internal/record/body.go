package record

import (
	"bytes"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"encoding/json"
	"errors"
	"maps"
	"slices"
	"time"

	"drawdown/sequence/run"
)

// body is the part of an entry that the chain covers, as JSON in this order of
// keys. It has either Start or Entry.
type body struct {
	Place   int64      `json:"n"`
	On      string     `json:"on"`
	Version int        `json:"version"`
	Start   *start     `json:"start,omitempty"`
	Entry   *run.Entry `json:"entry,omitempty"`
}

// start is what a run, a job or the store itself was started from.
type start struct {
	Kind    Kind              `json:"kind"`
	Job     string            `json:"job,omitempty"`
	Again   string            `json:"again,omitempty"`
	Of      string            `json:"of,omitempty"`
	Title   string            `json:"title,omitempty"`
	Work    run.Direction     `json:"work,omitempty"`
	Number  string            `json:"number,omitempty"`
	Order   string            `json:"order,omitempty"`
	Note    string            `json:"note,omitempty"`
	Who     string            `json:"who,omitempty"`
	Time    time.Time         `json:"time"`
	Program string            `json:"program,omitempty"`
	Frozen  string            `json:"frozen,omitempty"` // SHA-256
	Files   map[string]string `json:"files,omitempty"`  // name → SHA-256
}

// startAct is the value of the column act for the entry that starts a record.
const startAct = "start"

// names returns pointers to the names of people.
func (b body) names() []*string {
	if b.Start != nil {
		return []*string{&b.Start.Who}
	}
	return []*string{&b.Entry.Who, &b.Entry.To, &b.Entry.Second, &b.Entry.DecidedBy}
}

// sums returns the SHA-256 of the files and photos that the body names.
func (b body) sums() (list []string) {
	if b.Start == nil {
		if b.Entry.Photo != "" {
			list = append(list, b.Entry.Photo)
		}
		if r := b.Entry.Revision; r != nil {
			list = slices.AppendSeq(list, maps.Values(r.Files))
		}
		return list
	}
	if b.Start.Frozen != "" {
		list = append(list, b.Start.Frozen)
	}
	return slices.AppendSeq(list, maps.Values(b.Start.Files))
}

func (b body) id() string {
	if b.Start != nil {
		return ""
	}
	return b.Entry.ID
}

func (b body) act() string {
	if b.Start != nil {
		return startAct
	}
	return string(b.Entry.Act)
}

func (b body) wrench() string {
	if b.Start != nil {
		return ""
	}
	return b.Entry.Wrench
}

func (b body) time() time.Time {
	if b.Start != nil {
		return b.Start.Time
	}
	return b.Entry.Time
}

// bytes returns the body in the form that the chain covers.
func (b body) bytes() ([]byte, error) {
	var to bytes.Buffer
	encoder := json.NewEncoder(&to)
	encoder.SetEscapeHTML(false)
	if err := encoder.Encode(b); err != nil {
		return nil, err
	}
	return bytes.TrimSuffix(to.Bytes(), []byte("\n")), nil
}

func readBody(text []byte) (b body, err error) {
	err = json.Unmarshal(text, &b)
	if err == nil && (b.Start == nil) == (b.Entry == nil) {
		err = errors.New("neither a start nor an entry")
	}
	return b, err
}

// content returns an entry as its sender wrote it: without what the server
// adds.
func (b body) content() ([]byte, error) {
	sent := b.Entry.AsSent()
	return body{Entry: &sent}.bytes()
}

// link returns the chain's hash after a body.
func link(before []byte, text []byte) []byte {
	sum := sha256.New()
	sum.Write(before)
	sum.Write(text)
	return sum.Sum(nil)
}

// headOf reads the end of the chain; it returns the zero Head for an empty
// store.
func headOf(db querier) (end Head, err error) {
	var hash []byte
	err = db.QueryRow("SELECT n, hash FROM entry ORDER BY n DESC LIMIT 1").Scan(&end.Place, &hash)
	if errors.Is(err, sql.ErrNoRows) {
		return Head{}, nil
	}
	end.Hash = hex.EncodeToString(hash)
	return end, err
}
