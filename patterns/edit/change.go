package edit

import (
	"bytes"
	"slices"

	"drawdown/geometry/finding"
)

// Splice replaces bytes of a text.
type Splice struct {
	At  int    `json:"at"` // in bytes, of the text before it
	Old string `json:"old"`
	New string `json:"new"`
}

// Change is a list of splices, each made on the result of the one before.
type Change []Splice

// Apply returns a text after the change. If the text is not the one that the
// change was made for, it returns the error TextChanged.
func (c Change) Apply(data []byte) ([]byte, error) {
	for _, s := range c {
		if s.At < 0 || s.At > len(data) || !bytes.HasPrefix(data[s.At:], []byte(s.Old)) {
			return nil, finding.Failed(TextChanged, nil)
		}
		data = slices.Concat(data[:s.At], []byte(s.New), data[s.At+len(s.Old):])
	}
	return data, nil
}

// Inverse returns the change that takes this one back.
func (c Change) Inverse() Change {
	back := make(Change, len(c))
	for i, s := range c {
		back[len(c)-1-i] = Splice{s.At, s.New, s.Old}
	}
	return back
}

// Between returns the smallest single splice that makes one text of another.
func Between(before, after []byte) Change {
	if bytes.Equal(before, after) {
		return nil
	}
	from := 0
	for from < min(len(before), len(after)) && before[from] == after[from] {
		from++
	}
	same := 0
	for same < min(len(before), len(after))-from && before[len(before)-1-same] == after[len(after)-1-same] {
		same++
	}
	return Change{{from, string(before[from : len(before)-same]), string(after[from : len(after)-same])}}
}
