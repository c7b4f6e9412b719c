// Package figures judges the figures of bolts by their mechanics: the torques
// and angles of the stages against yield, stretch and breaking, the engagement
// against stripping, the head against its hole and its pressure, the length,
// the wrenches, the lubricants. Every command, sheet and page uses the findings
// of Judge; nothing else judges figures. WorkOut calculates a single bolt by
// the same rules.
//
// If a bolt does not state something, a warning is given only if even the most
// lenient of the usual cases fails; a failure of the standard bolt alone is a
// note. The figures themselves are not changed: the maker knows the joint.
//
// It imports the mechanics below sequence/tension, and knows no plan and no
// file.
package figures
