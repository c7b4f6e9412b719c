package sequence

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry"
	"drawdown/geometry/family"
	"drawdown/geometry/finding"
)

func ids(j geometry.Joint, order []int) string {
	var names []string
	for _, i := range order {
		names = append(names, j.Fasteners[i].ID)
	}
	return strings.Join(names, " ")
}

// caps is an irregular row of five cam caps with two bolts each.
func caps(unloaded ...string) geometry.Joint {
	var j geometry.Joint
	for k, x := range []float64{0, 92, 190, 283, 381} {
		name := string(rune('A' + k))
		j.Fasteners = append(j.Fasteners,
			geometry.Fastener{ID: name + "1", Kind: "cap", At: geometry.Point{X: x, Y: 22}},
			geometry.Fastener{ID: name + "2", Kind: "cap", At: geometry.Point{X: x, Y: -22}})
		j.Clusters = append(j.Clusters, geometry.Cluster{
			Name: name, Of: []string{name + "1", name + "2"}, Unloaded: slices.Contains(unloaded, name)})
	}
	return j
}

// Common practice, no source: the bolts of a cap are tightened together.
func TestClustersGoDownTogether(t *testing.T) {
	j := caps()
	for _, by := range []Way{Auto, Spiral, Cross, RowWay, Star, Circular} {
		order, err := Order(j, []Group{{Way: by}})
		if err != nil {
			t.Fatal(err)
		}
		for pair := range slices.Chunk(order, 2) {
			if a, b := j.Fasteners[pair[0]].ID[:1], j.Fasteners[pair[1]].ID[:1]; a != b {
				t.Errorf("%s: %s parts a cap", by, ids(j, order))
				break
			}
		}
	}
}

func TestCapsGoMiddleOutwards(t *testing.T) {
	j := caps()
	order, err := Order(j, []Group{{Way: Auto}})
	if err != nil {
		t.Fatal(err)
	}
	// The caps are at 0, 92, 190, 283 and 381: D is nearer the middle than B.
	if diff := cmp.Diff("C1 C2 D1 D2 B1 B2 E1 E2 A1 A2", ids(j, order)); diff != "" {
		t.Error(diff)
	}
}

func TestUnloadedClusterGoesFirst(t *testing.T) {
	j := caps("A")
	order, err := Order(j, []Group{{Way: RowWay}})
	if err != nil {
		t.Fatal(err)
	}
	if got := ids(j, order); !strings.HasPrefix(got, "A1 A2 ") {
		t.Errorf("the cap without load is not first: %s", got)
	}
}

func TestGroupsFollowEachOther(t *testing.T) {
	j := geometry.Joint{Fasteners: []geometry.Fastener{
		{ID: "s1", Kind: "side", At: geometry.Point{X: 0, Y: 0}},
		{ID: "m1", Kind: "main", At: geometry.Point{X: 50, Y: 40}, Cast: 2},
		{ID: "m2", Kind: "main", At: geometry.Point{X: -50, Y: 40}, Cast: 1},
		{ID: "s2", Kind: "side", At: geometry.Point{X: 10, Y: 0}},
	}}
	order, err := Order(j, []Group{{Kinds: []string{"main"}, Way: Cast}, {Kinds: []string{"side"}, Way: List, List: []string{"s2", "s1"}}})
	if err != nil {
		t.Fatal(err)
	}
	if diff := cmp.Diff("m2 m1 s2 s1", ids(j, order)); diff != "" {
		t.Error(diff)
	}
}

func TestOrderNamesWhatIsWrong(t *testing.T) {
	j := caps()
	tests := []struct {
		name   string
		groups []Group
		want   finding.Code
		id     string
	}{
		{"left out", []Group{{Kinds: []string{"none"}}}, InNoGroup, "A1"},
		{"in two groups", []Group{{Way: RowWay}, {Way: Spiral}}, InTwoGroups, "A1"},
		{"no cast number", []Group{{Way: Cast}}, NoCastNumber, "A1"},
		{"list leaves one out", []Group{{Way: List, List: strings.Fields("A1 A2 B1 B2 C1 C2 D1 D2 E1")}}, NotInList, "E2"},
		{"list names one twice", []Group{{Way: List, List: strings.Fields("A1 A1")}}, NotOfGroup, "A1"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			_, err := Order(j, tt.groups)
			var found finding.Finding
			if !errors.As(err, &found) || found.Code != tt.want || !slices.Equal(found.At.IDs, []string{tt.id}) {
				t.Errorf("got %v, want %q of %s", err, tt.want, tt.id)
			}
		})
	}
}

// First principles: a family named by the user is used to order the group; a
// pan named as circles is tightened ring by ring and crosswise.
func TestNamedFamily(t *testing.T) {
	var j geometry.Joint
	for k, at := range geometry.Rectangle(5, 2, 304, 164, geometry.Point{}) {
		j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: string(rune('A' + k)), At: at})
	}
	all := make([]int, len(j.Fasteners))
	for i := range all {
		all[i] = i
	}
	for _, tt := range []struct {
		named, want family.Family
		way         Way
	}{{"", family.Perimeter, Balanced}, {family.Circles, family.Circles, Star}, {family.Free, family.Free, Balanced}} {
		g := Group{Way: Auto, Family: tt.named}
		seen := SeenGroup(j, all, g)
		if seen.Family != tt.want || SettledGroup(j, all, g) != tt.way || seen.Named != (tt.named != "") {
			t.Errorf("named %q: %s by %s", tt.named, seen.Family, SettledGroup(j, all, g))
		}
		order, err := Order(j, []Group{g})
		if err != nil || len(order) != len(all) {
			t.Errorf("named %q: %v, %v", tt.named, order, err)
		}
	}
}

// First principles: the result for a row of caps lists their fasteners, with
// those of a cap next to each other.
func TestSeenNamesFasteners(t *testing.T) {
	j := caps()
	for k := range j.Fasteners { // the caps on a curve
		j.Fasteners[k].At.Y += 0.002 * (j.Fasteners[k].At.X - 190) * (j.Fasteners[k].At.X - 190)
	}
	all := make([]int, len(j.Fasteners))
	for i := range all {
		all[i] = i
	}
	if seen := SeenGroup(j, all, Group{Way: Auto, Family: family.Curve}); len(seen.Edge) != 10 || seen.Edge[0]/2 != seen.Edge[1]/2 {
		t.Errorf("the edge names %v", seen.Edge)
	}
}
