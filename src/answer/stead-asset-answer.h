/* stead-asset-answer.h - "What do the things that last cost us, and what are they worth?" */
#pragma once

#include "answer/stead-words.h"
#include "store/stead-asset-repo.h"

G_BEGIN_DECLS

typedef struct
{
  SteadAsset *asset;
  gint64      worth_cents;  /* book value today */
  gint64      year_cents;   /* charge of the twelve months up to today; by units: of the use in them */
  char       *life;         /* "8 years, evenly", "5 years, more at first", "2,000 hours" */
  char       *borne_by;     /* "Brown hens 100 %", "nobody yet" */
} SteadAssetLine;

typedef struct
{
  GPtrArray *lines;         /* of SteadAssetLine, by name */
  gint64     worth_cents;   /* all of them */
  gint64     year_cents;
  char      *currency;
  char      *sentence;      /* markup */
} SteadAssetAnswer;

void stead_asset_line_free   (SteadAssetLine *line);
void stead_asset_answer_free (SteadAssetAnswer *self);
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAssetLine, stead_asset_line_free)
G_DEFINE_AUTOPTR_CLEANUP_FUNC (SteadAssetAnswer, stead_asset_answer_free)

/**
 * stead_asset_answer_new:
 * @store: an open farm
 * @error: return location for a #GError
 *
 * Returns: (transfer full): the answer, with no line where nothing was bought yet
 */
SteadAssetAnswer *stead_asset_answer_new (SteadStore  *store,
                                          GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* (transfer full) (element-type SteadWhy): one for each way in which a thing wears */
GPtrArray *stead_asset_answer_whys (const SteadAssetAnswer *self) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_asset_answer_method_name:
 *
 * Returns: (transfer none): the method as a choice in a list
 */
const char *stead_asset_answer_method_name (SteadDepreciationMethod method);

G_END_DECLS
