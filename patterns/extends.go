package patterns

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"

	"drawdown/patterns/problem"
)

const (
	maxChain      = 16 // files that build on each other
	maxMergeDepth = 6  // maps inside maps that are joined; a pattern has four
)

// load parses the file and what it extends, and joins them: maps are joined
// key by key, lists and plain values of the extending file replace those below.
func (r *reader) load() *node {
	var files [][]byte
	var root *node
	var sources []Source
	for source := r.source; ; {
		f := newFile(source.File, source.Data)
		f.level = len(files)
		files, sources = append(files, source.Data), append(sources, source)
		layer := r.parse(f, source.Data)
		if layer == nil {
			return nil
		}
		r.version(layer)
		root = merge(root, layer, 0)
		at := layer.get("extends")
		if at == nil {
			break
		}
		next, ok := r.base(at, source, sources)
		if !ok {
			return nil
		}
		source = next
	}
	r.input.Fingerprint = fingerprint(files)
	return root
}

// version checks every file of a chain; the joined file only shows the top one.
func (r *reader) version(layer *node) {
	n := layer.get("drawdown")
	if n == nil || n.shape == scalarShape && n.text == "1" {
		return
	}
	r.fail(n, "1", "drawdown: %s is a version of the format that this program does not read", n.called())
}

// base finds the file that the node at names.
func (r *reader) base(at *node, source Source, chain []Source) (Source, bool) {
	name := strings.TrimSpace(at.text)
	if at.shape != scalarShape || at.null || name == "" {
		r.fail(at, "", "extends names one file, such as extends: p4-head.yaml, not %s", at.called())
		return Source{}, false
	}
	base, err := openBase(name, source)
	if err != nil {
		r.missingBase(at, name, err)
		return Source{}, false
	}
	for _, earlier := range chain {
		if sameSource(earlier, base) {
			hint := ""
			if _, ok := BuiltinText(bareName(name)); ok {
				hint = "; for the built-in pattern write extends: " + bareName(name)
			}
			r.fail(at, "", "extends goes round in a circle: %s builds on itself%s", quoted(base.File), hint)
			return Source{}, false
		}
	}
	if len(chain) >= maxChain {
		r.fail(at, "", "more than %d files build on each other", maxChain)
		return Source{}, false
	}
	return base, true
}

func (r *reader) missingBase(at *node, name string, err error) {
	switch {
	case errors.Is(err, fs.ErrNotExist):
		r.fail(at, "a path relative to this file, or "+alternatives(Builtin()),
			"extends: there is no file and no built-in pattern %s%s", quoted(name), problem.DidYouMean(bareName(name), Builtin()))
	default:
		r.fail(at, "", "extends: %s cannot be read: %s", quoted(name), reason(err))
	}
}

// openBase looks beside the file first and among the built-in patterns then. A
// built-in pattern's plain name always means the built-in one.
func openBase(name string, source Source) (Source, error) {
	if !isYAMLName(name) {
		if base, ok := openBuiltin(name); ok {
			return base, nil
		}
	}
	err := error(fs.ErrNotExist)
	if source.files {
		path := filepath.FromSlash(name)
		if !filepath.IsAbs(path) {
			path = filepath.Join(source.folder, path)
		}
		var base Source
		if base, err = openFile(path); err == nil {
			return base, nil
		}
	}
	if errors.Is(err, fs.ErrNotExist) {
		if base, ok := openBuiltin(bareName(name)); ok && isYAMLName(name) {
			return base, nil
		}
	}
	return Source{}, err
}

func bareName(name string) string {
	if isYAMLName(name) {
		return name[:len(name)-len(filepath.Ext(name))]
	}
	return name
}

func sameSource(a, b Source) bool {
	if a.path == "" || b.path == "" {
		return a.path == b.path && a.File == b.File
	}
	aboutA, errA := os.Stat(a.path)
	aboutB, errB := os.Stat(b.path)
	return errA == nil && errB == nil && os.SameFile(aboutA, aboutB)
}

// reason is what the system says, without the path.
func reason(err error) string {
	var inPath *fs.PathError
	if errors.As(err, &inPath) {
		return inPath.Err.Error()
	}
	return err.Error()
}

// merge lays the top map over the base map. The order of the base stays, and
// every value keeps its own place for the problems.
func merge(top, base *node, depth int) *node {
	if top == nil {
		return base
	}
	if top.shape != mapShape || base.shape != mapShape || depth >= maxMergeDepth {
		return top
	}
	over, under := top.index(), base.index()
	joined := *top
	joined.entries = nil
	for _, e := range base.entries {
		if o, ok := over[e.key.text]; ok {
			e = entry{o.key, merge(o.value, e.value, depth+1)}
		}
		joined.entries = append(joined.entries, e)
	}
	for _, e := range top.entries {
		if _, ok := under[e.key.text]; !ok {
			joined.entries = append(joined.entries, e)
		}
	}
	return &joined
}

// index finds the entries of a map by their keys.
func (n *node) index() map[string]entry {
	index := make(map[string]entry, len(n.entries))
	for _, e := range n.entries {
		index[e.key.text] = e
	}
	return index
}
