package run

import (
	"errors"
	"time"

	"drawdown/geometry/finding"
)

// Refusal says why an entry was not taken. A refused entry changes nothing.
type Refusal struct {
	Finding   finding.Finding
	By        string    // who did what stands against it; empty where nobody did
	At        time.Time // when
	Malformed bool      // the entry itself is wrong (HTTP 400); else a rule forbids it (409)
}

// Error returns the code and its values, for logs and tests.
func (r *Refusal) Error() string { return r.Finding.Error() }

// Unwrap returns the finding, so that errors.Is knows its code.
func (r *Refusal) Unwrap() error { return r.Finding }

func refused(code finding.Code, values finding.Values) *Refusal {
	return &Refusal{Finding: finding.Failed(code, values)}
}

func malformed(code finding.Code, values finding.Values) *Refusal {
	return &Refusal{Finding: finding.Failed(code, values), Malformed: true}
}

// Wrong is a malformed entry, by a finding of a lower room.
func Wrong(err error) *Refusal {
	var found finding.Finding
	if !errors.As(err, &found) {
		panic(err) // lower rooms return findings
	}
	return &Refusal{Finding: found, Malformed: true}
}

// because names the entry that stands against another.
func (r *Refusal) because(e *Entry) *Refusal {
	if e != nil {
		r.By, r.At = e.Who, e.Time
	}
	return r
}
