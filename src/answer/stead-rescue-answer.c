/* stead-rescue-answer.c - what came of a damaged farm, in words. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-rescue-answer.h"

char *
stead_rescue_answer_sentence (const SteadRescue *rescue)
{
  GString *text = g_string_new (NULL);
  gulong rows, refused, orphans;

  g_return_val_if_fail (rescue != NULL, NULL);
  rows = (gulong) rescue->n_rows;
  refused = (gulong) rescue->n_refused;
  orphans = (gulong) rescue->n_orphans;
  g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE, "%lu row could be read and is in the new farm.",
                                             "%lu rows could be read and are in the new farm.", rows), rows);
  if (refused > 0)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE, "%lu row makes no sense any more and was left out.",
                                                 "%lu rows make no sense any more and were left out.", refused), refused);
    }
  if (orphans > 0)
    {
      g_string_append_c (text, ' ');
      g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE,
                                                 "%lu row was left out because what it belongs to is lost.",
                                                 "%lu rows were left out because what they belong to is lost.", orphans),
                              orphans);
    }
  if (rescue->lost->len == 0 && rescue->faults->len == 0 && refused + orphans == 0)
    g_string_append_printf (text, " %s", _("Nothing was lost but the steps of undo."));
  return g_string_free (text, FALSE);
}

static void
add_lines (GString         *text,
           const GPtrArray *lines,
           guint            most)
{
  for (guint i = 0; i < lines->len && i < most; i++)
    g_string_append_printf (text, "\n%s", (const char *) lines->pdata[i]);
  if (lines->len > most)
    {
      guint more = lines->len - most;

      g_string_append_c (text, '\n');
      g_string_append_printf (text, g_dngettext (GETTEXT_PACKAGE, "There is %u more of this kind.",
                                                 "There are %u more of this kind.", more), more);
    }
}

char *
stead_rescue_answer_text (const SteadRescue *rescue,
                          guint              most)
{
  g_autofree char *sentence = stead_rescue_answer_sentence (rescue);
  GString *text = g_string_new (sentence);

  add_lines (text, rescue->lost, most);
  add_lines (text, rescue->faults, most);
  return g_string_free (text, FALSE);
}
