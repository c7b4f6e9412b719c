package teardown

import (
	"errors"
	"testing"

	"drawdown/geometry/finding"
	"drawdown/sequence/run"
)

// From first principles: a fitted part is not sent out, a part that is out is
// not fitted, and an entry on a part is not undone once more was done with the
// part. Step 3 takes the rotor out, step 6 puts it back.
func TestRulesOfTheMachineShop(t *testing.T) {
	off := []run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Part, 3, "")}
	send, back := entry("s", run.SendOut, 3, ""), entry("k", run.Back, 0, "s")
	send.To, send.Note, send.Joint, back.Note = "Milltown Grinding", "balance it", "lid", "balanced"
	again := send
	again.ID = "s2"
	joint := entry("j", run.SendOut, 2, "")
	joint.To, joint.Note = "Milltown Grinding", "face it"
	fitted := entry("f", run.Part, 6, "")
	fitted.Note = "out of order"
	for name, test := range map[string]struct {
		before []run.Entry
		take   run.Entry
		want   finding.Code // empty: it is accepted
	}{
		"sent":                  {off, send, ""},
		"while fitted":          {nil, send, PartFitted},
		"fitted again":          {append(off[:2:2], fitted), send, PartFitted},
		"twice":                 {append(off[:2:2], send), again, PartOut},
		"once more":             {append(off[:2:2], send, back), again, ""},
		"a joint":               {nil, joint, ""},
		"a note":                {nil, run.Entry{ID: "x", Act: run.SendOut, Step: 1, To: "M", Note: "n", Who: "RA"}, NoPartStep},
		"to nobody":             {off, run.Entry{ID: "x", Act: run.SendOut, Step: 3, Note: "n", Who: "RA"}, run.FieldMissing},
		"back":                  {append(off[:2:2], send), back, ""},
		"back without a word":   {append(off[:2:2], send), entry("k", run.Back, 0, "s"), run.FieldMissing},
		"back twice":            {append(off[:2:2], send, back), run.Entry{ID: "k2", Act: run.Back, Of: "s", Note: "n", Who: "RA"}, NotSentOut},
		"back from nowhere":     {off, run.Entry{ID: "k", Act: run.Back, Of: "a", Note: "n", Who: "RA"}, NotSentOut},
		"fitted while out":      {append(off[:2:2], send), fitted, PartOut},
		"fitted when back":      {append(off[:2:2], send, back), fitted, ""},
		"its sending undone":    {append(off[:2:2], send), entry("u", run.Undo, 0, "s"), ""},
		"undone under the back": {append(off[:2:2], send, back), entry("u", run.Undo, 0, "s"), NotUndone},
		"the back undone":       {append(off[:2:2], send, back), entry("u", run.Undo, 0, "k"), ""},
		"under the fitting":     {append(off[:2:2], send, back, fitted), entry("u", run.Undo, 0, "k"), NotUndone},
		"put on while out":      {append(off[:2:2], send), entry("u", run.Undo, 0, "b"), NotUndone},
		"closed while out":      {append(off[:2:2], send), entry("c", run.Close, 0, ""), PartsOut},
	} {
		s := pump().Replay(test.before)
		switch refusal := s.Take(test.take, nil); {
		case test.want == "" && refusal != nil:
			t.Errorf("%s: %v", name, refusal)
		case test.want != "" && (refusal == nil || !errors.Is(refusal, test.want)):
			t.Errorf("%s: %v, want %s", name, refusal, test.want)
		}
	}
}

// While a part is out, its line of the rebuild and its joint show it, and no
// others.
func TestWhatIsOut(t *testing.T) {
	send, back := entry("s", run.SendOut, 3, ""), entry("k", run.Back, 0, "s")
	send.To, send.Note, send.Joint, send.Kept, back.Note = "Milltown Grinding", "balance it", "lid", "bag 4", "balanced"
	before := []run.Entry{entry("a", run.Part, 1, ""), entry("b", run.Part, 3, ""), send}
	s := pump().Replay(before)
	v := s.View(nil, nil)
	if v.Rebuild[0].State != ToDo || v.Rebuild[1].State != IsOut || v.Rebuild[2].State != IsOut || v.Teardown[2].State != IsDone {
		t.Errorf("%+v", v.Rebuild)
	}
	if out := s.OutOfJoint("lid"); len(out) != 1 || out[0].To != "Milltown Grinding" || len(s.OutOfJoint("head")) != 0 {
		t.Errorf("%+v", out)
	}
	if o := v.SentOut[0]; o.Part != "rotor" || o.Joint != "lid" || o.Kept != "bag 4" || o.Note != "balance it" || o.Back != nil {
		t.Errorf("%+v", o)
	}
	s = pump().Replay(append(before, back))
	if v := s.View(nil, nil); v.Rebuild[1].State != ToDo || v.SentOut[0].Back.Note != "balanced" || len(s.OutOfJoint("lid")) != 0 {
		t.Errorf("%+v", v.SentOut)
	}
}
