package nodes

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"gopkg.in/yaml.v3"

	"drawdown/geometry/finding"
	"drawdown/patterns/source"
)

// Format describes the top level of a kind of file.
type Format struct {
	Keys    []string // allowed at the top level
	Example string   // of the whole file; "" for one that begins with drawdown: 1
}

// Parse reads one file into nodes. It returns nil if the text is unreadable;
// the problems then say why.
func (p *Problems) Parse(f *File, data []byte, format Format) *Node {
	switch p.checkText(f, data).Code {
	case TooLarge, TooManySigns, UTF16, NUL:
		return nil
	}
	before := p.Count()
	document, second, read := p.decoded(f, format.Keys)
	if document == nil || len(document.Content) == 0 {
		if p.Count() == before {
			p.Report(f, 1, 1, finding.Failed(Empty, finding.Values{"example": format.Example}))
		}
		return nil
	}
	if second != nil {
		line, column := f.clamp(second.Line, second.Column)
		p.Report(f, line, column, finding.Failed(SecondDocument, finding.Values{"example": format.Example}))
	}
	return p.rootOf(f, document, read, format)
}

// IsText reports whether the bytes are a text that is not too large. If not, it
// reports a problem.
func (p *Problems) IsText(f *File, data []byte) bool { return p.checkText(f, data).Code == "" }

// checkText reports a problem if the bytes are not text, or too large.
func (p *Problems) checkText(f *File, data []byte) finding.Finding {
	line, column := 0, 0
	why := finding.Failed(TooLarge, finding.Values{"most": source.MostBytes >> 20})
	switch {
	case len(data) > source.MostBytes:
	case signs(data) > mostSigns:
		line, column, why = 1, 1, finding.Failed(TooManySigns, nil)
	default:
		line, column, why = checkCharacters(data)
	}
	if why.Code != "" {
		p.Report(f, line, column, why)
	}
	return why
}

// mostSigns limits the memory of a text once it is read. Ten thousand fasteners
// and an outline of a hundred thousand points have fewer.
const mostSigns = 480_000

// signs counts the characters that separate entries, each of which takes some
// 600 bytes. A colon counts as three: it can start a map, a key and a value.
func signs(data []byte) (count int) {
	for i, b := range data {
		switch b {
		case ':':
			count += 3
		case ',', '[', '{', '?', '*', '\n':
			count++
		case '-':
			if i+1 < len(data) && (data[i+1] == ' ' || data[i+1] == '\n') { // not part of a number
				count++
			}
		}
	}
	return count
}

func (p *Problems) rootOf(f *File, document *yaml.Node, read copied, format Format) *Node {
	root := newConverter(p, f, read, format.Keys).convert(document.Content[0])
	root.Lost = read.lost
	if root.Shape != Map && format.Example == "" {
		p.Fail(root, NoKeys, finding.Values{"found": root.Called()})
		return nil
	}
	if root.size > 100_000+10*len(f.Text) {
		p.Fail(root, AliasesGrow, nil)
		return nil
	}
	return root
}

// decode parses the first document and looks for a second one.
func decode(text []byte) (document, second *yaml.Node, err error) {
	defer func() {
		if v := recover(); v != nil { // a bug in the parser must not end the program
			err = fmt.Errorf("%v", v)
		}
	}()
	decoder := yaml.NewDecoder(bytes.NewReader(text))
	var documents [2]*yaml.Node
	for i := range documents {
		var one yaml.Node
		if err := decoder.Decode(&one); errors.Is(err, io.EOF) {
			break
		} else if err != nil {
			return nil, nil, err
		}
		documents[i] = &one
	}
	return documents[0], documents[1], nil
}
