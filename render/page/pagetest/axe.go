package pagetest

import (
	"os"
	"sync"

	"drawdown/geometry/testkit"
)

// axe is the script that checks accessibility: axe-core, which .ci/tools
// installs outside the tree.
var axe = sync.OnceValue(func() string {
	script, err := os.ReadFile(os.Getenv("DRAWDOWN_AXE"))
	if err != nil {
		return ""
	}
	return string(script)
})

// Barriers lists accessibility problems of the open page; none if the script is
// not installed. A plain run checks only the dialog if one is open: the page behind
// it, which cannot be reached, is a screen of its own.
func Barriers(one *Tab) []string {
	one.T.Helper()
	if axe() == "" {
		return nil
	}
	seen := `document.querySelector("dialog[open]") || document`
	if testkit.Full() {
		seen = `document`
	}
	Evaluate[any](one, axe()+`; null`)
	Evaluate[any](one, `window.found = null; axe.run(`+seen+`, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}).then((r) => {
		window.found = r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.html.slice(0, 160) + " " + n.failureSummary.slice(0, 200)));
		window.passed = r.passes.length; }); null`)
	one.Until(`window.found !== null`)
	found := Evaluate[[]string](one, `found`)
	if Evaluate[int](one, `passed`) < 5 {
		found = append(found, "hardly a rule was checked")
	}
	return found
}
