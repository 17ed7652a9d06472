/* stead-due-answer.c - "What is due, and what is wrong?" */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "answer/stead-due-private.h"
#include "answer/stead-flock-private.h"
#include "answer/stead-routine-answer.h"
#include "answer/stead-stock-answer.h"
#include "answer/stead-water-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* How far back uncovered feed is looked for: receipts cover the oldest feed
 * first, so what is still uncovered is always the latest. */
#define UNCOVERED_DAYS 84

void
stead_due_free (SteadDue *due)
{
  if (due == NULL)
    return;
  g_free (due->text);
  g_free (due->detail);
  g_free (due->worked);
  g_free (due);
}

void
stead_due_answer_free (SteadDueAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->dues, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* Takes @text and @detail over. */
void
stead_due_add (SteadDueLook *look,
               SteadDueKind  kind,
               SteadTarget   target,
               gint64        id,
               char         *text,
               char         *detail)
{
  SteadDue *due = g_new0 (SteadDue, 1);

  due->kind = kind;
  due->target = target;
  due->id = id;
  due->text = text;
  due->detail = detail;
  g_ptr_array_add (look->answer->dues, due);
}

static gboolean
in_lay (const SteadFlock *flock,
        SteadDay          day)
{
  return stead_age_weeks (flock->hatched_on, day) >= flock->curve.onset_age_weeks;
}

static gboolean
look_at_eggs (SteadDueLook     *look,
              const SteadFlock *flock)
{
  SteadFlockTotals totals;
  g_autofree char *eggs = NULL;

  if (!stead_flock_repo_totals (look->store, flock->id, look->today, look->today, &totals, look->error))
    return FALSE;
  eggs = stead_words_eggs (totals.eggs);
  if (totals.days_logged > 0)
    /* Translators: a flock's name and "22 eggs". */
    stead_due_add (look, STEAD_DUE_DONE, STEAD_TARGET_FLOCK, flock->id,
                   g_strdup_printf (_("%s: %s collected"), flock->name, eggs), NULL);
  else if (in_lay (flock, look->today))
    stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, flock->id,
                   g_strdup_printf (_("Collect and count the eggs of %s."), flock->name), NULL);
  return TRUE;
}

static gboolean
look_at_feed (SteadDueLook     *look,
              const SteadFlock *flock)
{
  g_autoptr(GError) error = NULL;
  SteadDay last = stead_flock_repo_last_feed (look->store, flock->id, &error);

  if (error != NULL)
    {
      g_propagate_error (look->error, g_steal_pointer (&error));
      return FALSE;
    }
  if (last == look->today)
    stead_due_add (look, STEAD_DUE_DONE, STEAD_TARGET_FLOCK, flock->id,
                   g_strdup_printf (_("%s: feed entered"), flock->name), NULL);
  else if (last != STEAD_DAY_NONE || flock->feed_item_id != 0)
    stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, flock->id,
                   g_strdup_printf (_("Enter the feed given to %s."), flock->name), NULL);
  return TRUE;
}

static gboolean
look_at_bedding (SteadDueLook     *look,
                 const SteadFlock *flock)
{
  g_autoptr(GError) error = NULL;
  SteadDay last;
  g_autofree char *days = NULL;

  if (flock->bedding_days <= 0)
    return TRUE;
  last = stead_flock_repo_last_bedding (look->store, flock->id, &error);
  if (error != NULL)
    {
      g_propagate_error (look->error, g_steal_pointer (&error));
      return FALSE;
    }
  if (last == look->today)
    {
      stead_due_add (look, STEAD_DUE_DONE, STEAD_TARGET_FLOCK, flock->id,
                     g_strdup_printf (_("%s: bedding changed"), flock->name), NULL);
      return TRUE;
    }
  if (last == STEAD_DAY_NONE)
    last = flock->housed_on;
  if (look->today - last < flock->bedding_days)
    return TRUE;
  days = stead_words_days (look->today - last);
  stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_FLOCK, flock->id,
                 g_strdup_printf (_("Change the bedding of %s."), flock->name),
                 /* Translators: "15 days". */
                 g_strdup_printf (_("The last change was %s ago. Wet litter and the smell of ammonia harm the birds."), days));
  stead_due_explain_day (look->answer->dues, last, flock->bedding_days);
  return TRUE;
}

/* Days of the last seven, from the first day in lay, that have no eggs in the log. */
static gboolean
look_at_gaps (SteadDueLook     *look,
              const SteadFlock *flock)
{
  SteadDay from = MAX (flock->housed_on, look->today - 7);
  SteadFlockTotals totals;
  gint64 missing;
  g_autofree char *asked = NULL, *logged = NULL, *missed = NULL;

  while (from < look->today && !in_lay (flock, from))
    from++;
  if (from >= look->today)
    return TRUE;
  if (!stead_flock_repo_totals (look->store, flock->id, from, look->today - 1, &totals, look->error))
    return FALSE;
  missing = look->today - from - totals.days_logged;
  if (missing <= 0)
    return TRUE;
  stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_FLOCK, flock->id,
                 g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                               "%s: %d day of the last week has no eggs in the log.",
                                               "%s: %d days of the last week have no eggs in the log.",
                                               (gulong) missing), flock->name, (int) missing),
                 g_strdup (_("Enter the missing days. A day without eggs is entered as 0.")));
  asked = stead_words_days (look->today - from);
  missed = stead_words_days (missing);
  logged = stead_number_format ((double) totals.days_logged, 0);
  /* Translators: "7 days", days with eggs in the log, "2 days". */
  stead_due_explain (look->answer->dues, g_strdup_printf (_("%1$s in lay − %2$s in the log = %3$s"), asked, logged, missed));
  return TRUE;
}

static gboolean
look_at_lay (SteadDueLook     *look,
             const SteadFlock *flock)
{
  SteadFlockLow low;
  char *caution;

  if (!stead_flock_low_days (look->store, flock, look->today, &low, look->error))
    return FALSE;
  caution = stead_flock_low_caution (&low);
  if (caution == NULL)
    return TRUE;
  stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_FLOCK, flock->id,
                 g_strdup_printf (_("%s: clearly fewer eggs than expected."), flock->name), caution);
  stead_due_explain (look->answer->dues, stead_flock_low_worked (&low, flock->species));
  return TRUE;
}

gboolean
stead_due_look_at_receipts (SteadDueLook *look,
                            gint64        batch_id,
                            const char   *name,
                            SteadDay      began_on)
{
  SteadDay from = MAX (began_on, look->today - UNCOVERED_DAYS + 1);
  g_autoptr(GPtrArray) uses = NULL;

  uses = stead_lot_repo_uses (look->store, batch_id, from, MAX (from, look->today), look->error);
  if (uses == NULL)
    return FALSE;
  for (guint i = 0; i < uses->len; i++)
    {
      const SteadUse *use = uses->pdata[i];
      g_autofree char *amount = NULL, *all = NULL, *covered = NULL;

      if (!(use->uncovered_base > 1e-6))
        continue;
      amount = stead_quantity_format (use->uncovered_base, use->unit);
      all = stead_quantity_format (use->quantity_base + use->uncovered_base, use->unit);
      covered = stead_quantity_format (use->quantity_base, use->unit);
      stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_NEW_RECEIPT, use->item_id,
                     /* Translators: "20 lb", the name of a feed, the name of a flock or of a group of fish. */
                     g_strdup_printf (_("%s of %s eaten by %s is on no receipt."), amount, use->item_name, name),
                     g_strdup (_("Enter the receipt, or the gift at its fair value, so that the cost is right.")));
      /* Translators: three amounts. */
      stead_due_explain (look->answer->dues,
                         g_strdup_printf (_("%1$s in the log of 12 weeks − %2$s out of lots = %3$s"), all, covered, amount));
    }
  return TRUE;
}

static gboolean
look_at_flocks (SteadDueLook *look)
{
  g_autoptr(GPtrArray) flocks = stead_flock_repo_list (look->store, FALSE, look->error);

  if (flocks == NULL)
    return FALSE;
  for (guint i = 0; i < flocks->len; i++)
    {
      const SteadFlock *flock = flocks->pdata[i];

      if (flock->housed_on > look->today)
        continue;
      if (!look_at_lay (look, flock)
          || !look_at_gaps (look, flock)
          || !stead_due_look_at_receipts (look, flock->id, flock->name, flock->housed_on)
          || !look_at_eggs (look, flock)
          || !look_at_feed (look, flock)
          || !look_at_bedding (look, flock))
        return FALSE;
    }
  return TRUE;
}

/* What is there by what is used a day, and the mark that it fell below. */
static char *
low_worked (const SteadStockLine *line)
{
  const SteadUnit *unit = line->item->unit;
  g_autofree char *use = stead_quantity_format (line->stock.use_per_day_base, unit);
  g_autofree char *days = isfinite (line->days) ? stead_number_format (line->days, 1) : NULL;
  g_autofree char *mark = NULL;

  if (!isfinite (line->item->reorder_base) || line->stock.on_hand_base >= line->item->reorder_base)
    return g_strdup_printf (_("%s ÷ %s a day = %s days"), line->on_hand, use, days);
  mark = stead_quantity_format (line->item->reorder_base, unit);
  if (days == NULL)
    /* Translators: on hand, a mark below which it is bought again. */
    return g_strdup_printf (_("%1$s on hand; its mark is %2$s"), line->on_hand, mark);
  /* Translators: on hand, use of a day, days, a mark below which it is bought again. */
  return g_strdup_printf (_("%1$s ÷ %2$s a day = %3$s days; its mark is %4$s"), line->on_hand, use, days, mark);
}

static void
warn_low (SteadDueLook         *look,
          const SteadStockLine *line)
{
  const char *name = line->item->name;
  char *text;

  if (!(line->stock.on_hand_base > 1e-9))
    text = g_strdup_printf (_("%s: none left."), name);
  else if (isfinite (line->days) && line->days < 1)
    /* Translators: a thing in the store room. */
    text = g_strdup_printf (_("%s: not enough for a day."), name);
  else if (isfinite (line->days))
    /* Translators: a thing in the store room, "3 days", "20 lb". */
    text = g_strdup_printf (_("%s: enough for %s; %s on hand."), name, line->lasts, line->on_hand);
  else
    /* Translators: "Carton", "12". */
    text = g_strdup_printf (_("%s: only %s on hand."), name, line->on_hand);
  stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_ITEM, line->item->id, text,
                 g_strdup (line->item->kind == STEAD_ITEM_FEED ? _("Get more feed before it runs out.")
                                                               : _("Get more before the next sale.")));
  stead_due_explain (look->answer->dues, low_worked (line));
}

static gboolean
look_at_stock (SteadDueLook *look)
{
  g_autoptr(SteadStockAnswer) stock = stead_stock_answer_new (look->store, look->error);

  if (stock == NULL)
    return FALSE;
  for (guint i = 0; i < stock->lines->len; i++)
    {
      const SteadStockLine *line = stock->lines->pdata[i];

      if (line->low)
        warn_low (look, line);
    }
  return TRUE;
}

static gboolean
look_at_lots (SteadDueLook *look)
{
  g_autoptr(GPtrArray) lots = stead_lot_repo_list (look->store, FALSE, look->error);

  if (lots == NULL)
    return FALSE;
  for (guint i = 0; i < lots->len; i++)
    {
      const SteadLot *lot = lots->pdata[i];
      g_autofree char *day = NULL;
      g_autofree char *amount = NULL;

      if (lot->best_by == STEAD_DAY_NONE || lot->best_by >= look->today)
        continue;
      day = stead_day_format (lot->best_by, STEAD_DAY_STYLE_MEDIUM);
      amount = stead_quantity_format (lot->on_hand_base, lot->unit);
      stead_due_add (look, STEAD_DUE_WARNING, STEAD_TARGET_LOT, lot->id,
                     /* Translators: a thing, its lot code, a day. */
                     g_strdup_printf (_("%s, lot %s, is past its best-by day, %s."), lot->item_name, lot->code, day),
                     lot->item_kind == STEAD_ITEM_FEED
                     ? g_strdup_printf (_("%s is left. Never give feed that is moldy or smells bad; ask an adult."), amount)
                     : g_strdup_printf (_("%s is left. Check it before it is used; ask an adult."), amount));
    }
  return TRUE;
}

static gboolean
look_at_prices (SteadDueLook *look)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (look->store, FALSE, look->error);

  if (products == NULL)
    return FALSE;
  for (guint i = 0; i < products->len; i++)
    {
      const SteadProduct *product = products->pdata[i];
      g_autoptr(GError) error = NULL;
      gint64 cents = stead_product_repo_price_on (look->store, product->id, look->today, &error);

      if (error != NULL)
        {
          g_propagate_error (look->error, g_steal_pointer (&error));
          return FALSE;
        }
      if (cents < 0)
        stead_due_add (look, STEAD_DUE_TASK, STEAD_TARGET_PRODUCT, product->id,
                       g_strdup_printf (_("Set a price for %s."), product->name), NULL);
    }
  return TRUE;
}

/* Warnings first, then tasks, then what is done; else the order of looking. */
static void
put_in_order (SteadDueAnswer *answer)
{
  static const SteadDueKind order[] = { STEAD_DUE_WARNING, STEAD_DUE_TASK, STEAD_DUE_DONE };
  g_autoptr(GPtrArray) all = g_steal_pointer (&answer->dues);

  answer->dues = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_due_free);
  for (gsize kind = 0; kind < G_N_ELEMENTS (order); kind++)
    for (guint i = 0; i < all->len; i++)
      {
        SteadDue *due = all->pdata[i];

        if (due->kind == order[kind])
          g_ptr_array_add (answer->dues, due);
      }
  g_ptr_array_set_free_func (all, NULL);
}

static char *
sentence_of (const SteadDueAnswer *answer)
{
  GString *text;
  g_autofree char *tasks = NULL;
  g_autofree char *warnings = NULL;

  if (answer->dues->len == 0)
    return g_strdup (_("Nothing is due. A flock, a receipt or a product makes a start."));
  tasks = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d thing</b> is due.", "<b>%d things</b> are due.",
                                        (gulong) answer->n_tasks), answer->n_tasks);
  warnings = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d thing</b> needs a look.",
                                           "<b>%d things</b> need a look.", (gulong) answer->n_warnings),
                              answer->n_warnings);
  text = g_string_new (NULL);
  stead_words_add (text, answer->n_tasks > 0 ? tasks : _("All that was due today is done."));
  if (answer->n_warnings > 0)
    stead_words_add (text, warnings);
  return stead_words_end (text);
}

SteadDueAnswer *
stead_due_answer_new (SteadStore  *store,
                      GError     **error)
{
  g_autoptr(SteadDueAnswer) self = NULL;
  SteadDueLook look;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadDueAnswer, 1);
  self->dues = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_due_free);
  look = (SteadDueLook) { .store = store, .answer = self, .today = stead_store_get_today (store), .error = error };
  if (!stead_due_look_at_checks (&look)
      || !stead_due_look_at_coolers (&look)
      || !stead_due_look_at_sales (&look)
      || !look_at_flocks (&look)
      || !stead_crop_find_dues (store, self->dues, error)
      || !stead_due_look_at_fish (&look)
      || !stead_water_find_dues (store, self->dues, error)
      || !stead_routine_find_dues (store, self->dues, error)
      || !look_at_stock (&look)
      || !look_at_lots (&look)
      || !look_at_prices (&look))
    return NULL;
  put_in_order (self);
  for (guint i = 0; i < self->dues->len; i++)
    {
      const SteadDue *due = self->dues->pdata[i];

      self->n_tasks += due->kind == STEAD_DUE_TASK ? 1 : 0;
      self->n_warnings += due->kind == STEAD_DUE_WARNING ? 1 : 0;
    }
  self->sentence = sentence_of (self);
  return g_steal_pointer (&self);
}
