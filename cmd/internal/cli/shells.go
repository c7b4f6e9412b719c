package cli

import (
	"fmt"
	"strings"
)

func bashScript() string {
	var b strings.Builder
	b.WriteString("# drawdown completion for bash\n_drawdown() {\n")
	b.WriteString("    local word=${COMP_WORDS[COMP_CWORD]} before=${COMP_WORDS[COMP_CWORD-1]} choices\n")
	b.WriteString("    COMPREPLY=()\n    if [ \"$COMP_CWORD\" -eq 1 ]; then\n")
	fmt.Fprintf(&b, "        COMPREPLY=($(compgen -W %q -- \"$word\"))\n        return\n    fi\n", strings.Join(allNames(), " "))
	b.WriteString("    case $before in\n")
	for _, name := range flagsWithValues() {
		fmt.Fprintf(&b, "    --%s) COMPREPLY=($(compgen -W %q -- \"$word\")); return ;;\n", name, strings.Join(values(name), " "))
	}
	b.WriteString("    -o|--out) COMPREPLY=($(compgen -d -- \"$word\")); return ;;\n    esac\n")
	b.WriteString("    case ${COMP_WORDS[1]} in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) choices=%q ;;\n", c.name, strings.Join(append(flagWords(c), arguments(c)...), " "))
	}
	fmt.Fprintf(&b, "    help) choices=%q ;;\n    esac\n", strings.Join(commandNames(), " "))
	b.WriteString("    COMPREPLY=($(compgen -W \"$choices\" -- \"$word\") $(compgen -f -X '!*.y*ml' -- \"$word\"))\n}\n")
	b.WriteString("complete -o filenames -F _drawdown drawdown\n")
	return b.String()
}

func zshScript() string {
	var b strings.Builder
	b.WriteString("#compdef drawdown\n# drawdown completion for zsh\n_drawdown() {\n")
	b.WriteString("    local before=${words[CURRENT-1]}\n    if (( CURRENT == 2 )); then\n")
	fmt.Fprintf(&b, "        compadd -- %s\n        return\n    fi\n    case $before in\n", strings.Join(allNames(), " "))
	for _, name := range flagsWithValues() {
		fmt.Fprintf(&b, "    --%s) compadd -- %s; return ;;\n", name, strings.Join(values(name), " "))
	}
	b.WriteString("    -o|--out) _files -/; return ;;\n    esac\n    case ${words[2]} in\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "    %s) compadd -- %s ;;\n", c.name, strings.Join(append(flagWords(c), arguments(c)...), " "))
	}
	fmt.Fprintf(&b, "    help) compadd -- %s ;;\n    esac\n", strings.Join(commandNames(), " "))
	b.WriteString("    _files -g '*.y(a|)ml'\n}\ncompdef _drawdown drawdown\n")
	return b.String()
}

func fishScript() string {
	var b strings.Builder
	b.WriteString("# drawdown completion for fish\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "complete -c drawdown -n __fish_use_subcommand -f -a %s -d %q\n", c.name, c.summary)
	}
	b.WriteString("complete -c drawdown -n __fish_use_subcommand -f -a help -d \"the help of a command\"\n")
	for _, c := range commands() {
		on := fmt.Sprintf("complete -c drawdown -n \"__fish_seen_subcommand_from %s\"", c.name)
		fmt.Fprintf(&b, "%s -a %q\n", on, strings.Join(arguments(c), " "))
		for _, f := range flagsOf(c) {
			fmt.Fprintf(&b, "%s -l %s", on, f.Name)
			if f.Shorthand != "" {
				fmt.Fprintf(&b, " -s %s", f.Shorthand)
			}
			if v := values(f.Name); v != nil {
				fmt.Fprintf(&b, " -x -a %q", strings.Join(v, " "))
			} else if f.Value.Type() != "bool" {
				b.WriteString(" -r")
			}
			fmt.Fprintf(&b, " -d %q\n", f.Usage)
		}
	}
	return b.String()
}

func powershellScript() string {
	quoted := func(list []string) string { return "'" + strings.Join(list, "', '") + "'" }
	var b strings.Builder
	b.WriteString("# drawdown completion for PowerShell\n")
	b.WriteString("Register-ArgumentCompleter -Native -CommandName drawdown -ScriptBlock {\n")
	b.WriteString("    param($word, $line, $cursor)\n")
	b.WriteString("    $said = @($line.CommandElements | ForEach-Object { $_.ToString() })\n")
	b.WriteString("    $before = if ($word) { $said[-2] } else { $said[-1] }\n")
	fmt.Fprintf(&b, "    $choices = @(%s)\n", quoted(allNames()))
	b.WriteString("    if ($said.Count -gt 2 -or ($said.Count -eq 2 -and -not $word)) {\n        switch ($said[1]) {\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "            '%s' { $choices = @(%s) }\n", c.name, quoted(append(flagWords(c), arguments(c)...)))
	}
	fmt.Fprintf(&b, "            'help' { $choices = @(%s) }\n        }\n    }\n    switch ($before) {\n", quoted(commandNames()))
	for _, name := range flagsWithValues() {
		fmt.Fprintf(&b, "        '--%s' { $choices = @(%s) }\n", name, quoted(values(name)))
	}
	b.WriteString("    }\n    $choices | Where-Object { $_ -like \"$word*\" } | ForEach-Object {\n")
	b.WriteString("        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)\n    }\n}\n")
	return b.String()
}
