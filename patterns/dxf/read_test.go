package dxf_test

import (
	"strings"
	"testing"

	"drawdown/patterns/dxf"
)

// The error for a file of another format names that format, without quoting its
// bytes. The first bytes follow the standards of the formats (value from
// memory).
func TestOtherForms(t *testing.T) {
	for begins, want := range map[string]string{
		"\x89PNG\r\n\x1a\n\x00": "drawdown trace", "\xff\xd8\xff\xe0\x00\x10JFIF": "drawdown trace", "II*\x00\x08": "drawdown trace", "MM\x00*\x00": "drawdown trace",
		"GIF89a": "drawdown trace", "%PDF-1.7": "PDF", "AC1027\x00": "DWG",
	} {
		_, problems := dxf.Read("scan", []byte(begins), dxf.Options{})
		if len(problems) != 1 || !strings.Contains(said(problems)[0].What, want) || strings.Contains(said(problems)[0].Detail(), "JFIF") {
			t.Errorf("%q: %v, want a word of %s", begins, problems, want)
		}
	}
}
