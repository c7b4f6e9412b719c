package source

import (
	"path/filepath"
	"slices"
	"strings"
	"unicode"

	"golang.org/x/text/unicode/norm"
)

// maxStemCharacters keeps the names of the output files short.
const maxStemCharacters = 60

// Stem returns the stem of the output files; it is empty if the source has no
// name.
func (s Source) Stem() string { return s.stem }

// stemOf returns the file name without its extension, made safe for Windows.
func stemOf(path string) string {
	name := strings.Map(func(r rune) rune {
		if unicode.IsControl(r) || strings.ContainsRune(`<>:"/\|?*`, r) {
			return '-'
		}
		return r
	}, bareName(filepath.Base(path)))
	return safeStem(name)
}

// Name returns the stem of the output files: that of the file, or else one made
// from the title.
func (s Source) Name(title string) string {
	if s.stem != "" {
		return s.stem
	}
	return Slug(title)
}

// Slug makes a file stem from a title: Cylinder head becomes cylinder-head.
func Slug(title string) string {
	var b strings.Builder
	gap := false
	for _, r := range norm.NFD.String(title) {
		switch {
		case unicode.Is(unicode.Mn, r):
			// An accent; its letter stays.
		case unicode.IsLetter(r) || unicode.IsDigit(r):
			if gap && b.Len() > 0 {
				b.WriteByte('-')
			}
			gap = false
			b.WriteRune(unicode.ToLower(r))
		default:
			gap = true
		}
	}
	return safeStem(b.String())
}

// safeStem avoids the names that Windows refuses: devices, and names that end
// in a dot or a space.
func safeStem(name string) string {
	if runes := []rune(name); len(runes) > maxStemCharacters {
		name = string(runes[:maxStemCharacters])
	}
	name = strings.TrimRight(strings.TrimSpace(name), ". -")
	if name == "" {
		return "pattern"
	}
	device, _, _ := strings.Cut(name, ".")
	if isWindowsDevice(strings.ToUpper(strings.TrimSpace(device))) {
		return "pattern-" + name
	}
	return name
}

// isWindowsDevice follows "Naming Files, Paths, and Namespaces" of the Windows
// documentation.
func isWindowsDevice(name string) bool {
	if slices.Contains([]string{"CON", "PRN", "AUX", "NUL"}, name) {
		return true
	}
	runes := []rune(name)
	return len(runes) == 4 && (strings.HasPrefix(name, "COM") || strings.HasPrefix(name, "LPT")) &&
		strings.ContainsRune("0123456789¹²³", runes[3])
}
