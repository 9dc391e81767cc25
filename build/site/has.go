package site

// Has reports whether the record of a part tells of a file.
func (s *Site) Has(part, path string) bool {
	r := s.records[part]
	return r != nil && has(r.Files, path)
}

// Has reports whether a file was written.
func (st *Staging) Has(path string) bool {
	st.mu.Lock()
	defer st.mu.Unlock()
	return st.written[path]
}

// Wrote reports whether anything of a part was written.
func (st *Staging) Wrote(part string) bool {
	st.mu.Lock()
	defer st.mu.Unlock()
	return st.records[part] != nil
}
