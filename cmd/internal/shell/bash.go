package shell

import "strings"

// bash uses only features of bash 3.2, the version on macOS.
func bash(commands []Command) string {
	var s lines
	s.add("# drawdown completion for bash")
	s.add(`_drawdown() {
    local IFS=$'\n' flags= names= files= list=
    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]}
    COMPREPLY=()
    if [ "$COMP_CWORD" -eq 1 ]; then
        COMPREPLY=($(compgen -W %s -- "$word"))
        return
    fi`, bashList(namesOf(commands)))
	s.add(`    # --flag=value comes as three words.
    if [ "$word" = = ]; then
        word=
    elif [ "$before" = = ]; then
        before=${COMP_WORDS[COMP_CWORD-2]}
    fi
    case "${COMP_WORDS[1]} $before" in`)
	for _, v := range valuedFlags(commands, bashValue) {
		s.add("    %s) %s ;;", allQuoted(v.keys, "|"), v.answer)
	}
	s.add("    esac\n    case ${COMP_WORDS[1]} in")
	for _, c := range commands {
		files := map[Files]string{YAML: " files='!*.y*ml'", Pictures: " files='!*.*g'"}[c.Files] // png, jpg, jpeg
		s.add("    %s) flags=%s names=%s%s ;;", c.Name, bashList(c.typed()), bashList(c.Words), files)
	}
	s.add(`    esac
    case $word in
    -*) COMPREPLY=($(compgen -W "$flags" -- "$word")); return ;;
    esac
    COMPREPLY=($(compgen -W "$names" -- "$word"))
    if [ -n "$files" ]; then
        compopt -o filenames 2>/dev/null
        COMPREPLY+=($(compgen -f -X "$files" -- "$word") $(compgen -d -- "$word"))
    fi
}
complete -F _drawdown drawdown`)
	return s.String()
}

// bashValue completes the value of a flag.
func bashValue(f Flag) string {
	switch {
	case f.Takes == Folder:
		return `compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -d -- "$word")); return`
	case f.Takes == File:
		return `compopt -o filenames 2>/dev/null; COMPREPLY=($(compgen -f -X '!*.y*ml' -- "$word") $(compgen -d -- "$word")); return`
	case f.Takes == List:
		return `case $word in *,*) list=${word%,*}, ;; esac
        COMPREPLY=($(compgen -P "$list" -W ` + bashList(f.Words) + ` -- "${word##*,}")); return`
	case f.Words == nil:
		return "return"
	}
	return "COMPREPLY=($(compgen -W " + bashList(f.Words) + ` -- "$word")); return`
}

// bashList writes one word per line, so that a space in a file name separates
// nothing.
func bashList(words []string) string { return "$'" + strings.Join(words, `\n`) + "'" }
