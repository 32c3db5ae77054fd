package manual

import "strings"

// A program that has just started reads slowly: browsers make code fast while it runs, and
// a dictionary is made when it is first needed. So both are done before there is a page,
// with short texts that are read for nothing, one at a time: whoever asks for something
// meanwhile waits for one of them at most.

// warmTexts is how many serve: with twice as many a text of 100 kB was read as fast.
const warmTexts = 10

// warmBytes is the most bytes of terms in one.
const warmBytes = 500

// warmFigures stand behind the terms in turns, so that all that reads figures runs.
var warmFigures = [...]string{"  25 N·m (18 lbf·ft)\n", " 1.2 L (1.3 US qt), ", "  M12 x 1.5  ", " 6,000 km or 12 months.\n", " SAE 10W-40, API SG\n", " l5 Nrn\n", " 1 959-1964; ", " 17 mm, 5 min\n"}

// WarmText gives the n-th text to warm up on, n from 0, made of a language's own terms, and
// whether there is one behind it. The first is empty, for which the dictionary is made, the
// next ones grow as more of the code is ready, and every other is spoilt as by a photo. A
// language that has no terms is taken for the first that has.
func WarmText(tag string, n int) (text string, more bool) {
	more = n >= 0 && n+1 < warmTexts
	if n <= 0 || n >= warmTexts {
		return "", more
	}
	l := languageOfTag(tag)
	if l == nil {
		l = allLanguages()[0]
	}
	lines := l.lines[n*len(l.lines)/warmTexts:]
	var b strings.Builder
	b.WriteString(strings.Join(l.function, " "))
	for i, words := range strings.Split(lines[:min(20*n*n, warmBytes, len(lines))], "|") {
		b.WriteString(words)
		b.WriteString(warmFigures[(i+n)%len(warmFigures)])
	}
	text = b.String()
	if n%2 == 0 {
		text = strings.ReplaceAll(text, "l", "1")
	}
	return text, more
}
