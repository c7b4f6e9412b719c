package page

import (
	"fmt"
	"slices"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// line is one of the five lines of a handover.
type line struct {
	Head  string
	Texts []string
}

// Lines is what the next shift must know, in five lines.
func (v RunView) Lines() []line {
	v.Dated = true
	return v.fiveLines(v.Run.Now)
}

func (v RunView) fiveLines(f run.FiveLines) []line {
	t := v.Text().Run
	next := "" // the handover shown is later than every step; its title says who took over
	if s := v.next(); s != nil {
		next = words.Row(v.fastener(s.IDs), t.Do[s.Name()], v.Words.Figure(s.Figure))
	}
	var found, waiting []string
	for _, seen := range f.Found {
		found = append(found, v.troubleLine(seen))
	}
	for _, a := range f.Waiting {
		waiting = append(waiting, v.awaited(a))
	}
	return []line{
		{t.Lines["done"], []string{fmt.Sprintf(t.LineDone, f.Done.Steps, f.Done.Fasteners)}},
		{t.Lines["open"], []string{fmt.Sprintf(t.LineOpen, f.Open.Steps, f.Open.Fasteners)}},
		{t.Lines["found"], orNone(t.None, found)},
		{t.Lines["waiting"], orNone(t.None, waiting)},
		{t.Lines["next"], orNone(t.None, []string{next})},
	}
}

// HandedOver is the latest handover if no step was done since, or nil.
func (v RunView) HandedOver() *handedOver {
	i := len(v.Run.HandOvers) - 1
	if i < 0 || !v.IsOpen() {
		return nil
	}
	h := v.Run.HandOvers[i]
	v.Dated = true
	for _, e := range v.Entries {
		if e.Act == run.Done && e.Time.After(h.At) {
			return nil
		}
	}
	return &handedOver{v.Text().Run.HandedOver + ": " + v.handedBy(h), h.Note, v.fiveLines(h.FiveLines)}
}

type handedOver struct {
	Title, Note string
	Lines       []line
}

// handedBy says who handed over to whom, and when.
func (v RunView) handedBy(h run.HandedOver) string {
	if h.Next == "" {
		return fmt.Sprintf(v.Text().Run.StateBy, h.By, v.when(h.At))
	}
	return fmt.Sprintf(v.Text().Records.HandedTo, h.By, h.Next, v.when(h.At))
}

func orNone(none string, said []string) []string {
	said = slices.DeleteFunc(said, func(one string) bool { return one == "" })
	if len(said) == 0 {
		return []string{none}
	}
	return said
}

func (v RunView) troubleLine(seen run.TroubleSeen) string {
	t := v.Text()
	said := v.fastener(seen.IDs) + ": " + t.Trouble.Names[troubleName(seen)]
	if s := seen.Settled; s != nil {
		said += " (" + words.Row(v.decided(seen), v.settledBy(*s), s.Note) + ")"
	}
	return said
}

// awaited describes one thing that the work waits for.
func (v RunView) awaited(a run.Awaited) string {
	t := v.Text().Run
	switch {
	case a.Need != nil:
		return v.need(*a.Need)
	case a.Ask != nil && a.Ask.Kind == run.AskNeighbours:
		return fmt.Sprintf(t.Neighbours, v.fastener(a.Ask.IDs))
	case a.Ask != nil && a.Ask.Kind == run.AskRound:
		return v.roundPanel(*a.Ask).Title
	case a.Ask != nil:
		return t.Ready
	case a.Accept > 0:
		return fmt.Sprintf(t.LineAccept, a.Accept)
	case a.Settle != "":
		for _, seen := range v.Run.Troubles {
			if seen.Entry == a.Settle {
				return t.Settle + ": " + v.troubleLine(seen)
			}
		}
		return t.Settle
	}
	return words.Row(t.Do["wait"], v.when(a.Ends))
}
