package meaning

import "drawdown/geometry/finding"

// Findings about the contents of a pattern.
const (
	ClusterTwice     finding.Code = "reader cluster twice"       // name, first
	TwiceInCluster   finding.Code = "reader twice in cluster"    // id
	InOtherCluster   finding.Code = "reader in other cluster"    // id, name
	InNoCluster      finding.Code = "reader in no cluster"       // ids, n: of them, count: in clusters
	ClustersCross    finding.Code = "reader clusters cross"      // name, other
	OrderNamesNone   finding.Code = "reader order names none"    // written, ids
	ClusterInGroups  finding.Code = "reader cluster in groups"   // kinds
	OnAnother        finding.Code = "reader on another"          // id, other, first, least
	Stray            finding.Code = "reader stray"               // id, gap, span
	OddPlace         finding.Code = "reader odd place"           // id, other: of which the mirror place is meant, off
	ClusterAlong     finding.Code = "reader cluster along"       // name, across: how many others lie so
	ClusterOdd       finding.Code = "reader cluster odd"         // name, n, usual
	NoBase           finding.Code = "reader no base"             // found
	BaseInCircle     finding.Code = "reader base in circle"      // file, builtin
	LongChain        finding.Code = "reader long chain"          // most
	BaseMissing      finding.Code = "reader base missing"        // name, meant, allowed
	IDTwice          finding.Code = "reader id twice"            // id, first
	TooManyFasteners finding.Code = "reader too many fasteners"  // most
	NoFastenerLeft   finding.Code = "reader no fastener left"    //
	NoSuchFastener   finding.Code = "reader no such fastener"    // name, meant, left
	LongOutline      finding.Code = "reader long outline"        // most
	ShortPath        finding.Code = "reader short path"          // example, found
	FrontTwice       finding.Code = "reader front twice"         // first
	NoFeature        finding.Code = "reader no feature"          //allowed
	StationTwice     finding.Code = "reader station twice"       // id, first
	PlaceTooFar      finding.Code = "reader place too far"       // number, count
	OmitUnknown      finding.Code = "reader omit unknown"        // found, what, from, to
	OmitTwice        finding.Code = "reader omit twice"          // id
	NotForEach       finding.Code = "reader not for each"        // key, count, of, what, found
	NoKinds          finding.Code = "reader no kinds"            // example, found
	TooManyKinds     finding.Code = "reader too many kinds"      // count, most
	KindMissing      finding.Code = "reader kind missing"        // what, allowed
	NoKindsHere      finding.Code = "reader no kinds here"       // found, example
	NoSuchKind       finding.Code = "reader no such kind"        // found, meant, allowed
	RemoveNo         finding.Code = "reader remove no"           // written, allowed
	NotTakenOut      finding.Code = "reader not taken out"       // example
	KindNotTakenOut  finding.Code = "reader kind not taken out"  // kind
	TwiceInOrder     finding.Code = "reader twice in order"      // name, first
	OtherKind        finding.Code = "reader other kind"          // id, kind, kinds
	IDsAndCasts      finding.Code = "reader ids and casts"       // id, cast
	OrderLeavesOut   finding.Code = "reader order leaves out"    // names
	NoOrder          finding.Code = "reader no order"            // example
	KindsLeftOut     finding.Code = "reader kinds left out"      // count, kinds
	KindInGroups     finding.Code = "reader kind in groups"      // kind, first
	NoKindInGroup    finding.Code = "reader no kind in group"    // allowed
	OrderAndWay      finding.Code = "reader order and way"       //
	NoGroupOrder     finding.Code = "reader no group order"      // found; way: where it is the name of one
	NoTurn           finding.Code = "reader no turn"             // found, allowed
	KeyNoEffect      finding.Code = "reader key without effect"  // key, why
	NoCast           finding.Code = "reader no cast"             // ids
	CastTwice        finding.Code = "reader cast twice"          // twice
	CastsIdle        finding.Code = "casts order nothing"        // count, all, ids
	CastGap          finding.Code = "casts gap"                  // count, beyond, missing
	CastOn           finding.Code = "casts on"                   // id, cast
	StarOffCircle    finding.Code = "reader star off circle"     //
	IntoDiffers      finding.Code = "reader into differs"        // kind, into, others
	KindsAlike       finding.Code = "reader kinds alike"         // kind, other
	OffGap           finding.Code = "reader off gap"             // ids, radius, circle
	MirrorTitle      finding.Code = "reader mirror title"        // title
	FirstBankTitle   finding.Code = "reader first bank title"    // title, file
	MirrorMachine    finding.Code = "reader mirror machine"      // machine, first, file
	IsMachine        finding.Code = "reader is machine"          //
	KindUnused       finding.Code = "reader kind unused"         // kind
	KindNotTightened finding.Code = "reader kind not tightened"  // kind
	SourceOpen       finding.Code = "reader source open"         // source
	NoFigures        finding.Code = "reader no figures"          //
	TooManyStages    finding.Code = "reader too many stages"     // count, most
	StageForAll      finding.Code = "reader stage for all"       // kinds
	NoKindInStage    finding.Code = "reader no kind in stage"    // allowed
	StageForNone     finding.Code = "reader stage for none"      // kinds
	KindTwiceInStage finding.Code = "reader kind twice in stage" // kind
	RepeatIsTorque   finding.Code = "reader repeat is torque"    //
	WaitIsForAll     finding.Code = "reader wait is for all"     //
	FrontStandsAlone finding.Code = "reader front stands alone"  //
	BorePlace        finding.Code = "reader bore place"          //
	DowelParts       finding.Code = "reader dowel parts"         //
	LabelParts       finding.Code = "reader label parts"         //
	WayNotNamed      finding.Code = "reader way not named"       //
	NumbersGiveOrder finding.Code = "reader numbers give order"  //
	ListGivesOrder   finding.Code = "reader list gives order"    //
	NoneUnloaded     finding.Code = "reader none unloaded"       // unloaded
	OutOnce          finding.Code = "reader out once"            //
	NoSuchCast       finding.Code = "reader no such cast"        // name, meant, left
	CastShared       finding.Code = "reader cast shared"         // first, second, cast
	EntryWith        finding.Code = "reader entry with"          // generator
	BaseUnreadable   finding.Code = "reader base unreadable"     // key, name, why
)

// Findings about the changes that a file makes to the one that it extends.
const (
	ExtendsOther      finding.Code = "extends other part"          // title, base: title of the other file
	NothingBelow      finding.Code = "changes nothing below"       // key
	NoChanges         finding.Code = "changes none"                // found, example
	OmittedAndChanged finding.Code = "changes omitted and changed" // id
	NotBelow          finding.Code = "changes not below"           // key, name, meant
	TheChange         finding.Code = "changes the change"          // id
	ListReplaced      finding.Code = "changes list replaced"       // key, file, lost, count
	StagesReplaced    finding.Code = "changes stages replaced"     // side, file, before, now, waits: lost
	AngleLost         finding.Code = "changes angle lost"          // file, kind: empty for all, angle, left
	UnitsChanged      finding.Code = "changes units"               // units, file, base
	MirrorLabels      finding.Code = "changes mirror labels"       // labels, example
)
