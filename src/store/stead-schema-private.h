/* stead-schema-private.h - the later steps of the schema, a file each. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/* From version N - 1 to version N; a released step is never edited. */
extern const char stead_schema_step_2[];
extern const char stead_schema_step_3[];
extern const char stead_schema_step_4[];
extern const char stead_schema_step_5[];

G_END_DECLS
