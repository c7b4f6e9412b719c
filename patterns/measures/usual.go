package measures

import (
	"regexp"
	"slices"
	"sync"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
)

// usual is the usual range of a named value on any machine. Outside it the unit
// is probably wrong.
type usual struct {
	named, but  *regexp.Regexp // but: names with any value
	least, most unit.Reading
}

// usuals are the values with known names, in the languages of the sheets.
// Common practice, no source: from watches to the largest engines.
var usuals = sync.OnceValue(func() []usual {
	return []usual{
		{
			words(`(?:back)?lash|clearance|(?:end )?float|(?:end |side |free )?play|warp(?:age|ing)?|flatness|run-?out|ovality|` +
				`\pL*(?:spiel|verzug)|ebenheit|planheit|\pL*rundlauf|jeux?|gauchissement|planéité|voile|faux-rond|juegos?|holguras?|alabeo|planitud|descentrado`),
			words(`pedals?|levers?|cables?|belts?|chains?|clutch|ground|fan|beispiel|\pL*(?:pedal|hebel|seil|kette|riemen|kupplung|boden)\pL*|` +
				`pédale|levier|câble|chaîne|courroie|embrayage|sol|palanca|cadena|correa|embrague|suelo`),
			reading("0.001", "mm"), reading("3", "mm"),
		},
		{
			words(`compression(?: pressure)?|\pL*kompression\pL*|verdichtungsdruck|compresión`), nil,
			reading("1", "bar"), reading("80", "bar"),
		},
	}
})

func words(of string) *regexp.Regexp {
	return regexp.MustCompile(`(?i)(?:^|[^\pL])(?:` + of + `)(?:$|[^\pL])`)
}

func reading(figure string, of unit.Gauge) unit.Reading {
	d, err := unit.ParseDecimal(figure)
	if err != nil {
		panic(err)
	}
	return unit.Reading{Decimal: d, Unit: of}
}

// usual warns about a limit that no such value has.
func (r *reader) usual(v measure.Value) {
	i := slices.IndexFunc(usuals(), func(u usual) bool {
		return u.named.MatchString(v.What) && (u.but == nil || !u.but.MatchString(v.What)) && v.Unit.Measures(u.most.Unit)
	})
	if i < 0 {
		return
	}
	u := usuals()[i]
	for _, limit := range []struct {
		key  string
		read *unit.Decimal
	}{{"to", v.To}, {"from", v.From}} {
		if limit.read == nil || limit.read.Millionths == 0 {
			continue
		}
		size := unit.Decimal{Millionths: max(limit.read.Millionths, -limit.read.Millionths)}
		if above := u.most.Unit.In(u.most.Decimal, v.Unit).Less(size); above || limit.key == "to" && size.Less(u.least.Unit.In(u.least.Decimal, v.Unit)) {
			r.Warn(r.Node.KeyNode(limit.key), Unusual, finding.Values{"what": v.What, "limit": v.Read(*limit.read), "least": u.least, "most": u.most})
			return
		}
	}
}
