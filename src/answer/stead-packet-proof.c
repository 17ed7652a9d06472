/* stead-packet-proof.c - what a packet ends with: pictures, corrections and late entries, signatures. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"
#include "answer/stead-skill-answer.h"
#include "core/stead-hours.h"
#include "store/stead-shot-repo.h"

/* --- pictures --------------------------------------------------------------------------------- */

static gboolean
add_picture (SteadPacketMaking  *making,
             const SteadShot    *shot,
             GError            **error)
{
  g_autofree char *day = stead_day_format (shot->day, STEAD_DAY_STYLE_MEDIUM);
  SteadPacketBlock *block;
  GBytes *jpeg = stead_picture_repo_get (making->store, shot->picture_id, error);

  if (jpeg == NULL)
    return FALSE;
  /* Translators: what a picture shows, and its day. */
  stead_packet_add_text (making, STEAD_BLOCK_PICTURE, g_strdup_printf (_("%1$s (%2$s)"), shot->caption, day));
  block = making->part->blocks->pdata[making->part->blocks->len - 1];
  block->jpeg = jpeg;
  return TRUE;
}

gboolean
stead_packet_make_photos (SteadPacketMaking  *making,
                          GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  guint n = 0, n_blocked = 0;

  if (!packet->with_pictures)
    {
      stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("This packet is without pictures.")));
      return TRUE;
    }
  for (guint i = 0; i < making->answer->people->len; i++)
    {
      g_autoptr(GPtrArray) shots = stead_shot_repo_list (making->store, stead_packet_person_id (making, i), error);

      if (shots == NULL)
        return FALSE;
      for (guint k = 0; k < shots->len; k++)
        {
          const SteadShot *shot = shots->pdata[k];

          if (shot->day < packet->from_on || shot->day > packet->to_on)
            continue;
          n += stead_shot_may_show (shot);
          n_blocked += !stead_shot_may_show (shot);
          if (stead_shot_may_show (shot) && !add_picture (making, shot, error))
            return FALSE;
        }
    }
  if (n_blocked > 0)
    stead_packet_add_text (making, STEAD_BLOCK_CAUTION,
                           g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u picture is left out: somebody on it has not "
                                                         "agreed to be shown.", "%u pictures are left out: somebody on "
                                                         "them has not agreed to be shown.", n_blocked), n_blocked));
  if (n == 0)
    stead_packet_blank (making, n_blocked > 0 ? g_strdup (_("Ask for the consent of everybody on the pictures."))
                                              : g_strdup (_("Add a picture with its caption.")),
                        STEAD_TARGET_JOURNAL, stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- corrections, signatures -------------------------------------------------------------------- */

static char *
fix_value (const SteadPacketMaking *making,
           SteadFixKind             what,
           double                   value)
{
  switch (what)
    {
    case STEAD_FIX_HOURS:   return stead_packet_hm (value);
    case STEAD_FIX_READING: return stead_number_format (value, 1);
    case STEAD_FIX_RECEIPT:
    case STEAD_FIX_CASH:
    default:                return stead_packet_money (making, (gint64) value);
    }
}

static const char *
fix_name (SteadFixKind what)
{
  switch (what)
    {
    case STEAD_FIX_HOURS:   return C_("what was corrected", "Hours");
    case STEAD_FIX_READING: return C_("what was corrected", "Reading");
    case STEAD_FIX_RECEIPT: return C_("what was corrected", "Receipt");
    case STEAD_FIX_CASH:
    default:                return C_("what was corrected", "Cash book");
    }
}

/* What was wrong, what stands in its place, and where that is seen.
 * @before, @after: in words */
static char *
marked_fix (SteadPacketMaking    *making,
            gint64                person_id,
            const SteadPacketFix *fix,
            const char           *before,
            const char           *after)
{
  g_autofree char *day = stead_day_format (fix->day, STEAD_DAY_STYLE_MEDIUM);
  g_autoptr(SteadEvidence) reading = fix->what == STEAD_FIX_READING
                                     ? stead_skill_repo_row (making->store, STEAD_EVIDENCE_READING, fix->id,
                                                             making->problem == NULL ? &making->problem : NULL) : NULL;
  /* Translators: what was corrected, its day, and its value before and after. */
  SteadPacketFigure *figure = stead_packet_add_figure (making, g_strdup_printf (_("%1$s, %2$s: %3$s before, %4$s after"),
                                                                                fix_name (fix->what), day, before, after));
  SteadPacketEntry *entry = stead_packet_add_entry (figure, g_strdup (figure->text), STEAD_TARGET_HOURS, person_id);

  if (fix->what == STEAD_FIX_CASH)
    {
      entry->target = STEAD_TARGET_NONE;
      entry->line_id = fix->id;
    }
  else if (fix->what == STEAD_FIX_RECEIPT)
    {
      entry->target = STEAD_TARGET_RECEIPT;
      entry->id = fix->id;
    }
  else if (reading != NULL && !reading->is_gone && reading->target_id != 0)
    {
      entry->target = stead_evidence_target (reading);
      entry->id = reading->target_id;
    }
  return stead_packet_marked (after, figure);
}

static gboolean
add_fixes (SteadPacketMaking  *making,
           gint64              person_id,
           SteadCardTable    **table,
           GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GPtrArray) fixes = stead_packet_repo_fixes (making->store, person_id, packet->from_on, packet->to_on, error);

  for (guint i = 0; fixes != NULL && i < fixes->len; i++)
    {
      const SteadPacketFix *fix = fixes->pdata[i];
      char *before = fix_value (making, fix->what, fix->before);
      g_autofree char *after = fix_value (making, fix->what, fix->after);

      if (*table == NULL)
        *table = stead_packet_add_table (making, 5, C_("column of corrections", "Of day"),
                                         C_("column of corrections", "What"), C_("column of corrections", "Before"),
                                         C_("column of corrections", "After"), C_("column of corrections", "Reason"), NULL);
      stead_packet_add_row (*table, stead_day_format (fix->day, STEAD_DAY_STYLE_MEDIUM), g_strdup (fix_name (fix->what)),
                            before, marked_fix (making, person_id, fix, before, after), g_strdup (fix->note));
    }
  return fixes != NULL;
}

static gboolean
add_late (SteadPacketMaking  *making,
          gint64              person_id,
          guint              *n_late,
          double             *minutes,
          SteadPacketFigure **figure,
          GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GPtrArray) hours = stead_packet_repo_hours (making->store, person_id, packet->from_on, packet->to_on, error);

  for (guint i = 0; hours != NULL && i < hours->len; i++)
    {
      const SteadPacketHours *span = hours->pdata[i];
      g_autofree char *day = NULL;

      if (stead_hours_late_days (span->day, span->entered_on) <= STEAD_HOURS_LATE_DAYS)
        continue;
      if (*figure == NULL)
        *figure = stead_packet_add_figure (making, NULL);
      day = stead_day_format (span->day, STEAD_DAY_STYLE_MEDIUM);
      /* Translators: what was done, a day. */
      stead_packet_add_entry (*figure, g_strdup_printf (_("%1$s on %2$s"), span->duty, day), STEAD_TARGET_HOURS, person_id);
      *minutes += span->minutes;
      (*n_late)++;
    }
  return hours != NULL;
}

gboolean
stead_packet_make_fixes (SteadPacketMaking  *making,
                         GError            **error)
{
  SteadPacketFigure *figure = NULL;
  SteadCardTable *table = NULL;
  double minutes = 0;
  guint n_late = 0;

  for (guint i = 0; i < making->answer->people->len; i++)
    if (!add_fixes (making, stead_packet_person_id (making, i), &table, error)
        || !add_late (making, stead_packet_person_id (making, i), &n_late, &minutes, &figure, error))
      return FALSE;
  if (table == NULL)
    stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("Nothing was corrected.")));
  if (n_late == 0)
    {
      stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("No hours were entered late.")));
      return TRUE;
    }
  figure->text = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%u entry of hours was made more than %d days after the work",
                                               "%u entries of hours were made more than %d days after the work", n_late),
                                  n_late, STEAD_HOURS_LATE_DAYS);
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, stead_packet_marked (figure->text, figure));
  return TRUE;
}

gboolean
stead_packet_make_signs (SteadPacketMaking  *making,
                         GError            **error)
{
  SteadCardTable *table;

  stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                         g_strdup (_("With my name I say that the records are mine, and true as far as I know.")));
  table = stead_packet_add_table (making, 3, C_("column of signatures", "Who"), C_("column of signatures", "Signature"),
                                  C_("column of signatures", "Day"), NULL);
  for (guint i = 0; i < making->answer->people->len; i++)
    stead_packet_add_row (table, g_strdup (stead_packet_person_name (making, i)), g_strdup ("______________________"),
                          g_strdup ("____________"));
  stead_packet_add_row (table, g_strdup (C_("who signs", "Advisor")), g_strdup ("______________________"),
                        g_strdup ("____________"));
  return TRUE;
}
