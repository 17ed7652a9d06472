/* stead-packet-work.c - sections of a packet about the work: hours, money, production, builds,
 * and how figures were made.
 */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "answer/stead-packet-private.h"
#include "core/stead-hours.h"
#include "core/stead-money.h"

/* --- hours --------------------------------------------------------------------------- */

typedef struct
{
  char     *name;       /* of a month or of a duty */
  double    paid, unpaid;
  GArray   *spans;      /* of Span */
} Sum;

static void
sum_free (Sum *sum)
{
  g_free (sum->name);
  g_free (sum);
}

/* In the order in which they come. */
static void
sum_up (GPtrArray              *sums,
        const char             *name,
        const SteadPacketHours *span)
{
  Sum *sum = NULL;

  for (guint i = 0; i < sums->len && sum == NULL; i++)
    if (g_strcmp0 (((Sum *) sums->pdata[i])->name, name) == 0)
      sum = sums->pdata[i];
  if (sum == NULL)
    {
      sum = g_new0 (Sum, 1);
      sum->name = g_strdup (name);
      g_ptr_array_add (sums, sum);
    }
  if (span->paid)
    sum->paid += span->minutes;
  else
    sum->unpaid += span->minutes;
}

typedef struct
{
  GPtrArray *months, *duties;   /* of Sum */
  double     paid, unpaid;
  SteadPacketFigure *figure;
} HoursOf;

static void
count_span (HoursOf                *all,
            const SteadPacketHours *span,
            gint64                  person_id)
{
  g_autofree char *month = NULL, *hours = NULL, *day = NULL;
  int year, number;

  stead_day_split (span->day, &year, &number, NULL);
  month = g_strdup_printf ("%04d-%02d", year, number);
  sum_up (all->months, month, span);
  sum_up (all->duties, span->duty, span);
  if (span->paid)
    all->paid += span->minutes;
  else
    all->unpaid += span->minutes;
  hours = stead_packet_hm (span->minutes);
  day = stead_day_format (span->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day, "3:25" hours, what was done. */
  stead_packet_add_entry (all->figure, g_strdup_printf (_("%1$s: %2$s h, %3$s"), day, hours, span->duty),
                          STEAD_TARGET_HOURS, person_id);
}

static int
compare_months (gconstpointer a,
                gconstpointer b)
{
  return g_strcmp0 ((*(Sum * const *) a)->name, (*(Sum * const *) b)->name);
}

static int
compare_most (gconstpointer a,
              gconstpointer b)
{
  const Sum *one = *(Sum * const *) a, *two = *(Sum * const *) b;
  double first = one->paid + one->unpaid, second = two->paid + two->unpaid;

  return first != second ? (first > second ? -1 : 1) : g_strcmp0 (one->name, two->name);
}

static void
add_sums (SteadPacketMaking *making,
          const char        *title,
          GPtrArray         *sums,
          const HoursOf     *all)
{
  g_autofree char *total = stead_packet_hm (all->paid + all->unpaid);
  SteadCardTable *table = stead_packet_add_table (making, 1, title, C_("column of hours", "Paid"),
                                                  C_("column of hours", "Unpaid"), C_("column of hours", "In all"), NULL);

  for (guint i = 0; i < sums->len; i++)
    {
      const Sum *sum = sums->pdata[i];

      stead_packet_add_row (table, g_strdup (sum->name), stead_packet_hm (sum->paid), stead_packet_hm (sum->unpaid),
                            stead_packet_hm (sum->paid + sum->unpaid));
    }
  stead_packet_add_row (table, g_strdup (C_("last line of a table", "Together")), stead_packet_hm (all->paid),
                        stead_packet_hm (all->unpaid), stead_packet_marked (total, all->figure));
  table->has_total = TRUE;
}

static void
add_memo (SteadPacketMaking *making,
          const HoursOf     *all)
{
  const SteadFarm *farm = making->answer->farm;
  g_autofree char *rate = NULL, *value = NULL;

  if (farm->labor_cents_hour == 0 || all->unpaid <= 0)
    return;
  rate = stead_packet_money (making, farm->labor_cents_hour);
  value = stead_packet_money (making, stead_money_round (all->unpaid / 60 * (double) farm->labor_cents_hour));
  /* Translators: a sum of money for an hour; another sum. */
  stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup_printf (_("Memo: at %1$s an hour, the rate that the farm "
                                                                      "entered, the unpaid hours would be worth %2$s. "
                                                                      "They are no income."), rate, value));
}

gboolean
stead_packet_make_hours (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GPtrArray) months = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  g_autoptr(GPtrArray) duties = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  HoursOf all = { .months = months, .duties = duties, .figure = stead_packet_add_figure (making, NULL) };
  g_autofree char *total = NULL;
  g_autofree char *decimal = NULL;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      gint64 person_id = stead_packet_person_id (making, i);
      g_autoptr(GPtrArray) hours = stead_packet_repo_hours (making->store, person_id, packet->from_on, packet->to_on,
                                                            error);

      if (hours == NULL)
        return FALSE;
      for (guint k = 0; k < hours->len; k++)
        count_span (&all, hours->pdata[k], person_id);
    }
  total = stead_packet_hm (all.paid + all.unpaid);
  decimal = stead_number_format ((all.paid + all.unpaid) / 60, 2);
  all.figure->text = g_strdup_printf (_("Hours in all: %s"), total);
  if (months->len == 0)
    {
      stead_packet_blank (making, g_strdup (_("Enter the hours that were worked.")), STEAD_TARGET_HOURS,
                          stead_packet_person_id (making, 0));
      return TRUE;
    }
  /* Translators: "41:30" hours and minutes, and the same as "41.50" hours. */
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup_printf (_("<b>%1$s</b> hours and minutes, or %2$s hours."),
                                                                    total, decimal));
  g_ptr_array_sort (months, compare_months);
  g_ptr_array_sort (duties, compare_most);
  add_sums (making, C_("column of hours", "Month"), months, &all);
  add_sums (making, C_("column of hours", "Activity"), duties, &all);
  add_memo (making, &all);
  return TRUE;
}

/* --- money ----------------------------------------------------------------------------- */

/* Cash book, store room, batches and things that last have a place of their own. */
static SteadTarget
fact_target (const SteadStatementEntry *entry)
{
  switch (entry->fact)
    {
    case STEAD_FACT_RECEIPT: return STEAD_TARGET_RECEIPT;
    case STEAD_FACT_BATCH:   return STEAD_TARGET_BATCH;
    case STEAD_FACT_ASSET:   return STEAD_TARGET_ASSET;
    case STEAD_FACT_BEFORE:
    case STEAD_FACT_ACCOUNT:
    case STEAD_FACT_CASH_LINE:
    case STEAD_FACT_MOVEMENT:
    case STEAD_FACT_FISH_MOVE:
    default:                 return STEAD_TARGET_NONE;
    }
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
  for (guint i = 0; i < MIN (line->entries->len, STEAD_PACKET_MOST_ENTRIES); i++)
    {
      const SteadStatementEntry *entry = &g_array_index (line->entries, SteadStatementEntry, i);
      g_autofree char *text = stead_statement_entry_text (entry);
      g_autofree char *share = stead_packet_money (making, entry->cents);

      stead_packet_add_entry (figure, g_strdup_printf (_("%1$s: %2$s"), text, share), fact_target (entry), entry->fact_id);
    }
  figure->n_entries = line->entries->len;
  return stead_packet_marked (cents, figure);
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
  if (add_lines (making, statement, STEAD_STATEMENT_BALANCE) + add_lines (making, statement, STEAD_STATEMENT_WORTH) == 0)
    stead_packet_blank (making, g_strdup (_("Enter what is on hand, what lasts and what is owed in Keep.")),
                        STEAD_TARGET_NEW_RECEIPT, 0);
  return TRUE;
}

/* --- production --------------------------------------------------------------------------- */

/* Names of others stand only where the packet says so and they agreed. */
static gboolean
add_mates (SteadPacketMaking  *making,
           gint64              batch_id,
           gint64              person_id,
           GError            **error)
{
  int others = 0;
  g_autoptr(GPtrArray) names = stead_packet_repo_mates (making->store, batch_id, person_id, &others, error);
  g_autofree char *list = NULL;

  if (names == NULL)
    return FALSE;
  if (others == 0)
    return TRUE;
  if (!making->answer->packet->with_names || names->len == 0)
    {
      stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                             g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Shared with %d other person.",
                                                           "Shared with %d other people.", (gulong) others), others));
      return TRUE;
    }
  g_ptr_array_add (names, NULL);
  list = g_strjoinv (C_("between items of a list", ", "), (char **) names->pdata);
  if ((guint) others == names->len - 1)
    stead_packet_add_text (making, STEAD_BLOCK_NOTE, g_strdup_printf (_("Shared with %s."), list));
  else
    stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                           g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "Shared with %2$s and %1$d other person.",
                                                         "Shared with %2$s and %1$d other people.",
                                                         (gulong) others - names->len + 1),
                                            others - (int) names->len + 1, list));
  return TRUE;
}

static gboolean
add_batch (SteadPacketMaking  *making,
           gint64              batch_id,
           GError            **error)
{
  const SteadBatchAnswer *batch = stead_packet_batch (making, batch_id, error);
  SteadPacketFigure *figure;
  SteadCardTable *table;
  const char *name;

  if (batch == NULL)
    return FALSE;
  name = batch->money.batch->name;
  figure = stead_packet_add_figure (making, g_strdup (name));
  stead_packet_add_entry (figure, g_strdup (name), batch->money.batch->kind == STEAD_BATCH_KITCHEN
                          ? STEAD_TARGET_KITCHEN : STEAD_TARGET_BATCH, batch_id);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (name, figure));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (batch->sentence));
  if (batch->rows->len > 0)
    {
      table = stead_packet_add_table (making, 1, "", C_("column of a plan", "Planned"),
                                      batch->is_over ? C_("column of a plan", "Came") : C_("column of a plan", "So far"),
                                      stead_batch_answer_end_title (batch), NULL);
      for (guint i = 0; i < batch->rows->len; i++)
        {
          const SteadBatchRow *row = batch->rows->pdata[i];

          stead_packet_add_row (table, g_strdup (row->what), g_strdup (row->planned), g_strdup (row->actual),
                                g_strdup (row->end));
        }
    }
  return add_mates (making, batch_id, stead_packet_person_id (making, 0), error);
}

/* Ids of all people, each once; @read: as stead_packet_repo_batches() */
static GArray *
ids_of_all (SteadPacketMaking *making,
            GArray          *(*read) (SteadStore *, gint64, SteadDay, SteadDay, GError **),
            GError           **error)
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

gboolean
stead_packet_make_production (SteadPacketMaking  *making,
                              GError            **error)
{
  g_autoptr(GArray) batches = ids_of_all (making, stead_packet_repo_batches, error);

  if (batches == NULL)
    return FALSE;
  for (guint i = 0; i < batches->len; i++)
    if (!add_batch (making, g_array_index (batches, gint64, i), error))
      return FALSE;
  if (batches->len == 0)
    stead_packet_blank (making, g_strdup (_("Enter who did what in the log of a batch, or hours that belong to it.")),
                        STEAD_TARGET_HOURS, stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- builds --------------------------------------------------------------------------------- */

static gboolean
add_build (SteadPacketMaking  *making,
           gint64              build_id,
           GError            **error)
{
  const SteadBuildAnswer *build = stead_packet_build (making, build_id, error);
  SteadPacketFigure *figure;
  SteadCardTable *table;

  if (build == NULL)
    return FALSE;
  figure = stead_packet_add_figure (making, g_strdup (build->build->name));
  stead_packet_add_entry (figure, g_strdup (build->build->name), STEAD_TARGET_BUILD, build_id);
  stead_packet_add_text (making, STEAD_BLOCK_SUBHEADING, stead_packet_marked (build->build->name, figure));
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, g_strdup (build->sentence));
  table = stead_packet_add_table (making, 1, C_("column of a build", "Material"), C_("column of a build", "Planned"),
                                  C_("column of a build", "Cost"), NULL);
  for (guint i = 0; i < build->rows->len; i++)
    {
      const SteadBuildRow *row = build->rows->pdata[i];

      if (row->left_out)
        continue;
      stead_packet_add_row (table, g_strdup (row->name), stead_number_format (row->quantity, 1),
                            row->cents > 0 ? stead_packet_money (making, row->cents)
                            : row->given ? g_strdup (C_("cost of a material", "given")) : NULL);
    }
  table = stead_packet_add_table (making, 1, C_("column of a build", "Task"), C_("column of a build", "Hours planned"),
                                  C_("column of a build", "Done"), NULL);
  for (guint i = 0; i < build->phases->len; i++)
    {
      const SteadBuildPhase *phase = build->phases->pdata[i];

      stead_packet_add_row (table, g_strdup (phase->name), stead_number_format (phase->hours, 1),
                            phase->done_on != STEAD_DAY_NONE ? stead_day_format (phase->done_on, STEAD_DAY_STYLE_SHORT)
                                                             : NULL);
    }
  for (guint i = 0; i < build->cautions->len; i++)
    stead_packet_add_text (making, STEAD_BLOCK_CAUTION, g_strdup (build->cautions->pdata[i]));
  return TRUE;
}

gboolean
stead_packet_make_build (SteadPacketMaking  *making,
                         GError            **error)
{
  g_autoptr(GArray) builds = ids_of_all (making, stead_packet_repo_builds, error);

  if (builds == NULL)
    return FALSE;
  for (guint i = 0; i < builds->len; i++)
    if (!add_build (making, g_array_index (builds, gint64, i), error))
      return FALSE;
  if (builds->len == 0)
    stead_packet_blank (making, g_strdup (_("Enter hours that belong to a build.")), STEAD_TARGET_HOURS,
                        stead_packet_person_id (making, 0));
  return TRUE;
}

/* --- how figures were made ------------------------------------------------------------------------ */

gboolean
stead_packet_make_how (SteadPacketMaking  *making,
                       GError            **error)
{
  SteadCardTable *table = stead_packet_add_table (making, 1, C_("column of figures", "Figure"),
                                                  C_("column of figures", "How"), NULL);
  const SteadPacketAnswer *answer = making->answer;

  table->is_figure[1] = FALSE;
  stead_packet_add_row (table, g_strdup (_("Hours")),
                        g_strdup (_("End less start less meals; rests of up to 20 minutes stay in. Minutes are added, and "
                                    "only the sum is shown as hours. Source: 29 CFR 785.18.")));
  stead_packet_add_row (table, g_strdup (_("Late entries")),
                        g_strdup (_("Made more than 7 days after the work; a rule of this program.")));
  stead_packet_add_row (table, g_strdup (_("Unpaid hours")),
                        g_strdup (_("Shown beside the money and never in it. Source of the rule: 2 CFR 200.306(e).")));
  stead_packet_add_row (table, g_strdup (_("Earned")),
                        g_strdup (_("Sales less what was used up, with the change of stock and of what grows, and with wear "
                                    "of things that last.")));
  stead_packet_add_row (table, g_strdup (_("Net worth")),
                        g_strdup (_("What is owned less what is owed. Worth at the end is worth at first, and what was put "
                                    "in, and earned, less what was taken out.")));
  stead_packet_add_row (table, g_strdup (_("Skills")),
                        g_strdup (_("The best try counts. It is shown by rows of the log, not by words alone.")));
  stead_packet_add_text (making, STEAD_BLOCK_NOTE,
                         g_strdup (_("A small raised number at a figure is its mark. In the program, the packets in Show "
                                     "lead from the mark to the entries that make the figure.")));
  table = stead_packet_add_table (making, 2, C_("column of marks", "Mark"), C_("column of marks", "Figure"),
                                  C_("column of marks", "Entries"), NULL);
  for (guint i = 0; i < answer->parts->len; i++)
    {
      const SteadPacketPart *part = answer->parts->pdata[i];

      for (guint k = 0; k < part->figures->len; k++)
        {
          const SteadPacketFigure *figure = part->figures->pdata[k];

          stead_packet_add_row (table, g_strdup_printf ("%d", figure->mark), g_strdup (figure->text),
                                g_strdup_printf ("%u", figure->n_entries));
        }
    }
  return TRUE;
}
