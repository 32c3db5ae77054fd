package manual

// leastSpaced is how many letters a word has at least that is set with blanks between them, and
// leastOther how many of them are others: "R I R I R" are marks of a schedule.
const leastSpaced, leastOther = 5, 4

// closeSpaced puts words together that a title sets with a blank between their letters:
// "G R E V E N". Such a word is a cell of its line, or the whole line.
func closeSpaced(tokens []token, words *lexemes) []token {
	return rewritten(tokens, func(at int) ([]token, int) {
		end, others := at, 0
		words.spelled = words.spelled[:0]
		for ; end < len(tokens) && oneLetter(&tokens[end]) && (end == at || tokens[end].gap == blank); end++ {
			if !repeats(tokens[at : end+1]) {
				others++
			}
			words.spelled = append(words.spelled, tokens[end].text...)
		}
		switch {
		case end == at:
			return nil, at + 1
		case end-at < leastSpaced, others < leastOther, at > 0 && tokens[at].gap != wide, end < len(tokens) && tokens[end].gap != wide:
			return nil, end
		}
		t := tokens[at]
		t.lexeme, t.to, t.end = words.of(word, words.spelled), tokens[end-1].to, tokens[end-1].end
		return []token{t}, end
	})
}

// oneLetter reports whether a token is a single capital.
func oneLetter(t *token) bool { return t.kind == word && len(t.fold) == 1 && t.upper }

// repeats reports whether the last token stands among those before it.
func repeats(tokens []token) bool {
	last := len(tokens) - 1
	for i := range last {
		if tokens[i].text == tokens[last].text {
			return true
		}
	}
	return false
}
