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
  g_free (row->supplier);
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
  row->supplier = g_strdup (line->supplier);
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

/* What came for the line, by the receipts of the build or by one of the store room. */
static void
add_came (const SteadBuildAnswer *self,
          SteadBuildRow          *row,
          const SteadBuildLine   *line)
{
  for (guint i = 0; line != NULL && i < self->buys->len; i++)
    {
      const SteadBuildBuy *buy = self->buys->pdata[i];

      if (buy->line_id != line->id)
        continue;
      row->came += buy->packs;
      row->paid_cents += buy->cents;
    }
  if (line == NULL || line->receipt_line_id == 0)
    return;
  row->came = MAX (row->came, row->packs);
  row->paid_cents += line->bought_cents;
}

static void
price (const SteadBuildAnswer *self,
       SteadBuildRow          *row,
       const SteadBuildLine   *line)
{
  SteadBillLine bill = { .price_cents = (double) MAX (row->price_cents, 0) };

  row->packs = row->pack == 1 ? row->quantity : ceil (row->quantity / row->pack - 1e-9);
  add_came (self, row, line);
  row->open = row->left_out || row->packs - row->came < 1e-9 ? 0 : row->packs - row->came;
  row->is_bought = row->came > 0 && row->open == 0;
  bill.quantity = row->packs;
  row->planned_cents = row->left_out ? 0 : stead_bill_line_cents (&bill);
  bill.quantity = row->open;
  row->cents = row->paid_cents + stead_bill_line_cents (&bill);
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
      price (self, row, line);
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
      price (self, row, line);
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
  price (self, row, line);
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

/* What came, beside what it was planned to cost: a line whose price nobody knew before is
 * no part of the comparison. */
static void
add_paid (SteadBuildAnswer    *self,
          const SteadBuildRow *row)
{
  SteadBillLine plan = { .quantity = row->came, .price_cents = (double) MAX (row->price_cents, 0) };

  if (row->given || !(row->came > 0))
    return;
  self->spent_cents += row->paid_cents;
  if (row->price_cents < 0)
    return;
  self->came_planned_cents += stead_bill_line_cents (&plan);
  self->came_paid_cents += row->paid_cents;
}

static gboolean
sum (SteadBuildAnswer  *self,
     GError           **error)
{
  g_autoptr(GArray) open = g_array_new (FALSE, FALSE, sizeof (SteadBillLine));

  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadBuildRow *row = self->rows->pdata[i];
      SteadBillLine line = { row->given ? row->packs : row->open, (double) MAX (row->price_cents, 0), row->given, row->taxed };

      add_paid (self, row);
      if (row->left_out || (row->is_bought && !row->given))
        continue;
      self->n_unpriced += row->price_cents < 0;
      if (!row->given)
        self->part_cents[row->part] += row->cents - row->paid_cents;
      g_array_append_val (open, line);
    }
  for (guint i = 0; i < self->buys->len; i++)
    self->spent_tax_cents += ((const SteadBuildBuy *) self->buys->pdata[i])->tax_cents;
  self->spent_cents += self->spent_tax_cents;
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
