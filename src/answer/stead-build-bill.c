/* stead-build-bill.c - the bill of materials: the drawing, and what people said about it.
 *
 * A line is rounded to the cent, then lines are added (core/stead-bill.h).
 */
#include "config.h"

#include "answer/stead-build-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

void
stead_build_row_free (gpointer data)
{
  SteadBuildRow *row = data;

  g_free (row->key);
  g_free (row->name);
  g_free (row->how);
  g_free (row->unit);
  g_free (row->giver);
  g_free (row->best_supplier);
  g_free (row);
}

static const SteadBuildLine *
find_line (const GPtrArray *lines,
           const char      *key)
{
  for (guint i = 0; i < lines->len; i++)
    if (g_strcmp0 (((const SteadBuildLine *) lines->pdata[i])->key, key) == 0)
      return lines->pdata[i];
  return NULL;
}

static void
say_line (SteadBuildRow        *row,
          const SteadBuildLine *line)
{
  if (line == NULL)
    return;
  row->line_id = line->id;
  if (!isnan (line->quantity))
    row->quantity = line->quantity;
  if (line->name != NULL)
    {
      g_free (row->name);
      row->name = g_strdup (line->name);
    }
  row->pack = line->pack;
  row->price_cents = line->price_cents;
  row->given = line->given;
  row->taxed = line->taxed;
  row->left_out = line->left_out;
  row->giver = g_strdup (line->giver);
  row->is_bought = line->receipt_line_id != 0;
  row->n_quotes = line->quotes->len;
  if (line->quotes->len > 0)
    {
      const SteadBuildQuote *best = line->quotes->pdata[0];

      row->best_cents = best->price_cents;
      row->best_supplier = g_strdup (best->supplier);
    }
}

static SteadBuildRow *
row_new (void)
{
  SteadBuildRow *row = g_new0 (SteadBuildRow, 1);

  row->drawn = NAN;
  row->pack = 1;
  row->price_cents = row->best_cents = -1;
  row->taxed = TRUE;
  return row;
}

static void
price (SteadBuildRow        *row,
       const SteadBuildLine *line)
{
  SteadBillLine bill = { .price_cents = (double) MAX (row->price_cents, 0) };

  row->packs = row->pack == 1 ? row->quantity : ceil (row->quantity / row->pack - 1e-9);
  bill.quantity = row->packs;
  row->cents = row->left_out ? 0 : stead_bill_line_cents (&bill);
  if (row->is_bought && line != NULL)
    row->cents = line->bought_cents;
}

static void
add_drawn (SteadBuildAnswer *self,
           const GPtrArray  *lines)
{
  for (guint i = 0; self->takeoff != NULL && i < self->takeoff->needs->len; i++)
    {
      const SteadBuildNeed *need = self->takeoff->needs->pdata[i];
      const SteadBuildLine *line = find_line (lines, need->key);
      SteadBuildRow *row = row_new ();

      row->key = g_strdup (need->key);
      row->part = need->part;
      row->name = g_strdup (need->name);
      row->how = g_strdup (need->how);
      row->unit = g_strdup (need->unit);
      row->drawn = row->quantity = need->quantity;
      say_line (row, line);
      price (row, line);
      g_ptr_array_add (self->rows, row);
    }
}

/* A price whose thing the drawing no longer takes is kept in the file, but not billed. */
static void
add_own (SteadBuildAnswer *self,
         const GPtrArray  *lines)
{
  for (guint i = 0; i < lines->len; i++)
    {
      const SteadBuildLine *line = lines->pdata[i];
      SteadBuildRow *row;

      if (line->key != NULL)
        continue;
      row = row_new ();
      row->part = line->part;
      row->unit = g_strdup (line->unit);
      say_line (row, line);
      price (row, line);
      g_ptr_array_add (self->rows, row);
    }
}

static void
add_animals (SteadBuildAnswer *self,
             const GPtrArray  *lines)
{
  const SteadBuildLine *line = find_line (lines, "animal");
  SteadBuildRow *row;

  if (self->build->head == 0 || self->build->animal == NULL)
    return;
  row = row_new ();
  row->key = g_strdup ("animal");
  row->part = STEAD_BUILD_PART_ANIMALS;
  row->name = g_strdup (stead_build_animal_name (self->build->animal));
  row->drawn = row->quantity = self->build->head;
  row->how = g_strdup (_("as many as will live in it; leave them out if they are paid for elsewhere"));
  say_line (row, line);
  price (row, line);
  g_ptr_array_add (self->rows, row);
}

/* In the order of building; what was first stays first. */
static int
compare_rows (gconstpointer a,
              gconstpointer b)
{
  const SteadBuildRow *first = *(const SteadBuildRow * const *) a;
  const SteadBuildRow *second = *(const SteadBuildRow * const *) b;

  return (int) first->part - (int) second->part;
}

static void
sort_rows (GPtrArray *rows)
{
  /* A stable sort, which GPtrArray's is: it merges. */
  g_ptr_array_sort (rows, compare_rows);
}

static gboolean
sum (SteadBuildAnswer  *self,
     GError           **error)
{
  g_autoptr(GArray) open = g_array_new (FALSE, FALSE, sizeof (SteadBillLine));

  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadBuildRow *row = self->rows->pdata[i];
      SteadBillLine line = { row->packs, (double) MAX (row->price_cents, 0), row->given, row->taxed };

      if (row->left_out)
        continue;
      if (row->is_bought && !row->given)
        {
          self->spent_cents += row->cents;
          continue;
        }
      self->n_unpriced += row->price_cents < 0;
      if (!row->given)
        self->part_cents[row->part] += row->cents;
      g_array_append_val (open, line);
    }
  if (!stead_bill_sum ((const SteadBillLine *) (gpointer) open->data, open->len, self->build->tax_frac,
                       self->build->contingency_frac, &self->bill, error))
    return FALSE;
  self->goal_cents = self->spent_cents + self->bill.cash_cents;
  return TRUE;
}

gboolean
stead_build_make_bill (SteadBuildAnswer  *self,
                       const GPtrArray   *lines,
                       GError           **error)
{
  self->rows = g_ptr_array_new_with_free_func (stead_build_row_free);
  add_drawn (self, lines);
  add_animals (self, lines);
  add_own (self, lines);
  sort_rows (self->rows);
  return sum (self, error);
}

const SteadBuildRow *
stead_build_answer_find (const SteadBuildAnswer *self,
                         const char             *key)
{
  g_return_val_if_fail (self != NULL && key != NULL, NULL);
  for (guint i = 0; i < self->rows->len; i++)
    if (g_strcmp0 (((const SteadBuildRow *) self->rows->pdata[i])->key, key) == 0)
      return self->rows->pdata[i];
  return NULL;
}
