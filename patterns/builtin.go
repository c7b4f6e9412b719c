package patterns

import (
	"embed"
	"slices"
	"strings"
)

//go:embed *.yaml
var builtin embed.FS

// Builtin lists the names of the built-in patterns, sorted.
func Builtin() []string {
	entries, err := builtin.ReadDir(".")
	if err != nil {
		panic("the embedded patterns are broken: " + err.Error())
	}
	names := make([]string, len(entries))
	for i, e := range entries {
		names[i] = strings.TrimSuffix(e.Name(), ".yaml")
	}
	slices.Sort(names)
	return names
}

// BuiltinText gives the file of a built-in pattern, byte for byte with line
// feeds, whatever the checkout made of them.
func BuiltinText(name string) ([]byte, bool) {
	if !slices.Contains(Builtin(), name) {
		return nil, false
	}
	data, err := builtin.ReadFile(name + ".yaml")
	if err != nil {
		return nil, false
	}
	return unixLines(data), true
}
