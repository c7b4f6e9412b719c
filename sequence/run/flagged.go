package run

import (
	"maps"
	"math"
	"slices"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/measure"
	"drawdown/sequence/plan"
)

// judgeWrench: a wrench of the shop's list is refused where the torque lies
// outside what it can be used for.
func (s *State) judgeWrench(e Entry, st *step) *Refusal {
	f := e.WrenchFacts
	if f == nil || !f.Listed || f.ToNm == 0 || st.TorqueNm == 0 || f.FromNm <= st.TorqueNm && st.TorqueNm <= f.ToNm {
		return nil
	}
	return refused(OutOfRange, finding.Values{
		"wrench": e.Wrench, "torque": unit.Torque(st.TorqueNm), "least": unit.Torque(f.FromNm), "most": unit.Torque(f.ToNm),
	})
}

// recalibrated is after how many months a wrench is out of date, where it was
// used less than 5,000 times (ISO 6789:2003, section 6.3; value from memory).
const recalibrated = 12

// flags lists what was recorded but has to be looked at: a start before its turn in
// the job, readings outside the tolerance (10), wrenches that the list does not know or
// that are out of date, condemned fasteners that stay in, repaired holes, what was left
// out, what nobody recorded (8), corrections.
func (s *State) flags() []Flag {
	var all []Flag
	if early := s.work.Early; early != nil {
		all = append(all, Flag{Finding: finding.Warned(StartedEarly, finding.Values{"before": early.Before, "reason": early.Reason}), Mark: Mark{At: early.At}})
	}
	for _, e := range s.readings {
		if found, ok := s.readingFound(e); ok {
			all = append(all, Flag{found, e.mark(), e.Step})
		}
	}
	all = append(all, s.outsideFlags(true, lastMoment)...)
	for _, part := range []func() []Flag{s.wrenchFlags, s.keptFlags, s.openJobFlags, s.repairFlags, s.leftFlags, s.gasketFlags, s.toolFlags, s.correctedFlags} {
		all = append(all, part()...)
	}
	if first := s.firstDone(); first != nil && s.work.Job == "" {
		if unmet := s.unmet(); len(unmet) > 0 {
			all = append(all, Flag{finding.Warned(ReadinessOpen, finding.Values{"needs": named(unmet)}), first.mark(), first.Step})
		}
	}
	return all
}

// keptFlags names the fasteners that were condemned while tightening and settled
// without being replaced: what was done to the old one still counts (7).
func (s *State) keptFlags() []Flag {
	var all []Flag
	for _, p := range s.problems {
		fastener := p.entry.Trouble.Condemns() && p.entry.Trouble != HoleThread
		if !fastener || p.settled == nil || p.replaced != nil || s.work.Direction == Loosen {
			continue
		}
		found := finding.Warned(CondemnedKept, finding.Values{"id": p.name(), "trouble": p.entry.Trouble.Term()})
		all = append(all, Flag{found, p.settled.mark(), p.number()})
	}
	return all
}

// wrenchFlags names each wrench once, by the first entry that used it.
func (s *State) wrenchFlags() []Flag {
	type found struct {
		code   finding.Code
		wrench string
	}
	first := map[found]Flag{}
	for _, e := range s.wrenchEntries() {
		if f, ok := e.wrenchFound(); ok {
			key, flag := found{f.Code, e.Wrench}, Flag{f, e.mark(), e.Step}
			if before, there := first[key]; !there || flag.compare(before.Mark) < 0 {
				first[key] = flag
			}
		}
	}
	return slices.Collect(maps.Values(first))
}

// wrenchEntries are the entries that name a wrench and count.
func (s *State) wrenchEntries() []*Entry {
	var all []*Entry
	for _, st := range s.steps {
		if st.done != nil && st.done.Wrench != "" {
			all = append(all, st.done)
		}
	}
	for _, e := range s.readings {
		if e.Wrench != "" && e.Act == Measure {
			all = append(all, e)
		}
	}
	if s.sealed != nil && s.sealed.Wrench != "" {
		all = append(all, s.sealed)
	}
	return all
}

func (e *Entry) wrenchFound() (finding.Finding, bool) {
	if e.WrenchFacts == nil || !e.WrenchFacts.Listed {
		return finding.Warned(WrenchUnknown, finding.Values{"wrench": e.Wrench}), true
	}
	calibrated, err := time.Parse(time.DateOnly, e.WrenchFacts.Calibrated)
	if err != nil || e.Time.Before(calibrated.AddDate(0, recalibrated, 1)) {
		return finding.Finding{}, false
	}
	return finding.Warned(WrenchOutOfDate, finding.Values{"wrench": e.Wrench, "calibrated": e.WrenchFacts.Calibrated}).From("ISO 6789"), true
}

// readingFound flags a torque that was read outside the wrench's tolerance, above
// or below (10).
func (s *State) readingFound(e *Entry) (finding.Finding, bool) {
	st := s.numbered[e.Step]
	if st == nil || st.TorqueNm == 0 {
		return finding.Finding{}, false
	}
	written := strings.TrimSpace(string(e.Value) + " " + e.Unit)
	if e.Unit == "" {
		written += " N·m"
	}
	read, err := unit.ParseTorque(written)
	if err != nil {
		return finding.Warned(ReadingUnread, finding.Values{"reading": written}), true
	}
	share := s.work.Tolerance
	if e.WrenchFacts != nil && e.WrenchFacts.Tolerance > 0 {
		share = e.WrenchFacts.Tolerance
	}
	if off := math.Abs(float64(read.Nm()) - st.TorqueNm); off <= share*st.TorqueNm*(1+rounding) {
		return finding.Finding{}, false
	}
	return finding.Warned(ReadingOutside, finding.Values{"reading": read, "torque": unit.Torque(st.TorqueNm), "tolerance": share}), true
}

// result holds what was read against the value of the file; it is empty where the
// file has none of that name.
func (s *State) result(e *Entry) (measure.Result, error) {
	if e.Measure == "" {
		return measure.Result{}, nil
	}
	written := e.Written()
	if st := s.numbered[e.Step]; e.Place == nil && st != nil && len(st.IDs) == 1 {
		written.At.Fastener = st.IDs[0]
	}
	r, _, err := measure.Take(s.work.Measures, written)
	return r, err
}

// rounding is binary dust of a figure at the limit.
const rounding = 1e-9

// leftFlags names the waits that were left out and, while tightening, the fasteners
// of which steps were.
func (s *State) leftFlags() []Flag {
	var all []Flag
	for _, st := range s.steps {
		switch {
		case st.left == nil || st.Old:
		case st.Do == plan.Wait:
			found := finding.Warned(WaitLeftOut, finding.Values{"step": st.Number, "wait": unit.Duration(st.WaitMin)})
			all = append(all, Flag{found, st.left.mark(), st.Number})
		case s.work.Direction == Tighten:
			all = countLeft(all, st)
		}
	}
	return all
}

// countLeft counts a step that was left out to those of its fastener.
func countLeft(all []Flag, st *step) []Flag {
	i := slices.IndexFunc(all, func(f Flag) bool {
		ids, ofFastener := f.Finding.Values["ids"].([]string)
		return ofFastener && slices.Equal(ids, st.IDs)
	})
	if i < 0 {
		return append(all, Flag{finding.Warned(StepsLeftOut, finding.Values{"ids": st.IDs, "steps": 1}), st.left.mark(), st.Number})
	}
	n := all[i].Finding.Values["steps"].(int)
	all[i].Finding.Values["steps"] = n + 1
	return all
}

// gasketFlags says where nobody reported a new gasket before tightening began.
func (s *State) gasketFlags() []Flag {
	first := s.firstDone()
	if s.work.Gasket == "" || first == nil {
		return nil
	}
	before, pieces, last := 0, 0, first
	for _, e := range s.readyEntries() {
		if e.Kind != GasketKind && (e.Kind != "" || e.Place != nil) {
			continue
		}
		pieces += e.pieces(1)
		if e.Time.Before(first.Time) {
			before += e.pieces(1)
		}
		if last == first || last.earlier(e) {
			last = e
		}
	}
	code := GasketLate
	switch {
	case before > 0:
		return nil
	case pieces == 0 && last == first:
		code = GasketNotSaid
	case pieces == 0:
		code = GasketMissing
	}
	return []Flag{{finding.Warned(code, finding.Values{"gasket": finding.Term(s.work.Gasket)}), last.mark(), 0}}
}

// toolFlags counts, once tightening is sealed, the torques and angles of which nobody
// says what they were done with.
func (s *State) toolFlags() []Flag {
	if s.work.Direction == Loosen || s.sealed == nil {
		return nil
	}
	var torques, angles []*step
	for _, st := range s.steps {
		switch {
		case st.done == nil || st.done.Act != Done || st.Old || st.done.Wrench != "":
		case st.TorqueNm > 0 && s.sealed.Wrench == "":
			torques = append(torques, st)
		case st.Do == plan.Advance:
			angles = append(angles, st)
		}
	}
	return slices.Concat(toolFlag(TorqueNoTool, torques), toolFlag(AngleNoTool, angles))
}

func toolFlag(code finding.Code, bare []*step) []Flag {
	if len(bare) == 0 {
		return nil
	}
	first, stages := bare[0], []int{}
	for _, st := range bare {
		if st.done.earlier(first.done) {
			first = st
		}
		stages = append(stages, st.Stage)
	}
	slices.Sort(stages)
	found := finding.Warned(code, finding.Values{"count": len(bare), "stages": slices.Compact(stages)})
	return []Flag{{found, first.done.mark(), first.Number}}
}

// correctedFlags names the corrections.
func (s *State) correctedFlags() []Flag {
	var all []Flag
	for _, e := range s.seen {
		if e.Act == Correct {
			all = append(all, Flag{finding.Warned(Corrected, finding.Values{"note": e.Note}), e.mark(), e.Step})
		}
	}
	return all
}
