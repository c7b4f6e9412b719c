package table_test

import (
	"math"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/table"
)

// Four holes of one part, in the styles of many programs (made up; the places
// are the truth).
func TestExportsOfOtherPrograms(t *testing.T) {
	t.Parallel()
	want := []geometry.Fastener{
		{ID: "A1", At: geometry.Point{X: 1.5, Y: -2}}, {ID: "A2", At: geometry.Point{X: 40, Y: 7.125}},
		{ID: "A3", At: geometry.Point{X: -142.5, Y: 90}}, {ID: "A4", At: geometry.Point{X: 1250.25, Y: 0.5}},
	}
	for name, test := range map[string]struct{ text, notes string }{
		"three decimals with commas": {"id;x;y\nA1;1,500;-2,000\nA2;40,000;7,125\nA3;-142,500;90,000\nA4;1250,250;0,500\n", "columns separated by semicolons and a decimal comma"},
		"thousands, decimal commas":  {"id;x;y\nA1;1,500;-2,000\nA2;40,000;7,125\nA3;-142,500;90,000\nA4;1.250,250;0,500\n", "decimal comma"},
		"thousands, decimal points":  {"id,x,y\nA1,1.500,-2.000\nA2,40,7.125\nA3,-142.500,90\nA4,\"1,250.25\",0.5\n", ""},
		"thousands with blanks":      {"id;x;y\nA1;1,5;-2\nA2;40;7,125\nA3;-142,5;90\nA4;1 250,25;0,5\n", "decimal comma"},
		"separator stated":           {"sep=;\r\nid;x;y\r\nA1;1,5;-2\r\nA2;40;7,125\r\nA3;-142,5;90\r\nA4;1250,25;0,5\r\n", "semicolons"},
		"separator in quotes":        {"\"sep=,\"\nid,x,y\nA1,1.5,-2\nA2,40,7.125\nA3,-142.5,90\nA4,1250.25,0.5\n", ""},
		"empty columns":              {"id;x;y;;;\nA1;1,5;-2;;;\nA2;40;7,125;;;\n;;;;;\nA3;-142,5;90;;;\nA4;1250,25;0,5;;;\n", "semicolons"},
		"all in quotes":              {"\"id\",\"x\",\"y\"\n\"A1\",\"1,5\",\"-2\"\n\"A2\",\"40\",\"7,125\"\n\"A3\",\"-142,5\",\"90\"\n\"A4\",\"1250,25\",\"0,5\"\n", "commas and a decimal comma"},
		"tabs":                       {"id\tnote\tx\ty\nA1\t\t1.5\t-2\nA2\t\t40\t7.125\nA3\tsmall\t-142.5\t90\nA4\t\t1250.25\t0.5\n", `columns that were not used: "note"`},
		"vertical bars":              {"id|x|y\nA1|1.5|-2\nA2|40|7.125\nA3|-142.5|90\nA4|1250.25|0.5\n", "vertical bars"},
		"blanks": {"  Feature   X actual   Y actual\n  A1           1.500     -2.000\n  A2          40.000      7.125\n  A3        -142.500     90.000\n  A4        1250.250      0.500\n",
			"separated by blanks"},
		"single blanks, no heading": {"A1 1.5 -2\nA2 40 7.125\nA3 -142.5 90\nA4 1250.25 0.5\n", ""},
		"report of a measuring machine": {"Report;Cover plate\nOperator;A. Kern\nDate;2026-03-14\n\nFeature;X nominal;X actual;X dev;Y nominal;Y actual;Y dev;Tol\n" +
			"A1;1,6;1,500;-0,100;-2;-2,000;0,000;0,2\nA2;40;40,000;0,000;7;7,125;0,125;0,2\nA3;-142;-142,500;-0,500;90;90,000;0,000;0,2\nA4;1250;1250,250;0,250;0;0,500;0,500;0,2\n\nEnd of report\n",
			`3 lines above the heading were not used: "Report Cover plate", "Operator A. Kern"`},
		"coordinates by words":   {"Point ID,X coordinate,Y coordinate,Z coordinate\nA1,1.5,-2,0\nA2,40,7.125,0\nA3,-142.5,90,0\nA4,1250.25,0.5,0\n", `columns that were not used: "Z coordinate"`},
		"German":                 {"Bohrung;X-Koordinate [mm];Y-Koordinate [mm]\nA1;1,5;-2\nA2;40;7,125\nA3;-142,5;90\nA4;1250,25;0,5\n", "decimal comma"},
		"French":                 {"Perçage;Coordonnée X;Coordonnée Y\nA1;1,5;-2\nA2;40;7,125\nA3;-142,5;90\nA4;1250,25;0,5\n", "decimal comma"},
		"names written together": {"Name,PosX,PosY\nA1,1.5,-2\nA2,40,7.125\nA3,-142.5,90\nA4,1250.25,0.5\n", `x in mm from "PosX"`},
		"units in brackets":      {"id,x [mm],y [mm]\nA1,1.5,-2\nA2,40,7.125\nA3,-142.5,90\nA4,1250.25,0.5\n", "in mm"},
		"a line of units":        {"id,x,y\n-,cm,mm\nA1,0.15,-2\nA2,4,7.125\nA3,-14.25,90\nA4,125.025,0.5\n", "x in cm"},
		"a unit in the report":   {"Units: cm\nid;x;y\nA1;0,15;-0,2\nA2;4;0,7125\nA3;-14,25;9\nA4;125,025;0,05\n", "x in cm"},
		"totals":                 {"id,x,y\nA1,1.5,-2\nA2,40,7.125\nA3,-142.5,90\nA4,1250.25,0.5\nTotal,1149.25,95.625\n", `line 6 is not a point and was left out: "Total 1149.25 95.625"`},
		"column of numbers":      {"#,Name,x,y\n1,A1,1.5,-2\n2,A2,40,7.125\n3,A3,-142.5,90\n4,A4,1250.25,0.5\n", ""},
		"heading on each page":   {"id,x,y\nA1,1.5,-2\nA2,40,7.125\n\nid,x,y\nA3,-142.5,90\nA4,1250.25,0.5\n", ""},
		"letters of Windows":     {"Per\xe7age;X;Y\nA1;1,5;-2\nA2;40;7,125\nA3;-142,5;90\nA4;1250,25;0,5\n", "id from \"Perçage\""},
	} {
		draft, problems := table.Read(patterns.FromBytes("p.csv", []byte(test.text)))
		if problems.Stops() {
			t.Errorf("%s:\n%s", name, said(problems).Detail())
			continue
		}
		if diff := cmp.Diff(want, draft.Joint.Fasteners, cmp.Comparer(func(a, b float64) bool { return math.Abs(a-b) < 1e-9 })); diff != "" {
			t.Errorf("%s (- true, + read):\n%s", name, diff)
		}
		if !strings.Contains(said(problems).Error(), test.notes) {
			t.Errorf("%s: no %q in\n%s", name, test.notes, said(problems).Error())
		}
	}
}

// Each column has its own unit: 1 in is 25.4 mm.
func TestUnitPerColumn(t *testing.T) {
	t.Parallel()
	draft, problems := table.Read(patterns.FromBytes("p.csv", []byte("id,x mm,y in\nA,10,1\nB,50,2\n")))
	want := []geometry.Fastener{{ID: "A", At: geometry.Point{X: 10, Y: 25.4}}, {ID: "B", At: geometry.Point{X: 50, Y: 50.8}}}
	if diff := cmp.Diff(want, draft.Joint.Fasteners); diff != "" {
		t.Errorf("(- true, + read):\n%s%s", diff, said(problems).Detail())
	}
}

// Names and diameters of a measuring machine: the sizes are the kinds, and the
// one wide hole is a bore.
func TestDiametersOfReport(t *testing.T) {
	t.Parallel()
	text := "Element;Ø Ist;X Ist;Y Ist\nKreis 1;8,98;0,000;0,000\nKreis 2;9,01;50,000;0,000\nKreis 3;9,02;50,000;40,000\nKreis 4;9,00;0,000;40,000\nKreis 5;30,01;25,000;20,000\n"
	draft, problems := table.Read(patterns.FromBytes("p.csv", []byte(text)))
	if problems.Stops() || len(draft.Joint.Fasteners) != 4 || len(draft.Joint.Bores) != 1 {
		t.Fatalf("%+v\n%s", draft, said(problems).Detail())
	}
	if f := draft.Joint.Fasteners[1]; f.ID != "Kreis-2" || f.Kind != "hole 9" || f.At != (geometry.Point{X: 50}) {
		t.Errorf("%+v", f)
	}
	if b := draft.Joint.Bores[0]; b.Diameter != 30.01 || b.Label != "Kreis-5" {
		t.Errorf("%+v", b)
	}
	if got := draft.HolesMm["hole 9"]; got != 9.01 {
		t.Errorf("hole %v, want the median 9.01 of 8.98, 9, 9.01, 9.02", got)
	}
	draft, _ = table.Read(patterns.FromBytes("p.csv", []byte("id,x,y,kind,diameter\nA,0,0,main,9\nB,50,0,side,7\n")))
	if draft.HolesMm["main"] != 9 || draft.HolesMm["side"] != 7 || draft.Joint.Fasteners[1].Kind != "side" {
		t.Errorf("%+v", draft)
	}
}

// What cannot be read for certain is an error with its place.
func TestTablesRefused(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"id,x,y\n1,-142,5,90,0\n":              "p.csv:2:10: error: the row has 5 cells, but 3 columns are meant; if the numbers have decimal commas, separate the columns with semicolons",
		"1,-142,5,90,0\n2,142,5,90,0\n":        "p.csv:1:10: error: the row has 5 cells, but 3 columns are meant",
		"id,x,y,x\nA,1,2,3\n":                  `p.csv:1:8: error: the heading names "x" twice`,
		"id,x,y\nA,1.5,2\nB,1,7\n":             "",
		"id;x;y\nA;1.5;2\nB;1,7;4\n":           `does not fit the other numbers`,
		"id,x,y\nA,\"1,500\",2\nB,\"2,000\",4": `"1,500"`,
		"id,x,y\nA,1\n":                        "the row has no y",
		"id,x,y\nA,,\n":                        "the row has no x",
	} {
		_, problems := table.Read(patterns.FromBytes("p.csv", []byte(text)))
		if problems.Stops() != (want != "") || !strings.Contains(said(problems).Error(), want) {
			t.Errorf("%q:\n%s\nwant %q", text, said(problems).Error(), want)
		}
	}
}
