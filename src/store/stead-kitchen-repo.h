/* stead-kitchen-repo.h - kitchen batches: planned from a recipe, cooked, finished into a lot.
 *
 * A kitchen batch keeps its own copy of the recipe's parts and steps; recipes
 * inside the recipe are opened into parts.  It may be planned for a day to come.
 * What is taken out of the store room are movements "used" of the batch; what came
 * out is one harvest, and its lot carries exactly the cents of what was used.
 * Times of a day are seconds since 1970, UTC; temperatures °C.
 */
#pragma once

#include "store/stead-harvest-repo.h"
#include "store/stead-lot-repo.h"
#include "store/stead-recipe-repo.h"
#include "store/stead-shown-repo.h"

G_BEGIN_DECLS

typedef struct
{
  gint64           id;
  gint64           item_id;
  double           need_base;   /* as bought, above 0, in the item's base unit */
  double           amount;      /* as the cook measures it, above 0 … */
  const SteadUnit *unit;        /* … in this unit */
  char            *note;        /* (nullable) */
  char            *item_name;   /* filled in when read */
  const SteadUnit *item_unit;   /* likewise */
  double           taken_base;  /* of the item, by the whole batch so far; likewise */
} SteadKitchenPart;

void stead_kitchen_part_free (SteadKitchenPart *part);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenPart, stead_kitchen_part_free)

typedef struct
{
  gint64   id;
  char    *text;
  double   minutes;      /* NAN: not said */
  char    *step;         /* (nullable): as in SteadRecipeStep */
  char    *food;         /* (nullable) */
  double   least_c;      /* NAN */
  double   most_c;       /* NAN */
  double   hold_s;       /* NAN */
  gint64   started_at;   /* STEAD_TIME_NONE: not yet */
  gint64   done_at;      /* STEAD_TIME_NONE: not yet */
  gint64   person_id;    /* 0: not said */
  char    *note;         /* (nullable) */
} SteadKitchenStep;

void stead_kitchen_step_free (SteadKitchenStep *step);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenStep, stead_kitchen_step_free)

typedef struct
{
  SteadBatch       batch;        /* kind kitchen; ended_on: the day it was finished */
  gint64           recipe_id;
  double           wanted_base;  /* planned to come out, above 0 */
  double           minutes;      /* of work planned */
  GPtrArray       *parts;        /* of SteadKitchenPart */
  GPtrArray       *steps;        /* of SteadKitchenStep */
  char            *recipe_name;  /* filled in when read, like all below */
  gint64           item_id;      /* what it makes */
  char            *item_name;
  const SteadUnit *item_unit;
  gint64           harvest_id;   /* what came out; 0: not finished */
} SteadKitchen;

void stead_kitchen_free (SteadKitchen *kitchen);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchen, stead_kitchen_free)

/* Under way and planned ones by day, then (with @ended) finished ones, newest first;
 * parts and steps are left empty. */
GPtrArray    *stead_kitchen_repo_list (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its parts and steps. */
SteadKitchen *stead_kitchen_repo_get  (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- planning ------------------------------------------------------------------ */

/**
 * stead_kitchen_repo_plan:
 * @wanted_base: pieces, kg or L that are to come out, above 0
 * @day: past, today, or at most a year ahead
 * @name: (nullable): unique among batches; %NULL for the recipe's with the day
 * @place_id: 0: not said
 * @out_id: (out) (optional): the batch
 *
 * Copies parts and steps, scaled to what is wanted, in measures that a cook has
 * (core/stead-sensible.h); the need follows from the measure.
 */
gboolean stead_kitchen_repo_plan (SteadStore *store, gint64 recipe_id, double wanted_base, SteadDay day,
                                  const char *name, gint64 place_id, gint64 *out_id,
                                  GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Copies the recipe again as it is now, for another amount.  Refused once lots were
 * taken, a step was begun, or it is finished. */
gboolean stead_kitchen_repo_replan (SteadStore *store, gint64 batch_id, double wanted_base,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Name, day, place and note of the batch, and the minutes planned. */
gboolean stead_kitchen_repo_save (SteadStore *store, SteadKitchen *kitchen, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Another amount of one part; @need_base is what is taken of it. */
gboolean stead_kitchen_repo_set_part (SteadStore *store, gint64 part_id, double amount, const SteadUnit *unit,
                                      double need_base, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* One more ingredient, or one less. */
gboolean stead_kitchen_repo_add_part (SteadStore *store, gint64 batch_id, gint64 item_id, double amount,
                                      const SteadUnit *unit, double need_base,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_kitchen_repo_drop_part (SteadStore *store, gint64 part_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- lots ----------------------------------------------------------------------- */

/* Something out of one lot: proposed, or on hand to choose from. */
typedef struct
{
  gint64           item_id;
  char            *item_name;
  const SteadUnit *unit;        /* of the item */
  gint64           lot_id;      /* 0: this much is missing in the store room */
  char            *lot_code;    /* (nullable) */
  SteadDay         day;         /* when the lot came */
  SteadDay         best_by;     /* STEAD_DAY_NONE: it keeps */
  gboolean         past;        /* its best-by day is over on the day asked about */
  double           base;        /* to take; or that can be taken */
} SteadKitchenTake;

void stead_kitchen_take_free (SteadKitchenTake *take);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadKitchenTake, stead_kitchen_take_free)

/* What of @item_id can be taken on @day: what expires first stands first, what keeps
 * last; lots past their best-by day stand at the end. */
GPtrArray *stead_kitchen_repo_lots (SteadStore *store, gint64 item_id, SteadDay day,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What is still needed, first-expiring-first, never out of a lot past its best-by day;
 * what the store room lacks is a row without a lot. */
GPtrArray *stead_kitchen_repo_propose (SteadStore *store, gint64 batch_id, SteadDay day,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_kitchen_repo_take:
 * @reason: (nullable): needed for a lot past its best-by day
 *
 * Takes out of one lot.  Refused: more than it holds, a lot of animals that waited
 * after a treatment, a finished batch, a day to come.  A batch planned for later
 * begins on @day.
 */
gboolean stead_kitchen_repo_take (SteadStore *store, gint64 batch_id, gint64 lot_id, SteadDay day, double base,
                                  const char *reason, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes all that is proposed; refused, naming it, if something is missing. */
gboolean stead_kitchen_repo_take_proposed (SteadStore *store, gint64 batch_id, SteadDay day, gint64 person_id,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Back into the store room: one movement of a batch that is not finished. */
gboolean stead_kitchen_repo_give_back (SteadStore *store, gint64 move_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What the batch took, oldest first: of SteadMove. */
GPtrArray *stead_kitchen_repo_taken (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- steps, readings, people ---------------------------------------------------- */

/* STEAD_TIME_NONE takes a time back.  Done sets the start too, if there is none. */
gboolean stead_kitchen_repo_step_start (SteadStore *store, gint64 step_id, gint64 at, gint64 person_id,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean stead_kitchen_repo_step_done  (SteadStore *store, gint64 step_id, gint64 at, gint64 person_id,
                                        const char *note, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Oldest first, those that were corrected among them: stead_shown_repo_of_batch(). */
GPtrArray *stead_kitchen_repo_readings    (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Only new ones: stead_shown_repo_add(). */
gboolean   stead_kitchen_repo_add_reading (SteadStore *store, SteadShown *shown, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  gint64  person_id;
  char   *name;
  double  minutes;      /* 0 to 14,400 */
} SteadBatchPerson;

void stead_batch_person_free (SteadBatchPerson *person);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatchPerson, stead_batch_person_free)

/* By name. */
GPtrArray *stead_kitchen_repo_people      (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_kitchen_repo_set_person  (SteadStore *store, gint64 batch_id, gint64 person_id, double minutes,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_kitchen_repo_drop_person (SteadStore *store, gint64 batch_id, gint64 person_id,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- the end -------------------------------------------------------------------- */

/**
 * stead_kitchen_repo_finish:
 * @harvest: batch_id, day, what came out (good, lost with its reason, tasted), best_by
 *   and person_id are read; the rest is filled in, as is its lot
 *
 * The batch ends on @harvest's day, its lot carries all that was used.  A harvest with
 * an id changes what was written down before.  Refused: before something was used, more
 * than a lot can explain being used later, nothing good and nothing lost, a batch that is
 * finished already.
 */
gboolean stead_kitchen_repo_finish (SteadStore *store, SteadHarvest *harvest, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes the end back with its lot; refused once that was used, sold or counted. */
gboolean stead_kitchen_repo_reopen (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Gives back all that was taken, and takes the batch away; refused as above. */
gboolean stead_kitchen_repo_delete (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Cents of all that the batch used. */
gboolean stead_kitchen_repo_used_cents (SteadStore *store, gint64 batch_id, gint64 *out_cents,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
