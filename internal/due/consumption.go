package due

// Use is how much oil an engine uses, in a word.
type Use string

// The uses, by litres per 1,000 km: up to 0.1, 0.3, 0.5 and more. Common
// practice, no source for motorcycles; published limits for cars lie between 0.29
// and 1.0.
const (
	Little Use = "little"
	Usual  Use = "usual"
	High   Use = "high"
	Undue  Use = "undue"
)

// ShortestSpan is the least distance in km over which a use says anything:
// common practice, no source.
const ShortestSpan = 500

// Consumption gives the litres per 1,000 km from the litres that were lost
// within a distance in km; ok is false over less than ShortestSpan.
func Consumption(lost, distance float64) (perThousand float64, ok bool) {
	if distance < ShortestSpan {
		return 0, false
	}
	return lost / distance * 1000, true
}

// Judge gives the word for litres per 1,000 km.
func Judge(perThousand float64) Use {
	switch {
	case perThousand <= 0.1:
		return Little
	case perThousand <= 0.3:
		return Usual
	case perThousand <= 0.5:
		return High
	}
	return Undue
}
