/* stead-schema.h - the tables of the farm file, one step for each version.
 *
 * A released step is never edited: a change is a new step at the end, and a
 * sample of the version before it goes into tests/fixtures.
 */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

#define STEAD_SCHEMA_APPLICATION_ID 0x53544544   /* "STED" */
#define STEAD_SCHEMA_VERSION 5

/**
 * SteadSchema:
 * @steps: the SQL that leads from version n to n + 1 stands at n
 * @version: how many steps there are
 * @sums: (nullable): for version n, at n - 1, the SHA-256 sum in hex of type, name,
 *   table name and SQL of all that sqlite_schema holds, a line each, ordered by these.
 *   A file that has it needs no schema laid out beside it to be known, which takes
 *   longer than all the rest of opening
 *
 * What a farm file looks like.  The program knows one; tests make up others.
 */
typedef struct
{
  const char * const *steps;
  int                 version;
  const char * const *sums;
} SteadSchema;

extern const SteadSchema stead_schema;

/* Tables whose changes are recorded for undo; %NULL at the end. */
extern const char * const stead_schema_undo_tables[];

G_END_DECLS
