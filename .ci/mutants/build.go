package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
)

// variable names the change that a test binary makes.
const variable = "DRAWDOWN_MUTANT"

// reader is added to the package; it tells which change is on.
const reader = `package %s

import (
	"os"
	"strconv"
)

var mutantOn = func() int { n, _ := strconv.Atoi(os.Getenv("` + variable + `")); return n }()
`

// listed is what `go list` says of a package.
type listed struct {
	Dir, ImportPath, Export, Name string
	GoFiles                       []string
	TestImports, XTestImports     []string
	DepOnly                       bool
}

// built is a test binary that holds all changes of a package.
type built struct {
	folder, binary string
	flags          []string // that its tests know
	changes        []string
}

// build writes the changed sources and a test binary into work.
func build(folder, work string) (built, error) {
	target, exports, err := list(folder)
	if err != nil {
		return built{}, err
	}
	set := token.NewFileSet()
	var files []*ast.File
	var sources [][]byte
	for _, name := range target.GoFiles {
		source, err := os.ReadFile(filepath.Join(target.Dir, name))
		if err != nil {
			return built{}, err
		}
		file, err := parser.ParseFile(set, name, source, parser.SkipObjectResolution)
		if err != nil {
			return built{}, err
		}
		files, sources = append(files, file), append(sources, source)
	}
	info := &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}
	open := func(path string) (io.ReadCloser, error) { return os.Open(exports[path]) }
	checker := types.Config{Importer: importer.ForCompiler(set, "gc", open)}
	known, err := checker.Check(target.ImportPath, set, files, info)
	if err != nil {
		return built{}, err
	}
	replace := map[string]string{}
	var changes []string
	put := func(name, text string) error {
		path := filepath.Join(work, name)
		replace[filepath.Join(target.Dir, name)] = path
		return os.WriteFile(path, []byte(text), 0o600)
	}
	for i, file := range files {
		w := &writer{set: set, source: sources[i], info: info, own: known, imports: imported(file), changes: changes}
		if err := put(target.GoFiles[i], w.file(file)); err != nil {
			return built{}, err
		}
		changes = w.changes
	}
	if err := put("mutant_on.go", fmt.Sprintf(reader, target.Name)); err != nil {
		return built{}, err
	}
	b := built{folder: folder, binary: filepath.Join(work, "tests"), changes: changes}
	if slices.Contains(slices.Concat(target.TestImports, target.XTestImports), "pgregory.net/rapid") {
		b.flags = []string{"-rapid.nofailfile"} // else it writes what failed into testdata
	}
	return b, compile(b, work, replace)
}

func compile(b built, work string, replace map[string]string) error {
	overlay, err := json.Marshal(map[string]any{"Replace": replace})
	if err != nil {
		return err
	}
	list := filepath.Join(work, "overlay.json")
	if err := os.WriteFile(list, overlay, 0o600); err != nil {
		return err
	}
	said, err := exec.Command("go", "test", "-c", "-vet=off", "-overlay", list, "-o", b.binary, b.folder).CombinedOutput()
	if err != nil {
		return fmt.Errorf("%w\n%s", err, said)
	}
	return nil
}

// list asks for the package and for the compiled packages it imports.
func list(folder string) (listed, map[string]string, error) {
	said, err := exec.Command("go", "list", "-export", "-deps", "-json=Dir,ImportPath,Export,Name,GoFiles,TestImports,XTestImports,DepOnly", folder).Output()
	if err != nil {
		return listed{}, nil, err
	}
	var target listed
	exports := map[string]string{}
	for decoder := json.NewDecoder(bytes.NewReader(said)); ; {
		var p listed
		if err := decoder.Decode(&p); err == io.EOF {
			return target, exports, nil
		} else if err != nil {
			return listed{}, nil, err
		}
		exports[p.ImportPath] = p.Export
		if !p.DepOnly {
			target = p
		}
	}
}

// imported lists the paths that a file imports, so that a type can be named.
func imported(file *ast.File) map[string]bool {
	paths := map[string]bool{}
	for _, i := range file.Imports {
		if i.Name == nil {
			paths[i.Path.Value[1:len(i.Path.Value)-1]] = true
		}
	}
	return paths
}
