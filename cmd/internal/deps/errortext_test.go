package deps

import (
	"fmt"
	"go/ast"
	"go/token"
	"slices"
	"testing"
)

// asksAbout lists the functions of package strings that are used for decisions
// about a text.
var asksAbout = []string{
	"Compare", "Contains", "ContainsAny", "ContainsFunc", "ContainsRune", "Count", "Cut", "CutPrefix", "CutSuffix",
	"EqualFold", "HasPrefix", "HasSuffix", "Index", "IndexAny", "IndexByte", "LastIndex",
}

// No code decides by the text of an error: it uses errors.Is or errors.As, so
// that sentences can be changed and translated.
func TestNothingIsDecidedByTheTextOfAnError(t *testing.T) {
	for _, r := range rooms(t) {
		for _, fault := range decidedByText(r) {
			t.Error(fault)
		}
	}
}

func decidedByText(r room) (faults []string) {
	for _, file := range r.files {
		ast.Inspect(file, func(n ast.Node) bool {
			switch n := n.(type) {
			case *ast.CallExpr:
				if asks(n.Fun) && slices.ContainsFunc(n.Args, isErrorText) {
					faults = append(faults, fmt.Sprint(r.set.Position(n.Pos()), ": decides by the text of an error; ask errors.Is or errors.As"))
				}
			case *ast.BinaryExpr:
				if (n.Op == token.EQL || n.Op == token.NEQ) && (isErrorText(n.X) || isErrorText(n.Y)) {
					faults = append(faults, fmt.Sprint(r.set.Position(n.Pos()), ": compares the text of an error; ask errors.Is or errors.As"))
				}
			case *ast.SwitchStmt:
				if n.Tag != nil && isErrorText(n.Tag) {
					faults = append(faults, fmt.Sprint(r.set.Position(n.Pos()), ": chooses by the text of an error; ask errors.Is or errors.As"))
				}
			}
			return true
		})
	}
	slices.Sort(faults)
	return faults
}

// asks reports whether a function is one of those of strings that decide by a
// text.
func asks(fun ast.Expr) bool {
	sel, ok := fun.(*ast.SelectorExpr)
	if !ok {
		return false
	}
	of, ok := sel.X.(*ast.Ident)
	return ok && of.Name == "strings" && slices.Contains(asksAbout, sel.Sel.Name)
}

// isErrorText reports whether an expression contains a call of a method Error
// without arguments.
func isErrorText(e ast.Expr) bool {
	found := false
	ast.Inspect(e, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return true
		}
		sel, ok := call.Fun.(*ast.SelectorExpr)
		found = found || ok && sel.Sel.Name == "Error" && len(call.Args) == 0
		return true
	})
	return found
}

func TestDecisionsByTextAreFound(t *testing.T) {
	for code, want := range map[string]int{
		`if strings.Contains(err.Error(), "x") {}`:                   1,
		`_ = strings.HasSuffix(strings.ToLower(err.Error()), "EOF")`: 1,
		`if err.Error() == "x" {}`:                                   1,
		`switch err.Error() { case "x": }`:                           1,
		`_ = strings.Replace(err.Error(), "a", "b", 1)`:              0,
		`fail(err.Error())`:                                          0,
		`if errors.Is(err, io.EOF) {}`:                               0,
	} {
		r := roomOf(t, "geometry/a.go", "package geometry\nfunc f() {\n"+code+"\n}")
		if got := decidedByText(r); len(got) != want {
			t.Errorf("%s: %q, want %d faults", code, got, want)
		}
	}
}
