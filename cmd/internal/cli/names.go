package cli

import (
	"fmt"

	"drawdown/cmd/internal/files"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/report"
	"drawdown/render"
)

// Short names for what many of the commands print.
type (
	figureOut = report.Figure
	spanOut   = report.Span
)

func spanJSON[T ~float64](atLow, nominal, atHigh T) spanOut {
	return report.SpanOf(atLow, nominal, atHigh)
}

func choices[T ~string](values []T) string { return flag.Choices(values) }

func texts[T ~string](values []T) []string { return flag.Texts(values) }

func writeFiles(folder string, made []render.File) ([]string, error) {
	return files.Write(folder, made)
}

func checkFolder(folder string) error { return files.CheckFolder(folder) }

func reason(err error) error { return files.Reason(err) }

func wrapped(first, next, line string) string { return report.Wrapped(first, next, line) }

// counted writes a count with its noun: 1 kind, 2 kinds.
func counted(n int, noun string) string {
	if n == 1 {
		return "1 " + noun
	}
	return fmt.Sprintf("%d %ss", n, noun)
}
