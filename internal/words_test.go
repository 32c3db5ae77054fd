//go:build !js

package internal_test

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"path"
	"path/filepath"
	"strings"
	"testing"
)

// checkedPackages type-checks the packages of this program from their sources, those
// of the language from what the compiler exports.
type checkedPackages struct {
	files  *token.FileSet
	others types.Importer
	done   map[string]*types.Package
	syntax map[string][]*ast.File
	info   *types.Info
}

func (c *checkedPackages) Import(name string) (*types.Package, error) {
	folder, own := strings.CutPrefix(name, "tidysump/")
	if !own {
		return c.others.Import(name)
	}
	if p := c.done[name]; p != nil {
		return p, nil
	}
	paths, err := filepath.Glob(filepath.Join("..", filepath.FromSlash(folder), "*.go"))
	if err != nil {
		return nil, err
	}
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		f, err := parser.ParseFile(c.files, path, nil, parser.SkipObjectResolution)
		if err != nil {
			return nil, err
		}
		c.syntax[name] = append(c.syntax[name], f)
	}
	p, err := (&types.Config{Importer: c}).Check(name, c.files, c.syntax[name], c.info)
	c.done[name] = p
	return p, err
}

// A word of a card's fixed lists is a constant of package card: no other room
// spells one. "" is no word, it is what is not known.
func TestCardWords_AreSpeltInOnePlace(t *testing.T) {
	const door, cards = "tidysump/internal/core", "tidysump/internal/card"
	files := token.NewFileSet()
	c := &checkedPackages{files: files, others: importer.ForCompiler(files, "gc", nil), done: map[string]*types.Package{},
		syntax: map[string][]*ast.File{}, info: &types.Info{Types: map[ast.Expr]types.TypeAndValue{}}}
	if _, err := c.Import(door); err != nil {
		t.Fatal(err)
	}
	words := 0
	for name, list := range c.syntax {
		for _, file := range list {
			ast.Inspect(file, func(n ast.Node) bool {
				lit, ok := n.(*ast.BasicLit)
				if !ok || lit.Kind != token.STRING || lit.Value == `""` {
					return true
				}
				named, ok := c.info.Types[lit].Type.(*types.Named)
				if !ok || named.Obj().Pkg() == nil || named.Obj().Pkg().Path() != cards {
					return true
				}
				if name == cards {
					words++
				} else if at := files.Position(lit.Pos()); path.Base(at.Filename) != "figure.go" || named.Obj().Name() != "Standing" {
					t.Errorf("%s: %s is a card's %s: use the constant", at, lit.Value, named.Obj().Name())
				}
				return true
			})
		}
	}
	if words < 50 {
		t.Errorf("only %d words of cards were seen", words)
	}
}
