package bolt

// Ring is a flat ring, diameters in mm.
type Ring struct{ Inner, Outer float64 }

// rings: sealing rings after DIN 7603 in an engineering data file, second hand. It
// skips 22 and 26 mm, whose nominal sizes are those of catalogues, from memory; of
// rings for 27 and 33 mm no source was found.
var rings = [...]struct {
	size float64
	Ring
}{
	{6, Ring{6.2, 10}}, {8, Ring{8.2, 12}}, {10, Ring{10.2, 14}}, {12, Ring{12.2, 16}},
	{14, Ring{14.2, 18}}, {16, Ring{16.2, 20}}, {18, Ring{18.2, 22}}, {20, Ring{20.2, 24}},
	{22, Ring{22, 27}}, {24, Ring{24.2, 30}}, {26, Ring{26, 31}}, {30, Ring{30.2, 36}},
}

// UsualRing is the sealing ring that DIN 7603 has for a thread diameter in mm, a
// zero Ring where none is known. Other widths for the same thread are common.
func UsualRing(diameter float64) Ring {
	for n := range rings {
		if rings[n].size == diameter {
			return rings[n].Ring
		}
	}
	return Ring{}
}

// Area is the ring's face in mm².
func (r *Ring) Area() float64 { return disc(r.Outer) - disc(r.Inner) }

// Mean is the ring's mean diameter in mm, as VDI 2230 takes it.
func (r *Ring) Mean() float64 { return (r.Inner + r.Outer) / 2 }
