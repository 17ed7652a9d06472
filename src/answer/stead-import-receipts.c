/* stead-import-receipts.c - judges the rows of a table of receipts.
 *
 * Each row is one line of a receipt; rows of the same day, supplier, reference
 * and kind (bought or given) make one receipt.
 */
#include "config.h"

#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

/* One row as it will be recorded. */
typedef struct
{
  SteadDay         day;
  char            *supplier;
  char            *reference;    /* (nullable) */
  gboolean         is_gift;
  char            *note;         /* (nullable) */
  gint64           person_id;
  SteadImportItem  item;
  gint64           cost_cents;
  SteadDay         best_by;
} Line;

static void
free_line (gpointer fact)
{
  Line *line = fact;

  if (line == NULL)
    return;
  g_free (line->supplier);
  g_free (line->reference);
  g_free (line->note);
  g_free (line->item.name);
  g_free (line);
}

static gboolean
read_cost (const SteadImportJudge *judge,
           SteadImportRow         *row,
           Line                   *line)
{
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_COST);
  g_autoptr(GError) error = NULL;

  if (*cell == '\0')
    return stead_import_wrong (judge, row, STEAD_COLUMN_COST,
                               g_strdup (_("The cost is missing. Enter 0 if it cost nothing.")));
  if (!stead_money_parse (cell, judge->farm->currency, &line->cost_cents, &error))
    return stead_import_wrong (judge, row, STEAD_COLUMN_COST, g_strdup (error->message));
  if (line->cost_cents < 0)
    return stead_import_wrong (judge, row, STEAD_COLUMN_COST,
                               g_strdup (_("The cost is below 0. Money that came back is not a receipt: "
                                           "enter what was kept.")));
  return TRUE;
}

static gboolean
read_gift (const SteadImportJudge *judge,
           SteadImportRow         *row,
           Line                   *line)
{
  static const char * const yes[] = { "gift", "donation", "regalo", "donacion", NULL };
  static const char * const no[] = { "bought", "comprado", NULL };

  return stead_import_read_yes (judge, row, STEAD_COLUMN_GIFT, yes, no, &line->is_gift);
}

static gboolean
read_day (SteadImportJudge *judge,
          SteadImportRow   *row,
          Line             *line)
{
  if (!stead_import_read_day (judge, row, STEAD_COLUMN_DATE, &line->day))
    return FALSE;
  if (line->day > judge->today)
    return stead_import_wrong (judge, row, STEAD_COLUMN_DATE,
                               g_strdup (_("This day lies in the future. Check the date.")));
  line->best_by = STEAD_DAY_NONE;
  if (*stead_import_cell (judge, row, STEAD_COLUMN_BEST_BY) == '\0')
    return TRUE;
  return stead_import_read_day (judge, row, STEAD_COLUMN_BEST_BY, &line->best_by);
}

static void
read_person (const SteadImportJudge *judge,
             const SteadImportRow   *row,
             Line                   *line)
{
  g_autofree char *name = stead_import_read_text (judge, row, STEAD_COLUMN_PERSON);
  gint64 id = stead_import_find_person (judge, name);
  char *note;

  line->note = stead_import_read_text (judge, row, STEAD_COLUMN_NOTE);
  if (id >= 0)
    {
      line->person_id = id;
      return;
    }
  note = line->note == NULL ? g_strdup_printf (_("by %s"), name)
                            : g_strdup_printf (_("%s (by %s)"), line->note, name);
  g_free (line->note);
  line->note = note;
}

static gboolean
read_line (SteadImportJudge *judge,
           SteadImportRow   *row,
           Line             *line)
{
  if (!read_day (judge, row, line))
    return FALSE;
  line->supplier = stead_import_read_text (judge, row, STEAD_COLUMN_SUPPLIER);
  if (line->supplier == NULL)
    return stead_import_wrong (judge, row, STEAD_COLUMN_SUPPLIER,
                               g_strdup (_("The supplier is missing. Enter who sold or gave it.")));
  line->reference = stead_import_read_text (judge, row, STEAD_COLUMN_REFERENCE);
  read_person (judge, row, line);
  return stead_import_read_item (judge, row, &line->item) && read_cost (judge, row, line) && read_gift (judge, row, line);
}

/* --- doubles ------------------------------------------------------------------ */

static char *
line_key (SteadDay    day,
          const char *supplier,
          const char *reference,
          gboolean    is_gift,
          const char *item,
          double      base,
          gint64      cents)
{
  g_autofree char *from = stead_line_fold (supplier);
  g_autofree char *name = stead_line_fold (item);
  char number[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (number, sizeof number, "%.6f", base);
  return g_strdup_printf ("%d\n%s\n%s\n%d\n%s\n%s\n%" G_GINT64_FORMAT, day, from,
                          reference != NULL ? reference : "", is_gift, name, number, cents);
}

static const char *
name_of_item (const SteadImportJudge *judge,
              gint64                  id)
{
  for (guint i = 0; i < judge->items->len; i++)
    if (((const SteadItem *) judge->items->pdata[i])->id == id)
      return ((const SteadItem *) judge->items->pdata[i])->name;
  return "";
}

/* The lines that the farm has, by key → 0. */
static GHashTable *
known_lines (const SteadImportJudge  *judge,
             GError                 **error)
{
  g_autoptr(GPtrArray) receipts = stead_receipt_repo_list (judge->store, error);
  GHashTable *known;

  if (receipts == NULL)
    return NULL;
  known = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  for (guint i = 0; i < receipts->len; i++)
    {
      const SteadReceipt *receipt = receipts->pdata[i];

      for (guint k = 0; k < receipt->lines->len; k++)
        {
          const SteadReceiptLine *line = &g_array_index (receipt->lines, SteadReceiptLine, k);

          g_hash_table_insert (known, line_key (receipt->day, receipt->supplier, receipt->reference, receipt->is_gift,
                                                name_of_item (judge, line->item_id), line->quantity_base,
                                                line->cost_cents), GUINT_TO_POINTER (0));
        }
    }
  return known;
}

static void
judge_row (SteadImportJudge *judge,
           GHashTable       *known,
           SteadImportRow   *row)
{
  Line *line;
  char *key;
  gpointer where;

  if (row->state == STEAD_ROW_WRONG || !stead_import_check_cells (row))
    return;
  if (stead_import_row_is_blank (row))
    {
      stead_import_skip (row, g_strdup (_("This row is blank.")));
      return;
    }
  line = g_new0 (Line, 1);
  if (!read_line (judge, row, line))
    {
      free_line (line);
      return;
    }
  key = line_key (line->day, line->supplier, line->reference, line->is_gift, line->item.name, line->item.quantity_base,
                  line->cost_cents);
  if (g_hash_table_lookup_extended (known, key, NULL, &where))
    {
      stead_import_skip (row, where == NULL
                              ? g_strdup (_("The farm already has this line of a receipt."))
                              : g_strdup_printf (_("Line %u already says the same."), GPOINTER_TO_UINT (where)));
      free_line (line);
      g_free (key);
      return;
    }
  g_hash_table_insert (known, key, GUINT_TO_POINTER (row->line));
  row->fact = line;
  row->state = STEAD_ROW_TAKE;
}

static gboolean
judge_receipts (SteadImportJudge  *judge,
                GPtrArray         *rows,
                GError           **error)
{
  g_autoptr(GHashTable) known = known_lines (judge, error);

  if (known == NULL)
    return FALSE;
  for (guint i = 0; i < rows->len; i++)
    {
      if (!stead_import_go_on (judge, i, rows->len, error))
        return FALSE;
      judge_row (judge, known, rows->pdata[i]);
    }
  return TRUE;
}

static char *
understood (const SteadFarm *farm,
            gconstpointer    fact)
{
  const Line *line = fact;
  g_autofree char *day = stead_day_format (line->day, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *amount = stead_quantity_format (line->item.quantity_base, line->item.unit);
  g_autofree char *cost = stead_money_format (line->cost_cents, farm->currency);

  if (line->is_gift)
    /* Translators: day, thing, amount, who gave it, fair value. */
    return g_strdup_printf (_("%s: %s, %s, given by %s, worth %s"), day, line->item.name, amount, line->supplier, cost);
  /* Translators: day, thing, amount, who sold it, cost. */
  return g_strdup_printf (_("%s: %s, %s, from %s, %s"), day, line->item.name, amount, line->supplier, cost);
}

/* --- writing ------------------------------------------------------------------ */

static void
add_line (SteadReceipt *receipt,
          const Line   *line)
{
  SteadReceiptLine part = { .item_id = line->item.id, .quantity_base = line->item.quantity_base,
                            .cost_cents = line->cost_cents, .best_by = line->best_by };

  g_array_append_val (receipt->lines, part);
}

static SteadReceipt *
new_receipt (const Line *line)
{
  SteadReceipt *receipt = stead_receipt_new ();

  receipt->day = line->day;
  g_free (receipt->supplier);
  receipt->supplier = g_strdup (line->supplier);
  receipt->is_gift = line->is_gift;
  receipt->reference = g_strdup (line->reference);
  receipt->note = g_strdup (line->note);
  receipt->person_id = line->person_id;
  return receipt;
}

/* Rows to receipts, in the order in which the file begins them. */
static GPtrArray *
group_rows (GPtrArray *rows)
{
  GPtrArray *receipts = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_receipt_free);
  g_autoptr(GHashTable) by_key = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];
      const Line *line = row->fact;
      g_autofree char *key = NULL;
      SteadReceipt *receipt;

      if (row->state != STEAD_ROW_TAKE)
        continue;
      key = line_key (line->day, line->supplier, line->reference, line->is_gift, "", 0, 0);
      receipt = g_hash_table_lookup (by_key, key);
      if (receipt == NULL)
        {
          receipt = new_receipt (line);
          g_ptr_array_add (receipts, receipt);
          g_hash_table_insert (by_key, g_steal_pointer (&key), receipt);
        }
      add_line (receipt, line);
    }
  return receipts;
}

static gboolean
make_items (SteadStore  *store,
            GPtrArray   *rows,
            GError     **error)
{
  g_autoptr(GHashTable) made = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  for (guint i = 0; i < rows->len; i++)
    {
      const SteadImportRow *row = rows->pdata[i];

      if (row->state == STEAD_ROW_TAKE && !stead_import_make_item (store, made, &((Line *) row->fact)->item, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_receipts (GPtrArray            *rows,
                SteadStore           *store,
                GCancellable         *cancellable,
                SteadImportProgress   progress,
                gpointer              data,
                GError              **error)
{
  g_autoptr(GPtrArray) receipts = NULL;

  if (!make_items (store, rows, error))
    return FALSE;
  receipts = group_rows (rows);
  for (guint i = 0; i < receipts->len; i++)
    {
      if (g_cancellable_set_error_if_cancelled (cancellable, error)
          || !stead_receipt_repo_save (store, receipts->pdata[i], error))
        return FALSE;
      if (progress != NULL)
        progress ((i + 1.0) / receipts->len, data);
    }
  return TRUE;
}

/* --- the kind -------------------------------------------------------------------- */

static gboolean
prepare (SteadImportJudge  *judge,
         gint64             batch_id,
         GError           **error)
{
  judge->items = stead_item_repo_list (judge->store, error);
  return judge->items != NULL;
}

static gboolean
is_complete (const SteadColumns *columns)
{
  const int *at = columns->at;

  return at[STEAD_COLUMN_SUPPLIER] >= 0 && at[STEAD_COLUMN_ITEM] >= 0 && at[STEAD_COLUMN_QUANTITY] >= 0
         && at[STEAD_COLUMN_COST] >= 0;
}

const SteadImportMethods stead_import_receipts = {
  .name = "receipts",
  .prepare = prepare,
  .is_complete = is_complete,
  .needs = N_("The first row must name the columns: Date, Supplier, Item, Quantity, Cost, and perhaps "
              "Unit, Kind, Gift, Best by, Reference, Note, By."),
  .judge = judge_receipts,
  .understood = understood,
  .free_fact = free_line,
  .write = write_receipts,
};
