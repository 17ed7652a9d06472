/* stead-hours-answer.c - "Who worked how long, and at what?" */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-hours-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-clock.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

static void
duty_free (gpointer data)
{
  g_free (((SteadHoursDuty *) data)->duty);
  g_free (data);
}

static void
person_free (gpointer data)
{
  g_free (((SteadHoursPerson *) data)->name);
  g_free (data);
}

void
stead_hours_answer_free (SteadHoursAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->spans, g_ptr_array_unref);
  g_clear_pointer (&self->duties, g_ptr_array_unref);
  g_clear_pointer (&self->people, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* --- words ------------------------------------------------------------------ */

SteadDay
stead_hours_week (SteadDay day)
{
  return day - (stead_day_weekday (day) - 1);
}

char *
stead_hours_words (gint64 minutes)
{
  int hours = (int) (minutes / 60), rest = (int) (minutes % 60);

  if (hours == 0)
    /* Translators: minutes. */
    return g_strdup_printf (_("%d min"), rest);
  if (rest == 0)
    /* Translators: hours. */
    return g_strdup_printf (C_("hours of work", "%d h"), hours);
  /* Translators: hours and minutes. */
  return g_strdup_printf (_("%1$d h %2$d min"), hours, rest);
}

char *
stead_hours_quarter (gint64 minutes)
{
  return g_strdup_printf ("%.2f", stead_quarter_round ((int) minutes) / 60.0);
}

char *
stead_hours_clock (gint64 at)
{
  g_autoptr(GDateTime) time = at != G_MININT64 ? g_date_time_new_from_unix_local (at) : NULL;

  return time != NULL ? stead_minute_format (60 * g_date_time_get_hour (time) + g_date_time_get_minute (time)) : g_strdup ("");
}

gboolean
stead_hours_is_late (const SteadWorkSpan *span)
{
  return stead_hours_late_days (span->day, span->entered_on) > STEAD_HOURS_LATE_DAYS;
}

static char *
checked_text (const SteadWorkSpan *span)
{
  if (span->checked_by == 0)
    return g_strdup (_("not checked"));
  /* Translators: an advisor's name. */
  return g_strdup_printf (_("checked by %s"), span->checker_name != NULL ? span->checker_name : "?");
}

char *
stead_hours_state (const SteadWorkSpan *span)
{
  g_autofree char *checked = checked_text (span), *was = NULL, *late = NULL;
  int days = stead_hours_late_days (span->day, span->entered_on);

  if (!isnan (span->was_minutes))
    {
      was = stead_hours_words ((gint64) round (span->was_minutes));
      /* Translators: hours before a correction, "not checked". */
      return g_strdup_printf (_("corrected, was %1$s; %2$s"), was, checked);
    }
  if (!stead_hours_is_late (span))
    return g_steal_pointer (&checked);
  late = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "entered %d day later", "entered %d days later", (gulong) days),
                          days);
  /* Translators: "entered 9 days later", "not checked". */
  return g_strdup_printf (C_("hours", "%1$s; %2$s"), late, checked);
}

char *
stead_hours_draft_text (const SteadWorkDraft *draft)
{
  switch (draft->kind)
    {
    case STEAD_DRAFT_READINGS: return g_strdup_printf (_("Took readings: %s"), draft->about);
    case STEAD_DRAFT_STALL:    return g_strdup_printf (_("Had a shift: %s"), draft->about);
    case STEAD_DRAFT_LOG:
    default:                   return g_strdup_printf (_("Wrote the log: %s"), draft->about);
    }
}

char *
stead_hours_draft_duty (const SteadWorkDraft *draft)
{
  switch (draft->kind)
    {
    /* Translators: work as it stands in the hours; %s is a checklist. */
    case STEAD_DRAFT_READINGS: return g_strdup_printf (_("Safety checks: %s"), draft->about);
    /* Translators: work as it stands in the hours; %s is a sale day. */
    case STEAD_DRAFT_STALL:    return g_strdup_printf (_("Stall: %s"), draft->about);
    case STEAD_DRAFT_LOG:
    /* Translators: work as it stands in the hours; %s is a flock, fish or a crop. */
    default:                   return g_strdup_printf (_("Daily care: %s"), draft->about);
    }
}

/* --- sums ------------------------------------------------------------------- */

static SteadHoursPerson *
person_of (SteadHoursAnswer    *self,
           const SteadWorkSpan *span)
{
  SteadHoursPerson *person;

  for (guint i = 0; i < self->people->len; i++)
    if (((SteadHoursPerson *) self->people->pdata[i])->person_id == span->person_id)
      return self->people->pdata[i];
  person = g_new0 (SteadHoursPerson, 1);
  person->person_id = span->person_id;
  person->name = g_strdup (span->person_name);
  g_ptr_array_add (self->people, person);
  return person;
}

static SteadHoursDuty *
duty_of (SteadHoursAnswer    *self,
         const SteadWorkSpan *span)
{
  SteadHoursDuty *duty;

  for (guint i = 0; i < self->duties->len; i++)
    if (g_str_equal (((SteadHoursDuty *) self->duties->pdata[i])->duty, span->duty))
      return self->duties->pdata[i];
  duty = g_new0 (SteadHoursDuty, 1);
  duty->duty = g_strdup (span->duty);
  g_ptr_array_add (self->duties, duty);
  return duty;
}

static void
add_span (SteadHoursAnswer    *self,
          const SteadWorkSpan *span)
{
  SteadHoursPerson *person = person_of (self, span);
  SteadHoursDuty *duty = duty_of (self, span);
  gint64 minutes = (gint64) round (span->minutes);

  *(span->paid ? &duty->paid_min : &duty->unpaid_min) += minutes;
  *(span->paid ? &self->paid_min : &self->unpaid_min) += minutes;
  person->minutes += minutes;
  if (span->day - self->from < 7)
    person->day_min[span->day - self->from] += minutes;
  person->n_late += stead_hours_is_late (span);
  person->n_unchecked += span->checked_by == 0;
  self->n_late += stead_hours_is_late (span);
  self->n_unchecked += span->checked_by == 0;
  self->n_corrections += !isnan (span->was_minutes);
}

static int
compare_people (gconstpointer a,
                gconstpointer b)
{
  const SteadHoursPerson *x = *(SteadHoursPerson * const *) a, *y = *(SteadHoursPerson * const *) b;
  int by_name = g_utf8_collate (x->name, y->name);

  return by_name != 0 ? by_name : (x->person_id > y->person_id) - (x->person_id < y->person_id);
}

static int
compare_duties (gconstpointer a,
                gconstpointer b)
{
  const SteadHoursDuty *x = *(SteadHoursDuty * const *) a, *y = *(SteadHoursDuty * const *) b;
  gint64 more = y->paid_min + y->unpaid_min - x->paid_min - x->unpaid_min;

  return more != 0 ? (more > 0) - (more < 0) : g_strcmp0 (x->duty, y->duty);
}

static void
value_unpaid (SteadHoursAnswer *self)
{
  SteadHoursEntry unpaid = { self->unpaid_min, FALSE, 0 };
  SteadHoursSum sum = { 0 };

  stead_hours_sum (&unpaid, 1, (double) self->farm->labor_cents_hour, &sum);
  self->value_cents = sum.value_cents;
}

static char *
say (const SteadHoursAnswer *self)
{
  g_autofree char *hours = stead_hours_words (self->paid_min + self->unpaid_min);
  g_autofree char *from = stead_day_format (self->from, STEAD_DAY_STYLE_SHORT);
  g_autofree char *to = stead_day_format (self->to, STEAD_DAY_STYLE_SHORT);
  g_autofree char *who = NULL, *late = NULL, *open = NULL;

  if (self->spans->len == 0)
    /* Translators: two days. */
    return g_strdup_printf (_("No hours from %1$s to %2$s."), from, to);
  who = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u person", "%u people", self->people->len), self->people->len);
  if (self->n_unchecked == 0 && self->n_late == 0)
    /* Translators: hours, "9 people", two days. */
    return g_strdup_printf (_("<b>%1$s</b> by %2$s from %3$s to %4$s, all checked."), hours, who, from, to);
  open = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d entry is not checked yet", "%d entries are not checked yet",
                                       (gulong) self->n_unchecked), self->n_unchecked);
  late = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d was entered late", "%d were entered late",
                                       (gulong) self->n_late), self->n_late);
  if (self->n_late == 0)
    /* Translators: hours, "9 people", two days, "3 entries are not checked yet". */
    return g_strdup_printf (_("<b>%1$s</b> by %2$s from %3$s to %4$s; %5$s."), hours, who, from, to, open);
  /* Translators: as above, and "2 were entered late". */
  return g_strdup_printf (_("<b>%1$s</b> by %2$s from %3$s to %4$s; %5$s, and %6$s."), hours, who, from, to, open, late);
}

SteadHoursAnswer *
stead_hours_answer_new (SteadStore  *store,
                        SteadDay     from,
                        SteadDay     to,
                        gint64       person_id,
                        GError     **error)
{
  g_autoptr(SteadHoursAnswer) self = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store) && from <= to, NULL);

  self = g_new0 (SteadHoursAnswer, 1);
  self->from = from;
  self->to = to;
  self->person_id = person_id;
  self->duties = g_ptr_array_new_with_free_func (duty_free);
  self->people = g_ptr_array_new_with_free_func (person_free);
  self->farm = stead_farm_repo_get (store, error);
  self->spans = self->farm != NULL ? stead_work_repo_list (store, from, to, person_id, error) : NULL;
  if (self->spans == NULL)
    return NULL;
  for (guint i = 0; i < self->spans->len; i++)
    add_span (self, self->spans->pdata[i]);
  g_ptr_array_sort (self->people, compare_people);
  g_ptr_array_sort (self->duties, compare_duties);
  value_unpaid (self);
  self->sentence = say (self);
  return g_steal_pointer (&self);
}
