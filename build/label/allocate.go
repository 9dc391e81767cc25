package label

import "strconv"

// numbers is how many numbers a letter has.
const numbers = 99

// misheard reports whether a number is mistaken for another on the telephone:
// thirty sounds like thirteen, and so up to ninety and nineteen. The program
// gives out the teens and leaves these; whoever wrote one into a spec keeps it.
func misheard(n int) bool { return n >= 30 && n%10 == 0 }

// free gives the lowest code of a letter that was never given out, "" for none.
func free(letter string, taken func(code string) bool) string {
	for n := 1; n <= numbers; n++ {
		if code := letter + strconv.Itoa(n); !misheard(n) && !taken(code) {
			return code
		}
	}
	return ""
}
