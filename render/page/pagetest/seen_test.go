package pagetest

import (
	"math"
	"testing"

	"drawdown/sequence/run"
)

// A tap on the picture gives the place of a finding in the file's millimetres;
// a tap on a mark gives that fastener. First principles: half way between the
// marks of M1 and M2 is half way between their places, (−142.5, 45) in the
// file.
func TestFindingWhereThePictureIsTapped(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-head", run.Loosen)
	one := NewTab(t, Browser(t), Tablet)
	signedOn(one, b, id, "RA")
	open := func(found run.Found) {
		one.Tap(`.runmain > [data-open="more"]`)
		one.Tap(`#more [data-open="finding"]`)
		one.Until(`document.getElementById("finding").open`)
		one.Tap(`#finding input[value="` + string(found) + `"]`)
	}
	tap := func(first, second string) {
		Evaluate[any](one, `(() => {
			const middle = (id) => { const b = document.querySelector('.picture [data-id="' + id + '"] .edge').getBoundingClientRect(); return [b.x + b.width / 2, b.y + b.height / 2]; };
			const [a, z] = [middle("`+first+`"), middle("`+second+`")];
			const at = { clientX: (a[0] + z[0]) / 2, clientY: (a[1] + z[1]) / 2, bubbles: true };
			document.querySelector(a[0] === z[0] ? '.picture [data-id="`+first+`"] .hit' : ".picture svg").dispatchEvent(new MouseEvent("click", at));
		})(); null`)
	}
	open(run.Corrosion)
	tap("M1", "M2")
	one.Tap("#finding button[type=submit]")
	version(one, "1")
	open(run.DamagedHole)
	tap("M3", "M3")
	one.Tap("#finding button[type=submit]")
	version(one, "2")
	b.mu.Lock()
	defer b.mu.Unlock()
	entries := b.runs[id].entries
	if p := entries[0].Place; entries[0].Found != run.Corrosion || p == nil || p.At == nil || math.Abs(p.At[0]+142.5) > 1 || math.Abs(p.At[1]-45) > 1 {
		t.Errorf("%+v at %+v", entries[0], p)
	}
	if p := entries[1].Place; entries[1].Found != run.DamagedHole || p == nil || p.Fastener != "M3" {
		t.Errorf("%+v at %+v", entries[1], p)
	}
	one.Quiet()
}

// A value of the file is chosen with its place and unit. With a shim the form
// asks for the fitted one, and without a value of the file it asks what was
// measured.
func TestValueOfTheFile(t *testing.T) {
	t.Parallel()
	b := newBench(t)
	id := b.open("p4-cam-caps", run.Loosen)
	one := NewTab(t, Browser(t), Phone)
	signedOn(one, b, id, "RA")
	open := func() {
		one.Tap(`.runmain > [data-open="more"]`)
		one.Tap(`#more [data-open="measure"]`)
		one.Until(`document.getElementById("measure").open`)
	}
	open()
	one.Type("#measure input[name=value]", "0,31")
	one.Type("#measure input[name=shim]", "2.40")
	one.Tap("#measure button[type=submit]")
	version(one, "1")
	open()
	Evaluate[any](one, `(() => { const s = document.querySelector("#measure select[name=seen]"); s.value = ""; s.dispatchEvent(new Event("change", { bubbles: true })); })(); null`)
	one.Type("#measure input[name=measure]", "depth of a dent")
	one.Type("#measure input[name=value]", "0.5")
	one.Type("#measure input[name=unit]", "mm")
	one.Tap("#measure button[type=submit]")
	version(one, "2")
	b.mu.Lock()
	defer b.mu.Unlock()
	first, other := b.runs[id].entries[0], b.runs[id].entries[1]
	if first.Measure != "valve clearance" || first.Place.Station != "T1" || first.Unit != "mm" || first.Value != "0,31" || first.Shim != "2.40" {
		t.Errorf("%+v at %+v", first, first.Place)
	}
	if other.Measure != "depth of a dent" || other.Shim != "" || other.Unit != "mm" {
		t.Errorf("%+v", other)
	}
	one.Quiet()
}
