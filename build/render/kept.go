package render

import "sync"

// kept remembers what was made from a key, for a few keys: when there are too many
// it forgets all of them. It is safe for concurrent use.
type kept[K comparable, V any] struct {
	most int
	mu   sync.RWMutex
	made map[K]V
}

// of gives what belongs to a key. It is made, by whatever gives the same for the
// same key, where it is not remembered; an error is not.
func (k *kept[K, V]) of(key K, work func() (V, error)) (V, error) {
	k.mu.RLock()
	made, ok := k.made[key]
	k.mu.RUnlock()
	if ok {
		return made, nil
	}
	made, err := work()
	if err != nil {
		return made, err
	}
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.made == nil || len(k.made) >= k.most {
		k.made = map[K]V{}
	}
	k.made[key] = made
	return made, nil
}
