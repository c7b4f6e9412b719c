package patterns

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const (
	maxTorqueNm = 100_000
	maxAngleDeg = 720
	maxStages   = 200
)

var tightenActions = []string{
	string(plan.Tighten), string(plan.Advance), string(plan.Percent), string(plan.BackOff), string(plan.Wait),
}

// stageWays are the ways that a single stage can take; cast and the maker's
// list belong to the order.
var stageWays = []sequence.Way{
	sequence.Auto, sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star, sequence.Circular,
}

// NoFigures is the warning of a file without tighten. It matters only to those
// who want figures.
const NoFigures = "there is no tighten: the card shows the order, but no figures"

const stagesExample = "[{torque: 20 N·m}, {angle: 90°}]"

// readTighten reads the order, the stages and their source. A file without
// tighten is an order only, which is worth a warning.
func (r *reader) readTighten(file fields) {
	if !file.has("tighten") {
		if file.mistyped("tighten") {
			return
		}
		r.warn(file.node, NoFigures)
		return
	}
	n := file.get("tighten")
	if n == nil {
		return
	}
	f, ok := r.fields(n, "tighten", "order", "stages", "source")
	if !ok {
		return
	}
	r.readOrder(f)
	r.input.Source = f.text("source")
	list := f.need("stages", stagesExample)
	if list == nil {
		return
	}
	for _, item := range r.stageItems(list, stagesExample) {
		if stage, ok := r.tightenStage(item); ok {
			r.input.Tighten = append(r.input.Tighten, stage)
			r.stages = append(r.stages, item)
		}
	}
	r.checkCovered(list, len(r.stages) > 0 && len(r.stages) == len(list.items))
	r.checkRising()
	r.checkShares()
}

// stageItems gives the stages of a list, as many as a person can work through.
func (r *reader) stageItems(list *node, example string) []*node {
	items := r.trueList(list, "stages", example)
	if len(items) > maxStages {
		r.fail(list, fmt.Sprintf("up to %d", maxStages), "there are %d stages", len(items))
		return nil
	}
	return items
}

func (r *reader) tightenStage(item *node) (plan.StageInput, bool) {
	allowed := append(slices.Clone(tightenActions), "of", "way", "turn", "note")
	f, ok := r.fields(item, "a stage", allowed...)
	if !ok {
		return plan.StageInput{}, false
	}
	s := plan.StageInput{Note: f.text("note")}
	action := f.which(tightenActions...)
	if action == "" {
		return s, false
	}
	s.Do = plan.Action(action)
	n := f.get(action)
	figureOK := n != nil && r.figure(&s, n)
	if s.Do == plan.Wait {
		r.refuse(f, "a wait is for the whole joint", "of", "way", "turn")
		return s, figureOK
	}
	s.Of, ok = r.stageKinds(f)
	if len(s.Of) == 0 && ok && len(r.kinds.names) > 1 && s.Do != plan.BackOff {
		r.warn(item, "the stage names no kind, so it is for all of %s", some(r.kinds.names))
	}
	if at := f.get("way"); at != nil {
		word, wayOK := r.choice(at, "way", wayNames(stageWays)...)
		s.Way, ok = sequence.Way(word), ok && wayOK
	}
	s.Turn = r.turn(f)
	switch {
	case s.Way == sequence.Star && ok:
		r.stars = append(r.stars, star{f.node.get("way"), s.Of})
	case !f.has("way"):
		r.idleTurn(f, "the stage names no way of its own")
	}
	return s, ok && figureOK
}

// figure reads the figure of a tightening action.
func (r *reader) figure(s *plan.StageInput, n *node) bool {
	switch s.Do {
	case plan.Tighten:
		return r.torque(s, n)
	case plan.Percent:
		return r.percent(s, n)
	case plan.Wait:
		return r.wait(s, n)
	default:
		return r.turnAngle(s, n)
	}
}

func (r *reader) torque(s *plan.StageInput, n *node) bool {
	text, ok := r.quantityText(n, "torque")
	if !ok {
		return false
	}
	t, err := unit.ParseTorque(text)
	if err != nil {
		r.unreadable(n, problem.Error, "torque", err)
		return false
	}
	if t.Nm() <= 0 || t.Nm() > maxTorqueNm {
		r.fail(n, fmt.Sprintf("more than 0, up to %d N·m", maxTorqueNm), "torque: %s is out of reach", quoted(text))
		return false
	}
	s.Torque = t
	return true
}

func (r *reader) turnAngle(s *plan.StageInput, n *node) bool {
	v, ok := r.angleDeg(n, string(s.Do))
	if ok && (v <= 0 || v > maxAngleDeg) {
		r.fail(n, fmt.Sprintf("more than 0°, up to %d°", maxAngleDeg), "%s: %s is no turn", s.Do, quoted(n.text))
		return false
	}
	s.Angle = unit.Angle(v)
	return ok
}

func (r *reader) percent(s *plan.StageInput, n *node) bool {
	bare := *n
	bare.text = strings.TrimSuffix(strings.TrimSpace(n.text), "%")
	v, ok := r.number(&bare, "percent")
	if ok && (v <= 0 || v > 100) {
		r.fail(n, "more than 0, up to 100", "percent: %s is no share of the target", quoted(n.text))
		return false
	}
	s.Percent = v
	return ok
}

func (r *reader) wait(s *plan.StageInput, n *node) bool {
	text, ok := r.quantityText(n, "wait")
	if !ok {
		return false
	}
	v, err := unit.ParseDuration(text)
	if err != nil {
		r.unreadable(n, problem.Error, "wait", err)
		return false
	}
	if v <= 0 {
		r.fail(n, "more than 0 min", "wait: %s is no time", quoted(text))
		return false
	}
	s.Wait = v
	return true
}

// refuse reports keys that have no meaning beside the others.
func (r *reader) refuse(f fields, why string, keys ...string) {
	for _, key := range keys {
		if f.has(key) {
			r.fail(f.node.keyNode(key), "", "%s; leave %s out", why, key)
		}
	}
}

// stageKinds reads of: one kind or a list of them.
func (r *reader) stageKinds(f fields) ([]string, bool) {
	n := f.get("of")
	if n == nil {
		return nil, !f.has("of")
	}
	if n.shape == listShape && len(n.items) == 0 {
		r.fail(n, alternatives(r.kinds.names), "of names no kind; name one, or leave of out for all")
		return nil, false
	}
	var kinds []string
	allOK := true
	for _, item := range r.list(n) {
		kind, ok := r.knownKind(item)
		switch {
		case !ok:
			allOK = false
		case slices.Contains(kinds, kind):
			r.fail(item, "", "the kind %s stands there twice", kind)
		default:
			kinds = append(kinds, kind)
		}
	}
	return kinds, allOK
}
