package dxf

import (
	"cmp"
	"drawdown/geometry/finding"
	"drawdown/patterns/problem"
	"slices"
	"strings"
)

// layer is a layer of the drawing.
type layer struct {
	name        string
	off, frozen bool
	line        int
}

// state returns how the layer is hidden; it is empty for a visible layer.
func (l layer) state() string {
	switch {
	case l.frozen:
		return "frozen"
	case l.off:
		return "off"
	}
	return ""
}

// LayerCount is a layer of the drawing with the number of its entities, those
// in blocks as often as they are inserted.
type LayerCount struct {
	Name   string // in quotes
	Count  int
	Unread bool // off, frozen or not asked for
}

func (r *reader) layerCounts() (all []LayerCount) {
	for _, name := range r.names {
		key := strings.ToLower(name)
		asked := slices.ContainsFunc(r.ask.Layers, func(one string) bool { return strings.EqualFold(one, name) })
		unread := r.layers[key].state() != ""
		if len(r.ask.Layers) > 0 {
			unread = !asked
		}
		all = append(all, LayerCount{Name: shown(name), Count: r.onLayer[key], Unread: unread})
	}
	return all
}

// readTables reads the layers; the other tables only describe how lines look.
func (r *reader) readTables() {
	for r.until("ENDSEC") {
		isLayer := r.ahead.begins("LAYER")
		if e := r.entity(); isLayer && r.bad == nil {
			r.addLayer(layer{name: r.letters.read(e.text(2)), frozen: r.wholeOf(e, 70, 0)&1 != 0, off: r.wholeOf(e, 62, 7) < 0, line: e.line})
		}
	}
}

func (r *reader) addLayer(l layer) {
	key := strings.ToLower(l.name)
	if _, known := r.layers[key]; !known {
		r.names = append(r.names, l.name)
	}
	r.layers[key] = l
}

// layerOf returns the layer of an entity, and why it is not drawn. Layer 0 of a
// block is the layer of the INSERT.
func (r *reader) layerOf(e entity, ofInsert string) (name string, why finding.Code) {
	name = cmp.Or(r.letters.read(e.text(8)), "0")
	if name == "0" {
		name = cmp.Or(ofInsert, name)
	}
	l, known := r.layers[strings.ToLower(name)]
	const most = 100_000 // layers
	if !known && len(r.names) < most {
		r.addLayer(layer{name: name})
	}
	asked := slices.ContainsFunc(r.ask.Layers, func(one string) bool { return strings.EqualFold(one, name) })
	isInsert := e.kind == "INSERT" // the entities in it have their own layers
	switch {
	case len(r.ask.Layers) > 0:
		if !asked && !isInsert {
			why = NotAsked
		}
	case l.frozen:
		why = OnFrozen
	case l.off && !isInsert: // off hides what is on the layer, not the contents of the block
		why = OnOff
	}
	return name, why
}

// checkLayers refuses layers that were asked for and are missing. Not every
// drawing lists its layers, so they are only known at the end.
func (r *reader) checkLayers() {
	for _, name := range r.ask.Layers {
		if _, known := r.layers[strings.ToLower(name)]; !known {
			r.stop(&fault{found: finding.Failed(NoSuchLayer, finding.Values{"name": shown(name), "meant": problem.Nearest(name, r.names), "layers": r.names})})
		}
	}
}
