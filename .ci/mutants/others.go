package main

import (
	"go/ast"
	"go/token"
	"go/types"
)

// compared holds the opposite of a comparison, then its boundary shifted.
var compared = map[token.Token][]string{
	token.LSS: {">=", "<="},
	token.LEQ: {">", "<"},
	token.GTR: {"<=", ">="},
	token.GEQ: {"<", ">"},
	token.EQL: {"!="},
	token.NEQ: {"=="},
}

var joined = map[token.Token]string{token.LAND: "||", token.LOR: "&&"}

var reckoned = map[token.Token]string{
	token.ADD: "-",
	token.SUB: "+",
	token.MUL: "/",
	token.QUO: "*",
	token.REM: "*",
}

// others writes what an expression may become.
func (w *writer) others(e ast.Expr) []string {
	if w.constant(e) {
		return w.otherConstant(e)
	}
	switch e := e.(type) {
	case *ast.BinaryExpr:
		return w.otherOperators(e)
	case *ast.UnaryExpr:
		if e.Op == token.NOT || e.Op == token.SUB {
			return []string{w.text(e.X)}
		}
	}
	return nil
}

func (w *writer) otherOperators(e *ast.BinaryExpr) []string {
	var others []string
	with := func(operator string) {
		others = append(others, w.text(e.X)+" "+operator+" "+w.text(e.Y))
	}
	for _, operator := range compared[e.Op] {
		with(operator)
	}
	if operator, ok := joined[e.Op]; ok {
		with(operator)
	}
	t, ok := w.info.Types[e].Type.Underlying().(*types.Basic)
	if operator, known := reckoned[e.Op]; ok && known && t.Info()&types.IsNumeric != 0 {
		with(operator)
	}
	return others
}

// otherConstant is a tenth more of a fraction, one more of a whole number.
// Codes and choices have types of their own and stay.
func (w *writer) otherConstant(e ast.Expr) []string {
	t, ok := w.info.Types[e].Type.Underlying().(*types.Basic)
	if !ok || w.info.Types[e].Value.String() == "0" {
		return nil
	}
	switch {
	case t.Info()&types.IsFloat != 0:
		return []string{"(" + w.text(e) + ") * 1.1"}
	case w.text(e) == "math.MaxInt": // there is none more
		return nil
	case w.info.Types[e].Type == types.Typ[types.Int]:
		return []string{"(" + w.text(e) + ") + 1"}
	}
	return nil
}
