// Package fixes reads the corrections of a scan. It may import form, nodes and
// geometry/trace/fixes.
package fixes

import (
	"regexp"
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/holes"
	"drawdown/geometry/trace/fixes"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/patterns/problem"
	"drawdown/patterns/source"
)

var (
	fileKeys = []string{"drawdown", "drop", "bolts", "dowels", "bores", "openings", "add", "sizes", "crop", "part"}
	addKeys  = []string{"at", "pixel", "diameter", "as"}
	// uses are the words of a use, and the key of the shapes that are for it.
	uses = map[string]holes.Use{"bolt": holes.Fastener, "dowel": holes.Dowel, "bore": holes.Bore, "opening": holes.Other}
)

const (
	placesExample = "[F3, [812, 455]]"
	furthestPixel = 100_000
	mostFixes     = 2000
)

type reader struct{ *form.Reader }

// Read reads the corrections of a scan:
//
//	drawdown: 1
//	drop: [F3]                                   # not a hole; an id from the proof
//	bolts: [C1, [812, 455]]                      # or a place in the picture, in pixels
//	dowels: [F7]                                 # bores and openings likewise
//	add:
//	  - {pixel: [640, 210]}                      # the edge there is looked for
//	  - {at: [12.5, 40], diameter: 8.4}          # mm, as in the pattern
//	sizes: {F4: 8.4}                             # diameters
//	crop: [100, 80, 2400, 1600]                  # pixels: left, top, right, bottom
//	part: 2                                      # the second largest on the glass
//
// Where a problem stops the work there are none.
func Read(from source.Source) (fixes.Fixes, problem.List) {
	r := &reader{form.NewReader(from)}
	var made fixes.Fixes
	if root := r.Root(nodes.Format{Keys: slices.Concat(fileKeys, addKeys)}); root != nil {
		r.Version(root)
		if f, ok := r.Fields(root, finding.Term("the fixes"), fileKeys...); ok {
			f.Versioned()
			made = r.fixes(f)
		}
	}
	return form.Sound(made, r.List())
}

func (r *reader) fixes(f form.Fields) (made fixes.Fixes) {
	made.Drop = r.places(f, "drop")
	for _, word := range []string{"bolt", "dowel", "bore", "opening"} {
		for _, place := range r.places(f, word+"s") {
			made.Takes = append(made.Takes, fixes.Take{Place: place, Use: uses[word]})
		}
	}
	for one := range f.Maps("add", "[{pixel: [640, 210]}]", finding.Term("a hole to add"), addKeys...) {
		made.Adds = append(made.Adds, r.add(one))
	}
	if n := f.Get("sizes"); n != nil && n.Shape == nodes.Map {
		for _, e := range n.Entries {
			place, ok := r.place(e.Key, "sizes")
			mm, okSize := r.LengthMm(e.Value, finding.Term("a diameter"), unit.Sensible.MachineHole)
			if ok && okSize {
				made.Sizes = append(made.Sizes, fixes.Size{Place: place, DiameterMm: mm})
			}
		}
	} else if n != nil {
		r.Fail(n, form.NoMap, finding.Values{"what": "sizes", "found": n.Called(), "allowed": []string{"F4: 8.4"}})
	}
	made.Crop = r.crop(f)
	if n := f.Get("part"); n != nil {
		made.Part, _ = r.Whole(n, "part", 1, 20)
	}
	return made
}

// places reads a list of ids and places in pixels.
func (r *reader) places(f form.Fields, key string) (list []fixes.Place) {
	n := f.Get(key)
	if n == nil {
		return nil
	}
	items := r.TrueList(n, key, placesExample)
	if len(items) > mostFixes {
		r.Fail(n, TooManyFixes, finding.Values{"count": len(items), "most": mostFixes})
		return nil
	}
	for _, item := range items {
		if place, ok := r.place(item, key); ok {
			list = append(list, place)
		}
	}
	return list
}

var shapeID = regexp.MustCompile(`^[FDBHPSC][0-9]{1,5}$`)

func (r *reader) place(n *nodes.Node, key string) (fixes.Place, bool) {
	if n.Shape == nodes.List {
		pixel, ok := r.pixels(n, 2)
		if !ok {
			return fixes.Place{}, false
		}
		return fixes.Place{Pixel: geometry.Point{X: pixel[0], Y: pixel[1]}}, true
	}
	id := strings.ToUpper(n.Text)
	if n.Shape != nodes.Scalar || !shapeID.MatchString(id) {
		r.Fail(n, NoPlace, finding.Values{"key": key, "found": n.Called(), "example": placesExample})
		return fixes.Place{}, false
	}
	return fixes.Place{ID: id}, true
}

// pixels reads so many numbers.
func (r *reader) pixels(n *nodes.Node, count int) ([]float64, bool) {
	if n.Shape != nodes.List || len(n.Items) != count {
		r.Fail(n, NoPixels, finding.Values{"count": count, "found": n.Called()})
		return nil, false
	}
	var list []float64
	for _, item := range n.Items {
		v, ok := r.Number(item, finding.Term("a pixel"), unit.Limits{Least: 0, Most: furthestPixel, From: "0", To: "100,000"})
		if !ok {
			return nil, false
		}
		list = append(list, v)
	}
	return list, true
}

func (r *reader) add(f form.Fields) (made fixes.Add) {
	if f.Which("at", "pixel") == "at" {
		made.At, _ = f.Point("at")
		made.InMm = true
	} else if n := f.Get("pixel"); n != nil {
		if p, ok := r.pixels(n, 2); ok {
			made.Pixel = geometry.Point{X: p[0], Y: p[1]}
		}
	}
	made.DiameterMm = float64(f.Length("diameter", unit.Sensible.MachineHole))
	made.Use = holes.Fastener
	if word := form.Word(f, "as", "bolt", "dowel", "bore", "opening"); word != "" {
		made.Use = uses[word]
	}
	return made
}

func (r *reader) crop(f form.Fields) geometry.Box {
	n := f.Get("crop")
	if n == nil {
		return geometry.Box{}
	}
	p, ok := r.pixels(n, 4)
	if !ok {
		return geometry.Box{}
	}
	if p[2]-p[0] < leastCrop || p[3]-p[1] < leastCrop {
		r.Fail(n, SmallCrop, finding.Values{"least": leastCrop})
	}
	return geometry.Box{Min: geometry.Point{X: p[0], Y: p[1]}, Max: geometry.Point{X: p[2], Y: p[3]}}
}

const leastCrop = 64 // pixels each way
