package debris_test

import (
	"testing"

	"tidysump/internal/debris"
)

func TestCompare(t *testing.T) {
	flakes := func(size, amount int) debris.Sign {
		return debris.Sign{Bit: debris.Flakes, Size: size, Amount: amount}
	}
	deep := func(depth int) debris.Sign { return debris.Sign{Bit: debris.Fuzz, Depth: depth} }
	bit := func(b int) debris.Sign { return debris.Sign{Bit: b} }
	for _, c := range []struct {
		what        string
		now, before debris.Sign
		want        debris.Comparison
	}{
		{"fuzz after paste", bit(debris.Fuzz), bit(debris.Paste), debris.More},
		{"paste after flakes", bit(debris.Paste), flakes(debris.TwoMillimetres, debris.Few), debris.Less},
		{"paste twice", bit(debris.Paste), bit(debris.Paste), debris.Same},
		{"a heap after fuzz", bit(debris.Heap), bit(debris.Fuzz), debris.More},
		{"a heap after nothing", bit(debris.Heap), bit(debris.Nothing), debris.More},
		{"a heap after glitter: who knows", bit(debris.Heap), bit(debris.Glitter), debris.Apart},
		{"fuzz twice, deeper", deep(debris.FiveMillimetres), deep(debris.TwoMillimetres), debris.More},
		{"fuzz twice, not measured now", bit(debris.Fuzz), deep(debris.TwoMillimetres), debris.Apart},
		{"sealant after nothing", bit(debris.Sealant), bit(debris.Nothing), debris.More},
		{"nothing after a part", bit(debris.Nothing), bit(debris.Part), debris.Less},
		{"clutch after paste: another thing", bit(debris.Clutch), bit(debris.Paste), debris.Apart},
		{"nothing told before", bit(debris.Fuzz), debris.Sign{Oil: debris.Dark}, debris.Apart},
		{"flakes twice, larger", flakes(debris.FiveMillimetres, debris.Few), flakes(debris.TwoMillimetres, debris.Few), debris.More},
		{"flakes twice, more of them", flakes(debris.TwoMillimetres, debris.Many), flakes(debris.TwoMillimetres, debris.Few), debris.More},
		{"flakes twice, larger and fewer", flakes(debris.FiveMillimetres, debris.Few), flakes(debris.TwoMillimetres, debris.Many), debris.Apart},
		{"flakes twice, not measured now", flakes(0, debris.Few), flakes(debris.TwoMillimetres, debris.Few), debris.Apart},
		{"flakes twice, never measured", flakes(0, 0), flakes(0, 0), debris.Apart},
		{"flakes twice, the same", flakes(debris.TwoMillimetres, debris.Few), flakes(debris.TwoMillimetres, debris.Few), debris.Same},
	} {
		if got := debris.Compare(&c.now, &c.before); got != c.want {
			t.Errorf("%s: %s, want %s", c.what, debris.Comparisons[got], debris.Comparisons[c.want])
		}
	}
}

// Over all that can be reported of bits: turned round, more is less; and what is more
// than, or the same as, what is more than a third is more than it.
func TestCompare_IsAnOrder(t *testing.T) {
	var all []debris.Sign
	var s debris.Sign
	for s.Bit = range len(debris.Bits) + 1 {
		for s.Size = range len(debris.Sizes) + 1 {
			for s.Amount = range len(debris.Amounts) + 1 {
				all = append(all, s)
			}
		}
		s.Size, s.Amount = 0, 0
		for s.Depth = debris.HalfMillimetre; s.Depth <= debris.Larger; s.Depth++ {
			all = append(all, s)
		}
		s.Depth = 0
	}
	turned := map[debris.Comparison]debris.Comparison{debris.Apart: debris.Apart, debris.Same: debris.Same, debris.More: debris.Less, debris.Less: debris.More}
	for i := range all {
		a := &all[i]
		if got := debris.Compare(a, a); got != debris.Same && got != debris.Apart {
			t.Fatalf("%+v with itself: %s", a, debris.Comparisons[got])
		}
		for j := range all {
			b := &all[j]
			ab := debris.Compare(a, b)
			if ba := debris.Compare(b, a); ba != turned[ab] {
				t.Fatalf("%+v, %+v: %s, and turned round %s", a, b, debris.Comparisons[ab], debris.Comparisons[ba])
			}
			if ab < debris.Same {
				continue
			}
			for k := range all {
				if bc := debris.Compare(b, &all[k]); bc >= debris.Same {
					if ac := debris.Compare(a, &all[k]); ac != max(ab, bc) {
						t.Fatalf("%+v, %+v, %+v: %s and %s, but %s", a, b, all[k], debris.Comparisons[ab], debris.Comparisons[bc], debris.Comparisons[ac])
					}
				}
			}
		}
	}
}

func TestRecurs(t *testing.T) {
	flakes := func(size, amount int) debris.Sign {
		return debris.Sign{Bit: debris.Flakes, Size: size, Amount: amount, Colour: debris.Bright}
	}
	few, fewer := flakes(debris.TwoMillimetres, debris.Few), flakes(debris.HalfMillimetre, debris.Few)
	first := few
	first.FirstService = true
	withFoam := debris.Sign{Bit: debris.Paste, Oil: debris.Foam}
	for _, c := range []struct {
		what        string
		now, before debris.Sign
		want        bool
	}{
		{"few flakes twice", few, few, true},
		{"fewer flakes than then", fewer, few, false},
		{"flakes nobody measured, after few", flakes(0, 0), few, true},
		{"flakes, where there was glitter", few, debris.Sign{Bit: debris.Glitter}, false},
		{"glitter twice", debris.Sign{Bit: debris.Glitter}, debris.Sign{Bit: debris.Glitter}, true},
		{"flakes after those of the first service", few, first, false},
		{"flakes of a repair after some that were watched", first, few, false},
		{"paste twice", debris.Sign{Bit: debris.Paste}, debris.Sign{Bit: debris.Paste}, false},
		{"deep paste twice", debris.Sign{Bit: debris.Paste, Depth: debris.FiveMillimetres}, debris.Sign{Bit: debris.Paste, Depth: debris.FiveMillimetres}, true},
		{"a ball twice: that is to stop, and was", debris.Sign{Bit: debris.Part}, debris.Sign{Bit: debris.Part}, false},
		{"foam twice", debris.Sign{Oil: debris.Foam}, withFoam, true},
		{"paste twice, now with foam", withFoam, debris.Sign{Bit: debris.Paste}, false},
		{"dark twice", debris.Sign{Oil: debris.Dark}, debris.Sign{Oil: debris.Dark}, false},
		{"nothing told", debris.Sign{}, debris.Sign{}, false},
	} {
		if got := debris.Recurs(&c.now, &c.before); got != c.want {
			t.Errorf("%s: %v, want %v", c.what, got, c.want)
		}
	}
}
