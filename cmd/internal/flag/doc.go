// Package flag is what the flags of the commands have in common. A flag is
// described once, where a command adds it: its usage with the words that it
// takes. Help, completion and what is said of a wrong value come from that.
//
// It imports what the words are of: papers, formats, languages. It runs nothing.
package flag
