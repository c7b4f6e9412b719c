package mechanics

import (
	"maps"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/patterns/form"
	"drawdown/patterns/nodes"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

// Lubricants holds what a shop has measured with lubricants of its own, by
// their names.
type Lubricants map[string]Measured

// Measured is the result of a friction test: coefficients of friction, or a nut
// factor with how far the lowest and the highest are from it.
type Measured struct {
	Friction          *screw.Friction
	NutFactor, Spread float64
}

// LubricantKeys are the keys of a lubricant.
var LubricantKeys = []string{"friction", "k", "spread"}

const lubricantExample = "our paste: {friction: 0.115, spread: 0.012}"

// factorLimits are those of a nut factor; the friction that it stands for is
// checked with the thread.
var factorLimits = unit.Limits{Least: 0.01, Most: 1, From: "0.01", To: "1"}

// ReadLubricants reads the lubricants of a shop:
//
//	our paste: {friction: 0.115, spread: 0.012}
//	bought bolts: {k: 0.18, spread: 0.02}
func ReadLubricants(from *form.Reader, n *nodes.Node) Lubricants {
	r := reader{from}
	if n.Shape != nodes.Map || len(n.Entries) == 0 {
		r.Fail(n, form.NoMap, finding.Values{"what": "lubricants", "found": n.Called(), "allowed": []string{lubricantExample}})
		return nil
	}
	own := Lubricants{}
	for _, e := range n.Entries {
		name, ok := r.Text(e.Key, finding.Term("a lubricant's name"))
		if f, isMap := r.Fields(e.Value, finding.Term("a lubricant"), LubricantKeys...); ok && isMap {
			own[name] = r.measured(f)
		}
	}
	return own
}

func (r *reader) measured(f form.Fields) Measured {
	key, limits := f.Which("friction", "k"), unit.Sensible.Friction
	if key == "k" {
		limits = factorLimits
	}
	number := func(n *nodes.Node, what any) (float64, bool) { return r.Number(n, what, limits) }
	mean, ok := form.Given(f.Get(key), key, number)
	spread, okSpread := form.Given(f.Need("spread", lubricantExample), "spread", func(n *nodes.Node, what any) (float64, bool) {
		return r.Number(n, what, unit.Limits{Least: 0, Most: 1, From: "0", To: "1"})
	})
	switch {
	case !ok || !okSpread:
		return Measured{}
	case limits.Check("", mean-spread) != nil || limits.Check("", mean+spread) != nil:
		r.Fail(f.Get("spread"), SpreadWide, finding.Values{"mean": mean, "spread": spread, "least": limits.From, "most": limits.To})
		return Measured{}
	case key == "k":
		return Measured{NutFactor: mean, Spread: spread}
	}
	both := screw.Same(screw.Range{Low: mean - spread, Nominal: mean, High: mean + spread})
	return Measured{Friction: &both}
}

// lubricant reads what is on the thread. An unknown one is a warning, and only
// if the friction is not stated: it is printed, but nothing can be calculated
// from it.
func (r *reader) lubricant(f form.Fields, k *plan.Kind, own Lubricants) {
	k.Lubricant = f.Text("lubricant")
	if k.Lubricant == "" || f.Has("friction") {
		return
	}
	if test, ok := own[k.Lubricant]; ok {
		k.Friction, k.NutFactor, k.NutFactorSpread = test.Friction, test.NutFactor, test.Spread
		return
	}
	if _, err := screw.FrictionOf(k.Lubricant); err != nil {
		allowed := slices.Concat(slices.Sorted(maps.Keys(own)), screw.Lubricants())
		r.Unreadable(f.Get("lubricant"), finding.Warning, nil, finding.Failed(screw.NoSuchLubricant, finding.Values{"written": k.Lubricant, "allowed": allowed}))
	}
}
