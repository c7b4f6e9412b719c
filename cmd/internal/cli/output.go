package cli

import (
	"io"

	"drawdown/cmd/internal/report"
)

// output remembers the first error of a stream, so that the commands can print
// line after line and the program still tells when a disk is full or a reader
// has gone. After an error it takes no more.
type output struct {
	to  io.Writer
	err error
}

func (o *output) Write(data []byte) (int, error) {
	if o.err != nil {
		return 0, o.err
	}
	n, err := o.to.Write(data)
	o.err = err
	return n, err
}

// printJSON prints a value for other programs.
func (p *Program) printJSON(v any) Status {
	text, err := report.JSON(v)
	if err != nil {
		return p.fail(Failed, err)
	}
	p.Stdout.Write(text) // the output keeps the error
	return Done
}
