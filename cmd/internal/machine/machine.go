// Package machine deals with the computer that the program runs on: how much
// memory a card may take, and the progress of long work, shown on a terminal.
// It imports nothing of the project.
package machine

import (
	"math"
	"runtime/debug"
)

// smallCardBytes is what an ordinary card needs, with room to spare. The bench
// PC is often an old one: collecting garbage more often is better than growing.
const smallCardBytes = 14 << 20

// KeepSmall limits the memory for a card of ordinary size, unless the user has
// set a limit. Large cards and fine pictures get the memory they need.
func KeepSmall(fasteners, dpi int) {
	const (
		ordinaryCount = 100
		ordinaryDPI   = 300
	)
	if fasteners > ordinaryCount || dpi > ordinaryDPI || debug.SetMemoryLimit(-1) != math.MaxInt64 {
		return
	}
	debug.SetMemoryLimit(smallCardBytes)
}
