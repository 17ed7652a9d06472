/* kitchen-fixture.h - what is cooked of what is in the store room. */
#pragma once

#include "repo-fixture.h"

G_BEGIN_DECLS

/* A kitchen batch that has neither used nor made anything; returns its id. */
gint64 kitchen_begin (Farm *farm, const char *name, SteadDay day);
/* @made of @makes, of @used of @uses, on @day; returns the batch's id. */
gint64 kitchen_cook  (Farm *farm, const char *name, SteadDay day, gint64 uses, double used, gint64 makes, double made);

/* The cents that the lots of a batch came in with. */
gint64 kitchen_cents (Farm *farm, gint64 batch_id);

G_END_DECLS
