package sequence

import "drawdown/geometry/family"

// Group is one set of fastener kinds that is ordered together.
type Group struct {
	Kinds []string // empty: every kind
	Way   Way
	Turn  Turn
	// Family is what the layout is to be seen as; empty: as what it is.
	Family family.Family
	List   []string // the maker's own sequence of ids, for Way List
}
