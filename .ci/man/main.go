// Command man makes manual pages from the help of the program:
//
//	go run ./.ci/man PROGRAM FOLDER
//
// writes drawdown.1 and a page for each command, such as drawdown-card.1.
package main

import (
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
)

func main() {
	log.SetFlags(0)
	if len(os.Args) != 3 {
		log.Fatal("usage: go run ./.ci/man PROGRAM FOLDER")
	}
	program, folder := os.Args[1], os.Args[2]
	overview := said(program, "help")
	write(folder, "drawdown", page("drawdown", "work cards for joints held by many bolts", "", overview))
	for _, name := range commandsOf(overview) {
		text := said(program, "help", name)
		head, rest, _ := strings.Cut(text, "\n\n")
		_, summary, found := strings.Cut(head, ": ")
		if !found {
			log.Fatalf("the help of %s begins with %q, not with its summary", name, head)
		}
		write(folder, "drawdown-"+name, page("drawdown-"+name, summary, ".SH SEE ALSO\n.BR drawdown (1)\n", rest))
	}
}

func said(program string, args ...string) string {
	out, err := exec.Command(program, args...).Output()
	if err != nil {
		log.Fatalf("%s %s: %v", program, strings.Join(args, " "), err)
	}
	return string(out)
}

// commandsOf returns the names in the list of commands, except help.
func commandsOf(overview string) (names []string) {
	_, list, _ := strings.Cut(overview, "\nCommands:\n")
	list, _, _ = strings.Cut(list, "\n\n")
	for line := range strings.Lines(list) {
		if name := strings.Fields(line)[0]; name != "help" {
			names = append(names, name)
		}
	}
	if len(names) == 0 {
		log.Fatal("the help lists no commands")
	}
	return names
}

func write(folder, name, text string) {
	if err := os.WriteFile(filepath.Join(folder, name+".1"), []byte(text), 0o644); err != nil {
		log.Fatal(err)
	}
}

// sections are the headings of a help text, as manual pages name them.
var sections = map[string]string{"Flags:": "OPTIONS", "Commands:": "COMMANDS", "Example:": "EXAMPLES"}

// page turns a help text into a manual page.
func page(name, summary, end, text string) string {
	var p strings.Builder
	fmt.Fprintf(&p, ".TH %s 1\n.SH NAME\n%s \\- %s\n", strings.ToUpper(name), name, escape(summary))
	section := ""
	enter := func(to string) {
		if section != to {
			fmt.Fprintf(&p, ".SH %s\n", to)
			section = to
		}
	}
	for block := range strings.SplitSeq(strings.TrimSpace(text), "\n\n") {
		first, rest, _ := strings.Cut(block, "\n")
		if usage, is := strings.CutPrefix(block, "Usage: "); is {
			enter("SYNOPSIS")
			p.WriteString(escape(usage) + "\n")
			continue
		}
		if to, is := sections[first]; is {
			enter(to)
			if to == "EXAMPLES" {
				p.WriteString(asItIs(rest))
			} else {
				p.WriteString(items(rest))
			}
			continue
		}
		if section == "" || section == "SYNOPSIS" || section == "COMMANDS" || section == "EXAMPLES" && !strings.HasPrefix(block, " ") {
			enter("DESCRIPTION")
		}
		p.WriteString(paragraph(block))
	}
	return p.String() + end
}

// paragraph fills lines of text, and leaves indented ones as they are.
func paragraph(block string) string {
	var p strings.Builder
	p.WriteString(".PP\n")
	var indented string
	for line := range strings.Lines(block + "\n") {
		if strings.HasPrefix(line, "  ") {
			indented += line
			continue
		}
		p.WriteString(asItIs(indented))
		indented = ""
		p.WriteString(escape(strings.TrimSpace(line)) + "\n")
	}
	p.WriteString(asItIs(indented))
	return p.String()
}

func asItIs(lines string) string {
	if lines == "" {
		return ""
	}
	var p strings.Builder
	p.WriteString(".nf\n")
	for line := range strings.SplitSeq(strings.TrimRight(lines, "\n"), "\n") {
		p.WriteString(escape(line) + "\n")
	}
	return p.String() + ".fi\n"
}

// item is a line that begins a flag or a command: its name, two or more blanks,
// and what it is.
var item = regexp.MustCompile(`^\s+(-\S.*?|\S+)\s{2,}(\S.*)$`)

func items(lines string) string {
	var p strings.Builder
	for line := range strings.Lines(lines + "\n") {
		line = strings.TrimRight(line, "\n ")
		begins := strings.TrimLeft(line, " ")
		found := item.FindStringSubmatch(line)
		if found != nil && len(line)-len(begins) < 10 {
			fmt.Fprintf(&p, ".TP\n.B %s\n%s\n", escape(found[1]), escape(found[2]))
		} else if begins != "" {
			p.WriteString(escape(begins) + "\n")
		}
	}
	return p.String()
}

// escape protects what the formatter would read as its own.
func escape(text string) string {
	text = strings.NewReplacer(`\`, `\e`, "-", `\-`).Replace(text)
	if strings.HasPrefix(text, ".") || strings.HasPrefix(text, "'") {
		return `\&` + text
	}
	return text
}
