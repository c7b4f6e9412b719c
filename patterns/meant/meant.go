// Package meant reads what a file says to be meant although it is unusual: the
// warnings that it acknowledges, each with its reason. It knows their names, not
// what they are found by. It may import form and nodes.
package meant

import (
	"drawdown/patterns/form"
	"drawdown/patterns/problem"
)

// Name is what a file calls a warning that may be meant.
type Name string

// What may be meant.
const (
	OffItsPlace   Name = "off its place"
	FarOff        Name = "far off"
	OffThePart    Name = "off the part"
	EveryKind     Name = "every kind"
	Kind          Name = "kind"
	MissingID     Name = "missing id"
	CastNumbers   Name = "cast numbers"
	Order         Name = "order"
	SmallFirst    Name = "small first"
	NotTightened  Name = "not tightened"
	Stages        Name = "stages"
	CheckPass     Name = "check pass"
	UsedOnce      Name = "used once"
	Hole          Name = "hole"
	Stud          Name = "stud"
	Lubricants    Name = "lubricants"
	Clusters      Name = "clusters"
	Labels        Name = "labels"
	Bores         Name = "bores"
	Dowels        Name = "dowels"
	Stations      Name = "stations"
	View          Name = "view"
	PartThickness Name = "part thickness"
	Texts         Name = "texts"
	Measures      Name = "measures"
	Steps         Name = "steps"
	Gaskets       Name = "gaskets"
	Locks         Name = "locks"
	Banks         Name = "banks"
	Machine       Name = "machine"
)

// OfPattern lists those of a pattern file in the order of the constants.
var OfPattern = []Name{
	OffItsPlace, FarOff, OffThePart, EveryKind, Kind, MissingID, CastNumbers, Order, SmallFirst, NotTightened, Stages, CheckPass, UsedOnce, Hole, Stud,
	Lubricants, Clusters, Labels, Bores, Dowels, Stations, View, PartThickness, Texts, Measures,
}

// OfMachine lists those of a machine file, likewise.
var OfMachine = []Name{Measures, Steps, Gaskets, Locks, Banks, Machine}

// Key is the key of the file under which they stand.
const Key = "meant"

// Entry is one warning that the file acknowledges.
type Entry struct {
	Name   Name
	Reason string
	At     problem.Problem // where it stands; severity and what is found are left to the caller
	Own    bool            // of the file itself, and not of one that it builds on
}

// Read reads the entries of a file that may have these names.
func Read(file form.Fields, names []Name) (all []Entry) {
	f, ok := file.Map(Key, Key, form.Words(names)...)
	if !ok {
		return nil
	}
	for _, name := range names {
		if reason := f.Text(string(name)); reason != "" {
			at := f.Node.KeyNode(string(name))
			all = append(all, Entry{name, reason, at.Place(), at.File.Level == 0})
		}
	}
	return all
}
