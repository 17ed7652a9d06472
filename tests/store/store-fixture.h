/* store-fixture.h - what the tests of the farm file share.
 *
 * Rows are written by SQL here, not by the repositories: these tests stand below them.
 */
#pragma once

#include "store/stead-store-private.h"

G_BEGIN_DECLS

/* Runs SQL on the store's own connection. */
void        fixture_run       (SteadStore *store, const char *sql);
/* One action of this name that runs @sql. */
void        fixture_act       (SteadStore *store, const char *name, const char *sql);
/* The whole number that @sql gives. */
gint64      fixture_number    (SteadStore *store, const char *sql);
/* Every row of every recorded table as text: equal text, equal farm. */
char       *fixture_dump      (SteadStore *store);
/* A farm with a flock, its log, a receipt with its lot, and movements; six actions. */
void        fixture_fill      (SteadStore *store);

/* A folder that is deleted with all in it. */
char       *fixture_folder    (void);
void        fixture_remove    (char *folder);
typedef char FixtureFolder;
G_DEFINE_AUTOPTR_CLEANUP_FUNC (FixtureFolder, fixture_remove)

/* SHA-256 of a file's bytes. */
char       *fixture_sum       (const char *path);

G_END_DECLS
