/* stead-build-tries.c - what helps most to pay for a build, and the path in words. */
#include "config.h"

#include "answer/stead-build-path-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

#include <gio/gio.h>
#include <glib/gi18n-lib.h>
#include <math.h>

/* How much dearer everything is sold in the try. */
#define DEARER 0.10

/* One more sale is held in a week. */
#define SOON_DAYS 7

/* --- tries ---------------------------------------------------------------------------- */

typedef struct
{
  SteadTryKind  kind;
  GArray       *events;
  double        goal_cents;
} Trial;

static void
make_dearer (GArray *events)
{
  for (guint i = 0; i < events->len; i++)
    {
      SteadOutlookEvent *event = &g_array_index (events, SteadOutlookEvent, i);

      if (event->moves_together)
        {
          event->mean_cents *= 1 + DEARER;
          event->sd_cents *= 1 + DEARER;
        }
    }
}

const SteadBuildGood *
stead_build_path_best_good (const SteadBuildPath *self)
{
  const SteadBuildGood *best = NULL;
  double most = 0;

  for (guint i = 0; i < self->goods->len; i++)
    {
      const SteadBuildGood *good = self->goods->pdata[i];
      double sum = 0;

      for (guint k = 0; k < self->mores->len; k++)
        if (g_array_index (self->mores, SteadBuildMore, k).product_id == good->product_id)
          sum += g_array_index (self->mores, SteadBuildMore, k).cents;
      if (sum > most)
        {
          most = sum;
          best = good;
        }
    }
  return best;
}

/* One more of the product at each sale that has it.  Whether there is any. */
static gboolean
sell_one_more (const SteadBuildPath *self,
               GArray               *events)
{
  const SteadBuildGood *good = stead_build_path_best_good (self);

  for (guint i = 0; good != NULL && i < self->mores->len; i++)
    {
      const SteadBuildMore *more = &g_array_index (self->mores, SteadBuildMore, i);

      if (more->product_id == good->product_id)
        g_array_index (events, SteadOutlookEvent, more->event).mean_cents += more->cents;
    }
  return good != NULL;
}

static void
make_sure (GArray *events)
{
  for (guint i = 0; i < events->len; i++)
    g_array_index (events, SteadOutlookEvent, i).chance = 1;
}

/* Whether there is anything to try. */
static gboolean
set_up (const SteadBuildPath *self,
        Trial                *trial)
{
  SteadOutlookEvent more = { self->today + SOON_DAYS, self->sale_mean, self->sale_sd, 1, TRUE, 0x7fffffffu };

  switch (trial->kind)
    {
    case STEAD_TRY_SALE:
      if (!(self->sale_mean > 0) || trial->events->len >= STEAD_OUTLOOK_MOST_EVENTS)
        return FALSE;
      g_array_append_val (trial->events, more);
      return TRUE;
    case STEAD_TRY_PRODUCT:
      return sell_one_more (self, trial->events);
    case STEAD_TRY_PRICE:
      make_dearer (trial->events);
      return self->sale_mean > 0;
    case STEAD_TRY_GIVEN:
      trial->goal_cents -= (double) self->dearest_cents;
      return self->dearest_cents > 0 && trial->goal_cents >= 0;
    case STEAD_TRY_PLEDGES:
      make_sure (trial->events);
      return self->pledges_cents > 0;
    case STEAD_TRY_LEAN:
    default:
      trial->goal_cents -= (double) self->spare_cents;
      return self->spare_cents > 0;
    }
}

static char *
product_text (const SteadBuildPath *self)
{
  const SteadBuildGood *good = stead_build_path_best_good (self);
  g_autofree char *one = stead_words_units (good->pack, 1);

  /* Translators: "1 dozen", and a product. */
  return g_strdup_printf (_("%s more of “%s” sold at each planned sale"), one, good->name);
}

static char *
try_text (const SteadBuildPath *self,
          SteadTryKind          kind)
{
  switch (kind)
    {
    case STEAD_TRY_SALE: return g_strdup_printf (_("One more “%s” next week"), self->sale_name);
    case STEAD_TRY_PRODUCT: return product_text (self);
    case STEAD_TRY_PRICE: return g_strdup (_("Every sale day clears a tenth more"));
    case STEAD_TRY_GIVEN: return g_strdup_printf (_("Somebody gives “%s”"), self->dearest);
    case STEAD_TRY_PLEDGES: return g_strdup (_("All pledges come"));
    case STEAD_TRY_LEAN:
    default: return g_strdup (_("Nothing was forgotten: no money for surprises is needed"));
    }
}

static char *
try_effect (const SteadBuildPath *self,
            const SteadBuildTry  *try)
{
  g_autofree char *day = NULL;
  g_autofree char *chance = NULL;

  if (try->days > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d day earlier", "%d days earlier", (gulong) try->days), try->days);
  if (try->day != STEAD_DAY_NONE && self->days[1] == STEAD_DAY_NONE)
    {
      day = stead_day_format (try->day, STEAD_DAY_STYLE_MEDIUM);
      return g_strdup_printf (_("reached by %s"), day);
    }
  chance = stead_words_chance (try->chance);
  /* Translators: chance that the goal is reached. */
  return g_strdup_printf (_("no earlier; chance %s"), chance);
}

static gboolean
run_try (SteadBuildPath  *self,
         SteadTryKind     kind,
         gsize            n_paths,
         GCancellable    *cancellable,
         GError         **error)
{
  g_autoptr(GArray) events = g_array_copy (self->events);
  Trial trial = { kind, events, self->goal_cents };
  g_autoptr(SteadOutlookRun) run = NULL;
  SteadBuildTry *try;

  if (!set_up (self, &trial))
    return TRUE;
  run = stead_build_path_simulate (events, self->start_cents, trial.goal_cents, self->together, n_paths, cancellable, error);
  if (run == NULL)
    return FALSE;
  try = g_new0 (SteadBuildTry, 1);
  try->kind = kind;
  try->text = try_text (self, kind);
  try->day = stead_build_path_day (run, self->today, stead_build_sureties[1]);
  try->chance = stead_build_path_chance (run, self->goal_on != STEAD_DAY_NONE ? self->goal_on : G_MAXINT32);
  if (try->day != STEAD_DAY_NONE && self->days[1] != STEAD_DAY_NONE)
    try->days = MAX (self->days[1] - try->day, 0);
  try->effect = try_effect (self, try);
  g_ptr_array_add (self->tries, try);
  return TRUE;
}

/* The earliest day first; those that never get there by their chance. */
static int
compare_tries (gconstpointer a,
               gconstpointer b)
{
  const SteadBuildTry *first = *(const SteadBuildTry * const *) a;
  const SteadBuildTry *second = *(const SteadBuildTry * const *) b;
  SteadDay day_a = first->day == STEAD_DAY_NONE ? G_MAXINT32 : first->day;
  SteadDay day_b = second->day == STEAD_DAY_NONE ? G_MAXINT32 : second->day;

  if (day_a != day_b)
    return day_a < day_b ? -1 : 1;
  if (first->chance != second->chance)
    return first->chance > second->chance ? -1 : 1;
  return (int) first->kind - (int) second->kind;
}

gboolean
stead_build_path_try (SteadBuildPath  *self,
                      gsize            n_paths,
                      GCancellable    *cancellable,
                      GError         **error)
{
  for (int kind = STEAD_TRY_SALE; kind <= STEAD_TRY_LEAN; kind++)
    if (!run_try (self, (SteadTryKind) kind, n_paths, cancellable, error))
      return FALSE;
  g_ptr_array_sort (self->tries, compare_tries);
  return TRUE;
}

/* --- words ------------------------------------------------------------------------------ */

static char *
dates_sentence (const SteadBuildPath *self)
{
  g_autofree char *half = self->days[0] == STEAD_DAY_NONE ? NULL : stead_day_format (self->days[0], STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *likely = self->days[1] == STEAD_DAY_NONE ? NULL : stead_day_format (self->days[1], STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *sure = self->days[2] == STEAD_DAY_NONE ? NULL : stead_day_format (self->days[2], STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *chance = stead_words_chance (self->chance_end);

  if (self->goal_cents <= 0)
    return g_strdup (_("Enter prices first: then it can be told when it is paid for."));
  if (self->days[2] == self->today)
    return g_strdup (_("<b>It is paid for.</b>"));
  if (self->events->len == 0)
    return g_strdup (_("Nothing is planned to come in. Plan sale days, ask for pledges, or enter sums that are expected."));
  if (half == NULL)
    return g_strdup_printf (_("What is planned does not reach it: the chance is %s. More has to be planned."), chance);
  if (likely == NULL)
    return g_strdup_printf (_("By <b>%s</b> it is paid for as likely as not. What is planned makes it no surer than %s."), half, chance);
  if (sure == NULL)
    return g_strdup_printf (_("By <b>%s</b> it is paid for as likely as not, and by <b>%s</b> with 80 of 100. What is planned makes it no surer than %s."),
                            half, likely, chance);
  return g_strdup_printf (_("By <b>%s</b> it is paid for as likely as not, by <b>%s</b> with 80 of 100, by <b>%s</b> with 95 of 100."),
                          half, likely, sure);
}

static char *
goal_sentence (const SteadBuildPath *self)
{
  g_autofree char *day = NULL;
  g_autofree char *chance = NULL;

  if (isnan (self->chance_goal) || self->days[2] == self->today || self->goal_cents <= 0)
    return NULL;
  day = stead_day_format (self->goal_on, STEAD_DAY_STYLE_MEDIUM);
  chance = stead_words_chance (self->chance_goal);
  return g_strdup_printf (_("The chance to have it by the wanted day, %s, is %s."), day, chance);
}

static char *
back_sentence (const SteadBuildPath *self)
{
  g_autofree char *day = NULL;
  g_autofree char *name = NULL;
  g_autofree char *each = NULL;
  gulong n = (gulong) MAX (self->sales_needed, 0);

  if (self->goal_on == STEAD_DAY_NONE || self->goal_on <= self->today || !(self->sale_mean > 0) || self->goal_cents <= 0)
    return NULL;
  day = stead_day_format (self->goal_on, STEAD_DAY_STYLE_MEDIUM);
  name = g_markup_escape_text (self->sale_name, -1);
  each = stead_money_format (stead_money_round (self->sale_mean), self->currency);
  if (self->sales_needed < 0)
    return g_strdup_printf (_("Backwards from %s: no number of days like “%s” makes it 80 of 100 sure. Look for gifts, or choose a later day."),
                            day, name);
  if (self->sales_needed == 0)
    return g_strdup_printf (_("Backwards from %s: what is there and what is promised is enough without a sale."), day);
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                       "Backwards from %s: for 80 of 100 it takes <b>%lu</b> day like “%s”, which clears %s for it; planned until then: %d.",
                                       "Backwards from %s: for 80 of 100 it takes <b>%lu</b> days like “%s”, each of which clears %s for it; planned until then: %d.", n),
                          day, n, name, each, self->sales_planned);
}

static char *
next_sentence (const SteadBuildPath *self)
{
  g_autofree char *day = NULL;
  g_autofree char *needed = stead_money_format (stead_money_round (self->next_cents), self->currency);
  g_autofree char *expected = stead_money_format (stead_money_round (self->next_mean), self->currency);

  if (self->next_on == STEAD_DAY_NONE || self->goal_cents <= self->start_cents)
    return NULL;
  day = stead_day_format (self->next_on, STEAD_DAY_STYLE_MEDIUM);
  if (self->next_cents < 0.5)
    /* Translators: day of the next sale, what it is expected to clear. */
    return g_strdup_printf (_("The next sale, on %s, is expected to clear %s for it. The other days would be enough without it."),
                            day, expected);
  /* Translators: day of the next sale, what it has to clear, what it is expected to clear. */
  return g_strdup_printf (_("The next sale, on %s, has to clear <b>%s</b> for it if all else comes as expected; it is expected to clear %s."),
                          day, needed, expected);
}

static char *
more_sentence (const SteadBuildPath *self)
{
  const SteadBuildGood *good = stead_build_path_best_good (self);
  double missing = self->goal_cents - self->start_cents;
  g_autofree char *one = NULL;
  g_autofree char *cents = NULL;
  g_autofree char *all = NULL;
  g_autofree char *name = NULL;

  if (good == NULL || !(missing > 0))
    return NULL;
  one = stead_words_units (good->pack, 1);
  cents = stead_money_format (stead_money_round (good->more_cents), self->currency);
  all = stead_words_units (good->pack, ceil (missing / good->more_cents));
  name = g_markup_escape_text (good->name, -1);
  /* Translators: "1 dozen", a product, money, "823 dozen". */
  return g_strdup_printf (_("%1$s of “%2$s” sold beyond the plan clears <b>%3$s</b> for it; all that is missing would take %4$s."),
                          one, name, cents, all);
}

static char *
goods_sentence (const SteadBuildPath *self)
{
  gulong n = (gulong) MAX (self->sales_needed, 1);
  g_autoptr(GString) list = g_string_new (NULL);

  if (self->goods->len == 0 || self->sales_needed < 0)
    return NULL;
  for (guint i = 0; i < self->goods->len; i++)
    {
      const SteadBuildGood *good = self->goods->pdata[i];
      g_autofree char *amount = stead_words_units (good->pack, round (good->sold * (double) n));

      if (list->len > 0)
        g_string_append (list, "; ");
      /* Translators: a product, and how many of it are sold. */
      g_string_append_printf (list, C_("product and amount", "%s: %s"), good->name, amount);
    }
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%lu day like “%s” is expected to sell: %s.",
                                       "%lu days like “%s” are expected to sell together: %s.", n),
                          n, self->sale_name, list->str);
}

void
stead_build_path_say_dates (SteadBuildPath *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *dates = dates_sentence (self);
  g_autofree char *goal = goal_sentence (self);

  stead_words_add (text, dates);
  stead_words_add (text, goal);
  self->sentence = stead_words_end (text);
}

void
stead_build_path_say (SteadBuildPath *self)
{
  stead_build_path_say_dates (self);
  self->back_sentence = back_sentence (self);
  self->next_sentence = next_sentence (self);
  self->more_sentence = more_sentence (self);
  self->goods_sentence = goods_sentence (self);
  stead_build_back_say (self);
}
