// Package edit changes single parts of a pattern file. Each change is the
// smallest one of the text: comments, blank lines, alignment, order and notation
// of everything else stay byte for byte. Positions come from the parser, and the
// bytes of the file are spliced; nothing is encoded anew. Each new text is read
// again and must hold what the old one held, but for the part that was to
// change.
//
// The page, the tests and whoever else edits a file use the same operations. The
// package may import meaning, source and the joint.
package edit

import (
	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/patterns/source"
)

// Verb names an operation.
type Verb string

// What can be done with fasteners, by their ids, and with any part of the file,
// by its path.
const (
	Move    Verb = "move"    // the fastener to a place: At, or X and Y as typed
	Nudge   Verb = "nudge"   // fasteners by a distance
	Shift   Verb = "shift"   // the whole grid, row, circle or rectangle of a fastener, by a distance
	Single  Verb = "single"  // lists the fasteners of a grid, row, circle or rectangle one by one
	Add     Verb = "add"     // a fastener at a place, of the kind in Text
	Remove  Verb = "remove"  // fasteners
	Rename  Verb = "rename"  // a fastener, to Text
	SetKind Verb = "kind"    // gives fasteners the kind in Text
	Cast    Verb = "cast"    // gives a fastener the number on the part in Text; empty for none
	Align   Verb = "align"   // fasteners with the first one, in the direction of Text: x or y
	Regular Verb = "regular" // moves fasteners to the grid, row, circle or rectangle that they nearly form
	Mirror  Verb = "mirror"  // adds mirror images of fasteners, across the line x or y = 0 by Text
	Order   Verb = "order"   // states the maker's own order, by all ids
	Set     Verb = "set"     // gives a part a value
	Drop    Verb = "drop"    // removes a key or an item
	Insert  Verb = "insert"  // adds an item before the one with the number To; by default behind the last
	Reorder Verb = "reorder" // moves an item from one number to another
)

// Operation is one edit, as data. Places are in millimetres, as the file draws
// the part.
type Operation struct {
	Do    Verb        `json:"do"`
	IDs   []string    `json:"ids,omitempty"` // of fasteners
	At    *[2]float64 `json:"at,omitempty"`
	By    *[2]float64 `json:"by,omitempty"`
	X     string      `json:"x,omitempty"` // a coordinate as a person types it; empty: unchanged
	Y     string      `json:"y,omitempty"`
	Text  string      `json:"text,omitempty"`
	Path  Path        `json:"path,omitempty"`
	Value *Value      `json:"value,omitempty"`
	From  *int        `json:"from,omitempty"`
	To    *int        `json:"to,omitempty"`
}

// Apply makes an operation on the text of a pattern file and returns the change.
// An error states what does not fit; then nothing is changed.
//
// A fastener of a grid, row, circle or rectangle that moves alone, or changes its
// id, kind or number, is first listed singly with all others of its entry. One
// that is removed goes into the omit of its entry. A fastener of the file that
// this one extends is changed by change and omit.
func Apply(from source.Source, op Operation) (Change, error) {
	e, err := newEditor(from.Data)
	if err != nil {
		return nil, err
	}
	p := &pattern{editor: e, from: from}
	if err := p.do(op); err != nil {
		return nil, err
	}
	return e.change, nil
}

// pattern is a pattern file that is edited.
type pattern struct {
	*editor
	from  source.Source
	joint *geometry.Joint // as read before the first change; nil until asked for
}

func (p *pattern) do(op Operation) error {
	one, known := operations[op.Do]
	if !known {
		return finding.Failed(NoOperation, finding.Values{"written": string(op.Do)})
	}
	for key, given := range map[string]bool{
		"ids": len(op.IDs) > 0, "at": op.At != nil, "by": op.By != nil, "text": op.Text != "",
		"path": len(op.Path) > 0, "value": op.Value != nil, "from": op.From != nil, "to": op.To != nil,
	} {
		if needs(one.needs, key) && !given {
			return finding.Failed(LacksValue, finding.Values{"do": string(op.Do), "key": key})
		}
	}
	return one.do(p, op)
}

func needs(all []string, key string) bool {
	for _, one := range all {
		if one == key {
			return true
		}
	}
	return false
}

type operation struct {
	do    func(p *pattern, op Operation) error
	needs []string
}

var operations map[Verb]operation

func init() { // they call each other
	operations = map[Verb]operation{
		Move:    {(*pattern).moveTo, []string{"ids"}},
		Nudge:   {(*pattern).nudge, []string{"ids", "by"}},
		Shift:   {(*pattern).shift, []string{"ids", "by"}},
		Single:  {func(p *pattern, op Operation) error { return p.single(op.IDs[0]) }, []string{"ids"}},
		Add:     {(*pattern).add, []string{"at"}},
		Remove:  {(*pattern).removeAll, []string{"ids"}},
		Rename:  {(*pattern).rename, []string{"ids", "text"}},
		SetKind: {(*pattern).kind, []string{"ids", "text"}},
		Cast:    {(*pattern).cast, []string{"ids"}},
		Align:   {(*pattern).align, []string{"ids", "text"}},
		Regular: {(*pattern).regular, []string{"ids"}},
		Mirror:  {(*pattern).mirror, []string{"ids", "text"}},
		Order:   {func(p *pattern, op Operation) error { return p.set(Path{"tighten", "order"}, Texts(op.IDs)) }, []string{"ids"}},
		Set:     {func(p *pattern, op Operation) error { return p.set(op.Path, *op.Value) }, []string{"path", "value"}},
		Drop:    {func(p *pattern, op Operation) error { return p.drop(op.Path) }, []string{"path"}},
		Insert:  {(*pattern).insertItem, []string{"path", "value"}},
		Reorder: {func(p *pattern, op Operation) error { return p.move(op.Path, *op.From, *op.To) }, []string{"path", "from", "to"}},
	}
}

func pointOf(xy [2]float64) geometry.Point { return geometry.Point{X: xy[0], Y: xy[1]} }

func (p *pattern) insertItem(op Operation) error {
	i := 0
	if list := p.content.At(op.Path); list != nil {
		i = len(list.Of)
	}
	if op.To != nil {
		i = *op.To
	}
	return p.insert(op.Path, i, *op.Value)
}
