package pagetest

import (
	"strings"

	"pgregory.net/rapid"
)

// confusions are what a phone takes for each other when it recognises text: from the
// tables of a free recogniser for English letters; of figures, from memory.
var confusions = [][2]string{
	{"0", "O"}, {"1", "l"}, {"1", "I"}, {"l", "1"}, {"m", "rn"}, {"n", "m"}, {"i", "l"}, {"I", "l"}, {"O", "0"}, {"·", "-"}, {"·", "."},
}

// Photographed makes of a page what a phone recognises in a photo of it: a letter here and
// there is taken for another. What it says is still the same.
func Photographed(t *rapid.T, p *Page) *Page {
	q := *p
	q.Kind = Photo
	spoil := map[string]string{}
	var text strings.Builder
	for line := range strings.Lines(p.Text) {
		bad := line
		for range rapid.IntRange(0, 1).Draw(t, "confusions") {
			c := rapid.SampledFrom(confusions).Draw(t, "confusion")
			if n := strings.Count(bad, c[0]); n > 0 {
				bad = replaceNth(bad, c[0], c[1], rapid.IntRange(0, n-1).Draw(t, "place"))
			}
		}
		spoil[strings.TrimRight(line, "\n")] = strings.TrimRight(bad, "\n")
		text.WriteString(bad)
	}
	q.Text = text.String()
	moved := func(quote string) string {
		for line, bad := range spoil {
			if strings.Contains(line, quote) {
				return bad
			}
		}
		return quote
	}
	q.Truth, q.May, q.Not = nil, nil, nil
	for _, f := range p.Truth {
		f.Quote = moved(f.Quote)
		q.Truth = append(q.Truth, f)
	}
	for _, f := range p.May {
		f.Quote = moved(f.Quote)
		q.May = append(q.May, f)
	}
	for _, n := range p.Not {
		q.Not = append(q.Not, moved(n))
	}
	return &q
}

func replaceNth(text, old, with string, n int) string {
	at := 0
	for ; n >= 0; n-- {
		next := strings.Index(text[at:], old)
		if n == 0 {
			return text[:at+next] + with + text[at+next+len(old):]
		}
		at += next + len(old)
	}
	return text
}
