/* stead-check-answer.h - "What of this list is read, what is open, and what did not meet its limit?"
 *
 * A list as it stands in the file, in sentences, each reading judged.  It never says
 * that food is safe: it says which limits were met, by which readings.
 */
#pragma once

#include "answer/stead-check-list.h"
#include "answer/stead-check-verdict.h"
#include "answer/stead-cooling-answer.h"

G_BEGIN_DECLS

typedef enum
{
  STEAD_READ_MET,
  STEAD_READ_UNSURE,     /* met by less than the instrument can be off; or hot enough, and not timed */
  STEAD_READ_OPEN,       /* one of a pot that cools: judged with the others */
  STEAD_READ_FAILED,     /* not met, and nothing says what was done */
  STEAD_READ_HANDLED,    /* not met, and something was done */
  STEAD_READ_CORRECTED,  /* a right one stands beside it */
} SteadReadState;

typedef struct
{
  const SteadShown *shown;
  SteadReadState    state;
  char             *value;      /* "152 °F for 20 seconds", "done", "not done" */
  char             *time;       /* "8:15 AM" */
  char             *day;        /* (nullable): of another day than the list: "Mar 4" */
  char             *who;        /* (nullable): initials: "A. B." */
  char             *tool;       /* (nullable): name of the instrument */
  char             *sentence;   /* (nullable): "Not met: 3 °F below it. The limit is …" */
  char             *todo;       /* (nullable): what to do now, of one that failed */
  char             *todo_source;   /* (nullable) */
  char             *done;       /* (nullable): what was done: "Cooked on. (A. B., 8:20 AM)" */
  gboolean          late;       /* came after the list was signed */
  char             *noted;      /* (nullable): of one that was typed in later: "noted Mar 4, 3:40 PM" */
} SteadCheckRead;

typedef struct
{
  const SteadListPot *pot;      /* (nullable): readings without a pot */
  char               *name;
  SteadCoolingAnswer *cooling;  /* (nullable): without two readings */
} SteadCheckPotRead;

typedef enum
{
  STEAD_CHECKED_OPEN,        /* not read */
  STEAD_CHECKED_AGAIN,       /* met, and due again */
  STEAD_CHECKED_UNSURE,      /* read, and neither met nor missed */
  STEAD_CHECKED_FAILED,      /* the last reading failed, and nothing says what was done */
  STEAD_CHECKED_HANDLED,     /* the last reading failed, and something was done */
  STEAD_CHECKED_MET,
  STEAD_CHECKED_LEFT_OUT,
} SteadCheckedState;

typedef struct
{
  const SteadListLine *line;
  gboolean             known;    /* else text is the topic's word */
  SteadCheckLine       plan;     /* as the generator made it; points into the list */
  char                *food;     /* (nullable) */
  char                *text;     /* "Cook the pooled eggs to at least 155 °F for 17 seconds." */
  char                *limit;    /* (nullable): alone */
  char                *own;      /* (nullable): what the recipe asks for besides */
  char                *reason, *source, *tool, *often, *who;   /* tool: (nullable) */
  SteadCheckedState    state;
  char                *state_text;   /* "Not read yet.", "Met at 8:15 AM." */
  gint64               next_at;      /* due again; STEAD_TIME_NONE */
  GPtrArray           *reads;        /* of SteadCheckRead, oldest first */
  GPtrArray           *pots;         /* of SteadCheckPotRead */
} SteadCheckedLine;

typedef struct
{
  const SteadListStop *stop;
  char *food;      /* (nullable) */
  char *text;      /* why it cannot be sold as planned */
  char *way;       /* (nullable): the legal way round */
  char *source;
  char *settled;   /* (nullable): what was done, by whom */
} SteadCheckStopRead;

typedef struct
{
  SteadFarm       *farm;
  SteadLimitTable *table;      /* in force on the day of the list */
  SteadCheckList  *list;
  GPtrArray       *lines;      /* of SteadCheckedLine, in the order of the list */
  GPtrArray       *stops;      /* of SteadCheckStopRead */
  GPtrArray       *holds;      /* of SteadHold, of its readings, settled ones too */
  GPtrArray       *instruments;/* of SteadInstrument, all */
  GPtrArray       *people;     /* of SteadPerson, all */
  SteadListHoles  *holes;      /* what keeps it from being signed */
  guint            n_open, n_failed, n_unsure, n_held;   /* lines, lines, lines, open holds */
  guint            n_to_do;    /* lines that are not left out */
  gboolean         can_sign;
  char            *sentence;   /* markup */
  char            *stale;      /* (nullable): what changed since it was made */
  char            *signed_by;  /* (nullable): "Signed by Ms. Ortiz on March 3, 2026, seal 8f3a…" */
  char            *missing;    /* (nullable): what keeps it from being signed, named */
  char            *caution;
} SteadCheckAnswer;

void stead_check_answer_free (SteadCheckAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckAnswer, stead_check_answer_free)

SteadCheckAnswer *stead_check_answer_new (SteadStore  *store,
                                          gint64       list_id,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_check_answer_judge:
 * @line: one of its lines, that is read and not ticked
 * @value: as typed
 * @unit: "F" or "C"; else the unit of the line
 * @solution: (nullable): of a sanitizer that is mixed, with its warmth
 * @held_s: seconds; NAN: not timed
 * @confirmed: it is as typed, however odd
 *
 * What a reading would mean before it is kept: odd ones are asked about.
 *
 * Returns: (transfer full): the verdict, or %NULL with @error
 */
SteadCheckVerdict *stead_check_answer_judge (SteadCheckAnswer        *self,
                                             const SteadCheckedLine  *line,
                                             double                   value,
                                             const char              *unit,
                                             const SteadSolution     *solution,
                                             double                   held_s,
                                             gint64                   at,
                                             gboolean                 confirmed,
                                             GError                 **error) G_GNUC_WARN_UNUSED_RESULT;

/* "A. B." of "Ada Brown". */
char *stead_check_initials (const char *name) G_GNUC_WARN_UNUSED_RESULT;
/* Who is meant by initials, or by the beginning of a name, as they stand on a sheet: "AB", "a. b.", "Ada".
 * @people: of SteadPerson.  Returns: the id; 0 with INPUT: nobody or several */
gint64 stead_check_find_person (const GPtrArray *people, const char *text, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* "8:15 AM". */
char *stead_check_time_text (gint64 at) G_GNUC_WARN_UNUSED_RESULT;
/* "152 °F for 20 seconds" of a reading in the scale that it was read in; @unit (nullable): of the limit. */
char *stead_check_value_text (const SteadShown *shown, const char *unit, SteadUnitSystem units) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
