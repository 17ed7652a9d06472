/* stead-check-repo.h - checklists: what must be checked of what is made or sold, and what was.
 *
 * A list keeps its lines and their limits as they were when it was made.  What was
 * read is in stead-shown-repo.h; readings on the run sheet of a kitchen batch count
 * for the line that names the step, so nothing is asked twice.  A list that is signed
 * stays: a correction is one more reading.  Times are seconds since 1970, UTC.
 *
 * Invariants:
 *  1. Each line holds one limit at least; it says where it is from.
 *  2. A signed list has no hole: each line was read or left out with a reason, each
 *     reading that did not meet its limit was answered, no stop and no hold is open.
 */
#pragma once

#include "core/stead-checklist.h"
#include "core/stead-sanitizer.h"
#include "store/stead-shown-repo.h"

G_BEGIN_DECLS

/* The measure of a line that is ticked: done, or not. */
#define STEAD_MEASURE_DONE "done"

typedef struct
{
  gint64            id;
  const char       *name;
  gint64            recipe_id;    /* 0: none */
  gint64            product_id;   /* 0: none */
  SteadProcessKind  process;
  gboolean          stale;        /* its recipe was changed since; filled in when read whole */
} SteadListFood;

typedef struct
{
  int         food;       /* its place among the foods; -1: of the whole list */
  const char *question;   /* as the generator names it: "egg_use" */
  const char *answer;
} SteadListAnswer;

typedef struct
{
  gint64      id;
  const char *name;
  const char *method;     /* (nullable): "ice bath" */
  double      depth_m;    /* of the food, above 0; NAN: not measured */
} SteadListPot;

/* The words are those of the generator (core/stead-check-plan.h). */
typedef struct
{
  gint64            id;
  int               food;          /* its place among the foods; -1: general */
  const char       *topic;         /* "hold_hot" */
  const char       *stage;         /* "hold" */
  const char       *subject;       /* (nullable): "raw_egg" */
  const char       *variant;       /* (nullable): what makes its sentence another one: "pooled_or_held" */
  const char       *measure;       /* "food_temp"; STEAD_MEASURE_DONE: a tick */
  const char       *unit;          /* (nullable): of the limits: "F" */
  gboolean          needs_all;     /* all rows; FALSE: any one is enough */
  const char       *tool, *often, *who;
  GPtrArray        *rows;          /* of SteadLimit, one at least */
  const SteadLimit *often_limit;   /* (nullable): says how often */
  double            own_least_c, own_most_c, own_hold_s;  /* the recipe's own; NAN */
  gint64            step_id;       /* of a run sheet; 0: none */
  gint64            person_id;     /* who takes it; 0: not said */
  gint64            instrument_id; /* with what; 0: not said */
  gint64            due_at;        /* STEAD_TIME_NONE: not said */
  double            every_s;       /* again after so long; NAN: once */
  const char       *left_out;      /* (nullable): why it need not be done after all */
  /* filled in when read: */
  GPtrArray        *pots;          /* of SteadListPot */
  GPtrArray        *readings;      /* of SteadShown, oldest first, corrected ones among them */
  double            boils_at_f;    /* of a thermometer tried in boiling water: where it boils on this farm; NAN */
} SteadListLine;

typedef struct
{
  gint64            id;
  int               food;          /* -1: of all */
  const char       *kind, *way;    /* "eggs_pooled", "pasteurized" */
  const char       *lot_code;      /* (nullable) */
  const char       *told;          /* (nullable): why, as it was told */
  const SteadLimit *row;           /* that decides */
  const char       *settled;       /* (nullable): what was done about it */
  gint64            settled_by;
  gint64            settled_at;    /* STEAD_TIME_NONE: open */
} SteadListStop;

typedef struct
{
  gint64       id;             /* 0: not saved yet */
  const char  *name;
  SteadDay     day;
  gint64       batch_id;       /* of a kitchen batch, */
  gint64       sale_id;        /* of a sale day; both 0: of a menu */
  gint64       made_at;        /* filled in when saved */
  const char  *edition;        /* of the tables: "2022" */
  const char  *note;           /* (nullable) */
  gint64       signed_by;      /* 0: not signed */
  gint64       signed_at;
  gint64       seal_reading;   /* a reading with a higher id came after the signing */
  GPtrArray   *foods;          /* of SteadListFood */
  GPtrArray   *answers;        /* of SteadListAnswer */
  GPtrArray   *lines;          /* of SteadListLine, in the order of the work */
  GPtrArray   *stops;          /* of SteadListStop */
  gboolean     stale_batch;    /* the run sheet was changed since; filled in when read whole, */
  gboolean     stale_limits;   /* a local limit was; likewise */
  /* filled in by the lists of lists: */
  gint64       n_lines, n_open, n_readings, n_stops, n_holds;   /* to be done, not read, read, open, open */
  GStringChunk *strings;
} SteadCheckList;

/* An empty one, to be filled in: foods, answers, lines and stops by the functions below. */
SteadCheckList  *stead_check_list_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void             stead_check_list_free (SteadCheckList *list);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckList, stead_check_list_free)

/* A copy of @text (nullable) that lives as long as the list; all its strings are such. */
const char      *stead_check_list_keep       (SteadCheckList *list, const char *text);
SteadListFood   *stead_check_list_add_food   (SteadCheckList *list, const char *name);
void             stead_check_list_add_answer (SteadCheckList *list, int food, const char *question, const char *answer);
/* Figures are NAN, times STEAD_TIME_NONE; @food: -1 for a general line. */
SteadListLine   *stead_check_list_add_line   (SteadCheckList *list, int food, const char *topic);
/* Copies the row, its strings too. */
void             stead_check_list_add_row    (SteadCheckList *list, SteadListLine *line, const SteadLimit *row);
void             stead_check_list_set_often  (SteadCheckList *list, SteadListLine *line, const SteadLimit *row);
SteadListStop   *stead_check_list_add_stop   (SteadCheckList *list, int food, const char *kind, const char *way,
                                              const SteadLimit *row);
/* Returns: (nullable): the line, the reading of that id in the list */
SteadListLine    *stead_check_list_find_line    (const SteadCheckList *list, gint64 line_id);
const SteadShown *stead_check_list_find_reading (const SteadCheckList *list, gint64 reading_id);

/**
 * stead_list_line_judge:
 * @instrument: (nullable): with what it was read; its error makes the doubt
 * @out: (out): the judgement; of a tick, met or not
 * @out_limit: (out) (optional) (transfer none) (nullable): the row that decided; %NULL for
 *   a tick and for the recipe's own limit
 *
 * One reading by the limits of its line and those that the recipe asks for besides.  What
 * is hot enough and was not timed is within error, and short by the time of its row.
 * Of a pot that cools the reading is not met that shows that a mark was missed; what its
 * curve foretells is elsewhere (core/stead-cooling.h).  Of a sanitizer the warmth stands for
 * all that was measured at its time; with too little measured it is not judged.
 *
 * Returns: whether it can be judged by itself
 */
gboolean stead_list_line_judge (const SteadListLine    *line,
                                const SteadShown       *shown,
                                const SteadInstrument  *instrument,
                                SteadJudgement         *out,
                                const SteadLimit      **out_limit);
/* Whether it is a line whose readings are judged together, pot by pot; all of one time. */
gboolean stead_list_line_is_cooling   (const SteadListLine *line);
gboolean stead_list_line_is_sanitizer (const SteadListLine *line);
/* A sanitizer that is mixed: strength, pH or hardness are measured besides its warmth. */
gboolean stead_list_line_is_mixed     (const SteadListLine *line);
/* Whether a reading of it says how long it stayed so. */
gboolean stead_list_line_is_timed     (const SteadListLine *line);
/* What was measured of a sanitizer at the time of @shown; NAN: not. */
void     stead_list_line_solution     (const SteadListLine *line, const SteadShown *shown, SteadSolution *out);

/* --- reading ----------------------------------------------------------------------- */

/* Heads with their counts, the newest day first: of days, of a kitchen batch, of a sale day. */
GPtrArray      *stead_check_repo_list     (SteadStore *store, SteadDay from, SteadDay to, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray      *stead_check_repo_of_batch (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
GPtrArray      *stead_check_repo_of_sale  (SteadStore *store, gint64 sale_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Whole, with its readings and what is stale. */
SteadCheckList *stead_check_repo_get      (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The list of a line, of a reading; 0: none, -1 with @error. */
gint64          stead_check_repo_of_line    (SteadStore *store, gint64 line_id, GError **error);
gint64          stead_check_repo_of_reading (SteadStore *store, gint64 reading_id, GError **error);

/* --- making ------------------------------------------------------------------------ */

/**
 * stead_check_repo_save:
 * @list: a new one, whole: at least one line, each with a limit; or one with an id, of
 *   which only name, day and note are written
 *
 * What was read on the run sheet of its batch already counts for its lines.
 *
 * Returns: %TRUE with ids filled in, or %FALSE with nothing changed
 */
gboolean stead_check_repo_save   (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/**
 * stead_check_repo_renew:
 * @list: with the id of one that is not signed, made anew from what is so now
 *
 * A line that still asks for the same keeps its readings, and who takes it; one that
 * was read and is no longer asked for stays, left out.
 */
gboolean stead_check_repo_renew  (SteadStore *store, SteadCheckList *list, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* With its readings, but for those of a run sheet; refused once it is signed. */
gboolean stead_check_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* @reason: why it need not be done; %NULL takes it back.  Refused for a line that was read. */
gboolean stead_check_repo_leave_out   (SteadStore *store, gint64 line_id, const char *reason,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* @settled: what was done instead; %NULL takes it back. */
gboolean stead_check_repo_settle_stop (SteadStore *store, gint64 stop_id, const char *settled, gint64 person_id,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One more pot of a line that cools, or a change of one. */
gboolean stead_check_repo_save_pot    (SteadStore *store, gint64 line_id, gint64 *pot_id, const char *name,
                                       const char *method, double depth_m, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused while it has readings. */
gboolean stead_check_repo_delete_pot  (SteadStore *store, gint64 pot_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- signing ------------------------------------------------------------------------ */

/* What keeps a list from being signed. */
typedef struct
{
  GPtrArray *lines;      /* of SteadListLine: not read, not left out; they belong to the list */
  GPtrArray *readings;   /* of SteadShown: not met, and nothing says what was done; likewise */
  GPtrArray *stops;      /* of SteadListStop: open; likewise */
  guint      n_holds;    /* open, of its readings */
} SteadListHoles;

void stead_list_holes_free (SteadListHoles *holes);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadListHoles, stead_list_holes_free)

/* Returns: (transfer full): what is missing; @list must outlive it */
SteadListHoles *stead_check_repo_holes (SteadStore *store, const SteadCheckList *list,
                                        GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Freezes the list with its readings: a SHA-256 over all of it and the seal before it.
 * Refused, with counts, while there is a hole. */
gboolean stead_check_repo_sign (SteadStore *store, gint64 id, gint64 person_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
