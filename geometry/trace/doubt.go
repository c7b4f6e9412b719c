package trace

import (
	"fmt"
	"maps"
	"strconv"
)

// Cause names what is doubtful.
type Cause string

// Causes of a doubt about one shape.
const (
	Torn        Cause = "torn"
	NotRound    Cause = "not round"
	Faint       Cause = "faint"
	Coarse      Cause = "coarse"
	Long        Cause = "long"
	PerhapsPort Cause = "perhaps an opening"
	Dirt        Cause = "dirt"
	Open        Cause = "open"
	Alone       Cause = "alone"
)

// Causes of a doubt about the picture as a whole.
const (
	SecondPart Cause = "second part"
	CutOff     Cause = "cut off"
)

// Causes of a doubt about the scale, for who reads the file and knows the
// distances.
const (
	KnownDiffer Cause = "known distances differ"
	OtherStated Cause = "other resolution stated"
	OtherKnown  Cause = "known distance is not as stated"
)

// says lists the causes in words, with a %s for each figure. A sheet has words
// of its own in every language.
var says = map[Cause]string{
	Torn:        "its edge is torn or dirty: %s %% of it is round",
	NotRound:    "it is not quite round: %s by %s mm",
	Faint:       "it is faint: %s %% of the contrast of the picture",
	Coarse:      "it is %s pixels across only; scan finer",
	Long:        "it is long: about %s by %s mm; a slot, or two holes in one",
	PerhapsPort: "it is not round and taken for an opening; if it is a hole for a bolt, its edge is torn or dirty",
	Dirt:        "it is small and not round: dirt or a tear; left out",
	Open:        "it is open to the outside; its circle follows %s %% of the way round",
	Alone:       "it is alone of its size and small: dirt, or a hole for something else",
	SecondPart:  "a second part, %s %% as large, lies beside this one and is left out",
	CutOff:      "the part reaches the edge of the picture; what lies beyond is missing",
	KnownDiffer: "the known distances miss each other by %s mm; measure them again",
	OtherStated: "the file states %s, and --dpi says %s: the part comes out %s times as large; measure it",
	OtherKnown:  "by the known distance the part is %s times as large as the stated %s say; measure it again",
}

// Causes lists all that may be doubted, with their words.
func Causes() map[Cause]string { return maps.Clone(says) }

// Doubt is one thing that an eye has to judge.
type Doubt struct {
	Cause   Cause
	Figures []string // printed, in the order of the words
}

// NewDoubt makes a doubt of a cause with its figures.
func NewDoubt(cause Cause, figures ...string) Doubt { return Doubt{cause, figures} }

// In says the doubt in the words of a form with a %s for each figure.
func (d Doubt) In(form string, figure func(string) string) string {
	args := make([]any, len(d.Figures))
	for i, f := range d.Figures {
		args[i] = figure(f)
	}
	return fmt.Sprintf(form, args...)
}

func (d Doubt) String() string { return d.In(says[d.Cause], func(f string) string { return f }) }

// Sentences says doubts in words.
func Sentences(doubts []Doubt) []string {
	all := make([]string, len(doubts))
	for i, d := range doubts {
		all[i] = d.String()
	}
	return all
}

func (s *Shape) doubt(cause Cause, figures ...string) {
	s.Doubts = append(s.Doubts, NewDoubt(cause, figures...))
}

// fixed prints a figure with some decimals.
func fixed(v float64, decimals int) string { return strconv.FormatFloat(v, 'f', decimals, 64) }

// percent prints a share.
func percent(share float64) string { return fixed(100*share, 0) }
