package imprint_test

import (
	"bytes"
	"errors"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"drawdown/render"
	"drawdown/render/imprint"
	"drawdown/render/scene"
)

// First principles: what is written is read again, in every format, for any
// revision in the file.
func TestEveryFormatKeepsImprints(t *testing.T) {
	t.Parallel()
	want := []imprint.Imprint{
		{Pattern: "Kopf (2) & <Deckel>", Fingerprint: "7c1e 90b4", Revision: "3, b\\) \"é\"\n", Date: "2026-03-01"},
		{Pattern: "p4-sump", Fingerprint: "0000 0001"},
	}
	doc := scene.Document{Title: "Lid", Language: "en", Imprint: imprint.Text(want...), Pages: []scene.Page{{Name: "tighten", Width: 20, Height: 20}}}
	for _, format := range render.Formats {
		files, err := render.Files(doc, "lid", format, 72, time.Time{})
		if err != nil {
			t.Fatal(err)
		}
		data := files[0].Data
		got, err := imprint.Read(bytes.NewReader(data), int64(len(data)))
		if err != nil || !reflect.DeepEqual(got, want) {
			t.Errorf("%s: read %+v, %v; want %+v", format, got, err, want)
		}
		for n := range len(data) {
			if _, err := imprint.Read(bytes.NewReader(data[:n]), int64(n)); err != nil {
				t.Errorf("%s cut after %d bytes: %v", format, n, err)
			}
		}
	}
}

func TestTextIsReadAgain(t *testing.T) {
	t.Parallel()
	rapid.Check(t, func(t *rapid.T) {
		want := imprint.Imprint{
			Pattern: rapid.StringN(1, 60, -1).Draw(t, "pattern"), Fingerprint: rapid.StringN(1, 9, -1).Draw(t, "fingerprint"),
			Revision: rapid.String().Draw(t, "revision"), Date: rapid.String().Draw(t, "date"),
		}
		text := imprint.Text(want, want)
		if strings.ContainsAny(text, "()<>&\\\"\n\x00") {
			t.Fatalf("%q holds a sign that a format reads as its own", text)
		}
		if got := imprint.Parse(text); !reflect.DeepEqual(got, []imprint.Imprint{want, want}) {
			t.Fatalf("read %+v, want %+v twice", got, want)
		}
	})
}

func TestNoImprintIsMadeUp(t *testing.T) {
	t.Parallel()
	for _, text := range []string{"", "lid", "pattern=lid", "fingerprint=1", "pattern=a fingerprint=%zz", "pattern=a fingerprint=1 colour=red", "pattern=a fingerprint=1, lid"} {
		if got := imprint.Parse(text); got != nil {
			t.Errorf("%q: read %+v", text, got)
		}
	}
	for _, data := range []string{"", "%PDF-1.4 /Keywords (bolts, cards)", "%PDF-", "<svg xmlns=\"\"><metadata>x</metadata>", "GIF89a pattern=a fingerprint=1"} {
		if got, err := imprint.Read(strings.NewReader(data), int64(len(data))); got != nil || err != nil {
			t.Errorf("%q: read %+v, %v", data, got, err)
		}
	}
}

// huge is a file larger than memory; it counts the bytes read.
type huge struct{ read int }

func (h *huge) ReadAt(into []byte, at int64) (int, error) {
	h.read += len(into)
	if h.read > 1<<20 {
		return 0, errors.New("more than a megabyte is read")
	}
	return copy(into, bytes.Repeat([]byte("%PDF-"), 1+len(into)/5)), nil
}

func TestHugeFilesAreReadAtTheirEnds(t *testing.T) {
	t.Parallel()
	if got, err := imprint.Read(&huge{}, 1<<50); got != nil || err != nil {
		t.Errorf("read %+v, %v", got, err)
	}
}
