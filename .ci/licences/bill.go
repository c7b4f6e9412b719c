package main

import (
	"bytes"
	"encoding/json"
	"fmt"
	"log"
	"strings"
)

// document, entry and relation are the parts of SPDX 2.3 that a list of linked
// modules needs (ISO/IEC 5962; field names as in the standard's JSON).
type document struct {
	Version       string     `json:"spdxVersion"`
	Licence       string     `json:"dataLicense"`
	ID            string     `json:"SPDXID"`
	Name          string     `json:"name"`
	Namespace     string     `json:"documentNamespace"`
	Creation      creation   `json:"creationInfo"`
	Packages      []entry    `json:"packages"`
	Relationships []relation `json:"relationships"`
}

type creation struct {
	Created  string   `json:"created"`
	Creators []string `json:"creators"`
}

type entry struct {
	ID        string      `json:"SPDXID"`
	Name      string      `json:"name"`
	Version   string      `json:"versionInfo"`
	Download  string      `json:"downloadLocation"`
	Analyzed  bool        `json:"filesAnalyzed"`
	Declared  string      `json:"licenseDeclared"`
	Concluded string      `json:"licenseConcluded"`
	Copyright string      `json:"copyrightText"`
	Refs      []reference `json:"externalRefs,omitempty"`
}

type reference struct {
	Category string `json:"referenceCategory"`
	Type     string `json:"referenceType"`
	Locator  string `json:"referenceLocator"`
}

type relation struct {
	From string `json:"spdxElementId"`
	Kind string `json:"relationshipType"`
	To   string `json:"relatedSpdxElement"`
}

func idOf(i int) string { return fmt.Sprintf("SPDXRef-%d", i) }

// billOf returns the bill of materials. Its time is that of the last commit, so
// that the same tree gives the same bytes.
func billOf(modules []module, version string) []byte {
	made, err := output("", "git", "show", "-s", "--format=%cd", "--date=format-local:%Y-%m-%dT%H:%M:%SZ")
	if err != nil {
		log.Fatal(err)
	}
	goVersion, err := output("", "go", "env", "GOVERSION")
	if err != nil {
		log.Fatal(err)
	}
	d := document{
		Version: "SPDX-2.3", Licence: "CC0-1.0", ID: "SPDXRef-DOCUMENT", Name: "drawdown " + version,
		Namespace:     "urn:drawdown:bill:" + version,
		Creation:      creation{strings.TrimSpace(made), []string{"Tool: drawdown-licences"}},
		Relationships: []relation{{"SPDXRef-DOCUMENT", "DESCRIBES", idOf(0)}},
	}
	for i, m := range modules {
		e := entry{
			ID: idOf(i), Name: m.path, Version: m.version, Download: "NOASSERTION",
			Declared: m.licence, Concluded: m.licence, Copyright: "NOASSERTION",
			Refs: []reference{{"PACKAGE-MANAGER", "purl", "pkg:golang/" + m.path + "@" + m.version}},
		}
		switch i {
		case 0:
			e.Version, e.Refs = version, nil
		case 1:
			e.Version, e.Refs = strings.TrimSpace(goVersion), nil
		}
		d.Packages = append(d.Packages, e)
		if i > 0 {
			d.Relationships = append(d.Relationships, relation{e.ID, "STATIC_LINK", idOf(0)})
		}
	}
	var text bytes.Buffer
	encoder := json.NewEncoder(&text)
	encoder.SetIndent("", "  ")
	if err := encoder.Encode(d); err != nil {
		log.Fatal(err)
	}
	return text.Bytes()
}
