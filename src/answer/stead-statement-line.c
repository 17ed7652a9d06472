/* stead-statement-line.c - one line of a statement: which postings it takes, and their sum. */
#include "config.h"

#include "answer/stead-statement-private.h"

gboolean
stead_maker_asks (const SteadStatementMaker *self,
                  const SteadPosting        *posting)
{
  return self->answer->enterprise_id == 0 || posting->enterprise_id == self->answer->enterprise_id;
}

void
stead_statement_line_free (SteadStatementLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line->label);
  g_array_unref (line->entries);
  g_free (line);
}

SteadStatementLine *
stead_maker_line (SteadStatementMaker *self,
                  SteadStatementPart   part,
                  const char          *name,
                  const char          *label)
{
  SteadStatementLine *line = g_new0 (SteadStatementLine, 1);

  line->part = part;
  line->name = g_strdup (name);
  line->label = g_strdup (label);
  line->entries = g_array_new (FALSE, FALSE, sizeof (SteadStatementEntry));
  g_ptr_array_add (self->answer->lines, line);
  return line;
}

void
stead_maker_total (SteadStatementMaker *self,
                   SteadStatementPart   part,
                   const char          *name,
                   const char          *label,
                   gint64               before_cents,
                   gint64               cents)
{
  SteadStatementLine *line = stead_maker_line (self, part, name, label);

  line->before_cents = before_cents;
  line->cents = cents;
  line->is_total = TRUE;
}

void
stead_maker_entry (SteadStatementLine *line,
                   const SteadPosting *posting,
                   int                 sign)
{
  SteadStatementEntry entry = { .day = posting->day, .fact = posting->fact, .fact_id = posting->fact_id,
                                .cents = sign * posting->cents };

  g_array_append_val (line->entries, entry);
}

gint64
stead_maker_flow (SteadStatementMaker *self,
                  SteadStatementPart   part,
                  const char          *name,
                  const char          *label,
                  int                  sign,
                  SteadTakeFunc        take,
                  gint64               data)
{
  SteadStatementLine *line = NULL;
  gint64 cents = 0;

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (posting->day < self->answer->from || !stead_maker_asks (self, posting) || !take (self, posting, data))
        continue;
      if (line == NULL)
        line = stead_maker_line (self, part, name, label);
      stead_maker_entry (line, posting, sign);
      cents += sign * posting->cents;
    }
  if (line != NULL)
    line->cents = cents;
  return cents;
}

SteadSumPair
stead_maker_stand (SteadStatementMaker *self,
                   const char          *name,
                   const char          *label,
                   SteadTakeFunc        take,
                   gint64               data)
{
  SteadStatementLine *line = stead_maker_line (self, STEAD_STATEMENT_BALANCE, name, label);
  SteadSumPair sum = { 0, 0 };

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (!stead_maker_asks (self, posting) || !take (self, posting, data))
        continue;
      stead_maker_entry (line, posting, 1);
      sum.end += posting->cents;
      sum.before += posting->day < self->answer->from ? posting->cents : 0;
    }
  line->before_cents = sum.before;
  line->cents = sum.end;
  if (sum.before == 0 && sum.end == 0)
    g_ptr_array_remove_index (self->answer->lines, self->answer->lines->len - 1);
  return sum;
}

/* --- what several lines take ---------------------------------------------------------- */

gboolean
stead_take_head (const SteadStatementMaker *self,
                 const SteadPosting        *posting,
                 gint64                     head)
{
  return posting->head == (SteadHead) head;
}

gboolean
stead_take_stock (const SteadStatementMaker *self,
                  const SteadPosting        *posting,
                  gint64                     data)
{
  return posting->head == STEAD_HEAD_STOCK;
}

gboolean
stead_take_growing (const SteadStatementMaker *self,
                    const SteadPosting        *posting,
                    gint64                     flocks)
{
  return posting->head == STEAD_HEAD_GROWING && g_hash_table_contains (self->flocks, &posting->key) == (flocks != 0);
}

GHashTable *
stead_maker_sums (const SteadStatementMaker *self,
                  SteadHead                  head)
{
  GHashTable *sums = g_hash_table_new_full (g_int64_hash, g_int64_equal, g_free, g_free);

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);
      SteadSumPair *pair;

      if (posting->head != head)
        continue;
      pair = g_hash_table_lookup (sums, &posting->key);
      if (pair == NULL)
        {
          pair = g_new0 (SteadSumPair, 1);
          g_hash_table_insert (sums, g_memdup2 (&posting->key, sizeof posting->key), pair);
        }
      pair->end += posting->cents;
      pair->before += posting->day < self->answer->from ? posting->cents : 0;
    }
  return sums;
}
