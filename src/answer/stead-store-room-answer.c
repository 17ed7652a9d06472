/* stead-store-room-answer.c - "What is where, what must be bought, what must be used soon, what was wasted?" */
#include "config.h"

#include "answer/stead-store-room-answer.h"
#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "store/stead-farm-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WASTE_DAYS 84

static void
soon_free (gpointer data)
{
  SteadSoonLine *line = data;

  g_free (line->text);
  g_free (line);
}

static void
reorder_free (gpointer data)
{
  SteadReorderLine *line = data;

  g_free (line->text);
  g_free (line);
}

static void
place_free (gpointer data)
{
  SteadPlaceLine *line = data;

  g_free (line->name);
  g_free (line);
}

static void
waste_free (gpointer data)
{
  SteadWasteLine *line = data;

  g_free (line->reason);
  g_free (line);
}

void
stead_store_room_answer_free (SteadStoreRoomAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->stock, stead_stock_answer_free);
  g_clear_pointer (&self->lots, g_ptr_array_unref);
  g_clear_pointer (&self->soon, g_ptr_array_unref);
  g_clear_pointer (&self->reorder, g_ptr_array_unref);
  g_clear_pointer (&self->places, g_ptr_array_unref);
  g_clear_pointer (&self->waste, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->caution);
  g_free (self);
}

/* --- best-by ------------------------------------------------------------------- */

static char *
soon_text (const SteadLot *lot,
           int             days)
{
  g_autofree char *amount = stead_quantity_format (lot->on_hand_base, lot->unit);
  g_autofree char *left = stead_words_days (ABS (days));

  if (days < 0)
    /* Translators: a thing, its lot code, an amount, "3 days". */
    return g_strdup_printf (_("%s, lot %s (%s): %s past its best-by day"), lot->item_name, lot->code, amount, left);
  if (days == 0)
    return g_strdup_printf (_("%s, lot %s (%s): best by today"), lot->item_name, lot->code, amount);
  return g_strdup_printf (_("%s, lot %s (%s): best within %s"), lot->item_name, lot->code, amount, left);
}

static int
compare_soon (gconstpointer a,
              gconstpointer b)
{
  const SteadSoonLine *x = *(SteadSoonLine * const *) a, *y = *(SteadSoonLine * const *) b;

  if (x->days != y->days)
    return x->days - y->days;
  return (x->lot->id > y->lot->id) - (x->lot->id < y->lot->id);
}

static void
find_soon (SteadStoreRoomAnswer *self,
           SteadDay              today)
{
  self->soon = g_ptr_array_new_with_free_func (soon_free);
  for (guint i = 0; i < self->lots->len; i++)
    {
      SteadLot *lot = self->lots->pdata[i];
      SteadSoonLine *line;

      if (lot->best_by == STEAD_DAY_NONE || lot->best_by > today + STEAD_SOON_DAYS)
        continue;
      line = g_new0 (SteadSoonLine, 1);
      line->lot = lot;
      line->days = lot->best_by - today;
      line->text = soon_text (lot, line->days);
      g_ptr_array_add (self->soon, line);
    }
  g_ptr_array_sort (self->soon, compare_soon);
}

/* --- to buy ---------------------------------------------------------------------- */

static void
find_reorder (SteadStoreRoomAnswer *self)
{
  self->reorder = g_ptr_array_new_with_free_func (reorder_free);
  for (guint i = 0; i < self->stock->lines->len; i++)
    {
      const SteadStockLine *line = self->stock->lines->pdata[i];
      double mark = isfinite (line->item->reorder_base) ? line->item->reorder_base : 0;
      double wanted = MAX (mark, line->stock.use_per_day_base * STEAD_REORDER_DAYS);
      SteadReorderLine *reorder;
      g_autofree char *amount = NULL;

      if (!line->low || line->item->kind == STEAD_ITEM_PRODUCE || !(wanted > line->stock.on_hand_base))
        continue;
      reorder = g_new0 (SteadReorderLine, 1);
      reorder->line = line;
      reorder->base = wanted - line->stock.on_hand_base;
      amount = stead_quantity_format (reorder->base, line->item->unit);
      /* Translators: what to buy, and how much of it: "Layer feed: 150 lb". */
      reorder->text = g_strdup_printf (C_("what to buy", "%s: %s"), line->item->name, amount);
      g_ptr_array_add (self->reorder, reorder);
    }
}

/* --- places ----------------------------------------------------------------------- */

static SteadPlaceLine *
place_line (GPtrArray      *places,
            const SteadLot *lot)
{
  SteadPlaceLine *line;

  for (guint i = 0; i < places->len; i++)
    if (((SteadPlaceLine *) places->pdata[i])->place_id == lot->place_id)
      return places->pdata[i];
  line = g_new0 (SteadPlaceLine, 1);
  line->place_id = lot->place_id;
  line->name = g_strdup (lot->place_id != 0 ? lot->place_name : _("No place given"));
  g_ptr_array_add (places, line);
  return line;
}

static int
compare_places (gconstpointer a,
                gconstpointer b)
{
  const SteadPlaceLine *x = *(SteadPlaceLine * const *) a, *y = *(SteadPlaceLine * const *) b;

  if ((x->place_id == 0) != (y->place_id == 0))
    return x->place_id == 0 ? 1 : -1;
  return g_utf8_collate (x->name, y->name);
}

GPtrArray *
stead_lots_places (const GPtrArray *lots)
{
  GPtrArray *places = g_ptr_array_new_with_free_func (place_free);

  g_return_val_if_fail (lots != NULL, places);
  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      SteadPlaceLine *line = place_line (places, lot);

      line->n_lots++;
      line->cents += lot->on_hand_cents;
    }
  g_ptr_array_sort (places, compare_places);
  return places;
}

/* --- waste ------------------------------------------------------------------------ */

static void
add_waste (SteadStoreRoomAnswer *self,
           const SteadMove      *move)
{
  g_autofree char *folded = g_utf8_casefold (move->reason != NULL ? move->reason : "", -1);
  SteadWasteLine *line = NULL;

  for (guint i = 0; i < self->waste->len && line == NULL; i++)
    {
      SteadWasteLine *other = self->waste->pdata[i];
      g_autofree char *reason = g_utf8_casefold (other->reason, -1);

      if (other->kind == move->kind && g_str_equal (reason, folded))
        line = other;
    }
  if (line == NULL)
    {
      line = g_new0 (SteadWasteLine, 1);
      line->kind = move->kind;
      line->reason = g_strdup (move->reason != NULL ? move->reason : "");
      g_ptr_array_add (self->waste, line);
    }
  line->n++;
  line->cents -= move->cost_cents;
}

static int
compare_waste (gconstpointer a,
               gconstpointer b)
{
  const SteadWasteLine *x = *(SteadWasteLine * const *) a, *y = *(SteadWasteLine * const *) b;

  if (x->cents != y->cents)
    return x->cents > y->cents ? -1 : 1;
  return x->kind != y->kind ? (int) x->kind - (int) y->kind : g_utf8_collate (x->reason, y->reason);
}

static gboolean
find_waste (SteadStoreRoomAnswer  *self,
            SteadStore            *store,
            SteadDay               today,
            GError               **error)
{
  g_autoptr(GPtrArray) moves = stead_lot_repo_unsold (store, today - WASTE_DAYS + 1, today, error);

  self->waste = g_ptr_array_new_with_free_func (waste_free);
  if (moves == NULL)
    return FALSE;
  for (guint i = 0; i < moves->len; i++)
    {
      const SteadMove *move = moves->pdata[i];

      add_waste (self, move);
      if (move->kind == STEAD_MOVE_LOST)
        self->lost_cents -= move->cost_cents;
      else if (move->kind == STEAD_MOVE_GIVEN)
        self->given_cents -= move->cost_cents;
      else
        self->counted_cents -= move->cost_cents;
    }
  g_ptr_array_sort (self->waste, compare_waste);
  return TRUE;
}

static gboolean
find_count (SteadStoreRoomAnswer  *self,
            SteadStore            *store,
            GError               **error)
{
  g_autoptr(GPtrArray) counts = stead_count_repo_list (store, error);

  if (counts == NULL)
    return FALSE;
  self->counted_on = counts->len > 0 ? ((const SteadStockCount *) counts->pdata[0])->day : STEAD_DAY_NONE;
  return TRUE;
}

/* --- sentences ---------------------------------------------------------------------- */

static guint
n_past (const SteadStoreRoomAnswer *self)
{
  guint n = 0;

  while (n < self->soon->len && ((const SteadSoonLine *) self->soon->pdata[n])->days < 0)
    n++;
  return n;
}

static void
say (SteadStoreRoomAnswer *self,
     const char           *currency)
{
  GString *text = g_string_new (NULL);
  guint past = n_past (self), soon = self->soon->len - past;
  g_autofree char *days = stead_words_days (STEAD_SOON_DAYS);

  stead_words_add (text, self->stock->sentence);
  if (soon > 0)
    {
      /* Translators: %2$s is "7 days". */
      g_autofree char *line = g_strdup_printf (ngettext ("<b>%1$u lot</b> is best used within %2$s.",
                                                         "<b>%1$u lots</b> are best used within %2$s.", soon), soon, days);

      stead_words_add (text, line);
    }
  if (self->lost_cents > 0)
    {
      g_autofree char *lost = stead_money_format (self->lost_cents, currency);
      g_autofree char *line = g_strdup_printf (_("<b>%s</b> was lost or spoiled in the last 12 weeks."), lost);

      stead_words_add (text, line);
    }
  self->sentence = stead_words_end (text);
  if (past > 0)
    self->caution = g_strdup_printf (ngettext ("%u lot is past its best-by day. Check it before it is used; ask an adult.",
                                               "%u lots are past their best-by day. Check them before they are used; "
                                               "ask an adult.", past), past);
}

SteadStoreRoomAnswer *
stead_store_room_answer_new (SteadStore  *store,
                             GError     **error)
{
  g_autoptr(SteadStoreRoomAnswer) self = g_new0 (SteadStoreRoomAnswer, 1);
  g_autoptr(SteadFarm) farm = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  today = stead_store_get_today (store);
  farm = stead_farm_repo_get (store, error);
  if (farm == NULL ||
      (self->stock = stead_stock_answer_new (store, error)) == NULL ||
      (self->lots = stead_lot_repo_list (store, FALSE, error)) == NULL ||
      !find_waste (self, store, today, error) || !find_count (self, store, error))
    return NULL;
  find_soon (self, today);
  find_reorder (self);
  self->places = stead_lots_places (self->lots);
  say (self, farm->currency);
  return g_steal_pointer (&self);
}

/* --- why ------------------------------------------------------------------------------ */

static char *
lasts_worked (const SteadStockLine *line)
{
  g_autofree char *days = stead_number_format (STEAD_USE_DAYS, 0);
  g_autofree char *daily = stead_quantity_format (line->stock.use_per_day_base, line->item->unit);

  /* Translators: a thing, what is on hand, use of a day, a number of days, "9 days". */
  return g_strdup_printf (_("%s: %s ÷ %s a day, over the last %s days = %s."), line->item->name, line->on_hand, daily,
                          days, line->lasts);
}

static char *
buy_worked (const SteadReorderLine *reorder)
{
  const SteadStockLine *line = reorder->line;
  g_autofree char *wanted = stead_quantity_format (reorder->base + line->stock.on_hand_base, line->item->unit);
  g_autofree char *buy = stead_quantity_format (reorder->base, line->item->unit);

  /* Translators: a thing, then amounts: wanted, on hand, to buy. */
  return g_strdup_printf (_("To buy of %s: %s − %s = %s."), line->item->name, wanted, line->on_hand, buy);
}

/* @text: (transfer full) */
static void
add_line (GString *worked,
          char    *text)
{
  g_string_append_printf (worked, "%s%s", worked->len > 0 ? "\n" : "", text);
  g_free (text);
}

SteadWhy *
stead_store_room_answer_why (const SteadStoreRoomAnswer *self)
{
  g_autoptr(GString) worked = g_string_new (NULL);

  g_return_val_if_fail (self != NULL, NULL);

  for (guint i = 0; i < self->stock->lines->len; i++)
    if (((const SteadStockLine *) self->stock->lines->pdata[i])->days > 0)
      add_line (worked, lasts_worked (self->stock->lines->pdata[i]));
  for (guint i = 0; i < self->reorder->len; i++)
    add_line (worked, buy_worked (self->reorder->pdata[i]));
  if (worked->len == 0)
    return NULL;
  return stead_why_new (g_strdup (_("How long it lasts, and how much to buy")),
                        _("It lasts for what is on hand ÷ what was used a day lately. To buy, of what runs low: the use "
                          "of four weeks, or the mark at which it is bought again, whichever is more, less what is on "
                          "hand."),
                        g_string_free (g_steal_pointer (&worked), FALSE), _("Common practice, no source."));
}
