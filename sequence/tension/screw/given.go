package screw

import (
	"drawdown/geometry/finding"
	"math"
	"regexp"
	"strconv"
	"strings"
)

// decimal is a plain number with a decimal point or comma.
const decimal = `[+\-−]?(?:\d+(?:[.,]\d*)?|[.,]\d+)`

var (
	oneNumber   = regexp.MustCompile(`^` + decimal + `$`)
	frictionOne = regexp.MustCompile(`^(` + decimal + `)(?:\s*(?:-|–|—|\.\.|to)\s*(` + decimal + `))?$`)
	frictionTwo = regexp.MustCompile(`^(thread|head)\s*[=:]\s*(.+?)\s*[,;]\s*(thread|head)\s*[=:]\s*(.+)$`)
)

// figureOf parses a match of oneNumber.
func figureOf(s string) float64 {
	v, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(s), 64)
	if err != nil {
		return math.NaN() // too large; every range check rejects it
	}
	return v
}

// ParseFriction reads coefficients of friction as people write them: "0.12",
// "0.10-0.14", or "thread=0.10-0.14, head=0.12". The middle of a range is its
// nominal value.
func ParseFriction(text string) (Friction, error) {
	s := strings.ToLower(strings.TrimSpace(text))
	if m := frictionTwo.FindStringSubmatch(s); m != nil && m[1] != m[3] {
		first, okFirst := parseRange(m[2])
		second, okSecond := parseRange(m[4])
		if m[1] == "head" {
			first, second = second, first
		}
		f := Friction{Thread: first, Head: second}
		if okFirst && okSecond {
			return f, f.check()
		}
	} else if r, ok := parseRange(s); ok {
		f := Same(r)
		return f, f.check()
	}
	return Friction{}, finding.Failed(FrictionUnreadable, finding.Values{"written": text})
}

func parseRange(s string) (Range, bool) {
	m := frictionOne.FindStringSubmatch(s)
	if m == nil {
		return Range{}, false
	}
	low := figureOf(m[1])
	if m[2] == "" {
		return Range{low, low, low}, true
	}
	return Between(low, figureOf(m[2])), true
}

// ParseShare reads a share above 0 and up to 1: "90%", "90 %", "0.9".
func ParseShare(text string) (float64, error) {
	s := strings.TrimSpace(text)
	digits, percent := strings.CutSuffix(s, "%")
	digits = strings.TrimSpace(digits)
	v := figureOf(digits)
	if percent {
		v /= 100
	}
	if !oneNumber.MatchString(digits) || !(v > 0 && v <= 1) {
		return 0, finding.Failed(ShareUnreadable, finding.Values{"written": text})
	}
	return v, nil
}

// ParseNutFactor reads a nut factor K: "0.2".
func ParseNutFactor(text string) (float64, error) {
	s := strings.TrimSpace(text)
	if v := figureOf(s); oneNumber.MatchString(s) && v > 0 && v <= mostNutFactor {
		return v, nil
	}
	return 0, finding.Failed(FactorUnreadable, finding.Values{"written": text, "most": mostNutFactor, "usual": usualNutFactor})
}
