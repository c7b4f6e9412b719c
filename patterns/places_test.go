package patterns

import (
	"slices"
	"strings"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/patterns/places"
	"drawdown/patterns/problem"
)

const fourKinds = "kinds: {main: {thread: M10, hole: 11 mm}, bare: {thread: M10}, flat: {thread: M8, head: 13 mm, washer: 24 mm}, none: {}}\n"

func at(fasteners ...string) string {
	return "fasteners: [" + strings.Join(fasteners, ", ") + "]\n"
}

// square has four fasteners, 100 mm apart, about the zero point.
var square = at("{id: A, at: [-50, -50], kind: main}", "{id: B, at: [50, -50], kind: main}", "{id: C, at: [50, 50], kind: main}", "{id: D, at: [-50, 50], kind: main}")

const edge = "outline: [[-70, -70], [70, -70], [70, 70], [-70, 70]]\n"

// Sizes: M10 has a head of 16 mm across flats (ISO 4014) and a shank of 10 mm.
// The rest is first principles: things with less room than they need.
func TestPlacesWithoutSense(t *testing.T) {
	const fails, warns = problem.Error, problem.Warning
	for name, test := range map[string]struct {
		text     string
		code     finding.Code
		severity problem.Severity
		says     string
	}{
		"four M10, 1 mm apart":        {at("{row: {count: 4, pitch: 1, kind: bare, id: B}}"), places.HolesOverlap, fails, "are 1.0 mm apart, so their shanks overlap: they must be at least 10.0 mm apart"},
		"holes run into each other":   {at("{id: A, at: [0, 0], kind: main}", "{id: B, at: [10.9, 0], kind: main}"), places.HolesOverlap, fails, "A (on line 4) are 10.9 mm apart, so their holes overlap"},
		"heads overlap":               {at("{id: A, at: [0, 0], kind: main}", "{id: B, at: [15.9, 0], kind: main}"), places.HeadsOverlap, warns, "they must be at least 16.0 mm apart"},
		"two kinds":                   {at("{id: A, at: [0, 0], kind: main}", "{id: B, at: [0, 13], kind: flat}"), places.HeadsOverlap, warns, "they must be at least 20.0 mm apart"},
		"a bore over a bolt":          {square + "features: [{bore: [40, 40], diameter: 60, label: cyl 1}]\n", places.BoreOverBolt, fails, "the bore cyl 1 of 60 mm covers C"},
		"a bore into a hole":          {square + "features: [{bore: [0, 0], diameter: 134}]\n", places.BoreCutsHole, warns, "A, B, C and D"},
		"a bore of 9 m":               {square + "features: [{bore: [0, 0], diameter: 9 m}]\n", places.BoreTooWide, fails, "9000 mm is far wider"},
		"no bolt in the outline":      {square + "outline: [[500, 500], [700, 500], [700, 700]]\n", places.OutlineHoldsNone, fails, "none of the 4 fasteners"},
		"an outline in another unit":  {square + "outline: [[-7, -7], [7, -7], [7, 7], [-7, 7]]\n", places.OutlineHoldsNone, fails, "units"},
		"a bow tie":                   {square + "outline: [[-70, -70], [70, 70], [70, -70], [-70, 70]]\n", places.OutlineCrosses, fails, "the edge from [-70.0, -70.0] and the edge from [70.0, -70.0]"},
		"one bolt outside":            {square + "outline: [[-70, -70], [70, -70], [70, 70], [20, 70], [20, 0], [-70, 0]]\n", places.FastenersOff, warns, "D is off the part"},
		"a bolt in an opening":        {square + strings.Replace(edge, "[[", "[[[", 1)[:len(edge)] + ", [[40, 40], [60, 40], [60, 60], [40, 60]]]\n", places.FastenersOff, warns, "C is off the part"},
		"a bore outside":              {square + edge + "features: [{bore: [90, 0], diameter: 20, label: port 1}]\n", places.BoreOff, warns, "the bore port 1 at [90.0, 0.0] is outside"},
		"a dowel outside":             {square + edge + "features: [{dowel: [90, 0], diameter: 8}]\n", places.DowelOff, warns, "the dowel at [90.0, 0.0]"},
		"a dowel over the own edge":   {square + "features: [{dowel: [98, 0], diameter: 8}]\n", places.DowelOffOwnEdge, warns, "add the outline"},
		"a bore off the own edge":     {square + "features: [{bore: [120, 0], diameter: 8}]\n", places.BoreOffOwnEdge, warns, "add the outline"},
		"bores into each other":       {square + "features: [{bore: [0, 0], diameter: 60}, {bore: [20, 0], diameter: 60}]\n", places.BoresOverlap, warns, "are 20.0 mm apart"},
		"one bore twice":              {square + "features: [{bore: [0, 0], diameter: 60}, {bore: [0, 0], diameter: 60}]\n", places.BoresOverlap, warns, "on line 5"},
		"a dowel in a hole":           {square + edge + "features: [{dowel: [-50, -50], diameter: 8}]\n", places.DowelOnBolt, warns, "in the hole of A"},
		"a dowel over the outline":    {square + edge + "features: [{dowel: [66, 0], diameter: 10}]\n", places.DowelOff, warns, "the dowel at [66.0, 0.0]"},
		"a station outside":           {square + edge + "stations: [{id: T1, at: [90, 0]}]\n", places.StationOff, warns, "T1 is outside"},
		"mm read as inches":           {"units: in\n" + square, places.FarApart, warns, "check the unit of the places"},
		"two bores of one label":      {square + "features: [{bore: [0, 20], diameter: 20, label: cyl 1}, {bore: [0, -20], diameter: 20, label: cyl 1}]\n", places.LabelTwice, warns, `called "cyl 1"`},
		"a bore and a label":          {square + "features: [{bore: [0, 20], diameter: 20, label: filler}, {label: filler, at: [0, 0]}]\n", places.LabelTwice, warns, "filler"},
		"two stations of one label":   {square + "stations: [{id: T1, at: [0, 0], label: in 1}, {id: T2, at: [9, 0], label: in 1}]\n", places.LabelTwice, warns, "in 1"},
		"two stations on one spot":    {square + "stations: [{id: T1, at: [0, 0]}, {id: T2, at: [0.2, 0]}]\n", places.StationsTogether, warns, "T2 and T1"},
		"from the front, front left":  {square + "view: from the front\nfeatures: [{front: left}]\n", places.FrontFacesView, warns, "from the front"},
		"von vorn, front left":        {square + "view: von vorn gesehen\nfeatures: [{front: left}]\n", places.FrontFacesView, warns, "left"},
		"de l’avant, front left":      {square + "view: vue de l’avant\nfeatures: [{front: top}]\n", places.FrontFacesView, warns, "top"},
		"desde el frente, front left": {square + "view: desde el frente\nfeatures: [{front: top}]\n", places.FrontFacesView, warns, "top"},
	} {
		_, problems := readText(lid + fourKinds + test.text)
		if !slices.ContainsFunc(said(problems), func(p problem.Problem) bool {
			return p.Code == test.code && p.Severity == test.severity && strings.Contains(p.What, test.says)
		}) {
			t.Errorf("%s:\n%v\nwant %s %s with %q", name, said(problems), test.severity, test.code, test.says)
		}
	}
}

// First principles, and common practice where stated: usual designs cause no
// warning.
func TestPlacesWithSense(t *testing.T) {
	for name, text := range map[string]string{
		"heads that just clear":        at("{id: A, at: [0, 0], kind: main}", "{id: B, at: [16, 0], kind: main}"),
		"sizes unknown":                at("{id: A, at: [0, 0], kind: none}", "{id: B, at: [5, 0], kind: none}"),
		"a bore between":               square + "features: [{bore: [0, 0], diameter: 100, label: cyl 1}]\n",
		"a bore at the edge":           square + edge + "features: [{bore: [70, 0], diameter: 30}]\n", // a half bore of a cap
		"a bore that is an opening":    square + "outline: [[[-70, -70], [70, -70], [70, 70], [-70, 70]], [[-20, -20], [20, -20], [20, 20]]]\nfeatures: [{bore: [10, -10], diameter: 9}]\n",
		"an outline through no point":  square + edge,
		"a bolt on the edge":           square + "outline: [[-50, -70], [70, -70], [70, 70], [-50, 70]]\n",
		"points twice, a closed path":  square + "outline: [[-70, -70], [70, -70], [70, -70], [70, 70], [-70, 70], [-70, -70]]\n",
		"a traced loop under 2 mm":     square + "outline: [[-70, -70], [70, -70], [70, 0], [71, 1], [70, 1], [71, 0], [70, 70], [-70, 70]]\n",
		"seen from above, front left":  square + "view: from above\nfeatures: [{front: left}]\n",
		"seen from the front, no side": square + "view: from the front\n",
		"the exhaust side":             square + "view: from the exhaust side\nfeatures: [{front: left}]\n",
		"a dowel inside the own edge":  square + "features: [{dowel: [90, 0], diameter: 8}]\n",
		"a station at a bolt":          square + "stations: [{id: T1, at: [50, 50], label: in 1}]\n",
		"a station called as its bore": square + "features: [{bore: [0, 0], diameter: 50, label: cyl 1}]\nstations: [{id: T1, at: [0, 0], label: cyl 1}]\n",
	} {
		_, problems := readText(lid + fourKinds + text)
		for _, p := range problems {
			if strings.HasPrefix(string(p.Found.Code), "places") {
				t.Errorf("%s: %v", name, p)
			}
		}
	}
	for _, name := range Builtin() {
		text, _ := BuiltinText(name)
		_, problems := readText(string(text))
		for _, p := range problems {
			if strings.HasPrefix(string(p.Found.Code), "places") {
				t.Errorf("%s: %v", name, p)
			}
		}
	}
}
