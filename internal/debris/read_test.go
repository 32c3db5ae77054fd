package debris_test

import (
	"slices"
	"testing"

	"tidysump/internal/debris"
)

func TestRead(t *testing.T) {
	for _, c := range []struct {
		answers map[string]string
		want    debris.Sign
		wrong   []string
	}{
		{nil, debris.Sign{}, nil},
		{map[string]string{"found": "sealant", "size": "larger", "amount": "many", "colour": "reddish", "oil": "burnt"},
			debris.Sign{Bit: debris.Sealant, Size: debris.Larger, Amount: debris.Many, Colour: debris.Reddish, Oil: debris.Burnt}, nil},
		{map[string]string{"noise": "stays", "lamp": "yes", "more": "yes", "again": "yes", "firstService": "yes"},
			debris.Sign{Noise: debris.Stays, Lamp: true, More: true, Again: true, FirstService: true}, nil},
		{map[string]string{"found": "fuzz", "depth": "two", "magnet": "not-tried"},
			debris.Sign{Bit: debris.Fuzz, Depth: debris.TwoMillimetres, Magnet: debris.NotTried}, nil},
		{map[string]string{"found": "", "lamp": "no", "more": ""}, debris.Sign{}, nil},
		// As earlier versions said it.
		{map[string]string{"oil": "fuel", "noise": "yes"}, debris.Sign{Oil: debris.Fuel, Noise: debris.Fades}, nil},
		{map[string]string{"noise": "no"}, debris.Sign{Noise: debris.NoNoise}, nil},
		{map[string]string{"found": "cheese", "lamp": "maybe", "size": "two", "smell": "sweet", "age": "old"},
			debris.Sign{Size: debris.TwoMillimetres}, []string{"found", "lamp", "age", "smell"}},
		// A word of another question is no answer.
		{map[string]string{"found": "two", "amount": "yes"}, debris.Sign{}, []string{"found", "amount"}},
	} {
		got, wrong := debris.Read(c.answers)
		if got != c.want || !slices.Equal(wrong, c.wrong) {
			t.Errorf("Read(%v) = %+v, wrong %v; want %+v, wrong %v", c.answers, got, wrong, c.want, c.wrong)
		}
	}
}

// Every word that can be chosen is read as its place.
func TestRead_EveryWord(t *testing.T) {
	for n, a := range debris.Asks {
		for place, word := range a.Words {
			var want debris.Sign
			want.Set(n, place+1)
			if got, wrong := debris.Read(map[string]string{a.Name: word}); got != want || wrong != nil || got == (debris.Sign{}) {
				t.Errorf("%s %q: %+v, wrong %v; want %+v", a.Name, word, got, wrong, want)
			}
		}
	}
}
