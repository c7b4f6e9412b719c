package texts

import (
	"slices"
	"strings"

	"drawdown/geometry"
	"drawdown/geometry/finding"
	"drawdown/sequence/plan"
)

var (
	// fastenerWords are words for fasteners; German ones also end compound
	// words.
	fastenerWords = list("bolts screws nuts studs fasteners capscrews setscrews schrauben muttern stehbolzen stiftschrauben bolzen vis boulons écrous goujons tornillos pernos tuercas espárragos")
	germanEnds    = []string{"schrauben", "muttern", "bolzen"}
	capWords      = list("caps lagerdeckel deckel chapeaux tapas")
	dowelWords    = list("dowels passstifte passhülsen")
	// wholly accompany a count of all.
	wholly = list("all alle allen toutes tous todos todas new neue neuen nouvelles nouveaux neuves neufs nuevos nuevas")
	// plainly are words that do not limit the count to certain ones.
	plainly = list("the all new die der den alle allen neue neuen les toutes tous los las todos todas nuevos nuevas hex hexagon flange flanged clean oiled lubricated of de cap main")
	// some limit a count to some of them.
	some = list("old last first remaining other outer inner middle opposite centre center corner end adjacent spare more further top upper lower bottom left right front rear loose guide diagonal next " +
		"neighbouring same different sizes kinds alte alten letzten ersten anderen übrigen äußeren inneren mittleren oberen unteren linken rechten vorderen hinteren weitere " +
		"anciennes dernières premières autres viejos últimos primeros otros")
	// someAfter do so after the noun.
	someAfter = list("stay stays remain remains bleiben restent quedan opposite adjacent extérieures intérieures extérieurs intérieurs restantes restants exteriores interiores")
	// alone follow a number that counts the fasteners without naming them: all 24 once
	// round.
	alone = list("once in one round again by crosswise nacheinander einmal rundum reihum über une un en una")
	// each make it a count per other thing.
	each = list("per each every pro je jede jeder par chaque por cada a an eines einer d'un d’un de un una apart")
	// where introduce the place of those counted.
	where = list("at on near by beside under around along round nearest marked that which with without from into between behind next through for in and or an am im auf bei neben unter für du à sur sous en del al " +
		"dans bajo para y et und oder")
	// notCounts precede a number that is no count.
	notCounts = list("class grade size no no. number stage pass step cap cyl cylinder page by x × than every stufe klasse seite étape etapa page")
)

// counts finds numbers of fasteners, caps and dowels that disagree with the
// file. A title counts all of them.
func (f facts) counts(text string, words []word, title bool) (found []finding.Finding) {
	for i, w := range words {
		n := w.number()
		if n == 0 && (w.low == "both" || w.low == "beide") {
			n = 2
		}
		if n == 0 || w.ends || i > 0 && words[i-1].is(notCounts) {
			continue
		}
		c := counted{n: n, before: words[:i], whole: title}
		if !c.read(words[i+1:]) {
			if i > 0 && words[i-1].is(wholly) && (w.ends || i == len(words)-1 || words[i+1].is(alone)) && !f.sumOfKinds(n) {
				found = append(found, finding.Warned(TextCount, finding.Values{"text": text, "stated": n, "what": asWritten(words[i+1 : min(len(words), i+3)]), "count": len(f.Joint.Fasteners)}))
			}
			continue
		}
		if count, wrong := f.miscounted(c, w.low); wrong {
			found = append(found, finding.Warned(TextCount, finding.Values{"text": text, "stated": n, "what": c.what(), "count": count}))
		}
	}
	return found
}

// counted is a number of things in a text: two long bolts at the corner.
type counted struct {
	n      int
	whole  bool // all of them
	before []word
	how    []word // between number and noun
	thing  word
	after  []word
}

// read reads the words after the number; it is false if they name nothing
// known.
func (c *counted) read(rest []word) bool {
	const most = 4 // words between
	for k, w := range rest {
		if isFastener(w.low) || w.is(ones) && k > 0 || w.is(capWords) || w.is(dowelWords) {
			c.how, c.thing, c.after = rest[:k], w, rest[k+1:]
			if w.ends {
				c.after = nil
			}
			return !w.is(capWords) || k+1 >= len(rest) || !isFastener(rest[k+1].low)
		}
		if w.ends || w.is(conditions) || k >= most || w.number() > 0 && !isLength(rest[k:]) || w.is(each) && k > 0 || w.is(units) && !isLength(rest[max(0, k-1):]) {
			return false
		}
	}
	return false
}

func isLength(rest []word) bool { return len(rest) > 1 && rest[1].low == "mm" }

func isFastener(w string) bool {
	return slices.Contains(fastenerWords, w) || slices.ContainsFunc(germanEnds, func(end string) bool { return strings.HasSuffix(w, end) })
}

// what returns the text's own words for the thing.
func (c counted) what() string {
	said := append(geometry.Mapped(c.how, func(w word) string { return w.as }), c.thing.as)
	return strings.Join(said, " ")
}

func asWritten(words []word) string {
	return strings.Join(geometry.Mapped(words, func(w word) string { return w.as }), " ")
}

func (c counted) any(words []word, of []string) bool {
	return slices.ContainsFunc(words, func(w word) bool { return w.is(of) })
}

// miscounted reports whether the file has another number, and which.
func (f facts) miscounted(c counted, as string) (count int, wrong bool) {
	afters := c.after[:min(len(c.after), 2)]
	if c.any(c.how, some) || c.any(afters, someAfter) || c.any(afters, each) || c.any(c.before[max(0, len(c.before)-2):], some) {
		return 0, false
	}
	whole := c.whole || c.any(c.how, wholly) || len(c.before) > 0 && c.before[len(c.before)-1].is(wholly) || c.any(c.before[max(0, len(c.before)-2):], list("all alle"))
	switch {
	case c.thing.is(dowelWords):
		count = len(f.Joint.Dowels)
		return count, count > 0 && c.n != count && (whole || as == "both" || as == "beide" || c.n > count)
	case as == "both" || as == "beide":
		return 0, false // of a cap, of a rod
	case c.thing.is(capWords):
		return f.caps(c, whole)
	}
	kinds, some := f.kindsIn(c)
	if some {
		return 0, false
	}
	selected := len(c.after) > 0 && c.after[0].is(where)
	if len(kinds) > 0 {
		for _, k := range kinds {
			count += f.Count(k.Name)
		}
		one := slices.ContainsFunc(kinds, func(k plan.Kind) bool { return f.Count(k.Name) == c.n })
		return count, c.n != count && !one && (c.n > count || !selected)
	}
	count = len(f.Joint.Fasteners)
	named := len(c.before) > 0 && c.before[len(c.before)-1].is(list("the die les los las")) && c.n > 4
	return count, !f.sumOfKinds(c.n) && (c.n > count || !selected && (whole || named))
}

// kindsIn returns the kinds named by the words around the number: by name,
// thread or length. If the words name something that is no kind, others is
// true.
func (f facts) kindsIn(c counted) (kinds []plan.Kind, others bool) {
	title := stemsOf(f.Title)
	for i, w := range c.how {
		before := len(kinds)
		for _, k := range f.used {
			if slices.Contains(stemsOf(k.Name), w.low) || threadIs(k, w.as) || isLength(c.how[i:]) && lengthIs(k, w.low) {
				kinds = append(kinds, k)
			}
		}
		if before == len(kinds) && w.low != "mm" && !w.is(plainly) && !w.is(wholly) && !slices.Contains(title, w.low) {
			others = true
		}
	}
	if len(kinds) > 0 || others {
		return kinds, others && len(kinds) == 0
	}
	for _, k := range f.used {
		if called := strings.TrimSuffix(c.thing.low, "s"); called != "bolt" && slices.Contains(stemsOf(k.Name), called) {
			kinds = append(kinds, k)
		}
	}
	return kinds, false
}

// caps compares a number of caps with the clusters.
func (f facts) caps(c counted, whole bool) (count int, wrong bool) {
	unloaded := 0
	for _, k := range f.Joint.Clusters {
		if k.Unloaded {
			unloaded++
		}
	}
	count = len(f.Joint.Clusters)
	the := len(c.before) > 0 && c.before[len(c.before)-1].is(list("the"))
	selected := len(c.after) > 0 && c.after[0].is(where)
	return count, count > 1 && c.n != count && c.n != unloaded && c.n != count-unloaded && (c.n > count || !selected && (whole || the && c.n > 2))
}

// sumOfKinds reports whether a number is the number of all fasteners of some
// kinds, or of a cluster.
func (f facts) sumOfKinds(n int) bool {
	sums := []int{0}
	for _, k := range f.used {
		for _, sum := range slices.Clone(sums) {
			if with := sum + f.Count(k.Name); !slices.Contains(sums, with) {
				sums = append(sums, with)
			}
		}
	}
	return slices.Contains(sums, n) || slices.ContainsFunc(f.Joint.Clusters, func(c geometry.Cluster) bool { return len(c.Of) == n })
}
