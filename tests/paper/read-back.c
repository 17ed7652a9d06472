#include "config.h"

#include "read-back.h"

#include <glib/gstdio.h>
#include <string.h>

static SteadPaper *
paper_of (SteadStore              *store,
          const char              *name,
          const char              *of,
          const SteadPaperOptions *options)
{
  g_autoptr(GError) error = NULL;
  SteadPaper *paper = stead_paper_new (store, name, of, options, &error);

  g_assert_no_error (error);
  return paper;
}

char *
read_back (SteadStore              *store,
           const char              *name,
           const char              *of,
           const SteadPaperOptions *options)
{
  g_autoptr(SteadPaper) paper = paper_of (store, name, of, options);
  g_autofree char *folder = g_dir_make_tmp ("steading-read-XXXXXX", NULL);
  g_autofree char *path = g_build_filename (folder, "paper.pdf", NULL);
  const char *command[] = { "pdftotext", "-raw", path, "-", NULL };
  g_autoptr(GRegex) space = g_regex_new ("\\s+", 0, 0, NULL);
  g_autoptr(GError) error = NULL;
  g_autofree char *text = NULL;

  g_assert_true (stead_paper_save_pdf (paper, path, &error));
  g_assert_no_error (error);
  g_assert_true (g_spawn_sync (NULL, (char **) command, NULL, G_SPAWN_SEARCH_PATH, NULL, NULL, &text, NULL, NULL, &error));
  g_assert_no_error (error);
  g_remove (path);
  g_rmdir (folder);
  return g_regex_replace_literal (space, text, -1, 0, " ", 0, NULL);
}

int
read_back_pages (SteadStore              *store,
                 const char              *name,
                 const char              *of,
                 const SteadPaperOptions *options)
{
  g_autoptr(SteadPaper) paper = paper_of (store, name, of, options);

  return stead_paper_get_n_pages (paper);
}

void
read_back_holds (const char *text,
                 const char *words)
{
  if (strstr (text, words) == NULL)
    g_error ("“%s” is not in: %s", words, text);
}

void
read_back_counts (const char *text,
                  const char *words,
                  guint       times)
{
  guint n = 0;

  for (const char *at = strstr (text, words); at != NULL; at = strstr (at + 1, words))
    n++;
  if (n != times)
    g_error ("“%s” is %u times, not %u, in: %s", words, n, times, text);
}
