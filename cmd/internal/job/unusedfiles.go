package job

import (
	"os"
	"path/filepath"
	"slices"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/patterns/machine"
	"drawdown/patterns/problem"
	"drawdown/sequence/overhaul"
)

// UnusedFiles are patterns of the machine beside its file that no step names.
const UnusedFiles finding.Code = "machine files unused" // files

var (
	machineLine = expression.Lazily(`(?m)^machine:[ \t]*"?([^"#\r\n]*)`)
	titleLine   = expression.Lazily(`(?m)^title:[ \t]*"?([^"\r\n]*)`)
	extendsLine = expression.Lazily(`(?m)^extends:[ \t]*"?([^"#\r\n]*)`)
)

func valueOf(line expression.Lazy, text []byte) string {
	m := line.FindSubmatch(text)
	if m == nil {
		return ""
	}
	return strings.TrimSpace(string(m[1]))
}

// unusedFiles reports patterns in the folder of a machine file that are of this machine,
// and that no step opens. A file that extends another, or that another extends, may be a
// variant, and so may one with the title of a joint.
func unusedFiles(path string, m machine.Machine, o overhaul.Overhaul) problem.List {
	if _, err := os.Stat(path); err != nil || len(m.Strip) == 0 {
		return nil
	}
	const most = 200 // files: more is no folder of one machine
	found, err := filepath.Glob(filepath.Join(filepath.Dir(path), "*.y*ml"))
	if err != nil || len(found) > most {
		return nil
	}
	texts := map[string][]byte{}
	var bases []string
	for _, file := range found {
		data, err := os.ReadFile(file)
		if err != nil || KindOfText(data) != PatternFile {
			continue
		}
		texts[file] = data
		if base := valueOf(extendsLine, data); base != "" {
			bases = append(bases, filepath.Base(base))
		}
	}
	var unused []string
	used := func(base string) bool {
		return slices.ContainsFunc(m.Strip, func(s machine.Step) bool { return s.Pattern != nil && filepath.Base(s.Pattern.File) == base })
	}
	for _, file := range found {
		data, read := texts[file]
		base, title := filepath.Base(file), valueOf(titleLine, data)
		joint := func(j overhaul.Joint) bool { return j.Title == title }
		if !read || title == "" || !strings.EqualFold(valueOf(machineLine, data), m.Machine) || valueOf(extendsLine, data) != "" ||
			slices.Contains(bases, base) || used(base) || slices.ContainsFunc(o.Joints(), joint) {
			continue
		}
		unused = append(unused, base)
	}
	if len(unused) == 0 || len(unused) > len(o.Joints()) {
		return nil // or a folder of many variants
	}
	at, f := m.MachineAt, finding.Noted(UnusedFiles, finding.Values{"files": unused})
	at.Severity, at.Found = f.Severity, &f
	return problem.List{at}
}
