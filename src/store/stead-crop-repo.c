/* stead-crop-repo.c - crops: a batch, how it is grown, and what is expected of it. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "core/stead-crop-kind.h"
#include "store/stead-batch-private.h"
#include "store/stead-crop-repo.h"

static const char * const system_words[] = { "soil", "hydroponic", "aquaponic", NULL };
static const char * const method_words[] = { "average", "substitute", "ceiling", NULL };

#define PLANTS_MAX 10000000

/**
 * stead_crop_new:
 *
 * Returns: (transfer full): tomatoes in soil, no days, no name
 */
SteadCrop *
stead_crop_new (void)
{
  SteadCrop *crop = g_new0 (SteadCrop, 1);
  const SteadCropDefaults *usual = stead_crop_defaults ("tomato");

  crop->batch.kind = STEAD_BATCH_CROP;
  crop->batch.started_on = crop->batch.ended_on = STEAD_DAY_NONE;
  crop->crop = g_strdup (usual->id);
  crop->system = STEAD_GROW_SOIL;
  crop->sown_on = crop->set_out_on = crop->first_ripe_on = STEAD_DAY_NONE;
  crop->area_m2 = NAN;
  crop->base_c = usual->base_c;
  crop->upper_c = usual->upper_c;
  crop->method = STEAD_CROP_AVERAGE;
  crop->ripe_need = usual->ripe_need;
  crop->yield_kg = usual->yield_kg;
  crop->pick_weeks = usual->pick_weeks;
  return crop;
}

void
stead_crop_free (SteadCrop *crop)
{
  if (crop == NULL)
    return;
  stead_batch_clear (&crop->batch);
  g_free (crop->crop);
  g_free (crop->variety);
  g_free (crop);
}

/* --- reading ---------------------------------------------------------------- */

#define CROP_SELECT \
  "SELECT " BATCH_COLUMNS ", c.crop, c.variety, c.system, c.sown_on, c.set_out_on, c.first_ripe_on, c.plants," \
  " c.area_m2, c.cost_cents, c.is_gift, c.base_c, c.upper_c, c.method, c.ripe_need, c.yield_kg, c.pick_weeks," \
  " c.climate_id FROM batch b JOIN crop c ON c.batch_id = b.id"

static gpointer
crop_from_row (SteadStmt *stmt)
{
  SteadCrop *crop = g_new0 (SteadCrop, 1);
  int at = BATCH_N_COLUMNS;

  stead_batch_read_row (stmt, &crop->batch);
  crop->crop = stead_stmt_text (stmt, at++);
  crop->variety = stead_stmt_text (stmt, at++);
  crop->system = (SteadGrowSystem) stead_repo_word (stmt, at++, system_words);
  crop->sown_on = stead_stmt_day (stmt, at++);
  crop->set_out_on = stead_stmt_day (stmt, at++);
  crop->first_ripe_on = stead_stmt_day (stmt, at++);
  crop->plants = sqlite3_column_int64 (stmt, at++);
  crop->area_m2 = stead_stmt_real (stmt, at++);
  crop->cost_cents = sqlite3_column_int64 (stmt, at++);
  crop->is_gift = sqlite3_column_int (stmt, at++) != 0;
  crop->base_c = sqlite3_column_double (stmt, at++);
  crop->upper_c = stead_stmt_real (stmt, at++);
  crop->method = (SteadCropMethod) stead_repo_word (stmt, at++, method_words);
  crop->ripe_need = sqlite3_column_double (stmt, at++);
  crop->yield_kg = sqlite3_column_double (stmt, at++);
  crop->pick_weeks = sqlite3_column_double (stmt, at++);
  crop->climate_id = sqlite3_column_int64 (stmt, at++);
  return crop;
}

/* Returns: (transfer full) (element-type SteadCrop): under way first, then by name */
GPtrArray *
stead_crop_repo_list (SteadStore  *store,
                      gboolean     ended,
                      GError     **error)
{
  static const char sql[] = CROP_SELECT " WHERE ?1 OR b.ended_on IS NULL"
                                        " ORDER BY b.ended_on IS NOT NULL, b.name, b.id";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_rows_of (store, sql, ended != FALSE, crop_from_row, (GDestroyNotify) stead_crop_free,
                             error);
}

SteadCrop *
stead_crop_repo_get (SteadStore  *store,
                     gint64       id,
                     GError     **error)
{
  static const char sql[] = CROP_SELECT " WHERE b.id = ?1";

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  return stead_repo_row_of (store, sql, id, crop_from_row, error);
}

/* --- checking --------------------------------------------------------------- */

static gboolean
check_crop_days (SteadStore       *store,
                 const SteadCrop  *crop,
                 GError          **error)
{
  SteadDay today = stead_store_get_today (store);
  SteadDay set_out = crop->set_out_on;
  SteadDay ripe = crop->first_ripe_on;

  if (crop->sown_on == STEAD_DAY_NONE && set_out == STEAD_DAY_NONE)
    return stead_repo_refuse (error, _("Enter the day the crop was sown, or the day the plants were set out."));
  if (crop->sown_on > today)
    return stead_repo_refuse (error, _("The day the crop was sown is still to come. Enter a day up to today."));
  if (set_out != STEAD_DAY_NONE && crop->sown_on != STEAD_DAY_NONE && set_out < crop->sown_on)
    return stead_repo_refuse (error, _("Plants cannot be set out before they were sown. Check the two days."));
  if (ripe == STEAD_DAY_NONE)
    return TRUE;
  if (ripe > today)
    return stead_repo_refuse (error, _("The day of the first ripe fruit is still to come. Enter it when it is here."));
  if (set_out != STEAD_DAY_NONE && ripe < set_out)
    return stead_repo_refuse (error, _("The first fruit cannot ripen before the plants were set out. "
                                       "Check the two days."));
  return TRUE;
}

static gboolean
check_plants (const SteadCrop  *crop,
              GError          **error)
{
  if (!(crop->plants >= 1 && crop->plants <= PLANTS_MAX))
    return stead_repo_refuse (error, _("A crop has at least 1 plant and at most 10,000,000. Check the number."));
  if (!isnan (crop->area_m2) && !(crop->area_m2 > 0 && crop->area_m2 <= STEAD_AMOUNT_MAX))
    return stead_repo_refuse (error, _("The area of the bed must be more than 0. Leave it empty if nobody measured it."));
  return stead_repo_check_cents (_("Cost of seed and plants"), crop->cost_cents, error);
}

static gboolean
check_expected (const SteadCrop  *crop,
                GError          **error)
{
  if (!(crop->base_c >= -5 && crop->base_c <= 30))
    return stead_repo_refuse (error, _("The base temperature must lie between −5 and 30 °C (23 and 86 °F)."));
  if (!isnan (crop->upper_c) && !(crop->upper_c > crop->base_c && crop->upper_c <= 60))
    return stead_repo_refuse (error, _("The upper temperature must lie above the base and at most at 60 °C (140 °F)."));
  if (isnan (crop->upper_c) && crop->method != STEAD_CROP_AVERAGE)
    return stead_repo_refuse (error, _("This way of counting needs an upper temperature. Enter one, or choose "
                                       "the plain average."));
  if (!(crop->ripe_need > 0 && crop->ripe_need <= 10000))
    return stead_repo_refuse (error, _("The degree days to the first ripe fruit must be more than 0 and at most "
                                       "10,000 in °C, or 18,000 in °F."));
  if (!(crop->yield_kg > 0 && crop->yield_kg <= 1000))
    return stead_repo_refuse (error, _("The harvest expected of one plant must be more than 0 and at most "
                                       "1,000 kg (2,200 lb)."));
  if (!(crop->pick_weeks > 0 && crop->pick_weeks <= 520))
    return stead_repo_refuse (error, _("The weeks of picking must be more than 0 and at most 520."));
  return TRUE;
}

/* The log cannot have lost more plants than there were. */
static gboolean
check_losses (SteadStore       *store,
              const SteadCrop  *crop,
              GError          **error)
{
  static const char sql[] = "SELECT coalesce (sum (deaths), 0) FROM batch_entry"
                            " WHERE batch_id = ?1 AND deaths + culled > 0";
  gint64 lost;

  if (crop->batch.id == 0)
    return TRUE;
  lost = stead_repo_count_id (store, sql, crop->batch.id, error);
  if (lost < 0)
    return FALSE;
  if (lost > crop->plants)
    return stead_repo_refuse (error, ngettext ("The log has already lost %d plant. The crop cannot have fewer.",
                                               "The log has already lost %d plants. The crop cannot have fewer.",
                                               (gulong) lost), (int) lost);
  return TRUE;
}

static gboolean
crop_check (SteadStore       *store,
            const SteadCrop  *crop,
            GError          **error)
{
  return stead_batch_check (store, &crop->batch, error) &&
         stead_repo_check_name (crop->crop, error) &&
         stead_repo_check_note (crop->variety, error) &&
         check_crop_days (store, crop, error) &&
         check_plants (crop, error) &&
         check_expected (crop, error) &&
         check_losses (store, crop, error);
}

/* --- writing ---------------------------------------------------------------- */

static void
bind_crop (SteadStmt       *stmt,
           const SteadCrop *crop)
{
  stead_repo_bind_tidy (stmt, 2, crop->crop);
  stead_repo_bind_tidy (stmt, 3, crop->variety);
  stead_stmt_bind_text (stmt, 4, system_words[crop->system]);
  stead_stmt_bind_day (stmt, 5, crop->sown_on);
  stead_stmt_bind_day (stmt, 6, crop->set_out_on);
  stead_stmt_bind_day (stmt, 7, crop->first_ripe_on);
  sqlite3_bind_int64 (stmt, 8, crop->plants);
  stead_stmt_bind_real (stmt, 9, crop->area_m2);
  sqlite3_bind_int64 (stmt, 10, crop->cost_cents);
  sqlite3_bind_int (stmt, 11, crop->is_gift != FALSE);
  sqlite3_bind_double (stmt, 12, crop->base_c);
  stead_stmt_bind_real (stmt, 13, crop->upper_c);
  stead_stmt_bind_text (stmt, 14, method_words[crop->method]);
  sqlite3_bind_double (stmt, 15, crop->ripe_need);
  sqlite3_bind_double (stmt, 16, crop->yield_kg);
  sqlite3_bind_double (stmt, 17, crop->pick_weeks);
  stead_stmt_bind_id (stmt, 18, crop->climate_id);
}

static gboolean
write_crop (SteadStore       *store,
            const SteadCrop  *crop,
            gboolean          is_new,
            GError          **error)
{
  static const char insert_sql[] =
    "INSERT INTO crop (batch_id, crop, variety, system, sown_on, set_out_on, first_ripe_on, plants, area_m2,"
    " cost_cents, is_gift, base_c, upper_c, method, ripe_need, yield_kg, pick_weeks, climate_id)"
    " VALUES (?1, ?2, ?3, ?4, ?5, ?6, ?7, ?8, ?9, ?10, ?11, ?12, ?13, ?14, ?15, ?16, ?17, ?18)";
  static const char update_sql[] =
    "UPDATE crop SET crop = ?2, variety = ?3, system = ?4, sown_on = ?5, set_out_on = ?6, first_ripe_on = ?7,"
    " plants = ?8, area_m2 = ?9, cost_cents = ?10, is_gift = ?11, base_c = ?12, upper_c = ?13, method = ?14,"
    " ripe_need = ?15, yield_kg = ?16, pick_weeks = ?17, climate_id = ?18 WHERE batch_id = ?1";
  g_autoptr(SteadStmt) stmt = stead_store_prepare (store, is_new ? insert_sql : update_sql, error);

  if (stmt == NULL)
    return FALSE;
  sqlite3_bind_int64 (stmt, 1, crop->batch.id);
  bind_crop (stmt, crop);
  return stead_store_run (store, stmt, error);
}

/**
 * stead_crop_repo_save:
 *
 * An id of 0 inserts and fills in the id.
 *
 * Returns: %TRUE, or %FALSE with a message for the person
 */
gboolean
stead_crop_repo_save (SteadStore  *store,
                      SteadCrop   *crop,
                      GError     **error)
{
  SteadGivenIds *ids;
  gboolean is_new;

  g_return_val_if_fail (STEAD_IS_STORE (store) && crop != NULL, FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  g_return_val_if_fail (crop->batch.kind == STEAD_BATCH_CROP, FALSE);
  is_new = crop->batch.id == 0;
  ids = stead_given_ids_new (&crop->batch.id);
  return stead_given_ids_end (ids, crop_check (store, crop, error) &&
                                   stead_batch_write (store, &crop->batch, error) &&
                                   write_crop (store, crop, is_new, error));
}

gboolean
stead_crop_repo_delete (SteadStore  *store,
                        gint64       id,
                        GError     **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store), FALSE);
  g_return_val_if_fail (stead_store_in_action (store), FALSE);
  return stead_batch_check_unused (store, id, error) && stead_batch_remove (store, id, error);
}
