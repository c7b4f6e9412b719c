package patterns

import (
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"drawdown/geometry/finding"
	"drawdown/patterns/form"
	"drawdown/patterns/meaning"
	"drawdown/patterns/mechanics"
	"drawdown/patterns/wrenches"
	"drawdown/sequence/tension/screw"
)

const ownLubricants = "lubricants: {our paste: {friction: 0.115, spread: 0.015}, bought: {k: 0.18, spread: 0.02}}\n"

// First principles: the ends of the range are the mean less and plus the
// spread; the friction of a nut factor gives that nut factor back.
func TestTestedLubricants(t *testing.T) {
	t.Parallel()
	in, problems := readText(ownLubricants + strings.Replace(oneKind, "%", `class: "8.8", lubricant: our paste`, 1))
	if len(problems) > 0 {
		t.Fatal(said(problems).Detail())
	}
	k := in.Kinds[0]
	if k.Lubricant != "our paste" || k.Friction == nil || math.Abs(k.Friction.Thread.Low-0.1) > 1e-12 || math.Abs(k.Friction.Head.High-0.13) > 1e-12 {
		t.Errorf("%+v", k)
	}
	in, problems = readText(ownLubricants + strings.Replace(oneKind, "%", `class: "8.8", lubricant: bought`, 1))
	if len(problems) > 0 {
		t.Fatal(said(problems).Detail())
	}
	r, err := screw.Target(in.Kinds[0].Bolt())
	if err != nil {
		t.Fatal(err)
	}
	for _, at := range []struct{ is, want float64 }{{r.Low.NutFactor, 0.16}, {r.Nominal.NutFactor, 0.18}, {r.High.NutFactor, 0.20}} {
		if math.Abs(at.is-at.want) > 1e-9 {
			t.Errorf("K %g, not %g", at.is, at.want)
		}
	}
}

func TestLubricantsThatCannotBe(t *testing.T) {
	t.Parallel()
	for list, want := range map[string]finding.Code{
		"{our paste: {friction: 0.05, spread: 0.05}}":        mechanics.SpreadWide,
		"{our paste: {friction: 0.05}}":                      form.KeyMissing,
		"{our paste: {friction: 0.1, k: 0.2, spread: 0.01}}": form.SeveralActions,
		"[our paste]":                            form.NoMap,
		"nothere.yaml":                           meaning.BaseUnreadable,
		"{other: {friction: 0.1, spread: 0.01}}": screw.NoSuchLubricant,
	} {
		_, problems := readText("lubricants: " + list + "\n" + strings.Replace(oneKind, "%", `lubricant: our paste`, 1))
		found := false
		for _, p := range problems {
			found = found || p.Found != nil && p.Found.Code == want
		}
		if !found {
			t.Errorf("%s: %s", list, said(problems).Detail())
		}
	}
}

// A pattern takes the lubricants from the file of the shop, which is sound on
// its own and beside the wrenches.
func TestLubricantsOfTheShop(t *testing.T) {
	t.Parallel()
	folder := t.TempDir()
	write := func(name, text string) string {
		path := filepath.Join(folder, name)
		if err := os.WriteFile(path, []byte(text), 0o600); err != nil {
			t.Fatal(err)
		}
		return path
	}
	pattern := write("cover.yaml", "lubricants: shop.yaml\n"+strings.Replace(oneKind, "%", `class: "8.8", lubricant: our paste`, 1))
	prints := map[string]bool{}
	for _, text := range []string{ownLubricants, ownLubricants + "wrenches: [{name: small, to: 60 N·m}]\n"} {
		from, err := Open(write("shop.yaml", text), nil)
		if err != nil {
			t.Fatal(err)
		}
		if _, problems := wrenches.Read(from, time.Time{}); len(problems) > 0 {
			t.Error(said(problems).Detail())
		}
		if from, err = Open(pattern, nil); err != nil {
			t.Fatal(err)
		}
		in, problems := Read(from)
		if len(problems) > 0 || in.Kinds[0].Friction == nil {
			t.Errorf("%s %+v", said(problems).Detail(), in.Kinds)
		}
		prints[in.Fingerprint] = true
	}
	if len(prints) != 2 {
		t.Errorf("another file of the shop, the same fingerprint: %v", prints)
	}
}
