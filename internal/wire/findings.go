package wire

import "tidysump/internal/finding"

// findingRecord gives finding.Finding its wire form; the package finding can't
// name it itself, because reading reports findings.
type findingRecord finding.Finding

func (f *findingRecord) Members(m *Members) {
	m.String("code", &f.Code, Required)
	m.String("where", &f.Where, Required)
	Text(m, "grade", &f.Grade, Required)
	m.TextMap("values", &f.Values)
}

// Findings is a member that is an array of findings.
func Findings(m *Members, name string, list *[]finding.Finding) {
	records := make([]findingRecord, len(*list))
	for i, f := range *list {
		records[i] = findingRecord(f)
	}
	List(m, name, &records)
	*list = make([]finding.Finding, len(records))
	for i, r := range records {
		(*list)[i] = finding.Finding(r)
	}
}
