package trace

import "drawdown/geometry/finding"

// Doubts about one shape.
const (
	Torn        finding.Code = "trace torn"            // round: share
	NotRound    finding.Code = "trace not round"       // shortest, longest
	Faint       finding.Code = "trace faint"           // contrast: share
	Coarse      finding.Code = "trace coarse"          // pixels
	Long        finding.Code = "trace long"            // width, length
	PerhapsPort finding.Code = "trace perhaps opening" //
	Dirt        finding.Code = "trace dirt"            //
	Open        finding.Code = "trace open"            // round: share
	Alone       finding.Code = "trace alone"           //
	SizeOpen    finding.Code = "trace size open"       // holes, diameter
)

// Doubts from the second route, which looks for edges alone.
const (
	OnlyEdge  finding.Code = "trace only edge"  // diameter, round: share, levels
	OneRoute  finding.Code = "trace one route"  //
	InnerEdge finding.Code = "trace inner edge" // inner, outer
	Filled    finding.Code = "trace filled"     // inner
	Gap       finding.Code = "trace gap"        // by: row, circle, mirror; diameter, seen: share of an edge
)

// Doubts about the picture as a whole.
const (
	SecondPart   finding.Code = "trace second part"    // size: share, x, y: pixels, part: its number, 0 for none
	CutOff       finding.Code = "trace cut off"        //
	FaintOutline finding.Code = "trace faint outline"  // length, x, y: pixels
	Lens         finding.Code = "trace lens"           // off
	SheetCrooked finding.Code = "trace sheet crooked"  // off
	OtherSheet   finding.Code = "trace other sheet"    // times
	KnownDiffer  finding.Code = "trace known differ"   // off
	OtherStated  finding.Code = "trace other stated"   // stated, named, times
	OtherKnown   finding.Code = "trace known unstated" // times, stated
)

// What a size of holes was taken for, where that may surprise.
const (
	TakenForBores finding.Code = "trace taken for bores"    // holes, diameter, bolts
	TakenForPorts finding.Code = "trace taken for openings" // holes, diameter, bolts
	NotNumbered   finding.Code = "trace not numbered"       // holes, diameter
)

// What a person corrects.
const (
	Fixed      finding.Code = "trace fixed"        // fixes
	NothingAt  finding.Code = "trace nothing at"   // x, y: pixels
	NoSuchPart finding.Code = "trace no such part" // part
)

// Where a pattern and its scale come from.
const (
	Origin           finding.Code = "trace origin"           // width, height, scale
	HoldProof        finding.Code = "trace hold proof"       //
	ScaleFromCorners finding.Code = "trace scale of corners" // width, height, distances
	ScaleFromSheet   finding.Code = "trace scale of sheet"   // width, height, distances, of: paper or target, barrel: share
	ScaleNamed       finding.Code = "trace scale named"      // resolution: by who asks
	ScaleFromFile    finding.Code = "trace scale of file"    // resolution
	ScaleFromKnown   finding.Code = "trace scale known"      // distances
	Resolution       finding.Code = "trace resolution"       // across, down: 0 where it is the same
)

// What keeps a scale from being found.
const (
	NoScale      finding.Code = "trace no scale"           // unbelieved
	NoRoughScale finding.Code = "trace no rough scale"     // unbelieved
	NoSheet      finding.Code = "trace no sheet"           // target
	NoHole       finding.Code = "trace no such hole"       // hole, allowed
	KnownShort   finding.Code = "trace known short"        // least: pixels
	NoRectangle  finding.Code = "trace no rectangle"       //
	CornersMixed finding.Code = "trace corners mixed"      //
	CornersFlat  finding.Code = "trace corners in line"    //
	HorizonSeen  finding.Code = "trace horizon in picture" //
	PixelSize    finding.Code = "trace pixel size"         // pixel, least, most
)

// What keeps a picture from being traced.
const (
	SmallPicture  finding.Code = "trace small picture"  // width, height, least
	NoContrast    finding.Code = "trace no contrast"    // contrast, least
	TooMuchGrain  finding.Code = "trace too much grain" //
	NoPart        finding.Code = "trace no part"        //
	TooManyShapes finding.Code = "trace many shapes"    // shapes, most
	RaggedEdge    finding.Code = "trace ragged edge"    //
	NoFastener    finding.Code = "trace no fastener"    //
	WhichBolts    finding.Code = "trace which bolts"    // sizes
	TitleLetter   finding.Code = "trace title letter"   // letter: the typeface lacks it
)
