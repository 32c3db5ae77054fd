package card

import (
	"strings"

	"tidysump/internal/finding"
	"tidysump/internal/quantity"
	"tidysump/internal/wire"
)

// Standing says how far a figure can be trusted.
type Standing string

// The standings of a figure, best first.
const (
	FromManual Standing = "manual"    // in the bike's own manual: Source and Page say where
	Measured   Standing = "measured"  // measured on this bike: Method says how
	Decided    Standing = "decided"   // decided for this bike by whoever answers for it: Method says why
	Estimated  Standing = "estimated" // worked out or a trade habit: Method says which
	Unknown    Standing = "unknown"   // not known: there is no value
)

// Standings lists the standings.
var Standings = []Standing{FromManual, Measured, Decided, Estimated, Unknown}

// Figure is a quantity with its standing. An absent figure is an unknown one.
type Figure struct {
	// Value is as written in the source, "25 N·m" or "18-22 lbf·ft" being 18
	// to 22: To is zero when the source gives one value.
	Value    float64
	To       float64
	Unit     string
	Standing Standing
	Source   string // id of one of the card's sources
	Page     string
	Method   string
	// Kept is why a figure that looks wrong was kept all the same.
	Kept string
	// Quote are the words of the manual that the figure comes from. It isn't written with
	// the figure: Accept finds it among the quotes of the card.
	Quote string
}

// Members names the figure's members.
func (f *Figure) Members(m *wire.Members) { f.members(m) }

// members are the members of a figure; ofValue are the rules of its value.
func (f *Figure) members(m *wire.Members, ofValue ...wire.Rule) {
	m.Float("value", &f.Value, ofValue...)
	m.Float("to", &f.To)
	m.String("unit", &f.Unit)
	wire.Text(m, "standing", &f.Standing, wire.Required)
	m.String("source", &f.Source)
	m.String("page", &f.Page)
	m.String("method", &f.Method)
	m.String("kept", &f.Kept)
}

// Known reports whether the figure has a value. It is safe on nil.
func (f *Figure) Known() bool { return f != nil && f.Standing != Unknown && f.Standing != "" }

// Amount gives the figure's value (the lower one of a range) as a quantity;
// false when the figure is not known or its unit isn't one of the program's.
func (f *Figure) Amount() (quantity.Amount, bool) { return f.amountOf(f == nil, false) }

// Upper is Amount for the upper value of a range, and false for a single one.
func (f *Figure) Upper() (quantity.Amount, bool) { return f.amountOf(f == nil || f.To == 0, true) }

func (f *Figure) amountOf(none, upper bool) (quantity.Amount, bool) {
	if none || !f.Known() {
		return quantity.Amount{}, false
	}
	u, ok := quantity.Find(f.Unit)
	if !ok {
		return quantity.Amount{}, false
	}
	value := f.Value
	if upper {
		value = f.To
	}
	return quantity.Amount{Kind: u.Kind, Base: u.ToBase(value), Unit: u.ID, Digits: digitsOf(value)}, true
}

// digitsOf counts the significant digits of a figure as it stands in the card;
// JSON keeps no trailing zeros, so "3.0" counts as one digit here.
func digitsOf(value float64) int {
	s := quantity.Number(value, 15)
	s = strings.TrimLeft(strings.Replace(strings.TrimLeft(s, "-"), ".", "", 1), "0")
	return max(len(s), 1)
}

// limit is the range in which a figure of a card is believable at all; outside
// it is refused as a slip. The bounds are wide on purpose (common practice, no
// source): they catch a wrong unit or key, not an odd bike.
type limit struct {
	kind      quantity.Kind
	low, high float64 // base units
}

var (
	volumeLimit   = limit{quantity.Volume, 0.02, 25}
	bandLimit     = limit{quantity.Volume, 0.01, 5}
	torqueLimit   = limit{quantity.Torque, 0.5, 400}
	lengthLimit   = limit{quantity.Length, 0.1, 500}
	filterLimit   = limit{quantity.Length, 10, 300}
	distanceLimit = limit{quantity.Distance, 50, 100000}
	durationLimit = limit{quantity.Duration, 0.05, 24 * 60}
	warmLimit     = limit{quantity.Temperature, 5, 120}
	turnLimit     = limit{quantity.Angle, 30, 720}
	hoursLimit    = limit{quantity.Duration, 60, 1000 * 60}
	monthsLimit   = limit{quantity.Duration, 20 * 24 * 60, 6000 * 24 * 60}
)

// figure finds what is wrong with a figure by itself.
func (c *checker) figure(where string, f *Figure, l limit) {
	if f == nil {
		return
	}
	if f.Kept != "" {
		c.kept = append(c.kept, where)
	}
	switch f.Standing {
	case FromManual, Measured, Decided, Estimated:
	case Unknown:
		if f.Value != 0 || f.To != 0 {
			c.add(finding.Refuse, "unknown-with-value", where)
		}
		return
	default:
		c.add(finding.Refuse, "unknown-standing", where, "text", string(f.Standing))
		return
	}
	c.figureValue(where, f, l)
	c.figureSource(where, f)
}

func (c *checker) figureValue(where string, f *Figure, l limit) {
	u, ok := quantity.Find(f.Unit)
	if !ok || u.Kind != l.kind {
		c.add(finding.Refuse, "unknown-unit", where+"/unit", "text", f.Unit, "kind", string(l.kind))
		return
	}
	low, high := u.ToBase(f.Value), u.ToBase(f.Value)
	if f.To != 0 {
		high = u.ToBase(f.To)
	}
	shown := quantity.Amount{Kind: u.Kind, Base: low, Unit: u.ID, Digits: 6}.Print(f.Unit)
	switch {
	case f.Value < 0 && u.Kind != quantity.Temperature:
		c.add(finding.Refuse, "negative", where+"/value", "value", finding.Clip(shown))
	case !quantity.AtLeast(low, l.low) || !quantity.AtMost(high, l.high):
		if quantity.AtLeast(low, l.low) {
			shown = quantity.Amount{Kind: u.Kind, Base: high, Unit: u.ID, Digits: 6}.Print(f.Unit)
		}
		c.add(finding.Refuse, "not-believable", where+"/value", "value", finding.Clip(shown),
			"low", bound(l, l.low), "high", bound(l, l.high))
	case f.To != 0 && high < low:
		c.add(finding.Refuse, "range-reversed", where+"/to", "value", shown)
	}
}

// bound prints a limit in its base unit.
func bound(l limit, base float64) string {
	return quantity.Number(base, 6) + " " + quantity.Base(l.kind)
}

func (c *checker) figureSource(where string, f *Figure) {
	switch {
	case f.Standing == FromManual && f.Source == "":
		c.add(finding.Doubt, "no-source", where)
	case f.Standing != FromManual && f.Method == "":
		c.add(finding.Doubt, "no-method", where)
	}
	if f.Source != "" && !c.sources[f.Source] {
		c.add(finding.Refuse, "unknown-source", where+"/source", "text", f.Source)
	}
}
