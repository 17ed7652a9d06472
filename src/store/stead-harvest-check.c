/* stead-harvest-check.c - what can have been harvested at all. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-fish-private.h"
#include "store/stead-harvest-private.h"
#include "store/stead-item-repo.h"

/* --- the day ------------------------------------------------------------------ */

/* Nothing comes after the harvest that was called the last. */
static gboolean
check_last (SteadStore          *store,
            const SteadBatch    *batch,
            const SteadHarvest  *harvest,
            GError             **error)
{
  static const char sql[] =
    "SELECT (SELECT max (day) FROM harvest WHERE batch_id = ?1 AND id <> ?2),"
    " (SELECT min (day) FROM harvest WHERE batch_id = ?1 AND id <> ?2 AND is_last = 1)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autofree char *text = NULL;
  SteadDay newest, last;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, batch->id);
  sqlite3_bind_int64 (stmt, 2, harvest->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  newest = stead_stmt_day (stmt, 0);
  last = stead_stmt_day (stmt, 1);
  if (last != STEAD_DAY_NONE && (harvest->is_last || harvest->day > last))
    {
      text = stead_day_format (last, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("The last harvest of “%s” was on %s. Change that one first, "
                                         "if more has come."), batch->name, text);
    }
  if (harvest->is_last && newest != STEAD_DAY_NONE && newest > harvest->day)
    {
      text = stead_day_format (newest, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” was harvested again on %s. An earlier harvest cannot be the last."),
                                batch->name, text);
    }
  return TRUE;
}

static gboolean
check_day (SteadStore          *store,
           const SteadBatch    *batch,
           const SteadHarvest  *harvest,
           GError             **error)
{
  g_autofree char *text = NULL;

  if (harvest->day == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day."));
  if (harvest->day < batch->started_on)
    {
      text = stead_day_format (batch->started_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” began on %s. A harvest cannot be from before that day."),
                                batch->name, text);
    }
  if (batch->ended_on != STEAD_DAY_NONE && harvest->day > batch->ended_on)
    {
      text = stead_day_format (batch->ended_on, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("“%s” ended on %s. A harvest cannot be from after that day."),
                                batch->name, text);
    }
  if (harvest->day > stead_store_get_today (store))
    {
      text = stead_day_format (harvest->day, STEAD_DAY_STYLE_MEDIUM);
      return stead_repo_refuse (error, _("%s is still to come. Enter a day up to today."), text);
    }
  return check_last (store, batch, harvest, error);
}

/* What comes of a treated batch stays out of the store room until its wait is over. */
static gboolean
check_wait (SteadStore          *store,
            const SteadBatch    *batch,
            const SteadHarvest  *harvest,
            GError             **error)
{
  g_autoptr(GError) problem = NULL;
  g_autofree char *text = NULL;
  SteadDay wait;

  if (!(harvest->quantity_base > 0))
    return TRUE;
  wait = stead_treatment_repo_wait (store, batch->id, harvest->day, &problem);
  if (problem != NULL)
    {
      g_propagate_error (error, g_steal_pointer (&problem));
      return FALSE;
    }
  if (wait == STEAD_DAY_NONE)
    return TRUE;
  text = stead_day_format (wait, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, _("“%s” waits after a treatment, up to and including %s. Nothing that comes of it "
                                     "before then may be sold or eaten. Enter it as lost."), batch->name, text);
}

/* --- amounts ------------------------------------------------------------------ */

static gboolean
is_amount (double amount)
{
  return amount >= 0 && amount <= STEAD_AMOUNT_MAX;
}

static gboolean
check_amounts (const SteadHarvest  *harvest,
               GError             **error)
{
  g_autofree char *reason = stead_repo_tidy (harvest->reason);

  if (!is_amount (harvest->quantity_base) || !is_amount (harvest->lost_base) || !is_amount (harvest->tasted_base))
    return stead_repo_refuse (error, _("An amount must be 0 or more. Check the number."));
  if (!(harvest->quantity_base > STEAD_AMOUNT_EPSILON) && !(harvest->lost_base > STEAD_AMOUNT_EPSILON))
    return stead_repo_refuse (error, _("Nothing is entered. Enter how much was harvested."));
  if (harvest->lost_base > 0 && reason == NULL)
    return stead_repo_refuse (error, _("Write down why some of it was lost, so that others can learn from it."));
  if (harvest->pieces != STEAD_COUNT_NONE && !(harvest->pieces >= 0 && (double) harvest->pieces <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The number of pieces must be 0 or more. Check the number."));
  if (!isnan (harvest->live_kg) && !(harvest->live_kg > 0 && harvest->live_kg <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The live weight must be above 0. Check the number."));
  return stead_repo_check_cents (_("Cost"), harvest->cost_cents, error) &&
         stead_repo_check_note (harvest->reason, error) &&
         stead_repo_check_note (harvest->grade, error) &&
         stead_repo_check_note (harvest->note, error);
}

static gboolean
check_fish (SteadStore          *store,
            const SteadBatch    *batch,
            const SteadHarvest  *harvest,
            GError             **error)
{
  SteadFishWithout without = { .harvest_id = harvest->id };
  g_autofree char *text = NULL;
  gint64 alive = 0;

  if (batch->kind != STEAD_BATCH_FISH)
    return TRUE;
  if (!(harvest->pieces >= 1))
    return stead_repo_refuse (error, _("Count the fish that are taken out, so that the number alive stays right."));
  if (!stead_fish_can_go (store, batch->id, harvest->day, &without, &alive, error))
    return FALSE;
  if (harvest->pieces <= alive)
    return TRUE;
  text = stead_day_format (harvest->day, STEAD_DAY_STYLE_MEDIUM);
  return stead_repo_refuse (error, ngettext ("From %3$s on, only %1$d fish swims in “%2$s”. No more can be taken out.",
                                             "From %3$s on, only %1$d fish swim in “%2$s”. No more can be taken out.",
                                             (gulong) MAX (alive, 0)), (int) MAX (alive, 0), batch->name, text);
}

/* --- the item ----------------------------------------------------------------- */

static gboolean
check_weights (const SteadHarvest  *harvest,
               const SteadItem     *item,
               GError             **error)
{
  if (isnan (harvest->live_kg) || item->unit->dimension != STEAD_DIMENSION_MASS ||
      harvest->quantity_base + harvest->lost_base <= harvest->live_kg * (1 + 1e-9))
    return TRUE;
  return stead_repo_refuse (error, _("What came of it cannot weigh more than the animals did alive. "
                                     "Check the two weights."));
}

/* What a batch gave must add up: all by weight, or all by count. */
static gboolean
check_dimension (SteadStore          *store,
                 const SteadHarvest  *harvest,
                 const SteadItem     *item,
                 GError             **error)
{
  static const char sql[] = "SELECT l.item_id FROM harvest h JOIN lot l ON l.id = h.lot_id"
                            " WHERE h.batch_id = ?1 AND h.id <> ?2 ORDER BY h.day DESC, h.id DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  g_autoptr(SteadItem) other = NULL;
  gint64 other_id = 0;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, harvest->batch_id);
  sqlite3_bind_int64 (stmt, 2, harvest->id);
  if (!stead_repo_number (store, stmt, 0, &other_id, error))
    return FALSE;
  if (other_id == 0 || other_id == item->id)
    return TRUE;
  other = stead_item_repo_get (store, other_id, error);
  if (other == NULL)
    return FALSE;
  return other->unit->dimension == item->unit->dimension
         || stead_repo_refuse (error, _("“%s” is not measured as “%s” is, which came from here before. "
                                        "Choose an item of the same measure."), item->name, other->name);
}

static gboolean
check_best_by (SteadHarvest     *harvest,
               const SteadItem  *item,
               GError          **error)
{
  if (harvest->best_by == STEAD_DAY_NONE && item->shelf_life_days > 0)
    harvest->best_by = harvest->day + item->shelf_life_days;
  if (harvest->best_by != STEAD_DAY_NONE && harvest->best_by < harvest->day)
    return stead_repo_refuse (error, _("It cannot be past its best before it is harvested. Check the two days."));
  return TRUE;
}

static gboolean
check_item (SteadStore    *store,
            SteadHarvest  *harvest,
            GError       **error)
{
  g_autoptr(SteadItem) item = NULL;

  if (!(harvest->quantity_base > STEAD_AMOUNT_EPSILON))
    {
      harvest->quantity_base = 0;
      harvest->item_id = 0;
      harvest->cost_cents = 0;
      harvest->best_by = STEAD_DAY_NONE;
      return TRUE;
    }
  if (harvest->item_id == 0)
    return stead_repo_refuse (error, _("Choose what goes into the store room."));
  item = stead_item_repo_get (store, harvest->item_id, error);
  if (item == NULL)
    return FALSE;
  if (item->kind != STEAD_ITEM_PRODUCE)
    return stead_repo_refuse (error, _("“%s” is something that is bought. Choose an item that the farm makes."),
                              item->name);
  return check_dimension (store, harvest, item, error) && check_weights (harvest, item, error) && check_best_by (harvest, item, error);
}

gboolean
stead_harvest_check (SteadStore        *store,
                     const SteadBatch  *batch,
                     SteadHarvest      *harvest,
                     GError           **error)
{
  return check_day (store, batch, harvest, error) &&
         check_amounts (harvest, error) &&
         check_item (store, harvest, error) &&
         check_wait (store, batch, harvest, error) &&
         check_fish (store, batch, harvest, error);
}
