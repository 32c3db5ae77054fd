package calc

import (
	"cmp"
	"math"
	"slices"
	"strconv"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Kinds of a field that isn't a quantity.
const (
	Text   quantity.Kind = "text"
	Number               = quantity.Plain
	Choice quantity.Kind = "choice"
	Yes    quantity.Kind = "yes" // true or false; the number is 1 when true
	List   quantity.Kind = "list"
	Taps   quantity.Kind = "taps" // times in s of taps on the screen, blanks between
)

// field is one thing that a calculation asks a person for. The page draws its
// forms from the fields.
type field struct {
	name   string
	kind   quantity.Kind // of a quantity, or one of those above
	needed bool
	front  bool // asked at once although it isn't needed
	// A quantity lies between low and high, in its base unit; absent is what
	// it is where nothing is given. Where it is ranged a range may be typed.
	low, high, absent float64
	ranged            bool
	words             []string // that may be chosen
	family            string   // a word's word id is family + word; "": it stands for itself
	rows              []field  // of each row of a list
	on                string   // name of a field, with one of whose answers in when this one is asked
	when              []string
	letters           int  // that are offered to be typed; typedLetters where it is 0
	kept              bool // a text that says nothing here and stays as it was typed
	lines             bool // several lines may be typed
	// For who is told in one line: what a text says; the field that takes the other end
	// of a range, or the next figure of its kind; the field whose figure it stands beside; the field of a
	// figure behind a times sign.
	says   Said
	then   string
	beside string
	by     string
	many   bool // several may stand there, parted by commas
}

// Said is what a text of a field says.
type Said string

// What texts say that can be told by their looks.
const (
	Thread  Said = "thread"
	Grade   Said = "grade"   // of SAE J300 or J306
	Mark    Said = "mark"    // of JASO
	Service Said = "service" // of API
	Amount  Said = "amount"  // of any kind
	Lines   Said = "lines"   // whatever is said, to the end
)

// typedLetters are offered for a quantity, a number or a name.
const typedLetters = 60

// typed gives the letters that are offered for a field; 0 where nothing is typed.
func (d *field) typed() int {
	switch d.kind {
	case Choice, Yes, List:
		return 0
	}
	return cmp.Or(d.letters, typedLetters)
}

// mostRows is the most rows of a list: far above any shelf or toolbox.
const mostRows = 200

// Form is what a person filled in: the fields of a calculation, or of one row of
// a list. One type serves all calculations, since a type for the input of each
// would cost the core 15 kB more.
type Form struct {
	fields []field
	given  []given
	at     string // JSON pointer of where it was read
	system quantity.System
	list   *[]finding.Finding // what was found, in the whole input
}

// given is what a field holds.
type given struct {
	text   string
	number float64 // of a quantity in the base unit, of a choice its place in the words, from 1
	upper  float64 // the other end, where a range was typed
	half   float64 // how far rounding may have moved a quantity, in the base unit
	unit   *quantity.Unit
	rows   []Form
}

func newForm(fields []field) *Form { return &Form{fields: fields, list: &[]finding.Finding{}} }

// settle takes what was typed apart. It reports false when that can't be used. read
// is what reading the form's text found.
func (f *Form) settle(read []finding.Finding) bool {
	*f.list = append(read, *f.list...)
	if finding.Refused(*f.list) {
		return false
	}
	if f.system == "" {
		f.system = quantity.Metric
	}
	f.oneOf("system", string(f.system), texts(quantity.Systems...)...)
	f.check()
	return !finding.Refused(*f.list)
}

// Members names the members of the input: one for each field, and the system.
func (f *Form) Members(m *wire.Members) {
	if f.at == "" {
		wire.Text(m, "system", &f.system)
	}
	f.given = make([]given, len(f.fields))
	for n := range f.fields {
		d, g := &f.fields[n], &f.given[n]
		switch d.kind {
		case List:
			m.Rows(d.name, func(size int) []wire.Record { return f.newRows(d, g, size) })
		case Yes:
			var yes bool
			m.Bool(d.name, &yes)
			if yes {
				g.number = 1
			}
		default:
			m.String(d.name, &g.text)
			g.take(d, g.text)
		}
	}
}

// take takes in a text that was typed for a field; for one of yes or no any says yes.
func (g *given) take(d *field, text string) {
	switch {
	case d.kind == Yes:
		g.number = 1
	case d.kind != Text:
		g.text = quantity.Typed(text)
	case d.kept:
		g.text = text
	default:
		g.text = quantity.PlainDigits(text)
	}
}

func (f *Form) newRows(d *field, g *given, size int) []wire.Record {
	records := make([]wire.Record, min(size, mostRows))
	if size > mostRows {
		f.reject("too-many-rows", d.name, "most", strconv.Itoa(mostRows))
	}
	g.rows = make([]Form, len(records))
	for n := range records {
		g.rows[n] = f.newRow(d, n)
		records[n] = &g.rows[n]
	}
	return records
}

func (f *Form) newRow(d *field, n int) Form {
	return Form{fields: d.rows, at: f.at + "/" + d.name + "/" + strconv.Itoa(n), system: f.system, list: f.list}
}

// check reads what was typed.
func (f *Form) check() {
	for n := range f.fields {
		d, g := &f.fields[n], &f.given[n]
		switch {
		case d.kind == List:
			if d.needed {
				f.need(d.name)
			}
			for row := range g.rows {
				g.rows[row].system = f.system
				g.rows[row].check()
			}
		case g.text == "":
			if g.number == 0 {
				g.number = d.absent
			}
			if d.needed {
				f.need(d.name)
			}
		case d.kind == Choice:
			g.number = float64(1 + slices.Index(d.words, g.text))
			f.oneOf(d.name, g.text, d.words...)
		case d.kind == Number:
			q := quantity.Ask{Low: d.low, High: d.high}
			v, list := q.ReadNumber(g.text)
			*f.list = append(*f.list, finding.At(f.at+"/"+d.name, list)...)
			g.number = v
			if v < d.low || v > d.high {
				f.reject("not-believable", d.name, "value", finding.Clip(g.text), "low", quantity.Number(d.low, 4), "high", quantity.Number(d.high, 4))
			}
		case d.kind != Text && d.kind != Taps:
			f.amount(d, g)
		}
	}
}

// amount reads a quantity, and refuses what lies outside its bounds. A number
// without a unit is taken in the unit that stands first for the person; for a
// torque there is none, since mixing units up breaks bolts.
func (f *Form) amount(d *field, g *given) {
	q := quantity.Ask{Kind: d.kind, Unit: quantity.Usual(d.kind, f.system), System: f.system, Low: d.low, High: d.high}
	a, list := q.Read(g.text)
	upper := a
	if d.ranged {
		var ranged bool
		if a, upper, ranged, list = q.ReadRange(g.text); ranged {
			g.upper = upper.Base
		}
	}
	*f.list = append(*f.list, finding.At(f.at+"/"+d.name, list)...)
	g.number, g.half = a.Base, a.Half()
	g.unit, _ = quantity.Find(a.Unit)
	const hair = 1e-9 // by which conversion between units may move a bound
	if slack := hair * d.high; a.Base < d.low-slack || upper.Base > d.high+slack {
		low, high := a, a
		low.Base, low.Digits = d.low, 3
		high.Base, high.Digits = d.high, 3
		in := a.Unit
		if least := g.unit.FromBase(d.low); q.Unit != "" && least > 0 && least < 0.001 {
			in = q.Unit // of years, minutes are no bounds that say something
		}
		f.reject("not-believable", d.name, "value", a.Print(a.Unit), "low", low.Print(in), "high", high.Print(in))
	}
}

// of gives what the field of that name holds.
func (f *Form) of(name string) *given { return &f.given[f.place(name)] }

// fieldOf gives the field of that name.
func (f *Form) fieldOf(name string) *field { return &f.fields[f.place(name)] }

func (f *Form) place(name string) int {
	if n := f.find(name); n >= 0 {
		return n
	}
	panic("no field: " + name)
}

func (f *Form) find(name string) int {
	return slices.IndexFunc(f.fields, func(d field) bool { return d.name == name })
}

// number gives a field's number; of a quantity it is in the base unit.
func (f *Form) number(name string) float64 { return f.of(name).number }

// has reports whether something was typed or chosen for a field.
func (f *Form) has(name string) bool { return f.of(name).text != "" }

// say adds what was found about a field.
func (f *Form) say(grade finding.Grade, code, name string, values ...string) {
	*f.list = append(*f.list, finding.Finding{Code: code, Where: f.at + "/" + name, Grade: grade, Values: finding.Values(values...)})
}

// reject says why a field can't be used.
func (f *Form) reject(code, name string, values ...string) {
	f.say(finding.Refuse, code, name, values...)
}

// refused reports whether anything found so far refuses the input.
func (f *Form) refused() bool { return finding.Refused(*f.list) }

// need refuses when nothing was given for a field.
func (f *Form) need(name string) {
	if g := f.of(name); g.text == "" && len(g.rows) == 0 {
		f.reject("missing", name, "name", name)
	}
}

// oneOf refuses a word that is none of those known.
func (f *Form) oneOf(name, text string, known ...string) {
	if !slices.Contains(known, text) {
		f.reject("unknown-word", name, "text", finding.Clip(text))
	}
}

// texts gives words of a type of their own as a field has them.
func texts[T ~string](words ...T) []string {
	list := make([]string, len(words))
	for n, w := range words {
		list[n] = string(w)
	}
	return list
}

// round rounds to so many steps of a unit; no more is worth saying, and the last
// bits differ between machines.
func round(v, steps float64) float64 { return math.Round(v*steps) / steps }
