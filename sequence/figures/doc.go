// Package figures judges the figures of bolts against their mechanics: the
// torques and angles of the stages against yield, stretch and breaking, the
// engagement against stripping, the head against its hole and its pressure, the
// length, the wrenches, the lubricants. Every command, sheet and page reads the
// findings of Judge; nobody else has an opinion. It also works out a bolt that
// is asked about alone, by the same judgement.
//
// Where a bolt leaves something open, a warning holds for the most lenient of
// the usual cases; what fails only as standards make the bolt is a note. The
// figures stand all the same: the maker knows the joint.
//
// It imports the mechanics below sequence/tension, and knows no plan and no
// file.
package figures
