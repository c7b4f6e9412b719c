package report

import (
	"drawdown/render/words"
	"drawdown/sequence/service"
)

// serviceJSON is what a kind adds to its joint. The gasket is that of all kinds;
// forces are those of one fastener.
func serviceJSON(j service.Joint, kind string) object {
	k := j.Kind(kind)
	if k == nil {
		return nil
	}
	return object{
		{"gasket", gasketJSON(j.Gasket)},
		{"at_work", Listed(statesJSON(k.States))},
		{"limits", Listed(limitsJSON(k.Limits))},
		{"limited_aim", aimJSON(k.Aim)},
		{"hot_yield_used", yieldJSON(k.Yield)},
		{"fatigue", fatigueJSON(k.Fatigue)},
	}
}

func gasketJSON(g *service.Gasket) any {
	if g == nil {
		return nil
	}
	var states []object
	for _, s := range g.AtWork {
		states = append(states, object{{"state", string(s.State)}, {"stress_MPa", stressesJSON(s.Stress)}})
	}
	return object{
		{"kind", given(string(g.Kind))},
		{"area_mm2", Figure(g.AreaMm2)},
		{"stress_MPa", stressesJSON(g.Tightened)}, // mean over the face, when tightened
		{"window_MPa", when(g.Window.Known(), object{
			{"seating", given(Figure(g.Window.Seating))}, {"work", given(Figure(g.Window.Work))}, {"crush", given(Figure(g.Window.Crush))},
		})},
		{"window_stated", g.Stated},
		{"compression_mm", given(Figure(g.Compression.Nominal))},
		{"compression_range_mm", when(g.Compression.Nominal > 0, lowToHigh(g.Compression.Low, g.Compression.Nominal, g.Compression.High))},
		{"thickness_mm", given(Figure(g.Thickness))},
		{"at_work", Listed(states)},
	}
}

func stressesJSON(s service.Stresses) object { return lowToHigh(s.Low, s.Nominal, s.High) }

func forcesJSON(f service.Forces) object { return lowToHigh(f.Low, f.Nominal, f.High) }

func lowToHigh[T ~float64](low, nominal, high T) object {
	return object{{"low", Figure(low)}, {"nominal", Figure(nominal)}, {"high", Figure(high)}}
}

func statesJSON(states []service.State) (list []object) {
	for _, s := range states {
		list = append(list, object{{"state", string(s.Name)}, {"clamp_N", forcesJSON(s.Clamp)}, {"needed_N", given(Figure(s.Needed))}})
	}
	return list
}

func limitsJSON(limits []service.Limit) (list []object) {
	for _, l := range limits {
		list = append(list, object{{"by", string(l.By)}, {"preload_N", Figure(l.Force)}})
	}
	return list
}

func aimJSON(a *service.Aim) any {
	if a == nil {
		return nil
	}
	return object{
		{"by", string(a.By)},
		{"torque_Nm", Figure(a.Torque)},
		{"preload_N", forcesJSON(a.Preload)},
		{"needed_N", given(Figure(a.Needed))},
		{"reaches_needed", a.Reaches()},
	}
}

func yieldJSON(y *service.Yield) any {
	if y == nil {
		return nil
	}
	return object{{"cold", Figure(y.Cold)}, {"nominal", Figure(y.Nominal)}, {"high", Figure(y.High)}}
}

func fatigueJSON(f *service.Fatigue) any {
	if f == nil {
		return nil
	}
	return object{{"amplitude_MPa", Figure(f.Amplitude)}, {"limit_MPa", Figure(f.Limit)}}
}

// serviceGroundsJSON is what the figures of the joint rest on.
func serviceGroundsJSON(c *words.Catalogue, j service.Joint) any {
	return object{
		{"open", Listed(c.SayAll(j.Open))},
		{"assumptions", Listed(c.SayAll(j.Assumed))},
		{"sources", Listed(j.Sources)},
	}
}
