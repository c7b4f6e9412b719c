package patterns_test

import (
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/patterns/table"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

const marked = `drawdown: 1
title: Cover
fasteners:
  - {id: N1, mark: B, at: [0, 0]}
  - {id: N2, mark: "12", at: [60, 0]}
  - row: {count: 2, pitch: 60, from: [0, 60], id: C, mark: [x, 7]}
tighten: {stages: [{torque: 10 N·m}], source: manual}
`

func marksOf(j geometry.Joint) string {
	var marks []string
	for _, f := range j.Fasteners {
		marks = append(marks, f.Mark)
	}
	return strings.Join(marks, " ")
}

// First principles: marks on the part are in the file and come through
// unchanged.
func TestMarksAreRead(t *testing.T) {
	in, problems := patterns.Read(patterns.FromBytes("cover.yaml", []byte(marked)))
	if len(problems) > 0 {
		t.Fatal(said(problems).Detail())
	}
	if got := marksOf(in.Joint); got != "B 12 x 7" {
		t.Errorf("read %q", got)
	}
	if got := marksOf(patterntest.Joint(t, writing.Pattern(writing.Draft{Title: "Cover", Joint: in.Joint}, words.English().Say))); got != "B 12 x 7" {
		t.Errorf("read back %q", got)
	}
}

func TestMarkSlips(t *testing.T) {
	for _, c := range []struct{ replace, by, want string }{
		{"mark: B", "mark: B, cast: 3", `:4:14: error: a fastener has both cast and mark; the card shows only one of them`},
		{"mark: B", "mark: bottom left", `the mark "bottom left" is too long for the card; allowed: up to 4 characters`},
		{"mark: B", "mark: [B]", "mark is what is written on the part, such as 7 or B"},
		{"mark: [x, 7]", "mark: [x]", "mark is a list of 2 marks, one for each place of the row, not 1"},
		{"mark: [x, 7]", "mark: [x, 7], cast: [1, 2]", "the row has both"},
	} {
		_, problems := patterns.Read(patterns.FromBytes("cover.yaml", []byte(strings.Replace(marked, c.replace, c.by, 1))))
		if got := said(problems).Error(); !strings.Contains(got, c.want) || len(problems) != 1 {
			t.Errorf("%s: problems\n%s\nwant %q", c.by, got, c.want)
		}
	}
}

// A table of points includes the marks, and has no column for them if there are
// none.
func TestMarksInTables(t *testing.T) {
	in, _ := patterns.Read(patterns.FromBytes("cover.yaml", []byte(marked)))
	text := table.Write(in.Joint)
	back, problems := table.Read(patterns.FromBytes("cover.csv", text))
	if got := marksOf(back.Joint); len(problems) > 0 || got != "B 12 x 7" {
		t.Errorf("read back %q, %v from\n%s", got, problems, text)
	}
	for i := range in.Joint.Fasteners {
		in.Joint.Fasteners[i].Mark = ""
	}
	if text := string(table.Write(in.Joint)); strings.Contains(text, "mark") {
		t.Errorf("no mark, and yet\n%s", text)
	}
}
