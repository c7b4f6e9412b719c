package meaning

import (
	"cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
)

// Fasteners collects the fasteners of a joint, each by its id and its place in
// the file.
type Fasteners struct {
	problems *form.Reader
	joint    *geometry.Joint
	index    map[string]int               // into Joint.Fasteners
	from     []*nodes.Node                // the point or the generator, for each fastener
	places   int                          // of all entries, including those with a taken id
	broken   bool                         // some could not be read, so a missing id cannot be judged
	unplaced map[string]geometry.Fastener // those whose places could not be read, by id
	at       map[string]*nodes.Node       // of these
	faulty   bool                         // something about them could not be read, such as a number
}

// NewFasteners returns an empty list for a joint.
func NewFasteners(r *form.Reader, joint *geometry.Joint) *Fasteners {
	return &Fasteners{problems: r, joint: joint, index: map[string]int{}, unplaced: map[string]geometry.Fastener{}, at: map[string]*nodes.Node{}}
}

// Add adds a fastener to the joint, unless its id is taken.
func (t *Fasteners) Add(from *nodes.Node, f geometry.Fastener) bool {
	t.places++
	if t.taken(from, f.ID) {
		return false
	}
	t.index[f.ID] = len(t.joint.Fasteners)
	t.from = append(t.from, from)
	t.joint.Fasteners = append(t.joint.Fasteners, f)
	return true
}

// taken reports an id that another fastener has, including one whose place
// could not be read.
func (t *Fasteners) taken(from *nodes.Node, id string) bool {
	first := t.at[id]
	if i, placed := t.index[id]; placed {
		first = t.from[i]
	}
	if first != nil {
		t.problems.Fail(from, IDTwice, finding.Values{"id": id, "first": first.Stood(from)})
	}
	return first != nil
}

const fastenerExample = "[{id: M1, at: [0, 0]}]"

func (r *reader) readFasteners(f form.Fields) {
	r.fasteners = NewFasteners(r.Reader, &r.input.Joint)
	n := f.Need("fasteners", fastenerExample)
	if n == nil {
		r.fasteners.broken = true
		return
	}
	before := r.Count()
	defer func() { r.fasteners.faulty = r.ErrorsSince(before) }()
	items := r.TrueList(n, "fasteners", fastenerExample)
	for _, item := range items {
		if r.fasteners.places > form.MostFasteners {
			break
		}
		if !r.fastenerItem(item) {
			r.fasteners.broken = true
		}
	}
	switch {
	case r.fasteners.places > form.MostFasteners:
		r.Fail(n, TooManyFasteners, finding.Values{"most": form.MostFasteners})
	case len(r.input.Joint.Fasteners)+len(r.fasteners.unplaced) > 0:
	case len(items) > 0 && !r.fasteners.broken:
		r.Fail(n, NoFastenerLeft, nil)
	default:
		r.fasteners.broken = true
	}
}

// fastenerItem reads one entry of the list: a point or a generator. It returns
// false if the entry cannot be read.
func (r *reader) fastenerItem(item *nodes.Node) bool {
	for _, g := range generators {
		if item.Get(g.name) != nil {
			return r.generator(item, g)
		}
	}
	f, ok := r.Fields(item, finding.Term("a fastener"), "id", "at", "kind", "cast", "mark", "grid", "row", "circle", "rectangle")
	if !ok || f.Unknown() && !f.Has("id") && !f.Has("at") { // reporting the unknown key is enough
		return false
	}
	id, idOK := f.NeedID("M1")
	at, atOK := f.NeedPoint("at", "[-47.5, 90]")
	fastener := geometry.Fastener{ID: id, At: at, Kind: r.fastenerKind(f), Cast: form.Opt(f, "cast", r.Cast), Mark: form.Opt(f, "mark", r.Mark)}
	if f.Get("mark") != nil {
		r.NotBoth(f)
	}
	switch {
	case idOK && atOK:
		r.addFastener(item, fastener)
	case idOK:
		if f, from, here := r.changed(item, fastener); here && !r.fasteners.taken(from, f.ID) {
			r.fasteners.unplaced[f.ID], r.fasteners.at[f.ID] = f, from
			r.kinds.used[f.Kind] = true
		}
	}
	return idOK
}

// placed reports whether all fasteners and their places are known.
func (t *Fasteners) placed() bool { return !t.broken && len(t.unplaced) == 0 }

// knownPlaces returns the places of the fasteners, or none unless all are
// known.
func (r *reader) knownPlaces() []geometry.Point {
	if !r.fasteners.placed() {
		return nil
	}
	return r.input.Joint.Points()
}

func (r *reader) addFastener(from *nodes.Node, f geometry.Fastener) {
	f, from, here := r.changed(from, f)
	if here && r.fasteners.Add(from, f) {
		r.kinds.used[f.Kind] = true
	}
}

// knownFastener returns the index of the fastener that a node names.
func (r *reader) knownFastener(n *nodes.Node) (int, bool) {
	if n.Shape != nodes.Scalar || n.Null {
		r.Fail(n, form.NoID, finding.Values{"what": finding.Term("an id"), "found": n.Called()})
		return 0, false
	}
	id, here := r.current(n)
	i, ok := r.fasteners.index[id]
	if _, known := r.fasteners.unplaced[id]; !ok && here && !known && !r.fasteners.broken {
		r.Fail(n, NoSuchFastener, finding.Values{"name": problem.Quoted(id), "meant": cmp.Or(r.names.Later(id), r.Meant(id, r.ids()))})
	}
	return i, ok && here
}

// ids returns the names that a hint can choose from.
func (r *reader) ids() []string {
	const hintable = 1000
	if len(r.input.Joint.Fasteners) > hintable {
		return nil
	}
	ids := make([]string, len(r.input.Joint.Fasteners))
	for i, f := range r.input.Joint.Fasteners {
		ids[i] = f.ID
	}
	return ids
}
