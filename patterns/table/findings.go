package table

import "drawdown/geometry/finding"

// Findings about tables.
const (
	TooManyAnswers    finding.Code = "table too many answers"     // most
	ColumnTwice       finding.Code = "table column twice"         // column
	PositionOutOfTurn finding.Code = "table position out of turn" // column, next
	UnknownColumn     finding.Code = "table unknown column"       // column, meant
	ColumnMissing     finding.Code = "table column missing"       // column
	OrderAndPositions finding.Code = "table order and positions"  //
	SheetMissing      finding.Code = "table sheet missing"        // count
	StudentMissing    finding.Code = "table student missing"      //
	TooManyColumns    finding.Code = "table too many columns"     //
	EmptyPosition     finding.Code = "table empty position"       // name
	AnsweredTwice     finding.Code = "table answered twice"       // student, line
	UnknownUnit       finding.Code = "table unknown unit"         // column, allowed
	PlacesMissing     finding.Code = "table places missing"       // allowed
	CellMissing       finding.Code = "table cell missing"         // column
	NoAnswers         finding.Code = "table no answers"           // example
	NoPoints          finding.Code = "table no points"            //
	TooManyPoints     finding.Code = "table too many points"      // most
	BareQuote         finding.Code = "table bare quote"           //
	StrayQuote        finding.Code = "table stray quote"          //
	TooManyCells      finding.Code = "table too many cells"       // cells, columns
	MixedDecimals     finding.Code = "table mixed decimals"       // written
	ReadAs            finding.Code = "table read as"              // separator: comma, semicolon, tab, bar, blanks; decimal: point, comma; columns: ColumnRead
	ColumnRead        finding.Code = "table column read"          // column, heading, unit if it is a length
	ColumnsIgnored    finding.Code = "table columns ignored"      // columns
	LinesAbove        finding.Code = "table lines above"          // count, lines
	LineLeftOut       finding.Code = "table line left out"        // line, text
	RowNotMarked      finding.Code = "table row not marked"       // why
)
