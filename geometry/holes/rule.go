// Package holes classifies the round holes of a drawing or a scan: holes for
// fasteners, for dowels, and bores. Only places and diameters are known, so the
// result follows a rule and can be wrong; someone who has the part can set the
// ranges. The package may import geometry and its units; no drawing, no
// picture.
package holes

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"regexp"
	"slices"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Use is the purpose of a hole.
type Use string

const (
	Fastener Use = "fastener"
	Dowel    Use = "dowel"
	Bore     Use = "bore"
	Other    Use = "other" // smaller than every fastener asked for
)

// Range is a span of diameters in millimetres, including both ends. The zero
// Range contains no diameter.
type Range struct{ FromMm, ToMm float64 }

// roundingMm widens a range for holes that were drawn in another unit.
const roundingMm = 1e-6

// IsSet reports whether the range contains diameters.
func (r Range) IsSet() bool { return r.ToMm > 0 }

func (r Range) holds(diameterMm float64) bool {
	return r.IsSet() && diameterMm >= r.FromMm-roundingMm && diameterMm <= r.ToMm+roundingMm
}

// String writes the range in the form that ParseRange reads.
func (r Range) String() string {
	switch {
	case !r.IsSet():
		return "none"
	case math.IsInf(r.ToMm, 1):
		return fmt.Sprintf("%g mm-", r.FromMm)
	case r.FromMm == 0:
		return fmt.Sprintf("-%g mm", r.ToMm)
	}
	return fmt.Sprintf("%g-%g mm", r.FromMm, r.ToMm)
}

// readable drops the rounding of a sum, so that a limit prints as a person writes
// it.
func readable(mm float64) float64 { return math.Round(mm*1e6) / 1e6 }

// nearMm is the tolerance of a diameter that is given alone.
const nearMm = 0.1

// ParseRange reads "6-14mm", "30mm-" (30 mm and more), "-5mm" (up to 5 mm) or
// "8mm" (8 mm, to a tenth). Bare numbers are in mm; a unit after the second
// number applies to both. Each given end must be within the limits.
func ParseRange(text string, limits unit.Limits) (Range, error) {
	first, second, two := strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	first, second = strings.TrimSpace(first), strings.TrimSpace(second)
	none := finding.Failed(NoRange, finding.Values{"written": text})
	if first == "" && second == "" {
		return Range{}, none
	}
	if first != "" && second != "" && strings.Trim(first, "0123456789.,/ ") == "" {
		first += strings.TrimLeft(second, "0123456789.,/ ")
	}
	parse := unit.Within(limits, func(s string) (unit.Length, error) { return unit.ParseLength(s, "mm") })
	r := Range{FromMm: 0, ToMm: math.Inf(1)}
	for _, end := range []struct {
		text string
		to   *float64
	}{{first, &r.FromMm}, {second, &r.ToMm}} {
		if end.text == "" {
			continue
		}
		length, err := parse(end.text)
		switch {
		case errors.Is(err, unit.NoQuantity):
			return Range{}, none
		case err != nil:
			return Range{}, err
		}
		*end.to = float64(length)
	}
	if !two {
		r = Range{readable(r.FromMm - nearMm), readable(r.FromMm + nearMm)}
	}
	if !(r.FromMm >= 0) || !(r.ToMm > r.FromMm-roundingMm) || r.ToMm <= 0 {
		return Range{}, finding.Failed(FallingRange, finding.Values{"written": text, "from": unit.Length(r.FromMm), "to": unit.Length(r.ToMm)})
	}
	return r, nil
}

// Ranges are several spans of diameters.
type Ranges []Range

// IsSet reports whether one of the ranges contains diameters.
func (r Ranges) IsSet() bool { return slices.ContainsFunc(r, Range.IsSet) }

func (r Ranges) holds(diameterMm float64) bool {
	return slices.ContainsFunc(r, func(one Range) bool { return one.holds(diameterMm) })
}

// toMm is the largest diameter in one of the ranges.
func (r Ranges) toMm() (most float64) {
	for _, one := range r {
		most = max(most, one.ToMm)
	}
	return most
}

// String writes the ranges in the form that ParseRanges reads.
func (r Ranges) String() string {
	if !r.IsSet() {
		return "none"
	}
	texts := make([]string, len(r))
	for i, one := range r {
		texts[i] = one.String()
	}
	return strings.Join(texts, ", ")
}

// ParseRanges reads ranges separated by commas: "6-7mm,12-13mm". A comma
// between two digits is a decimal comma.
func ParseRanges(text string, limits unit.Limits) (Ranges, error) {
	var all Ranges
	for _, one := range strings.Split(betweenRanges.ReplaceAllString(text, "$1;$2"), ";") {
		r, err := ParseRange(strings.TrimSpace(one), limits)
		if err != nil {
			return nil, err
		}
		all = append(all, r)
	}
	return all, nil
}

var betweenRanges = regexp.MustCompile(`([^0-9]),|,([^0-9])`)

// Rule sorts holes by their diameters. Named ranges come first: dowels,
// fasteners and bores. If fasteners were named, larger holes of the rest are
// bores and smaller ones are none of these. Otherwise a hole above BoreFromMm
// is a bore; so is a size of fewer than ManyHoles holes above BoreTimes the
// diameter of the most common size, because a joint's bolts are alike and its
// bores are few. Dowels look like bolts: without a range there are none.
type Rule struct {
	Fasteners     Ranges
	Dowels, Bores Range
}

// Limits used if no range was named (common practice, no source).
const (
	BoreFromMm = 40.0 // a larger clearance hole is for M36 and more
	BoreTimes  = 2.5
	ManyHoles  = 4
)

// Check refuses ranges that claim the same diameter.
func (r Rule) Check() error {
	type named struct {
		use  Use
		span Range
	}
	all := []named{{Dowel, r.Dowels}, {Bore, r.Bores}}
	for i := len(r.Fasteners) - 1; i >= 0; i-- {
		all = append([]named{{Fastener, r.Fasteners[i]}}, all...)
	}
	for i, a := range all {
		for _, b := range all[:i] {
			if a.use != b.use && a.span.IsSet() && b.span.IsSet() && a.span.FromMm < b.span.ToMm && b.span.FromMm < a.span.ToMm {
				return finding.Failed(SharedRange, finding.Values{
					"use": string(b.use), "range": b.span.String(), "other": string(a.use), "otherRange": a.span.String(),
				})
			}
		}
	}
	return nil
}

// Size is a group of holes with one diameter.
type Size struct {
	DiameterMm float64 // the median of its holes
	Use        Use
	Of         []int // indexes of the holes, in ascending order
}

// Sort groups holes into sizes, the most common first, and sets the use of
// each. Holes belong to one size if no step between two successive diameters is
// wider than the tolerance.
func (r Rule) Sort(diametersMm []float64, toleranceMm float64) []Size {
	order := make([]int, len(diametersMm))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(diametersMm[a], diametersMm[b]) })
	var sizes []Size
	for begin, k := 0, 1; k <= len(order); k++ {
		if k < len(order) && diametersMm[order[k]]-diametersMm[order[k-1]] <= toleranceMm {
			continue
		}
		of := slices.Clone(order[begin:k])
		size := Size{DiameterMm: diametersMm[of[len(of)/2]], Of: of}
		slices.Sort(size.Of)
		sizes, begin = append(sizes, size), k
	}
	slices.SortStableFunc(sizes, func(a, b Size) int { return cmp.Compare(len(b.Of), len(a.Of)) })
	common := r.common(sizes)
	for i, s := range sizes {
		sizes[i].Use = r.use(s, common)
	}
	return sizes
}

// Unsure reports whether holes of several sizes count as holes for fasteners
// though nobody named their range: water and oil holes look the same.
func (r Rule) Unsure(sizes []Size) (f finding.Finding, unsure bool) {
	var taken []unit.Length
	for _, s := range sizes {
		if s.Use == Fastener {
			taken = append(taken, unit.Length(s.DiameterMm))
		}
	}
	if r.Fasteners.IsSet() || len(taken) < 2 {
		return f, false
	}
	slices.SortFunc(taken, func(a, b unit.Length) int { return cmp.Compare(b, a) })
	return finding.Warned(BySizeAlone, finding.Values{"sizes": taken}), true
}

// common returns the diameter of the most common size that could be a
// fastener's; of equally common sizes, the smallest.
func (r Rule) common(sizes []Size) float64 {
	for _, s := range sizes {
		if s.DiameterMm <= BoreFromMm && !r.Dowels.holds(s.DiameterMm) && !r.Bores.holds(s.DiameterMm) {
			return s.DiameterMm
		}
	}
	return 0
}

func (r Rule) use(s Size, common float64) Use {
	switch d := s.DiameterMm; {
	case r.Dowels.holds(d):
		return Dowel
	case r.Fasteners.holds(d):
		return Fastener
	case r.Bores.holds(d):
		return Bore
	case r.Fasteners.IsSet() && d > r.Fasteners.toMm():
		return Bore
	case r.Fasteners.IsSet():
		return Other
	case d > BoreFromMm || len(s.Of) < ManyHoles && d > BoreTimes*common:
		return Bore
	}
	return Fastener
}
