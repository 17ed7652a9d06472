/* stead-flock-repo.h - flocks and their log.
 *
 * A flock is a batch of kind "flock".  Its log may hold several entries a day.
 * Feed in an entry is taken from the feed lots, first in first out, in the same
 * transaction; what no receipt covers stays in the log and is covered when the
 * receipt comes.
 */
#pragma once

#include "core/stead-flock.h"
#include "core/stead-lay.h"
#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

/* Not to be changed in order: the file holds their words. */
typedef enum
{
  STEAD_SPECIES_HEN,
  STEAD_SPECIES_DUCK,
  STEAD_SPECIES_QUAIL,
  STEAD_SPECIES_OTHER,
} SteadSpecies;

typedef struct
{
  gint64         id;                 /* of the batch; 0: not saved yet */
  char          *name;               /* unique among batches, not empty */
  SteadSpecies   species;
  char          *strain;             /* (nullable): "brown hybrid" */
  gint64         place_id;           /* 0: not said */
  SteadDay       housed_on;          /* first day of the log */
  SteadDay       hatched_on;         /* not after housed_on */
  SteadDay       ended_on;           /* STEAD_DAY_NONE: under way */
  gint64         birds;              /* housed, 1 or more */
  gint64         birds_cost_cents;   /* all of them: at the point of lay, or as chicks if reared */
  gboolean       birds_are_gift;
  gboolean       reared;             /* raised here: what goes in before lay is spread over lay */
  SteadDay       lay_began_on;       /* STEAD_DAY_NONE: the curve's onset tells */
  gint64         salvage_cents;      /* worth of all birds housed, at the end */
  double         eggs_expected;      /* of one bird housed, over its lay; above 0 */
  double         care_minutes_day;   /* unpaid work on the whole flock */
  gint64         feed_item_id;       /* what an entry's feed is taken from; 0: not said */
  int            bedding_days;       /* change the litter after; 0: not watched */
  int            nests;              /* STEAD_COUNT_NONE: not said */
  double         roost_m;            /* of perch; NAN: not said */
  double         run_m2;             /* outdoors; NAN: not said */
  double         light_hours;        /* a day, with lamps; NAN: not said */
  SteadLayCurve  curve;              /* what is expected */
  char          *note;               /* (nullable) */
} SteadFlock;

SteadFlock *stead_flock_new  (void) G_GNUC_WARN_UNUSED_RESULT;  /* default curve, no days */
void        stead_flock_free (SteadFlock *flock);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFlock, stead_flock_free)

typedef struct
{
  gint64    id;         /* 0: not saved yet */
  gint64    flock_id;
  SteadDay  day;
  gint32    eggs;       /* STEAD_COUNT_NONE: not entered; cracked ones are counted here too */
  gint32    cracked;    /* 0 to eggs */
  gint32    deaths;     /* found dead */
  gint32    culled;     /* taken out */
  double    feed_kg;    /* NAN: not entered */
  char     *reason;     /* (nullable): of the deaths and of the hens taken out */
  char     *note;       /* (nullable) */
  gint64    person_id;  /* 0: not said */
  gboolean  left_out;   /* not to learn from */
} SteadFlockEntry;

void stead_flock_entry_clear (SteadFlockEntry *entry);
void stead_flock_entry_free  (SteadFlockEntry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFlockEntry, stead_flock_entry_free)

/* @ended: also flocks that are over.  Under way first, then by name. */
GPtrArray  *stead_flock_repo_list   (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadFlock *stead_flock_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_flock_repo_save   (SteadStore *store, SteadFlock *flock, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes its log and movements along; refused if a product names it. */
gboolean    stead_flock_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_flock_repo_save_entry:
 * @entry: checked here: a day from housing to today (or the flock's end), cracked
 *   not above eggs, deaths not above the hens alive, eggs at most two a living
 *   hen (a hen lays one; a missed collection makes two), something entered
 *
 * An id of 0 inserts and fills in the id.
 */
gboolean    stead_flock_repo_save_entry   (SteadStore *store, SteadFlockEntry *entry, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_flock_repo_delete_entry (SteadStore *store, gint64 entry_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Many at once (import): checks and writes each as above, in order of day; feed is
 * settled once at the end.  @progress (nullable) gets 0 to 1 and may be called from
 * the worker's thread. */
gboolean    stead_flock_repo_add_entries  (SteadStore *store, GPtrArray *entries, GCancellable *cancellable,
                                           void (*progress) (double share, gpointer data), gpointer data,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* The rule of stead_flock_repo_save_entry() alone, for a preview; @hens_alive on that day. */
gboolean    stead_flock_entry_check (const SteadFlockEntry *entry, const SteadFlock *flock, gint64 hens_alive,
                                     SteadDay today, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* A window on the log, newest first: a table loads only the rows it shows. */
gint64      stead_flock_repo_count_entries (SteadStore *store, gint64 flock_id, GError **error);
GPtrArray  *stead_flock_repo_page_entries  (SteadStore *store, gint64 flock_id, gint64 offset, gint64 limit,
                                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* All entries of a span of days, oldest first; for export and for finding doubles. */
GPtrArray  *stead_flock_repo_entries       (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to,
                                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadFlockEntry *stead_flock_repo_get_entry (SteadStore *store, gint64 entry_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Hens alive at the start of @day (deaths of that day not yet taken off).  -1 with @error. */
gint64      stead_flock_repo_alive  (SteadStore *store, gint64 flock_id, SteadDay day, GError **error);
/* Eggs of the log from @from to @to, both included: one sum over an index, where the
 * totals below go day by day.  -1 with @error. */
gint64      stead_flock_repo_eggs   (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to, GError **error);
/* Sums of the log from @from to @to, both included. */
gboolean    stead_flock_repo_totals (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to,
                                     SteadFlockTotals *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Weeks of SteadLayWeek, counted from housing, oldest first; (transfer full). */
GArray     *stead_flock_repo_weeks  (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to,
                                     GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Days from @from to @to, both included (none if @to is before), and their sums. */
typedef struct
{
  SteadDay         from;
  SteadDay         to;
  SteadFlockTotals totals;
} SteadFlockSpan;

/* As stead_flock_repo_weeks(), and the sums of @spans, which lie in the same days: all
 * in one walk over the log.  @spans is only filled in when there is no error. */
GArray     *stead_flock_repo_weeks_and_spans (SteadStore *store, gint64 flock_id, SteadDay from, SteadDay to,
                                              SteadFlockSpan *spans, int n_spans,
                                              GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last day with an egg entry (feed entry; use of bedding), or STEAD_DAY_NONE. */
SteadDay    stead_flock_repo_last_eggs    (SteadStore *store, gint64 flock_id, GError **error);
SteadDay    stead_flock_repo_last_feed    (SteadStore *store, gint64 flock_id, GError **error);
SteadDay    stead_flock_repo_last_bedding (SteadStore *store, gint64 flock_id, GError **error);

G_END_DECLS
