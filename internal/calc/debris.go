package calc

import (
	"tidysump/internal/debris"
	"tidysump/internal/finding"
)

var debrisFields = fieldsOf(debris.Asks[:])

// fieldsOf makes fields of what the signs are, so that a step that looks and the
// calculation ask for the same.
func fieldsOf(asks []debris.Asked) []field {
	fields := make([]field, len(asks))
	for n := range asks {
		a := &asks[n]
		fields[n] = field{name: a.Name, kind: Choice, words: a.Words, family: a.Family, front: a.Front, when: a.When()}
		if len(a.Words) == 0 {
			fields[n].kind = Yes
		}
		if fields[n].when != nil {
			fields[n].on = asks[0].Name
		}
	}
	return fields
}

// judgeDebris says whether what came out is a reason to stop.
func judgeDebris(f *Form, a *Answer) {
	var s debris.Sign
	for n := range f.given {
		s.Set(n, int(f.given[n].number))
	}
	verdict, reasons := debris.Judge(&s)
	a.word("verdict", "debris."+debris.Verdicts[verdict])
	for _, r := range reasons {
		grade := finding.Doubt
		if r.Verdict <= debris.Normal {
			grade = finding.Note
		}
		f.say(grade, r.Code, "")
	}
	actions := debris.Next(verdict, reasons, false)
	for n := range actions {
		actions[n] = "next." + actions[n]
	}
	a.list("actions", actions)
}
