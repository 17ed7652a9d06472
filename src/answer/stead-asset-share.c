/* stead-asset-share.c - what one batch bears of a thing that others use too.
 *
 * By days and by space the charge of each day goes to the batches of the thing's shares
 * that are under way on it; by use the charge of each calendar month goes by what was
 * used in the month up to the day that is asked for.  What nobody bears stays the
 * farm's.  (Common practice, no source.)
 */
#include "config.h"

#include "answer/stead-cost-private.h"

#include "store/stead-batch-repo.h"
#include "store/stead-place-repo.h"

typedef struct
{
  SteadStore       *store;
  const SteadAsset *asset;
  gint64            batch_id;
} Sharing;

static double
charge_between (const SteadAsset *asset,
                SteadDay          first,
                SteadDay          last)
{
  SteadDepreciable thing = stead_asset_depreciable (asset);

  return last < first ? 0 : stead_depreciation_between (&thing, (first - asset->bought_on) / STEAD_DAYS_A_YEAR,
                                                        (last + 1 - asset->bought_on) / STEAD_DAYS_A_YEAR);
}

/* --- by days and by space --------------------------------------------------------- */

/* One batch of the shares, and what it counts while it is under way. */
typedef struct
{
  gint64   id;
  SteadDay first, last;
  double   weight;
} Sharer;

/* Area of the place that the batch stands in now; 0: not known. */
static double
area_of (GPtrArray *places,
         gint64     place_id)
{
  for (guint i = 0; i < places->len; i++)
    {
      const SteadPlaceFacts *place = places->pdata[i];

      if (place->id == place_id)
        return place->area_m2 > 0 ? place->area_m2 : 0;
    }
  return 0;
}

static GArray *
read_sharers (const Sharing  *self,
              GError        **error)
{
  g_autoptr(GArray) sharers = g_array_new (FALSE, FALSE, sizeof (Sharer));
  g_autoptr(GPtrArray) places = stead_place_repo_list (self->store, error);

  if (places == NULL)
    return NULL;
  for (guint i = 0; i < self->asset->shares->len; i++)
    {
      const SteadAssetShare *share = &g_array_index (self->asset->shares, SteadAssetShare, i);
      g_autoptr(SteadBatch) batch = stead_batch_repo_get (self->store, share->batch_id, error);
      Sharer sharer = { .id = share->batch_id, .weight = 1 };

      if (batch == NULL)
        return NULL;
      sharer.first = batch->started_on;
      sharer.last = batch->ended_on == STEAD_DAY_NONE ? G_MAXINT32 - 1 : batch->ended_on;
      if (self->asset->share_by == STEAD_SHARE_SPACE)
        sharer.weight = area_of (places, batch->place_id);
      g_array_append_val (sharers, sharer);
    }
  return g_steal_pointer (&sharers);
}

/* Share of the batch on @day, and the last day on which it stays so. */
static double
share_on (const GArray *sharers,
          gint64        batch_id,
          SteadDay      day,
          SteadDay     *until)
{
  double own = 0, all = 0;

  for (guint i = 0; i < sharers->len; i++)
    {
      const Sharer *sharer = &g_array_index (sharers, Sharer, i);

      if (day < sharer->first)
        *until = MIN (*until, sharer->first - 1);
      else if (day <= sharer->last)
        {
          *until = MIN (*until, sharer->last);
          all += sharer->weight;
          own += sharer->id == batch_id ? sharer->weight : 0;
        }
    }
  return all > 0 ? own / all : 0;
}

static gboolean
share_days (const Sharing  *self,
            SteadDay        first,
            SteadDay        last,
            double         *out_cents,
            GError        **error)
{
  g_autoptr(GArray) sharers = read_sharers (self, error);

  if (sharers == NULL)
    return FALSE;
  *out_cents = 0;
  for (SteadDay day = first; day <= last;)
    {
      SteadDay until = last;
      double share = share_on (sharers, self->batch_id, day, &until);

      *out_cents += share * charge_between (self->asset, day, until);
      day = until + 1;
    }
  return TRUE;
}

/* --- by use ------------------------------------------------------------------------- */

static SteadDay
month_start (SteadDay day)
{
  int year, month, mday;

  stead_day_split (day, &year, &month, &mday);
  return stead_day_new (year, month, 1);
}

static double
part_of_uses (const GArray *uses,
              gint64        batch_id,
              SteadDay      from,
              SteadDay      to)
{
  double own = 0, all = 0;

  for (guint i = 0; i < uses->len; i++)
    {
      const SteadAssetUse *use = &g_array_index (uses, SteadAssetUse, i);

      if (use->day < from || use->day > to)
        continue;
      all += use->units;
      own += use->batch_id == batch_id ? use->units : 0;
    }
  return all > 0 ? own / all : 0;
}

/* All since it was bought, up to @last. */
static gboolean
share_use_until (const Sharing  *self,
                 SteadDay        last,
                 double         *out_cents,
                 GError        **error)
{
  g_autoptr(GArray) uses = stead_asset_repo_use_list (self->store, self->asset->id, self->asset->bought_on, last, error);

  if (uses == NULL)
    return FALSE;
  *out_cents = 0;
  for (SteadDay day = self->asset->bought_on; day <= last;)
    {
      SteadDay next = month_start (month_start (day) + 31);
      SteadDay until = MIN (last, next - 1);

      *out_cents += part_of_uses (uses, self->batch_id, day, until) * charge_between (self->asset, day, until);
      day = next;
    }
  return TRUE;
}

static gboolean
share_use (const Sharing  *self,
           SteadDay        first,
           SteadDay        last,
           double         *out_cents,
           GError        **error)
{
  double before = 0;

  if (!share_use_until (self, last, out_cents, error) ||
      (first > self->asset->bought_on && !share_use_until (self, first - 1, &before, error)))
    return FALSE;
  *out_cents -= before;
  return TRUE;
}

/* --- all ------------------------------------------------------------------------------ */

gboolean
stead_asset_share_cents (SteadStore        *store,
                         const SteadAsset  *asset,
                         gint64             batch_id,
                         SteadDay           first,
                         SteadDay           last,
                         double            *out_cents,
                         GError           **error)
{
  Sharing self = { .store = store, .asset = asset, .batch_id = batch_id };
  gboolean is_named = FALSE;

  *out_cents = 0;
  for (guint i = 0; i < asset->shares->len; i++)
    {
      const SteadAssetShare *share = &g_array_index (asset->shares, SteadAssetShare, i);

      if (share->batch_id != batch_id)
        continue;
      is_named = TRUE;
      if (asset->share_by == STEAD_SHARE_PARTS)
        *out_cents = share->frac * charge_between (asset, first, last);
    }
  if (asset->share_by == STEAD_SHARE_USE)
    return share_use (&self, first, last, out_cents, error);
  if (!is_named || asset->share_by == STEAD_SHARE_PARTS)
    return TRUE;
  return share_days (&self, first, last, out_cents, error);
}
