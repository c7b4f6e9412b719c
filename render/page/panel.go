package page

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"time"

	"drawdown/geometry/finding"
	"drawdown/render/words"
	"drawdown/sequence/plan"
	"drawdown/sequence/run"
)

// Long reports whether the figure needs smaller type on a telephone.
func (p Panel) Long() bool { return len([]rune(p.Figure+p.Unit)) > 7 }

// PanelKind is what the lower third asks for.
type PanelKind string

const (
	AskStep       PanelKind = "step"
	AskSettled    PanelKind = "settled" // a step of which somebody decided what is done
	AskWait       PanelKind = "wait"
	AskAccept     PanelKind = "accept"
	AskReady      PanelKind = "ready"
	AskRound      PanelKind = "round"
	AskNeighbours PanelKind = "neighbours"
	AskSettle     PanelKind = "settle" // a trouble blocks the work
	AskBehind     PanelKind = "behind" // a stage would begin with a fastener behind
	AskSeal       PanelKind = "seal"
	RunOver       PanelKind = "over"
)

// Panel is the one thing to do.
type Panel struct {
	Kind   PanelKind
	Step   int
	Title  string
	Lines  []string // in a list
	Says   string
	Large  string // what it comes to
	Number string
	Mark   *Mark  // its shape
	Name   string // of the fastener
	Doing  string
	Figure string
	Unit   string
	Notes  string
	Place  string // stage, round, step
	Angle  *Angle
	Of     string // the entry that it is about
	Ends   int64  // of a wait that runs, in ms since 1970
	Left   string // of it, counted down by the script
	Bar    Bar
}

// Bar is the bar across the bottom. It sends an act, or opens a dialog.
type Bar struct {
	Label string
	Act   run.Act
	Open  string // id of the dialog
	Later string // label once the wait is over
}

// Panel returns the one thing to do now.
func (v RunView) Panel() Panel {
	if v.Run.Status != run.Open {
		return v.overPanel()
	}
	if len(v.Run.ToAccept) > 0 {
		t := v.Text().Run
		return Panel{Kind: AskAccept, Title: t.Accept, Says: t.AcceptSays, Lines: v.Words.SayAll(v.Run.ToAccept), Bar: Bar{Label: t.AcceptBar, Act: run.Accept}}
	}
	switch next := v.next(); {
	case next == nil || v.asks(run.AskNeighbours): // asked while the lead stands by
		return v.askPanel()
	case v.Run.Job != "" && v.waits(): // a job does not begin without
		return v.readyPanel()
	}
	if seen, ask := v.toAskBehind(*v.next()); ask {
		return v.behindPanel(seen)
	}
	return v.stepPanel(*v.next())
}

func (v RunView) readyPanel() Panel {
	t := v.Text().Run
	var lines []string
	for _, n := range v.needs() {
		lines = append(lines, n.Name)
	}
	return Panel{Kind: AskReady, Title: t.Ready, Says: t.ReadySays, Lines: lines, Bar: Bar{Label: t.ReadyAsk, Open: "readiness"}}
}

func (v RunView) overPanel() Panel {
	t := v.Text().Run
	v.Dated = true
	p := Panel{Kind: RunOver}
	if m := v.Run.VoidedBy; m != nil {
		p.Title, p.Says = fmt.Sprintf(t.VoidBy, m.By, v.when(m.At)), m.Note
	}
	if s := v.Run.Signed; s != nil {
		p.Title, p.Says = fmt.Sprintf(t.SealedBy, s.By, v.when(s.At)), v.secondBy(*s)
	}
	return p
}

// stepPanel is the panel of a step.
func (v RunView) stepPanel(s run.Step) Panel {
	t := v.Text().Run
	p := Panel{
		Kind: AskStep, Step: s.Number, Doing: t.Do[s.Name()], Place: v.placeOf(s),
		Number: v.Joint.number(s.IDs), Angle: v.angle(s), Notes: v.notes(s),
	}
	if d := v.Run.DecidedAt(s.Number); d != nil {
		return v.settledPanel(p, s, *d)
	}
	p.Figure, p.Unit = v.figure(s)
	if s.Do == plan.Wait {
		return v.waitPanel(p, s)
	}
	if i := slices.IndexFunc(v.Joint.Marks, func(m Mark) bool { return len(s.IDs) > 0 && m.ID == s.IDs[0] }); i >= 0 {
		p.Mark = &v.Joint.Marks[i]
	}
	p.Name = words.Row(strings.Join(s.IDs, "+"), v.kindOf(s.IDs))
	p.Bar = Bar{Label: fmt.Sprintf(t.Done, p.Number), Act: run.Done}
	return p
}

// settledPanel asks for no angle: how far the fastener is turned the plan no longer
// knows, and what was decided counts.
func (v RunView) settledPanel(p Panel, s run.Step, d run.TroubleSeen) Panel {
	t := v.Text().Run
	return Panel{
		Kind: AskSettled, Step: s.Number, Place: p.Place, Title: p.Number + " · " + words.Row(strings.Join(s.IDs, "+"), v.kindOf(s.IDs)),
		Says: fmt.Sprintf(t.AsSettled, v.settledBy(*d.Settled)), Large: words.Row(v.decided(d), d.Settled.Note), Bar: Bar{Label: fmt.Sprintf(t.Done, p.Number), Act: run.Done},
	}
}

func (v RunView) waitPanel(p Panel, s run.Step) Panel {
	t := v.Text().Run
	p.Kind, p.Bar = AskWait, Bar{Label: t.Begin, Act: run.Begin}
	if s.State == run.Waiting {
		p.Ends, p.Left = s.Ends.UnixMilli(), countdown(s.Ends.Sub(v.Now))
		p.Bar = Bar{Label: t.WaitRuns, Later: t.WaitOver}
	}
	return p
}

// countdown writes what is left of a wait as its script does.
func countdown(left time.Duration) string {
	s := int(math.Ceil(max(left, 0).Seconds()))
	if s >= 3600 {
		return fmt.Sprintf("%d:%02d:%02d", s/3600, s/60%60, s%60)
	}
	return fmt.Sprintf("%02d:%02d", s/60, s%60)
}

func (v RunView) kindOf(ids []string) string {
	if len(ids) == 0 {
		return ""
	}
	return v.Joint.kinds[ids[0]]
}

// placeOf says where in the work a step is.
func (v RunView) placeOf(s run.Step) string {
	t := v.Text().Run
	round := ""
	if s.Round > 1 {
		round = fmt.Sprintf(t.Round, s.Round)
	}
	return words.Row(fmt.Sprintf(t.Stage, s.Stage, len(v.Joint.Stages)), round, v.stepOf(s))
}

// stepOf counts a step: among those of the work, or among those by which a new
// fastener catches up.
func (v RunView) stepOf(s run.Step) string {
	if nth, of := v.Run.CatchUp(s); of > 0 {
		return fmt.Sprintf(v.Text().Run.NewStep, nth, of)
	}
	at, all := 0, 0
	for _, other := range v.Run.Steps {
		if other.Recovery > 0 {
			continue
		}
		all++
		if other.Number == s.Number {
			at = all
		}
	}
	return fmt.Sprintf(v.Text().Run.Step, at, all)
}

// figure is the large figure of a step, and its unit where that is set small.
func (v RunView) figure(s run.Step) (figure, unit string) {
	approx := ""
	if s.WorkedOut {
		approx = "≈ "
	}
	switch s.Do {
	case plan.Tighten:
		value, unit, _ := strings.Cut(s.Figure, " ")
		return approx + v.Words.Figure(value), unit
	case plan.Remove:
		return v.Words.Card.Stage.Out, ""
	case plan.Wait:
		return v.Words.Figure(s.Figure), ""
	}
	sign := "+"
	if s.Turn == run.Anticlockwise {
		sign = "−"
	}
	return approx + sign + v.Words.Figure(s.Figure), ""
}

// shortFigure is the figure of a step on one line.
func (v RunView) shortFigure(s run.Step) string {
	if d := v.Run.DecidedAt(s.Number); d != nil {
		return v.turnOn(*d)
	}
	figure, unit := v.figure(s)
	return strings.TrimSpace(figure + " " + unit)
}

// notes is what else is to be known of a step.
func (v RunView) notes(s run.Step) string {
	t := v.Text().Run
	recovery, workedOut, behind := "", "", ""
	if seen, found := v.behind(s); found {
		behind = v.behindWords(seen)
	}
	if s.Recovery > 0 {
		recovery = t.Recovery
	}
	if nth, _ := v.Run.CatchUp(s); nth == 1 {
		recovery = t.FitNew
	}
	if s.WorkedOut {
		workedOut = t.WorkedOut
	}
	return words.Row(behind, recovery, v.Words.Until(s.Until), workedOut, s.Note)
}

// noteRow is about how many characters of a note a telephone shows in one row.
const noteRow = 44

// NoteRows is how many rows the longest note of the run takes on a telephone: its panel
// has room for them at every step, so that nothing moves.
func (v RunView) NoteRows() int {
	rows := 0
	for _, s := range v.Run.Steps {
		rows = max(rows, (len([]rune(v.notes(s)))+noteRow-1)/noteRow)
	}
	return min(rows, 5)
}

// askPanel is the panel where no step can be done before something is decided.
func (v RunView) askPanel() Panel {
	t := v.Text().Run
	for _, a := range v.Run.Asks {
		switch a.Kind {
		case run.AskRound:
			if !v.asks(run.AskNeighbours) {
				return v.roundPanel(a)
			}
		case run.AskNeighbours:
			return Panel{Kind: AskNeighbours, Of: a.Of, Title: fmt.Sprintf(t.Neighbours, v.fastener(a.IDs)), Says: t.NeighboursSays, Bar: Bar{Label: t.AnswerBar, Open: "answer"}}
		}
	}
	switch {
	case len(v.openTroubles()) > 0:
		p := Panel{Kind: AskSettle, Title: t.Blocked, Says: t.BlockedSays, Bar: Bar{Label: t.Settle, Open: "settle"}}
		for _, trouble := range v.openTroubles() {
			p.Lines = append(p.Lines, trouble.Fastener+": "+trouble.Name+". "+trouble.Blocks)
		}
		return p
	case v.Run.Now.Open.Steps > 0 && v.waits():
		return v.readyPanel()
	}
	return Panel{Kind: AskSeal, Title: t.AllDone, Says: t.SealSays, Bar: Bar{Label: t.Seal, Open: "seal"}}
}

// asks reports whether a question of a kind is open.
func (v RunView) asks(kind run.AskKind) bool {
	return slices.ContainsFunc(v.Run.Asks, func(a run.Ask) bool { return a.Kind == kind })
}

func (v RunView) roundPanel(a run.Ask) Panel {
	t := v.Text().Run
	p := Panel{Kind: AskRound, Title: t.AskSits, Bar: Bar{Label: t.AnotherRound, Act: run.AnotherRound}}
	if a.Round == 0 {
		p.Bar.Label = t.RoundFirst
	}
	for _, s := range v.Run.Steps {
		if s.Stage == a.Stage && s.ByTurnsDeg > 0 {
			p.Says = fmt.Sprintf(t.RoundSays, v.Words.Figure(plain(s.ByTurnsDeg)+"°"))
			break
		}
	}
	if a.Until != "" {
		p.Title = fmt.Sprintf(t.AskUntil, a.Until)
	}
	if a.Round > 0 {
		p.Place = fmt.Sprintf(t.Round, a.Round)
	}
	return p
}

// shownNeed is what must be ready and is not, in words.
type shownNeed struct {
	Name     string
	Kind     string // of several
	Fastener string // that it is for; then Kind is empty
	Missing  int
	Gasket   bool
	waits    bool // the work does
}

// needs lists what is not ready.
func (v RunView) needs() []shownNeed {
	var all []shownNeed
	for _, n := range v.Run.Needs {
		one := shownNeed{v.need(n), n.Kind, n.ID, n.Count - n.Ready, n.Gasket != "", n.Waits()}
		if n.ID != "" {
			one.Kind = ""
		}
		if !n.Met() && !n.Among { // it is one of those of its kind
			all = append(all, one)
		}
	}
	return all
}

// waits reports whether the work waits for something.
func (v RunView) waits() bool {
	return slices.ContainsFunc(v.needs(), func(n shownNeed) bool { return n.waits })
}

func (v RunView) need(n run.Need) string {
	t := v.Text()
	switch {
	case n.ID != "":
		return v.needFastener(v.fastener([]string{n.ID}), n.Trouble)
	case n.Gasket != "":
		return fmt.Sprintf(t.Run.NeedGasket, n.Count-n.Ready, v.Words.Term(finding.Term(n.Gasket)))
	}
	return fmt.Sprintf(t.Run.NeedKind, n.Count-n.Ready, n.Kind)
}

// Readiness lists what is not ready, also once the work has begun: what replaces a
// bolt that is condemned then is asked for too.
func (v RunView) Readiness() []shownNeed {
	if !v.IsOpen() {
		return nil
	}
	return v.needs()
}

// mostAhead is how many steps a page knows ahead, for when the network is gone.
const mostAhead = 16

// Ahead are the panels of the steps that follow the next one as plain steps. They
// end where something has to be decided.
func (v RunView) Ahead() []Panel {
	next := v.next()
	if kind := v.Panel().Kind; next == nil || kind != AskStep && kind != AskSettled {
		return nil
	}
	i := slices.IndexFunc(v.Run.Steps, func(s run.Step) bool { return s.Number == next.Number })
	var all []Panel
	for _, s := range v.Run.Steps[i+1:] {
		if s.Old || over(s) {
			continue
		}
		if s.State != run.ToDo || s.Do == plan.Wait || s.Stage != next.Stage && v.repeats(next.Stage, s.Stage) || len(all) == mostAhead {
			break
		}
		if _, ask := v.toAskBehind(s); ask {
			break
		}
		if len(s.IDs) > 0 {
			if _, troubled := v.openTrouble(s.IDs[0]); troubled {
				break
			}
		}
		all = append(all, v.stepPanel(s))
	}
	return all
}

// repeats reports whether one of two stages goes in rounds.
func (v RunView) repeats(stages ...int) bool {
	return slices.ContainsFunc(v.Run.Steps, func(s run.Step) bool {
		return slices.Contains(stages, s.Stage) && (s.Until != "" || s.ByTurnsDeg > 0)
	})
}
