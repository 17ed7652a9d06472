/* The table of limits of water, and the verdict on a reading. */
#include "core/stead-water-limit.h"

#include <math.h>

#define FISH_AND_BED (STEAD_WATER_TILAPIA | STEAD_WATER_PLANTS | STEAD_WATER_BACTERIA)

static SteadWaterJudgement
judge (SteadWaterSharers sharers,
       SteadWaterMeasure measure,
       double            value)
{
  SteadWaterJudgement judgement;

  stead_water_judge (sharers, measure, value, NULL, &judgement);
  g_test_message ("%d of %d for %x: %d", (int) (1000 * value), measure, sharers, judgement.verdict);
  return judgement;
}

/* FAO 589, tables 3.1 and 3.2 (read), whole: every printed cell, and no other. */
static void
test_fao (void)
{
  static const struct
  {
    SteadWaterSharers whose;
    double temp[2], ph[2], tan, nitrite, nitrate[2], oxygen[2];
  } table[] = {
    { STEAD_WATER_WARM_FISH, { 22, 32 }, { 6, 8.5 }, 3, 1, { NAN, 400 }, { 4, 6 } },
    { STEAD_WATER_COLD_FISH, { 10, 18 }, { 6, 8.5 }, 1, 0.1, { NAN, 400 }, { 6, 8 } },
    { STEAD_WATER_PLANTS, { 16, 30 }, { 5.5, 7.5 }, 30, 1, { NAN, NAN }, { 3, NAN } },
    { STEAD_WATER_BACTERIA, { 14, 34 }, { 6, 8.5 }, 3, 1, { NAN, NAN }, { 4, 8 } },
    { STEAD_WATER_TOGETHER, { 18, 30 }, { 6, 7 }, 1, 1, { 5, 150 }, { 5, NAN } },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      const double cells[][3] = {
        { STEAD_WATER_TEMPERATURE, table[i].temp[0], table[i].temp[1] },
        { STEAD_WATER_PH, table[i].ph[0], table[i].ph[1] },
        { STEAD_WATER_TAN, NAN, table[i].tan },
        { STEAD_WATER_NITRITE, NAN, table[i].nitrite },
        { STEAD_WATER_NITRATE, table[i].nitrate[0], table[i].nitrate[1] },
        { STEAD_WATER_OXYGEN, table[i].oxygen[0], table[i].oxygen[1] },
      };

      for (gsize c = 0; c < G_N_ELEMENTS (cells); c++)
        {
          const SteadWaterLimit *row = stead_water_range (table[i].whose, (SteadWaterMeasure) cells[c][0]);

          if (isnan (cells[c][1]) && isnan (cells[c][2]))
            {
              g_assert_null (row);
              continue;
            }
          g_assert_nonnull (row);
          g_assert_true (row->min == cells[c][1] || (isnan (row->min) && isnan (cells[c][1])));
          g_assert_true (row->max == cells[c][2] || (isnan (row->max) && isnan (cells[c][2])));
        }
    }
  g_assert_null (stead_water_range (STEAD_WATER_WARM_FISH, STEAD_WATER_CHLORINE));
}

/* Printed ends are inside; what is printed with < or > is itself outside. */
static void
test_ends (void)
{
  const SteadWaterLimit *temp = stead_water_range (STEAD_WATER_TOGETHER, STEAD_WATER_TEMPERATURE);
  const SteadWaterLimit *nitrite = stead_water_range (STEAD_WATER_TOGETHER, STEAD_WATER_NITRITE);
  const SteadWaterLimit *oxygen = stead_water_range (STEAD_WATER_TOGETHER, STEAD_WATER_OXYGEN);
  const SteadWaterLimit *bacteria = stead_water_range (STEAD_WATER_BACTERIA, STEAD_WATER_OXYGEN);
  gboolean low = FALSE;

  g_assert_false (stead_water_outside (temp, 18, NULL));
  g_assert_true (stead_water_outside (temp, 17.9, &low));
  g_assert_true (low);
  g_assert_false (stead_water_outside (temp, 30, NULL));
  g_assert_true (stead_water_outside (temp, 30.1, &low));
  g_assert_false (low);
  g_assert_true (stead_water_outside (nitrite, 1, NULL));
  g_assert_false (stead_water_outside (nitrite, 0.99, NULL));
  g_assert_false (stead_water_outside (nitrite, 0, NULL));
  g_assert_true (stead_water_outside (oxygen, 5, NULL));
  g_assert_false (stead_water_outside (oxygen, 5.1, NULL));
  /* Oxygen warns only when low. */
  g_assert_false (stead_water_outside (bacteria, 9, NULL));
  g_assert_true (stead_water_outside (bacteria, 3.9, NULL));
}

/* Every row: inside is ok, just outside is at least "watch", and beyond the ends
 * of harm it is "act", with something to do. */
static void
test_every_row (void)
{
  gsize n = 0;
  const SteadWaterLimit *limits = stead_water_limits (&n);

  for (gsize i = 0; i < n; i++)
    {
      const SteadWaterLimit *row = &limits[i];
      gboolean open_top = isnan (row->max) || (row->traits & STEAD_WATER_LIMIT_LOW_ONLY) != 0;

      g_assert_cmpint (__builtin_popcount (row->whose), ==, 1);
      g_assert_false (isnan (row->min) && isnan (row->max));
      g_assert_false (row->min >= row->max);
      g_assert_false (row->act_below > row->min);
      g_assert_false (row->act_above < row->max);
      if ((row->traits & STEAD_WATER_LIMIT_SHOWN_ONLY) != 0)
        continue;
      if (!isnan (row->min))
        {
          g_assert_cmpint (row->low_action, !=, STEAD_WATER_ACTION_NONE);
          g_assert_cmpint (judge (row->whose, row->measure, row->min + 0.01 * row->min).verdict,
                           ==, STEAD_WATER_OK);
          g_assert_cmpint (judge (row->whose, row->measure, 0.99 * row->min).verdict, >=,
                           STEAD_WATER_WATCH);
        }
      if (!isnan (row->act_below))
        {
          g_assert_cmpint (judge (row->whose, row->measure, row->act_below).verdict, <=,
                           STEAD_WATER_WATCH);
          g_assert_cmpint (judge (row->whose, row->measure, 0.99 * row->act_below).verdict,
                           ==, STEAD_WATER_ACT);
        }
      if (!open_top)
        {
          g_assert_cmpint (row->high_action, !=, STEAD_WATER_ACTION_NONE);
          g_assert_cmpint (judge (row->whose, row->measure, 0.99 * row->max).verdict, ==,
                           STEAD_WATER_OK);
          g_assert_cmpint (judge (row->whose, row->measure, 1.01 * row->max).verdict, >=,
                           STEAD_WATER_WATCH);
        }
      if (!isnan (row->act_above))
        {
          g_assert_cmpint (judge (row->whose, row->measure, row->act_above).verdict, <=,
                           STEAD_WATER_WATCH);
          g_assert_cmpint (judge (row->whose, row->measure, 1.01 * row->act_above).verdict,
                           ==, STEAD_WATER_ACT);
        }
    }
}

/* The table of warnings of the husbandry notes: oxygen under 5 and under 3,
 * un-ionised ammonia 0.02 and 0.05, pH outside 6.4 to 7.4 with plants, nitrate
 * over 150 with plants and 400 with fish, tilapia under 20 and 15 °C. */
static void
test_warnings (void)
{
  static const struct
  {
    SteadWaterSharers sharers;
    SteadWaterMeasure measure;
    double            value;
    SteadWaterVerdict verdict;
  } table[] = {
    { STEAD_WATER_TILAPIA, STEAD_WATER_OXYGEN, 5, STEAD_WATER_OK },
    { STEAD_WATER_TILAPIA, STEAD_WATER_OXYGEN, 4.9, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_OXYGEN, 3, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_OXYGEN, 2.9, STEAD_WATER_ACT },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NH3N, 0.019, STEAD_WATER_OK },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NH3N, 0.02, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NH3N, 0.05, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NH3N, 0.051, STEAD_WATER_ACT },
    { STEAD_WATER_TILAPIA | STEAD_WATER_FRY, STEAD_WATER_NH3N, 0.021, STEAD_WATER_ACT },
    { STEAD_WATER_RAINBOW_TROUT, STEAD_WATER_NH3N, 0.021, STEAD_WATER_ACT },
    { FISH_AND_BED, STEAD_WATER_PH, 6.3, STEAD_WATER_WATCH },
    { FISH_AND_BED, STEAD_WATER_PH, 6.4, STEAD_WATER_OK },
    { FISH_AND_BED, STEAD_WATER_PH, 7.4, STEAD_WATER_OK },
    { FISH_AND_BED, STEAD_WATER_PH, 7.5, STEAD_WATER_WATCH },
    { FISH_AND_BED, STEAD_WATER_PH, 5.9, STEAD_WATER_ACT },
    { STEAD_WATER_TILAPIA, STEAD_WATER_PH, 7.8, STEAD_WATER_OK },
    { FISH_AND_BED, STEAD_WATER_NITRATE, 150, STEAD_WATER_OK },
    { FISH_AND_BED, STEAD_WATER_NITRATE, 151, STEAD_WATER_WATCH },
    { FISH_AND_BED, STEAD_WATER_NITRATE, 4.9, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NITRATE, 399, STEAD_WATER_OK },
    { STEAD_WATER_TILAPIA, STEAD_WATER_NITRATE, 400, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_TEMPERATURE, 20, STEAD_WATER_OK },
    { STEAD_WATER_TILAPIA, STEAD_WATER_TEMPERATURE, 19.9, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_TEMPERATURE, 14.9, STEAD_WATER_ACT },
    { STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_TEMPERATURE, 32.1, STEAD_WATER_WATCH },
    { STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_TEMPERATURE, 10, STEAD_WATER_WATCH },
    { STEAD_WATER_CHANNEL_CATFISH, STEAD_WATER_CHLORIDE, 99, STEAD_WATER_WATCH },
    { STEAD_WATER_TILAPIA, STEAD_WATER_CHLORINE, 0.05, STEAD_WATER_ACT },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    g_assert_cmpint (judge (table[i].sharers, table[i].measure, table[i].value).verdict, ==,
                     table[i].verdict);
}

/* The row that decided is handed back, with its source. */
static void
test_which_row (void)
{
  SteadWaterJudgement judgement = judge (STEAD_WATER_TILAPIA, STEAD_WATER_TEMPERATURE, 21);

  /* FAO has warm fish from 22 °C: the row of the species takes its place. */
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_OK);
  g_assert_cmpint (judgement.limit->whose, ==, STEAD_WATER_TILAPIA);
  judgement = judge (STEAD_WATER_WARM_FISH, STEAD_WATER_TEMPERATURE, 21);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  g_assert_cmpint (judgement.limit->source, ==, STEAD_SOURCE_FAO_589_RANGES);
  g_assert_cmpint (judgement.action, ==, STEAD_WATER_ACTION_COLD);
  g_assert_true (judgement.low);
  /* 31 °C suits tilapia; of those who share the water aquaponics bears least. */
  judgement = judge (FISH_AND_BED, STEAD_WATER_TEMPERATURE, 31);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  g_assert_cmpint (judgement.limit->whose, ==, STEAD_WATER_TOGETHER);
  g_assert_cmpint (judgement.action, ==, STEAD_WATER_ACTION_WARM);
  /* Two species in one water: each has its own row. */
  judgement = judge (STEAD_WATER_TILAPIA | STEAD_WATER_RAINBOW_TROUT, STEAD_WATER_TEMPERATURE, 19);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  judgement = judge (STEAD_WATER_TILAPIA | STEAD_WATER_RAINBOW_TROUT, STEAD_WATER_TEMPERATURE, 25);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_ACT);
  g_assert_cmpint (judgement.limit->whose, ==, STEAD_WATER_RAINBOW_TROUT);
  /* No row: no promise. */
  judgement = judge (STEAD_WATER_PLANTS, STEAD_WATER_CHLORINE, 0);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_UNKNOWN);
  g_assert_null (judgement.limit);
  judgement = judge (0, STEAD_WATER_PH, 7);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_UNKNOWN);
  judgement = judge (STEAD_WATER_TILAPIA, STEAD_WATER_PH, NAN);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_UNKNOWN);
}

/* More sharers are never easier to please. */
static void
test_more_sharers (void)
{
  static const SteadWaterSharers one[] = {
    STEAD_WATER_WARM_FISH, STEAD_WATER_COLD_FISH, STEAD_WATER_PLANTS, STEAD_WATER_BACTERIA,
  };

  for (int m = 0; m < STEAD_N_WATER_MEASURES; m++)
    for (gsize a = 0; a < G_N_ELEMENTS (one); a++)
      for (gsize b = 0; b < G_N_ELEMENTS (one); b++)
        for (double value = 0.01; value < 40; value *= 1.3)
          {
            SteadWaterJudgement alone;
            SteadWaterJudgement both;

            stead_water_judge (one[a], (SteadWaterMeasure) m, value, NULL, &alone);
            stead_water_judge (one[a] | one[b], (SteadWaterMeasure) m, value, NULL, &both);
            g_assert_cmpint (both.verdict, >=, alone.verdict);
          }
}

/* 2 mg/L of total ammonia is little for tilapia in acid water and harmful at pH
 * 8.5: University of Florida FA16 has 5 % un-ionised at 24 °C and pH 8.0 (read). */
static void
test_ammonia (void)
{
  SteadWaterContext context = { 24, 8.0, NAN };
  SteadWaterJudgement judgement;

  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_TAN, 2, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_ACT);
  g_assert_cmpint (judgement.measure, ==, STEAD_WATER_NH3N);
  g_assert_cmpfloat_with_epsilon (judgement.value, 0.1004, 0.0004);
  g_assert_cmpint (judgement.action, ==, STEAD_WATER_ACTION_AMMONIA);
  context.ph = 6.5;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_TAN, 2, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_OK);
  g_assert_cmpint (judgement.measure, ==, STEAD_WATER_TAN);
  context.ph = NAN;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_TAN, 3.5, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  /* Where both are passed alike, the reading itself decides. */
  context.ph = 7.2;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_TAN, 3.5, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  g_assert_cmpint (judgement.measure, ==, STEAD_WATER_TAN);
}

/* SRAC 462 (read): 10 parts of chloride to 1 of nitrite. */
static void
test_nitrite (void)
{
  SteadWaterContext context = { NAN, NAN, 100 };
  SteadWaterJudgement judgement;

  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 4, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  g_assert_false (judgement.chloride_short);
  context.chloride_mgl = 39;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 4, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_ACT);
  g_assert_true (judgement.chloride_short);
  g_assert_cmpint (judgement.action, ==, STEAD_WATER_ACTION_NITRITE);
  context.chloride_mgl = 40;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 4, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  context.chloride_mgl = 2;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 0.5, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_WATCH);
  /* Traces are the noise of a kit; plants have no gills. */
  context.chloride_mgl = 0;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 0.09, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_OK);
  stead_water_judge (STEAD_WATER_PLANTS, STEAD_WATER_NITRITE, 0.5, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_OK);
  context.chloride_mgl = NAN;
  stead_water_judge (STEAD_WATER_TILAPIA, STEAD_WATER_NITRITE, 5.1, &context, &judgement);
  g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_ACT);
}

/* Slips of the pen are told apart, with the reason; nothing is judged then. */
static void
test_impossible (void)
{
  static const struct
  {
    SteadWaterMeasure measure;
    double            value;
    SteadWaterReason  reason;
  } table[] = {
    { STEAD_WATER_TEMPERATURE, -0.1, STEAD_WATER_REASON_ICE },
    { STEAD_WATER_TEMPERATURE, 78, STEAD_WATER_REASON_HOT },
    { STEAD_WATER_PH, 70, STEAD_WATER_REASON_PH_SCALE },
    { STEAD_WATER_PH, -1, STEAD_WATER_REASON_PH_SCALE },
    { STEAD_WATER_TAN, -0.1, STEAD_WATER_REASON_NEGATIVE },
    { STEAD_WATER_OXYGEN, 78, STEAD_WATER_REASON_OXYGEN },
    { STEAD_WATER_OXYGEN_SHARE, 85, STEAD_WATER_REASON_OXYGEN },
    { STEAD_WATER_CONDUCTIVITY, 70000, STEAD_WATER_REASON_SEA },
    { STEAD_WATER_NITRITE, HUGE_VAL, STEAD_WATER_REASON_SLIP },
  };

  for (gsize i = 0; i < G_N_ELEMENTS (table); i++)
    {
      SteadWaterJudgement judgement = judge (FISH_AND_BED, table[i].measure, table[i].value);

      g_assert_cmpint (judgement.verdict, ==, STEAD_WATER_IMPOSSIBLE);
      g_assert_cmpint (judgement.reason, ==, table[i].reason);
      g_assert_cmpint (judgement.action, ==, STEAD_WATER_ACTION_TEST_AGAIN);
      g_assert_null (judgement.limit);
    }
  for (int m = 0; m < STEAD_N_WATER_MEASURES; m++)
    {
      double least = NAN;
      double most = NAN;

      stead_water_possible_range ((SteadWaterMeasure) m, &least, &most);
      g_assert_cmpint (stead_water_reason ((SteadWaterMeasure) m, least), ==,
                       STEAD_WATER_POSSIBLE);
      g_assert_cmpint (stead_water_reason ((SteadWaterMeasure) m, most), ==,
                       STEAD_WATER_POSSIBLE);
      g_assert_cmpint (stead_water_reason ((SteadWaterMeasure) m, least - 0.1), !=,
                       STEAD_WATER_POSSIBLE);
      g_assert_cmpint (stead_water_reason ((SteadWaterMeasure) m, most + 0.1), !=,
                       STEAD_WATER_POSSIBLE);
    }
}

static void
test_sharers (void)
{
  g_assert_cmpint (stead_water_sharers_of_fish (STEAD_FISH_TILAPIA), ==,
                   STEAD_WATER_TILAPIA | STEAD_WATER_WARM_FISH);
  g_assert_cmpint (stead_water_sharers_of_fish (STEAD_FISH_RAINBOW_TROUT), ==,
                   STEAD_WATER_RAINBOW_TROUT | STEAD_WATER_COLD_FISH);
}

/* The band says what the judge says, whoever shares the water: inside of it nothing, outside
 * "watch", past an end at which harm begins "act". */
static void
check_band (SteadWaterSharers sharers,
            SteadWaterMeasure measure)
{
  SteadWaterBand band;
  double min, max;

  stead_water_band (sharers, measure, &band);
  stead_water_possible_range (measure, &min, &max);
  for (int i = 0; i <= 400; i++)
    {
      /* Close steps near zero, where most limits lie, and none on a limit itself. */
      double value = min + (max - min) * pow (i / 400.0, 3) + 1.7e-7;
      gboolean out = value < band.min || value > band.max;
      gboolean act = out && (value < band.act_below || value > band.act_above);
      SteadWaterJudgement judgement;

      stead_water_judge (sharers, measure, value, NULL, &judgement);
      if (value > max)
        continue;
      if (!out)
        g_assert_cmpint (judgement.verdict, <=, STEAD_WATER_OK);
      else
        g_assert_cmpint (judgement.verdict, >=, act ? STEAD_WATER_ACT : STEAD_WATER_WATCH);
    }
}

static void
test_band (void)
{
  SteadWaterBand band;

  for (guint sharers = 1; sharers < 2 * STEAD_WATER_RAINBOW_TROUT; sharers += 3)
    for (int measure = 0; measure < STEAD_N_WATER_MEASURES; measure++)
      check_band ((SteadWaterSharers) sharers, (SteadWaterMeasure) measure);
  /* Fish with plants: UVI's 7.0 and FAO's 6 to 7 lie in our band of 6.4 to 7.4; under 6 the filter stalls. */
  stead_water_band (STEAD_WATER_CHANNEL_CATFISH | STEAD_WATER_PLANTS | STEAD_WATER_BACTERIA, STEAD_WATER_PH, &band);
  g_assert_cmpfloat (band.min, ==, 6.4);
  g_assert_cmpfloat (band.max, ==, 7.4);
  g_assert_cmpfloat (band.act_below, ==, 6);
  g_assert_cmpint (band.min_row->whose, ==, STEAD_WATER_TOGETHER);
  /* More oxygen does no harm, so the printed "4 to 6" has no upper end. */
  stead_water_band (STEAD_WATER_WARM_FISH, STEAD_WATER_OXYGEN, &band);
  g_assert_true (isnan (band.max));
  g_assert_null (band.max_row);
}

int
main (int   argc,
      char *argv[])
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/core/water-limit/fao", test_fao);
  g_test_add_func ("/core/water-limit/ends", test_ends);
  g_test_add_func ("/core/water-limit/every-row", test_every_row);
  g_test_add_func ("/core/water-limit/warnings", test_warnings);
  g_test_add_func ("/core/water-limit/which-row", test_which_row);
  g_test_add_func ("/core/water-limit/more-sharers", test_more_sharers);
  g_test_add_func ("/core/water-limit/ammonia", test_ammonia);
  g_test_add_func ("/core/water-limit/nitrite", test_nitrite);
  g_test_add_func ("/core/water-limit/impossible", test_impossible);
  g_test_add_func ("/core/water-limit/sharers", test_sharers);
  g_test_add_func ("/core/water-limit/band", test_band);
  return g_test_run ();
}
