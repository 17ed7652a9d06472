/* stead-packet-parts.c - what the makers of sections share: blocks, figures and their marks, words. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

void
stead_packet_entry_free (SteadPacketEntry *entry)
{
  if (entry == NULL)
    return;
  g_free (entry->text);
  g_free (entry);
}

static SteadPacketBlock *
block_new (SteadPacketMaking    *making,
           SteadPacketBlockKind  kind)
{
  SteadPacketBlock *block = g_new0 (SteadPacketBlock, 1);

  block->kind = kind;
  g_ptr_array_add (making->part->blocks, block);
  return block;
}

void
stead_packet_add_text (SteadPacketMaking    *making,
                       SteadPacketBlockKind  kind,
                       char                 *text)
{
  block_new (making, kind)->text = text;
}

void
stead_packet_add_months (SteadPacketMaking *making,
                         SteadPacketMonths *months,
                         char              *text)
{
  SteadPacketBlock *block = block_new (making, STEAD_BLOCK_MONTHS);

  block->months = months;
  block->text = text;
}

void
stead_packet_add_scores (SteadPacketMaking *making,
                         SteadEventScores  *scores,
                         char              *text)
{
  SteadPacketBlock *block = block_new (making, STEAD_BLOCK_SCORES);

  block->scores = scores;
  block->text = text;
}

SteadCardTable *
stead_packet_add_table (SteadPacketMaking *making,
                        int                first_figure,
                        ...)
{
  SteadCardTable *table = stead_card_table_new ();
  const char *title;
  va_list titles;

  va_start (titles, first_figure);
  while ((title = va_arg (titles, const char *)) != NULL)
    stead_card_table_add_column (table, title, table->n_columns >= first_figure);
  va_end (titles);
  block_new (making, STEAD_BLOCK_TABLE)->table = table;
  return table;
}

void
stead_packet_add_row (SteadCardTable *table,
                      ...)
{
  SteadCardRow *row = stead_card_table_add_row (table);
  va_list cells;

  va_start (cells, table);
  for (int i = 0; i < table->n_columns; i++)
    row->cells[i] = va_arg (cells, char *);
  va_end (cells);
}

SteadPacketFigure *
stead_packet_add_figure (SteadPacketMaking *making,
                         char              *text)
{
  SteadPacketFigure *figure = g_new0 (SteadPacketFigure, 1);

  figure->mark = ++making->answer->n_marks;
  figure->text = text;
  figure->entries = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_packet_entry_free);
  g_ptr_array_add (making->part->figures, figure);
  return figure;
}

SteadPacketEntry *
stead_packet_add_entry (SteadPacketFigure *figure,
                        char              *text,
                        SteadTarget        target,
                        gint64             id)
{
  SteadPacketEntry *entry;

  if (figure->n_entries++ >= STEAD_PACKET_MOST_ENTRIES)
    {
      g_free (text);
      return NULL;
    }
  entry = g_new0 (SteadPacketEntry, 1);
  entry->text = text;
  entry->target = target;
  entry->id = id;
  g_ptr_array_add (figure->entries, entry);
  return entry;
}

char *
stead_packet_marked (const char              *text,
                     const SteadPacketFigure *figure)
{
  static const char * const raised[] = { "⁰", "¹", "²", "³", "⁴", "⁵", "⁶", "⁷", "⁸", "⁹" };
  g_autofree char *digits = g_strdup_printf ("%d", figure->mark);
  g_autoptr(GString) marked = g_string_new (text);

  g_string_append (marked, "\u00a0");
  for (const char *digit = digits; *digit != '\0'; digit++)
    g_string_append (marked, raised[*digit - '0']);
  return g_string_free (g_steal_pointer (&marked), FALSE);
}

void
stead_packet_blank (SteadPacketMaking *making,
                    char              *lack,
                    SteadTarget        target,
                    gint64             id)
{
  making->part->is_blank = TRUE;
  making->part->lack = lack;
  making->part->target = target;
  making->part->target_id = id;
  stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("Nothing recorded.")));
}

gint64
stead_packet_person_id (const SteadPacketMaking *making,
                        guint                    n)
{
  return ((const SteadEventPerson *) making->answer->people->pdata[n])->person_id;
}

const char *
stead_packet_person_name (const SteadPacketMaking *making,
                          guint                    n)
{
  return ((const SteadEventPerson *) making->answer->people->pdata[n])->name;
}

gboolean
stead_packet_is_team (const SteadPacketMaking *making)
{
  return making->answer->people->len > 1;
}

char *
stead_packet_days (SteadDay from,
                   SteadDay to)
{
  g_autofree char *first = stead_day_format (from, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *last = stead_day_format (to, STEAD_DAY_STYLE_MEDIUM);

  /* Translators: the first and the last day of a period. */
  return g_strdup_printf (_("%s to %s"), first, last);
}

char *
stead_packet_hm (double minutes)
{
  return stead_hours_format ((gint64) (minutes + 0.5));
}

char *
stead_packet_money (const SteadPacketMaking *making,
                    gint64                   cents)
{
  return stead_money_format (cents, making->answer->farm->currency);
}

GArray *
stead_packet_ids_of_all (SteadPacketMaking  *making,
                         SteadPacketReadIds  read,
                         GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GArray) all = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      g_autoptr(GArray) ids = read (making->store, stead_packet_person_id (making, i), packet->from_on, packet->to_on,
                                    error);

      if (ids == NULL)
        return NULL;
      for (guint k = 0; k < ids->len; k++)
        {
          gint64 id = g_array_index (ids, gint64, k);
          gboolean known = FALSE;

          for (guint j = 0; j < all->len; j++)
            known = known || g_array_index (all, gint64, j) == id;
          if (!known)
            g_array_append_val (all, id);
        }
    }
  return g_steal_pointer (&all);
}
