package texts

import (
	"slices"
	"strconv"
	"strings"

	"drawdown/geometry/expression"
	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

var (
	// torqueInText matches a number with what may be a unit of torque, or after
	// the word for torque.
	torqueInText = expression.Lazily(`(\d+(?:[.,]\d+)?)[\s\x{a0}]*((?i:N|lbf?s?|ft|in|kgf?|m)[·⋅.\-\x{2011} ]?(?i:m|ft|in|lbf?s?|kgf?)\b)`)
	bareTorque   = expression.Lazily(`(?i)(?:torque|drehmoment|couple)\s+(?:of\s+|to\s+|de\s+|von\s+)?(\d+(?:[.,]\d+)?)\s*(?:$|[;,)])`)
	// angleInText matches degrees that are no temperature, and the words around
	// them.
	angleInText = expression.Lazily(`(\d+(?:[.,]\d+)?)[\s\x{a0}]*(?:°|degrees?\b|grad\b|degrés?\b|grados?\b)[\s\x{a0}]*(\S*)`)
	// ofTheEngine are words that make degrees those of a crankshaft, a face or
	// a thermometer.
	ofTheEngine = expression.Lazily(`(?i)\b(btdc|atdc|tdc|crank\w*|cam\w*|piston\w*|ignition|timing|advance|bevel|seat\w*|chamfer|apart|gap\w*|cool\w*|hot|warm|heat\w*|temperature|kw|ot|kurbel\w*|nocken\w*|kolben\w*|zünd\w*|vilebrequin|pmh|allumage|cigüeñal|pms|encendido|clock|o'clock)\b`)
	// ofOthers are words that make a torque that of another fastener.
	ofOthers = expression.Lazily(`(?i)\b(plug\w*|spark\w*|drain\w*|other\w*|pulley|sensor\w*|nipple\w*|wrench\w*|post|posts|clamp|clamps|shield|injector\w*|bracket\w*|rocker\w*|old|was|instead|halter|schelle\w*|collier\w*|abrazadera\w*|kerze\w*|zündkerze\w*|schlüssel|ablass\w*|statt|bougie\w*|clé|vidange|bujía\w*|llave|vaciado)\b`)
	// denied are words that make a figure of their clause one that is not meant.
	denied = expression.Lazily(`(?i)\b(?:not|never|no|nicht|nie|pas|jamais|nunca)\b`)
)

var (
	dryThread = expression.Lazily(`(?i)\b(thread|bolt|stud|gewinde|schraube|filet|vis|rosca|tornillo)\w*\b.*\b(dry|trocken|secs?|seco?s?|secas?)\b`)
	noOil     = expression.Lazily(`(?i)\b(?:no|without|kein|ohne|sans|pas d|sin)[ ’'](?:(oil|öl|huile|aceite)|(grease|fett|graisse|grasa)|lubricant|schmierstoff|lubrifiant|lubricante)\b`)
	ofHoles   = expression.Lazily(`(?i)(hole|bore|block|head|bohrung|block|loch|trou|alésage|agujero|taladro)`)
)

// dryBesideOil finds a text that wants dry threads, in a file whose fasteners
// are all lubricated: the torque is wrong for one of the two.
func dryBesideOil(p plan.Plan, text string) []finding.Finding {
	clauses := slices.DeleteFunc(strings.FieldsFunc(text, func(r rune) bool { return r == ',' || r == ';' }), ofHoles.MatchString)
	ofThreads := strings.Join(clauses, ",")
	var without []string
	if !ofHoles.MatchString(text) {
		without = noOil.FindStringSubmatch(text)
	}
	if !dryThread.MatchString(ofThreads) && without == nil {
		return nil
	}
	var kinds, lubricants []string
	for _, k := range p.Kinds {
		switch {
		case screw.NothingOn(k.Lubricant):
			return nil // the text is about this kind
		case without != nil && (without[1] != "" && !strings.Contains(k.Lubricant, "oil") || without[2] != "" && strings.Contains(k.Lubricant, "oil")):
		case k.Lubricant != "" && k.Lubricant != asDelivered:
			kinds = append(kinds, k.Name)
			if !slices.Contains(lubricants, k.Lubricant) {
				lubricants = append(lubricants, k.Lubricant)
			}
		}
	}
	if len(kinds) == 0 {
		return nil
	}
	return []finding.Finding{finding.Warned(TextDry, finding.Values{"text": text, "kinds": kinds, "lubricants": lubricants})}
}

const asDelivered = "as delivered" // a text may then ask for degreasing

// figuresIn finds torques and angles in a text that no stage has.
func figuresIn(p plan.Plan, text string, angles []unit.Angle) (found []finding.Finding) {
	if torques := torquesOf(p); len(torques) > 0 && !ofOthers.MatchString(text) {
		for _, stated := range torquesIn(meantOf(text), torques[0].Unit) {
			if !slices.ContainsFunc(torques, func(t unit.GivenTorque) bool { return isTorque(t, stated) }) {
				found = append(found, finding.Warned(TextTorque, finding.Values{"text": text, "torque": stated}))
			}
		}
	}
	if len(angles) > 0 && !ofTheEngine.MatchString(text) {
		for _, stated := range anglesIn(text) {
			if !slices.Contains(angles, stated) {
				found = append(found, finding.Warned(TextAngle, finding.Values{"text": text, "angle": stated}))
			}
		}
	}
	return found
}

// meantOf returns a text without the clauses that deny something.
func meantOf(text string) string {
	clauses := strings.FieldsFunc(strings.ReplaceAll(text, ", ", ";"), func(r rune) bool { return r == ';' })
	return strings.Join(slices.DeleteFunc(clauses, denied.MatchString), "; ")
}

// isTorque reports whether a text means a torque: exactly in its own unit,
// rounded in another.
func isTorque(t, stated unit.GivenTorque) bool {
	if t.Unit == stated.Unit {
		return t.Value == stated.Value
	}
	return t.Near(stated)
}

// partsOf returns the equal steps into which an angle may be divided: two of
// 45° for 90°.
func partsOf(angle unit.Angle) (all []unit.Angle) {
	for steps := 2; steps <= 6; steps++ {
		all = append(all, unit.Angle(float64(angle)/float64(steps)))
	}
	return all
}

// torquesIn returns the torques in a text; those without a unit are in the unit
// of the stages.
func torquesIn(text string, of unit.TorqueUnit) (all []unit.GivenTorque) {
	for _, m := range torqueInText.FindAllStringSubmatch(text, -1) {
		if t, err := unit.ParseTorque(m[1] + " " + m[2]); err == nil {
			all = append(all, t)
		}
	}
	for _, m := range bareTorque.FindAllStringSubmatch(text, -1) {
		all = append(all, unit.GivenTorque{Value: figure(m[1]), Unit: of})
	}
	return all
}

// anglesIn returns the angles in a text.
func anglesIn(text string) (all []unit.Angle) {
	for _, m := range angleInText.FindAllStringSubmatch(strings.ToLower(text), -1) {
		if after := strings.Trim(m[2], ".,;)"); after != "c" && after != "f" && after != "celsius" {
			all = append(all, unit.Angle(figure(m[1])))
		}
	}
	return all
}

func figure(written string) float64 {
	v, _ := strconv.ParseFloat(strings.Replace(written, ",", ".", 1), 64) // only digits, so no error
	return v
}

// torquesOf returns the torques of the stages, including those for backing off.
func torquesOf(p plan.Plan) (all []unit.GivenTorque) {
	for _, s := range slices.Concat(p.Tighten.Stages, p.Loosen.Stages) {
		if s.Torque.Value > 0 {
			all = append(all, s.Torque)
		}
	}
	return all
}

// anglesOf returns the angles of the stages, and for each kind the sums of
// successive angles; for one stage only those that include it.
func anglesOf(p plan.Plan, stage int) (all []unit.Angle) {
	for _, k := range p.Kinds {
		var run []plan.Stage
		for _, s := range p.Tighten.Stages {
			switch {
			case s.Do == plan.Wait || !slices.Contains(s.Kinds, k.Name):
				continue
			case s.Do != plan.Advance:
				run = nil
				if s.Angle > 0 && stage == 0 {
					all = append(all, s.Angle) // backing off
				}
				continue
			}
			run = append(run, s)
			all = append(all, sumsTo(run, stage)...)
			if stage == 0 || s.Number == stage {
				all = append(all, partsOf(s.Angle)...)
			}
		}
	}
	if stage == 0 && len(all) > 0 {
		for _, s := range p.Loosen.Stages {
			all = append(all, s.Angle)
		}
	}
	return all
}

// sumsTo returns the sums of angles that end with the last of a run and include
// a stage; 0 means all.
func sumsTo(run []plan.Stage, stage int) (all []unit.Angle) {
	sum, shares := unit.Angle(0), stage == 0
	for _, s := range slices.Backward(run) {
		sum += s.Angle
		if shares = shares || s.Number == stage; shares {
			all = append(all, sum)
		}
	}
	return all
}
