package ledger

import (
	"strconv"
	"strings"
	"unicode/utf8"

	"tidysump/internal/date"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
)

// Input are the facts that an operation is asked about. An operation's own input holds
// it and names its members with the others.
type Input struct {
	Facts []Fact
	// Adding: the last of the facts is about to be written, and may be refused. What
	// stands already never is.
	Adding bool
}

// Members names the members.
func (i *Input) Members(m *wire.Members) {
	wire.List(m, "facts", &i.Facts)
	m.Bool("adding", &i.Adding)
}

// Reading are the facts that stand, and what is to be said of those that came in.
type Reading struct {
	Standing []*Fact // as Standing gives them
	New      *Fact   // the one that is about to be written; nil where there is none
	Findings []finding.Finding
}

// unreadShown is how many of the facts that can't be read are told.
const unreadShown = 20

// Read gives what stands, and finds what is wrong with the facts whatever they mean.
func (i *Input) Read() *Reading {
	r := &Reading{}
	for at := range i.Facts {
		i.Facts[at].at = at
	}
	if i.Adding && len(i.Facts) > 0 {
		r.New = &i.Facts[len(i.Facts)-1]
	}
	unread := 0
	for at := range i.Facts {
		f := &i.Facts[at]
		if f.usable() {
			continue
		}
		if unread++; unread <= unreadShown || f == r.New {
			r.unusable(f)
		}
	}
	list := once(i.Facts)
	gone, circles := takenBack(list)
	known := make(map[string]bool, len(list))
	for _, f := range list {
		known[f.key()] = true
	}
	for _, f := range list {
		switch {
		case f.Kind != Undo:
			if !gone[f.key()] {
				r.Standing = append(r.Standing, f)
			}
		case !known[f.of(f.What)]:
			r.Fault(f, "undo-unknown", "/what", finding.Refuse, "text", finding.Clip(f.What))
		case circles[f.key()]:
			r.Fault(f, "undo-of-undo", "/what", finding.Refuse)
		}
	}
	if f := r.New; f != nil {
		r.Short(f, "/what", f.What, ValueLetters)
		r.Short(f, "/text", f.Text, TextLetters)
	}
	return r
}

func (r *Reading) unusable(f *Fact) {
	switch {
	case f.unread != "":
		r.Fault(f, "fact-unread", "", finding.Refuse, "member", f.unread)
	case f.ID == "":
		r.Fault(f, "missing", "/id", finding.Refuse, "name", "id")
	case !date.Valid(f.Time):
		r.Fault(f, "bad-time", "/time", finding.Refuse, "text", finding.Clip(f.Time))
	}
}

// Fault adds a finding about a fact, in its member where, such as "/value"; values are
// names and texts in turn. Only what is about to be written can be refused: of any
// other fact a refusal becomes a doubt. It reports whether the fact is refused, or
// would have been.
func (r *Reading) Fault(f *Fact, code, where string, grade finding.Grade, values ...string) bool {
	refused := grade == finding.Refuse
	if refused && f != r.New {
		grade = finding.Doubt
	}
	r.Findings = append(r.Findings, finding.Finding{Code: code, Where: f.Where(where), Grade: grade, Values: finding.Values(values...)})
	return refused
}

// Refused reports whether what is about to be written is refused so far.
func (r *Reading) Refused() bool { return finding.Refused(r.Findings) }

// Short refuses a text of a fact that has more letters than that, and reports whether
// it is short enough. What stands already is taken as it is.
func (r *Reading) Short(f *Fact, where, text string, letters int) bool {
	if f != r.New || utf8.RuneCountInString(text) <= letters {
		return true
	}
	return !r.Fault(f, "text-too-long", where, finding.Refuse, "most", strconv.Itoa(letters))
}

// Told refuses a text of a fact that says nothing, and reports whether it says
// something. name is what it is called, a word id after "@" or a text.
func (r *Reading) Told(f *Fact, where, text, name string) bool {
	if strings.TrimSpace(text) != "" {
		return true
	}
	return !r.Fault(f, "told-nothing", where, finding.Refuse, "name", name)
}

// Unknown tells of a fact of a kind that its room doesn't know: another version wrote
// it, and it has no effect.
func (r *Reading) Unknown(f *Fact) {
	r.Fault(f, "unknown-event", "/kind", finding.Refuse, "text", finding.Clip(string(f.Kind)))
}

// Where gives the place of a member of a fact in the input, of the fact itself for "".
func (f *Fact) Where(member string) string { return "/facts/" + strconv.Itoa(f.at) + member }
