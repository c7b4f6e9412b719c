package plan

import (
	"fmt"
	"slices"
	"strings"

	"drawdown/geometry/unit"
	"drawdown/sequence/tension"
	"drawdown/sequence/tension/screw"
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

func (k Kind) target() (screw.Result, error) {
	if k.Thread == nil {
		return screw.Result{}, fmt.Errorf("a percentage needs the thread of kind %s to work the torque out; add `thread`, such as M10", k.Name)
	}
	result, err := screw.Target(k.Bolt())
	if err != nil {
		return screw.Result{}, fmt.Errorf("the torque of kind %s cannot be worked out: %w", k.Name, err)
	}
	return result, nil
}

// Assumption is what the worked-out torque of a kind rests on.
type Assumption struct {
	Kind        string
	Torque      unit.GivenTorque // that 100 % stands for
	Least, Most unit.Force       // the preload that it gives, over the span of friction
	Taken       []tension.Assumption
}

// String tells the assumption in plain words.
func (a Assumption) String() string {
	line := fmt.Sprintf("%s: 100 %% is %s, which gives %.1f to %.1f kN", a.Kind, a.Torque, float64(a.Least)/1000, float64(a.Most)/1000)
	if len(a.Taken) == 0 {
		return line
	}
	var taken []string
	for _, t := range a.Taken {
		taken = append(taken, t.String())
	}
	return line + " (" + strings.Join(taken, "; ") + ")"
}

// assumptions lists what the worked-out torques rest on, kind by kind.
func assumptions(in Input) []Assumption {
	var list []Assumption
	for _, k := range in.Kinds {
		if !asksForShare(in, k.Name) {
			continue
		}
		result, err := k.target()
		if err != nil {
			continue // the stage has said it already
		}
		list = append(list, Assumption{
			Kind: k.Name, Torque: result.Torque.OnScale(unit.NewtonMetre),
			Least: result.High.Preload, Most: result.Low.Preload, Taken: result.Assumed,
		})
	}
	return list
}

func asksForShare(in Input, kind string) bool {
	return slices.ContainsFunc(in.Tighten, func(s StageInput) bool {
		return s.Do == Percent && (len(s.Of) == 0 || slices.Contains(s.Of, kind))
	})
}
