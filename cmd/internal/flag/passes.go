package flag

import (
	"errors"
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/interaction/bounds"
	"drawdown/sequence/interaction/compliance"
	"drawdown/sequence/tension/stiffness"
)

// mostPasses keeps a typing error from running for hours.
const mostPasses = 50

// plainNumber matches a number without a sign; a power of ten may follow.
var plainNumber = regexp.MustCompile(`^(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,2})?$`)

// ParsePercents reads passes as percentages of the target: "30,70,100", "30 %,
// 70 %".
func ParsePercents(text string) ([]float64, error) {
	return ParsePasses(text, 100, allowedFigures{"1", "120", "30,70,100,100"})
}

// ParseShares reads passes as shares of the target: "0.3,0.7,1".
func ParseShares(text string) ([]float64, error) {
	return ParsePasses(text, 1, allowedFigures{"0.01", "1.2", "0.3,0.7,1"})
}

// ParsePasses reads passes in a unit; target is the value of the target, 1 or
// 100.
func ParsePasses(text string, target float64, allowed allowedFigures) (shares []float64, err error) {
	for _, one := range strings.Split(text, ",") {
		plain := strings.TrimSpace(one)
		if target == 100 {
			plain = strings.TrimSuffix(plain, "%")
		}
		v, ok := ParsePlain(plain)
		if !ok || v < 0.01*target || v > 1.2*target {
			return nil, allowed.outside("pass", strings.TrimSpace(one))
		}
		shares = append(shares, v/target)
	}
	if len(shares) > mostPasses {
		return nil, finding.Failed(TooManyPasses, finding.Values{"n": len(shares), "most": mostPasses})
	}
	return shares, nil
}

// allowedFigures holds the limits of a flag's value and an example, as a person
// writes them.
type allowedFigures struct{ least, most, example string }

func (a allowedFigures) outside(what finding.Term, written string) error {
	return finding.Failed(FlagOutside, finding.Values{"what": what, "written": written, "least": a.least, "most": a.most, "example": a.example})
}

func ParsePlain(text string) (float64, bool) {
	text = strings.TrimSpace(text)
	if !plainNumber.MatchString(text) {
		return 0, false
	}
	v, err := strconv.ParseFloat(text, 64)
	return v, err == nil
}

// ParseCap reads a cap on targets over the target: "110%", "1.1".
func ParseCap(text string) (float64, error) {
	return ParseShare(text, "cap", 1, 2, allowedFigures{"100%", "200%", "110%"})
}

// ParseStick reads a share of the target: "5%", "0.05".
func ParseStick(text string) (float64, error) {
	return ParseShare(text, "share", 0, 0.5, allowedFigures{"0%", "50%", "5%"})
}

func ParseShare(text string, what finding.Term, least, most float64, allowed allowedFigures) (float64, error) {
	digits, percent := strings.CutSuffix(strings.TrimSpace(text), "%")
	v, ok := ParsePlain(digits)
	if percent {
		v /= 100
	}
	if !ok || v < least || v > most {
		return 0, allowed.outside(what, text)
	}
	return v, nil
}

const mostDraws = 100_000

// ParseDraws reads how many times the work is repeated with different friction.
func ParseDraws(text string) (int, error) {
	n, err := strconv.Atoi(text)
	if err != nil || n < 10 || n > mostDraws {
		return 0, allowedFigures{"10", strconv.Itoa(mostDraws), "1000"}.outside("draws", text)
	}
	return n, nil
}

func ParseSeed(text string) (uint64, error) {
	n, err := strconv.ParseUint(text, 10, 64)
	if err != nil {
		return 0, finding.Failed(SeedUnread, finding.Values{"written": text})
	}
	return n, nil
}

// ParseStiffness reads the stiffness of an area: one value, its limits, or its
// limits with the middle value between.
func ParseStiffness(text string) (bounds.Band, error) {
	span, err := unit.ParseAreaStiffness(text)
	return bounds.Band{Low: float64(span.Low), Nominal: float64(span.Nominal), High: float64(span.High)}, err
}

// ParseRing reads the two diameters of a gasket on a raised face.
func ParseRing(text string) (compliance.Flange, error) {
	inner, outer, found := strings.Cut(text, "-")
	if !found {
		return compliance.Flange{}, finding.Failed(RingUnread, finding.Values{"written": text})
	}
	var f compliance.Flange
	var err, errOuter error
	diameter := unit.Within(unit.Sensible.Bore, WithUnit)
	f.GasketInner, err = diameter(strings.TrimSpace(inner))
	f.GasketOuter, errOuter = diameter(strings.TrimSpace(outer))
	if err := errors.Join(err, errOuter); err != nil {
		return f, err
	}
	if !(f.GasketInner > 0 && f.GasketOuter > f.GasketInner) {
		return f, finding.Failed(RingUnread, finding.Values{"written": text})
	}
	return f, nil
}

// ParseFlexibility reads the resilience of a bolt and of its members.
func ParseFlexibility(text string) (stiffness.Resilience, error) {
	v, err := unit.ParseFlexibility(text)
	return stiffness.Resilience(v), err
}
