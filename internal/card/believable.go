package card

import (
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/quantity"
)

// believable holds the figures of a card against each other and against
// published relations. All it finds are doubts: the manual may be right.
func (c *checker) believable(k *Card) {
	for i := range k.Circuits {
		at := "/circuits/" + strconv.Itoa(i)
		r := &k.Circuits[i]
		c.marks(at, r)
		c.volumes(at, r, k.Engine.Displacement)
		c.nthLate(at, r, &k.Interval)
		if r.Interval != nil {
			c.usual(at+"/interval/distance", r.Interval.Distance, leastInterval, mostOwn)
		}
		if r.Role == EngineOil {
			c.perLitre(at, r, k.Engine.Displacement)
		}
	}
	c.usual("/interval/distance", k.Interval.Distance, leastInterval, mostInterval)
	c.usual("/interval/time", k.Interval.Time, leastMonths*month, mostMonths*month)
	if first := k.Interval.First; first != nil {
		c.usual("/interval/first/distance", first.Distance, leastService, mostService)
	}
	for i := range k.Bolts {
		at := "/bolts/" + strconv.Itoa(i)
		b := &k.Bolts[i]
		t, ok := bolt.ParseThread(b.Thread)
		if !ok {
			c.usualTorque(at+"/torque", b)
			continue
		}
		c.torque(at+"/torque", b, &t)
		c.across(at+"/size", b, &t)
		// Screws hold a cover or flange, whose seal is as wide as that.
		if b.Seal != nil && b.Number() == 1 && b.Purpose != FilterCover && b.Purpose != FilterClosed {
			c.ring(at+"/seal", b.Seal, &t)
		}
	}
}

// torque holds a fastener's torque against the published tables and the
// strength of its thread; the case is taken to be of aluminium.
func (c *checker) torque(at string, b *Bolt, t *bolt.Thread) {
	a, ok := b.Torque.Amount()
	if !ok || b.Purpose == FilterCanned || b.Purpose == FilterClosed {
		return
	}
	j := bolt.Joint{Thread: *t, What: bolt.Plug, Seat: bolt.Aluminium}
	if b.Purpose == FilterCover || b.Purpose == LevelScrew {
		j.What = bolt.Screw
	}
	if b.Seal != nil {
		j.Seal = bolt.SealOf(string(b.Seal.Kind))
	}
	j.Settle()
	u, _ := quantity.Find(a.Unit)
	var g bolt.Judgement
	g.Judge(&j, a.Base, u.Scale, quantity.Metric)
	if g.Verdict != bolt.NotBelievable {
		return
	}
	// Tables are of plugs: a wide cap gets less. Common practice, no source.
	wide := b.Purpose == StrainerCap || b.Purpose == FillerCap || b.Purpose == DrainPlug && t.Diameter >= 20
	for _, u := range usualTorques {
		if _, odd := outside(b.Torque, u.low, u.high); odd && u.purpose == b.Purpose {
			wide = false
		}
	}
	// One doubt says enough: what was probably meant, else the first.
	var first *finding.Finding
	meant := ""
	for n := range g.Reasons {
		f := &g.Reasons[n]
		if f.Grade != finding.Doubt || wide && (f.Code == "torque-out-of-table" || f.Code == "torque-slip") {
			continue
		}
		if first == nil {
			first = f
		}
		if f.Code == "torque-slip" {
			meant = f.Values["meant"]
		}
	}
	if first == nil {
		return
	}
	first.Where = at
	if meant != "" {
		first.Code, first.Values["meant"], first.Values["given"] = "torque-unit", meant, a.Print(a.Unit)
	}
	c.list = append(c.list, *first)
}

// Bounds of what is usual: common practice, no source.
const (
	leastKey, mostKey         = 0.25, 0.9 // a key over its thread; ISO 4762 has 0.7 to 0.9, socket plugs less
	leastHexagon, mostHexagon = 0.6, 2.3  // a hexagon over its thread; ISO 4014 has 1.5 to 1.6, plugs with a collar less
	leastPerLitre             = 0.5       // litres of oil in an engine for each litre of displacement
	mostPerLitre              = 14        // small engines have most
)

// Bounds of an interval: machines that are not for competition have intervals from 1,000
// to 16,000 km and 12 months (from memory and common practice, no source).
const (
	leastInterval, mostInterval = 500, 20000 // km
	leastService, mostService   = 100, 3300  // km; 2,000 mi
	mostOwn                     = 80000      // km, of oils besides the engine's
	leastMonths, mostMonths     = 2, 30
	month                       = 365.25 / 12 * 24 * 60 // in the base unit of durations
)

// usual doubts an interval beyond what manuals have. Competition machines count
// hours.
func (c *checker) usual(at string, f *Figure, low, high float64) {
	if a, ok := f.Amount(); ok && (a.Base < low || a.Base > high) {
		c.add(finding.Doubt, "interval-odd", at, "value", a.Print(a.Unit))
	}
}

// across holds a hexagon against the thread.
func (c *checker) across(at string, b *Bolt, t *bolt.Thread) {
	a, ok := b.Size.Amount()
	low, high := leastHexagon, mostHexagon
	switch b.Drive {
	case HexagonKey:
		low, high = leastKey, mostKey
	case Hexagon:
	default:
		return
	}
	if ok && (a.Base < low*t.Diameter || a.Base > high*t.Diameter) {
		c.add(finding.Doubt, "hexagon-odd", at, "value", a.Print(a.Unit), "thread", t.Name)
	}
}

// ring holds a washer or ring against the thread that goes through it.
func (c *checker) ring(at string, s *Seal, t *bolt.Thread) {
	j := bolt.Joint{Thread: *t, Seal: bolt.SealOf(string(s.Kind))}
	inner, _ := s.Inner.Amount()
	outer, _ := s.Outer.Amount()
	j.Inner, j.Outer = inner.Base, outer.Base
	for _, f := range j.Odd() {
		f.Where = at + f.Where
		c.list = append(c.list, f)
	}
}

// marks holds the volume between the marks against all of it.
func (c *checker) marks(at string, r *Circuit) {
	band, ok := r.Level.Band.Amount()
	volume, known := r.OilOnly.Amount()
	if !known {
		volume, known = r.WithFilt.Amount()
	}
	if ok && known && band.Base > volume.Base/2 {
		c.add(finding.Doubt, "band-odd", at+"/level/band", "value", band.Print(band.Unit), "volume", volume.Print(volume.Unit))
	}
}

// perLitre holds the volume against the displacement in cm³, and looks for a unit
// in which the same number would be at home.
func (c *checker) perLitre(at string, r *Circuit, displacement float64) {
	for _, v := range [...]struct {
		at string
		f  *Figure
	}{{at + "/oilOnly", r.OilOnly}, {at + "/withFilter", r.WithFilt}} {
		a, ok := v.f.Amount()
		if per := a.Base / displacement * 1000; ok && displacement > 0 && (per < leastPerLitre || per > mostPerLitre) {
			c.add(finding.Doubt, "volume-odd", v.at, "value", a.Print(a.Unit), "displacement", quantity.Number(displacement, 4)+" cm³")
			return
		}
	}
}

// dropKept drops the doubts about figures that were kept with a reason.
func (c *checker) dropKept() {
	list := c.list[:0]
	for _, f := range c.list {
		if f.Grade != finding.Doubt || !c.isKept(f.Where) {
			list = append(list, f)
		}
	}
	c.list = list
}

func (c *checker) isKept(where string) bool {
	for _, at := range c.kept {
		if where == at || strings.HasPrefix(where, at+"/") {
			return true
		}
	}
	return false
}
