package due

import "tidysump/internal/wire"

// MostOdometer is the most km that an odometer is believed to show: wide enough for any
// bike, narrow enough to catch a slip of the unit or the key (common practice, no source).
const MostOdometer = 2e6

// OdometerReading is what the odometer of a bike showed between two jobs.
type OdometerReading struct {
	ID  string // of the fact that tells it
	Day string // the phone's own, "2026-11-30"
	At  string // time, which puts those of one day in order
	Km  float64
}

// Members names the members. What can't be read counts for nothing.
func (t *OdometerReading) Members(m *wire.Members) {
	m.Lenient()
	m.String("id", &t.ID)
	m.String("day", &t.Day)
	m.String("at", &t.At)
	m.Float("km", &t.Km)
}
