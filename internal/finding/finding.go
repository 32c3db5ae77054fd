// Package finding holds the one form in which every check of the program
// speaks: what is wrong, where, how bad it is, and with which values. It holds
// no sentence; the word catalogue (specs/words) has one for each code.
package finding

// Grade says how bad a finding is.
type Grade string

const (
	// Refuse: the input can't be used as it stands.
	Refuse Grade = "refuse"
	// Doubt: the input can be used, but something looks wrong.
	Doubt Grade = "doubt"
	// Note: worth knowing, nothing to mend.
	Note Grade = "note"
)

// Finding is one remark of a check. Code is an id of the word catalogue
// ("finding.<code>" says what is wrong, "finding.<code>.do" what to do about
// it); Where is an RFC 6901 JSON pointer into the input; Values fill the
// placeholders of the sentence.
type Finding struct {
	Code   string
	Where  string
	Grade  Grade
	Values map[string]string
}

// Values gives the values of a sentence from names and texts in turn; nil for
// none. It is smaller in the core than a literal of a map.
func Values(pairs ...string) map[string]string {
	if len(pairs) < 2 {
		return nil
	}
	values := make(map[string]string, len(pairs)/2)
	for i := 0; i+1 < len(pairs); i += 2 {
		values[pairs[i]] = pairs[i+1]
	}
	return values
}

// Refused reports whether any of the findings makes the input unusable.
func Refused(list []Finding) bool {
	for _, f := range list {
		if f.Grade == Refuse {
			return true
		}
	}
	return false
}

// Refusal is the list of a check that finds one thing wrong, which makes the
// input unusable.
func Refusal(code, where string, values ...string) []Finding {
	return []Finding{{Code: code, Where: where, Grade: Refuse, Values: Values(values...)}}
}

// Below puts a JSON pointer before the place of each finding, and gives the list:
// they were found in a part of the input that stands there.
func Below(at string, list []Finding) []Finding {
	for n := range list {
		list[n].Where = at + list[n].Where
	}
	return list
}

// At gives each finding that place, whatever it had, and gives the list.
func At(place string, list []Finding) []Finding {
	for n := range list {
		list[n].Where = place
	}
	return list
}
