package imprint

import (
	"bytes"
	"slices"
	"testing"
)

// FuzzRead: any bytes give imprints or none, and an imprint is the same after
// writing and reading.
func FuzzRead(f *testing.F) {
	text := Text(Imprint{Pattern: "p4-head", Fingerprint: "7c1e 90b4", Revision: "2", Date: "2026-03-01"})
	for _, p := range places {
		f.Add([]byte(p.signature + p.before + text + p.after))
		f.Add([]byte(p.signature + p.before))
	}
	f.Add([]byte("%PDF-1.4 (pattern=%zz fingerprint=1)"))
	f.Fuzz(func(t *testing.T, data []byte) {
		found, err := Read(bytes.NewReader(data), int64(len(data)))
		if err != nil {
			t.Fatal(err)
		}
		if again := Parse(Text(found...)); len(found) > 0 && !slices.Equal(again, found) {
			t.Fatalf("%q comes back as %q", found, again)
		}
	})
}
