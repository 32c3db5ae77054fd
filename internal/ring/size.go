// Package ring knows O-rings: the sizes that standards list, which of them a measured
// ring may be, and how each would lie in its groove.
//
// Lengths are in mm; stretch and squeeze are shares, 1 being all of it.
package ring

import (
	"math"
	"strconv"
	"strings"
)

// Series is where a size is listed.
type Series int

// The series, in the order in which equals are told.
const (
	AS568  Series = 1 + iota // inch sizes; ISO 3601-1 has the same since 2008
	ISO                      // the metric list of ISO 3601-1:1988 and DIN 3771
	JIS                      // JIS B 2401, and the S series that goes with it
	Metric                   // whole and half millimetres as they are sold; no standard lists them
)

// SeriesNames are the names of the series, the first being AS568.
var SeriesNames = []string{"as568", "iso", "jis", "metric"}

// Size is a ring as it is listed.
type Size struct {
	Name            string // as one asks for it: "AS568-014", "P12", "24×3"
	Inside, Section float64
	Series
}

// Tolerance is by how much a ring of the size may be larger or smaller, for the inside
// and for the section: class B of ISO 3601-1, from memory. It is no narrower than what
// AS568 prints, and within a twentieth of a millimetre of what JIS B 2401 prints.
func (s *Size) Tolerance() (inside, section float64) {
	section = 0.08
	for _, step := range [...][2]float64{{2.25, 0.09}, {3.15, 0.10}, {4.5, 0.13}, {6.3, 0.15}} {
		if s.Section > step[0] {
			section = step[1]
		}
	}
	return 0.009*math.Pow(s.Inside, 0.95) + 0.11, section
}

const inch = 25.4

// run is a stretch of AS568, in half thousandths of an inch: from a dash number on, so
// many sizes of a section, each so much larger than the one before. A half is dropped
// when it is printed. The list is from memory; the tests have the sizes that were read.
type run struct{ dash, section, inside, step, count int }

var runs = [...]run{
	{4, 140, 140, 62, 2}, {6, 140, 228, 62, 3}, {9, 140, 416, 0, 1}, {10, 140, 478, 125, 19}, {29, 140, 2978, 250, 13}, {42, 140, 6478, 500, 9},
	{102, 206, 98, 64, 1}, {103, 206, 162, 62, 4}, {107, 206, 412, 62, 2}, {109, 206, 599, 125, 42}, {151, 206, 5974, 500, 12},
	{201, 278, 343, 125, 22}, {223, 278, 3218, 250, 35},
	{309, 420, 825, 125, 16}, {325, 420, 2950, 250, 36},
	{425, 550, 8950, 250, 12},
	// Rings under the heads of plugs with straight threads.
	{901, 112, 370, 0, 1}, {902, 128, 478, 124, 2}, {904, 144, 702, 126, 2}, {906, 156, 936, 0, 1}, {907, 164, 1060, 0, 1},
	{908, 174, 1288, 0, 1}, {909, 194, 1412, 98, 2}, {911, 232, 1726, 122, 2}, {913, 232, 1972, 122, 2}, {916, 232, 2342, 0, 1},
	{918, 232, 2710, 0, 1}, {920, 236, 2950, 0, 1}, {924, 236, 3440, 0, 1}, {928, 236, 4180, 0, 1}, {932, 236, 4674, 0, 1},
}

// list is a stretch of a metric series: by how much the inside is less than the number
// that the size is called by, and the numbers.
type list struct {
	Series
	letter        string
	section, less float64
	numbers       string
}

// isoInsides are the insides of the metric list, up to 150 mm; from memory.
const isoInsides = "1.8 2 2.24 2.5 2.8 3.15 3.55 3.75 4 4.5 4.87 5 5.15 5.3 5.6 6 6.3 6.7 6.9 7.1 7.5 8 8.5 8.75 9 9.5 10 " + isoMiddle
const isoMiddle = "10.6 11.2 11.8 12.5 13.2 14 15 16 17 " + isoLarge
const isoLarge = "18 19 20 21.2 22.4 23.6 25 25.8 26.5 28 30 31.5 32.5 33.5 34.5 35.5 36.5 37.5 38.7 " + isoLargest
const isoLargest = "40 41.2 42.5 43.7 45 46.2 47.5 48.7 50 51.5 53 54.5 56 58 60 61.5 63 65 67 69 71 73 75 77.5 80 82.5 85 87.5 90 92.5 95 97.5 100 103 106 109 112 115 118 122 125 128 132 136 140 145 150"

// lists: ISO 3601-1:1988 and JIS B 2401, from memory; the P series of 1.9 and 2.4 mm and
// the insides of the G series were read second hand. (That list prints 3.5 mm for the
// section of the G series, which is 3.1.)
var lists = [...]list{
	{ISO, "", 1.8, 0, isoInsides}, {ISO, "", 2.65, 0, isoMiddle}, {ISO, "", 3.55, 0, isoLarge}, {ISO, "", 5.3, 0, isoLargest},
	{JIS, "P", 1.9, 0.2, "3 4 5 6 7 8 9 10"},
	{JIS, "P", 2.4, 0.2, "10A 11 11.2 12 12.5 14 15 16 18 20 21 22"},
	{JIS, "P", 3.5, 0.3, "22A 22.4 24 25 25.5 26 28 29 29.5 30 31 31.5 32 34 35 35.5 36 38 39 40 41 42 44 45 46 48 49 50"},
	{JIS, "P", 5.7, 0.4, "48A 50A 52 53 55 56 58 60 62 63 65 67 70 71 75 80 85 90 95 100 102 105 110 112 115 120 125 130 132 135 140 145 150"},
	{JIS, "G", 3.1, 0.6, "25 30 35 40 45 50 55 60 65 70 75 80 85 90 95 100 105 110 115 120 125 130 135 140 145"},
	{JIS, "S", 1.5, 0.5, "3 4 5 6 7 8 9 10 11.2 12 12.5 14 15 16 18 20 22"},
	{JIS, "S", 2, 0.5, "22.4 24 25 26 28 29 30 31.5 32 34 35 35.5 36 38 39 40 42 44 45 46 48 50"},
}

// Whole millimetres up to mostMetric are sold in these sections, halves up to
// mostHalves: common practice; a supplier's list that was read has a part of them.
var metricSections = [...]float64{1, 1.5, 2, 2.5, 3, 3.5, 4, 5}

const mostMetric, mostHalves = 100, 10

// Sizes gives every size that is known here, by series.
func Sizes() []Size {
	var all []Size
	for n := range runs {
		all = runs[n].add(all)
	}
	for n := range lists {
		all = lists[n].add(all)
	}
	for _, section := range metricSections {
		for d := 2 * section; d <= mostMetric; d += 0.5 {
			if d <= mostHalves || d == math.Trunc(d) {
				all = append(all, named(Metric, number(d), d, section))
			}
		}
	}
	return all
}

func (r *run) add(all []Size) []Size {
	for n := range r.count {
		dash := strconv.Itoa(r.dash + n)
		// As printed: thousandths of an inch, and hundredths of a millimetre of them.
		mil := float64((r.inside + n*r.step) / 2)
		all = append(all, Size{"AS568-" + strings.Repeat("0", 3-len(dash)) + dash, hundredths(mil / 1000 * inch), hundredths(float64(r.section) / 2000 * inch), AS568})
	}
	return all
}

func (l *list) add(all []Size) []Size {
	for _, text := range strings.Fields(l.numbers) {
		v, _ := strconv.ParseFloat(strings.TrimSuffix(text, "A"), 64)
		all = append(all, named(l.Series, l.letter+text, hundredths(v-l.less), l.section))
	}
	return all
}

// named makes a size; where only its figures name it, they do.
func named(series Series, name string, inside, section float64) Size {
	if series != JIS {
		name += "×" + number(section)
	}
	return Size{name, inside, section, series}
}

func hundredths(v float64) float64 { return math.Round(v*100+1e-9) / 100 }

func number(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }
