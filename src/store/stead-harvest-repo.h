/* stead-harvest-repo.h - what a batch gives into the store room.
 *
 * A harvest makes one lot of an item "from the farm", with a movement "made" that
 * carries the cost worked out by whoever asks (answer/stead-harvest-answer.h), and
 * tells what was lost at once.  Taking it back is refused once the lot was used.
 */
#pragma once

#include "store/stead-batch-repo.h"

G_BEGIN_DECLS

typedef struct
{
  gint64    id;             /* 0: not saved yet */
  gint64    batch_id;
  SteadDay  day;
  gint64    item_id;        /* kind "produce"; 0 with nothing good */
  double    quantity_base;  /* good, into the lot; 0: all was lost */
  double    lost_base;      /* spoiled, cracked, waste; 0 or more */
  char     *reason;         /* of the loss; needed with one */
  double    tasted_base;    /* tasted, or kept for the record: neither good nor lost; 0 or more */
  gint64    pieces;         /* fish or eggs taken out, good or not; STEAD_COUNT_NONE: not counted */
  double    live_kg;        /* before dressing; NAN: as harvested */
  char     *grade;          /* (nullable): "first", "second", a class of egg */
  SteadDay  best_by;        /* STEAD_DAY_NONE: from the item's shelf life, if it has one */
  gint64    cost_cents;     /* that the lot carries */
  gboolean  is_last;        /* nothing more comes of this batch */
  char     *note;           /* (nullable) */
  gint64    person_id;
  gint64    lot_id;         /* filled in when saved or read; 0: none */
  char     *lot_code;       /* (nullable): when read */
} SteadHarvest;

SteadHarvest *stead_harvest_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void          stead_harvest_free (SteadHarvest *harvest);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadHarvest, stead_harvest_free)

/* Oldest first, of a span of days. */
GPtrArray    *stead_harvest_repo_list   (SteadStore *store, gint64 batch_id, SteadDay from, SteadDay to,
                                         GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadHarvest *stead_harvest_repo_get    (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Inserts, or changes one whose lot was not used yet.  Refused: a day outside the batch
 * or to come, more fish than swim there, a batch that waits after a treatment. */
gboolean      stead_harvest_repo_save   (SteadStore *store, SteadHarvest *harvest, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean      stead_harvest_repo_delete (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The code that the next lot of a batch gets on @day; for showing it before. */
char         *stead_harvest_repo_next_code (SteadStore *store, const SteadBatch *batch, SteadDay day,
                                            GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* The item that was harvested last of a batch; 0: none yet.  -1 with @error. */
gint64        stead_harvest_repo_last_item (SteadStore *store, gint64 batch_id, GError **error);
/* The lot was harvested while its batch waited after a treatment that was written down
 * later: until when it had to wait, or STEAD_DAY_NONE (look at @error too). */
SteadDay      stead_harvest_repo_lot_wait (SteadStore *store, gint64 lot_id, GError **error);

typedef struct
{
  double good_base, lost_base, tasted_base;
  gint64 pieces;
  double live_kg;
  gint64 cost_cents;   /* carried by the lots */
  gboolean is_over;    /* a last one is among them */
} SteadHarvestTotals;

gboolean      stead_harvest_repo_totals (SteadStore *store, gint64 batch_id, SteadDay from, SteadDay to,
                                         SteadHarvestTotals *out, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
