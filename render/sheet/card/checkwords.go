package card

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/render/sheet"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/tension/screw"
)

func (c *card) beforeLines() []string {
	if c.loosening {
		lines := append(c.basis(plan.CautionLoosen), c.words.Card.Checks.BeforeLoosening...)
		return append(lines, c.sockets()...)
	}
	return append(c.basis(plan.CautionTighten), c.beforeTightening()...)
}

// basis returns the cautions of a side, and the grounds of its order and
// rounds.
func (c *card) basis(side plan.CautionSide) []string {
	lines := c.plan.CautionsFor(side)
	for _, f := range c.side.Basis {
		lines = append(lines, words.Capital(c.words.Say(f))+".")
	}
	return lines
}

func (c *card) beforeTightening() []string {
	w := c.words.Card.Checks
	lines := c.byKind(c.reuseLine)
	lines = append(lines, c.byKind(c.lubricantLine)...)
	if slices.ContainsFunc(c.plan.Kinds, func(k plan.Kind) bool { return !k.Through() }) {
		lines = append(lines, w.TappedHoles)
	}
	if len(c.plan.Tighten.Stages) == 0 {
		lines = append(lines, w.ScrewedIn)
	} else {
		lines = append(lines, w.ScrewedInByHand)
	}
	lines = append(lines, c.sockets()...)
	if span := c.torqueSpan(); span != "" {
		lines = append(lines, span)
	}
	return append(lines, w.Last)
}

// sockets lists the sockets that fit the heads in one line: 16 mm main, 13 mm
// side. The line is left out if the file does not state the heads.
func (c *card) sockets() []string {
	var sizes []string
	for _, k := range c.plan.Kinds {
		size := c.socket(k)
		if size == "" {
			continue
		}
		if len(c.plan.Kinds) > 1 {
			size += " " + k.Name
		}
		sizes = append(sizes, size)
	}
	if len(sizes) == 0 {
		return nil
	}
	return []string{fmt.Sprintf(c.words.Card.Checks.Sockets, strings.Join(sizes, ", "))}
}

// socket is the size to turn a kind, and to hold its nut. If the file gives
// only the form of the head, the width is from the standard, which is named.
func (c *card) socket(k plan.Kind) string {
	turned, w := k.Turned(), c.words.Card.Checks
	if turned.Across == 0 || turned.Standard != "" && k.HeadForm == "" {
		return ""
	}
	size := c.words.Figure(k.Labelled(turned.Across))
	if turned.Key {
		size = fmt.Sprintf(w.Key, size)
	}
	if turned.Standard != "" {
		size = fmt.Sprintf(w.ByStandard, size, turned.Standard)
	}
	switch {
	case k.NutAcross == 0 || k.Stud():
		return size
	case k.NutAcross == turned.Across && !turned.Key:
		return fmt.Sprintf(w.HeadAndNut, size)
	}
	return size + fmt.Sprintf(w.HeldNut, c.words.Figure(k.Labelled(k.NutAcross)))
}

// byKind applies say to every kind. A text that holds for all kinds appears
// once; other texts name their kinds.
func (c *card) byKind(say func(k plan.Kind) string) []string {
	var said []string
	names := map[string][]string{}
	for _, k := range c.plan.Kinds {
		w := say(k)
		if w == "" {
			continue
		}
		if names[w] == nil {
			said = append(said, w)
		}
		names[w] = append(names[w], k.Name)
	}
	var lines []string
	for _, w := range said {
		who := strings.Join(names[w], ", ")
		if len(names[w]) == len(c.plan.Kinds) {
			who = c.words.Card.Checks.AllFasteners
		}
		lines = append(lines, fmt.Sprintf(c.words.Card.Checks.ForKinds, words.Capital(who), w))
	}
	return lines
}

func (c *card) reuseLine(k plan.Kind) string {
	w := c.words.Card.Checks
	switch k.Reuse {
	case plan.ReuseOnce:
		return w.UsedOnce
	case plan.ReuseInspect:
		if k.Stud() { // a stud stays in its hole and is not measured
			return w.InspectStud
		}
		if k.ReusedTo > 0 {
			return fmt.Sprintf(w.InspectTo, c.words.Figure(k.Labelled(k.ReusedTo)))
		}
		return w.InspectFirst
	case plan.ReuseYes:
		return w.MayGoBack
	}
	return ""
}

func (c *card) lubricantLine(k plan.Kind) string {
	name, w := words.Plain(k.Lubricant), c.words.Card.Checks
	switch {
	case name == "":
		return ""
	case screw.NothingOn(k.Lubricant):
		return w.Dry
	case w.States[name] != "":
		return fmt.Sprintf(w.InState, w.States[name])
	}
	return fmt.Sprintf(w.Lubricated, c.words.Lubricant(k.Lubricant))
}

func (c *card) torqueSpan() string {
	wrench, gauge, length := "", "", ""
	var torques []unit.GivenTorque
	for _, s := range c.side.Stages {
		switch s.Do {
		case plan.Advance:
			gauge = c.words.Card.Checks.AngleGauge
		case plan.Lengthen:
			length = c.words.Card.Checks.LengthGauge
		case plan.Tighten:
			torques = append(torques, s.Torque)
		}
	}
	if len(torques) > 0 {
		byNm := func(a, b unit.GivenTorque) int { return cmp.Compare(a.Nm(), b.Nm()) }
		wrench = fmt.Sprintf(c.words.Card.Checks.Wrench, sheet.TorqueSpan(c.words, slices.MinFunc(torques, byNm), slices.MaxFunc(torques, byNm)))
	}
	if wrench+gauge+length == "" {
		return ""
	}
	return words.Capital(c.words.With(c.words.With(wrench, gauge), length)) + "."
}
