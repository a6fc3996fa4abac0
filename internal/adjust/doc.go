// Package adjust fits a network of redundant readings by weighted least squares.
//
// It knows numbers only: unknowns and observations have an index, nothing has a
// unit or a name. Every observation says that a model of the unknowns was read as a
// value, with a standard uncertainty; the fit gives the most likely unknowns, the
// standard uncertainty of each, how well each reading is checked by the others, and
// the directions in which nothing holds the unknowns.
//
// The way it works is that of survey networks: Gauss-Newton steps on sparse normal
// equations, ordered by minimum degree, factored by Cholesky; the doubts come from
// the inverse on the factor's pattern (Takahashi, Fagan, Chen 1973). The factor is
// made in twofold precision, so that it is as good as an orthogonal decomposition
// in plain double precision: neither weights that differ by a factor of a million nor
// near-dependence of unknowns spoil the rank or the doubts.
//
// The same problem gives the same bits: no map, clock or goroutine is involved.
package adjust
