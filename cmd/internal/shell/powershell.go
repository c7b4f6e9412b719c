package shell

// powershell returns nothing for files or folders: PowerShell then completes
// those itself.
func powershell(commands []Command) string {
	var s lines
	s.add(`# drawdown completion for PowerShell
Register-ArgumentCompleter -Native -CommandName drawdown, drawdown.exe -ScriptBlock {
    param($word, $line, $cursor)
    $said = @($line.CommandElements | Where-Object { $_.Extent.StartOffset -lt $cursor } | ForEach-Object { $_.ToString() })
    $before = if ($word -and $said.Count -gt 1) { $said[-2] } else { $said[-1] }
    $choices = @(%s)
    if ($said.Count -gt 2 -or ($said.Count -eq 2 -and -not $word)) {
        $flags = @()
        switch ($said[1]) {`, allQuoted(namesOf(commands), ", "))
	for _, c := range commands {
		s.add("            '%s' { $flags = @(%s); $choices = @(%s) }", c.Name, allQuoted(c.typed(), ", "), allQuoted(c.Words, ", "))
	}
	s.add(`            default { $choices = @() }
        }
        if ($word -like '-*') { $choices = $flags }
        switch ("$($said[1]) $before") {`)
	for _, v := range valuedFlags(commands, func(f Flag) string { return allQuoted(f.Words, ", ") }) {
		s.add("            { $_ -in %s } { $choices = @(%s) }", allQuoted(v.keys, ", "), v.answer)
	}
	s.add(`        }
    }
    $choices | Where-Object { $_.StartsWith($word) } | ForEach-Object {
        [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
    }
}`)
	return s.String()
}
