package patterns

import (
	"strconv"
	"strings"
	"testing"

	"drawdown/patterns/places"
	"drawdown/patterns/problem"
)

// Common practice: fasteners of one kind have ids with the same letters. If the
// letters do not follow the kinds, they prove nothing.
func TestKindsThatTheIDsSpeakAgainst(t *testing.T) {
	t.Parallel()
	for name, c := range map[string]struct {
		fasteners string // id and kind of each
		want      string // ids that are asked about
	}{
		"all alike":               {"M1 main, M2 main, M3 main, S1 side, S2 side", ""},
		"one of the other kind":   {"M1 main, M2 side, M3 main, S1 side, S2 side", "M2"},
		"two exchanged":           {"M1 main, M2 main, M3 side, S1 side, S2 side, S3 main", "M3 S3"},
		"one letter for all":      {"B1 main, B2 main, B3 main, B4 side", ""},
		"a long one among others": {"B1 main, B2 main, B3 side, K1 main, K2 main", ""},
		"few":                     {"M1 main, M2 side, S1 side, S2 side", ""},
		"no numbers":              {"A main, B main, C side", ""},
	} {
		text := "drawdown: 1\ntitle: T\nkinds: {main: {thread: M10}, side: {thread: M8}}\nfasteners:\n"
		for i, f := range strings.Split(c.fasteners, ", ") {
			id, kind, _ := strings.Cut(f, " ")
			text += "  - {id: " + id + ", at: [" + strconv.Itoa(40*i) + ", 0], kind: " + kind + "}\n"
		}
		_, problems := readText(text)
		var asked []string
		for _, p := range problems {
			if p.Found.Code == places.KindOdd && p.Severity == problem.Warning {
				asked = append(asked, p.Found.Values["id"].(string))
			}
		}
		if got := strings.Join(asked, " "); got != c.want {
			t.Errorf("%s: %q, want %q", name, got, c.want)
		}
	}
}
