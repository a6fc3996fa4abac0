// Package page makes the record of a vehicle as one HTML file: the vehicle in
// three dimensions beside all that was found and worked out. The file asks
// nothing of any network or server, opens from a disk or a mail, and without
// script or WebGL still shows drawings and the whole record.
//
// Its program is in app/src, built by `go generate` into app/bundle.js, which is
// embedded. Lengths are millimetres in the vehicle's frame: x forward, y to the
// near side, z up from the ground. Nothing is derived here: sizes, places,
// reasons and findings come with the [Model].
package page

//go:generate go run ./bundle
