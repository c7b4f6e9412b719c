package cli

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/spf13/pflag"

	"drawdown/patterns"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
)

// named is a pattern in which all words of the file begin with x.
const named = `drawdown: 1
title: "Xt"
machine: "Xm"
kinds:
  xa: {thread: M10, class: "10.9", length: 60 mm, lubricant: engine oil, grip: 30 mm, into: cast iron, engagement: 20 mm, reuse: once}
  xb: {thread: M8, class: "8.8", washer: 16 mm, grip: 20 mm}
fasteners:
  - {grid: {columns: 4, rows: 2, pitch: [60, 60], kind: xa, id: X}}
  - {row: {count: 3, pitch: 60, from: [-60, 90], angle: 0°, kind: xb, id: Y}}
tighten:
  stages:
    - {of: [xa], torque: 20.5 N·m, note: Xn}
    - {wait: 10 min}
    - {of: [xa], back off: 45°}
    - {of: [xa], percent: 50}
    - {of: [xa], angle: 90°}
    - {of: [xb], torque: 15 N·m}
loosen:
  stages: [{turn: 30°}, {remove: yes}]
`

// joint has everything that a prediction needs.
const joint = `drawdown: 1
title: "Xt"
kinds:
  xa: {thread: M10, class: "8.8", grip: 30 mm, lubricant: engine oil}
fasteners:
  - {rectangle: {columns: 4, rows: 1, size: [300, 200], kind: xa, id: X}}
joint: {part: {material: aluminium, thickness: 12 mm}}
tighten: {stages: [{torque: 10 N·m}, {torque: 20 N·m}]}
`

// soundCalls are calls that succeed.
var soundCalls = []string{
	"order x.yaml", "order x.yaml --way spiral --turn left", "order x.yaml --way cross", "order j.yaml", "order bare.yaml",
	"check x.yaml", "check x.yaml --order file", "check x.yaml --order file --side loosen", "check x.yaml --order X1,X2", "check x.yaml --order X1,X2,X3,X4,X5,X6,X7,X8,Y1,Y2,Y3",
	"torque x.yaml", "torque x.yaml --kind xb --units in,psi,lbf,lbf.in",
	"torque --thread M8 --class 8.8 --snug 10Nm --angle 90deg --grip 20mm --into aluminium --engagement 12mm --units kN",
	"torque --thread M8 --class 8.8 --torque 28Nm", "torque --thread M8 --class 8.8 --snug 60Nm --grip 20mm", "torque --thread M8 --class 8.8 --k 0.2",
	"torque --thread M8 --class 8.8 --preload 12kN --washer normal --grip 20mm --equation linear", "torque --thread M8 --class 8.8 --proof 75%",
	"wrench --torque 80Nm", "wrench --torque 80Nm --adapter 60mm --length 400mm", "wrench --torque 80Nm --wrenches w.yaml",
	"predict j.yaml --gasket fibre-sheet --gasket-width 16mm", "predict j.yaml --gasket fibre-sheet --gasket-width 16mm --compare --scatter 10",
	"predict j.yaml --gasket-stiffness 120MPa/mm --gasket-width 16mm --compensate --passes 30,70,100 --target 20kN",
	"patterns x.yaml --as dxf -o out", "survey s.yaml", "survey s.yaml -o out", "survey s.yaml --sheet -o out/sheet", "trace p4-pump-gasket --dowels 6mm --title Xt -o out", "patterns new --grid 3x2 --pitch 60 --title Xt -o out", "patterns new --csv p.csv --title X2 -o out/table", "patterns new --dxf out/x.dxf --title X3 -o out/drawing", "patterns new --circle 7 --diameter 90 -o out/circle",
	"card x.yaml -o out", "card x.yaml --paper a5 -o out", "tray x.yaml -o out", "condition x.yaml -o out",
	"handout x.yaml --mark a.csv -o out", "handout x.yaml -o out",
}

// wrongCalls are calls that end with a message about the call.
var wrongCalls = []string{
	"xcard", "--json card", "p4-head", "card", "card p4-head --xpaper a4", "card p4-head --paper x9", "card p4-head --paper", "card p4-head --dpi x", "card p4-head --dpi 5", "card p4-head --jobs 0",
	"card p4-head --out=", "card p4-head -o x.pdf", "card gone.yaml", "card gone.yaml x.yaml", "card - -", "card x.yaml x.yaml", "card p4-head --format",
	"card p4-head --lang xx", "card p4-head --json=xyes", "help xa xb", "help xcard", "version x", "completion", "completion xx",
	"order", "order p4-head p4-sump", "order p4-head --way xsp", "check p4-head --order X1 --draw", "check p4-head --side loosen", "check p4-head --actual-size", "check x.yaml --order xx",
	"torque", "torque --kind xa", "torque --thread M8", "torque --thread M8 --class", "torque --thread M8 --class 8.8 --yield 90% --proof 70%", "torque --thread M8 --class 8.8 --angle 90deg",
	"torque --thread M8 --class 8.8 --preload 0kN", "torque --thread M8 --class 8.8 --hole 9", "torque --thread M8 --class 8.8 --snug 10Nm --grip 20mm --angle 90+", "torque --thread M8 --class 8.8 --snug 10Nm --grip 20mm --angle 90+0deg",
	"torque x.yaml --kind xc", "torque --thread M8 --class 8.8 --head xround", "torque --thread M8 --class=", "torque bare.yaml", "torque bare.yaml x.yaml",
	"wrench", "wrench x", "wrench --torque 0Nm", "wrench --torque 80Nm --adapter 60mm", "wrench --torque 80Nm --wrenches out", "wrench --torque 80Nm --wrenches gone.yaml",
	"survey", "survey xa xb", "survey gone.yaml", "survey s.yaml -o .", "trace", "trace xa xb", "trace gone.png", "trace p4-pump-gasket --dpi 3", "trace p4-pump-gasket --known F1", "trace p4-pump-gasket --known F1,F2=0mm",
	"trace p4-pump-gasket --known F1,F1=9mm", "trace p4-pump-gasket --known F1=9mm", "trace p4-pump-gasket --corners 1,2:3,4 --frame 10x10mm", "trace p4-pump-gasket --corners 1,2:3,4:5,6:7 --frame 10x10mm",
	"trace p4-pump-gasket --corners 1,2:3,4:5,6:7,8", "trace p4-pump-gasket --frame 10", "trace p4-pump-gasket --part xgrey", "trace p4-pump-gasket --bores=",
	"predict bare.yaml", "predict j.yaml --cap 110%", "predict j.yaml --passes 70,30", "predict j.yaml --paper a5", "predict j.yaml --scatter 3", "predict j.yaml --seed 3",
	"patterns xa xb", "patterns -o xo", "patterns --as csv", "patterns new --as csv", "patterns p4-head --grid 3x2", "patterns p4-head --json", "patterns xx", "patterns new", "patterns new --grid 3x2", "patterns new --grid 3",
	"patterns new --grid 3x0 --pitch 60", "patterns new --grid 300x200 --pitch 60", "patterns new --rectangle 1x2 --size 30x20", "patterns new --circle x --diameter 200", "patterns new --rectangle 5x2 --size 300", "patterns new --rectangle 5x2 --size 0x0",
	"patterns new --row 3 --pitch 60 --diameter 20", "patterns new --dxf gone.dxf --layer=", "patterns new --csv gone.csv",
	"book", "book gone.yaml", "book --example x", "handout p4-head --mark=", "handout p4-head --mark gone.csv", "handout p4-head --seed 2", "handout p4-head --layouts 9999",
}

// notWords matches names, units, symbols, layers and positions in files. All file names
// here begin with x.
var notWords = regexp.MustCompile(`^([xX].*|[A-Z]|[A-Z]\d.*|\d.*|N·m|lbf(·ft|·in)?|kN(/mm)?|[MG]Pa(/mm)?|mm²?|psi|in|µm|min|deg|y|ø|Rm|D|[0-9a-f]{4}|[0-9a-f]{16}|fingerprint|IDS|FASTENERS-.*|drop|drawdown|engine|oil|at|bash|zsh|fish|powershell|o|mine|aluminium|p4-.*|out/.*|s/s|.*\.(yaml|csv|dxf|png|pdf|svg))$`)

// standards matches names of sources, also across line breaks.
var standards = regexp.MustCompile(`\(?(ISO|VDI|ASME|SAE|DIN|US)( [^)]*\)|$)|^ *- (ISO|VDI|ASME|SAE|DIN|US|FED|Shigley).*|^ *[-:,\dA-Z ]*(table|section)? ?A?\d[^)]*\)`)

// typed lists words of the command line, which are not translated.
func typed() map[string]bool {
	all := map[string]bool{"help": true, "json": true, "new": true, "version": true}
	for _, c := range commands() {
		all[c.name] = true
		flagsOf(c).VisitAll(func(f *pflag.Flag) {
			all[f.Name] = true
			for _, values := range f.Annotations {
				for _, one := range values {
					all[one] = true
				}
			}
		})
	}
	return all
}

// Everything printed at a terminal is worded by the catalogue.
func TestNoWordBesideTheCatalogue(t *testing.T) {
	english := *words.English()
	t.Cleanup(func() { *words.English() = english })
	*words.English() = *wordstest.Marked()
	t.Chdir(t.TempDir())
	survey, _ := patterns.Surveys.Text(patterns.Surveys.Names()[0])
	for name, text := range map[string]string{
		"x.yaml": named, "j.yaml": joint, "bare.yaml": "drawdown: 1\ntitle: Xt\nkinds: {xa: {hole: 9 mm}}\nfasteners: [{id: X1, at: [0, 0], kind: xa}]\n",
		"w.yaml": "wrenches: [{name: Xw, from: 20 N·m, to: 200 N·m, division: 1 N·m}]\n", "a.csv": "student,1,2\nXs,X1,X2\n", "p.csv": "id,x,y\nX1,0,0\nX2,50,0\n",
		"s.yaml": regexp.MustCompile(`(?m)^(title|machine): .*`).ReplaceAllString(string(survey), "$1: Xt"),
	} {
		if err := os.WriteFile(name, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	typed, told := typed(), map[string]bool{}
	check := func(call string, lines []string) {
		for _, line := range lines {
			for _, word := range wordstest.Unmarked(standards.ReplaceAllString(line, ""), notWords) {
				if !typed[word] && !told[word] {
					t.Errorf("%s: %q in %q", call, word, line)
				}
				told[word] = true
			}
		}
	}
	for k, call := range slices.Concat(soundCalls, wrongCalls) {
		lines, status := said(call)
		if wrong := k >= len(soundCalls); wrong != (status == Misuse || status == Wrong) && !strings.HasPrefix(call, "check") {
			t.Errorf("%s: status %d\n%s", call, status, strings.Join(lines, "\n"))
		}
		check(call, lines)
	}
	for _, draft := range []string{"out/s.yaml", "out/p4-pump-gasket.yaml", "out/xt.yaml", "out/table/x2.yaml", "out/drawing/x3.yaml"} {
		text, err := os.ReadFile(draft)
		if err != nil {
			t.Error(err)
		}
		check(draft, commented(string(text)))
	}
}

// commented returns the text of a pattern file for its reader: cautions, and
// comments without the keys in them.
func commented(file string) (said []string) {
	_, cautions, _ := strings.Cut(file, "\ncautions:\n")
	said = strings.Split(cautions, "\n")
	keys := regexp.MustCompile(`^ *(- )?[{a-z ]*: *(\[.*|\{.*)?`)
	for _, line := range strings.Split(file, "\n") {
		if at := strings.LastIndex(line, "# "); at >= 0 {
			said = append(said, keys.ReplaceAllString(line[at+2:], ""))
		}
	}
	return said
}

// said returns the lines that a call prints, and its status.
func said(call string) ([]string, Status) {
	var all strings.Builder
	p := Program{Stdin: strings.NewReader(""), Stdout: &all, Stderr: &all}
	status := p.Run(strings.Fields(call))
	return strings.Split(strings.TrimSpace(all.String()), "\n"), status
}
