package form

import "drawdown/geometry/finding"

// Errors in the form of a value.
const (
	NoMap          finding.Code = "reader no map"          // what, found, allowed
	UnknownKey     finding.Code = "reader unknown key"     // key, what, meant, allowed
	CommaInText    finding.Code = "reader comma in text"   // before, key: what the comma split
	NoValue        finding.Code = "reader no value"        // key
	KeyMissing     finding.Code = "reader key missing"     // what, key, example
	NoAction       finding.Code = "reader no action"       // what, allowed
	SeveralActions finding.Code = "reader several actions" // what, keys, allowed
	KeyIdle        finding.Code = "reader key idle"        // why, key
	NoDate         finding.Code = "reader no date"         // key, found
	FarDate        finding.Code = "reader far date"        // key, found, earliest, latest
	NoVersion      finding.Code = "reader no version"      //
	OtherVersion   finding.Code = "reader other version"   // found
	NoID           finding.Code = "reader no id"           // what, found
	LongID         finding.Code = "reader long id"         // id, most
	OddID          finding.Code = "reader odd id"          // id, character
	NoMark         finding.Code = "reader no mark"         // found
	LongMark       finding.Code = "reader long mark"       // mark, most
	CastAndMark    finding.Code = "reader cast and mark"   // what, allowed
	NoTwoLengths   finding.Code = "reader no two lengths"  // what, example, found
	TooManyPlaces  finding.Code = "reader too many places" // what, count, most
	NoQuantity     finding.Code = "reader no quantity"     // what, found
	NoPlace        finding.Code = "reader no place"        // what, found
	NoNumber       finding.Code = "reader no number"       // what, written
	NoText         finding.Code = "reader no text"         // what, found
	EmptyText      finding.Code = "reader empty text"      // what
	LongText       finding.Code = "reader long text"       // what, count, most
	LineBreak      finding.Code = "reader line break"      // what
	ControlInText  finding.Code = "reader control in text" // what, character
	NotInTypeface  finding.Code = "reader not in typeface" // what, letter, character
	NoChoice       finding.Code = "reader no choice"       // what, found, meant, allowed
	NoList         finding.Code = "reader no list"         // what, example, found
	EmptyList      finding.Code = "reader empty list"      // what, example
	Unreadable     finding.Code = "reader unreadable"      // what, why
	SystemSays     finding.Code = "reader system says"     // text
	NoWhole        finding.Code = "reader no whole number" // what, found, low, high
	NoteForm       finding.Code = "reader note form"       // tighten, loosen, braces
	CautionForm    finding.Code = "reader caution form"    // tighten, loosen, braces
	CautionOfBoth  finding.Code = "reader caution of both" // loosen, tighten: an entry for each
	CautionCut     finding.Code = "reader caution cut"     // last: the word or sign that it ends with
	CautionSide    finding.Code = "reader caution side"    // key, meant, allowed
	Coordinate     finding.Code = "reader coordinate"      // of, axis
)
