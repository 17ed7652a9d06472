/* stead-import-receipts.c - judges the rows of a table of receipts.
 *
 * Each row is one line of a receipt; rows of the same day, supplier, reference
 * and kind (bought or given) make one receipt.  An item that the farm does not
 * have is only made if the file says what kind of thing it is.
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
  char            *item_name;
  gint64           item_id;      /* 0: made when it is taken */
  SteadItemKind    item_kind;    /* of an item to be made */
  const SteadUnit *unit;
  double           quantity_base;
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
  g_free (line->item_name);
  g_free (line);
}

/* Folded words for each kind, the first as it is offered in a message. */
static const struct { const char *word; SteadItemKind kind; } kind_words[] = {
  { "feed", STEAD_ITEM_FEED }, { "alimento", STEAD_ITEM_FEED }, { "pienso", STEAD_ITEM_FEED },
  { "bedding", STEAD_ITEM_BEDDING }, { "litter", STEAD_ITEM_BEDDING }, { "cama", STEAD_ITEM_BEDDING },
  { "packaging", STEAD_ITEM_PACKAGING }, { "empaque", STEAD_ITEM_PACKAGING }, { "envase", STEAD_ITEM_PACKAGING },
  { "ingredient", STEAD_ITEM_INGREDIENT }, { "ingrediente", STEAD_ITEM_INGREDIENT },
  { "seed", STEAD_ITEM_SEED }, { "semilla", STEAD_ITEM_SEED },
  { "supply", STEAD_ITEM_SUPPLY }, { "supplies", STEAD_ITEM_SUPPLY }, { "suministro", STEAD_ITEM_SUPPLY },
  { "livestock", STEAD_ITEM_LIVESTOCK }, { "animals", STEAD_ITEM_LIVESTOCK }, { "animales", STEAD_ITEM_LIVESTOCK },
};

static gboolean
kind_from_word (const char    *text,
                SteadItemKind *out)
{
  g_autofree char *folded = stead_line_fold (text);

  for (gsize i = 0; i < G_N_ELEMENTS (kind_words); i++)
    if (g_str_equal (kind_words[i].word, folded))
      {
        *out = kind_words[i].kind;
        return TRUE;
      }
  return FALSE;
}

static const SteadItem *
find_item (const SteadImportJudge *judge,
           const char             *name)
{
  g_autofree char *wanted = stead_line_fold (name);

  for (guint i = 0; i < judge->items->len; i++)
    {
      const SteadItem *item = judge->items->pdata[i];
      g_autofree char *folded = stead_line_fold (item->name);

      if (g_str_equal (folded, wanted))
        return item;
    }
  return NULL;
}

/* How many letters must change to make one text of the other; both short. */
static guint
distance (const char *a,
          const char *b)
{
  gsize n = strlen (b);
  g_autofree guint *row = g_new (guint, n + 1);

  for (gsize j = 0; j <= n; j++)
    row[j] = (guint) j;
  for (gsize i = 1; a[i - 1] != '\0'; i++)
    {
      guint diagonal = row[0];

      row[0] = (guint) i;
      for (gsize j = 1; j <= n; j++)
        {
          guint above = row[j];

          row[j] = MIN (MIN (row[j] + 1, row[j - 1] + 1), diagonal + (a[i - 1] == b[j - 1] ? 0 : 1));
          diagonal = above;
        }
    }
  return row[n];
}

/* The item whose name is nearest, if it is near at all. */
static const SteadItem *
nearest_item (const SteadImportJudge *judge,
              const char             *name)
{
  g_autofree char *wanted = stead_line_fold (name);
  const SteadItem *nearest = NULL;
  guint least = (guint) strlen (wanted) / 3 + 1;

  for (guint i = 0; i < judge->items->len && strlen (wanted) <= 200; i++)
    {
      const SteadItem *item = judge->items->pdata[i];
      g_autofree char *folded = stead_line_fold (item->name);
      guint away = strstr (folded, wanted) != NULL ? 0 : distance (wanted, folded);

      if (away >= least)
        continue;
      least = away;
      nearest = item;
    }
  return nearest;
}

static gboolean
wrong_item (const SteadImportJudge *judge,
            SteadImportRow         *row,
            const char             *name)
{
  const SteadItem *near = nearest_item (judge, name);

  return stead_import_wrong (judge, row, STEAD_COLUMN_ITEM,
    near != NULL
    ? g_strdup_printf (_("“%s” is not in the store room. Did you mean “%s”? "
                         "For a new thing fill in a column Kind, such as feed."), name, near->name)
    : g_strdup_printf (_("“%s” is not in the store room. Add it in Keep first, "
                         "or fill in a column Kind, such as feed."), name));
}

/* A number in the cell may bear its unit; else the column's, the row's or the item's holds. */
static const SteadUnit *
unit_of_row (const SteadImportJudge *judge,
             const SteadImportRow   *row)
{
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_UNIT);
  g_autofree char *text = g_strstrip (g_strdup (cell));

  if (*text != '\0')
    return stead_unit_from_text (text);
  return judge->columns->unit[STEAD_COLUMN_QUANTITY];
}

static gboolean
read_known_item (const SteadImportJudge *judge,
                 SteadImportRow         *row,
                 const SteadItem        *item,
                 const SteadUnit        *unit,
                 Line                   *line)
{
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_QUANTITY);
  g_autoptr(GError) error = NULL;

  if (unit != NULL && unit->dimension != item->unit->dimension)
    return stead_import_wrong (judge, row, STEAD_COLUMN_UNIT,
                               g_strdup_printf (_("“%s” is counted in %s. Give the amount in a unit of that sort."),
                                                item->name, stead_unit_symbol (item->unit)));
  line->item_id = item->id;
  line->unit = item->unit;
  if (!stead_quantity_parse (cell, item->unit->dimension, unit != NULL ? unit : item->unit, &line->quantity_base,
                             NULL, &error))
    return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (error->message));
  return TRUE;
}

/* An item to be made: its unit is the one that the row names, or pieces. */
static gboolean
read_new_item (const SteadImportJudge *judge,
               SteadImportRow         *row,
               const SteadUnit        *unit,
               Line                   *line)
{
  static const SteadDimension tries[] = { STEAD_DIMENSION_MASS, STEAD_DIMENSION_VOLUME, STEAD_DIMENSION_COUNT };
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_QUANTITY);
  const SteadUnit *fallback;
  g_autoptr(GError) error = NULL;

  fallback = unit != NULL ? unit : stead_unit_by_id ("ea");
  if (stead_quantity_parse (cell, fallback->dimension, fallback, &line->quantity_base, &line->unit, &error))
    return TRUE;
  for (gsize i = 0; unit == NULL && i < G_N_ELEMENTS (tries); i++)
    if (stead_quantity_parse (cell, tries[i], stead_unit_default (tries[i], judge->farm->units),
                              &line->quantity_base, &line->unit, NULL))
      return TRUE;
  return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (error->message));
}

static gboolean
read_item (const SteadImportJudge *judge,
           SteadImportRow         *row,
           Line                   *line)
{
  const SteadUnit *unit = unit_of_row (judge, row);
  const SteadItem *item;
  g_autofree char *kind = stead_import_read_text (judge, row, STEAD_COLUMN_KIND);

  line->item_name = stead_import_read_text (judge, row, STEAD_COLUMN_ITEM);
  if (line->item_name == NULL)
    return stead_import_wrong (judge, row, STEAD_COLUMN_ITEM, g_strdup (_("The name of the thing is missing.")));
  if (unit == NULL && *stead_import_cell (judge, row, STEAD_COLUMN_UNIT) != '\0')
    return stead_import_wrong (judge, row, STEAD_COLUMN_UNIT,
                               g_strdup_printf (_("“%s” is not a unit that is known here. Use lb, kg, gal, L, doz or "
                                                  "each."), stead_import_cell (judge, row, STEAD_COLUMN_UNIT)));
  item = find_item (judge, line->item_name);
  if (item != NULL)
    {
      if (!read_known_item (judge, row, item, unit, line))
        return FALSE;
    }
  else if (kind == NULL)
    return wrong_item (judge, row, line->item_name);
  else if (!kind_from_word (kind, &line->item_kind))
    return stead_import_wrong (judge, row, STEAD_COLUMN_KIND,
                               g_strdup_printf (_("“%s” is no kind of thing. Use feed, bedding, packaging, ingredient, "
                                                  "seed or supply."), kind));
  else if (!read_new_item (judge, row, unit, line))
    return FALSE;
  if (!(line->quantity_base > 0))
    return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (_("The amount must be above 0.")));
  return TRUE;
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
  return read_item (judge, row, line) && read_cost (judge, row, line) && read_gift (judge, row, line);
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
  key = line_key (line->day, line->supplier, line->reference, line->is_gift, line->item_name, line->quantity_base,
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
  g_autofree char *amount = stead_quantity_format (line->quantity_base, line->unit);
  g_autofree char *cost = stead_money_format (line->cost_cents, farm->currency);

  if (line->is_gift)
    /* Translators: day, thing, amount, who gave it, fair value. */
    return g_strdup_printf (_("%s: %s, %s, given by %s, worth %s"), day, line->item_name, amount, line->supplier, cost);
  /* Translators: day, thing, amount, who sold it, cost. */
  return g_strdup_printf (_("%s: %s, %s, from %s, %s"), day, line->item_name, amount, line->supplier, cost);
}

/* --- writing ------------------------------------------------------------------ */

/* The item of a row, made now if it is a new one; two rows may name the same. */
static gboolean
make_item (SteadStore  *store,
           GHashTable  *made,
           Line        *line,
           GError     **error)
{
  g_autofree char *folded = stead_line_fold (line->item_name);
  const gint64 *known = g_hash_table_lookup (made, folded);
  SteadItem item = { .name = line->item_name, .kind = line->item_kind, .unit = line->unit, .reorder_base = NAN };

  if (line->item_id != 0)
    return TRUE;
  if (known == NULL)
    {
      item.name = g_strdup (line->item_name);
      if (!stead_item_repo_save (store, &item, error))
        {
          g_free (item.name);
          return FALSE;
        }
      g_free (item.name);
      g_hash_table_insert (made, g_steal_pointer (&folded), g_memdup2 (&item.id, sizeof item.id));
      line->item_id = item.id;
      return TRUE;
    }
  line->item_id = *known;
  return TRUE;
}

static void
add_line (SteadReceipt *receipt,
          const Line   *line)
{
  SteadReceiptLine part = { .item_id = line->item_id, .quantity_base = line->quantity_base,
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

      if (row->state == STEAD_ROW_TAKE && !make_item (store, made, row->fact, error))
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
