package site

// Has reports whether the record of a part tells of a file.
func (s *Site) Has(part, path string) bool {
	r := s.records.of(part)
	return r != nil && has(r.Files, path)
}

// Has reports whether a file was written.
func (st *Staging) Has(path string) bool {
	st.mu.Lock()
	defer st.mu.Unlock()
	return st.has(path)
}

// Wrote reports whether anything of a part was written.
func (st *Staging) Wrote(part string) bool {
	st.mu.Lock()
	defer st.mu.Unlock()
	return st.open[part] != nil || st.sealed.has(part)
}

// has is Has for whoever holds the lock.
func (st *Staging) has(path string) bool {
	if st.shared[path] {
		return true
	}
	for _, part := range []string{partOf(path), Fleet} {
		if r := st.open[part]; r != nil && has(r.Files, path) {
			return true
		}
		if r := st.sealed.of(part); r != nil && has(r.Files, path) {
			return true
		}
	}
	return false
}
