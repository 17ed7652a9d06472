/* stead-instruments-answer.h - "Which thermometers are there, and were they right when they were tried?"
 *
 * A probe is tried in melting ice and in boiling water; how far it may be off is a row
 * of the limits in force, and where water boils goes by the elevation of the farm.
 */
#pragma once

#include "answer/stead-check-answer.h"

G_BEGIN_DECLS

/* One try of a thermometer. */
typedef struct
{
  const SteadShown *shown;
  double            off_f;     /* °F, with its sign; NAN of what was corrected */
  gboolean          bad;       /* further off than it may be; what was corrected is not judged */
  char             *text;      /* "Mar 3, 2026: 33 °F in melting ice. The thermometer is 1 °F off; …" */
} SteadInstrumentTry;

typedef struct
{
  SteadInstrument *instrument;
  char            *name;       /* "Probe 1, Probe thermometer" */
  GPtrArray       *shown;      /* of SteadShown, of the last 400 days */
  GPtrArray       *tries;      /* of SteadInstrumentTry: the last three, oldest first */
  gboolean         tried;      /* can be tried: it shows temperatures */
  gboolean         bad;        /* the last try that counts was further off than it may be */
  char            *untried;    /* (nullable): that a probe was not tried yet */
} SteadInstrumentSaid;

typedef struct
{
  SteadFarm       *farm;
  SteadLimitTable *table;
  GPtrArray       *instruments;   /* of SteadInstrumentSaid, by name: those in use */
  guint            n_bad;         /* off by more than they may be */
  char            *sentence;      /* (nullable): that there is none yet; that one is wrong */
} SteadInstrumentsAnswer;

void stead_instruments_answer_free (SteadInstrumentsAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadInstrumentsAnswer, stead_instruments_answer_free)

SteadInstrumentsAnswer *stead_instruments_answer_new (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* What a thermometer must show, and how far off each was: (transfer full) (element-type SteadWhy) */
GPtrArray *stead_instruments_answer_whys (const SteadInstrumentsAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* "Probe thermometer". */
const char *stead_instrument_kind_name (SteadInstrumentKind kind);

G_END_DECLS
