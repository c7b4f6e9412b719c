package record

import (
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/run"
)

// stages lists what each stage asked for, with what the file notes on it, and how much
// of it was done.
func (l *layout) stages() {
	var rows []sheet.Row
	for n := 1; ; n++ {
		of := l.stepsOf(n)
		if len(of) == 0 {
			break
		}
		first, done, left := of[0], 0, 0
		for _, st := range of {
			switch st.State {
			case run.IsDone:
				done++
			case run.LeftOut:
				left++
			}
		}
		state := sprint("%d / %d", done, len(of))
		if left > 0 {
			state = words.Row(state, sprint("%s: %d", l.p.Records.StepStates[string(run.LeftOut)], left))
		}
		rows = append(rows, sheet.Row{Words: []string{number(n), words.Row(l.toDo(first), first.Note), state}, Warns: left > 0})
	}
	c := l.p.Records.Columns
	l.list(l.p.Run.Stages, []sheet.Column{{Head: c["stage"], Share: 1, Bold: true}, {Head: l.w.What, Share: 6}, {Head: c["state"], Share: 3}}, rows)
}

// stepsOf are the steps of a stage on the fasteners that are in now.
func (l *layout) stepsOf(stage int) (of []run.Step) {
	for _, st := range l.View.Steps {
		if st.Stage == stage && !st.Old {
			of = append(of, st)
		}
	}
	return of
}
