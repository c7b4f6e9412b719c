package pagetest

import (
	"os"
	"testing"

	"drawdown/geometry/testkit"
)

// axeFile gives the script that checks pages for people who see or hear little, or
// work by keys alone: axe-core, which .ci/tools installs outside of the tree.
func axeFile(t *testing.T) string {
	t.Helper()
	script, err := os.ReadFile(os.Getenv("DRAWDOWN_AXE"))
	if err != nil {
		t.Skip("not installed: axe-core, whose axe.min.js DRAWDOWN_AXE names; see .ci/tools")
	}
	return string(script)
}

// No page breaks a rule of WCAG 2.2, A or AA, that a program can check. A plain run
// checks each screen once, in one of the schemes.
func TestAccessible(t *testing.T) {
	t.Parallel()
	script := axeFile(t)
	ctx := Browser(t)
	b := newBench(t)
	list := screens(b)
	for k, scheme := range []string{"light", "dark", "contrast"} {
		one := NewTab(t, ctx, Devices[k])
		one.Scheme(scheme)
		one.Open(b.URL + "/settings")
		if scheme == "contrast" {
			Evaluate[any](one, `document.cookie = "drawdown-scheme=contrast; Path=/"; null`)
		}
		for n, s := range list {
			if n%3 != k && !testkit.Full() {
				continue
			}
			one.Language([]string{"en", "de", "fr", "es"}[n%4])
			one.Open(b.URL + s.path)
			if Evaluate[bool](one, `document.body.classList.contains("run")`) {
				one.Until(`document.body.dataset.ready === "yes"`)
			}
			if s.then != "" {
				Evaluate[any](one, s.then+`; null`)
			}
			Evaluate[any](one, script+`; null`)
			Evaluate[any](one, `window.found = null; axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}).then((r) => {
				window.found = r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.html.slice(0, 160) + " " + n.failureSummary.slice(0, 200)));
				window.passed = r.passes.length; }); null`)
			one.Until(`window.found !== null`)
			for _, fault := range Evaluate[[]string](one, `found`) {
				t.Errorf("%s, %s: %s", s.name, scheme, fault)
			}
			if Evaluate[int](one, `passed`) < 5 {
				t.Errorf("%s: hardly a rule was checked", s.name)
			}
		}
		Evaluate[any](one, `document.cookie = "drawdown-scheme=; Path=/; Max-Age=0"; null`)
	}
}
