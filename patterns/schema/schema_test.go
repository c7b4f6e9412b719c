package schema

import (
	"bytes"
	"encoding/json"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/txtar"
	"github.com/santhosh-tekuri/jsonschema/v6"
	"gopkg.in/yaml.v3"

	"drawdown/patterns"
	"drawdown/patterns/form"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

// The list has a shape and a hover text for every key that the reader knows.
func TestEveryKeyHasHoverText(t *testing.T) {
	t.Parallel()
	for _, f := range files() {
		for _, o := range f.objects {
			if o.probe == "-" {
				continue
			}
			listed := map[string]bool{}
			for _, k := range o.keys {
				listed[k.name] = true
				if k.hover == "" {
					t.Errorf("%s, %s: %s has no hover text", f.name, o.name, k.name)
				}
			}
			o.keys = nil
			known := f.known(o)
			if len(known) == 0 {
				t.Errorf("%s, %s: the reader does not meet the unknown key in %s", f.name, o.name, o.probe)
			}
			for _, name := range known {
				if !listed[name] {
					t.Errorf("%s, %s: keys.txt lacks %q", f.name, o.name, name)
				}
			}
		}
	}
}

// compiled returns the schemas as an editor reads them.
func compiled(t *testing.T) map[string]*jsonschema.Schema {
	t.Helper()
	all := map[string]*jsonschema.Schema{}
	for _, name := range Names() {
		text, err := Of(name)
		if err != nil {
			t.Fatal(err)
		}
		document, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		c := jsonschema.NewCompiler()
		if err := c.AddResource(name+".json", document); err != nil {
			t.Fatal(err)
		}
		if all[name], err = c.Compile(name + ".json"); err != nil {
			t.Fatal(err)
		}
	}
	return all
}

// given is a YAML file of the tests.
type given struct {
	name string
	data []byte
	from source.Source
}

// everyFile returns the YAML files of the tests and the built-in ones, also
// those in scripts.
func everyFile(t *testing.T) (all []given) {
	t.Helper()
	root := filepath.Join("..", "..")
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		yaml, script := strings.HasSuffix(path, ".yaml"), strings.HasSuffix(path, ".txtar")
		switch {
		case err != nil:
			return err
		case d.Name() == ".git" && d.IsDir():
			return fs.SkipDir
		case d.IsDir() || !yaml && !script:
			return nil
		}
		data, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		if from, err := patterns.Open(path, nil); yaml && err == nil { // what is not a text gives an error
			all = append(all, given{path, data, from})
		}
		if script {
			for _, f := range txtar.Parse(data).Files {
				if strings.HasSuffix(f.Name, ".yaml") {
					all = append(all, given{path + " " + f.Name, f.Data, patterns.FromBytes(f.Name, f.Data)})
				}
			}
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}

// sortOf tells the sort of a file by its keys.
func sortOf(root *yaml.Node) string {
	if root.Kind != yaml.DocumentNode || root.Content[0].Kind != yaml.MappingNode {
		return ""
	}
	has := map[string]bool{}
	for i := 0; i < len(root.Content[0].Content); i += 2 {
		has[root.Content[0].Content[i].Value] = true
	}
	switch {
	case has["strip"]:
		return "machine"
	case has["measured"]:
		return "survey"
	case has["wrenches"]:
		return "wrenches"
	case has["drop"] || has["bolts"] || has["add"] || has["sizes"] || has["crop"] || has["openings"]:
		return "fixes"
	case has["fasteners"] || has["extends"]:
		return "pattern"
	}
	return ""
}

// plain converts a YAML value as an editor does: dates are texts, and every key
// is one.
func plain(n *yaml.Node) any {
	switch n.Kind {
	case yaml.DocumentNode:
		return plain(n.Content[0])
	case yaml.AliasNode:
		return plain(n.Alias)
	case yaml.MappingNode:
		m := map[string]any{}
		for i := 0; i < len(n.Content); i += 2 {
			m[n.Content[i].Value] = plain(n.Content[i+1])
		}
		return m
	case yaml.SequenceNode:
		list := []any{}
		for _, item := range n.Content {
			list = append(list, plain(item))
		}
		return list
	}
	switch n.ShortTag() {
	case "!!null":
		return nil
	case "!!bool":
		return n.Value == "true"
	case "!!int", "!!float":
		if json.Valid([]byte(n.Value)) {
			return json.Number(n.Value)
		}
	}
	return n.Value
}

// Both ways: a file that the reader takes is valid, and one with an unknown key
// is not.
func TestSchemaAgreesWithReader(t *testing.T) {
	t.Parallel()
	schemas := compiled(t)
	valid, invalid := map[string]int{}, 0
	for _, f := range everyFile(t) {
		if strings.Contains(f.name, "alias") {
			continue // aliases that grow or run in a circle
		}
		var root yaml.Node
		if yaml.Unmarshal(f.data, &root) != nil {
			continue
		}
		sort := sortOf(&root)
		if sort == "" {
			continue
		}
		list := read(sort, f.from)
		unknown := slices.ContainsFunc(list, func(p problem.Problem) bool {
			return p.File == f.from.File && p.Found != nil && errors.Is(*p.Found, form.UnknownKey)
		})
		err := schemas[sort].Validate(plain(&root))
		switch {
		case !list.Stops():
			if valid[sort]++; err != nil {
				t.Errorf("%s is read as a %s file, but the schema refuses it: %v", f.name, sort, err)
			}
		case unknown:
			if invalid++; err == nil {
				t.Errorf("%s has an unknown key, but the schema takes it as a %s file", f.name, sort)
			}
		}
	}
	for sort, least := range map[string]int{"pattern": 20, "machine": 1, "survey": 3, "wrenches": 1} {
		if valid[sort] < least {
			t.Errorf("%d sound files of sort %s were compared, want %d or more", valid[sort], sort, least)
		}
	}
	if invalid < 5 {
		t.Errorf("%d files with an unknown key were compared", invalid)
	}
	t.Logf("valid %v, with unknown keys %d", valid, invalid)
}

// What an editor has to underline, beside unknown keys.
func TestSchemaRefuses(t *testing.T) {
	t.Parallel()
	schemas := compiled(t)
	for text, sort := range map[string]string{
		"{title: T, fasteners: [{id: A, at: [0, 0]}]}":                                 "pattern",
		"{drawdown: 2, title: T, fasteners: [{id: A, at: [0, 0]}]}":                    "pattern",
		"{drawdown: 1, fasteners: {id: A, at: [0, 0]}}":                                "pattern",
		"{drawdown: 1, fasteners: [{id: A, at: [0]}]}":                                 "pattern",
		"{drawdown: 1, fasteners: [{grid: {columns: 5, rows: 2}}]}":                    "pattern",
		"{drawdown: 1, units: cm, fasteners: [{id: A, at: [0, 0]}]}":                   "pattern",
		"{drawdown: 1, fasteners: [{id: A, at: [0, 0]}], tighten: {stages: [20 N·m]}}": "pattern",
		"{drawdown: 1, machine: M}":                                                    "machine",
		"{drawdown: 1, title: T, holes: [A, B], measured: [{from: A, outside: 5}]}":    "survey",
		"{drawdown: 1, add: [{pixel: [1, 2, 3]}]}":                                     "fixes",
		"{wrenches: [{name: small}]}":                                                  "wrenches",
	} {
		var root yaml.Node
		if err := yaml.Unmarshal([]byte(text), &root); err != nil {
			t.Fatal(err)
		}
		if schemas[sort].Validate(plain(&root)) == nil {
			t.Errorf("the schema takes %s as a %s file", text, sort)
		}
	}
	if _, err := Of("patern"); !errors.Is(err, NoSchema) {
		t.Errorf("no such schema: %v", err)
	}
}
