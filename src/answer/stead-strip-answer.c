/* stead-strip-answer.c - one live figure for each place of the strip. */
#include "config.h"

#include "answer/stead-answer-error.h"
#include "answer/stead-check-days-answer.h"
#include "answer/stead-class-answer.h"
#include "answer/stead-build-answer.h"
#include "answer/stead-cost-answer.h"
#include "answer/stead-due-answer.h"
#include "answer/stead-season-answer.h"
#include "answer/stead-stock-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"
#include "store/stead-kitchen-repo.h"

#include <glib/gi18n-lib.h>

void
stead_strip_answer_free (SteadStripAnswer *self)
{
  if (self == NULL)
    return;
  g_free (self->today);
  g_free (self->raise);
  g_free (self->make);
  g_free (self->check);
  g_free (self->price);
  g_free (self->sell);
  g_free (self->fund);
  g_free (self->keep);
  g_free (self->show);
  g_free (self->today_brief);
  g_free (self->make_brief);
  g_free (self->check_brief);
  g_free (self->price_brief);
  g_free (self->sell_brief);
  g_free (self->fund_brief);
  g_free (self->keep_brief);
  g_free (self->show_brief);
  g_free (self);
}

static char *
due_text (const SteadDueAnswer *due)
{
  g_autofree char *tasks = NULL;
  g_autofree char *warnings = NULL;

  if (due->n_tasks == 0 && due->n_warnings == 0)
    return g_strdup (due->dues->len > 0 ? C_("live figure", "all done") : C_("live figure", "nothing due"));
  /* Translators: short, in the strip: things to do today. */
  tasks = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d due", "%d due", (gulong) due->n_tasks), due->n_tasks);
  warnings = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d warning", "%d warnings", (gulong) due->n_warnings),
                              due->n_warnings);
  if (due->n_warnings == 0)
    return g_steal_pointer (&tasks);
  if (due->n_tasks == 0)
    return g_steal_pointer (&warnings);
  /* Translators: "3 due" and "1 warning". */
  return g_strdup_printf (C_("live figure", "%s, %s"), tasks, warnings);
}

static void
read_today (const SteadDueAnswer *due,
            SteadStripAnswer     *self)
{
  self->today = due_text (due);
  /* That there are warnings is said by the symbol beside it. */
  if (due->n_tasks > 0 && due->n_warnings > 0)
    self->today_brief = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d due", "%d due", (gulong) due->n_tasks),
                                         due->n_tasks);
  self->today_warns = due->n_warnings > 0;
}

static gboolean
read_raise (SteadStore        *store,
            SteadStripAnswer  *self,
            GError           **error)
{
  g_autoptr(GPtrArray) batches = stead_batch_repo_list (store, FALSE, error);
  guint flocks = 0, raised = 0;

  if (batches == NULL)
    return FALSE;
  for (guint i = 0; i < batches->len; i++)
    {
      const SteadBatch *batch = batches->pdata[i];

      flocks += batch->kind == STEAD_BATCH_FLOCK;
      /* What is cooked is no business of Raise. */
      raised += batch->kind != STEAD_BATCH_KITCHEN;
    }
  if (raised == 0)
    self->raise = g_strdup (C_("live figure", "no flock yet"));
  else if (flocks == raised)
    self->raise = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u flock", "%u flocks", flocks), flocks);
  else
    self->raise = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u batch", "%u batches", raised), raised);
  return TRUE;
}

/* Kitchen batches under way come first in the list, then planned ones by day. */
static gboolean
read_make (SteadStore        *store,
           SteadStripAnswer  *self,
           GError           **error)
{
  g_autoptr(GPtrArray) kitchens = stead_kitchen_repo_list (store, FALSE, error);
  g_autoptr(GPtrArray) recipes = kitchens != NULL ? stead_recipe_repo_list (store, FALSE, error) : NULL;
  const SteadKitchen *next = kitchens != NULL && kitchens->len > 0 ? kitchens->pdata[0] : NULL;
  g_autofree char *day = NULL;

  if (recipes == NULL)
    return FALSE;
  if (next == NULL)
    self->make = g_strdup (recipes->len > 0 ? C_("live figure", "no day planned") : C_("live figure", "no recipe yet"));
  else if (next->batch.started_on <= stead_store_get_today (store))
    self->make = g_strdup (C_("live figure", "in the kitchen"));
  if (self->make != NULL)
    return TRUE;
  day = stead_day_format (next->batch.started_on, STEAD_DAY_STYLE_SHORT);
  /* Translators: the next day on which something is cooked: "next: Mar 3". */
  self->make = g_strdup_printf (C_("live figure", "next: %s"), day);
  self->make_brief = g_steal_pointer (&day);
  return TRUE;
}

/* What lists lack, and coolers that Today warns of. */
static char *
check_text (const SteadCheckTodayAnswer *check,
            int                          n_coolers)
{
  g_autofree char *coolers = NULL;

  if (n_coolers == 0)
    return g_strdup (check->figure != NULL ? check->figure : C_("live figure", "nothing open"));
  coolers = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d cooler warm", "%d coolers warm", (gulong) n_coolers),
                             n_coolers);
  if (check->figure == NULL)
    return g_steal_pointer (&coolers);
  /* Translators: "2 out, 5 missing" and "1 cooler warm". */
  return g_strdup_printf (C_("live figure of checks", "%1$s, %2$s"), check->figure, coolers);
}

/* For a very narrow post: what is out counts more than a cooler, and that more than what is missing. */
static char *
check_brief (const SteadCheckTodayAnswer *check,
             int                          n_coolers)
{
  if (check->n_out > 0 && (check->n_missing > 0 || n_coolers > 0))
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d out", "%d out", (gulong) check->n_out), (int) check->n_out);
  if (n_coolers > 0)
    /* Translators: coolers that are too warm, or soon will be: for a very narrow post. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d warm", "%d warm", (gulong) n_coolers), n_coolers);
  /* Translators: no checklist is open: for a very narrow post. */
  return check->figure == NULL ? g_strdup (C_("live figure", "0 open")) : NULL;
}

/* A farm that checks nothing has no list either. */
static gboolean
read_check (SteadStore            *store,
            const SteadDueAnswer  *due,
            SteadStripAnswer      *self,
            GError               **error)
{
  g_autoptr(SteadCheckTodayAnswer) check = stead_check_today_answer_new (store, error);

  if (check == NULL)
    return FALSE;
  self->check = check_text (check, due->n_coolers);
  self->check_brief = check_brief (check, due->n_coolers);
  self->check_warns = check->n_out > 0 || check->n_held > 0 || due->n_coolers > 0;
  return TRUE;
}

/* The share of the first build that is under way. */
static gboolean
read_fund (SteadStore        *store,
           SteadStripAnswer  *self,
           GError           **error)
{
  g_autoptr(GPtrArray) builds = stead_build_repo_list (store, error);
  const SteadBuild *first = builds != NULL && builds->len > 0 ? builds->pdata[0] : NULL;
  g_autoptr(SteadBuildAnswer) answer = NULL;
  g_autofree char *share = NULL;

  if (builds == NULL)
    return FALSE;
  if (first == NULL)
    {
      self->fund = g_strdup (C_("live figure", "no build yet"));
      return TRUE;
    }
  answer = stead_build_answer_new (store, first->id, error);
  if (answer == NULL)
    return FALSE;
  share = stead_words_percent (answer->share >= 0 ? answer->share : 0, 0);
  /* Translators: short, in the strip: share of a build that is funded. */
  self->fund = g_strdup_printf (C_("live figure", "%s funded"), share);
  self->fund_brief = g_steal_pointer (&share);
  return TRUE;
}

/* @product_id, or the first product; 0: there is none. */
static gboolean
find_product (SteadStore  *store,
              gint64      *product_id,
              GError     **error)
{
  g_autoptr(GPtrArray) products = stead_product_repo_list (store, FALSE, error);

  if (products == NULL)
    return FALSE;
  for (guint i = 0; i < products->len; i++)
    if (((const SteadProduct *) products->pdata[i])->id == *product_id)
      return TRUE;
  *product_id = products->len > 0 ? ((const SteadProduct *) products->pdata[0])->id : 0;
  return TRUE;
}

static gboolean
read_price (SteadStore        *store,
            gint64             product_id,
            SteadStripAnswer  *self,
            GError           **error)
{
  g_autoptr(SteadCostAnswer) cost = NULL;
  g_autoptr(GError) local_error = NULL;
  g_autofree char *unit = NULL;

  if (!find_product (store, &product_id, error))
    return FALSE;
  if (product_id == 0)
    {
      self->price = g_strdup (C_("live figure", "no product yet"));
      return TRUE;
    }
  cost = stead_cost_answer_new (store, product_id, STEAD_PERIOD_12_WEEKS, &local_error);
  if (cost == NULL && g_error_matches (local_error, STEAD_ANSWER_ERROR, STEAD_ANSWER_ERROR_MISSING))
    {
      self->price = g_strdup (C_("live figure", "no cost yet"));
      return TRUE;
    }
  if (cost == NULL)
    {
      g_propagate_error (error, g_steal_pointer (&local_error));
      return FALSE;
    }
  unit = stead_money_format (cost->sheet.unit_cents, cost->farm->currency);
  /* Translators: "$2.41" and "a dozen". */
  self->price = g_strdup_printf (C_("live figure", "%s %s"), unit, stead_words_per_unit (cost->product->pack));
  self->price_brief = g_steal_pointer (&unit);
  return TRUE;
}

static gboolean
read_keep (SteadStore        *store,
           SteadStripAnswer  *self,
           GError           **error)
{
  g_autoptr(SteadFarm) farm = stead_farm_repo_get (store, error);
  g_autoptr(SteadStockAnswer) stock = NULL;
  g_autofree char *value = NULL;

  if (farm == NULL)
    return FALSE;
  stock = stead_stock_answer_new (store, error);
  if (stock == NULL)
    return FALSE;
  value = stead_money_format (stock->value_cents, farm->currency);
  /* Translators: what the things in the store room cost. */
  self->keep = g_strdup_printf (C_("live figure", "%s on hand"), value);
  self->keep_brief = g_steal_pointer (&value);
  return TRUE;
}

static gboolean
read_show (SteadStore        *store,
           SteadStripAnswer  *self,
           GError           **error)
{
  g_autoptr(SteadClassAnswer) people = stead_class_answer_new (store, error);

  if (people == NULL)
    return FALSE;
  if (people->minutes >= 60)
    {
      /* Translators: short, in the strip: hours that were worked in the school year. */
      self->show = g_strdup_printf (C_("live figure", "%d h this year"), (int) (people->minutes / 60));
      /* Translators: hours, where there is little room. */
      self->show_brief = g_strdup_printf (C_("live figure", "%d h"), (int) (people->minutes / 60));
      return TRUE;
    }
  self->show = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d student", "%d students", (gulong) people->n_students),
                                people->n_students);
  return TRUE;
}

SteadStripAnswer *
stead_strip_answer_new (SteadStore            *store,
                        const SteadDueAnswer  *due,
                        gint64                 product_id,
                        GError               **error)
{
  g_autoptr(SteadStripAnswer) self = NULL;
  g_autoptr(SteadDueAnswer) found = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  if (due == NULL)
    due = found = stead_due_answer_new (store, error);
  if (due == NULL)
    return NULL;
  self = g_new0 (SteadStripAnswer, 1);
  read_today (due, self);
  if (!read_raise (store, self, error)
      || !read_make (store, self, error)
      || !read_check (store, due, self, error)
      || !read_price (store, product_id, self, error)
      || (self->sell = stead_season_figure (store, &self->sell_brief, error)) == NULL
      || !read_fund (store, self, error)
      || !read_keep (store, self, error)
      || !read_show (store, self, error))
    return NULL;
  return g_steal_pointer (&self);
}
