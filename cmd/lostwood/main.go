// Lostwood works out the timber of a horse-drawn vehicle from its surviving
// irons, and makes what its makers need: sizes, meshes, patterns and a cutting list.
package main

import (
	"context"
	"os"
	"os/signal"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	code := run(ctx, os.Args[1:], os.Stdout, os.Stderr)
	stop()
	os.Exit(int(code))
}
