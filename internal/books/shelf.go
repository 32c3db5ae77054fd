package books

import (
	"cmp"
	"math"
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/oil"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// What the facts of the shelf say; their subject is a thing on it.
const (
	// itemTold: what: one of Goods; value: how much is there, a volume of oil or a number,
	// empty where that stays as it is; text: its name; signs: of an oil grade, marks, size
	// of a bottle and for; of a filter number; of a washer or ring seal and size.
	itemTold ledger.FactKind = "item"
	opened   ledger.FactKind = "opened" // value: the day, where it isn't the one it was told on
	added    ledger.FactKind = "added"  // value: how much came
	// used: value: how much; job, and what: the line of its list that it was used for; or
	// neither.
	used ledger.FactKind = "used"
)

// Goods are what may lie on a shelf.
type Goods string

// The goods.
const (
	OilGoods    Goods = "oil"
	FilterGoods Goods = "filter"
	WasherGoods Goods = "washer" // flat, folded, bonded or fibre
	RingGoods   Goods = "ring"   // round or square in section
	OtherGoods  Goods = "other"
)

// AllGoods lists them.
var AllGoods = []Goods{OilGoods, FilterGoods, WasherGoods, RingGoods, OtherGoods}

// What is believable on a shelf (common practice, no source).
const (
	mostOil     = 2000 // L
	leastBottle = 0.05 // L
	mostBottle  = 250  // L
	mostCount   = 100000
)

// ShelfInput is the book of the shelf.
type ShelfInput struct {
	ledger.Input
	System quantity.System
	Today  string
}

// Members names the members.
func (i *ShelfInput) Members(m *wire.Members) {
	i.Input.Members(m)
	wire.Text(m, "system", &i.System)
	m.String("today", &i.Today)
}

// ShelfAnswer is the shelf as it stands, and what it has for the lists asked about.
type ShelfAnswer struct {
	Items    []ShelfItem
	Lists    []WantedList
	Missing  []Missing // over all lists
	Findings []finding.Finding
}

// Members names the members.
func (a *ShelfAnswer) Members(m *wire.Members) {
	wire.List(m, "items", &a.Items)
	wire.List(m, "lists", &a.Lists)
	wire.List(m, "missing", &a.Missing)
	wire.Findings(m, "findings", &a.Findings)
}

// ShelfItem is a thing on the shelf.
type ShelfItem struct {
	ID, Name string
	What     Goods
	Left     []string // how much is there: a volume, or a number; empty where nobody said
	Out      bool     // nothing is left
	Opened   string   // day on which the bottle was opened that is open; empty where none is
	Signs    map[string]string
	Gone     bool
	Entries  []ShelfEntry

	told    bool
	counted bool // somebody said how much is there
	left    int  // µL, or a number
	size    int  // of a bottle in µL; 0 where it isn't known
	open    int  // day; 0 where none is open
	taken   int  // of it, that lists have
	bottle  oil.Bottle
	dims    []float64 // mm
	hasDims bool
}

// Members names the members.
func (i *ShelfItem) Members(m *wire.Members) {
	m.String("id", &i.ID, wire.Required)
	m.String("name", &i.Name)
	wire.Text(m, "what", &i.What)
	wire.Texts(m, "left", &i.Left)
	m.Bool("out", &i.Out)
	m.String("opened", &i.Opened)
	m.TextMap("signs", &i.Signs)
	m.Bool("gone", &i.Gone)
	wire.List(m, "entries", &i.Entries)
}

// ShelfEntry is what happened with a thing on the shelf.
type ShelfEntry struct {
	ID    string // of the fact
	Kind  ledger.FactKind
	Day   string
	Texts []string // how much
	Job   string
	Again bool // the same of the job is in the book already, and doesn't count here
}

// Members names the members.
func (e *ShelfEntry) Members(m *wire.Members) {
	m.String("id", &e.ID, wire.Required)
	wire.Text(m, "kind", &e.Kind, wire.Required)
	m.String("day", &e.Day, wire.Required)
	wire.Texts(m, "texts", &e.Texts)
	m.String("job", &e.Job)
	m.Bool("again", &e.Again)
}

// shelf is the book while it is read.
type shelf struct {
	*book
	items  []*ShelfItem
	system quantity.System
	usedBy map[string]bool // jobs, lines and things
	done   map[string]bool // jobs and lines
}

// Shelve says what is on the shelf, and what of it the lists of jobs would use, the first
// before the others.
func Shelve(i *ShelfInput, wants []Want) *ShelfAnswer {
	b := &shelf{book: open(&i.Input, ledger.ShelfBook, i.System, i.Today), system: i.System, usedBy: map[string]bool{}, done: map[string]bool{}}
	for _, f := range b.Standing {
		b.take(f)
	}
	slices.SortFunc(b.items, func(x, y *ShelfItem) int {
		return cmp.Or(cmp.Compare(goodsPlace(x.What), goodsPlace(y.What)), strings.Compare(x.Name, y.Name), strings.Compare(x.ID, y.ID))
	})
	a := &ShelfAnswer{Findings: b.Findings}
	for n := range wants {
		a.Lists = append(a.Lists, b.list(&wants[n]))
	}
	a.Missing = b.missing(a.Lists)
	for _, item := range b.items {
		b.show(item)
		a.Items = append(a.Items, *item)
	}
	return a
}

func goodsPlace(g Goods) int {
	n := slices.Index(AllGoods, g)
	if n < 0 {
		return len(AllGoods)
	}
	return n
}

func (b *shelf) itemOf(f *ledger.Fact) *ShelfItem {
	for _, i := range b.items {
		if i.ID == f.Of {
			return i
		}
	}
	i := &ShelfItem{ID: f.Of}
	b.items = append(b.items, i)
	return i
}

func (b *shelf) take(f *ledger.Fact) {
	switch f.Kind {
	case itemTold, opened, added, used, Gone:
	default:
		b.Unknown(f)
		return
	}
	i := b.itemOf(f)
	if f.Kind != itemTold && !i.told && f == b.New {
		b.refuse(f, "item-unknown", "/of")
	}
	switch f.Kind {
	case itemTold:
		b.describe(i, f)
	case opened:
		i.open = b.dayOf(f, "/value", f.Value)
	case added:
		if much, ok := b.much(i, f); ok {
			i.left += much
			i.counted = true
			b.enter(i, f, much, false)
		}
	case used:
		b.use(i, f)
	case Gone:
		i.Gone = true
	}
}

func (b *shelf) enter(i *ShelfItem, f *ledger.Fact, much int, again bool) {
	i.Entries = append(i.Entries, ShelfEntry{ID: f.ID, Kind: f.Kind, Day: date.DayText(b.dayOf(f, "/day", "")), Texts: b.amount(i.What, much), Job: f.Job, Again: again})
}

// amount prints how much of a thing there is.
func (b *shelf) amount(what Goods, much int) []string {
	if what == OilGoods {
		return b.litres(much)
	}
	return []string{strconv.Itoa(much)}
}

// much reads how much of a thing a fact tells of: of an oil a volume, else a number.
func (b *shelf) much(i *ShelfItem, f *ledger.Fact) (int, bool) {
	if i.What == OilGoods {
		return b.volume(f, "/value", f.Value, 0, mostOil)
	}
	q := quantity.Ask{Low: 0, High: mostCount}
	v, list := q.ReadNumber(quantity.Typed(f.Value))
	b.pass(f, "/value", list)
	if finding.Refused(list) {
		return 0, false
	}
	if math.IsNaN(v) || v < 0 || v > mostCount || v != math.Trunc(v) {
		b.refuse(f, "bad-count", "/value", "value", finding.Clip(f.Value))
		return 0, false
	}
	return int(v), true
}

func (b *shelf) describe(i *ShelfItem, f *ledger.Fact) {
	what := Goods(f.What)
	if !slices.Contains(AllGoods, what) {
		b.refuse(f, "unknown-word", "/what", "text", finding.Clip(f.What))
	}
	if i.told && i.What != what {
		i.left, i.counted = 0, false // volumes and numbers are no amounts of each other
	}
	i.told, i.Gone, i.What, i.Name, i.Signs = true, false, what, b.named(f), f.Signs
	i.size, i.bottle, i.dims, i.hasDims = 0, oil.Bottle{}, nil, false
	for name, text := range f.Signs {
		b.Short(f, "/signs/"+name, text, ledger.ValueLetters)
	}
	switch what {
	case OilGoods:
		b.label(i, f)
	case WasherGoods, RingGoods:
		b.sized(i, f)
	}
	if strings.TrimSpace(f.Value) != "" {
		if much, ok := b.much(i, f); ok {
			i.left, i.counted = much, true
			b.enter(i, f, much, false)
		}
	}
}

// label reads what stands on a bottle. What isn't told is not known, and "none" says that
// the label has no marks.
func (b *shelf) label(i *ShelfItem, f *ledger.Fact) {
	grade, marks := oil.ReadLabel(f.Signs["grade"]), oil.ReadLabel(f.Signs["marks"])
	if text := strings.TrimSpace(f.Signs["grade"]); text != "" && (len(grade.Grades) != 1 || grade.Unread != "") {
		b.refuse(f, "unknown-grade", "/signs/grade", "text", finding.Clip(text))
	} else if len(grade.Grades) == 1 {
		i.bottle.Grade = grade.Grades[0]
	}
	if marks.Unread != "" || len(marks.Grades) > 0 {
		b.refuse(f, "unknown-mark", "/signs/marks", "text", finding.Clip(f.Signs["marks"]))
		marks = oil.Label{} // part of a label is no label
	}
	i.bottle.Marks = append(grade.Marks, marks.Marks...)
	i.bottle.Service = append(grade.Service, marks.Service...)
	i.bottle.Conserving = grade.Conserving || marks.Conserving
	if marks.None {
		i.bottle.Marks, i.bottle.Service = []string{oil.None}, []string{oil.None}
	}
	if strings.TrimSpace(f.Signs["size"]) != "" {
		if size, ok := b.volume(f, "/signs/size", f.Signs["size"], leastBottle, mostBottle); ok {
			i.size = size
		}
	}
}

// SealsOf are the kinds of seals that lie on a shelf as goods of that kind: rings are
// those without a face, washers the others. Paper gaskets are cut for their place.
func SealsOf(what Goods) []card.SealKind {
	var list []card.SealKind
	for _, kind := range card.SealKinds {
		ring := kind == card.ORing || kind == card.SquareRing
		if kind != card.Paper && ring == (what == RingGoods) {
			list = append(list, kind)
		}
	}
	return list
}

// sized reads the kind and size of a washer or ring.
func (b *shelf) sized(i *ShelfItem, f *ledger.Fact) {
	if seal := card.SealKind(f.Signs["seal"]); seal != "" && !slices.Contains(card.SealKinds, seal) {
		b.refuse(f, "unknown-word", "/signs/seal", "text", finding.Clip(string(seal)))
	}
	text := strings.TrimSpace(f.Signs["size"])
	if text == "" {
		return
	}
	if i.dims, i.hasDims = dimensions(text); !i.hasDims {
		b.refuse(f, "size-unread", "/signs/size", "text", finding.Clip(text))
	}
}

// dimensions reads a size such as "14 × 20 × 1.5 mm": inner, outer, thickness; of a ring
// inside and section. In inches it isn't read.
func dimensions(text string) ([]float64, bool) {
	text = strings.TrimSpace(strings.TrimSuffix(strings.ToLower(quantity.Typed(text)), "mm"))
	for _, sign := range []string{"×", "*", "/"} {
		text = strings.ReplaceAll(text, sign, "x")
	}
	var list []float64
	for _, part := range strings.Split(text, "x") {
		v, ok := quantity.ParseNumber(strings.ReplaceAll(strings.TrimSpace(strings.TrimSuffix(strings.TrimSpace(part), "mm")), ",", "."))
		if !ok || v <= 0 || v > 500 {
			return nil, false
		}
		list = append(list, v)
	}
	return list, len(list) >= 2 && len(list) <= 3
}

// use takes out what was poured or fitted. A line of a job counts once for each thing;
// more than there was leaves nothing.
func (b *shelf) use(i *ShelfItem, f *ledger.Fact) {
	much, ok := b.much(i, f)
	if !ok {
		return
	}
	again := false
	if f.Job != "" {
		key := f.Job + "\n" + f.What
		again = b.usedBy[key+"\n"+f.Of]
		b.usedBy[key+"\n"+f.Of], b.done[key] = true, true
	}
	if again {
		b.refuse(f, "used-again", "/job")
	} else {
		before := i.left
		if i.left -= much; i.left < 0 {
			if i.counted {
				b.Fault(f, "shelf-had-less", "/value", finding.Doubt, "left", b.amount(i.What, before)[0])
			}
			i.left = 0
		}
		i.opens(before, b.dayOf(f, "/day", ""))
	}
	b.enter(i, f, much, again)
}

// opens notes on which day the bottle was opened that is open now, where the size of the
// bottles is known.
func (i *ShelfItem) opens(before, day int) {
	if i.What != OilGoods || i.size == 0 || before == i.left {
		return
	}
	switch rest := i.left % i.size; {
	case rest == 0:
		i.open = 0
	case i.open == 0 || before/i.size != i.left/i.size:
		i.open = day
	}
}

// show makes a thing ready to be read.
func (b *shelf) show(i *ShelfItem) {
	if i.counted {
		i.Left = b.amount(i.What, i.left)
		i.Out = i.left == 0
	}
	if i.open > 0 && !i.Out {
		i.Opened = date.DayText(i.open)
	}
}
