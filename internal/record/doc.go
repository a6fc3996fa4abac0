// Package record makes what an archive keeps of a vehicle: a table with one row
// for each dimension, the schema that explains it, and the record to read.
package record
