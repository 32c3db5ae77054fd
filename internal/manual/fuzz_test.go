package manual_test

import (
	"testing"
	"unicode/utf8"

	"tidysump/internal/manual"
	"tidysump/internal/manual/pagetest"
	"tidysump/internal/place"
)

// FuzzRead: any text is read without panic; every reading is of the what-list, and
// quotes a short piece of the text as given; what is not sure says why.
func FuzzRead(f *testing.F) {
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		f.Fatal(err)
	}
	for _, p := range pages {
		f.Add(p.Text)
	}
	for _, text := range []string{"", "\n\n", "\r\n\t", "Oil drain plug", "25 N·m", "Oil drain plug 25 N·m", "\u200b\u00ad\ufeff", "Oil ½ ¼ L ± ± 3 – – N·m",
		"\xff\xfe oil drain plug 2\xff5 N·m", "Ölablaßschraube ２５ Ｎ・ｍ", "oil-\ndrain-\nplug-\n25-\nN·m", "(((((oil 1 L)", "M M12 x x 1.5 x", "SAE SAE 10W 10W-", "every every 1,000 or km", "Cover 10 N·m", "wait two minutes or"} {
		f.Add(text)
	}
	whats := map[string]bool{}
	for _, what := range place.Whats() {
		whats[what] = true
	}
	f.Fuzz(func(t *testing.T, text string) {
		for _, r := range manual.Read(text, "").Readings {
			if r.Quote.From < 0 || r.Quote.From >= r.Quote.To || r.Quote.To > len(text) || r.Quote.To-r.Quote.From > 300 {
				t.Fatalf("%q: %s quotes %v", text, r.What, r.Quote)
			}
			for _, at := range []int{r.Quote.From, r.Quote.To} {
				if at < len(text) && utf8.ValidString(text) && !utf8.RuneStart(text[at]) {
					t.Fatalf("%q: %s quotes half a letter at %d", text, r.What, at)
				}
			}
			if r.Sure != (len(r.Doubts) == 0) || r.Text == "" && r.Sure || !whats[r.What] {
				t.Fatalf("%q: %+v", text, r)
			}
		}
	})
}

// BenchmarkRead: the time for 100 kB of pages, and beside it for a half and a tenth of it,
// which must take a half and a tenth of the time.
func BenchmarkRead(b *testing.B) {
	pages, err := pagetest.Load("../../testdata/pages")
	if err != nil {
		b.Fatal(err)
	}
	var text string
	for len(text) < 100_000 {
		for _, p := range pages {
			text += p.Text + "\n\n"
		}
	}
	for _, size := range []struct {
		name  string
		bytes int
	}{{"10kB", 10_000}, {"50kB", 50_000}, {"100kB", 100_000}} {
		cut := text[:size.bytes]
		b.Run(size.name, func(b *testing.B) {
			b.SetBytes(int64(len(cut)))
			for b.Loop() {
				manual.Read(cut, "")
			}
		})
	}
}
