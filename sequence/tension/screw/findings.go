package screw

import "drawdown/geometry/finding"

// Errors of a bolt, and assumptions where a file leaves something open.
const (
	NoThread           finding.Code = "bolt thread missing"        //
	ShankRange         finding.Code = "shank range"                // diameter, thread, least, most
	SeveralAims        finding.Code = "aim several"                //
	ProofShareRange    finding.Code = "aim proof share"            // share
	YieldShareRange    finding.Code = "aim yield share"            // share
	AimTooHigh         finding.Code = "aim too high"               // preload, thread, class, most, friction
	NoAim              finding.Code = "aim none"                   // preload
	NoTorque           finding.Code = "torque none"                // torque
	NoSuchEquation     finding.Code = "equation unknown"           // written, allowed
	FactorWithFriction finding.Code = "nut factor beside friction" // factor
	FactorRange        finding.Code = "nut factor range"           // factor, thread, least, most
	FactorUnreadable   finding.Code = "nut factor unreadable"      // written, most, usual
	ShareUnreadable    finding.Code = "share unreadable"           // written
	FrictionUnreadable finding.Code = "friction unreadable"        // written
	FrictionRange      finding.Code = "friction range"             // low, high, span: low to high; where, least, most
	FrictionFalls      finding.Code = "friction falls"             // low, nominal, high, where
	NoSuchLubricant    finding.Code = "lubricant unknown"          // written, allowed
	NoSuchMethod       finding.Code = "tightening unknown"         // written, allowed
	YieldShareAssumed  finding.Code = "assumed yield share"        // share
	FrictionAssumed    finding.Code = "assumed friction"           // low, high, lubricant, standard
	AnyFrictionAssumed finding.Code = "assumed any friction"       // low, high
	ExactFriction      finding.Code = "assumed exact friction"     //
	FrictionOfFactor   finding.Code = "assumed friction of factor" // friction, factor
)

// Where friction acts, as terms of the trade.
const (
	inThread  finding.Term = "thread"
	underHead finding.Term = "head"
)
