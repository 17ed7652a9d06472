/* stead-fish-weeks.c - the weeks of a group of fish as a table. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-fish-weeks.h"

#include "answer/stead-fish-text.h"

/* Weeks of forecast that are shown. */
#define WEEKS_AHEAD 12

/* One row: a week that is past or under way, or one to come. */
typedef struct
{
  SteadFishWeek    week;
  SteadBand        mean_g;      /* to come */
  gboolean         is_ahead;
  const SteadUnit *weight;      /* of one fish: the same in all rows, to be compared */
  const char      *remark;      /* (nullable) */
} WeekRow;

static const WeekRow *
row_of (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

static const SteadFishWeek *
row_week (gconstpointer item)
{
  return &row_of (item)->week;
}

static SteadUnitSystem
units_of (gpointer data)
{
  return *(const SteadUnitSystem *) data;
}

static char *
quantity_text (gconstpointer   item,
               double          base,
               SteadDimension  dimension,
               gpointer        data)
{
  if (row_of (item)->is_ahead)
    return g_strdup ("");
  return isnan (base) ? g_strdup ("–") : stead_quantity_format (base, stead_unit_default (dimension, units_of (data)));
}

static char *
week_text (gpointer item,
           gpointer data)
{
  return stead_day_format (row_week (item)->first_day, STEAD_DAY_STYLE_SHORT);
}

/* Only the weight is forecast week by week. */
static char *
count_or_nothing (gconstpointer item,
                  gint64        count)
{
  return row_of (item)->is_ahead ? g_strdup ("") : stead_number_format ((double) count, 0);
}

static char *
alive_text (gpointer item,
            gpointer data)
{
  return count_or_nothing (item, row_week (item)->alive);
}

static char *
deaths_text (gpointer item,
             gpointer data)
{
  return count_or_nothing (item, row_week (item)->deaths);
}

static char *
harvested_text (gpointer item,
                gpointer data)
{
  return count_or_nothing (item, row_week (item)->harvested);
}

static char *
feed_text (gpointer item,
           gpointer data)
{
  return quantity_text (item, row_week (item)->feed_kg, STEAD_DIMENSION_MASS, data);
}

static char *
water_text (gpointer item,
            gpointer data)
{
  return quantity_text (item, row_week (item)->water_c, STEAD_DIMENSION_TEMPERATURE, data);
}

static char *
mean_text (gpointer item,
           gpointer data)
{
  double mean_g = row_week (item)->mean_g;
  const WeekRow *row = row_of (item);

  if (row->is_ahead)
    return stead_fish_text_range (&row->mean_g, row->weight);
  return isnan (mean_g) ? g_strdup ("–") : stead_quantity_format (mean_g / 1000, row->weight);
}

static char *
remark_text (gpointer item,
             gpointer data)
{
  const char *remark = row_of (item)->remark;

  return g_strdup (remark != NULL ? remark : "");
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
stead_fish_weeks_new (const SteadUnitSystem *units)
{
  GtkWidget *widget = stead_table_new (_("Weeks of the fish"));
  SteadTable *table = STEAD_TABLE (widget);
  gpointer data = (gpointer) units;

  stead_table_add_column (table, _("Week of"), FALSE, FALSE, week_text, NULL, compare_week, data);
  stead_table_add_column (table, _("Weight of one"), TRUE, FALSE, mean_text, NULL, NULL, data);
  stead_table_add_column (table, _("Fish alive"), TRUE, FALSE, alive_text, NULL, NULL, data);
  stead_table_add_column (table, C_("fish", "Lost"), TRUE, FALSE, deaths_text, NULL, NULL, data);
  stead_table_add_column (table, C_("fish", "Harvested"), TRUE, FALSE, harvested_text, NULL, NULL, data);
  stead_table_add_column (table, _("Feed"), TRUE, FALSE, feed_text, NULL, NULL, data);
  stead_table_add_column (table, _("Water"), TRUE, FALSE, water_text, NULL, NULL, data);
  stead_table_add_column (table, _("Remark"), FALSE, TRUE, remark_text, NULL, NULL, data);
  stead_table_set_empty (table, _("Weeks appear here once a day is recorded."));
  gtk_widget_set_hexpand (widget, TRUE);
  return widget;
}

static void
add_weeks_ahead (const SteadFishAnswer *answer,
                 const SteadUnit       *weight,
                 GPtrArray             *rows)
{
  g_autoptr(GArray) ahead = stead_fish_answer_weeks_ahead (answer, WEEKS_AHEAD);

  for (guint i = ahead->len; i-- > 0;)
    {
      const SteadFishWeekAhead *week = &g_array_index (ahead, SteadFishWeekAhead, i);
      SteadDay to_sale = answer->sale_day - week->first_day;
      gboolean sells = answer->sale_day != STEAD_DAY_NONE && to_sale >= 0 && to_sale < 7;
      WeekRow row = { .week.first_day = week->first_day, .mean_g = week->mean_g, .is_ahead = TRUE,
                      .weight = weight, .remark = sells ? _("forecast; can be sold") : _("forecast") };

      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
}

void
stead_fish_weeks_show (SteadTable            *table,
                       const SteadFishAnswer *answer)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;
  const SteadUnit *weight = stead_fish_weight_unit (isnan (answer->mean_g.likely) ? 0 : answer->mean_g.likely,
                                                    answer->farm->units);

  add_weeks_ahead (answer, weight, rows);
  for (guint i = answer->weeks->len; i-- > 0;)
    {
      WeekRow row = { .week = g_array_index (answer->weeks, SteadFishWeek, i), .weight = weight };

      g_ptr_array_add (rows, g_memdup2 (&row, sizeof row));
    }
  model = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  stead_table_set_model (table, model);
}
