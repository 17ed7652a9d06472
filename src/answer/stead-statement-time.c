/* stead-statement-time.c - what time does to the worth of things, flocks and batches.
 *
 * Each is reckoned from its beginning up to the day before the period and up to its last
 * day, in whole cents; the difference is the period's.  So the parts of any two periods
 * that meet sum to that of both.
 */
#include "config.h"

#include "answer/stead-cost-private.h"
#include "answer/stead-statement-private.h"

#include "core/stead-money.h"
#include "store/stead-batch-repo.h"

typedef struct
{
  SteadStore *store;
  SteadDay    from, to;
  GArray     *postings;
  GPtrArray  *batches;   /* of SteadBatch */
} Timing;

/* Reckons something from its beginning up to @day. */
typedef struct
{
  gint64 before;   /* up to the day before the period */
  gint64 end;
} Span;

static void
post_one (Timing   *self,
          SteadHead head,
          gint64    key,
          gint64    enterprise_id,
          SteadFact fact,
          gint64    fact_id,
          SteadDay  day,
          gint64    cents)
{
  SteadPosting posting = { .head = head, .key = key, .enterprise_id = enterprise_id, .category = -1, .day = day,
                           .fact = fact, .fact_id = fact_id, .cents = cents };

  if (cents == 0)
    return;
  if (day < self->from)
    {
      posting.fact = STEAD_FACT_BEFORE;
      posting.fact_id = 0;
    }
  g_array_append_val (self->postings, posting);
}

/* What the period adds stands on @day; what was before it on the day before. */
static void
post_span (Timing       *self,
           SteadPosting  to,
           SteadPosting  from,
           SteadDay      day,
           Span          span)
{
  post_one (self, to.head, to.key, to.enterprise_id, to.fact, to.fact_id, self->from - 1, span.before);
  post_one (self, from.head, from.key, from.enterprise_id, to.fact, to.fact_id, self->from - 1, -span.before);
  post_one (self, to.head, to.key, to.enterprise_id, to.fact, to.fact_id, day, span.end - span.before);
  post_one (self, from.head, from.key, from.enterprise_id, to.fact, to.fact_id, day, span.before - span.end);
}


/* --- things that last -------------------------------------------------------------- */

static gboolean
wear_until (const Timing      *self,
            const SteadAsset  *asset,
            SteadDay           day,
            gint64            *out,
            GError           **error)
{
  SteadDepreciable thing = stead_asset_depreciable (asset);
  SteadDay last = asset->gone_on == STEAD_DAY_NONE ? day : MIN (day, asset->gone_on);
  double units, before;

  *out = 0;
  if (last < asset->bought_on)
    return TRUE;
  if (asset->method != STEAD_DEPRECIATION_UNITS)
    {
      *out = stead_money_round (stead_depreciation_between (&thing, 0, (last + 1 - asset->bought_on) / STEAD_DAYS_A_YEAR));
      return TRUE;
    }
  if (!stead_asset_repo_uses (self->store, asset->id, 0, asset->bought_on, last, &units, &before, error))
    return FALSE;
  *out = stead_money_round (stead_depreciation_for_use (&thing, 0, units));
  return TRUE;
}

/* What one batch bore of the wear up to @day. */
static gboolean
borne_until (const Timing      *self,
             const SteadAsset  *asset,
             const SteadBatch  *batch,
             SteadDay           day,
             gint64             wear,
             gint64            *out,
             GError           **error)
{
  SteadDay first = MAX (asset->bought_on, batch->started_on);
  SteadDay last = asset->gone_on == STEAD_DAY_NONE ? day : MIN (day, asset->gone_on);
  double cents, own, all, before;

  *out = 0;
  if (asset->method == STEAD_DEPRECIATION_UNITS)
    {
      if (last < asset->bought_on)
        return TRUE;
      if (!stead_asset_repo_uses (self->store, asset->id, batch->id, asset->bought_on, last, &own, &before, error) ||
          !stead_asset_repo_uses (self->store, asset->id, 0, asset->bought_on, last, &all, &before, error))
        return FALSE;
      *out = all > 0 ? stead_money_round ((double) wear * own / all) : 0;
      return TRUE;
    }
  if (batch->ended_on != STEAD_DAY_NONE)
    last = MIN (last, batch->ended_on);
  if (last < first)
    return TRUE;
  if (!stead_asset_share_cents (self->store, asset, batch->id, first, last, &cents, error))
    return FALSE;
  *out = stead_money_round (cents);
  return TRUE;
}

/* The wear that @batch bears goes into it; a flock's is a cost of its own. */
static gboolean
post_borne (Timing            *self,
            const SteadAsset  *asset,
            const SteadBatch  *batch,
            Span               wear,
            Span              *rest,
            GError           **error)
{
  gint64 enterprise = stead_enterprise_repo_of_batch (self->store, batch->id, error);
  gboolean is_flock = batch->kind == STEAD_BATCH_FLOCK;
  Span span;

  if (enterprise < 0 ||
      !borne_until (self, asset, batch, self->from - 1, wear.before, &span.before, error) ||
      !borne_until (self, asset, batch, self->to, wear.end, &span.end, error))
    return FALSE;
  rest->before -= span.before;
  rest->end -= span.end;
  post_span (self, (SteadPosting) { .head = is_flock ? STEAD_HEAD_WEAR : STEAD_HEAD_GROWING,
                                    .key = is_flock ? asset->id : batch->id, .enterprise_id = enterprise,
                                    .fact = STEAD_FACT_ASSET, .fact_id = asset->id },
             (SteadPosting) { .head = STEAD_HEAD_THINGS, .key = asset->id }, self->to, span);
  return TRUE;
}

/* What is left of its worth goes with it. */
static void
post_gone (Timing           *self,
           const SteadAsset *asset,
           Span              wear)
{
  gint64 basis = asset->cost_cents + asset->extra_cents;
  Span span = { 0 };

  if (asset->gone_on == STEAD_DAY_NONE || asset->gone_on > self->to)
    return;
  span.before = asset->gone_on < self->from ? basis - wear.before : 0;
  span.end = basis - wear.end;
  post_span (self, (SteadPosting) { .head = STEAD_HEAD_GONE, .key = asset->id, .fact = STEAD_FACT_ASSET,
                                    .fact_id = asset->id },
             (SteadPosting) { .head = STEAD_HEAD_THINGS, .key = asset->id }, MAX (asset->gone_on, self->from), span);
}

static gboolean
add_asset (Timing            *self,
           const SteadAsset  *asset,
           GError           **error)
{
  Span wear, rest;

  if (!wear_until (self, asset, self->from - 1, &wear.before, error) ||
      !wear_until (self, asset, self->to, &wear.end, error))
    return FALSE;
  rest = wear;
  for (guint i = 0; i < self->batches->len; i++)
    {
      const SteadBatch *batch = self->batches->pdata[i];
      gboolean may_bear = asset->method == STEAD_DEPRECIATION_UNITS || asset->share_by == STEAD_SHARE_USE;

      for (guint j = 0; j < asset->shares->len && !may_bear; j++)
        may_bear = g_array_index (asset->shares, SteadAssetShare, j).batch_id == batch->id;
      if (may_bear && !post_borne (self, asset, batch, wear, &rest, error))
        return FALSE;
    }
  post_span (self, (SteadPosting) { .head = STEAD_HEAD_WEAR, .key = asset->id, .fact = STEAD_FACT_ASSET,
                                    .fact_id = asset->id },
             (SteadPosting) { .head = STEAD_HEAD_THINGS, .key = asset->id }, self->to, rest);
  post_gone (self, asset, wear);
  return TRUE;
}

/* --- batches ------------------------------------------------------------------------- */

/* What went into a batch and has not come out, by the postings up to @day. */
static gint64
growing_until (const Timing *self,
               gint64        batch_id,
               SteadDay      day)
{
  gint64 cents = 0;

  for (guint i = 0; i < self->postings->len; i++)
    {
      const SteadPosting *posting = &g_array_index (self->postings, SteadPosting, i);

      if (posting->head == STEAD_HEAD_GROWING && posting->key == batch_id && posting->day <= day)
        cents += posting->cents;
    }
  return cents;
}

/* What birds raised here cost by the day before they began to lay. */
static gboolean
rearing_cents (const Timing      *self,
               const SteadFlock  *flock,
               SteadDay           lay,
               gint64            *out,
               GError           **error)
{
  g_autoptr(GPtrArray) uses = stead_lot_repo_uses (self->store, flock->id, flock->housed_on, lay - 1, error);

  if (uses == NULL)
    return FALSE;
  *out = flock->birds_cost_cents;
  for (guint i = 0; i < uses->len; i++)
    *out += ((const SteadUse *) uses->pdata[i])->cost_cents;
  return TRUE;
}

/* The birds' own worth on @day: an equal part of what they cost goes with each egg. */
static gboolean
birds_worth (const Timing      *self,
             const SteadFlock  *flock,
             SteadDay           day,
             gint64            *out,
             GError           **error)
{
  SteadDay lay = stead_flock_first_lay (flock);
  gint64 cost = flock->birds_cost_cents, hens = flock->birds, eggs;
  double part;

  *out = 0;
  if (day < flock->housed_on || (flock->ended_on != STEAD_DAY_NONE && flock->ended_on <= day))
    return TRUE;
  if (flock->reared && lay > flock->housed_on)
    {
      if (day < lay)
        {
          *out = growing_until (self, flock->id, day);
          return TRUE;
        }
      hens = stead_flock_repo_alive (self->store, flock->id, lay, error);
      if (hens < 0 || !rearing_cents (self, flock, lay, &cost, error))
        return FALSE;
    }
  eggs = stead_flock_repo_eggs (self->store, flock->id, flock->housed_on, day, error);
  if (eggs < 0)
    return FALSE;
  part = hens > 0 ? (double) eggs / ((double) hens * flock->eggs_expected) : 1;
  *out = cost <= flock->salvage_cents ? cost
         : cost - stead_money_round ((double) (cost - flock->salvage_cents) * MIN (part, 1));
  return TRUE;
}

static gboolean
add_flock (Timing            *self,
           const SteadBatch  *batch,
           gint64             enterprise,
           GError           **error)
{
  g_autoptr(SteadFlock) flock = stead_flock_repo_get (self->store, batch->id, error);
  Span worth, span;

  if (flock == NULL || !birds_worth (self, flock, self->from - 1, &worth.before, error) ||
      !birds_worth (self, flock, self->to, &worth.end, error))
    return FALSE;
  span.before = growing_until (self, batch->id, self->from - 1) - worth.before;
  span.end = growing_until (self, batch->id, self->to) - worth.end;
  post_span (self, (SteadPosting) { .head = STEAD_HEAD_EGGS, .key = batch->id, .enterprise_id = enterprise,
                                    .fact = STEAD_FACT_BATCH, .fact_id = batch->id },
             (SteadPosting) { .head = STEAD_HEAD_GROWING, .key = batch->id, .enterprise_id = enterprise },
             self->to, span);
  return TRUE;
}

static void
add_ended (Timing           *self,
           const SteadBatch *batch,
           gint64            enterprise)
{
  Span span = { 0 };

  if (batch->ended_on == STEAD_DAY_NONE || batch->ended_on > self->to)
    return;
  span.before = batch->ended_on < self->from ? growing_until (self, batch->id, self->from - 1) : 0;
  span.end = growing_until (self, batch->id, self->to);
  post_span (self, (SteadPosting) { .head = STEAD_HEAD_LEFT, .key = batch->id, .enterprise_id = enterprise,
                                    .fact = STEAD_FACT_BATCH, .fact_id = batch->id },
             (SteadPosting) { .head = STEAD_HEAD_GROWING, .key = batch->id, .enterprise_id = enterprise },
             MAX (batch->ended_on, self->from), span);
}

static gboolean
add_batch (Timing            *self,
           const SteadBatch  *batch,
           GError           **error)
{
  gint64 enterprise = stead_enterprise_repo_of_batch (self->store, batch->id, error);

  if (enterprise < 0)
    return FALSE;
  if (batch->kind == STEAD_BATCH_FLOCK)
    return add_flock (self, batch, enterprise, error);
  add_ended (self, batch, enterprise);
  return TRUE;
}

gboolean
stead_statement_add_time (SteadStore  *store,
                          SteadDay     from,
                          SteadDay     to,
                          GArray      *postings,
                          GError     **error)
{
  g_autoptr(GPtrArray) assets = stead_asset_repo_list (store, error);
  g_autoptr(GPtrArray) batches = assets != NULL ? stead_batch_repo_list (store, TRUE, error) : NULL;
  Timing self = { .store = store, .from = from, .to = to, .postings = postings, .batches = batches };

  if (batches == NULL)
    return FALSE;
  for (guint i = 0; i < assets->len; i++)
    if (!add_asset (&self, assets->pdata[i], error))
      return FALSE;
  for (guint i = 0; i < batches->len; i++)
    if (!add_batch (&self, batches->pdata[i], error))
      return FALSE;
  return TRUE;
}
