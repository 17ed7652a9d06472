/* stead-house-answer.c - "Is there room and light enough for this flock?"
 *
 * Held against rules of thumb for hens; for other birds none is at hand, and
 * nothing is made up.
 */
#include "config.h"

#include "answer/stead-house-answer.h"
#include "answer/stead-words-private.h"
#include "core/stead-hatch.h"
#include "core/stead-hen-house.h"
#include "core/stead-us-units.h"
#include "store/stead-farm-repo.h"
#include "store/stead-place-repo.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define SQFT_M2 0.09290304

/* County extension column on successful backyard egg production: perch, feeder and
 * waterer a bird. */
#define PERCH_EACH_M (6 * STEAD_INCH_M)
#define FEEDER_EACH_M (3 * STEAD_INCH_M)
#define WATERER_EACH_M (1 * STEAD_INCH_M)

/* Common practice, no source. */
#define RUN_EACH_M2 (2 * SQFT_M2)

/* Extension answer 257347, Ohio: one box for 4 or 5 birds. */
#define HENS_PER_BOX 5.0

/* County extension column: 14 to 16 hours, never shortened in lay. */
#define LIGHT_LEAST_H 14.0

#define BROODER_LAST_WEEK 8
#define STARTER_WEEKS 6
#define LAYER_FEED_WEEKS 20

void
stead_house_line_free (SteadHouseLine *line)
{
  if (line == NULL)
    return;
  g_free (line->name);
  g_free (line->text);
  g_free (line->what);
  g_free (line->worked);
  g_free (line);
}

void
stead_house_answer_free (SteadHouseAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->lines, g_ptr_array_unref);
  g_free (self->caution);
  g_free (self->source);
  g_free (self);
}

/* @what: told if there is not enough */
static void
add (SteadHouseAnswer *self,
     const char       *name,
     double            have,
     double            need,
     char             *have_text,   /* (transfer full) */
     char             *need_text,   /* (transfer full) */
     const char       *what)
{
  SteadHouseLine *line = g_new0 (SteadHouseLine, 1);

  line->name = g_strdup (name);
  line->have = have;
  line->need = need;
  if (isnan (have))
    {
      line->state = STEAD_HOUSE_NOT_SAID;
      /* Translators: an amount: "6 nests needed" without the word. */
      line->text = g_strdup_printf (_("%s needed"), need_text);
    }
  else
    {
      line->state = have < need - 1e-6 ? STEAD_HOUSE_SHORT : STEAD_HOUSE_ENOUGH;
      /* Translators: what there is, what is needed at the least. */
      line->text = g_strdup_printf (_("%s, %s needed"), have_text, need_text);
    }
  if (line->state == STEAD_HOUSE_SHORT)
    {
      line->what = g_strdup (what);
      self->n_short++;
    }
  g_ptr_array_add (self->lines, line);
  g_free (have_text);
  g_free (need_text);
}

static void
add_to_know (SteadHouseAnswer *self,
             const char       *name,
             double            need,
             char             *text)   /* (transfer full) */
{
  SteadHouseLine *line = g_new0 (SteadHouseLine, 1);

  *line = (SteadHouseLine) { .name = g_strdup (name), .text = text, .have = NAN, .need = need,
                             .state = STEAD_HOUSE_TO_KNOW };
  g_ptr_array_add (self->lines, line);
}

static char *
amount (double          base,
        SteadDimension  dimension,
        SteadUnitSystem units)
{
  return isnan (base) ? NULL : stead_quantity_format (base, stead_unit_default (dimension, units));
}

/* Of the line that was added last: so much for each of the birds. */
static void
explain (SteadHouseAnswer *self,
         gint64            alive,
         SteadDimension    dimension,
         SteadUnitSystem   units)
{
  SteadHouseLine *line = self->lines->pdata[self->lines->len - 1];
  g_autofree char *birds = stead_number_format ((double) alive, 0);
  g_autofree char *each = amount (line->need / (double) alive, dimension, units), *need = amount (line->need, dimension, units);

  /* Translators: birds × an amount = an amount. */
  line->worked = g_strdup_printf (_("%1$s × %2$s = %3$s"), birds, each, need);
}

static void
explain_nests (SteadHouseAnswer *self,
               gint64            alive)
{
  SteadHouseLine *line = self->lines->pdata[self->lines->len - 1];
  g_autofree char *birds = stead_number_format ((double) alive, 0), *each = stead_number_format (HENS_PER_BOX, 0);
  g_autofree char *need = stead_number_format (line->need, 0);

  /* Translators: birds ÷ birds for one nest, nests. */
  line->worked = g_strdup_printf (_("%1$s ÷ %2$s, rounded up = %3$s"), birds, each, need);
}

/* Floor of the place that the flock lives in; NAN: not said. */
static gboolean
read_floor (SteadStore        *store,
            const SteadFlock  *flock,
            double            *out_m2,
            GError           **error)
{
  g_autoptr(GPtrArray) places = stead_place_repo_list (store, error);

  *out_m2 = NAN;
  if (places == NULL)
    return FALSE;
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == flock->place_id && flock->place_id != 0)
        *out_m2 = place->area_m2;
    }
  return TRUE;
}

static void
add_room (SteadHouseAnswer *self,
          const SteadFlock *flock,
          double            floor_m2,
          gint64            alive,
          SteadUnitSystem   units)
{
  double floor_need = stead_hen_floor_least_m2 (alive);
  gint64 boxes = stead_hen_nest_boxes (alive, HENS_PER_BOX);
  double nests = flock->nests == STEAD_COUNT_NONE ? NAN : (double) flock->nests;
  double roost = PERCH_EACH_M * (double) alive, run = RUN_EACH_M2 * (double) alive;

  add (self, _("Floor"), floor_m2, floor_need, amount (floor_m2, STEAD_DIMENSION_AREA, units),
       amount (floor_need, STEAD_DIMENSION_AREA, units),
       _("Give them more floor or keep fewer birds: crowded hens peck each other and lay less."));
  explain (self, alive, STEAD_DIMENSION_AREA, units);
  add (self, _("Nests"), nests, (double) boxes,
       isnan (nests) ? NULL : stead_number_format (nests, 0), stead_number_format ((double) boxes, 0),
       _("Add nests: hens that find none lay on the floor."));
  explain_nests (self, alive);
  add (self, _("Roosts"), flock->roost_m, roost, amount (flock->roost_m, STEAD_DIMENSION_LENGTH, units),
       amount (roost, STEAD_DIMENSION_LENGTH, units), _("Add roosts, so that every bird can sleep on one."));
  explain (self, alive, STEAD_DIMENSION_LENGTH, units);
  if (isnan (flock->run_m2))
    return;
  add (self, _("Run outdoors"), flock->run_m2, run, amount (flock->run_m2, STEAD_DIMENSION_AREA, units),
       amount (run, STEAD_DIMENSION_AREA, units), _("Make the run larger, or change to a fresh one more often."));
  explain (self, alive, STEAD_DIMENSION_AREA, units);
}

static void
add_light (SteadHouseAnswer *self,
           const SteadFlock *flock,
           double            age_weeks)
{
  gboolean in_lay = age_weeks >= flock->curve.onset_age_weeks;

  if (!in_lay)
    {
      add_to_know (self, _("Light"), NAN, g_strdup (_("no longer days before the first eggs are due")));
      return;
    }
  add (self, _("Light a day"), flock->light_hours, LIGHT_LEAST_H,
       isnan (flock->light_hours) ? NULL : g_strdup_printf (_("%.3g h"), flock->light_hours),
       g_strdup (_("14 to 16 h")),
       _("Lengthen the day with a lamp, a little each week, and never shorten it while they lay."));
}

static void
add_table (SteadHouseAnswer *self,
           gint64            alive,
           SteadUnitSystem   units)
{
  double feeder = FEEDER_EACH_M * (double) alive, waterer = WATERER_EACH_M * (double) alive;
  double water = stead_hen_water_least_l (alive);

  add_to_know (self, _("Rim of feeders"), feeder, amount (feeder, STEAD_DIMENSION_LENGTH, units));
  explain (self, alive, STEAD_DIMENSION_LENGTH, units);
  add_to_know (self, _("Rim of waterers"), waterer, amount (waterer, STEAD_DIMENSION_LENGTH, units));
  explain (self, alive, STEAD_DIMENSION_LENGTH, units);
  add_to_know (self, _("Water a day, at least"), water, amount (water, STEAD_DIMENSION_VOLUME, units));
  explain (self, alive, STEAD_DIMENSION_VOLUME, units);
}

/* A brooder while they need one, and the feed of their age. */
static void
add_rearing (SteadHouseAnswer *self,
             double            age_weeks,
             SteadUnitSystem   units)
{
  int week = (int) floor (age_weeks) + 1;
  double temp_c;

  if (week <= BROODER_LAST_WEEK && stead_brooder_temperature_c (week, &temp_c, NULL))
    {
      g_autofree char *temp = amount (temp_c, STEAD_DIMENSION_TEMPERATURE, units);

      /* Translators: a temperature, a week of life. */
      add_to_know (self, _("Brooder"), temp_c, g_strdup_printf (_("%s in week %d"), temp, week));
    }
  if (age_weeks >= LAYER_FEED_WEEKS)
    return;
  if (age_weeks < STARTER_WEEKS)
    add_to_know (self, _("Feed now"), NAN, g_strdup (_("starter, up to the end of week 6")));
  else
    add_to_know (self, _("Feed now"), NAN, g_strdup (_("grower; layer feed from week 20 or the first egg")));
}

SteadHouseAnswer *
stead_house_answer_new (SteadStore        *store,
                        const SteadFlock  *flock,
                        gint64             alive,
                        double             age_weeks,
                        SteadUnitSystem    units,
                        GError           **error)
{
  g_autoptr(SteadHouseAnswer) self = NULL;
  double floor_m2;

  g_return_val_if_fail (STEAD_IS_STORE (store) && flock != NULL, NULL);

  if (!read_floor (store, flock, &floor_m2, error))
    return NULL;
  self = g_new0 (SteadHouseAnswer, 1);
  self->lines = g_ptr_array_new_with_free_func ((GDestroyNotify) stead_house_line_free);
  if (flock->species != STEAD_SPECIES_HEN || alive < 1)
    {
      self->caution = g_strdup (_("The rules of room at hand are for hens. Ask your extension office for these birds."));
      return g_steal_pointer (&self);
    }
  add_rearing (self, age_weeks, units);
  if (age_weeks >= BROODER_LAST_WEEK)
    {
      add_room (self, flock, floor_m2, alive, units);
      add_light (self, flock, age_weeks);
      add_table (self, alive, units);
    }
  self->caution = age_weeks < BROODER_LAST_WEEK
                  ? g_strdup (_("Huddled chicks are cold, panting ones are hot. Hang heat lamps by a chain, "
                                "away from litter: they start fires."))
                  : g_strdup (_("Rules of thumb: local advice and your breed's guide go first."));
  self->source = g_strdup (_("Floor 1.5 square feet a hen at the least, perch 6 inches, feeder 3 inches, waterer 1 inch, "
                             "5 gallons of water for 100 hens, 14 to 16 hours of light: county extension column on "
                             "backyard eggs (Virginia, 2020). A nest for 4 or 5 hens: extension answer 257347, Ohio. "
                             "Brooder: Calculating Agriculture, chapter 12, table 12.4. Run 2 square feet: common "
                             "practice, no source."));
  return g_steal_pointer (&self);
}

SteadWhy *
stead_house_answer_why (const SteadHouseAnswer *self)
{
  GString *worked;

  g_return_val_if_fail (self != NULL, NULL);

  if (self->lines->len == 0)
    return NULL;
  worked = g_string_new (NULL);
  for (guint i = 0; i < self->lines->len; i++)
    {
      const SteadHouseLine *line = self->lines->pdata[i];

      g_string_append_printf (worked, "%s%s: %s", i == 0 ? "" : "\n", line->name,
                              line->worked != NULL ? line->worked : line->text);
    }
  return stead_why_new (g_strdup (_("What the house needs")), _("What one bird needs × birds alive, rounded up for nests."),
                        g_string_free (worked, FALSE), self->source);
}
