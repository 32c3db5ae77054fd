package wire

import (
	"strconv"

	"tidysump/internal/finding"
)

// What is told of one text, and of one element of a list: of the rest one finding says
// that there is more, and refuses what that would, so that nothing passes for read that
// wasn't.
const (
	mostFound       = 5000
	mostFoundInEach = 10
)

// report collects what is found in reading a text.
type report struct{ findings []finding.Finding }

// add reports something of a value, or of what should stand below it.
func (r *report) add(code string, n *node, below string, grade finding.Grade, values ...string) {
	switch len(r.findings) {
	case mostFound:
		r.findings = append(r.findings, finding.Refusal("more-findings", "/", "most", strconv.Itoa(mostFound))...)
	case mostFound + 1:
	default:
		f := finding.Finding{Code: code, Where: n.where() + below, Grade: grade, Values: finding.Values(values...)}
		if f.Where == "" {
			f.Where = "/"
		}
		r.findings = append(r.findings, f)
	}
}

// element reads an element of a list.
func (r *report) element(n *node, into Record, unknown finding.Grade) {
	before := len(r.findings)
	readObject(n, into, r, unknown)
	if len(r.findings)-before > mostFoundInEach {
		grade := finding.Doubt
		if finding.Refused(r.findings[before+mostFoundInEach-1:]) {
			grade = finding.Refuse
		}
		r.findings = r.findings[:before+mostFoundInEach-1]
		r.add("more-findings", n, "", grade, "most", strconv.Itoa(mostFoundInEach))
	}
}

// usable reports what is wrong with a value whose text can be read, and whether that is
// nothing.
func (r *report) usable(n *node) bool {
	switch n.flaw {
	case tooLong:
		r.add("text-too-long", n, "", finding.Refuse, "most", strconv.Itoa(MaxText))
	case tooDeep:
		r.add("too-deep", n, "", finding.Refuse, "most", strconv.Itoa(MaxDepth))
	case nameTwice:
		r.add("name-twice", n, "/"+escapePointer(n.text), finding.Refuse, "name", finding.Clip(n.text))
	}
	return n.flaw == 0
}

// isText reports whether a value is a text that can be used.
func (r *report) isText(n *node) bool {
	if n.kind != kindString {
		r.add("wrong-type", n, "", finding.Refuse, "want", "string")
		return false
	}
	return r.usable(n)
}
