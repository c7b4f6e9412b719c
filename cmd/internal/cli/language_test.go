package cli

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"drawdown/cmd/internal/bench"
	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/thread"
	"drawdown/geometry/trace"
	"drawdown/geometry/unit"
	"drawdown/patterns/schema"
	"drawdown/render/words/wordstest"
	"drawdown/sequence/judge"
)

// found is a call with text output, and what it found.
type found struct {
	args   string
	code   finding.Code
	values finding.Values
}

var noFile = finding.Values{"file": "gone.yaml"}

// finds has calls of every command with findings.
var finds = map[string][]found{
	"card":      {{"card gone.yaml", files.NoFile, noFile}, {"card gone.yaml p4-head", BatchFailed, finding.Values{"failed": 1, "n": 2, "drawn": 1}}},
	"book":      {{"book gone.yaml", files.NoFile, noFile}},
	"tray":      {{"tray gone.yaml", files.NoFile, noFile}},
	"condition": {{"condition gone.yaml", files.NoFile, noFile}},
	"order":     {{"order gone.yaml", files.NoFile, noFile}},
	"check": {
		{"check gone.yaml", files.NoFile, noFile},
		{"check p4-head --order M1,M2", judge.LeftOut, finding.Values{"ids": strings.Fields("M3 M4 M5 M6 M7 M8 M9 M10 F1 F2 F3 F4")}},
		{"check p4-head --order M1,M2 --json", judge.LeftOut, finding.Values{"ids": strings.Fields("M3 M4 M5 M6 M7 M8 M9 M10 F1 F2 F3 F4")}},
		{"check p4-head --order cross", judge.WayNotAnOrder, finding.Values{"way": "cross"}},
	},
	"torque": {
		{"torque gone.yaml", files.NoFile, noFile},
		{"torque --thread M10x9 --class 8.8", thread.NoSuchPitch, finding.Values{"pitch": "9", "size": "10", "coarse": "1.5", "fine": []string{"1.25", "1", "0.75"}}},
	},
	"wrench": {{"wrench --torque 80Nm --wrenches gone.yaml", NoWrenchList, noFile}},
	"survey": {{"survey gone.yaml", files.NoFile, noFile}},
	"trace": {
		{"trace gone.yaml", files.NoFile, noFile},
		{"trace p4-pump-gasket --bolts 9-8mm", holes.FallingRange, finding.Values{"written": "9-8mm", "from": unit.Length(9), "to": unit.Length(8)}},
		{"trace p4-pump-gasket --known F1,F9=20mm", trace.NoHole, finding.Values{"hole": "F9"}},
	},
	"target":   {{"target p4-head", TakesNoName, finding.Values{"command": "target", "written": "p4-head"}}},
	"predict":  {{"predict gone.yaml", files.NoFile, noFile}},
	"handout":  {{"handout gone.yaml", files.NoFile, noFile}},
	"bench":    {{"bench gone.yaml --no-open --data data", bench.FolderIsFile, finding.Values{"folder": "gone.yaml"}}},
	"records":  {{"records --data gone", record.NoStore, finding.Values{"folder": "gone"}}},
	"diff":     {{"diff gone.yaml p4-head", files.NoFile, noFile}},
	"schema":   {{"schema gone", schema.NoSchema, finding.Values{"name": `"gone"`, "allowed": schema.Names()}}},
	"patterns": {{"patterns new --csv gone.yaml", files.NoFile, noFile}},
}

// Every command prints its findings in the language of --lang, as text and as
// JSON.
func TestFindingsFollowTheLanguage(t *testing.T) {
	for _, c := range commands() {
		if flags := flagsOf(c); flags.Lookup("lang") == nil {
			if c.name != "completion" && c.name != "version" { // have no findings
				t.Errorf("%s has no --lang", c.name)
			}
			continue
		}
		if len(finds[c.name]) == 0 {
			t.Errorf("nothing here is found by %s", c.name)
		}
		for _, f := range finds[c.name] {
			for _, in := range wordstest.All() {
				t.Chdir(t.TempDir())
				var said strings.Builder
				p := Program{Stdin: strings.NewReader(""), Stdout: &said, Stderr: &said}
				status := p.Run(append(strings.Fields(f.args), "--lang", in.Language))
				want := in.What(finding.Failed(f.code, f.values))
				due := Wrong
				if f.code == TakesNoName {
					due = Misuse
				}
				if status != due || !strings.Contains(said.String(), want) {
					t.Errorf("%s --lang %s: status %d, want %q in:\n%s", f.args, in.Language, status, want, said.String())
				}
			}
		}
	}
}

// A command that worded its findings in a fixed language would not follow
// --lang.
func TestNoCommandChoosesTheLanguage(t *testing.T) {
	for _, folder := range []string{".", "../report"} {
		sources, err := filepath.Glob(filepath.Join(folder, "*.go"))
		if err != nil || len(sources) == 0 {
			t.Fatal(sources, err)
		}
		for _, source := range sources {
			text, err := os.ReadFile(source)
			if err != nil {
				t.Fatal(err)
			}
			// cli.go has the catalogue before the flags are parsed.
			if source == "cli.go" || strings.HasSuffix(source, "_test.go") {
				continue
			}
			if strings.Contains(string(text), "words.English()") {
				t.Errorf("%s words something in English; the words of the call are p.words", source)
			}
		}
	}
}
