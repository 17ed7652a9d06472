/* stead-demo-writer.c - the tools with which the story is written down. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-receipt-repo.h"

gboolean
stead_demo_act (SteadDemoWriter  *writer,
                const char       *name,
                SteadDemoDeed     deed,
                gconstpointer     what,
                GError          **error)
{
  if (!stead_store_begin (writer->store, name, error))
    return FALSE;
  if (deed (writer, what, error))
    return stead_store_commit (writer->store, error);
  stead_store_rollback (writer->store);
  return FALSE;
}

SteadDay
stead_demo_day_at (SteadDemoWriter *writer,
                   int              at)
{
  return writer->story->first + at;
}

gint64
stead_demo_id_of (SteadDemoWriter *writer,
                  const char      *kind,
                  const char      *name)
{
  g_autofree char *group = g_strconcat (kind, " ", name, NULL);
  gint64 id = GPOINTER_TO_SIZE (g_hash_table_lookup (writer->ids, group));

  if (id == 0)
    stead_demo_fault (&writer->story->reader, group, name);
  return id;
}

void
stead_demo_set_id (SteadDemoWriter *writer,
                   const char      *group,
                   gint64           id)
{
  g_hash_table_insert (writer->ids, g_strdup (group), GSIZE_TO_POINTER ((gsize) id));
}

/* The reader's first fault becomes the error of the whole. */
gboolean
stead_demo_sound (SteadDemoWriter  *writer,
                  GError          **error)
{
  if (writer->story->reader.error == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&writer->story->reader.error));
  return FALSE;
}

/* The place of @word in @words, 0 if it is none of them; a fault then. */
int
stead_demo_word_of (SteadDemoWriter    *writer,
                    const char         *group,
                    const char         *key,
                    const char * const *words)
{
  g_autofree char *word = stead_demo_text (&writer->story->reader, group, key);

  for (int i = 0; words[i] != NULL; i++)
    if (strcmp (word, words[i]) == 0)
      return i;
  stead_demo_fault (&writer->story->reader, group, key);
  return 0;
}

const SteadUnit *
stead_demo_unit_of (SteadDemoWriter *writer,
                    const char      *group)
{
  g_autofree char *id = stead_demo_text (&writer->story->reader, group, "unit");
  const SteadUnit *unit = stead_unit_by_id (id);

  if (unit == NULL)
    stead_demo_fault (&writer->story->reader, group, "unit");
  return unit;
}

/* One action for each group of a kind. */
gboolean
stead_demo_write_groups (SteadDemoWriter  *writer,
                         const char       *kind,
                         SteadDemoDeed     deed,
                         GError          **error)
{
  g_auto(GStrv) groups = stead_demo_groups (&writer->story->reader, kind);

  for (char **group = groups; *group != NULL; group++)
    if (!stead_demo_act (writer, stead_demo_group_name (*group), deed, *group, error))
      return FALSE;
  return TRUE;
}

int
stead_demo_days_back (SteadDemoWriter *writer,
                      const char      *group,
                      const char      *key,
                      int              missing)
{
  double back = stead_demo_number_if (&writer->story->reader, group, key, NAN);

  return isnan (back) ? missing : writer->story->n_days - (int) back;
}

/* --- what comes when there is little of it ------------------------------------------- */

/* One pack of the item of @group, at the price of the day. */
static gboolean
add_pack (SteadDemoWriter  *writer,
          const char       *group,
          SteadReceipt     *receipt,
          GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_auto(GStrv) prices = stead_demo_list (reader, group, "price");
  double share = writer->at / (double) writer->story->n_days;
  double shelf_days = stead_demo_number_if (reader, group, "shelf_life_days", 0);
  SteadReceiptLine line = { .item_id = stead_demo_id_of (writer, "item", stead_demo_group_name (group)),
                            .best_by = STEAD_DAY_NONE };
  const SteadUnit *unit = stead_demo_unit_of (writer, group);

  if (g_strv_length (prices) != 2)
    stead_demo_fault (reader, group, "price");
  if (!stead_demo_sound (writer, error))
    return FALSE;
  line.quantity_base = stead_quantity_to_base (stead_demo_number (reader, group, "pack"), unit);
  line.cost_cents = (gint64) (0.5 + (1 - share) * (double) stead_demo_cents_of (reader, prices[0])
                              + share * (double) stead_demo_cents_of (reader, prices[1]));
  if (shelf_days > 0)
    line.best_by = stead_demo_day_at (writer, writer->at) + (SteadDay) shelf_days;
  g_array_append_val (receipt->lines, line);
  return stead_demo_sound (writer, error);
}

gboolean
stead_demo_put (SteadDemoWriter  *writer,
                const char       *group,
                gint64            lot_id,
                GError          **error)
{
  g_autofree char *place = stead_demo_text_if (&writer->story->reader, group, "place");
  gint64 id = place != NULL ? stead_demo_id_of (writer, "place", place) : 0;

  return stead_demo_sound (writer, error) &&
         (id == 0 || stead_lot_repo_put (writer->store, lot_id, id, error));
}

gboolean
stead_demo_buy_packs (SteadDemoWriter     *writer,
                      const char          *supplier,
                      const char * const  *groups,
                      GError             **error)
{
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();

  receipt->day = stead_demo_day_at (writer, writer->at);
  receipt->supplier = g_strdup (supplier);
  receipt->reference = g_strdup_printf ("%c-%d", g_ascii_toupper (supplier[0]), 31250 + 41 * writer->at);
  receipt->person_id = stead_demo_person_on (writer, writer->at);
  for (const char * const *group = groups; *group != NULL; group++)
    if (!add_pack (writer, *group, receipt, error))
      return FALSE;
  if (!stead_receipt_repo_save (writer->store, receipt, error))
    return FALSE;
  for (guint i = 0; i < receipt->lines->len; i++)
    if (!stead_demo_put (writer, groups[i], g_array_index (receipt->lines, SteadReceiptLine, i).lot_id, error))
      return FALSE;
  stead_demo_cash_owe (writer, receipt, groups[0]);
  return TRUE;
}

static gboolean
write_pack (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  const char *groups[] = { what, NULL };
  g_autofree char *supplier = stead_demo_text (&writer->story->reader, what, "supplier");

  return stead_demo_buy_packs (writer, supplier, groups, error);
}

gboolean
stead_demo_buy_for (SteadDemoWriter  *writer,
                    const char       *item,
                    double            base,
                    GError          **error)
{
  g_autofree char *group = g_strconcat ("item ", item, NULL);
  g_autofree char *supplier = stead_demo_text (&writer->story->reader, group, "supplier");
  g_autofree char *name = g_strdup_printf (_("Receipt from %s"), supplier);
  SteadStock stock;

  if (!stead_demo_sound (writer, error) ||
      !stead_lot_repo_stock (writer->store, stead_demo_id_of (writer, "item", item),
                             stead_demo_day_at (writer, writer->at), 1, &stock, error))
    return FALSE;
  return stock.on_hand_base > base || stead_demo_act (writer, name, write_pack, group, error);
}
