package testkit

import (
	"flag"
	"strconv"

	_ "pgregory.net/rapid" // has the flag
)

// A plain run tries a property 30 times, which rapid would 100 times. What stands on
// the command line counts before this.
func init() {
	if err := flag.Set("rapid.checks", strconv.Itoa(Samples(30, 100))); err != nil {
		panic(err)
	}
}
