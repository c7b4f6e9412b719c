package nodes

import "drawdown/geometry/finding"

// Problems of a text before its values are read.
const (
	AliasInItself     finding.Code = "reader alias in itself"     // alias
	KeyIsNoWord       finding.Code = "reader key no word"         // found
	KeyTwice          finding.Code = "reader key twice"           // key, line
	TagIdle           finding.Code = "reader tag idle"            // tag
	NoKeys            finding.Code = "reader no keys"             // found
	AliasesGrow       finding.Code = "reader aliases grow"        //
	MoreProblems      finding.Code = "reader more problems"       //
	TooLarge          finding.Code = "reader too large"           // most
	TooManySigns      finding.Code = "reader too many signs"      //
	Empty             finding.Code = "reader empty file"          // example
	SecondDocument    finding.Code = "reader second document"     // example
	UTF16             finding.Code = "reader utf-16"              //
	NotUTF8           finding.Code = "reader not utf-8"           // byte
	NUL               finding.Code = "reader nul"                 //
	ControlCharacter  finding.Code = "reader control character"   // character
	SpaceAfterColon   finding.Code = "reader space after colon"   // key, rest
	CommaInNumber     finding.Code = "reader comma in number"     // written, braces, whole
	CommaInThousands  finding.Code = "reader comma in thousands"  // written, braces
	CommaInList       finding.Code = "reader comma in list"       // written, braces, key, first, second
	StandsAt          finding.Code = "reader stands at"           // line, file
	Entries           finding.Code = "reader entries"             // count
	Numbers           finding.Code = "reader numbers"             // count, decimal
	OneEntry          finding.Code = "reader one entry"           // written, apart
	ColonMissing      finding.Code = "reader colon missing"       //
	ListOpen          finding.Code = "reader list open"           //
	MapOpen           finding.Code = "reader map open"            // braces, end
	QuoteOpen         finding.Code = "reader quote open"          //
	ColonOutOfPlace   finding.Code = "reader colon out of place"  //
	LineMisfit        finding.Code = "reader line misfit"         //
	DashMissing       finding.Code = "reader dash missing"        //
	ListOnOwnLine     finding.Code = "reader list on own line"    //
	ValueMissing      finding.Code = "reader value missing"       //
	NoDash            finding.Code = "reader no dash"             // line
	HashInText        finding.Code = "reader hash in text"        // line
	ColonInText       finding.Code = "reader colon in text"       // line
	UnknownEscape     finding.Code = "reader unknown escape"      //
	BadFirstCharacter finding.Code = "reader bad first character" //
	StarOrAmpersand   finding.Code = "reader star or ampersand"   //
	AfterBar          finding.Code = "reader after bar"           //
	OtherYAML         finding.Code = "reader other yaml"          //
	Tab               finding.Code = "reader tab"                 //
	UnknownAnchor     finding.Code = "reader unknown anchor"      // name
	TooDeep           finding.Code = "reader too deep"            //
	NoYAML            finding.Code = "reader no yaml"             // message
)
