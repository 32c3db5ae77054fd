package quote

// Tenths rounds minutes of work up to a tenth of an hour, in thousandths of an
// hour: the habit of workshops (common practice, no source).
func Tenths(minutes float64) int {
	const tenth, hair = 6, 1e-6 // minutes; the addend forgives the last bit
	n := int(minutes / tenth)
	if minutes-float64(n*tenth) > hair {
		n++
	}
	return n * One / 10
}
