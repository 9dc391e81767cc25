package site

// mounted would report whether a folder is on another file system than the folder
// that it lies in; here the swap itself tells.
func mounted(string) bool { return false }
