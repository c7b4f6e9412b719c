package shell

import "strings"

func zsh(commands []Command) string {
	var s lines
	s.add(`#compdef drawdown
# drawdown completion for zsh
_drawdown() {
    local word=${words[CURRENT]} before=${words[CURRENT-1]}
    if (( CURRENT == 2 )); then
        compadd -- %s
        return
    fi
    case $word in
    --*=*) before=${word%%%%=*}; compset -P '*=' ;;
    esac
    case "${words[2]} $before" in`, strings.Join(namesOf(commands), " "))
	for _, v := range valuedFlags(commands, zshValue) {
		s.add("    %s) %s ;;", allQuoted(v.keys, "|"), v.answer)
	}
	s.add("    esac\n    case ${words[2]}:$word in")
	for _, c := range commands {
		s.add("    %s:-*) compadd -- %s ;;", c.Name, strings.Join(c.typed(), " "))
		files := map[Files]string{YAML: "; _files -g '*.y(a|)ml'", Pictures: "; _files -g '*.(png|jpg|jpeg|tif|tiff)'"}[c.Files]
		if len(c.Words) > 0 || files != "" {
			s.add("    %s:*) compadd -- %s%s ;;", c.Name, strings.Join(c.Words, " "), files)
		}
	}
	s.add(`    esac
}
# As a file of the function path this is the function's body; in a start-up
# file it has to be made known.
if [[ ${funcstack[1]} == _drawdown ]]; then
    _drawdown "$@"
else
    (( $+functions[compdef] )) || { autoload -Uz compinit && compinit; }
    compdef _drawdown drawdown
fi`)
	return s.String()
}

// zshValue completes the value of a flag.
func zshValue(f Flag) string {
	switch {
	case f.Takes == Folder:
		return "_files -/; return"
	case f.Takes == File:
		return "_files -g '*.y(a|)ml'; return"
	case f.Takes == List:
		return "compset -P '*,'; compadd -S '' -- " + strings.Join(f.Words, " ") + "; return"
	case f.Words == nil:
		return "return"
	}
	return "compadd -- " + strings.Join(f.Words, " ") + "; return"
}
