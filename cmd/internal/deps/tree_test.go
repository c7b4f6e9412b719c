package deps

import (
	"go/ast"
	"go/parser"
	"go/token"
	"path"
	"path/filepath"
	"strings"
	"testing"
)

// room is a package: its folder from the project's root, and its files by name,
// except tests.
type room struct {
	folder string
	set    *token.FileSet
	files  map[string]*ast.File
}

// rooms parses every package of the project that has files other than tests.
// Those that only tests import, whose names end in test, are left out.
func rooms(t *testing.T) map[string]room {
	t.Helper()
	all := map[string]room{}
	for _, s := range parse(t) {
		if s.isTest() || strings.HasSuffix(s.folder, "test") {
			continue
		}
		if _, ok := all[s.folder]; !ok {
			all[s.folder] = room{s.folder, token.NewFileSet(), map[string]*ast.File{}}
		}
		r := all[s.folder]
		file, err := parser.ParseFile(r.set, filepath.Join(root, s.folder, s.name), nil, parser.ParseComments)
		if err != nil {
			t.Fatal(err)
		}
		r.files[s.name] = file
	}
	if len(all) < len(arrows)/2 {
		t.Fatalf("only %d packages found below %s", len(all), root)
	}
	return all
}

// roomOf makes a room from one file, for tests of the rules.
func roomOf(t *testing.T, at, text string) room {
	t.Helper()
	r := room{path.Dir(at), token.NewFileSet(), map[string]*ast.File{}}
	file, err := parser.ParseFile(r.set, at, text, parser.ParseComments)
	if err != nil {
		t.Fatal(err)
	}
	r.files[path.Base(at)] = file
	return r
}
