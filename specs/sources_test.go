package specs_test

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"
)

// goSource is a Go file.
type goSource struct {
	path string
	file *ast.File
}

// goSources are the Go files of folders without their tests.
func goSources(t *testing.T, folders ...string) []goSource {
	t.Helper()
	ofTests := func(s goSource) bool { // or what only tests use
		return strings.HasSuffix(s.path, "_test.go") || strings.HasSuffix(filepath.Dir(s.path), "test")
	}
	return slices.DeleteFunc(allGoSources(t, folders...), ofTests)
}

// allGoSources are the Go files with their tests.
func allGoSources(t *testing.T, folders ...string) []goSource {
	t.Helper()
	var list []goSource
	for _, path := range filesOf(t, ".go", folders...) {
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			t.Fatal(err)
		}
		list = append(list, goSource{filepath.ToSlash(path), f})
	}
	return list
}

// filesOf lists the files of that extension below folders of the repository.
func filesOf(t *testing.T, ext string, folders ...string) []string {
	t.Helper()
	var list []string
	for _, folder := range folders {
		err := filepath.WalkDir(filepath.Join("..", filepath.FromSlash(folder)), func(path string, d fs.DirEntry, err error) error {
			if err == nil && !d.IsDir() && filepath.Ext(path) == ext && !strings.HasSuffix(path, ".test.js") {
				list = append(list, path)
			}
			return err
		})
		if err != nil {
			t.Fatal(err)
		}
	}
	if len(list) == 0 {
		t.Fatalf("no %s files in %v", ext, folders)
	}
	return list
}

// literal gives the value of a string literal; "" for anything else.
func literal(e ast.Expr) string {
	lit, ok := e.(*ast.BasicLit)
	if !ok || lit.Kind != token.STRING {
		return ""
	}
	s, err := strconv.Unquote(lit.Value)
	if err != nil {
		return ""
	}
	return s
}

// literals lists every string literal of Go files but import paths.
func literals(list []goSource) []string {
	var out []string
	for _, s := range list {
		ast.Inspect(s.file, func(n ast.Node) bool {
			if _, isImport := n.(*ast.ImportSpec); isImport {
				return false
			}
			if e, ok := n.(ast.Expr); ok {
				if text := literal(e); text != "" {
					out = append(out, text)
				}
			}
			return true
		})
	}
	return out
}

// arguments lists the string literals that calls of a function or method of that
// name have as their nth argument.
func arguments(list []goSource, name string, nth int) []string {
	var out []string
	for _, s := range list {
		ast.Inspect(s.file, func(n ast.Node) bool {
			call, ok := n.(*ast.CallExpr)
			if ok && calledName(call) == name && nth < len(call.Args) {
				if text := literal(call.Args[nth]); text != "" {
					out = append(out, text)
				}
			}
			return true
		})
	}
	return out
}

func calledName(call *ast.CallExpr) string {
	switch f := call.Fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// fields lists the string literals given to a field of that name, in a
// composite literal (also within a slice) or by an assignment.
func fields(list []goSource, name string) []string {
	var out []string
	for _, s := range list {
		ast.Inspect(s.file, func(n ast.Node) bool {
			switch f := n.(type) {
			case *ast.KeyValueExpr:
				if key, ok := f.Key.(*ast.Ident); ok && key.Name == name {
					out = append(out, inside(f.Value)...)
				}
			case *ast.AssignStmt:
				if left, ok := f.Lhs[0].(*ast.SelectorExpr); ok && left.Sel.Name == name {
					out = append(out, inside(f.Rhs[0])...)
				}
			}
			return true
		})
	}
	return out
}

func inside(e ast.Expr) []string {
	if text := literal(e); text != "" {
		return []string{text}
	}
	var out []string
	if c, ok := e.(*ast.CompositeLit); ok {
		for _, element := range c.Elts {
			out = append(out, inside(element)...)
		}
	}
	return out
}

func readText(t *testing.T, path string) string {
	t.Helper()
	text, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}
