package texts

import (
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
)

// hottest is the greatest temperature in °C at which anybody opens a joint by hand
// (common practice, no source).
const hottest = 120

var below = expression.Lazily(`(?i)\b(?:below|under|unter|bajo|por debajo de|moins de|en dessous de|sous)\s+(\d+)\s*°\s*C\b`)

var pressed = expression.Lazily(`(?i)\b(?:pressure off|vented|vent open|without pressure|drucklos|druck ab|sans pression|sin presión)\b[^.;]*?\b(\d+(?:[.,]\d+)?) ?(?:bar|psi|kPa|MPa)\b`)

// underPressure finds a text that has the joint opened without pressure, and states some.
func underPressure(text string) []finding.Finding {
	if !strings.ContainsAny(text, digits) {
		return nil
	}
	m := pressed.FindStringSubmatch(text)
	if m == nil || figure(m[1]) == 0 || below.MatchString(text) || strings.Contains(text, "below ") || strings.Contains(text, "under ") {
		return nil
	}
	return []finding.Finding{finding.Warned(TextPressure, finding.Values{"text": text, "stated": m[1]})}
}

// tooHot finds a text that has the joint opened below a temperature at which nobody can
// touch it.
func tooHot(text string) []finding.Finding {
	if !strings.Contains(text, "°") {
		return nil
	}
	m := below.FindStringSubmatch(text)
	if m == nil || figure(m[1]) <= hottest {
		return nil
	}
	return []finding.Finding{finding.Warned(TextHot, finding.Values{"text": text, "stated": figure(m[1])})}
}
