package quantity

// Upper and Lower change the letters of ASCII alone: designations of units,
// threads, grades and marks have no others, and Unicode's tables, which package
// strings goes by, would cost the core 2 kB.
func Upper(s string) string { return shift(s, 'a', 'A') }

// Lower is Upper the other way round.
func Lower(s string) string { return shift(s, 'A', 'a') }

// shift moves the letters that begin at from to those that begin at to.
func shift(s string, from, to byte) string {
	letters := []byte(s)
	for i, c := range letters {
		if c >= from && c < from+26 {
			letters[i] = c - from + to
		}
	}
	return string(letters)
}
