// Command licences collects the notices of all modules that a build of drawdown
// contains, on any of its systems. In the root of the tree:
//
//	go run ./.ci/licences          writes the notices that the program prints
//	go run ./.ci/licences -check   fails if they are out of date
//	go run ./.ci/licences -list    prints a line for each module
//	go run ./.ci/licences -bill VERSION   prints a bill of materials (SPDX 2.3)
package main

import (
	"bytes"
	"cmp"
	"flag"
	"fmt"
	"log"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
)

// notices is the file that the program embeds.
const notices = "cmd/internal/licences/notices.txt"

var systems = []string{"linux", "windows", "darwin"} // no file is for one processor only

// module is a module that is linked into the program.
type module struct {
	path, version string
	licence       string // SPDX identifier
	texts         []string
}

func main() {
	log.SetFlags(0)
	check := flag.Bool("check", false, "fail if the notices are out of date")
	list := flag.Bool("list", false, "print a line for each module")
	bill := flag.String("bill", "", "print a bill of materials for this `version`")
	flag.Parse()
	modules, err := linked()
	if err != nil {
		log.Fatal(err)
	}
	text := noticesOf(modules)
	switch {
	case *list:
		for _, m := range modules {
			fmt.Println(m.path, m.version, m.licence)
		}
	case *bill != "":
		os.Stdout.Write(billOf(modules, *bill))
	case *check:
		if old, err := os.ReadFile(notices); err != nil || !bytes.Equal(old, text) {
			log.Fatal(notices + " is out of date: go run ./.ci/licences writes it")
		}
	default:
		if err := os.WriteFile(notices, text, 0o644); err != nil {
			log.Fatal(err)
		}
	}
}

// linked returns drawdown and Go itself, then the modules by path.
func linked() ([]module, error) {
	root, err := output("", "go", "env", "GOROOT")
	if err != nil {
		return nil, err
	}
	folders := map[string]string{}
	for _, system := range systems {
		lines, err := output(system, "go", "list", "-deps", "-f", "{{with .Module}}{{if not .Main}}{{.Path}}\t{{.Version}}\t{{.Dir}}{{end}}{{end}}", "./cmd/drawdown")
		if err != nil {
			return nil, err
		}
		for line := range strings.Lines(lines) {
			if name, folder, found := cutLast(strings.TrimSpace(line)); found {
				folders[name] = folder
			}
		}
	}
	own, library := module{path: "drawdown"}, module{path: "Go standard library"}
	if err := cmp.Or(own.read("."), library.read(strings.TrimSpace(root))); err != nil {
		return nil, err
	}
	all := []module{own, library}
	for name, folder := range folders {
		m := module{}
		m.path, m.version, _ = strings.Cut(name, "\t")
		if err := m.read(folder); err != nil {
			return nil, err
		}
		all = append(all, m)
	}
	slices.SortFunc(all[2:], func(a, b module) int { return strings.Compare(a.path, b.path) })
	return all, nil
}

func cutLast(line string) (before, after string, found bool) {
	i := strings.LastIndex(line, "\t")
	if i < 0 {
		return "", "", false
	}
	return line[:i], line[i+1:], true
}

// output runs a command without cgo, for a system if one is named.
func output(system string, name string, args ...string) (string, error) {
	command := exec.Command(name, args...)
	command.Env = append(os.Environ(), "CGO_ENABLED=0", "GOFLAGS=", "TZ=UTC")
	if system != "" {
		command.Env = append(command.Env, "GOOS="+system, "GOARCH=amd64")
	}
	command.Stderr = os.Stderr
	out, err := command.Output()
	return string(out), err
}

var (
	isNotice = regexp.MustCompile(`(?i)^(licen[cs]e|copying|notice|third.?party)`)
	ofLogo   = regexp.MustCompile(`(?i)logo`) // a picture that is not in the program
)

// read reads the notices in a module's folder and recognises the licence by the
// first of them.
func (m *module) read(folder string) error {
	entries, err := os.ReadDir(folder)
	if err != nil {
		return err
	}
	var files []string
	for _, entry := range entries {
		switch name := entry.Name(); {
		case !isNotice.MatchString(name) || ofLogo.MatchString(name) || strings.HasSuffix(name, ".go"):
		case entry.IsDir():
			inside, err := filepath.Glob(filepath.Join(folder, name, "*"))
			if err != nil {
				return err
			}
			files = append(files, inside...)
		default:
			files = append(files, filepath.Join(folder, name))
		}
	}
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		if isGPL(string(text)) {
			continue // offered as the other choice
		}
		m.texts = append(m.texts, strings.TrimSpace(strings.ReplaceAll(string(text), "\r\n", "\n")))
	}
	if m.licence = licenceOf(m.texts); m.licence == "" {
		return fmt.Errorf("%s: no licence that this program knows in %s: read it, and add it to licenceOf if it may be linked", m.path, folder)
	}
	return nil
}

func isGPL(text string) bool {
	return strings.Contains(text, "GNU GENERAL PUBLIC LICENSE") && strings.Contains(text, "TERMS AND CONDITIONS FOR COPYING")
}

// licenceOf returns the SPDX identifier of the first text with a known licence.
func licenceOf(texts []string) string {
	for _, text := range texts {
		said := strings.Join(strings.Fields(text), " ")
		has := func(part string) bool { return strings.Contains(said, part) }
		switch {
		case has("The FreeType License"):
			return "FTL"
		case has("Apache License") && has("Version 2.0"):
			return "Apache-2.0"
		case has("Permission is hereby granted, free of charge"):
			return "MIT"
		case has("Permission to use, copy, modify, and/or distribute this software for any purpose"):
			return "ISC"
		case has("Redistribution and use in source and binary forms") && has("Neither the name"):
			return "BSD-3-Clause"
		case has("Redistribution and use in source and binary forms"):
			return "BSD-2-Clause"
		}
	}
	return ""
}

func noticesOf(modules []module) []byte {
	var text bytes.Buffer
	text.WriteString("Software in this program, with its licences:\n\n")
	for _, m := range modules {
		fmt.Fprintf(&text, "  %s (%s)\n", m.name(), m.licence)
	}
	for _, m := range modules {
		fmt.Fprintf(&text, "\n\n%s\n%s\n", strings.Repeat("=", 78), m.name())
		for _, t := range m.texts {
			fmt.Fprintf(&text, "%s\n%s\n", strings.Repeat("-", 78), t)
		}
	}
	return text.Bytes()
}

func (m module) name() string { return strings.TrimSpace(m.path + " " + m.version) }
