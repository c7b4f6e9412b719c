package patterns

import (
	"io"
	"slices"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/unit"
	"drawdown/patterns/problem"
	"drawdown/sequence/tension/wrench"
)

// maxWrenches is more than any shop has.
const maxWrenches = 1000

// OpenWrenches finds a shop's list of wrenches: "-" is standard input, anything
// else is a path.
func OpenWrenches(path string, stdin io.Reader) (Source, error) {
	if path == "-" {
		return Open(path, stdin)
	}
	return openFile(path)
}

// ReadWrenches reads a shop's list of torque wrenches:
//
//	wrenches:
//	  - {name: small, from: 5 N·m, to: 60 N·m, division: 0.5 N·m, length: 300 mm}
//
// Range and division are in the unit of the wrench's scale. Without from the
// scale begins at 0, without division it is read as wrenches of its size are,
// and the length, from the middle of the grip to the middle of the drive, is
// needed with an adapter only. The list is empty where a problem stops the work.
func ReadWrenches(source Source) ([]wrench.Wrench, problem.List) {
	r := &reader{source: source, bareUnit: "mm"}
	var list []wrench.Wrench
	if root := r.wrenchFile(newFile(source.File, source.Data)); root != nil {
		list = r.wrenches(root)
	}
	problems := r.problems()
	if problems.Stops() {
		return nil, problems
	}
	return list, problems
}

const wrenchExample = "wrenches: [{name: small, from: 5 N·m, to: 60 N·m}]"

// wrenchFile parses the text. It gives nil where it is no map of keys.
func (r *reader) wrenchFile(f *file) *node {
	if line, column, what := checkCharacters(r.source.Data); what != "" {
		r.report(f, line, column, problem.Error, "", what)
		return nil
	}
	if len(r.source.Data) > maxFileBytes {
		r.report(f, 0, 0, problem.Error, "", "the file is too large for a list of wrenches")
		return nil
	}
	document, second, err := decode([]byte(f.text))
	switch {
	case err != nil:
		r.syntax(f, err)
		return nil
	case document == nil || len(document.Content) == 0:
		r.report(f, 1, 1, problem.Error, "", "the file is empty; write for example "+wrenchExample)
		return nil
	case second != nil:
		line, column := f.clamp(second.Line, second.Column)
		r.report(f, line, column, problem.Error, "", "a second document starts here; one list stands in one file")
	}
	c := converter{r: r, file: f, anchored: map[*yaml.Node]*node{}, open: map[*yaml.Node]bool{}}
	root := c.convert(document.Content[0])
	if root == nil || root.size > 100_000+10*len(f.text) {
		r.report(f, 1, 1, problem.Error, "", "the aliases repeat parts inside parts until the list is too large; write the parts out")
		return nil
	}
	return root
}

func (r *reader) wrenches(root *node) []wrench.Wrench {
	f, ok := r.fields(root, "the list of wrenches", "drawdown", "wrenches")
	if !ok {
		return nil
	}
	if n := f.get("drawdown"); n != nil && n.text != "1" {
		r.fail(n, "1", "the version of the format is %s", n.called())
	}
	at := f.need("wrenches", wrenchExample)
	if at == nil {
		return nil
	}
	items := r.trueList(at, "wrenches", wrenchExample)
	if len(items) > maxWrenches {
		r.fail(at, "", "the list has %d wrenches; at most %d can be told apart", len(items), maxWrenches)
		return nil
	}
	var list []wrench.Wrench
	for _, item := range items {
		if w, ok := r.wrench(item); ok {
			if slices.ContainsFunc(list, func(other wrench.Wrench) bool { return other.Name == w.Name }) {
				r.fail(item, "", "there are two wrenches %s; each needs a name of its own", quoted(w.Name))
			}
			list = append(list, w)
		}
	}
	return list
}

func (r *reader) wrench(n *node) (wrench.Wrench, bool) {
	before := len(r.found)
	f, ok := r.fields(n, "a wrench", "name", "from", "to", "division", "length")
	if !ok {
		return wrench.Wrench{}, false
	}
	var w wrench.Wrench
	if at := f.need("name", "name: small"); at != nil {
		w.Name, _ = r.textUpTo(at, "a wrench's name", 60)
	}
	to := f.need("to", "to: 60 N·m")
	if to == nil {
		return w, false
	}
	most, ok := r.scaleTorque(to, "to")
	if !ok {
		return w, false
	}
	if most.Value <= 0 {
		r.fail(to, "above 0", "to: %s is no end of a scale", quoted(to.text))
	}
	w.Max, w.Unit = most.Value, most.Unit
	w.Min = r.onScaleOf(f, "from", w)
	w.Division = r.onScaleOf(f, "division", w)
	w.Length = r.kindSize(f, "length")
	r.checkScale(f, w, before)
	return w, !r.errorsSince(before)
}

// checkScale says what cannot be a scale, where its figures could be read.
func (r *reader) checkScale(f fields, w wrench.Wrench, before int) {
	if r.errorsSince(before) {
		return
	}
	if w.Min >= w.Max {
		r.fail(f.get("from"), "below the end of the scale, "+f.get("to").text, "from: %s is no start of the scale", quoted(f.get("from").text))
	}
	if at := f.node.get("division"); at != nil && (w.Division == 0 || w.Division > w.Max/2) {
		r.fail(at, "above 0 up to half of the end of the scale", "division: %s does not divide the scale", quoted(at.text))
	}
}

// onScaleOf reads a figure that stands in the unit of the scale; 0 where the
// key is missing.
func (r *reader) onScaleOf(f fields, key string, w wrench.Wrench) float64 {
	n := f.get(key)
	if n == nil {
		return 0
	}
	given, ok := r.scaleTorque(n, key)
	switch {
	case !ok:
	case given.Unit != w.Unit:
		r.fail(n, "figures in "+w.Unit.String()+", as in to", "%s: %s is in another unit than the end of the scale", key, quoted(n.text))
	case given.Value < 0:
		r.fail(n, "0 or more", "%s: %s is below 0", key, quoted(n.text))
	default:
		return given.Value
	}
	return 0
}

func (r *reader) scaleTorque(n *node, what string) (unit.GivenTorque, bool) {
	s, ok := r.quantityText(n, what)
	if !ok {
		return unit.GivenTorque{}, false
	}
	given, err := unit.ParseTorque(s)
	if err != nil {
		r.unreadable(n, problem.Error, what, err)
		return unit.GivenTorque{}, false
	}
	return given, true
}
