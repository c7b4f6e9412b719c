package report

import "drawdown/geometry/finding"

// Texts of the reports around the figures, one code per line.
const (
	OrderTighten  finding.Code = "report tighten"       // heading
	OrderLoosen   finding.Code = "report loosen"        // heading
	GroupMakers   finding.Code = "report maker's order" // kinds
	GroupCast     finding.Code = "report cast order"    // kinds
	GroupRow      finding.Code = "report row"           // kinds
	GroupBalanced finding.Code = "report balanced"      // kinds
	SeenAs        finding.Code = "report seen as"       // family; named, columns, rows, rings, edge, corners, inner, parts, missing, off
	GroupTurning  finding.Code = "report turning"       // kinds, way, turn
	StageLine     finding.Code = "report stage"         // n, does, kinds, ids, note
	StageTorque   finding.Code = "stage torque"         // torque, other, share, workedout, turns
	StageAngle    finding.Code = "stage angle"          // angle, workedout, turns
	StageStretch  finding.Code = "stage stretch"        // stretch, workedout
	StageBackOff  finding.Code = "stage back off"       // angle
	StageSlackens finding.Code = "stage slackens"       //
	StageTurnBack finding.Code = "stage turn back"      // angle, release, until
	StageWait     finding.Code = "stage wait"           // wait
	StageOut      finding.Code = "stage out"            //
	FiguresFrom   finding.Code = "report figures"       // source
	WorkedOut     finding.Code = "report worked out"    //
)

// Texts of a check.
const (
	CheckJudged    finding.Code = "check judged"       // what
	CheckNotJudged finding.Code = "check not judged"   // heading
	CheckNote      finding.Code = "check note"         // what
	CheckNoteAt    finding.Code = "check note at"      // file, line, what
	CheckSound     finding.Code = "check sound"        // file, warnings, open: not judged, fasteners, kinds, tighten, loosen
	CheckedFile    finding.Code = "checked file"       // file, kind, errors, warnings, error: why it cannot be read
	OrderIs        finding.Code = "order judged"       // side, verdict
	OrderSound     finding.Code = "order sound"        //
	OrderRemarks   finding.Code = "order remarks"      //
	OrderDeparts   finding.Code = "order departs"      //
	OrderNotWhole  finding.Code = "order not whole"    //
	OrderMakers    finding.Code = "order maker's own"  //
	Fault          finding.Code = "judged fault"       // before a finding
	Departs        finding.Code = "judged departs"     // before a finding
	Remark         finding.Code = "judged remark"      // before a finding
	Note           finding.Code = "judged note"        // before a finding
	ThisOrder      finding.Code = "judged this order"  // heading of a column
	OwnOrder       finding.Code = "judged own order"   // heading of a column
	GroupLies      finding.Code = "judged group"       // kinds, layout
	PullEarly      finding.Code = "judged pull early"  // of a row, as those that follow
	PullMost       finding.Code = "judged pull most"   //
	PullMostAt     finding.Code = "judged pull at"     // step
	LongestRun     finding.Code = "judged run"         //
	StepsInwards   finding.Code = "judged inwards"     //
	ToNeighbours   finding.Code = "judged neighbours"  //
	WrenchWay      finding.Code = "judged wrench way"  //
	HowToReadPull  finding.Code = "judged how to read" //
	ByPractice     finding.Code = "judged by practice" //
)

// Problem is one of a file: where it is, and what.
const Problem finding.Code = "report problem" // place, severity, what, allowed

// Warned precedes what a job could not do as requested.
const Warned finding.Code = "report warning" // what; file: of several

// Results of a survey or a scan.
const (
	Surveyed      finding.Code = "surveyed"           // title, holes, readings
	WrongReading  finding.Code = "surveyed wrong"     // found
	NotFixed      finding.Code = "surveyed not fixed" // found
	NotToldApart  finding.Code = "surveyed not told"  // found
	FurthestOut   finding.Code = "surveyed furthest"  // heading
	NoFileMade    finding.Code = "surveyed no file"   // holes
	HolesNear     finding.Code = "surveyed near"      // off, layout
	BoltHolesNear finding.Code = "traced near"        // off, layout
	TracedAt      finding.Code = "traced at"          // scale, pixel
	CorrectIn     finding.Code = "traced correct in"  // file, take and drop: lines of it
	SizeFound     finding.Code = "traced size"        // holes, diameter, role
	TakenFor      finding.Code = "traced taken"       // found
	InDoubt       finding.Code = "traced doubt"       // id, found
	SpecksLeftOut finding.Code = "traced specks"      // specks, from, to
	TurnedLevel   finding.Code = "traced turned"      // by
	NotTurned     finding.Code = "traced not turned"  //
	HoleColumn    finding.Code = "column hole"        // heading
	EdgeColumn    finding.Code = "column edge"        // heading
	LooseCell     finding.Code = "cell loose"         // in place of an error
	OpeningCell   finding.Code = "cell opening"       // in place of a diameter
)

// Texts about the figures of a bolt, and about a wrench.
const (
	TorqueSnug        finding.Code = "torque by angle"       // snug, angle: of none that is stated
	TorqueBoth        finding.Code = "torque in two units"   // torque
	TorqueAim         finding.Code = "torque aim"            // one of: torque, preload, proof, yield; single; or stretch, least (in kN), nominal, most: preload
	TorqueEquation    finding.Code = "torque equation"       // k, or equation
	TorqueArea        finding.Code = "torque stress area"    // area, major, pitch
	TorqueSection     finding.Code = "torque least section"  // area, diameter, shank: it is in the shank
	TorqueYieldStress finding.Code = "torque yield stress"   // yield, proof
	TorqueHead        finding.Code = "torque head"           // form, face: of a washer
	TorqueRing        finding.Code = "torque bearing ring"   // face, hole, effective
	TorqueWarning     finding.Code = "torque warning"        // where, thread, head, breaks, yield, break
	TorqueTable       finding.Code = "torque by friction"    // snug, angle; or torque, alone; single
	TorqueState       finding.Code = "torque state friction" // kind, low, high
	TorqueRange       finding.Code = "torque range"          // least, most
	TorqueStage       finding.Code = "torque after stage"    // figure, low and nominal (in kN), high: preload, 0 if unknown; used, stretch, margin, further, breaks
	TorqueStretch     finding.Code = "torque stretch"        // least, nominal, most, preload
	TorqueStages      finding.Code = "torque file's stages"  // stages
	TorqueSafe        finding.Code = "torque is safe"        // plain: if the bolt has no waist, as assumed
	TorqueLeast       finding.Code = "torque may leave"      // least, factor
	TorqueAngleAim    finding.Code = "torque angle aim"      // aim
	TorqueJoint       finding.Code = "torque joint"          // preload
	TorquePressure    finding.Code = "torque pressure"       // pressure, material, limit, used
	TorqueStiffness   finding.Code = "torque stiffness"      // bolt, members, share
	TorqueCones       finding.Code = "torque cones"          // angle, reach
	TorqueSettles     finding.Code = "torque settlement"     // flattens, loss, share; none where the bolt breaks
	TorqueThreads     finding.Code = "torque threads"        // first, margin, breaks, strips, part
	TorqueEngaged     finding.Code = "torque engagement"     // engaged, effective
	TorqueNeeds       finding.Code = "torque needs"          // preload, bolt
	TorqueFactors     finding.Code = "torque factors"        // c1, c2, c3, shear
	WorkGasket        finding.Code = "torque gasket"         // gasket, area, thickness
	WorkCompressed    finding.Code = "torque compressed"     // low, nominal, high
	WorkLeft          finding.Code = "torque left"           // kind
	WorkLimits        finding.Code = "torque limits"         // kind
	WrenchTaken       finding.Code = "wrench taken"          // name, number, calibrated
	WrenchGives       finding.Code = "wrench gives"          // given, low, high
	WrenchAdapter     finding.Code = "wrench with adapter"   // adapter, angle
	WrenchUsable      finding.Code = "wrench usable"         // wrench, least, most, unit
)
