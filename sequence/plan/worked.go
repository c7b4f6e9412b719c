package plan

import (
	"math"
	"slices"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
	"drawdown/sequence/tension/screw"
)

// workedOutSource is the source of a figure that drawdown calculated, as in the
// JSON output.
const workedOutSource finding.Term = "worked out from class, thread and friction"

// figure sets the figure of a stage and its source. A figure without a source
// counts as calculated, because no manual confirms it.
func (p *Plan) figure(in Input, stage *Stage) error {
	if stage.Do == Remove || stage.Do == TurnBack {
		stage.Source = ""
		return nil
	}
	if stage.Do != Percent {
		stage.WorkedOut = in.Source == ""
		return nil
	}
	kinds := make([]Kind, len(stage.Kinds))
	for n, name := range stage.Kinds {
		i := slices.IndexFunc(in.Kinds, func(k Kind) bool { return k.Name == name })
		if i < 0 {
			return finding.Failed(ShareOfUnknown, finding.Values{"kind": name})
		}
		kinds[n] = in.Kinds[i]
	}
	torque, err := TorqueShare(kinds, stage.Percent)
	if err != nil {
		return err
	}
	stage.Do, stage.Torque = Tighten, torque
	stage.WorkedOut, stage.Source = true, string(workedOutSource)
	return nil
}

// TorqueShare returns a share, in percent, of the calculated torque of kinds
// that are tightened in one stage. The stage has one printed figure, so the
// kinds must agree. The error says which kind's torque cannot be calculated and
// what is missing, or how the kinds differ.
func TorqueShare(kinds []Kind, percent float64) (unit.GivenTorque, error) {
	var shared unit.GivenTorque
	for n, k := range kinds {
		result, err := k.target()
		if err != nil {
			return unit.GivenTorque{}, err
		}
		torque := (result.Torque * unit.Torque(percent/100)).OnScale(unit.NewtonMetre)
		if n > 0 && torque != shared {
			return unit.GivenTorque{}, finding.Failed(SharesDiffer, finding.Values{
				"share": percent / 100, "kind": kinds[0].Name, "torque": shared, "other": k.Name, "theirs": torque,
			})
		}
		shared = torque
	}
	return shared, nil
}

func (k Kind) target() (screw.Result, error) {
	if k.Thread == nil {
		return screw.Result{}, finding.Failed(ShareNeedsThread, finding.Values{"kind": k.Name})
	}
	result, err := screw.Target(k.Bolt())
	if err != nil {
		return screw.Result{}, finding.Failed(ShareFails, finding.Values{"kind": k.Name, "why": err})
	}
	return result, nil
}

// Reasons why a share of a torque cannot be calculated, and its grounds.
const (
	ShareOfUnknown   finding.Code = "share kind unknown" // kind
	ShareNeedsThread finding.Code = "share no thread"    // kind
	ShareFails       finding.Code = "share fails"        // kind, why
	SharesDiffer     finding.Code = "shares differ"      // share, kind, torque, other, theirs
	ShareRests       finding.Code = "share rests"        // kind, torque of 100 %, least (in kN; 0 if equal to most), most: preload over the range of friction; taken
)

// assumptions lists the grounds of the calculated torques, kind by kind.
func assumptions(in Input) []finding.Finding {
	var list []finding.Finding
	for _, k := range in.Kinds {
		if !asksForShare(in, k.Name) {
			continue
		}
		r, err := k.target()
		if err != nil {
			continue // the stage has reported it
		}
		least, most := float64(r.High.Preload/1000), r.Low.Preload
		if math.Round(least*10) == math.Round(float64(most)/100) {
			least = 0 // both give one figure
		}
		list = append(list, finding.Noted(ShareRests, finding.Values{
			"kind": k.Name, "torque": r.Torque.OnScale(unit.NewtonMetre), "least": least, "most": most, "taken": r.Assumptions,
		}).About(finding.Place{Kind: k.Name}))
	}
	return list
}

func asksForShare(in Input, kind string) bool {
	return slices.ContainsFunc(in.Tighten, func(s StageInput) bool {
		return s.Do == Percent && (len(s.Of) == 0 || slices.Contains(s.Of, kind))
	})
}
