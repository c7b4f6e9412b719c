package wrench

import (
	"math"
	"strings"
	"testing"

	"drawdown/geometry/unit"
	"drawdown/render/words"
	"drawdown/sequence/tension/tensiontest"

	"pgregory.net/rapid"
)

// All expected values in this file follow from first principles.

var shop = []Wrench{
	{Name: "large", Min: 40, Max: 200, Division: 1, Unit: unit.NewtonMetre},
	{Name: "small", Min: 1, Max: 25, Division: 0.1, Unit: unit.NewtonMetre},
	{Name: "middle", Min: 10, Max: 100, Division: 0.5, Unit: unit.NewtonMetre},
	{Name: "pounds", Min: 20, Max: 150, Division: 1, Unit: unit.PoundForceFoot},
}

func TestTheSmallestWrenchThatFitsIsTaken(t *testing.T) {
	for torque, want := range map[unit.Torque]string{5: "small", 25: "small", 25.1: "middle", 19: "small", 100: "middle", 101: "large", 201: "pounds"} {
		r, err := Set(Work{Torque: torque, Wrenches: shop})
		if err != nil || r.Wrench.Name != want {
			t.Errorf("%v N·m: %+v, %v; want %s", torque, r.Wrench, err, want)
		}
	}
}

// 80 N·m with 60 mm straight out on 400 mm: 80 · 400/460 = 69.565 N·m, 69.5 on
// the scale, which gives 79.925 N·m.
func TestAdapterOnTheScale(t *testing.T) {
	r, err := Set(Work{Torque: 80, Length: 400, Adapter: 60, Wrenches: shop, Again: true})
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "setting", float64(r.Setting), 80*400.0/460, 1e-12)
	if r.Scale != (unit.GivenTorque{Value: 69.5, Unit: unit.NewtonMetre}) {
		t.Errorf("scale %v", r.Scale)
	}
	tensiontest.Near(t, "given", float64(r.Given), 69.5*460/400, 1e-12)
	tensiontest.Near(t, "low", float64(r.Low), 69.5*460/400*0.96, 1e-12)
	tensiontest.Near(t, "high", float64(r.High), 69.5*460/400*1.04, 1e-12)
	if len(r.Notes) != 2 || !strings.Contains(words.English().Say(r.Notes[1]), "a fastener at rest needs more torque") {
		t.Errorf("%q", r.Notes)
	}
}

// The usable range is compared with the setting, not with the torque on the
// fastener: 105 N·m with the adapter is within the middle wrench.
func TestTheSettingMustFitTheWrench(t *testing.T) {
	r, err := Set(Work{Torque: 105, Length: 400, Adapter: 60, Wrenches: shop})
	if err != nil || r.Wrench.Name != "middle" {
		t.Errorf("%+v, %v", r.Wrench, err)
	}
	own := []Wrench{{Name: "own", Min: 10, Max: 100, Unit: unit.NewtonMetre, Length: 200}}
	r, err = Set(Work{Torque: 80, Length: 400, Adapter: 60, Wrenches: own})
	if err != nil {
		t.Fatal(err)
	}
	tensiontest.Near(t, "its own length", float64(r.Setting), 80*200.0/260, 1e-12)
}

// A wrench without a length is skipped with an adapter, and the note names it;
// if a length is stated for all, none is skipped.
func TestWrenchesWithoutALengthAreSkipped(t *testing.T) {
	list := append([]Wrench{{Name: "long", Min: 60, Max: 340, Unit: unit.NewtonMetre, Length: 640}}, shop...)
	r, err := Set(Work{Torque: 100, Adapter: 60, Wrenches: list})
	if err != nil || r.Wrench.Name != "long" || r.Length != 640 || r.LengthFrom != LengthOfList {
		t.Fatalf("%+v, %v", r, err)
	}
	if want := "left out, because the list gives no length for the adapter: large, small, middle, pounds"; !strings.Contains(strings.Join(words.English().SayAll(r.Notes), "\n"), want) {
		t.Errorf("%q do not say %q", r.Notes, want)
	}
	r, err = Set(Work{Torque: 100, Adapter: 60, Length: 400, Wrenches: list})
	if err != nil || r.Wrench.Name != "middle" || r.Length != 400 || r.LengthFrom != LengthStated || strings.Contains(strings.Join(words.English().SayAll(r.Notes), "\n"), "left out") {
		t.Errorf("%+v, %v", r, err)
	}
	r, err = Set(Work{Torque: 50, Wrenches: shop})
	if err != nil || r.Wrench.Name != "middle" || len(r.Notes) != 0 {
		t.Errorf("without an adapter no length is needed: %+v, %v", r, err)
	}
}

// ISO 6789: the tolerance class depends on the greatest torque of the wrench.
func TestToleranceGoesByTheMaximum(t *testing.T) {
	for most, want := range map[float64]float64{10: 0.06, 12.5: 0.04} {
		r, err := Set(Work{Torque: 8, Wrenches: []Wrench{{Name: "one", Max: most}}})
		if err != nil || r.ToleranceShare != want {
			t.Errorf("to %v N·m: %v, %v", most, r.ToleranceShare, err)
		}
	}
	r, err := Set(Work{Torque: 8})
	if err != nil || r.ToleranceShare != 0.06 || !strings.Contains(words.English().Say(r.Assumptions[0]), "whose scale ends at 10 N·m or below") {
		t.Errorf("%+v, %v", r, err)
	}
}

// For any wrench that fits, the setting is usable and on the scale, and the
// fastener gets the torque within half a division.
func TestWrenchProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := Work{
			Torque: unit.Torque(rapid.Float64Range(0.5, 300).Draw(t, "torque")), Length: unit.Length(rapid.Float64Range(150, 900).Draw(t, "length")),
			Adapter: unit.Length(rapid.Float64Range(0, 100).Draw(t, "adapter")), AdapterAngle: unit.Angle(rapid.Float64Range(-180, 180).Draw(t, "angle")), Wrenches: shop,
		}
		r, err := Set(w)
		if err != nil {
			return
		}
		least, most := r.Wrench.UsableNm()
		if r.Setting < least || r.Setting > most || r.Scale.Value > r.Wrench.Max*(1+1e-9) {
			t.Fatalf("%v on %v to %v", r.Setting, least, most)
		}
		if off := math.Abs(r.Setting.In(r.Wrench.Unit) - r.Scale.Value); off > r.Wrench.Division/2+1e-6 {
			t.Fatalf("%v is %v off the scale", r.Setting, off)
		}
		lever := (float64(w.Length) + float64(w.Adapter)*math.Cos(float64(w.AdapterAngle)*math.Pi/180)) / float64(w.Length)
		if math.Abs(float64(r.Given)-float64(r.Scale.Nm())*lever) > 1e-9*float64(r.Given) || r.Low >= r.Given || r.Given >= r.High {
			t.Fatalf("%+v", r)
		}
	})
}

func TestSetWrenchErrorsSayWhatIsAllowed(t *testing.T) {
	good := Work{Torque: 80, Length: 400, Adapter: 60, Wrenches: shop}
	tensiontest.Refuses(t, words.English().Error, Set, good, map[string]func(*Work){
		"torque 0 N·m; allowed: above 0":                     func(w *Work) { w.Torque = 0 },
		"torque NaN N·m":                                     func(w *Work) { w.Torque = unit.Torque(math.NaN()) },
		"an adapter of 60 mm needs the length of the wrench": func(w *Work) { w.Length, w.Wrenches = 0, nil },
		"an adapter of 60 mm needs the length of the wrench, and none of the list (large, small, middle, pounds) has one": func(w *Work) { w.Length = 0 },
		"allowed: a wrench whose scale ends between 782.6 and 3913 N·m":                                                   func(w *Work) { w.Torque = 900 },
		"adapter -1 mm; allowed: 0 mm to 3000 mm":                                                                         func(w *Work) { w.Adapter = -1 },
		"adapter angle 1000°; allowed":                                                                                    func(w *Work) { w.AdapterAngle = 1000 },
		"an adapter of 390 mm at 180° leaves 10 mm of lever":                                                              func(w *Work) { w.Adapter, w.AdapterAngle = 390, 180 },
		"no wrench of the list fits 900 N·m; usable ranges: large: 40 N·m to 200 N·m":                                     func(w *Work) { w.Torque = 900 },
		`wrench "odd": 50 to 10 N·m; allowed: a range that rises`:                                                         func(w *Work) { w.Wrenches = []Wrench{{Name: "odd", Min: 50, Max: 10}} },
		`wrench "odd": a scale division of 80 N·m; allowed`:                                                               func(w *Work) { w.Wrenches = []Wrench{{Name: "odd", Max: 100, Division: 80}} },
	})
}

func TestCoarseScaleIsTold(t *testing.T) {
	r, err := Set(Work{Torque: 22, Wrenches: []Wrench{{Name: "long", Max: 100, Division: 5}}})
	if err != nil {
		t.Fatal(err)
	}
	if len(r.Notes) != 1 || !strings.Contains(words.English().Say(r.Notes[0]), "the scale of long is coarse here: set to 20 N·m the fastener gets 20.0 N·m, -9 %") {
		t.Errorf("%q", r.Notes)
	}
}
