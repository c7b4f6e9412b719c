package screw

import (
	"slices"

	"drawdown/sequence/tension"
)

// nothingOnTheThread are the ways in which a file says that the threads stay
// dry. Then no lubricant is listed to prepare, and the card says to keep them
// dry.
var nothingOnTheThread = []string{"dry", "none", "no lubricant", "unlubricated", "clean and dry", "degreased"}

// NothingOn reports whether the name of a lubricant means that there is none.
func NothingOn(name string) bool {
	return slices.Contains(nothingOnTheThread, tension.PlainWords(name))
}

// Products that set in the thread.
var (
	threadLockers  = []string{"thread locker", "threadlocker", "thread lock", "thread locking compound", "locking compound"}
	threadSealants = []string{"thread sealant", "thread sealer", "sealant", "sealer", "pipe sealant"}
)

// Sets reports whether a lubricant sets in the thread, so that the bolt must be
// new, or cleaned, each time.
func Sets(name string) bool {
	word := tension.PlainWords(name)
	return slices.Contains(threadLockers, word) || slices.Contains(threadSealants, word)
}
