package texts

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/thread"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

var (
	threadInText = expression.Lazily(`\bM(\d{1,2})(?:\s?[x×]\s?(\d+(?:[.,]\d+)?))?(?:\s?[x×]\s?(\d+))?`)
	// widthInText matches the width of a tool for a hexagon.
	widthInText = expression.Lazily(`(?i)(\d+(?:[.,]\d+)?)\s?mm (?:ring |open |long |deep )?(?:socket|spanner|wrench|hexagon|across flats)|\b(?:socket|hexagon|allen) key (?:of )?(\d+(?:[.,]\d+)?)\s?mm|(\d+)er[- ]?(?:nuss|schlüssel|ring)|\bSW ?(\d+)|clé (?:de )?(\d+)|llave (?:de )?(\d+)`)
	// lengthInText matches the length of a fastener.
	lengthInText = expression.Lazily(`(?i)(\d+(?:[.,]\d+)?)\s?mm (?:long )?(?:bolts?|screws?|studs?)\b|(?:bolts?|screws?|studs?) (?:of |are |is )?(\d+(?:[.,]\d+)?)\s?mm long\b`)
	classInText  = expression.Lazily(`(?i)(?:(?:class|grade|klasse|festigkeit|classe|clase)\s+(\d{1,2}\.\d)\b|\b(\d{1,2}\.9|[4568]\.[68])\s+(?:hex\w* |flange\w* |new |head )?(?:bolts?|screws?|studs?|quality))`)
	// fastenersBeside are words after a thread that make it one of fasteners.
	fastenersBeside = expression.Lazily(`(?i)^\W*(?:\pL+\W+){0,2}?(?:bolts?|screws?|nuts?|studs?|threads?|gewinde|\w*schrauben?|\w*muttern?|vis|écrous?|goujons?|tornillos?|tuercas?)\b`)
	// fastenersBefore are words before a thread that do so if a text is about
	// one kind.
	fastenersBefore = expression.Lazily(`(?i)\b(?:bolts?|screws?|nuts?|studs?|\w*schrauben?|\w*muttern?|vis|écrous?|goujons?|tornillos?|tuercas?)\W*$`)
	// ofTools are words that make a thread or a length that of something
	// outside the joint.
	ofTools = expression.Lazily(`(?i)\b(jack\w*|pull\w*|press\w*|lift\w*|eye\w*|guide\w*|insert\w*|helical|tap|chase\w*|drill\w*|pin|pins|peg\w*|sling\w*|hoist\w*|hook\w*|temporary|clip\w*|bracket\w*|hanger\w*|abdrück\w*|führung\w*|öse\w*|extract\w*|guía\w*)\b`)
)

// sizes finds threads, widths, lengths and classes that no fastener of the file
// has.
func (f facts) sizes(text string) (found []finding.Finding) {
	if ofOthers.MatchString(text) || denied.MatchString(text) || ofTools.MatchString(text) {
		return nil
	}
	return slices.Concat(f.threads(text), f.widths(text), f.lengths(text), f.classes(text))
}

func (f facts) sized(text, stated string, have []string) finding.Finding {
	return finding.Warned(TextSize, finding.Values{"text": text, "stated": stated, "have": have})
}

// kindSizes returns one size of all kinds, without repetitions; it is nil
// unless it is known of all.
func (f facts) kindSizes(size func(plan.Kind) string) (all []string) {
	for _, k := range f.used {
		s := size(k)
		if s == "" {
			return nil
		}
		if !slices.Contains(all, s) {
			all = append(all, s)
		}
	}
	return all
}

func (f facts) threads(text string) (found []finding.Finding) {
	have := f.kindSizes(plan.Kind.ThreadName)
	for _, at := range threadInText.FindAllStringSubmatchIndex(text, -1) {
		said := text[at[0]:at[1]]
		part := func(n int) string {
			if at[2*n] < 0 {
				return ""
			}
			return text[at[2*n]:at[2*n+1]]
		}
		beside := fastenersBeside.MatchString(text[at[1]:]) || f.alone && fastenersBefore.MatchString(text[:at[0]])
		if have == nil || f.ids[said] || part(2) == "" && !beside {
			continue
		}
		if _, err := thread.Parse("M" + part(1)); err != nil {
			continue // possibly an id
		}
		pitch, length := figure(part(2)), figure(part(3))
		if pitch > longestPitch { // M8 x 40 is a length
			pitch, length = 0, pitch
		}
		fits := func(k plan.Kind) bool {
			return k.MajorMm() == figure(part(1)) && (pitch == 0 || k.Thread.PitchMm == pitch) && (length == 0 || k.Length == 0 || float64(k.Length) == length)
		}
		if slices.ContainsFunc(f.used, fits) {
			continue
		}
		sizes := have
		if length > 0 {
			sizes = f.kindSizes(func(k plan.Kind) string {
				if k.Length == 0 {
					return k.ThreadName()
				}
				return k.ThreadName() + " × " + millimetres(k.Length)
			})
		}
		found = append(found, f.sized(text, said, sizes))
	}
	return found
}

const longestPitch = 6 // mm, of M64 (ISO 261)

// threadIs reports whether a text names a kind by its thread.
func threadIs(k plan.Kind, said string) bool {
	m := threadInText.FindStringSubmatch(said)
	return m != nil && m[0] == said && k.MajorMm() == figure(m[1])
}

func lengthIs(k plan.Kind, said string) bool { return float64(k.Length) == figure(said) }

func millimetres(l unit.Length) string { return strconv.FormatFloat(float64(l), 'f', -1, 64) + " mm" }

// states finds the sizes that a pattern matches in a text and no kind has.
func (f facts) states(text string, pattern expression.Lazy, have []string, known func(string) bool) (found []finding.Finding) {
	if have == nil {
		return nil
	}
	for _, m := range pattern.FindAllStringSubmatch(text, -1) {
		if said := strings.Join(m[1:], ""); said != "" && !known(said) {
			found = append(found, f.sized(text, strings.TrimSpace(m[0]), have))
		}
	}
	return found
}

func (f facts) widths(text string) []finding.Finding {
	widths := func(k plan.Kind) (all []unit.Length) {
		for _, w := range []unit.Length{k.HeadAcross, k.NutAcross, k.Turned().Across} {
			if w > 0 && !slices.Contains(all, w) {
				all = append(all, w)
			}
		}
		return all
	}
	have := f.kindSizes(func(k plan.Kind) string {
		var said []string
		for _, w := range widths(k) {
			said = append(said, millimetres(w))
		}
		return strings.Join(said, ", ")
	})
	return f.states(text, widthInText, have, func(said string) bool {
		return slices.ContainsFunc(f.used, func(k plan.Kind) bool {
			return slices.ContainsFunc(widths(k), func(w unit.Length) bool { return math.Abs(float64(w)-figure(said)) < 0.5 })
		})
	})
}

func (f facts) lengths(text string) []finding.Finding {
	have := f.kindSizes(func(k plan.Kind) string {
		if k.Length == 0 {
			return ""
		}
		return millimetres(k.Length)
	})
	return f.states(text, lengthInText, have, func(said string) bool {
		return slices.ContainsFunc(f.used, func(k plan.Kind) bool { return math.Abs(float64(k.Length)-figure(said)) < 0.5 })
	})
}

func (f facts) classes(text string) []finding.Finding {
	have := f.kindSizes(func(k plan.Kind) string { return k.Class })
	return f.states(text, classInText, have, func(said string) bool { return slices.Contains(have, said) })
}

var boreInText = expression.Lazily(`(?i)\b(?:bore size|cylinder bore|bore diameter|bore ø|bohrung ø|alésage ø|diámetro interior)\s*(?:of |de |is )?(\d+(?:[.,]\d+)?)`)

// gasketRing matches the inner and the outer diameter of a gasket.
var gasketRing = expression.Lazily(`(?i)\b(?:gasket|\w*dichtung|joint|junta)\b[^.;]*?\b(\d{2,4})(?: ?mm)? ?[/x×] ?(\d{2,4})\b`)

// boresIn finds the size of a bore, or of a round gasket, that the file does not have.
func (f facts) boresIn(text string) []finding.Finding {
	if !strings.ContainsAny(text, digits) {
		return nil
	}
	if m := boreInText.FindStringSubmatch(text); m != nil && len(f.Joint.Bores) > 0 {
		var have []string
		for _, b := range f.Joint.Bores {
			if size := millimetres(unit.Length(b.Diameter)); !slices.Contains(have, size) {
				have = append(have, size)
			}
		}
		if !slices.ContainsFunc(f.Joint.Bores, func(b geometry.Bore) bool { return math.Abs(b.Diameter-figure(m[1])) < 1 }) {
			return []finding.Finding{f.sized(text, m[1]+" mm", have)}
		}
	}
	ring := f.Clamped.Flange
	if ring == nil || ring.GasketOuter == 0 {
		return nil
	}
	if m := gasketRing.FindStringSubmatch(text); m != nil {
		if figure(m[1]) != float64(ring.GasketInner) || figure(m[2]) != float64(ring.GasketOuter) {
			return []finding.Finding{f.sized(text, m[1]+"/"+m[2], []string{millimetres(ring.GasketInner), millimetres(ring.GasketOuter)})}
		}
	}
	return nil
}
