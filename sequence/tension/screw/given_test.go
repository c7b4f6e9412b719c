package screw

import (
	"strings"
	"testing"

	"github.com/google/go-cmp/cmp"

	"pgregory.net/rapid"

	"drawdown/render/words"
)

// First principles: the texts say what the figures are.
func TestParseFriction(t *testing.T) {
	one := Same(Range{0.12, 0.12, 0.12})
	span := Same(Between(0.10, 0.14))
	both := Friction{Thread: Between(0.10, 0.14), Head: Range{0.12, 0.12, 0.12}}
	for text, want := range map[string]Friction{
		"0.12": one, " 0,12 ": one, ".12": one, "0.10-0.14": span, "0.10 – 0.14": span, "0.10 to 0.14": span, "0.10..0.14": span, "0,10-0,14": span,
		"thread=0.10-0.14,head=0.12": both, "head = 0.12, thread = 0.10-0.14": both, "thread: 0,10-0,14; head: 0,12": both, "thread=0,10-0,14,head=0,12": both,
	} {
		got, err := ParseFriction(text)
		if diff := cmp.Diff(want, got); err != nil || diff != "" {
			t.Errorf("%q: %v\n%s", text, err, diff)
		}
	}
}

func TestFrictionThatIsNone(t *testing.T) {
	for text, want := range map[string]string{
		"-0.12": "allowed: coefficients from 0.01 to 1", "−0.12": "from 0.01", "0": "from 0.01", "0.009": "from 0.01", "12": "to 1", "0.14-0.10": "rise", "0.1--0.2": "rise",
		"": "0.10-0.14", "oil": "0.10-0.14", "12%": "0.10-0.14", "thread=0.1": "thread=0.10-0.14,head=0.12", "thread=0.1,thread=0.2": "head=0.12", "thread=0.1,head=x": "head=0.12",
		"0.1-0.12-0.14": "0.10-0.14", "NaN": "0.10-0.14",
	} {
		if _, err := ParseFriction(text); err == nil || !strings.Contains(words.English().Error(err), want) {
			t.Errorf("%q: %v; want %q", text, err, want)
		}
	}
}

func TestParseShare(t *testing.T) {
	for text, want := range map[string]float64{"90%": 0.9, " 90 % ": 0.9, "0.9": 0.9, "0,9": 0.9, "100%": 1, "1": 1, "7.5%": 0.075} {
		if got, err := ParseShare(text); err != nil || got != want {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "0", "0%", "-90%", "90", "120%", "%", "most", "1e3%", "NaN", "Inf"} {
		if got, err := ParseShare(text); err == nil || !strings.Contains(words.English().Error(err), "up to 100%, such as 90% or 0.9") {
			t.Errorf("%q: %v, %v; want an error", text, got, err)
		}
	}
}

func TestParseNutFactor(t *testing.T) {
	for text, want := range map[string]float64{"0.2": 0.2, "0,18": 0.18, "1": 1} {
		if got, err := ParseNutFactor(text); err != nil || got != want {
			t.Errorf("%q: %v, %v; want %v", text, got, err, want)
		}
	}
	for _, text := range []string{"", "0", "-0.2", "20%", "1.5", "K"} {
		if got, err := ParseNutFactor(text); err == nil || !strings.Contains(words.English().Error(err), "such as 0.2") {
			t.Errorf("%q: %v, %v; want an error", text, got, err)
		}
	}
}

// Any text gives usable figures, or an error.
func TestGivenTextNeverPassesSilently(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringOf(rapid.RuneFrom([]rune("0123456789.,-–% =;+mthread headsl½/"))).Draw(t, "text")
		if f, err := ParseFriction(text); err == nil && f.check() != nil {
			t.Fatalf("friction %q: %v", text, f)
		}
		if v, err := ParseShare(text); err == nil && !(v > 0 && v <= 1) {
			t.Fatalf("share %q: %v", text, v)
		}
		if v, err := ParseNutFactor(text); err == nil && !(v > 0) {
			t.Fatalf("nut factor %q: %v", text, v)
		}
	})
}
