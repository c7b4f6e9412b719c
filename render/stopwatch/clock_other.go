//go:build !unix

package stopwatch

import "time"

var start = time.Now()

// now returns the time since the start; the processor time is not to be had
// here.
func now() time.Duration { return time.Since(start) }
