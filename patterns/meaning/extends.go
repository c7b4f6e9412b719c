package meaning

import (
	"errors"
	"io/fs"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

const maxChain = 16 // files that build on each other

// load parses the file and what it extends, and lays each over the next. Where
// one of them cannot be read the rest is held against itself alone; nil where
// nothing can be read.
func (r *reader) load() *nodes.Node {
	var texts [][]byte
	var root *nodes.Node
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
		root = nodes.Merge(root, layer)
		at := layer.Get("extends")
		r.baseless = at == nil && slices.Contains(layer.Lost, "extends")
		if more = at != nil; more {
			from, more = r.base(at, from, chain)
			r.baseless = !more
		}
	}
	if r.baseless && root != nil {
		root.Lost = append(root.Lost, "")
	}
	r.input.Fingerprint = source.Fingerprint(texts)
	return root
}

// everyKey lists the keys that may stand on a line of their own.
func everyKey() []string {
	return slices.Concat(fileKeys, kindKeys, tightenActions, generatorKeys(), commonKeys,
		[]string{"at", "of", "way", "note", "source", "stages", "order", "remove", "name", "loaded", "bore", "dowel", "label", "front"})
}

// base finds the file that the node at names.
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
		r.Fail(at, BaseUnreadable, finding.Values{"name": problem.Quoted(name), "why": form.Told(source.Reason(err))})
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
