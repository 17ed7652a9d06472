/* stead-sauce-answer.c - "What kind of food is this, and may it stand sealed on a shelf?" */
#include "config.h"

#include "answer/stead-limits.h"
#include "answer/stead-sauce-answer.h"
#include "core/stead-food-kind.h"
#include "core/stead-us-units.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define PINTS_PER_QUART 2

/* Between these two a tomato sauce is neither safely acid nor clearly not. */
#define DOUBT_FROM_PH 4.6
#define DOUBT_TO_PH 4.7

void
stead_sauce_answer_free (SteadSauceAnswer *self)
{
  if (self == NULL)
    return;
  g_free (self->sentence);
  g_clear_pointer (&self->notes, g_ptr_array_unref);
  g_free (self);
}

static void
add_note (SteadSauceAnswer *self,
          char             *note)
{
  g_ptr_array_add (self->notes, note);
}

/* --- what it is ------------------------------------------------------------------- */

static SteadFoodKind
open_kind (const SteadRecipe *recipe)
{
  SteadTcsClass class;

  if (!stead_tcs_class (stead_limits_get (), FALSE, recipe->aw, recipe->ph, &class, NULL))
    return STEAD_FOOD_UNKNOWN;
  return class == STEAD_TCS_NO ? STEAD_FOOD_SHELF : STEAD_FOOD_HOLD;
}

static SteadFoodKind
sealed_kind (const SteadRecipe *recipe)
{
  const SteadAcidFood food = { recipe->tomato, recipe->acid_added, FALSE, recipe->ph, recipe->aw };
  SteadAcidKind kind;

  if (!stead_acid_kind (stead_limits_get (), &food, &kind, NULL))
    return STEAD_FOOD_UNKNOWN;
  switch (kind)
    {
    case STEAD_ACID_ACIDIFIED: return STEAD_FOOD_ACIDIFIED;
    case STEAD_ACID_NOT_LOW_ACID: return STEAD_FOOD_ACID;
    case STEAD_ACID_OUTSIDE: return STEAD_FOOD_DRY;
    case STEAD_ACID_LOW_ACID:
    default: return STEAD_FOOD_NOT_SEALED;
    }
}

static SteadFoodKind
kind_of (const SteadRecipe *recipe)
{
  switch (recipe->kept)
    {
    case STEAD_KEPT_HOT: return STEAD_FOOD_HOT;
    case STEAD_KEPT_COLD: return STEAD_FOOD_COLD;
    case STEAD_KEPT_FROZEN: return STEAD_FOOD_FROZEN;
    case STEAD_KEPT_ROOM:
    default: return recipe->sealed ? sealed_kind (recipe) : open_kind (recipe);
    }
}

/* A limit of the tables in words; an empty text if a table lost its row. */
static char *
limit_of (const char *process,
          const char *subject)
{
  const SteadLimit *limit = stead_limit_table_find (stead_limits_get (), process, subject, "food_temp", NULL, NULL);

  return limit != NULL ? stead_limits_text (limit) : g_strdup ("");
}

static char *
ph_text (const SteadRecipe *recipe)
{
  return stead_number_format (recipe->ph, 2);
}

static char *
sentence_of (const SteadRecipe *recipe,
             SteadFoodKind      kind)
{
  g_autofree char *ph = isnan (recipe->ph) ? g_strdup ("?") : ph_text (recipe);
  g_autofree char *hot = limit_of ("hold_hot", "tcs");
  g_autofree char *cold = limit_of ("hold_cold", "tcs");

  switch (kind)
    {
    case STEAD_FOOD_HOT:
      /* Translators: %s is a limit: "at least 135 °F". */
      return g_strdup_printf (_("It is held hot, %s, until it is sold."), hot);
    case STEAD_FOOD_COLD:
      /* Translators: %s is a limit: "at most 41 °F". */
      return g_strdup_printf (_("It is held cold, %s, from making to sale."), cold);
    case STEAD_FOOD_FROZEN:
      return g_strdup (_("It is kept frozen from making to sale."));
    case STEAD_FOOD_SHELF:
      return g_strdup (_("By its acidity and water activity it needs neither heat nor cold."));
    case STEAD_FOOD_HOLD:
      return g_strdup (_("Hold it hot or cold: by its acidity and water activity it may stand at room temperature only "
                         "after its safety was assessed."));
    case STEAD_FOOD_ACID:
      return g_strdup_printf (_("At pH %s it is an acid food by nature."), ph);
    case STEAD_FOOD_ACIDIFIED:
      return g_strdup_printf (_("Acid was added and the pH is %s: this is an acidified food."), ph);
    case STEAD_FOOD_DRY:
      return g_strdup (_("It is too dry for the rule of acidified foods."));
    case STEAD_FOOD_NOT_SEALED:
      if (isnan (recipe->ph))
        return g_strdup (_("It is not for sale sealed at room temperature."));
      return g_strdup_printf (_("At pH %s it is not for sale sealed at room temperature: that would be low-acid "
                                "canning. Keep it cold or frozen."), ph);
    case STEAD_FOOD_UNKNOWN:
    default:
      return g_strdup (_("What kind of food it is, is not known yet: measure the pH of the finished, cooled food. "
                         "Until then keep it cold or frozen."));
    }
}

/* --- what has to be done ---------------------------------------------------------- */

static double
row_value (const char *process,
           const char *subject,
           const char *measure,
           const char *unit)
{
  const SteadLimit *limit = stead_limit_table_find (stead_limits_get (), process, subject, measure, NULL, NULL);

  return limit != NULL ? stead_limit_value_in (limit, unit) : NAN;
}

static void
add_authority (SteadSauceAnswer  *self,
               const SteadRecipe *recipe)
{
  gboolean sealed = self->kind == STEAD_FOOD_ACID || self->kind == STEAD_FOOD_ACIDIFIED || self->kind == STEAD_FOOD_DRY;

  if (!sealed && self->kind != STEAD_FOOD_HOLD)
    return;
  if (recipe->authority != NULL && recipe->authority_on != STEAD_DAY_NONE)
    {
      g_autofree char *day = stead_day_format (recipe->authority_on, STEAD_DAY_STYLE_MEDIUM);

      add_note (self, g_strdup_printf (_("Approved by %s on %s. Make it exactly as it was approved."),
                                       recipe->authority, day));
      return;
    }
  add_note (self, g_strdup (_("Before it is sold, a process authority must approve the recipe and its process. "
                              "Ask your state's food safety office who that is.")));
}

static void
add_acidified (SteadSauceAnswer *self)
{
  g_autofree char *days = stead_number_format (row_value ("acidified", "any", "register", "d"), 0);

  if (self->kind != STEAD_FOOD_ACIDIFIED)
    return;
  /* Translators: a number of days. */
  add_note (self, g_strdup_printf (_("Whoever sells it registers within %s days after the first making, files the "
                                     "process, and works under a supervisor from an approved school (21 CFR 108.25 "
                                     "and 114)."), days));
  add_note (self, g_strdup (_("The pH is measured in every batch after it has become even; above pH 4.0 with a meter.")));
}

static void
add_doubt (SteadSauceAnswer  *self,
           const SteadRecipe *recipe)
{
  if (recipe->kept == STEAD_KEPT_ROOM && recipe->sealed && recipe->tomato && recipe->ph > DOUBT_FROM_PH
      && recipe->ph <= DOUBT_TO_PH)
    add_note (self, g_strdup (_("Between pH 4.6 and 4.7 hold it back, and ask the process authority.")));
  if (recipe->kept == STEAD_KEPT_ROOM && recipe->ph_on != STEAD_DAY_NONE)
    {
      g_autofree char *day = stead_day_format (recipe->ph_on, STEAD_DAY_STYLE_MEDIUM);

      add_note (self, g_strdup_printf (_("The pH was measured on %s. Measure again when anything in it changes."), day));
    }
}

/* --- jars ----------------------------------------------------------------------------- */

static void
add_boiling (SteadSauceAnswer  *self,
             const SteadRecipe *recipe,
             const SteadFarm   *farm)
{
  g_autofree char *feet = stead_number_format (farm->elevation_m / STEAD_FOOT_M, 0);
  const SteadLimitFact facts[] = { { "jar", recipe->jar, 0 }, { "altitude_ft", NULL, farm->elevation_m / STEAD_FOOT_M },
                                   { NULL } };
  const SteadLimit *row = stead_limit_table_find (stead_limits_get (), "can_boiling_water", recipe->process,
                                                  "process_time", facts, NULL);
  g_autofree char *minutes = NULL;
  g_autofree char *source = NULL;

  if (row == NULL)
    return;
  self->process_min = stead_limit_value_in (row, "min");
  minutes = stead_number_format (self->process_min, 0);
  source = stead_limits_source (row);
  /* Translators: minutes, "pint", feet, a source. */
  add_note (self, g_strdup_printf (_("At %3$s ft, boil a %2$s jar for %1$s minutes, only if it is made word for word as "
                                     "published (%4$s). This is for class and family, not for sale."),
                                   minutes, g_str_equal (recipe->jar, "quart") ? C_("jar", "quart") : C_("jar", "pint"),
                                   feet, source));
}

static void
add_pressure (SteadSauceAnswer  *self,
              const SteadRecipe *recipe,
              const SteadFarm   *farm)
{
  double minutes, dial, weighted;
  g_autofree char *min = NULL;
  g_autofree char *psi = NULL;
  g_autofree char *weight = NULL;

  if (!stead_jar_pressure (stead_limits_get (), recipe->process, recipe->jar, "dial", farm->elevation_m / STEAD_FOOT_M,
                           &minutes, &dial, NULL)
      || !stead_jar_pressure (stead_limits_get (), recipe->process, recipe->jar, "weighted",
                              farm->elevation_m / STEAD_FOOT_M, &minutes, &weighted, NULL))
    return;
  min = stead_number_format (minutes, 0);
  psi = stead_number_format (dial, 0);
  weight = stead_number_format (weighted, 0);
  /* Translators: minutes, pounds of pressure on a dial gauge, on a weighted gauge. */
  add_note (self, g_strdup_printf (_("Only a pressure canner is safe for it: %s minutes at %s pounds on a dial gauge, or "
                                     "%s on a weighted gauge (USDA Complete Guide to Home Canning). This is for class "
                                     "and family, not for sale."), min, psi, weight));
}

static void
add_process (SteadSauceAnswer  *self,
             const SteadRecipe *recipe,
             const SteadFarm   *farm)
{
  guint before = self->notes->len;

  if (!recipe->sealed || recipe->kept != STEAD_KEPT_ROOM)
    return;
  if (recipe->process != NULL && recipe->jar != NULL)
    {
      add_boiling (self, recipe, farm);
      if (isnan (self->process_min))
        add_pressure (self, recipe, farm);
    }
  if (self->notes->len == before)
    add_note (self, g_strdup (_("No published time fits this recipe and jar, so there is none. A process authority "
                                "works one out.")));
}

static void
add_headspace (SteadSauceAnswer  *self,
               const SteadRecipe *recipe)
{
  g_autofree char *inches = NULL;

  if (recipe->process == NULL)
    return;
  self->headspace_in = row_value ("headspace", recipe->process, "headspace", "in");
  if (isnan (self->headspace_in))
    return;
  inches = stead_number_format (self->headspace_in, 3);
  add_note (self, g_strdup_printf (_("Leave %s inch of headspace in each jar."), inches));
}

static void
add_acid (SteadSauceAnswer  *self,
          const SteadRecipe *recipe)
{
  double lemon, citric;
  const char *spoon, *small;
  g_autofree char *juice = NULL;
  g_autofree char *powder = NULL;

  if (!recipe->sealed || !recipe->tomato || recipe->jar == NULL || recipe->kept != STEAD_KEPT_ROOM)
    return;
  if (!stead_jar_acid (stead_limits_get (), "bottled_lemon_juice", recipe->jar, 1, &lemon, &spoon, NULL)
      || !stead_jar_acid (stead_limits_get (), "citric_acid", recipe->jar, 1, &citric, &small, NULL))
    return;
  juice = stead_number_format (lemon, 2);
  powder = stead_number_format (citric, 2);
  /* Translators: spoons of each. */
  add_note (self, g_strdup_printf (_("Tomatoes need acid in each jar: %s tbsp of bottled lemon juice or %s tsp of citric "
                                     "acid (USDA Complete Guide to Home Canning)."), juice, powder));
}

static double
jar_kg (const char *product,
        const char *jar)
{
  double lb = row_value ("tomato_yield", product, "per_quart", "lb");

  return lb * STEAD_POUND_KG / (g_strcmp0 (jar, "pint") == 0 ? PINTS_PER_QUART : 1);
}

static void
add_tomatoes (SteadSauceAnswer  *self,
              const SteadRecipe *recipe,
              const SteadFarm   *farm)
{
  const SteadUnit *unit = stead_unit_default (STEAD_DIMENSION_MASS, farm->units);
  gboolean sauce = g_strcmp0 (recipe->process, "standard_tomato_sauce") == 0;
  g_autofree char *thin = NULL;
  g_autofree char *thick = NULL;

  if (recipe->process == NULL || recipe->jar == NULL)
    return;
  self->tomatoes_kg = jar_kg (sauce ? "thin_sauce" : recipe->process, recipe->jar);
  self->tomatoes_thick_kg = sauce ? jar_kg ("thick_sauce", recipe->jar) : NAN;
  if (isnan (self->tomatoes_kg))
    return;
  thin = stead_quantity_format (self->tomatoes_kg, unit);
  if (isnan (self->tomatoes_thick_kg))
    {
      add_note (self, g_strdup_printf (_("A jar takes %s of tomatoes (USDA Complete Guide to Home Canning)."), thin));
      return;
    }
  thick = stead_quantity_format (self->tomatoes_thick_kg, unit);
  /* Translators: two weights. */
  add_note (self, g_strdup_printf (_("A jar takes %s of tomatoes for thin sauce, %s for thick (USDA Complete Guide to "
                                     "Home Canning)."), thin, thick));
}

SteadSauceAnswer *
stead_sauce_answer_new (const SteadRecipe *recipe,
                        const SteadFarm   *farm)
{
  SteadSauceAnswer *self;

  g_return_val_if_fail (recipe != NULL && farm != NULL, NULL);
  self = g_new0 (SteadSauceAnswer, 1);
  self->notes = g_ptr_array_new_with_free_func (g_free);
  self->process_min = self->headspace_in = self->tomatoes_kg = self->tomatoes_thick_kg = NAN;
  self->kind = kind_of (recipe);
  self->sentence = sentence_of (recipe, self->kind);
  add_authority (self, recipe);
  add_acidified (self);
  add_doubt (self, recipe);
  add_process (self, recipe, farm);
  add_acid (self, recipe);
  add_headspace (self, recipe);
  add_tomatoes (self, recipe, farm);
  return self;
}
