// Package editpage is the page on which a pattern is edited: the file and the
// part side by side, and a form for each part of the file. What changes with
// each edit is drawn as one piece, which the script puts into the page. Every
// field carries the operation that it makes; the script only fills in what was
// typed.
package editpage

import (
	"encoding/json"
	"io"
	"strings"

	"drawdown/render/page"
)

// View is the page of a pattern at /patterns/NAME/edit.
type View struct {
	page.Frame
	Name    string
	Title   string
	Builtin bool   // it is saved under another name
	File    string // its text
	Base    string // the fingerprint of the saved text
	Draft   Draft
}

// Draft is what changes with each edit.
type Draft struct {
	page.Frame
	Title     string
	Joint     page.Joint // empty while the file has errors
	Turn      string     // how a way on the picture becomes one in the file: 1 1, or -1 1 where it is mirrored
	Unit      string     // of the coordinates
	Problems  []Problem
	Fasteners []Fastener
	Kinds     []string // to choose from
	Sections  []Section
	Ways      []Way
}

// Problem is what the check finds, with its place in the text and on the part.
type Problem struct {
	Line, Column int
	Says         string
	Error        bool
	IDs          []string
}

// Fastener is a fastener of the table. Its coordinates are in the file's units.
type Fastener struct {
	ID, X, Y, Kind, Cast string
}

// Way is the order that a way gives, for comparison.
type Way struct{ Name, Order string }

// Section is a part of the file: its kinds, its stages.
type Section struct {
	Key    string
	Groups []Group
	Adds   []Add
}

// Counted reports whether the groups are things of one sort.
func (s Section) Counted() bool { return len(s.Groups) > 0 && s.Groups[0].Name != "" }

// Group is a kind, a stage, a caution.
type Group struct {
	Name   string
	Fields []Field
	Drop   *Op
	Up     *Op
	Down   *Op
	Single *Op // lists the fasteners of a grid one by one
}

// Field is a value. With Set it is given another, and with Drop none.
type Field struct {
	Key   string // of the words
	Value string
	Set   Op
	Drop  *Op
}

// Wide reports whether the field needs the room of a sentence.
func (f Field) Wide() bool {
	const short = 12
	return len(f.Value) > short
}

// Add is a button that adds something.
type Add struct {
	Key string
	Op  Op
}

// Op is an operation, as the route for edits takes it.
type Op map[string]any

// String writes it for the script.
func (o Op) String() string {
	text, err := json.Marshal(o)
	if err != nil {
		panic(err) // it has texts, numbers and lists only
	}
	return string(text)
}

// Write writes the page.
func Write(w io.Writer, v View) error {
	v.Draft.Frame = v.Frame
	return page.Write(w, "edit", v)
}

// WriteDraft writes what changes with each edit.
func WriteDraft(w io.Writer, d Draft) error { return page.Write(w, "draft", d) }

// WritePicture writes the part.
func WritePicture(w io.Writer, d Draft) error { return page.Write(w, "picture", d) }

// Word returns the word for a key of the file, with the axis of a coordinate.
func (f Draft) Word(key string) string {
	word, axis, _ := strings.Cut(key, " ")
	if axis != "x" && axis != "y" {
		word, axis = key, ""
	}
	if known := f.Text().Edit.Keys[word]; known != "" {
		word = known
	}
	return strings.TrimSpace(word + " " + axis)
}

// FieldView is a field with its word.
type FieldView struct {
	Field
	Label string
}

// Labelled returns the fields of a group with their words.
func (f Draft) Labelled(g Group) (all []FieldView) {
	for _, one := range g.Fields {
		all = append(all, FieldView{one, f.Word(one.Key)})
	}
	return all
}

// Part returns the part with the marks of what has problems.
func (f Draft) Part() page.Part {
	part := page.AtRest(f.Frame, f.Joint)
	part.Still, part.Label = false, f.Text().Edit.Picture
	troubled := map[string]bool{}
	for _, p := range f.Problems {
		for _, id := range p.IDs {
			troubled[id] = true
		}
	}
	for i, m := range part.Marks {
		part.Marks[i].Label = m.Number + " · " + m.ID
		if troubled[m.ID] {
			part.Marks[i].State = page.MarkTrouble
		}
	}
	return part
}

// Rename, Place and the others are the operations of a fastener.
func (f Fastener) Rename() Op  { return f.op("rename") }
func (f Fastener) Place() Op   { return f.op("move") }
func (f Fastener) SetKind() Op { return f.op("kind") }
func (f Fastener) SetCast() Op { return f.op("cast") }
func (f Fastener) Remove() Op  { return f.op("remove") }

func (f Fastener) op(do string) Op { return Op{"do": do, "ids": []string{f.ID}} }
