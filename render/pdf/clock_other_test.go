//go:build !unix

package pdf

import "time"

var start = time.Now()

// worked gives the time since the start; the processor time is not to be had
// here.
func worked() time.Duration { return time.Since(start) }
