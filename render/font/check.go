package font

import (
	"fmt"
	"strings"

	"drawdown/render/scene"
)

// Check says whether every backend can paint the page: its figures are sound
// and the typeface holds every character of its text.
func Check(p scene.Page) error {
	if err := scene.Check(p); err != nil {
		return err
	}
	for i, it := range p.Items {
		t, ok := it.(scene.Text)
		if !ok {
			continue
		}
		if err := CheckLine(t.Content); err != nil {
			return fmt.Errorf("page %q, item %d: %w", p.Name, i+1, err)
		}
	}
	return nil
}

// CheckLine says whether the typeface holds every character of a line.
func CheckLine(s string) error {
	// A broken byte would be set as the typeface's own mark for "unknown".
	if strings.ToValidUTF8(s, "") != s {
		return fmt.Errorf("text %.40q is not valid UTF-8", s)
	}
	if r, missing := Missing(s); missing {
		return fmt.Errorf("text %.40q: the typeface has no %q (%U); it holds Latin, Greek and Cyrillic letters and the signs of the trade", s, r, r)
	}
	return nil
}
