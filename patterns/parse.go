package patterns

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"gopkg.in/yaml.v3"

	"drawdown/patterns/problem"
)

// parse reads one file into nodes. It gives nil where the text is no map;
// the problems then say why.
func (r *reader) parse(f *file, data []byte) *node {
	if len(data) > maxFileBytes {
		r.report(f, 0, 0, problem.Error, "", fmt.Sprintf("the file is larger than %d MB", maxFileBytes>>20))
		return nil
	}
	if line, column, what := checkCharacters(data); what != "" {
		r.report(f, line, column, problem.Error, "", what)
		return nil
	}
	document, second, err := decode([]byte(f.text))
	if err != nil {
		r.syntax(f, err)
		return nil
	}
	if document == nil || len(document.Content) == 0 {
		r.report(f, 1, 1, problem.Error, "", "the file is empty; it starts with drawdown: 1 and a title")
		return nil
	}
	if second != nil {
		line, column := f.clamp(second.Line, second.Column)
		r.report(f, line, column, problem.Error, "", "a second document starts here; one pattern stands in one file")
	}
	return r.rootOf(f, document)
}

func (r *reader) rootOf(f *file, document *yaml.Node) *node {
	c := converter{r: r, file: f, anchored: map[*yaml.Node]*node{}, open: map[*yaml.Node]bool{}}
	root := c.convert(document.Content[0])
	if root.shape != mapShape {
		r.fail(root, "", "a pattern file is a map of keys such as title: Cylinder head, not %s", root.called())
		return nil
	}
	if root.size > 100_000+10*len(f.text) {
		r.fail(root, "", "the aliases repeat parts inside parts until the file is too large; write the parts out")
		return nil
	}
	return root
}

// decode parses the first document and looks for a second one.
func decode(text []byte) (document, second *yaml.Node, err error) {
	defer func() {
		if v := recover(); v != nil { // the parser's own slips must not end the program
			err = fmt.Errorf("%v", v)
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var first, next yaml.Node
	if err := decoder.Decode(&first); err != nil {
		if errors.Is(err, io.EOF) {
			return nil, nil, nil
		}
		return nil, nil, err
	}
	if err := decoder.Decode(&next); err == nil {
		return &first, &next, nil
	} else if !errors.Is(err, io.EOF) {
		return nil, nil, err
	}
	return &first, nil, nil
}

// clamp keeps a place inside the file.
func (f *file) clamp(line, column int) (int, int) {
	line = min(max(line, 1), f.lastLine())
	return line, min(max(column, 1), len([]rune(f.lines[line-1]))+1)
}

// within gives a place of the parser, which counts on past the end where
// nothing stands.
func (f *file) within(line, column int) (int, int) {
	if line > f.lastLine() || line > 0 && column > len(f.lines[line-1])+1 {
		return f.clamp(line, column)
	}
	return line, column
}
