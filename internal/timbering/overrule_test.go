package timbering_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/cutlist"
	"lostwood/internal/timber"
	"lostwood/internal/timbering"
)

// What is said at the command line overrules the survey where both speak of
// one thing, and leaves the rest.
func TestOverrulePrices(t *testing.T) {
	all := cutlist.Price{Amount: 1}
	oak := cutlist.Price{Timber: "white oak", Amount: 2}
	thick := cutlist.Price{Timber: "white oak", Stock: "8/4", Amount: 3}
	ash := cutlist.Price{Timber: "white ash", Amount: 4}
	given := []cutlist.Price{all, oak, thick, ash}
	own := func(timber, stock string) cutlist.Price {
		return cutlist.Price{Timber: timber, Stock: stock, Amount: 9}
	}
	for _, c := range []struct {
		other cutlist.Price
		want  []cutlist.Price
	}{
		{own("", ""), nil},
		{own("Quercus alba", ""), []cutlist.Price{all, ash}},
		{own("white oak", "8/4"), []cutlist.Price{all, oak, ash}},
		{own("", "8/4"), []cutlist.Price{all, oak, ash}},
		{own("jarrah", ""), given},
	} {
		require.Equal(t, append([]cutlist.Price{c.other}, c.want...), timbering.OverrulePrices(given, []cutlist.Price{c.other}, published(t)))
	}
	require.Equal(t, given, timbering.OverrulePrices(given, nil, published(t)))
}

func TestOverruleRings(t *testing.T) {
	flat, quarter := timber.Rings{Lie: timber.FlatSawn}, timber.Rings{Lie: timber.QuarterSawn}
	given := []cutlist.PartRings{{Rings: flat}, {Part: "reach", Rings: flat}}
	require.Equal(t, []cutlist.PartRings{
		{Part: "reach", Rings: quarter},
		{Rings: flat},
		{Part: "reach", Rings: flat},
		{Rings: quarter},
	}, timbering.OverruleRings(given, []cutlist.PartRings{{Rings: quarter}, {Part: "reach", Rings: quarter}}))
	require.Equal(t, given, timbering.OverruleRings(given, nil))
}
