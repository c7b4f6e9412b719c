// Package patterns holds the built-in pattern files and reads pattern files. It
// alone knows YAML: bytes go in, a checked plan.Input in inner units comes out,
// or the problems of the file, each with its place.
//
// What the keys mean stands at the functions that read them. In all of a file:
// unknown and repeated keys are errors; a key without a value is one too. A
// bare length is in the file's units (mm or in); torques, angles and times
// always carry their unit.
package patterns

import (
	"time"

	"drawdown/geometry"
	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

var fileKeys = []string{"drawdown", "title", "machine", "revision", "date", "units", "view", "kinds", "fasteners",
	"clusters", "outline", "features", "stations", "joint", "mirror", "extends", "tighten", "loosen", "cautions"}

// Read reads a pattern with all that it extends. The list holds every problem
// of the file (the first thousand of a hopeless one), in reading order; when
// Stops says that one of them stops the work, the input is empty.
//
// The joint is as the file draws it. Where Mirror is set, the plan mirrors the
// finished order together with the joint, so that the second bank's order is
// the exact mirror image of the first one's.
func Read(source Source) (plan.Input, problem.List) {
	input, _, problems := ReadWithPlaces(source)
	return input, problems
}

// ReadWithPlaces reads as Read does, and also says where the stages and kinds
// of the input stand.
func ReadWithPlaces(source Source) (plan.Input, Places, problem.List) {
	r := &reader{source: source}
	if root := r.load(); root != nil {
		r.pattern(root)
	}
	problems := r.problems()
	if problems.Stops() {
		return plan.Input{}, Places{file: source.File}, problems
	}
	return r.input, r.places(), problems
}

// pattern reads the joined file. The order matters: fasteners name kinds, and
// all that follows names fasteners.
func (r *reader) pattern(root *node) {
	if root.get("strip") != nil && root.get("fasteners") == nil {
		r.fail(root.keyNode("strip"), "", "this is a machine file, which lists joints; drawdown book draws its papers")
		return
	}
	f, _ := r.fields(root, "the file", fileKeys...)
	if !f.has("drawdown") && !f.mistyped("drawdown") {
		r.fail(root, "", "the file needs drawdown: 1, the version of its format")
	}
	r.head(f)
	r.readKinds(f)
	r.readFasteners(f)
	r.readOutline(f)
	r.readFeatures(f)
	r.readStations(f)
	r.readClamped(f)
	r.readTighten(f)
	r.readLoosen(f)
	r.readClusters(f)
	r.checkStars()
	r.readCautions(f)
	r.checkUnused()
}

// head reads what is printed in the header, the units and the mirror.
func (r *reader) head(f fields) {
	if n := f.need("title", "Cylinder head"); n != nil {
		r.input.Title, _ = r.text(n, "title")
	}
	r.input.Name = r.source.stem
	if r.input.Name == "" {
		r.input.Name = slug(r.input.Title)
	}
	r.input.Machine = f.text("machine")
	r.input.View = f.text("view")
	if n := f.get("revision"); n != nil {
		const longestRevision = 40
		r.input.Revision, _ = r.textUpTo(n, "revision", longestRevision)
	}
	if n := f.get("date"); n != nil {
		r.input.Date = r.date(n)
	}
	r.bareUnit = "mm"
	if n := f.get("units"); n != nil {
		if word, ok := r.choice(n, "units", "mm", "in"); ok {
			r.bareUnit = word
		}
	}
	if n := f.get("mirror"); n != nil {
		word, _ := r.choice(n, "mirror", string(geometry.AxisX), string(geometry.AxisY))
		r.input.Mirror = geometry.Axis(word)
		r.checkMirrorTitle(f)
	}
}

// date checks a calendar date of ISO 8601.
func (r *reader) date(n *node) string {
	if _, err := time.Parse(time.DateOnly, n.text); err != nil || n.shape != scalarShape {
		r.fail(n, "year-month-day, for example 2026-03-14", "date: %s is no date", n.called())
		return ""
	}
	return n.text
}

func (r *reader) readCautions(f fields) {
	n := f.get("cautions")
	if n == nil {
		return
	}
	for _, item := range r.trueList(n, "cautions", "[Fit a new gasket]") {
		if c, ok := r.caution(item); ok {
			r.input.Cautions = append(r.input.Cautions, c)
		}
	}
}

// caution reads a text for both sides of the work, or {tighten: text} or
// {loosen: text} for one of them.
func (r *reader) caution(item *node) (plan.Caution, bool) {
	if item.shape != mapShape {
		text, ok := r.text(item, "a caution")
		return plan.Caution{Text: text}, ok
	}
	sides := []string{string(plan.CautionTighten), string(plan.CautionLoosen)}
	if len(item.entries) != 1 || !containsText(sides, item.entries[0].key.text) {
		r.fail(item, "", "a caution is a text, {tighten: text} or {loosen: text}; a text with a colon needs quotes, and inside { } one with a comma")
		return plan.Caution{}, false
	}
	side := item.entries[0].key.text
	text, ok := r.text(item.entries[0].value, "a caution")
	return plan.Caution{Text: text, Side: plan.CautionSide(side)}, ok
}

// checkUnused warns of kinds that no fastener has.
func (r *reader) checkUnused() {
	if r.fasteners.broken || len(r.input.Joint.Fasteners) == 0 || r.kinds.broken || r.kinds.unsure {
		return
	}
	for _, name := range r.kinds.names {
		if !r.kinds.used[name] {
			r.warn(r.kinds.at[name], "no fastener is of the kind %s", name)
		}
	}
}
