module drawdown

go 1.26.0

require (
	golang.org/x/image v0.48.0
	golang.org/x/text v0.44.0
)
