package page

import (
	"fmt"
	"io"
	"time"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// HomeView is the first page: work in progress, starting work, the shop's
// patterns.
type HomeView struct {
	Frame
	Folder   string    // of the shop's patterns
	Open     []RunLine // work in progress, latest first
	Jobs     []JobLine // open jobs of machines, and of joints without a run in progress
	Patterns []PatternLine
	Recent   []RunLine // sealed or void, latest first
}

// RunLine is a run in a list.
type RunLine struct {
	Run       string
	Title     string
	Machine   string // of the pattern
	Number    string // of the machine worked on
	Order     string // the shop's order
	Direction run.Direction
	Again     bool // a later check
	Status    run.Status
	Done, Of  int // steps
	Troubles  int // not settled
	By        string
	At        time.Time // of the last entry
}

// JobLine is a job in a list.
type JobLine struct {
	Job, Title, Number, Order string
	By                        string // of the last entry
	At                        time.Time
}

// JobLines are the jobs waiting for their next run, in words.
func (v HomeView) JobLines() []shownRun {
	var all []shownRun
	for _, j := range v.Jobs {
		one := v.runLines([]RunLine{{Title: j.Title, Number: j.Number, Order: j.Order}})[0]
		one.Address, one.Badge, one.Far = "/jobs/"+j.Job, v.Text().Job.Badge, v.byAt(j.By, j.At)
		all = append(all, one)
	}
	return all
}

// PatternLine is a pattern in a list. Its page is /patterns/NAME.
type PatternLine struct {
	Name      string
	Title     string
	Machine   string // of the pattern
	Fasteners int
	IsMachine bool // a machine file
	Builtin   bool
	Sound     bool // usable for work
}

// Home writes the first page.
func Home(w io.Writer, v HomeView) error { return write(w, "home", v) }

// shownRun is a run in a list, in words.
type shownRun struct {
	Address, Title, About, Far, TroubleWords, Badge string
	Loosening                                       bool
}

func (f Frame) runLines(runs []RunLine) []shownRun {
	t := f.Text().Home
	var all []shownRun
	for _, r := range runs {
		one := shownRun{
			Address: "/runs/" + r.Run, Title: r.Title, Badge: f.badge(r.Direction, r.Again), Loosening: r.Direction == run.Loosen,
			About: words.Row(r.Machine, filled(t.Machine, r.Number), filled(t.Order, r.Order)),
			Far:   fmt.Sprintf(t.Steps, r.Done, r.Of),
		}
		if r.Status != run.Open {
			one.Address, one.Far = "/records/"+r.Run, t.States[string(r.Status)]
		}
		if !r.At.IsZero() {
			one.Far = words.Row(one.Far, f.byAt(r.By, r.At))
		}
		if r.Troubles > 0 {
			one.TroubleWords = t.Troubles.Of(r.Troubles)
		}
		all = append(all, one)
	}
	return all
}

// byAt says who made the last entry and when. A run started by a program has
// nobody.
func (f Frame) byAt(who string, at time.Time) string {
	if who == "" {
		return f.when(at)
	}
	return fmt.Sprintf(f.Text().Home.By, who, f.when(at))
}

// badge is the kind of a run, as in the header of the card.
func (f Frame) badge(d run.Direction, again bool) string {
	switch {
	case again:
		return f.Text().Common.Again
	case d == run.Loosen:
		return f.Words.Card.Loosen
	}
	return f.Words.Card.Tighten
}

// filled inserts a name into a text. Without a name it returns "".
func filled(said, name string) string {
	if name == "" {
		return ""
	}
	return fmt.Sprintf(said, name)
}

// OpenLines are the runs in progress, in words.
func (v HomeView) OpenLines() []shownRun { return v.runLines(v.Open) }

// RecentLines are the latest records, in words.
func (v HomeView) RecentLines() []shownRun { return v.runLines(v.Recent) }

// shelf is a list of patterns under a heading.
type shelf struct {
	Title, Empty string
	Patterns     []shownPattern
}

type shownPattern struct{ Name, Title, About, Fault string }

// Shelves divides the patterns: the shop's own first, then the built-in ones.
func (v HomeView) Shelves() []shelf {
	t := v.Text().Home
	own := shelf{Title: t.Patterns, Empty: fmt.Sprintf(t.PatternsNone, v.Folder)}
	builtin := shelf{Title: t.Builtin}
	for _, p := range v.Patterns {
		one := shownPattern{Name: p.Name, Title: p.Title, About: v.aboutPattern(p)}
		if !p.Sound {
			one.Fault = t.Unsound
		}
		if p.Builtin {
			builtin.Patterns = append(builtin.Patterns, one)
		} else {
			own.Patterns = append(own.Patterns, one)
		}
	}
	if len(builtin.Patterns) == 0 {
		return []shelf{own}
	}
	return []shelf{own, builtin}
}

func (f Frame) aboutPattern(p PatternLine) string {
	t := f.Text().Home
	if p.IsMachine {
		return words.Row(p.Machine, t.IsMachine)
	}
	return words.Row(p.Machine, t.Fasteners.Of(p.Fasteners))
}
