package survey

import (
	"cmp"
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
	"gonum.org/v1/gonum/stat/distuv"

	"drawdown/geometry"
)

const (
	// falseAlarm is the probability of reporting a wrong reading in a network
	// that has none.
	falseAlarm = 0.01
	// trust is the weight of the stated accuracy against the scatter of the
	// network, as a number of readings.
	trust = 10
	// rivalSquares clears another suspect reading: the fit without that reading
	// must be worse by this many squared accuracies. Odds of 55 to 1.
	rivalSquares  = 8
	triedReadings = 6
	// hardlyChecked is the least share of an error that must show in the
	// residual for the error to be seen.
	hardlyChecked = 0.01
)

// snoop fits the readings and searches for wrong ones, one by one (data
// snooping: Baarda, 1968; search by leaving one out: Cook and Weisberg, 1982).
func snoop(start []geometry.Point, readings []Reading, accuracy float64) Solution {
	s := Solution{Out: make([]bool, len(readings)), ScatterMm: scatter(start, readings, accuracy)}
	for {
		used, number := s.used(readings)
		s.Points = adjust(start, used, nil, fully)
		stiff := newStiffness(s.Points, used, false)
		spare := len(used) - stiff.rank
		if spare < 1 {
			return s
		}
		tried := candidates(s.Points, used, stiff)
		if len(tried) == 0 {
			return s
		}
		without := make([]float64, len(tried))
		for k, i := range tried {
			without[k] = leftOut(start, s.Points, used, i, s.ScatterMm)
		}
		best := floats.MinIdx(without)
		gain := squares(s.Points, used, s.ScatterMm) - without[best]
		if gain <= 0 || math.Sqrt(gain) < critical(len(used), spare) {
			return s
		}
		var near []int
		for k, w := range without {
			if w-without[best] < rivalSquares {
				near = append(near, k)
			}
		}
		slices.SortStableFunc(near, func(a, b int) int { return cmp.Compare(without[a], without[b]) })
		for _, k := range near {
			s.Suspect = append(s.Suspect, number[tried[k]])
		}
		if len(near) > 1 {
			s.Rivals = true
			return s
		}
		s.Out[number[tried[best]]] = true
	}
}

// used lists the readings that are not left out, and their indices.
func (s Solution) used(readings []Reading) (used []Reading, number []int) {
	for i, r := range readings {
		if !s.Out[i] {
			used, number = append(used, r), append(number, i)
		}
	}
	return used, number
}

// candidates returns the readings with the largest standardised residuals.
func candidates(at []geometry.Point, used []Reading, stiff stiffness) []int {
	size := make([]float64, len(used))
	var order []int
	for i, r := range used {
		if share := stiff.checked(r); share > hardlyChecked {
			size[i] = math.Abs(r.residual(at)) / math.Sqrt(share)
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return cmp.Compare(size[b], size[a]) })
	// Two readings that check only each other are equal to the last digit.
	count := min(len(order), triedReadings)
	for count < len(order) && size[order[count]] > 0.95*size[order[0]] {
		count++
	}
	return order[:count]
}

// leftOut returns the squares of the fit without one reading. A wrong reading
// may have distorted the places so much that the fit ends in another minimum,
// so it also tries the robust start.
func leftOut(start, bent []geometry.Point, used []Reading, i int, accuracy float64) float64 {
	rest := slices.Delete(slices.Clone(used), i, i+1)
	return math.Min(
		squares(adjust(start, rest, nil, fully), rest, accuracy),
		squares(adjust(bent, rest, nil, fully), rest, accuracy))
}

// scatter is the standard deviation of one reading: the stated accuracy,
// corrected by the residuals of a robust fit. It is never below the stated one.
func scatter(at []geometry.Point, readings []Reading, accuracy float64) float64 {
	const wellChecked = 0.05
	stiff := newStiffness(at, readings, false)
	var left []float64
	for _, r := range readings {
		if share := stiff.checked(r); share > wellChecked {
			left = append(left, math.Abs(r.residual(at))/math.Sqrt(share))
		}
	}
	spare := float64(len(readings) - stiff.rank)
	if len(left) == 0 || spare < 1 {
		return accuracy
	}
	slices.Sort(left)
	// The median of a normal deviation is 0.6745 of its standard deviation.
	typical := left[len(left)/2] / 0.6745
	pooled := (trust*accuracy*accuracy + spare*typical*typical) / (trust + spare)
	return math.Max(accuracy, math.Sqrt(pooled))
}

// critical is the standardized residual that no reading reaches by chance. It
// is Student's, because the scatter is known only from the spare readings and
// the stated accuracy. The probability is divided among the readings
// (Bonferroni).
func critical(readings, spare int) float64 {
	t := distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(trust + spare)}
	return t.Quantile(1 - falseAlarm/2/float64(readings))
}
