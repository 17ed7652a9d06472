/* stead-flock-repo.c - flocks: a batch, its plan, and what is expected of it. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "store/stead-batch-private.h"
#include "store/stead-flock-private.h"
#include "store/stead-item-repo.h"
#include "store/stead-ledger-private.h"

static const char * const species_words[] = { "hen", "duck", "quail", "other", NULL };

/* Most birds that the file takes in one flock. */
#define BIRDS_MAX 1000000

/**
 * stead_flock_new:
 *
 * Returns: (transfer full): the curve of brown hens, no days, no name
 */
SteadFlock *
stead_flock_new (void)
{
  SteadFlock *flock = g_new0 (SteadFlock, 1);

  flock->housed_on = STEAD_DAY_NONE;
  flock->hatched_on = STEAD_DAY_NONE;
  flock->ended_on = STEAD_DAY_NONE;
  flock->lay_began_on = STEAD_DAY_NONE;
  flock->nests = STEAD_COUNT_NONE;
  flock->roost_m = flock->run_m2 = flock->light_hours = NAN;
  stead_lay_curve_default (&flock->curve);
  return flock;
}

void
stead_flock_free (SteadFlock *flock)
{
  if (flock == NULL)
    return;
  g_free (flock->name);
  g_free (flock->strain);
  g_free (flock->note);
  g_free (flock);
}

/* --- reading ---------------------------------------------------------------- */

#define FLOCK_SELECT \
  "SELECT b.id, b.name, f.strain, b.place_id, b.started_on, f.hatched_on, b.ended_on, f.birds," \
  " f.birds_cost_cents, f.birds_are_gift, f.salvage_cents, f.eggs_expected, b.care_minutes_day," \
  " b.feed_item_id, f.bedding_days, f.level_frac, f.decline_week, f.steepness_week, f.half_week," \
  " f.onset_age_weeks, b.note, f.species, f.reared, f.lay_began_on, f.nests, f.roost_m, f.run_m2," \
  " f.light_hours FROM batch b JOIN flock f ON f.batch_id = b.id"

static gpointer
flock_from_row (SteadStmt *stmt)
{
  SteadFlock *flock = stead_flock_new ();

  flock->id = sqlite3_column_int64 (stmt, 0);
  flock->name = stead_stmt_text (stmt, 1);
  flock->strain = stead_stmt_text (stmt, 2);
  flock->place_id = sqlite3_column_int64 (stmt, 3);
  flock->housed_on = stead_stmt_day (stmt, 4);
  flock->hatched_on = stead_stmt_day (stmt, 5);
  flock->ended_on = stead_stmt_day (stmt, 6);
  flock->birds = sqlite3_column_int64 (stmt, 7);
  flock->birds_cost_cents = sqlite3_column_int64 (stmt, 8);
  flock->birds_are_gift = sqlite3_column_int (stmt, 9) != 0;
  flock->salvage_cents = sqlite3_column_int64 (stmt, 10);
  flock->eggs_expected = sqlite3_column_double (stmt, 11);
  flock->care_minutes_day = sqlite3_column_double (stmt, 12);
  flock->feed_item_id = sqlite3_column_int64 (stmt, 13);
  flock->bedding_days = sqlite3_column_int (stmt, 14);
  flock->curve.level_frac = sqlite3_column_double (stmt, 15);
  flock->curve.decline_week = sqlite3_column_double (stmt, 16);
  flock->curve.steepness_week = sqlite3_column_double (stmt, 17);
  flock->curve.half_week = sqlite3_column_double (stmt, 18);
  flock->curve.onset_age_weeks = sqlite3_column_double (stmt, 19);
  flock->note = stead_stmt_text (stmt, 20);
  flock->species = (SteadSpecies) stead_repo_word (stmt, 21, species_words);
  flock->reared = sqlite3_column_int (stmt, 22) != 0;
  flock->lay_began_on = stead_stmt_day (stmt, 23);
  flock->nests = sqlite3_column_type (stmt, 24) == SQLITE_NULL ? STEAD_COUNT_NONE : sqlite3_column_int (stmt, 24);
  flock->roost_m = stead_stmt_real (stmt, 25);
  flock->run_m2 = stead_stmt_real (stmt, 26);
  flock->light_hours = stead_stmt_real (stmt, 27);
  return flock;
}

GPtrArray *
stead_flock_repo_list (SteadStore  *store,
                       gboolean     ended,
                       GError     **error)
{
  static const char sql[] = FLOCK_SELECT " WHERE ?1 OR b.ended_on IS NULL"
                                         " ORDER BY b.ended_on IS NOT NULL, b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, flock_from_row, (GDestroyNotify) stead_flock_free,
                             error);
}

SteadFlock *
stead_flock_repo_get (SteadStore  *store,
                      gint64       id,
                      GError     **error)
{
  static const char sql[] = FLOCK_SELECT " WHERE b.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, flock_from_row, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_flock_days (SteadStore        *store,
                  const SteadFlock  *flock,
                  GError           **error)
{
  if (flock->housed_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day the birds moved in."));
  if (flock->housed_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The day the birds moved in is still to come. Check the date."));
  if (flock->hatched_on == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day the birds hatched, or their age when they moved in."));
  if (flock->hatched_on > flock->housed_on)
    return stead_repo_refuse (error, _("The birds cannot hatch after the day they moved in. Check the two dates."));
  if (flock->ended_on != STEAD_DAY_NONE && flock->ended_on < flock->housed_on)
    return stead_repo_refuse (error, _("The flock cannot end before the birds moved in. Check the two dates."));
  if (flock->ended_on != STEAD_DAY_NONE && flock->ended_on > stead_store_get_today (store))
    return stead_repo_refuse (error, _("The day the flock ended is still to come. Enter it when it is here."));
  return TRUE;
}

static gboolean
check_birds (const SteadFlock  *flock,
             GError           **error)
{
  if (!(flock->birds >= 1 && flock->birds <= BIRDS_MAX))
    return stead_repo_refuse (error, _("A flock has at least 1 bird and at most 1,000,000. Check the number."));
  if (!stead_repo_check_cents (_("Cost of the birds"), flock->birds_cost_cents, error) ||
      !stead_repo_check_cents (_("Worth of the birds at the end"), flock->salvage_cents, error))
    return FALSE;
  if (!flock->reared && flock->salvage_cents > flock->birds_cost_cents)
    return stead_repo_refuse (error, _("The birds cannot be worth more at the end than they cost. "
                                       "Check the two amounts."));
  return TRUE;
}

static gboolean
check_plan (const SteadFlock  *flock,
            GError           **error)
{
  const SteadLayCurve *curve = &flock->curve;

  if (!(flock->eggs_expected > 0 && flock->eggs_expected <= 5000))
    return stead_repo_refuse (error, _("Enter how many eggs one bird is expected to lay: more than 0, at most 5,000."));
  if (!(flock->care_minutes_day >= 0 && flock->care_minutes_day <= 1440))
    return stead_repo_refuse (error, _("The minutes of care must lie between 0 and 1,440, the minutes of a day."));
  if (!(flock->bedding_days >= 0 && flock->bedding_days <= 3660))
    return stead_repo_refuse (error, _("The days between changes of bedding must be 0 or more."));
  if (!(curve->level_frac >= 0 && curve->level_frac <= 1) ||
      !(curve->decline_week >= 0 && curve->decline_week <= 1) ||
      !(curve->steepness_week > 0 && curve->steepness_week <= 100) ||
      !(curve->half_week >= -100 && curve->half_week <= 100) ||
      !(curve->onset_age_weeks >= 0 && curve->onset_age_weeks <= 100))
    return stead_repo_refuse (error, _("The expected laying curve is not possible. Set it back to the usual one."));
  return TRUE;
}

/* What is not said (NAN, STEAD_COUNT_NONE) is fine. */
static gboolean
check_house (const SteadFlock  *flock,
             GError           **error)
{
  if (flock->nests != STEAD_COUNT_NONE && !(flock->nests >= 0 && flock->nests <= BIRDS_MAX))
    return stead_repo_refuse (error, _("The number of nests must be 0 or more."));
  if (flock->roost_m < 0 || flock->roost_m > STEAD_AMOUNT_MAX)
    return stead_repo_refuse (error, _("The length of the roosts must be 0 or more."));
  if (flock->run_m2 < 0 || flock->run_m2 > STEAD_AMOUNT_MAX)
    return stead_repo_refuse (error, _("The size of the run must be 0 or more."));
  if (flock->light_hours < 0 || flock->light_hours > 24)
    return stead_repo_refuse (error, _("The hours of light must lie between 0 and 24."));
  if (flock->lay_began_on != STEAD_DAY_NONE && flock->lay_began_on < flock->hatched_on)
    return stead_repo_refuse (error, _("The flock cannot begin to lay before it hatched. Check the two dates."));
  return TRUE;
}

static gboolean
check_feed_item (SteadStore        *store,
                 const SteadFlock  *flock,
                 GError           **error)
{
  g_autoptr(SteadItem) item = NULL;

  if (flock->feed_item_id == 0)
    return TRUE;
  item = stead_item_repo_get (store, flock->feed_item_id, error);
  if (item == NULL)
    return FALSE;
  if (item->unit->dimension != STEAD_DIMENSION_MASS)
    return stead_repo_refuse (error, _("“%s” is not weighed. Choose a feed that is bought by weight."), item->name);
  return TRUE;
}

/* The log must still fit: its days, and no more hens lost than there were. */
static gboolean
check_log (SteadStore        *store,
           const SteadFlock  *flock,
           GError           **error)
{
  static const char sql[] =
    "SELECT (SELECT min (day) FROM batch_entry WHERE batch_id = ?1),"
    " (SELECT max (day) FROM batch_entry WHERE batch_id = ?1),"
    " (SELECT sum (deaths + culled) FROM batch_entry WHERE batch_id = ?1 AND deaths + culled > 0)";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, sql, error);
  SteadDay first, last;
  gint64 lost;

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, flock->id);
  if (stead_store_step (store, stmt, error) < 0)
    return FALSE;
  first = stead_stmt_day (stmt, 0);
  last = stead_stmt_day (stmt, 1);
  lost = sqlite3_column_int64 (stmt, 2);
  if (first != STEAD_DAY_NONE && first < flock->housed_on)
    return stead_repo_refuse (error, _("The log has entries from before the birds moved in. Check the date."));
  if (last != STEAD_DAY_NONE && flock->ended_on != STEAD_DAY_NONE && last > flock->ended_on)
    return stead_repo_refuse (error, _("The log has entries from after the end of the flock. Check the date."));
  if (lost > flock->birds)
    return stead_repo_refuse (error, ngettext ("The log has already lost %d bird. The flock cannot have fewer.",
                                               "The log has already lost %d birds. The flock cannot have fewer.",
                                               (gulong) lost), (int) lost);
  return TRUE;
}

static gboolean
flock_check (SteadStore  *store,
             SteadFlock  *flock,
             GError     **error)
{
  static const char taken_sql[] = "SELECT 1 FROM batch WHERE name = ?1 AND id <> ?2";

  return stead_repo_check_name (flock->name, error) &&
         check_flock_days (store, flock, error) &&
         check_birds (flock, error) &&
         check_plan (flock, error) &&
         check_house (flock, error) &&
         stead_repo_check_note (flock->strain, error) &&
         stead_repo_check_note (flock->note, error) &&
         check_feed_item (store, flock, error) &&
         stead_repo_check_unique (store, taken_sql, flock->name, flock->id, error) &&
         (flock->id == 0 || check_log (store, flock, error));
}

/* --- writing ---------------------------------------------------------------- */

static gboolean
write_batch (SteadStore  *store,
             SteadFlock  *flock,
             GError     **error)
{
  static const char insert_sql[] = "INSERT INTO batch (kind, name, place_id, started_on, ended_on, note,"
                                   " feed_item_id, care_minutes_day) VALUES ('flock', ?1, ?2, ?3, ?4, ?5, ?6, ?7)";
  static const char update_sql[] = "UPDATE batch SET name = ?1, place_id = ?2, started_on = ?3, ended_on = ?4,"
                                   " note = ?5, feed_item_id = ?6, care_minutes_day = ?7"
                                   " WHERE id = ?8 AND kind = 'flock'";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, flock->id == 0 ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  stead_repo_bind_tidy (stmt, 1, flock->name);
  stead_stmt_bind_id (stmt, 2, flock->place_id);
  stead_stmt_bind_day (stmt, 3, flock->housed_on);
  stead_stmt_bind_day (stmt, 4, flock->ended_on);
  stead_repo_bind_tidy (stmt, 5, flock->note);
  stead_stmt_bind_id (stmt, 6, flock->feed_item_id);
  sqlite3_bind_double (stmt, 7, flock->care_minutes_day);
  if (flock->id != 0)
    sqlite3_bind_int64 (stmt, 8, flock->id);
  return stead_store_run (store, stmt, error);
}

static void
bind_count (SteadStmt *stmt,
            int        at,
            int        count)
{
  if (count == STEAD_COUNT_NONE)
    sqlite3_bind_null (stmt, at);
  else
    sqlite3_bind_int (stmt, at, count);
}

static void
bind_plan (SteadStmt        *stmt,
           const SteadFlock *flock)
{
  stead_repo_bind_tidy (stmt, 2, flock->strain);
  stead_stmt_bind_day (stmt, 3, flock->hatched_on);
  sqlite3_bind_int64 (stmt, 4, flock->birds);
  sqlite3_bind_int64 (stmt, 5, flock->birds_cost_cents);
  sqlite3_bind_int (stmt, 6, flock->birds_are_gift != FALSE);
  sqlite3_bind_int64 (stmt, 7, flock->salvage_cents);
  sqlite3_bind_double (stmt, 8, flock->eggs_expected);
  sqlite3_bind_int (stmt, 9, flock->bedding_days);
  sqlite3_bind_double (stmt, 10, flock->curve.level_frac);
  sqlite3_bind_double (stmt, 11, flock->curve.decline_week);
  sqlite3_bind_double (stmt, 12, flock->curve.steepness_week);
  sqlite3_bind_double (stmt, 13, flock->curve.half_week);
  sqlite3_bind_double (stmt, 14, flock->curve.onset_age_weeks);
  stead_stmt_bind_text (stmt, 15, species_words[flock->species]);
  sqlite3_bind_int (stmt, 16, flock->reared != FALSE);
  stead_stmt_bind_day (stmt, 17, flock->lay_began_on);
  bind_count (stmt, 18, flock->nests);
  stead_stmt_bind_real (stmt, 19, flock->roost_m);
  stead_stmt_bind_real (stmt, 20, flock->run_m2);
  stead_stmt_bind_real (stmt, 21, flock->light_hours);
}

static gboolean
write_plan (SteadStore        *store,
            const SteadFlock  *flock,
            gboolean           is_new,
            GError           **error)
{
  static const char insert_sql[] =
    "INSERT INTO flock (batch_id, strain, hatched_on, birds, birds_cost_cents, birds_are_gift, salvage_cents,"
    " eggs_expected, bedding_days, level_frac, decline_week, steepness_week, half_week, onset_age_weeks,"
    " species, reared, lay_began_on, nests, roost_m, run_m2, light_hours)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18, ?19, ?20, ?21)";
  static const char update_sql[] =
    "UPDATE flock SET strain = ?2, hatched_on = ?3, birds = ?4, birds_cost_cents = ?5, birds_are_gift = ?6,"
    " salvage_cents = ?7, eggs_expected = ?8, bedding_days = ?9, level_frac = ?10, decline_week = ?11,"
    " steepness_week = ?12, half_week = ?13, onset_age_weeks = ?14, species = ?15, reared = ?16,"
    " lay_began_on = ?17, nests = ?18, roost_m = ?19, run_m2 = ?20, light_hours = ?21 WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, is_new ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, flock->id);
  bind_plan (stmt, flock);
  return stead_store_run (store, stmt, error);
}

static gboolean
insert_flock (SteadStore  *store,
              SteadFlock  *flock,
              GError     **error)
{
  SteadGivenIds *ids;

  if (!write_batch (store, flock, error))
    return FALSE;
  ids = stead_given_ids_new (&flock->id);
  flock->id = stead_store_last_id (store);
  return stead_given_ids_end (ids, write_plan (store, flock, TRUE, error));
}

/* Another feed: the whole log's feed moves to the lots of the other item. */
static gboolean
update_flock (SteadStore        *store,
              const SteadFlock  *flock,
              GError           **error)
{
  g_autoptr(SteadFlock) before = stead_flock_repo_get (store, flock->id, error);

  if (before == NULL ||
      !write_batch (store, (SteadFlock *) flock, error) ||
      !write_plan (store, flock, FALSE, error))
    return FALSE;
  return before->feed_item_id == flock->feed_item_id ||
         (stead_ledger_settle (store, before->feed_item_id, before->housed_on, error) &&
          stead_ledger_settle (store, flock->feed_item_id, flock->housed_on, error));
}

/**
 * stead_flock_repo_save:
 *
 * An id of 0 inserts and fills in the id.
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_flock_repo_save (SteadStore  *store,
                       SteadFlock  *flock,
                       GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && flock != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  if (!flock_check (store, flock, error))
    return FALSE;
  return flock->id == 0 ? insert_flock (store, flock, error) : update_flock (store, flock, error);
}

gboolean
stead_flock_repo_delete (SteadStore  *store,
                         gint64       id,
                         GError     **error)
{
  static const char products_sql[] = "SELECT count (*) FROM product WHERE batch_id = ?1";
  static const char lots_sql[] = "SELECT count (*) FROM lot WHERE batch_id = ?1";
  g_autoptr(SteadFlock) flock = NULL;
  gint64 products, lots;

  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  flock = stead_flock_repo_get (store, id, error);
  if (flock == NULL ||
      (products = stead_repo_count_id (store, products_sql, id, error)) < 0 ||
      (lots = stead_repo_count_id (store, lots_sql, id, error)) < 0)
    return FALSE;
  if (products > 0)
    return stead_repo_refuse (error, ngettext ("“%s” gives the eggs of %d product. Choose another flock there first.",
                                               "“%s” gives the eggs of %d products. Choose another flock there first.",
                                               (gulong) products), flock->name, (int) products);
  if (lots > 0)
    return stead_repo_refuse (error, _("“%s” made lots that are in the store room. It cannot be deleted."), flock->name);
  return stead_batch_check_unused (store, id, error) &&
         stead_batch_remove (store, id, error) &&
         stead_ledger_settle (store, flock->feed_item_id, flock->housed_on, error);
}
