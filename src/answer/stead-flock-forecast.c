/* stead-flock-forecast.c - what a flock will lay, learned from its log.
 *
 * Nothing of it is kept in the file: the same log gives the same forecast.
 */
#include "config.h"

#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The sentence speaks of at most so many weeks, as long as the likely number of eggs
 * stays within this share of the first week's. */
#define EXPECT_WEEKS 8
#define EXPECT_CHANGE 0.15

/* Below so many dozens a week, eggs are counted. */
#define FEW_DOZENS 3

/* The weeks with today taken out, whose eggs may not all be in. */
static GArray *
weeks_to_learn (SteadStore              *store,
                const SteadFlockAnswer  *self,
                SteadDay                 today,
                GError                 **error)
{
  g_autoptr(GArray) weeks = g_array_copy (self->weeks);
  g_autoptr(GArray) cut = NULL;
  SteadDay first;

  if (weeks->len == 0)
    return g_steal_pointer (&weeks);
  first = g_array_index (weeks, SteadLayWeek, weeks->len - 1).first_day;
  if (first + 6 < today)
    return g_steal_pointer (&weeks);
  g_array_set_size (weeks, weeks->len - 1);
  if (first >= today)
    return g_steal_pointer (&weeks);
  cut = stead_flock_repo_weeks (store, self->flock->id, first, today - 1, error);
  if (cut == NULL)
    return NULL;
  g_array_append_vals (weeks, cut->data, cut->len);
  return g_steal_pointer (&weeks);
}

/* A log that cannot be fitted leaves the plan, and says so. */
static gboolean
learn (SteadFlockAnswer *self,
       const GArray     *weeks)
{
  const SteadLayCurve *plan = &self->flock->curve;
  g_autoptr(GError) why = NULL;

  if (stead_lay_fit ((const SteadLayWeek *) (gconstpointer) weeks->data, weeks->len, plan, &self->fit, NULL, &why))
    return TRUE;
  self->fit_note = g_strdup (why->message);
  return stead_lay_fit (NULL, 0, plan, &self->fit, NULL, NULL);
}

/* How many weeks can be spoken of in one breath, and the band that holds theirs. */
static void
sum_up (SteadFlockAnswer *self)
{
  const SteadLayAhead *ahead = (const SteadLayAhead *) (gpointer) self->ahead->data;

  if (self->ahead->len == 0 || ahead[0].eggs.high < 1
      || self->age_weeks + 1 < self->flock->curve.onset_age_weeks)
    return;
  self->expect_eggs = ahead[0].eggs;
  self->expect_weeks = 1;
  for (guint i = 1; i < MIN (self->ahead->len, EXPECT_WEEKS); i++)
    {
      if (fabs (ahead[i].eggs.likely / ahead[0].eggs.likely - 1) > EXPECT_CHANGE)
        return;
      self->expect_eggs.low = MIN (self->expect_eggs.low, ahead[i].eggs.low);
      self->expect_eggs.high = MAX (self->expect_eggs.high, ahead[i].eggs.high);
      self->expect_weeks = i + 1;
    }
}

static gboolean
look_ahead (SteadFlockAnswer *self)
{
  double middle = self->age_weeks + 0.5;
  gsize n = MIN (stead_lay_fit_weeks_left (&self->fit, middle), STEAD_LAY_LAST_WEEK + 1);   /* chicks: all but the last */

  if (n == 0)
    return FALSE;
  g_array_set_size (self->ahead, (guint) n);
  if (stead_lay_fit_ahead (&self->fit, (double) self->alive, middle, n, STEAD_BAND_LEVEL,
                           (SteadLayAhead *) (gpointer) self->ahead->data, NULL, NULL))
    return TRUE;
  g_array_set_size (self->ahead, 0);
  return FALSE;
}

/* The band of the rate for the chart: from today to the end of the drawn curve. */
static void
draw_ahead (SteadFlockAnswer *self)
{
  double last = g_array_index (self->curve_age, double, self->curve_age->len - 1);

  for (double age = self->age_weeks; age < last; age += 1)
    g_array_append_val (self->ahead_age, age);
  g_array_append_val (self->ahead_age, last);
  g_array_set_size (self->ahead_frac, self->ahead_age->len);
  if (stead_lay_fit_bands (&self->fit, (const double *) (gpointer) self->ahead_age->data, self->ahead_age->len,
                           7 * (double) self->alive, STEAD_BAND_LEVEL,
                           (SteadBand *) (gpointer) self->ahead_frac->data, NULL))
    return;
  g_array_set_size (self->ahead_age, 0);
  g_array_set_size (self->ahead_frac, 0);
}

/* The learned curve takes the place of the expected one. */
static void
redraw_curve (SteadFlockAnswer *self)
{
  for (guint i = 0; i < self->curve_age->len; i++)
    g_array_index (self->curve_frac, double, i)
      = stead_lay_curve_frac (&self->fit.curve, g_array_index (self->curve_age, double, i));
}

gboolean
stead_flock_forecast (SteadStore        *store,
                      SteadFlockAnswer  *self,
                      SteadDay           today,
                      GError           **error)
{
  g_autoptr(GArray) weeks = NULL;

  self->ahead = g_array_new (FALSE, TRUE, sizeof (SteadLayAhead));
  self->ahead_age = g_array_new (FALSE, TRUE, sizeof (double));
  self->ahead_frac = g_array_new (FALSE, TRUE, sizeof (SteadBand));
  if (self->flock->ended_on != STEAD_DAY_NONE || self->alive < 1)
    return TRUE;
  weeks = weeks_to_learn (store, self, today, error);
  if (weeks == NULL)
    return FALSE;
  if (!learn (self, weeks))
    return TRUE;
  self->is_learned = self->fit.learned[STEAD_LAY_LEVEL];
  redraw_curve (self);
  self->has_forecast = look_ahead (self);
  if (!self->has_forecast)
    return TRUE;
  draw_ahead (self);
  sum_up (self);
  self->next_dozens = g_array_index (self->ahead, SteadLayAhead, 0).eggs.likely / 12;
  return TRUE;
}

gboolean
stead_flock_answer_until (const SteadFlockAnswer *self,
                          SteadDay                last,
                          SteadBand              *out)
{
  double end;
  gsize n;

  g_return_val_if_fail (self != NULL && out != NULL, FALSE);

  /* The last day is over when the birds are a day older. */
  end = stead_age_weeks (self->flock->hatched_on, last + 1);
  if (!self->has_forecast || !(end - self->age_weeks >= 0.5))
    return FALSE;
  n = (gsize) lround (end - self->age_weeks);
  if (n > self->ahead->len)
    return FALSE;
  return stead_lay_fit_ahead (&self->fit, (double) self->alive, self->age_weeks + 0.5, n, STEAD_BAND_LEVEL,
                              NULL, out, NULL);
}

char *
stead_flock_eggs_range (const SteadBand *eggs)
{
  gboolean few = eggs->high < 12 * FEW_DOZENS;
  double unit = few ? 1 : 12;
  gint64 low = (gint64) rint (eggs->low / unit), high = (gint64) rint (eggs->high / unit);
  g_autofree char *from = stead_number_format ((double) low, 0);
  g_autofree char *to = stead_number_format ((double) high, 0);
  gulong n = stead_words_plural (high);

  if (few && low == high)
    /* Translators: how many eggs to expect. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "about %s egg", "about %s eggs", n), to);
  if (few)
    /* Translators: the least and the most eggs to expect: "12 to 18 eggs". */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s to %s egg", "%s to %s eggs", n), from, to);
  if (low == high)
    /* Translators: how many dozens of eggs to expect. */
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "about %s dozen", "about %s dozen", n), to);
  /* Translators: the least and the most dozens of eggs to expect: "12 to 14 dozen". */
  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s to %s dozen", "%s to %s dozen", n), from, to);
}

char *
stead_flock_expect_sentence (const SteadFlockAnswer *self,
                             SteadDay                today)
{
  g_autofree char *range = NULL, *day = NULL;

  if (!self->has_forecast && self->flock->ended_on == STEAD_DAY_NONE && self->alive > 0
      && self->age_weeks > self->flock->curve.onset_age_weeks)
    return g_strdup_printf (_("Nothing is forecast: laying curves hold for %d weeks of lay."), STEAD_LAY_LAST_WEEK);
  if (self->expect_weeks == 0)
    return NULL;
  range = stead_flock_eggs_range (&self->expect_eggs);
  if (self->expect_weeks == 1)
    /* Translators: "12 to 14 dozen" or "12 to 18 eggs". */
    return g_strdup_printf (_("Expect <b>%s</b> in the next seven days."), range);
  day = stead_day_format (today + 7 * (SteadDay) self->expect_weeks, STEAD_DAY_STYLE_SHORT);
  if (self->is_learned)
    /* Translators: "12 to 14 dozen" or "12 to 18 eggs", then a day. */
    return g_strdup_printf (_("Expect <b>%s</b> a week until %s."), range, day);
  /* Translators: "12 to 14 dozen" or "12 to 18 eggs", then a day. */
  return g_strdup_printf (_("Expect <b>%s</b> a week until %s, by the usual curve: "
                            "the log is too short to learn from."), range, day);
}
