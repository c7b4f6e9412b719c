package dxf

import "drawdown/geometry/finding"

// Findings about drawings, and the reasons for leaving things out.
const (
	TooLarge        finding.Code = "drawing too large"         // most
	IsPicture       finding.Code = "drawing is picture"        //
	IsPDF           finding.Code = "drawing is pdf"            //
	IsDWG           finding.Code = "drawing is dwg"            //
	AtByte          finding.Code = "drawing at byte"           // why, byte
	NoDrawing       finding.Code = "drawing no dxf"            //
	NamelessSection finding.Code = "drawing nameless section"  //
	SectionOrder    finding.Code = "drawing section order"     // name
	NoEntities      finding.Code = "drawing no entities"       //
	NoEnd           finding.Code = "drawing no end"            //
	EndsEarly       finding.Code = "drawing ends early"        // word
	OtherStart      finding.Code = "drawing other start"       //
	CodeMissing     finding.Code = "drawing code missing"      // kind, code
	NoGroupCode     finding.Code = "drawing no group code"     // written, most
	ValueMissing    finding.Code = "drawing value missing"     // code
	TornValue       finding.Code = "drawing torn value"        // code, byte
	NoGroup         finding.Code = "drawing no group"          // byte
	NoNumber        finding.Code = "drawing no number"         // code, written
	NoWhole         finding.Code = "drawing no whole number"   // code, written
	TooManyThings   finding.Code = "drawing too many things"   // most
	TooManyPoints   finding.Code = "drawing too many points"   //
	BlockInItself   finding.Code = "drawing block in itself"   // name
	BlocksTooDeep   finding.Code = "drawing blocks too deep"   // most
	TooManyCopies   finding.Code = "drawing too many copies"   // columns, rows, most
	BlocksUnfold    finding.Code = "drawing blocks unfold"     // most
	NoSuchLayer     finding.Code = "drawing no such layer"     // name, layers
	LayerHidden     finding.Code = "drawing layer hidden"      // name, state
	OtherUnit       finding.Code = "drawing other unit"        // stated, asked
	OddUnit         finding.Code = "drawing odd unit"          // unit
	NoUnitEnglish   finding.Code = "drawing no unit english"   //
	NoUnit          finding.Code = "drawing no unit"           //
	LeftOut         finding.Code = "drawing left out"          // count, kind, why
	Tilted          finding.Code = "drawing tilted"            //
	BadRadius       finding.Code = "drawing bad radius"        //
	IsMesh          finding.Code = "drawing is mesh"           //
	FewCorners      finding.Code = "drawing few corners"       //
	PaperSpace      finding.Code = "drawing paper space"       //
	BlockMissing    finding.Code = "drawing block missing"     //
	FromOtherFile   finding.Code = "drawing from other file"   //
	LooseEnd        finding.Code = "drawing loose end"         //
	NoControlPoints finding.Code = "drawing no control points" //
	KnotsMisfit     finding.Code = "drawing knots misfit"      //
	Invisible       finding.Code = "drawing invisible"         //
	NotAsked        finding.Code = "drawing not asked"         //
	OnFrozen        finding.Code = "drawing on frozen"         //
	OnOff           finding.Code = "drawing on off"            //
	GapClosed       finding.Code = "drawing gap closed"        // size, x, y: of its middle
	MoreGaps        finding.Code = "drawing more gaps"         // count
)
