/* stead-egg-answer.c - "How heavy and how fresh are the eggs of this flock?"
 *
 * Nothing is graded for the person: they sort, candle and break out; this sums up.
 */
#include "config.h"

#include "answer/stead-egg-answer.h"
#include "answer/stead-words-private.h"

#include <glib/gi18n-lib.h>
#include <math.h>

/* The Haugh unit was made for eggs of 45 to 60 °F. */
#define HAUGH_LEAST_C ((45 - 32) / 1.8)
#define HAUGH_MOST_C ((60 - 32) / 1.8)

/* Look for the reason when so many of a hundred have one fault: grade standards let
 * about 5 in 100 be cracked at the farm.  From memory. */
#define FAULT_SHARE 0.05

/* A change of the mean that is no chance, for a handful of eggs: common practice, no source. */
#define HAUGH_CHANGE 3.0

void
stead_egg_answer_free (SteadEggAnswer *self)
{
  if (self == NULL)
    return;
  g_clear_pointer (&self->farm, stead_farm_free);
  g_clear_pointer (&self->flock, stead_flock_free);
  g_clear_pointer (&self->gradings, g_ptr_array_unref);
  g_clear_pointer (&self->samples, g_array_unref);
  g_clear_pointer (&self->haughs, g_array_unref);
  g_free (self->sentence);
  g_free (self->advice);
  g_free (self->caution);
  g_free (self);
}

const char *
stead_egg_grade_name (SteadEggGrade grade)
{
  switch (grade)
    {
    case STEAD_EGG_GRADE_AA: return C_("egg grade", "AA");
    case STEAD_EGG_GRADE_A: return C_("egg grade", "A");
    case STEAD_EGG_GRADE_B: return C_("egg grade", "B");
    default: g_return_val_if_reached ("");
    }
}

char *
stead_egg_haugh_text (double egg_g,
                      double albumen_mm)
{
  g_autoptr(GError) error = NULL;
  g_autofree char *units = NULL;
  double haugh;

  if (!(egg_g > 0) || !(albumen_mm > 0))
    return g_strdup (_("Enter weight and height to see the Haugh units."));
  if (!stead_haugh_units (egg_g, albumen_mm, &haugh, &error))
    return g_strdup (error->message);
  units = stead_number_format (haugh, 1);
  /* Translators: Haugh units, then a quality: "AA". */
  return g_strdup_printf (_("%s Haugh units: grade %s"), units, stead_egg_grade_name (stead_haugh_grade (haugh)));
}

SteadWhy *
stead_egg_haugh_why (double egg_g,
                     double albumen_mm)
{
  g_autofree char *height = NULL, *weight = NULL, *units = NULL;
  double haugh;
  char *worked;

  if (!(egg_g > 0) || !(albumen_mm > 0) || !stead_haugh_units (egg_g, albumen_mm, &haugh, NULL))
    worked = stead_egg_haugh_text (egg_g, albumen_mm);
  else
    {
      height = stead_number_format (albumen_mm, 1);
      weight = stead_number_format (egg_g, 1);
      units = stead_number_format (haugh, 1);
      /* Translators: millimeters, grams, Haugh units. */
      worked = g_strdup_printf (_("100 × log10 (%s − 1.7 × %s^0.37 + 7.57) = %s"), height, weight, units);
    }
  return stead_why_new (g_strdup (_("Haugh units")),
                        _("100 × log10 (height of the thick white in mm − 1.7 × weight in g^0.37 + 7.57). "
                          "72 or more is grade AA, 60 or more grade A."),
                        worked,
                        _("The simplified formula of Haugh as egg quality articles give it, for eggs at 45 to 60 °F. "
                          "The grade needs shell, air cell and yolk besides."));
}

/* --- sums ------------------------------------------------------------------------ */

static void
sum_gradings (const GPtrArray *gradings,
              SteadDay         from,
              SteadDay         to,
              SteadEggSpan    *out)
{
  for (guint i = 0; i < gradings->len; i++)
    {
      const SteadEggGrading *grading = gradings->pdata[i];

      if (grading->day < from || grading->day > to)
        continue;
      for (int class = 0; class < STEAD_N_EGG_CLASSES; class++)
        {
          out->counts[class] += grading->counts[class];
          out->graded += grading->counts[class];
        }
      out->blood += grading->blood;
      out->checked += grading->checked;
      out->dirty += grading->dirty;
    }
}

static void
sum_samples (const SteadEggAnswer *self,
             SteadDay              from,
             SteadDay              to,
             SteadEggSpan         *out)
{
  double haugh = 0, egg_g = 0;

  for (guint i = 0; i < self->samples->len; i++)
    {
      const SteadEggSample *sample = &g_array_index (self->samples, SteadEggSample, i);
      double units = g_array_index (self->haughs, double, i);

      if (sample->day < from || sample->day > to || isnan (units))
        continue;
      haugh += units;
      egg_g += sample->egg_g;
      out->n_samples++;
      if (sample->egg_c < HAUGH_LEAST_C - 0.05 || sample->egg_c > HAUGH_MOST_C + 0.05)
        out->n_warm_or_cold++;
    }
  out->haugh = out->n_samples > 0 ? haugh / (double) out->n_samples : NAN;
  out->egg_g = out->n_samples > 0 ? egg_g / (double) out->n_samples : NAN;
}

static void
fill_haughs (SteadEggAnswer *self)
{
  self->haughs = g_array_new (FALSE, TRUE, sizeof (double));
  for (guint i = 0; i < self->samples->len; i++)
    {
      const SteadEggSample *sample = &g_array_index (self->samples, SteadEggSample, i);
      double units = NAN;

      if (!stead_haugh_units (sample->egg_g, sample->albumen_mm, &units, NULL))
        units = NAN;
      g_array_append_val (self->haughs, units);
    }
}

/* --- words ----------------------------------------------------------------------- */

static gint64
found (const SteadEggSpan *span)
{
  return span->blood + span->checked + span->dirty;
}

static char *
graded_sentence (const SteadEggAnswer *self)
{
  const SteadEggSpan *now = &self->now;
  gint64 looked_at = now->graded + found (now);
  gint64 large = now->counts[STEAD_EGG_CLASS_LARGE] + now->counts[STEAD_EGG_CLASS_EXTRA_LARGE]
                 + now->counts[STEAD_EGG_CLASS_JUMBO];
  g_autofree char *eggs = stead_words_eggs (looked_at);
  g_autofree char *share = NULL;
  g_autofree char *faults = stead_number_format ((double) found (now), 0);

  if (looked_at == 0)
    return g_strdup (_("No eggs were graded in the last four weeks."));
  if (now->graded == 0)
    /* Translators: "24 eggs". */
    return g_strdup_printf (_("None of the %s of the last four weeks passed the light."), eggs);
  share = stead_words_percent ((double) large / (double) now->graded, 0);
  /* Translators: "240 eggs", a share of those that have a class, a number of eggs. */
  return g_strdup_printf (_("Of %s graded in the last four weeks <b>%s</b> were large or heavier; "
                            "taken out by the light: %s."), eggs, share, faults);
}

static char *
haugh_sentence (const SteadEggAnswer *self)
{
  const SteadEggSpan *now = &self->now;
  const char *grade;
  g_autofree char *units = NULL, *change = NULL;
  double gap;

  if (isnan (now->haugh))
    return NULL;
  grade = stead_egg_grade_name (stead_haugh_grade (now->haugh));
  units = stead_number_format (now->haugh, 0);
  gap = now->haugh - self->before.haugh;
  change = isnan (gap) ? NULL : stead_number_format (fabs (gap), 0);
  if (isnan (gap))
    /* Translators: Haugh units, a quality such as "AA". */
    return g_strdup_printf (_("The white stands at <b>%s Haugh units</b>: grade %s."), units, grade);
  if (fabs (gap) < HAUGH_CHANGE)
    /* Translators: Haugh units, a quality such as "AA". */
    return g_strdup_printf (_("The white stands at <b>%s Haugh units</b>: grade %s, as in the four weeks before."),
                            units, grade);
  if (gap > 0)
    /* Translators: Haugh units, a quality such as "AA", how many units more. */
    return g_strdup_printf (_("The white stands at <b>%s Haugh units</b>: grade %s, "
                              "%s more than in the four weeks before."), units, grade, change);
  /* Translators: Haugh units, a quality such as "AA", how many units fewer. */
  return g_strdup_printf (_("The white stands at <b>%s Haugh units</b>: grade %s, "
                            "%s fewer than in the four weeks before."), units, grade, change);
}

static char *
egg_sentence (const SteadEggAnswer *self)
{
  GString *text = g_string_new (NULL);
  g_autofree char *graded = graded_sentence (self);
  g_autofree char *haugh = haugh_sentence (self);

  stead_words_add (text, graded);
  stead_words_add (text, haugh);
  return stead_words_end (text);
}

/* What is usually behind a fault; the order of the checks is common practice, no source. */
static char *
egg_advice (const SteadEggAnswer *self)
{
  const SteadEggSpan *now = &self->now;
  double limit = FAULT_SHARE * (double) (now->graded + found (now));
  GString *text = g_string_new (NULL);

  if (now->graded + found (now) > 0)
    {
      if ((double) now->checked > limit)
        stead_words_add (text, _("Many cracked shells: collect more often, soften the nests, "
                                 "and offer oyster shell or another source of calcium."));
      if ((double) now->dirty > limit)
        stead_words_add (text, _("Many dirty eggs: put dry litter into nests and house, and keep hens "
                                 "from sleeping in the nests."));
      if ((double) now->blood > limit)
        stead_words_add (text, _("Many blood spots: ask who sold the birds and the feed, and a veterinarian."));
    }
  if (!isnan (now->haugh) && stead_haugh_grade (now->haugh) == STEAD_EGG_GRADE_B)
    stead_words_add (text, _("The whites are thin: collect more often, cool the eggs the same day, "
                             "and sell the oldest first. Old hens lay thinner whites."));
  if (now->n_warm_or_cold > 0)
    stead_words_add (text, _("Some eggs were not between 45 and 60 °F (7 and 16 °C) when they were broken out: "
                             "let them cool first, or their Haugh units cannot be compared."));
  return stead_words_end (text);
}

SteadEggAnswer *
stead_egg_answer_new (SteadStore  *store,
                      gint64       flock_id,
                      GError     **error)
{
  g_autoptr(SteadEggAnswer) self = NULL;
  SteadDay today, now, before;

  g_return_val_if_fail (STEAD_IS_STORE (store), NULL);

  today = stead_store_get_today (store);
  now = today - STEAD_EGG_SPAN_DAYS + 1;
  before = now - STEAD_EGG_SPAN_DAYS;
  self = g_new0 (SteadEggAnswer, 1);
  self->farm = stead_farm_repo_get (store, error);
  if (self->farm == NULL)
    return NULL;
  self->flock = stead_flock_repo_get (store, flock_id, error);
  if (self->flock == NULL)
    return NULL;
  self->gradings = stead_egg_repo_gradings (store, flock_id, before, today, error);
  if (self->gradings == NULL)
    return NULL;
  self->samples = stead_egg_repo_samples (store, flock_id, before, today, error);
  if (self->samples == NULL)
    return NULL;
  fill_haughs (self);
  sum_gradings (self->gradings, now, today, &self->now);
  sum_gradings (self->gradings, before, now - 1, &self->before);
  sum_samples (self, now, today, &self->now);
  sum_samples (self, before, now - 1, &self->before);
  for (int class = 0; class < STEAD_N_EGG_CLASSES; class++)
    self->shares[class] = self->now.graded > 0 ? (double) self->now.counts[class] / (double) self->now.graded : NAN;
  self->sentence = egg_sentence (self);
  self->advice = egg_advice (self);
  self->caution = g_strdup (_("Selling eggs by grade or weight class may need a license and a checked scale: "
                              "ask your state's department of agriculture first."));
  return g_steal_pointer (&self);
}

static SteadWhy *
class_why (void)
{
  GString *worked = g_string_new (NULL);

  for (int class = STEAD_EGG_CLASS_JUMBO; class >= STEAD_EGG_CLASS_PEEWEE; class--)
    {
      g_autofree char *oz = stead_number_format (stead_egg_class_dozen_oz (class), 0);
      g_autofree char *grams = stead_number_format (stead_egg_class_mean_g (class), 1);

      if (worked->len > 0)
        g_string_append (worked, "; ");
      /* Translators: a weight class, ounces of a dozen, grams of one egg. */
      g_string_append_printf (worked, _("%s: %s oz a dozen, %s g an egg"), stead_egg_class_name (class), oz, grams);
    }
  return stead_why_new (g_strdup (_("Weight classes")),
                        _("The class is that of the dozen: the least net weight of twelve eggs without the carton."),
                        g_string_free (worked, FALSE),
                        _("Pennsylvania Code, title 7, section 87.42(a). Your state may have other rules."));
}

/* Of the newest egg that was broken out. */
static SteadWhy *
newest_why (const SteadEggAnswer *self)
{
  for (guint i = 0; i < self->samples->len; i++)
    {
      const SteadEggSample *sample = &g_array_index (self->samples, SteadEggSample, i);

      if (!isnan (g_array_index (self->haughs, double, i)))
        return stead_egg_haugh_why (sample->egg_g, sample->albumen_mm);
    }
  return NULL;
}

GPtrArray *
stead_egg_answer_whys (const SteadEggAnswer *self)
{
  GPtrArray *whys;
  g_return_val_if_fail (self != NULL, NULL);

  whys = stead_whys_new ();
  g_ptr_array_add (whys, class_why ());
  stead_whys_add (whys, newest_why (self));
  return whys;
}

char *
stead_egg_grading_name (const SteadEggGrading *grading)
{
  g_autofree char *day = NULL, *eggs = NULL;
  gint64 sum = 0;

  g_return_val_if_fail (grading != NULL, NULL);
  for (int class = 0; class < STEAD_N_EGG_CLASSES; class++)
    sum += grading->counts[class];
  sum += grading->blood + grading->checked + grading->dirty;
  day = stead_day_format (grading->day, STEAD_DAY_STYLE_SHORT);
  eggs = stead_words_eggs (sum);
  /* Translators: "240 eggs", a day. */
  return g_strdup_printf (_("%s graded on %s"), eggs, day);
}

char *
stead_egg_sample_name (const SteadEggSample *sample)
{
  g_autofree char *day = NULL;

  g_return_val_if_fail (sample != NULL, NULL);
  day = stead_day_format (sample->day, STEAD_DAY_STYLE_SHORT);
  return g_strdup_printf (_("egg broken out on %s"), day);
}
