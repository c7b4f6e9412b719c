// Package stopwatch times work in tests. It counts the processor time of this
// process, where the system tells it, so that neighbours on a busy machine do
// not decide whether a test passes.
package stopwatch

import "time"

// Worked returns the time that a piece of work on one thread takes: the
// processor's or, where collecting garbage beside it took some of that, the
// time on the clock, whichever is less.
func Worked(do func()) time.Duration {
	begin, clock := now(), time.Now()
	do()
	return min(now()-begin, time.Since(clock))
}

// Fastest returns the shortest of several runs: other work on the machine only
// ever adds time. A run is repeated until the clock has moved far enough to be
// read.
func Fastest(runs int, do func()) time.Duration {
	const readable = 20 * time.Millisecond
	least := time.Duration(1<<63 - 1)
	for range runs {
		begin, times := now(), 0
		for now()-begin < readable {
			do()
			times++
		}
		least = min(least, (now()-begin)/time.Duration(times))
	}
	return least
}
