package cli

import "strings"

func zshScript() string {
	var s script
	s.line(`#compdef drawdown
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
    case $before in`, strings.Join(allNames(), " "))
	for _, name := range valueFlags() {
		s.line("    %s", zshValue(name))
	}
	s.line("    esac\n    case ${words[2]}:$word in")
	for _, c := range commands() {
		s.line("    %s:-*) compadd -- %s ;;", c.name, strings.Join(flagWords(c), " "))
		files := ""
		if takesFiles(c) {
			files = "; _files -g '*.y(a|)ml'"
		}
		if takesPictures(c) {
			files = "; _files -g '*.(png|jpg|jpeg|tif|tiff)'"
		}
		if c.operand == nothing {
			continue
		}
		s.line("    %s:*) compadd -- %s%s ;;", c.name, strings.Join(operands(c), " "), files)
	}
	s.line(`    help:*) compadd -- %s ;;
    esac
}
# As a file of the function path this is the function's body; in a start-up
# file it has to be made known.
if [[ ${funcstack[1]} == _drawdown ]]; then
    _drawdown "$@"
else
    (( $+functions[compdef] )) || { autoload -Uz compinit && compinit; }
    compdef _drawdown drawdown
fi`, strings.Join(commandNames(), " "))
	return s.String()
}

// zshValue is the branch that completes the value of a flag.
func zshValue(flag string) string {
	switch {
	case flag == "out":
		return "-o|--out) _files -/; return ;;"
	case takesFile(flag):
		return "--" + flag + ") _files -g '*.y(a|)ml'; return ;;"
	case takesList(flag):
		return "--" + flag + ") compset -P '*,'; compadd -S '' -- " + strings.Join(values(flag), " ") + "; return ;;"
	case values(flag) == nil:
		return "--" + flag + ") return ;;"
	}
	return "--" + flag + ") compadd -- " + strings.Join(values(flag), " ") + "; return ;;"
}
