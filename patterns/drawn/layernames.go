package drawn

import (
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/patterns/dxf"
	"drawdown/patterns/writing"
)

// The layers of a drawing from Write. Each kind of fastener has its own layer,
// with the kind's name after the prefix.
const (
	fastenersLayer  = "FASTENERS-"
	outlineLayer    = "OUTLINE"
	boresLayer      = "BORES"
	dowelsLayer     = "DOWELS"
	stationsLayer   = "STATIONS"
	idsLayer        = "IDS"
	labelsLayer     = "LABELS"
	boreLabelsLayer = "BORE-LABELS"
)

// Write writes the places of a joint as a drawing in mm: outline, fasteners
// with the diameters of their holes, bores, dowels, stations, and the ids and
// labels as text. Fasteners of a kind with an unknown hole are points.
func Write(j geometry.Joint, holesMm map[string]float64) []byte {
	var d dxf.Drawing
	for _, path := range j.Outline {
		d.Paths = append(d.Paths, dxf.Path{Points: path, Layer: outlineLayer})
	}
	layers := kindLayers(j)
	for _, f := range j.Fasteners {
		if hole := holesMm[f.Kind]; hole > 0 {
			d.Circles = append(d.Circles, dxf.Circle{Centre: f.At, DiameterMm: hole, Layer: layers[f.Kind]})
		} else {
			d.Points = append(d.Points, dxf.Point{At: f.At, Layer: layers[f.Kind]})
		}
		d.Texts = append(d.Texts, dxf.Text{At: f.At, Text: f.ID, Layer: idsLayer})
	}
	for _, b := range j.Bores {
		d.Circles = append(d.Circles, dxf.Circle{Centre: b.Centre, DiameterMm: b.Diameter, Layer: boresLayer})
		if b.Label != "" {
			d.Texts = append(d.Texts, dxf.Text{At: b.Centre, Text: b.Label, Layer: boreLabelsLayer})
		}
	}
	for _, one := range j.Dowels {
		d.Circles = append(d.Circles, dxf.Circle{Centre: one.Centre, DiameterMm: one.Diameter, Layer: dowelsLayer})
	}
	for _, s := range j.Stations {
		d.Points = append(d.Points, dxf.Point{At: s.At, Layer: stationsLayer})
		d.Texts = append(d.Texts, dxf.Text{At: s.At, Text: s.ID, Layer: idsLayer})
	}
	for _, l := range j.Labels {
		d.Texts = append(d.Texts, dxf.Text{At: l.At, Text: l.Text, Layer: labelsLayer})
	}
	return dxf.Write(d)
}

// kindLayers assigns a layer to every kind; a number distinguishes kinds that
// give the same layer name.
func kindLayers(j geometry.Joint) map[string]string {
	layers, taken := map[string]string{}, map[string]bool{}
	for _, f := range j.Fasteners {
		if layers[f.Kind] != "" {
			continue
		}
		name := dxf.LayerName(fastenersLayer + writing.KindName(f.Kind))
		for n := 2; taken[name]; n++ {
			end := "-" + strconv.Itoa(n)
			name = dxf.LayerName(fastenersLayer + writing.KindName(f.Kind))
			name = name[:min(len(name), dxf.LongestLayer-len(end))] + end
		}
		layers[f.Kind], taken[name] = name, true
	}
	return layers
}

// readLayers reads the layers of a drawing from Write, and ignores the rest.
func (d *drawn) readLayers() {
	ours := func(layer string) bool {
		return len(layer) > len(fastenersLayer) && strings.EqualFold(layer[:len(fastenersLayer)], fastenersLayer)
	}
	if !slices.ContainsFunc(d.Circles, func(c dxf.Circle) bool { return ours(c.Layer) }) &&
		!slices.ContainsFunc(d.Points, func(p dxf.Point) bool { return ours(p.Layer) }) {
		return
	}
	d.ours = true
	texts := map[textKey]string{}
	for _, t := range d.Texts {
		texts[keyOf(t.Layer, t.At)] = t.Text
	}
	j := &d.draft.Joint
	noID := map[string][]geometry.Point{}
	fastener := func(kind string, at geometry.Point) {
		if id := texts[keyOf(idsLayer, at)]; id != "" {
			j.Fasteners = append(j.Fasteners, geometry.Fastener{ID: id, Kind: kind, At: at})
		} else {
			noID[kind] = append(noID[kind], at)
		}
	}
	d.Circles = slices.DeleteFunc(slices.Clone(d.Circles), func(c dxf.Circle) bool {
		switch {
		case ours(c.Layer):
			kind := c.Layer[len(fastenersLayer):]
			if bySize := "hole " + writing.Number(c.DiameterMm); dxf.LayerName(bySize) == kind {
				kind = bySize
			}
			d.draft.HolesMm[kind] = c.DiameterMm
			fastener(kind, c.Centre)
		case strings.EqualFold(c.Layer, boresLayer):
			j.Bores = append(j.Bores, geometry.Bore{Centre: c.Centre, Diameter: c.DiameterMm, Label: texts[keyOf(boreLabelsLayer, c.Centre)]})
		case strings.EqualFold(c.Layer, dowelsLayer):
			j.Dowels = append(j.Dowels, geometry.Dowel{Centre: c.Centre, Diameter: c.DiameterMm})
		default:
			return false
		}
		return true
	})
	d.Points = slices.DeleteFunc(slices.Clone(d.Points), func(p dxf.Point) bool {
		switch {
		case ours(p.Layer):
			fastener(p.Layer[len(fastenersLayer):], p.At)
		case strings.EqualFold(p.Layer, stationsLayer) && texts[keyOf(idsLayer, p.At)] != "":
			j.Stations = append(j.Stations, geometry.Station{ID: texts[keyOf(idsLayer, p.At)], At: p.At})
		default:
			return false
		}
		return true
	})
	d.Texts = slices.DeleteFunc(slices.Clone(d.Texts), func(t dxf.Text) bool {
		if strings.EqualFold(t.Layer, labelsLayer) {
			j.Labels = append(j.Labels, geometry.Label{Text: t.Text, At: t.At})
			return true
		}
		return strings.EqualFold(t.Layer, idsLayer) || strings.EqualFold(t.Layer, boreLabelsLayer)
	})
	for _, kind := range slices.Sorted(maps.Keys(noID)) {
		d.fasteners(kind, noID[kind])
	}
}

// textKey identifies a text by its layer and its position, to a hundredth.
type textKey struct {
	layer string
	x, y  int64
}

func keyOf(layer string, p geometry.Point) textKey {
	return textKey{strings.ToUpper(layer), int64(math.Round(p.X * 100)), int64(math.Round(p.Y * 100))}
}
