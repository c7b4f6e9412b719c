package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	vEngine = lazily(`\bV-?(\d{1,2})\b`)
	// byCylinders finds how many cylinders an engine has.
	byCylinders = lazily(`(?i)\b(\d{1,2}|\pL+)[- ](?:cyl|zyl)(?:inders?|inder)?\b|\b(?:inline|straight|in-line)[- ](\d{1,2}|\pL+)\b`)
)

// Machine compares the name of the machine with the file.
func Machine(p plan.Plan) []finding.Finding { return factsOf(p).cylinders(p.Machine) }

// cylinders finds a name of an engine that has another number of cylinders than the
// bores of the file leave room for: a file may hold one bank, or a head of several.
func (f facts) cylinders(text string) []finding.Finding {
	numbers := f.named["cyl"]
	if len(numbers) < fewestOfLetters {
		return nil
	}
	of, bank := 0, 0
	if m := vEngine.FindStringSubmatch(text); m != nil {
		of, _ = strconv.Atoi(m[1])
		bank = of / 2
	} else if m := byCylinders.FindStringSubmatch(text); m != nil {
		of = word{low: strings.ToLower(m[1] + m[2])}.number()
		bank = of
	}
	const most = 24
	n := len(numbers)
	if of < fewestOfLetters || of > most || slices.Max(numbers) <= of && (n == of || bank%n == 0) {
		return nil
	}
	return []finding.Finding{finding.Warned(TextCylinders, finding.Values{"text": text, "stated": of, "count": n, "highest": slices.Max(numbers)})}
}
