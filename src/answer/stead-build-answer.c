/* stead-build-answer.c - what a build takes, what it costs, and who pays. */
#include "config.h"

#include "answer/stead-build-private.h"
#include "core/stead-dig.h"
#include "store/stead-cash-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static void
bound_free (gpointer data)
{
  SteadBuildBound *bound = data;

  g_free (bound->name);
  g_free (bound->purpose);
  g_free (bound);
}

void
stead_build_answer_free (SteadBuildAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->takeoff, stead_build_takeoff_free);
  g_clear_pointer (&self->rows, g_ptr_array_unref);
  g_clear_pointer (&self->rooms, g_ptr_array_unref);
  g_clear_pointer (&self->works, g_ptr_array_unref);
  g_clear_pointer (&self->phases, g_ptr_array_unref);
  g_clear_pointer (&self->pledges, g_ptr_array_unref);
  g_clear_pointer (&self->incomes, g_ptr_array_unref);
  g_clear_pointer (&self->upkeeps, g_ptr_array_unref);
  g_clear_pointer (&self->bounds, g_ptr_array_unref);
  g_clear_pointer (&self->buys, g_ptr_array_unref);
  g_clear_pointer (&self->cautions, g_ptr_array_unref);
  g_clear_pointer (&self->build, stead_build_free);
  g_free (self->trouble);
  g_free (self->sentence);
  g_free (self->money_sentence);
  g_free (self->bought_sentence);
  g_free (self->yearly_sentence);
  g_free (self);
}

static const SteadFund *
find_fund (const GPtrArray *funds,
           gint64           id)
{
  for (guint i = 0; i < funds->len; i++)
    if (((const SteadFund *) funds->pdata[i])->id == id)
      return funds->pdata[i];
  return NULL;
}

static SteadBuildBound *
bound_new (const SteadBuildGrant *grant,
           const GPtrArray       *funds)
{
  const SteadFund *fund = find_fund (funds, grant->fund_id);
  SteadBuildBound *bound = g_new0 (SteadBuildBound, 1);

  bound->fund_id = grant->fund_id;
  bound->name = g_strdup (fund != NULL ? fund->name : "");
  bound->purpose = g_strdup (fund != NULL ? fund->purpose : NULL);
  bound->part = grant->part;
  bound->use_by = grant->use_by;
  return bound;
}

/* Money bound to a part pays for no more than that part still costs, all such money together. */
static gboolean
read_bounds (SteadStore        *store,
             SteadBuildAnswer  *self,
             GError           **error)
{
  g_autoptr(GArray) grants = stead_build_grant_repo_list (store, self->build->id, error);
  g_autoptr(GPtrArray) funds = grants == NULL ? NULL : stead_fund_repo_list (store, TRUE, error);
  gint64 room[STEAD_N_BUILD_PARTS];

  if (funds == NULL)
    return FALSE;
  for (int i = 0; i < STEAD_N_BUILD_PARTS; i++)
    room[i] = self->part_cents[i];
  self->bounds = g_ptr_array_new_with_free_func (bound_free);
  for (guint i = 0; i < grants->len; i++)
    {
      const SteadBuildGrant *grant = &g_array_index (grants, SteadBuildGrant, i);
      SteadBuildBound *bound = bound_new (grant, funds);

      g_ptr_array_add (self->bounds, bound);
      if (!stead_cash_repo_balance (store, 0, grant->fund_id, self->day, &bound->cents, error))
        return FALSE;
      /* After its last day a grant pays for nothing. */
      bound->usable_cents = grant->use_by != STEAD_DAY_NONE && grant->use_by < self->day ? 0 : MAX (bound->cents, 0);
      if (grant->part >= 0)
        {
          bound->usable_cents = MIN (bound->usable_cents, room[grant->part]);
          room[grant->part] -= bound->usable_cents;
        }
      self->bound_cents += bound->usable_cents;
    }
  return TRUE;
}

static gboolean
read_money (SteadStore        *store,
            SteadBuildAnswer  *self,
            GError           **error)
{
  gint64 have;

  if (self->build->fund_id != 0 &&
      !stead_cash_repo_balance (store, 0, self->build->fund_id, self->day, &self->free_cents, error))
    return FALSE;
  if (!read_bounds (store, self, error))
    return FALSE;
  for (guint i = 0; i < self->pledges->len; i++)
    {
      const SteadBuildPledge *pledge = self->pledges->pdata[i];

      if (pledge->cash_line_id != 0 || pledge->withdrawn_on != STEAD_DAY_NONE)
        continue;
      self->pledged_cents += pledge->cents;
      self->expected_cents += (gint64) llround ((double) pledge->cents * pledge->chance);
    }
  have = self->spent_cents + MAX (self->free_cents, 0) + self->bound_cents;
  self->have_cents = MIN (have, self->goal_cents);
  self->over_cents = have - self->have_cents;
  self->share = self->goal_cents > 0 ? (double) self->have_cents / (double) self->goal_cents : NAN;
  return TRUE;
}

static double
upkeep_quantity (const SteadBuildAnswer *self,
                 const SteadBuildUpkeep *upkeep)
{
  return upkeep->quantity * (upkeep->per_head ? self->build->head : 1);
}

char *
stead_build_upkeep_amount (const SteadBuildAnswer *self,
                           const SteadBuildUpkeep *upkeep)
{
  double quantity = upkeep_quantity (self, upkeep);
  g_autofree char *number = stead_number_format (quantity, quantity == floor (quantity) ? 0 : 1);

  return upkeep->unit != NULL ? g_strdup_printf ("%s %s", number, upkeep->unit) : g_steal_pointer (&number);
}

gint64
stead_build_upkeep_cents (const SteadBuildAnswer *self,
                          const SteadBuildUpkeep *upkeep)
{
  SteadBillLine line = { upkeep_quantity (self, upkeep), (double) upkeep->price_cents, FALSE, FALSE };

  return stead_bill_line_cents (&line);
}

static void
read_yearly (SteadBuildAnswer *self)
{
  for (guint i = 0; i < self->upkeeps->len; i++)
    self->yearly_cents += stead_build_upkeep_cents (self, self->upkeeps->pdata[i]);
  /* What is given wears down, too; animals do not. */
  self->wear_cents = (gint64) llround ((double) (self->goal_cents + self->bill.given_cents
                                                 - self->part_cents[STEAD_BUILD_PART_ANIMALS]) / STEAD_BUILD_LIFE_YEARS);
}

static gboolean
read_lists (SteadStore        *store,
            SteadBuildAnswer  *self,
            GError           **error)
{
  gint64 id = self->build->id;

  self->phases = stead_build_phase_repo_list (store, id, error);
  self->pledges = self->phases == NULL ? NULL : stead_build_pledge_repo_list (store, id, error);
  self->incomes = self->pledges == NULL ? NULL : stead_build_income_repo_list (store, id, error);
  self->upkeeps = self->incomes == NULL ? NULL : stead_build_upkeep_repo_list (store, id, error);
  self->buys = self->upkeeps == NULL ? NULL : stead_build_buy_repo_list (store, id, error);
  return self->buys != NULL;
}

/* Takes @build. */
static SteadBuildAnswer *
answer (SteadStore  *store,
        SteadBuild  *build,
        GError     **error)
{
  g_autoptr(SteadBuildAnswer) self = g_new0 (SteadBuildAnswer, 1);
  g_autoptr(GPtrArray) lines = NULL;
  g_autoptr(GError) trouble = NULL;

  self->build = build;
  self->day = stead_store_get_today (store);
  self->call_by = STEAD_DAY_NONE;
  self->farm = stead_farm_repo_get (store, error);
  lines = self->farm == NULL ? NULL : stead_build_line_repo_list (store, build->id, error);
  if (lines == NULL || !read_lists (store, self, error))
    return NULL;
  self->takeoff = stead_build_takeoff_new (build, self->farm->units, &trouble);
  if (self->takeoff == NULL)
    self->trouble = g_strdup (trouble->message);
  if (!stead_build_make_bill (self, lines, error) || !read_money (store, self, error))
    return NULL;
  if (build->dig_on != STEAD_DAY_NONE)
    self->call_by = stead_dig_latest_call (build->dig_on, build->notice_days, NULL, 0);
  read_yearly (self);
  stead_build_make_rooms (self);
  stead_build_make_works (self);
  stead_build_say (self);
  return g_steal_pointer (&self);
}

SteadBuildAnswer *
stead_build_answer_new (SteadStore  *store,
                        gint64       build_id,
                        GError     **error)
{
  SteadBuild *build;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  build = stead_build_repo_get (store, build_id, error);
  return build == NULL ? NULL : answer (store, build, error);
}

SteadBuildAnswer *
stead_build_answer_draw (SteadStore        *store,
                         const SteadBuild  *build,
                         GError           **error)
{
  g_return_val_if_fail (STEAD_IS_STORE (store) && build != NULL, NULL);
  return answer (store, stead_build_copy (build), error);
}
