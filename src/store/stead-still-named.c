/* stead-still-named.c - what still names a thing that is to be deleted, as a person calls it.
 *
 * The file itself refuses such a deletion, but does not say who stands against it.
 */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "store/stead-still-named.h"

#include "store/stead-repo-private.h"

typedef struct
{
  const char *table;
  const char *by;
  const char *sql;
} Namer;

/* Every reference that does not go with the row; what is found in one place stands together. */
static const Namer namers[] = {
  { "account", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE account_id = ?1)" },
  { "account", N_("a count of money"), "SELECT EXISTS (SELECT 1 FROM cash_count WHERE account_id = ?1)" },
  { "account", N_("a bank statement"), "SELECT EXISTS (SELECT 1 FROM bank_sheet WHERE account_id = ?1)"
                                       " OR EXISTS (SELECT 1 FROM bank_line WHERE account_id = ?1)" },
  { "account", N_("a sale"), "SELECT EXISTS (SELECT 1 FROM sale_day WHERE account_id = ?1)" },
  { "asset", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE asset_id = ?1)" },
  { "asset", N_("a build"), "SELECT EXISTS (SELECT 1 FROM build WHERE asset_id = ?1)" },
  { "batch", N_("the lots"), "SELECT EXISTS (SELECT 1 FROM lot WHERE batch_id = ?1)"
                             " OR EXISTS (SELECT 1 FROM harvest WHERE batch_id = ?1)" },
  { "batch", N_("a product"), "SELECT EXISTS (SELECT 1 FROM product WHERE batch_id = ?1)" },
  { "batch", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE batch_id = ?1)" },
  { "batch", N_("a checklist"), "SELECT EXISTS (SELECT 1 FROM checklist WHERE batch_id = ?1)" },
  { "batch", N_("hours of work"), "SELECT EXISTS (SELECT 1 FROM work_span WHERE batch_id = ?1)" },
  { "batch", N_("a journal"), "SELECT EXISTS (SELECT 1 FROM reflection WHERE batch_id = ?1)"
                              " OR EXISTS (SELECT 1 FROM shot WHERE batch_id = ?1)" },
  { "event", N_("hours of work"), "SELECT EXISTS (SELECT 1 FROM work_span WHERE event_id = ?1)" },
  { "event", N_("a journal"), "SELECT EXISTS (SELECT 1 FROM reflection WHERE event_id = ?1)"
                              " OR EXISTS (SELECT 1 FROM shot WHERE event_id = ?1)" },
  { "fund", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE fund_id = ?1)" },
  { "fund", N_("a build"), "SELECT EXISTS (SELECT 1 FROM build WHERE fund_id = ?1)"
                           " OR EXISTS (SELECT 1 FROM build_grant WHERE fund_id = ?1)" },
  { "product", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE product_id = ?1)" },
  { "product", N_("a sale"), "SELECT EXISTS (SELECT 1 FROM sale_line WHERE product_id = ?1)" },
  { "product", N_("a checklist"), "SELECT EXISTS (SELECT 1 FROM check_food WHERE product_id = ?1)" },
  { "product", N_("a build"), "SELECT EXISTS (SELECT 1 FROM build_income WHERE product_id = ?1)" },
  { "receipt", N_("the cash book"), "SELECT EXISTS (SELECT 1 FROM cash_line WHERE receipt_id = ?1)" },
  { "receipt", N_("a receipt that corrects it"), "SELECT EXISTS (SELECT 1 FROM receipt WHERE corrects_id = ?1)" },
};

static gboolean
names (SteadStore  *store,
       const Namer *namer,
       gint64       id)
{
  return stead_repo_count_id (store, namer->sql, id, NULL) > 0;
}

char *
stead_still_named (SteadStore *store,
                   const char *table,
                   gint64      id)
{
  g_autoptr(GPtrArray) found = g_ptr_array_new ();

  g_return_val_if_fail (STEAD_IS_STORE (store) && table != NULL, NULL);

  for (gsize i = 0; i < G_N_ELEMENTS (namers); i++)
    if (g_str_equal (namers[i].table, table) && names (store, &namers[i], id))
      g_ptr_array_add (found, (gpointer) _(namers[i].by));
  if (found->len == 0)
    return NULL;
  g_ptr_array_add (found, NULL);
  return g_strjoinv (", ", (char **) found->pdata);
}
