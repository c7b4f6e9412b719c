package interaction

import (
	"math"
	"os"
	"strings"
	"testing"

	"gonum.org/v1/gonum/mat"
	"gopkg.in/yaml.v3"

	"drawdown/geometry"
	"drawdown/sequence/tension/stiffness"
)

// check is one case of testdata/checks.yaml, whose head states the origin.
type check struct {
	t              *testing.T
	ID             string
	Title          string
	RelTol         float64 `yaml:"rel_tol"`
	AbsTol         float64 `yaml:"abs_tol"`
	OtherTol       float64 `yaml:"rel_tol_other_element"`
	Inputs, Expect map[string]any
}

func checkCase(t *testing.T, id string) check {
	t.Helper()
	text, err := os.ReadFile("testdata/checks.yaml")
	if err != nil {
		t.Fatal(err)
	}
	var file struct{ Cases []check }
	if err := yaml.Unmarshal(text, &file); err != nil {
		t.Fatal(err)
	}
	for _, c := range file.Cases {
		if c.ID == id {
			c.t = t
			return c
		}
	}
	t.Fatalf("no case %s", id)
	return check{}
}

// find goes down a path of keys, such as bolt.d.
func find(t *testing.T, from map[string]any, path string) any {
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

func number(t *testing.T, v any) float64 {
	t.Helper()
	switch v := v.(type) {
	case int:
		return float64(v)
	case float64:
		return v
	}
	t.Fatalf("%v is no number", v)
	return 0
}

func numbers(t *testing.T, v any) []float64 {
	t.Helper()
	list, ok := v.([]any)
	if !ok {
		t.Fatalf("%v is no list", v)
	}
	var out []float64
	for _, e := range list {
		out = append(out, number(t, e))
	}
	return out
}

func table(t *testing.T, v any) [][]float64 {
	t.Helper()
	list, ok := v.([]any)
	if !ok {
		t.Fatalf("%v is no table", v)
	}
	var out [][]float64
	for _, e := range list {
		out = append(out, numbers(t, e))
	}
	return out
}

func ints(list []float64) []int {
	var out []int
	for _, v := range list {
		out = append(out, int(v))
	}
	return out
}

func (c check) in(path string) float64       { return number(c.t, find(c.t, c.Inputs, path)) }
func (c check) list(path string) []float64   { return numbers(c.t, find(c.t, c.Inputs, path)) }
func (c check) want(path string) float64     { return number(c.t, find(c.t, c.Expect, path)) }
func (c check) wants(path string) []float64  { return numbers(c.t, find(c.t, c.Expect, path)) }
func (c check) rows(path string) [][]float64 { return table(c.t, find(c.t, c.Expect, path)) }

func (c check) same(what string, got, want float64) {
	c.t.Helper()
	if !(math.Abs(got-want) <= c.AbsTol+c.RelTol*math.Abs(want)) {
		c.t.Errorf("%s %s: got %.10g, want %.10g", c.ID, what, got, want)
	}
}

func (c check) sameList(what string, got, want []float64) {
	c.t.Helper()
	if len(got) != len(want) {
		c.t.Fatalf("%s %s: got %d values, want %d", c.ID, what, len(got), len(want))
	}
	for i := range want {
		c.same(what, got[i], want[i])
	}
}

func (c check) sameSpread(what string, got Spread, want map[string]any) {
	c.t.Helper()
	for key, value := range map[string]float64{"min": got.Min, "mean": got.Mean, "max": got.Max, "sd": got.SD} {
		if w, stated := want[key]; stated {
			c.same(what+" "+key, value, number(c.t, w))
		}
	}
}

func must[T any](t *testing.T) func(T, error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// jointOf makes a joint of a whole matrix M.
func jointOf(t *testing.T, m [][]float64) *Joint {
	t.Helper()
	c := mat.NewSymDense(len(m), nil)
	for i := range m {
		for k := i; k < len(m); k++ {
			c.SetSym(i, k, m[i][k])
		}
	}
	return must[*Joint](t)(NewJoint(c, make([]stiffness.Resilience, len(m))))
}

func alike(n int, value float64) []float64 {
	list := make([]float64, n)
	for i := range list {
		list[i] = value
	}
	return list
}

func stages(order []int, targets []float64, shares ...float64) []Pass {
	var passes []Pass
	for _, share := range shares {
		passes = append(passes, ToForces(order, targets, share))
	}
	return passes
}

func fourBolts(t *testing.T) *Joint { return jointOf(t, table(t, checkCase(t, "P08").Inputs["M"])) }

// twoByFive are the bolts of case P12.
func twoByFive() (at []geometry.Point) {
	for i := range 5 {
		for j := range 2 {
			at = append(at, geometry.Point{X: 95 * float64(i), Y: 90 * float64(j)})
		}
	}
	return at
}

func ownAlike(n int, mmPerN float64) []stiffness.Resilience {
	own := make([]stiffness.Resilience, n)
	for i := range own {
		own[i] = stiffness.Resilience(mmPerN)
	}
	return own
}

func infinitePlateHead(t *testing.T) *Joint {
	t.Helper()
	c := checkCase(t, "P12")
	d := checkCase(t, "P02")
	plate := InfinitePlate{RigidityNmm: Part{mpa(d.in("E")), d.in("nu"), mm(d.in("t"))}.RigidityNmm()}
	return must[*Joint](t)(NewJoint(must[*mat.SymDense](t)(plate.Compliance(twoByFive(), c.in("k"))), ownAlike(10, c.in("cb"))))
}

func raisedFace(t *testing.T) Flange {
	c := checkCase(t, "P06")
	return Flange{
		Part:  Part{mpa(c.in("E")), c.in("nu"), mm(c.in("t"))},
		Outer: mm(c.in("OD")), Bore: mm(c.in("bore")), BoltCircle: mm(c.in("bolt_circle")),
		GasketInner: mm(c.in("gasket_id")), GasketOuter: mm(c.in("gasket_od")),
		PipeWall: mm(c.in("pipe_t")), PipeRadius: mm(c.in("pipe_r")), Pair: true,
	}
}

// circle16 are 16 bolts round a circle, from the right, anticlockwise.
func circle16(diameter float64) (at []geometry.Point) {
	for i := range 16 {
		y, x := math.Sincos(2 * math.Pi * float64(i) / 16)
		at = append(at, geometry.Point{X: x * diameter / 2, Y: y * diameter / 2})
	}
	return at
}

func raisedFaceJoint(t *testing.T) *Joint {
	t.Helper()
	c := must[*mat.SymDense](t)(raisedFace(t).Compliance(circle16(450), checkCase(t, "P06").in("k")))
	return must[*Joint](t)(NewJoint(c, ownAlike(16, checkCase(t, "P16").in("cb"))))
}
