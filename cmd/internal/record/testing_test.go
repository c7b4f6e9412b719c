package record

import (
	"testing"

	"drawdown/cmd/internal/record/servertest"
)

// kinds of records, each with a function that makes a new place for one.
var kinds = map[string]func(t testing.TB) Place{"file": inTempFolder, "database": inDatabase}

func inTempFolder(t testing.TB) Place { return Place{Folder: t.TempDir()} }

func inDatabase(t testing.TB) Place {
	return Place{Address: servertest.OfPackage(t).Schema(t)}
}

// onEach runs a test on a new record of each kind: all must behave in the same
// way.
func onEach(t *testing.T, test func(t *testing.T, at Place)) {
	t.Parallel()
	for name, place := range kinds {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			test(t, place(t))
		})
	}
}

// elsewhere makes another place of the same kind.
func elsewhere(t testing.TB, at Place) Place {
	if at.isFile() {
		return inTempFolder(t)
	}
	return inDatabase(t)
}
