package plan

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
)

// workedOutSource is the source of a figure that drawdown worked out.
const workedOutSource = "worked out from class, thread and friction"

// figure settles the figure of a stage and where it comes from. A figure
// without a source counts as worked out: nobody vouches for it.
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
			return fmt.Errorf("kind %q is not known", name)
		}
		kinds[n] = in.Kinds[i]
	}
	torque, err := TorqueShare(kinds, stage.Percent)
	if err != nil {
		return err
	}
	stage.Do, stage.Torque = Tighten, torque
	stage.WorkedOut, stage.Source = true, workedOutSource
	return nil
}

// TorqueShare gives a share, in percent, of the worked-out torque of kinds that
// are worked in one stage. One figure is printed for the whole stage, so the
// kinds must agree. The error says which kind's torque cannot be worked out and
// what it lacks, or how the kinds differ.
func TorqueShare(kinds []Kind, percent float64) (unit.GivenTorque, error) {
	var shared unit.GivenTorque
	for n, k := range kinds {
		result, err := k.target()
		if err != nil {
			return unit.GivenTorque{}, err
		}
		torque := (result.Torque * unit.Torque(percent/100)).OnScale(unit.NewtonMetre)
		if n > 0 && torque != shared {
			return unit.GivenTorque{}, fmt.Errorf("%g %% of the worked-out torque is %s for kind %s and %s for kind %s; give each kind a stage of its own with `of`",
				percent, shared, kinds[0].Name, torque, k.Name)
		}
		shared = torque
	}
	return shared, nil
}

func (k Kind) target() (tension.Result, error) {
	if k.Thread == nil {
		return tension.Result{}, fmt.Errorf("a percentage needs the thread of kind %s to work the torque out; add `thread`, such as M10", k.Name)
	}
	result, err := tension.Target(k.Bolt())
	if err != nil {
		return tension.Result{}, fmt.Errorf("the torque of kind %s cannot be worked out: %w", k.Name, err)
	}
	return result, nil
}

// assumptions lists what the worked-out torques rest on, kind by kind.
func assumptions(in Input) []string {
	var lines []string
	for _, k := range in.Kinds {
		if !asksForShare(in, k.Name) {
			continue
		}
		result, err := k.target()
		if err != nil {
			continue // the stage has said it already
		}
		line := fmt.Sprintf("%s: 100 %% is %s, which gives %.1f to %.1f kN", k.Name,
			result.Torque.OnScale(unit.NewtonMetre), float64(result.High.Preload)/1000, float64(result.Low.Preload)/1000)
		if len(result.Assumptions) > 0 {
			line += " (" + strings.Join(result.Assumptions, "; ") + ")"
		}
		lines = append(lines, line)
	}
	return lines
}

func asksForShare(in Input, kind string) bool {
	return slices.ContainsFunc(in.Tighten, func(s StageInput) bool {
		return s.Do == Percent && (len(s.Of) == 0 || slices.Contains(s.Of, kind))
	})
}
