package source

import (
	"strings"
	"testing"
)

// The rejected names are those of "Naming Files, Paths, and Namespaces" in the
// Windows documentation.
func TestNamesAreSafeOnWindows(t *testing.T) {
	for path, want := range map[string]string{
		"a/p4-head.yaml": "p4-head", "Head.v2.yml": "Head.v2", "noending": "noending", "a/x.txt": "x.txt",
		"con.yaml": "pattern-con", "Lpt1.x.yaml": "pattern-Lpt1.x", "com¹.yaml": "pattern-com¹", "com10.yaml": "com10",
		"a:b?.yaml": "a-b", "dots....yaml": "dots", ".yaml": "pattern", "   .yaml": "pattern",
	} {
		if got := stemOf(path); got != want {
			t.Errorf("stemOf(%q) = %q, want %q", path, got, want)
		}
	}
	for title, want := range map[string]string{
		"Cylinder head": "cylinder-head", "  Zylinderköpfe, Bank 2 ": "zylinderkopfe-bank-2", "!?": "pattern", "AUX": "pattern-aux",
		"Головка": "головка", strings.Repeat("long ", 30): strings.TrimSuffix(strings.Repeat("long-", 12), "-"),
	} {
		if got := Slug(title); got != want {
			t.Errorf("Slug(%q) = %q, want %q", title, got, want)
		}
	}
}
