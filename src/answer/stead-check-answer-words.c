/* stead-check-answer-words.c - what is said over a checklist. */
#include "config.h"

#include "answer/stead-check-answer-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>

static char *
sentence_of (const SteadCheckAnswer *self)
{
  GString *text = g_string_new (NULL);
  guint met = self->n_to_do - MIN (self->n_to_do, self->n_open + self->n_failed + self->n_unsure);
  g_autofree char *done = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%1$u of %2$u line</b> is read and met.",
                                                        "<b>%1$u of %2$u lines</b> are read and met.", self->n_to_do),
                                           met, self->n_to_do);

  stead_words_add (text, done);
  if (self->n_failed > 0)
    {
      g_autofree char *failed = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%u</b> did not meet its limit.",
                                                              "<b>%u</b> did not meet their limits.", self->n_failed),
                                                 self->n_failed);

      stead_words_add (text, failed);
    }
  if (self->n_held > 0)
    stead_words_add (text, _("What was made is <b>held back</b> until that is settled."));
  if (self->n_open > 0)
    {
      g_autofree char *open = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u is still to be read.",
                                                            "%u are still to be read.", self->n_open), self->n_open);

      stead_words_add (text, open);
    }
  if (self->holes->stops->len > 0)
    {
      guint n = self->holes->stops->len;
      g_autofree char *stops = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "<b>%u thing</b> cannot be sold as planned.",
                                                             "<b>%u things</b> cannot be sold as planned.", n), n);

      stead_words_add (text, stops);
    }
  return stead_words_end (text);
}

static char *
stale_of (const SteadCheckAnswer *self)
{
  g_autoptr(GString) names = g_string_new (NULL);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < self->list->foods->len; i++)
    {
      const SteadListFood *food = self->list->foods->pdata[i];

      if (food->stale)
        g_string_append_printf (names, names->len > 0 ? ", %s" : "%s", food->name);
    }
  if (names->len > 0)
    {
      /* Translators: names of foods. */
      g_autofree char *recipes = g_strdup_printf (_("The recipe was changed since: %s."), names->str);

      stead_words_add (text, recipes);
    }
  if (self->list->stale_batch)
    stead_words_add (text, _("The run sheet was changed since."));
  if (self->list->stale_limits)
    stead_words_add (text, _("A local limit was changed since."));
  if (text->len == 0)
    {
      g_string_free (text, TRUE);
      return NULL;
    }
  stead_words_add (text, _("Make the list anew: what was read stays."));
  return stead_words_end (text);
}

static char *
signed_text (const SteadCheckAnswer *self)
{
  const char *name = stead_check_person_name (self, self->list->signed_by);
  g_autofree char *day = NULL;
  g_autofree char *time = NULL;

  if (self->list->signed_at == STEAD_TIME_NONE)
    return NULL;
  day = stead_day_format (stead_time_day (self->list->signed_at), STEAD_DAY_STYLE_MEDIUM);
  time = stead_check_time_text (self->list->signed_at);
  /* Translators: a person, a day, a time of day. */
  return g_strdup_printf (_("Signed by %1$s on %2$s at %3$s."), name != NULL ? name : "?", day, time);
}

/* The lines by their words, so that nobody has to look for them. */
static char *
missing_text (const SteadCheckAnswer *self)
{
  const SteadListHoles *holes = self->holes;
  GString *text = g_string_new (NULL);

  if (holes->lines->len > 0)
    {
      g_autofree char *head = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u line has no reading:",
                                                            "%u lines have no reading:", holes->lines->len),
                                               holes->lines->len);

      g_string_append (text, head);
      for (guint i = 0; i < self->lines->len; i++)
        {
          const SteadCheckedLine *line = self->lines->pdata[i];

          if (!g_ptr_array_find (holes->lines, line->line, NULL))
            continue;
          g_string_append_printf (text, "\n• %s", line->text);
          if (line->food != NULL)
            g_string_append_printf (text, " (%s)", line->food);
        }
    }
  if (holes->readings->len > 0)
    {
      g_autofree char *failed =
        g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u reading did not meet its limit, and nothing says what was done.",
                                      "%u readings did not meet their limits, and nothing says what was done.",
                                      holes->readings->len), holes->readings->len);

      g_string_append_printf (text, text->len > 0 ? "\n%s" : "%s", failed);
    }
  if (holes->stops->len > 0)
    g_string_append_printf (text, text->len > 0 ? "\n%s" : "%s",
                            _("Nothing says what was done about what cannot be sold as planned."));
  if (holes->n_holds > 0)
    g_string_append_printf (text, text->len > 0 ? "\n%s" : "%s", _("Food is still held back."));
  if (text->len > 0)
    return g_string_free (text, FALSE);
  g_string_free (text, TRUE);
  return NULL;
}

void
stead_check_answer_say (SteadCheckAnswer *self)
{
  const SteadListHoles *holes = self->holes;

  self->can_sign = self->list->signed_at == STEAD_TIME_NONE && holes->lines->len == 0 && holes->readings->len == 0 &&
                   holes->stops->len == 0 && holes->n_holds == 0;
  self->sentence = sentence_of (self);
  self->stale = stale_of (self);
  self->signed_by = signed_text (self);
  self->missing = self->list->signed_at == STEAD_TIME_NONE ? missing_text (self) : NULL;
  self->caution = g_strdup (_("Your local health department decides first. Met limits do not prove that food is safe: this "
                              "list says which limits were met, by which readings."));
}
