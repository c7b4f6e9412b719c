// Package machine deals with the computer that the program runs on: how much
// memory a card may take, and the progress of long work, shown on a terminal.
// It imports nothing of the project.
package machine

import (
	"math"
	"runtime/debug"
)

// smallCardBytes is what one ordinary card needs with room to spare. The bench
// PC is often an old one: garbage is rather collected once more than let grow.
const smallCardBytes = 14 << 20

// KeepSmall bounds the memory for a card of ordinary size, unless the user has
// set a bound. Large cards and fine pictures need more and get it.
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
