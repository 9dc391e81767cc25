package manifest

import "doorpocket/components/problem"

// Text checks a file that is not TOML, such as a page, in the same way as Parse
// checks its own: plain UTF-8 of a reasonable size. It gives the text without
// byte order mark, nil where the file cannot be used.
func Text(name string, data []byte) ([]byte, problem.List) {
	var found problem.List
	source, ok := open(name, data, maxBytes, &found)
	if !ok {
		return nil, found
	}
	return source.Data, found
}
