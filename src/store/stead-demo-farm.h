/* stead-demo-farm.h - the invented farm that a visitor sees first. */
#pragma once

#include "store/stead-store.h"

G_BEGIN_DECLS

/**
 * stead_demo_farm_create:
 * @path: where; must not exist
 * @description: text of data/demo/ember-lake.ini (a key file), or %NULL for the one built in
 * @today: the last day of the story; the eighteen months before it are made up
 *
 * Same description and day: same facts, by a fixed seed.
 *
 * Returns: (transfer full): the open farm, or %NULL with @error and no file left
 */
SteadStore *stead_demo_farm_create (const char  *path,
                                    const char  *description,
                                    SteadDay     today,
                                    GError     **error) G_GNUC_WARN_UNUSED_RESULT;

/* One more part of the story, told once the store's own is told. */
typedef gboolean (*SteadDemoMore) (SteadStore *store, GError **error);

/* The same, with a part that is made of answers: @more writes it before the file is there. */
SteadStore *stead_demo_farm_create_with (const char     *path,
                                         const char     *description,
                                         SteadDay        today,
                                         SteadDemoMore   more,
                                         GError        **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
