/* stead-check-days-answer.c - the days of checking: what was read, what is missing, what failed. */
#include "config.h"

#include "answer/stead-check-days-answer.h"
#include "answer/stead-limits.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* A list that nobody signed is looked for as long: what is older is history. */
#define OPEN_DAYS 60

static void
list_free (gpointer data)
{
  SteadCheckDayList *list = data;

  g_free (list->name);
  g_free (list->text);
  g_free (list);
}

static void
day_free (gpointer data)
{
  SteadCheckDay *day = data;

  g_ptr_array_unref (day->lists);
  g_free (day->mark);
  g_free (day->text);
  g_free (day);
}

void
stead_check_days_answer_free (SteadCheckDaysAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->days, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self);
}

/* --- judging a span of days --------------------------------------------------------- */

/* Readings that did not meet their limit, of one list. */
typedef struct
{
  gint64 n_failed, n_unhandled;
} Failures;

static gboolean
count_failures (SteadStore  *store,
                gint64       list_id,
                Failures    *out,
                GError     **error)
{
  g_autoptr(SteadCheckList) list = stead_check_repo_get (store, list_id, error);

  if (list == NULL)
    return FALSE;
  for (guint i = 0; i < list->lines->len; i++)
    {
      const SteadListLine *line = list->lines->pdata[i];

      for (guint n = 0; n < line->readings->len; n++)
        {
          const SteadShown *shown = line->readings->pdata[n];
          SteadJudgement judgement;

          if (shown->corrected || !stead_list_line_judge (line, shown, NULL, &judgement, NULL) ||
              judgement.verdict != STEAD_LIMIT_NOT_MET)
            continue;
          out->n_failed++;
          out->n_unhandled += shown->n_actions == 0;
        }
    }
  return TRUE;
}

static char *
list_text (const SteadCheckDayList *list)
{
  if (list->n_failed > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%d reading did not meet its limit, and nothing says what was done.",
                                         "%d readings did not meet their limits, and nothing says what was done.",
                                         (gulong) list->n_failed), (int) list->n_failed);
  if (list->n_open > 0)
    return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%1$d of %2$d line is still to be read.",
                                         "%1$d of %2$d lines are still to be read.", (gulong) list->n_lines),
                            (int) list->n_open, (int) list->n_lines);
  if (list->n_stops > 0)
    return g_strdup (_("Something cannot be sold as planned."));
  return g_strdup (list->is_signed ? _("Signed.") : _("All is read. It can be signed."));
}

static SteadCheckDayList *
list_new (SteadStore            *store,
          const SteadCheckList  *head,
          Failures              *failures,
          GError               **error)
{
  SteadCheckDayList *list;

  if (head->n_readings > 0 && !count_failures (store, head->id, failures, error))
    return NULL;
  list = g_new0 (SteadCheckDayList, 1);
  list->id = head->id;
  list->name = g_strdup (head->name);
  list->day = head->day;
  list->n_lines = head->n_lines;
  list->n_open = head->n_open;
  list->n_readings = head->n_readings;
  list->n_failed = failures->n_unhandled;
  list->n_stops = head->n_stops;
  list->n_holds = head->n_holds;
  list->is_signed = head->signed_at != STEAD_TIME_NONE;
  list->text = list_text (list);
  return list;
}

/* --- days ------------------------------------------------------------------------------ */

static char *
days_sentence (const SteadCheckDaysAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *read = NULL;
  g_autofree char *failed = NULL;
  g_autofree char *open = NULL;

  if (self->n_lists == 0)
    {
      g_string_free (text, TRUE);
      return g_strdup (_("Nothing was checked in these days."));
    }
  read = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d reading</b> was taken.", "<b>%d readings</b> were taken.",
                                       (gulong) self->n_readings), (int) self->n_readings);
  stead_words_add (text, read);
  failed = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d</b> did not meet its limit.",
                                         "<b>%d</b> did not meet their limits.", (gulong) self->n_failed),
                            (int) self->n_failed);
  if (self->n_failed > 0)
    stead_words_add (text, failed);
  open = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d line</b> was never read.",
                                       "<b>%d lines</b> were never read.", (gulong) self->n_open), (int) self->n_open);
  if (self->n_open > 0)
    stead_words_add (text, open);
  if (self->n_unsigned > 0)
    {
      g_autofree char *unsigned_lists = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d list is not signed.",
                                                                      "%d lists are not signed.",
                                                                      (gulong) self->n_unsigned), (int) self->n_unsigned);

      stead_words_add (text, unsigned_lists);
    }
  return stead_words_end (text);
}

static void
add_list (SteadCheckDaysAnswer *self,
          SteadCheckDayList    *list,
          const Failures       *failures)
{
  SteadCheckDay *day = self->days->pdata[list->day - self->from];

  g_ptr_array_add (day->lists, list);
  day->n_readings += list->n_readings;
  day->n_open += list->n_open;
  day->n_failed += failures->n_failed;
  day->n_unhandled += failures->n_unhandled;
  day->all_signed &= list->is_signed;
  self->n_lists++;
  self->n_readings += list->n_readings;
  self->n_open += list->n_open;
  self->n_failed += failures->n_failed;
  self->n_unsigned += !list->is_signed;
}

/* --- one day of a calendar ---------------------------------------------------------------- */

static SteadCheckDayState
state_of_day (const SteadCheckDay *day)
{
  gint64 n_held = 0, n_stops = 0;

  if (day->lists->len == 0)
    return STEAD_CHECK_DAY_NONE;
  for (guint i = 0; i < day->lists->len; i++)
    {
      n_held += ((const SteadCheckDayList *) day->lists->pdata[i])->n_holds;
      n_stops += ((const SteadCheckDayList *) day->lists->pdata[i])->n_stops;
    }
  if (day->n_unhandled > 0 || n_held > 0)
    return STEAD_CHECK_DAY_FAILED;
  if (day->n_open > 0 || n_stops > 0 || !day->all_signed)
    return STEAD_CHECK_DAY_OPEN;
  return day->n_failed > 0 ? STEAD_CHECK_DAY_HANDLED : STEAD_CHECK_DAY_DONE;
}

static char *
mark_of_day (const SteadCheckDay *day)
{
  switch (day->state)
    {
    case STEAD_CHECK_DAY_FAILED:
      return day->n_unhandled > 0 ? g_strdup_printf ("⚠ %d", (int) day->n_unhandled) : g_strdup ("⚠");
    case STEAD_CHECK_DAY_OPEN: return day->n_open > 0 ? g_strdup_printf ("○ %d", (int) day->n_open) : g_strdup ("○");
    case STEAD_CHECK_DAY_HANDLED: return g_strdup_printf ("↻ %d", (int) day->n_failed);
    case STEAD_CHECK_DAY_DONE: return g_strdup ("✓");
    case STEAD_CHECK_DAY_NONE:
    default: return g_strdup ("");
    }
}

static char *
state_of_day_text (const SteadCheckDay *day)
{
  switch (day->state)
    {
    case STEAD_CHECK_DAY_FAILED:
      return day->n_unhandled > 0
             ? g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d reading did not meet its limit, and nothing says what was done.",
                                             "%d readings did not meet their limits, and nothing says what was done.",
                                             (gulong) day->n_unhandled), (int) day->n_unhandled)
             : g_strdup (_("Food is held back."));
    case STEAD_CHECK_DAY_OPEN:
      return day->n_open > 0
             ? g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d line is still to be read.", "%d lines are still to be read.",
                                             (gulong) day->n_open), (int) day->n_open)
             : g_strdup (_("It is not signed yet."));
    case STEAD_CHECK_DAY_HANDLED:
      return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Signed. %d reading was out of its limit, and something was done.",
                                           "Signed. %d readings were out of their limits, and something was done.",
                                           (gulong) day->n_failed), (int) day->n_failed);
    case STEAD_CHECK_DAY_DONE: return g_strdup (_("Signed. Each reading met its limit."));
    case STEAD_CHECK_DAY_NONE:
    default: return g_strdup (_("No checklist."));
    }
}

static void
say_day (SteadCheckDay *day)
{
  g_autofree char *date = stead_day_format (day->day, STEAD_DAY_STYLE_LONG);
  g_autofree char *state = NULL;

  day->all_signed &= day->lists->len > 0;
  day->state = state_of_day (day);
  day->mark = mark_of_day (day);
  state = state_of_day_text (day);
  /* Translators: a day, and how it stands: "March 3, 2026: Signed. Each reading met its limit." */
  day->text = g_strdup_printf (C_("day of checks", "%1$s: %2$s"), date, state);
}

SteadCheckDaysAnswer *
stead_check_days_answer_new (SteadStore  *store,
                             SteadDay     from,
                             SteadDay     to,
                             GError     **error)
{
  g_autoptr(SteadCheckDaysAnswer) self = NULL;
  g_autoptr(GPtrArray) heads = NULL;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  g_return_val_if_fail (from <= to && to - from < 366, NULL);
  heads = stead_check_repo_list (store, from, to, error);
  if (heads == NULL)
    return NULL;
  self = g_new0 (SteadCheckDaysAnswer, 1);
  self->from = from;
  self->to = to;
  self->days = g_ptr_array_new_with_free_func (day_free);
  for (SteadDay at = from; at <= to; at++)
    {
      SteadCheckDay *day = g_new0 (SteadCheckDay, 1);

      day->day = at;
      day->lists = g_ptr_array_new_with_free_func (list_free);
      day->all_signed = TRUE;
      g_ptr_array_add (self->days, day);
    }
  for (guint i = heads->len; i > 0; i--)
    {
      Failures failures = { 0 };
      SteadCheckDayList *list = list_new (store, heads->pdata[i - 1], &failures, error);

      if (list == NULL)
        return NULL;
      add_list (self, list, &failures);
    }
  for (guint i = 0; i < self->days->len; i++)
    say_day (self->days->pdata[i]);
  self->sentence = days_sentence (self);
  return g_steal_pointer (&self);
}

/* --- today -------------------------------------------------------------------------------- */

void
stead_check_today_answer_free (SteadCheckTodayAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lists, g_ptr_array_unref);
  g_clear_pointer (&self->holds, g_ptr_array_unref);
  g_free (self->sentence);
  g_free (self->figure);
  g_free (self);
}

static char *
today_figure (const SteadCheckTodayAnswer *self)
{
  g_autofree char *out = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d out", "%d out", (gulong) self->n_out),
                                          (int) self->n_out);
  g_autofree char *missing = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d missing", "%d missing",
                                                           (gulong) self->n_missing), (int) self->n_missing);

  if (self->n_out > 0 && self->n_missing > 0)
    /* Translators: two figures of a post: "2 out", "5 missing". */
    return g_strdup_printf (C_("figures of a post", "%1$s, %2$s"), out, missing);
  if (self->n_out > 0)
    return g_steal_pointer (&out);
  return self->n_missing > 0 ? g_steal_pointer (&missing) : NULL;
}

static char *
today_sentence (const SteadCheckTodayAnswer *self)
{
  GString *text = g_string_new (NULL);

  if (self->n_held > 0)
    {
      g_autofree char *held = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d lot or batch</b> is held back.",
                                                            "<b>%d lots or batches</b> are held back.",
                                                            (gulong) self->n_held), (int) self->n_held);

      stead_words_add (text, held);
    }
  if (self->n_out > 0)
    {
      g_autofree char *out = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d reading</b> did not meet its limit.",
                                                           "<b>%d readings</b> did not meet their limits.",
                                                           (gulong) self->n_out), (int) self->n_out);

      stead_words_add (text, out);
    }
  if (self->n_missing > 0)
    {
      g_autofree char *missing = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%d line</b> is still to be read.",
                                                               "<b>%d lines</b> are still to be read.",
                                                               (gulong) self->n_missing), (int) self->n_missing);

      stead_words_add (text, missing);
    }
  if (text->len == 0)
    stead_words_add (text, self->lists->len > 0 ? _("All that was asked for is read.")
                                                : _("No checklist is open."));
  return stead_words_end (text);
}

SteadCheckTodayAnswer *
stead_check_today_answer_new (SteadStore  *store,
                              GError     **error)
{
  g_autoptr(SteadCheckTodayAnswer) self = NULL;
  g_autoptr(GPtrArray) heads = NULL;
  SteadDay today;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);
  today = stead_store_get_today (store);
  heads = stead_check_repo_list (store, today - OPEN_DAYS, today, error);
  if (heads == NULL)
    return NULL;
  self = g_new0 (SteadCheckTodayAnswer, 1);
  self->lists = g_ptr_array_new_with_free_func (list_free);
  self->holds = stead_hold_repo_open (store, error);
  if (self->holds == NULL)
    return NULL;
  self->n_held = self->holds->len;
  for (guint i = 0; i < heads->len; i++)
    {
      const SteadCheckList *head = heads->pdata[i];
      Failures failures = { 0 };
      SteadCheckDayList *list;

      if (head->signed_at != STEAD_TIME_NONE)
        continue;
      list = list_new (store, head, &failures, error);
      if (list == NULL)
        return NULL;
      self->n_missing += list->n_open;
      self->n_out += failures.n_unhandled;
      g_ptr_array_add (self->lists, list);
    }
  self->figure = today_figure (self);
  self->sentence = today_sentence (self);
  return g_steal_pointer (&self);
}
