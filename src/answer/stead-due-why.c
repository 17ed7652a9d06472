/* stead-due-why.c - why a thing stands in Today, worked out. */
#include "config.h"

#include "answer/stead-due-private.h"

#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

void
stead_due_explain (GPtrArray *dues,
                   char      *worked)
{
  g_return_if_fail (dues != NULL && dues->len > 0);
  ((SteadDue *) dues->pdata[dues->len - 1])->worked = worked;
}

void
stead_due_explain_day (GPtrArray *dues,
                       SteadDay   last,
                       int        days)
{
  g_autofree char *from = stead_day_format (last, STEAD_DAY_STYLE_SHORT);
  g_autofree char *span = stead_words_days (days);
  g_autofree char *due = stead_day_format (last + days, STEAD_DAY_STYLE_SHORT);

  /* Translators: a day, "21 days", a day. */
  stead_due_explain (dues, g_strdup_printf (_("%1$s + %2$s = %3$s"), from, span, due));
}

static SteadWhy *
count_why (const SteadDueAnswer *self)
{
  int done = (int) self->dues->len - self->n_tasks - self->n_warnings;

  return stead_why_new (g_strdup (_("How many things are due")),
                        _("Each line counts once: those to look at, because a limit is not kept or something runs low, those whose "
                          "day has come, and those done today."),
                        /* Translators: three counts. */
                        g_strdup_printf (_("To look at: %1$d. Due: %2$d. Done today: %3$d."), self->n_warnings, self->n_tasks, done),
                        _("Common practice, no source."));
}

static SteadWhy *
lines_why (const SteadDueAnswer *self)
{
  GString *worked = g_string_new (NULL);

  for (guint i = 0; i < self->dues->len; i++)
    {
      const SteadDue *due = self->dues->pdata[i];

      if (due->worked != NULL)
        /* A line of several lines stands below what it is about. */
        g_string_append_printf (worked, "%s%s%s%s", worked->len > 0 ? "\n" : "", due->text,
                                g_utf8_strchr (due->worked, -1, '\n') != NULL ? "\n" : " ", due->worked);
    }
  if (worked->len == 0)
    {
      g_string_free (worked, TRUE);
      return NULL;
    }
  return stead_why_new (g_strdup (_("Why a line stands here")),
                        _("What comes again: the last time + the days from time to time. What runs low lasts less than 7 days, or less "
                          "is there than its own mark. Eggs, losses and cold air are held against what is usual. The place that a "
                          "line leads to tells more."),
                        g_string_free (worked, FALSE),
                        _("Bedding as entered for the flock; weighing each 14 days under 50 g, else each 28, a temperature a week and "
                          "7 days of stock: common practice, no source."));
}

GPtrArray *
stead_due_answer_whys (const SteadDueAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  if (self->dues->len == 0)
    return whys;
  g_ptr_array_add (whys, count_why (self));
  stead_whys_add (whys, lines_why (self));
  return whys;
}
