/* stead-build-bill-repo.h - what people said about the bill of a build, and its work.
 *
 * A line with a key speaks about something that the drawing takes ("line_post"): its price,
 * an amount of the farm's own, who gives it.  A line without is the farm's own.
 */
#pragma once

#include "store/stead-build-repo.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;
  char     *supplier;
  SteadDay  day;
  gint64    price_cents;
  char     *note;          /* (nullable) */
} SteadBuildQuote;

typedef struct
{
  gint64          id;               /* 0: not saved yet */
  gint64          build_id;
  int             position;
  SteadBuildPart  part;
  char           *key;              /* (nullable): unique in its build */
  char           *name;             /* (nullable): as the drawing calls it */
  double          quantity;         /* in @unit; NAN: as the drawing says */
  char           *unit;             /* (nullable): pieces, or as the drawing says */
  double          pack;             /* sold by so many, above 0 */
  gint64          price_cents;      /* of one pack; what it costs, or its fair value; -1: not known yet */
  gboolean        given;
  char           *giver;            /* (nullable) */
  char           *supplier;         /* (nullable): who it is to be bought from */
  gboolean        taxed;
  gboolean        left_out;         /* not needed after all */
  gint64          receipt_line_id;  /* the purchase that it became; 0: not bought yet */
  char           *note;             /* (nullable) */
  GPtrArray      *quotes;           /* of SteadBuildQuote, the lowest price first */
  /* Read only: */
  gint64          bought_cents;     /* what the purchase cost; 0 without one */
} SteadBuildLine;

SteadBuildLine *stead_build_line_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void            stead_build_line_free (SteadBuildLine *line);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildLine, stead_build_line_free)

/* (transfer full) (element-type SteadBuildLine): by position */
GPtrArray *stead_build_line_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Without its quotes; those stay.  A position of -1 is the last one. */
gboolean   stead_build_line_repo_save   (SteadStore *store, SteadBuildLine *line, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_line_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A quote of the same supplier and day is replaced. */
gboolean   stead_build_quote_repo_add   (SteadStore *store, gint64 line_id, SteadBuildQuote *quote, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_build_quote_repo_choose:
 *
 * The line costs what the quote says, and is to be bought from its supplier.
 */
gboolean   stead_build_quote_repo_choose (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_quote_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A stretch of the work. */
typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    build_id;
  int       position;
  char     *name;
  double    hours;       /* of all who work on it together */
  SteadDay  from_day;    /* STEAD_DAY_NONE: not planned yet */
  SteadDay  to_day;
  SteadDay  done_on;
  char     *task;        /* (nullable): a word of data/rules/work.csv */
  int       age_years;   /* full years of the youngest; 0: not said */
  char     *decided;     /* (nullable): why an advisor allowed it */
  char     *note;        /* (nullable) */
  /* Read only: */
  double    worked_h;    /* by the hours that were entered */
} SteadBuildPhase;

SteadBuildPhase *stead_build_phase_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_build_phase_free (SteadBuildPhase *phase);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadBuildPhase, stead_build_phase_free)

/* (transfer full) (element-type SteadBuildPhase): by position */
GPtrArray *stead_build_phase_repo_list   (SteadStore *store, gint64 build_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_phase_repo_save   (SteadStore *store, SteadBuildPhase *phase, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_build_phase_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
