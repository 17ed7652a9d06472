/* stead-fish-repo.h - groups of fish (cohorts), their log, weighings and moves.
 *
 * A group is a batch of kind "fish" that lives in one tank at a time.  Feed in an
 * entry is taken from the feed lots like that of a flock.  Weights are grams for a
 * fish and kg for many; growth is TGC x 100.
 */
#pragma once

#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadBatch  batch;          /* its place is a tank */
  char       *species;        /* an id of core's table, or the farm's own word */
  gint64      stocked;        /* fish put in at the start; 0: all came by moves */
  double      stocked_g;      /* mean weight then */
  gint64      cost_cents;     /* of all of them */
  gboolean    is_gift;
  double      protein_frac;   /* of the feed; NAN: not said */
  double      tgc;            /* TGC x 100 expected, above 0 */
  double      sale_g;         /* least weight for sale */
  double      sale_frac;      /* share that must reach it, 0 to 1 */
  double      spread_frac;    /* sd / mean of single weights expected: 0.2 */
  double      deaths_year;    /* share expected to die in a year, 0 to 1 */
  int         purge_days;     /* without feed, in clean water, before sale */
  SteadDay    purge_from;     /* STEAD_DAY_NONE: not purging */
} SteadFish;

/* No name, no days; what is usual for tilapia. */
SteadFish *stead_fish_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void       stead_fish_free (SteadFish *group);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFish, stead_fish_free)

/* @ended: also groups that are over.  Under way first, then by name. */
GPtrArray *stead_fish_repo_list   (SteadStore *store, gboolean ended, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadFish *stead_fish_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Another place than before is a move of the whole group to another tank, today;
 * the stay that ends is kept (batch_stay: until_day is the first day elsewhere). */
gboolean   stead_fish_repo_save   (SteadStore *store, SteadFish *group, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Takes its log and weighings along; refused if a product names it, if it gave a
 * harvest, or if fish moved between it and another group. */
gboolean   stead_fish_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- the log -------------------------------------------------------------------- */

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    fish_id;
  SteadDay  day;
  double    feed_kg;     /* NAN: not entered */
  gboolean  refused;     /* they did not eat it up */
  gint32    deaths;      /* found dead */
  gint32    culled;      /* taken out, not for sale */
  double    water_c;     /* NAN: not measured */
  char     *reason;      /* (nullable): of the deaths */
  char     *note;        /* (nullable) */
  gint64    person_id;
  gboolean  left_out;    /* not to learn from */
} SteadFishEntry;

void stead_fish_entry_free (SteadFishEntry *entry);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFishEntry, stead_fish_entry_free)

/* What stands in the tank beside one entry, for its check. */
typedef struct
{
  gint64 there;       /* fish that are there at some time of that day */
  gint64 can_go;      /* of them can die or leave, so that no later day is short */
  double most_kg;     /* the most that all that are there can weigh */
} SteadFishStand;

/* @entry_id: as if this entry were not there; 0: none.  Unchanged with @error. */
gboolean   stead_fish_repo_stand        (SteadStore *store, gint64 fish_id, SteadDay day, gint64 entry_id,
                                         SteadFishStand *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Checked: a day from stocking to today (or the end), something entered, no more
 * lost than swim there, feed at most a third of what they weigh, water in -5 to 60 °C.
 * The check alone is for a preview. */
gboolean   stead_fish_entry_check       (const SteadFishEntry *entry, const SteadFish *group,
                                         const SteadFishStand *stand, SteadDay today, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_fish_repo_save_entry   (SteadStore *store, SteadFishEntry *entry, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean   stead_fish_repo_delete_entry (SteadStore *store, gint64 entry_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadFishEntry *stead_fish_repo_get_entry (SteadStore *store, gint64 entry_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Many at once (import), in order of day; feed is settled once at the end.
 * @progress (nullable) gets 0 to 1 and may be called from the worker's thread. */
gboolean   stead_fish_repo_add_entries  (SteadStore *store, GPtrArray *entries, GCancellable *cancellable,
                                         void (*progress) (double share, gpointer data), gpointer data,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Oldest first. */
GPtrArray *stead_fish_repo_entries      (SteadStore *store, gint64 fish_id, SteadDay from, SteadDay to,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* A window on the log, newest first: a table loads only the rows it shows.  -1 with @error. */
gint64     stead_fish_repo_count_entries (SteadStore *store, gint64 fish_id, GError **error);
GPtrArray *stead_fish_repo_page_entries (SteadStore *store, gint64 fish_id, gint64 offset, gint64 limit,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last day on which they were fed, or STEAD_DAY_NONE. */
SteadDay   stead_fish_repo_last_feed    (SteadStore *store, gint64 fish_id, GError **error);

/* --- sums ------------------------------------------------------------------------- */

/* Stocked + moved in - moved out - dead - culled - harvested up to the start of @day; -1 with @error. */
gint64     stead_fish_repo_alive        (SteadStore *store, gint64 fish_id, SteadDay day, GError **error);

typedef struct
{
  SteadDay day;
  gint64   n;       /* alive at the end of that day, after what happened on it */
} SteadFishCount;

/* (element-type SteadFishCount): the first day and each day on which the number changed. */
GArray    *stead_fish_repo_counts       (SteadStore *store, gint64 fish_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

typedef struct
{
  double feed_kg;
  gint64 days_fed;       /* days with feed in the log */
  gint64 deaths;
  gint64 culled;
  gint64 harvested;
  double harvested_kg;   /* live, or as it came where the live weight was not taken */
  gint64 moved_in, moved_out;
  double moved_in_kg, moved_out_kg;
  gint64 moved_in_cents, moved_out_cents;
} SteadFishTotals;

gboolean   stead_fish_repo_totals       (SteadStore *store, gint64 fish_id, SteadDay from, SteadDay to,
                                         SteadFishTotals *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* One temperature a day out of the log, the water's tests and the tank's thermometer
 * (their mean), NAN where there is none; @out has @to - @from + 1 places. */
gboolean   stead_fish_repo_temperatures (SteadStore *store, gint64 fish_id, SteadDay from, SteadDay to,
                                         double *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Where a group was from one day on. */
typedef struct
{
  SteadDay from;
  gint64   place_id;   /* 0: not said */
} SteadFishStay;

/* (element-type SteadFishStay): the first from the day of stocking, the last one lasts. */
GArray    *stead_fish_repo_stays        (SteadStore *store, gint64 fish_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* --- weighings -------------------------------------------------------------------- */

typedef struct
{
  double weight_g;
  double length_cm;   /* NAN: not measured */
} SteadWeighed;

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  gint64    batch_id;    /* fish, or pullets of a flock */
  SteadDay  day;
  gint64    n;           /* in the sample */
  double    total_kg;
  double    sd_g;        /* of single weights; NAN: weighed in bulk */
  double    length_cm;   /* mean; NAN: not measured */
  GArray   *single;      /* (nullable) of SteadWeighed: then n, total, sd and length come from it */
  char     *note;        /* (nullable) */
  gint64    person_id;
  gboolean  left_out;
} SteadWeighing;

SteadWeighing *stead_weighing_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void           stead_weighing_free (SteadWeighing *weighing);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadWeighing, stead_weighing_free)

/* 1000 x total / n, in grams. */
double         stead_weighing_mean_g      (const SteadWeighing *weighing);
/* Fills n, total, spread and length from the single weights, if there are any. */
void           stead_weighing_take_single (SteadWeighing *weighing);
/* What can be said without the file: a day up to @today, numbers that can be. */
gboolean       stead_weighing_check       (const SteadWeighing *weighing, SteadDay today,
                                           GError **error) G_GNUC_WARN_UNUSED_RESULT;

/* Oldest first, with their single weights. */
GPtrArray     *stead_weighing_repo_list   (SteadStore *store, gint64 batch_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadWeighing *stead_weighing_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Checked besides: a day of the batch, and no more animals than are alive then. */
gboolean       stead_weighing_repo_save   (SteadStore *store, SteadWeighing *weighing, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean       stead_weighing_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The last day of a weighing, or STEAD_DAY_NONE. */
SteadDay       stead_weighing_repo_last   (SteadStore *store, gint64 batch_id, GError **error);

/* --- moves -------------------------------------------------------------------------- */

typedef struct
{
  gint64    id;          /* 0: not saved yet */
  SteadDay  day;
  gint64    from_id, to_id;
  gint64    n;
  double    mean_g;
  gint64    cost_cents;  /* that they carry along */
  char     *note;        /* (nullable) */
  gint64    person_id;
} SteadFishMove;

void stead_fish_move_free (SteadFishMove *move);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadFishMove, stead_fish_move_free)

/* All moves out of and into a group, oldest first. */
GPtrArray *stead_fish_repo_moves       (SteadStore *store, gint64 fish_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Both groups under way, of one species, not more fish than there are. */
gboolean   stead_fish_repo_save_move   (SteadStore *store, SteadFishMove *move, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Refused if the fish that came are needed where they went. */
gboolean   stead_fish_repo_delete_move (SteadStore *store, gint64 move_id, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
