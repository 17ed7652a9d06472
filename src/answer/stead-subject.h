/* stead-subject.h - which product, batch, bay or water a question or a paper is about, by name. */
#pragma once

#include "store/stead-farm-repo.h"

G_BEGIN_DECLS

/**
 * stead_subject_product:
 * stead_subject_flock:
 * stead_subject_fish:
 * stead_subject_crop:
 * stead_subject_bay:
 * stead_subject_water:
 * stead_subject_batch:
 * stead_subject_lot:
 * stead_subject_account:
 * stead_subject_enterprise:
 * stead_subject_sale:
 * stead_subject_checklist:
 * stead_subject_build:
 * @store: an open farm
 * @name: (nullable): as a person types it, case and outer blanks aside; %NULL for the first one
 * @out_id: (out): the product (flock, group of fish, crop, place, water, any batch, lot, account, part of the farm)
 * @error: %STEAD_ANSWER_ERROR_MISSING if the farm has none at all,
 *   %STEAD_ANSWER_ERROR_UNKNOWN, naming those there are, if none is called so
 *
 * Products that are retired, batches that are over and waters no longer in use are found
 * by name too, but never taken as the first one while another is there.  A lot goes by its
 * code; without one the newest that was made here, or else bought, is taken.  Of checklists
 * the newest of that name is taken; the first one is the newest that is not signed.
 *
 * A sale day goes by its name, the next one to come of it first, or by its name and day:
 * "Winter market 2026-12-05".
 *
 * Returns: %TRUE, or %FALSE with @error set and @out_id left alone
 */
gboolean stead_subject_product (SteadStore  *store,
                                const char  *name,
                                gint64      *out_id,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_flock (SteadStore  *store,
                              const char  *name,
                              gint64      *out_id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_fish (SteadStore  *store,
                             const char  *name,
                             gint64      *out_id,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_crop (SteadStore  *store,
                             const char  *name,
                             gint64      *out_id,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_bay (SteadStore  *store,
                            const char  *name,
                            gint64      *out_id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_water (SteadStore  *store,
                              const char  *name,
                              gint64      *out_id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_recipe (SteadStore  *store,
                               const char  *name,
                               gint64      *out_id,
                               GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_kitchen (SteadStore  *store,
                                const char  *name,
                                gint64      *out_id,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_batch (SteadStore  *store,
                              const char  *name,
                              gint64      *out_id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_lot (SteadStore  *store,
                            const char  *name,
                            gint64      *out_id,
                            GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_account (SteadStore  *store,
                                const char  *name,
                                gint64      *out_id,
                                GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_enterprise (SteadStore  *store,
                                   const char  *name,
                                   gint64      *out_id,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_sale (SteadStore  *store,
                             const char  *name,
                             gint64      *out_id,
                             GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_checklist (SteadStore  *store,
                                  const char  *name,
                                  gint64      *out_id,
                                  GError     **error) G_GNUC_WARN_UNUSED_RESULT;

gboolean stead_subject_build (SteadStore  *store,
                              const char  *name,
                              gint64      *out_id,
                              GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* The same for a person; %NULL: the first student.  Returns: (transfer full): the person */
SteadPerson *stead_subject_person (SteadStore  *store,
                                   const char  *name,
                                   GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
