// Package date reads the one form of time that events have, which sorts as text:
// RFC 3339 in UTC with milliseconds, "2026-11-25T10:09:01.000Z". The standard
// library's would cost the core 65 kB.
package date

const form = "0000-00-00T00:00:00.000Z"

// Valid reports whether a text is such a time. A day that its month doesn't have
// counts as one of the next month.
func Valid(s string) bool {
	return fits(s, form) && s[11:13] <= "23" && s[14:16] <= "59" && s[17:19] <= "60"
}

// fits reports whether a text has the form of a day, or of a time, in a month that there
// is.
func fits(s, form string) bool {
	if len(s) != len(form) {
		return false
	}
	for i := range len(form) {
		if form[i] == '0' && (s[i] < '0' || s[i] > '9') || form[i] != '0' && s[i] != form[i] {
			return false
		}
	}
	return s[5:7] >= "01" && s[5:7] <= "12" && s[8:10] >= "01" && s[8:10] <= "31"
}

// Seconds gives the seconds since 1970 of a valid time, without leap seconds.
func Seconds(s string) float64 {
	day := DayOf(s)
	clock := number(s[11:13])*3600 + number(s[14:16])*60 + number(s[17:19])
	return float64(day)*86400 + float64(clock) + float64(number(s[20:23]))/1000
}

func number(digits string) int {
	n := 0
	for i := range len(digits) {
		n = n*10 + int(digits[i]-'0')
	}
	return n
}

// Day gives the days from 1970-01-01 to a day of the Gregorian calendar. The
// year begins in March, so that the odd day is its last (the method of Zeller's
// congruence, Acta Mathematica 9, 1887).
func Day(year, month, day int) int {
	if month < 3 {
		month += 12
		year--
	}
	return 365*year + year/4 - year/100 + year/400 + (153*(month-3)+2)/5 + day - 719469
}
