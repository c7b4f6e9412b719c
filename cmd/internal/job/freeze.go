package job

import (
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/sequence/overhaul"
	"drawdown/sequence/plan"
)

// Frozen is the starting point of work at the bench: a pattern or a machine
// file, with every file that it names in the state of that time.
type Frozen struct {
	Name     string // the shop's name for the file: without its extension
	Kind     FileKind
	Builtin  bool
	Files    source.Kept
	Plan     plan.Plan         // of a pattern
	Overhaul overhaul.Overhaul // of a machine file
	Problems problem.List
}

// Sound reports whether work can start.
func (f Frozen) Sound() bool { return !f.Problems.Stops() }

// FreezeBuiltin reads a built-in pattern or machine file by its name.
func FreezeBuiltin(name string) (Frozen, error) {
	open, kind := patterns.Open, PatternFile
	if slices.Contains(patterns.Machines.Names(), name) {
		open, kind = patterns.Machines.Open, MachineFile
	}
	from, err := open(name, strings.NewReader(""))
	if err != nil {
		return Frozen{}, err
	}
	made := frozen(from, kind, name)
	made.Builtin = true
	return made, nil
}

// FreezeIn reads a pattern or a machine file of the shop's folder by its name.
// The file can name nothing outside the folder.
func FreezeIn(shop *os.Root, name string) (Frozen, error) {
	for _, ending := range yamlEndings {
		from, err := patterns.OpenIn(shop, name+ending)
		if err == nil {
			return frozen(from, KindOfText(from.Data), name), nil
		}
		if !errors.Is(err, fs.ErrNotExist) {
			return Frozen{}, err
		}
	}
	return Frozen{}, patterns.Unknown(name)
}

// Thaw reads again what work was started from, in the state of that time.
func Thaw(files source.Kept, name string) (Frozen, error) {
	from, err := source.FromKept(files, name)
	if err != nil {
		return Frozen{}, err
	}
	return frozen(from, KindOfText(from.Data), name), nil
}

// Draft reads a pattern that is being edited.
func Draft(from source.Source, name string) Frozen { return frozen(from, PatternFile, name) }

func frozen(from source.Source, kind FileKind, name string) Frozen {
	from, kept := from.Keeping()
	made := Frozen{Name: name, Kind: kind, Files: kept}
	if kind == MachineFile {
		made.Overhaul, made.Problems = planMachine(from, nil)
	} else {
		made.Plan, made.Problems = planned(from, "", "")
	}
	return made
}

// Joint returns a joint of what work was started from, only with the joint's
// files: the pattern itself, or one of the machine's. If there is none of that
// name joint is nil, and names lists the existing ones.
func (f Frozen) Joint(of string) (joint *Frozen, names []string) {
	if f.Kind != MachineFile {
		if f.Name == of {
			return &f, nil
		}
		return nil, []string{f.Name}
	}
	for _, j := range f.Overhaul.Joints() {
		if j.Name == of {
			return &Frozen{Name: of, Kind: PatternFile, Files: f.Files.Below(of), Plan: *j.Plan, Problems: f.problemsOf(of)}, nil
		}
		names = append(names, j.Name)
	}
	return nil, names
}

// problemsOf returns the problems of one joint of a machine: those in its own
// file.
func (f Frozen) problemsOf(of string) problem.List {
	if made, err := Thaw(f.Files.Below(of), of); err == nil {
		return made.Problems
	}
	return f.Problems
}

// Warnings lists the warnings of the file's check.
func (f Frozen) Warnings() []finding.Finding {
	var list []finding.Finding
	for _, p := range f.Problems.WithoutNotes() {
		if p.Found != nil {
			list = append(list, *p.Found)
		}
	}
	return list
}

// ToAccept lists what someone has to accept by name before the joint is
// tightened: the warnings of the file, and checks that could not be made.
func (f Frozen) ToAccept() []finding.Finding {
	_, open := f.Plan.Covered()
	return append(f.Warnings(), open...)
}

var yamlEndings = []string{".yaml", ".yml"}

// ShopNames lists the pattern and machine files in the shop's folder by name,
// and its lists of wrenches, each sorted. It ignores subfolders.
func ShopNames(shop *os.Root) (parts, wrenches []string, err error) {
	entries, err := fs.ReadDir(shop.FS(), ".")
	for _, e := range entries {
		ending := filepath.Ext(e.Name())
		if !slices.Contains(yamlEndings, ending) || strings.HasPrefix(e.Name(), ".") {
			continue
		}
		from, err := patterns.OpenIn(shop, e.Name())
		if err != nil {
			continue // deleted meanwhile, no file, or a link out of the folder
		}
		switch name := strings.TrimSuffix(e.Name(), ending); KindOfText(from.Data) {
		case PatternFile, MachineFile:
			parts = append(parts, name)
		case WrenchFile:
			wrenches = append(wrenches, e.Name())
		}
	}
	return slices.Compact(parts), wrenches, err
}
