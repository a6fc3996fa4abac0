package parts_test

import (
	"fmt"

	"lostwood/parts"
)

// kindsOf runs a check for every kind of part.
func kindsOf(check func(name string, k parts.Kind)) {
	for _, k := range parts.Kinds() {
		check(fmt.Sprintf("kind=%s", k.Name), k)
	}
}
