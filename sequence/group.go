package sequence

// Group is one set of fastener kinds that is ordered together.
type Group struct {
	Kinds []string // empty: every kind
	Way   Way
	Turn  Turn
	List  []string // the maker's own sequence of ids, for Way List
}
