package sample

import (
	"fmt"
	"io/fs"
	"math/rand/v2"
	"slices"
	"strings"
	"testing/fstest"

	"doorpocket/components"
)

// Many is a fleet of n vans on three build sheets, no two alike: what is
// fitted, its facts and its places differ from van to van, always in the same
// way. systems is about how many systems each has besides those that join by
// themselves; a van has half as many pages again.
func Many(lib *components.Library, n, systems int) fstest.MapFS {
	files := fstest.MapFS{"fleet.toml": {Data: []byte(FleetTOML)}}
	for i := range sheets {
		files[fmt.Sprintf("builds/batch-%d.toml", i)] = &fstest.MapFile{Data: []byte(strings.Replace(Body, `"7.2 m"`, fmt.Sprintf(`"7.%d m"`, i), 1))}
	}
	for i := range n {
		files[fmt.Sprintf("vans/van-%04d.toml", i)] = &fstest.MapFile{Data: []byte(one(lib, i, systems))}
	}
	return files
}

const sheets = 3

// Code is the code of the i-th of Many vans.
func Code(i int) string {
	const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"
	return "V" + string(letters[i/576%24]) + string(letters[i/24%24]) + string(letters[i%24])
}

func one(lib *components.Library, i, systems int) string {
	random := rand.New(rand.NewPCG(uint64(i), 7))
	var names []string
	for _, rule := range lib.RuleNames() {
		names = append(names, fmt.Sprintf("%q", rule))
	}
	var b strings.Builder
	fmt.Fprintf(&b, "code = %q\nname = \"Van %d\"\nspec_date = 2026-10-%02d\nbuild = \"batch-%d\"\ncomplete = [%s]\n",
		Code(i), i, i%28+1, i%sheets, strings.Join(names, ", "))
	fmt.Fprintf(&b, "[staff]\nregistration = \"T%d\"\nkey_safe = \"hook %d\"\n", 1000+i, i)
	all := slices.DeleteFunc(lib.Systems(), func(s *components.System) bool {
		return s.ID == components.BodySystem || len(s.Automatic) > 0
	})
	random.Shuffle(len(all), func(i, k int) { all[i], all[k] = all[k], all[i] })
	all = all[:min(systems, len(all))]
	slices.SortFunc(all, func(a, b *components.System) int { return strings.Compare(a.ID, b.ID) })
	numbers := map[string]int{}
	for _, s := range all {
		fitted(&b, lib, s, random.IntN(4), numbers)
	}
	return b.String()
}

// Write puts a fleet's files into a folder through a function such as
// os.WriteFile with its folders made.
func Write(files fstest.MapFS, put func(name string, data []byte) error) error {
	return fs.WalkDir(files, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		return put(name, files[name].Data)
	})
}
