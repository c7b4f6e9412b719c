//go:build race

package pdf

// raced says that the race detector slows everything down.
const raced = true
