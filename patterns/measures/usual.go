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
			words(`warp(?:age|ing)?|flatness|\pL*verzug|ebenheit|planheit|gauchissement|planéité|alabeo|planitud`), nil,
			reading("0.001", "mm"), reading("0.5", "mm"),
		},
		{
			words(`(?:main|rod|big[- ]end|con-?rod|journal) ?bearing clearance|\pL*lagerspiel|jeu (?:de|du) palier|holgura de(?:l)? cojinete`), nil,
			reading("0.001", "mm"), reading("0.5", "mm"),
		},
		{
			words(`run-?out|ovality|taper|\pL*rundlauf|voile|faux-rond|descentrado|ovalidad`), nil,
			reading("0.001", "mm"), reading("1", "mm"),
		},
		{
			words(`(?:back)?lash|clearance|(?:end )?float|(?:end |side |free )?play|run-?out|ovality|` +
				`\pL*spiel|\pL*rundlauf|jeux?|voile|faux-rond|juegos?|holguras?|descentrado`),
			words(`pedals?|levers?|cables?|belts?|chains?|clutch|ground|fan|beispiel|\pL*(?:pedal|hebel|seil|kette|riemen|kupplung|boden)\pL*|` +
				`pédale|levier|câble|chaîne|courroie|embrayage|sol|palanca|cadena|correa|embrague|suelo`),
			reading("0.001", "mm"), reading("3", "mm"),
		},
		{
			words(`compression(?: pressure)?|\pL*kompression\pL*|verdichtungsdruck|compresión`), nil,
			reading("4", "bar"), reading("80", "bar"),
		},
		{
			words(`oil pressure|öldruck|pression d[’']huile|presión (?:de|del) aceite`), words(`hydraulic|transmission|gearbox|injector|getriebe|hydraulik|boîte|caja`),
			reading("0.2", "bar"), reading("10", "bar"),
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

// ofClearance is the place of clearances in usuals.
const ofClearance = 3

// mostTimes is how many times its least value a clearance may be (common practice, no
// source): the decimal point of a limit beyond it has probably slipped.
const mostTimes = 12

// sizes call what is made to a size, in the languages of the sheets. Its limits are close.
var sizes = sync.OnceValue(func() *regexp.Regexp {
	return words(`length|height|diameter|thickness|bore|\pL*(?:länge|höhe|durchmesser|dicke)|longueur|hauteur|diamètre|épaisseur|longitud|altura|diámetro|espesor`)
})

// lengths call a size that may differ more: that of a spring.
var lengths = sync.OnceValue(func() *regexp.Regexp { return words(`length|\pL*länge|longueur|longitud`) })

// gaps call a distance of two faces.
var gaps = sync.OnceValue(func() *regexp.Regexp { return words(`gap|\pL*spalt|écart|separación`) })

// fine reports whether the limits of a size are many of their own last digits apart: 31.96
// to 32.98.
func fine(v measure.Value) bool {
	const most, hundredth, tenth = 60, 10_000, 100_000 // last digits; millionths
	from, to := v.From.Millionths, v.To.Millionths
	if from%tenth == 0 || to%tenth == 0 {
		return false
	}
	last := int64(hundredth)
	for last > 1 && (int64(from)%last != 0 || int64(to)%last != 0) {
		last /= 10
	}
	return int64(to)-int64(from) > most*last
}

// ofBolts call a fastener, whose length the kind has.
var ofBolts = sync.OnceValue(func() *regexp.Regexp {
	return words(`bolts?|screws?|studs?|\pL*(?:schrauben?|bolzen)\pL*|vis|goujons?|tornillos?|pernos?`)
})

// apart warns of two limits that are too far from each other for one value.
func (r *reader) apart(v measure.Value) {
	const closest, closestOfParts, least = 0.15, 0.08, 5 // of a size: of a spring, of a machined part; mm
	if v.From == nil || v.To == nil || v.From.Millionths <= 0 || !v.Unit.IsLength() {
		return
	}
	from, to := v.From.Float(), v.To.Float()
	clearance := usuals()[ofClearance]
	slipped := (clearance.named.MatchString(v.What) && !clearance.but.MatchString(v.What) || gaps().MatchString(v.What)) && to > mostTimes*from
	most := closest
	if !lengths().MatchString(v.What) {
		most = closestOfParts
	}
	slipped = slipped || sizes().MatchString(v.What) && fine(v)
	size := sizes().MatchString(v.What) && !ofBolts().MatchString(v.What) && v.Unit.In(*v.From, clearance.most.Unit).Float() >= least && to-from > most*to
	if slipped || size {
		r.Warn(r.Node.KeyNode("to"), LimitsApart, finding.Values{"what": v.What, "from": v.Read(*v.From), "to": v.Read(*v.To)})
	}
}

// largest call a value of which there may be little, smallest one of which there must be
// enough, in the languages of the sheets.
var (
	largest = sync.OnceValue(func() *regexp.Regexp {
		return words(`warp(?:age|ing)?|flatness|run-?out|ovality|taper|wear|\pL*verzug|ebenheit|planheit|\pL*rundlauf|verschleiß|gauchissement|planéité|voile|faux-rond|usure|alabeo|planitud|descentrado|desgaste`)
	})
	smallest = sync.OnceValue(func() *regexp.Regexp {
		return words(`compression(?: pressure)?|oil pressure|\pL*kompression\pL*|verdichtungsdruck|öldruck|pression d[’']huile|compresión|presión (?:de|del) aceite`)
	})
)

// oneLimit warns of the only limit of a value, if it is on the wrong side: no more warp
// than, no less compression than.
func (r *reader) oneLimit(v measure.Value) {
	switch {
	case v.From != nil && v.To == nil && largest().MatchString(v.What):
		r.Warn(r.Node.KeyNode("from"), LimitOnWrongSide, finding.Values{"what": v.What, "key": "from", "meant": "to"})
	case v.To != nil && v.From == nil && v.Unit.Measures("bar") && smallest().MatchString(v.What):
		r.Warn(r.Node.KeyNode("to"), LimitOnWrongSide, finding.Values{"what": v.What, "key": "to", "meant": "from"})
	}
}
