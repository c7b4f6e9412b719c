package page

import (
	"fmt"
	"io"
	"slices"
	"strings"

	"drawdown/render/words"
	"drawdown/sequence/run"
)

// known is the state of a run for the script.
type known struct {
	Run     string           `json:"run"`
	Version int              `json:"version"`
	Now     int64            `json:"now"` // ms since 1970, by the server's clock
	Open    bool             `json:"open"`
	Next    int              `json:"next"` // 0: none
	Undo    string           `json:"undo"`
	UndoBy  string           `json:"undo_by"` // whose tap it takes back
	Back    string           `json:"back"`    // what that tap recorded
	UndoOf  string           `json:"undo_of"` // the same in short form
	Ahead   []int            `json:"ahead"`   // steps whose panels the page has in advance
	Bare    bool             `json:"bare"`    // a torque has no wrench number
	Steps   map[int]knownOne `json:"steps"`   // those and the next
	Marks   []knownMark      `json:"marks"`
}

type knownOne struct {
	IDs   []string `json:"ids"`
	Name  string   `json:"name"` // to list a tap that is not sent yet
	Does  string   `json:"does"` // what it records
	Angle bool     `json:"angle"`
	Sets  bool     `json:"sets"`  // a torque with a wrench
	Short string   `json:"short"` // short figure, beside the mark
}

type knownMark struct {
	ID    string     `json:"id"`
	State MarkState  `json:"state"`
	Word  string     `json:"word"`
	At    [2]float64 `json:"at"` // position of the word
	Label string     `json:"label"`
	Said  string     `json:"said"`
	Name  string     `json:"name"`
	Step  int        `json:"step"`
	Angle bool       `json:"angle"` // its next step is one
	Sets  bool       `json:"sets"`  // it is a torque
	Stuck bool       `json:"stuck"` // it waits until the trouble is settled
	Does  string     `json:"does"`  // what its next step records
	Early string     `json:"early"` // the earlier stage that is not complete
}

// Known is the state for the script.
func (v RunView) Known() known {
	k := known{
		Run: v.ID, Version: v.Run.Version, Now: v.Now.UnixMilli(), Open: v.IsOpen(), Undo: v.Undo(),
		Bare: slices.ContainsFunc(v.Run.Steps, v.lacksWrench), Ahead: []int{}, Steps: map[int]knownOne{}, Marks: []knownMark{},
	}
	if e := v.undoable(); e != nil {
		k.UndoBy, k.Back, k.UndoOf = e.Who, fmt.Sprintf(v.Text().Run.TakeBack, v.entryName(*e), e.Who), v.UndoOf()
	}
	if next := v.next(); next != nil {
		k.Next = next.Number
		k.Steps[k.Next] = v.knownStep(k.Next)
	}
	for _, p := range v.Ahead() {
		k.Ahead = append(k.Ahead, p.Step)
		k.Steps[p.Step] = v.knownStep(p.Step)
	}
	for _, m := range v.Part().Marks {
		_, stuck := v.openTrouble(m.ID)
		s := v.step(m.Step)
		one := knownMark{
			ID: m.ID, State: m.State, Word: m.Says, At: [2]float64{m.Word.X, m.Word.Y}, Label: m.Label, Said: m.Said,
			Name: v.fastener([]string{m.ID}), Step: m.Step, Stuck: stuck,
		}
		if s != nil {
			one.Angle, one.Sets, one.Does, one.Early = s.AngleDeg > 0, s.TorqueNm > 0, v.does(*s), v.early(*s)
		}
		k.Marks = append(k.Marks, one)
	}
	return k
}

func (v RunView) knownStep(number int) knownOne {
	s := v.step(number)
	return knownOne{s.IDs, v.stepName(*s), v.does(*s), s.AngleDeg > 0, s.TorqueNm > 0, v.shortFigure(*s)}
}

// stepName describes a step by its fastener and figure.
func (v RunView) stepName(s run.Step) string {
	name := v.fastener(s.IDs)
	if len(s.IDs) == 0 {
		name = v.Text().Run.Do[s.Name()]
	}
	if figure := v.shortFigure(s); figure != "" {
		name += ": " + figure
	}
	return name
}

// does says what a step records.
func (v RunView) does(s run.Step) string {
	return fmt.Sprintf(v.Text().Run.OutOfOrderDoes, v.stepName(s), s.Stage)
}

// early describes the first incomplete stage before that of a step, and its
// open steps; "" if there is none.
func (v RunView) early(s run.Step) string {
	stage, open := s.Stage, []string{}
	for _, other := range v.Run.Steps {
		if over(other) || other.Stage > stage || other.Stage == s.Stage {
			continue
		}
		if other.Stage < stage {
			stage, open = other.Stage, nil
		}
		open = append(open, v.stepName(other))
	}
	if len(open) == 0 {
		return ""
	}
	return fmt.Sprintf(v.Text().Run.StageOpen, stage, strings.Join(open, ", "))
}

// onPaper is a step that can be entered from paper.
type onPaper struct {
	Number int
	Name   string
	Sets   bool // a torque, with a wrench
}

// OnPaper are the steps that are still to do, in the order of the work, up to the end
// of a stage that repeats: somebody has to say that it is finished. A trouble is settled
// first.
func (v RunView) OnPaper() []onPaper {
	var all []onPaper
	if v.next() == nil {
		return nil // something is to be decided first
	}
	repeats := 0 // the stage
	for _, s := range v.Run.Steps {
		blocked := v.troubled(s)
		if repeats > 0 && s.Stage > repeats || blocked && !v.Loosening() {
			break
		}
		if blocked {
			continue // the work goes on elsewhere
		}
		if !over(s) {
			if s.Until != "" {
				repeats = s.Stage
			}
			all = append(all, onPaper{s.Number, words.Row(fmt.Sprintf(v.Text().Run.Stage, s.Stage, len(v.Joint.Stages)), v.stepName(s)), s.TorqueNm > 0})
		}
	}
	return all
}

// troubled reports whether a fastener of a step has an open trouble.
func (v RunView) troubled(s run.Step) bool {
	return slices.ContainsFunc(s.IDs, func(id string) bool {
		_, open := v.openTrouble(id)
		return open
	})
}

// RunPaper writes the list of the steps that can be entered from paper.
func RunPaper(w io.Writer, v RunView) error { return write(w, "paper", v) }
