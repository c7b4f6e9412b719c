// Command drawdown draws work cards for joints held by many bolts.
package main

import "drawdown/cmd/internal/cli"

func main() { cli.Main() }
