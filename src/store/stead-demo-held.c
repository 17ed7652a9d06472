/* stead-demo-held.c - the demo farm's sale days that are over: planned, tallied, cashed up.
 *
 * What was to be sold on that day is sold at a stall: a little more is brought than goes,
 * each customer is a tap, and two people count in the evening.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-lot-repo.h"
#include "store/stead-sale-cash-up.h"
#include "store/stead-sale-tally.h"

#define OPENS_MIN (9 * 60)
#define CLOSES_MIN (13 * 60)

/* More than what goes is brought by this share. */
#define SPARE 0.12

typedef struct
{
  char   *group;
  double  units;
} Ware;

struct _SteadDemoMarket
{
  GPtrArray *wares;     /* of Ware, of today */
  guint      n_held;
};

static void
ware_free (gpointer data)
{
  g_free (((Ware *) data)->group);
  g_free (data);
}

SteadDemoMarket *
stead_demo_market_new (SteadDemoWriter *writer)
{
  SteadDemoMarket *market = g_new0 (SteadDemoMarket, 1);

  market->wares = g_ptr_array_new_with_free_func (ware_free);
  return market;
}

void
stead_demo_market_free (SteadDemoMarket *market)
{
  if (market == NULL)
    return;
  g_ptr_array_unref (market->wares);
  g_free (market);
}

gboolean
stead_demo_market_is_on (SteadDemoWriter *writer)
{
  SteadDay day = stead_demo_day_at (writer, writer->at);
  int past = (int) stead_demo_number (&writer->story->reader, "market", "past_days");
  int mday;

  stead_day_split (day, NULL, NULL, &mday);
  return stead_day_weekday (day) == 6 && mday <= 7 && day >= writer->story->today - past;
}

void
stead_demo_market_sold (SteadDemoWriter *writer,
                        const char      *group,
                        double           units)
{
  Ware *ware = g_new0 (Ware, 1);

  *ware = (Ware) { g_strdup (group), units };
  g_ptr_array_add (writer->market->wares, ware);
}

/* In turn, by how many markets were held. */
static char *
in_turn (SteadDemoWriter *writer,
         const char      *key)
{
  g_auto(GStrv) list = stead_demo_list (&writer->story->reader, "market", key);
  guint n = g_strv_length (list);

  return n > 0 ? g_strdup (list[writer->market->n_held % n]) : NULL;
}

/* --- the plan ----------------------------------------------------------------------------- */

/* What other wares of the same item take out of the store room. */
static gboolean
spoken_for (SteadDemoWriter  *writer,
            const SteadSale  *sale,
            gint64            item_id,
            double           *out_base,
            GError          **error)
{
  *out_base = 0;
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      g_autoptr(SteadProduct) product = stead_product_repo_get (writer->store, good->product_id, error);

      if (product == NULL)
        return FALSE;
      *out_base += product->item_id == item_id ? good->planned * product->base_per_unit : 0;
    }
  return TRUE;
}

static gboolean
add_good (SteadDemoWriter  *writer,
          SteadSale        *sale,
          const Ware       *ware,
          GError          **error)
{
  SteadSaleGood *good = stead_sale_good_new ();
  gint64 id = stead_demo_id_of (writer, "product", stead_demo_group_name (ware->group));
  g_autoptr(GError) problem = NULL;

  g_ptr_array_add (sale->goods, good);
  good->product_id = id;
  good->price_cents = MAX (0, stead_product_repo_price_on (writer->store, id, sale->day, &problem));
  good->planned = ware->units;
  if (problem == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&problem));
  return FALSE;
}

/* Some more of each is brought, as far as it is there. */
static gboolean
add_spare (SteadDemoWriter  *writer,
           SteadSale        *sale,
           GError          **error)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      SteadSaleGood *good = sale->goods->pdata[i];
      g_autoptr(SteadProduct) product = stead_product_repo_get (writer->store, good->product_id, error);
      SteadStock stock;
      double there, spoken;

      if (product == NULL || !stead_lot_repo_stock (writer->store, product->item_id, sale->day, 1, &stock, error)
          || !spoken_for (writer, sale, product->item_id, &spoken, error))
        return FALSE;
      there = floor ((stock.on_hand_base - spoken) / product->base_per_unit + 1e-6);
      good->planned += CLAMP (there, 0, ceil (SPARE * good->planned));
    }
  return TRUE;
}

static void
add_cost (SteadSale  *sale,
          const char *name,
          gint64      cents,
          gboolean    from_till)
{
  SteadSaleCost *cost = g_new0 (SteadSaleCost, 1);

  cost->name = g_strdup (name);
  cost->cents = cents;
  cost->paid_cents = -1;
  cost->from_till = from_till;
  g_ptr_array_add (sale->costs, cost);
}

static void
add_shift (SteadSale  *sale,
           gint64      person_id,
           int         from_min,
           int         to_min,
           const char *duty)
{
  SteadSaleShift *shift = g_new0 (SteadSaleShift, 1);

  shift->person_id = person_id;
  shift->from_min = from_min;
  shift->to_min = to_min;
  shift->break_min = 15;
  shift->duty = g_strdup (duty);
  g_ptr_array_add (sale->shifts, shift);
}

static gboolean
plan (SteadDemoWriter  *writer,
      SteadSale        *sale,
      GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;

  sale->name = stead_demo_text (reader, "market", "name");
  sale->day = stead_demo_day_at (writer, writer->at);
  sale->location = in_turn (writer, "locations");
  sale->weather = in_turn (writer, "weather");
  sale->opens_min = OPENS_MIN;
  sale->closes_min = CLOSES_MIN;
  sale->account_id = stead_demo_cash_till (writer);
  for (guint i = 0; i < writer->market->wares->len; i++)
    if (!add_good (writer, sale, writer->market->wares->pdata[i], error))
      return FALSE;
  add_cost (sale, _("Table"), stead_demo_cents (reader, "cash", "table"), FALSE);
  add_cost (sale, _("Ice"), stead_demo_cents (reader, "market", "ice"), TRUE);
  add_shift (sale, stead_demo_person_on (writer, writer->at), OPENS_MIN - 30, CLOSES_MIN + 30, _("Set up and sell"));
  add_shift (sale, stead_demo_second_on (writer, writer->at), OPENS_MIN, CLOSES_MIN + 30, _("Sell and pack up"));
  stead_demo_market_float (writer, "market", sale);
  return stead_demo_sound (writer, error) && add_spare (writer, sale, error)
         && stead_sale_repo_save (writer->store, sale, NULL, error);
}

/* --- the stall ------------------------------------------------------------------------------ */

/* One customer after the other, one or two units each, over the hours that the stall is open. */
static gboolean
tally (SteadDemoWriter  *writer,
       const SteadSale  *sale,
       GError          **error)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      double left = ((const Ware *) writer->market->wares->pdata[i])->units, sold = 0, all = left;

      for (guint customer = i; left > 0; customer++)
        {
          double units = MIN (left, customer % 3 == 0 ? 2 : 1);
          int minute = OPENS_MIN + (int) ((CLOSES_MIN - OPENS_MIN) * sold / all) + (int) (customer % 5);

          if (!stead_sale_tally_add (writer->store, good->id, STEAD_TAP_SOLD, units, stead_sale_time (sale->day, minute), NULL,
                                     error))
            return FALSE;
          left -= units;
          sold += units;
        }
    }
  return TRUE;
}

/* --- the evening ------------------------------------------------------------------------------ */

/* The first ware is given to the food pantry, the others go back to their lots. */
static void
add_lefts (SteadDemoWriter *writer,
           const SteadSale *sale,
           SteadSaleCashUp *up)
{
  for (guint i = 0; i < sale->goods->len; i++)
    {
      const SteadSaleGood *good = sale->goods->pdata[i];
      double spare = good->planned - ((const Ware *) writer->market->wares->pdata[i])->units;
      SteadSaleLeft *left;

      if (!(spare > 0))
        continue;
      left = g_new0 (SteadSaleLeft, 1);
      left->line_id = good->id;
      left->goes_to = i == 0 ? STEAD_LEFT_GIVEN : STEAD_LEFT_STORE;
      left->units = spare;
      g_ptr_array_add (up->lefts, left);
    }
}

static gboolean
cash_up (SteadDemoWriter  *writer,
         SteadSale        *sale,
         GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  g_autoptr(SteadSaleCashUp) up = stead_sale_cash_up_new ();
  g_autofree char *currency = stead_demo_text (reader, "farm", "currency");
  g_autofree char *over_text = in_turn (writer, "overs");
  gint64 over = over_text != NULL ? stead_demo_cents_of (reader, g_strstrip (over_text)) : 0;
  SteadSaleTill till;

  if (!stead_demo_sound (writer, error) || !stead_sale_till (writer->store, sale, NULL, NULL, &till, error)
      || !stead_demo_cash_pieces (up->pieces, currency, till.expected_cents + over, error))
    return FALSE;
  up->sale_id = sale->id;
  up->first_id = stead_demo_person_on (writer, writer->at);
  up->second_id = stead_demo_second_on (writer, writer->at);
  up->reason = over != 0 ? stead_demo_text (reader, "market", "reason") : NULL;
  up->keep_cents = till.float_cents;
  up->deposit_account = stead_demo_cash_office (writer);
  /* Translators: number of a deposit slip of a market. */
  up->deposit_slip = g_strdup_printf (_("Slip M%u"), writer->market->n_held + 1);
  up->change_next = in_turn (writer, "change");
  up->at = stead_sale_time (sale->day, CLOSES_MIN + 20);
  add_lefts (writer, sale, up);
  for (guint i = 0; i < sale->shifts->len; i++)
    g_array_append_val (up->shift_ids, ((SteadSaleShift *) sale->shifts->pdata[i])->id);
  return stead_sale_cash_up_post (writer->store, up, NULL, error);
}

static gboolean
hold (SteadDemoWriter  *writer,
      gconstpointer     what,
      GError          **error)
{
  g_autoptr(SteadSale) sale = stead_sale_new ();

  return stead_demo_cash_before_sale (writer, error) && plan (writer, sale, error) && tally (writer, sale, error)
         && cash_up (writer, sale, error);
}

/**
 * stead_demo_live_market:
 *
 * Holds the market of the day, if there is something to sell.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_market (SteadDemoWriter  *writer,
                        GError          **error)
{
  GPtrArray *wares = writer->market->wares;

  if (wares->len == 0)
    return TRUE;
  if (!stead_demo_act (writer, _("Sold at the market"), hold, NULL, error))
    return FALSE;
  writer->market->n_held++;
  g_ptr_array_set_size (wares, 0);
  return TRUE;
}
