package label

import "strings"

// shapes puts characters that are taken for each other, printed small or read
// out of a scratched sticker, under one of them.
var shapes = strings.NewReplacer("O", "0", "Q", "0", "D", "0", "I", "1", "L", "1", "Z", "2", "S", "5", "G", "6", "B", "8", "V", "U", "Y", "U")

// Shape is what a van code has in common with all that can be taken for it: codes
// that differ only in characters such as O and 0, I and 1, S and 5.
func Shape(code string) string { return shapes.Replace(code) }
