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
 *
 * What a farm file looks like.  The program knows one; tests make up others.
 */
typedef struct
{
  const char * const *steps;
  int                 version;
} SteadSchema;

extern const SteadSchema stead_schema;

/* Tables whose changes are recorded for undo; %NULL at the end. */
extern const char * const stead_schema_undo_tables[];

G_END_DECLS
