//go:build race

package sequence

const raceEnabled = true
