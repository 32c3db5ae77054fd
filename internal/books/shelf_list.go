package books

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"tidysump/internal/card"
	"tidysump/internal/fill"
	"tidysump/internal/oil"
	"tidysump/internal/plan"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Want is what a job takes from the shelf: of its plan what is to be laid out, and once
// something was poured how much of which oil.
type Want struct {
	ID     string // of the job, or whatever the asker calls it
	Name   string
	Plan   *plan.Plan
	Poured map[string]float64 // L, by circuit; where a circuit is missing, what is due counts
}

// WantedList is what a job needs, line by line.
type WantedList struct {
	ID, Name string
	Lines    []WantedLine
}

// Members names the members.
func (l *WantedList) Members(m *wire.Members) {
	m.String("id", &l.ID, wire.Required)
	m.String("name", &l.Name)
	wire.List(m, "lines", &l.Lines)
}

// LineState is what the shelf has for a line: the last part of a word id.
type LineState string

// The states.
const (
	LineEnough  LineState = "enough"
	LineShort   LineState = "short"   // some of it, or none
	LineUnknown LineState = "unknown" // what it needs isn't known, or whether what is there suits
	LineDone    LineState = "done"    // the book has what the job used
)

// LineStates lists them.
var LineStates = []LineState{LineEnough, LineShort, LineUnknown, LineDone}

// WantedLine is one thing that a job needs.
type WantedLine struct {
	Key     string // by which its job's facts name it
	Word    string // word id, filled by Values
	Values  map[string]string
	What    Goods
	Needs   []string // how much; empty where that isn't known
	State   string   // word id
	Picks   []ShelfPick
	Others  []ShelfPick // that may do, or of which that isn't known
	Lacking []string    // what the shelf doesn't have of it

	like    string // what may be bought together
	lacking int
}

// Members names the members.
func (l *WantedLine) Members(m *wire.Members) {
	m.String("key", &l.Key, wire.Required)
	m.String("word", &l.Word, wire.Required)
	m.TextMap("values", &l.Values)
	wire.Text(m, "what", &l.What)
	wire.Texts(m, "needs", &l.Needs)
	m.String("state", &l.State, wire.Required)
	wire.List(m, "picks", &l.Picks)
	wire.List(m, "others", &l.Others)
	wire.Texts(m, "lacking", &l.Lacking)
}

// ShelfPick is what is proposed from a thing on the shelf.
type ShelfPick struct {
	Item, Name string
	Verdict    string   // word id: whether it suits
	Takes      []string // how much of it; empty for what is not proposed
	Typed      string   // the same, as it would be typed
	Reasons    []string // codes of findings that say why it doesn't suit without more

	much int
}

// Members names the members.
func (p *ShelfPick) Members(m *wire.Members) {
	m.String("item", &p.Item, wire.Required)
	m.String("name", &p.Name)
	m.String("verdict", &p.Verdict, wire.Required)
	wire.Texts(m, "takes", &p.Takes)
	m.String("typed", &p.Typed)
	wire.Texts(m, "reasons", &p.Reasons)
}

// Missing is what the shelf lacks of one thing, for all lists together.
type Missing struct {
	Word    string // word id, filled by Values
	Values  map[string]string
	What    Goods
	Lacking []string
	For     []string // ids of the lists
}

// Members names the members.
func (x *Missing) Members(m *wire.Members) {
	m.String("word", &x.Word, wire.Required)
	m.TextMap("values", &x.Values)
	wire.Text(m, "what", &x.What)
	wire.Texts(m, "lacking", &x.Lacking)
	wire.Texts(m, "for", &x.For)
}

// list says what the shelf has for a job, and keeps that for it.
func (b *shelf) list(w *Want) WantedList {
	l := WantedList{ID: w.ID, Name: w.Name}
	if w.Plan == nil {
		return l
	}
	for n := range w.Plan.Parts {
		part := &w.Plan.Parts[n]
		line := WantedLine{Word: part.Word, Values: part.Values, Key: keyOf(part)}
		switch {
		case b.done[w.ID+"\n"+line.Key]:
			line.State = string(LineDone)
		case part.Oil != "":
			b.oilLine(&line, w, part.Oil)
		default:
			b.partLine(&line, part)
		}
		line.State = "shelf-line." + line.State
		l.Lines = append(l.Lines, line)
	}
	return l
}

// keyOf names a line within its job, whatever its figures are.
func keyOf(part *plan.Item) string {
	if part.Oil != "" {
		return "oil " + part.Oil
	}
	v := part.Values
	return strings.Join([]string{part.Word, v["kind"], v["size"], v["of"], v["circuit"], v["place"]}, " ")
}

// oilLine chooses bottles for an oil: of those that suit for certain, the opened ones
// first (fill.Choose). Other oils are named with the reasons.
func (b *shelf) oilLine(line *WantedLine, w *Want, circuit string) {
	line.What, line.State = OilGoods, string(LineUnknown)
	var c *card.Circuit
	for _, have := range w.Plan.Circuits() {
		if have.ID == circuit {
			c = have
		}
	}
	if c == nil {
		return
	}
	litres, known := w.Poured[circuit]
	if !known {
		if a, ok := w.Plan.Volume(c).Amount(); ok {
			litres, known = a.Base, true
			if upper, ranged := w.Plan.Volume(c).Upper(); ranged {
				litres = upper.Base
			}
		}
	}
	if known {
		line.Needs = b.litres(micro(litres))
	}
	need := w.Plan.OilNeed(c)
	line.like = "oil " + string(c.Role) + " " + line.Values["need"]
	var shelf []fill.Bottle
	var owners []*ShelfItem
	for _, i := range b.items {
		if i.What != OilGoods || !i.there() {
			continue
		}
		verdict, reasons := oil.Judge(&need, &i.bottle)
		if verdict != oil.Suits || !i.counted {
			if verdict != oil.Unfit {
				line.Others = append(line.Others, pick(i, "oil-verdict."+verdict.String(), against(reasons)))
			}
			continue
		}
		for _, bottle := range i.bottles() {
			shelf, owners = append(shelf, bottle), append(owners, i)
		}
	}
	if !known {
		return
	}
	choice := fill.Choose(micro(litres), shelf)
	for _, p := range choice.Pours {
		b.pick(line, owners[p.Bottle], p.Amount, "oil-verdict."+oil.Suits.String())
	}
	b.lack(line, choice.Missing)
}

// there reports whether something of a thing may be there for a list.
func (i *ShelfItem) there() bool { return !i.Gone && (i.left > i.taken || !i.counted) }

// against lists what speaks against an oil, the worst of it.
func against(reasons []oil.Reason) (codes []string) {
	for _, r := range reasons {
		if r.Weight > oil.Suits {
			codes = append(codes, r.Code)
		}
	}
	return codes
}

// bottles are those that are there: where the size of one isn't known, what is there is
// one, opened if somebody said so.
func (i *ShelfItem) bottles() (list []fill.Bottle) {
	left := i.left - i.taken
	if i.size == 0 {
		return []fill.Bottle{{Left: left, Opened: i.open > 0}}
	}
	if rest := left % i.size; rest > 0 {
		list = append(list, fill.Bottle{Left: rest, Opened: true})
		left -= rest
	}
	for ; left > 0 && len(list) < mostBottles; left -= i.size {
		list = append(list, fill.Bottle{Left: i.size})
	}
	return list
}

// mostBottles of a kind are chosen from for one oil: no bike takes more.
const mostBottles = 60

func pick(i *ShelfItem, verdict string, reasons []string) ShelfPick {
	return ShelfPick{Item: i.ID, Name: i.Name, Verdict: verdict, Reasons: reasons}
}

// pick keeps so much of a thing for a line.
func (b *shelf) pick(line *WantedLine, i *ShelfItem, much int, verdict string) {
	i.taken += much
	at := slices.IndexFunc(line.Picks, func(p ShelfPick) bool { return p.Item == i.ID })
	if at < 0 {
		at = len(line.Picks)
		line.Picks = append(line.Picks, pick(i, verdict, nil))
	}
	p := &line.Picks[at]
	p.much += much
	p.Takes = b.amount(i.What, p.much)
	p.Typed = p.Takes[0]
}

// lack says what a line lacks.
func (b *shelf) lack(line *WantedLine, much int) {
	line.State = string(LineEnough)
	if much > 0 {
		line.State, line.lacking, line.Lacking = string(LineShort), much, b.amount(line.What, much)
		if len(line.Others) > 0 && len(line.Picks) == 0 {
			line.State = string(LineUnknown) // what is there may do
		}
	}
}

// partLine chooses filters, washers and rings: those of which it is certain.
func (b *shelf) partLine(line *WantedLine, part *plan.Item) {
	line.Needs = b.amount(OtherGoods, max(part.Count, 1))
	need := max(part.Count, 1)
	suits := b.suiting(line, part)
	line.like = part.Word + " " + part.Values["kind"] + " " + part.Values["size"] + " " + part.Values["own"]
	for _, i := range b.items {
		if i.What != line.What || !i.there() {
			continue
		}
		switch fit := suits(i); {
		case fit == partFits && i.counted:
			take := min(need, i.left-i.taken)
			if take > 0 {
				b.pick(line, i, take, "shelf-fit.suits")
				need -= take
			}
		case fit == partFits:
			line.Others = append(line.Others, pick(i, "shelf-fit.suits", nil))
		case fit == partOpen:
			line.Others = append(line.Others, pick(i, "shelf-fit.unknown", nil))
		}
	}
	b.lack(line, need)
	if line.like = strings.TrimSpace(line.like); part.Word == "part.seal-size-unknown" || part.Word == "part.gasket" {
		line.State, line.lacking, line.Lacking = string(LineUnknown), 0, nil
	}
}

// How certain it is that a part fits.
const (
	partNot = iota
	partOpen
	partFits
)

// suiting gives how a thing on the shelf is held against a part, and says what the part
// is. A filter suits by its number alone; of two numbers it isn't known whether they are
// of one filter. A washer or ring suits by its kind and by each figure that the card has.
func (b *shelf) suiting(line *WantedLine, part *plan.Item) func(*ShelfItem) int {
	kind := card.SealKind(strings.TrimPrefix(part.Values["kind"], "@seal."))
	switch {
	case strings.HasPrefix(part.Word, "part.filter"):
		line.What = FilterGoods
		own := plainNumber(part.Values["own"])
		return func(i *ShelfItem) int {
			if own != "" && plainNumber(i.Signs["number"]) == own {
				return partFits
			}
			return partOpen
		}
	case kind == card.ORing || kind == card.SquareRing:
		line.What = RingGoods
	case kind != "" && kind != card.Paper:
		line.What = WasherGoods
	default:
		line.What = OtherGoods
		return func(*ShelfItem) int { return partNot }
	}
	wanted, known := dimensions(part.Values["size"])
	return func(i *ShelfItem) int {
		have := card.SealKind(i.Signs["seal"])
		switch {
		case have != "" && have != kind:
			return partNot
		case i.hasDims && known && !alike(wanted, i.dims):
			return partNot
		case have == "" || !i.hasDims || !known || len(i.dims) < len(wanted):
			return partOpen
		}
		return partFits
	}
}

// sizeOff is by how many mm two sizes may differ and be one: half of what a caliper shows
// (common practice, no source).
const sizeOff = 0.05

// alike reports whether two sizes agree as far as both are told.
func alike(one, other []float64) bool {
	for n := range min(len(one), len(other)) {
		if off := math.Abs(one[n] - other[n]); off > sizeOff && !quantity.Near(off, sizeOff) {
			return false
		}
	}
	return true
}

// plainNumber is a part number without what people leave out or add: blanks, dashes,
// points, capitals.
func plainNumber(text string) string {
	return strings.Map(func(c rune) rune {
		switch {
		case c == ' ' || c == '-' || c == '.' || c == '/':
			return -1
		case c >= 'a' && c <= 'z':
			return c - 'a' + 'A'
		}
		return c
	}, quantity.PlainDigits(text))
}

// missing adds up what the lists lack, of like things together.
func (b *shelf) missing(lists []WantedList) []Missing {
	type sum struct {
		Missing
		like string
		much int
	}
	var sums []*sum
	for n := range lists {
		for k := range lists[n].Lines {
			line := &lists[n].Lines[k]
			if line.lacking == 0 {
				continue
			}
			at := slices.IndexFunc(sums, func(s *sum) bool { return s.like == line.like })
			if at < 0 {
				at = len(sums)
				sums = append(sums, &sum{Missing: Missing{Word: line.Word, Values: line.Values, What: line.What}, like: line.like})
			}
			s := sums[at]
			s.much += line.lacking
			s.Lacking = b.amount(s.What, s.much)
			if !slices.Contains(s.For, lists[n].ID) {
				s.For = append(s.For, lists[n].ID)
			}
		}
	}
	slices.SortStableFunc(sums, func(x, y *sum) int { return cmp.Compare(goodsPlace(x.What), goodsPlace(y.What)) })
	var all []Missing
	for _, s := range sums {
		all = append(all, s.Missing)
	}
	return all
}
