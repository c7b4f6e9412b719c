package table_test

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/table"
)

func TestReadCSV(t *testing.T) {
	want := []geometry.Fastener{{ID: "A", At: geometry.Point{X: 1.5, Y: -2}}, {ID: "B", At: geometry.Point{X: 40, Y: 7}}}
	for name, text := range map[string]string{
		"plain":            "A,1.5,-2\nB,40,7\n",
		"heading":          "id,x,y\nA,1.5,-2\nB,40,7",
		"other order":      "Y (mm); note; X (mm); ID\r\n-2;odd;1,5;A\r\n7;;40;B\r\n",
		"tabs and comment": "# points\n\nid\tx\ty\nA\t1,5\t-2\nB\t40\t7\n",
		"byte order mark":  "\uFEFFid,x,y\nA, 1.5, -2\nB, 4 cm, 7\n",
	} {
		draft, problems := table.Read(patterns.FromBytes("p.csv", []byte(text)))
		if len(problems.WithoutNotes()) > 0 {
			t.Errorf("%s: %s", name, said(problems).Detail())
		}
		if diff := cmp.Diff(want, draft.Joint.Fasteners); diff != "" {
			t.Errorf("%s (- wanted, + read):\n%s", name, diff)
		}
	}
	draft, _ := table.Read(patterns.FromBytes("p.csv", []byte("x in,y in,kind,cast\n1,2,side,11\n3,2,main,\n")))
	want = []geometry.Fastener{{ID: "1", Kind: "side", Cast: 11, At: geometry.Point{X: 25.4, Y: 50.8}}, {ID: "2", Kind: "main", At: geometry.Point{X: 76.2, Y: 50.8}}}
	if diff := cmp.Diff(want, draft.Joint.Fasteners, cmp.Comparer(func(a, b float64) bool { return a-b < 1e-9 && b-a < 1e-9 })); diff != "" {
		t.Errorf("in inches (- wanted, + read):\n%s", diff)
	}
	draft, _ = table.Read(patterns.FromBytes("p.csv", []byte("0,0\n10,0\n")))
	if len(draft.Joint.Fasteners) != 2 || draft.Joint.Fasteners[1].ID != "2" {
		t.Errorf("bare points: %v", draft.Joint.Fasteners)
	}
}

func TestCSVSlips(t *testing.T) {
	for text, want := range map[string]string{
		"":                        "p.csv:1:1: error: the table has no points",
		"id,x,y\n":                "the table has no points",
		"A,1,2\nA,30,2\n":         "p.csv:2:1: error: the id A appears twice; the first is on line 1",
		"A,1,2\nB,1,2.1\n":        "B is nearer than 0.5 mm to A",
		"A,1,two\n":               "p.csv:1:5: error: y:",
		"A,1\nB,3,4\n":            "p.csv:1:1: error: x:",
		"id,x,y\n,3,4\n":          "p.csv:2:1: error: the row has no id",
		"name,left,up\nA,1,2\n":   "the heading names no column x and y; allowed: id, x, y, kind, cast",
		"id,x furlong,y\nA,1,2\n": "p.csv:1:4: error: the heading \"x furlong\" has an unknown unit; allowed: mm, in",
		"A B,1,2\n":               "contains the character",
		"A,1e9,2\n":               "too large",
		"A,NaN,2\n":               "x:",
		"id,x,y,cast\nA,1,2,no":   "p.csv:2:7: error: cast is",
		"A,\x00,2\n":              "NUL",
	} {
		_, problems := table.Read(patterns.FromBytes("p.csv", []byte(text)))
		if !problems.Stops() || !strings.Contains(said(problems).Error(), want) {
			t.Errorf("%q: problems\n%s\nwant %q", text, said(problems).Error(), want)
		}
	}
}

// A written table is read back unchanged.
func TestCSVReadsBack(t *testing.T) {
	joint := geometry.Joint{Fasteners: []geometry.Fastener{
		{ID: "M1", Kind: `main, "long"`, At: geometry.Point{X: -47.5, Y: 90.125}, Cast: 7}, {ID: "é", Kind: "side", At: geometry.Point{X: 12}},
	}}
	got, problems := table.Read(patterns.FromBytes("p.csv", table.Write(joint)))
	if diff := cmp.Diff(joint, got.Joint); diff != "" || len(problems.WithoutNotes()) > 0 {
		t.Errorf("(- written, + read):\n%s%s", diff, said(problems).Detail())
	}
}

func FuzzReadCSV(f *testing.F) {
	f.Add([]byte("id,x,y,kind,cast\nA,1,2,main,3\n"))
	f.Add([]byte("A;1,5;\"2\n\";;\n#\n\t\t"))
	f.Fuzz(func(t *testing.T, data []byte) {
		draft, problems := table.Read(patterns.FromBytes("p.csv", data))
		if !problems.Stops() && len(draft.Joint.Fasteners) == 0 {
			t.Fatal("no points and no problem")
		}
	})
}
