package page

import (
	"fmt"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// shownTrouble is a trouble that can be reported, with what to do.
type shownTrouble struct {
	Kind   run.Trouble
	Name   string
	ToDo   []string
	Stub   []string // what common practice does about a stub
	Blocks string
}

// Kinds lists the troubles in the order in which a person is asked.
func (v RunView) Kinds() []shownTrouble {
	t := v.Text().Trouble
	var all []shownTrouble
	for _, kind := range run.Troubles {
		one := shownTrouble{Kind: kind, Name: t.Names[string(kind)], ToDo: v.toDo(kind), Blocks: t.Blocks[string(v.blocks(kind))]}
		if kind == run.Broken {
			one.Stub = t.Stub
		}
		all = append(all, one)
	}
	return all
}

func (v RunView) toDo(kind run.Trouble) []string {
	t := v.Text().Trouble
	switch {
	case kind == "":
		return t.Unsure
	case v.Loosening():
		return t.Loosening[string(kind)]
	}
	return t.Tightening[string(kind)]
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
	Replace                   bool // a new fastener may go in
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
			By: words.Row(fmt.Sprintf(t.Run.StateBy, seen.By, v.when(seen.At)), seen.Note), ToDo: v.toDo(seen.Trouble),
			Blocks: t.Trouble.Blocks[string(seen.Blocks)], Replace: !v.Loosening(),
		}
		if len(seen.IDs) > 0 {
			one.ID = seen.IDs[0]
		}
		if seen.Trouble == run.Broken {
			one.Stub = t.Trouble.Stub
		}
		all = append(all, one)
	}
	return all
}

// Open lists the troubles that are not settled.
func (v RunView) Open() []openTrouble { return v.openTroubles() }
