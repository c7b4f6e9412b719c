package plan

import (
	"testing"

	"drawdown/geometry/finding"
)

// First principles: the crew stops when the condition is true, so it must be
// that nothing presses any more.
func TestUntilUnderSprings(t *testing.T) {
	t.Parallel()
	const good = finding.Code("")
	for until, want := range map[finding.Code][]string{
		good: {
			NoSpringPresses, "springs no longer press", "the springs don't press", "nothing presses", "no load on any spring",
			"keine Feder drückt", "die Federn drücken nicht mehr", "bis nichts mehr drückt",
			"aucun ressort n’appuie", "les ressorts n'appuient plus", "plus aucun ressort ne pousse",
			"ningún muelle empuja", "no empuje ningún muelle", "los muelles dejan de empujar",
			"every cap is free", "jeder Deckel ist frei",
		},
		UntilPressed: {"springs press", "Spring presses", "all springs push", "Federn drücken", "un ressort appuie", "los muelles empujan", "springs press on loose caps"},
		UntilCut:     {"no spring", "No springs", "keine Feder", "aucun ressort", "ningún muelle", "no", "no spring presses on the", "no spring presses,"},
		UntilOwn:     {"spring pressure gone", "the camshaft is level"},
	} {
		for _, text := range want {
			if f, _ := untilSense(text); f.Code != until {
				t.Errorf("%q: %q, want %q", text, f.Code, until)
			}
		}
	}
}
