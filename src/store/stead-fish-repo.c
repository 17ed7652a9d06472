/* stead-fish-repo.c - groups of fish: a batch, and what is expected of it. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-fish.h"
#include "store/stead-fish-private.h"
#include "store/stead-ledger-private.h"

/* Growth beyond all that fish show: TGC x 100 of the fastest is below 0.3. */
#define TGC_MAX 2.0

/* How long before it begins a purge may be planned. */
#define PURGE_AHEAD_DAYS 60

/* Of the fish of the usual size by which one can be sold: common practice, no source. */
#define SALE_FRAC 0.8
#define SPREAD_FRAC 0.2
#define DEATHS_YEAR 0.2

/**
 * stead_fish_new:
 *
 * Returns: (transfer full): no name, no days; what is usual for tilapia
 */
SteadFish *
stead_fish_new (void)
{
  const SteadFishKind *fish = stead_fish_kind (STEAD_FISH_TILAPIA);
  SteadFish *group = g_new0 (SteadFish, 1);

  group->batch.kind = STEAD_BATCH_FISH;
  group->batch.started_on = group->batch.ended_on = STEAD_DAY_NONE;
  group->species = g_strdup (fish->id);
  group->protein_frac = NAN;
  group->tgc = fish->tgc_x100;
  group->sale_g = fish->market_g;
  group->sale_frac = SALE_FRAC;
  group->spread_frac = SPREAD_FRAC;
  group->deaths_year = DEATHS_YEAR;
  group->purge_days = STEAD_FISH_FASTING_DAYS;
  group->purge_from = STEAD_DAY_NONE;
  return group;
}

void
stead_fish_free (SteadFish *group)
{
  if (group == NULL)
    return;
  stead_batch_clear (&group->batch);
  g_free (group->species);
  g_free (group);
}

/* --- reading ---------------------------------------------------------------- */

#define GROUP_SELECT \
  "SELECT " BATCH_COLUMNS ", f.species, f.stocked, f.stocked_g, f.cost_cents, f.is_gift, f.protein_frac," \
  " f.tgc, f.sale_g, f.sale_frac, f.spread_frac, f.deaths_year, f.purge_days, f.purge_from" \
  " FROM batch b JOIN fish f ON f.batch_id = b.id"

static gpointer
group_from_row (SteadStmt *stmt)
{
  SteadFish *group = g_new0 (SteadFish, 1);
  int at = BATCH_N_COLUMNS;

  stead_batch_read_row (stmt, &group->batch);
  group->species = stead_stmt_text (stmt, at++);
  group->stocked = sqlite3_column_int64 (stmt, at++);
  group->stocked_g = sqlite3_column_double (stmt, at++);
  group->cost_cents = sqlite3_column_int64 (stmt, at++);
  group->is_gift = sqlite3_column_int (stmt, at++) != 0;
  group->protein_frac = stead_stmt_real (stmt, at++);
  group->tgc = sqlite3_column_double (stmt, at++);
  group->sale_g = sqlite3_column_double (stmt, at++);
  group->sale_frac = sqlite3_column_double (stmt, at++);
  group->spread_frac = sqlite3_column_double (stmt, at++);
  group->deaths_year = sqlite3_column_double (stmt, at++);
  group->purge_days = sqlite3_column_int (stmt, at++);
  group->purge_from = stead_stmt_day (stmt, at);
  return group;
}

GPtrArray *
stead_fish_repo_list (SteadStore  *store,
                      gboolean     ended,
                      GError     **error)
{
  static const char sql[] = GROUP_SELECT " WHERE ?1 OR b.ended_on IS NULL"
                                         " ORDER BY b.ended_on IS NOT NULL, b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, group_from_row, (GDestroyNotify) stead_fish_free,
                             error);
}

SteadFish *
stead_fish_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = GROUP_SELECT " WHERE b.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, group_from_row, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_place (SteadStore       *store,
             const SteadFish  *group,
             GError          **error)
{
  static const char sql[] = "SELECT count (*) FROM tank WHERE place_id = ?1";
  gint64 tanks;

  if (group->batch.place_id == 0)
    return stead_repo_refuse (error, _("Choose the tank that the fish live in."));
  tanks = stead_repo_count_id (store, sql, group->batch.place_id, error);
  if (tanks == 0)
    return stead_repo_refuse (error, _("Fish live in a tank. Choose a tank, or enter a new one first."));
  return tanks > 0;
}

static gboolean
check_stocking (const SteadFish  *group,
                GError          **error)
{
  if (!(group->stocked >= 0 && group->stocked <= STEAD_FISH_MOST))
    return stead_repo_refuse (error, _("Enter how many fish were put in, from 0 to 100,000,000. "
                                       "0 is right if all come from another group."));
  if (!(group->stocked_g > 0 && group->stocked_g <= STEAD_FISH_HEAVIEST_G))
    return stead_repo_refuse (error, _("Enter what one fish weighed when it was put in: more than 0, "
                                       "at most 100 kg (220 lb)."));
  return stead_repo_check_cents (_("Cost of the fish"), group->cost_cents, error);
}

static gboolean
check_expected (const SteadFish  *group,
                GError          **error)
{
  if (!isnan (group->protein_frac) && !(group->protein_frac >= 0.05 && group->protein_frac <= 0.8))
    return stead_repo_refuse (error, _("The protein of a fish feed lies between 5 and 80 percent. Look at its label."));
  if (!(group->tgc > 0 && group->tgc <= TGC_MAX))
    return stead_repo_refuse (error, _("The growth coefficient must be above 0 and at most 2. "
                                       "Set it back to the usual one."));
  if (!(group->sale_g > 0 && group->sale_g <= STEAD_FISH_HEAVIEST_G))
    return stead_repo_refuse (error, _("Enter from which weight a fish can be sold: more than 0, "
                                       "at most 100 kg (220 lb)."));
  if (!(group->sale_frac > 0 && group->sale_frac < 1))
    return stead_repo_refuse (error, _("The share that must reach the sale weight lies between 1 and 99 percent."));
  if (!(group->spread_frac >= 0 && group->spread_frac <= 1))
    return stead_repo_refuse (error, _("The spread of the weights lies between 0 and 100 percent. 20 is usual."));
  if (!(group->deaths_year >= 0 && group->deaths_year <= 1))
    return stead_repo_refuse (error, _("The share of fish that die in a year lies between 0 and 100 percent."));
  return TRUE;
}

static gboolean
check_purge (SteadStore       *store,
             const SteadFish  *group,
             GError          **error)
{
  SteadDay from = group->purge_from;

  if (!(group->purge_days >= 0 && group->purge_days <= 60))
    return stead_repo_refuse (error, _("Fish are purged for 0 to 60 days before they are sold. 3 to 5 are usual."));
  if (from == STEAD_DAY_NONE)
    return TRUE;
  if (from < group->batch.started_on)
    return stead_repo_refuse (error, _("The purge cannot begin before the fish were put in. Check the date."));
  if (from > stead_store_get_today (store) + PURGE_AHEAD_DAYS)
    return stead_repo_refuse (error, _("The purge is more than 60 days ahead. Enter it when it is nearer."));
  return TRUE;
}

static gboolean
check_number_of_log (SteadStore       *store,
                     const SteadFish  *group,
                     GError          **error)
{
  g_autoptr(GArray) changes = stead_fish_changes (store, group->batch.id, NULL, error);
  gint64 least;

  if (changes == NULL)
    return FALSE;
  least = stead_fish_changes_least (changes, group->stocked, group->batch.started_on);
  if (least < 0)
    return stead_repo_refuse (error, ngettext ("The log has %d fish more gone than were put in. "
                                               "Check the number put in.",
                                               "The log has %d fish more gone than were put in. "
                                               "Check the number put in.", (gulong) -least), (int) -least);
  return TRUE;
}

/* Fish that moved between two groups are of one kind. */
static gboolean
check_species_of_moves (SteadStore       *store,
                        const SteadFish  *group,
                        const SteadFish  *before,
                        GError          **error)
{
  static const char sql[] = "SELECT count (*) FROM fish_move WHERE from_id = ?1 OR to_id = ?1";
  gint64 moves;

  if (g_strcmp0 (before->species, group->species) == 0)
    return TRUE;
  moves = stead_repo_count_id (store, sql, group->batch.id, error);
  if (moves > 0)
    return stead_repo_refuse (error, _("Fish moved between “%s” and another group, so both keep their kind of fish."),
                              group->batch.name);
  return moves == 0;
}

static gboolean
check_group (SteadStore       *store,
             const SteadFish  *group,
             GError          **error)
{
  g_autofree char *species = stead_repo_tidy (group->species);

  if (!stead_batch_check (store, &group->batch, error))
    return FALSE;
  if (species == NULL)
    return stead_repo_refuse (error, _("Choose the kind of fish."));
  return stead_repo_check_name (species, error) &&
         check_stocking (group, error) &&
         check_place (store, group, error) &&
         check_expected (group, error) &&
         check_purge (store, group, error) &&
         (group->batch.id == 0 || check_number_of_log (store, group, error));
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_fish (SteadStore       *store,
            const SteadFish  *group,
            gboolean          is_new,
            GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO fish (batch_id, species, stocked, stocked_g, cost_cents, is_gift, protein_frac, tgc, sale_g,"
    " sale_frac, spread_frac, deaths_year, purge_days, purge_from)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14)";
  static const char update_sql[] =
    "UPDATE fish SET species = ?2, stocked = ?3, stocked_g = ?4, cost_cents = ?5, is_gift = ?6, protein_frac = ?7,"
    " tgc = ?8, sale_g = ?9, sale_frac = ?10, spread_frac = ?11, deaths_year = ?12, purge_days = ?13,"
    " purge_from = ?14 WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, is_new ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, group->batch.id);
  stead_repo_bind_tidy (stmt, 2, group->species);
  sqlite3_bind_int64 (stmt, 3, group->stocked);
  sqlite3_bind_double (stmt, 4, group->stocked_g);
  sqlite3_bind_int64 (stmt, 5, group->cost_cents);
  sqlite3_bind_int (stmt, 6, group->is_gift != FALSE);
  stead_stmt_bind_real (stmt, 7, group->protein_frac);
  sqlite3_bind_double (stmt, 8, group->tgc);
  sqlite3_bind_double (stmt, 9, group->sale_g);
  sqlite3_bind_double (stmt, 10, group->sale_frac);
  sqlite3_bind_double (stmt, 11, group->spread_frac);
  sqlite3_bind_double (stmt, 12, group->deaths_year);
  sqlite3_bind_int (stmt, 13, group->purge_days);
  stead_stmt_bind_day (stmt, 14, group->purge_from);
  return stead_store_run (store, stmt, error);
}

static gboolean
insert_group (SteadStore  *store,
              SteadFish   *group,
              GError     **error)
{
  SteadGivenIds *ids = stead_given_ids_new (&group->batch.id);

  return stead_given_ids_end (ids, stead_batch_write (store, &group->batch, error) &&
                                   write_fish (store, group, TRUE, error));
}

/* A tank that was chosen today, or on the first day, was a slip of the hand: no stay. */
static gboolean
keep_stay (SteadStore       *store,
           const SteadFish  *before,
           const SteadFish  *after,
           GError          **error)
{
  static const char sql[] = "INSERT INTO batch_stay (batch_id, until_day, place_id) VALUES (?1, ?2, ?3)"
                            " ON CONFLICT DO NOTHING";
  SteadDay today = stead_store_get_today (store);
  g_autoptr(SteadStmt) stmt = NULL;

  if (before->batch.place_id == after->batch.place_id || before->batch.place_id == 0 ||
      after->batch.started_on >= today)
    return TRUE;
  stmt = stead_store_prepare (store, sql, error);
  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, after->batch.id);
  stead_stmt_bind_day (stmt, 2, today);
  sqlite3_bind_int64 (stmt, 3, before->batch.place_id);
  return stead_store_run (store, stmt, error);
}

/* Another feed: the whole log's feed moves to the lots of the other item. */
static gboolean
update_group (SteadStore  *store,
              SteadFish   *group,
              GError     **error)
{
  g_autoptr(SteadFish) before = stead_fish_repo_get (store, group->batch.id, error);
  gint64 fed, feeds = group->batch.feed_item_id;

  if (before == NULL ||
      !check_species_of_moves (store, group, before, error) ||
      !keep_stay (store, before, group, error) ||
      !stead_batch_write (store, &group->batch, error) ||
      !write_fish (store, group, FALSE, error))
    return FALSE;
  fed = before->batch.feed_item_id;
  return fed == feeds ||
         (stead_ledger_settle (store, fed, before->batch.started_on, error) &&
          stead_ledger_settle (store, feeds, group->batch.started_on, error));
}

/**
 * stead_fish_repo_save:
 *
 * An id of 0 inserts and fills in the id.
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_fish_repo_save (SteadStore  *store,
                      SteadFish   *group,
                      GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && group != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  group->batch.kind = STEAD_BATCH_FISH;
  if (!check_group (store, group, error))
    return FALSE;
  return group->batch.id == 0 ? insert_group (store, group, error) : update_group (store, group, error);
}

/* --- deleting --------------------------------------------------------------- */

static gboolean
check_no_moves (SteadStore       *store,
                const SteadFish  *group,
                GError          **error)
{
  static const char sql[] = "SELECT count (*) FROM fish_move WHERE from_id = ?1 OR to_id = ?1";
  gint64 moves = stead_repo_count_id (store, sql, group->batch.id, error);

  if (moves > 0)
    return stead_repo_refuse (error, _("Fish moved between “%s” and another group. Take the moves back first."),
                              group->batch.name);
  return moves == 0;
}

gboolean
stead_fish_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  g_autoptr(SteadFish) group = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  group = stead_fish_repo_get (store, id, error);
  return group != NULL &&
         stead_batch_check_unused (store, id, error) &&
         check_no_moves (store, group, error) &&
         stead_batch_remove (store, id, error) &&
         stead_ledger_settle (store, group->batch.feed_item_id, group->batch.started_on, error);
}
