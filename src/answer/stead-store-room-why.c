/* stead-store-room-why.c - what is on hand, what was wasted and what was spent, added up before one's eyes. */
#include "config.h"

#include "answer/stead-store-room-why.h"

#include "answer/stead-hand-why-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_SOURCE N_("Common practice, no source.")
#define AT_COST N_("Inventory at what it cost: OpenStax, Principles of Accounting, vol. 1, section 10.1.")

/* Of many the dearest are named. */
#define NAMED 12

static void
add_named (GString    *sum,
           const char *name,
           gint64      cents,
           const char *currency)
{
  g_autofree char *money = stead_money_format (cents, currency);

  stead_sum_add_named (sum, name, money);
}

/* --- on hand -------------------------------------------------------------------------------- */

static SteadWhy *
value_why (const GPtrArray *lots,
           const char      *currency)
{
  g_autoptr(GPtrArray) places = stead_lots_places (lots);
  GString *sum = g_string_new (NULL);
  gint64 cents = 0;

  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceLine *place = places->pdata[i];

      add_named (sum, place->name, place->cents, currency);
      cents += place->cents;
    }
  stead_sum_total (sum, cents, currency);
  return stead_why_new (g_strdup (_("What lies on the shelf")),
                        _("What each lot cost − what was taken out of it, added up place by place. A gift counts at what it is "
                          "worth. The card of a lot shows each step."),
                        g_string_free (sum, FALSE), _(AT_COST));
}

GPtrArray *
stead_lots_whys (const GPtrArray *lots,
                 const char      *currency)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (lots != NULL && currency != NULL, whys);
  if (lots->len > 0)
    g_ptr_array_add (whys, value_why (lots, currency));
  return whys;
}

GPtrArray *
stead_on_hand_whys (SteadStore      *store,
                    gint64           item_id,
                    double           base,
                    const SteadUnit *unit)
{
  GPtrArray *whys = stead_whys_new ();
  g_autoptr(GPtrArray) lots = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && unit != NULL, whys);
  lots = stead_hand_lots (store, item_id, NULL);
  stead_whys_add (whys, stead_hand_why (_("On hand"), lots, base, unit));
  return whys;
}

/* --- wasted ------------------------------------------------------------------------------------ */

/* What left for @kind, reason by reason. */
static char *
left_worked (const SteadStoreRoomAnswer *self,
             SteadMoveKind               kind,
             gint64                      cents,
             const char                 *currency)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->waste->len; i++)
    {
      const SteadWasteLine *line = self->waste->pdata[i];

      if (line->kind == kind)
        add_named (sum, *line->reason != '\0' ? line->reason : _("no reason given"), line->cents, currency);
    }
  stead_sum_total (sum, cents, currency);
  return g_string_free (sum, FALSE);
}

static SteadWhy *
lost_why (const SteadStoreRoomAnswer *self,
          const char                 *currency)
{
  return stead_why_new (g_strdup (_("What was lost or spoiled")),
                        _("What the goods cost that were written down as lost or spoiled in the last 12 weeks, added up by the "
                          "reason that was given."),
                        left_worked (self, STEAD_MOVE_LOST, self->lost_cents, currency), _(NO_SOURCE));
}

static SteadWhy *
given_why (const SteadStoreRoomAnswer *self,
           const char                 *currency)
{
  return stead_why_new (g_strdup (_("What was given away")),
                        _("What the goods cost that were given away in the last 12 weeks, added up by where they went. They carry "
                          "what their lots cost, oldest lot first or at the average, as the farm chose: never their price."),
                        left_worked (self, STEAD_MOVE_GIVEN, self->given_cents, currency), _(AT_COST));
}

GPtrArray *
stead_store_room_answer_whys (const SteadStoreRoomAnswer *self,
                              const char                 *currency)
{
  GPtrArray *whys = stead_whys_new ();
  SteadWhy *lasts;

  g_return_val_if_fail (self != NULL && currency != NULL, whys);
  if (self->lots->len > 0)
    g_ptr_array_add (whys, value_why (self->lots, currency));
  lasts = stead_store_room_answer_why (self);
  if (lasts != NULL)
    g_ptr_array_add (whys, lasts);
  if (self->lost_cents > 0)
    g_ptr_array_add (whys, lost_why (self, currency));
  if (self->given_cents > 0)
    g_ptr_array_add (whys, given_why (self, currency));
  return whys;
}

/* --- counted ------------------------------------------------------------------------------------ */

GPtrArray *
stead_counts_whys (const GPtrArray *counts,
                   const char      *currency)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked = g_string_new (NULL);

  g_return_val_if_fail (counts != NULL && currency != NULL, whys);
  for (guint i = 0; i < counts->len; i++)
    {
      const SteadStockCount *count = counts->pdata[i];

      for (guint k = 0; k < count->lines->len; k++)
        {
          const SteadCountLine *line = count->lines->pdata[k];
          g_autofree char *counted = stead_quantity_format (line->counted_base, line->unit);
          g_autofree char *expected = stead_quantity_format (line->expected_base, line->unit);
          g_autofree char *apart = stead_quantity_format (fabs (line->counted_base - line->expected_base), line->unit);
          g_autofree char *money = stead_money_format (line->cents, currency);

          if (line->movement_id == 0)
            continue;
          /* Translators: a lot, two amounts, their difference, money. */
          g_string_append_printf (worked, line->counted_base < line->expected_base
                                  ? _("%1$s%2$s: %3$s counted − %4$s on record = −%5$s, which had cost %6$s")
                                  : _("%1$s%2$s: %3$s counted − %4$s on record = +%5$s, %6$s"),
                                  worked->len > 0 ? "\n" : "", line->lot_code, counted, expected, apart, money);
        }
    }
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return whys;
    }
  g_ptr_array_add (whys, stead_why_new (
    g_strdup (_("What a count changed")),
    _("Counted − on record. What is missing takes along its share of what the lot cost; what is found more brings no cost, for "
      "it was paid for already."), g_string_free (worked, FALSE), _(NO_SOURCE)));
  return whys;
}

/* --- spent ------------------------------------------------------------------------------------- */

typedef struct
{
  const char *name;
  gint64      cents;
} From;

static int
compare_from (gconstpointer a,
              gconstpointer b)
{
  const From *x = a, *y = b;

  if (x->cents != y->cents)
    return x->cents > y->cents ? -1 : 1;
  return g_utf8_collate (x->name, y->name);
}

/* (transfer full): of From, the dearest first */
static GArray *
from_whom (const GPtrArray *receipts,
           gboolean         gifts)
{
  GArray *from = g_array_new (FALSE, FALSE, sizeof (From));

  for (guint i = 0; i < receipts->len; i++)
    {
      const SteadReceipt *receipt = receipts->pdata[i];
      guint at = 0;

      if (receipt->corrected_by != 0 || receipt->is_gift != gifts)
        continue;
      while (at < from->len && g_strcmp0 (g_array_index (from, From, at).name, receipt->supplier) != 0)
        at++;
      if (at == from->len)
        {
          const From one = { receipt->supplier, 0 };

          g_array_append_val (from, one);
        }
      g_array_index (from, From, at).cents += stead_receipt_total_cents (receipt);
    }
  g_array_sort (from, compare_from);
  return from;
}

static char *
from_worked (const GPtrArray *receipts,
             gboolean         gifts,
             gint64           all_cents,
             const char      *currency)
{
  g_autoptr(GArray) from = from_whom (receipts, gifts);
  GString *sum = g_string_new (NULL);
  gint64 others = 0;

  for (guint i = 0; i < from->len; i++)
    if (i < NAMED)
      add_named (sum, g_array_index (from, From, i).name, g_array_index (from, From, i).cents, currency);
    else
      others += g_array_index (from, From, i).cents;
  if (from->len > NAMED)
    add_named (sum, C_("in a sum", "others"), others, currency);
  stead_sum_total (sum, all_cents, currency);
  return g_string_free (sum, FALSE);
}

GPtrArray *
stead_receipts_whys (const GPtrArray *receipts,
                     const char      *currency)
{
  GPtrArray *whys = stead_whys_new ();
  SteadReceiptSums sums;

  g_return_val_if_fail (receipts != NULL && currency != NULL, whys);
  sums = stead_receipt_sums ((GPtrArray *) receipts);
  if (sums.paid_cents > 0)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("What was paid")),
      _("The lines of each receipt added up, then all receipts of one shop, then all shops. A receipt that was corrected does "
        "not count; the one in its place does."),
      from_worked (receipts, FALSE, sums.paid_cents, currency), _(NO_SOURCE)));
  if (sums.gift_cents > 0)
    g_ptr_array_add (whys, stead_why_new (
      g_strdup (_("What the gifts are worth")),
      _("What the things would have cost in a shop, as it stands on the receipts of gifts, added up by the giver."),
      from_worked (receipts, TRUE, sums.gift_cents, currency), _(NO_SOURCE)));
  return whys;
}
