/* stead-fish-check.c - what an entry in the log of fish must keep to. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-fish-growth.h"
#include "store/stead-fish-private.h"

/* Feed of one entry, of what the fish weigh: fry are fed up to 30 % a day. */
#define FEED_MOST_FRAC (1 / 3.0)

/* No fish grows at more than twice its plan, in water of the best warmth: whoever
 * enters more feed than such fish eat has slipped in a number or its unit. */
#define GROWTH_MOST 2
#define WARMEST_C 30

#define WATER_LEAST_C (-5)
#define WATER_MOST_C 60

/* --- what stands beside an entry --------------------------------------------------- */

/* The weight that was known last, as it may have grown since. */
static gboolean
read_heaviest (SteadStore       *store,
               const SteadFish  *group,
               SteadDay          day,
               double           *out_g,
               GError          **error)
{
  static const char sql[] =
    "SELECT day, 1000 * total_kg / n AS mean_g FROM weighing WHERE batch_id = ?1 AND day <= ?2"
    " UNION ALL SELECT day, mean_g FROM fish_move WHERE to_id = ?1 AND day <= ?2"
    " ORDER BY day DESC, mean_g DESC LIMIT 1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  double known_g = group->stocked_g;
  SteadDay known_on = group->batch.started_on;
  int found;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, group->batch.id);
  sqlite3_bind_int (stmt, 2, day);
  found = stead_store_step (store, stmt, error);
  if (found < 0)
    return FALSE;
  if (found == 1)
    {
      known_on = stead_stmt_day (stmt, 0);
      known_g = sqlite3_column_double (stmt, 1);
    }
  *out_g = MIN (stead_fish_weight_g (known_g, GROWTH_MOST * group->tgc, WARMEST_C * MAX (0.0, day - known_on)),
                STEAD_FISH_HEAVIEST_G);
  return TRUE;
}

gboolean
stead_fish_read_stand (SteadStore       *store,
                       const SteadFish  *group,
                       SteadDay          day,
                       gint64            entry_id,
                       SteadFishStand   *out,
                       GError          **error)
{
  const SteadFishWithout without = { .entry_id = entry_id };
  SteadFishStand stand = { 0 };
  double heaviest_g = 0;

  if (!stead_fish_can_go (store, group->batch.id, day, &without, &stand.can_go, error) ||
      !stead_fish_on_day (store, group->batch.id, day, &stand.there, error) ||
      !read_heaviest (store, group, day, &heaviest_g, error))
    return FALSE;
  stand.most_kg = (double) stand.there * heaviest_g / 1000;
  *out = stand;
  return TRUE;
}

gboolean
stead_fish_repo_stand (SteadStore      *store,
                       gint64           fish_id,
                       SteadDay         day,
                       gint64           entry_id,
                       SteadFishStand  *out,
                       GError         **error)
{
  g_autoptr(SteadFish) group = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && out != NULL, FALSE);
  group = stead_fish_repo_get (store, fish_id, error);
  return group != NULL && stead_fish_read_stand (store, group, day, entry_id, out, error);
}

/* --- the rule -------------------------------------------------------------------------- */

static gboolean
check_feed (const SteadFishEntry  *entry,
            const SteadFishStand  *stand,
            GError               **error)
{
  if (isnan (entry->feed_kg))
    return TRUE;
  if (!(entry->feed_kg >= 0))
    return stead_repo_refuse (error, _("Feed cannot be less than nothing. Check the number."));
  if (entry->feed_kg > 0 && !(entry->feed_kg <= stand->most_kg * FEED_MOST_FRAC))
    return stead_repo_refuse (error, _("That is more feed than a third of what the fish can weigh. "
                                       "Check the number and its unit, or weigh the fish first."));
  return TRUE;
}

static gboolean
check_water (const SteadFishEntry  *entry,
             GError               **error)
{
  if (isnan (entry->water_c) || (entry->water_c >= WATER_LEAST_C && entry->water_c <= WATER_MOST_C))
    return TRUE;
  return stead_repo_refuse (error, _("Water is from −5 to 60 °C (23 to 140 °F) where fish could be. "
                                     "Check the number and its unit."));
}

static gboolean
check_losses (const SteadFishEntry  *entry,
              const SteadFish       *group,
              const SteadFishStand  *stand,
              GError               **error)
{
  gint64 lost = (gint64) entry->deaths + entry->culled;

  if (entry->deaths < 0 || entry->culled < 0)
    return stead_repo_refuse (error, _("Fish lost cannot be fewer than none. Check the number."));
  return lost <= stand->can_go || stead_fish_refuse_gone (group->batch.name, stand->can_go, lost, error);
}

static gboolean
something_entered (const SteadFishEntry *entry)
{
  g_autofree char *note = stead_repo_tidy (entry->note);

  return !isnan (entry->feed_kg) || !isnan (entry->water_c) || entry->refused ||
         entry->deaths > 0 || entry->culled > 0 || note != NULL;
}

/**
 * stead_fish_entry_check:
 * @stand: what stands beside it, without the entry itself
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_fish_entry_check (const SteadFishEntry  *entry,
                        const SteadFish       *group,
                        const SteadFishStand  *stand,
                        SteadDay               today,
                        GError               **error)
{
  g_return_val_if_fail (entry != NULL && group != NULL && stand != NULL, FALSE);
  if (!stead_fish_check_day (&group->batch, entry->day, today, error) ||
      !check_losses (entry, group, stand, error) ||
      !check_feed (entry, stand, error) ||
      !check_water (entry, error) ||
      !stead_repo_check_note (entry->note, error) || !stead_repo_check_note (entry->reason, error))
    return FALSE;
  if (!something_entered (entry))
    return stead_repo_refuse (error, _("Nothing is entered. Enter feed, the temperature of the water, fish lost, "
                                       "or a note."));
  return TRUE;
}
