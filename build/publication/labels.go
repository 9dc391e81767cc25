package publication

import (
	"fmt"

	"doorpocket/build/label"
	"doorpocket/build/spec"
)

// left writes what remains of the vans that have left the fleet: their labels may
// still be about. Each is a part of the site, as it was while it was for hire.
func (p *publishing) left(press *press) ([]string, error) {
	var codes []string
	for _, v := range press.op.Left {
		for _, kit := range press.kits {
			files, err := press.render.Left(kit.Left(v))
			if err != nil {
				return nil, err
			}
			if err := press.putAll(v.Code, "hirers/", files); err != nil {
				return nil, err
			}
		}
		if err := p.staging.Seal(v.Code, vanMade{Summary: spec.Summary{Code: v.Code}, Left: true}); err != nil {
			return nil, err
		}
		p.take(v.Code)
		codes = append(codes, v.Code)
	}
	return codes, nil
}

// labels makes sure that every label that was ever registered leads to a page,
// whatever has become of its thing. Vans that stay as they are have theirs in the
// site already.
func (p *publishing) labels(register *label.Register) error {
	for _, e := range register.All() {
		path := "hirers/" + e.Path() + "index.html"
		if p.staging.Has(path) || p.keeps(e.Van, path) {
			continue
		}
		return fmt.Errorf("label %s of the register would lead nowhere: nothing was published. Run doorpocket labels", e.Ref)
	}
	return nil
}

// keeps reports whether a file of a van stays in the site, or is for another part
// of the fleet to write.
func (p *publishing) keeps(van, path string) bool {
	if !p.taken[van] || p.staging.Wrote(van) {
		return false
	}
	return p.job.Part.some() || p.site.Has(van, path)
}
