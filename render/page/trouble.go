package page

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/run"
	"drawdown/sequence/run/remedy"
)

// shownTrouble is a trouble that can be reported, with what to do.
type shownTrouble struct {
	Kind   run.Trouble
	Name   string
	ToDo   []string
	Stub   []string // how the rest of a snapped bolt comes out
	Blocks string
}

// Kinds lists the troubles in the order in which a person is asked.
func (v RunView) Kinds() []shownTrouble {
	t := v.Text().Trouble
	var all []shownTrouble
	for _, kind := range run.Troubles {
		one := shownTrouble{Kind: kind, Name: t.Names[string(kind)], Blocks: t.Blocks[string(v.blocks(kind))]}
		one.ToDo, one.Stub = v.toDo(kind)
		all = append(all, one)
	}
	return all
}

// toDo says what to do about a trouble, or about an angle that was interrupted,
// and about the stub of a snapped bolt.
func (v RunView) toDo(kind run.Trouble) (steps, stub []string) {
	advice := remedy.ForUnsure()
	if kind != "" {
		advice = remedy.For(kind, v.Run.Direction)
	}
	return append(v.said(advice.Steps), v.Words.SayAll(advice.Decides)...), v.said(advice.Stub)
}

// said words steps, each with what to mind.
func (v RunView) said(steps []remedy.Step) []string {
	var all []string
	for _, s := range steps {
		all = append(all, strings.Join(append([]string{v.Words.Say(s.Do)}, v.Words.SayAll(s.Mind)...), " "))
	}
	return all
}

// blocks says what a trouble will block.
func (v RunView) blocks(kind run.Trouble) run.Blocks {
	if !v.Loosening() && kind != run.Seized && kind != run.OtherTrouble {
		return run.BlocksStage
	}
	return run.BlocksFastener
}

// openTrouble is a trouble that is not settled, in words.
type openTrouble struct {
	Entry, Fastener, Name, By string
	ToDo, Stub                []string
	Blocks                    string
	Step                      int
	ID                        string
	Replace                   bool       // a new fastener may go in
	Decide                    bool       // it is the lead who says what is done
	Gone                      bool       // nothing more can be done with it: a new one goes in, or its steps are left out
	Left                      string     // steps of this fastener alone that are still to do, where it may be out: "7 12"
	Out                       bool       // it is out, as a rule
	Decisions                 []decision // of an angle that was interrupted
	Repairs                   []repair   // what may have been done to the hole
	Thread                    string     // of the fastener; empty where it is not known
}

// repair is one of what may have been done to a hole.
type repair struct {
	Repair run.Repair // empty: nothing
	Name   string
}

// repairs can follow a trouble with the bolt or its hole.
func (v RunView) repairs(t run.Trouble) []repair {
	if !slices.Contains([]run.Trouble{run.Broken, run.HoleThread, run.BoltThread, run.TurnsOn}, t) {
		return nil
	}
	names := v.Text().Run.Repairs
	all := []repair{{"", names["none"]}}
	for _, r := range run.Repairs {
		all = append(all, repair{r, strings.TrimSuffix(names[string(r)], ":")})
	}
	return all
}

// decision is one of what can become of an angle that was interrupted.
type decision struct {
	Decided run.Decision
	Name    string
}

func (v RunView) decisions(seen run.TroubleSeen) []decision {
	var all []decision
	for _, d := range run.Decisions {
		if seen.Trouble == "" && (d != run.NewFastener || !v.Loosening()) {
			all = append(all, decision{d, v.Text().Run.Decided[string(d)]})
		}
	}
	return all
}

// decided says what was decided of an angle that was interrupted; empty where the
// note alone says it.
func (v RunView) decided(seen run.TroubleSeen) string {
	switch seen.Decided {
	case "", run.OtherDecision:
		return ""
	case run.TurnOn:
		return fmt.Sprintf(v.Text().Run.TurnOn, v.turnOn(seen))
	}
	return v.Text().Run.Decided[string(seen.Decided)]
}

// turnOn is the angle that was decided in place of the one that was interrupted.
func (v RunView) turnOn(seen run.TroubleSeen) string {
	if seen.Decided != run.TurnOn {
		return ""
	}
	return v.Words.Figure(string(seen.TurnOn) + "°")
}

// decider is who did something; where another decided it, both.
func (v RunView) decider(m run.Mark) string {
	if m.DecidedBy == "" {
		return m.By
	}
	return fmt.Sprintf(v.Text().Run.DecidedBy, m.DecidedBy, m.By)
}

// settledBy says who settled a trouble and when, or who decided it.
func (v RunView) settledBy(m run.Mark) string {
	if m.DecidedBy == "" {
		return fmt.Sprintf(v.Text().Run.Settled, m.By, v.when(m.At))
	}
	return fmt.Sprintf(v.Text().Run.StateBy, v.decider(m), v.when(m.At))
}

func (v RunView) openTroubles() []openTrouble {
	t := v.Text()
	var all []openTrouble
	for _, seen := range v.Run.Troubles {
		if seen.Settled != nil {
			continue
		}
		one := openTrouble{
			Entry: seen.Entry, Fastener: v.fastener(seen.IDs), Name: t.Trouble.Names[troubleName(seen)], Step: seen.Step,
			By:     words.Row(fmt.Sprintf(t.Run.StateBy, seen.By, v.when(seen.At)), seen.Note),
			Blocks: v.blockWords(seen), Replace: !v.Loosening(), Decisions: v.decisions(seen),
		}
		if len(seen.IDs) > 0 {
			one.ID = seen.IDs[0]
		}
		one.ToDo, one.Stub = v.toDo(seen.Trouble)
		one.Repairs, one.Thread = v.repairs(seen.Trouble), v.Joint.threads[one.ID]
		one.Decide = seen.Blocks == run.BlocksStage
		one.Gone = seen.Trouble == run.Broken && !v.Loosening()
		one.Left, one.Out = v.leftOf(seen), seen.Trouble == run.Broken || seen.Trouble == run.Missing
		all = append(all, one)
	}
	return all
}

// blockWords say what an open trouble blocks.
func (v RunView) blockWords(seen run.TroubleSeen) string {
	if seen.Trouble == "" {
		return v.Text().Trouble.Blocks["unsure"]
	}
	return v.Text().Trouble.Blocks[string(seen.Blocks)]
}

// leftOf lists the steps that nobody has to do once the fastener is out: what was done
// before the trouble was seen is not left out. While
// tightening that is asked of a broken one alone.
func (v RunView) leftOf(seen run.TroubleSeen) string {
	var left []string
	for _, s := range v.Run.Steps {
		if (v.Loosening() || seen.Trouble == run.Broken) && !s.Old && !over(s) && s.At.IsZero() && slices.Equal(s.IDs, seen.IDs) {
			left = append(left, strconv.Itoa(s.Number))
		}
	}
	return strings.Join(left, " ")
}

// Open lists the troubles that are not settled.
func (v RunView) Open() []openTrouble { return v.openTroubles() }
