package meaning

import (
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
)

const loosenExample = "[{turn: 90°}, {remove: true}]"

// longestUntil is the longest text that fits the box of a stage.
const longestUntil = 60

// readLoosen reads the stages of loosening; without them the plan uses the
// usual ones.
func (r *reader) readLoosen(file form.Fields) {
	f, ok := file.Map("loosen", "loosen", "stages")
	if !ok {
		return
	}
	list := f.Need("stages", loosenExample)
	if list == nil {
		return
	}
	items := r.stageItems(list, loosenExample)
	for _, item := range items {
		if stage, ok := r.loosenStage(item); ok {
			r.input.Loosen = append(r.input.Loosen, stage)
			r.loosened = append(r.loosened, item)
		}
	}
	if len(items) > 0 && len(items) == len(r.input.Loosen) {
		r.removed = list
	}
}

// checkCaps warns of a camshaft if the file does not say where springs press.
func (r *reader) checkCaps(f form.Fields) {
	if r.fasteners.broken || r.kinds.broken || f.Mistyped("clusters", "loosen") || f.Has("loosen") && r.removed == nil {
		return
	}
	if why, found := r.input.CapsSprungAlone(); found {
		at := f.Node.KeyNode("clusters")
		r.Report(at.File, at.Line, at.Column, why)
	}
	if why, found := r.input.CapsUnjudged(); found {
		at := f.Node.KeyNode("fasteners")
		if f.Has("clusters") {
			at = f.Node.KeyNode("clusters")
		}
		r.Report(at.File, at.Line, at.Column, why)
	}
}

// checkSprung warns of stages that lift one end of a part under which springs
// press.
func (r *reader) checkSprung() {
	if r.removed == nil || r.fasteners.broken || r.kinds.broken {
		return
	}
	for i, why := range r.input.LiftsSprung() {
		at := r.loosened[i]
		r.Report(at.File, at.Line, at.Column, why)
	}
}

func (r *reader) loosenStage(item *nodes.Node) (plan.StageInput, bool) {
	f, ok := r.Fields(item, finding.Term("a stage of loosen"), string(plan.TurnBack), string(plan.Remove), "of", "until", "note")
	if !ok {
		return plan.StageInput{}, false
	}
	s := plan.StageInput{Note: f.Text("note")}
	s.Of, ok = r.stageKinds(f)
	action := f.Which(string(plan.TurnBack), string(plan.Remove))
	if action == "" {
		return s, false
	}
	s.Do = plan.Action(action)
	n := f.Get(action)
	if n == nil {
		return s, false
	}
	if s.Do == plan.TurnBack {
		s.Until = f.TextUpTo("until", longestUntil)
		return s, r.figure(&s, n) && ok
	}
	f.Refuse(OutOnce, "until")
	out, known := r.YesNo(n, "remove")
	if known && !out {
		r.Fail(n, RemoveNo, finding.Values{"written": n.Text, "allowed": []string{"true"}})
	}
	return s, ok && known && out
}
