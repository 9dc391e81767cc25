package electrics

import (
	"cmp"
	"slices"
)

// mostPairs keeps the table short enough to read on a phone.
const mostPairs = 12

// pair is two appliances at once. News is where the pair does worse than the
// worse of its parts, which a reader cannot see from the rows of the parts.
type pair struct {
	judged
	news     int // pitches with a worse verdict
	surprise int // of these, pitches that both parts leave on
}

func newPair(a, b judged) (pair, error) {
	both, err := judge(together(a.load, b.load))
	if err != nil {
		return pair{}, err
	}
	p := pair{judged: both}
	for i, v := range both.on {
		worse := max(a.on[i], b.on[i])
		if v == worse {
			continue
		}
		p.news++
		if worse == StaysOn {
			p.surprise++
		}
	}
	return p, nil
}

// choosePairs gives the pairs that say most, those first that do worse than
// their parts: on more pitches where both parts stay on, then on more pitches,
// then with more power, then in the order of the appliances.
func choosePairs(parts []judged) ([]pair, error) {
	var all []pair
	for i, a := range parts {
		for _, b := range parts[i+1:] {
			p, err := newPair(a, b)
			if err != nil {
				return nil, err
			}
			all = append(all, p)
		}
	}
	slices.SortStableFunc(all, func(a, b pair) int {
		return cmp.Or(cmp.Compare(b.surprise, a.surprise), cmp.Compare(b.news, a.news), cmp.Compare(b.power, a.power))
	})
	return all[:min(len(all), mostPairs)], nil
}
