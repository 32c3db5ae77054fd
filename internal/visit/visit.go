// Package visit works out from facts what stands between whoever does the work and the
// customer: what was said, found and asked, what it may cost, and who signed for it.
//
//	Of(facts) -> Visit    pure
//
// It holds no sentence: words are entries of the word catalogue, and money is whole
// minor units.
package visit

import (
	"tidysump/internal/finding"
	"tidysump/internal/quote"
	"tidysump/internal/wire"
)

// Visit is where a visit stands: a replay of its facts.
type Visit struct {
	Stage      Progress
	Arrived    string // time of the first fact; empty while nothing was told
	Said       []Said // what holds of what was told at arrival, in the order of Asks
	Found      []Found
	Troubles   []Snag
	Unanswered []string // ids of the troubles that nobody has decided on, as long as the bike is here
	// Most is what it may cost as it was agreed at arrival, Limit that with the prices
	// of what the customer agreed to later; nil while nothing was agreed.
	Most, Limit *Money
	Costs       *Money // as the bill says, else the estimate; nil while there is neither
	Over        *Money // how much more it costs than it may; nil where it doesn't, or nobody can tell
	Promised    string // when it is to be ready, on the phone's own clock: "2026-11-30T17:00"
	Signatures  []Signature
	Handed      string // time of handing over; empty before
	HandedDay   string // the phone's own
	HandedID    string // of the fact that says so
	// Agreement is what a signature signs: handed back with it as its text. Empty while
	// there is nothing to sign.
	Agreement string
	Findings  []finding.Finding
}

// Members names the members of a visit.
func (v *Visit) Members(m *wire.Members) {
	wire.Text(m, "stage", &v.Stage, wire.Required)
	m.String("arrived", &v.Arrived)
	wire.List(m, "said", &v.Said)
	wire.List(m, "found", &v.Found)
	wire.List(m, "troubles", &v.Troubles)
	wire.Texts(m, "unanswered", &v.Unanswered)
	wire.Optional(m, "most", &v.Most)
	wire.Optional(m, "limit", &v.Limit)
	wire.Optional(m, "costs", &v.Costs)
	wire.Optional(m, "over", &v.Over)
	m.String("promised", &v.Promised)
	wire.List(m, "signatures", &v.Signatures)
	m.String("handed", &v.Handed)
	m.String("handedDay", &v.HandedDay)
	m.String("handedID", &v.HandedID)
	m.String("agreement", &v.Agreement)
	wire.Findings(m, "findings", &v.Findings)
}

// Progress is how far a visit has come.
type Progress string

// The stages, in order.
const (
	Begun   Progress = "begun"   // nothing was agreed yet
	Agreed  Progress = "agreed"  // it is known what is to be done
	Asking  Progress = "asking"  // trouble was found, and the customer has not decided
	Ready   Progress = "ready"   // the work is done, the bike still here
	Gone    Progress = "gone"    // handed over
	Working Progress = "working" // the work has begun
)

// Stages lists the stages.
var Stages = []Progress{Begun, Agreed, Working, Asking, Ready, Gone}

// Money is an amount in whole minor units of its currency.
type Money struct {
	Minor    int
	Digits   int // decimals of the currency
	Currency string
}

// Members names the members of an amount.
func (a *Money) Members(m *wire.Members) {
	m.Int("minor", &a.Minor)
	m.Int("digits", &a.Digits)
	m.String("currency", &a.Currency, wire.Required)
}

// readMoney reads an amount as it was typed; a fault is the code of a finding.
func readMoney(text, currency string) (*Money, string) {
	digits, known := quote.Digits(currency)
	if !known {
		return nil, "unknown-currency"
	}
	minor, fault := quote.Decimal(text, digits, quote.Most)
	if fault != "" {
		return nil, fault
	}
	return &Money{minor, digits, currency}, ""
}
