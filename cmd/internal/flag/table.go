package flag

import (
	"github.com/spf13/pflag"

	"drawdown/cmd/internal/shell"
)

// Keys of the annotations of a flag.
const (
	offered  = "words"  // its possible values
	isList   = "list"   // of those words
	isFile   = "file"   // its value is a YAML file
	isFolder = "folder" // its value is a folder
)

func annotate(flags *pflag.FlagSet, name, key string, words ...string) {
	if err := flags.SetAnnotation(name, key, words); err != nil {
		panic(err) // the flag does not exist
	}
}

// Offer records the words that a flag can be set to, for completion.
func Offer(flags *pflag.FlagSet, name string, words ...string) {
	annotate(flags, name, offered, words...)
}

// OfferFiles records that a flag's value is a YAML file.
func OfferFiles(flags *pflag.FlagSet, name string) { annotate(flags, name, isFile) }

// OfferFolders records that a flag's value is a folder.
func OfferFolders(flags *pflag.FlagSet, name string) { annotate(flags, name, isFolder) }

// Table describes all flags of a command, including --help.
func Table(flags *pflag.FlagSet) []shell.Flag {
	table := []shell.Flag{{Name: "help", Short: "h", Usage: "the help of this command"}}
	flags.VisitAll(func(f *pflag.Flag) {
		_, usage := pflag.UnquoteUsage(f)
		table = append(table, shell.Flag{Name: f.Name, Short: f.Shorthand, Usage: usage, Takes: takes(f), Words: f.Annotations[offered]})
	})
	return table
}

func takes(f *pflag.Flag) shell.Takes {
	for key, takes := range map[string]shell.Takes{isList: shell.List, isFile: shell.File, isFolder: shell.Folder} {
		if _, is := f.Annotations[key]; is {
			return takes
		}
	}
	if f.Value.Type() == "bool" {
		return shell.Nothing
	}
	return shell.Text
}

// JSON adds the flag that every command with figures has.
func JSON(flags *pflag.FlagSet) *bool {
	return flags.Bool("json", false, "print JSON for other programs")
}

// Out adds the flag for the folder to write to.
func Out(flags *pflag.FlagSet, usual, usage string) *string {
	folder := flags.StringP("out", "o", usual, usage)
	annotate(flags, "out", isFolder)
	return folder
}
