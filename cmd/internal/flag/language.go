package flag

import (
	"strings"

	"github.com/spf13/pflag"

	"drawdown/render/words"
)

// language is a flag that is set to the tag of a language.
type language struct{ words *words.Catalogue }

func (l *language) String() string {
	if l.words == nil {
		return "" // pflag asks what the empty value is
	}
	return l.words.Language
}

func (l *language) Type() string { return "string" }

func (l *language) Set(tag string) error {
	found, err := words.Find(tag)
	if err != nil {
		return spoken{err}
	}
	l.words = found
	return nil
}

// Language adds the flag of every command that prints words.
func Language(flags *pflag.FlagSet) {
	flags.Var(&language{words.English()}, "lang", "`language` of the printed words, one of "+strings.Join(words.Languages(), ", "))
	Offer(flags, "lang", words.Languages()...)
}

// Words gives the catalogue of the language that the flags ask for; English
// where they ask for none.
func Words(flags *pflag.FlagSet) *words.Catalogue {
	if f := flags.Lookup("lang"); f != nil {
		return f.Value.(*language).words
	}
	return words.English()
}
