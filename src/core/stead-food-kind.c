/* stead-food-kind.c - what kind of food it is by pH and water activity, and its jars. */
#include "config.h"

#include "core/stead-core-error.h"
#include "core/stead-food-kind.h"

#include <math.h>

#define PINTS_PER_QUART 2

/* The place of a word in a list; -1 if it is not there. */
static int
word_place (const char         *word,
            const char * const *words)
{
  for (int i = 0; words[i] != NULL; i++)
    if (g_strcmp0 (word, words[i]) == 0)
      return i;
  return -1;
}

gboolean
stead_tcs_class (const SteadLimitTable  *table,
                 gboolean                heated_and_packaged,
                 double                  aw,
                 double                  ph,
                 SteadTcsClass          *out,
                 GError                **error)
{
  static const char * const words[] = { "non_TCS", "PA", NULL };
  SteadLimitFact facts[3] = { { NULL } };
  gsize n = 0;
  const SteadLimit *row;
  int place;

  g_return_val_if_fail (table != NULL && out != NULL, FALSE);

  if (!isnan (aw))
    facts[n++] = (SteadLimitFact) { "aw", NULL, aw };
  if (!isnan (ph))
    facts[n++] = (SteadLimitFact) { "ph", NULL, ph };
  row = stead_limit_table_find (table, "tcs_table", heated_and_packaged ? "A" : "B", "class", facts, error);
  if (row == NULL)
    return FALSE;
  place = word_place (row->word, words);
  g_return_val_if_fail (place >= 0, FALSE);
  *out = (SteadTcsClass) place;
  return TRUE;
}

gboolean
stead_acid_kind (const SteadLimitTable  *table,
                 const SteadAcidFood    *food,
                 SteadAcidKind          *out,
                 GError                **error)
{
  static const char * const words[] = { "acidified_food", "not_low_acid", "low_acid", "outside_part_114", NULL };
  const SteadLimitFact facts[] = {
    { "acid_added", food->acid_added ? "yes" : "no", 0 },
    { "refrigerated", food->refrigerated ? "yes" : "no", 0 },
    { "aw", NULL, isnan (food->aw) ? 1 : food->aw },
    /* Last, since a list ends where a name is missing. */
    { isnan (food->ph) ? NULL : "ph", NULL, food->ph },
    { NULL },
  };
  const SteadLimit *row;
  int place;

  g_return_val_if_fail (table != NULL && out != NULL, FALSE);

  row = stead_limit_table_find (table, "acidified", food->tomato ? "tomato" : "other", "class", facts, error);
  if (row == NULL)
    return FALSE;
  place = word_place (row->word, words);
  g_return_val_if_fail (place >= 0, FALSE);
  *out = (SteadAcidKind) place;
  return TRUE;
}

gboolean
stead_acid_ph_in_order (const SteadLimitTable *table,
                        double                 ph)
{
  const SteadLimit *row;
  const SteadLimitReading reading = { ph, "pH", 0, 0, NAN };
  SteadJudgement judgement;

  g_return_val_if_fail (table != NULL, FALSE);
  row = stead_limit_table_find (table, "acidified", "any", "ph", NULL, NULL);
  return row != NULL && stead_limit_judge (row, &reading, &judgement, NULL)
         && judgement.verdict != STEAD_LIMIT_NOT_MET;
}

gboolean
stead_jar_acid (const SteadLimitTable  *table,
                const char             *acid,
                const char             *jar,
                double                  jars,
                double                 *out_amount,
                const char            **out_unit,
                GError                **error)
{
  const SteadLimit *row;

  g_return_val_if_fail (table != NULL && acid != NULL && jar != NULL, FALSE);
  g_return_val_if_fail (out_amount != NULL && out_unit != NULL, FALSE);

  row = stead_limit_table_find (table, "acid_amount", acid, "per_quart", NULL, error);
  if (row == NULL)
    return FALSE;
  *out_amount = row->value * jars / (g_str_equal (jar, "pint") ? PINTS_PER_QUART : 1);
  *out_unit = row->unit;
  return TRUE;
}

gboolean
stead_jar_process_min (const SteadLimitTable  *table,
                       const char             *product,
                       const char             *jar,
                       double                  elevation_ft,
                       double                 *out_min,
                       GError                **error)
{
  const SteadLimitFact facts[] = { { "jar", jar, 0 }, { "altitude_ft", NULL, elevation_ft }, { NULL } };
  const SteadLimit *row;

  g_return_val_if_fail (table != NULL && product != NULL && jar != NULL && out_min != NULL, FALSE);

  row = stead_limit_table_find (table, "can_boiling_water", product, "process_time", facts, error);
  if (row == NULL)
    return FALSE;
  *out_min = stead_limit_value_in (row, "min");
  return TRUE;
}

gboolean
stead_jar_pressure (const SteadLimitTable  *table,
                    const char             *product,
                    const char             *jar,
                    const char             *gauge,
                    double                  elevation_ft,
                    double                 *out_min,
                    double                 *out_psi,
                    GError                **error)
{
  const SteadLimitFact facts[] = {
    { "jar", jar, 0 }, { "canner", gauge, 0 }, { "altitude_ft", NULL, elevation_ft }, { NULL },
  };
  const SteadLimit *time, *pressure;

  g_return_val_if_fail (table != NULL && product != NULL && jar != NULL && gauge != NULL, FALSE);
  g_return_val_if_fail (out_min != NULL && out_psi != NULL, FALSE);

  time = stead_limit_table_find (table, "can_pressure", product, "process_time", facts, error);
  if (time == NULL)
    return FALSE;
  pressure = stead_limit_table_find (table, "can_pressure", product, "pressure", facts, error);
  if (pressure == NULL)
    return FALSE;
  *out_min = stead_limit_value_in (time, "min");
  *out_psi = pressure->value;
  return TRUE;
}

gboolean
stead_tomato_quarts (const SteadLimitTable  *table,
                     const char             *product,
                     double                  tomatoes_lb,
                     double                 *out_quarts,
                     GError                **error)
{
  const SteadLimit *row;

  g_return_val_if_fail (table != NULL && product != NULL && out_quarts != NULL, FALSE);

  row = stead_limit_table_find (table, "tomato_yield", product, "per_quart", NULL, error);
  if (row == NULL)
    return FALSE;
  *out_quarts = tomatoes_lb / row->value;
  return TRUE;
}
