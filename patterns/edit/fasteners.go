package edit

import (
	"cmp"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
)

// single lists the fasteners of the entry of one of them.
func (p *pattern) single(id string) error {
	e, own, err := p.find(id)
	switch {
	case err != nil:
		return err
	case !own:
		return finding.Failed(Elsewhere, finding.Values{"id": id})
	case e.generator == "":
		return nil
	}
	var singles []Value
	for _, id := range e.ids {
		f, err := p.fastener(id)
		if err != nil {
			return err
		}
		singles = append(singles, p.singleOf(f, p.at(e.values().Then("kind"))))
	}
	i, _ := strconv.Atoi(e.path.last())
	comments := p.comments(p.root.at(p.content, e.path)) // of keys that go
	if err := p.replace(e.path, singles[0]); err != nil {
		return err
	}
	if err := p.comment(e.path, comments); err != nil {
		return err
	}
	return p.insert(Path{"fasteners"}, i+1, singles[1:]...)
}

func (p *pattern) singleOf(f geometry.Fastener, kind string) Value {
	v := Value{}.With("id", Text(f.ID)).With("at", p.point(f.At))
	if kind != "" {
		v = v.With("kind", Text(kind))
	}
	if f.Cast > 0 {
		v = v.With("cast", Text(strconv.Itoa(f.Cast)))
	}
	if f.Mark != "" {
		v = v.With("mark", Text(f.Mark))
	}
	return v
}

// add appends a fastener. Without an id it gets the next number behind that of
// the last fastener.
func (p *pattern) add(op Operation) error {
	id := ""
	if len(op.IDs) > 0 {
		id = op.IDs[0]
	}
	if p.taken(id) {
		return finding.Failed(IDTaken, finding.Values{"id": id})
	}
	f := geometry.Fastener{ID: cmp.Or(id, p.nextID("")), At: pointOf(*op.At)}
	return p.append(p.singleOf(f, op.Text))
}

func (p *pattern) append(fasteners ...Value) error {
	if p.content.At(Path{"fasteners"}) == nil && p.content.At(Path{"extends"}) != nil {
		return finding.Failed(Elsewhere, finding.Values{"id": fasteners[0].Of[0].Text}) // a list here replaces the one there
	}
	return p.insert(Path{"fasteners"}, len(p.entries()), fasteners...)
}

func (p *pattern) taken(id string) bool {
	return id != "" && slices.ContainsFunc(p.entries(), func(e entry) bool { return slices.Contains(e.ids, id) })
}

// nextID returns an id that no fastener has, numbered like another one or like
// the last.
func (p *pattern) nextID(like string) string {
	for _, e := range p.entries() {
		if len(e.ids) > 0 && like == "" {
			like = e.ids[len(e.ids)-1]
		}
	}
	prefix := strings.TrimRight(cmp.Or(like, "M1"), "0123456789")
	for n := 1; ; n++ {
		if id := prefix + strconv.Itoa(n); !p.taken(id) {
			return id
		}
	}
}

// mirror adds the mirror images of fasteners.
func (p *pattern) mirror(op Operation) error {
	for _, id := range op.IDs {
		at, err := p.where(id)
		if err != nil {
			return err
		}
		f, err := p.fastener(id)
		if err != nil {
			return err
		}
		image := geometry.Fastener{ID: p.nextID(id), At: geometry.Point{X: -at.X, Y: at.Y}}
		if op.Text != "x" {
			image.At = geometry.Point{X: at.X, Y: -at.Y}
		}
		if err := p.append(p.singleOf(image, f.Kind)); err != nil {
			return err
		}
	}
	return nil
}

func (p *pattern) kind(op Operation) error {
	return p.each(op.IDs, func(path Path) error { return p.set(path.Then("kind"), Text(op.Text)) })
}

// cast gives a number on the part, or takes it away.
func (p *pattern) cast(op Operation) error {
	return p.each(op.IDs[:1], func(path Path) error {
		path = path.Then("cast")
		switch {
		case op.Text != "":
			return p.set(path, Text(op.Text))
		case p.content.At(path) != nil:
			return p.drop(path)
		}
		return nil
	})
}

func (p *pattern) each(ids []string, do func(Path) error) error {
	for _, id := range ids {
		path, err := p.alone(id)
		if err == nil {
			err = do(path)
		}
		if err != nil {
			return err
		}
	}
	return nil
}

// rename also changes the id where the file names it.
func (p *pattern) rename(op Operation) error {
	id := op.IDs[0]
	if id == op.Text {
		return nil
	}
	if p.taken(op.Text) {
		return finding.Failed(IDTaken, finding.Values{"id": op.Text})
	}
	_, own, err := p.find(id)
	switch {
	case err != nil:
		return err
	case !own:
		return p.set(Path{"relabel", p.below(id)}, Text(op.Text))
	}
	path, err := p.alone(id)
	if err == nil {
		err = p.set(path.Then("id"), Text(op.Text))
	}
	for _, at := range p.named(id) {
		if err == nil {
			err = p.set(at, Text(op.Text))
		}
	}
	return err
}
