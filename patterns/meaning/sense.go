package meaning

import (
	"slices"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/mechanics"
)

// sense runs the checks that need the whole file.
func (r *reader) sense(f form.Fields) {
	r.checkMirrorTitle(f)
	r.checkMirrorLabels(f)
	if !r.baseless {
		r.names.Unused()
	}
	r.unusedChanges()
	r.fasteners.Check()
	r.checkOdd()
	r.checkOddStations()
	r.checkPlaces(f)
	r.checkCircleGaps()
	r.checkKindsBeside()
	r.checkCasts()
	r.checkLargestFirst()
	r.checkSizeByHole(f)
	r.checkCovered()
	r.checkShares()
	r.checkRemoved()
	r.checkSprung()
	r.checkCaps(f)
	r.checkStageKinds()
	r.checkStageOrder()
	r.checkStars()
	mechanics.CheckParts(r.Reader, f, r.input.Clamped, r.input.Kinds, r.kinds.at)
	r.checkUnused()
}

// checkMirrorTitle warns if a second bank has the title of the first: a mirror
// over an extended file that keeps its title.
func (r *reader) checkMirrorTitle(f form.Fields) {
	mirror, title := f.Node.Get("mirror"), f.Node.Get("title")
	if mirror != nil && title != nil && title.File.Level > mirror.File.Level {
		r.Warn(mirror, MirrorTitle, finding.Values{"title": title.Called()})
	}
}

// checkMirrorLabels warns of labels of the first bank that remain on the
// second.
func (r *reader) checkMirrorLabels(f form.Fields) {
	mirror := f.Node.Get("mirror")
	if mirror == nil {
		return
	}
	r.names.Banks()
	if labels := r.names.OfOtherBank(mirror.File.Level); len(labels) > 0 {
		r.Warn(mirror, MirrorLabels, finding.Values{"labels": labels, "example": "relabel: {" + labels[0] + ": …}"})
	}
}

// checkPlaces checks the places of things, once all are known.
func (r *reader) checkPlaces(f form.Fields) {
	if r.fasteners.faulty || r.fasteners.broken {
		return
	}
	p := r.part
	p.Joint, p.Kinds, p.View, p.Fasteners, p.Clusters = r.input.Joint, r.input.Kinds, r.input.View, r.fasteners.from, r.clusters
	p.Omits = slices.ContainsFunc(r.changes, func(c *changes) bool { return len(c.omit) > 0 })
	p.OutlineUnread = p.OutlineUnread || f.Node.Lacks("outline")
	p.Check(r.Problems)
}

// checkUnused warns of kinds that no fastener has.
func (r *reader) checkUnused() {
	if r.fasteners.broken || len(r.input.Joint.Fasteners) == 0 || r.kinds.broken || r.kinds.unsure {
		return
	}
	for _, name := range r.kinds.names {
		if !r.kinds.used[name] {
			r.Warn(r.kinds.at[name], KindUnused, finding.Values{"kind": name})
		}
	}
}
