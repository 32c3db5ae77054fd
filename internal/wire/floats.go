package wire

// Floats writes a member that is an array of numbers, such as the points of a
// curve. Nothing that is read has one.
func (m *Members) Floats(name string, list []float64) {
	m.numbers(name, NumberKind, len(list), func(i int) float64 { return list[i] })
}

// Ints is Floats for whole numbers, such as places in a list.
func (m *Members) Ints(name string, list []int) {
	m.numbers(name, IntegerKind, len(list), func(i int) float64 { return float64(list[i]) })
}

func (m *Members) numbers(name string, kind Kind, count int, number func(i int) float64) {
	if describes && m.described != nil {
		m.describe(Member{Name: name, Kind: kind, Many: true}, nil)
		return
	}
	if m.Reading() || count == 0 {
		return
	}
	m.out.name(name)
	m.out.open('[')
	for i := range count {
		m.out.float(number(i))
	}
	m.out.close(']')
}
