package visit

import (
	"slices"

	"tidysump/internal/finding"
	"tidysump/internal/ledger"
	"tidysump/internal/wire"
)

// Moments at which somebody signs.
const (
	AtArrival  = "arrival"
	AtHandover = "handover"
)

// Moments lists them.
var Moments = []string{AtArrival, AtHandover}

// Signature is what somebody signed with a finger: the last of its moment.
type Signature struct {
	ID        string
	Moment    string // AtArrival or AtHandover
	Time, Day string // Day is the phone's own
	Name      string // who signed, if that was written down
	Path      string // of an SVG that is 1000 wide and 400 high
	Agreement Agreement
	Known     bool     // what was agreed then can be read
	Changed   []string // word ids of what is otherwise now
}

// Members names the members of a signature.
func (s *Signature) Members(m *wire.Members) {
	m.String("id", &s.ID, wire.Required)
	m.String("moment", &s.Moment, wire.Required)
	m.String("time", &s.Time, wire.Required)
	m.String("day", &s.Day)
	m.String("name", &s.Name)
	m.String("path", &s.Path, wire.Required)
	m.Object("agreement", &s.Agreement)
	m.Bool("known", &s.Known)
	wire.Texts(m, "changed", &s.Changed)
}

// sign takes a signature in, in place of one of the same moment. What is about to be
// signed has to be what stands: another window or phone may have changed it meanwhile.
func (r *replayer) sign(f *ledger.Fact) {
	path, fault := pathOf(f.Value)
	now := r.agreement()
	switch {
	case !slices.Contains(Moments, f.What):
		r.Fault(f, "unknown-word", "/what", finding.Refuse, "text", finding.Clip(f.What))
		return
	case fault != "":
		r.Fault(f, fault, "/value", finding.Refuse)
		return
	case f == r.New && now.text() == "":
		r.Fault(f, "nothing-agreed", "/text", finding.Refuse)
		return
	case f == r.New && f.Text != now.text():
		r.Fault(f, "agreed-otherwise", "/text", finding.Refuse)
		return
	case !r.Short(f, "/signs/name", f.Signs["name"], ShortLetters):
		return
	}
	s := Signature{ID: f.ID, Moment: f.What, Time: f.Time, Day: f.Day, Name: f.Signs["name"], Path: path}
	s.Agreement, s.Known = readAgreement(f.Text)
	r.v.Signatures = slices.DeleteFunc(r.v.Signatures, func(other Signature) bool { return other.Moment == s.Moment })
	r.v.Signatures = append(r.v.Signatures, s)
}

// compare says of each signature what is otherwise now than it was signed for.
func (r *replayer) compare() {
	now := r.agreement()
	for n := range r.v.Signatures {
		if s := &r.v.Signatures[n]; s.Known {
			s.Changed = s.Agreement.unlike(&now, s.Moment == AtArrival)
		}
	}
}
