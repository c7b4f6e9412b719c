package fixes_test

import (
	"reflect"
	"strings"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace/fixes"
	readfixes "drawdown/patterns/fixes"
	"drawdown/patterns/source"
	"drawdown/render/words"
)

func read(t *testing.T, text string) (fixes.Fixes, string) {
	t.Helper()
	made, problems := readfixes.Read(source.Source{File: "a.fixes.yaml", Data: []byte(text)})
	return made, problems.Worded(words.English().What, words.English().Allowed).Error()
}

// Every key of the format (by its description).
func TestRead(t *testing.T) {
	t.Parallel()
	made, said := read(t, `drawdown: 1
drop: [F3, [812, 455]]
bolts: [c1]
dowels: [F7]
add:
  - {pixel: [640, 210]}
  - {at: [12.5, 40], diameter: 8.4, as: dowel}
sizes: {F4: 8.4 mm}
crop: [100, 80, 2400, 1600]
part: 2
`)
	want := fixes.Fixes{
		Drop:  []fixes.Place{{ID: "F3"}, {Pixel: geometry.Point{X: 812, Y: 455}}},
		Takes: []fixes.Take{{Place: fixes.Place{ID: "C1"}, Use: holes.Fastener}, {Place: fixes.Place{ID: "F7"}, Use: holes.Dowel}},
		Adds:  []fixes.Add{{Pixel: geometry.Point{X: 640, Y: 210}, Use: holes.Fastener}, {At: geometry.Point{X: 12.5, Y: 40}, InMm: true, DiameterMm: 8.4, Use: holes.Dowel}},
		Sizes: []fixes.Size{{Place: fixes.Place{ID: "F4"}, DiameterMm: 8.4}},
		Crop:  geometry.Box{Min: geometry.Point{X: 100, Y: 80}, Max: geometry.Point{X: 2400, Y: 1600}}, Part: 2,
	}
	if !reflect.DeepEqual(made, want) {
		t.Errorf("%+v, want %+v\n%s", made, want, said)
	}
}

// What is wrong is said, and nothing is taken.
func TestReadErrors(t *testing.T) {
	t.Parallel()
	for text, want := range map[string]string{
		"drop: [F3]":                                 "drawdown",
		"drawdown: 1\ndrops: [F3]":                   "drops",
		"drawdown: 1\ndrop: [hole]":                  "drop lists ids from the proof",
		"drawdown: 1\nbolts: [[812]]":                "pixels are 2 numbers",
		"drawdown: 1\ncrop: [1, 2, 3]":               "pixels are 4 numbers",
		"drawdown: 1\ncrop: [500, 0, 510, 900]":      "at least 64",
		"drawdown: 1\nadd: [{diameter: 8}]":          "at",
		"drawdown: 1\nadd: [{pixel: [1, 2], as: x}]": "bolt",
		"drawdown: 1\nsizes: {F4: big}":              "big",
		"drawdown: 1\nsizes: [F4]":                   "sizes",
		"drawdown: 1\npart: 0":                       "part",
	} {
		made, said := read(t, text)
		if !strings.Contains(said, want) || !reflect.DeepEqual(made, fixes.Fixes{}) {
			t.Errorf("%q: %+v, %q; want %q", text, made, said, want)
		}
	}
}
