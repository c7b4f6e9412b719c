// Package gasket has what a gasket needs and bears, by its kind: stresses, how
// far it is compressed, how stiff it is on unloading, how much of its load it
// keeps. It knows no bolts and no plan.
package gasket

import (
	"cmp"

	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
)

// Window is the range of stress in which a gasket seals.
type Window struct {
	Seating unit.Stress // least that it needs once, when the joint is tightened
	Work    unit.Stress // least that it needs at work
	Crush   unit.Stress // greatest that it bears
}

// Known reports whether any of the stresses is known.
func (w Window) Known() bool { return w != Window{} }

// Over replaces the stresses of another window by those that are stated.
func (w Window) Over(usual Window) Window {
	return Window{cmp.Or(w.Seating, usual.Seating), cmp.Or(w.Work, usual.Work), cmp.Or(w.Crush, usual.Crush)}
}

// Kind is how gaskets of a kind behave.
type Kind struct {
	Window
	// Squeezed is the greatest share of its thickness by which it can be
	// compressed: a spiral down to its rings, a sheet until it is solid.
	Squeezed float64
	// Recovers is its stiffness on unloading divided by that on loading.
	Recovers bounds.Band
	// Keeps is the share of its load that is left when it has crept.
	Keeps bounds.Band
}

// Source is where the windows come from.
const Source = "ASME BPVC VIII-1, table 2-5.1 (y of metal gaskets), EN 13555 as on usual data sheets (values from memory)"

// kinds holds the gaskets that seal by stress on their face. The seating stress
// of metal gaskets is y of ASME BPVC VIII-1, table 2-5.1 (10,000 psi); all other
// figures are engineering estimates from usual data sheets after EN 13555. All
// are values from memory. Head gaskets seal by the
// line pressure of their beads, an O-ring and a sealant by themselves: a mean
// stress says nothing about these.
var kinds = map[compliance.Gasket]Kind{
	compliance.FibreSheet:      {Window{20, 10, 200}, 0.35, bounds.Band{Low: 3, Nominal: 5, High: 8}, bounds.Band{Low: 0.75, Nominal: 0.85, High: 0.95}},
	compliance.ThickFibreSheet: {Window{15, 8, 120}, 0.35, bounds.Band{Low: 3, Nominal: 5, High: 8}, bounds.Band{Low: 0.70, Nominal: 0.80, High: 0.90}},
	compliance.CorkRubber:      {Window{2.8, 1.4, 10}, 0.60, bounds.Band{Low: 1.5, Nominal: 2, High: 3}, bounds.Band{Low: 0.50, Nominal: 0.65, High: 0.80}},
	compliance.SpiralWound:     {Window{69, 35, 250}, 0.30, bounds.Band{Low: 4, Nominal: 8, High: 15}, bounds.Band{Low: 0.85, Nominal: 0.92, High: 0.97}},
	compliance.GroovedMetal:    {Window{69, 35, 400}, 0.20, bounds.Band{Low: 4, Nominal: 8, High: 15}, bounds.Band{Low: 0.90, Nominal: 0.95, High: 0.98}},
	compliance.Graphite:        {Window{20, 10, 140}, 0.50, bounds.Band{Low: 5, Nominal: 10, High: 20}, bounds.Band{Low: 0.88, Nominal: 0.94, High: 0.98}},
	compliance.MultiLayerSteel: {Window{}, 0.30, bounds.Band{Low: 1, Nominal: 2, High: 4}, bounds.Band{Low: 0.95, Nominal: 0.98, High: 1}},
	compliance.Composite:       {Window{}, 0.35, bounds.Band{Low: 3, Nominal: 5, High: 8}, bounds.Band{Low: 0.80, Nominal: 0.90, High: 0.97}},
	compliance.PTFE:            {Window{20, 10, 60}, 0.50, bounds.Band{Low: 3, Nominal: 5, High: 8}, bounds.Band{Low: 0.50, Nominal: 0.65, High: 0.80}},
}

// usual is a gasket of an unknown kind: what all of them have in common.
var usual = Kind{Squeezed: 0.6, Recovers: bounds.Band{Low: 1.5, Nominal: 5, High: 15}, Keeps: bounds.Band{Low: 0.5, Nominal: 0.8, High: 0.97}}

// bare are faces that touch: nothing is compressed, and nothing creeps.
var bare = Kind{Keeps: bounds.Band{Low: 1, Nominal: 1, High: 1}}

// Of returns how gaskets of a kind behave. The window is unknown if the mean
// stress of the face does not decide whether such a gasket seals.
func Of(kind compliance.Gasket) Kind {
	if k, listed := kinds[kind]; listed {
		return k
	}
	if Bare(kind) {
		return bare
	}
	return usual
}

// Bare reports whether the faces of the parts touch beside such a gasket.
func Bare(kind compliance.Gasket) bool {
	band, err := kind.StiffnessMPaPerMm()
	return err == nil && band == (bounds.Band{})
}

// Compression returns how far a gasket is compressed at a stress, at most the
// share of its thickness by which its kind can be; a thickness of 0 is unknown.
func (k Kind) Compression(stress unit.Stress, mpaPerMm float64, thickness unit.Length) unit.Length {
	if mpaPerMm <= 0 {
		return 0
	}
	most := unit.Length(k.Squeezed) * thickness
	pressed := unit.Length(float64(stress) / mpaPerMm)
	if thickness > 0 && most > 0 {
		return min(pressed, most)
	}
	return pressed
}

// AtLeast limits the stiffness on loading from below, so that a stress does not
// compress the gasket by more than its thickness allows.
func (k Kind) AtLeast(mpaPerMm bounds.Band, stress unit.Stress, thickness unit.Length) bounds.Band {
	most := k.Squeezed * float64(thickness)
	if most <= 0 {
		return mpaPerMm
	}
	least := float64(stress) / most
	return bounds.Band{Low: max(mpaPerMm.Low, least), Nominal: max(mpaPerMm.Nominal, least), High: max(mpaPerMm.High, least)}
}
