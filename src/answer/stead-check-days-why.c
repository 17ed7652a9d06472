/* stead-check-days-why.c - the counts of a month of checks, added up before one's eyes. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

typedef enum { READINGS, OPEN, FAILED, UNSIGNED } Count;

static gint64
count_of (const SteadCheckDay *day,
          Count                count)
{
  gint64 n = 0;

  switch (count)
    {
    case READINGS: return day->n_readings;
    case OPEN:     return day->n_open;
    case FAILED:   return day->n_failed;
    case UNSIGNED:
    default:
      for (guint i = 0; i < day->lists->len; i++)
        n += !((const SteadCheckDayList *) day->lists->pdata[i])->is_signed;
      return n;
    }
}

/* "Mar 3: 12 + Mar 4: 6 = 18", of the days that have any. */
static SteadWhy *
count_why (const SteadCheckDaysAnswer *self,
           Count                       count,
           const char                 *title,
           const char                 *formula,
           const char                 *source)
{
  GString *sum = g_string_new (NULL);
  gint64 all = 0;

  for (guint i = 0; i < self->days->len; i++)
    {
      const SteadCheckDay *day = self->days->pdata[i];
      gint64 n = count_of (day, count);
      g_autofree char *date = stead_day_format (day->day, STEAD_DAY_STYLE_SHORT);
      g_autofree char *term = NULL;

      if (n == 0)
        continue;
      /* Translators: a day, and how many there were. */
      term = g_strdup_printf (C_("count of a day", "%1$s: %2$d"), date, (int) n);
      stead_sum_add_term (sum, term);
      all += n;
    }
  stead_sum_end_count (sum, all);
  return stead_why_new (g_strdup (title), formula, g_string_free (sum, FALSE), source);
}

GPtrArray *
stead_check_days_answer_whys (const SteadCheckDaysAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();
  const char *none = _("Common practice, no source.");

  g_return_val_if_fail (self != NULL, whys);
  if (self->n_readings > 0)
    g_ptr_array_add (whys, count_why (
      self, READINGS, _("Readings that were taken"),
      _("All readings of the lists of each day added up. A wrong one that was corrected does not count; the one in its place does."),
      none));
  if (self->n_open > 0)
    g_ptr_array_add (whys, count_why (
      self, OPEN, _("Lines that were never read"),
      _("Of each day, the lines of its lists that nobody read and nobody left out with a reason."), none));
  if (self->n_failed > 0)
    g_ptr_array_add (whys, count_why (
      self, FAILED, _("Readings that did not meet their limit"),
      _("Of each day, the readings beyond the limit that was in force on that day, whether something was done or not."),
      _("The source of each limit stands beside it on its list.")));
  if (self->n_unsigned > 0)
    g_ptr_array_add (whys, count_why (
      self, UNSIGNED, _("Lists that are not signed"), _("Of each day, the lists that nobody has signed yet."), none));
  return whys;
}
