// Package checktest has the check cases of the model, each with its origin, and
// small helpers for the tests of several packages. Only tests import it.
package checktest

import (
	_ "embed"
	"math"
	"strings"
	"testing"

	"gopkg.in/yaml.v3"

	"drawdown/sequence/interaction/bounds"
)

//go:embed checks.yaml
var cases []byte

// Case is one case of checks.yaml, whose head states the origin.
type Case struct {
	t              *testing.T
	ID             string
	Title          string
	RelTol         float64 `yaml:"rel_tol"`
	AbsTol         float64 `yaml:"abs_tol"`
	OtherTol       float64 `yaml:"rel_tol_other_element"`
	Inputs, Expect map[string]any
}

// CaseOf returns the case with an id.
func CaseOf(t *testing.T, id string) Case {
	t.Helper()
	var file struct{ Cases []Case }
	if err := yaml.Unmarshal(cases, &file); err != nil {
		t.Fatal(err)
	}
	for _, c := range file.Cases {
		if c.ID == id {
			c.t = t
			return c
		}
	}
	t.Fatalf("no case %s", id)
	return Case{}
}

// Find follows a path of keys, such as bolt.d.
func Find(t *testing.T, from map[string]any, path string) any {
	t.Helper()
	var at any = from
	for _, key := range strings.Split(path, ".") {
		m, ok := at.(map[string]any)
		if !ok || m[key] == nil {
			t.Fatalf("no value at %s", path)
		}
		at = m[key]
	}
	return at
}

// As decodes a value into a figure, a list or a table.
func As[T any](t *testing.T, v any) (as T) {
	t.Helper()
	text, err := yaml.Marshal(v)
	if err == nil {
		err = yaml.Unmarshal(text, &as)
	}
	if err != nil {
		t.Fatalf("%v is no %T: %v", v, as, err)
	}
	return as
}

func Ints(list []float64) []int {
	var out []int
	for _, v := range list {
		out = append(out, int(v))
	}
	return out
}

func (c Case) In(path string) float64 { return As[float64](c.t, Find(c.t, c.Inputs, path)) }

func (c Case) List(path string) []float64 { return As[[]float64](c.t, Find(c.t, c.Inputs, path)) }

func (c Case) Want(path string) float64 { return As[float64](c.t, Find(c.t, c.Expect, path)) }

func (c Case) Wants(path string) []float64 { return As[[]float64](c.t, Find(c.t, c.Expect, path)) }

func (c Case) Rows(path string) [][]float64 { return As[[][]float64](c.t, Find(c.t, c.Expect, path)) }

func (c Case) Same(what string, got, want float64) {
	c.t.Helper()
	if !(math.Abs(got-want) <= c.AbsTol+c.RelTol*math.Abs(want)) {
		c.t.Errorf("%s %s: got %.10g, want %.10g", c.ID, what, got, want)
	}
}

func (c Case) SameList(what string, got, want []float64) {
	c.t.Helper()
	if len(got) != len(want) {
		c.t.Fatalf("%s %s: got %d values, want %d", c.ID, what, len(got), len(want))
	}
	for i := range want {
		c.Same(what, got[i], want[i])
	}
}

func (c Case) SameSpread(what string, got bounds.Spread, want map[string]any) {
	c.t.Helper()
	for key, value := range map[string]float64{"min": got.Min, "mean": got.Mean, "max": got.Max, "sd": got.SD} {
		if w, stated := want[key]; stated {
			c.Same(what+" "+key, value, As[float64](c.t, w))
		}
	}
}
