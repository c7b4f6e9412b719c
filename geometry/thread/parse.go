package thread

import (
	"regexp"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
)

// Parse reads the name of a thread as people write it: M10 (coarse pitch),
// M10x1.25, "M10 × 1,25", M8-1.0, 3/8-16, "5/16-24 UNF", 3/8" UNF, #10-24, "No.
// 10-32 UNF", "1 1/8-8 UN". A tolerance class after the name (6g, 2A) is
// accepted and ignored. The error lists the sizes or pitches that exist.
func Parse(s string) (Thread, error) {
	t, err := parse(tidy(s))
	if err != nil {
		return Thread{}, finding.Failed(Unreadable, finding.Values{"written": s, "why": err})
	}
	return t, nil
}

var (
	// A diameter, a pitch, a tolerance class (ISO 965-1: 6g, 5g6g, 6H/6g), left hand.
	metricName = regexp.MustCompile(`^m ?(\d+(?:\.\d+)?)(?: ?[x -] ?(\d*\.?\d+))?(?: ?[ -] ?\d[a-h](?:\d[a-h])?(?:/\d[a-h](?:\d[a-h])?)?)?(?:[ -]*(lh))?$`)
	// A size, threads per inch, a series, a tolerance class (ASME B1.1: 2A), left hand.
	unifiedName = regexp.MustCompile(`^(?:(?:#|no\.?) ?(\d+)|(\d+[ -]\d+/\d+|\d+/\d+|\d*\.\d+|\d+)) ?(?:"|in|inch)?(?: ?[x -] ?(\d+(?:\.\d+)?))?(?: ?-? ?(unr?c|unr?f|unr?|nc|nf))?(?: ?[ -] ?[123][ab])?(?:[ -]*(lh))?$`)
)

func parse(name string) (Thread, error) {
	if m := metricName.FindStringSubmatch(name); m != nil {
		if m[3] != "" {
			return Thread{}, errLeftHand
		}
		return metric(m[1], m[2])
	}
	if m := unifiedName.FindStringSubmatch(name); m != nil {
		if m[5] != "" {
			return Thread{}, errLeftHand
		}
		size, err := findUnifiedSize(m[1], m[2], m[3])
		if err != nil {
			return Thread{}, err
		}
		return unified(size, m[3], seriesNames[m[4]])
	}
	return Thread{}, finding.Failed(NoThread, nil)
}

// A left-hand thread is tightened in the opposite direction to that on the
// sheets.
var errLeftHand = finding.Failed(LeftHand, nil)

// seriesNames holds the series as people write them. UNR threads differ only in
// the root; NC and NF are the names used before 1949.
var seriesNames = map[string]Series{
	"unc": UNC, "unrc": UNC, "nc": UNC,
	"unf": UNF, "unrf": UNF, "nf": UNF,
	"un": UN, "unr": UN,
}

// findUnifiedSize finds a size by its number or by its diameter in inches. A
// whole number over 2 without a sign is a numbered size, such as 10-32, unless
// its threads are far too coarse for that: 3-4 is 3 in.
func findUnifiedSize(number, inches, perInch string) (unifiedSize, error) {
	if number != "" {
		return findNumberedSize(number)
	}
	diameterIn, err := parseInches(inches)
	if err != nil {
		return unifiedSize{}, err
	}
	coarse, err := strconv.ParseFloat(perInch, 64)
	ofInches := err == nil && coarse <= coarsestOfInches && diameterIn <= mostInches
	if diameterIn > 2 && !ofInches && !strings.ContainsAny(inches, "./ -") {
		return findNumberedSize(inches)
	}
	return findInchSize(inches, diameterIn)
}

// coarsestOfInches is the finest thread of the sizes above 2 in: the 8-thread
// series. The numbered sizes have 24 threads an inch and more.
const (
	coarsestOfInches = 8
	mostInches       = 4
)

// parseInches reads 3/8, 1 1/8, 1-1/8, 0.375 and 2. An improper fraction is
// rejected: 13/8 is more often 1 3/8 with a lost space than 1 5/8.
func parseInches(s string) (float64, error) {
	var sum float64
	for _, part := range strings.FieldsFunc(s, func(r rune) bool { return r == ' ' || r == '-' }) {
		over, under, isFraction := strings.Cut(part, "/")
		value, err := strconv.ParseFloat(over, 64)
		by, errUnder := 1.0, error(nil)
		if isFraction {
			by, errUnder = strconv.ParseFloat(under, 64)
		}
		if err != nil || errUnder != nil || isFraction && value >= by {
			return 0, finding.Failed(NoInchSize, finding.Values{"written": s})
		}
		sum += value / by
	}
	return sum, nil
}

// signs replaces the many variants of dashes, crosses, quotes and fractions by
// one form each.
var signs = strings.NewReplacer(
	"×", "x", "✕", "x", "*", "x", "·", "x",
	"‐", "-", "‑", "-", "–", "-", "—", "-", "−", "-",
	"″", `"`, "”", `"`, "“", `"`, "''", `"`,
	"⁄", "/", ",", ".", "№", "no",
	"¼", " 1/4", "½", " 1/2", "¾", " 3/4",
	"⅛", " 1/8", "⅜", " 3/8", "⅝", " 5/8", "⅞", " 7/8",
)

// tidy returns the name in lower case, with plain signs and single spaces.
func tidy(s string) string {
	return strings.Join(strings.Fields(signs.Replace(strings.ToLower(s))), " ")
}
