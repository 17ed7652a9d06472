/* stead-batch-repo.h - what all batches share, whatever they raise: name, place,
 * days, feed, plan, notes with pictures, treatments.
 *
 * Times are whole days; money is in minor units; base units are pieces for eggs
 * and kg for fish and fruit.
 */
#pragma once

#include "core/stead-quantity.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* Of a count: not entered. */
#define STEAD_COUNT_NONE (-1)

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_BATCH_FLOCK,
  STEAD_BATCH_FISH,
  STEAD_BATCH_CROP,
  STEAD_BATCH_KITCHEN,
} SteadBatchKind;

typedef struct
{
  gint64          id;                /* 0: not saved yet */
  SteadBatchKind  kind;
  char           *name;              /* unique among batches, not empty */
  gint64          place_id;          /* 0: not said */
  SteadDay        started_on;        /* first day of the log; a kitchen batch may be planned for one to come */
  SteadDay        ended_on;          /* STEAD_DAY_NONE: under way */
  gint64          feed_item_id;      /* what an entry's feed is taken from; 0: not said */
  double          care_minutes_day;  /* unpaid work on the whole batch, 0 to 1440 */
  char           *note;              /* (nullable) */
} SteadBatch;

SteadBatch *stead_batch_copy  (const SteadBatch *batch) G_GNUC_WARN_UNUSED_RESULT;
void        stead_batch_clear (SteadBatch *batch);
void        stead_batch_free  (SteadBatch *batch);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatch, stead_batch_free)

/* @ended: also batches that are over.  Flocks, fish, crops, kitchen; under way
 * first, then by name. */
GPtrArray  *stead_batch_repo_list (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadBatch *stead_batch_repo_get  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The only change that all kinds share: over on @day, or under way again with STEAD_DAY_NONE. */
gboolean    stead_batch_repo_end  (SteadStore *store, gint64 id, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- losses ------------------------------------------------------------------ */

/* Animals or plants lost, by the reason that was written down. */
typedef struct
{
  char   *reason;   /* (nullable): none was given */
  gint64  n;        /* dead, taken out, or plants lost */
} SteadLoss;

void stead_loss_free (SteadLoss *loss);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLoss, stead_loss_free)

/* (element-type SteadLoss): the most first; case and outer blanks of a reason aside. */
GPtrArray  *stead_batch_repo_losses (SteadStore *store, gint64 id, SteadDay from, SteadDay to,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- the plan: what was meant, to hold the log against ---------------------- */

/* What is not planned is NAN (ends_on: STEAD_DAY_NONE). */
typedef struct
{
  double    output_base;       /* eggs, kg of fish (live) or of fruit, over the whole batch */
  double    price_cents;       /* for one base unit */
  double    feed_kg;
  double    feed_cents_kg;
  double    other_cents;       /* all costs but feed and animals */
  double    care_minutes_day;
  double    lost_frac;         /* of animals or plants, 0 to 1 */
  SteadDay  ends_on;
} SteadBatchPlan;

void     stead_batch_plan_init     (SteadBatchPlan *plan);
/* A batch without a plan gives one of nothing. */
gboolean stead_batch_repo_plan     (SteadStore *store, gint64 id, SteadBatchPlan *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refuses shares outside 0 to 1, amounts below 0, and an end before the start. */
gboolean stead_batch_repo_set_plan (SteadStore *store, gint64 id, const SteadBatchPlan *plan,
                                    GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- notes and pictures ------------------------------------------------------ */

typedef struct
{
  gint64    id;           /* 0: not saved yet */
  gint64    batch_id;
  SteadDay  day;
  char     *text;         /* (nullable) */
  gint64    picture_id;   /* 0: none */
  gint64    person_id;    /* 0: not said */
} SteadBatchNote;

void stead_batch_note_free (SteadBatchNote *note);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBatchNote, stead_batch_note_free)

/* Newest first. */
GPtrArray *stead_batch_repo_notes       (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A note has a text or a picture.  An id of 0 inserts and fills in the id. */
gboolean   stead_batch_repo_save_note   (SteadStore *store, SteadBatchNote *note, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes its picture along. */
gboolean   stead_batch_repo_delete_note (SteadStore *store, gint64 note_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* @jpeg: scaled down already, at most 1,000,000 bytes.  Returns: its id, 0 with @error */
gint64     stead_picture_repo_add       (SteadStore *store, GBytes *jpeg, int width, int height, GError **error);
GBytes    *stead_picture_repo_get       (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- treatments --------------------------------------------------------------- */

/* A medicine is a veterinarian's order; the file keeps it with its wait. */
typedef struct
{
  gint64    id;           /* 0: not saved yet */
  gint64    batch_id;
  SteadDay  day;          /* first day */
  SteadDay  last_day;     /* not before @day */
  SteadDay  wait_until;   /* nothing is sold up to and including this day; not before @last_day */
  char     *what;         /* not empty */
  char     *dose;         /* (nullable) */
  char     *ordered_by;   /* the veterinarian; not empty */
  char     *note;         /* (nullable) */
  gint64    person_id;
} SteadTreatment;

void stead_treatment_free (SteadTreatment *treatment);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadTreatment, stead_treatment_free)

/* Newest first. */
GPtrArray *stead_treatment_repo_list   (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_treatment_repo_save   (SteadStore *store, SteadTreatment *treatment, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_treatment_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last day on which @batch_id must wait as seen on @day, or STEAD_DAY_NONE (look at
 * @error too).  Fish that came from a treated group wait as that group does. */
SteadDay   stead_treatment_repo_wait   (SteadStore *store, gint64 batch_id, SteadDay day, GError **error);

G_END_DECLS
