package cli

import (
	"fmt"
	"strings"
)

// shell is a shell with a completion script.
type shell struct {
	name   string
	script func() string
}

// shells lists them in the order of the help. It is filled at start-up because
// the scripts list the shells, too.
var shells []shell

func init() {
	shells = []shell{{"bash", bashScript}, {"zsh", zshScript}, {"fish", fishScript}, {"powershell", powershellScript}}
}

func shellNames() []string {
	names := make([]string, len(shells))
	for i, s := range shells {
		names[i] = s.name
	}
	return names
}

// script is a completion script while it is written.
type script struct{ strings.Builder }

func (s *script) line(format string, args ...any) { fmt.Fprintf(s, format+"\n", args...) }

// singleQuoted puts a text between single quotes, with the shell's own way to
// write one inside.
func singleQuoted(text, quote string) string {
	return "'" + strings.ReplaceAll(text, "'", quote) + "'"
}
