package teardown

import (
	"slices"

	"drawdown/sequence/run"
)

// Condemned is a fastener, or a hole, that a run of the job condemned, with what became
// of it.
type Condemned struct {
	Joint string `json:"joint"`
	Run   string `json:"run"` // that condemned it
	run.Condemned
	Repaired  *run.Repaired `json:"repaired,omitempty"`  // of a hole
	Among     int           `json:"among,omitempty"`     // the new one is one of so many of its kind
	Ready     *run.Mark     `json:"ready,omitempty"`     // who said that the new one is there
	Tightened string        `json:"tightened,omitempty"` // the sealed run in which the joint was tightened with it
	Sealed    *run.Mark     `json:"sealed,omitempty"`    // the seal of that run
}

// Settled says whether a new one is in, or the hole was repaired.
func (c Condemned) Settled() bool {
	return c.Replaced != nil || c.Repaired != nil || c.Tightened != ""
}

// addCondemned notes what a run knows of condemned fasteners: what it condemned itself,
// and what became of those that others condemned.
func (v *View) addCondemned(id string, of run.View) {
	if of.Status == run.Voided {
		return
	}
	for _, c := range of.Condemned {
		i := slices.IndexFunc(v.Condemned, func(other Condemned) bool {
			return other.Joint == of.Of && other.Entry == c.Entry && other.ID == c.ID
		})
		if i < 0 {
			i, v.Condemned = len(v.Condemned), append(v.Condemned, Condemned{Joint: of.Of, Run: id, Condemned: c})
		}
		one := &v.Condemned[i]
		if one.Replaced == nil {
			one.Replaced = c.Replaced
		}
		one.follow(id, of)
	}
}

// follow notes what a run did about it: repaired the hole, or tightened the joint with
// a new one.
func (c *Condemned) follow(id string, of run.View) {
	for _, r := range of.Repaired {
		if c.Trouble == run.HoleThread && r.ID == c.ID && !r.At.Before(c.At) {
			c.Repaired = &r
		}
	}
	if of.Direction != run.Tighten || of.Signed == nil || c.Run == id || c.Trouble == run.HoleThread {
		return
	}
	for _, n := range of.Needs {
		if n.ID != c.ID || !n.Met() {
			continue
		}
		c.Tightened, c.Sealed = id, &of.Signed.Mark
		if n.Among {
			for _, kind := range of.Needs {
				if kind.ID == "" && kind.Kind == n.Kind {
					c.Among = kind.Count
				}
			}
		}
	}
}
