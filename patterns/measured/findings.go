package measured

import "drawdown/geometry/finding"

// Errors of a survey file.
const (
	TooManyReadings finding.Code = "reader too many readings"  // count, most
	NoReading       finding.Code = "reader no reading"         // found
	TwoReadings     finding.Code = "reader two readings"       // first, second
	NoDistance      finding.Code = "reader no distance"        //allowed
	ReadingToItself finding.Code = "reader reading to itself"  // id
	ReadingTwice    finding.Code = "reader reading twice"      // from, to, first
	DiameterMissing finding.Code = "reader diameter missing"   // how, id
	HolesOverlap    finding.Code = "reader holes overlap"      // first, second, centre, least
	NoHoles         finding.Code = "reader no holes"           // example, found
	TooFewHoles     finding.Code = "reader too few holes"      // count
	TooManyHoles    finding.Code = "reader too many holes"     // most
	HoleTwice       finding.Code = "reader hole twice"         // id
	NoHoleName      finding.Code = "reader no hole name"       // found
	NoSuchHole      finding.Code = "reader no such hole"       // name, meant, allowed
	NoLevel         finding.Code = "reader no level line"      // found
	LevelTwice      finding.Code = "reader level line twice"   // id
	LevelMissing    finding.Code = "reader level line missing" //
	UpMissing       finding.Code = "reader up missing"         // id
	OnLevelLine     finding.Code = "reader on level line"      // key, id
	TheDiameter     finding.Code = "reader the diameter"       // id
	Between         finding.Code = "reader between"            // from, to
)

// Notes in a pattern file about the survey that it came from.
const (
	Surveyed      finding.Code = "draft surveyed"       // readings, holes, agreement
	HoleMissing   finding.Code = "draft hole missing"   // id
	HoleElsewhere finding.Code = "draft hole elsewhere" // id
	HoleWeak      finding.Code = "draft hole weak"      // id, error
	MayBeMirrored finding.Code = "draft mirrored"       //
)
