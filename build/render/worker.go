package render

import (
	"fmt"
	"slices"
	"strings"

	"doorpocket/build/guide"
	"doorpocket/build/offline"
	photos "doorpocket/build/pictures"
	"doorpocket/build/spec"
)

// Worker makes the script that keeps the guide of one van on a phone. guides are
// the van's in every language, the main one first, files all their files as they
// are written; sums are those of the pictures, by the names of their variants.
func (r *Renderer) Worker(guides []*guide.Guide, files []offline.File, sums map[string]string) (File, error) {
	main := guides[0]
	v := r.van(r.words[main.Lang], main)
	lost := v.part("unkept", v.frame("", "", ""))
	if v.err != nil {
		return File{}, fmt.Errorf("page for what is not on the phone: %w", v.err)
	}
	var safety []string
	for _, g := range guides {
		safety = append(safety, g.Safety())
	}
	g := offline.Guide{Van: main.Van.Code, Safety: strings.Join(safety, " "), Lost: []byte(lost), Files: slices.Concat(files, r.listed)}
	pictures(&g, main, sums)
	return File{Path: offline.Path(main.Van.Code), Data: offline.Worker(r.worker, g)}, nil
}

// pictures adds one variant of each picture of the van, which stands in for all
// others that the same browser could ask for. Where that is a modern one the
// largest of the others is a spare.
func pictures(g *offline.Guide, main *guide.Guide, sums map[string]string) {
	listed := map[string]bool{}
	for _, p := range main.Pages {
		for _, picture := range p.Fitted.Pictures {
			made, ok := main.Operator.Pictures[picture.File]
			if !ok || listed[made.Kept().Name] {
				continue
			}
			kept, largest := made.Kept().Name, made.Largest().Name
			listed[kept] = true
			g.Files = append(g.Files, offline.File{Path: PictureFolder + kept, Sum: sums[kept]})
			standIn(g, kept, made.Modern)
			standIn(g, largest, made.Variants)
			if largest != kept {
				g.Spare = append(g.Spare, offline.File{Path: PictureFolder + largest, Sum: sums[largest]})
			}
		}
	}
}

// standIn lets one variant stand in for the others of its format.
func standIn(g *offline.Guide, name string, variants []photos.Variant) {
	for _, v := range variants {
		if v.Name != name {
			g.Instead = append(g.Instead, [2]string{PictureFolder + v.Name, PictureFolder + name})
		}
	}
}

// Roots are the files by which phones find the workers of all vans, and the
// vans that there are.
func Roots(vans []spec.Summary) []Shared {
	var codes []string
	for _, v := range vans {
		codes = append(codes, v.Code)
	}
	return []Shared{{Path: "vans.json", Data: offline.Vans(codes)}, {Path: offline.RootPath, Data: offline.Root()}}
}
