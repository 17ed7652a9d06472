/* stead-instruments-why.c - what a thermometer must show in ice and in boiling water, worked out. */
#include "config.h"

#include "answer/stead-check-plan-private.h"
#include "answer/stead-instruments-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-sanitizer.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

static char *
difference (double          diff_f,
            SteadUnitSystem units)
{
  g_autofree char *number = stead_number_format (units == STEAD_UNITS_US ? diff_f : diff_f / 1.8, units == STEAD_UNITS_US ? 1 : 2);

  return g_strdup_printf (units == STEAD_UNITS_US ? "%s °F" : "%s °C", number);
}

/* The rule is in °F and feet; a metric farm sees its metres go in and its °C come out. */
static char *
boiling_worked (const SteadInstrumentsAnswer *self,
                const SteadLimit             *sea,
                const SteadLimit             *drop)
{
  double feet = self->farm->elevation_m / STEAD_FOOT_M;
  g_autofree char *at_sea = stead_number_format (sea->value, 1), *by = stead_number_format (drop->value, 1);
  g_autofree char *high = stead_number_format (feet, 0), *metres = stead_number_format (self->farm->elevation_m, 0);
  g_autofree char *boils = stead_check_temp_text (stead_boiling_point_f (self->table, feet), TRUE, self->farm->units);
  g_autofree char *thousand = stead_number_format (1000, 0);
  g_autofree char *sum = g_strdup_printf ("%s °F − %s °F × %s ft ÷ %s ft = %s", at_sea, by, high, thousand, boils);

  if (self->farm->units == STEAD_UNITS_METRIC)
    return g_strdup_printf ("%s m ÷ 0.3048 = %s ft\n%s", metres, high, sum);
  return g_steal_pointer (&sum);
}

static SteadWhy *
boiling_why (const SteadInstrumentsAnswer *self)
{
  const SteadLimit *sea = stead_limit_table_by_id (self->table, "boiling-sea-212");
  const SteadLimit *drop = stead_limit_table_by_id (self->table, "boiling-drop-1.8");
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  g_autofree char *source = NULL;

  if (sea == NULL || drop == NULL)
    return NULL;
  g_ptr_array_add (rows, (gpointer) sea);
  g_ptr_array_add (rows, (gpointer) drop);
  source = stead_check_sources_text (rows);
  return stead_why_new (g_strdup (_("Where water boils here")),
                        _("Where it boils at the sea − what it falls for each 1,000 feet × the elevation of the farm. The weather "
                          "moves it by a degree."),
                        boiling_worked (self, sea, drop), source);
}

/* "Probe 1: 33 °F − 32 °F = 1 °F". */
static void
add_off (const SteadInstrumentsAnswer *self,
         const SteadInstrumentSaid    *said,
         GString                      *worked)
{
  for (guint i = 0; i < said->tries->len; i++)
    {
      const SteadInstrumentTry *one = said->tries->pdata[i];
      double shown_f = stead_fahrenheit_from_celsius (one->shown->value);
      g_autofree char *shown = NULL, *must = NULL, *off = NULL, *day = NULL;

      if (isnan (one->off_f))
        continue;
      shown = stead_check_value_text (one->shown, "F", self->farm->units);
      must = stead_check_temp_text (shown_f - one->off_f, TRUE, self->farm->units);
      off = difference (one->off_f, self->farm->units);
      day = stead_day_format (stead_time_day (one->shown->at), STEAD_DAY_STYLE_MEDIUM);
      /* Translators: an instrument, a day, what it showed, what it must show, the difference. */
      g_string_append_printf (worked, _("%1$s%2$s, %3$s: %4$s − %5$s = %6$s"), worked->len > 0 ? "\n" : "",
                              said->instrument->name, day, shown, must, off);
    }
}

/* How far off each scale may be. */
static void
add_limit (const SteadInstrumentsAnswer *self,
           const char                   *scale,
           GPtrArray                    *rows)
{
  const SteadLimitFact facts[] = { { "scale", scale, 0 }, { NULL, NULL, 0 } };
  const SteadLimit *most = stead_limit_table_find (self->table, "thermometer", "food", "error", facts, NULL);

  if (most != NULL)
    g_ptr_array_add (rows, (gpointer) most);
}

static SteadWhy *
off_why (const SteadInstrumentsAnswer *self)
{
  g_autoptr(GPtrArray) rows = g_ptr_array_new ();
  GString *worked = g_string_new (NULL);
  g_autofree char *source = NULL;

  for (guint i = 0; i < self->instruments->len; i++)
    add_off (self, self->instruments->pdata[i], worked);
  add_limit (self, "C_only", rows);
  add_limit (self, "F_only", rows);
  if (worked->len == 0 || rows->len == 0)
    {
      g_string_free (worked, TRUE);
      return NULL;
    }
  source = stead_check_sources_text (rows);
  return stead_why_new (g_strdup (_("How far off a thermometer is")),
                        _("What it showed − what it must show: where ice melts, or where water boils here. How far off it may be "
                          "goes by its scale."),
                        g_string_free (worked, FALSE), source);
}

GPtrArray *
stead_instruments_answer_whys (const SteadInstrumentsAnswer *self)
{
  GPtrArray *whys = stead_whys_new ();

  g_return_val_if_fail (self != NULL, whys);
  stead_whys_add (whys, boiling_why (self));
  stead_whys_add (whys, off_why (self));
  return whys;
}
