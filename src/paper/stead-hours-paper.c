/* stead-hours-paper.c - hours on paper: the sheet of a week, and one person's hours by activity.
 *
 * Nobody but the people of the hours is named; late entries and corrections are told.
 */
#include "config.h"

#include "answer/stead-hours-answer.h"
#include "answer/stead-subject.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"
#include "paper/stead-paper-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define WEEK 7

static void
add_row (SteadPages         *pages,
         SteadRowLook        look,
         const char * const *cells)
{
  stead_pages_add_row (pages, look, STEAD_PAGES_NO_KEY, cells);
}

/* "3:25"; nothing for no time at all. */
static char *
time_text (gint64 minutes)
{
  return minutes > 0 ? stead_hours_format (minutes) : NULL;
}

/* --- the week ----------------------------------------------------------------------- */

static void
add_week_row (SteadPages   *pages,
              SteadRowLook  look,
              const char   *name,
              const gint64 *days)
{
  char *cells[WEEK + 2] = { NULL };
  gint64 sum = 0;

  cells[0] = g_strdup (name);
  for (int i = 0; i < WEEK; i++)
    {
      cells[i + 1] = time_text (days[i]);
      sum += days[i];
    }
  cells[WEEK + 1] = stead_hours_format (sum);
  add_row (pages, look, (const char * const *) cells);
  for (gsize i = 0; i < G_N_ELEMENTS (cells); i++)
    g_free (cells[i]);
}

static void
add_week (SteadPages             *pages,
          const SteadHoursAnswer *answer)
{
  SteadPagesColumn columns[WEEK + 2] = { { C_("column of hours", "Who"), STEAD_ALIGN_LEFT, 1 } };
  char *heads[WEEK];
  gint64 sums[WEEK] = { 0 };

  for (int i = 0; i < WEEK; i++)
    {
      heads[i] = stead_day_format (answer->from + i, STEAD_DAY_STYLE_SHORT);
      columns[i + 1] = (SteadPagesColumn) { heads[i], STEAD_ALIGN_RIGHT, 0 };
    }
  columns[WEEK + 1] = (SteadPagesColumn) { C_("column of hours", "Sum"), STEAD_ALIGN_RIGHT, 0 };
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->people->len; i++)
    {
      const SteadHoursPerson *person = answer->people->pdata[i];

      add_week_row (pages, STEAD_ROW_PLAIN, person->name, person->day_min);
      for (int day = 0; day < WEEK; day++)
        sums[day] += person->day_min[day];
    }
  add_week_row (pages, STEAD_ROW_TOTAL, C_("column of hours", "Sum"), sums);
  for (int i = 0; i < WEEK; i++)
    g_free (heads[i]);
}

/* --- entries ------------------------------------------------------------------------- */

static void
add_entries (SteadPages             *pages,
             const SteadHoursAnswer *answer,
             gboolean                with_names)
{
  const SteadPagesColumn columns[] = {
    { C_("column of hours", "Day"), STEAD_ALIGN_LEFT, 0 },
    { with_names ? C_("column of hours", "Who") : C_("column of hours", "It belongs to"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of hours", "What was done"), STEAD_ALIGN_LEFT, 1.4 },
    { C_("column of hours", "From – until"), STEAD_ALIGN_LEFT, 0 },
    { C_("column of hours", "Time"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of hours", "State"), STEAD_ALIGN_LEFT, 1.2 },
  };

  stead_pages_add_heading (pages, _("Entries"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->spans->len; i++)
    {
      const SteadWorkSpan *span = answer->spans->pdata[i];
      g_autofree char *day = stead_day_format (span->day, STEAD_DAY_STYLE_SHORT);
      g_autofree char *from = stead_hours_clock (span->from_at), *to = stead_hours_clock (span->to_at);
      g_autofree char *clock = span->from_at != G_MININT64 ? g_strdup_printf ("%s – %s", from, to) : NULL;
      g_autofree char *time = stead_hours_format ((gint64) round (span->minutes));
      g_autofree char *state = stead_hours_state (span);

      add_row (pages, STEAD_ROW_PLAIN,
               (const char *[]) { day, with_names ? span->person_name : span->about, span->duty, clock, time, state });
    }
}

static void
add_duties (SteadPages             *pages,
            const SteadHoursAnswer *answer)
{
  const SteadPagesColumn columns[] = {
    { C_("column of hours", "What was done"), STEAD_ALIGN_LEFT, 1 },
    { C_("column of hours", "Not paid"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of hours", "Paid"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of hours", "Sum"), STEAD_ALIGN_RIGHT, 0 },
    { C_("column of hours", "In hours"), STEAD_ALIGN_RIGHT, 0 },
  };
  g_autofree char *unpaid = time_text (answer->unpaid_min), *paid = time_text (answer->paid_min);
  g_autofree char *sum = stead_hours_format (answer->unpaid_min + answer->paid_min);
  g_autofree char *quarter = stead_hours_quarter (answer->unpaid_min + answer->paid_min);

  stead_pages_add_heading (pages, _("Hours by activity"));
  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  for (guint i = 0; i < answer->duties->len; i++)
    {
      const SteadHoursDuty *duty = answer->duties->pdata[i];
      g_autofree char *its_unpaid = time_text (duty->unpaid_min), *its_paid = time_text (duty->paid_min);
      g_autofree char *its_sum = stead_hours_format (duty->unpaid_min + duty->paid_min);
      g_autofree char *its_quarter = stead_hours_quarter (duty->unpaid_min + duty->paid_min);

      add_row (pages, STEAD_ROW_PLAIN, (const char *[]) { duty->duty, its_unpaid, its_paid, its_sum, its_quarter });
    }
  add_row (pages, STEAD_ROW_TOTAL, (const char *[]) { C_("column of hours", "Sum"), unpaid, paid, sum, quarter });
  stead_pages_add_note (pages, _("Times are in hours and minutes, added to the minute. The last column shows each figure to "
                                 "the quarter hour: up to 7 minutes past it go down, 8 go up (University of Arizona payroll, "
                                 "rounding reported hours)."));
}

static void
add_value (SteadPages             *pages,
           const SteadHoursAnswer *answer)
{
  g_autofree char *rate = NULL, *value = NULL, *text = NULL;

  if (answer->value_cents == 0)
    return;
  rate = stead_money_format (answer->farm->labor_cents_hour, answer->farm->currency);
  value = stead_money_format (answer->value_cents, answer->farm->currency);
  /* Translators: sums of money. */
  text = g_strdup_printf (_("At the farm's rate of %1$s an hour the work that was not paid would have cost %2$s. This is told "
                            "beside the accounts and counts as no income."), rate, value);
  stead_pages_add_note (pages, text);
}

static void
add_signatures (SteadPages *pages)
{
  const SteadPagesColumn columns[] = { { NULL, STEAD_ALIGN_LEFT, 1 }, { NULL, STEAD_ALIGN_LEFT, 1 } };

  stead_pages_add_table (pages, columns, G_N_ELEMENTS (columns));
  add_row (pages, STEAD_ROW_PLAIN, (const char *[]) { "\n\n", NULL });
  add_row (pages, STEAD_ROW_TOTAL, (const char *[]) { _("Student, day"), _("Advisor, day") });
}

/* --- the papers ------------------------------------------------------------------------ */

static SteadPages *
begin (const SteadImprint     *imprint,
       const char             *title,
       const SteadHoursAnswer *answer)
{
  SteadPages *pages = stead_pages_new (imprint, title, NULL);

  stead_pages_add_title (pages, title);
  stead_pages_add_lead (pages, answer->sentence);
  return pages;
}

SteadPages *
stead_hours_week_paper_new (SteadStore               *store,
                            const char               *of,
                            const SteadPaperOptions  *options,
                            GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  SteadDay monday = stead_hours_week (options != NULL && options->has_days ? options->from : stead_store_get_today (store));
  g_autoptr(SteadHoursAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *day = NULL, *title = NULL;

  if (imprint == NULL || (answer = stead_hours_answer_new (store, monday, monday + WEEK - 1, 0, error)) == NULL)
    return NULL;
  day = stead_day_format (monday, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: the Monday of a week. */
  title = g_strdup_printf (_("Hours of the week of %s"), day);
  pages = begin (imprint, title, answer);
  if (answer->people->len > 0)
    {
      add_week (pages, answer);
      add_entries (pages, answer, TRUE);
    }
  add_signatures (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}

SteadPages *
stead_hours_person_paper_new (SteadStore               *store,
                              const char               *of,
                              const SteadPaperOptions  *options,
                              GError                  **error)
{
  g_autoptr(SteadImprint) imprint = stead_imprint_new (store, error);
  g_autoptr(SteadFarm) farm = imprint != NULL ? stead_farm_repo_get (store, error) : NULL;
  g_autoptr(SteadPerson) person = NULL;
  g_autoptr(SteadHoursAnswer) answer = NULL;
  g_autoptr(SteadPages) pages = NULL;
  g_autofree char *title = NULL;
  SteadDay today = stead_store_get_today (store), from;

  if (farm == NULL || (person = stead_subject_person (store, of, error)) == NULL)
    return NULL;
  from = stead_school_year_start (today, farm->school_year_month, farm->school_year_mday);
  if (options != NULL && options->has_days)
    answer = stead_hours_answer_new (store, options->from, options->to, person->id, error);
  else
    answer = stead_hours_answer_new (store, from, today, person->id, error);
  if (answer == NULL)
    return NULL;
  /* Translators: a person's name. */
  title = g_strdup_printf (_("Hours of %s"), person->name);
  pages = begin (imprint, title, answer);
  if (answer->spans->len > 0)
    {
      add_duties (pages, answer);
      add_value (pages, answer);
      add_entries (pages, answer, FALSE);
    }
  add_signatures (pages);
  stead_pages_settle (pages);
  return g_steal_pointer (&pages);
}
