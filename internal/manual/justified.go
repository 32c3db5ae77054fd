package manual

// justified closes gaps of two blanks that part no cells: a photo's text shows them where lines
// are set to one width, before small words, and before figures behind a small word.
func justified(rows []row) {
	for _, r := range rows {
		for i := 1; i < len(r.tokens); i++ {
			t, before := &r.tokens[i], &r.tokens[i-1]
			if t.gap != wide || t.led || t.col-before.end != 2 || before.kind != word {
				continue
			}
			if small(r.tokens[i:i+1]) || t.kind == number && small(r.tokens[i-1:i]) {
				t.gap = blank
			}
		}
	}
}
