//go:build !race

package png

// raced says that the race detector slows everything down.
const raced = false
