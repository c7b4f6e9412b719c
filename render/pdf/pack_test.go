package pdf

import (
	"bytes"
	"errors"
	"strings"
	"testing"
)

const small = "%PDF-1.3\n" +
	"2 0 obj\n<</Length 9>>\nstream\nendobj\n1 \nendstream\nendobj\n" +
	"1 0 obj\n<<\n/Type /Catalog\n>>\nendobj\n" +
	"xref\n0 3\n0000000000 65535 f \n0000000000 00000 n \n0000000000 00000 n \n" +
	"trailer\n<<\n/Size 3\n>>\nstartxref\n99\n%%EOF\n"

func TestPacker(t *testing.T) {
	var b bytes.Buffer
	if _, err := newPacker(&b, "de").Write([]byte(small)); err != nil {
		t.Fatal(err)
	}
	if err := checkTable(b.Bytes()); err != nil {
		t.Error(err)
	}
	for _, want := range []string{"<<\n/Type /Catalog\n/ViewerPreferences << /PrintScaling /None", "\n/Lang (de)\n>>", "trailer\n<<\n/Size 3\n>>\nstartxref\n"} {
		if !strings.Contains(b.String(), want) {
			t.Errorf("no %q in\n%q", want, b.String())
		}
	}
	_, object, _ := strings.Cut(b.String(), "2 0 obj\n")
	if got := inflate(t, object); got != "endobj\n1 " {
		t.Errorf("the stream reads %q", got)
	}
}

func TestPackerTurnsDownOtherForms(t *testing.T) {
	for name, file := range map[string]string{
		"empty":         "",
		"no head":       strings.TrimPrefix(small, "%"),
		"in pieces":     small[:40],
		"long stream":   strings.Replace(small, "Length 9", "Length 900", 1),
		"short stream":  strings.Replace(small, "Length 9", "Length 8", 1),
		"no length":     strings.Replace(small, "/Length 9", "", 1),
		"no number":     strings.Replace(small, "2 0 obj", "x 0 obj", 1),
		"number missed": strings.Replace(small, "2 0 obj", "3 0 obj", 1),
		"no trailer":    strings.Replace(small, "trailer", "", 1),
		"no start":      strings.Replace(small, "startxref", "", 1),
	} {
		if _, err := newPacker(&bytes.Buffer{}, "").Write([]byte(file)); !errors.Is(err, errForm) {
			t.Errorf("%s: got %v, want %v", name, err, errForm)
		}
	}
}

// Lengths in points follow from 72 points an inch and 25.4 mm an inch.
func TestAppendPoints(t *testing.T) {
	for mm, want := range map[float64]string{
		0: "0", 25.4: "72", -25.4: "-72", 12.7: "36", 1.27: "3.6", 0.01: "0.03", -0.01: "-0.03", 0.001: "0", 210: "595.28", 5080: "14400",
	} {
		if got := string(appendPoints(nil, mm)); got != want {
			t.Errorf("%g mm is written %q, want %q", mm, got, want)
		}
	}
}
