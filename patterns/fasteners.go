package patterns

import (
	"fmt"
	"unicode"

	"drawdown/geometry"
)

const (
	maxFasteners    = 10_000
	maxIDCharacters = 12
	maxCastNumber   = 99_999
	maxMark         = 4 // characters: it stands small beside a number
)

// fastenerTable finds a fastener by its id and its place in the file.
type fastenerTable struct {
	index  map[string]int // into Joint.Fasteners
	from   []*node        // the point or the generator, for each fastener
	places int            // of all entries, those with a taken id too
	broken bool           // some could not be read; a missing id cannot be judged
}

const fastenerExample = "[{id: M1, at: [0, 0]}]"

func (r *reader) readFasteners(f fields) {
	r.fasteners = fastenerTable{index: map[string]int{}}
	n := f.need("fasteners", fastenerExample)
	if n == nil {
		r.fasteners.broken = true
		return
	}
	items := r.trueList(n, "fasteners", fastenerExample)
	for _, item := range items {
		if r.fasteners.places > maxFasteners {
			break
		}
		r.fastenerItem(item)
	}
	switch count := len(r.input.Joint.Fasteners); {
	case r.fasteners.places > maxFasteners:
		r.fail(n, fmt.Sprintf("1 to %d", maxFasteners), "the joint has more than %d fasteners", maxFasteners)
	case count == 0 && len(items) > 0 && !r.fasteners.broken:
		r.fail(n, "", "the joint has no fastener left")
	case count == 0:
		r.fasteners.broken = true
	}
	r.checkDistances()
	r.checkStray()
}

// fastenerItem reads one entry of the list: a point, or a generator.
func (r *reader) fastenerItem(item *node) {
	if item.shape == mapShape {
		for _, g := range generators {
			if item.get(g.name) != nil {
				r.generator(item, g)
				return
			}
		}
	}
	f, ok := r.fields(item, "a fastener", "id", "at", "kind", "cast", "mark", "grid", "row", "circle", "rectangle")
	if !ok {
		r.fasteners.broken = true
		return
	}
	if len(f.meant) > 0 && !f.has("id") && !f.has("at") { // the unknown key says it all
		r.fasteners.broken = true
		return
	}
	fastener := geometry.Fastener{}
	id, at := f.need("id", "M1"), f.need("at", "[-47.5, 90]")
	fastener.Kind = r.fastenerKind(f)
	if n := f.get("cast"); n != nil {
		fastener.Cast, _ = r.whole(n, "cast", 1, maxCastNumber)
	}
	if n := f.get("mark"); n != nil {
		fastener.Mark, _ = r.mark(n)
		r.notBoth(f)
	}
	idOK, atOK := false, false
	if id != nil {
		fastener.ID, idOK = r.newID(id, "id", id.text)
	}
	if at != nil {
		fastener.At, atOK = r.pointMm(at, "at")
	}
	if !idOK || !atOK {
		r.fasteners.broken = true
		return
	}
	r.addFastener(item, fastener)
}

// newID checks the form of an id.
func (r *reader) newID(at *node, what, id string) (string, bool) {
	if at.shape != scalarShape || at.null || id == "" {
		r.fail(at, "", "%s is a short name such as M1, not %s", what, at.called())
		return "", false
	}
	if len([]rune(id)) > maxIDCharacters {
		r.fail(at, fmt.Sprintf("up to %d characters", maxIDCharacters), "the id %s is too long", quoted(id))
		return "", false
	}
	for _, c := range id {
		if !unicode.IsLetter(c) && !(c >= '0' && c <= '9') && c != '-' && c != '_' && c != '.' {
			r.fail(at, "letters, digits, - _ .", "the id %s holds the character %q", quoted(id), c)
			return "", false
		}
	}
	return id, r.checkPrintable(at, what, id)
}

// mark reads what is written on the part beside a fastener.
func (r *reader) mark(n *node) (string, bool) {
	if n.shape != scalarShape || n.null || n.text == "" {
		r.fail(n, "", "mark is what is written on the part beside it, such as 7 or B, not %s", n.called())
		return "", false
	}
	if len([]rune(n.text)) > maxMark {
		r.fail(n, fmt.Sprintf("up to %d characters", maxMark), "the mark %s is too long to stand beside a number", quoted(n.text))
		return "", false
	}
	return n.text, r.checkPrintable(n, "mark", n.text)
}

// notBoth refuses a cast number and a mark at once: one small number stands
// beside a fastener, and the reader has to know which.
func (r *reader) notBoth(f fields) {
	if f.has("cast") && f.has("mark") {
		r.fail(f.node.keyNode("mark"), "cast, mark", "%s has both; one small number stands on the card: the one cast on the part, or the mark", f.what)
	}
}

// addFastener puts a fastener into the joint, unless its id is taken.
func (r *reader) addFastener(from *node, f geometry.Fastener) {
	r.fasteners.places++
	if i, taken := r.fasteners.index[f.ID]; taken {
		first := r.fasteners.from[i]
		r.fail(from, "", "the id %s stands here twice; it stood first %s", f.ID, first.placeSeenFrom(from))
		return
	}
	r.fasteners.index[f.ID] = len(r.input.Joint.Fasteners)
	r.fasteners.from = append(r.fasteners.from, from)
	r.input.Joint.Fasteners = append(r.input.Joint.Fasteners, f)
	r.kinds.used[f.Kind] = true
}

// placeSeenFrom says where n stands, for a message at another node.
func (n *node) placeSeenFrom(other *node) string {
	if n.file != other.file {
		return fmt.Sprintf("on line %d of %s", n.line, n.file.name)
	}
	return fmt.Sprintf("on line %d", n.line)
}

// knownFastener gives the index of the fastener that a node names.
func (r *reader) knownFastener(n *node) (int, bool) {
	if n.shape != scalarShape || n.null {
		r.fail(n, "", "an id is a short name such as M1, not %s", n.called())
		return 0, false
	}
	i, ok := r.fasteners.index[n.text]
	if !ok && !r.fasteners.broken {
		r.fail(n, "", "there is no fastener %s%s", quoted(n.text), r.hint(n.text, r.ids()))
	}
	return i, ok
}

// ids gives the names that a hint can pick from.
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
