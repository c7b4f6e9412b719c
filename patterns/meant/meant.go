// Package meant reads which warnings a file acknowledges as intended, each with
// its reason. It knows the names of the warnings, but not how they are found.
// It may import form and nodes.
package meant

import (
	"drawdown/patterns/form"
	"drawdown/patterns/problem"
)

// Name is the name in the file of a warning that may be acknowledged.
type Name string

// Warnings that may be acknowledged.
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

// OfPattern lists the names for a pattern file in the order of the constants.
var OfPattern = []Name{
	OffItsPlace, FarOff, OffThePart, EveryKind, Kind, MissingID, CastNumbers, Order, SmallFirst, NotTightened, Stages, CheckPass, UsedOnce, Hole, Stud,
	Lubricants, Clusters, Labels, Bores, Dowels, Stations, View, PartThickness, Texts, Measures,
}

// OfMachine lists the names for a machine file.
var OfMachine = []Name{Measures, Steps, Gaskets, Locks, Banks, Machine}

// Key is the key of the file with the acknowledged warnings.
const Key = "meant"

// Entry is one warning that the file acknowledges.
type Entry struct {
	Name   Name
	Reason string
	At     problem.Problem // its place; the caller sets Severity and What
	Own    bool            // in the file itself, and not in one that it extends
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
