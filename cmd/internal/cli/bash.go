package cli

import "strings"

// bashScript keeps to what bash 3.2 knows, which is the one on macOS.
func bashScript() string {
	var s script
	s.line("# drawdown completion for bash")
	s.line(`_drawdown() {
    local IFS=$'\n' flags= names= files= list=
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W %s -- "$word"))
        return
    fi`, bashList(allNames()))
	s.line(`    # --flag=value comes as three words.
    if [ "$word" = = ]; then
        word=
    elif [ "$before" = = ]; then
        before=${COMP_WORDS[COMP_CWORD-2]}
    fi
    case $before in`)
	for _, name := range valueFlags() {
		s.line("    %s", bashValue(name))
	}
	s.line("    esac\n    case ${COMP_WORDS[1]} in")
	for _, c := range commands() {
		files := ""
		if takesFiles(c) {
			files = " files='!*.y*ml'"
		}
		if takesPictures(c) {
			files = " files='!*.*g'" // png, jpg, jpeg
		}
		s.line("    %s) flags=%s names=%s%s ;;", c.name, bashList(flagWords(c)), bashList(operands(c)), files)
	}
	s.line(`    help) names=%s ;;
    esac
    case $word in
    -*) COMPREPLY=($(compgen -W "$flags" -- "$word")); return ;;
    esac
    COMPREPLY=($(compgen -W "$names" -- "$word"))
    if [ -n "$files" ]; then
        compopt -o filenames 2>/dev/null
        COMPREPLY+=($(compgen -f -X "$files" -- "$word") $(compgen -d -- "$word"))
    fi
}
complete -F _drawdown drawdown`, bashList(commandNames()))
	return s.String()
}

// bashValue is the branch that completes the value of a flag.
func bashValue(flag string) string {
	switch {
	case flag == "out":
		return `-o|--out) compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -d -- "$word")); return ;;`
	case takesFile(flag):
		return "--" + flag + `) compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -X '!*.y*ml' -- "$word") $(compgen -d -- "$word")); return ;;`
	case takesList(flag):
		return "--" + flag + `) case $word in *,*) list=${word%,*}, ;; esac
        COMPREPLY=($(compgen -P "$list" -W ` + bashList(values(flag)) + ` -- "${word##*,}")); return ;;`
	case values(flag) == nil:
		return "--" + flag + ") return ;;"
	}
	return "--" + flag + ") COMPREPLY=($(compgen -W " + bashList(values(flag)) + ` -- "$word")); return ;;`
}

// bashList writes words one a line, so that a blank in a file's name parts
// nothing.
func bashList(words []string) string { return "$'" + strings.Join(words, `\n`) + "'" }
