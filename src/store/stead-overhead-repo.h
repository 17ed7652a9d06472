/* stead-overhead-repo.h - the rate by which cost that belongs to no one batch is charged. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_OVERHEAD_NONE,    /* nothing is charged */
  STEAD_OVERHEAD_HOURS,   /* by hours of work */
  STEAD_OVERHEAD_SPACE,   /* by m² × weeks */
  STEAD_OVERHEAD_MONEY,   /* by minor units of other cost that went in */
} SteadOverheadBase;

typedef struct
{
  SteadOverheadBase base;
  gint64            planned_cents;   /* of a year, 0 or more */
  double            planned_base;    /* of a year, above 0: hours, m² × weeks, or minor units */
} SteadOverhead;

/* A farm that chose none gives %STEAD_OVERHEAD_NONE. */
gboolean stead_overhead_repo_get (SteadStore     *store,
                                  SteadOverhead  *out,
                                  GError        **error) G_GNUC_WARN_UNUSED_RESULT;
/* %STEAD_OVERHEAD_NONE takes the rate away.  Refused: no base to divide by, a cost below 0. */
gboolean stead_overhead_repo_set (SteadStore           *store,
                                  const SteadOverhead  *overhead,
                                  GError              **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
