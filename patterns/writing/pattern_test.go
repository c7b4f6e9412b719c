package writing_test

import (
	"regexp"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"
	"github.com/google/go-cmp/cmp/cmpopts"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/survey"
	"drawdown/patterns"
	"drawdown/patterns/patterntest"
	"drawdown/patterns/writing"
	"drawdown/render/words"
	"drawdown/render/words/wordstest"
)

// What is written reads back unchanged.
func TestWriteReadsBack(t *testing.T) {
	joint := geometry.Joint{
		Fasteners: []geometry.Fastener{
			{ID: "A", Kind: "hole 8.4", At: geometry.Point{X: -1.25, Y: 90}, Cast: 3},
			{ID: "1", Kind: "hole 8.4", At: geometry.Point{X: 95.021, Y: 0}},
			{ID: "B", Kind: "10.9", At: geometry.Point{X: 95.021, Y: 20}},
			{ID: "yes", Kind: `odd: "kind", #1`, At: geometry.Point{X: 40, Y: -0.001}},
		},
		Clusters:         []geometry.Cluster{{Name: "cap: 1", Of: []string{"A", "1"}}, {Name: "no", Of: []string{"yes"}, Unloaded: true}},
		UnloadedFirstOff: true,
		Outline:          [][]geometry.Point{{{X: -10, Y: -10}, {X: 110, Y: -10}, {X: 50, Y: 110}}},
		Bores:            []geometry.Bore{{Centre: geometry.Point{X: 30, Y: 30}, Diameter: 20, Label: "cyl 1"}},
		Dowels:           []geometry.Dowel{{Centre: geometry.Point{X: 60, Y: 30}, Diameter: 6}},
		Labels:           []geometry.Label{{Text: "true", At: geometry.Point{X: 1, Y: 2}}},
		Stations:         []geometry.Station{{ID: "T1", At: geometry.Point{X: 5, Y: 6}, Label: "in 1"}},
		Front:            geometry.FrontLeft,
	}
	data := writing.Pattern(writing.Draft{
		Title: `Cover: "odd" # & 1`, Notes: looks("one\ntitle: two"), Joint: joint,
		HolesMm: map[string]float64{"hole 8.4": 8.4}, Cautions: looks("twice"),
	}, words.English().Say)
	if diff := cmp.Diff(joint, patterntest.Joint(t, data), cmpopts.EquateEmpty()); diff != "" {
		t.Errorf("(- written, + read):\n%s\n%s", diff, data)
	}
	input, _ := patterns.Read(patterns.FromBytes("made.yaml", data))
	if input.Title != `Cover: "odd" # & 1` || len(input.Cautions) != 1 || input.Cautions[0].Text != "Check: twice." || float64(input.Kinds[0].Hole) != 8.4 {
		t.Errorf("read back: %q, %v, %v", input.Title, input.Cautions, input.Kinds)
	}
}

// A layout, and the layout offered as a comment, replace its places.
func TestWriteLayouts(t *testing.T) {
	for _, r := range []survey.Regular{
		{Shape: survey.Grid, Columns: 5, Rows: 2, X: 95, Y: 90, Centre: geometry.Point{X: 190, Y: 45}},
		{Shape: survey.Rectangle, Columns: 5, Rows: 2, X: 300, Y: 160},
		{Shape: survey.Circle, Count: 16, X: 240, AngleDeg: 90, Clockwise: true},
		{Shape: survey.Circle, Count: 7, X: 112.5, AngleDeg: 12.5},
		{Shape: survey.Row, Count: 5, X: 60, AngleDeg: 30, Centre: geometry.Point{X: 3, Y: -4}},
	} {
		layout := &writing.Layout{Regular: r, ID: "M"}
		plain := writing.Pattern(writing.Draft{Title: "New", Layout: layout}, words.English().Say)
		offered := writing.Pattern(writing.Draft{Title: "New", Offer: layout, Joint: geometry.Joint{
			Fasteners: []geometry.Fastener{{ID: "A"}},
		}}, words.English().Say)
		taken := strings.Replace(string(offered), "  # - ", "  - ", 1)
		taken = strings.Replace(taken, "  - {id: A, at: [0, 0], kind: bolt}\n", "", 1)
		for name, data := range map[string]string{"written": string(plain), "offered": taken} {
			got := patterntest.Joint(t, []byte(data)).Points()
			for i, want := range r.Points() {
				if i >= len(got) || got[i].Distance(want) > 0.002 {
					t.Fatalf("%s %s: %v, want %v", r.Shape, name, got, r.Points())
				}
			}
		}
	}
}

// The reader accepts the commented lines once the # is removed.
func TestWrittenCommentsAreTaken(t *testing.T) {
	for _, c := range wordstest.All() {
		data := string(writing.Pattern(writing.Draft{Title: "New", Layout: &writing.Layout{
			Regular: survey.Regular{Shape: survey.Row, Count: 4, X: 60}, ID: "C",
		}}, c.Say))
		checkCommentsAreTaken(t, data)
	}
}

func checkCommentsAreTaken(t *testing.T, data string) {
	t.Helper()
	for _, line := range []string{"# revision", "# date", "# outline", "# features:", "#   - {bore", "#   - {label", "#   - {front", "# tighten:",
		"#   order:", "#     - ", "#   stages:", "#   source", "# thread", "# class", "# lubricant", "# length", "# head"} {
		if !strings.Contains(data, line) {
			t.Fatalf("no line %q in\n%s", line, data)
		}
		bare := strings.TrimPrefix(line, "# ")
		if strings.HasPrefix(line, "#  ") {
			bare = strings.TrimPrefix(line, "#")[1:]
		}
		data = strings.ReplaceAll(data, line, bare)
	}
	if got := len(patterntest.Joint(t, []byte(data)).Fasteners); got != 4 {
		t.Errorf("%d fasteners", got)
	}
}

// The comments lead to a valid file: the larger holes first, a thread that fits
// its hole, a line for each kind. Thread by hole: ISO 273, values from memory;
// widths across flats: ISO 4014.
func TestWrittenCommentsLeadWell(t *testing.T) {
	data := string(writing.Pattern(writing.Draft{Title: "Cover", HolesMm: map[string]float64{"hole 6.6": 6.6, "hole 9": 9, "hole 2": 2, "hole 7.7": 7.7},
		Joint: geometry.Joint{Fasteners: []geometry.Fastener{
			{ID: "1", Kind: "hole 6.6"}, {ID: "2", Kind: "hole 9", At: geometry.Point{X: 50}}, {ID: "3", Kind: "hole 6.6", At: geometry.Point{X: 90}},
		}},
	}, words.English().Say))
	for _, want := range []string{
		"  hole 9:\n    hole: 9 mm\n    # thread: M8 ", "head: 13 mm",
		"  hole 6.6:\n    hole: 6.6 mm\n    # thread: M6                     # by the hole (ISO 273); check the bolt, or M8x1, 5/16-18 UNC\n", "head: 10 mm",
		"#     - {kind: hole 9, way: auto}      # spiral, cross, row, star\n#     - {kind: hole 6.6, way: auto}",
		"#     - {of: [hole 9], torque: 10 N·m}\n#     - {of: [hole 6.6], torque: 10 N·m}\n",
	} {
		if !strings.Contains(data, want) {
			t.Errorf("no %q in\n%s", want, data)
		}
	}
	bare := regexp.MustCompile(`(?m)^( *)# ( *(thread|class|lubricant|tighten|order|stages|source|- \{kind|- \{of))`).ReplaceAllString(data, "$1$2")
	if _, problems := patterns.Read(patterns.FromBytes("cover.yaml", []byte(bare))); len(problems) > 0 {
		t.Errorf("with the # gone: %s", problems.Detail())
	}
}

// looks returns a finding to look at.
func looks(found string) []finding.Finding {
	return []finding.Finding{finding.Noted(writing.Look, finding.Values{"found": found})}
}
