/* stead-hours-why.c - hours of a week, and of a class, added up before one's eyes. */
#include "config.h"

#include "answer/stead-class-answer.h"
#include "answer/stead-hours-answer.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-hours.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define NO_SOURCE N_("Common practice, no source.")
#define REST N_("Short rests are worked time: 29 CFR 785.18. That minutes are added, not rounded hours: common practice, no source.")

/* A rule of this program, as core/stead-hours.h says. */
#define LATE N_("How many days make an entry late is a rule of this program, no source.")

void
stead_hours_why_add (GString    *sum,
                     const char *name,
                     gint64      minutes)
{
  g_autofree char *time = stead_hours_words (minutes);

  stead_sum_add_named (sum, name, time);
}

/* @sum: (transfer full) */
char *
stead_hours_why_end (GString *sum,
                     gint64   minutes)
{
  g_autofree char *time = stead_hours_words (minutes);

  stead_sum_end (sum, time);
  return g_string_free (sum, FALSE);
}

/* "A. Alder: 2 not checked, 1 late", of those who have any. */
static void
add_marks (GString    *worked,
           GString    *unchecked,
           GString    *late,
           const char *name,
           int         n_unchecked,
           int         n_late)
{
  if (n_unchecked == 0 && n_late == 0)
    return;
  if (worked->len > 0)
    g_string_append_c (worked, '\n');
  /* Translators: a name, and two numbers of entries. */
  g_string_append_printf (worked, _("%1$s: not checked %2$d, late %3$d"), name, n_unchecked, n_late);
  stead_sum_add_count (unchecked, n_unchecked);
  stead_sum_add_count (late, n_late);
}

/* @worked, @unchecked, @late: (transfer full) */
static SteadWhy *
marks_why (GString *worked,
           GString *unchecked,
           GString *late,
           int      n_unchecked,
           int      n_late)
{
  g_autofree char *formula = NULL;

  stead_sum_end_count (unchecked, n_unchecked);
  stead_sum_end_count (late, n_late);
  /* Translators: two sums: "2 + 1 = 3". */
  g_string_append_printf (worked, _("\nNot checked: %1$s\nLate: %2$s"), unchecked->str, late->str);
  g_string_free (unchecked, TRUE);
  g_string_free (late, TRUE);
  formula = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                          "Not checked: no advisor has checked the entry yet. Late: entered more than %d day "
                                          "after the work.",
                                          "Not checked: no advisor has checked the entry yet. Late: entered more than %d days "
                                          "after the work.", STEAD_HOURS_LATE_DAYS), STEAD_HOURS_LATE_DAYS);
  return stead_why_new (g_strdup (_("Not checked, and late")), formula, g_string_free (worked, FALSE), _(LATE));
}

SteadWhy *
stead_hours_spans_why (const GPtrArray *spans,
                       const char      *title)
{
  GString *sum = g_string_new (NULL);
  gint64 minutes = 0;

  g_return_val_if_fail (spans != NULL && title != NULL, NULL);
  for (guint i = 0; i < spans->len; i++)
    {
      const SteadWorkSpan *span = spans->pdata[i];

      stead_hours_why_add (sum, span->person_name, (gint64) round (span->minutes));
      minutes += (gint64) round (span->minutes);
    }
  return stead_why_new (g_strdup (title),
                        _("Of each entry: end − beginning − break, all entries added up. Minutes are added; only their sum becomes "
                          "hours."),
                        stead_hours_why_end (sum, minutes), _(REST));
}

/* --- hours of a week ------------------------------------------------------------------------ */

/* One person's: entry by entry. */
static char *
entries_worked (const SteadHoursAnswer *self)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->spans->len; i++)
    {
      const SteadWorkSpan *span = self->spans->pdata[i];
      g_autofree char *day = stead_day_format (span->day, STEAD_DAY_STYLE_SHORT);

      stead_hours_why_add (sum, day, (gint64) round (span->minutes));
    }
  return stead_hours_why_end (sum, self->paid_min + self->unpaid_min);
}

static char *
people_worked (const SteadHoursAnswer *self)
{
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->people->len; i++)
    {
      const SteadHoursPerson *person = self->people->pdata[i];

      stead_hours_why_add (sum, person->name, person->minutes);
    }
  return stead_hours_why_end (sum, self->paid_min + self->unpaid_min);
}

static SteadWhy *
hours_why (const SteadHoursAnswer *self)
{
  gboolean one = self->people->len == 1;

  return stead_why_new (g_strdup (_("Hours in all")),
                        one ? _("All entries of the week added up: end − beginning − break of each. Minutes are added; only their sum "
                                "becomes hours.")
                            : _("Each one’s entries of the week added up, and then all people’s. Of one entry: end − beginning − "
                                "break. Minutes are added; only their sum becomes hours."),
                        one ? entries_worked (self) : people_worked (self), _(REST));
}

static SteadWhy *
paid_why (const SteadHoursAnswer *self)
{
  GString *sum = g_string_new (NULL);

  stead_hours_why_add (sum, C_("hours", "paid"), self->paid_min);
  stead_hours_why_add (sum, C_("hours", "not paid"), self->unpaid_min);
  return stead_why_new (g_strdup (_("Paid, and not paid")),
                        _("Hours that were paid are a cost of the farm; hours that were not paid are told beside it and never as "
                          "money earned."),
                        stead_hours_why_end (sum, self->paid_min + self->unpaid_min), _(NO_SOURCE));
}

GPtrArray *
stead_hours_answer_whys (const SteadHoursAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked, *unchecked, *late;

  g_return_val_if_fail (self != NULL, whys);
  if (self->spans->len == 0)
    return whys;
  g_ptr_array_add (whys, hours_why (self));
  if (self->paid_min > 0)
    g_ptr_array_add (whys, paid_why (self));
  if (self->n_unchecked + self->n_late == 0)
    return whys;
  worked = g_string_new (NULL);
  unchecked = g_string_new (NULL);
  late = g_string_new (NULL);
  for (guint i = 0; i < self->people->len; i++)
    {
      const SteadHoursPerson *person = self->people->pdata[i];

      add_marks (worked, unchecked, late, person->name, person->n_unchecked, person->n_late);
    }
  g_ptr_array_add (whys, marks_why (worked, unchecked, late, self->n_unchecked, self->n_late));
  return whys;
}

/* --- hours of the class ------------------------------------------------------------------------ */

static SteadWhy *
class_hours_why (const SteadClassAnswer *self)
{
  g_autofree char *from = stead_day_format (self->from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *to = stead_day_format (self->to, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *formula = NULL;
  GString *sum = g_string_new (NULL);

  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadClassRow *row = self->rows->pdata[i];

      if (row->sums->minutes > 0)
        stead_hours_why_add (sum, row->person->name, row->sums->minutes);
    }
  /* Translators: two days. */
  formula = g_strdup_printf (_("Each one’s entries from %1$s to %2$s added up, and then those of all who are still here. Minutes "
                               "are added; only their sum becomes hours."), from, to);
  return stead_why_new (g_strdup (_("Hours of this school year")), formula, stead_hours_why_end (sum, self->minutes), _(REST));
}

/* Worked for the one who shows most. */
static SteadWhy *
skills_why (const SteadClassAnswer *self)
{
  const SteadClassRow *most = NULL;

  for (guint i = 0; i < self->rows->len; i++)
    {
      const SteadClassRow *row = self->rows->pdata[i];

      if (row->person->role == STEAD_PERSON_STUDENT && (most == NULL || row->sums->n_skills > most->sums->n_skills))
        most = row;
    }
  if (most == NULL || self->n_skills == 0)
    return NULL;
  return stead_why_new (
    g_strdup (_("Skills")),
    _("Skills of the school’s list that one did alone, or showed to others, at any time ÷ all skills of the list."),
    /* Translators: a name, skills shown, skills of the list. */
    g_strdup_printf (_("%1$s: %2$d of %3$d"), most->person->name, most->sums->n_skills, (int) self->n_skills),
    _(NO_SOURCE));
}

GPtrArray *
stead_class_answer_whys (const SteadClassAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();
  GString *worked, *unchecked, *late;
  SteadWhy *skills;

  g_return_val_if_fail (self != NULL, whys);
  if (self->minutes > 0)
    g_ptr_array_add (whys, class_hours_why (self));
  if (self->n_unchecked + self->n_late > 0)
    {
      worked = g_string_new (NULL);
      unchecked = g_string_new (NULL);
      late = g_string_new (NULL);
      for (guint i = 0; i < self->rows->len; i++)
        {
          const SteadClassRow *row = self->rows->pdata[i];

          add_marks (worked, unchecked, late, row->person->name, row->sums->n_unchecked, row->sums->n_late);
        }
      g_ptr_array_add (whys, marks_why (worked, unchecked, late, self->n_unchecked, self->n_late));
    }
  skills = skills_why (self);
  if (skills != NULL)
    g_ptr_array_add (whys, skills);
  return whys;
}
