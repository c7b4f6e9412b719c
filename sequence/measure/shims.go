package measure

import "drawdown/geometry/unit"

// Shims are the available sizes: from the thinnest to the thickest in equal
// steps.
type Shims struct {
	From unit.Decimal `json:"from"`
	To   unit.Decimal `json:"to"`
	Step unit.Decimal `json:"step"`
}

// Count is the number of sizes.
func (s Shims) Count() int64 { return (s.To.Millionths-s.From.Millionths)/s.Step.Millionths + 1 }

// Size is the size with an index, from 0.
func (s Shims) Size(n int64) unit.Decimal { return s.From.Plus(s.Step.Times(n)) }

// Thickest is the last size. It is below To if the steps do not reach To.
func (s Shims) Thickest() unit.Decimal { return s.Size(s.Count() - 1) }

// nearest is the size nearest to a thickness. Half way between two it is the
// thinner one: a valve with slightly more clearance still closes (common
// practice, no source).
func (s Shims) nearest(to unit.Decimal) unit.Decimal {
	over, step := to.Millionths-s.From.Millionths, s.Step.Millionths
	n := over / step
	if over > 0 && 2*(over%step) > step {
		n++
	}
	return s.Size(min(max(n, 0), s.Count()-1))
}

// Advice is what to do about a shim.
type Advice string

const (
	Keep   Advice = "keep"   // the clearance is within its limits
	Change Advice = "change" // to Size
	NoSize Advice = "none"   // no size in the file brings it within the limits
)

// Shim is the shim required by a measured clearance.
type Shim struct {
	Fitted    unit.Decimal `json:"fitted"`
	Exact     unit.Decimal `json:"exact"`     // fitted + measured − wanted
	Size      unit.Decimal `json:"size"`      // to fit: the nearest of the file's sizes; to keep: the fitted one
	Clearance unit.Decimal `json:"clearance"` // with it
	Advice    Advice       `json:"advice"`
}

// NewShim calculates the shim for a place from the one fitted there and the
// clearance measured with it: new = fitted + measured − wanted, rounded to the
// nearest size. It returns false if the value has no shims or no wanted
// clearance.
func (v Value) NewShim(fitted, measured unit.Decimal) (Shim, bool) {
	aim, wanted := v.Aim()
	if v.Shims == nil || !wanted {
		return Shim{}, false
	}
	s := Shim{Fitted: fitted, Exact: fitted.Plus(measured).Minus(aim)}
	if !v.Judge(measured).Outside() {
		s.Size, s.Clearance, s.Advice = fitted, measured, Keep
		return s, true
	}
	s.Size = v.Shims.nearest(s.Exact)
	s.Clearance, s.Advice = fitted.Plus(measured).Minus(s.Size), Change
	if v.Judge(s.Clearance).Outside() {
		s.Advice = NoSize
	}
	return s, true
}

// Band is a range of clearances for which the fitted shim changes by the same
// amount. It applies to shims of the file's sizes.
type Band struct {
	From, To unit.Decimal // as measured, both inclusive
	By       unit.Decimal // thicker; negative: thinner
	Keep     bool         // no change: within the limits
}

// Bands is the table of changes for clearances from zero until the shim is that
// many steps thicker. Clearances have the decimals of the limits.
func (v Value) Bands(steps int64) []Band {
	aim, wanted := v.Aim()
	if v.Shims == nil || !wanted || v.From == nil || v.To == nil {
		return nil
	}
	tick := unit.Decimal{Millionths: 1_000_000, Decimals: max(v.From.Decimals, v.To.Decimals, v.Shims.Step.Decimals)}
	for range tick.Decimals {
		tick.Millionths /= 10
	}
	var bands []Band
	most := aim.Plus(v.Shims.Step.Times(steps))
	for read := (unit.Decimal{Decimals: tick.Decimals}); !most.Less(read); read = read.Plus(tick) {
		by, keep := v.change(read.Minus(aim)), !v.Judge(read).Outside()
		if keep {
			by = unit.Decimal{}
		}
		last := len(bands) - 1
		if last >= 0 && bands[last].By.Millionths == by.Millionths && bands[last].Keep == keep {
			bands[last].To = read
			continue
		}
		bands = append(bands, Band{read, read, by, keep})
	}
	return bands
}

// change is how much thicker a shim of the file's sizes becomes.
func (v Value) change(over unit.Decimal) unit.Decimal {
	step := v.Shims.Step.Millionths
	n := over.Millionths / step
	rest := over.Millionths % step
	switch {
	case 2*rest > step:
		n++
	case 2*rest <= -step:
		n--
	}
	return v.Shims.Step.Times(n)
}
