package measured_test

import (
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/survey"
	"drawdown/patterns"
	"drawdown/patterns/measured"
	"drawdown/patterns/patterntest"
	"drawdown/patterns/writing"
	"drawdown/render/words"
)

const lidSurvey = `drawdown: 1
title: Lid
holes: {A: 8, B: 10, C: 8}
measured:
  - [A, B, 60]
  - {from: A, to: C, outside: 88}
  - {from: B, to: C, inside: 91}
level: [A, B]
up: C
`

// 88 mm over the far edges of two 8 mm holes is 80 mm between the centres; 91
// mm between the near edges of 10 and 8 mm is 100 mm (first principles).
func TestReadSurvey(t *testing.T) {
	s, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte(lidSurvey)))
	if len(problems) > 0 {
		t.Fatal(said(problems).Detail())
	}
	for i, want := range []float64{60, 80, 100} {
		if got := s.Network.Readings[i].Distance; got != want {
			t.Errorf("reading %d is %g mm, want %g", i+1, got, want)
		}
	}
	inches, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte("units: in\n"+lidSurvey)))
	if len(problems) > 0 || inches.Network.Readings[0].Distance != 60*25.4 || !inches.Inches {
		t.Errorf("in inches: %v, %v", inches.Network.Readings, problems)
	}
}

// Every error is reported with its line and column.
func TestSurveySlips(t *testing.T) {
	for _, c := range []struct{ replace, by, want string }{
		{"[A, B, 60]", "[A, A, 60]", "lid.yaml:5:5: error: the reading goes from A to itself"},
		{"[A, B, 60]", "[A, X, 60]", `lid.yaml:5:9: error: there is no hole "X"; allowed: A, B, C`},
		{"[A, B, 60]", "[A, B, 0]", `lid.yaml:5:12: error: A to B: "0" is too small; allowed: 0.05 mm to 50 m`},
		{"[A, B, 60]", "[A, B, -60]", `"-60" is too small`},
		{"[A, B, 60]", "[A, B]", "lid.yaml:5:5: error: a reading is two holes and a distance"},
		{"[A, B, 60]", "[A, B, sixty]", "lid.yaml:5:12: error: A to B:"},
		{"[A, B, 60]", "[A, B, 7]", "lid.yaml:5:5: error: A and B would overlap"},
		{"outside: 88", "outside: 7", "lid.yaml:6:5: error: A and C would overlap"},
		{"outside: 88", "outsid: 88", "did you mean outside?"},
		{"outside: 88", "outside: 88, inside: 70", "the reading has outside and inside at once"},
		{", outside: 88", "", "lid.yaml:6:5: error: the reading has no distance; allowed: centre, outside, inside"},
		{"  - [A, B, 60]\n", "  - [A, B, 60]\n  - [A, B, 60]\n", "lid.yaml:6:5: warning: A to B appears twice with the same figure, first on line 5"},
		{"A: 8,", "A: 0,", `lid.yaml:3:12: error: the diameter of A: "0" is too small`},
		{"A: 8,", "A: ,", "lid.yaml:6:5: error: outside measures over the edges: holes must give the diameter of A"},
		{"{A: 8, B: 10, C: 8}", "{A: 8}", "lid.yaml:3:8: error: a survey needs at least 2 holes, not 1"},
		{"{A: 8, B: 10, C: 8}", "8", "holes is a map of the holes with their diameters"},
		{"{A: 8, B: 10, C: 8}", "{A: 8, B: 10, B: 9, C: 8}", "appears twice"},
		{"level: [A, B]", "level: [A, A]", "level names the hole A twice"},
		{"level: [A, B]", "level: A", "level is two holes, the left one first"},
		{"level: [A, B]\n", "", "up and down need a line"},
		{"up: C", "up: B", "lid.yaml:9:5: error: up: B is on the level line itself"},
		{"up: C\n", "", "warning: up is missing: the mirror image fits the readings as well"},
		{"up: C", "up: C\naccuracy: 0", `accuracy: "0" is too small`},
		{"up: C", "up: C\naccuracy: 1e-155", `accuracy: "1e-155" is too small; allowed: 0.001 mm to 10 mm`},
		{"up: C", "up: C\naccuracy: 1e-20", `accuracy: "1e-20" is too small`},
		{"A: 8,", "A: 1e-320,", `the diameter of A: "1e-320" is too small; allowed: 0.2 mm to 20 m`},
		{"up: C", "up: C\nunits: cm", "units is"},
		{"up: C", "up: C\nholds: 3", `unknown key "holds"`},
		{"drawdown: 1\n", "", "the file needs drawdown: 1"},
		{"drawdown: 1\n", "drawdown: 2\n", "cannot read"},
		{"title: Lid\n", "", "needs title"},
	} {
		text := strings.Replace(lidSurvey, c.replace, c.by, 1)
		_, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte(text)))
		if got := said(problems).Error(); !strings.Contains(got, c.want) {
			t.Errorf("%q for %q: problems\n%s\nwant %q", c.by, c.replace, got, c.want)
		}
		if len(problems) != 1 {
			t.Errorf("%q for %q: %d problems, want one:\n%s", c.by, c.replace, len(problems), said(problems).Error())
		}
	}
}

func TestBuiltinSurveysAreSound(t *testing.T) {
	for _, name := range patterns.Surveys.Names() {
		source, err := patterns.Surveys.Open(name, nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := measured.Read(source); len(problems) > 0 {
			t.Errorf("%s: %s", name, said(problems).Detail())
		}
	}
}

func FuzzReadSurvey(f *testing.F) {
	f.Add([]byte(lidSurvey))
	f.Add([]byte("holes: [A, B]\nmeasured: [[A, B, 1 in], {from: A}]\nup: [A, {}]\nlevel: [A, [B]]"))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, problems := measured.Read(patterns.FromBytes("f.yaml", data))
		if problems.Stops() {
			return
		}
		for _, r := range s.Network.Readings {
			if r.From == r.To || !(r.Distance > 0) {
				t.Fatalf("reading %+v", r)
			}
		}
	})
}

// surveyed calculates a survey and reads the resulting pattern file.
func surveyed(t *testing.T, text string) geometry.Joint {
	t.Helper()
	return patterntest.Joint(t, draftOf(t, text))
}

func draftOf(t *testing.T, text string) []byte {
	t.Helper()
	s, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte(text)))
	if problems.Stops() {
		t.Fatal(said(problems).Detail())
	}
	solved, err := survey.Solve(s.Network)
	if err != nil {
		t.Fatal(err)
	}
	return writing.Pattern(s.Draft(solved), words.English().Say)
}

// First principles: a range means all its holes; an id that only looks like a
// range is an id.
func TestRangesOfHoles(t *testing.T) {
	for _, c := range []struct{ holes, want string }{
		{"{1-3: 6.6, 4: 8.4}", "1 2 3 4"},
		{"{M1-M3: 6.6, A-C: 8}", "M1 M2 M3 A B C"},
		{"[P9-11, a-b]", "P9 P10 P11 a b"},
		{"[1-B, M1-N2, 3-2, A-1, left-in]", "1-B M1-N2 3-2 A-1 left-in"},
	} {
		text := "drawdown: 1\ntitle: Lid\nholes: " + c.holes + "\nmeasured: [[no, hole, 60]]\n"
		_, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte(text)))
		if got, want := said(problems).Error(), "allowed: "+strings.ReplaceAll(c.want, " ", ", "); !strings.Contains(got, want+"\n") {
			t.Errorf("%s: problems\n%s\nwant %q", c.holes, got, want)
		}
	}
	_, problems := measured.Read(patterns.FromBytes("lid.yaml", []byte(strings.Replace(lidSurvey, "C: 8}", "C: 8, B-D: 8}", 1))))
	if got := said(problems).Error(); !strings.Contains(got, "the hole B appears twice") {
		t.Errorf("a range over holes that are there: %s", got)
	}
	// A range that is too long, many times.
	holes := "[" + strings.Repeat("A1-9999, ", 500) + "B]"
	_, problems = measured.Read(patterns.FromBytes("lid.yaml", []byte("drawdown: 1\ntitle: Lid\nholes: "+holes+"\nmeasured: []\n")))
	if got := said(problems).Error(); !strings.Contains(got, "the survey has more than 200 holes") {
		t.Errorf("many long ranges: %.300s", got)
	}
}

// The ids of a survey become the marks chalked on the part, if they are short.
func TestSurveyKeepsTheMarks(t *testing.T) {
	text := strings.NewReplacer("A: 8", "front_left: 8", "[A, B", "[front_left, B", "from: A", "from: front_left").Replace(lidSurvey)
	var marks []string
	for _, f := range surveyed(t, text).Fasteners {
		marks = append(marks, f.Mark)
	}
	if got := strings.Join(marks, " "); got != " B C" {
		t.Errorf("marks %q, want none for front_left, and B and C", got)
	}
}
