package scenetest

import (
	"bytes"
	"testing"

	"drawdown/geometry/testkit"
	"drawdown/render/scene"
)

// Golden compares a document, as text, with a golden file.
func Golden(t testing.TB, path string, document scene.Document) {
	t.Helper()
	var got bytes.Buffer
	if err := Dump(&got, document); err != nil {
		t.Fatal(err)
	}
	testkit.Golden(t, path, got.Bytes())
}
