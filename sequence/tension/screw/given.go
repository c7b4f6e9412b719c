package screw

import (
	"fmt"
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

// figureOf reads what oneNumber matches.
func figureOf(s string) float64 {
	v, err := strconv.ParseFloat(strings.NewReplacer(",", ".", "−", "-").Replace(s), 64)
	if err != nil {
		return math.NaN() // beyond all figures; every check of a range refuses it
	}
	return v
}

// ParseFriction reads coefficients of friction as people write them: "0.12",
// "0.10-0.14", or "thread=0.10-0.14, head=0.12". The middle of a span is its
// nominal figure.
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
	return Friction{}, fmt.Errorf("friction %q is not known; allowed: 0.12, 0.10-0.14 or thread=0.10-0.14,head=0.12", text)
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

// ParseShare reads a share above 0 up to 1: "90%", "90 %", "0.9".
func ParseShare(text string) (float64, error) {
	s := strings.TrimSpace(text)
	digits, percent := strings.CutSuffix(s, "%")
	digits = strings.TrimSpace(digits)
	if !oneNumber.MatchString(digits) {
		return 0, fmt.Errorf("share %q is not a number; allowed: above 0%% up to 100%%, such as 90%% or 0.9", text)
	}
	v := figureOf(digits)
	if percent {
		v /= 100
	}
	if !(v > 0 && v <= 1) {
		return 0, fmt.Errorf("share %q; allowed: above 0%% up to 100%%, such as 90%% or 0.9", text)
	}
	return v, nil
}

// ParseNutFactor reads a nut factor K: "0.2".
func ParseNutFactor(text string) (float64, error) {
	s := strings.TrimSpace(text)
	if v := figureOf(s); oneNumber.MatchString(s) && v > 0 && v <= mostNutFactor {
		return v, nil
	}
	return 0, fmt.Errorf("nut factor K %q; allowed: a number above 0 up to %d, such as %.1f", text, mostNutFactor, UnknownNutFactor)
}
