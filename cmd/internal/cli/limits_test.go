package cli_test

import (
	"bytes"
	"strings"
	"testing"

	"drawdown/cmd/internal/cli"
)

// heldFile is a pattern with a line for each quantity, of which one is
// replaced.
const heldFile = `drawdown: 1
title: Flange
date: 2026-03-14
kinds:
  main: {thread: M10}
fasteners:
  - {id: A1, at: [-40, 10], kind: main}
  - {id: A2, at: [0, 25], kind: main}
  - {id: A3, at: [50, 10], kind: main}
tighten:
  stages: [{torque: 20 N·m}]
`

// quantity is a quantity stated in a file or a flag, with % for the figure.
type quantity struct {
	in           string // a line of the file, or command arguments
	below, least string
	most, above  string
	allowed      string
}

// From the table in geometry/unit; its limits have their own test.
var inFiles = []quantity{
	{"  main: {thread: M10, length: %}", "0.4 mm", "0.5 mm", "20 m", "20.1 m", "0.5 mm to 20 m"},
	{"  main: {thread: M10, grip: %}", "0.04 mm", "0.05 mm", "20 m", "20001 mm", "0.05 mm to 20 m"},
	{"  main: {thread: M10, into: steel, engagement: %}", "0.1 mm", "0.2 mm", "1 m", "40 in", "0.2 mm to 1 m"},
	{"  main: {thread: M10, head: %}", "0.4 mm", "0.5 mm", "500 mm", "501 mm", "0.5 mm to 500 mm"},
	{"  main: {thread: M10, nut: %}", "0 mm", "0.5 mm", "500 mm", "501 mm", "0.5 mm to 500 mm"},
	{"  main: {thread: M10, hole: %}", "1e-320 mm", "0.5 mm", "500 mm", "501 mm", "0.5 mm to 500 mm"},
	{"  main: {thread: M10, friction: %}", "0.009", "0.01", "1", "1.01", "0.01 to 1"},
	{"  - {id: A1, at: [%, 10], kind: main}", "-101 m", "-100 m", "100 m", "101 m", "-100 m to 100 m"},
	{"  - row: {count: 2, pitch: %, from: [0, 90], kind: main, id: R}", "0.09", "0.6", "50 m", "51 m", "0.1 mm to 50 m"},
	{"  - circle: {count: 4, diameter: %, centre: [0, 200], kind: main, id: R}", "0", "1", "50 m", "51 m", "0.1 mm to 50 m"},
	{"  - row: {count: 2, pitch: 20, angle: %, from: [0, 90], kind: main, id: R}", "-361°", "-360°", "360°", "361°", "-360° to 360°"},
	{"features: [{bore: [0, -90], diameter: %}]", "0.4", "0.5", "20 m", "90 m", "0.5 mm to 20 m"},
	{"features: [{dowel: [0, -90], diameter: %}]", "0.4", "0.5", "500", "501", "0.5 mm to 500 mm"},
	{"joint: {part: {material: steel, thickness: %}}", "0.009 mm", "0.01 mm", "10 m", "11 m", "0.01 mm to 10 m"},
	{"joint: {bolt flexibility: %}", "1e-10 mm/N", "1e-9 mm/N", "1 mm/N", "1.1 mm/N", "1e-9 mm/N to 1 mm/N"},
	{"  stages: [{torque: %}]", "1e-9 N·m", "0.0001 N·m", "100000 N·m", "100001 N·m", "0.0001 N·m to 100000 N·m"},
	{"  stages: [{torque: 20 N·m}, {angle: %}]", "0.001°", "1°", "2 turns", "721°", "1° to 720°"},
	{"  stages: [{torque: 20 N·m}, {back off: %}, {torque: 20 N·m}]", "0°", "1°", "720°", "3 turns", "1° to 720°"},
	{"  stages: [{torque: 20 N·m}, {wait: %}, {torque: 20 N·m}]", "0 s", "1 s", "720 h", "1000000000 min", "1 s to 720 h"},
	{"  main: {thread: M10, class: '8.8', lubricant: wax}|  stages: [{percent: %}]", "0.0001", "1 %", "100", "100.5", "1 % to 100 %"},
	{"date: %", "0001-01-01", "1900-01-01", "2199-12-31", "9999-12-31", "1900-01-01 to 2199-12-31"},
}

var inFlags = []quantity{
	{"wrench --torque %", "1e-9Nm", "0.0001Nm", "100000Nm", "100001Nm", "0.0001 N·m to 100000 N·m"},
	{"wrench --torque 20Nm --adapter 10mm --length %", "19mm", "20mm", "10m", "10.1m", "20 mm to 10 m"},
	{"wrench --torque 20Nm --length 400mm --adapter %", "0.9mm", "1mm", "5m", "5.1m", "1 mm to 5 m"},
	{"wrench --torque 20Nm --length 400mm --adapter 40mm --adapter-angle %", "-361deg", "-360deg", "360deg", "1e9deg", "-360° to 360°"},
	{"torque --thread M10 --class 10.9 --preload %", "0.9N", "1N", "20kN", "60000kN", "1 N to 50000 kN"},
	{"torque --thread M10 --class 10.9 --torque %", "1e-9Nm", "1Nm", "40Nm", "2e5Nm", "0.0001 N·m to 100000 N·m"},
	{"torque --thread M10 --class 10.9 --grip 50mm --snug 20Nm --angle %", "0.01deg", "1deg", "720deg", "721deg", "1° to 720°"},
	{"torque --thread M10 --class 10.9 --friction %", "0.001", "0.01", "1", "1.1", "0.01 to 1"},
	{"torque --thread M10 --class 10.9 --grip %", "0.01mm", "5mm", "2m", "21m", "0.05 mm to 20 m"},
	{"torque --thread M10 --class 10.9 --hole %", "0.1mm", "10.5mm", "12mm", "501mm", "0.5 mm to 500 mm"},
	{"patterns new --row 4 --pitch %", "0.01", "0.6", "30m", "51m", "0.1 mm to 50 m"},
	{"patterns new --dxf missing.dxf --bolts -%", "0.4mm", "0.5mm", "500mm", "501mm", "0.5 mm to 500 mm"},
	{"patterns new --dxf missing.dxf --dowels %", "0.4mm", "0.5mm", "500mm", "501mm", "0.5 mm to 500 mm"},
	{"patterns new --dxf missing.dxf --bores %-", "0.4mm", "0.5mm", "20m", "90m", "0.5 mm to 20 m"},
	{"patterns new --dxf missing.dxf --gap %", "-1mm", "0mm", "10mm", "11mm", "0 mm to 10 mm"},
	{"trace missing.png --smallest %", "0.1mm", "0.2mm", "20m", "21m", "0.2 mm to 20 m"},
	{"trace missing.png --known F1,F5=%", "0.09mm", "0.1mm", "50m", "51m", "0.1 mm to 50 m"},
	{"card p4-head --format svg --dpi %", "35", "36", "1200", "1201", "36 to 1200"},
}

func TestQuantitiesOfFiles(t *testing.T) {
	t.Parallel()
	for _, q := range inFiles {
		for figure, is := range q.figures() {
			text := heldFile
			for _, line := range strings.Split(strings.ReplaceAll(q.in, "%", figure), "|") {
				text = heldWith(text, line)
			}
			q.tried(t, figure, is, text, "check", "-")
		}
	}
}

func TestQuantitiesOfFlags(t *testing.T) {
	t.Chdir(t.TempDir())
	for _, q := range inFlags {
		for figure, is := range q.figures() {
			q.tried(t, figure, is, "", strings.Fields(strings.ReplaceAll(q.in, "%", figure))...)
		}
	}
}

func (q quantity) figures() map[string]bool {
	return map[string]bool{q.below: false, q.least: true, q.most: true, q.above: false}
}

// heldWith replaces the line with the same beginning, or adds it at the end.
func heldWith(text, line string) string {
	lines := strings.Split(strings.TrimSuffix(text, "\n"), "\n")
	beginning, _, _ := strings.Cut(line, ":")
	if strings.HasPrefix(line, "  - {id: A1") {
		beginning = "  - {id: A1"
	}
	for i, old := range lines {
		switch {
		case beginning == "  - row" || beginning == "  - circle":
			if old == "tighten:" {
				return strings.Join(append(append(append([]string{}, lines[:i]...), line), lines[i:]...), "\n")
			}
		case strings.HasPrefix(old, beginning):
			lines[i] = line
			return strings.Join(lines, "\n")
		}
	}
	return strings.Join(append(lines, line), "\n")
}

// tried runs the program: a figure within the limits is accepted; one outside
// is rejected, and the message names it and what is allowed.
func (q quantity) tried(t *testing.T, figure string, within bool, stdin string, args ...string) {
	t.Helper()
	var out, problems bytes.Buffer
	program := cli.Program{Stdin: strings.NewReader(stdin), Stdout: &out, Stderr: &problems}
	status := program.Run(args)
	said := problems.String()
	refused := strings.Contains(said, q.allowed)
	switch {
	case within && refused:
		t.Errorf("%s with %s: %s", q.in, figure, said)
	case !within && (status == cli.Done || !refused || !strings.Contains(said, figure)):
		t.Errorf("%s with %s: status %d, %s; want what is allowed: %s", q.in, figure, status, said, q.allowed)
	}
}
