package card

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/finding"
	"tidysump/internal/oil"
	"tidysump/internal/wire"
)

// Read reads a card's JSON text and checks it. When one of the findings
// refuses, the card must not be used.
func Read(in []byte) (*Card, []finding.Finding) {
	c := &Card{}
	list := wire.Read(in, c)
	if Readable(list) {
		list = append(list, Check(c)...)
	}
	return c, list
}

// Readable reports whether a card may be checked, by what reading it found: what
// couldn't be read in full isn't checked, since what is missing would be blamed
// twice. A card of which only its name or its manual's is missing is being written,
// and may be.
func Readable(read []finding.Finding) bool {
	for _, f := range read {
		name := f.Where[strings.LastIndexByte(f.Where, '/')+1:]
		if f.Grade == finding.Refuse && (f.Code != "missing" || name != "make" && name != "model" && name != "title") {
			return false
		}
	}
	return true
}

// Checked is a card that passed its check: whoever has one need not check it
// again. Accept alone makes one.
type Checked struct {
	card   *Card
	doubts []finding.Finding
}

// Accept checks a card, once for all that is done with it. When it is refused it
// gives nil and all that was found.
func Accept(c *Card) (*Checked, []finding.Finding) {
	list := Check(c)
	if finding.Refused(list) {
		return nil, list
	}
	c.quote()
	return &Checked{c, list}, nil
}

// Card is the card itself, which is not to be changed.
func (c *Checked) Card() *Card { return c.card }

// Doubts are what the check found: nothing that refuses, places within the card.
func (c *Checked) Doubts() []finding.Finding { return c.doubts }

// Check says what is wrong with a card: its form, each figure by itself, and
// references that lead nowhere.
func Check(c *Card) []finding.Finding {
	k := checker{sources: map[string]bool{}, circuits: map[string]bool{}, holders: map[string]bool{}, ids: map[string]bool{}}
	if !k.form(c) {
		return k.list
	}
	k.index(c)
	for i := range c.Circuits {
		k.circuit("/circuits/"+strconv.Itoa(i), &c.Circuits[i])
	}
	k.chart(c)
	for i := range c.Bolts {
		k.bolt("/bolts/"+strconv.Itoa(i), &c.Bolts[i])
	}
	for i := range c.Filters {
		k.filter("/filters/"+strconv.Itoa(i), &c.Filters[i])
	}
	for i := range c.Strain {
		at := "/strainers/" + strconv.Itoa(i)
		k.refers(at+"/circuit", c.Strain[i].Circuit, k.circuits)
		k.nth(at+"/everyNth", c.Strain[i].EveryNth)
		k.ownInterval(at+"/interval", c.Strain[i].Interval)
		k.seals(at+"/seals", c.Strain[i].Seals)
	}
	for i := range c.NotesAt {
		k.noteAt("/notesAt/"+strconv.Itoa(i), &c.NotesAt[i])
	}
	k.quotes(c)
	k.behind(c)
	k.interval("/interval", &c.Interval)
	k.engine(&c.Engine)
	if !finding.Refused(k.list) {
		k.whole(c)
		k.believable(c)
	}
	k.dropKept()
	return k.list
}

type checker struct {
	list                            []finding.Finding
	sources, circuits, holders, ids map[string]bool
	kept                            []string // pointers of figures that were kept with a reason
}

func (c *checker) add(grade finding.Grade, code, where string, values ...string) {
	c.list = append(c.list, finding.Finding{Code: code, Where: where, Grade: grade, Values: finding.Values(values...)})
}

// form checks what decides whether the rest can be read at all.
func (c *checker) form(k *Card) bool {
	if k.Format != Format {
		c.add(finding.Refuse, "not-a-card", "/format", "text", finding.Clip(k.Format))
		return false
	}
	if k.Version != Version {
		c.add(finding.Refuse, "card-version", "/version",
			"version", strconv.Itoa(k.Version), "known", strconv.Itoa(Version))
		return false
	}
	if !validID(k.ID) {
		c.add(finding.Refuse, "bad-id", "/id", "text", finding.Clip(k.ID))
	}
	if len(k.Circuits) == 0 {
		c.add(finding.Refuse, "no-circuit", "/circuits")
	}
	needed(c, "/layout", k.Layout, Layouts)
	few := true
	for _, l := range [...]struct {
		at    string
		count int
	}{{"/sources", len(k.Sources)}, {"/circuits", len(k.Circuits)}, {"/chart", len(k.Charts)}, {"/bolts", len(k.Bolts)}, {"/filters", len(k.Filters)}, {"/strainers", len(k.Strain)}, {"/notesAt", len(k.NotesAt)}, {"/quotes", len(k.Quotes)}} {
		few = c.few(l.at, l.count) && few
	}
	if k.YearTo != 0 && k.YearTo < k.YearFrom {
		c.add(finding.Refuse, "years-reversed", "/yearTo")
	}
	return few
}

// mostParts is how many parts of a kind a card may have: more than any bike, few enough
// to compare each with each.
const mostParts = 200

// few reports whether a list has so many parts at most.
func (c *checker) few(at string, count int) bool {
	if count > mostParts {
		c.add(finding.Refuse, "too-many-parts", at, "most", strconv.Itoa(mostParts))
	}
	return count <= mostParts
}

// index collects the ids that other parts refer to, and finds those used twice.
func (c *checker) index(k *Card) {
	for i, s := range k.Sources {
		c.claim("/sources/"+strconv.Itoa(i)+"/id", s.ID, c.sources)
	}
	for i, r := range k.Circuits {
		c.claim("/circuits/"+strconv.Itoa(i)+"/id", r.ID, c.circuits)
	}
	for i, f := range k.Filters {
		c.claim("/filters/"+strconv.Itoa(i)+"/id", f.ID, c.holders)
	}
	for i, s := range k.Strain {
		c.claim("/strainers/"+strconv.Itoa(i)+"/id", s.ID, c.holders)
	}
	for i, b := range k.Bolts {
		c.claim("/bolts/"+strconv.Itoa(i)+"/id", b.ID, map[string]bool{})
	}
}

// claim marks an id as taken. Ids are unique over the whole card, since events
// and steps name things by id alone.
func (c *checker) claim(where, id string, kind map[string]bool) {
	switch {
	case !validID(id):
		c.add(finding.Refuse, "bad-id", where, "text", finding.Clip(id))
	case c.ids[id]:
		c.add(finding.Refuse, "id-twice", where, "text", id)
	}
	c.ids[id] = true
	kind[id] = true
}

func (c *checker) circuit(at string, r *Circuit) {
	needed(c, at+"/role", r.Role, Roles)
	c.figure(at+"/oilOnly", r.OilOnly, volumeLimit)
	c.figure(at+"/withFilter", r.WithFilt, volumeLimit)
	c.figure(at+"/dry", r.Dry, volumeLimit)
	if only, ok := r.OilOnly.Amount(); ok {
		if with, ok := r.WithFilt.Amount(); ok && with.Base < only.Base {
			c.add(finding.Doubt, "filter-volume-less", at+"/withFilter",
				"with", with.Print(with.Unit), "without", only.Print(only.Unit))
		}
	}
	c.oil(at+"/oil", &r.Oil, r.WetClutch)
	c.level(at+"/level", &r.Level)
	c.nth(at+"/everyNth", r.EveryNth)
	c.ownInterval(at+"/interval", r.Interval)
	if r.Warm != nil {
		c.figure(at+"/warm/target", r.Warm.Target, warmLimit)
		c.figure(at+"/warm/time", r.Warm.Time, durationLimit)
	}
}

func (c *checker) oil(at string, o *OilNeed, wetClutch bool) {
	for i, g := range o.Grades {
		if _, ok := oil.ParseGrade(g); !ok {
			c.add(finding.Refuse, "unknown-grade", at+"/grades/"+strconv.Itoa(i), "text", finding.Clip(g))
		}
	}
	wet := false
	for i, m := range o.Marks {
		if !slices.Contains(oil.Marks, m) {
			c.add(finding.Refuse, "unknown-mark", at+"/marks/"+strconv.Itoa(i), "text", finding.Clip(m))
		}
		wet = wet || oil.WetClutchMark(m)
	}
	if wetClutch && len(o.Marks) > 0 && !wet {
		c.add(finding.Doubt, "mark-not-wet", at+"/marks")
	}
	for i, g := range o.Grades {
		if grade, _ := oil.ReadGrade(g); wetClutch && grade.Gear() {
			c.add(finding.Doubt, "gear-oil-on-clutch", at+"/grades/"+strconv.Itoa(i), "grade", grade.Designation())
		}
	}
	if len(o.Grades) > 0 {
		c.standing(at, o)
	}
}

func (c *checker) standing(at string, o *OilNeed) {
	if !slices.Contains(Standings, o.Standing) {
		c.add(finding.Refuse, "unknown-standing", at, "text", finding.Clip(string(o.Standing)))
	}
	if o.Source != "" && !c.sources[o.Source] {
		c.add(finding.Refuse, "unknown-source", at+"/source", "text", finding.Clip(o.Source))
	}
}

func (c *checker) level(at string, l *Level) {
	word(c, at+"/device", l.Device, Devices)
	word(c, at+"/state", l.State, States)
	word(c, at+"/stance", l.Stance, Stances)
	c.figure(at+"/run", l.Run, durationLimit)
	c.figure(at+"/wait", l.Wait, durationLimit)
	c.figure(at+"/band", l.Band, bandLimit)
}

func (c *checker) bolt(at string, b *Bolt) {
	needed(c, at+"/purpose", b.Purpose, Purposes)
	word(c, at+"/drive", b.Drive, Drives)
	if b.Circuit != "" {
		c.refers(at+"/circuit", b.Circuit, c.circuits)
	}
	if b.Holds != "" {
		c.refers(at+"/of", b.Holds, c.holders)
	}
	if b.Count < 0 || b.Count > 40 {
		c.add(finding.Refuse, "bad-count", at+"/count", "value", strconv.Itoa(b.Count))
	}
	c.thread(at+"/thread", b.Thread, b.Drains || b.Purpose == DrainPlug)
	c.figure(at+"/size", b.Size, lengthLimit)
	c.figure(at+"/torque", b.Torque, torqueLimit)
	c.figure(at+"/turn", b.Turn, turnLimit)
	if b.Purpose == FilterCanned && b.Torque.Known() && b.Turn.Known() {
		c.add(finding.Doubt, "torque-and-turn", at+"/turn")
	}
	if b.Seal != nil {
		c.seal(at+"/seal", b.Seal)
	}
}

func (c *checker) filter(at string, f *Filter) {
	needed(c, at+"/kind", f.Kind, FilterKinds)
	word(c, at+"/mount", f.Mount, Mounts)
	word(c, at+"/ringWith", f.RingWith, RingsWith)
	c.refers(at+"/circuit", f.Circuit, c.circuits)
	c.nth(at+"/everyNth", f.EveryNth)
	c.ownInterval(at+"/interval", f.Interval)
	c.thread(at+"/thread", f.Thread, true)
	c.figure(at+"/ring", f.Ring, filterLimit)
	c.figure(at+"/height", f.Height, filterLimit)
	if finding.Cut(f.OwnNumber, EntryLetters) != f.OwnNumber {
		c.add(finding.Refuse, "text-too-long", at+"/ownNumber", "most", strconv.Itoa(EntryLetters))
	}
	c.seals(at+"/seals", f.Seals)
}

// thread checks a designation. Plugs and filters mostly have a fine pitch, so that a
// bare size leaves theirs open.
func (c *checker) thread(at, text string, fine bool) {
	t, ok := bolt.ParseThread(text)
	switch {
	case text != "" && !ok:
		c.add(finding.Refuse, "unknown-thread", at, "text", finding.Clip(text))
	case ok && fine && t.PitchOpen():
		c.add(finding.Doubt, "pitch-missing", at, "text", finding.Clip(text))
	}
}

func (c *checker) noteAt(at string, n *NoteAt) {
	needed(c, at+"/at", n.At, NotePlaces)
	if strings.TrimSpace(n.Text) == "" {
		c.add(finding.Refuse, "note-empty", at+"/text")
	}
}

func (c *checker) seals(at string, list []Seal) {
	if !c.few(at, len(list)) {
		return
	}
	for i := range list {
		c.seal(at+"/"+strconv.Itoa(i), &list[i])
	}
}

func (c *checker) seal(at string, s *Seal) {
	needed(c, at+"/kind", s.Kind, SealKinds)
	c.figure(at+"/inner", s.Inner, lengthLimit)
	c.figure(at+"/outer", s.Outer, lengthLimit)
	c.figure(at+"/thickness", s.Thickness, lengthLimit)
	if s.Count < 0 || s.Count > 40 {
		c.add(finding.Refuse, "bad-count", at+"/count", "value", strconv.Itoa(s.Count))
	}
}

func (c *checker) engine(e *Engine) {
	if e.Cylinders < 0 || e.Cylinders > 8 {
		c.add(finding.Refuse, "bad-count", "/engine/cylinders", "value", strconv.Itoa(e.Cylinders))
	}
	if e.Displacement < 0 || e.Displacement > 3000 {
		c.add(finding.Refuse, "not-believable", "/engine/displacement",
			"value", strconv.FormatFloat(e.Displacement, 'f', -1, 64)+" cm³", "low", "20 cm³", "high", "3000 cm³")
	}
	word(c, "/engine/cooling", e.Cooling, Coolings)
	word(c, "/engine/clutch", e.Clutch, Clutches)
}
