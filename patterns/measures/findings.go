package measures

import "drawdown/geometry/finding"

// Errors of the key measure.
const (
	TooMany          finding.Code = "measure too many"            // count, most
	OtherUnit        finding.Code = "measure other unit"          // key, written, unit
	LimitsReversed   finding.Code = "measure limits reversed"     // from, to
	PlaceUnknown     finding.Code = "measure place unknown"       // name, meant, allowed
	PlaceOfTwo       finding.Code = "measure place of two"        // name
	PlaceTwice       finding.Code = "measure place twice"         // what, place: "" for the whole part, first
	WantedOutside    finding.Code = "measure wanted outside"      // wanted, from, to
	WantedIdle       finding.Code = "measure wanted idle"         //
	ShimsUnwanted    finding.Code = "measure shims unwanted"      //
	ShimsNoLength    finding.Code = "measure shims no length"     // unit
	ShimsReversed    finding.Code = "measure shims reversed"      // from, to
	ShimsThin        finding.Code = "measure shims thin"          // from
	ShimsStep        finding.Code = "measure shims step"          // step, most
	ShimsTooMany     finding.Code = "measure shims too many"      // count, most
	ShimsUneven      finding.Code = "measure shims uneven"        // to, last
	ShimsCoarse      finding.Code = "measure shims coarse"        // step, range
	NoKinds          finding.Code = "measure no kinds"            //
	Unusual          finding.Code = "measure unusual"             // what, limit, least, most: of such values
	OtherSystem      finding.Code = "measure other system"        // what, unit, own: that of the file
	LengthTwice      finding.Code = "measure length twice"        // what, limit, kind, inspect
	PlaceLeftOut     finding.Code = "measure place left out"      // what, place
	PlaceOfOtherList finding.Code = "measure place of other list" // what, place
	PlaceUnlike      finding.Code = "measure place unlike"        // what, place, missing: the place called like the others
	PlacesOfOther    finding.Code = "measure places of other"     // what, places
	PlaceUneven      finding.Code = "measure place uneven"        // what, place, count: of places
	LimitsApart      finding.Code = "measure limits apart"        // what, from, to
	LengthOff        finding.Code = "measure length off"          // what, limit, kind, length
	ShimsWide        finding.Code = "measure shims wide"          // from, to
	NothingToJudge   finding.Code = "measure nothing to judge"    // what
	LimitOnWrongSide finding.Code = "measure limit on wrong side" // what, key, meant: the other key
	WidthsDiffer     finding.Code = "measure widths differ"       // what, from, to, otherFrom, otherTo
	BoreOff          finding.Code = "measure bore off"            // what, limit, label, diameter
	SizeOff          finding.Code = "measure size off"            // what, limit, thickness: of the part
)
