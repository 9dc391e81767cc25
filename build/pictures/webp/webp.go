// Package webp encodes pictures as lossy WebP, and reads WebP in its own colours.
// The encoder is libwebp, compiled to WebAssembly and kept beside this file: no C
// compiler is needed, and the same picture gives the same bytes on every machine.
// ORIGIN.md tells where it comes from.
package webp

import (
	"bytes"
	"compress/gzip"
	"context"
	_ "embed"
	"errors"
	"fmt"
	"image"
	"io"
	"sync"

	"github.com/tetratelabs/wazero"
	"github.com/tetratelabs/wazero/api"
	"github.com/tetratelabs/wazero/imports/wasi_snapshot_preview1"
)

//go:embed libwebp.wasm.gz
var packed []byte

// MaxSide is how many pixels wide or high a WebP can be.
const MaxSide = 16383

// method is how long libwebp searches for fewer bytes, from 0 to 6.
const method = 4

// Encoder is the encoder made ready for this processor, which takes about as long
// as encoding a picture. It is safe for concurrent use: each picture has a memory
// of its own.
type Encoder struct {
	runtime wazero.Runtime
	module  wazero.CompiledModule
}

// New makes the encoder ready.
func New(ctx context.Context) (*Encoder, error) { return newEncoder(ctx, wazero.NewRuntimeConfig()) }

func newEncoder(ctx context.Context, config wazero.RuntimeConfig) (*Encoder, error) {
	unpacked, err := gzip.NewReader(bytes.NewReader(packed))
	if err != nil {
		return nil, fmt.Errorf("webp: %w", err)
	}
	code, err := io.ReadAll(unpacked)
	if err != nil {
		return nil, fmt.Errorf("webp: %w", err)
	}
	e := &Encoder{runtime: wazero.NewRuntimeWithConfig(ctx, config)}
	if e.module, err = e.runtime.CompileModule(ctx, code); err == nil {
		_, err = wasi_snapshot_preview1.Instantiate(ctx, e.runtime)
	}
	if err != nil {
		return nil, errors.Join(fmt.Errorf("webp: %w", err), e.runtime.Close(ctx))
	}
	return e, nil
}

// Shared gives the encoder of this process, made ready when it is first asked for.
var Shared = sync.OnceValues(func() (*Encoder, error) { return New(context.Background()) })

// Encode gives a picture without see-through parts as a WebP of the quality, from
// 0 to 100.
func (e *Encoder) Encode(ctx context.Context, m *image.RGBA, quality int) (data []byte, err error) {
	size := m.Bounds().Size()
	if size.X < 1 || size.Y < 1 || size.X > MaxSide || size.Y > MaxSide {
		return nil, fmt.Errorf("webp: %d by %d pixels cannot be encoded", size.X, size.Y)
	}
	if quality < 0 || quality > 100 {
		return nil, fmt.Errorf("webp: there is no quality %d", quality)
	}
	// Without a name, so that several can be at work.
	module, err := e.runtime.InstantiateModule(ctx, e.module, wazero.NewModuleConfig().WithName("").WithStartFunctions("_initialize"))
	if err != nil {
		return nil, fmt.Errorf("webp: %w", err)
	}
	defer func() {
		if closing := module.Close(ctx); err == nil && closing != nil {
			err = fmt.Errorf("webp: %w", closing)
		}
	}()
	return run{ctx, module}.encode(pixels(m), size, quality)
}

// pixels are those of a picture without gaps between its lines.
func pixels(m *image.RGBA) []byte {
	size := m.Bounds().Size()
	if m.Stride == 4*size.X && len(m.Pix) == m.Stride*size.Y {
		return m.Pix
	}
	all := make([]byte, 0, 4*size.X*size.Y)
	for y := m.Rect.Min.Y; y < m.Rect.Max.Y; y++ {
		all = append(all, m.Pix[m.PixOffset(m.Rect.Min.X, y):][:4*size.X]...)
	}
	return all
}

// run is one picture's encoding.
type run struct {
	ctx    context.Context
	module api.Module
}

// The encoder's function, by its source: encode(pixels, width, height, *size,
// colours, quality, method, lossless, exact) gives where the bytes are and writes
// how many there are, in 32 bits. 0 for colours is red, green, blue, alpha.
func (r run) encode(pix []byte, size image.Point, quality int) ([]byte, error) {
	from, err := r.reserve(len(pix))
	if err != nil {
		return nil, err
	}
	const word = 4
	length, err := r.reserve(word)
	if err != nil {
		return nil, err
	}
	memory := r.module.Memory()
	if !memory.Write(from, pix) || !memory.WriteUint32Le(length, 0) {
		return nil, errMemory
	}
	at, err := r.call("encode", uint64(from), uint64(size.X), uint64(size.Y), uint64(length), 0, uint64(quality), method, 0, 0)
	if err != nil {
		return nil, err
	}
	n, ok := memory.ReadUint32Le(length)
	if !ok || at == 0 || n == 0 {
		return nil, errors.New("webp: the encoder gives up on this picture")
	}
	data, ok := memory.Read(at, n)
	if !ok {
		return nil, errMemory
	}
	return bytes.Clone(data), nil
}

var errMemory = errors.New("webp: the picture does not fit into the encoder's memory")

// reserve reserves some of the encoder's memory, which goes with the run.
func (r run) reserve(n int) (uint32, error) {
	at, err := r.call("malloc", uint64(n))
	if err == nil && at == 0 {
		err = errMemory
	}
	return at, err
}

func (r run) call(name string, words ...uint64) (uint32, error) {
	result, err := r.module.ExportedFunction(name).Call(r.ctx, words...)
	if err != nil {
		return 0, fmt.Errorf("webp: %s: %w", name, err)
	}
	return api.DecodeU32(result[0]), nil
}
