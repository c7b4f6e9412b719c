// Package report says on a terminal, or as JSON for other programs, what a job
// came to: text tables, figures without binary dust, and the shapes of the JSON,
// each once. It works nothing out and knows no flags; what was found it words by
// the catalogue of the call, render/words. It may import what it reports on: job
// with the rooms below.
package report
