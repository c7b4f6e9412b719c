package meaning

import (
	"slices"
	"strings"
	"unicode"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/sequence"
	"drawdown/sequence/plan"
)

const maxStages = 200

var tightenActions = []string{
	string(plan.Tighten), string(plan.Advance), string(plan.Lengthen), string(plan.Percent), string(plan.BackOff), string(plan.Wait),
}

// stageWays are the ways that a single stage can use; cast and the maker's list
// belong to the order.
var stageWays = []sequence.Way{
	sequence.Auto, sequence.Spiral, sequence.Cross, sequence.RowWay, sequence.Star, sequence.Circular,
}

const stagesExample = "[{torque: 20 N·m}, {angle: 90°}]"

// readTighten reads the order, the stages and their source. A file without
// tighten is only an order, which earns a warning.
func (r *reader) readTighten(file form.Fields) {
	if !file.Has("tighten") && !file.Mistyped("tighten") {
		r.Warn(file.Node, NoFigures, nil)
	}
	f, ok := file.Map("tighten", "tighten", "order", "stages", "source")
	if !ok {
		return
	}
	r.readOrder(f)
	r.input.Source = r.sourceOf(f)
	list := f.Need("stages", stagesExample)
	if list == nil {
		return
	}
	for _, item := range r.stageItems(list, stagesExample) {
		if stage, ok := r.tightenStage(item); ok {
			r.input.Tighten = append(r.input.Tighten, stage)
			r.stages = append(r.stages, item)
		}
	}
	if len(r.stages) > 0 && len(r.stages) == len(list.Items) {
		r.tightened = list
	}
}

// What people write for a source that is still to be looked up: beginnings of
// texts, and whole texts.
var (
	notYet = []string{"todo", "tbd", "tba", "tbc", "fixme", "xxx"}
	noText = []string{"to do", "xx", "x", "n/a", "na", "none", "unknown"}
)

// sourceOf reads the source of the figures. One that is still to be looked up
// counts as none: the figures are then calculated.
func (r *reader) sourceOf(f form.Fields) string {
	source := f.Text("source")
	text := strings.ToLower(source)
	first, _, _ := strings.Cut(strings.NewReplacer(":", " ", "!", " ").Replace(text), " ")
	nothing := !strings.ContainsFunc(text, func(r rune) bool { return unicode.IsLetter(r) || unicode.IsDigit(r) })
	if source != "" && (nothing || slices.Contains(notYet, first) || slices.Contains(noText, text)) {
		r.Warn(f.Node.Get("source"), SourceOpen, finding.Values{"source": problem.Quoted(source)})
		return ""
	}
	return source
}

// stageItems returns the stages of a list, at most as many as a person can work
// through.
func (r *reader) stageItems(list *nodes.Node, example string) []*nodes.Node {
	items := r.TrueList(list, "stages", example)
	if len(items) > maxStages {
		r.Fail(list, TooManyStages, finding.Values{"count": len(items), "most": maxStages})
		return nil
	}
	return items
}

func (r *reader) tightenStage(item *nodes.Node) (plan.StageInput, bool) {
	allowed := append(slices.Clone(tightenActions), "of", "way", "turn", "until", "at once", "note")
	f, ok := r.Fields(item, finding.Term("a stage"), allowed...)
	if !ok {
		return plan.StageInput{}, false
	}
	s := plan.StageInput{Note: f.Text("note")}
	action := f.Which(tightenActions...)
	if action == "" {
		return s, false
	}
	s.Do = plan.Action(action)
	n := f.Get(action)
	figureOK := n != nil && r.figure(&s, n)
	if s.Do == plan.Wait {
		f.Refuse(WaitIsForAll, "of", "way", "turn", "until", "at once")
		return s, figureOK
	}
	r.repeated(f, &s)
	s.Of, ok = r.stageKinds(f)
	if len(s.Of) == 0 && ok && len(r.kinds.names) > 1 && s.Do != plan.BackOff && !plan.EqualButLength(r.input.Kinds) {
		r.Warn(item, StageForAll, finding.Values{"kinds": r.kinds.names})
	}
	s.Way = form.Word(f, "way", stageWays...)
	ok = ok && (s.Way != "" || f.Node.Get("way") == nil)
	s.Turn, _ = r.turn(f)
	switch {
	case s.Way == sequence.Star && ok:
		r.stars = append(r.stars, star{f.Node.Get("way"), s.Of})
	case !f.Has("way"):
		r.idle(f, WayNotNamed)
	}
	return s, ok && figureOK
}

// mostAtOnce is more wrenches than go round any joint at a time.
const mostAtOnce = 16

// repeated reads until when a torque is repeated, and how many wrenches work at
// once.
func (r *reader) repeated(f form.Fields, s *plan.StageInput) {
	if s.Do != plan.Tighten && s.Do != plan.Percent {
		f.Refuse(RepeatIsTorque, "until", "at once")
		return
	}
	s.Until = f.TextUpTo("until", longestUntil)
	if at := f.Get("at once"); at != nil {
		s.AtOnce, _ = r.Whole(at, "at once", 2, mostAtOnce)
	}
}

// figure reads the figure of a stage.
func (r *reader) figure(s *plan.StageInput, n *nodes.Node) (ok bool) {
	switch s.Do {
	case plan.Tighten:
		s.Torque, ok = form.Parsed(r.Reader, n, "torque", unit.ParseSensibleTorque)
	case plan.Lengthen:
		mm, read := r.LengthMm(n, "stretch", unit.Sensible.Thickness)
		s.Stretch, ok = unit.Length(mm), read
	case plan.Percent:
		bare := *n
		bare.Text = strings.TrimSuffix(strings.TrimSpace(n.Text), "%")
		s.Percent, ok = r.Number(&bare, "percent", unit.Sensible.Percent)
	case plan.Wait:
		s.Wait, ok = form.Parsed(r.Reader, n, "wait", unit.Within(unit.Sensible.Wait, unit.ParseDuration))
	default:
		s.Angle, ok = form.Parsed(r.Reader, n, string(s.Do), unit.Within(unit.Sensible.Turn, unit.ParseAngle))
	}
	return ok
}

// stageKinds reads the key of: one kind or a list of kinds.
func (r *reader) stageKinds(f form.Fields) ([]string, bool) {
	n := f.Get("of")
	if n == nil {
		return nil, !f.Has("of")
	}
	if n.Shape == nodes.List && len(n.Items) == 0 {
		r.Fail(n, NoKindInStage, finding.Values{"allowed": r.kinds.names})
		return nil, false
	}
	var kinds []string
	allOK := true
	for _, item := range r.Several(n) {
		kind, ok := r.knownKind(item)
		switch {
		case !ok:
			allOK = false
		case slices.Contains(kinds, kind):
			r.Fail(item, KindTwiceInStage, finding.Values{"kind": kind})
		default:
			kinds = append(kinds, kind)
		}
	}
	return kinds, allOK
}
