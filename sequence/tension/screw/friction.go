package screw

import (
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Range is the range of a coefficient of friction with its expected value.
type Range struct{ Low, Nominal, High float64 }

// Friction holds the coefficients in the thread (µG) and under the head (µK).
type Friction struct{ Thread, Head Range }

// Between returns the range from low to high with its middle as nominal. Equal
// ends mean that the coefficient is known exactly.
func Between(low, high float64) Range { return Range{low, (low + high) / 2, high} }

// Same returns the same range in the thread and under the head.
func Same(r Range) Friction { return Friction{r, r} }

// check reports what is wrong with stated coefficients.
func (f Friction) check() error {
	for _, part := range []struct {
		where finding.Term
		Range
	}{{inThread, f.Thread}, {underHead, f.Head}} {
		// The negations catch NaN too.
		if !(part.Low >= unit.Sensible.Friction.Least && part.High <= unit.Sensible.Friction.Most) {
			return finding.Failed(FrictionRange, finding.Values{"low": part.Low, "high": part.High, "span": part.Low < part.High, "where": part.where, "least": unit.Sensible.Friction.From, "most": unit.Sensible.Friction.To})
		}
		if !(part.Low <= part.Nominal && part.Nominal <= part.High) {
			return finding.Failed(FrictionFalls, finding.Values{"low": part.Low, "nominal": part.Nominal, "high": part.High, "where": part.where})
		}
	}
	return nil
}

// Spread gives coefficients without a range that of their class, because no
// real joint has less scatter; a stated range is not changed. VDI 2230 Part 1,
// table A5.
func (f Friction) Spread() Friction { return Friction{f.Thread.spread(), f.Head.spread()} }

func (r Range) spread() Range {
	if r.Low < r.High {
		return r
	}
	_, class := ClassOf(r.Nominal)
	return Range{min(class.Low, r.Nominal), r.Nominal, max(class.High, r.Nominal)}
}

// scatters reports whether the coefficients have a range.
func (f Friction) scatters() bool {
	return f.Thread.Low < f.Thread.High || f.Head.Low < f.Head.High
}
