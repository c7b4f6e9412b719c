package page

import (
	"fmt"
	"io"
	"time"
)

// PatternView is the page where work on a joint starts, at /patterns/NAME. Its
// script posts to /api/jobs and /api/runs.
type PatternView struct {
	Frame
	PatternLine
	Joint    Joint    // for tightening; empty if the pattern cannot be drawn
	Findings []string // findings of check, in words
	Prints   []Print
	Open     []RunLine // of this pattern
}

// Print is a sheet that can be printed.
type Print struct {
	Sheet   string // card, tray or condition
	Address string
	At      time.Time // last printed; zero if never
	Stale   bool      // the file has changed since then
}

// Pattern writes the page of a joint.
func Pattern(w io.Writer, v PatternView) error { return write(w, "pattern", v) }

// About describes the pattern.
func (v PatternView) About() string { return v.aboutPattern(v.PatternLine) }

// OpenLines are the runs of the pattern in progress, in words.
func (v PatternView) OpenLines() []shownRun { return v.runLines(v.Open) }

// PrintLines are the sheets, in words.
func (v PatternView) PrintLines() []shownPrint { return v.printLines(v.Prints) }

type shownPrint struct{ Address, Name, Printed, Warning string }

func (f Frame) printLines(prints []Print) []shownPrint {
	t := f.Text().Pattern
	var all []shownPrint
	for _, p := range prints {
		one := shownPrint{Address: p.Address, Name: t.Sheets[p.Sheet], Printed: t.NeverPrinted}
		if !p.At.IsZero() {
			one.Printed = fmt.Sprintf(t.Printed, f.when(p.At))
		}
		if p.Stale {
			one.Warning = t.OutOfDate
		}
		all = append(all, one)
	}
	return all
}
