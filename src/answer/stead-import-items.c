/* stead-import-items.c - the thing that a row of receipts names.
 *
 * One that the farm does not have is only made if the file says what kind of thing it is.
 */
#include "config.h"

#include "answer/stead-import-private.h"
#include "answer/stead-line-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

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
                 SteadImportItem        *out)
{
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_QUANTITY);
  g_autoptr(GError) error = NULL;

  if (unit != NULL && unit->dimension != item->unit->dimension)
    return stead_import_wrong (judge, row, STEAD_COLUMN_UNIT,
                               g_strdup_printf (_("“%s” is counted in %s. Give the amount in a unit of that sort."),
                                                item->name, stead_unit_symbol (item->unit)));
  out->id = item->id;
  out->unit = item->unit;
  if (!stead_quantity_parse (cell, item->unit->dimension, unit != NULL ? unit : item->unit, &out->quantity_base,
                             NULL, &error))
    return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (error->message));
  return TRUE;
}

/* An item to be made: its unit is the one that the row names, or pieces. */
static gboolean
read_new_item (const SteadImportJudge *judge,
               SteadImportRow         *row,
               const SteadUnit        *unit,
               SteadImportItem        *out)
{
  static const SteadDimension tries[] = { STEAD_DIMENSION_MASS, STEAD_DIMENSION_VOLUME, STEAD_DIMENSION_COUNT };
  const char *cell = stead_import_cell (judge, row, STEAD_COLUMN_QUANTITY);
  const SteadUnit *fallback;
  g_autoptr(GError) error = NULL;

  fallback = unit != NULL ? unit : stead_unit_by_id ("ea");
  if (stead_quantity_parse (cell, fallback->dimension, fallback, &out->quantity_base, &out->unit, &error))
    return TRUE;
  for (gsize i = 0; unit == NULL && i < G_N_ELEMENTS (tries); i++)
    if (stead_quantity_parse (cell, tries[i], stead_unit_default (tries[i], judge->farm->units),
                              &out->quantity_base, &out->unit, NULL))
      return TRUE;
  return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (error->message));
}

gboolean
stead_import_read_item (const SteadImportJudge *judge,
                        SteadImportRow         *row,
                        SteadImportItem        *out)
{
  const SteadUnit *unit = unit_of_row (judge, row);
  const SteadItem *item;
  g_autofree char *kind = stead_import_read_text (judge, row, STEAD_COLUMN_KIND);

  out->name = stead_import_read_text (judge, row, STEAD_COLUMN_ITEM);
  if (out->name == NULL)
    return stead_import_wrong (judge, row, STEAD_COLUMN_ITEM, g_strdup (_("The name of the thing is missing.")));
  if (unit == NULL && *stead_import_cell (judge, row, STEAD_COLUMN_UNIT) != '\0')
    return stead_import_wrong (judge, row, STEAD_COLUMN_UNIT,
                               g_strdup_printf (_("“%s” is not a unit that is known here. Use lb, kg, gal, L, doz or "
                                                  "each."), stead_import_cell (judge, row, STEAD_COLUMN_UNIT)));
  item = find_item (judge, out->name);
  if (item != NULL)
    {
      if (!read_known_item (judge, row, item, unit, out))
        return FALSE;
    }
  else if (kind == NULL)
    return wrong_item (judge, row, out->name);
  else if (!kind_from_word (kind, &out->kind))
    return stead_import_wrong (judge, row, STEAD_COLUMN_KIND,
                               g_strdup_printf (_("“%s” is no kind of thing. Use feed, bedding, packaging, ingredient, "
                                                  "seed or supply."), kind));
  else if (!read_new_item (judge, row, unit, out))
    return FALSE;
  if (!(out->quantity_base > 0))
    return stead_import_wrong (judge, row, STEAD_COLUMN_QUANTITY, g_strdup (_("The amount must be above 0.")));
  return TRUE;
}

gboolean
stead_import_make_item (SteadStore       *store,
                        GHashTable       *made,
                        SteadImportItem  *wanted,
                        GError          **error)
{
  g_autofree char *folded = stead_line_fold (wanted->name);
  g_autofree char *name = g_strdup (wanted->name);
  const gint64 *known = g_hash_table_lookup (made, folded);
  SteadItem item = { .name = name, .kind = wanted->kind, .unit = wanted->unit, .reorder_base = NAN };

  if (wanted->id != 0)
    return TRUE;
  if (known == NULL)
    {
      if (!stead_item_repo_save (store, &item, error))
        return FALSE;
      g_hash_table_insert (made, g_steal_pointer (&folded), g_memdup2 (&item.id, sizeof item.id));
      wanted->id = item.id;
      return TRUE;
    }
  wanted->id = *known;
  return TRUE;
}
