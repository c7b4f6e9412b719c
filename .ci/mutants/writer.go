package main

import (
	"fmt"
	"go/ast"
	"go/token"
	"go/types"
	"strings"
)

// A writer writes a file again with a switch round each place that can change.
type writer struct {
	set     *token.FileSet
	source  []byte
	info    *types.Info
	own     *types.Package
	imports map[string]bool
	changes []string // all of the package so far; the number of a change is its place + 1

	results []*ast.FieldList // of the functions round the place, innermost last
}

// edit puts text in the place of from to to.
type edit struct {
	from, to token.Pos
	text     string
}

func (w *writer) file(file *ast.File) string {
	var edits []edit
	for _, d := range file.Decls {
		edits = append(edits, w.below(d)...)
	}
	return w.join(file.FileStart, file.FileEnd, edits)
}

// below collects the edits of a node's children, and of the node if it changes.
func (w *writer) below(node ast.Node) []edit {
	switch n := node.(type) {
	case *ast.FuncDecl:
		if n.Body == nil {
			return nil
		}
		return w.function(n.Type, n.Body)
	case *ast.FuncLit:
		return w.function(n.Type, n.Body)
	case *ast.GenDecl:
		if n.Tok != token.VAR {
			return nil
		}
	case *ast.ValueSpec:
		return w.all(exprs(n.Values))
	case *ast.CompositeLit:
		return w.all(exprs(n.Elts))
	case *ast.KeyValueExpr:
		return w.below(n.Value)
	case *ast.ArrayType, *ast.MapType, *ast.StructType, *ast.FuncType, *ast.InterfaceType:
		return nil
	case *ast.IndexExpr:
		if w.constant(n.Index) {
			return w.below(n.X)
		}
	case *ast.SliceExpr:
		return w.below(n.X)
	case *ast.CallExpr:
		if w.text(n.Fun) == "math.Inf" { // any positive number gives the same
			return nil
		}
	case *ast.LabeledStmt:
		return w.children(n.Stmt)
	}
	if e, ok := node.(ast.Expr); ok {
		return w.expression(e)
	}
	return w.children(node)
}

func (w *writer) function(t *ast.FuncType, body *ast.BlockStmt) []edit {
	w.results = append(w.results, t.Results)
	defer func() { w.results = w.results[:len(w.results)-1] }()
	return w.below(body)
}

// children collects the edits below a node, and drops statements of a list.
func (w *writer) children(node ast.Node) []edit {
	switch n := node.(type) {
	case *ast.BlockStmt:
		return w.statements(n.List)
	case *ast.CaseClause:
		return append(w.all(exprs(n.List)), w.statements(n.Body)...)
	}
	var edits []edit
	ast.Inspect(node, func(child ast.Node) bool {
		if child == nil || child == node {
			return true
		}
		edits = append(edits, w.below(child)...)
		return false
	})
	return edits
}

func (w *writer) all(nodes []ast.Node) []edit {
	var edits []edit
	for _, n := range nodes {
		edits = append(edits, w.below(n)...)
	}
	return edits
}

func exprs(list []ast.Expr) []ast.Node {
	nodes := make([]ast.Node, len(list))
	for i, e := range list {
		nodes[i] = e
	}
	return nodes
}

// statements drops each statement that others can do without.
func (w *writer) statements(list []ast.Stmt) []edit {
	var edits []edit
	for _, s := range list {
		if r, ok := s.(*ast.ReturnStmt); ok {
			edits = append(edits, w.returns(r)...)
			continue
		}
		number := 0
		if droppable(s) {
			number = w.change(s, "drop "+w.text(s))
		}
		inner := w.below(s)
		if number > 0 {
			text := fmt.Sprintf("if mutantOn != %d { %s }", number, w.join(s.Pos(), s.End(), inner))
			inner = []edit{{s.Pos(), s.End(), text}}
		}
		edits = append(edits, inner...)
	}
	return edits
}

func droppable(s ast.Stmt) bool {
	switch s := s.(type) {
	case *ast.AssignStmt:
		return s.Tok != token.DEFINE
	case *ast.IncDecStmt:
		return true
	case *ast.BranchStmt:
		return s.Tok == token.CONTINUE || s.Tok == token.BREAK
	case *ast.ExprStmt:
		call, ok := s.X.(*ast.CallExpr)
		if !ok {
			return false
		}
		name, ok := call.Fun.(*ast.Ident)
		return !ok || name.Name != "panic"
	}
	return false
}

// returns gives back nothing instead of something.
func (w *writer) returns(r *ast.ReturnStmt) []edit {
	empty := w.nothing(r)
	number := 0
	if empty != "" {
		number = w.change(r, w.text(r)+" → return "+empty)
	}
	inner := w.all(exprs(r.Results))
	if number == 0 {
		return inner
	}
	text := fmt.Sprintf("if mutantOn == %d { return %s }\n%s", number, empty, w.join(r.Pos(), r.End(), inner))
	return []edit{{r.Pos(), r.End(), text}}
}

// nothing writes the empty values of the function round a return, or "" if it
// gives those back already.
func (w *writer) nothing(r *ast.ReturnStmt) string {
	list := w.results[len(w.results)-1]
	if list == nil || len(r.Results) == 0 {
		return ""
	}
	if len(r.Results) == 1 && w.text(r.Results[0]) == "false" {
		return "true"
	}
	same := true
	for _, e := range r.Results {
		text := w.text(e)
		same = same && (text == "nil" || text == "0" || text == `""` || text == "false" || strings.HasSuffix(text, "{}"))
	}
	if same {
		return ""
	}
	var empty []string
	for _, f := range list.List {
		for range max(1, len(f.Names)) {
			empty = append(empty, "*new("+w.text(f.Type)+")")
		}
	}
	return strings.Join(empty, ", ")
}

// expression puts the other values of an expression before its own.
func (w *writer) expression(e ast.Expr) []edit {
	known := w.info.Types[e]
	name, nameable := w.typeName(known.Type)
	others := w.others(e)
	var inner []edit
	if !w.constant(e) {
		inner = w.children(e)
	}
	if len(others) == 0 || !nameable {
		return inner
	}
	var text strings.Builder
	fmt.Fprintf(&text, "func() %s { switch mutantOn {", name)
	for _, o := range others {
		fmt.Fprintf(&text, "\ncase %d: return %s", w.change(e, w.text(e)+" → "+o), o)
	}
	fmt.Fprintf(&text, "\n}\nreturn %s }()", w.join(e.Pos(), e.End(), inner))
	return []edit{{e.Pos(), e.End(), text.String()}}
}

func (w *writer) constant(e ast.Expr) bool { return w.info.Types[e].Value != nil }

// typeName names a basic type, or one of this package or of an imported one.
func (w *writer) typeName(t types.Type) (string, bool) {
	switch t := t.(type) {
	case *types.Basic:
		if t.Kind() == types.UntypedBool {
			return "bool", true
		}
		return t.Name(), t.Info()&types.IsUntyped == 0
	case *types.Named:
		p := t.Obj().Pkg()
		if t.TypeArgs().Len() > 0 || p == nil || p != w.own && !w.imports[p.Path()] {
			return "", false
		}
	case *types.TypeParam:
	default:
		return "", false
	}
	return types.TypeString(t, func(p *types.Package) string {
		if p == w.own {
			return ""
		}
		return p.Name()
	}), true
}

func (w *writer) change(at ast.Node, what string) int {
	p := w.set.Position(at.Pos())
	what = strings.Join(strings.Fields(what), " ")
	w.changes = append(w.changes, fmt.Sprintf("%d %s:%d:%d: %s", len(w.changes), p.Filename, p.Line, p.Column, what))
	return len(w.changes)
}

func (w *writer) text(n ast.Node) string { return string(w.source[w.at(n.Pos()):w.at(n.End())]) }

func (w *writer) at(p token.Pos) int { return w.set.Position(p).Offset }

// join writes the source from one place to another with its edits, which are
// in order and do not overlap.
func (w *writer) join(from, to token.Pos, edits []edit) string {
	var text strings.Builder
	for _, e := range edits {
		text.Write(w.source[w.at(from):w.at(e.from)])
		text.WriteString(e.text)
		from = e.to
	}
	text.Write(w.source[w.at(from):w.at(to)])
	return text.String()
}
