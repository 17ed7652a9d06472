/* stead-water-scene.c - who shares a water, and how a test of it is judged. */
#include "config.h"

#include "answer/stead-water-scene.h"
#include "core/stead-water.h"
#include "store/stead-batch-repo.h"

#include <math.h>

void
stead_water_scene_clear (SteadWaterScene *scene)
{
  g_clear_pointer (&scene->unknown_species, g_free);
}

static gboolean
add_fish (SteadStore        *store,
          const SteadWater  *water,
          SteadWaterScene   *scene,
          GError           **error)
{
  g_autoptr(GPtrArray) all = stead_water_repo_fish (store, water->id, 0, 0, error);

  if (all == NULL)
    return FALSE;
  for (guint i = 0; i < all->len; i++)
    {
      const SteadWaterFish *fish = all->pdata[i];
      SteadFishSpecies species;

      if (!stead_fish_species_from_id (fish->species, &species))
        {
          scene->sharers |= STEAD_WATER_WARM_FISH;
          g_free (scene->unknown_species);
          scene->unknown_species = g_strdup (fish->species);
          continue;
        }
      scene->sharers |= stead_water_sharers_of_fish (species);
      if (stead_fish_stage_of (stead_fish_kind (species), fish->mean_g) == STEAD_FISH_FRY)
        scene->sharers |= STEAD_WATER_FRY;
    }
  return TRUE;
}

static gboolean
add_plants (SteadStore        *store,
            const SteadWater  *water,
            SteadWaterScene   *scene,
            GError           **error)
{
  g_autoptr(GPtrArray) batches = NULL;

  scene->planted = water->kind != STEAD_WATER_TANK;
  batches = stead_water_repo_batches (store, water->id, error);
  for (guint i = 0; batches != NULL && i < batches->len; i++)
    scene->planted |= ((const SteadBatch *) batches->pdata[i])->kind == STEAD_BATCH_CROP;
  if (scene->planted)
    scene->sharers |= STEAD_WATER_PLANTS;
  return batches != NULL;
}

static gboolean
add_chloride (SteadStore        *store,
              const SteadWater  *water,
              SteadWaterScene   *scene,
              GError           **error)
{
  g_autoptr(GError) local_error = NULL;
  g_autoptr(SteadWaterTest) test = stead_water_test_repo_last_of (store, water->id, STEAD_READING_CHLORIDE,
                                                                  &local_error);

  scene->chloride_mgl = test != NULL ? test->values[STEAD_READING_CHLORIDE] : NAN;
  scene->chloride_day = test != NULL ? test->day : STEAD_DAY_NONE;
  if (local_error == NULL)
    return TRUE;
  g_propagate_error (error, g_steal_pointer (&local_error));
  return FALSE;
}

/* A gram a liter and a gram a kilogram differ by less than 3 % in water as salty as the
 * sea, which moves the oxygen that it holds by less than a meter can tell. */
gboolean
stead_water_scene_read (SteadStore        *store,
                        const SteadWater  *water,
                        SteadWaterScene   *out,
                        GError           **error)
{
  g_autoptr(SteadFarm) farm = NULL;
  SteadWaterScene scene = { 0 };
  gboolean swims;

  g_return_val_if_fail (STEAD_IS_STORE (store) && water != NULL && out != NULL, FALSE);

  farm = stead_farm_repo_get (store, error);
  if (farm == NULL)
    return FALSE;
  scene.elevation_m = farm->elevation_m;
  scene.units = farm->units;
  scene.salinity_g_kg = water->salinity_g_l;
  if (!add_fish (store, water, &scene, error) || !add_plants (store, water, &scene, error)
      || !add_chloride (store, water, &scene, error))
    {
      stead_water_scene_clear (&scene);
      return FALSE;
    }
  swims = (scene.sharers & (STEAD_WATER_WARM_FISH | STEAD_WATER_COLD_FISH)) != 0;
  if (!swims && water->kind != STEAD_WATER_HYDROPONIC)
    {
      scene.assumed = swims = TRUE;
      scene.sharers |= STEAD_WATER_WARM_FISH;
    }
  if (swims)
    scene.sharers |= STEAD_WATER_BACTERIA;
  *out = scene;
  return TRUE;
}

double
stead_water_value (const SteadWaterScene *scene,
                   const SteadWaterTest  *test,
                   SteadWaterMeasure      measure)
{
  double value;

  g_return_val_if_fail (scene != NULL && test != NULL, NAN);

  if (measure == STEAD_WATER_NH3N)
    return !isnan (test->values[STEAD_READING_TAN])
           && stead_water_nh3n_mgl (test->values[STEAD_READING_TAN], test->values[STEAD_READING_TEMPERATURE],
                                    test->values[STEAD_READING_PH], &value, NULL) ? value : NAN;
  if (measure == STEAD_WATER_OXYGEN_SHARE)
    return !isnan (test->values[STEAD_READING_OXYGEN])
           && stead_water_oxygen_at_mgl (test->values[STEAD_READING_TEMPERATURE], scene->salinity_g_kg,
                                         scene->elevation_m, &value, NULL)
           ? test->values[STEAD_READING_OXYGEN] / value : NAN;
  for (int i = 0; i < STEAD_N_READINGS; i++)
    if (stead_reading_measure ((SteadReading) i) == measure)
      return test->values[i];
  g_return_val_if_reached (NAN);
}

/* Total ammonia is judged as the whole here: its poisonous part has a line of its own. */
void
stead_water_judge_test (const SteadWaterScene *scene,
                        const SteadWaterTest  *test,
                        SteadWaterLine         lines[STEAD_N_WATER_MEASURES])
{
  SteadWaterContext context = STEAD_WATER_CONTEXT_NONE;

  g_return_if_fail (scene != NULL && test != NULL && lines != NULL);

  context.chloride_mgl = isnan (test->values[STEAD_READING_CHLORIDE]) ? scene->chloride_mgl
                                                                      : test->values[STEAD_READING_CHLORIDE];
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    {
      SteadWaterLine *line = &lines[i];

      line->measure = (SteadWaterMeasure) i;
      line->value = stead_water_value (scene, test, line->measure);
      stead_water_judge (scene->sharers, line->measure, line->value, &context, &line->judgement);
    }
}

/* How soon a measure kills, for putting equal verdicts in order. */
static int
urgency (SteadWaterMeasure measure)
{
  static const SteadWaterMeasure order[] = {
    STEAD_WATER_OXYGEN, STEAD_WATER_OXYGEN_SHARE, STEAD_WATER_NH3N, STEAD_WATER_NITRITE, STEAD_WATER_CHLORINE,
    STEAD_WATER_TEMPERATURE, STEAD_WATER_PH, STEAD_WATER_TAN, STEAD_WATER_ALKALINITY, STEAD_WATER_NITRATE,
    STEAD_WATER_CONDUCTIVITY, STEAD_WATER_CHLORIDE, STEAD_WATER_HARDNESS,
  };

  for (gsize i = 0; i < G_N_ELEMENTS (order); i++)
    if (order[i] == measure)
      return (int) i;
  g_return_val_if_reached (0);
}

static int
compare_lines (gconstpointer a,
               gconstpointer b)
{
  const SteadWaterLine *x = *(const SteadWaterLine * const *) a;
  const SteadWaterLine *y = *(const SteadWaterLine * const *) b;

  if (x->judgement.verdict != y->judgement.verdict)
    return x->judgement.verdict > y->judgement.verdict ? -1 : 1;
  return urgency (x->measure) - urgency (y->measure);
}

GPtrArray *
stead_water_worst_lines (const SteadWaterLine *lines)
{
  GPtrArray *worst;

  g_return_val_if_fail (lines != NULL, NULL);

  worst = g_ptr_array_new ();
  for (int i = 0; i < STEAD_N_WATER_MEASURES; i++)
    if (lines[i].judgement.verdict == STEAD_WATER_WATCH || lines[i].judgement.verdict == STEAD_WATER_ACT)
      g_ptr_array_add (worst, (gpointer) &lines[i]);
  g_ptr_array_sort (worst, compare_lines);
  return worst;
}
