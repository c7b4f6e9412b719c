package judge_test

import (
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/judge"
)

// numbered is a row of four whose ids and cast numbers run in different
// directions.
func numbered() geometry.Joint {
	j := jointOf(geometry.Row(4, 60, geometry.Point{X: 3}, 10))
	for k, cast := range []int{4, 2, 1, 3} {
		j.Fasteners[k].Cast = cast
	}
	return j
}

// First principles: the contract of ReadList.
func TestReadList(t *testing.T) {
	t.Parallel()
	alike := numbered()
	alike.Fasteners[3].ID = "m1"
	twice := numbered()
	twice.Fasteners[3].Cast = 4
	tests := []struct {
		name  string
		joint geometry.Joint
		text  string
		want  string
	}{
		{"commas", numbered(), "M2,M3,M1,M4", "M2 M3 M1 M4"},
		{"blanks and lines", numbered(), " M2 M3\n\tM1;  M4,", "M2 M3 M1 M4"},
		{"small letters", numbered(), "m2,m3,m1,m4", "M2 M3 M1 M4"},
		{"cast numbers", numbered(), "1,2,3,4", "M3 M2 M4 M1"},
		{"a name that nobody has", numbered(), "M2,M9,9", "M2 M9 9"},
		{"twice and too few", numbered(), "M2,M2", "M2 M2"},
		{"ids that differ in capitals alone", alike, "m1,M1", "m1 M1"},
		{"which of two is not clear", geometry.Joint{Fasteners: []geometry.Fastener{{ID: "Ab"}, {ID: "aB"}}}, "ab,Ab", "ab Ab"},
		{"ids that are numbers", geometry.Joint{Fasteners: []geometry.Fastener{{ID: "1", Cast: 2}, {ID: "2", Cast: 1}}}, "1,2", "1 2"},
		{"a cast number that is there twice but not named", twice, "1,2", "M3 M2"},
	}
	for _, tt := range tests {
		got, err := judge.ReadList(tt.joint, tt.text)
		if err != nil {
			t.Errorf("%s: %v", tt.name, err)
		}
		if diff := cmp.Diff(tt.want, strings.Join(got, " ")); diff != "" {
			t.Errorf("%s: %s", tt.name, diff)
		}
	}
	for _, tt := range []struct {
		name  string
		joint geometry.Joint
		text  string
		want  finding.Finding
	}{
		{"nothing", numbered(), " ,; ", finding.Failed(judge.NoNames, nil)},
		{"mixed", numbered(), "M2,1,3", finding.Failed(judge.MixedNames, finding.Values{"id": "M2", "cast": "3"})},
		{"cast number twice on the part", twice, "1,4", finding.Failed(judge.CastNotOne, finding.Values{"cast": "4", "ids": []string{"M1", "M4"}})},
	} {
		_, err := judge.ReadList(tt.joint, tt.text)
		if diff := cmp.Diff(error(tt.want), err); diff != "" {
			t.Errorf("%s: %s", tt.name, diff)
		}
	}
}

// First principles: any text is either read or rejected; an unknown name is
// kept; and the list can be judged.
func FuzzReadList(f *testing.F) {
	for _, seed := range []string{"M1,M2,M3,M4", "1 2 3 4", "m1;m2", ",", "M1,1", "M1,M1,M9", "\x00\xff,é,M1"} {
		f.Add(seed)
	}
	j := numbered()
	f.Fuzz(func(t *testing.T, text string) {
		list, err := judge.ReadList(j, text)
		if err != nil {
			if list != nil {
				t.Fatalf("%q gives both %q and %v", text, list, err)
			}
			return
		}
		if len(list) == 0 {
			t.Fatalf("%q gives an empty list", text)
		}
		for _, name := range list {
			known := slices.ContainsFunc(j.Fasteners, func(f geometry.Fastener) bool { return f.ID == name })
			if !known && !strings.Contains(text, name) {
				t.Fatalf("%q gives %q, which nobody wrote", text, name)
			}
		}
		again, err := judge.ReadList(j, strings.Join(list, ","))
		if err != nil || !slices.Equal(list, again) {
			t.Fatalf("%q gives %q, which reads as %q (%v)", text, list, again, err)
		}
		for _, side := range judge.Sides {
			r := judge.Order(judge.Input{Joint: j, Order: list, Side: side})
			whole := len(slices.Compact(slices.Sorted(slices.Values(list)))) == len(j.Fasteners) && len(list) == len(j.Fasteners) && r.Groups != nil
			if (r.Verdict == judge.NotWhole) == whole {
				t.Fatalf("%q is %q", list, r.Verdict)
			}
			for _, f := range r.Findings {
				f.Found() // panics if the rule has no code
			}
		}
	})
}
