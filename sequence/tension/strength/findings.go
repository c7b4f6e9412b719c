package strength

import "drawdown/geometry/finding"

// Errors of a class, a material or an engagement, and assumptions about them.
const (
	NoClass            finding.Code = "class missing"            // thread, allowed
	NoSuchClass        finding.Code = "class unknown"            // written, thread, allowed
	ClassNotInSize     finding.Code = "class not in size"        // written, thread, standard, inch, smallest, largest, allowed
	NoBoltsProofStress finding.Code = "class proof stress"       // written, stress, least, most
	NoSuchMaterial     finding.Code = "material unknown"         // written, allowed
	NoPartsModulus     finding.Code = "material modulus"         // written, modulus, least, most
	ShearUnknown       finding.Code = "material shear unknown"   // material, allowed
	NoTappedPart       finding.Code = "stripping part missing"   // allowed
	EngagementRange    finding.Code = "stripping engagement"     // engagement, thread, most
	BossTooThin        finding.Code = "stripping boss too thin"  // boss, thread, least
	InsertRange        finding.Code = "stripping insert"         // insert, thread, least, most
	InsertPitchRange   finding.Code = "stripping insert pitch"   // pitch, insert, most
	NoPreload          finding.Code = "preload none"             // preload
	ClassNamed         finding.Code = "class named"              // name, sort: property, stated or empty
	TensileAssumed     finding.Code = "assumed tensile strength" // tensile, ratio to the yield stress
	ShearAssumed       finding.Code = "assumed shear strength"   // material, shear, source
	BossAssumed        finding.Code = "assumed boss wide"        //
	InsertPitchAssumed finding.Code = "assumed insert pitch"     // pitch
	IdleTurnsAssumed   finding.Code = "assumed idle turns"       // length, turns
	YieldAssumed       finding.Code = "assumed yield stress"     // yield
	ProofAssumed       finding.Code = "assumed proof load"       // standard, share
)
