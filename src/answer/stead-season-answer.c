/* stead-season-answer.c - all sale days: by day, by product, by place. */
#include "config.h"

#include "answer/stead-season-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
day_free (SteadSeasonDay *day)
{
  stead_sale_free (day->sale);
  g_free (day);
}

static void
sum_free (SteadSeasonSum *sum)
{
  g_free (sum->name);
  g_free (sum);
}

void
stead_season_answer_free (SteadSeasonAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->days, g_ptr_array_unref);
  g_clear_pointer (&self->products, g_ptr_array_unref);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->overs, g_array_unref);
  g_clear_pointer (&self->over_days, g_array_unref);
  stead_farm_free (self->farm);
  g_free (self->sentence);
  g_free (self->run_text);
  g_free (self);
}

const char *
stead_sale_stage_name (SteadSaleStage stage)
{
  switch (stage)
    {
    case STEAD_SALE_PLANNED: return C_("sale day", "planned");
    case STEAD_SALE_TODAY: return C_("sale day", "today");
    case STEAD_SALE_OPEN: return C_("sale day", "to be cashed up");
    case STEAD_SALE_DONE: return C_("sale day", "done");
    default: g_return_val_if_reached ("");
    }
}

static SteadSaleStage
stage_of (const SteadSale *sale,
          SteadDay         today)
{
  if (sale->count_id != 0)
    return STEAD_SALE_DONE;
  if (sale->day > today)
    return STEAD_SALE_PLANNED;
  return sale->day == today ? STEAD_SALE_TODAY : STEAD_SALE_OPEN;
}

static double
hours_of (const SteadSale *sale)
{
  return (sale->closes_min - sale->opens_min) / 60.0;
}

/* --- sums --------------------------------------------------------------------------------- */

static SteadSeasonSum *
sum_at (GPtrArray  *sums,
        gint64      id,
        const char *name)
{
  SteadSeasonSum *sum;

  for (guint i = 0; i < sums->len; i++)
    {
      sum = sums->pdata[i];
      if (sum->id == id && g_strcmp0 (sum->name, name) == 0)
        return sum;
    }
  sum = g_new0 (SteadSeasonSum, 1);
  sum->id = id;
  sum->name = g_strdup (name);
  g_ptr_array_add (sums, sum);
  return sum;
}

static SteadSeasonDay *
find_day (GPtrArray *days,
          gint64     sale_id)
{
  for (guint i = 0; i < days->len; i++)
    if (((SteadSeasonDay *) days->pdata[i])->sale->id == sale_id)
      return days->pdata[i];
  return NULL;
}

static const char *
product_name (GPtrArray *products,
              gint64     id)
{
  for (guint i = 0; i < products->len; i++)
    if (((SteadProduct *) products->pdata[i])->id == id)
      return ((SteadProduct *) products->pdata[i])->name;
  return "";
}

static void
add_product (SteadSeasonAnswer    *self,
             const SteadSaleSum   *sum,
             const char           *name,
             const SteadSeasonDay *day)
{
  SteadSeasonSum *row = sum_at (self->products, sum->product_id, name);

  row->n_days++;
  row->units += sum->sold;
  row->takings_cents += sum->takings_cents;
  row->hours += hours_of (day->sale);
}

static gboolean
add_sums (SteadStore         *store,
          SteadSeasonAnswer  *self,
          GError            **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, TRUE, error);
  g_autoptr(GArray) sums = products != NULL ? stead_sale_repo_sums (store, 0, error) : NULL;

  for (guint i = 0; sums != NULL && i < sums->len; i++)
    {
      const SteadSaleSum *sum = &g_array_index (sums, SteadSaleSum, i);
      SteadSeasonDay *day = find_day (self->days, sum->sale_id);

      if (day == NULL)
        continue;
      day->takings_cents += sum->takings_cents;
      day->units += sum->sold;
      if (day->stage == STEAD_SALE_DONE)
        add_product (self, sum, product_name (products, sum->product_id), day);
    }
  return sums != NULL;
}

static void
add_places (SteadSeasonAnswer *self)
{
  for (guint i = 0; i < self->days->len; i++)
    {
      SteadSeasonDay *day = self->days->pdata[i];
      SteadSeasonSum *place;

      day->per_hour_cents = stead_money_round ((double) day->takings_cents / hours_of (day->sale));
      if (day->stage != STEAD_SALE_DONE)
        continue;
      place = sum_at (self->places, 0, day->sale->location != NULL ? day->sale->location : day->sale->name);
      place->n_days++;
      place->units += day->units;
      place->takings_cents += day->takings_cents;
      place->hours += hours_of (day->sale);
      self->n_done++;
      self->takings_cents += day->takings_cents;
    }
}

static int
best_first (gconstpointer a,
            gconstpointer b)
{
  const SteadSeasonSum *one = *(SteadSeasonSum * const *) a, *two = *(SteadSeasonSum * const *) b;

  return one->takings_cents < two->takings_cents ? 1 : one->takings_cents > two->takings_cents ? -1 : 0;
}

static void
per_hour (GPtrArray *sums)
{
  for (guint i = 0; i < sums->len; i++)
    {
      SteadSeasonSum *sum = sums->pdata[i];

      if (sum->hours > 0)
        sum->per_hour_cents = stead_money_round ((double) sum->takings_cents / sum->hours);
    }
  g_ptr_array_sort (sums, best_first);
}

/* --- over and short --------------------------------------------------------------------------- */

static gboolean
add_overs (SteadStore         *store,
           SteadSeasonAnswer  *self,
           GError            **error)
{
  g_autoptr(GPtrArray) counts = stead_cash_count_repo_list (store, 0, error);

  for (guint i = counts != NULL ? counts->len : 0; i > 0; i--)
    {
      const SteadCashCount *count = counts->pdata[i - 1];
      SteadSeasonDay *day = count->sale_id != 0 ? find_day (self->days, count->sale_id) : NULL;
      double over;

      if (day == NULL)
        continue;
      day->over_cents = stead_cash_count_over_cents (count);
      self->over_cents += day->over_cents;
      over = (double) day->over_cents;
      g_array_append_val (self->overs, over);
      g_array_append_val (self->over_days, day->sale->day);
    }
  if (counts != NULL && self->overs->len > 0)
    stead_run_chart ((const double *) (void *) self->overs->data, self->overs->len, &self->run);
  return counts != NULL;
}

static char *
run_text (const SteadSeasonAnswer *self)
{
  g_autofree char *sum = stead_money_format (ABS (self->over_cents), self->farm->currency);

  if (self->overs->len == 0)
    return NULL;
  if (self->run.can_tell && (self->run.shift.found || self->run.trend.found))
    return g_strdup (_("Over and short do not look like chance any more: look at what changed, and who counted."));
  if (self->over_cents == 0)
    return g_strdup (_("All counts together agree with the cash book."));
  if (self->over_cents > 0)
    return g_strdup_printf (_("All counts together are %s over. Small differences that go both ways are chance."), sum);
  return g_strdup_printf (_("All counts together are %s short. Small differences that go both ways are chance."), sum);
}

static char *
season_sentence (const SteadSeasonAnswer *self)
{
  g_autofree char *taken = stead_money_format (self->takings_cents, self->farm->currency);
  const SteadSeasonSum *best = self->products->len > 0 ? self->products->pdata[0] : NULL;
  g_autofree char *name = NULL;
  g_autofree char *hour = NULL;

  if (self->days->len == 0)
    return g_strdup (_("No sale is planned yet. Plan the first one, and the program works out how many to bring."));
  if (self->n_done == 0 || best == NULL)
    return g_strdup (_("No sale is cashed up yet. What it brings is compared here."));
  name = g_markup_escape_text (best->name, -1);
  hour = stead_money_format (best->per_hour_cents, self->farm->currency);
  /* Translators: a number of sales, a sum, a product and what it takes in an hour. */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "%u sale took <b>%s</b>. “%s” sells best: %s an hour.",
                                       "%u sales took <b>%s</b>. “%s” sells best: %s an hour.", self->n_done),
                          self->n_done, taken, name, hour);
}

SteadSeasonAnswer *
stead_season_answer_new (SteadStore  *store,
                         GError     **error)
{
  return stead_season_answer_between (store, G_MININT32, G_MAXINT32, error);
}

SteadSeasonAnswer *
stead_season_answer_between (SteadStore  *store,
                             SteadDay     from,
                             SteadDay     to,
                             GError     **error)
{
  g_autoptr(SteadSeasonAnswer) self = g_new0 (SteadSeasonAnswer, 1);
  g_autoptr(GPtrArray) sales = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  self->today = stead_store_get_today (store);
  self->days = g_ptr_array_new_with_free_func ((GDestroyNotify) day_free);
  self->products = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  self->places = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  self->overs = g_array_new (FALSE, FALSE, sizeof (double));
  self->over_days = g_array_new (FALSE, FALSE, sizeof (SteadDay));
  self->farm = stead_farm_repo_get (store, error);
  sales = self->farm != NULL ? stead_sale_repo_list (store, error) : NULL;
  if (sales == NULL)
    return NULL;
  for (guint i = 0; i < sales->len; i++)
    {
      SteadSeasonDay *day;

      if (((const SteadSale *) sales->pdata[i])->day < from || ((const SteadSale *) sales->pdata[i])->day > to)
        continue;
      day = g_new0 (SteadSeasonDay, 1);
      day->sale = g_steal_pointer (&sales->pdata[i]);
      day->stage = stage_of (day->sale, self->today);
      g_ptr_array_add (self->days, day);
    }
  self->next_id = stead_sale_repo_next (store, error);
  if (self->next_id < 0 || !add_sums (store, self, error) || !add_overs (store, self, error))
    return NULL;
  add_places (self);
  per_hour (self->products);
  per_hour (self->places);
  self->sentence = season_sentence (self);
  self->run_text = run_text (self);
  return g_steal_pointer (&self);
}

char *
stead_season_figure (SteadStore  *store,
                     char       **out_brief,
                     GError     **error)
{
  gint64 id;
  g_autoptr(SteadSale) sale = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out_brief != NULL, NULL);
  *out_brief = NULL;
  today = stead_store_get_today (store);
  id = stead_sale_repo_next (store, error);
  if (id < 0)
    return NULL;
  if (id == 0)
    return g_strdup (C_("live figure", "no sale planned"));
  sale = stead_sale_repo_get (store, id, error);
  if (sale == NULL)
    return NULL;
  if (sale->day == today)
    return g_strdup (C_("live figure", "sale today"));
  if (sale->day < today)
    return g_strdup (C_("live figure", "cash up"));
  *out_brief = stead_day_format (sale->day, STEAD_DAY_STYLE_SHORT);
  /* Translators: the next sale day: "next: Mar 3". */
  return g_strdup_printf (C_("live figure", "next: %s"), *out_brief);
}
