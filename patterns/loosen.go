package patterns

import (
	"slices"

	"drawdown/sequence/plan"
)

const loosenExample = "[{turn: 90°}, {remove: true}]"

// readLoosen reads the stages of loosening; where the file gives none the plan
// has the usual ones.
func (r *reader) readLoosen(file fields) {
	n := file.get("loosen")
	if n == nil {
		return
	}
	f, ok := r.fields(n, "loosen", "stages")
	if !ok {
		return
	}
	list := f.need("stages", loosenExample)
	if list == nil {
		return
	}
	items := r.stageItems(list, loosenExample)
	for _, item := range items {
		if stage, ok := r.loosenStage(item); ok {
			r.input.Loosen = append(r.input.Loosen, stage)
		}
	}
	if len(items) > 0 && len(items) == len(r.input.Loosen) {
		r.checkRemoved(list)
	}
}

func (r *reader) loosenStage(item *node) (plan.StageInput, bool) {
	f, ok := r.fields(item, "a stage of loosen", string(plan.TurnBack), string(plan.Remove), "of", "note")
	if !ok {
		return plan.StageInput{}, false
	}
	s := plan.StageInput{Note: f.text("note")}
	s.Of, ok = r.stageKinds(f)
	action := f.which(string(plan.TurnBack), string(plan.Remove))
	if action == "" {
		return s, false
	}
	s.Do = plan.Action(action)
	n := f.get(action)
	if n == nil {
		return s, false
	}
	if s.Do == plan.TurnBack {
		return s, r.turnAngle(&s, n) && ok
	}
	out, known := r.yesNo(n, "remove")
	if known && !out {
		r.fail(n, "true", "remove: %s says nothing; leave the stage out", n.text)
	}
	return s, ok && known && out
}

// checkRemoved makes sure that the fasteners come out in the end.
func (r *reader) checkRemoved(list *node) {
	stages := r.input.Loosen
	if stages[len(stages)-1].Do != plan.Remove {
		r.fail(list.items[len(list.items)-1], "{remove: true}", "the last stage of loosen takes the fasteners out")
		return
	}
	for _, kind := range r.usedKinds() {
		if !slices.ContainsFunc(stages, func(s plan.StageInput) bool { return s.Do == plan.Remove && covers(s, kind) }) {
			r.fail(list, "", "no stage of loosen takes out the kind %s", kind)
		}
	}
}
