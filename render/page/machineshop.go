package page

import (
	"fmt"
	"slices"

	"drawdown/render/words"
	"drawdown/sequence/run/teardown"
)

// canGo is a part that can be sent to the machine shop, with the joint that holds it.
type canGo struct {
	Step        int
	Name, Joint string
}

// CanGo are the parts that can be sent: those that are off, not back on, and not
// replaced as a whole. Where the lists have no parts it is the joint.
func (v JobView) CanGo() []canGo {
	back := map[string]teardown.Progress{}
	for _, l := range v.Job.Rebuild {
		back[l.Part] = l.State
	}
	parts := slices.ContainsFunc(v.Job.Teardown, func(l teardown.LineNow) bool { return l.Part != "" })
	var all []canGo
	joint := ""
	for _, l := range v.Job.Teardown {
		if l.Joint != "" {
			joint = l.Joint
		}
		switch {
		case !parts && l.Joint != "" && v.Job.Rebuild[0].State == teardown.ToDo:
			all = append(all, canGo{l.Number, l.Title, l.Joint})
		case l.Part != "" && v.isScrap(l.Part):
		case l.Part != "" && l.State == teardown.IsDone && back[l.Part] == teardown.ToDo:
			all = append(all, canGo{l.Number, l.Part, joint})
		}
	}
	return all
}

// isScrap reports whether a new part takes the place of this one.
func (v JobView) isScrap(part string) bool {
	return slices.ContainsFunc(v.Job.Supplies, func(s teardown.Supply) bool {
		return s.Sort == teardown.NewPart && s.Part == part && s.What == part
	})
}

// sentPart is a part that went to the machine shop, in words.
type sentPart struct {
	Name, About, State string
	Out                string // the entry by which it is out; empty when it is back
	Values             []SeenAt
}

// SentOut are the parts that went to the machine shop.
func (v JobView) SentOut() []sentPart {
	t := v.Text().MachineShop
	var all []sentPart
	for _, s := range v.Job.SentOut {
		one := sentPart{Name: s.Part, About: words.Row(s.Note, s.Kept), State: fmt.Sprintf(t.IsOut, s.To, v.when(s.At), s.By), Out: s.Entry}
		if s.Back != nil {
			one.Out, one.State = "", fmt.Sprintf(t.WasBack, v.when(s.Back.At), s.Back.By)
			one.About = words.Row(one.About, s.To, s.Back.Note)
		}
		for _, j := range v.Job.Joints {
			if j.Of == s.Joint {
				one.Values = v.toMeasure(j.Of, "", j.Measures)
			}
		}
		all = append(all, one)
	}
	return all
}
