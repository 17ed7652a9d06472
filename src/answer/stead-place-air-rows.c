/* stead-place-air-rows.c - every reading of a cooler as it stands, a wrong one beside the right one. */
#include "config.h"

#include "answer/stead-place-air-private.h"

#include <glib/gi18n-lib.h>

static void
row_free (gpointer data)
{
  g_free (((SteadAirRow *) data)->text);
  g_free (data);
}

char *
stead_place_initials (const GPtrArray *people,
                      gint64           person_id)
{
  for (guint i = 0; i < people->len; i++)
    if (((const SteadPerson *) people->pdata[i])->id == person_id)
      return stead_check_initials (((const SteadPerson *) people->pdata[i])->name);
  return NULL;
}

/* "52 °F on November 3, 7:40 AM (A. B.)" */
static char *
reading_text (const SteadPlaceAirAnswer *self,
              const SteadShown          *shown)
{
  g_autofree char *value = stead_check_value_text (shown, NULL, self->units);
  g_autofree char *day = stead_day_format (stead_time_day (shown->at), STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *time = stead_check_time_text (shown->at);
  g_autofree char *who = stead_place_initials (self->people, shown->person_id);

  if (who == NULL)
    /* Translators: a temperature, a day, a time of day. */
    return g_strdup_printf (_("%1$s on %2$s, %3$s"), value, day, time);
  /* Translators: a temperature, a day, a time of day, initials. */
  return g_strdup_printf (_("%1$s on %2$s, %3$s (%4$s)"), value, day, time, who);
}

static const SteadShown *
correction_in (const GPtrArray  *readings,
               const SteadShown *wrong)
{
  for (guint i = 0; i < readings->len; i++)
    if (((const SteadShown *) readings->pdata[i])->corrects_id == wrong->id)
      return readings->pdata[i];
  return NULL;
}

/* (nullable): what corrected a reading; it may have been corrected again. */
static const SteadShown *
right_of (const SteadPlaceAirAnswer *self,
          const SteadShown          *wrong)
{
  const SteadShown *right = correction_in (self->readings, wrong);

  return right != NULL ? right : correction_in (self->wrong, wrong);
}

static SteadAirRow *
row_new (const SteadPlaceAirAnswer *self,
         const SteadShown          *shown)
{
  SteadAirRow *row = g_new0 (SteadAirRow, 1);
  const SteadShown *right = shown->corrected ? right_of (self, shown) : NULL;
  g_autofree char *text = reading_text (self, shown);
  g_autofree char *value = right != NULL ? stead_check_value_text (right, NULL, self->units) : NULL;

  row->id = shown->id;
  row->wrong = shown->corrected;
  if (value != NULL)
    /* Translators: a reading of a cooler, the temperature that is right. */
    row->text = g_strdup_printf (_("%1$s — wrong, corrected to %2$s"), text, value);
  else
    row->text = shown->corrected ? g_strdup_printf (_("%s — wrong, corrected"), text) : g_steal_pointer (&text);
  return row;
}

GPtrArray *
stead_place_air_rows (const SteadPlaceAirAnswer *self,
                      guint                      most)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func (row_free);
  guint i, n;

  g_return_val_if_fail (self != NULL, rows);

  i = self->readings->len;
  n = self->wrong->len;
  while (rows->len < most && (i > 0 || n > 0))
    {
      const SteadShown *good = i > 0 ? self->readings->pdata[i - 1] : NULL;
      const SteadShown *wrong = n > 0 ? self->wrong->pdata[n - 1] : NULL;
      gboolean take_good = wrong == NULL || (good != NULL && good->at >= wrong->at);

      g_ptr_array_add (rows, row_new (self, take_good ? good : wrong));
      i -= take_good;
      n -= !take_good;
    }
  return rows;
}
