package publication_test

import (
	"context"
	"fmt"
	"os"
	"sync"
	"testing"
	"time"

	cdpbrowser "github.com/chromedp/cdproto/browser"
	"github.com/chromedp/cdproto/cdp"
	"github.com/chromedp/chromedp"
)

// chromium is the one browser of the package. A browser can end in the middle,
// by a bug of its own or for want of memory: the test that runs then says so,
// and the next one gets a new browser.
var chromium shared

type shared struct {
	mu   sync.Mutex
	ctx  context.Context
	stop func()
}

// answersWithin is how long a browser that is alive takes at most to say its
// version, however busy the machine is.
const answersWithin = time.Minute

// running gives the browser, a new one where there is none that answers.
func (s *shared) running() (context.Context, error) {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.ctx != nil {
		err := answers(s.ctx)
		if err == nil {
			return s.ctx, nil
		}
		fmt.Fprintf(os.Stderr, "The browser of these tests is gone (%v): a new one is started.\n", err)
		s.stop()
		s.ctx = nil
	}
	folder, err := os.MkdirTemp(scratch, "chromium-")
	if err != nil {
		return nil, err
	}
	options := append(chromedp.DefaultExecAllocatorOptions[:],
		chromedp.NoSandbox, chromedp.DisableGPU, chromedp.Flag("disable-quic", true),
		chromedp.UserDataDir(folder), chromedp.Flag("disable-component-update", true))
	alloc, stopAlloc := chromedp.NewExecAllocator(context.Background(), options...)
	ctx, stop := chromedp.NewContext(alloc)
	if err := chromedp.Do(ctx); err != nil {
		stop()
		stopAlloc()
		return nil, fmt.Errorf("no browser starts: %w", err)
	}
	s.ctx, s.stop = ctx, func() { stop(); stopAlloc() }
	return ctx, nil
}

// end stops the browser, if there is one.
func (s *shared) end() {
	s.mu.Lock()
	defer s.mu.Unlock()
	if s.ctx != nil {
		s.stop()
		s.ctx = nil
	}
}

// answers asks a browser for its version: an error where it is gone or hangs.
func answers(ctx context.Context) error {
	if err := gone(ctx); err != nil {
		return err
	}
	asked := make(chan error, 1)
	go func() {
		_, err := chromedp.CallBrowser(ctx, cdpbrowser.GetVersion, cdp.Empty{})
		asked <- err
	}()
	select {
	case err := <-asked:
		return err
	case <-time.After(answersWithin):
		return fmt.Errorf("it has not answered for %v", answersWithin)
	}
}

// gone tells that the browser of a window has ended.
func gone(ctx context.Context) error {
	select {
	case <-chromedp.FromContext(ctx).Browser.LostConnection:
		return fmt.Errorf("the browser has ended")
	default:
		return context.Cause(ctx)
	}
}

// A browser that was killed fails the test that used it at once, in words; the
// next test gets a new one.
func TestBrowserThatEnds(t *testing.T) {
	var own shared
	defer own.end()
	ctx, err := own.running()
	if err != nil {
		t.Fatal(err)
	}
	if again, err := own.running(); err != nil || again != ctx {
		t.Fatalf("a browser that answers is not kept: %v", err)
	}
	if err := chromedp.FromContext(ctx).Browser.Process().Kill(); err != nil {
		t.Fatal(err)
	}
	for range 600 {
		if gone(ctx) != nil {
			break
		}
		time.Sleep(50 * time.Millisecond)
	}
	if gone(ctx) == nil {
		t.Fatal("nobody notices that the browser was killed")
	}
	after, err := own.running()
	if err != nil {
		t.Fatal(err)
	}
	if sum, err := chromedp.Run(after, chromedp.Evaluate[int]("1 + 1")); err != nil || sum != 2 {
		t.Errorf("the new browser says %d, %v", sum, err)
	}
}

// A test that bears the end of its browser begins anew with another one.
func TestAgain(t *testing.T) {
	times := 0
	again(t, func() {
		times++
		b := newBrowser(t, 390, 844)
		b.bears = true
		if times == 1 {
			_ = chromedp.FromContext(b.ctx).Browser.Process().Kill() // what comes of it is looked at below
			for range 600 {
				b.stopIfGone(t)
				time.Sleep(50 * time.Millisecond)
			}
		}
		if sum := ask(t, b, chromedp.Evaluate[int]("1 + 1")); sum != 2 {
			t.Errorf("the new browser says %d", sum)
		}
	})
	if times != 2 {
		t.Errorf("it was tried %d times", times)
	}
}
