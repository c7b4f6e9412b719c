package cli

import (
	"bytes"
	"fmt"
	"slices"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

// checkedFile is one of several files and its result.
type checkedFile struct {
	File     string       `json:"file"`
	Kind     job.FileKind `json:"kind"`
	Status   Status       `json:"status"` // like the exit status for it alone
	Sound    bool         `json:"sound"`
	Problems problem.List `json:"problems"`
	Error    string       `json:"error,omitempty"` // what went wrong besides the problems
}

// checkedFiles is the output of check --json for several files.
type checkedFiles struct {
	Sound  bool           `json:"sound"` // true if all are
	Status Status         `json:"status"`
	Files  []*checkedFile `json:"files"` // in command-line order, those of a folder by name
}

// areMany reports whether the arguments of check are several files, or a
// folder.
func areMany(args []string) bool {
	return len(args) > 1 || len(args) == 1 && job.IsFolder(args[0])
}

// kindOf returns what a file describes. Standard input is read for this and
// kept for the reader.
func (p *Program) kindOf(name string) job.FileKind {
	if name != "-" {
		return job.KindOf(name)
	}
	from, err := source.Open(name, p.Stdin, source.MostBytes)
	if err != nil {
		return job.PatternFile // reading it again gives the error
	}
	p.Stdin = bytes.NewReader(from.Data)
	return job.KindOfText(from.Data)
}

// checkMany checks files and all files in folders, prints a line for each, and
// returns the worst status.
func (p *Program) checkMany(args []string, folder string, asJSON bool) Status {
	names, err := filesOf(args)
	if err != nil {
		return p.fail(Wrong, err)
	}
	out := checkedFiles{Sound: true}
	for _, name := range names {
		one := p.checkOne(name, folder, slices.Contains(args, name), asJSON)
		out.Files = append(out.Files, one)
		out.Sound, out.Status = out.Sound && one.Sound, max(out.Status, one.Status)
		if !asJSON {
			p.printChecked(one)
		}
	}
	if asJSON {
		return max(out.Status, p.printJSON(out))
	}
	return out.Status
}

// checkOther checks a file that is not a pattern, as one of several.
func (p *Program) checkOther(name, folder string, asJSON bool) Status {
	one := p.checkOne(name, folder, true, asJSON)
	if asJSON {
		return max(one.Status, p.printJSON(one))
	}
	p.printChecked(one)
	return one.Status
}

// filesOf returns the files that the arguments name, without duplicates; for a
// folder those in it and its subfolders with a YAML extension, by name.
func filesOf(args []string) (names []string, err error) {
	for _, arg := range args {
		if !job.IsFolder(arg) {
			names = append(names, arg)
			continue
		}
		inside, err := job.FilesIn(arg)
		if err != nil {
			return nil, err
		}
		before := len(names)
		names = append(names, inside...)
		if len(names) == before {
			return nil, finding.Failed(EmptyFolder, finding.Values{"folder": arg, "allowed": []string{".yaml", ".yml"}})
		}
	}
	var once []string
	for _, name := range names {
		if !slices.Contains(once, name) {
			once = append(once, name)
		}
	}
	return once, nil
}

// checkOne checks one file. A file of unknown kind is read as a pattern if it
// was named, and skipped if its folder was.
func (p *Program) checkOne(name, folder string, named, asJSON bool) *checkedFile {
	one := &checkedFile{File: name, Kind: p.kindOf(name), Sound: true, Problems: problem.List{}}
	if one.Kind == job.OtherFile {
		if !named {
			return one
		}
		one.Kind = job.PatternFile
	}
	problems, err := job.Check(name, one.Kind, folder, p.Stdin, p.words, p.Today)
	if err != nil {
		var why error
		one.Status, why = whyUnread(name, err)
		one.Sound, one.Error = false, p.words.Error(why)
		if !asJSON {
			p.fail(one.Status, why)
		}
		return one
	}
	if problems.Stops() {
		one.Sound, one.Status = false, Wrong
	}
	if !asJSON {
		p.report(problems)
	}
	one.Problems = append(one.Problems, p.said(problems)...)
	return one
}

func (p *Program) printChecked(one *checkedFile) {
	values := finding.Values{"file": one.File, "kind": string(one.Kind), "errors": 0, "warnings": 0, "error": one.Error}
	for _, found := range one.Problems {
		switch found.Severity {
		case problem.Error:
			values["errors"] = values["errors"].(int) + 1
		case problem.Warning:
			values["warnings"] = values["warnings"].(int) + 1
		}
	}
	fmt.Fprintln(p.Stdout, p.words.Say(finding.Noted(report.CheckedFile, values)))
}
