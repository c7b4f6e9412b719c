package cli

import "strings"

// powershellScript answers with nothing where files or folders are wanted:
// PowerShell then completes those itself.
func powershellScript() string {
	var s script
	s.line(`# drawdown completion for PowerShell
Register-ArgumentCompleter -Native -CommandName drawdown, drawdown.exe -ScriptBlock {
    param($word, $line, $cursor)
    $said = @($line.CommandElements | Where-Object { $_.Extent.StartOffset -lt $cursor } | ForEach-Object { $_.ToString() })
    $before = if ($word -and $said.Count -gt 1) { $said[-2] } else { $said[-1] }
    $choices = @(%s)
    if ($said.Count -gt 2 -or ($said.Count -eq 2 -and -not $word)) {
        $flags = @()
        switch ($said[1]) {`, powershellList(allNames()))
	for _, c := range commands() {
		s.line("            '%s' { $flags = @(%s); $choices = @(%s) }", c.name, powershellList(flagWords(c)), powershellList(operands(c)))
	}
	s.line(`            'help' { $choices = @(%s) }
            default { $choices = @() }
        }
        if ($word -like '-*') { $choices = $flags }
        switch ($before) {`, powershellList(commandNames()))
	for _, name := range valueFlags() {
		s.line("            '--%s' { $choices = @(%s) }", name, powershellList(values(name)))
	}
	s.line(`            '-o' { $choices = @() }
        }
    }
    $choices | Where-Object { $_.StartsWith($word) } | ForEach-Object {
        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
    }
}`)
	return s.String()
}

func powershellList(words []string) string {
	quoted := make([]string, len(words))
	for i, w := range words {
		quoted[i] = singleQuoted(w, "''")
	}
	return strings.Join(quoted, ", ")
}
