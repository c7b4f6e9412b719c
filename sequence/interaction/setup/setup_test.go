package setup

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/plan"
)

// joint has a bolt of one kind, M10 into aluminium with a grip of 20 mm, at each place.
func joint(t *testing.T, at []geometry.Point) plan.Plan {
	t.Helper()
	m10, err := thread.Parse("M10")
	if err != nil {
		t.Fatal(err)
	}
	p := plan.Plan{Kinds: []plan.Kind{{Name: "main", Thread: &m10, Class: "8.8", Grip: 20, Into: "aluminium", Engagement: 18, Length: 45}}}
	for i, place := range at {
		p.Joint.Fasteners = append(p.Joint.Fasteners, geometry.Fastener{ID: fmt.Sprint("B", i+1), Kind: "main", At: place})
	}
	return p
}

func circle(count int, diameter float64) (at []geometry.Point) {
	for k := range count {
		at = append(at, geometry.Polar(geometry.Point{X: 5, Y: 9}, diameter/2, 360*float64(k)/float64(count)))
	}
	return at
}

func settle(t *testing.T, p plan.Plan, stated Setup) Settled {
	t.Helper()
	s, err := Settle(p, stated)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func values(list []finding.Finding, code finding.Code) finding.Values {
	for _, f := range list {
		if f.Code == code {
			return f.Values
		}
	}
	return nil
}

var (
	line  = []geometry.Point{{X: 0}, {X: 50}, {X: 100}, {X: 160}}
	field = geometry.Grid(4, 2, 60, 50, geometry.Point{})
)

// The layout of the fasteners determines the joint, unless the file states it:
// more than six on a circle, or four around a bore, are a flange; if all are in
// clusters they are pieces.
func TestShapes(t *testing.T) {
	t.Parallel()
	bored := func(p *plan.Plan) {
		p.Joint.Bores = []geometry.Bore{{Centre: geometry.Point{X: 5, Y: 9}, Diameter: 60}}
	}
	for name, c := range map[string]struct {
		at     []geometry.Point
		change func(*plan.Plan)
		stated Setup
		want   shape
	}{
		"a field":            {field, nil, Setup{}, plateShape},
		"a line":             {line, nil, Setup{}, rowShape},
		"seven on a circle":  {circle(7, 200), nil, Setup{}, flangeShape},
		"six on a circle":    {circle(6, 200), nil, Setup{}, plateShape},
		"four round a bore":  {circle(4, 200), bored, Setup{}, flangeShape},
		"three round a bore": {circle(3, 200), bored, Setup{}, plateShape},
		"a bore beside": {circle(6, 200), func(p *plan.Plan) {
			p.Joint.Bores = []geometry.Bore{{Centre: geometry.Point{X: 11, Y: 9}, Diameter: 60}}
		}, Setup{}, plateShape},
		"a bore as wide as the circle": {circle(6, 200), func(p *plan.Plan) {
			p.Joint.Bores = []geometry.Bore{{Centre: geometry.Point{X: 5, Y: 9}, Diameter: 201}}
		}, Setup{}, plateShape},
		"an outline of its own": {circle(8, 200), func(p *plan.Plan) {
			p.Joint.Outline = [][]geometry.Point{{{X: -150, Y: -150}, {X: 150, Y: -150}, {X: 150, Y: 150}, {X: -150, Y: 150}}}
		}, Setup{}, plateShape},
		"caps": {line, func(p *plan.Plan) {
			p.Joint.Clusters = []geometry.Cluster{{Name: "1", Of: []string{"B1", "B2"}}, {Name: "2", Of: []string{"B3", "B4"}}}
		}, Setup{}, piecesShape},
		"caps of some": {line, func(p *plan.Plan) {
			p.Joint.Clusters = []geometry.Cluster{{Name: "1", Of: []string{"B1"}}, {Name: "2", Of: []string{"B3", "B4"}}}
		}, Setup{}, rowShape},
		"one cap": {line, func(p *plan.Plan) {
			p.Joint.Clusters = []geometry.Cluster{{Name: "1", Of: []string{"B1", "B2", "B3", "B4"}}}
		}, Setup{}, rowShape},
		"a stated flange": {circle(6, 200), nil, Setup{Flange: &compliance.Flange{}}, flangeShape},
		"a stated row":    {field, nil, Setup{Row: &compliance.Row{}}, rowShape},
	} {
		p := joint(t, c.at)
		if c.change != nil {
			c.change(&p)
		}
		s := &settledSetup{plan: p, stated: c.stated, Settled: Settled{At: p.Joint.Points()}}
		if got := s.shapeOf(); got != c.want {
			t.Errorf("%s: %s, want %s", name, got, c.want)
		}
	}
}

// The part is as thick as stated; otherwise by what is clamped: half of it
// under bolts with nuts, and a share for a block above 40 mm (common practice,
// no source).
func TestThickness(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		grip    unit.Length
		through bool
		stated  Setup
		want    unit.Length
		by      any
	}{
		"stated":       {20, false, Setup{Thickness: 12}, 12, nil},
		"grip":         {20, false, Setup{}, 20, "grip"},
		"half of it":   {20, true, Setup{}, 10, "half"},
		"still a part": {40, false, Setup{}, 40, "grip"},
		"a block":      {41, false, Setup{}, 41 * compliance.HeadBendingShare, "height"},
		"two blocks":   {90, true, Setup{}, 45, "half"},
	} {
		p := joint(t, field)
		p.Kinds[0].Grip, p.Kinds[0].Length = c.grip, c.grip+25
		if c.through {
			p.Kinds[0].Into, p.Kinds[0].NutAcross, p.Kinds[0].Engagement = "", 16, 0
		}
		s := settle(t, p, c.stated)
		var by any
		if v := values(s.Assumed, PartThickness); v != nil {
			by = v["by"]
		}
		if s.Part.Thickness != c.want || by != c.by {
			t.Errorf("%s: %v by %v", name, s.Part.Thickness, by)
		}
		if got := finding.Has(s.Assumed, EqualParts); got != c.through {
			t.Errorf("%s: two equal parts: %v", name, got)
		}
	}
	two := joint(t, field)
	two.Kinds = append(two.Kinds, two.Kinds[0])
	two.Kinds[0].Name, two.Kinds[0].Grip = "rare", 33
	two.Joint.Fasteners[0].Kind = "rare"
	if s := settle(t, two, Setup{}); s.Part.Thickness != 20 {
		t.Errorf("the kind with most bolts has a grip of 20 mm: %v", s.Part.Thickness)
	}
}

// Reasons why a joint cannot be completed.
func TestWhatCannotBeSettled(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		at     []geometry.Point
		change func(*plan.Plan)
		stated Setup
		want   finding.Code
	}{
		"no fasteners":           {nil, nil, Setup{}, compliance.NoFasteners},
		"no round flange":        {field, nil, Setup{Flange: &compliance.Flange{}}, NotRound},
		"no edge":                {line, nil, Setup{Strip: 12}, NoEdge},
		"the part's material":    {field, nil, Setup{Material: "cheese"}, PartUnknown},
		"what it lies on":        {field, nil, Setup{Counterpart: "cheese"}, CounterpartUnknown},
		"no grip":                {field, func(p *plan.Plan) { p.Kinds[0].Grip = 0 }, Setup{}, ThicknessUnknown},
		"no thread":              {field, func(p *plan.Plan) { p.Kinds[0].Thread = nil }, Setup{}, FlexibilityUnknown},
		"a band that falls":      {field, nil, Setup{Foundation: bounds.Band{Low: 2, Nominal: 1, High: 3}}, NotRising},
		"a band without an end":  {field, nil, Setup{Foundation: bounds.Band{Low: 1, Nominal: 2, High: math.Inf(1)}}, NotRising},
		"a band from 0":          {field, nil, Setup{Stiffness: bounds.Band{Low: 0, Nominal: 1, High: 3}}, NotRising},
		"a middle above its end": {field, nil, Setup{Stiffness: bounds.Band{Low: 1, Nominal: 4, High: 3}}, NotRising},
	} {
		p := joint(t, c.at)
		if c.change != nil {
			c.change(&p)
		}
		if _, err := Settle(p, c.stated); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %s", name, err, c.want)
		}
	}
	same := bounds.Band{Low: 2, Nominal: 2, High: 2}
	if s := settle(t, joint(t, field), Setup{Foundation: same}); s.Foundation != same {
		t.Errorf("a band of one figure: %v", s.Foundation)
	}
}

// Stated values replace those of the file, field by field. A stated gasket or
// part drops a row of the file, which includes both.
func TestStatedOverTheFile(t *testing.T) {
	t.Parallel()
	band := bounds.Band{Low: 1, Nominal: 2, High: 3}
	file := Setup{Material: "steel", Thickness: 30, Counterpart: "aluminium", CounterpartThickness: 10, Gasket: compliance.FibreSheet, Strip: 9, Own: 1e-6}
	got, assumed := Setup{Thickness: 12, Strip: 8}.over(file)
	want := file
	want.Thickness, want.Strip = 12, 8
	if got != want || len(assumed) > 0 {
		t.Errorf("%+v, %v", got, assumed)
	}
	withRow := Setup{Row: &compliance.Row{LengthMm: 300}, Foundation: band, Own: 1e-6}
	for name, c := range map[string]struct {
		stated Setup
		kept   bool
	}{
		"nothing": {Setup{}, true}, "flexibility": {Setup{Own: 2e-6}, true}, "a gasket": {Setup{Gasket: compliance.NoGasket}, false},
		"its stiffness": {Setup{Stiffness: band}, false}, "a foundation": {Setup{Foundation: band}, false}, "a material": {Setup{Material: "steel"}, false},
		"a thickness": {Setup{Thickness: 5}, false}, "what it lies on": {Setup{Counterpart: "steel"}, false}, "its thickness": {Setup{CounterpartThickness: 5}, false},
		"a preview": {Setup{Preview: true}, false},
	} {
		got, assumed := c.stated.over(withRow)
		if (got.Row != nil) != c.kept || finding.Has(assumed, RowLeft) == c.kept || c.kept != (got.Foundation == band && got.Row != nil) {
			t.Errorf("%s: %+v, %v", name, got, assumed)
		}
	}
	gaskets := Setup{Gasket: compliance.FibreSheet, Stiffness: band, Foundation: band}
	if got, _ := (Setup{Gasket: compliance.NoGasket}).over(gaskets); got.Stiffness != (bounds.Band{}) || got.Foundation != (bounds.Band{}) {
		t.Errorf("a gasket of one's own: %+v", got)
	}
	flange := flangeOver(&compliance.Flange{Outer: 300, GasketInner: 160, GasketOuter: 180}, &compliance.Flange{Outer: 280, Bore: 150, GasketInner: 155, GasketOuter: 170, PipeWall: 8, PipeRadius: 79})
	if *flange != (compliance.Flange{Outer: 300, Bore: 150, GasketInner: 160, GasketOuter: 180, PipeWall: 8, PipeRadius: 79}) {
		t.Errorf("%+v", *flange)
	}
	flange = flangeOver(&compliance.Flange{Bore: 140, PipeWall: 6, PipeRadius: 75}, &compliance.Flange{Outer: 280, Bore: 150, GasketInner: 155, GasketOuter: 170, PipeWall: 8, PipeRadius: 79})
	if *flange != (compliance.Flange{Outer: 280, Bore: 140, GasketInner: 155, GasketOuter: 170, PipeWall: 6, PipeRadius: 75}) {
		t.Errorf("%+v", *flange)
	}
	if only := (&compliance.Flange{Bore: 1}); flangeOver(only, nil) != only || flangeOver(nil, only) != only {
		t.Error("of one flange the other is taken")
	}
}

// Defaults: the usual gasket for the shape, the material, the dimensions of a
// flange (common practice, no source).
func TestUsualJoints(t *testing.T) {
	t.Parallel()
	thick := joint(t, field)
	thick.Kinds[0].Grip, thick.Kinds[0].Length = 60, 90
	caps := joint(t, line)
	caps.Joint.Clusters = []geometry.Cluster{{Name: "1", Of: []string{"B1", "B2"}}, {Name: "2", Of: []string{"B3", "B4"}}}
	for name, c := range map[string]struct {
		plan     plan.Plan
		gasket   compliance.Gasket
		material string
	}{
		"cover":  {joint(t, field), compliance.FibreSheet, "cast aluminium"},
		"head":   {thick, compliance.MultiLayerSteel, "cast aluminium"},
		"flange": {joint(t, circle(8, 240)), compliance.ThickFibreSheet, "steel"},
		"caps":   {caps, compliance.NoGasket, "cast aluminium"},
		"row":    {joint(t, line), compliance.FibreSheet, "cast aluminium"},
	} {
		s := settle(t, c.plan, Setup{})
		if got := values(s.Assumed, Gasket)["gasket"]; got != gasketTerm(c.gasket) {
			t.Errorf("%s: %v, want %s", name, got, c.gasket)
		}
		if got := values(s.Assumed, PartMaterial)["material"]; got != finding.Term(c.material) {
			t.Errorf("%s: of %v", name, got)
		}
		if got := values(s.Assumed, UnderMaterial)["material"]; got != finding.Term("cast aluminium") { // of its tapped holes
			t.Errorf("%s: lies on %v", name, got)
		}
		if finding.Has(s.Assumed, FacesMeet) != (c.gasket == compliance.NoGasket) {
			t.Errorf("%s: %v", name, s.Assumed)
		}
	}
	s := settle(t, joint(t, circle(8, 240)), Setup{})
	f := s.Kernel.(compliance.Flange) // 2.2 threads outside the bolt circle, 4 inside: M10
	if math.Abs(float64(f.BoltCircle)-240) > 1e-9 || math.Abs(float64(f.Outer)-262) > 1e-9 || math.Abs(float64(f.Bore)-200) > 1e-9 || f.Pair || f.Centre.Distance(geometry.Point{X: 5, Y: 9}) > 1e-9 {
		t.Errorf("%+v", f)
	}
	bored := joint(t, circle(8, 240))
	bored.Joint.Bores = []geometry.Bore{{Centre: geometry.Point{X: 5, Y: 9}, Diameter: 150}}
	bored.Kinds[0].Into, bored.Kinds[0].NutAcross, bored.Kinds[0].Engagement = "", 16, 0
	if f := settle(t, bored, Setup{}).Kernel.(compliance.Flange); f.Bore != 150 || !f.Pair {
		t.Errorf("%+v", f)
	}
	bored.Clamped.Flange = &plan.Flange{Single: true, Outer: 300}
	if f := settle(t, bored, Setup{}).Kernel.(compliance.Flange); f.Pair || f.Outer != 300 {
		t.Errorf("of one piece: %+v", f)
	}
	tight := settle(t, joint(t, circle(8, 40)), Setup{}).Kernel.(compliance.Flange)
	if math.Abs(float64(tight.Bore)-10) > 1e-9 { // at least a quarter of the circle
		t.Errorf("%+v", tight)
	}
	row := settle(t, joint(t, line), Setup{}).Kernel.(compliance.Row) // one and a half threads beyond the bolts
	if row.WidthMm != 30 || row.StartMm != 15 || row.LengthMm != 190 {
		t.Errorf("%+v", row)
	}
	pieces := settle(t, caps, Setup{}).Kernel.(compliance.Separate)
	if len(pieces) != 2 || !slices.Equal(pieces[1].Fasteners, []int{2, 3}) || pieces[1].Kernel.(compliance.Row).LengthMm != 90 {
		t.Errorf("%+v", pieces)
	}
}

// The gasket of a cover follows its edge, twice as wide as the distance of a
// bolt from it; it covers the whole face if a bolt is inside or bores go
// through.
func TestStrip(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		change func(*plan.Plan)
		stated Setup
		want   float64
		why    any // reason for a whole face
	}{
		"a cover":       {func(*plan.Plan) {}, Setup{}, 24, nil}, // bolts are at most 12 mm from the edge
		"stated":        {func(*plan.Plan) {}, Setup{Strip: 14}, 14, nil},
		"a bolt inside": {func(p *plan.Plan) { p.Joint.Fasteners[0].At = geometry.Point{Y: 25} }, Setup{}, 0, "inside"},
		"near a quarter of the cover": {func(p *plan.Plan) {
			for i := range p.Joint.Fasteners {
				if f := &p.Joint.Fasteners[i]; f.At.Y > 0 {
					f.At.Y = 72
				}
			}
		}, Setup{}, 30, nil}, // of 31
		"two bores": {func(p *plan.Plan) { p.Joint.Bores = []geometry.Bore{{Diameter: 9}, {Diameter: 9}} }, Setup{}, 0, nil},
		"one bore":  {func(p *plan.Plan) { p.Joint.Bores = []geometry.Bore{{Diameter: 9}} }, Setup{}, 24, nil},
	} {
		p := joint(t, field)
		p.Joint.Outline = [][]geometry.Point{{{X: -200, Y: -37}, {X: 200, Y: -37}, {X: 200, Y: 87}, {X: -200, Y: 87}}}
		for i := range p.Joint.Fasteners {
			if f := &p.Joint.Fasteners[i]; f.At.Y > 0 {
				f.At.Y = 75
			}
		}
		c.change(&p)
		s := &settledSetup{plan: p, Settled: Settled{At: p.Joint.Points()}, stated: c.stated}
		got := s.strip(p.Joint.Outline)
		if got != c.want || finding.Has(s.Assumed, GasketWhole) != (c.want == 0) || values(s.Assumed, GasketWhole)["why"] != c.why || c.want > 0 && c.stated.Strip == 0 && values(s.Assumed, GasketStrip)["width"] != unit.Length(c.want) {
			t.Errorf("%s: %g, %v", name, got, s.Assumed)
		}
	}
}

// What bends under the part: what is stated, an equal part under bolts with
// nuts, otherwise nothing.
func TestCounterpart(t *testing.T) {
	t.Parallel()
	block := settle(t, joint(t, field), Setup{Material: "steel"})
	stated := settle(t, joint(t, field), Setup{Material: "steel", Counterpart: "steel", CounterpartThickness: 20})
	through := joint(t, field)
	through.Kinds[0].Into, through.Kinds[0].NutAcross, through.Kinds[0].Engagement = "", 16, 0
	equal := settle(t, through, Setup{Material: "steel", Thickness: 20})
	alone := block.Kernel.(compliance.Plate).RigidityNmm
	if got := stated.Kernel.(compliance.Plate).RigidityNmm; math.Abs(got/compliance.Facing(alone, alone)-1) > 1e-9 {
		t.Errorf("facing a part like it: %g, alone %g", got, alone)
	}
	if got := equal.Kernel.(compliance.Plate).RigidityNmm; math.Abs(got/compliance.Facing(alone, alone)-1) > 1e-9 || !finding.Has(equal.Assumed, EqualParts) {
		t.Errorf("two equal parts: %g, alone %g", got, alone)
	}
	if _, plate := settle(t, joint(t, field), Setup{Preview: true}).Kernel.(compliance.InfinitePlate); !plate {
		t.Error("a preview is a plate without edges")
	}
	own := settle(t, joint(t, field), Setup{Own: 3e-6}).Own
	if len(own) != len(field) || own[0] != 3e-6 || own[7] != 3e-6 {
		t.Errorf("%v", own)
	}
	s := &settledSetup{through: true, stated: Setup{Counterpart: "aluminium"}, material: "steel"}
	s.Part.Thickness, s.other.Thickness = 30, 10
	if layers := s.layers(60); len(layers) != 2 || layers[0].Thickness != 45 || layers[1].Thickness != 15 || layers[0].Material != "steel" || layers[1].Material != "aluminium" {
		t.Errorf("%v", layers)
	}
	for name, change := range map[string]func(*settledSetup){
		"tapped": func(s *settledSetup) { s.through = false }, "not stated": func(s *settledSetup) { s.stated.Counterpart = "" }, "a block": func(s *settledSetup) { s.other.Thickness = 0 },
	} {
		one := *s
		change(&one)
		if layers := one.layers(60); len(layers) != 1 || layers[0].Thickness != 60 || layers[0].Material != "steel" {
			t.Errorf("%s: %v", name, layers)
		}
	}
}

// Each stated value is a fact, and nothing else is. The sheet shows those of
// part and gasket, the gasket first.
func TestFacts(t *testing.T) {
	t.Parallel()
	band := bounds.Band{Low: 1, Nominal: 2, High: 3}
	for name, c := range map[string]struct {
		stated Setup
		want   []finding.Code
	}{
		"nothing": {Setup{}, nil}, "material": {Setup{Material: "steel"}, []finding.Code{PartMaterial}}, "thickness": {Setup{Thickness: 3}, []finding.Code{PartThickness}},
		"under": {Setup{Counterpart: "steel", CounterpartThickness: 3}, []finding.Code{UnderMaterial, UnderThickness}}, "gasket": {Setup{Gasket: compliance.NoGasket}, []finding.Code{Gasket}},
		"stiffness": {Setup{Gasket: compliance.FibreSheet, Stiffness: band}, []finding.Code{GasketStiffness}}, "foundation": {Setup{Foundation: band}, []finding.Code{Foundation}},
		"row": {Setup{Foundation: band, Row: &compliance.Row{}}, []finding.Code{RowStated}}, "strip": {Setup{Strip: 3}, []finding.Code{GasketStrip}}, "own": {Setup{Own: 1}, []finding.Code{Flexibility}},
		"full flange":   {Setup{Flange: &compliance.Flange{Outer: 3, Bore: 2}}, []finding.Code{FlangeAcross, FlangeBore}},
		"raised flange": {Setup{Flange: &compliance.Flange{GasketInner: 2, GasketOuter: 3, PipeWall: 1}}, []finding.Code{GasketRaised, Pipe}},
	} {
		var got []finding.Code
		for _, f := range c.stated.facts() {
			got = append(got, f.Code)
		}
		if !slices.Equal(got, c.want) {
			t.Errorf("%s: %v, want %v", name, got, c.want)
		}
	}
	told := Basis([]finding.Finding{finding.Noted(PartMaterial, nil), finding.Noted(KindGrip, nil), finding.Noted(Gasket, nil)})
	if len(told) != 2 || told[0].Code != Gasket || told[1].Code != PartMaterial {
		t.Errorf("%v", told)
	}
	if materialTerm("steel") != "steel" || materialTerm("210 GPa") != "210 GPa" || gasketTerm(compliance.NoGasket) != "no gasket" || gasketTerm(compliance.FibreSheet) != finding.Term(compliance.FibreSheet) {
		t.Errorf("%s, %s", materialTerm("steel"), gasketTerm(compliance.NoGasket))
	}
	if OfBolts(finding.Noted(Gasket, nil)) || !OfBolts(finding.Noted(KindGrip, nil).About(finding.Place{Kind: "main"})) {
		t.Error("which facts are of bolts")
	}
}

// Assumptions are listed with their figures; those without effect are not.
func TestWhatIsAssumed(t *testing.T) {
	t.Parallel()
	row := settle(t, joint(t, line), Setup{})
	if v := values(row.Assumed, RowSize); v["width"] != unit.Length(30) || v["length"] != unit.Length(190) {
		t.Errorf("a row: %v", v)
	}
	caps := joint(t, line)
	caps.Joint.Clusters = []geometry.Cluster{{Name: "1", Of: []string{"B1", "B2"}}, {Name: "2", Of: []string{"B3", "B4"}}}
	pieces := settle(t, caps, Setup{})
	if v := values(pieces.Assumed, SeparateParts); v["width"] != unit.Length(30) || v["parts"] != 2 {
		t.Errorf("caps: %v", v)
	}
	if v := values(pieces.Assumed, FacesMeet); v["factor"] != compliance.BlockDoubt {
		t.Errorf("faces that meet: %v", v)
	}
	plate := settle(t, joint(t, field), Setup{Material: "steel"}) // two edges of 15 mm beyond the bolts
	box := plate.Kernel.(compliance.Plate).Box
	if v := values(plate.Assumed, Outline); v["width"] != unit.Length(180+60) || v["height"] != unit.Length(50+60) || box.Width() != 240 || box.Height() != 110 {
		t.Errorf("a plate: %v, %v", v, box)
	}
	if v := values(plate.Stated, PartMaterial); v["material"] != finding.Term("steel") || values(plate.Assumed, PartMaterial) != nil {
		t.Errorf("stated: %v", plate.Stated)
	}
	stated := Setup{Row: &compliance.Row{BendingNmm2: 1e9, WidthMm: 1, LengthMm: 200, StartMm: 20}, Foundation: bounds.Band{Low: 1, Nominal: 2, High: 3}}
	if s := settle(t, joint(t, line), stated); values(s.Assumed, PartMaterial) == nil || values(s.Assumed, UnderMaterial) != nil { // needed for its bolts
		t.Errorf("a stated row: %v", s.Assumed)
	}
	stated.Own = 1e-6
	if s := settle(t, joint(t, line), stated); values(s.Assumed, PartMaterial) != nil {
		t.Errorf("a stated row with stated bolts: %v", s.Assumed)
	}
	for grip, want := range map[unit.Length]compliance.Gasket{40: compliance.FibreSheet, 42: compliance.MultiLayerSteel} {
		p := joint(t, field)
		p.Kinds[0].Grip, p.Kinds[0].Length = grip, grip+25
		if s := settle(t, p, Setup{}); values(s.Assumed, Gasket)["gasket"] != gasketTerm(want) {
			t.Errorf("a grip of %v: %v", grip, s.Assumed)
		}
	}
	two := joint(t, field)
	two.Kinds = append(two.Kinds, two.Kinds[0])
	two.Kinds[1].Name, two.Kinds[1].Grip = "other", 33
	for i := range 4 {
		two.Joint.Fasteners[i].Kind = "other"
	}
	if s := settle(t, two, Setup{}); s.Part.Thickness != 20 {
		t.Errorf("of two kinds with as many bolts the first counts: %v", s.Part.Thickness)
	}
	open := joint(t, field)
	open.Kinds[0].Grip, open.Kinds[0].Into, open.Kinds[0].Engagement, open.Kinds[0].NutAcross, open.Kinds[0].Length = 0, "", 0, 16, 45
	if s := settle(t, open, Setup{Thickness: 12}); values(s.Assumed, KindGrip)["grip"] != unit.Length(24) {
		t.Errorf("a grip of both parts: %v", s.Assumed)
	}
}

// The gasket and the block under it deflect in series.
func TestFoundation(t *testing.T) {
	t.Parallel()
	gasket := bounds.Band{Low: 50, Nominal: 100, High: 200}
	s := settle(t, joint(t, field), Setup{Material: "steel", Thickness: 15, Counterpart: "steel", Stiffness: gasket})
	block := compliance.BlockMPaPerMm(s.Part.RigidityNmm(), s.Part)
	if want := compliance.FoundationMPaPerMm(gasket, block); s.Foundation != want || !(s.Foundation.Nominal < 100) {
		t.Errorf("%v, want %v", s.Foundation, want)
	}
}
