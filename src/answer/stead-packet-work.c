/* stead-packet-work.c - the hours of a packet, and how its figures were made. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <stdlib.h>
#include <string.h>

#include "answer/stead-packet-private.h"
#include "answer/stead-sum-private.h"
#include "answer/stead-words-private.h"
#include "core/stead-money.h"

/* --- hours --------------------------------------------------------------------------- */

typedef struct
{
  char     *text;
  gint64    person_id;
} Entry;

static void
entry_clear (gpointer data)
{
  g_free (((Entry *) data)->text);
}

typedef struct
{
  char     *name;       /* of a month or of a duty */
  double    paid, unpaid;
  GArray   *entries;    /* of Entry */
} Sum;

static void
sum_free (Sum *sum)
{
  g_array_unref (sum->entries);
  g_free (sum->name);
  g_free (sum);
}

/* In the order in which they come. */
static void
sum_up (GPtrArray              *sums,
        const char             *name,
        const SteadPacketHours *span,
        const char             *text,
        gint64                  person_id)
{
  Entry entry = { g_strdup (text), person_id };
  Sum *sum = NULL;

  for (guint i = 0; i < sums->len && sum == NULL; i++)
    if (g_strcmp0 (((Sum *) sums->pdata[i])->name, name) == 0)
      sum = sums->pdata[i];
  if (sum == NULL)
    {
      sum = g_new0 (Sum, 1);
      sum->name = g_strdup (name);
      sum->entries = g_array_new (FALSE, FALSE, sizeof (Entry));
      g_array_set_clear_func (sum->entries, entry_clear);
      g_ptr_array_add (sums, sum);
    }
  if (span->paid)
    sum->paid += span->minutes;
  else
    sum->unpaid += span->minutes;
  g_array_append_val (sum->entries, entry);
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
  g_autofree char *month = NULL, *hours = NULL, *day = NULL, *text = NULL;
  int year, number;

  stead_day_split (span->day, &year, &number, NULL);
  month = g_strdup_printf ("%04d-%02d", year, number);
  hours = stead_packet_hm (span->minutes);
  day = stead_day_format (span->day, STEAD_DAY_STYLE_MEDIUM);
  /* Translators: a day, "3:25" hours, what was done. */
  text = g_strdup_printf (_("%1$s: %2$s h, %3$s"), day, hours, span->duty);
  sum_up (all->months, month, span, text, person_id);
  sum_up (all->duties, span->duty, span, text, person_id);
  if (span->paid)
    all->paid += span->minutes;
  else
    all->unpaid += span->minutes;
  stead_packet_add_entry (all->figure, g_steal_pointer (&text), STEAD_TARGET_HOURS, person_id);
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

/* Months are summed up under "2026-08", which sorts by time. */
static char *
month_text (const char *key)
{
  return stead_month_format (atoi (key), atoi (key + strlen ("2026-")));
}

/* The hours of one line, with a mark of their own. */
static char *
marked_sum (SteadPacketMaking *making,
            const Sum         *sum,
            const char        *name)
{
  g_autofree char *hours = stead_packet_hm (sum->paid + sum->unpaid);
  /* Translators: a month or what was done; hours and minutes, "3:25". */
  SteadPacketFigure *figure = stead_packet_add_figure (making, g_strdup_printf (_("%1$s: %2$s"), name, hours));

  for (guint i = 0; i < sum->entries->len; i++)
    {
      const Entry *entry = &g_array_index (sum->entries, Entry, i);

      stead_packet_add_entry (figure, g_strdup (entry->text), STEAD_TARGET_HOURS, entry->person_id);
    }
  return stead_packet_marked (hours, figure);
}

static void
add_sums (SteadPacketMaking *making,
          const char        *title,
          GPtrArray         *sums,
          gboolean           are_months,
          const HoursOf     *all)
{
  g_autofree char *total = stead_packet_hm (all->paid + all->unpaid);
  SteadCardTable *table = stead_packet_add_table (making, 1, title, C_("column of hours", "Paid"),
                                                  C_("column of hours", "Unpaid"), C_("column of hours", "In all"), NULL);

  for (guint i = 0; i < sums->len; i++)
    {
      const Sum *sum = sums->pdata[i];
      char *name = are_months ? month_text (sum->name) : g_strdup (sum->name);

      stead_packet_add_row (table, name, stead_packet_hm (sum->paid), stead_packet_hm (sum->unpaid),
                            marked_sum (making, sum, name));
    }
  stead_packet_add_row (table, g_strdup (C_("last line of a table", "Together")), stead_packet_hm (all->paid),
                        stead_packet_hm (all->unpaid), stead_packet_marked (total, all->figure));
  table->has_total = TRUE;
}

/* "Maya R. 41:30 + Devon K. 20:05 = 61:35", of a team; then the months of all. */
static void
put_hours_why (SteadPacketMaking *making,
               const HoursOf     *all,
               const GArray      *people_min)
{
  g_autofree char *total = stead_packet_hm (all->paid + all->unpaid);
  GString *worked = g_string_new (NULL);
  g_autoptr(GString) months = g_string_new (NULL);

  for (guint i = 0; i < people_min->len && people_min->len > 1; i++)
    {
      g_autofree char *hours = stead_packet_hm (g_array_index (people_min, double, i));

      stead_sum_add_named (worked, stead_packet_person_name (making, i), hours);
    }
  for (guint i = 0; i < all->months->len; i++)
    {
      const Sum *sum = all->months->pdata[i];
      g_autofree char *name = month_text (sum->name), *hours = stead_packet_hm (sum->paid + sum->unpaid);

      stead_sum_add_named (months, name, hours);
    }
  stead_sum_end (months, total);
  if (worked->len > 0)
    {
      stead_sum_end (worked, total);
      g_string_append_c (worked, '\n');
    }
  g_string_append (worked, months->str);
  g_ptr_array_add (making->answer->whys, stead_why_new (
    g_strdup (_("Hours of this packet")),
    _("End − start − meals of each entry in the days of the packet, in hours and minutes, added up for each of whom it is. Rests "
      "of up to 20 minutes stay in. What was corrected counts once."),
    g_string_free (worked, FALSE), _("29 CFR 785.18.")));
}

static void
put_memo_why (SteadPacketMaking *making,
              double             unpaid_min,
              const char        *rate,
              const char        *value)
{
  g_autofree char *hours = stead_number_format (unpaid_min / 60, 2);

  g_ptr_array_add (making->answer->whys, stead_why_new (
    g_strdup (_("What the unpaid hours would be worth")),
    _("Hours that nobody was paid for × the rate that the farm entered. They stand beside the money and are never in it."),
    /* Translators: hours, money for an hour, money. */
    g_strdup_printf (_("%1$s h × %2$s = %3$s"), hours, rate, value), _("2 CFR 200.306(e).")));
}

static void
add_memo (SteadPacketMaking *making,
          const HoursOf     *all)
{
  const SteadFarm *farm = making->answer->farm;
  g_autofree char *rate = NULL, *value = NULL, *text = NULL;

  if (farm->labor_cents_hour == 0 || all->unpaid <= 0)
    return;
  rate = stead_packet_money (making, farm->labor_cents_hour);
  value = stead_packet_money (making, stead_money_round (all->unpaid / 60 * (double) farm->labor_cents_hour));
  /* Translators: a sum of money for an hour; another sum. */
  text = g_strdup_printf (_("Memo: at %1$s an hour, the rate that the farm entered, the unpaid hours would be worth %2$s. "
                            "They are no income."), rate, value);
  stead_packet_add_text (making, STEAD_BLOCK_NOTE, stead_packet_marked (text, all->figure));
  put_memo_why (making, all->unpaid, rate, value);
}

gboolean
stead_packet_make_hours (SteadPacketMaking  *making,
                         GError            **error)
{
  const SteadPacket *packet = making->answer->packet;
  g_autoptr(GPtrArray) months = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  g_autoptr(GPtrArray) duties = g_ptr_array_new_with_free_func ((GDestroyNotify) sum_free);
  HoursOf all = { .months = months, .duties = duties, .figure = stead_packet_add_figure (making, NULL) };
  g_autoptr(GArray) people_min = g_array_new (FALSE, FALSE, sizeof (double));
  g_autofree char *total = NULL, *decimal = NULL, *text = NULL;

  for (guint i = 0; i < making->answer->people->len; i++)
    {
      gint64 person_id = stead_packet_person_id (making, i);
      g_autoptr(GPtrArray) hours = stead_packet_repo_hours (making->store, person_id, packet->from_on, packet->to_on,
                                                            error);
      double minutes = 0;

      if (hours == NULL)
        return FALSE;
      for (guint k = 0; k < hours->len; k++)
        {
          count_span (&all, hours->pdata[k], person_id);
          minutes += ((const SteadPacketHours *) hours->pdata[k])->minutes;
        }
      g_array_append_val (people_min, minutes);
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
  text = g_strdup_printf (_("<b>%1$s</b> hours and minutes, or %2$s hours."), total, decimal);
  stead_packet_add_text (making, STEAD_BLOCK_TEXT, stead_packet_marked (text, all.figure));
  g_ptr_array_sort (months, compare_months);
  g_ptr_array_sort (duties, compare_most);
  add_sums (making, C_("column of hours", "Month"), months, TRUE, &all);
  add_sums (making, C_("column of hours", "Activity"), duties, FALSE, &all);
  put_hours_why (making, &all, people_min);
  add_memo (making, &all);
  return TRUE;
}

/* --- how figures were made ------------------------------------------------------------------------ */

/* Two marks a row: there are many, and each is short. */
static void
add_marks (SteadPacketMaking *making)
{
  SteadCardTable *table = stead_packet_add_table (making, 6, C_("column of marks", "Mark"), C_("column of marks", "Figure"),
                                                  C_("column of marks", "Entries"), C_("column of marks", "Mark"),
                                                  C_("column of marks", "Figure"), C_("column of marks", "Entries"), NULL);
  SteadCardRow *row = NULL;
  int at = 0;

  table->is_figure[0] = table->is_figure[2] = table->is_figure[3] = table->is_figure[5] = TRUE;
  for (guint i = 0; i < making->answer->parts->len; i++)
    {
      const SteadPacketPart *part = making->answer->parts->pdata[i];

      for (guint k = 0; k < part->figures->len; k++)
        {
          const SteadPacketFigure *figure = part->figures->pdata[k];

          row = at == 0 ? stead_card_table_add_row (table) : row;
          row->cells[at++] = g_strdup_printf ("%d", figure->mark);
          row->cells[at++] = g_strdup (figure->text);
          row->cells[at++] = g_strdup_printf ("%u", figure->n_entries);
          at %= 6;
        }
    }
  /* The last row may have room left, which is no missing figure. */
  for (; at > 0 && at < 6; at++)
    row->cells[at] = g_strdup ("");
}

gboolean
stead_packet_make_how (SteadPacketMaking  *making,
                       GError            **error)
{
  SteadCardTable *table = stead_packet_add_table (making, 1, C_("column of figures", "Figure"),
                                                  C_("column of figures", "How"), NULL);

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
  add_marks (making);
  return TRUE;
}
