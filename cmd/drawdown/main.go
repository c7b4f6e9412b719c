// Command drawdown draws torque cards for joints held by many bolts.
package main

import (
	"os"

	"drawdown/cmd/internal/cli"
)

func main() {
	program := cli.Program{Stdin: os.Stdin, Stdout: os.Stdout, Stderr: os.Stderr}
	os.Exit(int(program.Run(os.Args[1:])))
}
