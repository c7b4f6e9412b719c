package meaning

import (
	"errors"
	"io/fs"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/measures"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/relabel"
	"drawdown/patterns/source"
)

const maxChain = 16 // files that extend each other

// load parses the file and those it extends, and lays each over the next. If
// one cannot be read the rest is checked alone; the result is nil if nothing
// can be read.
func (r *reader) load() *nodes.Node {
	var texts [][]byte
	var root *nodes.Node
	var layers []*nodes.Node
	var chain []source.Source
	for from, more := r.Source, true; more; {
		f := nodes.NewFile(from.File, from.Data)
		f.Level = len(chain)
		texts, chain = append(texts, from.Data), append(chain, from)
		layer := r.Parse(f, from.Data, nodes.Format{Keys: everyKey()})
		if layer == nil {
			r.baseless = true
			break
		}
		r.Version(layer)
		at := layer.Get("extends")
		layers = append(layers, layer)
		layer = r.takeChanges(layer, f.Level)
		r.overridden(root, layer)
		root = nodes.Merge(root, layer)
		r.baseless = at == nil && slices.Contains(layer.Lost, "extends")
		if more = at != nil; more {
			from, more = r.base(at, from, chain)
			r.baseless = !more
		}
	}
	if r.baseless && root != nil {
		root.Lost = append(root.Lost, "")
	}
	if shop, ok := r.shopsLubricants(root, chain); ok {
		texts = append(texts, shop.Data)
	}
	r.input.Fingerprint = source.Fingerprint(texts)
	r.ofOtherPart(layers)
	return root
}

// wholeLists are the lists whose entries are things in their own right; an
// extending file may mean to add or change only some.
var wholeLists = []string{"fasteners", "clusters", "features", "stations", "measure", "cautions"}

// overridden notes the lists of a file that are replaced whole and lose
// entries, and refuses other units, in which all bare lengths of the file would
// be read.
func (r *reader) overridden(top, base *nodes.Node) {
	if top == nil {
		return
	}
	for _, key := range wholeLists {
		over, under := top.Get(key), base.Get(key)
		if over == nil || under == nil || over.Shape != nodes.List || under.Shape != nodes.List {
			continue
		}
		if lost := lostFrom(under, over); lost > 0 {
			r.Note(top.KeyNode(key), ListReplaced, finding.Values{"key": key, "file": under.File.Name, "lost": lost, "count": len(under.Items)})
		}
	}
	r.otherBankAs(top, base)
	r.overriddenStages("tighten", top, base)
	r.overriddenStages("loosen", top, base)
	units := func(n *nodes.Node) string {
		if at := n.Get("units"); at != nil {
			return at.Text
		}
		return "mm"
	}
	if at := top.Get("units"); at != nil && units(base) != at.Text && (base.Get("units") != nil || base.Get("extends") == nil) {
		r.Fail(at, UnitsChanged, finding.Values{"units": at.Called(), "file": base.File.Name, "base": units(base)})
	}
}

// otherBankAs warns about a mirrored file that repeats the title of the first
// bank, or another machine.
func (r *reader) otherBankAs(top, base *nodes.Node) {
	if top.Get("mirror") == nil {
		return
	}
	if title, first := top.Get("title"), base.Get("title"); title != nil && first != nil && strings.EqualFold(strings.TrimSpace(title.Text), strings.TrimSpace(first.Text)) {
		r.warnSameTitle(title, first)
	}
	if machine, first := top.Get("machine"), base.Get("machine"); machine != nil && first != nil && strings.TrimSpace(machine.Text) != strings.TrimSpace(first.Text) {
		r.Warn(machine, MirrorMachine, finding.Values{"machine": machine.Called(), "first": first.Called(), "file": base.File.Name})
	}
}

// warnSameTitle warns about a title that both banks have, at the file whose
// name differs from it.
func (r *reader) warnSameTitle(title, first *nodes.Node) {
	if of := relabel.SideOf(first.File.Name); of != "" && relabel.SideOf(first.Text) != "" && of != relabel.SideOf(first.Text) {
		r.Warn(first, FirstBankTitle, finding.Values{"title": first.Called(), "file": first.File.Name})
		return
	}
	r.Warn(title, MirrorTitle, finding.Values{"title": title.Called()})
}

// lostFrom counts the entries of one list that the other does not repeat.
func lostFrom(base, top *nodes.Node) int {
	kept := map[string]bool{}
	for _, item := range top.Items {
		kept[item.Written()] = true
	}
	lost := 0
	for _, item := range base.Items {
		if !kept[item.Written()] {
			lost++
		}
	}
	return lost
}

// everyKey lists the keys that may be on a line of their own.
func everyKey() []string {
	return slices.Concat(fileKeys, mechanics.KindKeys, mechanics.LubricantKeys, measures.Keys, tightenActions, generatorKeys(), commonKeys,
		[]string{"at", "of", "way", "note", "source", "stages", "order", "remove", "name", "loaded", "bore", "dowel", "label", "front"})
}

// base finds the file that the node names.
func (r *reader) base(at *nodes.Node, from source.Source, chain []source.Source) (source.Source, bool) {
	name := strings.TrimSpace(at.Text)
	if at.Shape != nodes.Scalar || at.Null || name == "" {
		r.Fail(at, NoBase, finding.Values{"found": at.Called()})
		return source.Source{}, false
	}
	base, err := from.Beside(name)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		meant, all := r.Source.Meant(name)
		r.Fail(at, BaseMissing, finding.Values{"name": problem.Quoted(name), "meant": meant, "allowed": all})
	case err != nil:
		r.Fail(at, BaseUnreadable, finding.Values{"key": "extends", "name": problem.Quoted(name), "why": form.Told(source.Reason(err))})
	case slices.ContainsFunc(chain, base.SameAs):
		builtin, _ := from.BuiltinBase(name)
		r.Fail(at, BaseInCircle, finding.Values{"file": problem.Quoted(base.File), "builtin": builtin.Stem()})
	case len(chain) >= maxChain:
		r.Fail(at, LongChain, finding.Values{"most": maxChain})
	default:
		return base, true
	}
	return source.Source{}, false
}

// shopsLubricants finds the file that the pattern names for its lubricants, and
// puts its list in place of the name.
func (r *reader) shopsLubricants(root *nodes.Node, chain []source.Source) (shop source.Source, found bool) {
	if root == nil {
		return shop, false
	}
	at := root.Get("lubricants")
	if at == nil || at.Shape != nodes.Scalar || at.Null {
		return shop, false
	}
	name := strings.TrimSpace(at.Text)
	shop, err := chain[at.File.Level].Beside(name)
	if err != nil {
		r.Fail(at, BaseUnreadable, finding.Values{"key": "lubricants", "name": problem.Quoted(name), "why": form.Told(source.Reason(err))})
		return shop, false
	}
	f := nodes.NewFile(shop.File, shop.Data)
	f.Level = len(chain)
	list := r.Parse(f, shop.Data, nodes.Format{Keys: everyKey()})
	if list != nil {
		r.Version(list)
		list = list.Get("lubricants")
	}
	if list == nil || list.Shape != nodes.Map {
		r.Fail(at, form.KeyMissing, finding.Values{"what": problem.Quoted(name), "key": "lubricants", "example": "lubricants: {our paste: {friction: 0.115, spread: 0.012}}"})
		return shop, false
	}
	for i, e := range root.Entries {
		if e.Key.Text == "lubricants" {
			root.Entries[i].Value = list
		}
	}
	return shop, true
}
