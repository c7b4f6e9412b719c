package figures_test

import (
	"fmt"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/figures"
	"drawdown/sequence/tension/screw"
	"drawdown/sequence/tension/stiffness"
)

// whole is a bolt that states everything that can be judged.
func whole(t *testing.T) figures.Bolt {
	return figures.Bolt{
		Kind: "main",
		Bolt: screw.Bolt{Thread: *named(t, "M10"), Class: "10.9", Lubricant: "engine oil"},
		Grip: stiffness.Grip{
			Layers:   []stiffness.Layer{{Thickness: 30, Material: "steel"}},
			TappedIn: "aluminium", Engagement: 20, BoltLength: 50, Thread: 32,
		},
		Under: "steel",
		Stages: []figures.Stage{
			{Number: 1, Do: figures.Tighten, Torque: unit.GivenTorque{Value: 20}}, {Number: 2, Do: figures.Advance, Angle: 60},
		},
	}
}

// The subjects, as named in the findings.
const (
	yield     = "torque against yield and breaking"
	angle     = "angle past yield"
	stripping = "stripping of the thread"
	pressure  = "pressure under the head"
	length    = "length and engagement"
	wrench    = "wrench"
	lubricant = "lubricant"
)

// coverage writes a finding in short form: its code, what it lacks and what was
// used instead.
func coverage(f finding.Finding) string {
	text := string(f.Code)
	for _, name := range []string{"lacks", "taken"} {
		if list, _ := f.Values[name].([]finding.Term); len(list) > 0 {
			text += fmt.Sprint(" ", list)
		}
	}
	return text
}

// Each missing value excludes what cannot be judged without it, and no more.
// With a substitute the subject is judged leniently (first principles: what the
// figure is calculated from).
func TestWhatIsNotStated(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		name   string
		change func(b *figures.Bolt)
		want   map[string]string // for subjects not judged in full; "": not a subject
	}{
		{"nothing", func(*figures.Bolt) {}, nil},
		{"thread", func(b *figures.Bolt) { b.Bolt.Thread.Name = "" }, map[string]string{
			yield: "judged not [thread]", angle: "judged not [thread]", stripping: "judged not [thread]", pressure: "judged not [thread]"}},
		{"class", func(b *figures.Bolt) { b.Bolt.Class = "" }, map[string]string{
			yield: "judged leniently [class] [class 12.9]", angle: "judged not [class]", stripping: "judged not [class]", pressure: "judged not [class]"}},
		{"lubricant", func(b *figures.Bolt) { b.Bolt.Lubricant = "" }, map[string]string{
			yield: "judged leniently [lubricant or friction] [all from oiled to dry]", angle: "judged leniently [lubricant or friction] [all from oiled to dry]",
			lubricant: "judged not [lubricant or friction]"}},
		{"lubricant, with friction", func(b *figures.Bolt) { b.Bolt.Lubricant, b.Bolt.Friction = "", &screw.Friction{} }, nil},
		{"lubricant, with a nut factor", func(b *figures.Bolt) { b.Bolt.Lubricant, b.Bolt.NutFactor = "", 0.2 }, nil},
		{"grip", func(b *figures.Bolt) { b.Grip.Layers = nil }, map[string]string{angle: "judged not [grip]", length: "judged not [grip]"}},
		{"length", func(b *figures.Bolt) { b.Grip.BoltLength = 0 }, map[string]string{length: "judged not [length]"}},
		{"thread length", func(b *figures.Bolt) { b.Grip.Thread = 0 }, map[string]string{
			angle: "judged leniently [thread length] [thread over the whole grip]"}},
		{"thread length, of full thread", func(b *figures.Bolt) { b.Grip.Thread, b.Grip.FullThread = 0, true }, nil},
		{"thread length, with a shank", func(b *figures.Bolt) {
			b.Grip.Thread, b.Grip.Shank = 0, []stiffness.Section{{Length: 10, Diameter: 8}}
		}, nil},
		{"what is under the head", func(b *figures.Bolt) { b.Under, b.Grip.Layers[0].Material = "", "" }, map[string]string{
			angle:    "judged leniently [material under the head] [clamped parts of aluminium]",
			pressure: "judged not [head, washer or hole]"}},
		{"what is under a head that is", func(b *figures.Bolt) { b.Bolt.HeadAcross, b.Under, b.Grip.Layers[0].Material = 16, "", "" }, map[string]string{
			angle:    "judged leniently [material under the head] [clamped parts of aluminium]",
			pressure: "judged leniently [material under the head] [the hardest usual part]"}},
		{"what it is screwed into", func(b *figures.Bolt) { b.Grip.TappedIn = "" }, map[string]string{stripping: "judged not [into]"}},
		{"engagement", func(b *figures.Bolt) { b.Grip.Engagement = 0 }, map[string]string{
			stripping: "judged not [engagement]", length: "judged not [engagement]"}},
		{"engagement, of a bolt with a nut", func(b *figures.Bolt) { b.Grip.TappedIn, b.Grip.Engagement, b.NutAcross = "", 0, 16 }, map[string]string{stripping: ""}},
		{"engagement, of a stud", func(b *figures.Bolt) { b.Grip.Engagement, b.NutAcross = 0, 16 }, map[string]string{
			stripping: "judged not [engagement]", length: "judged not [engagement]"}},
		{"angle", func(b *figures.Bolt) { b.Stages = b.Stages[:1] }, map[string]string{angle: ""}},
		{"torque", func(b *figures.Bolt) { b.Stages = b.Stages[1:] }, map[string]string{yield: "", wrench: ""}},
		{"stages", func(b *figures.Bolt) { b.Stages = nil }, map[string]string{yield: "", wrench: "", angle: "", stripping: "", pressure: ""}},
	} {
		b := whole(t)
		c.change(&b)
		judged, open := figures.Covered([]figures.Bolt{b})
		got := map[string]string{}
		for _, f := range slices.Concat(judged, open) {
			got[fmt.Sprint(f.Values["what"])] = coverage(f)
			if kinds := f.Values["kinds"].([]string); kinds != nil {
				t.Errorf("%s: it holds for all kinds, and is said of %v", c.name, kinds)
			}
		}
		want := map[string]string{}
		for _, subject := range []string{yield, angle, stripping, pressure, length, wrench, lubricant} {
			switch said, given := c.want[subject]; {
			case !given:
				want[subject] = "judged"
			case said != "":
				want[subject] = said
			}
		}
		if diff := cmp.Diff(want, got); diff != "" {
			t.Errorf("not stated: %s: %s", c.name, diff)
		}
		if slices.ContainsFunc(judged, func(f finding.Finding) bool { return f.Code != figures.Judged }) || finding.Has(open, figures.Judged) {
			t.Errorf("not stated: %s: judged %v, open %v", c.name, judged, open)
		}
	}
}

// Kinds with the same gaps are named together; none are named if all have them.
func TestKindsThatAreJudgedAlike(t *testing.T) {
	t.Parallel()
	kind := func(name string, change func(*figures.Bolt)) figures.Bolt {
		b := whole(t)
		b.Kind = name
		change(&b)
		return b
	}
	bare := func(b *figures.Bolt) { b.Bolt.Class = "" }
	judged, open := figures.Covered([]figures.Bolt{
		kind("a", bare), kind("b", func(*figures.Bolt) {}), kind("c", bare), kind("d", func(b *figures.Bolt) { b.Bolt.Class, b.Bolt.Lubricant = "", "" }),
	})
	var got []string
	for _, f := range slices.Concat(judged, open) {
		if f.Values["what"] == finding.Term(yield) || f.Values["what"] == finding.Term(wrench) {
			got = append(got, fmt.Sprint(coverage(f), " of ", f.Values["kinds"]))
		}
	}
	want := []string{
		"judged of [b]", "judged of []", "judged leniently [class] [class 12.9] of [a c]",
		"judged leniently [class lubricant or friction] [class 12.9 all from oiled to dry] of [d]",
	}
	if diff := cmp.Diff(want, got); diff != "" {
		t.Error(diff)
	}
}
