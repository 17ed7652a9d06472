/* stead-what-if-answer.h - "What if feed gets dearer, or the hens lay less?"
 *
 * The farm is read once; while a handle is dragged only stead_what_if_settle() runs.
 */
#pragma once

#include "answer/stead-price-answer.h"
#include "core/stead-assumption.h"
#include "store/stead-scenario-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadPriceAnswer *price;                          /* as the farm has it */
  SteadUnitParts    parts;
  double            farm[STEAD_N_ASSUMPTIONS];      /* as the log and the file have it */
  double            values[STEAD_N_ASSUMPTIONS];    /* as the handles stand */
  double            warm_c;                         /* that growth counts of a day, °C; NAN: it counts none */
  double            warm_most;                      /* more than this multiple of it counts no more */
  double            frac;                           /* by which each moves in the tornado */
  GPtrArray        *scenarios;                      /* of SteadScenario */

  /* Settled: */
  SteadCvp          cvp;
  SteadCvpFigures   figures;
  double            plan_cents;                     /* profit as the farm has it */
  SteadSwing        swings[STEAD_N_ASSUMPTIONS];
  int               n_swings;
  char             *sentence;                       /* markup */
  char             *matters;                        /* markup: what matters most */
} SteadWhatIf;

void stead_what_if_free (SteadWhatIf *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWhatIf, stead_what_if_free)

SteadWhatIf *stead_what_if_new (SteadStore   *store,
                                gint64        product_id,
                                SteadPeriod   period,
                                GError      **error) G_GNUC_WARN_UNUSED_RESULT;

void     stead_what_if_settle    (SteadWhatIf *self);
gboolean stead_what_if_is_turned (const SteadWhatIf *self);
void     stead_what_if_reset     (SteadWhatIf *self);
/* The handles as @scenario has them; those that it does not name, as the farm has them. */
void     stead_what_if_apply     (SteadWhatIf         *self,
                                  const SteadScenario *scenario);
/* What is turned, as a scenario to keep. */
SteadScenario *stead_what_if_scenario (const SteadWhatIf *self,
                                       const char        *name) G_GNUC_WARN_UNUSED_RESULT;
/* The day under a scenario (nullable: as the farm has it), beside the present one. */
void     stead_what_if_figures   (const SteadWhatIf   *self,
                                  const SteadScenario *scenario,
                                  SteadCvp            *out_cvp,
                                  SteadCvpFigures     *out);
/* Profit with two assumptions at other values; cents. */
double   stead_what_if_profit    (const SteadWhatIf *self,
                                  SteadAssumption    a,
                                  double             value_a,
                                  SteadAssumption    b,
                                  double             value_b);

/* How many of the assumptions, from the first, make sense of the product. */
int         stead_what_if_n    (const SteadWhatIf *self);
/* "Price", "Feed price", "Eggs laid": by what the product is made of. */
const char *stead_what_if_name (const SteadWhatIf *self,
                                SteadAssumption    which);
/* "$4.50", "72 dozen", "+10%", "5%": a value of it. */
char       *stead_what_if_text (const SteadWhatIf *self,
                                SteadAssumption    which,
                                double             value) G_GNUC_WARN_UNUSED_RESULT;
/* Ends and step of its handle. */
void        stead_what_if_range (const SteadWhatIf *self,
                                 SteadAssumption    which,
                                 double            *low,
                                 double            *high,
                                 double            *step);
/* (transfer full) (element-type SteadWhy) */
GPtrArray  *stead_what_if_whys (const SteadWhatIf *self) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
