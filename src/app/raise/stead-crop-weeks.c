/* stead-crop-weeks.c - a crop's weeks of picking as a table, and a week in words. */
#include "config.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#include "app/raise/stead-crop-weeks.h"

static const SteadPickWeek *
row_week (gconstpointer item)
{
  return stead_row_get ((gpointer) item);
}

/* What is not known, or was not, is a dash. */
static char *
kg_text (double          kg,
         SteadUnitSystem units)
{
  return isnan (kg) ? g_strdup ("–") : stead_crop_kg_text (kg, units);
}

static char *
week_text (gpointer item,
           gpointer data)
{
  return stead_day_format (row_week (item)->first_day, STEAD_DAY_STYLE_SHORT);
}

static char *
picked_text (gpointer item,
             gpointer data)
{
  return kg_text (row_week (item)->picked_kg, *(const SteadUnitSystem *) data);
}

static char *
lost_text (gpointer item,
           gpointer data)
{
  return kg_text (row_week (item)->lost_kg, *(const SteadUnitSystem *) data);
}

static char *
likely_text (gpointer item,
             gpointer data)
{
  return kg_text (row_week (item)->likely_kg, *(const SteadUnitSystem *) data);
}

static char *
low_text (gpointer item,
          gpointer data)
{
  return kg_text (row_week (item)->low_kg, *(const SteadUnitSystem *) data);
}

static char *
high_text (gpointer item,
           gpointer data)
{
  return kg_text (row_week (item)->high_kg, *(const SteadUnitSystem *) data);
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
stead_crop_weeks_new (const SteadUnitSystem *units)
{
  GtkWidget *widget = stead_table_new (_("Weeks of picking"));
  SteadTable *table = STEAD_TABLE (widget);
  gpointer data = (gpointer) units;

  stead_table_add_column (table, _("Week of"), FALSE, TRUE, week_text, NULL, compare_week, data);
  stead_table_add_column (table, _("Picked"), TRUE, FALSE, picked_text, NULL, NULL, data);
  stead_table_add_column (table, _("Thrown out"), TRUE, FALSE, lost_text, NULL, NULL, data);
  stead_table_add_column (table, _("Expected"), TRUE, FALSE, likely_text, NULL, NULL, data);
  stead_table_add_column (table, _("At least"), TRUE, FALSE, low_text, NULL, NULL, data);
  stead_table_add_column (table, _("At most"), TRUE, FALSE, high_text, NULL, NULL, data);
  stead_table_set_empty (table, _("Weeks appear here once the first pick is in sight."));
  gtk_widget_set_hexpand (widget, TRUE);
  return widget;
}

void
stead_crop_weeks_show (SteadTable            *table,
                       const SteadCropAnswer *answer)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autoptr(GListModel) model = NULL;

  for (guint i = answer->weeks->len; i-- > 0;)
    g_ptr_array_add (rows, g_memdup2 (&g_array_index (answer->weeks, SteadPickWeek, i), sizeof (SteadPickWeek)));
  model = stead_rows_from_array (g_steal_pointer (&rows), g_free);
  stead_table_set_model (table, model);
}

char *
stead_crop_weeks_words (const SteadPickWeek *week,
                        SteadUnitSystem      units)
{
  g_autofree char *day = stead_day_format (week->first_day, STEAD_DAY_STYLE_SHORT);
  g_autofree char *picked = stead_crop_kg_text (week->picked_kg, units);
  g_autofree char *likely = NULL, *low = NULL, *high = NULL;

  if (isnan (week->likely_kg))
    /* Translators: a day, an amount. */
    return g_strdup_printf (_("Week of %s: %s picked"), day, picked);
  likely = stead_crop_kg_text (week->likely_kg, units);
  low = stead_crop_kg_text (week->low_kg, units);
  high = stead_crop_kg_text (week->high_kg, units);
  /* Translators: a day, amounts: likely, low, high. */
  return g_strdup_printf (_("Week of %s: about %s expected, between %s and %s"), day, likely, low, high);
}
