/* stead-flock-weeks.c - a flock's weeks as a table: those to come, then those logged. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-flock-weeks.h"

#include "answer/stead-lay-text.h"

/* Weeks to come that the table shows above those that were logged. */
#define WEEKS_AHEAD 12

typedef struct
{
  SteadLayWeek  week;
  gboolean      is_ahead;
  SteadBand     eggs;      /* if it is */
  const char   *remark;    /* (nullable): belongs to the answer or is translated */
} WeekRow;

static const WeekRow *
row_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static const SteadLayWeek *
row_week (gconstpointer item)
{
  return &row_of (item)->week;
}

static char *
week_text (gpointer item,
           gpointer data)
{
  return stead_day_format (row_week (item)->first_day, STEAD_DAY_STYLE_SHORT);
}

static char *
age_text (gpointer item,
          gpointer data)
{
  return stead_number_format (floor (row_week (item)->age_weeks), 0);
}

/* "138 to 163" */
static char *
range_text (double low,
            double high)
{
  g_autofree char *from = stead_number_format (rint (low), 0);
  g_autofree char *to = stead_number_format (rint (high), 0);

  /* Translators: the least and the most of something. */
  return g_strdup_printf (C_("range", "%s to %s"), from, to);
}

static char *
eggs_text (gpointer item,
           gpointer data)
{
  const WeekRow *row = row_of (item);

  return row->is_ahead ? range_text (row->eggs.low, row->eggs.high)
                       : stead_number_format ((double) row->week.eggs, 0);
}

static double
row_frac (const WeekRow *row)
{
  return stead_flock_hen_day_frac (row->is_ahead ? (gint64) rint (row->eggs.likely) : row->week.eggs,
                                   row->week.hen_days);
}

static char *
rate_text (gpointer item,
           gpointer data)
{
  const WeekRow *row = row_of (item);
  double frac = row_frac (row);

  return isnan (frac) ? g_strdup ("–") : stead_number_format (frac * 100, row->is_ahead ? 0 : 1);
}

/* Nothing is forecast of cracks, losses and feed. */
static char *
count_or_nothing (const WeekRow *row,
                  gint64         count)
{
  return row->is_ahead ? g_strdup ("") : stead_number_format ((double) count, 0);
}

static char *
cracked_text (gpointer item,
              gpointer data)
{
  return count_or_nothing (row_of (item), row_week (item)->cracked);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return count_or_nothing (row_of (item), row_week (item)->deaths);
}

static char *
feed_text (gpointer item,
           gpointer data)
{
  const SteadUnitSystem *units = data;
  double kg = row_week (item)->feed_kg;

  if (row_of (item)->is_ahead)
    return g_strdup ("");
  return kg > 0 ? stead_quantity_format (kg, stead_unit_default (STEAD_DIMENSION_MASS, *units)) : g_strdup ("–");
}

static char *
remark_text (gpointer item,
             gpointer data)
{
  const char *remark = row_of (item)->remark;

  return g_strdup (remark != NULL ? remark : "");
}

static int
compare_rate (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  double p = row_frac (row_of (a)), q = row_frac (row_of (b));

  return (p > q) - (p < q);
}

static int
compare_week (gconstpointer a,
              gconstpointer b,
              gpointer      data)
{
  SteadDay x = row_week (a)->first_day, y = row_week (b)->first_day;

  return (x > y) - (x < y);
}

GtkWidget *
stead_flock_weeks_new (const SteadUnitSystem *units)
{
  GtkWidget *widget = stead_table_new (_("Weeks of the flock"));
  SteadTable *table = STEAD_TABLE (widget);
  gpointer data = (gpointer) units;

  stead_table_add_column (table, _("Week of"), FALSE, FALSE, week_text, NULL, compare_week, NULL);
  stead_table_add_column (table, _("Age, weeks"), TRUE, FALSE, age_text, NULL, compare_week, NULL);
  stead_table_add_column (table, _("Eggs"), TRUE, FALSE, eggs_text, NULL, NULL, NULL);
  stead_table_add_column (table, _("From 100 birds"), TRUE, FALSE, rate_text, NULL, compare_rate, NULL);
  stead_table_add_column (table, _("Cracked"), TRUE, FALSE, cracked_text, NULL, NULL, NULL);
  stead_table_add_column (table, _("Lost"), TRUE, FALSE, deaths_text, NULL, NULL, NULL);
  stead_table_add_column (table, _("Feed"), TRUE, FALSE, feed_text, NULL, NULL, data);
  stead_table_add_column (table, _("Remark"), FALSE, TRUE, remark_text, NULL, NULL, NULL);
  stead_table_set_empty (table, _("Weeks appear here once eggs are recorded."));
  gtk_widget_set_hexpand (widget, TRUE);
  return widget;
}

static const char *
remark_of (const SteadFlockAnswer *answer,
           guint                   week)
{
  for (gsize i = 0; i < answer->series.n_notes; i++)
    if (answer->series.notes[i].far_off && answer->series.notes[i].first == week)
      return _("far off");
  return g_array_index (answer->weeks, SteadLayWeek, week).left_out ? _("left out") : NULL;
}

static void
add_weeks_ahead (const SteadFlockAnswer *answer,
                 GPtrArray              *rows)
{
  for (guint i = MIN (answer->ahead->len, WEEKS_AHEAD); i-- > 0;)
    {
      const SteadLayAhead *ahead = &g_array_index (answer->ahead, SteadLayAhead, i);
      WeekRow row = { .is_ahead = TRUE, .eggs = ahead->eggs,
                      .remark = answer->is_learned ? _("forecast") : _("expected") };

      row.week.first_day = stead_lay_text_ahead_day (answer, ahead);
      row.week.age_weeks = ahead->age_weeks;
      row.week.hen_days = 7 * ahead->hens;
      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
}

void
stead_flock_weeks_show (SteadTable             *table,
                        const SteadFlockAnswer *answer)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  g_return_if_fail (STEAD_IS_TABLE (table) && answer != NULL);

  add_weeks_ahead (answer, rows);
  for (guint i = answer->weeks->len; i-- > 0;)
    {
      WeekRow row = { .week = g_array_index (answer->weeks, SteadLayWeek, i), .remark = remark_of (answer, i) };

      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
  model = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  stead_table_set_model (table, model);
}
