/* make-sample.c - writes the sample farm of the present schema version.
 *
 *   build/tests/store/make-sample tests/fixtures/version-N.steading
 *
 * Run it once, before the schema of version N is released, and never after: a
 * sample is what a program of its time wrote.
 */
#include "config.h"

#include <math.h>
#include <stdlib.h>

#include "repo-fixture.h"

static void
add_price (Farm *farm)
{
  g_autoptr(SteadProduct) product = stead_product_new ();

  product->name = g_strdup ("Eggs");
  product->pack = STEAD_PACK_DOZEN;
  product->base_per_unit = 12;
  product->batch_id = farm->flock;
  ACT (farm, stead_product_repo_save (farm->store, product, err));
  ACT (farm, stead_product_repo_set_price (farm->store, product->id, TODAY - 30, 450, NULL, err));
}

int
main (int    argc,
      char **argv)
{
  g_autoptr(Farm) farm = NULL;
  g_autoptr(GError) error = NULL;
  gint64 signed_receipt;

  if (argc != 2)
    return EXIT_FAILURE;
  farm = farm_new ();
  signed_receipt = farm_receipt (farm, farm->feed, TODAY - 60, 50 * LB, 1899, FALSE);
  for (int i = 0; i < 20; i++)
    farm_entry (farm, TODAY - 50 + i, 20 + i % 7, 3, i == 9 ? 1 : 0);
  farm_receipt (farm, farm->straw, TODAY - 40, 40 * LB, 2699, TRUE);
  add_price (farm);
  ACT (farm, stead_receipt_repo_sign (farm->store, signed_receipt, farm->advisor, err));
  farm_receipt (farm, farm->carton, TODAY - 1, 100, 0, TRUE);
  if (stead_store_save_copy (farm->store, argv[1], NULL, &error))
    return EXIT_SUCCESS;
  g_printerr ("%s\n", error->message);
  return EXIT_FAILURE;
}
