package run

import (
	"time"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// Step is one action on one fastener, on several at once, or a wait. What the
// plan says of it comes first; the state of the work comes after it.
type Step struct {
	Number int         `json:"step"` // never changes, and is never given twice
	Stage  int         `json:"stage"`
	Round  int         `json:"round"` // from 1; more where a stage repeats
	ID     string      `json:"id,omitempty"`
	IDs    []string    `json:"ids"` // none for a wait
	Do     plan.Action `json:"do"`  // the words of order --json

	TorqueNm   float64 `json:"torque_Nm,omitempty"`
	AngleDeg   float64 `json:"angle_deg,omitempty"`
	StretchMm  float64 `json:"stretch_mm,omitempty"`
	WaitMin    float64 `json:"wait_min,omitempty"`
	Percent    float64 `json:"percent,omitempty"`
	Figure     string  `json:"figure,omitempty"` // as the source gives it
	WorkedOut  bool    `json:"worked_out,omitempty"`
	ByTurnsDeg float64 `json:"by_turns_deg,omitempty"` // reached by so much at a time over all caps
	ReleaseMm  float64 `json:"release_mm,omitempty"`
	Until      string  `json:"until,omitempty"`
	Note       string  `json:"note,omitempty"`

	Turn    Turn    `json:"turn,omitempty"`     // which way the fastener is turned
	FromDeg float64 `json:"from_deg,omitempty"` // starting mark, from the first of these angles
	ToDeg   float64 `json:"to_deg,omitempty"`   // finishing mark

	Recovery int  `json:"recovery,omitempty"` // the step that it repeats on a new fastener
	NewOne   int  `json:"new_one,omitempty"`  // which new fastener at its place that is, from 1
	Old      bool `json:"old,omitempty"`      // done on a fastener that was replaced: it no longer counts

	State    StepState `json:"state"`
	By       string    `json:"by,omitempty"`        // who did it, began it or left it out
	At       time.Time `json:"at,omitzero"`         // when
	Ends     time.Time `json:"ends,omitzero"`       // of a wait that was begun
	TotalDeg float64   `json:"total_deg,omitempty"` // turned so far on this fastener in these angles
	Tapped   time.Time `json:"tapped,omitzero"`     // by the clock of the device, where the entry came late
	Source   Source    `json:"source,omitempty"`    // of the entry
	Day      string    `json:"day,omitempty"`       // of the work, where it was ticked on paper; empty: not known
	Wrench   string    `json:"wrench,omitempty"`
	Reason   string    `json:"reason,omitempty"` // the note of who did, began or left it out

	OutOfOrder bool    `json:"out_of_order,omitempty"` // done before a step that comes before it; Reason says why
	Undone     *Undone `json:"undone,omitempty"`       // set by AsDone: what stands here was taken back

	Met   *TroubleSeen `json:"-"` // set by AsDone: a trouble that was met here, and no work
	Fresh *Replaced    `json:"-"` // the same: a new fastener that went in
}

// planned writes out the steps of a direction as they are when a run starts.
func planned(p plan.Plan, d Direction) []Step {
	side := p.Loosen
	if d == Tighten {
		side = p.Tighten
	}
	turned := map[string]float64{} // the angles of a fastener so far
	var steps []Step
	for i, s := range p.Steps(side) {
		step := stepOf(s.Stage)
		step.Number, step.Turn = i+1, turnOf(d, step.Do)
		if s.Fastener != nil {
			step.ID, step.IDs = s.Fastener.ID, []string{s.Fastener.ID}
			step.FromDeg, step.ToDeg = marks(turned, s.Fastener.ID, step)
		}
		steps = append(steps, step)
	}
	return steps
}

// stepOf returns what a stage says of each of its steps.
func stepOf(s *plan.Stage) Step {
	step := Step{
		Stage: s.Number, Round: 1, IDs: []string{}, Do: s.Do, Percent: s.Percent, WorkedOut: s.WorkedOut,
		ByTurnsDeg: float64(s.ByTurns), ReleaseMm: float64(s.Release), Until: s.Until, Note: s.Note, State: ToDo,
	}
	switch s.Do {
	case plan.Tighten:
		step.TorqueNm, step.Figure = float64(s.Torque.Nm()), s.Torque.String()
	case plan.Advance, plan.BackOff, plan.TurnBack:
		step.AngleDeg, step.Figure = float64(s.Angle), s.Angle.String()
	case plan.Lengthen:
		step.StretchMm, step.Figure = float64(s.Stretch), s.Stretch.String()
	case plan.Wait:
		step.WaitMin, step.Figure = float64(s.Wait), s.Wait.String()
	}
	return step
}

// marks returns the starting and the finishing mark of an angle, counted from
// the first of the angles that follow each other. A torque starts them anew.
func marks(turned map[string]float64, id string, s Step) (from, to float64) {
	if !s.turns() || s.Do == plan.BackOff {
		turned[id] = 0
	}
	if !s.turns() {
		return 0, 0
	}
	from = turned[id]
	to = from + s.AngleDeg
	turned[id] = to
	if s.Do == plan.BackOff {
		turned[id] = 0
	}
	return from, to
}

// turns reports whether the step is an angle.
func (s Step) turns() bool {
	return s.Do == plan.Advance || s.Do == plan.BackOff || s.Do == plan.TurnBack
}

func turnOf(d Direction, do plan.Action) Turn {
	switch {
	case do == plan.Wait:
		return ""
	case d == Tighten && do != plan.BackOff && do != plan.TurnBack && do != plan.Remove:
		return Clockwise
	}
	return Anticlockwise
}

// wait is how long the step waits.
func (s Step) wait() time.Duration {
	return time.Duration(float64(unit.Duration(s.WaitMin)) * float64(time.Minute))
}

// Seat is the name of a turn by which sprung caps come down while tightening.
const Seat = "seat"

// Name is the name of what is done, as the words of the pages have it.
func (s Step) Name() string {
	if s.Do == plan.TurnBack && s.Turn == Clockwise {
		return Seat
	}
	return string(s.Do)
}
