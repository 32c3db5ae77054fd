package manual

// nearlyNot reports whether a word between two tokens is one letter off a word for "not" or
// "without", and nothing that anybody knows: "filter mot changed" must not be read as if it
// stood there without the word.
func (r *readings) nearlyNot(from, to int) bool {
	for i := from; i < to; i++ {
		w := r.places[i].fold
		if !r.unknown(i) {
			continue
		}
		for _, not := range r.words.nots() {
			if oneLetterOff(w, not) {
				return true
			}
		}
	}
	return false
}

// oneLetterOff reports whether two words of three letters and more differ in one of them.
func oneLetterOff(a, b string) bool {
	if len(a) != len(b) || len(a) < 3 {
		return false
	}
	count := 0
	for i := range len(a) {
		if a[i] != b[i] {
			count++
		}
	}
	return count == 1
}
