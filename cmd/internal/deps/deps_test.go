package deps

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// root is the project's folder, relative to this one.
const root = "../../.."

func TestArrows(t *testing.T) {
	sources := parse(t)
	if len(sources) < len(arrows) {
		t.Fatalf("only %d Go files found below %s", len(sources), root)
	}
	for _, fault := range faults(sources) {
		t.Error(fault)
	}
}

// TestEachRuleFails adds one bad file at a time to the present project.
func TestEachRuleFails(t *testing.T) {
	present := parse(t)
	for _, bad := range []struct {
		file, imports, want string
	}{
		{"geometry/a.go", "drawdown/sequence", "geometry stands below all else"},
		{"geometry/unit/a.go", "drawdown/geometry", "no such arrow"},
		{"geometry/thread/a.go", "time", "no clock"},
		{"geometry/a.go", "os", "no clock and no disk"},
		{"sequence/a.go", "time", "no clock"},
		{"sequence/tension/a.go", "os/exec", "no clock and no disk"},
		{"sequence/plan/a.go", "drawdown/patterns", "no file format"},
		{"sequence/tension/a.go", "drawdown/sequence/plan", "no such arrow"},
		{"sequence/a.go", "gopkg.in/yaml.v3", "only patterns/edit, patterns/nodes, patterns/writing, sequence/interaction/checktest may use it"},
		{"patterns/a.go", "drawdown/render/font", "no paper"},
		{"patterns/problem/a.go", "drawdown/patterns", "no such arrow"},
		{"render/a.go", "drawdown/patterns", "not from the file"},
		{"render/sheet/a.go", "drawdown/patterns/problem", "not from the file"},
		{"render/sheet/a.go", "github.com/fogleman/gg", "only render/png, geometry/trace/dirty may use it"},
		{"render/font/a.go", "github.com/golang/freetype/truetype", "only render/png may use it"},
		{"render/svg/a.go", "github.com/jung-kurt/gofpdf", "only render/pdf may use it"},
		{"render/a.go", "github.com/spf13/pflag", "only cmd may use it"},
		{"render/png/a.go", "drawdown/render/diagram", "sees no bolt"},
		{"render/pdf/a.go", "drawdown/render/sheet", "sees no bolt"},
		{"render/svg/a.go", "drawdown/sequence/plan", "sees no bolt"},
		{"render/svg/a.go", "drawdown/geometry/unit", "sees no bolt"},
		{"render/scene/a.go", "drawdown/geometry", "a scene knows no bolt"},
		{"render/font/a.go", "drawdown/geometry", "type knows no bolt"},
		{"cmd/internal/cli/a.go", "drawdown/render/pdf", "no such arrow"},
		{"cmd/drawdown/a.go", "drawdown/patterns", "no such arrow"},
		{"render/png/a.go", "C", "without cgo"},
		{"render/png/a_test.go", "C", "without cgo"},
		{"geometry/a.go", "pgregory.net/rapid", "only tests"},
		{"render/png/a_test.go", "example.org/new", "not placed"},
		{"render/diagram/a.go", "drawdown/geometry/testkit", "no such arrow"},
		{"geometry/news/a.go", "math", "package geometry/news is not placed"},
	} {
		folder, name := filepath.ToSlash(filepath.Dir(bad.file)), filepath.Base(bad.file)
		found := newFaults(present, append(slices.Clone(present), source{folder, name, []string{bad.imports}}))
		if len(found) != 1 || !strings.Contains(found[0], bad.want) {
			t.Errorf("%s with import %q: faults %q, want one with %q", bad.file, bad.imports, found, bad.want)
		}
	}
}

// newFaults omits what TestArrows already reports.
func newFaults(before, after []source) []string {
	old := faults(before)
	return slices.DeleteFunc(faults(after), func(f string) bool { return slices.Contains(old, f) })
}

// A deleted package must be removed from the list.
func TestGonePackageFails(t *testing.T) {
	present := parse(t)
	without := slices.DeleteFunc(slices.Clone(present), func(s source) bool { return s.folder == "render/svg" })
	found := newFaults(present, without)
	if len(found) != 1 || !strings.Contains(found[0], "package render/svg is listed in arrows, but there is none") {
		t.Errorf("faults %q, want one about render/svg", found)
	}
}

func TestArrowsLeadSomewhere(t *testing.T) {
	for _, folder := range slices.Sorted(maps.Keys(arrows)) {
		for _, to := range arrows[folder] {
			if _, ok := arrows[to]; !ok {
				t.Errorf("arrows[%q] names %q, which is not a package of the list", folder, to)
			}
			if why := neverFault(folder, module+to); why != "" && !isKit(folder) {
				t.Errorf("arrows[%q] allows %q: %s", folder, to, why)
			}
		}
	}
}

// parse reads the imports of every Go file of the project, regardless of system
// and build tags.
func parse(t *testing.T) []source {
	t.Helper()
	var sources []source
	err := filepath.WalkDir(root, func(path string, entry fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		if entry.IsDir() {
			if path != root && isLeftOut(path, entry.Name()) {
				return fs.SkipDir
			}
			return nil
		}
		if filepath.Ext(path) != ".go" {
			return nil
		}
		sources = append(sources, parseFile(t, path))
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	return sources
}

// isLeftOut follows the go command, which ignores such folders and those of
// other modules.
func isLeftOut(path, name string) bool {
	if name == "testdata" || strings.HasPrefix(name, ".") || strings.HasPrefix(name, "_") {
		return true
	}
	_, err := os.Stat(filepath.Join(path, "go.mod"))
	return err == nil
}

func parseFile(t *testing.T, path string) source {
	t.Helper()
	file, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.ImportsOnly)
	if err != nil {
		t.Fatal(err)
	}
	folder, err := filepath.Rel(root, filepath.Dir(path))
	if err != nil {
		t.Fatal(err)
	}
	s := source{folder: filepath.ToSlash(folder), name: filepath.Base(path)}
	for _, i := range file.Imports {
		name, err := strconv.Unquote(i.Path.Value)
		if err != nil {
			t.Fatal(err)
		}
		s.imports = append(s.imports, name)
	}
	return s
}

// A run is given the time of each entry and never asks for it.
func TestRunHasNoClock(t *testing.T) {
	clocks := []string{"Now", "Since", "Until", "After", "AfterFunc", "Tick", "NewTimer", "NewTicker", "Sleep"}
	r, ok := rooms(t)["sequence/run"]
	if !ok {
		t.Fatal("there is no room sequence/run")
	}
	for _, file := range r.files {
		ast.Inspect(file, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok && slices.Contains(clocks, s.Sel.Name) {
				if of, ok := s.X.(*ast.Ident); ok && of.Name == "time" {
					t.Errorf("%s: time.%s is a clock", r.set.Position(s.Pos()), s.Sel.Name)
				}
			}
			return true
		})
	}
}
