package wire

// Floats writes a member that is an array of numbers, such as the points of a
// curve. Nothing that is read has one.
func (m *Members) Floats(name string, list []float64) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: NumberKind, Many: true}, nil)
		return
	}
	if m.Reading() || len(list) == 0 {
		return
	}
	m.out.name(name)
	m.out.open('[')
	for _, v := range list {
		m.out.float(v)
	}
	m.out.close(']')
}
