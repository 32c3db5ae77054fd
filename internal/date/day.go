package date

// Date gives the year, month and day of the Gregorian calendar of a day counted
// from 1970-01-01: what Day takes.
func Date(day int) (year, month, ofMonth int) {
	year, month = 1970+day*400/146097, 12 // 400 years have 146097 days: a year off at most
	for Day(year, 1, 1) > day {
		year--
	}
	for Day(year+1, 1, 1) <= day {
		year++
	}
	for Day(year, month, 1) > day {
		month--
	}
	return year, month, day - Day(year, month, 1) + 1
}

// AddMonths gives the day that many months later. A month too short for it gives
// its last day: 31 January and a month are 28 or 29 February. That is the common
// habit of calendars, for instance of java.time's plusMonths, and no standard's:
// ISO 8601 leaves it open.
func AddMonths(day, months int) int {
	year, month, ofMonth := Date(day)
	month += year*12 - 1 + months
	year, month = month/12, month%12+1
	return min(Day(year, month, ofMonth), Day(year, month+1, 1)-1)
}

// ReadDay reads a full-date of RFC 3339, "2026-11-25"; ok is false for another
// text and for a day that its month doesn't have.
func ReadDay(text string) (day int, ok bool) {
	if !fits(text, form[:len("0000-00-00")]) {
		return 0, false
	}
	day = DayOf(text)
	return day, day < Day(number(text[0:4]), number(text[5:7])+1, 1)
}

// DayOf gives the day in UTC of a valid time.
func DayOf(time string) int { return Day(number(time[0:4]), number(time[5:7]), number(time[8:10])) }

// DayText gives a day of the years 0 to 9999 as a full-date of RFC 3339.
func DayText(day int) string {
	year, month, ofMonth := Date(day)
	text := []byte(form[:len("0000-00-00")])
	for at, n := len(text)-1, (year*100+month)*100+ofMonth; at >= 0; at-- {
		if text[at] == '0' {
			text[at], n = byte('0'+n%10), n/10
		}
	}
	return string(text)
}
