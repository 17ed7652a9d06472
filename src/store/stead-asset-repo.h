/* stead-asset-repo.h - things that last for years, and which batches bear them. */
#pragma once

#include "core/stead-depreciation.h"
#include "store/stead-store.h"

G_BEGIN_DECLS

/* How the batches of an asset's shares bear what it wears down.  Not to be changed in
 * order: the file holds their words. */
typedef enum
{
  STEAD_SHARE_PARTS,    /* each its fixed part */
  STEAD_SHARE_DAYS,     /* of each day, those under way the same */
  STEAD_SHARE_SPACE,    /* of each day, those under way by the area of their places */
  STEAD_SHARE_USE,      /* of each month, by what each used of it in the month */
} SteadShareBy;

typedef struct
{
  gint64 batch_id;
  double frac;      /* by parts: share of the charge that the batch bears, 0 to 1, all shares
                       together at most 1; else not used, but above 0 */
} SteadAssetShare;

typedef struct
{
  gint64                   id;             /* 0: not saved yet */
  char                    *name;           /* unique, not empty */
  SteadDay                 bought_on;
  gint64                   cost_cents;
  gint64                   extra_cents;    /* delivery, setting up */
  gint64                   salvage_cents;  /* worth at the end, at most the basis */
  SteadDepreciationMethod  method;
  double                   life_years;     /* above 0 unless by units */
  double                   life_units;     /* above 0 if by units */
  char                    *unit_name;      /* (nullable): "hour", "batch" */
  gboolean                 is_gift;
  SteadDay                 gone_on;        /* sold or broken; STEAD_DAY_NONE: in use */
  gint64                   gone_cents;     /* what it was sold for; -1: not said */
  SteadShareBy             share_by;       /* by units each use names its batch, whatever this says */
  GArray                  *shares;         /* of SteadAssetShare */
} SteadAsset;

SteadAsset *stead_asset_new  (void) G_GNUC_WARN_UNUSED_RESULT;
void        stead_asset_free (SteadAsset *asset);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAsset, stead_asset_free)

GPtrArray  *stead_asset_repo_list    (SteadStore *store, GError **error) G_GNUC_WARN_UNUSED_RESULT;
SteadAsset *stead_asset_repo_get     (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_asset_repo_save    (SteadStore *store, SteadAsset *asset, GError **error) G_GNUC_WARN_UNUSED_RESULT;
gboolean    stead_asset_repo_delete  (SteadStore *store, gint64 id, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Use of a thing that wears by units, or that is shared by use. */
gboolean    stead_asset_repo_add_use (SteadStore *store, gint64 asset_id, gint64 batch_id, SteadDay day,
                                      double units, GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* (element-type SteadAssetUse): from @from to @to, oldest first. */
typedef struct
{
  gint64   batch_id;
  SteadDay day;
  double   units;
} SteadAssetUse;
GArray     *stead_asset_repo_use_list (SteadStore *store, gint64 asset_id, SteadDay from, SteadDay to,
                                       GError **error) G_GNUC_WARN_UNUSED_RESULT;
/* Units used by @batch_id (0: by all) in the span, and by all before it. */
gboolean    stead_asset_repo_uses    (SteadStore *store, gint64 asset_id, gint64 batch_id, SteadDay from, SteadDay to,
                                      double *out_units, double *out_before, GError **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
