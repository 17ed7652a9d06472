/* stead-results-answer.c - "What did we earn together, and what is each one's share?" */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-results-private.h"

#include "answer/stead-batch-answer.h"
#include "answer/stead-cost-answer.h"
#include "answer/stead-hours-answer.h"
#include "core/stead-budget.h"
#include "core/stead-money.h"
#include "store/stead-store-error.h"

static void
share_free (gpointer data)
{
  g_free (((SteadResultShare *) data)->name);
  g_free (data);
}

static void
line_free (gpointer data)
{
  SteadResultsLine *line = data;

  g_free (line->batch);
  g_free (line->what);
  g_free (line->planned);
  g_free (line->actual);
  g_free (line->end);
  g_free (line);
}

static void
unit_free (gpointer data)
{
  SteadResultUnit *unit = data;

  g_free (unit->product);
  g_free (unit->text);
  g_free (unit);
}

void
stead_results_answer_free (SteadResultsAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->rule, stead_share_rule_free);
  g_clear_pointer (&self->shares, g_ptr_array_unref);
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_clear_pointer (&self->units, g_ptr_array_unref);
  g_clear_pointer (&self->whys, g_ptr_array_unref);
  g_free (self->enterprise_name);
  g_free (self->sentence);
  g_free (self->how);
  g_free (self);
}

const char *
stead_words_share_basis (SteadShareBasis basis)
{
  switch (basis)
    {
    case STEAD_SHARE_ROLE:  return C_("share", "by role");
    case STEAD_SHARE_FIXED: return C_("share", "by fixed parts");
    case STEAD_SHARE_HOURS:
    default:                return C_("share", "by hours worked");
    }
}

/* --- shares ----------------------------------------------------------------- */

static double
weight_in (const SteadShareRule *rule,
           gint64                person_id,
           double                missing)
{
  for (guint i = 0; i < rule->parts->len; i++)
    {
      const SteadSharePart *part = &g_array_index (rule->parts, SteadSharePart, i);

      if (part->person_id == person_id)
        return part->weight;
    }
  return missing;
}

static SteadResultShare *
add_share (SteadResultsAnswer *self,
           gint64              person_id,
           const char         *name,
           gint64              minutes)
{
  SteadResultShare *share = g_new0 (SteadResultShare, 1);

  share->person_id = person_id;
  share->name = g_strdup (name);
  share->minutes = minutes;
  share->weight = self->rule->basis == STEAD_SHARE_HOURS
                  ? (double) minutes * weight_in (self->rule, person_id, 1) : weight_in (self->rule, person_id, 0);
  g_ptr_array_add (self->shares, share);
  return share;
}

static gint64
minutes_of (const GPtrArray *minutes,
            gint64           person_id)
{
  for (guint i = 0; i < minutes->len; i++)
    if (((const SteadPersonMinutes *) minutes->pdata[i])->person_id == person_id)
      return ((const SteadPersonMinutes *) minutes->pdata[i])->minutes;
  return 0;
}

/* Students who worked, or whom the agreement names; parts sum to the net, always. */
static gboolean
read_shares (SteadStore          *store,
             SteadResultsAnswer  *self,
             GError             **error)
{
  g_autoptr(GPtrArray) people = stead_person_repo_list (store, error);
  g_autoptr(GPtrArray) minutes = people != NULL ? stead_class_repo_minutes (store, self->from, self->to,
                                                                          self->enterprise_id, error) : NULL;
  g_autofree double *weights = NULL;
  g_autofree gint64 *cents = NULL;
  double sum = 0;

  if (minutes == NULL)
    return FALSE;
  for (guint i = 0; i < minutes->len; i++)
    {
      const SteadPersonMinutes *one = minutes->pdata[i];

      self->minutes += one->minutes;
      self->unpaid_min += one->unpaid_min;
    }
  for (guint i = 0; i < people->len; i++)
    {
      const SteadPerson *person = people->pdata[i];
      gint64 worked = minutes_of (minutes, person->id);

      if (person->role == STEAD_PERSON_STUDENT && (worked > 0 || weight_in (self->rule, person->id, 0) > 0))
        sum += add_share (self, person->id, person->name, worked)->weight;
    }
  if (!(sum > 0))
    return TRUE;
  weights = g_new (double, self->shares->len);
  cents = g_new (gint64, self->shares->len);
  for (guint i = 0; i < self->shares->len; i++)
    weights[i] = ((const SteadResultShare *) self->shares->pdata[i])->weight;
  stead_money_split (self->net_cents, weights, self->shares->len, cents);
  for (guint i = 0; i < self->shares->len; i++)
    ((SteadResultShare *) self->shares->pdata[i])->cents = cents[i];
  return TRUE;
}

/* --- what was made ---------------------------------------------------------- */

/* What cannot be answered yet has nothing to tell; a file that cannot be read ends it all.
 * Returns: whether to go on; takes @problem over */
static gboolean
let_pass (GError  *problem,
          GError **error)
{
  if (problem != NULL && problem->domain == STEAD_STORE_ERROR && problem->code != STEAD_STORE_ERROR_NOT_FOUND)
    {
      g_propagate_error (error, problem);
      return FALSE;
    }
  g_clear_error (&problem);
  return TRUE;
}

static gboolean
add_lines (SteadStore          *store,
           SteadResultsAnswer  *self,
           gint64               batch_id,
           GError             **error)
{
  GError *problem = NULL;
  g_autoptr(SteadBatchAnswer) batch = stead_batch_answer_new (store, batch_id, &problem);

  for (guint i = 0; batch != NULL && batch->has_plan && i < batch->rows->len; i++)
    {
      const SteadBatchRow *row = batch->rows->pdata[i];
      SteadResultsLine *line;

      if (row->planned == NULL || row->actual == NULL)
        continue;
      line = g_new0 (SteadResultsLine, 1);
      line->batch = g_strdup (batch->money.batch->name);
      line->what = g_strdup (row->what);
      line->planned = g_strdup (row->planned);
      line->actual = g_strdup (row->actual);
      line->end = g_strdup (row->end);
      g_ptr_array_add (self->lines, line);
    }
  return let_pass (problem, error);
}

static gboolean
add_unit (SteadStore          *store,
          SteadResultsAnswer  *self,
          const SteadProduct  *product,
          GError             **error)
{
  GError *problem = NULL;
  g_autoptr(SteadCostAnswer) cost = stead_cost_answer_new (store, product->id, STEAD_PERIOD_SCHOOL_YEAR, &problem);
  g_autofree char *cents = NULL;
  SteadResultUnit *unit;

  if (cost == NULL)
    return let_pass (problem, error);
  unit = g_new0 (SteadResultUnit, 1);
  unit->product = g_strdup (product->name);
  unit->unit_cents = cost->sheet.unit_cents;
  cents = stead_money_format (unit->unit_cents, self->farm->currency);
  /* Translators: "$2.41" and "a dozen". */
  unit->text = g_strdup_printf (C_("live figure", "%s %s"), cents, stead_words_per_unit (product->pack));
  g_ptr_array_add (self->units, unit);
  return TRUE;
}

static gboolean
read_made (SteadStore          *store,
           SteadResultsAnswer  *self,
           GError             **error)
{
  g_autoptr(GArray) batches = stead_class_repo_batches (store, self->from, self->to, self->enterprise_id, error);
  g_autoptr(GPtrArray) products = batches != NULL ? stead_product_repo_list (store, FALSE, error) : NULL;

  if (products == NULL)
    return FALSE;
  for (guint i = 0; i < batches->len; i++)
    if (!add_lines (store, self, g_array_index (batches, gint64, i), error))
      return FALSE;
  for (guint i = 0; self->enterprise_id == 0 && i < products->len; i++)
    if (!add_unit (store, self, products->pdata[i], error))
      return FALSE;
  return TRUE;
}

/* --- words ------------------------------------------------------------------ */

static char *
say (const SteadResultsAnswer *self)
{
  g_autofree char *sales = stead_money_format (self->sales_cents, self->farm->currency);
  g_autofree char *net = stead_money_format (ABS (self->net_cents), self->farm->currency);
  g_autofree char *hours = stead_hours_words (self->unpaid_min), *per_hour = NULL;

  if (isnan (self->per_hour_cents))
    return g_strdup_printf (self->net_cents < 0
                            /* Translators: sums of money. */
                            ? _("Sold for %1$s in this school year; <b>%2$s</b> was lost.")
                            : _("Sold for %1$s in this school year; <b>%2$s</b> was earned."), sales, net);
  per_hour = stead_money_format (stead_money_round (ABS (self->per_hour_cents)), self->farm->currency);
  return g_strdup_printf (self->net_cents < 0
                          /* Translators: sums of money, hours, and money for an hour. */
                          ? _("Sold for %1$s in this school year; <b>%2$s</b> was lost with %3$s of unpaid work, %4$s an hour.")
                          : _("Sold for %1$s in this school year; <b>%2$s</b> was earned with %3$s of unpaid work, %4$s an hour."),
                          sales, net, hours, per_hour);
}

static char *
say_how (const SteadResultsAnswer *self)
{
  g_autofree char *day = NULL;

  if (self->rule->id == 0)
    return g_strdup (_("Nothing was agreed yet, so the result is shared by hours worked. A share says what somebody took part "
                       "in; no money moves by it."));
  day = stead_day_format (self->rule->from_on, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day, "by hours worked". */
  return g_strdup_printf (_("Agreed on %1$s: shared %2$s. A share says what somebody took part in; no money moves by it."), day,
                          stead_words_share_basis (self->rule->basis));
}

SteadResultsAnswer *
stead_results_answer_new (SteadStore  *store,
                          gint64       enterprise_id,
                          GError     **error)
{
  g_autoptr(SteadResultsAnswer) self = NULL;
  g_autoptr(SteadStatementAnswer) statement = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  self = g_new0 (SteadResultsAnswer, 1);
  self->enterprise_id = enterprise_id;
  self->shares = g_ptr_array_new_with_free_func (share_free);
  self->lines = g_ptr_array_new_with_free_func (line_free);
  self->units = g_ptr_array_new_with_free_func (unit_free);
  self->whys = stead_whys_new ();
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  self->to = stead_store_get_today (store);
  self->from = stead_school_year_start (self->to, self->farm->school_year_month, self->farm->school_year_mday);
  statement = stead_statement_answer_new (store, self->from, self->to, enterprise_id, error);
  self->rule = statement != NULL ? stead_share_repo_get (store, enterprise_id, self->to, error) : NULL;
  if (self->rule == NULL)
    return NULL;
  self->enterprise_name = g_strdup (statement->enterprise_name);
  self->sales_cents = statement->sales;
  self->net_cents = statement->net;
  self->worth_change_cents = statement->worth_end - statement->worth_before;
  if (!read_shares (store, self, error) || !read_made (store, self, error))
    return NULL;
  self->per_hour_cents = self->unpaid_min > 0
                         ? stead_return_per_hour_cents ((double) self->net_cents, (double) self->unpaid_min / 60) : NAN;
  self->sentence = say (self);
  self->how = say_how (self);
  stead_results_put_whys (self, statement);
  return g_steal_pointer (&self);
}
