package reading

import "strings"

// Syllables of the numerals, from nought ("zero") to nineteen and of the tens.
var (
	small = []int{2, 1, 1, 1, 1, 1, 1, 2, 1, 1, 1, 3, 1, 2, 2, 2, 2, 3, 2, 2}
	tens  = []int{0, 1, 2, 2, 2, 2, 2, 3, 2, 2}
)

// spoken is how many syllables a number has when it is read aloud: a decimal as
// "two point five", a whole number from ten thousand on digit by digit.
func spoken(number string) int {
	whole, decimals, isDecimal := strings.Cut(number, ".")
	whole = strings.ReplaceAll(whole, ",", "") // between thousands
	n := 0
	if len(whole) > 4 || strings.HasPrefix(whole, "0") {
		n = digits(whole)
	} else {
		value := 0
		for _, d := range whole {
			value = 10*value + int(d-'0')
		}
		n = cardinal(value)
	}
	if isDecimal {
		n += 1 + digits(decimals)
	}
	return n
}

func digits(text string) int {
	n := 0
	for _, d := range text {
		if d >= '0' && d <= '9' {
			n += small[d-'0']
		}
	}
	return n
}

// cardinal speaks a whole number below ten thousand as the British do: "three
// hundred and forty".
func cardinal(value int) int {
	n := 0
	if value >= 1000 {
		n += small[value/1000] + 2 // thousand
		value %= 1000
		if value == 0 {
			return n
		}
		if value < 100 {
			n++ // and
		}
	}
	if value >= 100 {
		n += small[value/100] + 2 // hundred
		value %= 100
		if value == 0 {
			return n
		}
		n++ // and
	}
	if value < 20 {
		return n + small[value]
	}
	n += tens[value/10]
	if value%10 > 0 {
		n += small[value%10]
	}
	return n
}
