/* stead-egg-answer.h - "How heavy and how fresh are the eggs of this flock?" */
#pragma once

#include "answer/stead-words.h"
#include "core/stead-egg.h"
#include "store/stead-egg-repo.h"
#include "store/stead-farm-repo.h"
#include "store/stead-flock-repo.h"

G_BEGIN_DECLS

/* Days that one span of the answer takes in; the span before is as long. */
#define STEAD_EGG_SPAN_DAYS 28

/* What was graded and broken out in one span. */
typedef struct
{
  gint64  counts[STEAD_N_EGG_CLASSES];   /* by SteadEggClass */
  gint64  graded;                        /* their sum */
  gint64  blood, checked, dirty;         /* found with the light, beside those counted */
  gsize   n_samples;                     /* eggs broken out that have Haugh units */
  gsize   n_warm_or_cold;                /* of them not measured at 45 to 60 °F */
  double  haugh;                         /* mean; NAN: none broken out */
  double  egg_g;                         /* mean weight of the eggs broken out; NAN */
} SteadEggSpan;

typedef struct
{
  SteadFarm    *farm;
  SteadFlock   *flock;
  SteadEggSpan  now;        /* the last four weeks, today included */
  SteadEggSpan  before;     /* the four weeks before */
  double        shares[STEAD_N_EGG_CLASSES];   /* of @now; NAN: nothing graded */
  GPtrArray    *gradings;   /* of SteadEggGrading, both spans, newest first */
  GArray       *samples;    /* of SteadEggSample, both spans, newest first */
  GArray       *haughs;     /* of double: of each sample; NAN where it has none */
  char         *sentence;   /* markup */
  char         *advice;     /* (nullable) plain: what to look at first */
  char         *caution;    /* plain: what selling by grade needs */
} SteadEggAnswer;

void stead_egg_answer_free (SteadEggAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadEggAnswer, stead_egg_answer_free)

SteadEggAnswer *stead_egg_answer_new (SteadStore  *store,
                                      gint64       flock_id,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): weight classes, Haugh units */
GPtrArray *stead_egg_answer_whys (const SteadEggAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "AA", "A" or "B", as cartons have it. */
const char *stead_egg_grade_name (SteadEggGrade grade);

/**
 * stead_egg_haugh_text:
 * @egg_g: weight of the egg
 * @albumen_mm: height of the thick white
 *
 * Returns: (transfer full): plain, for beside the fields: "78.3 Haugh units: grade AA",
 *   or what is wrong with the two
 */
char *stead_egg_haugh_text (double egg_g,
                            double albumen_mm) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): how they are worked out; while one of the two is missing or wrong, the rule and what is wrong */
SteadWhy *stead_egg_haugh_why (double egg_g,
                               double albumen_mm) G_GNUC_WARN_UNUSED_RESULT;

/* What a sheet or a sample was, for the undo menu. */
char *stead_egg_grading_name (const SteadEggGrading *grading) G_GNUC_WARN_UNUSED_RESULT;
char *stead_egg_sample_name  (const SteadEggSample *sample) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
