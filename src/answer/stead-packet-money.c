/* stead-packet-money.c - sections of a packet about money: in and out, stock and net worth. */
#include "config.h"

#include <glib/gi18n-lib.h>

#include "answer/stead-packet-private.h"

/* What cannot be read ends the whole packet once its part is made. */
static GError **
problem_of (SteadPacketMaking *making)
{
  return making->problem == NULL ? &making->problem : NULL;
}

static gint64
holder_of (SteadPacketMaking         *making,
           const SteadStatementEntry *entry)
{
  return MAX (0, stead_journal_repo_holder (making->store, entry->fact, entry->fact_id, problem_of (making)));
}

/* Each entry leads to where it is seen and mended: a place, or its card. */
static void
lead (SteadPacketMaking         *making,
      const SteadStatementEntry *entry,
      SteadPacketEntry          *out)
{
  out->id = entry->fact_id;
  switch (entry->fact)
    {
    case STEAD_FACT_RECEIPT:
      out->target = STEAD_TARGET_RECEIPT;
      break;
    case STEAD_FACT_BATCH:
      out->target = STEAD_TARGET_BATCH;
      break;
    case STEAD_FACT_ASSET:
      out->target = STEAD_TARGET_ASSET;
      break;
    case STEAD_FACT_MOVEMENT:
      out->target = STEAD_TARGET_LOT;
      out->id = holder_of (making, entry);
      break;
    case STEAD_FACT_FISH_MOVE:
      out->target = STEAD_TARGET_BATCH;
      out->id = holder_of (making, entry);
      break;
    case STEAD_FACT_CASH_LINE:
      out->line_id = entry->fact_id;
      break;
    case STEAD_FACT_ACCOUNT:
      out->account_id = entry->fact_id;
      break;
    case STEAD_FACT_BEFORE:
    default:
      break;
    }
}

/* "Nov 3, 2026: Cash book: Sales, Winter market: $48.00".  What an entry is called is found out once a source: a
 * class has the same statements in all of its packets. */
char *
stead_packet_posting_text (SteadPacketMaking         *making,
                           const SteadStatementEntry *entry)
{
  g_autofree char *key = g_strdup_printf ("%d %" G_GINT64_FORMAT, entry->fact, entry->fact_id);
  g_autofree char *cents = stead_packet_money (making, entry->cents), *day = NULL;
  const char *name = g_hash_table_lookup (making->source->entries, key);

  if (name == NULL)
    {
      char *text = stead_statement_entry_text (making->store, entry, problem_of (making));

      if (text == NULL)
        return g_strdup ("");
      name = text;
      g_hash_table_insert (making->source->entries, g_steal_pointer (&key), text);
    }
  if (entry->fact == STEAD_FACT_BEFORE)
    return g_strdup_printf (_("%1$s: %2$s"), name, cents);
  day = stead_day_format (entry->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day, what was entered, and a sum of money. */
  return g_strdup_printf (_("%1$s: %2$s: %3$s"), day, name, cents);
}

void
stead_packet_add_posting (SteadPacketMaking         *making,
                          SteadPacketFigure         *figure,
                          const SteadStatementEntry *entry)
{
  SteadPacketEntry *added = stead_packet_add_entry (figure, NULL, STEAD_TARGET_NONE, 0);

  if (added == NULL)
    return;
  added->text = stead_packet_posting_text (making, entry);
  lead (making, entry, added);
}

static char *
marked_line (SteadPacketMaking        *making,
             const SteadStatementLine *line)
{
  g_autofree char *cents = stead_packet_money (making, line->cents);
  SteadPacketFigure *figure;

  if (line->entries == NULL || line->entries->len == 0)
    return g_steal_pointer (&cents);
  /* Translators: a line of a statement, and its sum. */
  figure = stead_packet_add_figure (making, g_strdup_printf (_("%1$s: %2$s"), line->label, cents));
  for (guint i = 0; i < line->entries->len; i++)
    stead_packet_add_posting (making, figure, &g_array_index (line->entries, SteadStatementEntry, i));
  return stead_packet_marked (cents, figure);
}

char *
stead_packet_marked_net (SteadPacketMaking          *making,
                         const SteadStatementAnswer *statement)
{
  g_autofree char *net = stead_packet_money (making, statement->net);
  /* Translators: a sum of money. */
  SteadPacketFigure *figure = stead_packet_add_figure (making, g_strdup_printf (_("Earned by the whole farm: %s"), net));

  for (guint i = 0; i < statement->lines->len; i++)
    {
      const SteadStatementLine *line = statement->lines->pdata[i];

      if (line->part != STEAD_STATEMENT_INCOME || line->is_total || line->is_apart || line->entries == NULL)
        continue;
      for (guint k = 0; k < line->entries->len; k++)
        stead_packet_add_posting (making, figure, &g_array_index (line->entries, SteadStatementEntry, k));
    }
  return stead_packet_marked (net, figure);
}

static guint
add_lines (SteadPacketMaking          *making,
           const SteadStatementAnswer *statement,
           SteadStatementPart          part)
{
  SteadCardTable *table = NULL;
  guint n = 0;

  for (guint i = 0; i < statement->lines->len; i++)
    {
      const SteadStatementLine *line = statement->lines->pdata[i];

      if (line->part != part || (line->cents == 0 && !line->is_total && line->before_cents == 0))
        continue;
      if (table == NULL)
        {
          stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, g_strdup (stead_statement_part_title (part)));
          table = part == STEAD_STATEMENT_BALANCE
                  ? stead_packet_add_table (making, 1, C_("column of a statement", "What"),
                                            C_("column of a statement", "At first"),
                                            C_("column of a statement", "At the end"), NULL)
                  : stead_packet_add_table (making, 1, C_("column of a statement", "What"),
                                            C_("column of a statement", "Amount"), NULL);
        }
      n++;
      if (part == STEAD_STATEMENT_BALANCE)
        stead_packet_add_row (table, g_strdup (line->label), stead_packet_money (making, line->before_cents),
                              marked_line (making, line));
      else
        stead_packet_add_row (table, g_strdup (line->label), marked_line (making, line));
    }
  return n;
}

gboolean
stead_packet_make_money (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadStatementAnswer *statement = stead_packet_statement (making, error);

  if (statement == NULL)
    return FALSE;
  stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup (_("Money is that of the whole farm, to which the work "
                                                               "belongs.")));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (statement->sentence));
  g_ptr_array_add (making->answer->whys, stead_statement_net_why (statement));
  if (add_lines (making, statement, STEAD_STATEMENT_CASH) + add_lines (making, statement, STEAD_STATEMENT_INCOME) == 0)
    stead_packet_blank (making, g_strdup (_("Enter receipts and the cash book in Keep.")), STEAD_TARGET_NEW_RECEIPT, 0);
  if (statement->n_unpaid > 0)
    stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                           g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%d receipt is not paid yet, or not all of it.",
                                                         "%d receipts are not paid yet, or not all of them.",
                                                         (gulong) statement->n_unpaid), statement->n_unpaid));
  return TRUE;
}

gboolean
stead_packet_make_worth (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadStatementAnswer *statement = stead_packet_statement (making, error);

  if (statement == NULL)
    return FALSE;
  g_ptr_array_add (making->answer->whys, stead_statement_worth_why (statement));
  if (add_lines (making, statement, STEAD_STATEMENT_BALANCE) + add_lines (making, statement, STEAD_STATEMENT_WORTH) == 0)
    stead_packet_blank (making, g_strdup (_("Enter what is on hand, what lasts and what is owed in Keep.")),
                        STEAD_TARGET_NEW_RECEIPT, 0);
  return TRUE;
}
