package overhaul

import (
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

func jointOf(title string, change func(*plan.Plan)) *plan.Plan {
	p := &plan.Plan{}
	p.Title, p.Machine = title, "P4"
	if change != nil {
		change(p)
	}
	return p
}

// First principles: a part comes off after the joint that holds it. Which names are
// those of one part is common practice, no source.
func TestPartsAndTheJointsThatHoldThem(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		part, title string
		holds       bool
	}{
		{"cylinder head", "Cylinder head, 4 cylinders", true},
		{"cylinder head with valves", "Cylinder head", true},
		{"sump", "Oil sump", true},
		{"inlet camshaft", "Inlet camshaft caps", true},
		{"camshafts", "Camshaft bolts", true},
		{"couvercle", "Couvercle de culasse", true},
		{"Ölwanne", "Ölwanne", true},
		{"cylinder head", "Cylinder head cover", false},
		{"oil pickup and oil pump", "Oil sump", false},
		{"crankshaft", "Crankshaft pulley", false},
		{"pump", "Pump flange", false},
	} {
		o := Overhaul{Tasks: []Task{{Part: c.part}, {Joint: jointOf(c.title, nil)}}}
		if got := finding.Has(o.Doubts(), PartTooEarly); got != c.holds {
			t.Errorf("%s before %s: %v", c.part, c.title, got)
		}
		o.Tasks = []Task{o.Tasks[1], o.Tasks[0]}
		if found := o.Doubts(); len(found) > 0 {
			t.Errorf("%s after %s: %v", c.part, c.title, found)
		}
	}
}

// First principles.
func TestStepsThatGoTogether(t *testing.T) {
	t.Parallel()
	gasket := func(p *plan.Plan) { p.Clamped.Gasket.Kind = "composite" }
	said := func(text string) func(*plan.Plan) {
		return func(p *plan.Plan) { p.Cautions = []plan.Caution{{Text: text}} }
	}
	view := func(text string) func(*plan.Plan) { return func(p *plan.Plan) { p.View = text } }
	head := Task{Joint: jointOf("Cylinder head, left bank", nil), Gaskets: []string{"head gasket"}}
	for what, c := range map[string]struct {
		tasks []Task
		want  finding.Code
	}{
		"both banks":                      {[]Task{head, {Joint: jointOf("Cylinder head, right bank", gasket), Gaskets: []string{"head gasket"}}}, ""},
		"a gasket of another joint":       {[]Task{head, {Joint: jointOf("Manifold", gasket), Gaskets: []string{"head gasket"}}}, GasketOfOther},
		"a new one, as it says":           {[]Task{head, {Joint: jointOf("Manifold", said("New gasket"))}}, GasketUnlisted},
		"in German":                       {[]Task{head, {Joint: jointOf("Krümmer", said("Neue Dichtung auflegen"))}}, GasketUnlisted},
		"a clean one":                     {[]Task{head, {Joint: jointOf("Manifold", said("Gasket faces clean"))}}, ""},
		"none listed at all":              {[]Task{{Joint: jointOf("Manifold", gasket)}}, ""},
		"a pin stays in":                  {[]Task{{Note: "Timing pin in; photo"}}, LockStaysIn},
		"a pin comes out":                 {[]Task{{Note: "Timing pin in; photo"}, {Tighten: "all pins OUT and counted"}}, ""},
		"a German one":                    {[]Task{{Note: "Absteckdorn einsetzen"}}, LockStaysIn},
		"in, and on the rebuild in again": {[]Task{{Note: "Engine lock OUT", Side: plan.CautionTighten}, {Note: "Engine lock IN", Side: plan.CautionLoosen}, {Note: "Engine lock IN", Side: plan.CautionTighten}}, LockInAgain},
		"out, and never in before":        {[]Task{{Note: "Pin OUT", Side: plan.CautionTighten}, {Note: "Pin OUT", Side: plan.CautionLoosen}, {Note: "Pin IN", Side: plan.CautionTighten}}, LockOutAgain},
		"out on both sides, in on one":    {[]Task{{Note: "Pin OUT", Side: plan.CautionTighten}, {Note: "Pin IN", Side: plan.CautionLoosen}, {Note: "Pin OUT", Side: plan.CautionLoosen}}, LockOutAgain},
		"in at the end":                   {[]Task{{Note: "Pin IN", Side: plan.CautionLoosen}, {Note: "Pin OUT", Side: plan.CautionLoosen}, {Note: "Pin IN", Side: plan.CautionTighten}}, LockStaysIn},
		"in and out on each side":         {[]Task{{Note: "Pin OUT", Side: plan.CautionTighten}, {Note: "Pin IN", Side: plan.CautionLoosen}, {Note: "Pin OUT", Side: plan.CautionLoosen}, {Note: "Pin IN", Side: plan.CautionTighten}}, ""},
		"two locks":                       {[]Task{{Note: "Cam lock OUT", Side: plan.CautionTighten}, {Note: "Cam lock IN", Side: plan.CautionLoosen}, {Note: "Flywheel lock OUT", Side: plan.CautionTighten}, {Note: "Flywheel lock IN", Side: plan.CautionLoosen}}, ""},
		"a transport lock":                {[]Task{{Note: "Transport lock OUT", Side: plan.CautionLoosen}, {Note: "Transport lock IN", Side: plan.CautionTighten}}, ""},
		"the head of the other bank":      {[]Task{head, {Part: "right cylinder head"}}, PartOtherSide},
		"the head of this bank":           {[]Task{head, {Part: "left cylinder head"}}, ""},
		"seen without a part to come off": {[]Task{{Joint: jointOf("Main caps", view("from below, sump off"))}, {Joint: jointOf("Oil sump", nil)}}, OffTooEarly},
		"seen without a part that is off": {[]Task{{Joint: jointOf("Oil sump", nil)}, {Joint: jointOf("Main caps", view("from below, sump off"))}}, ""},
		"a cover of another part":         {[]Task{{Joint: jointOf("Camshaft caps", view("from above, cover off"))}, {Joint: jointOf("Pump cover", nil)}}, ""},
		"dowels go in":                    {[]Task{{Note: "Dowels in, oil in"}}, ""},
	} {
		o := Overhaul{Tasks: c.tasks}
		o.Machine = "P4"
		found := o.Doubts()
		if c.want == "" && len(found) > 0 || c.want != "" && (len(found) != 1 || found[0].Code != c.want) {
			t.Errorf("%s: %v; want %q", what, found, c.want)
		}
	}
}
