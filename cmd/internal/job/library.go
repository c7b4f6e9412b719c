package job

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"time"

	"drawdown/patterns/problem"
	"drawdown/sequence/plan"
)

// IsFolder reports whether a name is that of a folder.
func IsFolder(name string) bool {
	info, err := os.Stat(name)
	return err == nil && info.IsDir()
}

// FilesIn lists the files of a folder and its subfolders with a YAML extension,
// by name. Hidden folders are left out.
func FilesIn(folder string) (names []string, err error) {
	err = filepath.WalkDir(folder, func(path string, e fs.DirEntry, err error) error {
		ending := strings.ToLower(filepath.Ext(path))
		switch {
		case err != nil:
			return err
		case e.IsDir() && path != folder && strings.HasPrefix(e.Name(), "."):
			return fs.SkipDir
		case !e.IsDir() && (ending == ".yaml" || ending == ".yml"):
			names = append(names, path)
		}
		return nil
	})
	return names, err
}

// PatternsIn lists the pattern files of a folder and its subfolders.
func PatternsIn(folder string) ([]string, error) {
	names, err := FilesIn(folder)
	return slices.DeleteFunc(names, func(name string) bool { return KindOf(name) != PatternFile }), err
}

// Shelved is a pattern file of a shop's folder.
type Shelved struct {
	File     string
	Plan     plan.Plan    // without fasteners if the file is not sound
	Problems problem.List // errors and warnings
	Prints   int          // that are out of date
	Failed   error        // the file could not be read
}

// Search is what to look for in a folder; empty fields match all.
type Search struct {
	Machine string   // a part of its name
	Bolts   string   // how many fasteners, such as 14, or a thread, such as M10
	Texts   []string // each in the file's name, the title, the machine or a kind
}

// Library reads the pattern files of a folder that match, and looks for prints
// of them in another.
func Library(folder, prints string, search Search, today time.Time) ([]Shelved, error) {
	names, err := PatternsIn(folder)
	if err != nil {
		return nil, err
	}
	all := make([]Shelved, len(names))
	Together(len(names), 2, func(k int) {
		one := Shelved{File: names[k]}
		one.Plan, one.Problems, one.Failed = Load(names[k], nil, "", "")
		one.Problems = slices.Concat(DatedAhead(names[k], one.Plan.Heading, today), one.Problems).WithoutNotes()
		all[k] = one
	}, func(int) {})
	apart := TellApart(names, all)
	for k := range all {
		if all[k].Failed != nil || all[k].Problems.Stops() {
			continue
		}
		heading := all[k].Plan.Heading
		heading.Name = apart[k]
		for _, stale := range StalePrints(names[k], prints, heading) {
			if n, ok := stale.Found.Values["n"].(int); ok {
				all[k].Prints += n
			}
		}
	}
	return slices.DeleteFunc(all, func(one Shelved) bool { return !search.matches(one) }), nil
}

// TellApart returns the stems of the output files. Where stems are alike, on a
// disk that ignores case, the folders of the files come first: p4/head.yaml
// becomes p4-head.
func TellApart(files []string, of []Shelved) []string {
	stems := make([]string, len(files))
	for k := range files {
		stems[k] = of[k].Plan.Name
	}
	above := slices.Clone(files)
	for range 8 { // folders
		count := map[string]int{}
		for _, stem := range stems {
			count[strings.ToLower(stem)]++
		}
		more := false
		for k, stem := range stems {
			if stem == "" || count[strings.ToLower(stem)] < 2 {
				continue
			}
			above[k] = filepath.Dir(above[k])
			if name := stemOf(filepath.Base(above[k])); name != "" {
				stems[k], more = name+"-"+stem, true
			}
		}
		if !more {
			break
		}
	}
	return stems
}

// stemOf returns the name of a folder for the name of a file.
func stemOf(folder string) string {
	return strings.Trim(strings.Map(func(r rune) rune {
		if r < ' ' || strings.ContainsRune(`<>:"/\|?*. `, r) {
			return '-'
		}
		return r
	}, folder), "-")
}

func (s Search) matches(one Shelved) bool {
	has := func(text, part string) bool { return strings.Contains(strings.ToLower(text), strings.ToLower(part)) }
	p := one.Plan
	if !has(p.Machine, s.Machine) || s.Bolts != "" && !s.bolts(p) {
		return false
	}
	words := []string{filepath.ToSlash(one.File), p.Title, p.Machine}
	for _, k := range p.Kinds {
		words = append(words, k.Name)
	}
	for _, text := range s.Texts {
		if !has(strings.Join(words, "\n"), text) {
			return false
		}
	}
	return true
}

func (s Search) bolts(p plan.Plan) bool {
	if n, err := strconv.Atoi(s.Bolts); err == nil {
		return len(p.Joint.Fasteners) == n
	}
	asked := strings.ReplaceAll(strings.ToLower(s.Bolts), "x", "×")
	return slices.ContainsFunc(p.Kinds, func(k plan.Kind) bool {
		if k.Thread == nil {
			return false
		}
		name := strings.ToLower(k.Thread.Name)
		return name == asked || strings.HasPrefix(name, asked) && !strings.ContainsAny(name[len(asked):len(asked)+1], "0123456789.")
	})
}
