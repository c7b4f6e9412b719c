package stiffness

import "drawdown/geometry/finding"

// Errors of a grip, and assumptions where a file leaves something open.
const (
	NoGrip             finding.Code = "grip missing"              //
	LayerRange         finding.Code = "grip layer"                // layer, thickness
	LayerUnreadable    finding.Code = "grip layer unreadable"     // written
	LayerOfUnknown     finding.Code = "grip layer unknown"        // layer, why
	TappedOfUnknown    finding.Code = "grip tapped unknown"       // why
	TooManyLayers      finding.Code = "grip layers"               // layers, most
	GripTooLong        finding.Code = "grip too long"             // grip, thread, most
	EngagementAlone    finding.Code = "grip engagement alone"     // engagement
	EngagementNegative finding.Code = "grip engagement"           // engagement
	PartsTooNarrow     finding.Code = "grip too narrow"           // reach, hole
	ThreadFromTooFar   finding.Code = "grip bolt not threaded"    // length, from, grip
	BoltTooShort       finding.Code = "grip bolt too short"       // length, grip
	ShankDiameter      finding.Code = "grip shank diameter"       // section, diameter, thread, least, most
	ShankLength        finding.Code = "grip shank length"         // section, length
	ShankOnFullThread  finding.Code = "grip shank on full thread" // shank
	ShankTooLong       finding.Code = "grip shank too long"       // shank, grip
	SnugRange          finding.Code = "turn snug torque"          // snug
	StretchRange       finding.Code = "stretch range"             // stretch, most
	AngleRange         finding.Code = "turn angle"                // angle, most
	NoPreload          finding.Code = "settlement preload none"   // preload
	WasherOnGrip       finding.Code = "assumed washer on grip"    // thickness
	LayerOfSteel       finding.Code = "assumed layer of steel"    // layer
	ModulusAssumed     finding.Code = "assumed bolt modulus"      // modulus
	WideAssumed        finding.Code = "assumed parts wide"        //
	BoltAssumed        finding.Code = "assumed bolt length"       // length, threaded, free, standard
	FullThreadAssumed  finding.Code = "assumed full thread"       // length, from
	EvenStretchAssumed finding.Code = "assumed even stretch"      // strain
	SurfacesAssumed    finding.Code = "assumed surfaces"          //
	LoadAlongAssumed   finding.Code = "assumed load along"        //
)
