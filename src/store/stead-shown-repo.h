/* stead-shown-repo.h - what instruments showed, what was done about it, and what is held.
 *
 * A reading is of a line of a checklist, of a pot that cools, of a step of a run
 * sheet, of an instrument that was tried, or of a place (a refrigerator).  It is
 * never changed: a right one names the wrong one.  Times are seconds since 1970, UTC.
 */
#pragma once

#include "core/stead-limit.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* A time that is not known. */
#define STEAD_TIME_NONE G_MININT64

/* Readings of an instrument that is tried: in melting ice, in boiling water. */
#define STEAD_SHOWN_ICE_BATH "ice_bath"
#define STEAD_SHOWN_BOILING_WATER "boiling_water"

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    at;
  char     *kind;           /* what is measured, as the limit tables name it: "food_temp", "ph"; "done": 1 or 0 */
  double    value;          /* °C; else in the unit of the limit */
  gint64    batch_id;       /* 0: of no batch */
  gint64    step_id;        /* 0: of no step */
  gint64    person_id;
  char     *note;           /* (nullable) */
  gint64    corrects_id;    /* 0: corrects none */
  gboolean  corrected;      /* another one names it; filled in when read */
  gint64    line_id;        /* of a checklist; 0: of none */
  gint64    pot_id;         /* of a line; 0: of none */
  gint64    instrument_id;  /* that showed it, or that was tried; 0: not said */
  gint64    place_id;       /* 0: of no place */
  double    held_s;         /* how long it was so; 0 or NAN: not timed */
  char      scale;          /* 'F' or 'C', as it was read; 0: not said */
  gint64    noted_at;       /* when it was typed in, if that was later; 0: at once */
  gint64    n_actions;      /* filled in when read */
} SteadShown;

void stead_shown_free (SteadShown *shown);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadShown, stead_shown_free)

/* --- readings ------------------------------------------------------------------------ */

/**
 * stead_shown_repo_add:
 * @shown: new; with a line (and a pot), an instrument, a place or a step.  What follows
 *   from the line, its step and its batch, is filled in
 *
 * Refused: a time to come, or before the day of its list; a value that the instrument
 * cannot show; a signed list, unless it corrects; a correction of what was corrected
 * already.  If it does not meet its limit, what the food was made into is held.
 */
gboolean stead_shown_repo_add     (SteadStore *store, SteadShown *shown, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @right: of the same line, pot, instrument, place and step as the wrong one, which are filled
 * in; so is the kind, and a time that is not said. */
gboolean stead_shown_repo_correct (SteadStore *store, gint64 wrong_id, SteadShown *right,
                                   GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Of an instrument that was tried, of a place without a list, of one batch; oldest first,
 * those that were corrected among them; times inclusive. */
GPtrArray *stead_shown_repo_tried    (SteadStore *store, gint64 instrument_id, gint64 from, gint64 to,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_shown_repo_of_place (SteadStore *store, gint64 place_id, gint64 from, gint64 to,
                                      GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_shown_repo_of_batch (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* All readings of lists in a span of days, by line. */
GPtrArray *stead_shown_repo_of_days  (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The local day of a time, and the first second of a local day. */
SteadDay stead_time_day      (gint64 at);
gint64   stead_time_midnight (SteadDay day);
/* Now; of a store whose day was set, noon of that day. */
gint64   stead_time_now      (SteadStore *store);

/* --- what was done --------------------------------------------------------------------- */

typedef struct
{
  gint64  id;           /* 0: not saved yet */
  gint64  reading_id;
  gint64  at;
  char   *text;         /* what a person did, in words */
  gint64  person_id;    /* 0: not said */
} SteadDone;

void stead_done_free (SteadDone *done);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadDone, stead_done_free)

gboolean   stead_done_repo_add     (SteadStore *store, SteadDone *done, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Of one list, of all lists in a span of days, of the readings of a place in a span of
 * times; oldest first. */
GPtrArray *stead_done_repo_of_list (SteadStore *store, gint64 list_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_done_repo_of_days (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_done_repo_of_place (SteadStore *store, gint64 place_id, gint64 from, gint64 to,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- holds ------------------------------------------------------------------------------- */

typedef enum
{
  STEAD_HOLD_OPEN,
  STEAD_HOLD_MENDED,      /* put right, and shown by a reading */
  STEAD_HOLD_DISCARDED,   /* thrown away */
  STEAD_HOLD_MISTAKEN,    /* a slip of the pen or of the instrument */
} SteadHoldOutcome;

typedef struct
{
  gint64            id;           /* 0: not saved yet */
  gint64            lot_id;       /* one lot; 0: */
  gint64            batch_id;     /* all that a batch made */
  gint64            reading_id;   /* 0: begun by a person */
  gint64            since_at;
  char             *reason;
  gint64            ended_at;     /* STEAD_TIME_NONE: open */
  gint64            ended_by;
  SteadHoldOutcome  outcome;
  char             *note;         /* (nullable) */
  char             *what;         /* the batch's name, or the item and the lot's code; filled in when read */
  gint64            list_id;      /* of the reading; 0: none; likewise */
} SteadHold;

void stead_hold_free (SteadHold *hold);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHold, stead_hold_free)

/* What is held is neither sold, given away nor used.  Of a lot or a batch; a second one of
 * the same reading is not begun. */
gboolean   stead_hold_repo_begin  (SteadStore *store, SteadHold *hold, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @note: how it was settled, not empty.  Of a hold that a reading of a list began: put
 * right needs a later reading of the same line that met its limit; mistaken, that the reading
 * was corrected. */
gboolean   stead_hold_repo_settle (SteadStore *store, gint64 id, SteadHoldOutcome outcome, const char *note,
                                   gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Open ones, oldest first; all that began in a span of days. */
GPtrArray *stead_hold_repo_open    (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_hold_repo_of_days (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray *stead_hold_repo_of_list (SteadStore *store, gint64 list_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* 1: the lot, or what made it, is held; 0: not; -1 with @error. */
int        stead_hold_repo_is_held (SteadStore *store, gint64 lot_id, GError **error);

/* --- instruments --------------------------------------------------------------------------- */

typedef enum
{
  STEAD_INSTRUMENT_PROBE,
  STEAD_INSTRUMENT_INFRARED,
  STEAD_INSTRUMENT_AIR,
  STEAD_INSTRUMENT_PH_METER,
  STEAD_INSTRUMENT_STRIP,
  STEAD_INSTRUMENT_LOGGER,
} SteadInstrumentKind;

typedef struct
{
  gint64               id;          /* 0: not saved yet */
  char                *name;
  SteadInstrumentKind  kind;
  char                *scale;       /* (nullable): "F_only", "C_only", "dual" */
  double               step;        /* smallest step shown, above 0: °C, pH, mg/L; NAN */
  double               error;       /* plus or minus, as its maker states; NAN */
  gint64               place_id;    /* where it hangs; 0: nowhere */
  SteadDay             retired_on;  /* STEAD_DAY_NONE: in use */
} SteadInstrument;

void stead_instrument_free (SteadInstrument *instrument);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadInstrument, stead_instrument_free)

/* By name; @all: those out of use too. */
GPtrArray       *stead_instrument_repo_list   (SteadStore *store, gboolean all, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadInstrument *stead_instrument_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean         stead_instrument_repo_save   (SteadStore *store, SteadInstrument *instrument, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused once something was read with it: then it is retired. */
gboolean         stead_instrument_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* What it can show, in the unit that readings of @kind are kept in. */
void             stead_instrument_range       (SteadInstrumentKind instrument, const char *kind,
                                               double *out_least, double *out_most);

/* --- local limits ---------------------------------------------------------------------------- */

typedef struct
{
  gint64    id;           /* 0: not saved yet */
  char     *limit_id;     /* the row whose place it takes */
  double    value;        /* in the unit of the row */
  char     *unit;
  double    time_s;       /* NAN: as the row */
  char     *source;       /* who says so */
  char     *where;        /* (nullable) */
  char     *version;      /* (nullable) */
  SteadDay  from_day;
  SteadDay  retired_on;   /* STEAD_DAY_NONE: in force */
} SteadLocalLimit;

void stead_local_limit_free (SteadLocalLimit *limit);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadLocalLimit, stead_local_limit_free)

/* In force on @day (STEAD_DAY_NONE: all there ever were), by row. */
GPtrArray *stead_local_limit_repo_list   (SteadStore *store, SteadDay day, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_local_limit_repo_save:
 * @limit: new; the one of the same row that was in force is retired the day before
 * @shipped: the table of the program, to hold it against
 *
 * Refused, naming the row, if it is looser.
 */
gboolean   stead_local_limit_repo_save   (SteadStore *store, SteadLocalLimit *limit, const SteadLimitTable *shipped,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* From today on the shipped row holds again; the rule is kept. */
gboolean   stead_local_limit_repo_retire (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Puts those in force on @day into @table. */
gboolean   stead_local_limit_repo_apply  (SteadStore *store, SteadDay day, SteadLimitTable *table,
                                          GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- drills ------------------------------------------------------------------------------------ */

typedef struct
{
  gint64  id;
  gint64  lot_id;
  gint64  started_at;
  gint64  ended_at;      /* STEAD_TIME_NONE: under way */
  gint64  person_id;     /* 0: not said */
  double  known_frac;    /* of what was made: accounted for by the record, 0 to 1; NAN */
  double  found_frac;    /* and found when looked for; NAN */
  char   *note;          /* (nullable) */
  char   *lot_code;      /* filled in when read */
  char   *item_name;     /* likewise */
} SteadDrill;

void stead_drill_free (SteadDrill *drill);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadDrill, stead_drill_free)

/* Newest first. */
GPtrArray  *stead_drill_repo_list   (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadDrill *stead_drill_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused while another one is under way. */
gboolean    stead_drill_repo_start  (SteadStore *store, gint64 lot_id, gint64 at, gint64 person_id, gint64 *out_id,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_drill_repo_finish (SteadStore *store, gint64 id, gint64 at, double known_frac, double found_frac,
                                     const char *note, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_drill_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
