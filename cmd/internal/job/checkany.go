package job

import (
	"io"
	"regexp"
	"slices"
	"time"

	"drawdown/patterns"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
	"drawdown/render/words"
)

// FileKind is what a file describes.
type FileKind string

const (
	PatternFile FileKind = "pattern"
	MachineFile FileKind = "machine"
	SurveyFile  FileKind = "survey"
	WrenchFile  FileKind = "wrenches" // a shop's list of its wrenches
	OtherFile   FileKind = "other"    // none of these
)

// kindKeys lists keys that only files of one kind have.
var kindKeys = []struct {
	kind FileKind
	key  *regexp.Regexp
}{
	{MachineFile, regexp.MustCompile(`(?m)^strip\s*:`)},
	{SurveyFile, regexp.MustCompile(`(?m)^(measured|holes)\s*:`)},
	{WrenchFile, regexp.MustCompile(`(?m)^wrenches\s*:`)},
	{PatternFile, regexp.MustCompile(`(?m)^(fasteners|extends|kinds|tighten)\s*:`)},
	{WrenchFile, regexp.MustCompile(`(?m)^lubricants\s*:`)}, // of the shop alone
	{PatternFile, regexp.MustCompile(`(?m)^drawdown\s*:`)},
}

// KindOf determines from its keys what a file describes, so that this is known
// of a broken file, too. A missing file counts as a pattern.
func KindOf(name string) FileKind {
	switch {
	case slices.Contains(patterns.Builtin(), name):
		return PatternFile
	case slices.Contains(patterns.Machines.Names(), name):
		return MachineFile
	case slices.Contains(patterns.Surveys.Names(), name):
		return SurveyFile
	}
	from, err := source.Open(name, nil, source.MostBytes)
	if err != nil {
		return PatternFile
	}
	return KindOfText(from.Data)
}

// KindOfText determines from its keys what a text describes.
func KindOfText(text []byte) FileKind {
	for _, k := range kindKeys {
		if k.key.Match(text) {
			return k.kind
		}
	}
	return OtherFile
}

// Check reads a file of any kind and all that it names, looks for old prints of
// it in a folder, and compares its date with today.
func Check(name string, kind FileKind, folder string, stdin io.Reader, w *words.Catalogue, today time.Time) (problem.List, error) {
	switch kind {
	case MachineFile:
		o, problems, err := checkMachine(name, stdin)
		return slices.Concat(DatedAhead(name, o.Heading, today), problems, StalePrints(name, folder, o.Heading)), err
	case SurveyFile:
		answer, problems, err := Survey(name, stdin, w)
		return append(problems, answer.Warnings...), err
	case WrenchFile:
		_, problems, err := Wrenches(name, stdin, today)
		return problems, err
	}
	made, problems, err := Load(name, stdin, "", "")
	return slices.Concat(DatedAhead(name, made.Heading, today), problems, StalePrints(name, folder, made.Heading)), err
}
