package edit

import (
	"slices"
	"strconv"
)

func (p *pattern) removeAll(op Operation) error {
	for _, id := range op.IDs {
		if err := p.remove(id); err != nil {
			return err
		}
	}
	return nil
}

// remove takes a fastener out of the file, and out of the lists that name it.
func (p *pattern) remove(id string) error {
	e, own, err := p.find(id)
	if err != nil {
		return err
	}
	for named := p.named(id); err == nil && len(named) > 0; named = p.named(id) {
		err = p.unlist(named[len(named)-1])
	}
	switch {
	case err != nil:
		return err
	case !own:
		if p.content.At(Path{"change", p.below(id)}) != nil {
			if err := p.drop(Path{"change", p.below(id)}); err != nil {
				return err
			}
		}
		return p.listed(Path{"omit"}, p.below(id))
	case e.generator == "" || len(e.ids) == 1:
		return p.drop(e.path)
	}
	return p.omit(e, id)
}

// omit leaves out a place of a generator, and its number or mark.
func (p *pattern) omit(e entry, id string) error {
	i := slices.Index(e.ids, id)
	for _, key := range []string{"cast", "mark"} {
		path := e.values().Then(key)
		if list := p.content.At(path); list != nil && list.Kind == List && i < len(list.Of) {
			if err := p.drop(path.Item(i)); err != nil {
				return err
			}
		}
	}
	return p.listed(e.values().Then("omit"), id)
}

// listed appends a text to a list.
func (p *pattern) listed(path Path, text string) error {
	if v := p.content.At(path); v != nil && v.Kind == Scalar {
		return p.replace(path, Texts([]string{v.Text, text}))
	}
	return p.insert(path, len(p.texts(path)), Text(text))
}

// unlist removes a name from a list. A cluster, a value to measure or a group
// whose only place it was goes with it.
func (p *pattern) unlist(at Path) error {
	list := p.content.At(at[:len(at)-1])
	if list.Kind == List && len(list.Of) > 1 {
		return p.drop(at)
	}
	if at[0] == "tighten" {
		return p.drop(at)
	}
	return p.drop(at[:2])
}

// named lists the places where the file names a fastener, besides its entry.
func (p *pattern) named(id string) (all []Path) {
	var lists []Path
	each := func(path Path, keys ...string) {
		if list := p.content.At(path); list != nil && list.Kind == List {
			for i := range list.Of {
				lists = append(lists, path.Item(i).Then(keys...))
			}
		}
	}
	each(Path{"clusters"}, "of")
	each(Path{"measure"}, "at")
	each(Path{"tighten", "order"}, "order")
	lists = append(lists, Path{"tighten", "order"})
	for _, path := range lists {
		list := p.content.At(path)
		switch {
		case list == nil:
		case list.Kind == Scalar && list.Text == id && path[0] != "tighten":
			all = append(all, path)
		case list.Kind == List:
			for i, item := range list.Of {
				if item.Kind == Scalar && item.Text == id {
					all = append(all, path.Then(strconv.Itoa(i)))
				}
			}
		}
	}
	return all
}
