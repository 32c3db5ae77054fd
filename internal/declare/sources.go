package main

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
)

// sources are what the program's Go files say that no running program knows: the
// comments of types and fields, and the constants of a type.
type sources struct {
	types   map[string]*goType  // by package and name, "card.Bolt"
	words   map[string][]string // constants of a type of texts, in the order of the files
	methods map[string]*ast.FuncDecl
}

// goType is a type as it is written.
type goType struct {
	doc    string
	of     string // the type that it stands for, finding.Finding of wire.findingRecord
	fields map[string]goField
}

type goField struct {
	doc    string
	record string // its type where that is a named one, "card.Bolt"
}

// readSources reads all Go files below internal but the tests.
func readSources(root string) (*sources, error) {
	s := &sources{map[string]*goType{}, map[string][]string{}, map[string]*ast.FuncDecl{}}
	files := token.NewFileSet()
	return s, filepath.WalkDir(filepath.Join(root, "internal"), func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		file, err := parser.ParseFile(files, path, nil, parser.ParseComments)
		if err != nil {
			return err
		}
		s.add(file)
		return nil
	})
}

func (s *sources) add(file *ast.File) {
	pkg := file.Name.Name
	for _, decl := range file.Decls {
		switch d := decl.(type) {
		case *ast.FuncDecl:
			if d.Name.Name == "Members" && d.Recv != nil {
				s.methods[named(pkg, d.Recv.List[0].Type)] = d
			}
		case *ast.GenDecl:
			for _, spec := range d.Specs {
				switch spec := spec.(type) {
				case *ast.TypeSpec:
					s.types[pkg+"."+spec.Name.Name] = typeOf(pkg, d, spec)
				case *ast.ValueSpec:
					s.addWords(pkg, d.Tok, spec)
				}
			}
		}
	}
}

func typeOf(pkg string, d *ast.GenDecl, spec *ast.TypeSpec) *goType {
	t := &goType{doc: text(spec.Doc, d.Doc), fields: map[string]goField{}}
	body, ok := spec.Type.(*ast.StructType)
	if !ok {
		t.of = named(pkg, spec.Type)
		return t
	}
	for _, f := range body.Fields.List {
		field := goField{text(f.Doc, f.Comment), named(pkg, f.Type)}
		for _, name := range f.Names {
			t.fields[name.Name] = field
		}
		if f.Names == nil { // embedded: its type's name is its own
			t.fields[field.record[strings.IndexByte(field.record, '.')+1:]] = field
		}
	}
	return t
}

// addWords takes in constants that have a type of their own and a text.
func (s *sources) addWords(pkg string, tok token.Token, spec *ast.ValueSpec) {
	if tok != token.CONST || spec.Type == nil {
		return
	}
	for _, v := range spec.Values {
		if lit, ok := v.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if word, err := strconv.Unquote(lit.Value); err == nil {
				name := named(pkg, spec.Type)
				s.words[name] = append(s.words[name], word)
			}
		}
	}
}

// named gives the name of a named type, or of that which it points to or lists.
func named(pkg string, expr ast.Expr) string {
	switch e := expr.(type) {
	case *ast.Ident:
		return pkg + "." + e.Name
	case *ast.StarExpr:
		return named(pkg, e.X)
	case *ast.ArrayType:
		return named(pkg, e.Elt)
	case *ast.SelectorExpr:
		return named("", e.X)[1:] + "." + e.Sel.Name
	}
	return pkg + "."
}

func text(groups ...*ast.CommentGroup) string {
	for _, g := range groups {
		if t := strings.TrimSpace(g.Text()); t != "" {
			return t
		}
	}
	return ""
}

// typeNamed gives the type of that name, or the one that it stands for; nil for none.
func (s *sources) typeNamed(name string) *goType {
	t := s.types[name]
	if t != nil && s.types[t.of] != nil {
		return s.types[t.of]
	}
	return t
}

// docOf gives what is written beside the field that a member of a type is, "" where
// nothing is. It reads the type's method Members: m.Float("torque", &b.Torque), and
// for the members of a part of it, b.Part.Members(m).
func (s *sources) docOf(record, member string) string {
	method, t := s.methods[record], s.typeNamed(record)
	if method == nil || t == nil {
		return ""
	}
	doc := ""
	ast.Inspect(method.Body, func(n ast.Node) bool {
		call, ok := n.(*ast.CallExpr)
		if !ok || doc != "" {
			return true
		}
		if f, ok := call.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Members" {
			if part := path(f.X); part != nil {
				doc = s.docOf(s.fieldAt(t, part).record, member)
			}
			return true
		}
		for n, arg := range call.Args[:max(0, len(call.Args)-1)] {
			if lit, ok := arg.(*ast.BasicLit); ok && lit.Value == strconv.Quote(member) {
				doc = s.fieldAt(t, path(call.Args[n+1])).doc
			}
		}
		return true
	})
	return doc
}

// path gives the names of a selector after its first: of &c.Level.Band, Level and
// Band.
func path(expr ast.Expr) []string {
	switch e := expr.(type) {
	case *ast.UnaryExpr:
		return path(e.X)
	case *ast.SelectorExpr:
		return append(path(e.X), e.Sel.Name)
	}
	return nil
}

func (s *sources) fieldAt(t *goType, path []string) (f goField) {
	for _, name := range path {
		if t == nil {
			return goField{}
		}
		f = t.fields[name]
		t = s.typeNamed(f.record)
	}
	return f
}
