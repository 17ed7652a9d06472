/* stead-flock-notes.c - the weeks that a forecast did not learn from, and why.
 *
 * None is hidden: each is named beside its point and in a sentence.
 */
#include "config.h"

#include "answer/stead-flock-private.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <string.h>

/* The sentence names so many weeks, the latest ones. */
#define MOST_NAMED 4

/* A reason that is longer does not fit beside a point. */
#define LONGEST_REASON 40

static const SteadLayWeek *
week_at (const SteadFlockAnswer *self,
         gsize                   i)
{
  return &g_array_index (self->weeks, SteadLayWeek, i);
}

/* The first sentence of a note without its period, if it is short; (nullable) (transfer full) */
static char *
short_reason (const char *note)
{
  const char *end = note;

  while ((end = strchr (end, '.')) != NULL
         && !(end[1] == '\0' || (end[1] == ' ' && g_unichar_isupper (g_utf8_get_char (end + 2)))))
    end++;
  if (end == NULL)
    end = note + strlen (note);
  return end > note && g_utf8_strlen (note, end - note) <= LONGEST_REASON ? g_strndup (note, (gsize) (end - note)) : NULL;
}

/* The first short reason given on a day of these weeks that is not to learn from;
 * %NULL if there is none. */
static gboolean
find_reason (SteadStore              *store,
             const SteadFlockAnswer  *self,
             gsize                    first,
             gsize                    last,
             char                   **out,
             GError                 **error)
{
  g_autoptr(GPtrArray) entries = NULL;

  *out = NULL;
  entries = stead_flock_repo_entries (store, self->flock->id, week_at (self, first)->first_day,
                                      week_at (self, last)->first_day + 6, error);
  if (entries == NULL)
    return FALSE;
  for (guint i = 0; i < entries->len && *out == NULL; i++)
    {
      const SteadFlockEntry *entry = entries->pdata[i];

      if (entry->left_out && entry->note != NULL)
        *out = short_reason (entry->note);
    }
  return TRUE;
}

static void
add_note (SteadFlockAnswer *self,
          gsize             first,
          gsize             last,
          gboolean          far_off,
          const char       *reason)
{
  g_autofree char *day = stead_day_format (week_at (self, first)->first_day, STEAD_DAY_STYLE_SHORT);
  SteadLayNote note = { .first = first, .last = last, .far_off = far_off };

  if (far_off)
    /* Translators: beside a point of a chart; a day. */
    note.text = g_strdup_printf (_("week of %s, far off"), day);
  else if (reason != NULL)
    /* Translators: beside points of a chart; what a person noted: "frozen waterer". */
    note.text = g_strdup_printf (_("%s, left out of the fit"), reason);
  else
    /* Translators: beside points of a chart; a day. */
    note.text = g_strdup_printf (_("week of %s, left out of the fit"), day);
  g_array_append_val (self->notes, note);
}

/* Weeks left out that follow each other are one note. */
static gboolean
add_left_out (SteadStore        *store,
              SteadFlockAnswer  *self,
              GError           **error)
{
  for (gsize i = 0; i < self->weeks->len; i++)
    {
      gsize first = i;
      g_autofree char *reason = NULL;

      if (!week_at (self, i)->left_out)
        continue;
      while (i + 1 < self->weeks->len && week_at (self, i + 1)->left_out
             && week_at (self, i + 1)->first_day == week_at (self, i)->first_day + 7)
        i++;
      if (!find_reason (store, self, first, i, &reason, error))
        return FALSE;
      add_note (self, first, i, FALSE, reason);
    }
  return TRUE;
}

static gsize
n_named (const SteadFlockAnswer *self)
{
  return MIN (self->fit.n_outliers, STEAD_LAY_MAX_OUTLIERS);
}

/* "Nov 2, Nov 9 and 3 more": the latest weeks of a kind; %NULL without one */
static char *
list_weeks (const SteadFlockAnswer *self,
            gboolean                far_off,
            gsize                  *out_n)
{
  g_autoptr(GPtrArray) days = g_ptr_array_new_with_free_func (g_free);
  gsize n = 0;

  for (guint i = self->notes->len; i-- > 0;)
    {
      const SteadLayNote *note = &g_array_index (self->notes, SteadLayNote, i);

      if (note->far_off != far_off)
        continue;
      for (gsize week = note->last + 1; week-- > note->first; n++)
        if (days->len < MOST_NAMED)
          g_ptr_array_insert (days, 0, stead_day_format (week_at (self, week)->first_day, STEAD_DAY_STYLE_SHORT));
    }
  *out_n = n;
  if (n == 0)
    return NULL;
  if (n > days->len)
    g_ptr_array_add (days, g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d more", "%d more",
                                                         (gulong) (n - days->len)), (int) (n - days->len)));
  g_ptr_array_add (days, NULL);
  return stead_words_list ((const char * const *) days->pdata);
}

static char *
notes_text (const SteadFlockAnswer *self)
{
  GString *text = g_string_new (NULL);
  gsize n_out = 0, n_far = 0;
  g_autofree char *out = list_weeks (self, FALSE, &n_out);
  g_autofree char *far = list_weeks (self, TRUE, &n_far);
  g_autofree char *first = NULL, *second = NULL;

  stead_words_add (text, self->fit_note);
  if (out != NULL)
    first = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Left out of the fit: week of %s.",
                                          "Left out of the fit: weeks of %s.", n_out), out);
  if (far != NULL)
    second = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                           "Far off the curve, so it counts little: week of %s. "
                                           "Look for a slip of the pen, or a reason.",
                                           "Far off the curve, so they count little: weeks of %s. "
                                           "Look for a slip of the pen, or a reason.", n_far), far);
  stead_words_add (text, first);
  stead_words_add (text, second);
  return stead_words_end (text);
}

gboolean
stead_flock_notes (SteadStore        *store,
                   SteadFlockAnswer  *self,
                   GError           **error)
{
  char *text;

  self->notes = g_array_new (FALSE, TRUE, sizeof (SteadLayNote));
  if (!add_left_out (store, self, error))
    return FALSE;
  for (gsize i = 0; i < n_named (self); i++)
    if (self->fit.outliers[i].week < self->weeks->len)
      add_note (self, self->fit.outliers[i].week, self->fit.outliers[i].week, TRUE, NULL);
  text = notes_text (self);
  g_free (self->fit_note);
  self->fit_note = text;
  return TRUE;
}
