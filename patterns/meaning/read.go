// Package meaning turns a pattern file into the input of a plan: it reads what
// the keys state about the joint, and checks whether they agree. Each key of
// the pattern has its file; sense.go lists the checks that need all keys. The
// package may import form and nodes, and those packages of the calculating half
// whose words a pattern uses.
package meaning

import (
	"cmp"
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/meant"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/nodes"
	"drawdown/patterns/places"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
	"drawdown/patterns/source"
	"drawdown/sequence/plan"
)

var fileKeys = []string{"drawdown", "title", "machine", "revision", "date", "units", "view", "kinds", "lubricants", "fasteners",
	"clusters", "unloaded", "outline", "features", "stations", "measure", "joint", "mirror", "extends", "omit", "change", "relabel", "tighten", "loosen", "cautions", meant.Key}

// reader collects the contents of one pattern file and its problems.
type reader struct {
	*form.Reader
	input      plan.Input
	baseless   bool // the file that this one extends could not be read
	kinds      kindTable
	lubricants mechanics.Lubricants // the shop's own
	fasteners  *Fasteners
	part       places.Part // the nodes of the things on the part
	unplaced   bool        // some feature or station could not be read
	names      *relabel.Names
	changes    []*changes // of each file of the chain, in reading order
	// omittedCast holds the numbers on the part of fasteners that a file leaves
	// out.
	omittedCast map[string]bool
	stars       []star
	meant       []meant.Entry
	groups      []*nodes.Node // parallel to input.Groups
	clusters    []*nodes.Node // parallel to input.Joint.Clusters
	ordered     bool          // tighten has an order, readable or not
	stages      []*nodes.Node // of tightening, parallel to input.Tighten
	tightened   *nodes.Node   // the list of stages, if all could be read
	loosened    []*nodes.Node // of loosening, parallel to input.Loosen
	measures    []*nodes.Node // parallel to input.Measures
	removed     *nodes.Node   // the list of them, if all could be read
	cautions    *nodes.Node
	gaps        []gap // of the bolt circles
	oddKinds    *bool // whether a fastener probably has the wrong kind; nil until asked for
	title       *nodes.Node
	machine     *nodes.Node
	mixed       []mixed
	viewAt      *nodes.Node
	jointAt     *nodes.Node
	mirror      *nodes.Node
	source      *nodes.Node // of the figures
}

// Read reads a pattern and all that it extends, and returns the places of the
// stages and kinds of the input. The list holds every problem of the file (the
// first thousand of a hopeless one), in reading order. If Stops reports that
// one of them prevents work, the input is empty, and of the places only the
// acknowledged warnings are known.
// The joint is as the file draws it. If Mirror is set, the plan mirrors the
// finished order together with the joint, so that the second bank's order is
// the exact mirror image of the first one's.
func Read(from source.Source) (plan.Input, Places, problem.List) {
	r := &reader{Reader: form.NewReader(from), omittedCast: map[string]bool{}}
	r.names = relabel.New(r.Reader)
	if root := r.load(); root != nil {
		r.pattern(root)
	}
	problems := r.List()
	if problems.Stops() {
		return plan.Input{}, Places{file: from.File, meant: r.meant}, problems
	}
	return r.input, r.places(), problems
}

// pattern reads the merged file. The order matters: fasteners name kinds, and
// all that follows names fasteners.
func (r *reader) pattern(root *nodes.Node) {
	if root.Get("strip") != nil && root.Get("fasteners") == nil {
		r.Fail(root.KeyNode("strip"), IsMachine, nil)
		return
	}
	f, ok := r.Fields(root, finding.Term("the file"), fileKeys...)
	if !ok {
		return
	}
	f.Versioned()
	r.head(f)
	if n := f.Get("lubricants"); n != nil && n.Shape != nodes.Scalar { // else a file that could not be read
		r.lubricants = mechanics.ReadLubricants(r.Reader, n)
	}
	r.readKinds(f)
	r.readFasteners(f)
	r.readOutline(f)
	before := r.Count()
	r.readFeatures(f)
	r.readStations(f)
	r.unplaced = r.ErrorsSince(before) || f.Mistyped("features", "stations")
	r.input.Clamped = mechanics.Clamped(r.Reader, f, r.knownPlaces())
	if r.jointAt = f.Node.Get("joint"); r.jointAt != nil {
		r.jointAt = cmp.Or(r.jointAt.Get("gasket"), r.jointAt)
	}
	r.readTighten(f)
	r.readLoosen(f)
	r.readClusters(f)
	r.readMeasure(f)
	r.input.Cautions, r.cautions, r.title, r.machine = f.Cautions(), f.Node.Get("cautions"), f.Node.Get("title"), f.Node.Get("machine")
	r.viewAt, r.mirror = f.Node.Get("view"), f.Node.Get("mirror")
	if tighten := f.Node.Get("tighten"); tighten != nil {
		r.source = tighten.Get("source")
	}
	r.meant = meant.Read(f, meant.OfPattern)
	r.sense(f)
}

// head reads the texts of the header, the units and the mirror.
func (r *reader) head(f form.Fields) {
	r.input.Title = f.NeedText("title", "Cylinder head")
	r.input.Name = r.Source.Name(r.input.Title)
	r.input.Machine = f.Text("machine")
	r.input.View = f.Text("view")
	const longestRevision = 40
	r.input.Revision = f.TextUpTo("revision", longestRevision)
	r.input.Date = f.Date()
	f.Units()
	r.input.Mirror = form.Word(f, "mirror", geometry.AxisX, geometry.AxisY)
}
