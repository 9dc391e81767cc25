package route

// How long doing goes on while something takes its time. Our own estimates,
// which decide only how much is put into a wait.
const (
	stepTime   = 20.0 // s, for one step
	walkSecond = 1.0  // s, for a metre of walking
)

// fillWaits moves single steps so that less time is spent standing about: a
// step that others wait for comes earlier, or what does not wait for it is done
// meanwhile. Walking counts too, so that nobody goes round the van to save a
// few seconds.
func fillWaits(body Body, begin Place, steps []Step, later []set, order []int) []int {
	w := waiter{body: body, begin: begin, steps: steps, later: later, done: make([]float64, len(steps))}
	if !w.any() {
		return order
	}
	best := w.takes(order)
	trial := make([]int, len(order))
	for better := true; better; {
		better = false
		for from := range order {
			for to := range order {
				if from == to || !w.movable(order, from, to) {
					continue
				}
				moved(trial, order, from, to)
				if t := w.takes(trial); t < best-0.5 {
					best, better = t, true
					copy(order, trial)
				}
			}
		}
	}
	return order
}

type waiter struct {
	body  Body
	begin Place
	steps []Step
	later []set
	done  []float64
}

// any reports whether some step waits for one that takes its time.
func (w *waiter) any() bool {
	for _, s := range w.steps {
		for _, before := range s.Await {
			if w.steps[before].Wait > 0 {
				return true
			}
		}
	}
	return false
}

// takes is how long an order takes, in seconds.
func (w *waiter) takes(order []int) float64 {
	now, here := 0.0, Step{Place: w.begin, Thing: -1}
	for _, i := range order {
		s := w.steps[i]
		if s.Place.Zone != Anywhere {
			now += float64(millimetres(w.body, here, s)) / 1000 * walkSecond
			here = s
		}
		for _, before := range s.Await {
			now = max(now, w.done[before]+w.steps[before].Wait)
		}
		now += stepTime
		w.done[i] = now
	}
	return now
}

// movable reports whether the step at one position may go to another.
func (w *waiter) movable(order []int, from, to int) bool {
	step := order[from]
	for i := from + 1; i <= to; i++ {
		if w.later[step].has(order[i]) {
			return false
		}
	}
	for i := to; i < from; i++ {
		if w.later[order[i]].has(step) {
			return false
		}
	}
	return true
}

// moved writes an order with one step at another position.
func moved(trial, order []int, from, to int) {
	copy(trial, order)
	step := trial[from]
	if from < to {
		copy(trial[from:to], trial[from+1:to+1])
	} else {
		copy(trial[to+1:from+1], trial[to:from])
	}
	trial[to] = step
}
