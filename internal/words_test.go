//go:build !js

package internal_test

import (
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io/fs"
	"maps"
	"path"
	"path/filepath"
	"slices"
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

// A card is checked once for each call: by who takes it in, and by the check that a
// person asks for. All else takes a card that was checked.
func TestCards_AreCheckedOnce(t *testing.T) {
	want := map[string]string{
		"internal/core/card.go":     "Accept Check", // of a list; and what is being written
		"internal/core/find.go":     "Accept",       // of which something is asked
		"internal/core/job.go":      "Accept",       // of a plan or a job
		"internal/core/lay.go":      "Accept",       // that figures are to lie over
		"internal/core/survey.go":   "Accept",       // of many jobs
		"internal/core/take.go":     "Accept",       // that readings were taken into
		"internal/core/roadside.go": "Accept",       // of a bike that stands
		"internal/job/trace.go":     "Accept",       // of an earlier job
		"internal/place/take.go":    "Check Check",  // as handed in, and with what can be used
	}
	got := map[string]string{}
	err := filepath.WalkDir("..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(filepath.Dir(path), "test") {
			return err
		}
		f, err := parser.ParseFile(token.NewFileSet(), path, nil, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		var calls []string
		ast.Inspect(f, func(n ast.Node) bool {
			if s, ok := n.(*ast.SelectorExpr); ok && (s.Sel.Name == "Check" || s.Sel.Name == "Accept") {
				if room, ok := s.X.(*ast.Ident); ok && room.Name == "card" {
					calls = append(calls, s.Sel.Name)
				}
			}
			return true
		})
		if len(calls) > 0 {
			slices.Sort(calls)
			got[strings.TrimPrefix(filepath.ToSlash(path), "../")] = strings.Join(calls, " ")
		}
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
	if !maps.Equal(got, want) {
		t.Errorf("cards are checked in %v, and should be in %v", got, want)
	}
}
