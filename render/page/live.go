package page

// known is what the script of a run knows of it.
type known struct {
	Run     string           `json:"run"`
	Version int              `json:"version"`
	Now     int64            `json:"now"` // ms since 1970, by the server's clock
	Open    bool             `json:"open"`
	Next    int              `json:"next"` // 0 for none
	Undo    string           `json:"undo"`
	Ahead   []int            `json:"ahead"` // steps that the page knows the panels of
	Steps   map[int]knownOne `json:"steps"` // of those, and the next
	Marks   []knownMark      `json:"marks"`
}

type knownOne struct {
	IDs   []string `json:"ids"`
	Name  string   `json:"name"` // to list a tap that is held
	Angle bool     `json:"angle"`
	Sets  bool     `json:"sets"`  // a torque, with a wrench
	Short string   `json:"short"` // its figure, beside the mark
}

type knownMark struct {
	ID    string     `json:"id"`
	State MarkState  `json:"state"`
	Word  string     `json:"word"`
	At    [2]float64 `json:"at"` // where the word stands
	Label string     `json:"label"`
	Said  string     `json:"said"`
	Name  string     `json:"name"`
	Step  int        `json:"step"`
	Angle bool       `json:"angle"` // its next step is one
	Sets  bool       `json:"sets"`  // it is a torque
	Stuck bool       `json:"stuck"` // it waits until its trouble is settled
}

// Known is the state for the script, as JSON.
func (v RunView) Known() known {
	k := known{
		Run: v.ID, Version: v.Run.Version, Now: v.Now.UnixMilli(), Open: v.IsOpen(), Undo: v.Undo(),
		Ahead: []int{}, Steps: map[int]knownOne{}, Marks: []knownMark{},
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
		k.Marks = append(k.Marks, knownMark{
			m.ID, m.State, m.Says, [2]float64{m.Word.X, m.Word.Y}, m.Label, m.Said, v.fastener([]string{m.ID}), m.Step,
			s != nil && s.AngleDeg > 0, s != nil && s.TorqueNm > 0, stuck,
		})
	}
	return k
}

func (v RunView) knownStep(number int) knownOne {
	s := v.step(number)
	return knownOne{s.IDs, v.fastener(s.IDs) + ": " + v.shortFigure(*s), s.AngleDeg > 0, s.TorqueNm > 0, v.shortFigure(*s)}
}
