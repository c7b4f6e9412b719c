package edit

import (
	"slices"
	"strconv"

	"gopkg.in/yaml.v3"
)

// Value is the content of a part of a file: a text, a list or a map.
type Value struct {
	Kind Kind
	Text string // of a scalar, as it reads
	Keys []string
	Of   []Value // of a list, or of the keys
}

// Kind is the shape of a value.
type Kind uint8

// The shapes. Nothing is a key without a value.
const (
	Nothing Kind = iota
	Scalar
	List
	Map
)

// Text returns the value of a text.
func Text(s string) Value { return Value{Kind: Scalar, Text: s} }

// Texts returns a list of texts.
func Texts(all []string) Value {
	v := Value{Kind: List}
	for _, s := range all {
		v.Of = append(v.Of, Text(s))
	}
	return v
}

// With returns a map with one more key.
func (v Value) With(key string, of Value) Value {
	return Value{Kind: Map, Keys: append(slices.Clone(v.Keys), key), Of: append(slices.Clone(v.Of), of)}
}

// UnmarshalJSON reads a value with the keys in their order.
func (v *Value) UnmarshalJSON(data []byte) error {
	var document yaml.Node // JSON is YAML, and its nodes keep the order
	if err := yaml.Unmarshal(data, &document); err != nil {
		return err
	}
	*v = Value{}
	if len(document.Content) > 0 {
		*v = valueOf(document.Content[0], map[*yaml.Node]bool{})
	}
	return nil
}

// valueOf leaves out an alias inside its own anchor.
func valueOf(y *yaml.Node, inside map[*yaml.Node]bool) Value {
	if y.Kind == yaml.AliasNode {
		y = y.Alias
	}
	if inside[y] {
		return Value{}
	}
	inside[y] = true
	defer delete(inside, y)
	switch y.Kind {
	case yaml.SequenceNode:
		v := Value{Kind: List}
		for _, item := range y.Content {
			v.Of = append(v.Of, valueOf(item, inside))
		}
		return v
	case yaml.MappingNode:
		v := Value{Kind: Map}
		for i := 0; i+1 < len(y.Content); i += 2 {
			v.Keys, v.Of = append(v.Keys, y.Content[i].Value), append(v.Of, valueOf(y.Content[i+1], inside))
		}
		return v
	}
	if y.ShortTag() == "!!null" {
		return Value{}
	}
	return Text(y.Value)
}

func (v Value) equal(other Value) bool {
	return v.Kind == other.Kind && v.Text == other.Text && slices.Equal(v.Keys, other.Keys) && slices.EqualFunc(v.Of, other.Of, Value.equal)
}

func (v Value) copied() Value {
	v.Keys, v.Of = slices.Clone(v.Keys), slices.Clone(v.Of)
	for i := range v.Of {
		v.Of[i] = v.Of[i].copied()
	}
	return v
}

// Path leads to a part of a file: keys, and numbers of items from 0.
type Path []string

// Then returns a path that leads further.
func (p Path) Then(more ...string) Path { return append(slices.Clone(p), more...) }

// Item returns the path of an item of a list.
func (p Path) Item(i int) Path { return p.Then(strconv.Itoa(i)) }

func (p Path) last() string { return p[len(p)-1] }

// index returns the place of a key or a number among the parts of a value.
func (v Value) index(step string) int {
	if v.Kind == Map {
		return slices.Index(v.Keys, step)
	}
	if i, err := strconv.Atoi(step); err == nil && v.Kind == List && i >= 0 && i < len(v.Of) {
		return i
	}
	return -1
}

// At returns the part at a path; nil if there is none.
func (v *Value) At(path Path) *Value {
	for _, step := range path {
		i := v.index(step)
		if i < 0 {
			return nil
		}
		v = &v.Of[i]
	}
	return v
}
