/* stead-demo-write.c - writes the story down, day by day, through the repositories.
 *
 * Each day is lived through: the store's today goes along, and each deed is an
 * ordinary action.  Only the deeds of the last days can be undone afterwards.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-demo-writer-private.h"
#include "store/stead-item-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-receipt-repo.h"
#include "store/stead-store-private.h"

/* Steps of undo that are left are those of so many days. */
#define UNDO_DAYS 2

/* An advisor signs on each such day what is so many days old. */
#define SIGN_STEP_DAYS 30
#define SIGN_AGE_DAYS 20

/* --- one day ---------------------------------------------------------------------------- */

/* Students take turns by the week, a helper stands in for the summer. */
gint64
stead_demo_person_on (SteadDemoWriter *writer,
                      int              at)
{
  SteadDay day = stead_demo_day_at (writer, at);
  int month, mday;
  guint turn = (guint) ((at + 700) / 7);

  stead_day_split (day, NULL, &month, &mday);
  if ((month == 6 && mday > 12) || month == 7 || (month == 8 && mday < 8))
    return at % 7 < 4 ? writer->helper_id : writer->advisor_id;
  for (guint i = 0; i < writer->students->len; i++)
    {
      const SteadDemoStudent *student = writer->students->pdata[(turn + i) % writer->students->len];

      if (day >= student->from && day <= student->to)
        return student->id;
    }
  return writer->advisor_id;
}

/* The one whose turn it is next. */
gint64
stead_demo_second_on (SteadDemoWriter *writer,
                      int              at)
{
  gint64 first = stead_demo_person_on (writer, at);
  gint64 second = stead_demo_person_on (writer, at + 7);

  if (second != first)
    return second;
  return first == writer->advisor_id ? writer->helper_id : writer->advisor_id;
}

static gboolean
write_buy (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  const SteadDemoBuy *buy = what;
  SteadDemoReader *reader = &writer->story->reader;
  g_autofree char *group = g_strconcat ("item ", buy->item, NULL);
  g_autoptr(SteadReceipt) receipt = stead_receipt_new ();
  const SteadUnit *unit = stead_demo_unit_of (writer, group);
  double shelf_days = stead_demo_number_if (reader, group, "shelf_life_days", 0);
  SteadReceiptLine line = { .item_id = stead_demo_id_of (writer, "item", buy->item), .cost_cents = buy->cents,
                            .best_by = STEAD_DAY_NONE };

  if (!stead_demo_sound (writer, error))
    return FALSE;
  line.quantity_base = stead_quantity_to_base (buy->packs * stead_demo_number (reader, group, "pack"), unit);
  receipt->day = stead_demo_day_at (writer, buy->day);
  if (shelf_days > 0)
    line.best_by = receipt->day + (SteadDay) shelf_days;
  receipt->supplier = g_strdup (buy->from);
  receipt->is_gift = buy->is_gift;
  receipt->note = g_strdup (buy->note);
  receipt->reference = buy->is_gift ? NULL : g_strdup_printf ("%c-%d", g_ascii_toupper (buy->from[0]),
                                                              20417 + 37 * (buy->day + 60) + (int) buy->packs);
  receipt->person_id = buy->is_gift ? writer->advisor_id : stead_demo_person_on (writer, buy->day);
  g_array_append_val (receipt->lines, line);
  if (!stead_receipt_repo_save (writer->store, receipt, error) ||
      !stead_demo_put (writer, group, g_array_index (receipt->lines, SteadReceiptLine, 0).lot_id, error))
    return FALSE;
  stead_demo_cash_owe (writer, receipt, group);
  return TRUE;
}

static gboolean
live_buys (SteadDemoWriter  *writer,
           GError          **error)
{
  GPtrArray *buys = writer->story->buys;

  for (; writer->next_buy < buys->len; writer->next_buy++)
    {
      const SteadDemoBuy *buy = buys->pdata[writer->next_buy];
      g_autofree char *name = NULL;

      if (buy->day > writer->at)
        return TRUE;
      if (buy->from == NULL)
        stead_demo_fault (&writer->story->reader, buy->item, "supplier");
      /* Translators: a step of undo; %s is a store or a family. */
      name = g_strdup_printf (_("Receipt from %s"), buy->from);
      if (!stead_demo_sound (writer, error) || !stead_demo_act (writer, name, write_buy, buy, error))
        return FALSE;
    }
  return TRUE;
}

static gboolean
write_use (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  const SteadDemoUse *use = what;
  g_autofree char *group = g_strconcat ("item ", use->item, NULL);
  const SteadUnit *unit = stead_demo_unit_of (writer, group);
  gint64 item = stead_demo_id_of (writer, "item", use->item);
  gint64 person = stead_demo_person_on (writer, use->day);
  SteadDay day = stead_demo_day_at (writer, use->day);
  double base;

  if (!stead_demo_sound (writer, error))
    return FALSE;
  base = stead_quantity_to_base (use->quantity, unit);
  return use->is_sold
         ? stead_lot_repo_sell (writer->store, item, day, base, _("Packed for the sale"), person, error)
         : stead_lot_repo_use (writer->store, item, writer->flock_id, day, base, person, error);
}

static gboolean
live_uses (SteadDemoWriter  *writer,
           GError          **error)
{
  GPtrArray *uses = writer->story->uses;

  for (; writer->next_use < uses->len; writer->next_use++)
    {
      const SteadDemoUse *use = uses->pdata[writer->next_use];
      g_autofree char *name = NULL;

      if (use->day > writer->at)
        return TRUE;
      /* At a market the cash-up takes the packs. */
      if (use->is_sold && stead_demo_market_is_on (writer))
        continue;
      /* Translators: a step of undo; %s is a thing in the store room. */
      name = g_strdup_printf (_("Use of %s"), use->item);
      if (!stead_demo_act (writer, name, write_use, use, error))
        return FALSE;
    }
  return TRUE;
}

/* The second collection, if there was one, is an entry of its own. */
static gboolean
write_day (SteadDemoWriter  *writer,
           gconstpointer     what,
           GError          **error)
{
  const SteadDemoDay *day = what;
  SteadFlockEntry entry = { .flock_id = writer->flock_id, .day = stead_demo_day_at (writer, writer->at),
                            .eggs = day->eggs - day->later_eggs,
                            .cracked = MIN (day->cracked, day->eggs - day->later_eggs),
                            .deaths = day->deaths, .left_out = day->left_out, .note = day->note,
                            .feed_kg = day->feed_lb > 0
                                       ? stead_quantity_to_base (day->feed_lb, stead_unit_by_id ("lb")) : NAN,
                            .person_id = stead_demo_person_on (writer, writer->at) };
  SteadFlockEntry later = { .flock_id = writer->flock_id, .day = entry.day, .eggs = day->later_eggs,
                            .left_out = day->left_out, .feed_kg = NAN, .person_id = entry.person_id };

  stead_demo_eggs_laid (writer, writer->flock_id, day->eggs, entry.cracked);
  return stead_flock_repo_save_entry (writer->store, &entry, error) &&
         (day->later_eggs == 0 || stead_flock_repo_save_entry (writer->store, &later, error));
}

static gboolean
write_day_for_good (SteadDemoWriter  *writer,
                    gconstpointer     what,
                    GError          **error)
{
  stead_store_forget_steps (writer->store);
  return write_day (writer, what, error);
}

static gboolean
live_day (SteadDemoWriter  *writer,
          GError          **error)
{
  const SteadDemoDay *day = &writer->story->days[writer->at];
  gboolean for_good = writer->at == writer->story->n_days - UNDO_DAYS - 1;
  g_autofree char *date = NULL;
  g_autofree char *name = NULL;

  if (day->eggs < 0)
    return TRUE;
  date = stead_day_format (stead_demo_day_at (writer, writer->at), STEAD_DAY_STYLE_SHORT);
  /* Translators: a step of undo: "22 eggs on Mar 3". */
  name = g_strdup_printf (ngettext ("%d egg on %s", "%d eggs on %s", (gulong) day->eggs), day->eggs, date);
  return stead_demo_act (writer, name, for_good ? write_day_for_good : write_day, day, error);
}

/* --- signing ------------------------------------------------------------------------------ */

static gboolean
sign_old (SteadDemoWriter  *writer,
          gconstpointer     what,
          GError          **error)
{
  g_autoptr(GPtrArray) receipts = stead_receipt_repo_list (writer->store, error);

  for (guint i = receipts != NULL ? receipts->len : 0; i > 0; i--)
    {
      const SteadReceipt *receipt = receipts->pdata[i - 1];

      if (receipt->signed_by == 0 && receipt->day <= stead_demo_day_at (writer, writer->at) - SIGN_AGE_DAYS &&
          !stead_receipt_repo_sign (writer->store, receipt->id, writer->advisor_id, error))
        return FALSE;
    }
  return receipts != NULL;
}

/* --- the whole ---------------------------------------------------------------------------- */

static gboolean
live (SteadDemoWriter  *writer,
      GError          **error)
{
  int first_buy = writer->story->buys->len > 0 ? ((SteadDemoBuy *) writer->story->buys->pdata[0])->day : 0;

  for (writer->at = MIN (first_buy, 0); writer->at < writer->story->n_days; writer->at++)
    {
      stead_store_set_today (writer->store, stead_demo_day_at (writer, writer->at));
      if (!live_buys (writer, error) ||
          (writer->at == 0 && !stead_demo_begin_flock (writer, error)) ||
          !stead_demo_live_prices (writer, error) ||
          !live_uses (writer, error) ||
          (writer->at % SIGN_STEP_DAYS == 0 && writer->at > 0 &&
           !stead_demo_act (writer, "sign", sign_old, NULL, error)) ||
          (writer->at >= 0 && (!stead_demo_live_loop (writer, error) || !stead_demo_live_bay (writer, error) ||
                               !stead_demo_live_chicks (writer, error) || !live_day (writer, error) ||
                               !stead_demo_live_grades (writer, error) || !stead_demo_live_eggs (writer, error) ||
                               !stead_demo_live_kitchen (writer, error) ||
                               !stead_demo_live_coolers (writer, error))) ||
          !stead_demo_live_market (writer, error) || !stead_demo_live_cash (writer, error))
        return FALSE;
    }
  return TRUE;
}

gboolean
stead_demo_write (SteadDemoStory  *story,
                  SteadStore      *store,
                  GError         **error)
{
  SteadDemoWriter writer = { .story = story, .store = store };
  gboolean done;

  writer.ids = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  writer.students = g_ptr_array_new_with_free_func (g_free);
  writer.loop = stead_demo_loop_new (&writer);
  writer.bay = stead_demo_bay_new (&writer);
  writer.chicks = stead_demo_chicks_new (&writer);
  writer.eggs = stead_demo_eggs_new (&writer);
  writer.kitchen = stead_demo_kitchen_new (&writer);
  writer.cash = stead_demo_cash_new (&writer);
  writer.market = stead_demo_market_new (&writer);
  stead_store_set_today (store, story->first - 400);
  done = stead_demo_sound (&writer, error) && stead_demo_begin_farm (&writer, error) &&
         stead_demo_begin_cash (&writer, error) && live (&writer, error) &&
         stead_demo_plan_sales (&writer, error) && stead_demo_plan_builds (&writer, error) &&
         stead_demo_write_class (&writer, error) && stead_demo_write_learning (&writer, error);
  stead_demo_loop_free (writer.loop);
  stead_demo_bay_free (writer.bay);
  stead_demo_chicks_free (writer.chicks);
  stead_demo_eggs_free (writer.eggs);
  stead_demo_kitchen_free (writer.kitchen);
  stead_demo_cash_free (writer.cash);
  stead_demo_market_free (writer.market);
  g_hash_table_unref (writer.ids);
  g_ptr_array_unref (writer.students);
  return done;
}
