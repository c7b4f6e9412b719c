package machine

import (
	"bytes"
	"testing"
	"time"
)

// First principles: half the work fills half the bar, and what clears it covers
// all of it.
func TestProgress(t *testing.T) {
	var shown bytes.Buffer
	p := &Progress{to: &shown, total: 4, next: time.Now().Add(time.Hour)}
	if p.Done(1); shown.Len() > 0 {
		t.Errorf("shown at once: %q", shown.String())
	}
	if p.Clear(); shown.Len() > 0 {
		t.Errorf("cleared, though nothing is shown: %q", shown.String())
	}
	p.next = time.Time{}
	p.Done(2)
	const half = "\r[===============               ] 2/4"
	if shown.String() != half {
		t.Errorf("got %q, want %q", shown.String(), half)
	}
	shown.Reset()
	p.Clear()
	if want := "\r" + string(bytes.Repeat([]byte(" "), len(half)-1)) + "\r"; shown.String() != want {
		t.Errorf("cleared with %q, want %q", shown.String(), want)
	}
}

// First principles: what is no terminal gets nothing, however long the work takes.
func TestProgressIsForTerminals(t *testing.T) {
	var shown bytes.Buffer
	p := NewProgress(&shown, 2)
	p.next = time.Time{}
	p.Done(1)
	p.Clear()
	if shown.Len() > 0 {
		t.Errorf("shown: %q", shown.String())
	}
}

// First principles: a tick is a second, and what clears the count covers it; a work
// of less than a second shows nothing.
func TestSeconds(t *testing.T) {
	var shown bytes.Buffer
	ticks := make(chan time.Time)
	done := seconds(&shown, ticks)
	ticks <- time.Time{}
	ticks <- time.Time{}
	done()
	if want := "\r1 s\r2 s\r          \r"; shown.String() != want {
		t.Errorf("got %q, want %q", shown.String(), want)
	}
	shown.Reset()
	seconds(&shown, ticks)()
	Waiting(&shown)() // no terminal
	if shown.Len() > 0 {
		t.Errorf("shown: %q", shown.String())
	}
}
