/* stead-home.h - where the program's own files lie: installed, or in a build folder. */
#pragma once

#include <glib.h>

G_BEGIN_DECLS

/**
 * stead_home_build_folder:
 * @program: path of the running program
 *
 * Returns: (transfer full) (nullable): the build folder that @program was started
 *   from, or %NULL if it was installed
 */
char *stead_home_build_folder (const char *program) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_home_init:
 *
 * Sets the person's locale, finds the translations, and in a build folder the
 * settings schema, so that a program that was never installed speaks Spanish and
 * remembers its window too.  Changes the environment: call it first in main(),
 * before any thread and before GSettings.
 *
 * The environment comes first: STEAD_LOCALE_DIR, GSETTINGS_SCHEMA_DIR.
 */
void stead_home_init (void);

G_END_DECLS
