/* stead-options.h - what stood on the command line. */
#pragma once

#include "answer/stead-import-answer.h"
#include "paper/stead-paper.h"

G_BEGIN_DECLS

typedef struct
{
  /* What to do; at most one is set. */
  char     *new_farm;
  char     *demo;
  char     *import;
  char     *ask;
  char     *document;
  char     *packets;
  char     *verify;
  char     *rescue;
  char     *export_folder;
  char     *export_tables;
  char     *import_folder;
  gboolean  list_questions;
  gboolean  list_documents;
  gboolean  version;

  /* How to do it, as typed. */
  char     *of;
  char     *out;
  char     *dates;
  char     *period;
  char     *today;
  gboolean  dry_run;
  char    **rest;          /* what stands behind the options */

  /* Read from the above by stead_options_read(). */
  SteadDateOrder order;
  SteadPeriod    days;
  SteadDay       day;      /* STEAD_DAY_NONE: the real one */
} SteadOptions;

void stead_options_clear (SteadOptions *self);
G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (SteadOptions, stead_options_clear)

/**
 * stead_options_parse:
 * @self: empty
 * @argv: (array zero-terminated=1): the command line, the program first
 * @error: return location for a #GError of GOption
 */
gboolean stead_options_parse (SteadOptions        *self,
                              const char * const  *argv,
                              GError             **error) G_GNUC_WARN_UNUSED_RESULT;

/**
 * stead_options_read:
 *
 * Reads the words behind --dates, --period and --today.
 *
 * Returns: (nullable): what cannot be understood; never freed
 */
const char *stead_options_read (SteadOptions *self);

G_END_DECLS
