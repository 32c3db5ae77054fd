package manual

import (
	"slices"
	"strings"

	"tidysump/internal/finding"
)

// Chosen leaves of what a page of several models says what is of that one, without the
// doubts which of them is meant.
func (p *Page) Chosen(model string) {
	if p.parts != nil {
		p.Hints, p.Number = Hints{}, ""
	}
	for i := range p.parts {
		if q := &p.parts[i]; slices.Contains(q.models, model) {
			p.Hints.add(q.hints)
			if p.Number == "" {
				p.Number = q.number
			}
		}
	}
	p.Readings = slices.DeleteFunc(p.Readings, func(r Reading) bool {
		other := r.Model != "" && r.Model != model
		return other || p.named(&r) && r.Text != model
	})
	for i := range p.Readings {
		r := &p.Readings[i]
		named := p.named(r)
		r.Doubts = slices.DeleteFunc(r.Doubts, func(f finding.Finding) bool {
			return f.Code == "manual-of-one-model" || named && (f.Code == "manual-several-models" || f.Code == "manual-says-both" && slices.Contains(p.Models, f.Values["other"]))
		})
		r.Sure = len(r.Doubts) == 0
	}
}

// Beside says of a page that names another bike than the card beside which it is read, of the
// model that is given, that it is of that one: it is asked which of the two it is to be.
func (p *Page) Beside(model string) {
	if model == "" || len(p.Models) > 0 {
		return
	}
	named := slices.IndexFunc(p.Readings, func(r Reading) bool { return r.What == "model" && r.Text != "" })
	if named < 0 || sameModel(p.Readings[named].Text, model) {
		return
	}
	p.Models = []string{model, p.Readings[named].Text}
	for i := range p.Readings {
		p.Readings[i].of(p.Models[1])
	}
}

// of says of a reading that it is of one model.
func (r *Reading) of(model string) {
	code := "manual-of-one-model"
	if r.What == "model" && r.Text == model {
		code = "manual-several-models"
	}
	r.Doubts = append(slices.Clone(r.Doubts), doubt(code, "text", r.Text, "model", model))
	r.Sure, r.Model = false, model
}

// sameModel reports whether two names may be of one model: one has it longer than the other.
func sameModel(a, b string) bool {
	x, y := bareName(a), bareName(b)
	return x == "" || y == "" || strings.Contains(x, y) || strings.Contains(y, x)
}

// bareName gives the letters and figures of a name as they are compared.
func bareName(text string) string {
	var b strings.Builder
	for _, r := range plainWord(text) {
		if isLetter(r) || isDigit(r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// named reports whether a reading is the name, or the years, of one of several models.
func (p *Page) named(r *Reading) bool {
	return (r.What == "model" || r.What == "years") && slices.Contains(p.Models, r.Text)
}

// cellsOf parts a line at its gaps.
func cellsOf(tokens []token) (cells [][]token) {
	from := 0
	for i := 1; i <= len(tokens); i++ {
		if i == len(tokens) || tokens[i].gap == wide {
			cells = append(cells, tokens[from:i])
			from = i
		}
	}
	return cells
}

// modelHead is the head of a table that has a column for each of several models or years.
type modelHead struct {
	names []string
	cols  []int // where each begins
	end   int   // of the last
	spans []Span
}

// byModel takes the rows of such tables apart: one row of the label and the figure of each
// model, or one for all where they have the same.
func (p *page) byModel() {
	list := make([]piece, 0, len(p.pieces))
	for n := 0; n < len(p.pieces); n++ {
		h := p.modelHead(n)
		list = append(list, p.pieces[n])
		if h == nil {
			continue
		}
		if p.models == nil {
			p.models, p.modelCells = h.names, h.spans
		}
		for n+1 < len(p.pieces) && p.rowOf(n+1) {
			n++
			list = append(list, h.rows(&p.pieces[n], p.models)...)
		}
	}
	p.pieces = list
}

// rowOf reports whether a piece may be a row of the table above it.
func (p *page) rowOf(n int) bool {
	q := &p.pieces[n]
	if q.blank && !q.cells || p.modelHead(n) != nil {
		return false
	}
	return !q.blank || n+1 == len(p.pieces) || q.cells
}

// modelHead reads a line as the head of such a table: two cells or more at its end that
// each name a model or years. The make may stand before them.
func (p *page) modelHead(n int) *modelHead {
	if !p.pieces[n].cells || n+1 == len(p.pieces) || !p.pieces[n+1].cells {
		return nil
	}
	cells := cellsOf(p.pieces[n].tokens)
	if h := p.titledHead(cells); h != nil && n > 0 {
		return h
	}
	first := len(cells)
	years := 0
	for ; first > 0 && (p.yearsOf(cells[first-1]) != "" || p.modelName(cells[first-1])); first-- {
		if p.yearsOf(cells[first-1]) != "" {
			years++
		}
	}
	if count := len(cells) - first; count < 2 || count > 6 || first > 1 || years == 1 { // a model beside its years is a title
		return nil
	}
	h := &modelHead{}
	for _, c := range cells[first:] {
		name := p.yearsOf(c)
		if name == "" {
			name = casedName(c)
		}
		h.names = append(h.names, name)
		h.cols, h.end = append(h.cols, c[0].col), c[len(c)-1].end
		h.spans = append(h.spans, Span{c[0].from, c[len(c)-1].to})
	}
	return h
}

// titledHead reads a line whose cells are the numbers alone of the models that the page's first
// line names: "LUMARD Alisio 125 / Alisio 200" over "125    200". nil for another line.
func (p *page) titledHead(cells [][]token) *modelHead {
	if len(cells) < 2 || len(cells) > 6 {
		return nil
	}
	h := &modelHead{}
	for _, c := range cells {
		if len(c) != 1 || c[0].kind != number {
			return nil
		}
		name := p.titleName(c[0].text)
		if len(name) < 2 {
			return nil
		}
		text := casedName(name)
		if slices.Contains(h.names, text) {
			return nil
		}
		h.names = append(h.names, text)
		h.cols, h.end = append(h.cols, c[0].col), c[0].end
		last := name[len(name)-1]
		span := Span{name[0].from, last.to}
		if last.from < name[len(name)-2].from || last.from > name[len(name)-2].to+1 {
			span.From = last.from // "Alisio 125 / 200"
		}
		h.spans = append(h.spans, span)
	}
	return h
}

// titleName gives the words and the number by which the page's first line names a model of that
// number, without the make before them; nil for none.
func (p *page) titleName(num string) (name []token) {
	title := p.pieces[0].tokens
	var words []token // before the number, or before the first of several that signs part
	for i := range title {
		t := &title[i]
		switch {
		case t.kind == number && t.text == num && len(words) > 0:
			if len(words) > 1 {
				words = words[1:]
			}
			return append(slices.Clone(words), *t)
		case t.kind == number, t.kind == sign && strings.Contains("/,&-", t.text):
		case t.kind != word || !p.strange(title, i) || !capital(t.text):
			if !p.joins(t) {
				words = nil
			}
		case i > 0 && t.gap != wide && title[i-1].kind == word && p.strange(title, i-1):
			words = append(words, *t)
		default:
			words = []token{*t}
		}
	}
	return nil
}

// joins reports whether a word parts names of a list: "125 and 200".
func (p *page) joins(t *token) bool {
	e, _ := p.words.match([]token{*t}, 0)
	return e != nil && (slices.Contains(e.senses, "join.and") || slices.Contains(e.senses, "join.or"))
}

// modelName reports whether a cell names a model: letters that are no word of the trade,
// and a number, without a unit.
func (p *page) modelName(cell []token) bool {
	numbered, unknown := false, false
	for i := range cell {
		t := &cell[i]
		switch t.kind {
		case number:
			if len(t.text) > 4 || strings.ContainsAny(t.text, ".,") {
				return false
			}
			if _, n := unitAt(cell, i+1); n > 0 && !oneCapital(&cell[i+1]) && !(unknown && n == 1 && cell[i+1].text == "L" && len(t.text) > 1) { // "Rook 250 L"
				return false
			}
			numbered = true
		case word:
			unknown = unknown || len(t.text) > 1 && p.strange(cell, i)
			if i == 0 && (small(cell) || t.fold == "sae" || t.fold == "api" || t.fold == "jaso") {
				return false
			}
		default:
			if !strings.Contains("-/+.", t.text) {
				return false
			}
		}
	}
	return numbered && unknown && len(cell) <= 6
}

// strange reports whether a word is none of the language's small words, none of the trade
// and no unit.
func (p *page) strange(tokens []token, i int) bool {
	t := &tokens[i]
	if t.kind != word || t.function || t.unitOf() != "" {
		return false
	}
	e, _ := p.words.match(tokens, i)
	if e != nil && len(e.senses) == 1 && e.senses[0] == "when.severe" {
		e = nil // "701 Enduro"
	}
	return e == nil && t.fold != "sae" && t.fold != "api" && t.fold != "jaso"
}

// rows gives a row of the table once for each model, or as it is where it does not part.
func (h *modelHead) rows(row *piece, models []string) []piece {
	cells := cellsOf(row.tokens)
	label := 0
	for label < len(cells) && cells[label][0].col < h.cols[0]-2 {
		label++
	}
	if label == 0 || len(cells) == label || len(models) != len(h.names) {
		return []piece{*row}
	}
	if len(cells)-label == 1 && h.spanned(cells[label]) {
		return []piece{*row}
	}
	if list, is := h.ticked(row, cells[label:]); is {
		return list
	}
	of := make([][]token, len(h.cols))
	for i, c := range cells[label:] {
		k := i
		if len(cells)-label != len(h.cols) {
			k = h.column(c)
			if k < 0 {
				return []piece{*row}
			}
		}
		if of[k] = c; c[0].kind == sign && len(c) == 1 || c[0].text == "(" && !numbered(c, 0, 0) {
			of[k] = nil // a dash, or "(no filter)": it has none
		}
	}
	head := row.tokens[:len(row.tokens)]
	for i := range row.tokens {
		if &row.tokens[i] == &cells[label][0] {
			head = row.tokens[:i]
		}
	}
	same := true
	for _, c := range of {
		same = same && textOf(c) == textOf(of[0])
	}
	if same && of[0] != nil {
		q := *row
		q.tokens = append(append([]token{}, head...), of[0]...)
		return []piece{q}
	}
	var list []piece
	for k, c := range of {
		if c == nil {
			continue
		}
		q := *row
		q.tokens = append(append([]token{}, head...), c...)
		q.model = k + 1
		list = append(list, q)
	}
	return list
}

// ticked gives the label of a row once for each model below which a mark stands, where its cells
// are nothing but marks and dashes: "Engine oil 1.5 L      –      ●".
func (h *modelHead) ticked(row *piece, cells [][]token) (list []piece, is bool) {
	marks := make([]bool, len(h.cols))
	count := 0
	for i, c := range cells {
		k := i
		if len(cells) != len(h.cols) {
			k = h.column(c)
		}
		if k < 0 || len(c) != 1 {
			return nil, false
		}
		switch {
		case strings.Contains("●•◆■✓✔×", c[0].text), c[0].fold == "x":
			marks[k] = true
			count++
		case c[0].kind != sign:
			return nil, false
		}
	}
	if count == 0 {
		return nil, false
	}
	head := *row
	for i := range row.tokens {
		if &row.tokens[i] == &cells[0][0] {
			head.tokens = row.tokens[:i:i]
		}
	}
	head.cells, head.joined = hasGap(head.tokens), false
	if count == len(marks) {
		return []piece{head}, true
	}
	for k, marked := range marks {
		if marked {
			head.model = k + 1
			list = append(list, head)
		}
	}
	return list, true
}

// spanned reports whether a cell that stands alone in its row is of all models: it reaches below
// the second name, or lies amid them, or it is words or grades, which are printed once.
func (h *modelHead) spanned(cell []token) bool {
	from, to := cell[0].col, cell[len(cell)-1].end
	first := h.cols[0]
	if from <= first+mostOffCell && to > h.cols[1] || from > first+mostOffCell && to < h.end && abs(from+to-first-h.end) <= 2*mostOffCell {
		return true
	}
	grade := namesGrade(cell) || len(cell) > 1 && cell[1].fold == "w" && cell[1].gap == glued
	return from <= first+mostOffCell && (grade || cell[0].kind == word && !hasUnit(cell))
}

// column gives the column that a cell stands below, -1 for none.
func (h *modelHead) column(cell []token) int {
	best := 0
	for k, c := range h.cols {
		if abs(c-cell[0].col) < abs(h.cols[best]-cell[0].col) {
			best = k
		}
	}
	if abs(h.cols[best]-cell[0].col) > 8 {
		return -1
	}
	return best
}

// modelOf gives the model or the years that the row of a token is of, "" for all.
func (p *page) modelOf(i int) string {
	if i < 0 || i >= len(p.places) {
		return ""
	}
	if k := p.pieces[p.places[i].piece].model; k > 0 && k <= len(p.models) {
		return p.models[k-1]
	}
	return ""
}
