package edit

import (
	"slices"
	"strconv"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/meaning"
)

var generators = []string{"grid", "row", "circle", "rectangle"}

// entry is an entry of the list of fasteners.
type entry struct {
	path      Path   // of the item
	generator string // "" for a single fastener
	ids       []string
}

// values returns the path of the keys: those of the generator, if it is one.
func (e entry) values() Path {
	if e.generator == "" {
		return e.path
	}
	return e.path.Then(e.generator)
}

// entries lists the entries of the file itself.
func (p *pattern) entries() (all []entry) {
	list := p.content.At(Path{"fasteners"})
	if list == nil {
		return nil
	}
	for i := range list.Of {
		all = append(all, p.entry(Path{"fasteners"}.Item(i)))
	}
	return all
}

func (p *pattern) entry(path Path) entry {
	e := entry{path: path}
	for _, name := range generators {
		if p.content.At(path.Then(name)) != nil {
			e.generator = name
		}
	}
	if e.generator == "" {
		e.ids = []string{p.at(path.Then("id"))}
		return e
	}
	omitted := p.texts(e.values().Then("omit"))
	for i := range p.count(e) {
		if id := p.at(e.values().Then("id")) + strconv.Itoa(i+1); !slices.Contains(omitted, id) {
			e.ids = append(e.ids, id)
		}
	}
	return e
}

// count returns the places of a generator, with those that are left out.
func (p *pattern) count(e entry) int {
	const most = 10_000
	whole := func(key string) int {
		n, _ := strconv.Atoi(p.at(e.values().Then(key)))
		return min(max(n, 0), most)
	}
	switch e.generator {
	case "grid":
		return min(whole("columns")*whole("rows"), most)
	case "rectangle":
		return 2 * (whole("columns") + whole("rows"))
	}
	return whole("count")
}

// at returns the text at a path; "" if there is none.
func (p *pattern) at(path Path) string {
	if v := p.content.At(path); v != nil {
		return v.Text
	}
	return ""
}

// texts returns the texts of a list, or the one text that stands for it.
func (p *pattern) texts(path Path) (all []string) {
	v := p.content.At(path)
	switch {
	case v == nil:
	case v.Kind == Scalar:
		all = append(all, v.Text)
	default:
		for _, item := range v.Of {
			all = append(all, item.Text)
		}
	}
	return all
}

// find returns the entry of a fastener; false if it comes from the file that
// this one extends.
func (p *pattern) find(id string) (entry, bool, error) {
	for _, e := range p.entries() {
		if slices.Contains(e.ids, id) {
			return e, true, nil
		}
	}
	if p.content.At(Path{"extends"}) == nil {
		return entry{}, false, noFastener(id)
	}
	if _, err := p.fastener(id); err != nil {
		return entry{}, false, err
	}
	return entry{}, false, nil
}

// below returns the id that a fastener has in the file that this one extends.
func (p *pattern) below(id string) string {
	if v := p.content.At(Path{"relabel"}); v != nil {
		for i, new := range v.Of {
			if new.Text == id {
				return v.Keys[i]
			}
		}
	}
	return id
}

func noFastener(id string) error { return finding.Failed(NoFastener, finding.Values{"id": id}) }

// read returns the joint as it was before the first change.
func (p *pattern) read() (*geometry.Joint, error) {
	if p.joint == nil {
		input, _, problems := meaning.Read(p.from)
		if problems.Stops() {
			return nil, finding.Failed(ErrorsFirst, nil)
		}
		p.joint = &input.Joint
	}
	return p.joint, nil
}

// fastener returns a fastener as read.
func (p *pattern) fastener(id string) (geometry.Fastener, error) {
	joint, err := p.read()
	if err != nil {
		return geometry.Fastener{}, err
	}
	for _, f := range joint.Fasteners {
		if f.ID == id {
			return f, nil
		}
	}
	return geometry.Fastener{}, noFastener(id)
}
