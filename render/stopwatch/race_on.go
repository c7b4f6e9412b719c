//go:build race

package stopwatch

// Raced says that the race detector is on, under which all takes five to
// twenty times as long.
const Raced = true
