package card_test

import (
	"testing"

	"tidysump/internal/card"
	"tidysump/internal/finding"
	"tidysump/internal/wire"
	"tidysump/specs"
)

// FuzzRead: any text gives a card without a refusal or findings with codes; a
// card that passes still passes when it is written and read again.
func FuzzRead(f *testing.F) {
	for _, text := range specs.Cards() {
		f.Add(text)
	}
	f.Add([]byte(all))
	f.Add([]byte(`{"format":"tidysump-card","version":1}`))
	f.Add([]byte(`{"format":"tidysump-card","version":1,"id":"a","make":"","model":"","layout":"scooter","circuits":[{"id":"b","role":"engine"}]}`))
	f.Fuzz(func(t *testing.T, in []byte) {
		c, list := card.Read(in)
		for _, found := range list {
			if found.Code == "" || found.Where == "" || found.Grade == "" {
				t.Fatalf("Read(%q): a finding without code, place or grade: %+v", in, found)
			}
		}
		if finding.Refused(list) {
			return
		}
		text := wire.Write(c)
		if _, again := card.Read(text); finding.Refused(again) {
			t.Fatalf("Read(%q) is refused when written and read again: %v", in, again)
		}
	})
}
