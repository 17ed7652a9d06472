/* stead-check-days-answer.h - "What must be checked today and was not?", a month, and a place's trend. */
#pragma once

#include "answer/stead-check-answer.h"
#include "core/stead-reading-series.h"

G_BEGIN_DECLS

/* One list of a day. */
typedef struct
{
  gint64    id;
  char     *name;
  SteadDay  day;
  gint64    n_lines, n_open, n_readings, n_failed, n_stops, n_holds;   /* failed: readings with nothing done */
  gboolean  is_signed;
  char     *text;      /* "3 of 12 lines are still to be read." */
} SteadCheckDayList;

/* How a day stands as a whole, the worst first. */
typedef enum
{
  STEAD_CHECK_DAY_NONE,     /* no list */
  STEAD_CHECK_DAY_FAILED,   /* a reading out of its limit, and nothing says what was done; or food is held */
  STEAD_CHECK_DAY_OPEN,     /* something is to be read, settled or signed */
  STEAD_CHECK_DAY_HANDLED,  /* signed; a reading was out of its limit, and something was done */
  STEAD_CHECK_DAY_DONE,     /* signed, all limits met */
} SteadCheckDayState;

typedef struct
{
  SteadDay   day;
  GPtrArray *lists;       /* of SteadCheckDayList */
  SteadCheckDayState state;
  char      *mark;        /* of a calendar: "✓", "○ 3", "⚠ 1"; "" without a list */
  char      *text;        /* the same in words: "March 3: 2 checklists, all signed." */
  gint64     n_readings;
  gint64     n_open;      /* holes: lines that were neither read nor left out */
  gint64     n_failed;    /* readings that did not meet their limit, handled or not */
  gint64     n_unhandled; /* of them: nothing says what was done */
  gboolean   all_signed;  /* of a day with lists */
} SteadCheckDay;

typedef struct
{
  SteadDay   from, to;
  GPtrArray *days;        /* of SteadCheckDay, each day of the span in order */
  gint64     n_lists, n_readings, n_open, n_failed, n_unsigned;
  char      *sentence;    /* markup */
} SteadCheckDaysAnswer;

void stead_check_days_answer_free (SteadCheckDaysAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckDaysAnswer, stead_check_days_answer_free)

/* A span of 1 to 366 days. */
SteadCheckDaysAnswer *stead_check_days_answer_new (SteadStore  *store,
                                                   SteadDay     from,
                                                   SteadDay     to,
                                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: readings, lines that were not read, readings out of their limit; empty without lists */
GPtrArray *stead_check_days_answer_whys (const SteadCheckDaysAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* What is out or missing today, for the post of the strip and for Today. */
typedef struct
{
  gint64     n_missing;   /* lines of today's lists and of older ones not signed, not read */
  gint64     n_out;       /* readings that did not meet their limit, and nothing was done */
  gint64     n_held;      /* open holds */
  GPtrArray *lists;       /* of SteadCheckDayList: with something missing, out, or ready to be signed */
  GPtrArray *holds;       /* of SteadHold: open */
  char      *sentence;    /* markup */
  char      *figure;      /* (nullable): of the post: "2 out, 5 missing"; NULL: nothing */
} SteadCheckTodayAnswer;

void stead_check_today_answer_free (SteadCheckTodayAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadCheckTodayAnswer, stead_check_today_answer_free)

SteadCheckTodayAnswer *stead_check_today_answer_new (SteadStore  *store,
                                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* Readings above the limit, one after the other. */
typedef struct
{
  const SteadShown *first, *last, *peak;   /* they belong to the answer */
  char             *text;          /* "Too warm from Nov 3, 7:40 AM to Nov 4, 7:35 AM, up to 44 °F." */
  char             *todo;          /* (nullable): what to do now */
  char             *todo_source;   /* (nullable) */
  char             *done;          /* (nullable): what was done, by whom; NULL: nobody wrote anything down */
} SteadWarmSpell;

void stead_warm_spell_free (SteadWarmSpell *spell);

/* One reading of a place as it is told, a wrong one with what it should have been. */
typedef struct
{
  gint64   id;
  char    *text;     /* "52 °F on November 3, 7:40 AM (A. B.)" */
  gboolean wrong;    /* it was corrected */
} SteadAirRow;

/* A place's readings, a refrigerator that creeps up. */
typedef struct
{
  SteadFarm       *farm;
  SteadLimitTable *table;  /* in force today, with the farm's own */
  GPtrArray  *readings;    /* of SteadShown: of its air, those that count, oldest first */
  GPtrArray  *wrong;       /* of SteadShown: of its air, those that were corrected, oldest first */
  GPtrArray  *people;      /* of SteadPerson */
  GPtrArray  *spells;      /* of SteadWarmSpell, oldest first */
  gboolean    has_trend;   /* up or down can be told */
  SteadTrend  trend;       /* °C, days from the last reading */
  double      limit_c;     /* of cold holding */
  double      days_left;   /* until the line reaches the limit; NAN: it does not, or is there */
  gboolean    warns;
  char       *sentence;    /* plain */
  char       *source;      /* of the limit */
  /* To draw, in the farm's own scale. */
  SteadUnitSystem    units;
  GArray            *points;   /* of SteadReadingPoint */
  SteadTrend         line;     /* the trend in that scale */
  SteadReadingSeries series;   /* points into the answer */
  char              *unit;     /* "°F" */
  char              *most;     /* names the limit: "most 41 °F" */
} SteadPlaceAirAnswer;

/* "38 °F on March 3, 8:15 AM": what a point of the chart shows. */
char *stead_place_air_point_text (const SteadPlaceAirAnswer *self, gsize point) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadAirRow, all that was read, wrong ones too, the newest first, at most @most. */
GPtrArray *stead_place_air_rows (const SteadPlaceAirAnswer *self, guint most) G_GNUC_WARN_UNUSED_RESULT;

/* "Limit: at most 41 °F. FDA Food Code 2022, §3-501.16(A)(2)" */
char *stead_place_air_limit_text (const SteadPlaceAirAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full): of SteadWhy: where it is going; empty where no way can be told */
GPtrArray *stead_place_air_answer_whys (const SteadPlaceAirAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

void stead_place_air_answer_free (SteadPlaceAirAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadPlaceAirAnswer, stead_place_air_answer_free)

/* So many days tell where the air of a place is going (common practice, no source). */
#define STEAD_PLACE_AIR_DAYS 30

/* Of the last @days days. */
SteadPlaceAirAnswer *stead_place_air_answer_new (SteadStore  *store,
                                                 gint64       place_id,
                                                 int          days,
                                                 GError     **error) G_GNUC_WARN_UNUSED_RESULT;
/* Of the days from @from to @to. */
SteadPlaceAirAnswer *stead_place_air_answer_of_days (SteadStore  *store,
                                                     gint64       place_id,
                                                     SteadDay     from,
                                                     SteadDay     to,
                                                     GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_place_air_answer_judge:
 * @value: as typed
 * @unit: "F" or "C"
 * @confirmed: it is as typed, however odd
 *
 * What a reading would mean before it is kept: odd ones are asked about.
 *
 * Returns: (transfer full): the verdict, or %NULL with @error
 */
SteadCheckVerdict *stead_place_air_answer_judge (const SteadPlaceAirAnswer  *self,
                                                 double                      value,
                                                 const char                 *unit,
                                                 gboolean                    confirmed,
                                                 GError                    **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
