package overhaul

import (
	"cmp"
	"slices"

	"drawdown/geometry/unit"
	"drawdown/sequence/plan"
)

// Wrench is what turns the fasteners of one kind in one joint.
type Wrench struct {
	plan.Turned
	Joint     Joint
	Kind      plan.Kind
	Low, High unit.GivenTorque
	Torque    bool // Low and High are set
	Angle     bool // an angle is turned
}

// Wrenches lists what each joint needs, in teardown order.
func (o Overhaul) Wrenches() []Wrench {
	var all []Wrench
	for _, j := range o.Joints() {
		for _, k := range j.Kinds {
			w := Wrench{Turned: k.Turned(), Joint: j, Kind: k}
			w.settleTorque()
			all = append(all, w)
		}
	}
	return all
}

func (w *Wrench) settleTorque() {
	for _, s := range w.Joint.Tighten.Stages {
		if !slices.Contains(s.Kinds, w.Kind.Name) {
			continue
		}
		w.Angle = w.Angle || s.Do == plan.Advance
		if s.Do != plan.Tighten {
			continue
		}
		if !w.Torque || s.Torque.Nm() < w.Low.Nm() {
			w.Low = s.Torque
		}
		if !w.Torque || s.Torque.Nm() > w.High.Nm() {
			w.High = s.Torque
		}
		w.Torque = true
	}
}

// Socket is a width across flats with the joints that need it.
type Socket struct {
	Wrench // the first that needs it
	In     []Joint
}

// Sockets lists the widths over all joints, the smallest first. Wrenches whose
// width is not known are left out.
func (o Overhaul) Sockets() []Socket {
	var all []Socket
	for _, w := range o.Wrenches() {
		if w.Across == 0 {
			continue
		}
		i := slices.IndexFunc(all, func(s Socket) bool { return s.Across == w.Across && s.Key == w.Key })
		if i < 0 {
			i, all = len(all), append(all, Socket{Wrench: w})
		}
		if n := len(all[i].In); n == 0 || all[i].In[n-1].Number != w.Joint.Number {
			all[i].In = append(all[i].In, w.Joint)
		}
	}
	slices.SortStableFunc(all, func(a, b Socket) int { return cmp.Compare(a.Across, b.Across) })
	return all
}
