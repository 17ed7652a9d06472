/* stead-demo-answer.h - the demo farm whole: what the store tells of it, and its checklists.
 *
 * A checklist is made by the generator, which is an answer; so this part of the story
 * is told here and not in the store.
 */
#pragma once

#include "store/stead-demo-farm.h"

G_BEGIN_DECLS

/**
 * stead_demo_answer_create:
 *
 * As stead_demo_farm_create(), with a term of checklists: one for each kitchen batch, read
 * and signed, one of them with a reading that failed and what was done; and an open one
 * for the batch to come.
 *
 * Returns: (transfer full): the open farm, or %NULL with @error and no file left
 */
SteadStore *stead_demo_answer_create (const char  *path,
                                      const char  *description,
                                      SteadDay     today,
                                      GError     **error) G_GNUC_WARN_UNUSED_RESULT;

G_END_DECLS
