package render

import "doorpocket/build/guide"

// Waits says how long a step takes by itself and what may be done meanwhile, ""
// for no time, and which steps before it must have had their time.
func (w *Words) Waits(g *guide.Guide, s *guide.Step) (wait string, await []string) {
	switch time := g.Quantity(s.Wait); {
	case !s.Waits:
	case s.HeldUp > s.Number+1:
		wait = w.must("wait_meanwhile", "time", time, "step", s.HeldUp)
	default:
		wait = w.must("wait", "time", time)
	}
	for _, before := range s.Awaits {
		if before.Number < s.Number-1 {
			await = append(await, w.must("await", "time", g.Quantity(before.Wait), "step", before.Number))
		}
	}
	return wait, await
}
