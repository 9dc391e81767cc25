package label

import (
	"fmt"
	"testing"
)

// crowd is a fleet of n vans with so many things each.
func crowd(n, things int) []Van {
	var vans []Van
	for i := range n {
		v := van(crowdCode(i), fmt.Sprintf("Van %d", i), october)
		for t := range things {
			v.Things = append(v.Things, Thing{Name: fmt.Sprintf("thing-%d", t), System: "kitchen/hob", Letter: string(rune('A' + t%6)), Wants: true})
		}
		vans = append(vans, v)
	}
	return vans
}

// crowdCode is the code of the i-th van: A0A, A0B and so on.
func crowdCode(i int) string {
	return string([]byte{byte('A' + i/260), byte('0' + i/26%10), byte('A' + i%26)})
}

// BenchmarkLabels measures what doorpocket labels does besides reading the specs:
// vans with 30 labels each, of which one in ten has got a thing and lost one. Ten
// times the vans should take ten times as long.
func BenchmarkLabels(b *testing.B) {
	for _, n := range []int{100, 1000} {
		first := Make(nil, crowd(n, 30), Wish{Address: address})
		text, err := Revise(nil, first.Register())
		if err != nil {
			b.Fatal(err)
		}
		later := crowd(n, 30)
		for i := 0; i < n; i += 10 {
			things := later[i].Things
			things[3].Name, things[3].System = "another", "kitchen/oven"
		}
		b.Run(fmt.Sprintf("vans=%d", n), func(b *testing.B) {
			b.SetBytes(int64(len(text)))
			for b.Loop() {
				r, found := ParseRegister(RegisterFile, text)
				if r == nil {
					b.Fatal(found)
				}
				p := Make(r, later, Wish{Address: address})
				if len(p.Changes) != n/10*2 {
					b.Fatalf("%d changes", len(p.Changes))
				}
				if _, err := Revise(r, p.Register()); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
