package thread

import (
	"math"
	"strings"

	"drawdown/geometry/finding"
)

// unifiedSize is one diameter of ASME B1.1 with its threads per inch in each
// series; 0 if the series does not have the size.
type unifiedSize struct {
	name       string
	diameterIn float64
	unc, unf   float64
}

// unifiedSizes holds the coarse and fine series of ASME B1.1, table 1. The
// numbered diameters are 0.060 in + 0.013 in for each number.
var unifiedSizes = []unifiedSize{
	{"No. 4", 0.112, 40, 48},
	{"No. 5", 0.125, 40, 44},
	{"No. 6", 0.138, 32, 40},
	{"No. 8", 0.164, 32, 36},
	{"No. 10", 0.190, 24, 32},
	{"No. 12", 0.216, 24, 28},
	{"1/4", 1. / 4, 20, 28},
	{"5/16", 5. / 16, 18, 24},
	{"3/8", 3. / 8, 16, 24},
	{"7/16", 7. / 16, 14, 20},
	{"1/2", 1. / 2, 13, 20},
	{"9/16", 9. / 16, 12, 18},
	{"5/8", 5. / 8, 11, 18},
	{"3/4", 3. / 4, 10, 16},
	{"7/8", 7. / 8, 9, 14},
	{"1", 1, 8, 12},
	{"1 1/16", 1 + 1./16, 0, 0},
	{"1 1/8", 1 + 1./8, 7, 12},
	{"1 3/16", 1 + 3./16, 0, 0},
	{"1 1/4", 1 + 1./4, 7, 12},
	{"1 5/16", 1 + 5./16, 0, 0},
	{"1 3/8", 1 + 3./8, 6, 12},
	{"1 7/16", 1 + 7./16, 0, 0},
	{"1 1/2", 1 + 1./2, 6, 12},
	{"1 9/16", 1 + 9./16, 0, 0},
	{"1 5/8", 1 + 5./8, 0, 0},
	{"1 11/16", 1 + 11./16, 0, 0},
	{"1 3/4", 1 + 3./4, 5, 0},
	{"1 13/16", 1 + 13./16, 0, 0},
	{"1 7/8", 1 + 7./8, 0, 0},
	{"1 15/16", 1 + 15./16, 0, 0},
	{"2", 2, 4.5, 0},
	{"2 1/8", 2 + 1./8, 0, 0},
	{"2 1/4", 2 + 1./4, 4.5, 0},
	{"2 3/8", 2 + 3./8, 0, 0},
	{"2 1/2", 2 + 1./2, 4, 0},
	{"2 5/8", 2 + 5./8, 0, 0},
	{"2 3/4", 2 + 3./4, 4, 0},
	{"2 7/8", 2 + 7./8, 0, 0},
	{"3", 3, 4, 0},
	{"3 1/8", 3 + 1./8, 0, 0},
	{"3 1/4", 3 + 1./4, 4, 0},
	{"3 3/8", 3 + 3./8, 0, 0},
	{"3 1/2", 3 + 1./2, 4, 0},
	{"3 5/8", 3 + 5./8, 0, 0},
	{"3 3/4", 3 + 3./4, 4, 0},
	{"3 7/8", 3 + 7./8, 0, 0},
	{"4", 4, 4, 0},
}

// threads returns the threads of the size, coarse first. The 8-thread series
// runs above 1 in; at 1 in it is the coarse thread (ASME B1.1, table 1).
func (u unifiedSize) threads() []Thread {
	var list []Thread
	add := func(series Series, perInch float64) {
		list = append(list, Thread{
			Name:           u.name + "-" + decimal(perInch) + " " + string(series),
			MajorMm:        u.diameterIn * 254 / 10, // exact in binary, unlike × 25.4
			PitchMm:        25.4 / perInch,
			Series:         series,
			ThreadsPerInch: perInch,
		})
	}
	if u.unc > 0 {
		add(UNC, u.unc)
	}
	if u.unf > 0 {
		add(UNF, u.unf)
	}
	if u.diameterIn > 1 {
		add(UN, 8)
	}
	return list
}

// unified finds a thread of the size by its threads per inch, its series or
// both; either may be empty.
func unified(size unifiedSize, perInch string, series Series) (Thread, error) {
	var names []string
	for _, t := range size.threads() {
		names = append(names, t.Name)
		if perInch == "" && series == "" {
			continue
		}
		if (perInch == "" || same(t.ThreadsPerInch, perInch)) && t.belongsTo(series) {
			return t, nil
		}
	}
	wanted := strings.TrimSuffix(size.name+"-"+perInch, "-") + " " + string(series)
	code := NoUnifiedThread
	if perInch == "" && series == "" {
		code = HalfUnifiedThread
	}
	return Thread{}, finding.Failed(code, finding.Values{"wanted": strings.TrimSpace(wanted), "allowed": names})
}

// belongsTo reports whether the thread may have the name of the series. At 1 in
// the 8-thread series and the coarse series are one thread.
func (t Thread) belongsTo(series Series) bool {
	return series == "" || t.Series == series || series == UN && t.ThreadsPerInch == 8
}

// findNumberedSize finds No. 4 to No. 12.
func findNumberedSize(number string) (unifiedSize, error) {
	var names []string
	for _, size := range unifiedSizes {
		if !strings.HasPrefix(size.name, "No. ") {
			continue
		}
		names = append(names, size.name)
		if size.name == "No. "+strings.TrimLeft(number, "0") {
			return size, nil
		}
	}
	return unifiedSize{}, finding.Failed(NoNumberedSize, finding.Values{"number": number, "allowed": names})
}

func findInchSize(written string, diameterIn float64) (unifiedSize, error) {
	var names []string
	for _, size := range unifiedSizes {
		numbered := strings.HasPrefix(size.name, "No. ")
		if !numbered {
			names = append(names, size.name)
		}
		// Numbered sizes may be written as decimals only: 0.190-32.
		if numbered && !strings.Contains(written, ".") {
			continue
		}
		if math.Abs(size.diameterIn-diameterIn) <= writtenToIn {
			return size, nil
		}
	}
	return unifiedSize{}, finding.Failed(NoUnifiedSize, finding.Values{"size": written, "allowed": names})
}

// writtenToIn is the error of a diameter written to three places: 5/16 as 0.312
// or 0.313. The sizes are more than twenty times as far apart.
const writtenToIn = 0.00051
