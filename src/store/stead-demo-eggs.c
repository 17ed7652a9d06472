/* stead-demo-eggs.c - the demo farm's eggs: what was collected goes into a lot each
 * week, and out again over the table.
 *
 * A lot carries what its flock used since the last one, and the part of the hens that
 * was laid away; what is packed and sold is what the cartons were bought for
 * (stead-demo-buy.c).
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-money.h"
#include "store/stead-demo-writer-private.h"
#include "store/stead-harvest-repo.h"
#include "store/stead-kitchen-repo.h"
#include "store/stead-lot-repo.h"

/* Lots are made on this day of the week, Monday being 1. */
#define LOT_WEEKDAY 4

/* What one flock gave since its last lot. */
typedef struct
{
  gint64   flock_id;
  int      eggs;
  int      cracked;
  SteadDay from;         /* what is used from this day on is not carried by a lot yet */
  double   bird_cents;   /* of the birds' cost, an egg */
} Basket;

struct _SteadDemoEggs
{
  GArray *baskets;       /* of Basket */
};

/**
 * stead_demo_eggs_new:
 *
 * Returns: (transfer full): no eggs yet
 */
SteadDemoEggs *
stead_demo_eggs_new (SteadDemoWriter *writer)
{
  SteadDemoEggs *eggs = g_new0 (SteadDemoEggs, 1);

  eggs->baskets = g_array_new (FALSE, TRUE, sizeof (Basket));
  return eggs;
}

void
stead_demo_eggs_free (SteadDemoEggs *eggs)
{
  if (eggs == NULL)
    return;
  g_array_unref (eggs->baskets);
  g_free (eggs);
}

void
stead_demo_eggs_laid (SteadDemoWriter *writer,
                      gint64           flock_id,
                      int              eggs,
                      int              cracked)
{
  GArray *baskets = writer->eggs->baskets;
  Basket basket = { .flock_id = flock_id, .from = STEAD_DAY_NONE };
  guint i = 0;

  while (i < baskets->len && g_array_index (baskets, Basket, i).flock_id != flock_id)
    i++;
  if (i == baskets->len)
    g_array_append_val (baskets, basket);
  g_array_index (baskets, Basket, i).eggs += eggs;
  g_array_index (baskets, Basket, i).cracked += cracked;
}

/* --- into a lot ------------------------------------------------------------------ */

/* What the flock took out of the store room over some days. */
static gboolean
used_cents (SteadDemoWriter  *writer,
            gint64            flock_id,
            SteadDay          from,
            SteadDay          to,
            gint64           *out_cents,
            GError          **error)
{
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (writer->store, flock_id, from, to, error);

  *out_cents = 0;
  for (guint i = 0; uses != NULL && i < uses->len; i++)
    *out_cents += ((const SteadUse *) uses->pdata[i])->cost_cents;
  return uses != NULL;
}

/* Before the first lot: an equal part of the birds for each egg that is expected of
 * them, and of what they ate before they laid. */
static gboolean
begin_basket (SteadDemoWriter  *writer,
              Basket           *basket,
              GError          **error)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (writer->store, basket->flock_id, error);
  gint64 reared = 0;

  if (flock == NULL)
    return FALSE;
  basket->from = flock->reared ? stead_demo_day_at (writer, writer->at) - 6 : flock->housed_on;
  if (flock->reared && !used_cents (writer, flock->id, flock->housed_on, basket->from - 1, &reared, error))
    return FALSE;
  basket->bird_cents = (double) (flock->birds_cost_cents + reared - flock->salvage_cents) /
                       ((double) flock->birds * flock->eggs_expected);
  return TRUE;
}

static gboolean
write_lot (SteadDemoWriter  *writer,
           Basket           *basket,
           GError          **error)
{
  SteadDemoReader *reader = &writer->story->reader;
  SteadDay day = stead_demo_day_at (writer, writer->at);
  g_autoptr(SteadHarvest) harvest = stead_harvest_new ();
  g_autofree char *item = stead_demo_text (reader, "eggs", "gives");
  g_autofree char *group = g_strconcat ("item ", item, NULL);
  gint64 used;

  if ((basket->from == STEAD_DAY_NONE && !begin_basket (writer, basket, error)) ||
      !used_cents (writer, basket->flock_id, basket->from, day, &used, error))
    return FALSE;
  harvest->batch_id = basket->flock_id;
  harvest->day = day;
  harvest->item_id = stead_demo_id_of (writer, "item", item);
  harvest->pieces = basket->eggs;
  harvest->quantity_base = basket->eggs - basket->cracked;
  harvest->cost_cents = used + stead_money_round (basket->eggs * basket->bird_cents);
  if (basket->cracked > 0)
    {
      harvest->lost_base = basket->cracked;
      harvest->reason = stead_demo_text (reader, "eggs", "cracked");
    }
  harvest->person_id = stead_demo_person_on (writer, writer->at);
  basket->eggs = basket->cracked = 0;
  basket->from = day + 1;
  return stead_demo_sound (writer, error) && stead_harvest_repo_save (writer->store, harvest, error) &&
         stead_demo_put (writer, group, harvest->lot_id, error);
}

static gboolean
write_lots (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  GArray *baskets = writer->eggs->baskets;

  for (guint i = 0; i < baskets->len; i++)
    {
      Basket *basket = &g_array_index (baskets, Basket, i);

      if (basket->eggs > basket->cracked && !write_lot (writer, basket, error))
        return FALSE;
    }
  return TRUE;
}

/* --- out again ---------------------------------------------------------------------- */

/* What comes near its best-by day is given away in time. */
static gboolean
give_old (SteadDemoWriter  *writer,
          gint64            item,
          GError          **error)
{
  SteadDay day = stead_demo_day_at (writer, writer->at);
  g_autofree char *reason = stead_demo_text (&writer->story->reader, "eggs", "given");
  int days = (int) stead_demo_number (&writer->story->reader, "eggs", "give_days");
  g_autoptr(GPtrArray) lots = NULL;

  if (!stead_demo_sound (writer, error))
    return FALSE;
  lots = stead_kitchen_repo_lots (writer->store, item, day, error);
  for (guint i = 0; lots != NULL && i < lots->len; i++)
    {
      const SteadKitchenTake *take = lots->pdata[i];

      if (take->best_by <= day + days &&
          !stead_lot_repo_adjust (writer->store, take->lot_id, STEAD_MOVE_GIVEN, day, -take->base, reason,
                                  writer->advisor_id, error))
        return FALSE;
    }
  return lots != NULL;
}

static gboolean
sell_packs (SteadDemoWriter      *writer,
            const SteadDemoSale  *sale,
            gint64                item,
            GError              **error)
{
  SteadDay day = stead_demo_day_at (writer, writer->at);
  double each = stead_demo_number (&writer->story->reader, sale->product, "eggs");
  SteadStock stock;
  double packs;

  if (!stead_demo_sound (writer, error) || !stead_lot_repo_stock (writer->store, item, day, 1, &stock, error))
    return FALSE;
  packs = MIN (sale->packs, floor (stock.on_hand_base / each));
  if (packs < 1)
    return TRUE;
  if (stead_demo_market_is_on (writer))
    {
      stead_demo_market_sold (writer, sale->product, packs);
      return TRUE;
    }
  stead_demo_cash_sold (writer, sale->product, packs);
  return stead_lot_repo_sell (writer->store, item, day, packs * each, _("Sold at the market"),
                              stead_demo_person_on (writer, writer->at), error);
}

static gboolean
write_week (SteadDemoWriter  *writer,
            gconstpointer     what,
            GError          **error)
{
  g_autofree char *name = stead_demo_text (&writer->story->reader, "eggs", "gives");

  return write_lots (writer, NULL, error) &&
         give_old (writer, stead_demo_id_of (writer, "item", name), error);
}

static gboolean
write_sales (SteadDemoWriter  *writer,
             gconstpointer     what,
             GError          **error)
{
  GPtrArray *sales = writer->story->sales;
  g_autofree char *name = stead_demo_text (&writer->story->reader, "eggs", "gives");
  gint64 item = stead_demo_id_of (writer, "item", name);

  if (!write_lots (writer, NULL, error))
    return FALSE;
  for (; writer->next_sale < sales->len; writer->next_sale++)
    {
      const SteadDemoSale *sale = sales->pdata[writer->next_sale];

      if (sale->day > writer->at)
        break;
      if (!sell_packs (writer, sale, item, error))
        return FALSE;
    }
  return TRUE;
}

/**
 * stead_demo_live_eggs:
 *
 * Once a week, and on the morning of a sale, what was collected goes into lots.
 *
 * Returns: %TRUE, or %FALSE with @error
 */
gboolean
stead_demo_live_eggs (SteadDemoWriter  *writer,
                      GError          **error)
{
  GPtrArray *sales = writer->story->sales;
  SteadDay day = stead_demo_day_at (writer, writer->at);

  if (writer->next_sale < sales->len && ((const SteadDemoSale *) sales->pdata[writer->next_sale])->day <= writer->at)
    return stead_demo_act (writer, _("Sold at the market"), write_sales, NULL, error);
  if (stead_day_weekday (day) != LOT_WEEKDAY)
    return TRUE;
  return stead_demo_act (writer, _("Eggs of the week"), write_week, NULL, error);
}
