/* stead-crop-words.c - the crop answer's sentence, its caution, and names of entries. */
#include "config.h"

#include "answer/stead-crop-private.h"
#include "answer/stead-tank-text.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* Days of the last seven on which fruit hardly sets, before it is said aloud. */
#define POOR_DAYS_TOLD 3

/* Days ahead for which the last two weeks stand for the weather to come; beyond, only a
 * usual year says something (common practice, no source). */
#define RECENT_HOLDS_DAYS 42

/* Share of plants lost before it is said aloud (common practice, no source). */
#define LOST_TOLD_FRAC 0.10

/* --- amounts ---------------------------------------------------------------- */

char *
stead_crop_warmth_number (double          sum_c,
                          SteadUnitSystem units)
{
  return stead_number_format (round (units == STEAD_UNITS_US ? sum_c * STEAD_F_DAYS_PER_C_DAY : sum_c), 0);
}

char *
stead_crop_warmth_text (double          sum_c,
                        SteadUnitSystem units)
{
  g_autofree char *number = stead_crop_warmth_number (sum_c, units);

  return units == STEAD_UNITS_US ? g_strdup_printf (_("%s degree days (°F)"), number)
                                 : g_strdup_printf (_("%s degree days (°C)"), number);
}

char *
stead_crop_kg_text (double          kg,
                    SteadUnitSystem units)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, units);
  double shown = stead_quantity_from_base (kg, unit);
  double step = shown >= 20 ? 1 : 0.1;

  return stead_quantity_format (stead_quantity_to_base (round (shown / step) * step, unit), unit);
}

static char *
plants_text (gint64 n)
{
  g_autofree char *number = stead_number_format ((double) n, 0);

  return g_strdup_printf (g_dngettext (GETTEXT_PACKAGE, "%s plant", "%s plants", stead_words_plural (n)), number);
}

/* --- the sentence ------------------------------------------------------------- */

static char *
ended_sentence (const SteadCropAnswer *self)
{
  g_autofree char *day = stead_day_format (self->crop->batch.ended_on, STEAD_DAY_STYLE_MEDIUM);
  g_autofree char *picked = stead_crop_kg_text (self->picked.good_base, self->farm->units);
  g_autofree char *plants = plants_text (self->crop->plants);

  /* Translators: a day, "123 lb", "40 plants". */
  return g_strdup_printf (_("This crop ended on %s. It gave <b>%s</b> from %s."), day, picked, plants);
}

/* "512 of 1,300 degree days (°F)", in markup. */
static char *
warmth_sentence (const SteadCropAnswer *self)
{
  g_autofree char *plants = plants_text (self->plants);
  g_autofree char *sum = stead_crop_warmth_number (self->sum_c + self->assumed_c, self->farm->units);
  g_autofree char *need = stead_crop_warmth_text (self->need_c.likely, self->farm->units);

  /* Translators: "40 plants", a number, "1,300 degree days (°F)". */
  return g_strdup_printf (_("%s have had %s of %s."), plants, sum, need);
}

static char *
ripe_sentence (const SteadCropAnswer *self,
               SteadDay               today)
{
  const SteadRipeDate *ripe = &self->ripe;
  g_autofree char *day = NULL, *early = NULL, *late = NULL;

  if (ripe->day == STEAD_DAY_NONE)
    return g_strdup (_("At this warmth the crop does <b>not get ripe within a year</b>."));
  if (ripe->day <= today)
    return g_strdup (_("The first pick is <b>due now</b>. Look at the plants."));
  day = stead_day_format (ripe->day, STEAD_DAY_STYLE_SHORT);
  early = stead_day_format (MAX (ripe->early, today), STEAD_DAY_STYLE_SHORT);
  if (ripe->late == STEAD_DAY_NONE)
    return g_strdup_printf (_("The first pick is expected about <b>%s</b>, or later."), day);
  late = stead_day_format (ripe->late, STEAD_DAY_STYLE_SHORT);
  /* Translators: three days: expected, early, late. */
  return g_strdup_printf (_("The first pick is expected about <b>%s</b>, between %s and %s."), day, early, late);
}

/* The model ends before the date. */
static const char *
far_sentence (const SteadCropAnswer *self,
              SteadDay               today)
{
  const SteadRipeDate *ripe = &self->ripe;

  if (ripe->outlook == STEAD_RIPE_BY_NORMALS || (ripe->day != STEAD_DAY_NONE && ripe->day <= today + RECENT_HOLDS_DAYS))
    return NULL;
  return _("That is too far ahead for the last two weeks to tell: enter the usual year, and seasons count.");
}

static char *
growing_sentence (const SteadCropAnswer *self,
                  SteadDay               today)
{
  GString *text = g_string_new (NULL);
  g_autofree char *warmth = NULL, *ripe = NULL, *gaps = NULL;

  if (!self->has_ripe)
    {
      g_autofree char *plants = plants_text (self->plants);
      /* Translators: "40 plants". */
      g_autofree char *stand = g_strdup_printf (_("%s stand."), plants);

      stead_words_add (text, stand);
      stead_words_add (text, self->no_ripe);
      return stead_words_end (text);
    }
  warmth = self->from <= today ? warmth_sentence (self) : NULL;
  ripe = ripe_sentence (self, today);
  if (self->n_gaps > 0)
    gaps = g_strdup_printf (g_dngettext (GETTEXT_PACKAGE,
                                         "%d day has no reading and was filled in.",
                                         "%d days have no reading and were filled in.", self->n_gaps),
                            (int) self->n_gaps);
  stead_words_add (text, warmth);
  stead_words_add (text, ripe);
  stead_words_add (text, far_sentence (self, today));
  stead_words_add (text, gaps);
  return stead_words_end (text);
}

static char *
next_sentence (const SteadCropAnswer *self,
               SteadDay               today)
{
  SteadUnitSystem units = self->farm->units;
  g_autofree char *likely = NULL, *low = NULL, *high = NULL;

  if (self->ends_on != STEAD_DAY_NONE && self->ends_on <= today)
    return g_strdup (_("The weeks of picking that were planned are over, and the forecast ends with them. If you pick on, "
                       "enter more weeks; else end the crop."));
  if (isnan (self->next_week.likely))
    return NULL;
  if (self->next_week.high < 0.05)
    return g_strdup (_("Nothing more is expected in the next seven days."));
  likely = stead_crop_kg_text (self->next_week.likely, units);
  low = stead_crop_kg_text (self->next_week.low, units);
  high = stead_crop_kg_text (self->next_week.high, units);
  /* Translators: amounts: likely, low, high. */
  return g_strdup_printf (_("The next seven days should give about <b>%s</b>, between %s and %s."), likely, low, high);
}

static char *
picking_sentence (const SteadCropAnswer *self,
                  SteadDay               today)
{
  SteadUnitSystem units = self->farm->units;
  GString *text = g_string_new (NULL);
  g_autofree char *plants = plants_text (self->plants);
  g_autofree char *picked = stead_crop_kg_text (self->picked.good_base, units);
  g_autofree char *plan = stead_crop_kg_text (self->plan_kg, units);
  /* Translators: "38 plants", "52 lb", "420 lb". */
  g_autofree char *so_far = g_strdup_printf (_("%s have given <b>%s</b> so far, of %s planned."), plants, picked, plan);
  g_autofree char *next = next_sentence (self, today);

  stead_words_add (text, so_far);
  stead_words_add (text, next);
  return stead_words_end (text);
}

char *
stead_crop_sentence (const SteadCropAnswer *self,
                     SteadDay               today)
{
  if (self->crop->batch.ended_on != STEAD_DAY_NONE)
    return ended_sentence (self);
  if (self->plants < 1)
    return g_strdup (_("No plant of this crop stands. Enter the day on which the crop ended."));
  return self->began_on != STEAD_DAY_NONE ? picking_sentence (self, today) : growing_sentence (self, today);
}

/* --- what is wrong -------------------------------------------------------------- */

static char *
set_caution (const SteadCropAnswer *self)
{
  if (self->set_poor < POOR_DAYS_TOLD)
    return NULL;
  /* Translators: in both, two counts of days: "On 4 of the last 7 days". */
  return g_strdup_printf (2 * self->set_hot >= self->set_poor
                          ? _("On %d of the last %d days it was too hot for tomato flowers to set fruit. "
                              "Vent and shade.")
                          : _("On %d of the last %d nights it was too cold for tomato flowers to set fruit. "
                              "Keep 55 °F (13 °C) or more."),
                          self->set_poor, self->set_days);
}

static char *
air_caution (const SteadCropAnswer *self,
             SteadDay               today)
{
  if (isnan (self->deficit_kpa) || self->deficit_day < today - 1)
    return NULL;
  switch (stead_vapor_air (self->deficit_kpa))
    {
    case STEAD_AIR_WET:
      return g_strdup (_("The air is so moist that leaves stay wet, and mold grows. Vent, and warm a little."));
    case STEAD_AIR_DRY:
      return g_strdup (_("The air is so dry that plants close up. Shade, wet the paths, and water more often."));
    case STEAD_AIR_MOIST:
    case STEAD_AIR_GOOD:
    default:
      return NULL;
    }
}

static char *
lost_caution (const SteadCropAnswer *self)
{
  g_autofree char *plants = NULL;

  if (self->plants < 1 || (double) self->lost < LOST_TOLD_FRAC * (double) self->crop->plants || self->lost < 2)
    return NULL;
  plants = plants_text (self->lost);
  /* Translators: "5 plants". */
  return g_strdup_printf (_("%s were lost. Look at roots, stems and leaves, and ask your local extension office "
                            "before you spray anything."), plants);
}

char *
stead_crop_caution (const SteadCropAnswer *self,
                    SteadDay               today)
{
  GString *text;
  g_autofree char *set = NULL, *air = NULL, *lost = NULL;

  if (self->crop->batch.ended_on != STEAD_DAY_NONE)
    return NULL;
  text = g_string_new (NULL);
  lost = lost_caution (self);
  set = set_caution (self);
  air = air_caution (self, today);
  stead_words_add (text, lost);
  stead_words_add (text, set);
  stead_words_add (text, air);
  return stead_words_end (text);
}

/* --- what the fish feed keeps ------------------------------------------------------ */

static char *
keeps_sentence (const SteadCropAnswer *self)
{
  const SteadUnit *area = stead_unit_default (STEAD_DIMENSION_AREA, self->farm->units);
  g_autofree char *feed = stead_crop_kg_text (self->feed_g_day / 1000, self->farm->units);
  g_autofree char *least = stead_words_number (stead_quantity_from_base (self->bed_min_m2, area));
  g_autofree char *most = stead_tank_text_round (self->bed_max_m2, area);
  g_autofree char *few = stead_number_format (floor (self->feed_plants_min), 0);
  g_autofree char *many = stead_number_format (floor (self->feed_plants_max), 0);

  /* Translators: an amount ("1.04 lb"), a range of areas ("63.2", "101 sq ft"), two counts of plants. */
  return g_strdup_printf (_("The fish on this water get about %s of feed a day. That keeps <b>%s to %s of bed</b>, %s to "
                            "%s plants."), feed, least, most, few, many);
}

/* More plants than even the closest stand on the thinnest feed, or fewer than the widest. */
static char *
stand_sentence (const SteadCropAnswer *self)
{
  g_autofree char *plants = plants_text (self->plants);

  if ((double) self->plants > self->feed_plants_max)
    /* Translators: "60 plants". */
    return g_strdup_printf (_("This crop has %s, <b>more than that</b>. Hungry plants turn pale: give this crop fewer "
                              "plants, or soil of their own. Feed the fish no more than they eat."), plants);
  if ((double) self->plants < self->feed_plants_min)
    return g_strdup_printf (_("This crop has %s; the water could feed more. Watch the nitrate."), plants);
  return g_strdup_printf (_("This crop has %s, which fits. Other beds on this water eat from the same feed."), plants);
}

char *
stead_crop_feeding (const SteadCropAnswer *self)
{
  GString *text;
  g_autofree char *keeps = NULL, *stand = NULL;

  if (self->crop->system != STEAD_GROW_AQUAPONIC || self->crop->batch.ended_on != STEAD_DAY_NONE)
    return NULL;
  if (isnan (self->feed_g_day))
    return g_strdup (_("This crop stands in the fish's water, but its place has no water yet. Choose the water in the "
                       "place's tanks, and what the fish feed keeps is shown here."));
  text = g_string_new (NULL);
  if (self->feed_g_day > 0)
    {
      keeps = keeps_sentence (self);
      stand = stand_sentence (self);
    }
  else
    keeps = g_strdup (_("The fish on this water got no feed in the last two weeks, so the plants get nothing either."));
  stead_words_add (text, keeps);
  stead_words_add (text, stand);
  return stead_words_end (text);
}

/* --- names of entries ----------------------------------------------------------- */

char *
stead_crop_entry_name (const SteadCropEntry *entry)
{
  g_autofree char *day = NULL, *plants = NULL;

  g_return_val_if_fail (entry != NULL, NULL);

  day = stead_day_format (entry->day, STEAD_DAY_STYLE_SHORT);
  if (entry->lost < 1)
    return g_strdup_printf (_("Note on %s"), day);
  plants = plants_text (entry->lost);
  /* Translators: "2 plants", a day. */
  return g_strdup_printf (_("%s lost on %s"), plants, day);
}

char *
stead_crop_climate_name (const SteadClimateDay *day)
{
  g_autofree char *text = NULL;

  g_return_val_if_fail (day != NULL, NULL);

  text = stead_day_format (day->day, STEAD_DAY_STYLE_SHORT);
  return g_strdup_printf (_("Temperatures of %s"), text);
}
