/* The shipped tables of limits, read for a test from $STEAD_DATA/limits. */
#pragma once

#include "core/stead-limit.h"

static inline SteadLimitTable *
limit_tables (void)
{
  SteadLimitTable *table = stead_limit_table_new ();
  g_autofree char *folder = g_build_filename (g_getenv ("STEAD_DATA"), "limits", NULL);
  g_autoptr(GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL)
    {
      g_autofree char *path = g_build_filename (folder, name, NULL);
      g_autoptr(GBytes) bytes = NULL;
      g_autoptr(GError) error = NULL;
      char *text = NULL;
      gsize length = 0;

      if (!g_str_has_suffix (name, ".csv"))
        continue;
      g_assert_true (g_file_get_contents (path, &text, &length, NULL));
      bytes = g_bytes_new_take (text, length);
      g_assert_true (stead_limit_table_add_csv (table, name, bytes, &error));
      g_assert_no_error (error);
    }
  return table;
}
