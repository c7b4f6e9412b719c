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
		t.Skip("DRAWDOWN_AXE does not name axe.min.js: see .ci/tools")
	}
	return string(script)
}

// No page breaks a rule of WCAG 2.2, A or AA, that a program can check. A plain run
// checks each screen once, in one of the schemes.
func TestAccessible(t *testing.T) {
	t.Parallel()
	script := axeFile(t)
	ctx := browser(t)
	b := newBench(t)
	list := screens(b)
	for k, scheme := range []string{"light", "dark", "contrast"} {
		one := newTab(t, ctx, devices[k])
		one.scheme(scheme)
		one.open(b.URL + "/settings")
		if scheme == "contrast" {
			evaluate[any](one, `document.cookie = "drawdown-scheme=contrast; Path=/"; null`)
		}
		for n, s := range list {
			if n%3 != k && !testkit.Full() {
				continue
			}
			one.language([]string{"en", "de", "fr", "es"}[n%4])
			one.open(b.URL + s.path)
			if evaluate[bool](one, `document.body.classList.contains("run")`) {
				one.until(`document.body.dataset.ready === "yes"`)
			}
			if s.then != "" {
				evaluate[any](one, s.then+`; null`)
			}
			evaluate[any](one, script+`; null`)
			evaluate[any](one, `window.found = null; axe.run(document, {runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]}).then((r) => {
				window.found = r.violations.flatMap((v) => v.nodes.map((n) => v.id + ": " + n.html.slice(0, 160) + " " + n.failureSummary.slice(0, 200)));
				window.passed = r.passes.length; }); null`)
			one.until(`window.found !== null`)
			for _, fault := range evaluate[[]string](one, `found`) {
				t.Errorf("%s, %s: %s", s.name, scheme, fault)
			}
			if evaluate[int](one, `passed`) < 5 {
				t.Errorf("%s: hardly a rule was checked", s.name)
			}
		}
		evaluate[any](one, `document.cookie = "drawdown-scheme=; Path=/; Max-Age=0"; null`)
	}
}
