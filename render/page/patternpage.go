package page

import (
	"fmt"
	"io"
	"time"
)

// PatternView is where the work on a joint starts, at /patterns/NAME. Its script
// posts to /api/jobs and /api/runs.
type PatternView struct {
	Frame
	PatternLine
	Joint    Joint    // as it is tightened; empty where the pattern cannot be drawn
	Findings []string // what check says, worded
	Prints   []Print
	Open     []RunLine // of this pattern
}

// Print is a sheet that can be printed.
type Print struct {
	Sheet   string // card, tray or condition
	Address string
	At      time.Time // when it was printed last; zero for never
	Stale   bool      // the file has changed since
}

// Pattern writes the page of a joint.
func Pattern(w io.Writer, v PatternView) error { return write(w, "pattern", v) }

// About says what the pattern is for.
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
