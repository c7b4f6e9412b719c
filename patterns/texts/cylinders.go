package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	vEngine = expression.Lazily(`\bV-?(\d{1,2})\b`)
	// byCylinders matches the number of an engine's cylinders.
	byCylinders = expression.Lazily(`(?i)\b(\d{1,2}|\pL+)[- ](?:cyl|zyl)(?:inders?|inder)?\b|\b(?:inline|straight|in-line)[- ](\d{1,2}|\pL+)\b`)
)

// Machine compares the name of the machine with the file.
func Machine(p plan.Plan) []finding.Finding { return factsOf(p).cylinders(p.Machine) }

// cylinders finds an engine name whose number of cylinders does not fit the
// bores of the file: a file may contain one bank, or one of several heads.
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
