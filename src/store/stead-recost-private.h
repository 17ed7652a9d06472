/* stead-recost-private.h - movements in memory, to be costed in order of day.
 *
 * A pool is what goods out are costed from: a lot, or all lots of an item.
 */
#pragma once

#include "store/stead-store-private.h"

G_BEGIN_DECLS

typedef struct
{
  double base;          /* on hand before the first movement */
  gint64 cents;
  double now;           /* while it runs */
  gint64 now_cents;
  guint  to_come;       /* what kitchen batches are still to bring on the day that runs */
} SteadRecostPool;

typedef struct
{
  gint64           id;
  SteadDay         day;
  double           quantity;    /* signed */
  gint64           was;         /* cents in the file, signed */
  gint64           cents;
  gint64           batch_id;    /* a kitchen batch that used or made it; 0: none */
  gboolean         is_made;     /* by that batch */
  SteadRecostPool *pool;        /* (unowned) */
} SteadRecostMove;

/* What a kitchen batch used, and made; one of both that is not among the movements
 * keeps its cents. */
typedef struct
{
  gint64 id;
  gint64 cents;
  double quantity;
  guint  at;          /* among the movements; G_MAXUINT: not there */
} SteadRecostPart;

typedef struct
{
  gint64    id;
  GArray   *used;     /* of SteadRecostPart */
  GArray   *made;     /* of SteadRecostPart, by id */
  gint64    total;    /* cents that what it made carries */
} SteadRecostBatch;

typedef struct
{
  SteadStore *store;
  gboolean    by_item;      /* a pool is an item, not a lot */
  SteadDay    open;         /* what was before it stays */
  SteadDay    from;         /* what was before it is as it should be */
  SteadDay    earliest;     /* on which a batch that used something since then made anything */
  GArray     *begin;        /* of gint64: items (or lots) that something happened to */
  GArray     *begin_batches;
  GHashTable *pools;        /* gint64 lot -> SteadRecostPool */
  GPtrArray  *owned;        /* of SteadRecostPool */
  GHashTable *batches;      /* gint64 -> SteadRecostBatch */
  GHashTable *read;         /* gint64 items (or lots) that are read */
  GArray     *wait;         /* of gint64: items (or lots) still to be read */
  GArray     *moves;        /* of SteadRecostMove */
} SteadRecost;

void stead_recost_clear (SteadRecost *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadRecost, stead_recost_clear)

/* From @from on, or the first open day if that is later; @self is all zeros.  Then what
 * changed is added to "begin" and "begin_batches". */
gboolean stead_recost_begin (SteadRecost  *self,
                             SteadStore   *store,
                             gboolean      by_item,
                             SteadDay      from,
                             GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/* Reads all that hangs on it, runs it, and writes what differs. */
gboolean stead_recost_end   (SteadRecost  *self,
                             GError      **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_recost_run:
 * @moves: (element-type SteadRecostMove): by day and id; cents are filled in
 * @batches: (element-type gint64 SteadRecostBatch): those that the movements name
 *
 * Within a day what came from outside is first, then each kitchen batch takes what
 * it used and brings what it made, those whose parts are all there before others;
 * then all else goes out, by id.
 */
void stead_recost_run (GArray      *moves,
                       GHashTable  *batches);

G_END_DECLS
