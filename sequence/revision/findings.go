package revision

import "drawdown/geometry/finding"

// Differences between two revisions of a joint.
const (
	Moved        finding.Code = "revision moved"         // id, by, x, y: the new place
	Added        finding.Code = "revision added"         // ids, kind
	Removed      finding.Code = "revision removed"       // ids
	OtherKind    finding.Code = "revision kind"          // id, before, after
	OtherCast    finding.Code = "revision cast"          // id, before, after: 0 for none
	NewKind      finding.Code = "revision new kind"      // kind
	KindGone     finding.Code = "revision kind gone"     // kind
	KindData     finding.Code = "revision kind data"     // kind, what: a key of the file, before, after; none: not stated
	OtherFigure  finding.Code = "revision figure"        // kind, stage, before, after: Figure
	OtherStages  finding.Code = "revision stages"        // kind, side: tighten or loosen, before, after: Figure
	OtherOrder   finding.Code = "revision order"         // side, before, after
	OtherHeading finding.Code = "revision heading"       // what: a key of the file, before, after
	OtherPart    finding.Code = "revision part"          // what: outline, bores, dowels, labels, stations, clusters
	Figure       finding.Code = "revision stage figure"  // do, torque, angle, wait, percent
	Nothing      finding.Code = "revision no difference" //
)
