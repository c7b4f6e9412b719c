package plan

import (
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/thread"
	"drawdown/sequence"
)

// Common practice, no source: the large thread first, unless the maker says
// otherwise.
func TestSmallBeforeLarge(t *testing.T) {
	sized := func(name, size string) Kind {
		parsed, err := thread.Parse(size)
		if err != nil {
			t.Fatal(err)
		}
		return Kind{Name: name, Thread: &parsed}
	}
	in := Input{Kinds: []Kind{sized("side", "M8"), sized("main", "M12")}}
	for i, kind := range []string{"side", "main"} {
		in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{ID: kind, Kind: kind, At: geometry.Point{X: float64(10 * i)}})
	}
	for name, c := range map[string]struct {
		groups []sequence.Group
		want   int
	}{
		"small first":     {[]sequence.Group{{Kinds: []string{"side"}}, {Kinds: []string{"main"}}}, 1},
		"large first":     {[]sequence.Group{{Kinds: []string{"main"}}, {Kinds: []string{"side"}}}, 0},
		"together":        {[]sequence.Group{{Kinds: []string{"side", "main"}}}, 0},
		"the maker's own": {[]sequence.Group{{Kinds: []string{"side"}, Way: sequence.List}, {Kinds: []string{"main"}}}, 0},
	} {
		in.Groups = c.groups
		found := in.SmallBeforeLarge()
		if len(found) != c.want || c.want == 1 && found[0].Code != SmallFirst {
			t.Errorf("%s: %v, want %d", name, found, c.want)
		}
	}
}

// First principles: the corners of a square are on a circle; those of an oblong
// with a hole in the middle of each long side are not.
func TestOnBoltCircles(t *testing.T) {
	joint := func(at ...geometry.Point) (j geometry.Joint) {
		for _, p := range at {
			j.Fasteners = append(j.Fasteners, geometry.Fastener{At: p})
		}
		return j
	}
	square := Input{Joint: joint(geometry.Point{X: 50, Y: 50}, geometry.Point{X: -50, Y: 50}, geometry.Point{X: -50, Y: -50}, geometry.Point{X: 50, Y: -50})}
	oblong := Input{Joint: joint(geometry.Point{X: 90, Y: 30}, geometry.Point{Y: 30}, geometry.Point{X: -90, Y: 30}, geometry.Point{X: 90, Y: -30}, geometry.Point{Y: -30}, geometry.Point{X: -90, Y: -30})}
	if !square.OnBoltCircles(nil) || oblong.OnBoltCircles(nil) {
		t.Errorf("square %v, oblong %v", square.OnBoltCircles(nil), oblong.OnBoltCircles(nil))
	}
}

// Most of the bolts are evenly spaced on rings, each with at most a fifth of
// its holes missing; half of the bolts is not most.
func TestOnSeveralRings(t *testing.T) {
	t.Parallel()
	ring := func(count int, radius float64, without ...int) (at []geometry.Point) {
		for k := range count {
			if !slices.Contains(without, k) {
				at = append(at, geometry.Polar(geometry.Point{X: 7, Y: 3}, radius, 360*float64(k)/float64(count)))
			}
		}
		return at
	}
	uneven := func(degs ...float64) (at []geometry.Point) {
		for _, deg := range degs {
			at = append(at, geometry.Polar(geometry.Point{X: 7, Y: 3}, 60, deg))
		}
		return at
	}
	for name, c := range map[string]struct {
		at   []geometry.Point
		want bool
	}{
		"two rings":              {append(ring(8, 100), ring(4, 60)...), true},
		"a fifth is missing":     {append(ring(10, 100, 3, 7), ring(4, 60)...), true},
		"more is missing":        {append(ring(10, 100, 3, 5, 7), uneven(0, 20, 50)...), false},
		"most on a ring":         {append(ring(8, 100), uneven(0, 20, 50, 90, 110, 155, 200)...), true},
		"half of them on a ring": {append(ring(8, 100), uneven(0, 20, 50, 90, 110, 155, 200, 290)...), false},
		"uneven beside as many":  {append(ring(4, 100), uneven(0, 180, 20, 50)...), false},
	} {
		var in Input
		for _, p := range c.at {
			in.Joint.Fasteners = append(in.Joint.Fasteners, geometry.Fastener{At: p})
		}
		if got := in.OnBoltCircles(nil); got != c.want {
			t.Errorf("%s: %v", name, got)
		}
	}
}
