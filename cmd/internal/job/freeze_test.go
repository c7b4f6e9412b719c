package job

import (
	"os"
	"path/filepath"
	"slices"
	"testing"

	"github.com/google/go-cmp/cmp"

	"drawdown/sequence/plan"
)

// The frozen files give the same plan again, for every built-in file and for
// each joint of a machine.
func TestThawedIsAsFrozen(t *testing.T) {
	for _, name := range []string{"p4-head", "p4-manifold", "p4-engine"} {
		made, err := FreezeBuiltin(name)
		if err != nil || !made.Sound() {
			t.Fatalf("%s: %v %v", name, err, made.Problems)
		}
		again, err := Thaw(made.Files, name)
		if err != nil || again.Plan.Fingerprint != made.Plan.Fingerprint || again.Overhaul.Fingerprint != made.Overhaul.Fingerprint {
			t.Errorf("%s: %v", name, err)
		}
		for _, j := range made.Overhaul.Joints() {
			joint, names := again.Joint(j.Name)
			if joint == nil || !slices.Contains(names, j.Name) && len(names) > 0 {
				t.Errorf("%s: no joint %s", name, j.Name)
				continue
			}
			alone, err := Thaw(joint.Files, joint.Name)
			if err != nil {
				t.Errorf("%s of %s: %v, files %v", j.Name, name, err, len(joint.Files))
				continue
			}
			if diff := cmp.Diff(j.Plan.Steps(j.Plan.Tighten), alone.Plan.Steps(alone.Plan.Tighten)); alone.Plan.Name != j.Name || alone.Plan.Fingerprint != j.Fingerprint || diff != "" {
				t.Errorf("%s of %s is another: %s", j.Name, name, diff)
			}
		}
	}
}

const lidText = "drawdown: 1\ntitle: Lid\nkinds: {main: {thread: M8}}\nfasteners: [{row: {count: 4, pitch: 40, kind: main, id: A}}]\ntighten: {stages: [{torque: 20 N·m}]}\n"

// folder writes files into a new folder, by path.
func folder(t *testing.T, files map[string]string) *os.Root {
	t.Helper()
	path := t.TempDir()
	for name, text := range files {
		os.MkdirAll(filepath.Join(path, filepath.Dir(name)), 0o777)
		if err := os.WriteFile(filepath.Join(path, name), []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
	}
	root, err := os.OpenRoot(path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root
}

// A file of the shop is frozen with its bases: later changes of these do not
// affect it.
func TestFrozenWithItsBases(t *testing.T) {
	root := folder(t, map[string]string{
		"right.yaml":          "drawdown: 1\ntitle: Right lid\nextends: bases/middle.yaml\n",
		"bases/middle.yaml":   "drawdown: 1\ntitle: Middle\nextends: deep/lid.yaml\nrevision: 2\n",
		"bases/deep/lid.yaml": lidText,
	})
	made, err := FreezeIn(root, "right")
	if err != nil || !made.Sound() || len(made.Files) != 3 {
		t.Fatalf("%v %v %d files", err, made.Problems, len(made.Files))
	}
	root.WriteFile("bases/deep/lid.yaml", []byte("broken: ["), 0o666)
	again, err := Thaw(made.Files, "right")
	if err != nil || !again.Sound() || again.Plan.Fingerprint != made.Plan.Fingerprint || again.Plan.Name != "right" || again.Plan.Title != "Right lid" {
		t.Errorf("%v %v %q", err, again.Problems, again.Plan.Title)
	}
	if changed, err := FreezeIn(root, "right"); err != nil || changed.Sound() {
		t.Errorf("the changed file: %v, sound %v", err, changed.Sound())
	}
}

// A file of the shop can only name files inside the shop's folder, whatever the
// path or link.
func TestFilesStayInTheFolder(t *testing.T) {
	outside := filepath.Join(t.TempDir(), "lid.yaml")
	if err := os.WriteFile(outside, []byte(lidText), 0o666); err != nil {
		t.Fatal(err)
	}
	root := folder(t, map[string]string{"inside/a.yaml": "drawdown: 1\ntitle: A\n", "near.yaml": "drawdown: 1\ntitle: Near\nextends: lid\n"})
	if err := os.Symlink(outside, filepath.Join(root.Name(), "link.yaml")); err != nil {
		t.Fatal(err)
	}
	for name, extends := range map[string]string{
		"whole": outside, "up": "../" + filepath.Base(filepath.Dir(outside)) + "/lid.yaml", "round": "inside/../../x.yaml", "linked": "link.yaml",
	} {
		root.WriteFile(name+".yaml", []byte("drawdown: 1\ntitle: Thief\nextends: "+extends+"\n"), 0o666)
		if made, err := FreezeIn(root, name); err != nil || made.Sound() {
			t.Errorf("%s: %v, sound %v", extends, err, made.Sound())
		}
	}
	for _, name := range []string{"link", "../" + filepath.Base(filepath.Dir(outside)) + "/lid"} {
		if made, err := FreezeIn(root, name); err == nil {
			t.Errorf("%s was read: %v", name, made.Plan.Title)
		}
	}
}

func TestShopNames(t *testing.T) {
	root := folder(t, map[string]string{
		"lid.yaml": lidText, "broken.yml": "drawdown: 1\nfasteners: [\n", "engine.yaml": "strip: [lid.yaml]\nmachine: Pump\n",
		"shop.yaml": "wrenches: [{name: a, to: 60 N·m}]\n", "notes.txt": lidText, "other.yaml": "a: b\n", ".hidden.yaml": lidText, "below/deep.yaml": lidText,
	})
	parts, wrenches, err := ShopNames(root)
	if diff := cmp.Diff([]string{"broken", "engine", "lid"}, parts); err != nil || diff != "" {
		t.Errorf("%v %s", err, diff)
	}
	if diff := cmp.Diff([]string{"shop.yaml"}, wrenches); diff != "" {
		t.Error(diff)
	}
}

// Loosening requires no acceptance; tightening requires it for the warnings of
// the check and for checks that could not be made.
func TestToAccept(t *testing.T) {
	made, err := FreezeBuiltin("p4-head")
	if err != nil {
		t.Fatal(err)
	}
	list := made.ToAccept()
	if len(list) == 0 || list[len(list)-1].Code != plan.GasketNotJudged {
		t.Errorf("%v", list)
	}
}
