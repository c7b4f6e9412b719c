package thread

import (
	"errors"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"drawdown/render/words"
)

// The expected names follow from the designations of ISO 965-1 (M10×1.25) and
// ASME B1.1 (3/8-16 UNC); the spellings are common practice, no source.
func TestParseReadsNamesAsPeopleWriteThem(t *testing.T) {
	for written, name := range map[string]string{
		"M10":                "M10×1.5",
		"m10":                "M10×1.5",
		" M 10 ":             "M10×1.5",
		"M10x1.5":            "M10×1.5",
		"M10x1.50":           "M10×1.5",
		"m10 x 1,25":         "M10×1.25",
		"M10×1.25":           "M10×1.25",
		"M10 X 1.25":         "M10×1.25",
		"M10*1.25":           "M10×1.25",
		"M8-1.0":             "M8×1",
		"M8–1":               "M8×1",
		"M8 1":               "M8×1",
		"M3,5":               "M3.5×0.6",
		"M3x.35":             "M3×0.35",
		"M10-6g":             "M10×1.5",
		"M10 6g":             "M10×1.5",
		"M10 x 1.25 - 6H/6g": "M10×1.25",
		"M11":                "M11×1.5",
		"M64x4":              "M64×4",
		"M1.6":               "M1.6×0.35",
		"M2,5":               "M2.5×0.45",
		"M68":                "M68×6",
		"M90x6":              "M90×6",
		"3/8-16":             "3/8-16 UNC",
		"3/8-16 UNC":         "3/8-16 UNC",
		"3/8-16unc-2A":       "3/8-16 UNC",
		"3/8 - 16 UNRC":      "3/8-16 UNC",
		"3/8 x 16":           "3/8-16 UNC",
		"3/8\u00a0in-16":     "3/8-16 UNC",
		"⅜-16":               "3/8-16 UNC",
		"0.375-16":           "3/8-16 UNC",
		"5/16-24 UNF":        "5/16-24 UNF",
		".312-24":            "5/16-24 UNF",
		"0.313-24":           "5/16-24 UNF",
		`3/8" UNF`:           "3/8-24 UNF",
		"3/8″ NF":            "3/8-24 UNF",
		"#10-24":             "No. 10-24 UNC",
		"10-32":              "No. 10-32 UNF",
		"No. 10-32 UNF":      "No. 10-32 UNF",
		"no 10 unf":          "No. 10-32 UNF",
		"№ 10-32":            "No. 10-32 UNF",
		"0.190-32":           "No. 10-32 UNF",
		"1-8":                "1-8 UNC",
		"1-8 UN":             "1-8 UNC", // one thread under two series, ASME B1.1
		`1" UNF`:             "1-12 UNF",
		"1 1/8-8 UN":         "1 1/8-8 UN",
		"1-1/8-8UN":          "1 1/8-8 UN",
		"1 1/8 8UN":          "1 1/8-8 UN",
		"1-1/8-7 UNC":        "1 1/8-7 UNC",
		"1½-6":               "1 1/2-6 UNC",
		"2-4.5":              "2-4.5 UNC",
		"2-4,5 UNC":          "2-4.5 UNC",
		"2 1/4-4.5 UNC":      "2 1/4-4.5 UNC",
		"2 1/2-8 UN":         "2 1/2-8 UN",
		"3-4":                "3-4 UNC",
		"4-8 UN":             "4-8 UN",
		"4-40":               "No. 4-40 UNC",
	} {
		got, err := Parse(written)
		if err != nil || got.Name != name {
			t.Errorf("Parse(%q) = %q, %v; want %q", written, got.Name, err, name)
		}
	}
}

// Each error must quote what was written and list what exists.
func TestParseErrorsSayWhatIsAllowed(t *testing.T) {
	for written, says := range map[string]string{
		"M10x1.3":    "pitch 1.3 does not exist for M10; allowed: 1.5 (coarse), 1.25, 1, 0.75",
		"M10x110":    "pitch 110 does not exist for M10; allowed: 1.5 (coarse)",
		"M13":        "no size M13 in the table of drawdown, which has sizes of ISO 261 from M1.6 to M100; allowed: M1.6, M1.8, M2",
		"M13x1.5":    "no size M13 in the table of drawdown",
		"M10 LH":     "left-hand threads are not supported",
		"1/2-13 LH":  "left-hand threads are not supported",
		"3/8":        "3/8 lacks its threads per inch or its series; allowed: 3/8-16 UNC, 3/8-24 UNF",
		"3/8-16 UNF": "3/8-16 UNF is not a supported thread of ASME B1.1; allowed: 3/8-16 UNC, 3/8-24 UNF",
		"3/8-20":     "allowed: 3/8-16 UNC, 3/8-24 UNF",
		"8-1.25":     "allowed: No. 8-32 UNC, No. 8-36 UNF",
		"3/8 UN":     "3/8 UN is not a supported thread of ASME B1.1",
		"3-48":       "size No. 3 is not supported",
		"#2-56":      "size No. 2 is not supported; allowed: No. 4, No. 5",
		"1/8-40":     "size 1/8 in is not a supported size of ASME B1.1; allowed: 1/4, 5/16",
		"13/8-8":     "13/8 is not a size in inches; write for example 3/8 or 1 3/8",
		"1/0-8":      "not a size in inches",
		"":           "not a thread name; write for example M10",
		"10.9":       "size 10.9 in is not a supported size of",
		"M10x1.5x50": "not a thread name",
		"M":          "not a thread name",
	} {
		got, err := Parse(written)
		if err == nil {
			t.Errorf("Parse(%q) = %q; want an error", written, got.Name)
			continue
		}
		if got != (Thread{}) {
			t.Errorf("Parse(%q) gives %v with its error", written, got)
		}
		said := words.English().Error(err)
		if !strings.Contains(said, says) {
			t.Errorf("Parse(%q): %s; want it to say %q", written, said, says)
		}
		if !strings.Contains(said, `"`+written+`"`) {
			t.Errorf("Parse(%q): %s; want it to quote what was written", written, said)
		}
	}
}

func every() []Thread {
	var list []Thread
	for _, size := range metricSizes {
		for i := range size.pitchesMm {
			list = append(list, size.thread(i))
		}
	}
	for _, size := range unifiedSizes {
		list = append(list, size.threads()...)
	}
	return list
}

// First principles: a printed name is read back as the same thread, in any
// case, spacing and form of the cross.
func TestNamesReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		want := rapid.SampledFrom(every()).Draw(t, "thread")
		name := want.Name
		if rapid.Bool().Draw(t, "lower case") {
			name = strings.ToLower(name)
		}
		cross := rapid.SampledFrom([]string{"×", "x", " x ", " X", "-", "*"}).Draw(t, "cross")
		name = strings.Replace(name, "×", cross, 1)
		if rapid.Bool().Draw(t, "comma") {
			name = strings.ReplaceAll(name, ".", ",")
			name = strings.Replace(strings.Replace(name, "No,", "No.", 1), "no,", "no.", 1)
		}
		got, err := Parse(name)
		if err != nil || got != want {
			t.Fatalf("Parse(%q) = %v, %v; want %v", name, got, err, want)
		}
	})
}

// First principles: whatever is read is a thread of the tables with its own
// name, and nothing panics.
func FuzzParse(f *testing.F) {
	for _, seed := range []string{"M10", "m10 x 1,25", "3/8-16 UNC", "1 1/8-8 UN", "No. 10-32", "#4", "1/0-3", "M10-6g LH", "½-13", "99999999999999999999999/8-2"} {
		f.Add(seed)
	}
	known := map[string]Thread{}
	for _, t := range every() {
		known[t.Name] = t
	}
	f.Fuzz(func(t *testing.T, s string) {
		got, err := Parse(s)
		if err != nil {
			if got != (Thread{}) {
				t.Errorf("Parse(%q) gives %v with the error %v", s, got, err)
			}
			return
		}
		if known[got.Name] != got {
			t.Errorf("Parse(%q) = %v, which is not in the tables", s, got)
		}
	})
}

// ISO 261 and ASME B1.1 name these series.
func TestParseGivesTheSeries(t *testing.T) {
	for written, series := range map[string]Series{
		"M10":        MetricCoarse,
		"M10x1.5":    MetricCoarse,
		"M10x1.25":   MetricFine,
		"M10x1":      MetricFine,
		"3/8-16":     UNC,
		"3/8-24":     UNF,
		"1 1/8-8":    UN,
		"No. 10-32":  UNF,
		"1-8 UN":     UNC,
		"1 3/4-5 NC": UNC,
	} {
		if got, err := Parse(written); err != nil || got.Series != series || got.Unified() != (series[0] == 'U') {
			t.Errorf("Parse(%q) = %+v, %v; want the series %s", written, got, err, series)
		}
	}
}

// A pitch outside ISO 261 that a maker may have cut is reported with its
// thread; one that no thread has is not.
func TestUnlistedPitch(t *testing.T) {
	var unlisted *UnlistedPitchError
	_, err := Parse("M11x1.25")
	if !errors.As(err, &unlisted) || unlisted.Thread.Name != "M11×1.25" || unlisted.Thread.PitchMm != 1.25 || unlisted.Thread.Series != Special {
		t.Errorf("M11x1.25: %v, %+v", err, unlisted)
	}
	for _, name := range []string{"M10x15", "M10x0.1"} {
		if _, err := Parse(name); !errors.As(err, &unlisted) || unlisted.Thread != (Thread{}) {
			t.Errorf("%s: %v is taken for a real thread", name, err)
		}
	}
}
