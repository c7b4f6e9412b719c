package meaning

import (
	"slices"
	"strconv"
	"strings"
	"unicode"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
)

// changeKeys are the keys with which a file changes single things of the file
// that it extends. They are kept apart for each file: merging the files would
// lose them.
var changeKeys = []string{"omit", "change", "relabel"}

// changes holds what one file does to single fasteners of the file that it
// extends.
type changes struct {
	level  int // of the file
	omit   map[string]*nodes.Node
	change map[string]*nodes.Entry
	used   map[string]bool
	seen   []string // ids that could be meant
}

// takeChanges reads omit, change and relabel of a file, and returns the file
// without them.
func (r *reader) takeChanges(layer *nodes.Node, level int) *nodes.Node {
	builds := layer.Get("extends") != nil || layer.Lacks("extends")
	if at := layer.Get("relabel"); at != nil {
		r.names.Take(at, level, builds)
	}
	c := &changes{level: level, omit: map[string]*nodes.Node{}, change: map[string]*nodes.Entry{}, used: map[string]bool{}}
	for _, key := range []string{"omit", "change"} {
		at := layer.Get(key)
		switch {
		case at == nil:
		case !builds:
			r.Fail(layer.KeyNode(key), NothingBelow, finding.Values{"key": key})
		case key == "omit":
			r.takeOmit(c, at)
		default:
			r.takeChange(c, at)
		}
	}
	r.changes = append(r.changes, c)
	return layer.Without(changeKeys)
}

func (r *reader) takeOmit(c *changes, at *nodes.Node) {
	for _, item := range r.TrueList(at, "omit", "[M3, M8]") {
		switch {
		case item.Shape != nodes.Scalar || item.Null:
			r.Fail(item, form.NoID, finding.Values{"what": finding.Term("an id"), "found": item.Called()})
		case c.omit[item.Text] != nil:
			r.Fail(item, OmitTwice, finding.Values{"id": item.Text})
		default:
			c.omit[item.Text] = item
		}
	}
}

const changeExample = "{M7: {at: [120.4, 33]}}"

func (r *reader) takeChange(c *changes, at *nodes.Node) {
	if at.Shape != nodes.Map || len(at.Entries) == 0 {
		r.Fail(at, NoChanges, finding.Values{"found": at.Called(), "example": changeExample})
		return
	}
	for i := range at.Entries {
		e := &at.Entries[i]
		if c.omit[e.Key.Text] != nil {
			r.Fail(e.Key, OmittedAndChanged, finding.Values{"id": e.Key.Text})
			continue
		}
		c.change[e.Key.Text] = e
	}
}

// changed returns a fastener of the file after the changes of the files above
// it, and the node that it then comes from; it is false if one of them leaves
// it out.
func (r *reader) changed(from *nodes.Node, f geometry.Fastener) (geometry.Fastener, *nodes.Node, bool) {
	id, at := f.ID, from
	for _, c := range slices.Backward(r.changes) {
		if c.level >= from.File.Level {
			continue
		}
		seen := r.names.Seen(id, from, c.level)
		c.seen = append(c.seen, seen)
		if c.omit[seen] != nil {
			c.used[seen] = true
			r.omittedCast[strconv.Itoa(f.Cast)] = true
			return f, from, false
		}
		if e := c.change[seen]; e != nil && !c.used[seen] {
			c.used[seen] = true
			f, at = r.changedBy(f, e), e.Key
		}
	}
	f.ID = r.names.Of(relabel.Fasteners, id, from)
	return f, at, true
}

func (r *reader) changedBy(f geometry.Fastener, e *nodes.Entry) geometry.Fastener {
	fields, ok := r.Fields(e.Value, finding.Failed(TheChange, finding.Values{"id": e.Key.Text}), "at", "kind", "cast", "mark")
	if !ok {
		return f
	}
	if at, ok := fields.Point("at"); ok && fields.Has("at") {
		f.At = at
	}
	if n := fields.Get("kind"); n != nil {
		if kind, known := r.knownKind(n); known {
			f.Kind = kind
		}
	}
	if n := fields.Get("cast"); n != nil {
		f.Cast, f.Mark = r.Cast(n), ""
	}
	if n := fields.Get("mark"); n != nil {
		r.NotBoth(fields)
		f.Mark, f.Cast = r.Mark(n), 0
	}
	return f
}

// unusedChanges reports fasteners that the file changes or leaves out but that
// the file it extends lacks. What a file below changes may have been replaced
// since.
func (r *reader) unusedChanges() {
	if r.fasteners.broken || r.baseless || len(r.changes) == 0 {
		return
	}
	c := r.changes[0]
	report := func(key string, at *nodes.Node) {
		if !c.used[at.Text] {
			r.Fail(at, NotBelow, finding.Values{"key": key, "name": problem.Quoted(at.Text), "meant": r.Meant(at.Text, c.seen)})
		}
	}
	for _, at := range c.omit {
		report("omit", at)
	}
	for _, e := range c.change {
		report("change", e.Key)
	}
}

// current returns the present id of the fastener that a file names at the node;
// it is false if a file above leaves it out.
func (r *reader) current(n *nodes.Node) (string, bool) {
	for _, c := range slices.Backward(r.changes) {
		if c.level < n.File.Level && c.omit[r.names.Seen(n.Text, n, c.level)] != nil {
			return n.Text, false
		}
	}
	return r.names.Seen(n.Text, n, -1), true
}

// currentList returns a list of fasteners with their present ids, without those
// that a file above leaves out. A list by cast numbers loses their numbers.
func (r *reader) currentList(n *nodes.Node) *nodes.Node {
	list := *n
	list.Items = nil
	for _, item := range n.Items {
		id, here := r.current(item)
		_, isID := r.fasteners.index[id]
		if !here || !isID && item.File.Level > 0 && r.omittedCast[item.Text] {
			continue
		}
		named := *item
		named.Text = id
		list.Items = append(list.Items, &named)
	}
	return &list
}

// ofOtherPart warns of a mirrored or relabelled part whose title has no word of that of
// the file it extends: a counterpart is the same part on the other side.
func (r *reader) ofOtherPart(layers []*nodes.Node) {
	if len(layers) < 2 || layers[0].Get("mirror") == nil && layers[0].Get("relabel") == nil {
		return
	}
	own, base := layers[0].Get("title"), layers[1].Get("title")
	if own == nil || base == nil || shareWord(own.Text, base.Text) {
		return
	}
	r.Warn(layers[0].Get("extends"), ExtendsOther, finding.Values{"title": own.Text, "base": base.Text})
}

// noParts are words of titles that name no part.
var noParts = strings.Fields("the other bank left right side mirrored andere bank linke rechte seite links rechts gespiegelt autre rangée gauche droite côté otra bancada izquierda derecha lado")

// shareWord reports whether two titles share a word, or the greater part of one:
// Zylinderkopf and Kopf.
func shareWord(a, b string) bool {
	const least = 4 // letters
	split := func(text string) []string {
		words := strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return !unicode.IsLetter(r) })
		return slices.DeleteFunc(words, func(w string) bool { return slices.Contains(noParts, w) })
	}
	if len(split(a)) == 0 || len(split(b)) == 0 {
		return true // a title of a side alone
	}
	for _, one := range split(a) {
		for _, other := range split(b) {
			if one == other || min(len(one), len(other)) >= least && (strings.Contains(one, other) || strings.Contains(other, one)) {
				return true
			}
		}
	}
	return false
}
