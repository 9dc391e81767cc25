package publication

import "doorpocket/build/render"

// pictures writes the pictures that vans show, each once: what no van shows is
// not published. Two files that hold the same picture may share a name.
func (w *work) pictures() error {
	written := map[string]bool{}
	for _, v := range w.fleet.Vans {
		for _, f := range v.Fitted {
			for _, p := range f.Pictures {
				for _, variant := range w.fleet.Pictures[p.File].Variants {
					if written[variant.Name] {
						continue
					}
					written[variant.Name] = true
					if err := w.staging.Write("hirers/"+render.PictureFolder+variant.Name, variant.Data); err != nil {
						return err
					}
				}
			}
		}
	}
	return nil
}
