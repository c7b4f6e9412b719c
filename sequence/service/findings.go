package service

import "drawdown/geometry/finding"

// What is missing for a figure.
const (
	NoPreload   finding.Code = "service no preload"   // kind
	NoGrip      finding.Code = "service no grip"      // kind
	NoFace      finding.Code = "service no face"      //
	NoWindow    finding.Code = "service no window"    // gasket
	NoExpansion finding.Code = "service no expansion" // material
)

// What the figures rest on.
const (
	EqualShares    finding.Code = "service equal shares"  // bolts
	TightenedAlone finding.Code = "service alone"         //
	SealedInside   finding.Code = "service sealed inside" // sealed
	Introduced     finding.Code = "service introduced"    // n, assumed
	UsualWindow    finding.Code = "service usual window"  // gasket
	Creeps         finding.Code = "service creeps"        // gasket, low, high: shares kept
	Expansion      finding.Code = "service expansion"     // material, part, bolt: per million and kelvin
	FlangeAside    finding.Code = "service flange aside"  //
	TorsionStays   finding.Code = "service torsion stays" //
)

// What the joint does not hold.
const (
	Crushes     finding.Code = "gasket crushed"     // stage, low, stress, high, crush, area, assumed
	NotSeated   finding.Code = "gasket not seated"  // low, stress, high, seating, area, assumed
	BelowWork   finding.Code = "gasket below work"  // state, low, stress, high, work, assumed
	YieldsHot   finding.Code = "bolt yields hot"    // kind, cold, hot: shares of yield, nominal; high: hot, at the lowest friction; torque: that keeps below, if any does
	PartsOpen   finding.Code = "parts come apart"   // kind, low, clamp, load
	Fatigues    finding.Code = "bolt fatigues"      // kind, amplitude, limit
	LimitPassed finding.Code = "joint limit passed" // kind, hot, high, by, limit; torque: that keeps to it, if any does
	NothingFits finding.Code = "no torque does all" // kind, least, needed, most, by
)
