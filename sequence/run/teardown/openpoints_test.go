package teardown

import (
	"errors"
	"fmt"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// shown is a job with its points, as the server makes it.
func shown(s *State, runs []RunFact, views map[string]run.View, needs ...Need) View {
	v := s.View(runs, needs)
	for id, of := range views {
		v.AddRun(id, of)
	}
	s.AddPoints(&v)
	return v
}

// A joint is a line of the list as a part is: what comes after it waits until a run of
// it is sealed. What is entered from paper waits for parts alone, since a joint has a
// sheet of its own. From first principles.
func TestPartsWaitForJoints(t *testing.T) {
	drained := entry("a", run.Part, 1, "")
	rotor := entry("b", run.Part, 3, "")
	paper := rotor
	paper.Source = run.OnPaper
	open, sealed := RunFact{Of: "lid", Direction: run.Loosen, Status: run.Open}, RunFact{Of: "lid", Direction: run.Loosen, Status: run.Sealed}
	for name, test := range map[string]struct {
		take run.Entry
		runs []RunFact
		want finding.Code
	}{
		"not begun":  {rotor, nil, PartOutOfOrder},
		"underway":   {rotor, []RunFact{open}, PartOutOfOrder},
		"sealed":     {rotor, []RunFact{open, sealed}, ""},
		"from paper": {paper, nil, ""},
	} {
		refusal := pump().Replay([]run.Entry{drained}).Take(test.take, test.runs)
		if test.want == "" && refusal != nil || test.want != "" && (refusal == nil || !errors.Is(refusal, test.want)) {
			t.Errorf("%s: %v, want %s", name, refusal, test.want)
		}
	}
	s := pump().Start()
	if first := s.BeforeJoint("lid", run.Loosen, nil); first == nil || first.Number != 1 {
		t.Errorf("before the lid comes off: %+v", first)
	}
	s = pump().Replay([]run.Entry{drained})
	if first := s.BeforeJoint("lid", run.Loosen, nil); first != nil {
		t.Errorf("the lid waits for %+v", first)
	}
	if first := s.BeforeJoint("lid", run.Tighten, nil); first == nil || first.Part != "seal" {
		t.Errorf("before the lid goes on: %+v", first)
	}
}

// A job on which nothing was begun has no points. From first principles: what was begun
// is to be ended, what is new is to be there and in, what is condemned has a successor.
func TestPointsOfAJob(t *testing.T) {
	w := rebuild()
	s := w.Start()
	if v := shown(s, nil, nil); len(v.Points) != 0 {
		t.Errorf("%+v", v.Points)
	}
	sealed := []RunFact{{Run: "R1", Of: "lid", Direction: run.Tighten, Status: run.Sealed}}
	broken := run.Condemned{ID: "A2", Kind: "main", Trouble: run.Broken, Mark: run.Mark{Entry: "x", At: began}}
	views := map[string]run.View{"R0": {Of: "lid", Direction: run.Loosen, Condemned: []run.Condemned{broken}}}
	codes := func(v View) (all []finding.Code) {
		for _, p := range v.Points {
			if p.Accepted == nil {
				all = append(all, p.Finding.Code)
			}
		}
		return all
	}
	v := shown(s, sealed, views)
	if got := fmt.Sprint(codes(v)); got != fmt.Sprint([]finding.Code{NoReplacement, NeverLoosened, LinesOpen, NotReady, NotReady}) {
		t.Fatalf("%s", got)
	}
	if r := s.Take(entry("c", run.Close, 0, ""), sealed, v.Points...); r == nil || !errors.Is(r, PointsOpen) {
		t.Errorf("closed: %v", r)
	}
	accept := entry("a0", run.Accept, 0, "")
	accept.Note, accept.Of = "no reason", "0000"
	if r := s.Take(accept, sealed, v.Points...); r == nil || !errors.Is(r, NoSuchPoint) {
		t.Errorf("accepted: %v", r)
	}
	for _, e := range []run.Entry{ready("r1", "lid gasket", "", ""), ready("r2", "shaft seal", "", ""), ready("r3", "liquid sealant", "", "")} {
		if r := s.Take(e, sealed); r != nil {
			t.Fatal(r)
		}
	}
	fitted := ready("f1", "lid gasket", "", "")
	fitted.Act = run.Fitted
	if r := s.Take(fitted, sealed); r != nil {
		t.Fatal(r)
	}
	for want, kind := range map[finding.Code]string{FittedAlready: "lid gasket", run.NoSuchKind: "liquid sealant"} {
		again := ready("f2", kind, "", "")
		again.Act = run.Fitted
		if r := s.Take(again, sealed); r == nil || !errors.Is(r, want) {
			t.Errorf("%s again: %v", kind, r)
		}
	}
	v = shown(s, sealed, views)
	if got := fmt.Sprint(codes(v)); got != fmt.Sprint([]finding.Code{NoReplacement, NeverLoosened, LinesOpen}) {
		t.Fatalf("%s", got)
	}
	for n, p := range v.Points {
		e := entry(fmt.Sprint("p", n), run.Accept, 0, p.Key)
		if r := s.Take(e, sealed, v.Points...); r == nil || !errors.Is(r, NoReason) {
			t.Errorf("accepted without a reason: %v", r)
		}
		e.Note = "the customer knows"
		if r := s.Take(e, sealed, v.Points...); r != nil {
			t.Fatal(r)
		}
	}
	v = shown(s, sealed, views)
	if r := s.Take(entry("c", run.Close, 0, ""), sealed, v.Points...); r != nil || v.Points[0].Accepted.Note != "the customer knows" {
		t.Errorf("not closed: %v", r)
	}
}

// A condemned bolt is settled by a new one that a run of its joint records, or by a
// sealed tightening for which its new one was there. From first principles.
func TestWhatBecameOfTheCondemned(t *testing.T) {
	s := rebuild().Start()
	broken := run.Condemned{ID: "A2", Kind: "main", Trouble: run.Broken, Mark: run.Mark{Entry: "x", At: began}}
	loosened := run.View{Of: "lid", Direction: run.Loosen, Condemned: []run.Condemned{broken}}
	replaced := broken
	replaced.Replaced = &run.Mark{Entry: "y", By: "RA"}
	need := run.Need{Kind: "main", Count: 1, Ready: 1, ID: "A2", Trouble: run.Broken, Among: true}
	seal := &run.Signature{Mark: run.Mark{By: "JK"}}
	for name, test := range map[string]struct {
		tightened run.View
		want      bool
	}{
		"not tightened":  {run.View{Of: "lid", Direction: run.Tighten, Needs: []run.Need{need}, Condemned: []run.Condemned{broken}}, false},
		"with a new one": {run.View{Of: "lid", Direction: run.Tighten, Condemned: []run.Condemned{replaced}}, true},
		"among new ones": {run.View{Of: "lid", Direction: run.Tighten, Condemned: []run.Condemned{broken}, Signed: seal, Needs: []run.Need{{Kind: "main", Count: 4, Ready: 4}, need}}, true},
		"none was there": {run.View{Of: "lid", Direction: run.Tighten, Condemned: []run.Condemned{broken}, Signed: seal, Needs: []run.Need{{Kind: "main", Count: 1, ID: "A2"}}}, false},
		"in a void run":  {run.View{Of: "lid", Direction: run.Tighten, Status: run.Voided, Condemned: []run.Condemned{replaced}}, false},
	} {
		v := s.View(nil, nil)
		v.AddRun("R1", loosened)
		v.AddRun("R2", test.tightened)
		if len(v.Condemned) != 1 || v.Condemned[0].Settled() != test.want || v.Condemned[0].Run != "R1" {
			t.Errorf("%s: %+v", name, v.Condemned)
		}
		if name == "among new ones" && (v.Condemned[0].Among != 4 || v.Condemned[0].Tightened != "R2") {
			t.Errorf("%+v", v.Condemned[0])
		}
	}
}
